"""Earlier jobs as the history sees them: one statement for each kind of row over the whole ledger, no blob touched."""

from typing import TYPE_CHECKING

from sqlalchemy import Connection, case, func, select

from benchlog.history.past import PastJob
from benchlog.ledger.finding_jobs import found_keys
from benchlog.ledger.schema import ChargeRow, EntryRow, EventRow, ItemRow, JobRow, RunRow
from benchlog.ledger.search import words_of
from benchlog.ledger.wanted import Order, Wanted
from benchlog.records import HAND_STEPS, ChargeKind, EntryKind, EventKind, Purpose, RunKind

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger

_TO_FREE = (RunKind.RECOVERY.value, RunKind.HAND.value)
_BEGINNINGS = {
    "turn": EntryKind.TURNED,
    "tap": EntryKind.TAPPED,
    "soak": EntryKind.SOAKED,
    "warm": EntryKind.WARMED,
    "oil": EntryKind.OILED,
}
"""How a word begins that tells what was done by hand during a run."""
_EVERY = 1 << 62


def pasts_of(ledger: "Ledger", wanted: Wanted | None = None, *, hand_steps: bool = False) -> list[PastJob]:
    """Repairs that are wanted, by id; what came back is seen in all. What only was measured is no repair.

    `hand_steps`: they are read too, which takes longest.

    Raises LedgerError.
    """
    wanted = wanted or Wanted()
    among = None
    if wanted not in (Wanted(order=order) for order in Order):
        among = {job for _, job in found_keys(ledger, wanted, None, _EVERY, counting=True)}
    with ledger.reading() as session:
        rows = session.connection()  # plain rows: through the session each would be looked at twice
        runs, charges, steps = _runs(rows), _charges(rows), _hand_steps(rows) if hand_steps else {}
        jobs = rows.execute(_JOBS).all()
    back, found = _came_back([(job, (serial, make), opened) for job, _, _, opened, _, make, _, serial, *_ in jobs]), []
    unrun, uncharged = (0, 0.0, "", ""), (0, 0)
    for job, number, kind, opened, state, make, model, serial, cause, method, closed, last, result, since in jobs:
        if among is not None and job not in among:
            continue
        kicks, kick_s, rung, outcome = runs.get(job, unrun)
        minutes, cents = charges.get(job, uncharged)
        found.append(
            PastJob(
                id=job,
                number=number,
                kind=kind,
                opened_utc=opened,
                state=state,
                make=make,
                model=model,
                serial=serial,
                cause=cause,
                method=method,
                closed_utc=closed,
                outcome=outcome or last,
                result=result,
                kicks=kicks,
                kick_s=kick_s,
                minutes=minutes,
                cents=cents,
                freed_rung=rung,
                came_back_utc=back.get(job),
                hand_steps=steps.get(job, ()),
                waiting_since_utc=since,
            )
        )
    return found


_JOBS = (
    select(
        *(JobRow.id, JobRow.number, ItemRow.kind, JobRow.opened_utc, JobRow.state, ItemRow.make, ItemRow.model),
        *(ItemRow.serial, JobRow.cause, JobRow.method, JobRow.closed_utc, JobRow.last_outcome, JobRow.result),
        JobRow.waiting_since_utc,
    )
    .join(ItemRow, ItemRow.id == JobRow.item_id)
    .where(JobRow.purpose != Purpose.MEASURING.value)
    .order_by(JobRow.id)
)


def _runs(rows: Connection) -> dict[int, tuple[int, float, str, str]]:
    """Of the runs that were to free it: kicks, s, the rung at which it came free, how the last one ended."""
    wanted = (
        select(RunRow.job_id, RunRow.kicks, RunRow.duration_s, RunRow.freed_rung, RunRow.outcome)
        .where(RunRow.kind.in_(_TO_FREE))
        .order_by(RunRow.job_id, RunRow.started_utc)
    )
    found: dict[int, tuple[int, float, str, str]] = {}
    for job, kicks, duration_s, rung, outcome in rows.execute(wanted):
        if (before := found.get(job)) is not None:
            kicks, duration_s, rung = before[0] + kicks, before[1] + duration_s, rung or before[2]
        found[job] = (kicks, duration_s, rung, outcome)
    return found


def _charges(rows: Connection) -> dict[int, tuple[int, int]]:
    """Minutes and cents. What is taken back is there twice, the second time below nothing."""
    minutes = case((ChargeRow.kind == ChargeKind.MINUTES.value, ChargeRow.count), else_=0)
    wanted = select(ChargeRow.job_id, func.sum(minutes), func.sum(ChargeRow.cents)).group_by(ChargeRow.job_id)
    return {job: (int(minutes), int(cents)) for job, minutes, cents in rows.execute(wanted)}


def _hand_steps(rows: Connection) -> dict[int, tuple[str, ...]]:
    """What was done by hand, each once: as entries say it, and as runs do where it was not skipped."""
    done: dict[int, set[str]] = {}
    entries = select(EntryRow.job_id, EntryRow.kind).where(EntryRow.kind.in_([kind.value for kind in HAND_STEPS]))
    for job, kind in rows.execute(entries.distinct()):
        done.setdefault(job, set()).add(kind)
    events = select(RunRow.job_id, EventRow.text).join(RunRow, RunRow.id == EventRow.run_id)
    words: dict[str, set[str]] = {}
    for job, text in rows.execute(events.where(EventRow.kind == EventKind.HAND.value).distinct()):
        if text not in words:
            words[text] = _steps_told(text)
        if words[text]:
            done.setdefault(job, set()).update(words[text])
    return {job: tuple(sorted(kinds)) for job, kinds in done.items()}


def _steps_told(text: str) -> set[str]:
    said = words_of(text)
    if "skipped" in said:
        return set()
    return {kind.value for word in said for begins, kind in _BEGINNINGS.items() if word.startswith(begins)}


def _came_back(jobs: list[tuple[int, tuple[str, str], str]]) -> dict[int, str]:
    """By job: when the next one of its serial and make was opened."""
    back: dict[int, str] = {}
    later: dict[tuple[str, str], str] = {}
    for job, thing, opened in sorted(jobs, key=lambda one: (one[2], one[0]), reverse=True):
        if not thing[0]:
            continue
        if thing in later:
            back[job] = later[thing]
        later[thing] = opened
    return back
