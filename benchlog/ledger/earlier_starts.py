"""The starts that a run's own are held against when nobody names others: those of the same motor before."""

from sqlalchemy import ColumnElement, or_, select

from benchlog.ledger.captured import Captured, captured
from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import ItemRow, JobRow, RunRow, UnitRow
from benchlog.ledger.store import Ledger
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
