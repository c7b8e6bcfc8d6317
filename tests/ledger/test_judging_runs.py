"""A filed run held against kept limits, and what a run's starts are held against where nobody names it."""

import shutil
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from benchlog.errors import Refused
from benchlog.ledger.captured import captured, captured_of_lot
from benchlog.ledger.earlier_starts import earlier_starts
from benchlog.ledger.judging_runs import judge_captured, judge_run, ohm_of
from benchlog.ledger.known_good import kept_limits
from benchlog.ledger.lots import lots, units
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import RunKind


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("judging") / "demo.db"
    shutil.copy(built_demo, path)
    return path


def test_a_run_is_judged_as_it_was_when_it_was_filed(demo: Path) -> None:
    with Ledger.open(demo) as book:
        for unit in units(book, lots(book)[0]):
            assert unit.run is not None
            judged = judge_run(book, unit.run, 1)
            assert judged.passed == unit.passed
            assert msgspec.json.encode(judged).decode() == unit.judged


def test_the_resistance_of_the_good_ones_stands_beside_the_figures(demo: Path) -> None:
    with Ledger.open(demo) as book:
        one = captured_of_lot(book, lots(book)[0])[0]
        judged = judge_captured(book, one, kept_limits(book, 1))
        beside = next(row for row in judged.rows if row.unit == "Ω")
        ohm = ohm_of(one.run)
        assert ohm is not None
        assert beside.value == ohm.value
        assert beside.low is not None
        assert beside.high is not None
        assert beside.low < ohm.value < beside.high


def test_what_did_not_turn_each_time_never_passes(demo: Path) -> None:
    with Ledger.open(demo) as book:
        one = captured_of_lot(book, lots(book)[0])[0]
        stuck = msgspec.structs.replace(one.run.result, outcome=Outcome.STILL_STUCK, reason="start 2 of 2 did not turn")
        judged = judge_captured(
            book, replace(one, run=msgspec.structs.replace(one.run, result=stuck)), kept_limits(book, 1)
        )
    assert (judged.passed, judged.sentence) == (None, "Not judged: not every start turned.")
    assert judged.because == "start 2 of 2 did not turn"


def test_another_test_or_none_is_refused(demo: Path) -> None:
    with Ledger.open(demo) as book:
        one, kept = captured_of_lot(book, lots(book)[0])[0], kept_limits(book, 1)
        assert one.test is not None
        other = replace(one, test=msgspec.structs.replace(one.test, version=2))
        for found, words in (
            (other, "version 2"),
            (replace(one, test=None), "does not say"),
            (replace(one, starts=()), "before its first start"),
        ):
            with pytest.raises(Refused, match=words):
                judge_captured(book, found, kept)


def test_starts_are_held_against_those_before_of_the_same_job(demo: Path) -> None:
    with Ledger.open(demo) as book:
        job = next(job for job in book.jobs() if job.item.serial == "CF-118")
        first, second = [run.id for run in book.runs(job.id) if run.kind is RunKind.START_UP]
        words, found = earlier_starts(book, captured(book, second))
        assert words == "the starts before in this job"
        assert found is not None
        assert found.run.id == first
        assert earlier_starts(book, captured(book, first)) == ("", None)


def test_a_unit_is_not_held_against_the_others_of_its_lot(demo: Path) -> None:
    with Ledger.open(demo) as book:
        last = captured_of_lot(book, lots(book)[0])[-1]
        assert earlier_starts(book, last) == ("", None)


def test_a_serial_is_found_again_in_another_job(demo: Path, tmp_path: Path) -> None:
    import sqlite3
    from contextlib import closing

    path = tmp_path / "again.db"
    shutil.copy(demo, path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("UPDATE unit SET serial = 'CF-118' WHERE serial = 'CF-208'")
    with Ledger.open(path) as book:
        last = captured_of_lot(book, lots(book)[0])[-1]
        words, found = earlier_starts(book, last)
        job = next(job for job in book.jobs() if job.item.serial == "CF-118")
        assert words == "the last starts of this serial"
        assert found is not None
        assert found.run.id == book.runs(job.id)[-1].id
