"""The last measurement of an output's leads, their clips joined; runs on that output take it out of what they find."""

from dataclasses import dataclass

from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import RunRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import output_of_run
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


def lead_check(ledger: Ledger, resource: str, output: int = 1) -> LeadCheck | None:
    """The last that found the leads joined; None where there was none on this output. Raises LedgerError.

    One from before outputs were recorded is of the first: leads that are not taken out make no motor warmer.
    """
    wanted = (
        select_runs()
        .where(
            RunRow.kind == RunKind.LEADS.value,
            RunRow.resource == resource,
            RunRow.outcome == Outcome.SHORT.value,
            RunRow.resistance_ohm.is_not(None),
        )
        .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
    )
    with ledger.reading() as session:
        runs = (run_of(ledger.path, row) for row in session.execute(wanted))
        run = next((one for one in runs if (output_of_run(one) or 1) == output), None)
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


def leads_job(ledger: Ledger, resource: str, output: int = 1) -> int | None:
    """The key of the open job that holds earlier measurements of these leads; None where there is none."""
    check = lead_check(ledger, resource, output)
    if check is None:
        return None
    job = ledger.job(check.job)
    return job.id if job.item.kind == LEADS_ITEM and job.closed_utc is None else None
