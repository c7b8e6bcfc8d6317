"""Units of a lot: each by its serial, with its last run and the verdict that stands."""

import msgspec
from sqlalchemy import ColumnElement, func, select
from sqlalchemy.orm import Session

from benchlog.errors import Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.lot_checks import due_in, due_words
from benchlog.ledger.rows import value_of
from benchlog.ledger.schema import JobRow, JudgedRow, LotRow, RunRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.motor.limit_values import Judged
from benchlog.records import JobState, Lot, RunKind, Unit

MOST_SERIAL = 100
"""Characters: what is longer was not scanned from a unit."""
MEASURED_BEFORE = "Measured before the check: measure it again."


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
        job, row = open_rows(session, lot)
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
    whatever the figures say, and says so. What is judged again has two judgements: the last counts that passed or
    failed it.
    Raises Refused where the run is not of this unit, or the lot has no limits; LedgerError.
    """
    of_lot, measured = unit(ledger, unit_id).job, ledger.run(run)
    if measured.unit != unit_id:
        raise Refused(f"run {run} is not of this unit")
    with ledger.reading() as session:
        row = session.get_one(LotRow, of_lot)
        limits_id = row.limits_id if limits_id is None else limits_id
        if limits_id is None:
            raise Refused(f'lot "{row.name}" has no limits yet that a unit could be judged by')
    if due := due_in(ledger, of_lot, measured.started_utc):
        checked_since = not due_in(ledger, of_lot, ledger.clock.utc())
        judged = msgspec.structs.replace(
            judged,
            passed=None,
            sentence=MEASURED_BEFORE if checked_since else f"Check due: {due_words(due)}.",
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


def measured_before_check(ledger: Ledger, lot: Lot) -> list[Unit]:
    """Units without a verdict whose last run began while a check was due: no check that passes later makes up for it.

    Raises LedgerError.
    """
    found = [one for one in units(ledger, lot) if one.run is not None and one.passed is None]
    return [one for one in found if due_in(ledger, lot.job.id, ledger.run(one.run or 0).started_utc)]


def open_rows(session: Session, lot: Lot) -> tuple[JobRow, LotRow]:
    """The rows of a lot that takes units still. Raises Refused for any other job."""
    job, row = job_row(session, lot.job.id), session.get(LotRow, lot.job.id)
    if row is None:
        raise Refused(f"job {job.tag} measures no lot")
    if job.state == JobState.CLOSED:
        raise Refused(f'lot "{row.name}" was closed at {job.closed_utc}')
    return job, row


def _units(ledger: Ledger, session: Session, wanted: ColumnElement[bool]) -> list[Unit]:
    """In three questions, however many there are."""
    rows = session.scalars(select(UnitRow).where(wanted).order_by(UnitRow.job_id, UnitRow.number)).all()
    of_units = select(RunRow.unit_id, RunRow.id).join(UnitRow, UnitRow.id == RunRow.unit_id).where(wanted)
    of_units = of_units.where(RunRow.kind == RunKind.START_UP.value).order_by(RunRow.started_utc, RunRow.id)
    last_run = {run.unit_id: run.id for run in session.execute(of_units)}
    of_runs = select(JudgedRow.unit_id, JudgedRow.run_id, JudgedRow.passed, JudgedRow.content)
    of_runs = of_runs.join(UnitRow, UnitRow.id == JudgedRow.unit_id).where(wanted).order_by(JudgedRow.id)
    open_runs: dict[int, str] = {}
    verdicts: dict[int, list[tuple[int, bool, str]]] = {row.id: [] for row in rows}
    for of_unit, judged_run, passed, content in session.execute(of_runs):
        if passed is None:
            open_runs[judged_run] = content
        else:
            verdicts[of_unit].append((judged_run, passed, content))
    found = []
    for row in rows:
        last, *before = reversed(verdicts[row.id]) if verdicts[row.id] else (None,)
        run = last_run.get(row.id)
        fields = {"id": row.id, "job": row.job_id, "number": row.number, "serial": row.serial, "run": run}
        if last is None:
            fields |= {"judged": "" if run is None else open_runs.get(run, "")}
        else:
            fields |= dict(zip(("judged_run", "passed", "judged"), last, strict=True))
            fields |= {"failed_before": any(passed is False for _, passed, _ in before)}
        found.append(value_of(ledger.path, f"unit {row.id}", fields, Unit))
    return found
