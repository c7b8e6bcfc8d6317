"""What any supply must do, on the simulated bench: in virtual time, and through VISA to a real process."""

import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import pytest

from benchlog.clock import SystemClock, VirtualClock
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Protection, Reading, Regulation, Setpoint, Supply
from drivers.visa import VisaSession

WIDE = Protection(over_volts=20.0, over_amps=4.0)


class Subject:
    """A supply with open leads, and the session of it that is open now."""

    def __init__(self, open_session: Callable[[float], Session], now: Callable[[], float]) -> None:
        self.session: Session | None = None
        self._open = open_session
        self.supply: Supply = ScpiSupply(self._opened, shipped(), now)

    def _opened(self, timeout_s: float) -> Session:
        self.session = self._open(timeout_s)
        return self.session

    def send(self, message: str) -> None:
        """Past the driver."""
        assert self.session is not None
        self.session.write(message)

    def reading_where(self, wanted: Callable[[Reading], bool]) -> Reading:
        """The first of at most 200 readings that is as wanted."""
        for _ in range(200):
            reading = self.supply.read()
            if wanted(reading):
                return reading
        pytest.fail(f"the last of 200 readings is {reading}")


def virtually() -> Iterator[Subject]:
    clock = VirtualClock()
    bench = Bench(load("open"), seed=3)
    subject = Subject(lambda timeout_s: VirtualSession(bench, clock.now, clock.wait), clock.now)
    yield subject
    subject.supply.close()


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
            lambda timeout_s: VisaSession(resource, termination="\n", timeout_s=timeout_s), SystemClock().now
        )
        yield subject
        subject.supply.close()
    finally:
        process.terminate()
        process.communicate(timeout=10.0)


@pytest.fixture(params=[virtually, through_visa], ids=["in virtual time", "through VISA"])
def subject(request: pytest.FixtureRequest) -> Iterator[Subject]:
    with contextmanager(request.param)() as made:
        yield made


def is_off(reading: Reading) -> bool:
    return not reading.output_on and reading.set_volts == 0.0


def test_it_tells_what_it_is(subject: Subject) -> None:
    can = subject.supply.capabilities
    assert can.identity.count(",") == 3
    assert (can.volts_max, can.amps_max) == (30.0, 5.0)
    assert can.over_volts
    assert can.over_amps
    assert can.volts_step == pytest.approx(0.001)


def test_a_setpoint_is_read_back_and_leaves_the_output_as_it_is(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.25, amps=0.5))
    reading = subject.supply.read()
    assert (reading.set_volts, reading.set_amps, reading.output_on) == (5.25, 0.5, False)
    assert subject.supply.errors() == []


def test_the_times_of_readings_bracket_the_query_and_go_on(subject: Subject) -> None:
    first, second = subject.supply.read(), subject.supply.read()
    assert first.sent_s < first.received_s <= second.sent_s < second.received_s


def test_with_the_output_on_the_terminals_reach_the_setpoint_under_voltage_control(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    reading = subject.reading_where(lambda reading: abs(reading.volts - 5.0) < 0.05)
    assert reading.output_on
    assert reading.regulation is Regulation.CV
    assert abs(reading.amps) < 0.05


def test_off_is_read_back_and_the_terminals_come_down(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    subject.reading_where(lambda reading: reading.volts > 4.5)
    subject.supply.off()
    assert is_off(subject.supply.read())
    subject.reading_where(lambda reading: reading.volts < 0.5)


def test_off_twice_is_off(subject: Subject) -> None:
    subject.supply.off()
    subject.supply.off()
    assert is_off(subject.supply.read())
    assert subject.supply.errors() == []


def test_latches_are_read_back_as_they_were_set(subject: Subject) -> None:
    assert subject.supply.protect(Protection(over_volts=13.2, over_amps=2.2)) == Protection(
        over_volts=13.2, over_amps=2.2
    )
    assert subject.supply.tripped() is None


def test_a_latch_that_is_not_wanted_is_read_back_as_none(subject: Subject) -> None:
    subject.supply.protect(WIDE)
    assert subject.supply.protect(Protection(over_volts=13.2, over_amps=None)) == Protection(
        over_volts=13.2, over_amps=None
    )


def test_a_setpoint_above_the_latch_trips_it_and_switches_off(subject: Subject) -> None:
    subject.supply.protect(Protection(over_volts=4.0, over_amps=2.0))
    subject.supply.set(Setpoint(volts=6.0, amps=0.5))
    subject.supply.switch(True)
    subject.reading_where(lambda reading: not reading.output_on)
    assert subject.supply.tripped() == "over-voltage"


def test_clearing_a_latch_leaves_the_output_off_at_no_volts(subject: Subject) -> None:
    subject.supply.protect(Protection(over_volts=4.0, over_amps=2.0))
    subject.supply.set(Setpoint(volts=6.0, amps=0.5))
    subject.supply.switch(True)
    subject.reading_where(lambda reading: not reading.output_on)
    subject.supply.clear()
    assert subject.supply.tripped() is None
    for _ in range(10):
        assert is_off(subject.supply.read())


def test_errors_are_drained_in_order(subject: Subject) -> None:
    subject.send("VOLT 99")
    subject.send("NONSENSE")
    found = subject.supply.errors()
    assert [entry.split(",")[0] for entry in found] == ["-222", "-113"]
    assert subject.supply.errors() == []
    assert subject.supply.read().set_volts == 0.0


def test_reopening_keeps_identity_and_state(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.25, amps=0.5))
    before = subject.supply.capabilities
    old = subject.session
    subject.supply.reopen()
    assert subject.session is not old
    assert subject.supply.capabilities == before
    assert subject.supply.read().set_volts == 5.25
