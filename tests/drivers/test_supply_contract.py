"""What any supply must do, held against: the strict simulated bench, in virtual time and through VISA to a process; the
bench in every shipped dialect with every habit; a responder written elsewhere; a supply made from a file of its own."""

import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
import pyvisa

from benchlog.clock import SystemClock, VirtualClock
from drivers.dialect import read, shipped, shipped_names
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import QUIRKS, Quirks
from drivers.simulated.scenario import load
from drivers.supply import NO_MODE, NotASupply, Regulation, Setpoint, SupplyError
from drivers.visa import VisaSession
from tests.drivers import contract
from tests.drivers.contract import OF_ANY, OF_BENCHES, OF_OUTPUTS, Check, Subject, hold, on, speaking, strict, words
from tests.drivers.test_independent_responder import DEVICES, RespondedSession, unit_by_unit

OWN = """
name = "a drawer supply, one command a line"
[link]
termination = "\\r\\n"
compound = false
gap_s = 0.02
units_in_replies = true
[outputs]
count = 2
[identify]
identity = "WHO?"
fields = 1
[ranges]
volts_max = [30.0, 30.0]
amps_max = [5.0, 5.0]
[program]
volts = "U{n} {value}"
amps = "J{n} {value}"
on = "SW{n} 1"
off = "SW{n} 0"
[readback]
volts = "UM{n}?"
amps = "JM{n}?"
set_volts = "U{n}?"
set_amps = "J{n}?"
output = "SW{n}?"
window_s = 0.02
settle_s = 0.05
[mode]
ask = "REG{n}?"
cc = ["CUR"]
cv = ["VOL"]
[over_volts]
set = "OV{n} {value}"
ask = "OV{n}?"
tripped = "OVT{n}?"
clear = "OVC{n}"
[errors]
form = "number"
ask = "E?"
"""


OF_LINES = ("slow", "crlf", "no-compound", "units", "one-client", "echo", "no-error-queue")
"""Habits of the line, each held against every shipped dialect."""


def through_visa() -> Iterator[Subject]:
    process = subprocess.Popen(
        [sys.executable, "-m", "drivers.simulated", "--scenario", "open", "--seed", "3", "--until-stdin-closes"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        assert process.stdout is not None
        resource = process.stdout.readline().removeprefix("listening on ").strip()
        subject = Subject(
            lambda timeout_s: VisaSession(resource, termination="\n", timeout_s=timeout_s), shipped(), SystemClock().now
        )
        yield subject
        subject.supply.close()
    finally:
        process.terminate()
        process.communicate(timeout=10.0)


def written_elsewhere() -> Iterator[Subject]:
    manager = pyvisa.ResourceManager(f"{DEVICES}@sim")
    yield Subject(lambda timeout_s: RespondedSession(manager, timeout_s), unit_by_unit(), SystemClock().now)
    manager.close()


@contextmanager
def made(maker: Callable[[], Iterator[Subject]]) -> Iterator[Subject]:
    yield from maker()


@pytest.mark.parametrize("check", [*OF_ANY, *OF_OUTPUTS, *OF_BENCHES], ids=words)
def test_the_strict_bench_keeps_the_contract(check: Check) -> None:
    check(strict(shipped()))


@pytest.mark.timeout(60)
def test_the_strict_bench_keeps_the_contract_through_visa() -> None:
    with made(through_visa) as subject:
        hold(subject, (*OF_ANY, *OF_OUTPUTS))


@pytest.mark.parametrize("check", OF_ANY, ids=words)
def test_a_responder_written_elsewhere_keeps_the_contract(check: Check) -> None:
    with made(written_elsewhere) as subject:
        check(subject)


@pytest.mark.parametrize("output", [1, 2])
def test_a_supply_made_from_a_file_keeps_the_contract(tmp_path: Path, output: int) -> None:
    path = tmp_path / "drawer.toml"
    path.write_text(OWN, encoding="utf-8")
    hold(speaking(read(path), output=output))


@pytest.mark.parametrize(
    ("name", "quirk"),
    [
        *((name, quirk) for name in shipped_names() for quirk in ("no quirk", *OF_LINES)),
        *((name, quirk) for name in ("scpi-1999", "scpi-1999-suffix") for quirk in QUIRKS if quirk not in OF_LINES),
    ],
)
def test_every_shipped_dialect_keeps_the_contract_with_every_habit(name: str, quirk: str) -> None:
    dialect = shipped(name)
    hold(speaking(dialect, QUIRKS.get(quirk), output=min(2, dialect.outputs.count)))


@pytest.mark.parametrize("name", shipped_names())
def test_a_current_limit_that_holds_is_told_or_said_to_be_unknown(name: str) -> None:
    subject = speaking(shipped(name), load_name="short")
    subject.supply.protect(contract.WIDE)
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    reading = subject.reading_where(lambda reading: abs(reading.amps - 0.5) < 0.02)
    assert reading.regulation is (Regulation.UNKNOWN if subject.has(NO_MODE) else Regulation.CC)
    subject.supply.off()


@pytest.mark.parametrize("name", [name for name in shipped_names() if shipped(name).outputs.count > 1])
def test_two_outputs_of_one_supply_serve_two_jobs_at_once(name: str) -> None:
    """Each over a session of its own, their messages in turn; neither meets the other's output."""
    dialect, clock = shipped(name), VirtualClock()
    bench = Bench(load("open"), seed=3, speaks=dialect, others=(load("open"),))
    one, other = on(bench, dialect, clock, output=1), on(bench, dialect, clock, output=2)
    for subject, volts in ((one, 3.0), (other, 5.0)):
        subject.supply.set(Setpoint(volts=volts, amps=0.5))
    for subject in (one, other, one, other):
        subject.supply.switch(True)
        subject.supply.read()
    assert (one.supply.read().set_volts, other.supply.read().set_volts) == (3.0, 5.0)
    one.supply.off()
    assert (bench.output.on, bench.others[0].output.on) == (False, True)
    assert other.supply.read().output_on
    other.supply.off()
    assert not bench.others[0].output.on


@pytest.mark.parametrize("quirk", ["no-compound", "echo", "units"])
@pytest.mark.parametrize("name", [name for name in shipped_names() if shipped(name).link.compound])
def test_a_line_that_is_not_as_the_dialect_says_is_refused_with_nothing_set(name: str, quirk: str) -> None:
    """It may be identified by single questions; then the first reading, before anything is set, fails."""
    bench = Bench(load("open"), seed=3, speaks=shipped(name), quirks=QUIRKS[quirk])
    before = (bench.output.set_v, bench.output.limit_a)
    with pytest.raises((NotASupply, SupplyError)):
        on(bench, shipped(name), VirtualClock()).supply.read()
    assert (bench.output.set_v, bench.output.limit_a, bench.output.on) == (*before, False)


def test_the_quirks_are_those_that_a_bench_can_be_asked_for() -> None:
    assert all(quirk != Quirks() for quirk in QUIRKS.values())
    assert len(set(map(repr, QUIRKS.values()))) == len(QUIRKS)
