"""The demo ledger: the same every time, readable by the program, about things found on small boats, and only once."""

import hashlib
import json
import os
import sqlite3
import subprocess
import sys
from collections import Counter
from contextlib import closing
from pathlib import Path

import numpy as np
import pytest

import demo_db
from benchlog.errors import Refused
from benchlog.ledger.captured import captured_of_lot, captured_of_runs
from benchlog.ledger.known_good import kept_limits
from benchlog.ledger.lots import lots, units
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import FLAG_ON, JobState, RunKind, Stage
from demo_db.__main__ import main
from demo_db.jobs import demo_jobs
from demo_db.lots import demo_test

DIGEST = "2d367f246d3c1f182b55a28c18e8dca2eae4586d0c630957896df1c0622834dd"
"""Of the rows that SUMMARY selects. After a change that is meant, take over the one that the failing test shows."""

# Without the program's version, and without figures whose last digits are the processor's.
SUMMARY = (
    "SELECT * FROM item ORDER BY id",
    "SELECT * FROM motor ORDER BY id",
    "SELECT * FROM job ORDER BY id",
    "SELECT * FROM entry ORDER BY id",
    "SELECT id, job_id, uid, kind, started_utc, identity, dialect, load_state, sequence_name, complete, outcome,"
    " winding_verdict, kicks, moved, output_confirmed_off FROM run ORDER BY id",
    "SELECT id, name, version, content, utc, who FROM start_test ORDER BY id",
    "SELECT * FROM lot ORDER BY job_id",
    "SELECT * FROM unit ORDER BY id",
    "SELECT * FROM lot_check ORDER BY id",
    "SELECT id, test_name, test_version, kind, model, n, coverage, confidence, utc, who FROM limits ORDER BY id",
    "SELECT unit_id, run_id, limits_id, passed, utc FROM judged ORDER BY id",
    "SELECT run_id, kind, count(*) FROM event GROUP BY run_id, kind ORDER BY run_id, kind",
)


@pytest.fixture(scope="module")
def built(built_demo: Path) -> Path:
    """A copy of it, in a folder beside the one it was built in."""
    return built_demo


def rows_of(path: Path) -> dict[str, list[tuple[object, ...]]]:
    """Every row of every table."""
    with closing(sqlite3.connect(path)) as connection:
        tables = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {table: sorted(connection.execute(f"SELECT * FROM {table}").fetchall()) for table in sorted(tables)}


def test_it_is_the_same_every_time_to_the_last_byte_of_every_row(built: Path, tmp_path: Path) -> None:
    # another folder, another name, another process
    again = tmp_path / "elsewhere" / "second.db"
    again.parent.mkdir()
    done = subprocess.run(
        [sys.executable, "-m", "demo_db", "second.db"],
        cwd=again.parent,
        env=os.environ | {"PYTHONPATH": str(Path(demo_db.__file__).parents[1])},
        capture_output=True,
        text=True,
        timeout=250.0,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    first, second = rows_of(built), rows_of(again)
    assert first.keys() == second.keys()
    for table, rows in first.items():
        assert rows == second[table], table
    assert list(again.parent.iterdir()) == [again]


def test_a_change_of_what_it_tells_is_noticed(built: Path) -> None:
    with closing(sqlite3.connect(built)) as connection:
        told = [connection.execute(query).fetchall() for query in SUMMARY]
    assert hashlib.sha256(json.dumps(told).encode()).hexdigest() == DIGEST


def test_it_tells_of_repairs_from_march_to_november(built: Path) -> None:
    with Ledger.open(built) as ledger:
        jobs = ledger.jobs()
    assert len(jobs) == len(demo_jobs()) == 13
    opened = [job.opened_utc for job in reversed(jobs)]
    assert opened == sorted(opened)
    assert opened[0] > "2026-03-01"
    assert opened[-1] < "2026-12-01"
    assert {job.item.kind for job in jobs} == {
        "bilge pump",
        "fresh-water pump",
        "cabin fan",
        "hatch actuator",
        "anchor-light dimmer fan",
    }
    assert all(job.complaint and not job.item.make for job in jobs)


def test_one_job_waits_and_every_other_is_closed_with_cause_work_and_prognosis(built: Path) -> None:
    with Ledger.open(built) as ledger:
        jobs = ledger.jobs()
    assert [job.number for job in jobs if job.state is JobState.FOR_PART] == [12]
    for job in jobs:
        if job.number == 12:
            continue
        assert job.cause
        assert job.work_done
        assert job.prognosis
        assert job.closed_utc is not None
        assert job.closed_utc > job.opened_utc


def test_one_item_comes_back(built: Path) -> None:
    with Ledger.open(built) as ledger:
        serials = Counter(job.item.serial for job in ledger.jobs() if job.item.serial)
        came_back = ledger.jobs(text="BP-0417")
    assert [serial for serial, times in serials.items() if times > 1] == ["BP-0417"]
    assert [job.last_outcome for job in came_back] == ["runs", "runs"]


def test_the_runs_end_in_most_of_the_words_there_are(built: Path) -> None:
    with Ledger.open(built) as ledger:
        runs = ledger.recent_runs()
    assert {run.result.outcome for run in runs} == {
        Outcome.FREED,
        Outcome.RUNS,
        Outcome.STILL_STUCK,
        Outcome.UNDETERMINED,
        Outcome.OPEN,
        Outcome.SHORT,
        Outcome.DIODE,
        Outcome.ELECTRONIC,
    }
    assert {run.kind for run in runs} == {RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF, RunKind.START_UP}
    assert all(run.complete and run.result.output_confirmed_off for run in runs)


def test_every_run_has_its_trace_and_its_events_and_ends_with_the_output_off(built: Path) -> None:
    with Ledger.open(built) as ledger:
        for run in ledger.recent_runs():
            trace = ledger.trace(run.id)
            assert len(trace.volts) == run.samples > 100
            assert np.all(np.diff(trace.sent) > 0)
            assert (trace.flags & FLAG_ON).any()
            assert not trace.flags[-1] & FLAG_ON
            assert ledger.events(run.id)


def test_what_happened_in_a_job_happened_between_its_opening_and_its_closing(built: Path) -> None:
    with Ledger.open(built) as ledger:
        for job in ledger.jobs():
            entries, runs = ledger.entries(job.id), ledger.runs(job.id)
            assert entries[0].stage is Stage.MAKE_SAFE
            assert runs
            assert entries[0].utc < runs[0].started_utc
            assert {run.load_state for run in runs} == {job.load_state}
            for utc in [entry.utc for entry in entries] + [run.started_utc for run in runs]:
                assert job.opened_utc < utc < (job.closed_utc or "2026-12")


def test_no_row_knows_where_it_was_built(built: Path) -> None:
    text = str(rows_of(built))
    assert str(built.parents[2]) not in text  # where the folders of all workers are
    assert "/tmp" not in text


def test_a_file_that_is_there_is_refused_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "mine.db"
    path.write_bytes(b"mine")
    with pytest.raises(Refused, match="is there already and is left as it is"):
        demo_db.build(path)
    assert path.read_bytes() == b"mine"
    assert list(tmp_path.iterdir()) == [path]


def test_on_the_command_line_a_refusal_is_one_sentence_and_status_two(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "mine.db"
    path.write_bytes(b"mine")
    assert main([str(path)]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == f"{path} is there already and is left as it is: name a new file for the demo ledger\n"
    assert path.read_bytes() == b"mine"


def test_a_lot_is_measured_and_the_one_that_starts_slowly_is_the_one_that_fails(built: Path) -> None:
    with Ledger.open(built) as ledger:
        (lot,) = lots(ledger)
        found = units(ledger, lot)
        limits = kept_limits(ledger, lot.limits_id or 0).limits
        taken = captured_of_lot(ledger, lot)
    assert len(found) == lot.units == 8
    assert [unit.serial for unit in found if not unit.passed] == ["CF-205"]
    assert all(unit.run for unit in found)
    assert (limits.n, limits.starts_each, limits.coverage, limits.confidence) == (7, 2, 0.95, 0.95)
    assert found[4].run not in limits.runs
    assert [len(one.starts) for one in taken] == [2] * 8
    slow = {one.run.unit: one.figures[0].values["run_up_s"].value for one in taken}
    assert max(slow, key=slow.__getitem__) == found[4].id
    assert "starts slowly" in found[4].judged


def test_a_repair_was_measured_before_and_after_and_took_less_current_then(built: Path) -> None:
    with Ledger.open(built) as ledger:
        job = next(job for job in ledger.jobs() if job.item.serial == "CF-118")
        before, after = captured_of_runs(ledger, [run.id for run in ledger.runs(job.id)])
    assert before.test == after.test == demo_test()
    assert after.figures[0].values["steady_amps"].high < before.figures[0].values["steady_amps"].low
