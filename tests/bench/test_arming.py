"""The supply's own output timer: set before the output may be on, stopped once it is known to be off."""

import pytest
from msgspec.structs import replace

from benchlog.bench.arming import SILENCE_S, arm, disarm
from benchlog.bench.switching_off import switch_off
from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.recovery.ceilings import Ceilings, Layer, Limits, intersect
from drivers.dialect import Dialect, Watchdog, check, shipped
from drivers.scpi_supply import ScpiSupply
from tests.drivers.spoken import Spoken


def with_timer() -> Dialect:
    timer = Watchdog(
        set="OUTP:WATC:DEL {value}",
        ask="OUTP:WATC:DEL?",
        enable="OUTP:WATC ON",
        disable="OUTP:WATC OFF",
        enabled="OUTP:WATC?",
    )
    return check(replace(shipped(), watchdog=timer))


def ceilings() -> Ceilings:
    return intersect({Layer.JOB: Limits(volts=12.0, amps=2.0)})


def on(bench: Spoken) -> ScpiSupply:
    return ScpiSupply(bench.open, bench.dialect, lambda: bench.now_s, wait=bench.wait)


def test_the_timer_runs_before_the_output_may_be_on_and_that_is_said() -> None:
    bench = Spoken(with_timer())
    ready = arm(on(bench), ceilings())
    assert (bench.timer_on, bench.timer_s) == (True, SILENCE_S)
    assert ready.remarks == ("Its own output timer switches off after 3 s of silence.",)
    assert not bench.outputs[0].on


def test_a_slow_supply_gets_a_longer_silence() -> None:
    bench = Spoken(with_timer(), reply_s=0.19)
    arm(on(bench), ceilings())
    assert bench.timer_s == 4.0


@pytest.mark.parametrize("heard", ["OUTP:WATC ON", "OUTP:WATC:DEL 3"], ids=["stays off", "stays short"])
def test_a_timer_that_does_not_say_what_it_was_told_refuses_the_run(heard: str) -> None:
    bench = Spoken(with_timer())
    supply = on(bench)
    usual = bench.hears
    bench.hears = lambda message: usual(message.replace(heard, "*WAI"))  # type: ignore[method-assign]
    with pytest.raises(Refused, match="own output timer reads"):
        arm(supply, ceilings())
    assert not bench.outputs[0].on


def test_the_timer_is_stopped_after_off_and_only_then() -> None:
    bench = Spoken(with_timer())
    supply = on(bench)
    arm(supply, ceilings())
    supply.switch(True)
    off = switch_off(supply, VirtualClock())
    assert off.confirmed
    assert bench.timer_on
    disarm(supply)
    assert not bench.timer_on


def test_a_supply_without_a_timer_is_armed_without_a_word_about_one() -> None:
    bench = Spoken(shipped())
    supply = on(bench)
    assert arm(supply, ceilings()).remarks == ()
    disarm(supply)
    assert not any("WATC" in message for message in bench.heard)
