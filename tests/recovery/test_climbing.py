"""Rungs on supplies that are slow: as wide as they become, left out where there is no room, and never a false word.

In virtual time. How wide a kick truly was is what the simulated supply was sent, and when.
"""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Answer, Frame, Question
from benchlog.bench.journal import Journal
from benchlog.outcome import Outcome
from benchlog.records import EventKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.climbing import DID_IT_MOVE, NO
from benchlog.recovery.looking import LOOK_YOURSELF
from benchlog.recovery.steps import Kicks, Sequence, Start, Step
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import together
from drivers.simulated.scenario import load, with_ranges
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Supply
from tests.conftest import BEGAN, events_of

GENTLE = Start(voltage_ratio=0.5, on_s=0.15)
RUNG = Kicks(name="first", voltage=7.2, current_ratio=1.0, on_s=0.2, off_s=1.0, tries=1)
STRONG = Kicks(name="strong", voltage=12.0, current_ratio=1.0, on_s=0.2, off_s=1.0, tries=1)


class Heard(VirtualSession):
    """Keeps when it was sent what, in `log`."""

    def __init__(self, bench: Bench, now: Callable[[], float], wait: Callable[[float], None]) -> None:
        super().__init__(bench, now, wait)
        self._at, self.log = now, list[tuple[float, str]]()

    def write(self, message: str) -> None:
        self.log.append((self._at(), message))
        super().write(message)


class SlowBench(VirtualBench):
    """A motor on a supply that speaks a dialect, with habits. `answer`: of a person who is there, to every question."""

    def __init__(self, scenario: str, dialect: str = "terse-serial", habits: tuple[str, ...] = ()) -> None:
        speaks, quirks = shipped(dialect), together(habits)
        super().__init__(with_ranges(load(scenario), speaks), seed=11, began=BEGAN)
        self.bench = Bench(self.scenario, 11, speaks=speaks, quirks=quirks)
        self._described = quirks.described(speaks)
        self.heard = Heard(self.bench, self.clock.now, self.clock.wait)
        self.asked: list[str] = []

    def open_supply(self) -> Supply:
        return ScpiSupply(self.open_session, self._described, self.clock.now, wait=self.clock.wait)

    def open_session(self, timeout_s: float) -> Session:
        self.heard.set_timeout(timeout_s)
        return self.heard

    def emit(self, frame: Frame) -> None:
        self.frames.append(frame)
        if isinstance(frame, Question):
            self.asked.append(frame.text)
            self.lease.take(Answer(frame.id, NO))

    def climb(self, journal: Path, *steps: Step, attended: bool = False, in_a_row_s: float | None = None) -> VirtualRun:
        request = self.request(
            journal,
            sequence=Sequence(name="test", steps=steps),
            layers={Layer.JOB: Limits(volts=12.0, amps=5.0), Layer.OWNER: Limits(on_s=in_a_row_s)},
            unattended=not attended,
        )
        began_s = self.clock.now()
        result = Conductor(
            request,
            clock=self.clock,
            lease=self.lease,
            emit=self.emit,
            beat=lambda: None,
            going_off=lambda: None,
            journal=Journal(journal, sync_thread=False),
        ).run(self.open_supply, lambda capabilities: None)
        return VirtualRun(
            result=result,
            frames=self.frames,
            journal=journal,
            bench=self.bench,
            lasted_s=self.clock.now() - began_s,
        )


def left_out(run: VirtualRun) -> list[str]:
    return [event.text for event in events_of(run, EventKind.STEP) if event.values.get("skipped")]


@pytest.fixture(scope="module")
def kicked(tmp_path_factory: pytest.TempPathFactory) -> tuple[SlowBench, VirtualRun]:
    """A motor that is locked for good, a kick at 7.2 V and one at 12 V, on a supply that reads four times a second."""
    bench = SlowBench("hopeless")
    return bench, bench.climb(tmp_path_factory.mktemp("kicked") / "run.journal", RUNG, STRONG)


def test_a_kick_is_filed_as_wide_as_it_was_and_not_as_it_was_asked(kicked: tuple[SlowBench, VirtualRun]) -> None:
    bench, run = kicked
    (kick,) = events_of(run, EventKind.KICK)
    up_s = next(at_s for at_s, message in bench.heard.log if message == "VSET1:07.20")
    down_s = next(at_s for at_s, message in bench.heard.log if at_s > up_s and re.match(r"[VI]SET1:", message))
    # volts and limit go one by one: 0.05 s apart on such a line
    assert float(kick.values["seconds"] or 0.0) == pytest.approx(down_s - up_s, abs=0.051)
    assert down_s - up_s > 2 * RUNG.on_s


def test_how_long_its_kicks_become_is_said_before_the_output_is_on(kicked: tuple[SlowBench, VirtualRun]) -> None:
    _, run = kicked
    told = [event.kind for event in events_of(run) if "least_kick_s" in event.values or event.kind is EventKind.OUTPUT]
    assert told[:2] == [EventKind.ADVICE, EventKind.OUTPUT]


def test_a_kick_is_as_wide_as_was_said(kicked: tuple[SlowBench, VirtualRun]) -> None:
    _, run = kicked
    (kick,) = events_of(run, EventKind.KICK)
    (said,) = (event for event in events_of(run, EventKind.ADVICE) if "least_kick_s" in event.values)
    assert kick.values["seconds"] == pytest.approx(said.values["least_kick_s"], abs=0.01)


def test_a_rung_whose_kick_never_fits_is_left_out_and_the_ceiling_named(kicked: tuple[SlowBench, VirtualRun]) -> None:
    bench, run = kicked
    (words,) = left_out(run)
    assert words.startswith("Rung 2 left out: a kick of 0.6")
    assert "at 12.0 V passes the ceiling for winding temperature, however long it rests before" in words
    assert not any(message == "VSET1:12.00" for _, message in bench.heard.log)


def test_what_was_left_out_is_told_with_the_outcome(kicked: tuple[SlowBench, VirtualRun]) -> None:
    _, run = kicked
    assert run.result.outcome is Outcome.STILL_STUCK
    assert "was tried, but rung 2 was left out: a kick of 0.6" in run.result.reason


def test_a_kick_that_passes_the_time_in_a_row_is_left_out(tmp_path: Path) -> None:
    run = SlowBench("hopeless").climb(tmp_path / "run.journal", RUNG, in_a_row_s=1.0)
    (words,) = left_out(run)
    assert "and its look pass the owner's ceiling of 1 s in a row" in words


def test_where_no_kick_had_room_nothing_is_said_of_stuck(tmp_path: Path) -> None:
    run = SlowBench("hopeless").climb(tmp_path / "run.journal", STRONG)
    assert (run.result.outcome, run.result.kicks) == (Outcome.UNDETERMINED, 0)
    assert run.result.reason.startswith("no kick was given: rung 1 was left out: ")


def test_a_quick_supply_leaves_nothing_out_and_its_kicks_are_as_asked(tmp_path: Path) -> None:
    run = SlowBench("hopeless", "scpi-1999").climb(tmp_path / "run.journal", RUNG, STRONG)
    assert left_out(run) == []
    assert [event.values["seconds"] for event in events_of(run, EventKind.KICK)] == pytest.approx([0.2, 0.2], abs=0.01)
    assert not any("least_kick_s" in event.values for event in events_of(run))


@pytest.fixture(scope="module")
def turning(tmp_path_factory: pytest.TempPathFactory) -> tuple[SlowBench, VirtualRun]:
    """A motor that turns, with a person there, on a supply too slow to show it."""
    bench = SlowBench("free")
    return bench, bench.climb(tmp_path_factory.mktemp("turning") / "run.journal", GENTLE, RUNG, attended=True)


def test_a_motor_that_turns_unseen_is_not_said_to_be_stuck_but_to_be_looked_at(
    turning: tuple[SlowBench, VirtualRun],
) -> None:
    _, run = turning
    assert run.result.outcome is Outcome.UNDETERMINED
    assert re.match(r"one reading takes 0\.2\d s: too slow to see a motor turn", run.result.reason)
    assert run.result.reason.count(LOOK_YOURSELF) == 1


def test_who_is_there_is_asked_whether_it_moved(turning: tuple[SlowBench, VirtualRun]) -> None:
    bench, _ = turning
    assert bench.asked == [DID_IT_MOVE]
