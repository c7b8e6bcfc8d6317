"""Revisions: that they make the tables the code expects, and that a change of tables loses nothing."""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy.exc import OperationalError

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged, LedgerError, LedgerTooNew
from benchlog.ledger.backups import copy_verified, row_counts, troubles
from benchlog.ledger.lots import add_unit
from benchlog.ledger.migrating import check_migrations, migrate, newest, scripts
from benchlog.ledger.opening import APPLICATION_ID, HEAD
from benchlog.ledger.schema import Row
from benchlog.ledger.search import INDEX, INDEX_SQL, has_fts5
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import unlock, unlocks
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ledger.benches import BILGE_PUMP, MOTOR, a_lot

NEXT = '''"""A trial."""

import sqlalchemy as sa
from alembic import op

revision = "trial"
down_revision = "{head}"
branch_labels = None
depends_on = None


def upgrade() -> None:
{body}
'''

RECREATE_A_PARENT = """
    with op.batch_alter_table("item", recreate="always") as batch:
        batch.add_column(sa.Column("colour", sa.Text(), nullable=False, server_default=""))
"""
FAIL_AFTER_A_CHANGE = """
    op.create_table("shelf", sa.Column("id", sa.Integer(), primary_key=True))
    op.execute("UPDATE job SET complaint = ''")
    op.execute("SELECT * FROM nowhere")
"""
LOSE_ROWS = """
    op.execute("DELETE FROM entry")
    op.execute("DELETE FROM job")
"""
ORPHAN_ROWS = """
    op.execute("UPDATE job SET item_id = 4711")
"""

Trial = Callable[[str], Path]

REVISIONS = sorted(Path(__file__).parent.glob("revision_*.sql"))
"""Ledgers of two jobs, an entry and some runs, each as the program of that revision wrote it."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "workshop.ledger"
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        for _ in range(3):
            ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
    return path


@pytest.fixture
def trial(tmp_path: Path) -> Trial:
    """A folder of revisions with one more, whose change is given."""

    def folder_with(body: str) -> Path:
        folder = tmp_path / "50% revisions"
        shutil.copytree(scripts(), folder, ignore=shutil.ignore_patterns("__pycache__"))
        (folder / "versions" / "trial.py").write_text(NEXT.format(head=HEAD, body=body))
        return folder

    return folder_with


def complaints(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return [text for (text,) in connection.execute("SELECT complaint FROM job")]


def revision(path: Path) -> str:
    with closing(sqlite3.connect(path)) as connection:
        return str(connection.execute("SELECT version_num FROM alembic_version").fetchone()[0])


def test_the_revisions_make_the_tables_that_the_code_expects() -> None:
    assert check_migrations() == []


def test_the_head_in_the_code_is_the_newest_revision() -> None:
    assert newest() == HEAD


def test_the_check_sees_a_column_that_no_revision_makes(trial: Trial) -> None:
    assert any("colour" in difference for difference in check_migrations(trial(RECREATE_A_PARENT)))


def test_every_constraint_and_index_has_a_name() -> None:
    for table in Row.metadata.sorted_tables:
        assert all(constraint.name for constraint in table.constraints), table.name
        assert all(index.name for index in table.indexes), table.name


def test_an_older_ledger_is_changed_after_a_verified_copy_and_loses_no_row(path: Path, trial: Trial) -> None:
    copy = migrate(path, VirtualClock(), trial(RECREATE_A_PARENT))

    assert (revision(path), revision(copy)) == ("trial", HEAD)
    assert complaints(path) == complaints(copy) == ["hums"] * 3
    assert copy.name == f"workshop.ledger.revision-{HEAD}.20260101T000000000Z"
    with Ledger.open(path.with_name(copy.name)) as ledger:
        assert len(ledger.jobs()) == 3
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("SELECT count(*) FROM motor").fetchone() == (1,)
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []


def old_ledger(folder: Path, written: Path) -> Path:
    path = folder / "old.ledger"
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID:d}")
        connection.executescript(written.read_text(encoding="utf-8"))
    return path


def all_rows(path: Path) -> dict[str, list[dict[str, object]]]:
    """Every row of every table, by the names of its columns."""
    with closing(sqlite3.connect(path)) as connection:
        connection.row_factory = sqlite3.Row
        return {
            name: [dict(row) for row in connection.execute(f'SELECT * FROM "{name}"')]
            for name in row_counts(connection)
        }


@pytest.mark.parametrize("written", REVISIONS, ids=lambda path: path.stem)
def test_a_ledger_of_an_earlier_revision_keeps_every_row_and_every_column(tmp_path: Path, written: Path) -> None:
    old = old_ledger(tmp_path, written)
    before = all_rows(old)
    with Ledger.open(old, clock=VirtualClock()) as ledger:
        assert len(ledger.jobs()) == 2
    after = all_rows(old)
    for table, rows in before.items():
        same = [{name: row[name] for name in rows[0]} for row in after[table]] if rows else after[table]
        # What a job is found by follows from the rest and is made anew.
        assert [one | {"searched": ""} for one in same] == [one | {"searched": ""} for one in rows]
    (copy,) = tmp_path.glob("old.ledger.revision-*")
    assert all_rows(copy) == before
    with closing(sqlite3.connect(old)) as connection:
        assert troubles(connection) == []


def test_every_revision_before_this_one_has_such_a_ledger() -> None:
    assert [path.stem for path in REVISIONS] == [f"revision_{number:04d}" for number in range(1, int(HEAD))]


def test_what_freed_a_motor_is_told_of_runs_from_before_it_was_kept(tmp_path: Path) -> None:
    old = old_ledger(tmp_path, REVISIONS[1])
    with Ledger.open(old, clock=VirtualClock()) as ledger:
        fan, pump = ledger.jobs()
        assert [run.freed_rung for run in ledger.runs(pump.id)] == ["", "same way, 80 %"]
        assert (pump.last_outcome, fan.last_outcome) == ("freed", "open")


@pytest.mark.skipif(not has_fts5(), reason="this SQLite has no index that could be carried over")
def test_jobs_from_before_there_were_lots_are_repairs_and_their_index_still_finds_them(tmp_path: Path) -> None:
    old = old_ledger(tmp_path, REVISIONS[2])
    with closing(sqlite3.connect(old)) as connection:
        # As the program of that revision left it: with an index over the words of the jobs.
        connection.execute(INDEX_SQL)
        connection.execute(f"INSERT INTO {INDEX} ({INDEX}) VALUES ('rebuild')")
        connection.execute("PRAGMA user_version = 2")
        connection.commit()
        texts = connection.execute("SELECT searched FROM job ORDER BY id").fetchall()
    with Ledger.open(old, clock=VirtualClock()) as ledger:
        fan, pump = ledger.jobs()
        assert [job.purpose for job in (fan, pump)] == ["repair", "repair"]
        assert [run.unit for run in ledger.runs(pump.id)] == [None, None]
        assert [job.id for job in ledger.jobs(text="hose")] == [pump.id]
        assert [job.id for job in ledger.jobs(text="brush stuck")] == [fan.id]
        lot = a_lot(ledger)
        add_unit(ledger, lot, "CF-1")
        assert [job.id for job in ledger.jobs(text="CF-1")] == [lot.job.id]
    with closing(sqlite3.connect(old)) as connection:
        assert connection.execute("SELECT searched FROM job WHERE purpose = 'repair' ORDER BY id").fetchall() == texts
        assert connection.execute(f"SELECT count(*) FROM {INDEX}('bp')").fetchone() == (1,)
        assert troubles(connection) == []


@pytest.mark.parametrize(
    "wrong",
    [
        "UPDATE job SET purpose = 'selling'",
        "INSERT INTO unit (job_id, number, serial, utc) VALUES (1, 1, 'CF-9', '')",
        "UPDATE run SET unit_id = 4711",
        "INSERT INTO start_test (name, version, content, digest, utc, who) VALUES ('quick look', 1, '', '', '', '')",
        "INSERT INTO unit (job_id, number, serial, utc) VALUES (3, 2, 'CF-1', '')",
        "INSERT INTO lot_check (job_id, utc, kind, value, unit, passed, who) VALUES (3, '', 'warm', 0, '', 1, '')",
    ],
)
def test_a_ledger_brought_up_to_date_takes_nothing_that_the_tables_forbid(tmp_path: Path, wrong: str) -> None:
    old = old_ledger(tmp_path, REVISIONS[2])
    with Ledger.open(old, clock=VirtualClock()) as ledger:
        add_unit(ledger, a_lot(ledger), "CF-1")
    with closing(sqlite3.connect(old)) as connection:
        connection.execute("PRAGMA foreign_keys = ON")
        with pytest.raises(sqlite3.IntegrityError):
            connection.execute(wrong)


def test_a_ledger_of_revision_0001_comes_up_to_date_with_all_that_is_in_it(tmp_path: Path) -> None:
    old = old_ledger(tmp_path, REVISIONS[0])
    with Ledger.open(old, clock=VirtualClock()) as ledger:
        second, first = ledger.jobs()
        runs = ledger.runs(first.id)
        assert (first.complaint, second.cause) == ("hums, does not turn", "brush stuck")
        assert [entry.text for entry in ledger.entries(first.id)] == ["Liquid drained, and dry: done"]
        assert [(run.result.outcome, len(ledger.trace(run.id).volts)) for run in runs] == [("freed", 4), ("stopped", 4)]
        assert [len(ledger.events(run.id)) for run in runs] == [2, 2]
        assert unlocks(ledger) == []
        unlock(
            ledger,
            Settings(ceilings=Limits(volts=24.0), unlocked=Limits(volts=30.0)),
            first.id,
            who="dock foreman",
            why="a 24 V thing",
        )
    (copy,) = old.parent.glob("old.ledger.revision-0001.*")
    assert (revision(old), revision(copy)) == (HEAD, "0001")
    with closing(sqlite3.connect(old)) as new, closing(sqlite3.connect(copy)) as before:
        counts = {name: count for name, count in row_counts(new).items() if count}
        assert counts == row_counts(before) | {"unlock": 1}
        assert troubles(new) == troubles(before) == []


@pytest.mark.parametrize(
    ("body", "error", "what"),
    [
        (FAIL_AFTER_A_CHANGE, OperationalError, "nowhere"),
        (LOSE_ROWS, LedgerDamaged, "rows of job are gone"),
        (ORPHAN_ROWS, LedgerDamaged, "points to a missing row of item"),
    ],
)
def test_a_change_that_goes_wrong_leaves_the_ledger_as_it_was(
    path: Path, trial: Trial, body: str, error: type[Exception], what: str
) -> None:
    before = path.read_bytes()
    with pytest.raises(error, match=what):
        migrate(path, VirtualClock(), trial(body))
    assert path.read_bytes() == before
    (copy,) = path.parent.glob("*.revision-*")
    assert complaints(copy) == ["hums"] * 3


def test_a_ledger_of_an_unknown_revision_is_newer_and_not_copied(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '9000'")
    with pytest.raises(LedgerTooNew):
        migrate(path, VirtualClock())
    assert list(path.parent.iterdir()) == [path]


def test_a_copy_never_replaces_a_file_and_leaves_no_part_of_itself(path: Path) -> None:
    kept = path.with_name("copy")
    kept.write_text("mine")
    with pytest.raises(LedgerError, match="already"):
        copy_verified(path, kept)
    assert kept.read_text() == "mine"
    with pytest.raises(LedgerError):
        copy_verified(path.with_name("missing"), path.with_name("other"))
    assert {entry.name for entry in path.parent.iterdir()} == {path.name, "copy"}


def test_a_copy_of_a_damaged_ledger_does_not_count(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute(
            "UPDATE sqlite_master SET sql = replace(sql, 'item_id)', 'number)') WHERE name = 'ix_job_item_id'"
        )
    with pytest.raises(LedgerDamaged, match="a copy of it does not pass its check"):
        copy_verified(path, path.with_name("copy"))
    assert list(path.parent.iterdir()) == [path]
