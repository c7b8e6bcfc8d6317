"""What was seen while an item was taken apart: part, marking, place, purpose, value."""

from sqlalchemy import select

from benchlog.errors import Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.rows import value_of
from benchlog.ledger.schema import FindingRow
from benchlog.ledger.store import Ledger
from benchlog.records import Finding


def add_finding(
    ledger: Ledger,
    job_id: int,
    part: str,
    *,
    marking: str = "",
    place: str = "",
    purpose: str = "",
    value: str = "",
    who: str = "",
    corrects: int | None = None,
) -> Finding:
    """Keeps a finding; with `corrects` it stands in the place of an earlier one, which is kept.

    Raises Refused where the part is not said, or the earlier one is of another job, not there or replaced already;
    LedgerError.
    """
    if not part.strip():
        raise Refused("a finding needs the part it is about")
    with ledger.writing() as session:
        job = job_row(session, job_id)
        if corrects is not None:
            before = session.get(FindingRow, corrects)
            if before is None or before.job_id != job_id:
                raise Refused(f"this job has no finding with the key {corrects}")
            if session.scalar(select(FindingRow.id).where(FindingRow.corrects == corrects)) is not None:
                raise Refused("that finding was replaced already")
        row = FindingRow(
            job_id=job_id,
            utc=ledger.clock.utc(),
            who=who.strip(),
            part=part.strip(),
            marking=marking.strip(),
            place=place.strip(),
            purpose=purpose.strip(),
            value=value.strip(),
            corrects=corrects,
        )
        session.add(row)
        session.flush()
        mark_changed(session, job, row.utc)
        return _finding_of(ledger, row)


def findings_of(ledger: Ledger, job_id: int, *, replaced: bool = False) -> list[Finding]:
    """Oldest first; with `replaced` also those in whose place another stands. Raises LedgerError."""
    with ledger.reading() as session:
        rows = session.scalars(select(FindingRow).where(FindingRow.job_id == job_id).order_by(FindingRow.id)).all()
        gone = {row.corrects for row in rows}
        return [_finding_of(ledger, row) for row in rows if replaced or row.id not in gone]


def _finding_of(ledger: Ledger, row: FindingRow) -> Finding:
    fields = {name: getattr(row, name) for name in Finding.__struct_fields__}
    return value_of(ledger.path, f"finding {row.id}", fields, Finding)
