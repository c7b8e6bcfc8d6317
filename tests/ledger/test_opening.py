"""The gate: what is let in, what is refused, and that what is refused stays as it is."""

import contextlib
import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError, LedgerTooNew, Refused
from benchlog.ledger.connection import connect
from benchlog.ledger.filing import file_journal
from benchlog.ledger.off_by_hand import not_confirmed
from benchlog.ledger.opening import HEAD
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import owner_layer, unlock, unlocks
from benchlog.records import Closing
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ledger.benches import BILGE_PUMP, MOTOR, leave_journal


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "workshop.ledger"


def filled(path: Path) -> int:
    """A ledger with one job and one run; the job's key."""
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
        file_journal(ledger, leave_journal(path.parent, "a", job=job))
        owner = Settings(ceilings=Limits(volts=24.0), unlocked=Limits(volts=30.0))
        unlock(ledger, owner, job, who="dock foreman", why="a 24 V thing")
    return job


def folder_of(path: Path) -> dict[str, bytes]:
    return {entry.name: entry.read_bytes() for entry in path.parent.iterdir() if entry.is_file()}


def refused(path: Path) -> LedgerError:
    """The error that opening ends in; nothing in the folder may have changed."""
    before = folder_of(path)
    with pytest.raises(LedgerError) as caught:
        Ledger.open(path)
    assert folder_of(path) == before
    assert caught.value.path == str(path)
    return caught.value


def sql(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for statement in statements:
            connection.execute(statement)


def test_a_missing_ledger_is_made_with_its_folder_and_nothing_else(tmp_path: Path) -> None:
    path = tmp_path / "new folder" / "100% Ærø #1?.ledger"
    with Ledger.open(path) as ledger:
        assert ledger.path == path
        assert ledger.jobs() == []
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]


def test_a_ledger_keeps_what_is_in_it_when_it_is_opened_again(path: Path) -> None:
    job = filled(path)
    before = path.read_bytes()
    with Ledger.open(path) as ledger:
        assert ledger.job(job).runs == 1
    assert path.read_bytes() == before
    assert list(folder_of(path)) == [path.name]


def test_every_connection_holds_to_its_pragmas(path: Path) -> None:
    filled(path)
    with closing(connect(path)) as connection:
        pragmas = ("foreign_keys", "journal_mode", "synchronous", "busy_timeout", "trusted_schema")
        values = [connection.execute(f"PRAGMA {name}").fetchone()[0] for name in pragmas]
        assert values == [1, "delete", 3, 3000, 0]
        with pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY"):
            connection.execute("DELETE FROM job")


def test_a_ledger_that_another_program_put_into_wal_mode_is_brought_back(path: Path) -> None:
    job = filled(path)
    sql(path, "PRAGMA journal_mode = WAL", "UPDATE job SET cause = 'rust'")
    with Ledger.open(path) as ledger:
        assert ledger.job(job).cause == "rust"
    assert list(folder_of(path)) == [path.name]


@pytest.mark.parametrize(
    "content", [b"", b"a shopping list\n", b"SQLite format 3\x00", b"SQLite format 3\x00" + b"\x00" * 4096]
)
def test_a_file_that_is_not_a_ledger_is_refused(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    assert isinstance(refused(path), LedgerDamaged)


@settings(max_examples=50, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(content=st.binary(max_size=300))
def test_any_other_bytes_are_refused(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    assert isinstance(refused(path), LedgerDamaged)


def test_a_database_of_another_program_is_refused_even_with_a_write_ahead_log_to_recover(path: Path) -> None:
    # With its connection still open the log stays; the refusal must not fold it into the file.
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("PRAGMA journal_mode = WAL")
        other.execute("CREATE TABLE recipe(name)")
        assert path.with_name(path.name + "-wal").stat().st_size > 0
        error = refused(path)
    assert isinstance(error, LedgerDamaged)
    assert "a database, but not a ledger" in error.what


@pytest.mark.skipif(os.name == "nt", reason="no such things")
def test_what_is_not_even_a_file_is_refused_without_waiting_for_it(path: Path) -> None:
    os.mkfifo(path)
    assert isinstance(refused(path), LedgerDamaged)
    path.unlink()
    path.mkdir()
    assert isinstance(refused(path), LedgerDamaged)


def test_a_folder_that_is_a_file_is_an_error_of_the_ledger(path: Path) -> None:
    path.write_text("x")
    with pytest.raises(LedgerError):
        Ledger.open(path / "inner.ledger")
    assert path.read_text() == "x"


def test_a_ledger_cut_short_is_refused(path: Path) -> None:
    filled(path)
    path.write_bytes(path.read_bytes()[:4096])
    assert isinstance(refused(path), LedgerDamaged)


def test_a_ledger_without_one_of_its_columns_is_refused(path: Path) -> None:
    filled(path)
    sql(path, "ALTER TABLE entry RENAME COLUMN who TO whom")
    error = refused(path)
    assert isinstance(error, LedgerDamaged)
    assert "entry has no who" in error.what


def test_a_ledger_that_would_change_its_own_runs_is_refused(path: Path) -> None:
    filled(path)
    sql(path, "CREATE TRIGGER later AFTER INSERT ON entry BEGIN UPDATE run SET outcome = 'freed'; END")
    error = refused(path)
    assert isinstance(error, LedgerDamaged)
    assert "later" in error.what


def test_a_ledger_that_names_no_revision_is_refused(path: Path) -> None:
    filled(path)
    sql(path, "DELETE FROM alembic_version")
    assert isinstance(refused(path), LedgerDamaged)
    sql(path, "DROP TABLE alembic_version")
    assert isinstance(refused(path), LedgerDamaged)


def test_a_newer_ledger_is_refused(path: Path) -> None:
    filled(path)
    sql(path, "UPDATE alembic_version SET version_num = '9000'")
    error = refused(path)
    assert isinstance(error, LedgerTooNew)
    assert "9000" in error.what


def test_a_ledger_that_became_newer_while_it_was_open_is_not_written(path: Path) -> None:
    job = filled(path)
    with Ledger.open(path) as ledger:
        sql(path, "UPDATE alembic_version SET version_num = '9000'")
        with pytest.raises(LedgerTooNew):
            ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
        assert ledger.job(job).cause == ""


def test_a_rollback_journal_without_its_ledger_is_not_rolled_into_a_new_one(path: Path) -> None:
    filled(path)
    path.with_name(path.name + "-journal").write_bytes(b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + b"\x00" * 600)
    path.unlink()
    error = refused(path)
    assert isinstance(error, LedgerDamaged)
    assert "-journal" in error.what


def test_a_ledger_locked_by_another_is_busy_and_usable_afterwards(path: Path) -> None:
    filled(path)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(LedgerBusy):
            Ledger.open(path)
        other.execute("ROLLBACK")
    with Ledger.open(path) as ledger:
        assert len(ledger.jobs()) == 1


def test_a_writer_that_has_to_wait_too_long_is_told_so_and_may_try_again(path: Path) -> None:
    job = filled(path)
    with Ledger.open(path) as ledger, closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        assert ledger.job(job).number == 1  # readers go on
        with pytest.raises(LedgerBusy):
            ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
        other.execute("ROLLBACK")
        assert ledger.job(job).cause == ""
        assert ledger.close_job(job, Closing(cause="rust", work_done="", prognosis="")).cause == "rust"


def test_a_ledger_moved_away_while_it_is_open_is_an_error_and_no_new_file_appears(path: Path) -> None:
    job = filled(path)
    with Ledger.open(path) as ledger:
        assert ledger.job(job).number == 1
        path.rename(path.with_name("elsewhere"))
        with pytest.raises(LedgerError, match="moved or removed"):
            ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
    assert not path.exists()


def test_opening_at_the_head_revision_imports_no_alembic_and_records_no_database(path: Path) -> None:
    filled(path)
    code = """
import sys
import benchlog.records
assert "sqlalchemy" not in sys.modules and "alembic" not in sys.modules
from pathlib import Path
from benchlog.ledger.store import Ledger
with Ledger.open(Path(sys.argv[1])) as ledger:
    assert len(ledger.jobs()) == 1
assert "alembic" not in sys.modules
"""
    subprocess.run(
        [sys.executable, "-c", code, str(path)], check=True, env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    )


def test_the_head_is_written_into_a_new_ledger(path: Path) -> None:
    filled(path)
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("SELECT version_num FROM alembic_version").fetchall() == [(HEAD,)]


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(data=st.data())
def test_a_ledger_with_damaged_bytes_gives_its_values_or_an_error_of_the_ledger(
    path: Path, data: st.DataObject
) -> None:
    if not path.with_name("sound").exists():
        filled(path)
        path.rename(path.with_name("sound"))
    content = bytearray(path.with_name("sound").read_bytes())
    for _ in range(data.draw(st.integers(1, 8))):
        at = data.draw(st.integers(0, len(content) - 1))
        content[at] = data.draw(st.integers(0, 255))
    path.write_bytes(content)
    path.with_name(path.name + "-journal").unlink(missing_ok=True)
    with contextlib.suppress(LedgerError, Refused), Ledger.open(path) as ledger:
        for job in ledger.jobs(text="hums"):
            ledger.runs(job.id)
            ledger.kicks_on(job.id, "2026-11-25")
        for run in ledger.recent_runs():
            ledger.events(run.id)
            assert len(ledger.trace(run.id).volts) == run.samples
        ledger.entries(1)
        unlocks(ledger)
        assert owner_layer(ledger, Settings(ceilings=Limits(volts=24.0)), 1).limits.volts == 24.0
        not_confirmed(ledger)
        ledger.job_by_number(1)
