"""Lots: units of one kind, measured one after the other by one locked test, and held against one set of limits.

A lot is a job that measures, and what belongs to it. Its runs carry the unit they are of.
"""

from typing import Any

from sqlalchemy import Row, Select, func, select
from sqlalchemy.orm import Session

from benchlog.errors import Refused
from benchlog.ledger.jobs import add_job, mark_changed
from benchlog.ledger.lot_checks import check_due, check_from_run, checks, keep_check
from benchlog.ledger.lot_units import add_unit, keep_judged, open_rows, unit, units
from benchlog.ledger.rows import job_of, select_jobs, value_of
from benchlog.ledger.schema import EntryRow, JobRow, LimitsRow, LotRow, StartTestRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, EntryKind, Item, Lot, Motor, Purpose, Stage, TakenIn

__all__ = [
    "add_unit",
    "change_lot",
    "check_due",
    "check_from_run",
    "checks",
    "close_lot",
    "keep_check",
    "keep_judged",
    "lot",
    "lot_of",
    "lots",
    "open_lot",
    "set_limits",
    "unit",
    "units",
]


def open_lot(
    ledger: Ledger,
    *,
    name: str,
    item: Item,
    motor: Motor,
    test_id: int,
    operator: str = "",
    leads: str = "",
    fixture: str = "",
    ambient_c: float = 25.0,
    load_state: str = "dry, uncoupled",
    limits_id: int | None = None,
) -> Lot:
    """A lot with no unit yet. Raises Refused without a name, for an item with a serial (its units have one each), an
    ambient that is no temperature of a workshop, a test or limits that are not there or not of that test; LedgerError.
    """
    name = " ".join(name.split())
    if not name or not name.isprintable():
        raise Refused("a lot needs a name that can be read")
    if item.serial:
        raise Refused(f'a lot has no serial, its units have one each: "{item.serial}" is of one unit')
    _check_ambient(ambient_c)
    with ledger.writing() as session:
        if session.get(StartTestRow, test_id) is None:
            raise Refused(f"there is no start test with the key {test_id}")
        utc = ledger.clock.utc()
        job = add_job(
            session,
            item=item,
            motor=motor,
            complaint=name,
            load_state=load_state,
            opened_utc=utc,
            taken_in=TakenIn(who=operator.strip()),
            purpose=Purpose.MEASURING,
        )
        row = LotRow(
            job_id=job.id,
            name=name,
            test_id=test_id,
            limits_id=None,
            operator=operator.strip(),
            leads=leads.strip(),
            fixture=fixture.strip(),
            ambient_c=ambient_c,
        )
        session.add(row)
        session.flush()
        if limits_id is not None:
            _judge_by(session, row, limits_id)
        mark_changed(session, job, utc)
        return _lot(ledger, session, job.id)


def lots(ledger: Ledger, limit: int = 100) -> list[Lot]:
    """Newest first. Raises LedgerError."""
    with ledger.reading() as session:
        rows = session.execute(_LOTS.order_by(LotRow.job_id.desc()).limit(limit)).all()
        return [_lot_of(ledger, row) for row in rows]


def lot(ledger: Ledger, number: int) -> Lot:
    """By the number of its job. Raises Refused where there is no such job, or it measures no lot; LedgerError."""
    with ledger.reading() as session:
        row = session.execute(_LOTS.where(JobRow.number == number)).one_or_none()
        if row is None:
            raise Refused(f"there is no lot number {number}")
        return _lot_of(ledger, row)


def lot_of(ledger: Ledger, job_id: int) -> Lot | None:
    """The lot that a job, by its key, measures; None for a repair. Raises LedgerError."""
    with ledger.reading() as session:
        row = session.execute(_LOTS.where(LotRow.job_id == job_id)).one_or_none()
        return None if row is None else _lot_of(ledger, row)


def set_limits(ledger: Ledger, lot: Lot, limits_id: int) -> Lot:
    """From now on the lot is judged by these; what was judged by others stays as it is, and a line says so.

    Raises Refused where they are not there or of another test, or the lot is closed; LedgerError.
    """
    with ledger.writing() as session:
        job, row = open_rows(session, lot)
        utc = ledger.clock.utc()
        before = row.limits_id
        _judge_by(session, row, limits_id)
        if before is not None and before != limits_id:
            _say(session, row, utc, f"Judged by limits {limits_id} from now on; until now by limits {before}")
        mark_changed(session, job, utc)
        return _lot(ledger, session, job.id)


def change_lot(ledger: Ledger, lot: Lot, *, operator: str | None = None, ambient_c: float | None = None) -> Lot:
    """Who measures from now on, and at what ambient; None for as it was. A line says what was until then.

    Leads and fixture stay: what is measured with others is another lot. Raises Refused for an ambient that is none, or
    where the lot is closed; LedgerError.
    """
    if ambient_c is not None:
        _check_ambient(ambient_c)
    with ledger.writing() as session:
        job, row = open_rows(session, lot)
        utc = ledger.clock.utc()
        if operator is not None and operator.strip() != row.operator:
            _say(session, row, utc, f"Operator from now on: {operator.strip() or '—'}; until now {row.operator or '—'}")
            row.operator = job.who = operator.strip()
        if ambient_c is not None and ambient_c != row.ambient_c:
            _say(session, row, utc, f"Ambient from now on: {ambient_c:g} °C; until now {row.ambient_c:g} °C")
            row.ambient_c = ambient_c
        mark_changed(session, job, utc)
        return _lot(ledger, session, job.id)


def close_lot(ledger: Ledger, lot: Lot, closing: Closing | None = None) -> Lot:
    """No unit comes any more. Raises Refused for a closed one, LedgerError."""
    ledger.close_job(lot.job.id, closing or Closing(cause=""))
    with ledger.reading() as session:
        return _lot(ledger, session, lot.job.id)


_FIELDS = tuple(name for name in Lot.__struct_fields__ if name not in {"job", "units"})
_LOTS: Select[Any] = (
    select_jobs()
    .add_columns(
        *(LotRow.__table__.c[name].label(f"lot_{name}") for name in _FIELDS),
        select(func.count()).where(UnitRow.job_id == JobRow.id).correlate(JobRow).scalar_subquery().label("lot_units"),
    )
    .join(LotRow, LotRow.job_id == JobRow.id)
)


def _lot(ledger: Ledger, session: Session, job_id: int) -> Lot:
    return _lot_of(ledger, session.execute(_LOTS.where(LotRow.job_id == job_id)).one())


def _lot_of(ledger: Ledger, row: Row[Any]) -> Lot:
    fields = {name: row._mapping[f"lot_{name}"] for name in (*_FIELDS, "units")}
    return value_of(ledger.path, f"lot {row.number}", fields | {"job": job_of(ledger.path, row)}, Lot)


def _check_ambient(ambient_c: float) -> None:
    if not -60.0 <= ambient_c <= 100.0:
        raise Refused(f"ambient: {ambient_c:g} °C is outside -60 to 100 °C")


def _say(session: Session, row: LotRow, utc: str, text: str) -> None:
    line = {"stage": Stage.PROVE.value, "kind": EntryKind.STATE.value, "text": text, "who": row.operator}
    session.add(EntryRow(job_id=row.job_id, utc=utc, **line))


def _judge_by(session: Session, row: LotRow, limits_id: int) -> None:
    limits, test = session.get(LimitsRow, limits_id), session.get_one(StartTestRow, row.test_id)
    if limits is None:
        raise Refused(f"there are no limits with the key {limits_id}")
    if (limits.test_name, limits.test_version) != (test.name, test.version):
        raise Refused(
            f'limits {limits_id} are of test "{limits.test_name}", version {limits.test_version}; '
            f'this lot is measured by "{test.name}", version {test.version}'
        )
    row.limits_id = limits_id
