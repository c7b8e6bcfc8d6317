"""What was changed about a job: each field as it was and as it became, so that it can be taken back.

An open job is changed freely and can be changed back. A closed one is only corrected, by somebody and for a reason. A
run is never changed: a correction stands beside it.
"""

from collections.abc import Mapping
from typing import Any

import msgspec
from sqlalchemy import select
from sqlalchemy.orm import Session

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.jobs import item_row, job_row, mark_changed, motor_row
from benchlog.ledger.rows import value_of
from benchlog.ledger.schema import EditRow, ItemRow, JobRow, MotorRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.quantities import strict
from benchlog.records import Closing, Edit, Item, Job, JobState, Motor, TakenIn

_ITEM = Item.__struct_fields__
FIELDS: dict[str, Any] = {
    **dict.fromkeys((*_ITEM, "complaint", "load_state"), str),
    **{field.name: field.type for kind in (TakenIn, Closing) for field in msgspec.structs.fields(kind)},
}
"""What of a job can be changed, and what it then must be."""


def change(ledger: Ledger, job_id: int, changes: Mapping[str, object], *, who: str = "", why: str = "") -> Job:
    """Changes fields of a job, all or none, and returns it. What is the same already leaves no trace.

    Raises Refused for an unknown field, a value of the wrong kind, or a closed job without `who` and `why`;
    LedgerError.
    """
    with ledger.writing() as session:
        row = job_row(session, job_id)
        if row.state == JobState.CLOSED and not (who.strip() and why.strip()):
            raise Refused(f"job {row.tag} is closed: a correction needs who makes it, and why")
        utc = ledger.clock.utc()
        for field, value in changes.items():
            _check(field, value)
            if field == "comeback_of" and isinstance(value, int) and job_row(session, value).number >= row.number:
                raise Refused(f"job {row.tag} can have come back only from an earlier one")
            old = _get(session, row, field)
            if old != value:
                _set(session, row, field, value)
                edit = {"who": who.strip(), "why": why.strip(), "old": _text(old), "new": _text(value)}
                session.add(EditRow(job_id=job_id, utc=utc, field=field, **edit))
        mark_changed(session, row, utc)
    return ledger.job(job_id)


def undo(ledger: Ledger, job_id: int) -> list[Edit]:
    """Takes back what was last changed about an open job; what it was, empty where there is nothing to take back.

    Raises Refused for a closed job, LedgerError.
    """
    with ledger.writing() as session:
        row = job_row(session, job_id)
        if row.state == JobState.CLOSED:
            raise Refused(f"job {row.tag} is closed: a correction is a new one, with who and why")
        standing = select(EditRow).where(
            EditRow.job_id == job_id, EditRow.run_id.is_(None), EditRow.undone_utc.is_(None)
        )
        last = session.scalars(standing.order_by(EditRow.id.desc()).limit(1)).first()
        if last is None:
            return []
        utc = ledger.clock.utc()
        together = session.scalars(standing.where(EditRow.utc == last.utc).order_by(EditRow.id.desc())).all()
        for edit in together:
            _set(session, row, edit.field, _value(ledger, edit.field, edit.old))
            edit.undone_utc = utc
        mark_changed(session, row, utc)
        return [_edit_of(ledger, edit) for edit in together]


def correct_run(ledger: Ledger, run_id: int, *, about: str, new: str, who: str, why: str) -> None:
    """Keeps beside a run what somebody says of it later; the run stays as it is. `about`: one of its fields, or "note".

    Raises Refused where who or why is not said, or there is no such run or field; LedgerError.
    """
    if not (who.strip() and why.strip() and new.strip()):
        raise Refused("a correction needs what is right, who says so, and why")
    with ledger.writing() as session:
        run = session.get(RunRow, run_id)
        if run is None:
            raise Refused(f"there is no run {run_id}")
        old = "" if about == "note" else getattr(run, about, None)
        if old is None or about not in ("note", "outcome", "reason", "load_state", "rated_volts", "resistance_ohm"):
            raise Refused(f'"{about}" can not be corrected of a run')
        _check_correction(about, new.strip())
        made = {"utc": ledger.clock.utc(), "who": who.strip(), "why": why.strip()}
        session.add(
            EditRow(job_id=run.job_id, run_id=run_id, field=about, old=_text(old), new=_text(new.strip()), **made)
        )
        session.flush()
        mark_changed(session, job_row(session, run.job_id), made["utc"])


def _check_correction(about: str, new: str) -> None:
    if about == "outcome" and new not in [one.value for one in Outcome]:
        raise Refused(f'"{new[:40]}" is no way in which a run ends: {", ".join(Outcome)}')
    if about in ("rated_volts", "resistance_ohm"):
        strict(new, about)


def edits_of(ledger: Ledger, job_id: int) -> list[Edit]:
    """Of a job and its runs, oldest first, those that were taken back too. Raises LedgerError."""
    with ledger.reading() as session:
        wanted = select(EditRow).where(EditRow.job_id == job_id).order_by(EditRow.id)
        return [_edit_of(ledger, row) for row in session.scalars(wanted)]


def _check(field: str, value: object) -> None:
    kind = FIELDS.get(field)
    if kind is None:
        raise Refused(f'"{field}" can not be changed of a job')
    try:
        msgspec.convert(value, kind)
    except msgspec.ValidationError as error:
        raise Refused(f"{field}: {error}") from error
    if isinstance(value, int) and value < 0:
        raise Refused(f"{field}: {value} is below zero")


def _get(session: Session, row: JobRow, field: str) -> object:
    return getattr(session.get_one(ItemRow, row.item_id) if field in _ITEM else row, field)


def _set(session: Session, row: JobRow, field: str, value: object) -> None:
    if field not in _ITEM:
        setattr(row, field, value)
        return
    # The label was read wrongly: the job is about another thing, and the row may be shared with earlier jobs.
    old, motor = session.get_one(ItemRow, row.item_id), session.get_one(MotorRow, row.motor_id)
    item = Item(**{name: str(value) if name == field else getattr(old, name) for name in _ITEM})
    row.item_id = item_row(session, item).id
    row.motor_id = motor_row(session, row.item_id, Motor(rated_volts=motor.rated_volts, note=motor.note)).id


def _text(value: object) -> str:
    return msgspec.json.encode(value).decode()


def _value(ledger: Ledger, field: str, text: str) -> object:
    try:
        return msgspec.json.decode(text, type=FIELDS[field])
    except (msgspec.MsgspecError, KeyError, TypeError) as error:
        raise LedgerDamaged(ledger.path, f"a change of {field[:40]} can't be read ({error})") from error


def _edit_of(ledger: Ledger, row: EditRow) -> Edit:
    fields = {name: getattr(row, name) for name in Edit.__struct_fields__ if name != "run"} | {"run": row.run_id}
    return value_of(ledger.path, f"edit {row.id}", fields, Edit)
