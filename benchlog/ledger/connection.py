"""How the ledger's file is connected to, whoever asks: the same pragmas, read back, and explicit transactions."""

import sqlite3
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import QueuePool

from benchlog.errors import LedgerError

BUSY_TIMEOUT_S = 3.0
"""How long a writer waits for another; a filing takes well under a second. Starting value of this project."""

MOST_BYTES = 256 * 1024 * 1024
"""The longest text or blob that is taken out of a file; the trace of a day at 100 readings a second is far below."""

WRITING = "ledger_writing"
"""Execution option of an engine whose transactions write."""


def connect(path: Path, *, foreign_keys: bool = True) -> sqlite3.Connection:
    """A connection to a file that is there already; never makes one. Raises sqlite3.Error."""
    connection = sqlite3.connect(
        # mode=rw: a ledger that was moved away is an error, not a new empty file.
        f"{path.absolute().as_uri()}?mode=rw",
        uri=True,
        timeout=BUSY_TIMEOUT_S,
        # None: the driver begins nothing by itself. In its own mode a CREATE TABLE outlives a rollback.
        isolation_level=None,
        # The pool hands a connection to one thread at a time, but not always to the same one.
        check_same_thread=False,
    )
    try:
        _set(connection, path, "foreign_keys", "ON" if foreign_keys else "OFF", int(foreign_keys))
        # A rollback journal, not a write-ahead log: SQLite 3.7.0 to 3.51.2 (but for 3.50.7 and 3.44.6) can damage a
        # file when two connections write and checkpoint a log at once, and Python often brings an older SQLite. The
        # ledger is written a few times an hour, so that readers who never wait would buy nothing. It is also one
        # file when nobody writes, and works on a network share.
        _set(connection, path, "journal_mode", "DELETE", "delete")
        # EXTRA is FULL and a sync of the folder after the commit. The journal of a run is removed right after the
        # commit that files it: after a power cut that commit must not turn out to be undone.
        _set(connection, path, "synchronous", "EXTRA", 3)
        if hasattr(connection, "setlimit"):
            connection.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, MOST_BYTES)
        # A file from elsewhere may define its own views and triggers; they get no function that touches the outside.
        _set(connection, path, "trusted_schema", "OFF", 0)
    except BaseException:
        connection.close()
        raise
    return connection


def open_engine(path: Path, *, foreign_keys: bool = True) -> Engine:
    """An engine over connect(). Transactions read, unless its execution options say WRITING."""
    engine = create_engine(
        "sqlite://", creator=lambda: connect(path, foreign_keys=foreign_keys), poolclass=QueuePool, pool_size=2
    )
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    # A transaction that reads first and writes later fails at once when another has written meanwhile, whatever the
    # timeout: a writer takes its lock at the start.
    writes = connection.get_execution_options().get(WRITING, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def _set(connection: sqlite3.Connection, path: Path, pragma: str, value: str, expected: object) -> None:
    # An unknown or refused pragma is silent: only what is read back counts.
    connection.execute(f"PRAGMA {pragma} = {value}").close()
    (got,) = connection.execute(f"PRAGMA {pragma}").fetchone()
    if got != expected:
        raise LedgerError(path, f"SQLite {sqlite3.sqlite_version} does not take {pragma} = {value}: it says {got}")
