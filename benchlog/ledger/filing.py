"""Files a run's journal with its job, in one transaction, once, and then removes the journal.

A journal that a crash left behind is filed up to its last whole block, as a run that was stopped. What a rescue
process wrote beside it, `<uid>.journal.rescue`, becomes the run's last event.
"""

import logging
import math
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import msgspec
import numpy as np
from sqlalchemy import select
from sqlalchemy.orm import Session

from benchlog.bench.file_lock import lock_file
from benchlog.bench.frames import Request
from benchlog.bench.journal import JournalContents, read_journal
from benchlog.errors import JournalDamaged, Refused
from benchlog.ledger.dense_codec import encode_dense
from benchlog.ledger.jobs import add_job, mark_changed
from benchlog.ledger.run_record import Rescue, began_utc, duration_s, events_of, read_rescue, result_of
from benchlog.ledger.schema import DenseRow, EntryRow, EventRow, JobRow, RunRow, TraceRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.trace_codec import MAX_SAMPLES, encode
from benchlog.outcome import Outcome, RunResult
from benchlog.records import STAGE_OF, TICK_S, Event, EventKind, Item, Motor, Purpose, RunKind, Stage

_log = logging.getLogger(__name__)

UNNAMED = Item(kind="motor")
_MEASURING = (RunKind.START_UP, RunKind.CHECK)
"""What a run without a job was about, where nobody said."""

RESCUE_SUFFIX = ".rescue"


@dataclass(frozen=True, slots=True, kw_only=True)
class Filed:
    """Where a run went. `job`: the job's number; `job_id`, `run`: keys of the ledger."""

    job: int
    job_id: int
    run: int
    outcome: Outcome


def journals_of(ledger: Path) -> Path:
    """The folder of a ledger's journals, beside it."""
    return ledger.with_name(f"{ledger.name}-journals")


def rescue_record_of(journal: Path) -> Path:
    """Where a rescue process writes what it did for the run of a journal."""
    return journal.with_name(journal.name + RESCUE_SUFFIX)


def file_journal(ledger: Ledger, journal: Path) -> Filed:
    """Files the run that a journal holds and removes the journal. A run filed before is found again by its uid.

    The caller knows that nobody writes the journal any more. Raises LedgerError, JournalDamaged, OSError; Refused where
    the run's job is not in this ledger or less of the run was filed before than the journal holds. After any of them
    the journal is where it was.
    """
    try:
        filed, told = _commit(ledger, journal)
    except FileNotFoundError:
        if (before := _filed_before(ledger, journal.stem)) is None:
            raise
        return before  # another program has filed it at its start
    _remove(journal, with_rescue=told)
    return filed


def _filed_before(ledger: Ledger, uid: str) -> Filed | None:
    with ledger.reading() as session:
        run = session.scalars(select(RunRow).where(RunRow.uid == uid)).one_or_none()
        return None if run is None else _filed(session.get_one(JobRow, run.job_id), run)


def warn(left: Path, problem: str) -> None:
    """What is done about a file that can't be filed, unless the caller does more."""
    _log.warning("left where it is: %s: %s", left.name, problem)


def file_left_behind(ledger: Ledger, folder: Path, *, report: Callable[[Path, str], None] = warn) -> list[Filed]:
    """Files every journal of a folder that nobody is writing, oldest first.

    One that can't be filed stays where it is and goes to `report` with the reason. Raises LedgerError: then the rest
    could not be filed either.
    """
    filed = []
    for journal in sorted(folder.glob("*.journal"), key=_age):
        try:
            if done := _file_unless_written(ledger, journal):
                filed.append(done)
        except FileNotFoundError:
            continue  # another program has filed it meanwhile
        except (JournalDamaged, Refused, OSError) as error:
            report(journal, str(error))
    for record in sorted(folder.glob(f"*.journal{RESCUE_SUFFIX}")):
        if not record.with_suffix("").exists():
            _file_late_rescue(ledger, record, report)
    return filed


def _age(journal: Path) -> tuple[float, str]:
    try:
        return journal.stat().st_mtime, journal.name
    except FileNotFoundError:
        return 0.0, journal.name


def _file_unless_written(ledger: Ledger, journal: Path) -> Filed | None:
    with journal.open("rb+") as file:
        # A writer locks its journal before it writes the first byte: an empty one may be about to be locked, and
        # taking the lock here would leave that writer without.
        if not file.read(1):
            raise JournalDamaged(f"{journal}: empty")
        if not lock_file(file.fileno()):
            return None
        filed, told = _commit(ledger, journal)
    # After the file is closed: Windows removes no open file.
    _remove(journal, with_rescue=told)
    return filed


def _commit(ledger: Ledger, journal: Path) -> tuple[Filed, bool]:
    """Where the run went, and whether a rescue's word is part of it."""
    contents = read_journal(journal)
    began = began_utc(contents)
    if began is None:
        raise JournalDamaged(f"{journal}: its head does not say when the run began")
    if len(contents.trace.sent) > MAX_SAMPLES:
        raise Refused(f"{journal}: {len(contents.trace.sent)} samples are more than the {MAX_SAMPLES} of a trace")
    rescue = read_rescue(rescue_record_of(journal))
    request = contents.begun.request
    trace_row, dense_rows = _trace_row(contents), _dense_rows(contents)
    with ledger.adding() as session:
        if (before := session.scalars(select(RunRow).where(RunRow.uid == request.uid)).one_or_none()) is not None:
            _refuse_shorter(session, before, journal, contents)
            return _filed(session.get_one(JobRow, before.job_id), before), False
        unit = None if request.unit is None else session.get(UnitRow, request.unit)
        if unit is not None and request.unit_serial not in ("", unit.serial):
            unit = None
        job = _job_of(session, request, unit, journal, ledger.clock.utc())
        events = events_of(contents, rescue)
        run = _run_row(contents, began, rescue, events)
        run.job_id = job.id
        if unit is not None and unit.job_id == job.id:
            run.unit_id = unit.id
        session.add(run)
        session.flush()
        if run.unit_id != request.unit:
            # What it measured counts all the same; whose it was, a person has to say.
            text = f"Run {run.id} was to be of unit {request.unit}, which is not one of this job: kept without a unit"
            stage = STAGE_OF[request.kind].value
            session.add(EntryRow(job_id=job.id, utc=ledger.clock.utc(), stage=stage, text=text, who=""))
        _add_to_run(session, run, events, [trace_row, *dense_rows])
        mark_changed(session, job, ledger.clock.utc())
        return _filed(job, run), rescue is not None


def _job_of(session: Session, request: Request, unit: UnitRow | None, journal: Path, utc: str) -> JobRow:
    """The run's job: the one it names, else the lot of its unit, else a new one."""
    key = request.job if request.job is not None or unit is None else unit.job_id
    if key is None:
        return add_job(
            session,
            item=request.item or UNNAMED,
            motor=Motor(rated_volts=request.rated_volts),
            complaint=request.complaint,
            load_state=request.load_state,
            opened_utc=utc,
            purpose=Purpose.MEASURING if request.kind in _MEASURING else Purpose.REPAIR,
        )
    if (found := session.get(JobRow, key)) is not None:
        return found
    raise Refused(f"{journal}: its job, with the key {key}, is not in this ledger")


def _add_to_run(session: Session, run: RunRow, events: list[Event], curves: list[TraceRow | DenseRow]) -> None:
    for seq, event in enumerate(events):
        values = msgspec.json.encode(event.values).decode()
        session.add(
            EventRow(run_id=run.id, seq=seq, t_s=event.t_s, kind=event.kind.value, text=event.text, values=values)
        )
    for row in curves:
        row.run_id = run.id
        session.add(row)


def _freed_rung(result: RunResult, events: list[Event], rated_volts: float) -> str:
    """Name and share of the rated volts of the last rung, where it came free: "same way, 80 %"."""
    rungs = [
        event.values for event in events if event.kind is EventKind.STEP and {"rung", "volts"} <= set(event.values)
    ]
    if result.outcome is not Outcome.FREED or not rungs:
        return ""
    return f"{rungs[-1].get('name', '')}, {float(rungs[-1]['volts'] or 0.0) / rated_volts:.0%}".replace("%", " %")


def _run_row(contents: JournalContents, began: str, rescue: Rescue | None, events: list[Event]) -> RunRow:
    result = result_of(contents, rescue)
    request, armed = contents.begun.request, contents.armed
    return RunRow(
        uid=request.uid,
        kind=request.kind.value,
        started_utc=began,
        duration_s=duration_s(contents),
        resource=request.resource,
        identity=armed.identity if armed else "",
        dialect=armed.dialect if armed else "",
        rated_volts=request.rated_volts,
        load_state=request.load_state,
        sequence_name=request.sequence.name,
        request=msgspec.json.encode(request).decode(),
        ceilings=msgspec.json.encode(armed.ceilings if armed else None).decode(),
        program=contents.begun.program,
        complete=contents.ending is not None,
        freed_rung=_freed_rung(result, events, request.rated_volts),
        **msgspec.to_builtins(result),
    )


def _trace_row(contents: JournalContents) -> TraceRow:
    coded = encode(contents.trace)
    return TraceRow(samples=coded.samples, format=coded.format, checksum=coded.checksum, data=coded.data)


def _dense_rows(contents: JournalContents) -> list[DenseRow]:
    rows = []
    for seq, (number, block) in enumerate(contents.dense):
        samples = max(len(block.volts), len(block.amps))
        volts, amps = (
            np.array([*column, *[math.nan] * (samples - len(column))], dtype=np.float64)
            for column in (block.volts, block.amps)
        )
        coded = encode_dense(volts, amps)
        rows.append(
            DenseRow(
                seq=seq,
                number=number,
                began_s=block.began * TICK_S,
                u_began_s=block.u_began_s if math.isfinite(block.u_began_s) else 0.0,
                interval_s=block.interval_s if math.isfinite(block.interval_s) else 0.0,
                samples=coded.samples,
                format=coded.format,
                checksum=coded.checksum,
                data=coded.data,
            )
        )
    return rows


def _refuse_shorter(session: Session, run: RunRow, journal: Path, contents: JournalContents) -> None:
    # A filed run is never edited, and the journal must not go: it is all there is of the rest.
    samples = session.scalar(select(TraceRow.samples).where(TraceRow.run_id == run.id)) or 0
    if samples < len(contents.trace.sent) or (contents.ending is not None and not run.complete):
        raise Refused(f"{journal}: run {run.id} was filed from it when it was shorter")


def _filed(job: JobRow, run: RunRow) -> Filed:
    return Filed(job=job.number, job_id=job.id, run=run.id, outcome=Outcome(run.outcome))


def _file_late_rescue(ledger: Ledger, record: Path, report: Callable[[Path, str], None]) -> None:
    # The journal was filed before the rescue had done its work. The run stays as it is; its job gets a line.
    uid = record.name.removesuffix(f".journal{RESCUE_SUFFIX}")
    try:
        rescue = read_rescue(record)
    except OSError as error:
        report(record, str(error))
        return
    if rescue is None:
        return
    with ledger.adding() as session:
        run = session.scalars(select(RunRow).where(RunRow.uid == uid)).one_or_none()
        if run is not None:
            off = "output confirmed off" if rescue.confirmed_off else "output NOT confirmed off"
            line = {"job_id": run.job_id, "utc": rescue.utc, "text": f"rescue of run {run.id}: {rescue.text} ({off})"}
            if session.scalars(select(EntryRow).filter_by(**line)).first() is None:
                session.add(EntryRow(stage=Stage.FREE.value, who="", **line))
    if run is None:
        report(record, "no run of this name is in the ledger")
    else:
        record.unlink(missing_ok=True)


def _remove(journal: Path, *, with_rescue: bool) -> None:
    # A rescue's word that came too late for the run stays, and is found as late at the next start.
    for path in (journal, rescue_record_of(journal)) if with_rescue else (journal,):
        try:
            path.unlink(missing_ok=True)
        except OSError as error:
            # It is filed; at the next start it is found to be, and removed then.
            _log.info("%s is filed but could not be removed: %s", path.name, error)
