"""Output off at a supply that does not listen: again, then 0 V and no current, then a person has to do it."""

from datetime import UTC, datetime

import pytest

from benchlog.bench.switching_off import switch_off
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load
from drivers.supply import Setpoint


def driving() -> VirtualBench:
    bench = VirtualBench(load("hopeless"), seed=1, began=datetime(2026, 3, 2, 9, 0, tzinfo=UTC))
    supply = bench.open_supply()
    supply.switch(True)
    supply.set(Setpoint(volts=6.0, amps=0.5))
    bench.clock.advance(0.2)
    bench.bench.advance(bench.clock.now())
    assert bench.bench.output.on
    return bench


@pytest.mark.parametrize("ignored", [0, 1, 2, 5, 20])
def test_a_supply_that_ignores_off_a_few_times_is_told_again(ignored: int) -> None:
    bench = driving()
    bench.bench.instrument.offs_to_ignore = ignored
    off = switch_off(bench.open_supply(), bench.clock)
    assert off.confirmed
    assert not bench.bench.output.on


def test_a_supply_that_never_goes_off_is_left_at_0_v_and_no_current_and_a_person_is_called() -> None:
    bench = driving()
    bench.bench.instrument.offs_to_ignore = 10**9
    off = switch_off(bench.open_supply(), bench.clock)
    assert not off.confirmed
    assert off.text.startswith("NOT CONFIRMED: switch the supply off by hand")
    assert (bench.bench.output.set_v, bench.bench.output.limit_a) == (0.0, 0.0)
    bench.bench.advance(bench.clock.now() + 0.2)
    assert abs(bench.bench.output.volts) < 0.05
