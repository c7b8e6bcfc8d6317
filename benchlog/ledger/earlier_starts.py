"""The starts that a run's own are held against when nobody names others, and whether two were taken the same way."""

import msgspec
from sqlalchemy import ColumnElement, or_, select

from benchlog.ledger.captured import Captured, captured
from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import ItemRow, JobRow, RunRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.motor.compare import Test, what_differs
from benchlog.records import RunKind

MOST = 20
"""Runs that are looked at for one of the same test, the newest first."""


def earlier_starts(ledger: Ledger, after: Captured) -> tuple[str, Captured | None]:
    """What it is held against, in words: the newest before of the same job, else of the same serial, by the same test
    where there is one. ("", None) where there is none. Raises LedgerError."""
    run = after.run
    with ledger.reading() as session:
        item = select(ItemRow.serial).join(JobRow, JobRow.item_id == ItemRow.id).where(JobRow.id == run.job)
        unit = select(UnitRow.serial).where(UnitRow.id == run.unit)
        serial = session.scalar(item if run.unit is None else unit) or ""
    here = RunRow.unit_id == run.unit if run.unit is not None else RunRow.job_id == run.job
    by: list[tuple[str, ColumnElement[bool]]] = [("the starts before in this job", here)]
    if serial:
        jobs = select(JobRow.id).join(ItemRow, JobRow.item_id == ItemRow.id).where(ItemRow.serial == serial)
        units = select(UnitRow.id).where(UnitRow.serial == serial)
        by.append(("the last starts of this serial", or_(RunRow.job_id.in_(jobs), RunRow.unit_id.in_(units))))
    for words, condition in by:
        wanted = (
            select_runs()
            .where(RunRow.kind == RunKind.START_UP.value, RunRow.started_utc < run.started_utc, condition)
            .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
            .limit(MOST)
        )
        with ledger.reading() as session:
            runs = [run_of(ledger.path, row) for row in session.execute(wanted)]
        found = [one for one in (captured(ledger, each.id) for each in runs) if one.starts]
        same = (one for one in found if one.test == after.test)
        if (chosen := next(same, found[0] if found else None)) is not None:
            return words, chosen
    return "", None


class _Asked(msgspec.Struct):
    """What is read of a filed request; a program of another age may have written more."""

    ambient_c: float = 25.0


def not_alike(after: Captured, before: Captured) -> list[str]:
    """What was not the same when two runs were taken, in words; [] where their starts may be compared."""
    one, other = after.test, before.test
    if one is None or other is None:
        return ["by which test they were captured is not recorded"]
    if (one.name, one.version) != (other.name, other.version):
        return [f'"{one.name}" version {one.version} against "{other.name}" version {other.version}']
    return what_differs(_under(after, one.volts), _under(before, other.volts))


def _under(found: Captured, set_volts: float) -> Test:
    try:
        ambient_c = msgspec.json.decode(found.run.request, type=_Asked).ambient_c
    except msgspec.MsgspecError:
        ambient_c = _Asked().ambient_c
    return Test(set_volts=set_volts, lead_ohm=found.lead_ohm, ambient_c=ambient_c, load_state=found.run.load_state)
