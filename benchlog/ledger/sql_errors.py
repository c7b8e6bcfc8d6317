"""Translates what SQLite and the file system say into who can act on it. The only place that knows their codes."""

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DBAPIError

from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError, LedgerFull, LedgerReadOnly, Refused

_BY_CODE: dict[int, tuple[type[LedgerError], str]] = {
    sqlite3.SQLITE_BUSY: (LedgerBusy, "another program holds the ledger"),
    sqlite3.SQLITE_LOCKED: (LedgerBusy, "another part of the program holds the ledger"),
    sqlite3.SQLITE_FULL: (LedgerFull, "no space is left where the ledger lives"),
    sqlite3.SQLITE_READONLY: (LedgerReadOnly, "the file can't be written"),
    sqlite3.SQLITE_PERM: (LedgerReadOnly, "the file can't be written"),
    sqlite3.SQLITE_AUTH: (LedgerReadOnly, "the file can't be written"),
    # The file itself is opened by the gate's own look at it, so what can't be opened is the rollback journal beside it.
    sqlite3.SQLITE_CANTOPEN: (LedgerReadOnly, "the file or its folder can't be written"),
    sqlite3.SQLITE_CORRUPT: (LedgerDamaged, "the file is damaged"),
    # Values are checked before they are bound: a rule that fails is about what was in the file already.
    sqlite3.SQLITE_CONSTRAINT_CHECK: (LedgerDamaged, "it holds something that its own rules forbid"),
    sqlite3.SQLITE_CONSTRAINT_NOTNULL: (LedgerDamaged, "it holds something that its own rules forbid"),
    sqlite3.SQLITE_NOTADB: (LedgerDamaged, "not a ledger"),
    sqlite3.SQLITE_FORMAT: (LedgerDamaged, "not a ledger"),
    sqlite3.SQLITE_READONLY_DBMOVED: (LedgerError, "the file was moved or removed while it was open"),
    sqlite3.SQLITE_IOERR: (LedgerError, "the disk reported an error"),
}
"""By SQLite's whole or else its primary result code. Any other is a bug of this program and passes as it is."""

_BY_ERRNO: dict[int, tuple[type[LedgerError], str]] = {
    errno.EACCES: (LedgerReadOnly, "the file or its folder can't be written"),
    errno.EPERM: (LedgerReadOnly, "the file or its folder can't be written"),
    errno.EROFS: (LedgerReadOnly, "the disk can't be written"),
    errno.ENOSPC: (LedgerFull, "no space is left where the ledger lives"),
    errno.EDQUOT: (LedgerFull, "the quota is used up where the ledger lives"),
}


@contextmanager
def translated(path: Path) -> Iterator[None]:
    """Inside, errors of SQLite, SQLAlchemy and the file system about `path` become LedgerErrors.

    A value that SQLite can't take becomes Refused.
    """
    try:
        yield
    except DBAPIError as error:
        if isinstance(error.orig, sqlite3.Error) and (ours := _from_sqlite(path, error.orig)):
            raise ours from error
        raise
    except sqlite3.Error as error:
        if ours := _from_sqlite(path, error):
            raise ours from error
        raise
    except UnicodeDecodeError as error:
        # SQLite quotes what it found in a damaged file, and Python can't even read the complaint.
        raise LedgerDamaged(path, f"the file is damaged ({error})") from error
    except (UnicodeEncodeError, OverflowError) as error:
        # From binding a value: half a character pair in a text, or a number of more than 64 bits.
        raise Refused(f"this can't be kept in the ledger: {error}") from error
    except OSError as error:
        kind, what = _BY_ERRNO.get(error.errno or 0, (LedgerError, "the file can't be used"))
        raise kind(path, f"{what} ({error.strerror or error})") from error


def _from_sqlite(path: Path, error: sqlite3.Error) -> LedgerError | None:
    code = getattr(error, "sqlite_errorcode", None)
    if code is None:
        # Python's own: of this kind it has one, for text in the file that is not UTF-8. Its others are misuse.
        return (
            LedgerDamaged(path, f"the file is damaged ({error})") if type(error) is sqlite3.OperationalError else None
        )
    # The low byte is the primary code; the rest is detail.
    if found := _BY_CODE.get(code) or _BY_CODE.get(code & 0xFF):
        kind, what = found
        return kind(path, f"{what} ({error})")
    return None
