"""Writes jobs: their number, what they are about, and what they are found by. Inside a transaction of the caller."""

import math

import msgspec
from sqlalchemy import func, select
from sqlalchemy.orm import Session

from benchlog.errors import Refused
from benchlog.ledger.schema import ItemRow, JobRow, MotorRow, RunRow
from benchlog.ledger.search import reindex, texts_of
from benchlog.records import Item, JobState, Motor, Purpose, RunKind, TakenIn


def add_job(
    session: Session,
    *,
    item: Item,
    motor: Motor,
    complaint: str,
    load_state: str,
    opened_utc: str,
    taken_in: TakenIn | None = None,
    purpose: Purpose = Purpose.REPAIR,
) -> JobRow:
    """An open job with the number above the highest. `session` holds the writer's lock, so no number is given twice.

    Raises Refused for rated volts that aren't finite.
    """
    if not math.isfinite(motor.rated_volts):
        raise Refused(f"rated volts: {motor.rated_volts} is not a number of volts")
    if taken_in is not None and taken_in.comeback_of is not None:
        job_row(session, taken_in.comeback_of)
    number = (session.scalar(select(func.max(JobRow.number))) or 0) + 1
    tag = f"H-{number:04d}"
    row_of_item = item_row(session, item)
    row = JobRow(
        number=number,
        tag=tag,
        item_id=row_of_item.id,
        motor_id=motor_row(session, row_of_item.id, motor).id,
        opened_utc=opened_utc,
        closed_utc=None,
        state=JobState.OPEN.value,
        complaint=complaint,
        load_state=load_state,
        cause="",
        work_done="",
        prognosis="",
        searched="",
        purpose=purpose.value,
        **msgspec.structs.asdict(taken_in or TakenIn()),
    )
    session.add(row)
    mark_changed(session, row, opened_utc)
    return row


def mark_changed(session: Session, job: JobRow, utc: str) -> None:
    """A job, or something that hangs on it, was written at `utc`: how it last ended, and what it is found by."""
    job.changed_utc = utc
    session.flush()
    of_motor = (RunRow.job_id == job.id, RunRow.kind != RunKind.LEADS.value)
    last = select(RunRow.outcome).where(*of_motor).order_by(RunRow.started_utc.desc(), RunRow.id.desc())
    job.last_outcome = session.scalar(last.limit(1))
    session.flush()
    text = texts_of(session, [job.id])[job.id]
    if text != job.searched:
        reindex(session, job.id, job.searched, text)
        job.searched = text
        session.flush()


def job_row(session: Session, job_id: int) -> JobRow:
    """Raises Refused where there is no such job."""
    row = session.get(JobRow, job_id)
    if row is None:
        raise Refused(f"there is no job with the key {job_id}")
    return row


def item_row(session: Session, item: Item) -> ItemRow:
    """The thing of this label, known or new."""
    # The same label with a serial number is the same thing come back; without one it may be any of its kind.
    if item.serial:
        same = select(ItemRow).filter_by(kind=item.kind, make=item.make, model=item.model, serial=item.serial)
        if known := session.scalars(same.limit(1)).first():
            return known
    row = ItemRow(kind=item.kind, make=item.make, model=item.model, serial=item.serial)
    session.add(row)
    session.flush()
    return row


def motor_row(session: Session, item_id: int, motor: Motor) -> MotorRow:
    """A thing's motor, known or new."""
    same = select(MotorRow).filter_by(item_id=item_id, rated_volts=motor.rated_volts, note=motor.note)
    if known := session.scalars(same.limit(1)).first():
        return known
    row = MotorRow(item_id=item_id, rated_volts=motor.rated_volts, note=motor.note)
    session.add(row)
    session.flush()
    return row
