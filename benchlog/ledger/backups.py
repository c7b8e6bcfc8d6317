"""Copies of the ledger that are proven before they count."""

import os
import sqlite3
from contextlib import closing
from pathlib import Path

from benchlog.errors import LedgerDamaged
from benchlog.ledger.connection import connect
from benchlog.ledger.sql_errors import translated


def copy_verified(ledger: Path, copy: Path) -> None:
    """Copies a whole ledger to `copy`, which must not exist, and checks the copy. Raises LedgerError.

    The copy has its name only once it is whole, checked and synced. Works while others read and write.
    """
    part = copy.with_name(copy.name + ".part")
    with translated(copy):
        if copy.exists():
            raise FileExistsError(0, "there is a file of this name already")
        os.close(os.open(part, os.O_CREAT | os.O_TRUNC | os.O_WRONLY, 0o600))
        try:
            with closing(connect(ledger)) as source, closing(connect(part)) as target:
                # Not a copy of the file's bytes: those may be in the middle of somebody's transaction.
                source.backup(target)
                with translated(ledger):
                    _verify(source, target, ledger)
            with part.open("rb+") as file:
                os.fsync(file.fileno())
            part.rename(copy)
        finally:
            part.unlink(missing_ok=True)


def _verify(source: sqlite3.Connection, target: sqlite3.Connection, ledger: Path) -> None:
    if trouble := troubles(target):
        raise LedgerDamaged(ledger, f"a copy of it does not pass its check: {'; '.join(trouble)}")
    if row_counts(source) != row_counts(target):
        raise LedgerDamaged(ledger, "a copy of it has other rows than it has itself")


def troubles(connection: sqlite3.Connection) -> list[str]:
    """What SQLite finds wrong with a file: damaged pages and indexes, rows that point to nothing. Empty when sound."""
    found = [text for (text,) in connection.execute("PRAGMA integrity_check(10)") if text != "ok"]
    orphans = connection.execute("PRAGMA foreign_key_check").fetchmany(10)
    return found + [f"a row of {child} points to a missing row of {parent}" for child, _, parent, _ in orphans]


def row_counts(connection: sqlite3.Connection) -> dict[str, int]:
    """Rows by table, without SQLite's and Alembic's own."""
    names = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
    return {
        name: connection.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0]
        for name in names
        if not name.startswith(("sqlite_", "alembic_"))
    }
