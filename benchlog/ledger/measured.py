"""Measured starts in the ledger: of a run, of the same motor before, of known good ones like it."""

import msgspec
from sqlalchemy import ColumnElement, select

from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import ItemRow, JobRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.motor.compare import Measured, measured_of
from benchlog.motor.fit import Fitted
from benchlog.outcome import Outcome
from benchlog.records import Item, Run, RunKind

MOST = 20


class _Asked(msgspec.Struct):
    lead_ohm: float = 0.0
    ambient_c: float = 25.0


def measured_start(ledger: Ledger, run: Run) -> Measured | None:
    """None where the run has no measured start. Raises LedgerError."""
    if run.kind is not RunKind.PROOF:
        return None
    try:
        asked = msgspec.json.decode(run.request, type=_Asked)
    except msgspec.MsgspecError:
        asked = _Asked()
    return measured_of(
        ledger.trace(run.id),
        ledger.events(run.id),
        run=run.id,
        lead_ohm=asked.lead_ohm,
        ambient_c=asked.ambient_c,
        load_state=run.load_state,
        ohm=_ohm(run),
        cold_ohm=_cold_ohm(ledger, run),
    )


def _ohm(run: Run) -> Fitted | None:
    found = run.result
    if found.resistance_ohm is None or found.resistance_low_ohm is None or found.resistance_high_ohm is None:
        return None
    return Fitted(value=found.resistance_ohm, low=found.resistance_low_ohm, high=found.resistance_high_ohm)


def _cold_ohm(ledger: Ledger, run: Run) -> Fitted | None:
    """Of the job's first probe, before this run and before anything was driven; every run begins with one."""
    for earlier in ledger.runs(run.job):
        if earlier.id == run.id:
            break
        if earlier.kind is RunKind.LEADS:
            continue
        ohm = _ohm(earlier)
        if ohm is not None or earlier.kind is not RunKind.PROBE:
            return ohm
    return None


def others_of(ledger: Ledger, run: Run, item: Item) -> tuple[str, list[Measured]]:
    """What a proof is held against, in words, and the measured starts: the last of the same job or serial before it,
    else known good ones of the model. Raises LedgerError."""
    same_serial = JobRow.item_id == ItemRow.id
    earlier = RunRow.started_utc < run.started_utc
    by: list[tuple[str, tuple[ColumnElement[bool], ...], int]] = [
        ("the proof before in this job", (RunRow.job_id == run.job, earlier), 1)
    ]
    serial = select(JobRow.id).join(ItemRow, same_serial).where(ItemRow.serial == item.serial)
    if item.serial:
        by.append(("the last proof of this serial", (RunRow.job_id.in_(serial), earlier), 1))
    if item.model:
        model = (
            select(JobRow.id).join(ItemRow, same_serial).where(ItemRow.make == item.make, ItemRow.model == item.model)
        )
        itself = serial if item.serial else select(JobRow.id).where(JobRow.id == run.job)
        good = (RunRow.job_id.in_(model), RunRow.job_id.not_in(itself), RunRow.outcome == Outcome.RUNS.value)
        by.append(("known good ones of this model", good, MOST))
    for words, conditions, most in by:
        wanted = (
            select_runs()
            .where(RunRow.kind == RunKind.PROOF.value, *conditions)
            .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
            .limit(most)
        )
        with ledger.reading() as session:
            runs = [run_of(ledger.path, row) for row in session.execute(wanted)]
        found = [one for one in (measured_start(ledger, each) for each in runs) if one is not None]
        if found:
            return words, found
    return "", []
