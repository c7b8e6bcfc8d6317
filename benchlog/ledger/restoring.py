"""Puts a copy of the ledger in its place. At any moment the one or the other is there, whole; the old one is kept."""

import math
import os
import shutil
import sqlite3
from contextlib import ExitStack, closing, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import msgspec
from sqlalchemy.exc import SQLAlchemyError

from benchlog.bench.file_lock import lock_file
from benchlog.bench.journal import read_journal
from benchlog.clock import Clock
from benchlog.errors import JournalDamaged, LedgerBusy, LedgerDamaged, LedgerError, Refused
from benchlog.ledger.backups import (
    Backup,
    copy_verified,
    keep_originals,
    originals_of,
    sha256_of,
    store_of,
    sync_file,
    told_by,
)
from benchlog.ledger.connection import connect
from benchlog.ledger.filing import journals_of
from benchlog.ledger.off_by_hand import not_confirmed
from benchlog.ledger.opening import HEAD, look_at_header, look_for_tables, revision_of, revision_said, sync_folder
from benchlog.ledger.sql_errors import translated
from benchlog.ledger.store import Ledger
from benchlog.ledger.warmth import forgotten_s
from benchlog.ledger.writer_lock import seat_of, take
from benchlog.records import Run

_RECENT = 200
"""Runs of a quarter of an hour and more: a start takes some seconds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A copy that could be put in place. `utc`: when it was made, None where no record says so."""

    path: Path
    revision: str
    jobs: int
    utc: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Restored:
    """`kept`: the file that was there before, None where there was none. `set_aside`: journals of runs whose job the
    copy does not have. `trouble`: originals that could not be brought back."""

    source: Source
    kept: Path | None
    set_aside: tuple[Path, ...]
    trouble: tuple[str, ...]


def look(source: Path) -> Source:
    """What a copy is, checked against its record where it has one. Raises LedgerError."""
    revision = revision_of(source)
    record = None
    with translated(source):
        with suppress(FileNotFoundError, msgspec.MsgspecError):
            record = msgspec.json.decode(source.with_name(source.name + ".json").read_bytes(), type=Backup)
        if record is not None and sha256_of(source) != record.sha256:
            raise LedgerDamaged(source, "not what it was when it was made")
        try:
            _, jobs, _ = told_by(source)
        except sqlite3.Error as error:
            raise LedgerDamaged(source, f"not a whole ledger ({error})") from error
    return Source(path=source, revision=revision, jobs=jobs, utc=None if record is None else record.utc)


def restore(source: Path, ledger: Path, clock: Clock) -> Restored:
    """Puts a copy of `source`, checked, in the ledger's place; a ledger that is there keeps its content under a dated
    name. Works with a damaged ledger, and with none.

    An older one is brought up to date when it is next opened. Raises Refused; LedgerBusy where another program writes
    or a run is on; LedgerError. After any of them the ledger is as it was.
    """
    with translated(ledger):
        if ledger.exists() and source.exists() and ledger.samefile(source):
            raise Refused(f"{source}: that is the ledger itself")
    found = look(source)
    with translated(ledger), ExitStack() as ending:
        ledger.parent.mkdir(parents=True, exist_ok=True)
        seat = take(seat_of(ledger))
        if seat is None:
            raise LedgerBusy(ledger, "another program has it open for writing: close that first")
        ending.enter_context(seat)
        _refuse_while_running(ledger)
        new = ledger.with_name(f".{ledger.name}.restored")
        new.unlink(missing_ok=True)
        ending.callback(new.unlink, missing_ok=True)
        copy_verified(source, new)
        new_jobs, named = _jobs_of(new), told_by(new)[2]
        old_jobs = _refuse_what_would_be_forgotten(ledger, new, clock)
        trouble = keep_originals(store_of(source), originals_of(ledger), look=True)
        if missing := len(named - {one.stem for one in originals_of(ledger).rglob("*")}):
            trouble.append(f"originals of photos or files that are missing: {missing}")
        _refuse_while_running(ledger)  # copying may have taken minutes
        kept = _swap(ledger, new, clock, ending)
        aside = _set_aside(ledger, old_jobs, new_jobs, clock)
    return Restored(source=found, kept=kept, set_aside=aside, trouble=tuple(trouble))


def _swap(ledger: Path, new: Path, clock: Clock, ending: ExitStack) -> Path | None:
    kept = ledger.with_name(f"{ledger.name}.before-restore.{_stamp(clock)}")
    there = ledger.exists()
    if there:
        _hold(ledger, ending)
        try:
            os.link(ledger, kept)
        except FileExistsError:
            raise
        except OSError:  # a file system without links
            shutil.copyfile(ledger, kept)
            sync_file(kept)
    for suffix in ("-journal", "-wal", "-shm"):
        # SQLite would play what belongs to the old file into the new one; with the old one it stays of use.
        if (beside := ledger.with_name(ledger.name + suffix)).exists():
            os.replace(beside, kept.with_name(kept.name + suffix))
    os.replace(new, ledger)
    sync_folder(ledger.parent)
    return kept if there else None


def _hold(ledger: Path, ending: ExitStack) -> None:
    """Rolls back what a crash left half way, and keeps others from writing until the swap is done."""
    try:
        look_at_header(ledger)  # in another file SQLite would roll back as well
        connection = ending.enter_context(closing(connect(ledger)))
        connection.execute("BEGIN IMMEDIATE")
    except sqlite3.Error as error:
        if getattr(error, "sqlite_errorcode", 0) & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
            raise LedgerBusy(ledger, "another program is writing it") from error
        return  # so damaged that SQLite does not open it: nobody else writes it either
    except LedgerError:
        return
    if os.name == "nt":  # it replaces no file that is open
        connection.close()


def _refuse_while_running(ledger: Path) -> None:
    for journal in journals_of(ledger).glob("*.journal"):
        with suppress(FileNotFoundError), journal.open("rb+") as file:
            if not lock_file(file.fileno()):
                raise LedgerBusy(ledger, "a run is on: wait until it is over")


def _jobs_of(ledger: Path) -> dict[int, str]:
    """When each job was opened, by its key. Raises LedgerDamaged for what is not a whole ledger."""
    try:
        with closing(connect(ledger)) as connection:
            if revision_said(ledger, connection) == HEAD:
                look_for_tables(ledger, connection)
            return dict(connection.execute("SELECT id, opened_utc FROM job"))
    except sqlite3.Error as error:
        raise LedgerDamaged(ledger, f"not a whole ledger ({error})") from error


def _runs_of(ledger: Path) -> set[tuple[str, int]]:
    """When its runs began, and of which job; of any revision. A copy that can't be asked knows of none."""
    try:
        with closing(connect(ledger)) as connection:
            return set(connection.execute("SELECT started_utc, job_id FROM run"))
    except sqlite3.Error:
        return set()


def _refuse_what_would_be_forgotten(ledger: Path, new: Path, clock: Clock) -> dict[int, str]:
    """The jobs of the ledger that goes, if it can be read at all. Raises Refused for an output that nobody has said to
    be off, and while a motor is still warm from a run that the copy does not have."""
    try:
        look_at_header(ledger)  # in another file SQLite would roll back what lies beside it
        with closing(Ledger(ledger, clock)) as book:
            open_ends = not_confirmed(book)
            recent = book.recent_runs(limit=_RECENT)
        jobs = _jobs_of(ledger)
    except (LedgerError, sqlite3.Error, SQLAlchemyError, OSError):
        return {}  # what can't be read is what a restore is for
    if open_ends:
        one = open_ends[0]
        raise Refused(
            f"run {one.id} on {one.resource} ended without its output confirmed off, and nobody has said since that it "
            "was switched off by hand: say so first, or the copy forgets it"
        )
    known = _runs_of(new)
    for run in recent:
        if (run.started_utc, run.job) not in known and (left_s := _warm_for_s(run, clock.utc())) >= 0:
            wait = f"wait {math.ceil(left_s / 60) or 1} min"
            raise Refused(f"run {run.id} was just on, and the copy would not know how warm its motor is: {wait}")
    return jobs


def _warm_for_s(run: Run, now_utc: str) -> float:
    """s until what a run left in its motor is forgotten; below 0 where it is, where the run is yet to come, and where
    a damaged ledger does not say when it was."""
    try:
        ago_s = (datetime.fromisoformat(now_utc) - datetime.fromisoformat(run.started_utc)).total_seconds()
    except (ValueError, TypeError, OverflowError):
        return -1.0
    return run.duration_s + forgotten_s(run) - ago_s if ago_s >= 0 else -1.0


def _set_aside(ledger: Path, old: dict[int, str], new: dict[int, str], clock: Clock) -> tuple[Path, ...]:
    """Journals that name a job by a key that the copy does not have, or has for another job."""
    aside = []
    for journal in sorted(journals_of(ledger).glob("*.journal")):
        with suppress(OSError, JournalDamaged):
            job = read_journal(journal).begun.request.job
            if job is not None and (job not in new or old.get(job, new[job]) != new[job]):
                folder = journal.parent / f"before-restore.{_stamp(clock)}"
                folder.mkdir(exist_ok=True)
                aside.append(journal.rename(folder / journal.name))
    return tuple(aside)


def _stamp(clock: Clock) -> str:
    return "".join(letter for letter in clock.utc() if letter not in "-:.")
