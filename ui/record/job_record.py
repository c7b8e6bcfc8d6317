"""All that the ledger has of one job, read at once, so that the page shows one moment."""

from collections.abc import Callable
from dataclasses import dataclass

from benchlog.errors import Refused
from benchlog.ledger.costs import Standing, charges_of, parts, standing
from benchlog.ledger.edits import edits_of
from benchlog.ledger.files import files_of
from benchlog.ledger.findings import findings_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import Unlock, unlocks
from benchlog.records import Attached, Charge, Edit, Entry, Finding, Job, Part, Run
from benchlog.settings import Settings, Shop


@dataclass(frozen=True, slots=True, kw_only=True)
class JobRecord:
    """Each oldest first; `findings` with those that were replaced. `parts`: the stock of the shop, by name."""

    job: Job
    entries: list[Entry]
    runs: list[Run]
    findings: list[Finding]
    charges: list[Charge]
    files: list[Attached]
    edits: list[Edit]
    unlocks: list[Unlock]
    parts: list[Part]
    standing: Standing
    shop: Shop


def read_record(ledger: Ledger, job_id: int, settings: Callable[[], Settings]) -> JobRecord:
    """Settings that can't be used cost only the currency here; they are said where a price is asked of them.

    Raises Refused where there is no such job, LedgerError.
    """
    try:
        shop = settings().shop
    except Refused:
        shop = Shop()
    return JobRecord(
        job=ledger.job(job_id),
        entries=ledger.entries(job_id),
        runs=ledger.runs(job_id),
        findings=findings_of(ledger, job_id, replaced=True),
        charges=charges_of(ledger, job_id),
        files=files_of(ledger, job_id),
        edits=edits_of(ledger, job_id),
        unlocks=unlocks(ledger, job_id),
        parts=parts(ledger),
        standing=standing(ledger, job_id),
        shop=shop,
    )
