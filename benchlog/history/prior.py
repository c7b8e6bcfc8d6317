"""What the past is for: which rung frees which type, what is hopeless, what waits, and what to expect of the next."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from benchlog.history.past import Group, Ids, Key, PastJob, grouped, ids
from benchlog.history.rates import NOTHING, Rate, Spread, spread
from benchlog.records import JobState

HOPELESS_SHARE = 0.35
"""A type is hopeless where even the upper limit of what comes free is below this. A starting value of this project."""
ENOUGH = 5
"""Jobs that must have been tried before a type is called hopeless. A starting value of this project."""

WAITING = (JobState.FOR_APPROVAL, JobState.FOR_PART, JobState.FOR_OWNER)


@dataclass(frozen=True, slots=True, kw_only=True)
class RungFreed:
    """The closed `jobs` of a type that came free at a rung, out of all of that type that came free."""

    label: str
    rung: str
    jobs: Ids
    rate: Rate


@dataclass(frozen=True, slots=True, kw_only=True)
class Hopeless:
    """A type that hardly ever comes free, with the reason in one sentence; `jobs`: those that were tried."""

    label: str
    rate: Rate
    jobs: Ids
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """The jobs in a waiting state, the longest first, and how many `days` each has waited."""

    state: JobState
    jobs: Ids
    days: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Prior:
    """What jobs like it let one expect. `rung`: at which most came free, "" where none is known, and `at_rung` of them.

    `kicks`: of those that came free. `why`: why it is hopeless, "" where it is not. `sentence` says all of it.
    """

    freed: Rate
    jobs: Ids
    rung: str
    at_rung: Rate
    kicks: Spread | None
    why: str
    sentence: str

    @property
    def hopeless(self) -> bool:
        return bool(self.why)


def rungs(pasts: Iterable[PastJob], by: Key) -> tuple[RungFreed, ...]:
    """By label, then the rung that freed the most first; without a rung it came free by hand, or nobody knows how."""
    rows = []
    for label, alike in grouped(pasts, by):
        at, freed = _by_rung(alike)
        rows += [
            RungFreed(label=label, rung=rung or NOTHING, jobs=ids(jobs), rate=Rate(hits=len(jobs), count=freed))
            for rung, jobs in at
        ]
    return tuple(rows)


def hopeless(groups: Iterable[Group], *, below: float = HOPELESS_SHARE, at_least: int = ENOUGH) -> tuple[Hopeless, ...]:
    """Those of which at least `at_least` were tried and with 95 % confidence a share less than `below` comes free."""
    found = []
    for group in groups:
        why = why_hopeless(group.freed_rate, below, at_least)
        if why:
            found.append(Hopeless(label=group.label, rate=group.freed_rate, jobs=group.tried, why=why))
    return tuple(found)


def waiting(pasts: Iterable[PastJob], now_utc: str) -> tuple[Waiting, ...]:
    """By waiting state, those in which a job waits. Raises ValueError for an instant that is none."""
    now, kept = datetime.fromisoformat(now_utc), list(pasts)
    found = []
    for state in WAITING:
        waits = sorted(
            (-_days(past.waiting_since_utc or past.opened_utc, now), past.id) for past in kept if past.state == state
        )
        if waits:
            found.append(
                Waiting(state=state, jobs=tuple(job for _, job in waits), days=tuple(-days for days, _ in waits))
            )
    return tuple(found)


def prior(pasts: Iterable[PastJob], *, below: float = HOPELESS_SHARE, at_least: int = ENOUGH) -> Prior:
    """What to expect of the next job like these; only closed ones in which somebody tried to free it count."""
    tried = [past for past in pasts if past.closed_utc is not None and past.tried]
    came_free = [past for past in tried if past.came_free]
    freed = Rate(hits=len(came_free), count=len(tried))
    at = [(rung, jobs) for rung, jobs in _by_rung(tried)[0] if rung]
    rung, at_rung = (at[0][0], len(at[0][1])) if at else ("", 0)
    at_rate, kicks = Rate(hits=at_rung, count=freed.hits), spread(past.kicks for past in came_free)
    why = why_hopeless(freed, below, at_least)
    return Prior(
        freed=freed,
        jobs=tuple(sorted(past.id for past in tried)),
        rung=rung,
        at_rung=at_rate,
        kicks=kicks,
        why=why,
        sentence=_sentence(freed, kicks, rung, at_rate, why),
    )


def _sentence(freed: Rate, kicks: Spread | None, rung: str, at_rung: Rate, why: str) -> str:
    if not freed.count:
        return "None like it was tried before."
    if why:
        return f"Of those like it {why} More kicks are hardly worth it."
    told = f"Of those like it {freed.text} came free"
    if kicks is not None:
        told += f", the middle one after {kicks.median:g} {'kick' if kicks.median == 1 else 'kicks'}"
    if rung:
        told += f'; most often at "{rung}": {at_rung.text}'
    return told + "."


def _by_rung(alike: Iterable[PastJob]) -> tuple[list[tuple[str, list[PastJob]]], int]:
    """Rung and jobs, the most first; and how many came free at all."""
    at: dict[str, list[PastJob]] = {}
    for past in alike:
        if past.closed_utc is not None and past.came_free:
            at.setdefault(past.freed_rung, []).append(past)
    return sorted(at.items(), key=lambda one: (-len(one[1]), one[0])), sum(map(len, at.values()))


def why_hopeless(freed: Rate, below: float = HOPELESS_SHARE, at_least: int = ENOUGH) -> str:
    """Why more kicks are hardly worth it; "" where that can't be said."""
    if freed.interval is None or freed.count < at_least or not freed.interval[1] < below:
        return ""
    return f"{freed.text} came free: even the upper limit is below {100 * below:g} %."


def _days(since_utc: str, now: datetime) -> float:
    return max(0.0, (now - datetime.fromisoformat(since_utc)) / timedelta(days=1))
