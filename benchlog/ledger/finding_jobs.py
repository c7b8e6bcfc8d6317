"""Jobs by text and by filters, a page at a time, each page from the key of the last; how many there are, up to a bound.

Text goes through the index from the newest match down and stops when the page is full. A filter that lets few through
comes first instead, and then LIKE looks at those few.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from sqlalchemy import ColumnElement, and_, bindparam, column, exists, func, or_, select, table, text
from sqlalchemy.exc import DatabaseError
from sqlalchemy.orm import Session

from benchlog.errors import LedgerDamaged, LedgerError
from benchlog.ledger.rows import job_of, select_jobs
from benchlog.ledger.schema import ItemRow, JobRow, RunRow
from benchlog.ledger.search import INDEX, give_up_index, index_holds, match, matches, phrases_of
from benchlog.ledger.wanted import Order, Waits, Wanted
from benchlog.outcome import Outcome
from benchlog.records import Job, JobState, Purpose, RunKind

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger

Key: TypeAlias = tuple[str, int]
"""Where a page ended: the last job's instant of change, "" in other orders, and its id."""

FEW = 900
"""Jobs that are looked at one by one; all at once they are still fewer than an old SQLite takes as parameters (999)."""
COUNTED = 1000
"""So many matches are counted: "1,000 or more"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """`after`: the key from which the next page goes on; None where there is no more."""

    jobs: list[Job]
    after: Key | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What there is to filter by, in order."""

    kinds: list[str]
    causes: list[str]
    persons: list[str]


def find_jobs(ledger: "Ledger", wanted: Wanted, after_key: Key | None = None, limit: int = 50) -> Page:
    """At most `limit` jobs from `after_key` on. Raises LedgerError."""
    keys = found_keys(ledger, wanted, after_key, limit + 1)
    page = keys[:limit]
    jobs: dict[int, Job] = {}
    with ledger.reading() as session:
        for at in range(0, len(page), FEW):
            rows = session.execute(select_jobs().where(JobRow.id.in_([key for _, key in page[at : at + FEW]])))
            jobs |= {row.id: job_of(ledger.path, row) for row in rows}
    return Page(
        jobs=[jobs[key] for _, key in page if key in jobs], after=page[-1] if page and len(keys) > limit else None
    )


def count_jobs(ledger: "Ledger", wanted: Wanted, at_most: int = COUNTED) -> int:
    """How many there are; `at_most` where there are more. Raises LedgerError."""
    return len(found_keys(ledger, wanted, None, at_most, counting=True))


def run_in_jobs(ledger: "Ledger", wanted: Wanted, limit: int = 50) -> list[Job]:
    """Those of `wanted`, whatever its text, in which a motor was run in; newest first. Raises LedgerError."""
    run_in = exists().where(RunRow.job_id == JobRow.id, RunRow.kind == RunKind.RUN_IN.value)
    found = select_jobs().where(run_in, *conditions(wanted, few=True)).order_by(JobRow.id.desc()).limit(limit)
    with ledger.reading() as session:
        return [job_of(ledger.path, row) for row in session.execute(found)]


def choices_for(ledger: "Ledger") -> Choices:
    """Raises LedgerError."""
    with ledger.reading() as session:
        kinds, causes, persons = (
            [said for said in session.scalars(select(where).distinct().order_by(where)) if said]
            for where in (ItemRow.kind, JobRow.cause, JobRow.who)
        )
    return Choices(kinds=kinds, causes=causes, persons=persons)


def found_keys(ledger: "Ledger", wanted: Wanted, after: Key | None, limit: int, *, counting: bool = False) -> list[Key]:
    """Keys of the first `limit` jobs, in order, or in any where they are only counted. Raises LedgerError."""
    with ledger.reading() as session:
        indexed = index_holds(session)
    try:
        with ledger.reading() as session:
            return _keys(session, wanted, after, limit, indexed=indexed, counting=counting)
    except (LedgerDamaged, DatabaseError):
        if not indexed:
            raise
    # It may be the index alone that is damaged: LIKE needs none.
    with ledger.reading() as session:
        found = _keys(session, wanted, after, limit, indexed=False, counting=counting)
    try:
        with ledger.adding() as session:
            give_up_index(session)
    except LedgerError:
        pass  # the next search finds it damaged again
    return found


def conditions(wanted: Wanted, *, few: bool = False) -> list[ColumnElement[bool]]:
    """On a job, without its text, and without what nearly all are: repairs.

    `few`: said so that a database begins with the kind and not with the jobs.
    """
    found: list[ColumnElement[bool]] = []
    if wanted.kind and few:
        found.append(JobRow.item_id.in_(select(ItemRow.id).where(ItemRow.kind == wanted.kind)))
    elif wanted.kind:
        found.append(exists().where(ItemRow.id == JobRow.item_id, ItemRow.kind == wanted.kind))
    for where, what in ((JobRow.cause, wanted.cause), (JobRow.who, wanted.who)):
        if what:
            found.append(where == what)
    if wanted.outcome:
        found.append(_ended(wanted.outcome))
    if wanted.state is Waits.WAITING:
        found.append(JobRow.state.in_([JobState.FOR_APPROVAL, JobState.FOR_PART, JobState.FOR_OWNER]))
    elif wanted.state is not None:
        found.append(JobRow.state == wanted.state.value)
    if wanted.since_utc:
        found.append(JobRow.opened_utc >= wanted.since_utc)
    if wanted.until_utc:
        found.append(JobRow.opened_utc < wanted.until_utc)
    if wanted.purpose is Purpose.MEASURING:
        found.append(JobRow.purpose == Purpose.MEASURING.value)
    return found


def _ended(outcome: str) -> ColumnElement[bool]:
    """By the last run; what was freed and then proven is among the freed as well."""
    last = JobRow.last_outcome == outcome
    if outcome != Outcome.FREED:
        return last
    freed = exists().where(RunRow.job_id == JobRow.id, RunRow.outcome == outcome)
    return or_(last, and_(JobRow.last_outcome == Outcome.RUNS.value, freed))


def _keys(
    session: Session, wanted: Wanted, after: Key | None, limit: int, *, indexed: bool, counting: bool
) -> list[Key]:
    phrases = phrases_of(wanted.text)
    filters = conditions(wanted)
    if filters:
        some = session.scalars(select(JobRow.id).where(*conditions(wanted, few=True)).limit(FEW + 1)).all()
        if len(some) <= FEW:
            filters, indexed = [JobRow.id.in_(some)], False
    if wanted.purpose is Purpose.REPAIR:
        # As what it is not: nearly all are repairs, and an index of what jobs are for would only be a detour.
        filters.append(JobRow.purpose != Purpose.MEASURING.value)
    by_text = indexed and bool(phrases)
    if wanted.order is Order.CHANGED and not counting:
        return _by_change(session, phrases, filters, after, limit, by_text=by_text)
    falling = wanted.order is not Order.OLDEST
    # The index gives its matches in the order of its own key, and only then stops at the limit.
    key: ColumnElement[int] = _TEXT.c.rowid if by_text else JobRow.__table__.c.id
    found = select(key).where(*filters, *_opened_between(wanted, key), *matches(phrases))
    if by_text:
        found = found.join_from(_TEXT, JobRow, JobRow.id == _TEXT.c.rowid).where(_MATCHES)
    if after is not None:
        found = found.where(key < after[1] if falling else key > after[1])
    if not counting:
        found = found.order_by(key.desc() if falling else key)
    return [("", job) for job in session.scalars(found.limit(limit), {"match": match(phrases)})]


def _opened_between(wanted: Wanted, key: ColumnElement[int]) -> list[ColumnElement[bool]]:
    # Says nothing that the filter does not say, but lets a walk in the order of the keys begin where the filter does.
    # Plus nothing: of the key as it is SQLite looks for the first from the beginning of the table, not in the index.
    found = []
    if wanted.since_utc:
        first = select(func.min(JobRow.id + 0)).where(JobRow.opened_utc >= wanted.since_utc)
        found.append(key >= first.scalar_subquery())
    if wanted.until_utc:
        last = select(func.max(JobRow.id + 0)).where(JobRow.opened_utc < wanted.until_utc)
        found.append(key <= last.scalar_subquery())
    return found


def _by_change(
    session: Session,
    phrases: Sequence[str],
    filters: list[ColumnElement[bool]],
    after: Key | None,
    limit: int,
    *,
    by_text: bool,
) -> list[Key]:
    found = select(JobRow.changed_utc, JobRow.id).where(*filters, *matches(phrases))
    if by_text:
        found = found.where(JobRow.id.in_(select(_TEXT.c.rowid).where(_MATCHES)))
    if after is not None:
        utc, job = after
        before = and_(JobRow.changed_utc == utc, JobRow.id < job)
        found = found.where(or_(JobRow.changed_utc < utc, before))
    found = found.order_by(JobRow.changed_utc.desc(), JobRow.id.desc()).limit(limit)
    return [(utc, job) for utc, job in session.execute(found, {"match": match(phrases)})]


_TEXT = table(INDEX, column("rowid"))
_MATCHES = text(f"{INDEX} MATCH :match").bindparams(bindparam("match", ""))
