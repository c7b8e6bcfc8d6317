"""The ledger, held open: jobs, entries, runs, events and traces as plain values. One writer at a time."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from types import TracebackType

import msgspec
from sqlalchemy import select
from sqlalchemy.orm import Session

from benchlog.clock import Clock, SystemClock
from benchlog.errors import LedgerReadOnly, LedgerTooNew, Refused
from benchlog.ledger.connection import WRITING, open_engine
from benchlog.ledger.finding_jobs import Key, find_jobs
from benchlog.ledger.jobs import add_job, job_row, mark_changed
from benchlog.ledger.kicks import kicks_of_day
from benchlog.ledger.opening import HEAD, admit
from benchlog.ledger.rows import dense_of, entry_of, event_of, job_of, run_of, select_jobs, select_runs, trace_of
from benchlog.ledger.schema import DenseRow, EntryRow, EventRow, JobRow, RunRow, TraceRow
from benchlog.ledger.sql_errors import translated
from benchlog.ledger.wanted import Wanted
from benchlog.ledger.writer_lock import HeldLock, held_elsewhere, seat_of, take
from benchlog.records import Closing, DenseCurve, Entry, Event, Item, Job, JobState, Motor, Purpose, Run, TakenIn, Trace

OPEN_ELSEWHERE = (
    "another program has this ledger open for writing, mostly a window: "
    "here it can be read, not changed, until that is closed"
)


class Ledger:
    """Made by open(). May be used from any thread; every call is a short transaction of its own.

    Every call may raise LedgerError. Ids are the ledger's keys; a job's number is what people call it.
    """

    def __init__(self, path: Path, clock: Clock) -> None:
        self.path = path
        self.clock = clock
        self._engine = open_engine(path)
        self._writing_engine = self._engine.execution_options(**{WRITING: True})
        self._seat: HeldLock | None = None
        self.read_only = ""
        """Why nothing can be changed from here; "" where it can."""

    @classmethod
    def open(cls, path: Path, *, clock: Clock | None = None, sole_writer: bool = False) -> "Ledger":
        """Opens a ledger, making it where there is no file and bringing an older one up to date after a copy.

        `sole_writer`: nobody else changes it until close(). Where somebody is that already, `read_only` says so.

        Raises LedgerDamaged for a file that is not a ledger, which stays as it is; LedgerTooNew, LedgerReadOnly,
        LedgerBusy, LedgerFull; LedgerError for anything else the disk reports.
        """
        clock = clock or SystemClock()
        admit(path, clock)
        ledger = cls(path, clock)
        if sole_writer:
            with translated(path):
                ledger._seat = take(seat_of(path))
            ledger.read_only = "" if ledger._seat else OPEN_ELSEWHERE
        return ledger

    def close(self) -> None:
        """Lets go of the file. Idempotent."""
        self._engine.dispose()
        if self._seat is not None:
            self._seat.release()

    def __enter__(self) -> "Ledger":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A transaction that reads: all it sees is of one moment."""
        with translated(self.path), Session(self._engine) as session, session.begin():
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A transaction that writes, whole or not at all; it waits for another at its start.

        Raises LedgerReadOnly where another program is the sole writer.
        """
        if self._seat is None:
            with translated(self.path):
                if self.read_only or held_elsewhere(seat_of(self.path)):
                    raise LedgerReadOnly(self.path, OPEN_ELSEWHERE)
        with self.adding() as session:
            yield session

    @contextmanager
    def adding(self) -> Iterator[Session]:
        """As writing(), also beside a sole writer: only for what is added once and changes nothing, such as a run."""
        with translated(self.path), Session(self._writing_engine) as session, session.begin():
            # A newer program may have brought the file up to its own revision while this one had it open.
            revision = session.connection().exec_driver_sql("SELECT version_num FROM alembic_version").scalar()
            if revision != HEAD:
                raise LedgerTooNew(self.path, f"changed by another program: of revision {revision} now, not {HEAD}")
            yield session

    def new_job(
        self, *, item: Item, motor: Motor, complaint: str, load_state: str, taken_in: TakenIn | None = None
    ) -> Job:
        """An open job; its number is one above the highest."""
        with self.writing() as session:
            row = add_job(
                session,
                item=item,
                motor=motor,
                complaint=complaint,
                load_state=load_state,
                opened_utc=self.clock.utc(),
                taken_in=taken_in,
            )
            return self._job(session, row.id)

    def job(self, job_id: int) -> Job:
        """Raises Refused where there is none."""
        with self.reading() as session:
            return self._job(session, job_id)

    def job_by_number(self, number: int) -> Job:
        """Raises Refused where there is none."""
        with self.reading() as session:
            row = session.execute(select_jobs().where(JobRow.number == number)).one_or_none()
            if row is None:
                raise Refused(f"there is no job number {number}")
            return job_of(self.path, row)

    def jobs(self, *, text: str = "", limit: int = 100, before_number: int | None = None) -> list[Job]:
        """Newest first, at most `limit`, with numbers below `before_number`: the last one's number gives the next page.

        `text`: as in Wanted. Repairs, and with a text all that it is in.
        """
        after: Key | None = None
        if before_number is not None:
            with self.reading() as session:
                first = select(JobRow.id).where(JobRow.number >= before_number).order_by(JobRow.number).limit(1)
                key = session.scalar(first)
                after = None if key is None else ("", key)
        purpose = None if text.strip() else Purpose.REPAIR
        return find_jobs(self, Wanted(text=text, purpose=purpose), after, limit).jobs

    def close_job(self, job_id: int, closing: Closing) -> Job:
        """Closes an open job. Raises Refused for a closed one, which stays as it is: a correction is a new entry."""
        with self.writing() as session:
            row = job_row(session, job_id)
            if closing.warranty_days is not None and closing.warranty_days < 0:
                raise Refused(f"warranty: {closing.warranty_days} days")
            if row.state == JobState.CLOSED:
                raise Refused(f"job {row.tag} was closed at {row.closed_utc}; a correction is a new entry")
            row.state = JobState.CLOSED.value
            row.closed_utc = self.clock.utc()
            for name, value in msgspec.structs.asdict(closing).items():
                setattr(row, name, value)
            row.waiting_for, row.waiting_since_utc = "", None
            mark_changed(session, row, self.clock.utc())
            session.flush()
            return self._job(session, job_id)

    def add_entry(self, job_id: int, entry: Entry) -> None:
        """A line in a job's own record, open or closed. Raises Refused where there is no such job."""
        with self.writing() as session:
            job = job_row(session, job_id)
            session.add(EntryRow(job_id=job_id, **msgspec.to_builtins(entry)))
            mark_changed(session, job, self.clock.utc())

    def entries(self, job_id: int) -> list[Entry]:
        """Oldest first."""
        wanted = select(EntryRow).where(EntryRow.job_id == job_id).order_by(EntryRow.utc, EntryRow.id)
        with self.reading() as session:
            return [entry_of(self.path, row) for row in session.scalars(wanted)]

    def runs(self, job_id: int) -> list[Run]:
        """The runs of a job, in the order in which they began."""
        wanted = select_runs().where(RunRow.job_id == job_id).order_by(RunRow.started_utc, RunRow.id)
        with self.reading() as session:
            return [run_of(self.path, row) for row in session.execute(wanted)]

    def recent_runs(self, *, limit: int = 100) -> list[Run]:
        """The runs of all jobs, last to begin first."""
        wanted = select_runs().order_by(RunRow.started_utc.desc(), RunRow.id.desc()).limit(limit)
        with self.reading() as session:
            return [run_of(self.path, row) for row in session.execute(wanted)]

    def run(self, run_id: int) -> Run:
        """Raises Refused where there is none."""
        with self.reading() as session:
            row = session.execute(select_runs().where(RunRow.id == run_id)).one_or_none()
            if row is None:
                raise Refused(f"there is no run {run_id}")
            return run_of(self.path, row)

    def events(self, run_id: int) -> list[Event]:
        """In the order in which they were recorded."""
        wanted = select(EventRow).where(EventRow.run_id == run_id).order_by(EventRow.seq)
        with self.reading() as session:
            return [event_of(self.path, row) for row in session.scalars(wanted)]

    def trace(self, run_id: int) -> Trace:
        """Raises Refused where there is no such run, LedgerDamaged where its trace does not pass its checks."""
        with self.reading() as session:
            row = session.get(TraceRow, run_id)
            if row is None:
                raise Refused(f"there is no run {run_id}")
            return trace_of(self.path, row)

    def dense(self, run_id: int) -> list[DenseCurve]:
        """What the supply measured itself during a run, in the order of its starts; empty for most.

        Raises LedgerDamaged where a curve does not pass its checks.
        """
        wanted = select(DenseRow).where(DenseRow.run_id == run_id).order_by(DenseRow.seq)
        with self.reading() as session:
            return [dense_of(self.path, row) for row in session.scalars(wanted)]

    def kicks_on(self, job_id: int, utc_day: str) -> int:
        """Kicks given to a job on one UTC day, "2026-11-25": those of a run over midnight count on their own day."""
        with self.reading() as session:
            return kicks_of_day(self.path, session, job_id, date.fromisoformat(utc_day))

    def _job(self, session: Session, job_id: int) -> Job:
        row = session.execute(select_jobs().where(JobRow.id == job_id)).one_or_none()
        if row is None:
            raise Refused(f"there is no job with the key {job_id}")
        return job_of(self.path, row)
