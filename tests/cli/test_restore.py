"""`benchlog restore`: from the terminal, with a damaged or a missing ledger, and what it refuses."""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.clock import VirtualClock
from benchlog.ledger.backups import back_up
from benchlog.ledger.opening import HEAD
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.ledger.test_backups import flip


@pytest.fixture
def book(tmp_path: Path) -> Path:
    path = tmp_path / "ledger.db"
    add_job(path, "Fresh-water pump")
    return path


@pytest.fixture
def copy(book: Path) -> Path:
    """A backup; a second job has come in since."""
    made = back_up(book, VirtualClock())
    add_job(book, "Cabin fan")
    return Path(made.path)


def add_job(path: Path, kind: str) -> None:
    with Ledger.open(path) as ledger:
        ledger.new_job(item=Item(kind=kind), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry")


def run(book: Path, *arguments: object) -> Result:
    return CliRunner().invoke(main, ["restore", *map(str, arguments), "--ledger", str(book)])


def jobs(book: Path) -> int:
    with Ledger.open(book) as ledger:
        return len(ledger.jobs())


def test_it_says_what_was_restored_and_where_the_old_file_is(book: Path, copy: Path) -> None:
    done = run(book, copy, "--yes")
    assert (done.exit_code, done.stderr) == (0, "")
    restored, kept = done.stdout.splitlines()
    assert restored == f"Restored: {book} is the backup of 2026-01-01 00:00 UTC, 1 jobs."
    assert (jobs(book), jobs(Path(kept.removeprefix("What was there before is kept: ")))) == (1, 2)


def test_in_json(book: Path, copy: Path) -> None:
    told = json.loads(run(book, copy, "--yes", "--json").stdout)
    assert (told["jobs"], told["revision"], told["set_aside"], told["trouble"]) == (1, HEAD, [], [])
    assert jobs(Path(told["kept"])) == 2


def test_a_ledger_that_no_command_can_read_any_more_is_restored(book: Path, copy: Path) -> None:
    flip(book, 1)
    before = CliRunner().invoke(main, ["jobs", "--ledger", str(book)])
    assert (before.exit_code, "not a ledger" in before.stderr) == (2, True)
    assert run(book, copy, "--yes").exit_code == 0
    assert jobs(book) == 1


def test_every_reading_command_tells_of_a_spoiled_page_in_one_line(book: Path, copy: Path) -> None:
    with closing(sqlite3.connect(book)) as connection:
        (page,) = connection.execute("SELECT rootpage FROM sqlite_master WHERE name = 'job'").fetchone()
    flip(book, page)
    told = CliRunner().invoke(main, ["jobs", "--ledger", str(book)])
    assert told.exit_code == 2
    assert "damaged" in told.stderr
    assert len(told.stderr.splitlines()) == 1
    assert run(book, copy, "--yes").exit_code == 0
    assert jobs(book) == 1


def test_a_missing_ledger_is_restored(book: Path, copy: Path) -> None:
    book.unlink()
    done = run(book, copy, "--yes")
    assert (done.exit_code, "kept" in done.stdout) == (0, False)
    assert jobs(book) == 1


def test_with_nobody_to_ask_it_is_refused_without_yes(book: Path, copy: Path) -> None:
    done = run(book, copy)
    assert (done.exit_code, "give --yes" in done.stderr) == (2, True)
    assert jobs(book) == 2


def test_beside_an_open_window_it_is_refused(book: Path, copy: Path) -> None:
    with Ledger.open(book, sole_writer=True):
        done = run(book, copy, "--yes")
    assert (done.exit_code, "close that first" in done.stderr) == (2, True)
    assert jobs(book) == 2


def test_a_newer_backup_is_refused_with_both_numbers(book: Path, copy: Path) -> None:
    newer = copy.with_name("newer.db")  # without a record
    newer.write_bytes(copy.read_bytes())
    with closing(sqlite3.connect(newer, isolation_level=None)) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '0999'")
    done = run(book, newer, "--yes")
    assert done.exit_code == 2
    assert "0999" in done.stderr
    assert HEAD in done.stderr
    assert jobs(book) == 2


def test_what_is_no_backup_is_refused(book: Path, tmp_path: Path) -> None:
    for name, content in (("bread.txt", b"bread"), ("none", None)):
        source = tmp_path / name
        if content is not None:
            source.write_bytes(content)
        done = run(book, source, "--yes")
        assert (done.exit_code, len(done.stderr.splitlines())) == (2, 1)
    assert jobs(book) == 1
