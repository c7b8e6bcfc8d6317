"""Lots: units of one kind, measured one after the other by one locked test, and held against one set of limits.

A lot is a job that measures, and what belongs to it. Its runs carry the unit they are of.
"""

from typing import Any

import msgspec
from sqlalchemy import ColumnElement, Row, Select, func, select
from sqlalchemy.orm import Session

from benchlog.errors import Refused
from benchlog.ledger.jobs import add_job, job_row, mark_changed
from benchlog.ledger.lot_checks import check_due, check_from_run, checks, keep_check
from benchlog.ledger.rows import job_of, select_jobs, value_of
from benchlog.ledger.schema import EntryRow, JobRow, JudgedRow, LimitsRow, LotRow, RunRow, StartTestRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.motor.limits import Judged
from benchlog.records import Closing, EntryKind, Item, JobState, Lot, Motor, Purpose, RunKind, Stage, TakenIn, Unit

__all__ = [
    "add_unit",
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

MOST_SERIAL = 100
"""Characters: what is longer was not scanned from a unit."""


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
    if not -60.0 <= ambient_c <= 100.0:
        raise Refused(f"ambient: {ambient_c:g} °C is outside -60 to 100 °C")
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
        job, row = _open(session, lot)
        utc = ledger.clock.utc()
        before = row.limits_id
        _judge_by(session, row, limits_id)
        if before is not None and before != limits_id:
            text = f"judged by limits {limits_id} from now on; until now by limits {before}"
            session.add(
                EntryRow(job_id=job.id, utc=utc, stage=Stage.PROVE.value, text=text, who="", kind=EntryKind.STATE.value)
            )
        mark_changed(session, job, utc)
        return _lot(ledger, session, job.id)


def close_lot(ledger: Ledger, lot: Lot, closing: Closing | None = None) -> Lot:
    """No unit comes any more. Raises Refused for a closed one, LedgerError."""
    ledger.close_job(lot.job.id, closing or Closing(cause=""))
    with ledger.reading() as session:
        return _lot(ledger, session, lot.job.id)


def add_unit(ledger: Ledger, lot: Lot, serial: str) -> Unit:
    """The next one of a lot; a serial that is in it already is that unit, measured again.

    What is due to be checked does not hold it up: ask check_due() and say so, since it will not be judged until then.
    Raises Refused for a serial that is blank, not readable or too long, and for a new one in a closed lot; LedgerError.
    """
    serial = " ".join(serial.split())
    if not serial or not serial.isprintable() or len(serial) > MOST_SERIAL:
        raise Refused(f"a serial has 1 to {MOST_SERIAL} characters that can be read")
    with ledger.reading() as session:
        known = session.scalar(select(UnitRow.id).where(UnitRow.job_id == lot.job.id, UnitRow.serial == serial))
    if known is not None:
        return unit(ledger, known)
    with ledger.writing() as session:
        job, row = _open(session, lot)
        same = session.scalars(select(UnitRow).filter_by(job_id=row.job_id, serial=serial)).one_or_none()
        if same is None:
            last = session.scalar(select(func.max(UnitRow.number)).where(UnitRow.job_id == row.job_id)) or 0
            same = UnitRow(job_id=row.job_id, number=last + 1, serial=serial, utc=ledger.clock.utc())
            session.add(same)
            session.flush()
            mark_changed(session, job, same.utc)
        added = same.id
    return unit(ledger, added)


def unit(ledger: Ledger, unit_id: int) -> Unit:
    """Raises Refused where there is none, LedgerError."""
    with ledger.reading() as session:
        found = _units(ledger, session, UnitRow.id == unit_id)
    if not found:
        raise Refused(f"there is no unit with the key {unit_id}")
    return found[0]


def units(ledger: Ledger, lot: Lot) -> list[Unit]:
    """In the order in which they came. Raises LedgerError."""
    with ledger.reading() as session:
        return _units(ledger, session, UnitRow.job_id == lot.job.id)


def keep_judged(ledger: Ledger, unit_id: int, run: int, judged: Judged, limits_id: int | None = None) -> Judged:
    """Keeps what a unit's run, by its key, was judged to be; what is kept is returned. `limits_id`: None for the lot's.

    Where the lot's zero or leads were not checked in the shift before the run, it is neither passed nor failed,
    whatever the figures say, and says so. A run that is judged again has two judgements: the last counts.
    Raises Refused where the run is not of this unit, or the lot has no limits; LedgerError.
    """
    found = lot_of(ledger, unit(ledger, unit_id).job)
    measured = ledger.run(run)
    if found is None or measured.unit != unit_id:
        raise Refused(f"run {run} is not of this unit")
    limits_id = found.limits_id if limits_id is None else limits_id
    if limits_id is None:
        raise Refused(f'lot "{found.name}" has no limits yet that a unit could be judged by')
    if due := check_due(ledger, found, measured.started_utc):
        judged = msgspec.structs.replace(
            judged,
            passed=None,
            sentence=f"Check due: {' and '.join(due)}.",
            because=f"Not judged. {judged.sentence}".strip(),
        )
    with ledger.adding() as session:  # it hangs on a run, and changes nothing that is there
        session.add(
            JudgedRow(
                unit_id=unit_id,
                run_id=run,
                limits_id=limits_id,
                passed=judged.passed,
                content=msgspec.json.encode(judged).decode(),
                utc=ledger.clock.utc(),
            )
        )
    return judged


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


def _open(session: Session, lot: Lot) -> tuple[JobRow, LotRow]:
    job, row = job_row(session, lot.job.id), session.get(LotRow, lot.job.id)
    if row is None:
        raise Refused(f"job {job.tag} measures no lot")
    if job.state == JobState.CLOSED:
        raise Refused(f'lot "{row.name}" was closed at {job.closed_utc}')
    return job, row


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


def _units(ledger: Ledger, session: Session, wanted: ColumnElement[bool]) -> list[Unit]:
    """In three questions, however many there are."""
    rows = session.scalars(select(UnitRow).where(wanted).order_by(UnitRow.job_id, UnitRow.number)).all()
    of_units = select(RunRow.unit_id, RunRow.id).join(UnitRow, UnitRow.id == RunRow.unit_id).where(wanted)
    of_units = of_units.where(RunRow.kind == RunKind.START_UP.value).order_by(RunRow.started_utc, RunRow.id)
    last_run = {run.unit_id: run.id for run in session.execute(of_units)}
    of_runs = select(JudgedRow.run_id, JudgedRow.passed, JudgedRow.content)
    of_runs = of_runs.join(UnitRow, UnitRow.id == JudgedRow.unit_id).where(wanted).order_by(JudgedRow.id)
    judged = {run: (passed, content) for run, passed, content in session.execute(of_runs)}
    found = []
    for row in rows:
        run = last_run.get(row.id)
        passed, content = (None, "") if run is None else judged.get(run, (None, ""))
        fields = {"id": row.id, "job": row.job_id, "number": row.number, "serial": row.serial}
        fields |= {"run": run, "passed": passed, "judged": content}
        found.append(value_of(ledger.path, f"unit {row.id}", fields, Unit))
    return found
