"""Rungs on supplies that are slow: as wide as they become, left out where there is no room, and never a false word.

In virtual time. How wide a kick truly was is what the simulated supply was sent, and when.
"""

import re
from pathlib import Path

import msgspec
import pytest

from benchlog.outcome import Outcome
from benchlog.records import EventKind
from benchlog.recovery.climbing import DID_IT_MOVE, YES
from benchlog.recovery.looking import LOOK_YOURSELF
from benchlog.recovery.replay import replay
from benchlog.recovery.steps import Kicks, Start
from demo_db.virtual import VirtualRun
from drivers.simulated.scenario import load
from tests.conftest import events_of
from tests.recovery.slow_bench import SlowBench, easy
from tests.recovery.test_replay import filed_of

GENTLE = Start(voltage_ratio=0.5, on_s=0.15)
RUNG = Kicks(name="first", voltage=7.2, current_ratio=1.0, on_s=0.2, off_s=1.0, tries=1)
STRONG = Kicks(name="strong", voltage=12.0, current_ratio=1.0, on_s=0.2, off_s=1.0, tries=1)


def left_out(run: VirtualRun) -> list[str]:
    return [event.text for event in events_of(run, EventKind.STEP) if event.values.get("skipped")]


@pytest.fixture(scope="module")
def kicked(tmp_path_factory: pytest.TempPathFactory) -> tuple[SlowBench, VirtualRun]:
    """A motor that is locked for good, a kick at 7.2 V and one at 12 V, on a supply that reads four times a second."""
    bench = SlowBench(load("hopeless"))
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


def test_a_run_on_a_slow_supply_replays_with_no_difference(kicked: tuple[SlowBench, VirtualRun]) -> None:
    _, run = kicked
    assert replay(filed_of(run.journal)).differences == []


def test_a_kick_that_passes_the_time_in_a_row_is_left_out(tmp_path: Path) -> None:
    run = SlowBench(load("hopeless")).climb(tmp_path / "run.journal", RUNG, in_a_row_s=1.0)
    (words,) = left_out(run)
    assert "and its look pass the owner's ceiling of 1 s in a row" in words


def test_where_no_kick_had_room_nothing_is_said_of_stuck(tmp_path: Path) -> None:
    run = SlowBench(load("hopeless")).climb(tmp_path / "run.journal", STRONG)
    assert (run.result.outcome, run.result.kicks) == (Outcome.UNDETERMINED, 0)
    assert run.result.reason.startswith("no kick was given: rung 1 was left out: ")


def test_a_quick_supply_leaves_nothing_out_and_its_kicks_are_as_asked(tmp_path: Path) -> None:
    run = SlowBench(load("hopeless"), "scpi-1999").climb(tmp_path / "run.journal", RUNG, STRONG)
    assert left_out(run) == []
    assert [event.values["seconds"] for event in events_of(run, EventKind.KICK)] == pytest.approx([0.2, 0.2], abs=0.01)
    assert not any("least_kick_s" in event.values for event in events_of(run))


@pytest.fixture(scope="module")
def turning(tmp_path_factory: pytest.TempPathFactory) -> tuple[SlowBench, VirtualRun]:
    """A motor that turns, with a person there, on a supply too slow to show it."""
    bench = SlowBench(load("free"))
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


@pytest.mark.parametrize(("dialect", "habits"), [("scpi-1999", ("slow", "no-compound")), ("terse-serial", ("slow",))])
def test_a_motor_that_turned_already_in_the_probe_is_not_said_to_be_stuck(
    dialect: str, habits: tuple[str, ...], tmp_path: Path
) -> None:
    # Its current in the probe is that of a motor that runs, taken for a winding of 160 Ω: as if it stood in every look.
    run = SlowBench(easy(3.3), dialect, habits).climb(tmp_path / "run.journal", GENTLE)
    assert not any("not turning" in event.text for event in events_of(run, EventKind.LOOK))
    assert run.result.outcome is Outcome.UNDETERMINED
    assert LOOK_YOURSELF in run.result.reason


def test_what_moved_and_can_not_be_seen_to_turn_is_not_said_to_be_stuck(tmp_path: Path) -> None:
    bench = SlowBench(load("hopeless"))
    bench.says = YES
    run = bench.climb(tmp_path / "run.journal", RUNG, attended=True)
    assert run.result.moved
    assert run.result.outcome is Outcome.UNDETERMINED


def test_a_last_kick_that_no_longer_look_came_after_leaves_it_open_whether_it_is_free(tmp_path: Path) -> None:
    bench = SlowBench(load("hopeless"), "terse-serial", ("slow",))
    run = bench.climb(tmp_path / "run.journal", msgspec.structs.replace(RUNG, voltage=5.0, tries=9))
    assert run.result.kicks > 0
    assert run.result.reason.endswith("the 180 s of the sequence are over")
    assert run.result.outcome is Outcome.UNDETERMINED
