"""The last measurement of a supply's leads, their clips joined; runs on that supply take it out of what they find."""

from dataclasses import dataclass

from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import RunRow
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import RunKind

LEADS_ITEM = "test leads"
"""What the job is called that a measurement without one is filed with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadCheck:
    """Ω of the leads with its limits, when it was measured, and in which job and run."""

    ohm: float
    low_ohm: float
    high_ohm: float
    utc: str
    job: int
    run: int


def lead_check(ledger: Ledger, resource: str) -> LeadCheck | None:
    """The last that found the leads joined; None where there was none on this supply. Raises LedgerError."""
    wanted = (
        select_runs()
        .where(
            RunRow.kind == RunKind.LEADS.value,
            RunRow.resource == resource,
            RunRow.outcome == Outcome.SHORT.value,
            RunRow.resistance_ohm.is_not(None),
        )
        .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
        .limit(1)
    )
    with ledger.reading() as session:
        row = session.execute(wanted).one_or_none()
        run = None if row is None else run_of(ledger.path, row)
    if run is None or run.result.resistance_ohm is None:
        return None
    ohm = run.result.resistance_ohm
    return LeadCheck(
        ohm=ohm,
        low_ohm=run.result.resistance_low_ohm or ohm,
        high_ohm=run.result.resistance_high_ohm or ohm,
        utc=run.started_utc,
        job=run.job,
        run=run.id,
    )


def leads_job(ledger: Ledger, resource: str) -> int | None:
    """The key of the open job that holds earlier measurements of these leads; None where there is none."""
    check = lead_check(ledger, resource)
    if check is None:
        return None
    job = ledger.job(check.job)
    return job.id if job.item.kind == LEADS_ITEM and job.closed_utc is None else None
