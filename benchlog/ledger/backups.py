"""Copies of the ledger that are proven before they count; which of them stay; the day's own, made by itself.

Beside a ledger, in `<name>.backups/`: copies named by their UTC instant, each with a record `.json`, and `files/`, one
store of the originals for all of them. The originals are copied, each once: a link would be the same bytes on the disk,
damaged together. The store is added to and never cleared.
"""

import hashlib
import os
import re
import shutil
import sqlite3
import threading
import time
from collections.abc import Callable, Iterable
from contextlib import closing, suppress
from datetime import datetime
from pathlib import Path

import msgspec

from benchlog.clock import Clock
from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError
from benchlog.ledger.connection import connect
from benchlog.ledger.opening import revision_said, sync_folder
from benchlog.ledger.search import INDEX
from benchlog.ledger.sql_errors import translated
from benchlog.ledger.writer_lock import take

KEPT = ((7, "%Y-%m-%d"), (4, "%G-%V"), (12, "%Y-%m"))
"""How many days, ISO weeks and months keep their newest copy. UTC, as all days of the ledger."""

_PAGES = 1024
"""Copied in one go, 4 MB as a rule; between two the ledger's lock is let go of, so that a run is filed meanwhile."""

_PAUSE_S = 0.005
_MOST_STALLS, _MOST_FRESH_STARTS = 4, 3

_HASH_NAME = re.compile("[0-9a-f]{64}")


class Backup(msgspec.Struct, frozen=True, kw_only=True):
    """One copy that passed its check when it was made. `size`: bytes, without the originals. `trouble`: what of the
    originals could not be kept, "" as a rule. `there`: whether the file is still there and of that size."""

    path: str
    utc: str
    size: int
    sha256: str
    revision: str
    jobs: int
    trouble: str = ""
    there: bool = True


class Stopped(Exception):
    """A backup was told to stop; nothing of it is left."""


def folder_of(ledger: Path) -> Path:
    """Where a ledger's backups are."""
    return ledger.with_name(f"{ledger.name}.backups")


def originals_of(ledger: Path) -> Path:
    """Where the originals of a ledger's photos and files are, each named by its SHA-256."""
    return ledger.with_name(f"{ledger.name}.files")


def store_of(copy: Path) -> Path:
    """Where the originals of a copy are: the shared store of backups, or its own folder as for any ledger."""
    shared = copy.parent / "files"
    return shared if copy.parent.name.endswith(".backups") and shared.is_dir() else originals_of(copy)


def staying(made: Iterable[datetime]) -> set[datetime]:
    """Which copies stay: the newest of each of the last 7 days, 4 weeks and 12 months that have one."""
    oldest_first, stay = sorted(made), set[datetime]()
    for count, period in KEPT:
        newest = {one.strftime(period): one for one in oldest_first}
        stay |= set(sorted(newest.values())[-count:])
    return stay


def backups(ledger: Path) -> list[Backup]:
    """All that this program made by itself or on request, newest first. A record that can't be read is none."""
    found = []
    for record in folder_of(ledger).glob(f"{_escaped(ledger.name)}.*.json"):
        copy = record.with_suffix("")
        with suppress(OSError, msgspec.MsgspecError, ValueError):
            told = msgspec.json.decode(record.read_bytes(), type=Backup)
            datetime.fromisoformat(told.utc)
            if copy.name == _name(ledger, told.utc):
                there = copy.is_file() and copy.stat().st_size == told.size
                found.append(msgspec.structs.replace(told, path=str(copy), there=there))
    return sorted(found, key=lambda one: one.utc, reverse=True)


def last_good(ledger: Path) -> Backup | None:
    """The newest that is there, whole as far as its size tells."""
    return next((one for one in backups(ledger) if one.there), None)


def back_up(ledger: Path, clock: Clock, *, stop: threading.Event | None = None) -> Backup:
    """A verified copy in the ledger's own folder of backups, and the originals; then those go that need not stay.

    Works while others read and write, from any thread. Nothing is removed before the new one is whole, checked, synced
    and on record, and never what this program did not make. Raises LedgerError, Stopped.
    """
    folder = folder_of(ledger)
    with translated(folder):
        folder.mkdir(exist_ok=True)
        held = take(folder / "making")
        if held is None:
            raise LedgerBusy(ledger, "another backup of it is being made")
        with held:
            _clear(ledger)
            utc = clock.utc()
            copy = folder / _name(ledger, utc)
            if copy.exists():
                raise FileExistsError(0, "there is a backup of this very instant already")
            part = _part(copy)
            try:
                _copy(ledger, part, stop)
                trouble = keep_originals(originals_of(ledger), folder / "files")
                revision, jobs, named = told_by(part)
                if missing := len(named - {one.stem for one in (folder / "files").rglob("*")}):
                    trouble.append(f"originals of photos or files that are missing: {missing}")
                made = Backup(
                    path=str(copy),
                    utc=utc,
                    size=part.stat().st_size,
                    sha256=sha256_of(part),
                    revision=revision,
                    jobs=jobs,
                    trouble="; ".join(trouble),
                )
                write_durably(_record(copy), msgspec.json.encode(made))
                part.rename(copy)  # from here on it counts
                sync_folder(folder)
            finally:
                part.unlink(missing_ok=True)
            _let_go(ledger, made)
    return made


def due(ledger: Path, clock: Clock) -> bool:
    """Whether there is a ledger and no good backup of it from this UTC day."""
    today = clock.utc()[:10]
    return ledger.is_file() and not any(one.there and one.utc[:10] == today for one in backups(ledger))


class BackupOfTheDay(threading.Thread):
    """Makes the day's backup, where none was made yet, while the program goes on.

    `told` gets the backup, or a sentence where there is none; from this thread. A failure stops nothing.
    """

    def __init__(self, ledger: Path, clock: Clock, told: Callable[[Backup | str], None]) -> None:
        super().__init__(name="backup of the day", daemon=True)
        self._ledger, self._clock, self._told = ledger, clock, told
        self._stop_it = threading.Event()

    def run(self) -> None:
        try:
            if due(self._ledger, self._clock):
                self._told(back_up(self._ledger, self._clock, stop=self._stop_it))
        except Stopped:
            return
        except (LedgerError, sqlite3.Error, OSError) as error:
            self._told(f"no backup today: {error}")

    def stop(self) -> None:
        """Before the program ends: what is not done is left for the next start."""
        self._stop_it.set()
        self.join(timeout=5.0)


def copy_verified(ledger: Path, copy: Path) -> None:
    """Copies a whole ledger to `copy`, which must not exist, and checks the copy. Raises LedgerError.

    The copy has its name only once it is whole, checked and synced. Works while others read and write.
    """
    part = copy.with_name(f".{copy.name}.part")
    with translated(copy):
        if copy.exists():
            raise FileExistsError(0, "there is a file of this name already")
        try:
            _copy(ledger, part)
            part.rename(copy)
        finally:
            part.unlink(missing_ok=True)


def keep_originals(originals: Path, store: Path, *, look: bool = False) -> list[str]:
    """Copies the originals that `store` does not have yet, or not whole. What is not what its name says stays out, and
    is told.

    `look`: also into those that are there with the right size, each of which is read for it. Raises OSError.
    """
    trouble = []
    for original in sorted(originals.rglob("*")):
        kept = store / original.relative_to(originals)
        if not original.is_file() or original.is_symlink() or not _HASH_NAME.fullmatch(original.stem):
            continue
        whole = kept.is_file() and kept.stat().st_size == original.stat().st_size
        if whole and (not look or sha256_of(kept) == original.stem):
            continue
        kept.parent.mkdir(parents=True, exist_ok=True)
        part = _part(kept)
        try:
            shutil.copyfile(original, part)
            if sha256_of(part) != original.stem:
                trouble.append(f"{original.name} is not what its name says")
                continue
            sync_file(part)
            part.replace(kept)
        finally:
            part.unlink(missing_ok=True)
        sync_folder(kept.parent)
    return trouble


def sha256_of(path: Path) -> str:
    """In hexadecimal. Raises OSError."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def sync_file(path: Path) -> None:
    """Its bytes, made durable. Raises OSError."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def write_durably(path: Path, content: bytes) -> None:
    """A small file, whole or not at all. Raises OSError."""
    part = _part(path)
    try:
        part.write_bytes(content)
        sync_file(part)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def _copy(ledger: Path, part: Path, stop: threading.Event | None = None) -> None:
    # The ledger itself is never opened but by SQLite: closing it would take away the locks that this process has on it.
    with translated(ledger):
        opened = connect(ledger)
    with closing(opened) as source:
        os.close(os.open(part, os.O_CREAT | os.O_TRUNC | os.O_WRONLY, 0o600))
        with closing(connect(part)) as target:
            _fill(source, target, ledger, stop)
    sync_file(part)


def _fill(source: sqlite3.Connection, target: sqlite3.Connection, ledger: Path, stop: threading.Event | None) -> None:
    (version,) = source.execute("PRAGMA data_version").fetchone()
    # Not a copy of the file's bytes: those may be in the middle of somebody's transaction.
    _transfer(source, target, ledger, stop)
    with translated(ledger):
        _verify(source, target, ledger, version)


class _BegunAnew(Exception):
    pass


def _transfer(
    source: sqlite3.Connection, target: sqlite3.Connection, ledger: Path, stop: threading.Event | None
) -> None:
    last, stalls, fresh_starts = -1, 0, 0

    def went_on(_: int, remaining: int, __: int) -> None:
        nonlocal last, stalls, fresh_starts
        if stop is not None and stop.is_set():
            raise Stopped
        stalls = stalls + 1 if remaining == last else 0
        fresh_starts += remaining > last >= 0
        last = remaining
        if stalls > _MOST_STALLS:
            raise LedgerBusy(ledger, "another program holds it")
        if fresh_starts > _MOST_FRESH_STARTS:
            raise _BegunAnew
        if remaining:
            time.sleep(_PAUSE_S)

    try:
        source.backup(target, pages=_PAGES, progress=went_on)
    except _BegunAnew:
        # SQLite begins anew whenever somebody has written. Now in one go: who writes waits for it.
        last, fresh_starts = -1, 0
        source.backup(target, pages=-1, progress=went_on)


def _verify(source: sqlite3.Connection, target: sqlite3.Connection, ledger: Path, version: int) -> None:
    if trouble := troubles(target):
        raise LedgerDamaged(ledger, f"a copy of it does not pass its check: {'; '.join(trouble)}")
    rows = row_counts(source)
    # Comparable only where nobody has written since the copy began.
    same = source.execute("PRAGMA data_version").fetchone() == (version,)
    if same and rows != row_counts(target):
        raise LedgerDamaged(ledger, "a copy of it has other rows than it has itself")


def troubles(connection: sqlite3.Connection) -> list[str]:
    """What SQLite finds wrong with a file: damaged pages and indexes, rows that point to nothing. Empty when sound."""
    found = [text for (text,) in connection.execute("PRAGMA integrity_check(10)") if text != "ok"]
    orphans = connection.execute("PRAGMA foreign_key_check").fetchmany(10)
    return found + [f"a row of {child} points to a missing row of {parent}" for child, _, parent, _ in orphans]


def row_counts(connection: sqlite3.Connection) -> dict[str, int]:
    """Rows by table, without SQLite's and Alembic's own, and without the index of the search: it is made anew."""
    names = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
    return {
        name: connection.execute("SELECT count(*) FROM " + '"' + name.replace('"', '""') + '"').fetchone()[0]
        for name in names
        if not name.startswith(("sqlite_", "alembic_", INDEX))
    }


def told_by(copy: Path) -> tuple[str, int, set[str]]:
    """The revision of a copy, how many jobs it holds, and which originals it names."""
    with closing(connect(copy)) as connection:
        tables = row_counts(connection)
        files = connection.execute("SELECT sha256 FROM file").fetchall() if "file" in tables else []
        return revision_said(copy, connection), tables.get("job", 0), {str(name) for (name,) in files}


def _let_go(ledger: Path, made: Backup) -> None:
    good = [one for one in backups(ledger) if one.there]
    stay = staying(datetime.fromisoformat(one.utc) for one in good)
    for one in good:
        # One with more jobs than the newest never goes: a ledger that was lost and begun anew must not push it out.
        fuller = one.jobs > made.jobs
        if one.path != made.path and not fuller and datetime.fromisoformat(one.utc) not in stay:
            # The copy first: a record without one is cleared later, one without a record would lie there for ever.
            Path(one.path).unlink(missing_ok=True)
            _record(Path(one.path)).unlink(missing_ok=True)


def _clear(ledger: Path) -> None:
    """What a backup that was cut short has left."""
    for part in folder_of(ledger).glob(f"{_escaped(ledger.name)}.*.part*"):
        part.unlink(missing_ok=True)
    for one in backups(ledger):
        if not Path(one.path).exists():
            _record(Path(one.path)).unlink(missing_ok=True)


def _name(ledger: Path, utc: str) -> str:
    return f"{ledger.name}.{re.sub('[-:.]', '', utc)}"


def _record(copy: Path) -> Path:
    return copy.with_name(copy.name + ".json")


def _part(path: Path) -> Path:
    return path.with_name(path.name + ".part")


def _escaped(name: str) -> str:
    return re.sub(r"([*?[])", r"[\1]", name)
