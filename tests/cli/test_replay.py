"""`benchlog replay` as a user runs it: runs of a real process, the demo ledger, damaged and unknown runs."""

import hashlib
import json
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.motor import motion
from drivers.simulated.scenario import load
from tests.processes import BenchProcess, TerminalProcess


def replay(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["replay", *arguments])


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    shutil.copy(built_demo, path)
    return path


@pytest.fixture
def scratch(demo: Path, tmp_path: Path) -> Path:
    """A copy of the demo ledger that may be spoiled."""
    path = tmp_path / "scratch.db"
    with closing(sqlite3.connect(demo)) as source, closing(sqlite3.connect(path)) as target:
        source.backup(target)
    return path


@pytest.mark.timeout(120)
@pytest.mark.parametrize("scenario", ["stuck-soft", "diode"])
def test_a_run_filed_over_the_wire_replays_with_no_difference(tmp_path: Path, scenario: str) -> None:
    bench = BenchProcess(tmp_path, scenario)
    terminal = TerminalProcess(bench.resource, tmp_path / "l.db", rated=str(load(scenario).rated_volts))
    try:
        terminal.ended(90.0)
    finally:
        terminal.close()
        bench.close()
    done = replay("1", "--ledger", str(tmp_path / "l.db"))
    assert done.exit_code == 0, done.output
    assert "No difference." in done.output


def test_all_runs_of_the_demo_ledger_are_the_same_and_nothing_is_written(demo: Path) -> None:
    before = hashlib.sha256(demo.read_bytes()).digest()
    done = replay("--all", "--ledger", str(demo))
    *rows, summary = done.output.splitlines()
    assert done.exit_code == 0, done.output
    assert len(rows) > 10
    assert all(row.endswith("same") for row in rows)
    assert summary == f"{len(rows)} the same, 0 differ, 0 not replayed."
    assert hashlib.sha256(demo.read_bytes()).digest() == before


def test_a_changed_threshold_is_told_on_80_columns_with_exit_status_1(
    demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(motion, "LEAST_EMF_SHARE", 0.9)
    one = replay("1", "--ledger", str(demo))
    assert one.exit_code == 1
    assert "filed:" in one.output
    assert "today:" in one.output
    every = replay("--all", "--ledger", str(demo))
    assert every.exit_code == 1
    assert all(len(row) <= 80 for row in (one.output + every.output).splitlines())
    told = json.loads(replay("1", "--json", "--ledger", str(demo)).output)
    assert told["run"] == 1
    assert told["differences"][0]["t_s"] > 0


def test_what_cannot_be_replayed_is_said_and_the_others_still_are(scratch: Path) -> None:
    with closing(sqlite3.connect(scratch)) as book, book:
        book.executescript("DROP TRIGGER IF EXISTS run_no_update; DROP TRIGGER IF EXISTS trace_no_update;")
        for (name,) in book.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
            book.execute(f'DROP TRIGGER "{name}"')
        book.execute("UPDATE trace SET data = substr(data, 1, 100) WHERE run_id = 1")
        book.execute("UPDATE run SET request = '{}' WHERE id = 2")
    for number in ("1", "2", "999"):
        done = replay(number, "--ledger", str(scratch))
        assert done.exit_code == 2
        assert number in done.output
    every = replay("--all", "--ledger", str(scratch))
    assert every.exit_code == 2
    assert every.output.splitlines()[-1].endswith("0 differ, 2 not replayed.")


def test_what_is_asked_wrongly_is_refused_and_no_ledger_is_made(tmp_path: Path) -> None:
    missing = tmp_path / "none.db"
    assert replay("1", "--ledger", str(missing)).exit_code == 2
    assert not missing.exists()
    assert replay("--ledger", str(missing)).exit_code == 2
    assert replay("1", "--all", "--ledger", str(missing)).exit_code == 2
