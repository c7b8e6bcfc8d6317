"""The gate: whether a file may be used as the ledger, making it where there is none and bringing an old one up to date.

A ledger of this program's own revision passes without Alembic being imported.
"""

import os
import sqlite3
import uuid
from contextlib import closing
from pathlib import Path

from benchlog.clock import Clock
from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError, LedgerReadOnly, LedgerTooNew
from benchlog.ledger.connection import connect
from benchlog.ledger.schema import Row
from benchlog.ledger.search import INDEX, INDEX_SQL, make_search, search_holds
from benchlog.ledger.sql_errors import translated
from benchlog.ledger.writer_lock import held_elsewhere, seat_of
from drivers.foreign import inert

HEAD = "0005"
"""The revision this program reads and writes."""

APPLICATION_ID = 0x626E_6C67
"""In the header of every ledger, so that another program's database is told apart before SQLite touches it."""

_MAGIC = b"SQLite format 3\x00"
_HEADER_BYTES = 100


def admit(path: Path, clock: Clock) -> None:
    """Returns when `path` is a ledger of revision HEAD that can be written. Raises LedgerError.

    A file that is not a ledger is not changed by a single byte, nor is anything put beside it.
    """
    with translated(path):
        if not path.exists():
            _create(path)
        look_at_header(path)
        with closing(connect(path)) as connection:
            revision = revision_said(path, connection)
            refuse_newer(path, revision)
            _refuse_foreign(path, connection)  # before a migration would run its triggers
            _probe_writing(connection)
        if revision != HEAD:
            _refuse_backup(path)
            if held_elsewhere(seat_of(path)):
                raise LedgerBusy(path, f"of revision {revision}, and open in an older program: close that one first")
            # Only now: Alembic takes longer to import than all the rest of opening.
            from benchlog.ledger.migrating import migrate

            migrate(path, clock)
        with closing(connect(path)) as connection:
            look_for_tables(path, connection)
            found = search_holds(connection)
        if not found:
            _refuse_backup(path)
            make_search(path)


def revision_of(path: Path) -> str:
    """The revision of a ledger that this program can read or bring up to date. Nothing is changed.

    Raises LedgerDamaged for what is not a ledger, LedgerTooNew for what a newer program wrote, LedgerError. Not for a
    ledger that this process has open: see backups._copy.
    """
    with translated(path):
        if not path.exists():
            raise LedgerError(path, "there is no such file")
        look_at_header(path)
        with closing(connect(path)) as connection:
            revision = revision_said(path, connection)
            refuse_newer(path, revision)
            _refuse_foreign(path, connection)
    return revision


def refuse_newer(path: Path, revision: str) -> None:
    """Revisions are numbers of four digits. Raises LedgerTooNew with both."""
    if revision > HEAD:
        told = inert(f"{revision:.20}")
        raise LedgerTooNew(path, f"written by a newer program: it is of revision {told}, this program goes to {HEAD}")


def _refuse_backup(path: Path) -> None:
    if path.absolute().parent.name.endswith(".backups"):
        raise LedgerReadOnly(path, "a backup, which stays as it is: restore it, or copy it elsewhere to look into it")


def _create(path: Path) -> None:
    # Made under another name and moved whole: a crash on the way leaves no half-made ledger, and an empty file is
    # never mistaken for one.
    from benchlog.ledger.migrating import build

    for suffix in ("-journal", "-wal"):
        if path.with_name(path.name + suffix).exists():
            # SQLite would roll the old file's last transaction back into the new one.
            raise LedgerDamaged(path, f"the ledger is gone, but {path.name}{suffix} is there: move it away first")
    if any(path.with_name(f"{path.name}.backups").glob("*.json")):
        # An empty one in its place would hide that it is gone.
        raise LedgerDamaged(path, "the ledger is gone, but its backups are there: restore one, or move them away first")
    path.parent.mkdir(parents=True, exist_ok=True)
    new = path.with_name(f".{path.name}.{uuid.uuid4().hex}.new")
    os.close(os.open(new, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
    try:
        build(new, application_id=APPLICATION_ID)
        _move_in_place(new, path)
    finally:
        new.unlink(missing_ok=True)
    sync_folder(path.parent)


def _move_in_place(new: Path, path: Path) -> None:
    try:
        os.link(new, path)  # unlike a rename it never replaces what another program has just made there
    except FileExistsError:
        pass
    except OSError:
        new.rename(path)  # a file system without links


def sync_folder(folder: Path) -> None:
    """The names in a folder, made durable. Windows can't open a folder and syncs names by itself."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def look_at_header(path: Path) -> None:
    """Raises LedgerDamaged for what is not a ledger. Not for a ledger that this process has open."""
    if not path.is_file():
        raise LedgerDamaged(path, "not a file")
    with path.open("rb") as file:
        header = file.read(_HEADER_BYTES)
    if len(header) < _HEADER_BYTES or not header.startswith(_MAGIC):
        raise LedgerDamaged(path, "not a ledger")
    if int.from_bytes(header[68:72]) != APPLICATION_ID:
        raise LedgerDamaged(path, "a database, but not a ledger")
    if not 1 <= int.from_bytes(header[44:48]) <= 4:
        # SQLite has no code of its own for this. Source: sqlite.org/fileformat2, 1.3.10.
        raise LedgerDamaged(path, "its header is damaged")


def revision_said(path: Path, connection: sqlite3.Connection) -> str:
    """What a file says it is of. Raises LedgerDamaged where it says nothing."""
    if "alembic_version" in _tables(connection):
        rows = connection.execute("SELECT version_num FROM alembic_version").fetchall()
        if len(rows) == 1 and isinstance(rows[0][0], str):
            return rows[0][0]
    raise LedgerDamaged(path, "it does not say which revision it is of")


def look_for_tables(path: Path, connection: sqlite3.Connection) -> None:
    """Raises LedgerDamaged where a table of this revision lacks something."""
    for table in Row.metadata.sorted_tables:
        found = {row[1] for row in connection.execute(f"PRAGMA table_info({table.name})")}
        if missing := sorted(set(table.columns.keys()) - found):
            raise LedgerDamaged(path, f"its table {table.name} has no {', '.join(missing)}")


def _refuse_foreign(path: Path, connection: sqlite3.Connection) -> None:
    # What a trigger does, nobody asked for: a filed run could change by itself.
    foreign = connection.execute(
        "SELECT name FROM sqlite_master"
        " WHERE type IN ('trigger', 'view') OR sql LIKE 'CREATE VIRTUAL%' AND (name, sql) <> (?, ?)",
        (INDEX, INDEX_SQL),
    ).fetchone()
    if foreign is not None:
        name = inert(f"{foreign[0]:.80}")
        raise LedgerDamaged(path, f"it has a trigger, view or virtual table, {name}, that is not this program's")


def _tables(connection: sqlite3.Connection) -> set[str]:
    return {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}


def _probe_writing(connection: sqlite3.Connection) -> None:
    # Only SQLite's own answer counts: permissions mean nothing to root, and say nothing about a disk mounted
    # read-only. The write takes the lock and makes the rollback journal in the folder; undone, the file is as it was.
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    connection.execute("BEGIN IMMEDIATE")
    try:
        connection.execute(f"PRAGMA user_version = {int(version)}")
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
