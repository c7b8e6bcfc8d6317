"""What any supply must do, as a table of checks, and the subjects that are held against it."""

from collections.abc import Callable
from typing import TypeAlias

import pytest

from benchlog.clock import VirtualClock
from drivers.dialect import Dialect
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import Quirks
from drivers.simulated.scenario import Scenario, load, with_ranges
from drivers.simulated.truth import ReadingTruth
from drivers.simulated.virtual import VirtualSession
from drivers.supply import (
    NO_ERROR_QUEUE,
    NO_MODE,
    NO_OVER_AMPS_LATCH,
    NO_OVER_VOLTS_LATCH,
    OVER_VOLTS,
    RANGE_NOT_TOLD,
    Protection,
    Reading,
    Regulation,
    Setpoint,
    Supply,
    SupplyGarbled,
    SupplyTimeout,
)

WIDE = Protection(over_volts=20.0, over_amps=4.0)
MOST_READINGS = 200


class Watched:
    """A session that counts its replies, and gives one that means nothing where `garbles` is set."""

    def __init__(self, inner: Session) -> None:
        self.resource = inner.resource
        self._inner = inner
        self.replies = 0
        self.garbles = False

    def set_timeout(self, timeout_s: float) -> None:
        self._inner.set_timeout(timeout_s)

    def write(self, message: str) -> None:
        self._inner.write(message)

    def query(self, message: str) -> str:
        self.replies += 1
        return self._spoiled(self._inner.query(message))

    def read(self) -> str:
        self.replies += 1
        return self._spoiled(self._inner.read())

    def read_exactly(self, count: int) -> bytes:
        self.replies += 1
        return self._spoiled(self._inner.read_exactly(count).decode("latin-1")).encode("latin-1")

    def read_until_quiet(self, quiet_s: float) -> bytes:
        self.replies += 1
        return self._spoiled(self._inner.read_until_quiet(quiet_s).decode("latin-1")).encode("latin-1")

    def close(self) -> None:
        self._inner.close()

    def _spoiled(self, reply: str) -> str:
        return "?" * len(reply) if self.garbles else reply


class Subject:
    """A supply, and the session of it that is open now. `bench`: what it truly does, where the test can see that."""

    def __init__(
        self,
        open_session: Callable[[float], Session],
        dialect: Dialect,
        now: Callable[[], float],
        wait: Callable[[float], None] | None = None,
        output: int = 1,
        bench: Bench | None = None,
    ) -> None:
        self.session: Watched
        self.dialect, self.bench, self.output = dialect, bench, output
        self._open = open_session
        self.now, self.wait = now, wait
        self.supply: Supply = ScpiSupply(self._opened, dialect, now, output=output, wait=wait)

    def _opened(self, timeout_s: float) -> Session:
        self.session = Watched(self._open(timeout_s))
        return self.session

    @property
    def own_bench(self) -> Bench:
        """That of the output in use."""
        assert self.bench is not None
        return (self.bench, *self.bench.others)[self.output - 1]

    def reading_where(self, wanted: Callable[[Reading], bool]) -> Reading:
        """The first of some readings that is as wanted."""
        for _ in range(MOST_READINGS):
            reading = self.supply.read()
            if wanted(reading):
                return reading
        pytest.fail(f"the last of {MOST_READINGS} readings is {reading}")

    def has(self, gap: str) -> bool:
        return gap in self.supply.capabilities.gaps


def speaking(dialect: Dialect, quirks: Quirks | None = None, *, output: int = 1, load_name: str = "open") -> Subject:
    """A simulated bench in virtual time with two outputs where the dialect has some, the same load on each, and the
    supply over the dialect that describes it."""
    quirks, clock = quirks or Quirks(), VirtualClock()
    scenario = with_ranges(load(load_name), dialect)
    others = (scenario,) * (min(2, dialect.outputs.count) - 1)
    bench = Bench(scenario, seed=3, speaks=dialect, quirks=quirks, others=others)
    return on(bench, quirks.described(dialect), clock, output)


def strict(dialect: Dialect, scenario: Scenario | None = None) -> Subject:
    """The strict SCPI instrument."""
    return on(Bench(scenario or load("open"), seed=3), dialect, VirtualClock())


def on(bench: Bench, dialect: Dialect, clock: VirtualClock, output: int = 1) -> Subject:
    """A supply on a bench in virtual time."""

    def opened(timeout_s: float) -> Session:
        session = VirtualSession(bench, clock.now, clock.wait)
        session.set_timeout(timeout_s)
        return session

    return Subject(opened, dialect, clock.now, clock.wait, output, bench)


def is_off(reading: Reading) -> bool:
    return not reading.output_on and reading.set_volts == 0.0


def it_tells_what_it_is(subject: Subject) -> None:
    can = subject.supply.capabilities
    assert can.identity.count(",") >= subject.dialect.identify.fields - 1
    assert "?" not in can.identity
    assert (can.output, can.outputs, can.dialect) == (
        subject.output,
        subject.dialect.outputs.count,
        subject.dialect.name,
    )
    assert 0 < can.volts_step <= 0.01
    assert 0 < can.amps_step <= 0.01
    assert subject.has(RANGE_NOT_TOLD) or None not in (can.volts_max, can.amps_max)
    if subject.bench is not None and not subject.has(RANGE_NOT_TOLD):
        data = subject.own_bench.scenario.supply
        assert can.volts_max == pytest.approx(data.volts_max, abs=0.01)
        assert can.amps_max == pytest.approx(data.amps_max, abs=0.01)


def a_setpoint_is_read_back_and_leaves_the_output_as_it_is(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.25, amps=0.5))
    reading = subject.supply.read()
    assert (reading.set_volts, reading.set_amps, reading.output_on) == (5.25, 0.5, False)
    assert subject.supply.errors() == []


def the_times_of_readings_bracket_what_was_measured_and_go_on(subject: Subject) -> None:
    first, second = subject.supply.read(), subject.supply.read()
    assert first.sent_s < first.received_s <= second.sent_s < second.received_s
    if subject.bench is None:
        return
    measured = [one for one in subject.own_bench.truth if isinstance(one, ReadingTruth)]
    # Give or take the last digits of a float.
    assert second.sent_s - 1e-9 <= measured[-1].at_s <= second.received_s + 1e-9
    assert any(first.sent_s - 1e-9 <= one.at_s <= first.received_s + 1e-9 for one in measured)


def a_reading_takes_the_fewest_round_trips(subject: Subject) -> None:
    """One where several units go in one message, else one for each thing that is read; an echo is a reply as well."""
    back, dialect = subject.dialect.readback, subject.dialect
    units = 4 + bool(back.output) + bool(back.condition) + (dialect.mode is not None) + (dialect.status is not None)
    messages = 1 if dialect.link.compound else units
    if dialect.link.echo:
        messages *= 2 if dialect.link.compound or not dialect.outputs.select else 3
    before = subject.session.replies
    subject.supply.read()
    assert subject.session.replies - before == messages


def off_twice_is_off(subject: Subject) -> None:
    subject.supply.off()
    subject.supply.off()
    assert is_off(subject.supply.read())
    assert subject.supply.errors() == []


def a_setpoint_above_the_range_is_seen(subject: Subject) -> None:
    """Refused or taken for the nearest: what is read back is not what was asked for."""
    most = 32.0 if subject.bench is None else subject.own_bench.scenario.supply.volts_max
    subject.supply.set(Setpoint(volts=most + 1.0, amps=0.5))
    assert subject.supply.read().set_volts <= most
    subject.supply.errors()
    assert subject.supply.errors() == []


def latches_are_read_back_as_set_or_told_to_be_missing(subject: Subject) -> None:
    can = subject.supply.capabilities
    assert can.over_volts != subject.has(NO_OVER_VOLTS_LATCH)
    assert can.over_amps != subject.has(NO_OVER_AMPS_LATCH)
    wanted = Protection(over_volts=13.2, over_amps=2.2)
    found = subject.supply.protect(wanted)
    assert found.over_volts == (13.2 if can.over_volts else None)
    assert found.over_amps == (2.2 if can.over_amps else None)
    assert subject.supply.tripped() is None


def a_latch_that_is_not_wanted_is_told_as_it_is_left(subject: Subject) -> None:
    """Off, where it can be switched; one that can not stays where it was, and is told so only if that can be asked."""
    subject.supply.protect(WIDE)
    found = subject.supply.protect(Protection(over_volts=13.2, over_amps=None))
    latch = subject.dialect.over_amps
    stays = subject.supply.capabilities.over_amps and latch is not None and bool(latch.enabled) and not latch.disable
    assert found.over_amps == (4.0 if stays else None)


def the_terminals_reach_the_setpoint_and_the_mode_is_told(subject: Subject) -> None:
    subject.supply.protect(WIDE)
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    reading = subject.reading_where(lambda reading: abs(reading.volts - 5.0) < 0.05)
    assert reading.output_on
    assert reading.regulation is (Regulation.UNKNOWN if subject.has(NO_MODE) else Regulation.CV)
    assert abs(reading.amps) < 0.05


def off_is_read_back_and_the_terminals_come_down(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    subject.reading_where(lambda reading: reading.volts > 4.5)
    subject.supply.off()
    assert is_off(subject.supply.read())
    subject.reading_where(lambda reading: reading.volts < 2.5)
    if subject.bench is not None:
        assert not any(one.output.on for one in (subject.bench, *subject.bench.others))


def the_other_outputs_stay_as_they_are(subject: Subject) -> None:
    assert subject.bench is not None
    subject.supply.set(Setpoint(volts=5.0, amps=0.5))
    subject.supply.switch(True)
    subject.reading_where(lambda reading: reading.volts > 4.5)
    others = [one for one in (subject.bench, *subject.bench.others) if one is not subject.own_bench]
    assert not any(one.output.on or one.output.set_v for one in others)
    assert subject.own_bench.output.on
    subject.supply.off()


def a_trip_is_told_and_clearing_it_leaves_the_output_off(subject: Subject) -> None:
    """Where there is such a latch. A supply that wants it above the setpoint takes no such setpoint at all."""
    can = subject.supply.capabilities
    if not can.over_volts:
        assert subject.has(NO_OVER_VOLTS_LATCH)
        return
    subject.supply.protect(Protection(over_volts=4.0, over_amps=2.0))
    subject.supply.set(Setpoint(volts=6.0, amps=0.5))
    if subject.supply.read().set_volts == 6.0:
        subject.supply.switch(True)
        subject.reading_where(lambda reading: not reading.output_on)
        assert subject.supply.tripped() == ("over-voltage" if f"{OVER_VOLTS}!" in can.latches else None)
    subject.supply.clear()
    assert subject.supply.tripped() is None
    for _ in range(3):
        assert is_off(subject.supply.read())
    subject.supply.errors()
    subject.supply.protect(WIDE)


def errors_are_drained_in_order(subject: Subject) -> None:
    if subject.wait is not None:
        subject.wait(subject.now() + subject.dialect.link.gap_s)
    subject.session.write("NONSENSE")
    # A fresh session has no echo of it, and waits out the gap that the line may want.
    subject.supply.reopen()
    found = subject.supply.errors()
    assert [entry.split(",")[0] for entry in found] == ([] if subject.has(NO_ERROR_QUEUE) else ["-113"])
    assert subject.supply.errors() == []


def after_a_lost_reply_nothing_is_sent_until_it_is_opened_again(subject: Subject) -> None:
    assert subject.bench is not None
    subject.supply.set(Setpoint(volts=5.25, amps=0.5))
    instrument = subject.bench.instrument
    before_s, instrument.reply_s = instrument.reply_s, 3.0
    for act in (subject.supply.read, subject.supply.read, subject.supply.off):
        with pytest.raises(SupplyTimeout):
            act()
    assert subject.own_bench.output.set_v == 5.25
    instrument.reply_s = before_s
    # What was asked comes late; a fresh session does not take it for an answer.
    assert subject.wait is not None
    subject.wait(subject.now() + 3.5)
    before, old = subject.supply.capabilities, subject.session
    subject.supply.reopen()
    assert subject.session is not old
    assert subject.supply.capabilities == before
    assert subject.supply.read().set_volts == 5.25


def a_garbled_reply_is_told_and_makes_the_session_suspect(subject: Subject) -> None:
    subject.session.garbles = True
    with pytest.raises(SupplyGarbled):
        subject.supply.read()
    subject.session.garbles = False
    if subject.wait is not None:  # the rest of the reply may still be on its way, and the line busy
        subject.wait(subject.now() + 0.5)
    with pytest.raises(SupplyTimeout, match="suspect"):
        subject.supply.read()
    subject.supply.reopen()
    assert subject.supply.read().received_s > 0.0


def reopening_keeps_identity_and_state(subject: Subject) -> None:
    subject.supply.set(Setpoint(volts=5.25, amps=0.5))
    before, old = subject.supply.capabilities, subject.session
    subject.supply.reopen()
    assert subject.session is not old
    assert subject.supply.capabilities == before
    assert subject.supply.read().set_volts == 5.25


Check: TypeAlias = Callable[[Subject], None]

OF_ANY: tuple[Check, ...] = (
    it_tells_what_it_is,
    a_setpoint_is_read_back_and_leaves_the_output_as_it_is,
    the_times_of_readings_bracket_what_was_measured_and_go_on,
    a_reading_takes_the_fewest_round_trips,
    off_twice_is_off,
    a_setpoint_above_the_range_is_seen,
    latches_are_read_back_as_set_or_told_to_be_missing,
    errors_are_drained_in_order,
    a_garbled_reply_is_told_and_makes_the_session_suspect,
    reopening_keeps_identity_and_state,
)
"""Of any supply at all, also of a responder that has settings and no output stage."""

OF_OUTPUTS: tuple[Check, ...] = (
    a_latch_that_is_not_wanted_is_told_as_it_is_left,
    the_terminals_reach_the_setpoint_and_the_mode_is_told,
    off_is_read_back_and_the_terminals_come_down,
    a_trip_is_told_and_clearing_it_leaves_the_output_off,
)
"""Of one with an output stage and open leads."""

OF_BENCHES: tuple[Check, ...] = (
    the_other_outputs_stay_as_they_are,
    after_a_lost_reply_nothing_is_sent_until_it_is_opened_again,
)
"""Of one whose inside the test can see."""


def hold(subject: Subject, checks: tuple[Check, ...] = (*OF_ANY, *OF_OUTPUTS, *OF_BENCHES)) -> None:
    """All checks one after the other on one supply."""
    for check in checks:
        try:
            check(subject)
        except BaseException as error:
            error.add_note(f"while: {check.__name__.replace('_', ' ')}")
            raise
        subject.supply.off()
        subject.supply.errors()


def words(check: Check) -> str:
    return check.__name__.replace("_", " ")
