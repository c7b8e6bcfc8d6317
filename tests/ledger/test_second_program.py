"""Two programs on one ledger: one writes, the second reads and says so, and no run is lost in between."""

import os
import signal
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerBusy, LedgerReadOnly
from benchlog.ledger.backups import back_up
from benchlog.ledger.opening import HEAD
from benchlog.ledger.store import OPEN_ELSEWHERE, Ledger
from benchlog.ledger.writer_lock import held_elsewhere, seat_of, take
from tests.ledger.benches import BILGE_PUMP, MOTOR
from tests.ledger.test_backups import close_pipes, started
from tests.ledger.test_migrations import REVISIONS, old_ledger

WINDOW = """
import sys
from pathlib import Path
from benchlog.ledger.store import Ledger
with Ledger.open(Path(sys.argv[1]), sole_writer=True) as ledger:
    assert ledger.read_only == ""
    print("ready", flush=True)
    sys.stdin.readline()
    sys.stdin.readline()
"""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "workshop.ledger"
    with Ledger.open(path) as ledger:
        new_job(ledger)
    return path


def new_job(ledger: Ledger) -> int:
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").number


def test_the_second_reads_and_says_why_it_can_not_write(path: Path) -> None:
    with Ledger.open(path, sole_writer=True) as first:
        assert first.read_only == ""
        with Ledger.open(path, sole_writer=True) as second:
            assert second.read_only == OPEN_ELSEWHERE
            assert len(second.jobs()) == 1
            with pytest.raises(LedgerReadOnly, match="another program has this ledger open for writing"):
                new_job(second)
        assert new_job(first) == 2  # the second one's end takes nothing from the first
        assert held_elsewhere(seat_of(path))
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]
    with Ledger.open(path, sole_writer=True) as third:
        assert (third.read_only, new_job(third)) == ("", 3)


def test_the_second_stays_read_only_until_it_is_opened_again(path: Path) -> None:
    """What it shows was read beside somebody who changed it."""
    first = Ledger.open(path, sole_writer=True)
    with Ledger.open(path, sole_writer=True) as second:
        first.close()
        with pytest.raises(LedgerReadOnly):
            new_job(second)
    with Ledger.open(path) as opened_again:
        assert len(opened_again.jobs()) == 1


def test_a_short_command_writes_where_nobody_is_the_sole_writer_and_else_is_told(path: Path) -> None:
    with Ledger.open(path) as one, Ledger.open(path) as other:
        assert (new_job(one), new_job(other), new_job(one)) == (2, 3, 4)
        with Ledger.open(path, sole_writer=True) as window:
            assert window.read_only == ""
            with pytest.raises(LedgerReadOnly):
                new_job(one)
        assert new_job(other) == 5


def test_what_is_only_added_is_written_beside_the_sole_writer_too(path: Path) -> None:
    with Ledger.open(path, sole_writer=True) as window, Ledger.open(path) as run:
        with run.adding() as session:
            session.connection().exec_driver_sql("UPDATE job SET cause = 'rust'").close()
        assert window.jobs()[0].cause == "rust"


@pytest.mark.skipif(os.name == "nt", reason="no such signal")
def test_a_program_that_was_killed_holds_nothing(path: Path) -> None:
    child = started(WINDOW, path)
    try:
        with Ledger.open(path, sole_writer=True) as second:
            assert second.read_only == OPEN_ELSEWHERE
    finally:
        child.send_signal(signal.SIGKILL)
        child.wait()
        close_pipes(child)
    assert seat_of(path).exists()  # it lies there, and says nothing
    with Ledger.open(path) as command:
        assert new_job(command) == 2
    with Ledger.open(path, sole_writer=True) as third:
        assert (third.read_only, new_job(third)) == ("", 3)
    assert not seat_of(path).exists()


def test_a_lock_taken_on_a_file_that_was_removed_meanwhile_does_not_count(tmp_path: Path) -> None:
    seat = tmp_path / "seat"
    first = take(seat)
    assert first is not None
    seat.unlink()
    second = take(seat)
    assert second is not None
    first.release()  # the file is another one's by now, and stays
    assert held_elsewhere(seat)
    second.release()
    assert not held_elsewhere(seat)


def test_a_backup_is_made_beside_the_sole_writer(path: Path) -> None:
    with Ledger.open(path, sole_writer=True) as window:
        made = back_up(path, VirtualClock())
        assert new_job(window) == 2
    assert made.jobs == 1


def test_an_older_ledger_is_not_changed_under_a_program_that_has_it_open(tmp_path: Path) -> None:
    old = old_ledger(tmp_path, REVISIONS[-1])
    held = take(seat_of(old))
    assert held is not None
    with held, pytest.raises(LedgerBusy, match="older program"):
        Ledger.open(old)
    with closing(sqlite3.connect(old)) as connection:
        assert connection.execute("SELECT version_num FROM alembic_version").fetchone() != (HEAD,)
    Ledger.open(old).close()
