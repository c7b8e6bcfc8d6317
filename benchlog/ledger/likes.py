"""What the ledger knows of earlier recoveries of this motor, or of motors like it, for advice."""

import msgspec
from sqlalchemy import select

from benchlog.ledger.rows import event_of, run_of, select_runs
from benchlog.ledger.schema import EventRow, ItemRow, JobRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import Event, EventKind, Item, Purpose, Run, RunKind
from benchlog.recovery.advice import Past
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import Sequence

MOST = 20
"""Runs that are looked at: the newest. What is older was another time."""
_ENDS = (Outcome.FREED, Outcome.RUNS, Outcome.STILL_STUCK, Outcome.UNDETERMINED)


class _Asked(msgspec.Struct):
    """What is read of a filed request; a program of another age may have written more."""

    layers: dict[str, Limits] = {}
    sequence: Sequence | None = None


def past_of(ledger: Ledger, item: Item, *, not_job: int | None = None) -> list[Past]:
    """Newest first: of this serial; where there is none, of make and model; else of the kind. Raises LedgerError."""
    by = (
        ("this serial", bool(item.serial), (ItemRow.serial == item.serial, ItemRow.make == item.make)),
        ("this model", bool(item.model), (ItemRow.make == item.make, ItemRow.model == item.model)),
        ("this kind", bool(item.kind), (ItemRow.kind == item.kind,)),
    )
    for likeness, possible, conditions in by:
        if not possible:
            continue
        repairs = JobRow.purpose != Purpose.MEASURING.value
        jobs = select(JobRow.id).join(ItemRow, ItemRow.id == JobRow.item_id).where(*conditions, repairs)
        wanted = (
            select_runs()
            .where(
                RunRow.kind == RunKind.RECOVERY.value,
                RunRow.outcome.in_([end.value for end in _ENDS]),
                RunRow.job_id.in_(jobs),
            )
            .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
            .limit(MOST)
        )
        if not_job is not None:
            wanted = wanted.where(RunRow.job_id != not_job)
        with ledger.reading() as session:
            runs = [run_of(ledger.path, row) for row in session.execute(wanted)]
            events: dict[int, list[Event]] = {run.id: [] for run in runs}
            rows = select(EventRow).where(EventRow.run_id.in_(list(events))).order_by(EventRow.run_id, EventRow.seq)
            for row in session.scalars(rows):
                events[row.run_id].append(event_of(ledger.path, row))
        if runs:
            numbers = {run.job: ledger.job(run.job).number for run in runs}
            return [_past(likeness, run, numbers[run.job], events[run.id]) for run in runs]
    return []


def _past(likeness: str, run: Run, number: int, events: list[Event]) -> Past:
    kicks = [event for event in events if event.kind is EventKind.KICK]
    freed = run.result.outcome is Outcome.FREED and bool(kicks)
    volts, amps = (kicks[-1].values.get("volts"), kicks[-1].values.get("amps")) if freed else (None, None)
    try:
        asked = msgspec.json.decode(run.request, type=_Asked)
    except (msgspec.MsgspecError, ValueError):  # a limit that is none any more
        asked = _Asked()
    return Past(
        likeness=likeness,
        job=number,
        run=run.id,
        utc=run.started_utc,
        outcome=run.result.outcome,
        kicks=run.result.kicks,
        freed_ratio=float(volts) / run.rated_volts if isinstance(volts, int | float) and run.rated_volts > 0 else None,
        freed_amps=float(amps) if isinstance(amps, int | float) else None,
        hand_steps=tuple(
            event.text.rstrip(".").rpartition(": ")[2]
            for event in events
            if event.kind is EventKind.HAND and not event.values.get("skipped") and "seconds" not in event.values
        ),
        limits=asked.layers.get(Layer.JOB.value),
        sequence=asked.sequence,
    )
