"""What earlier jobs came to, in groups: how many came free, after what, for how much, and how many came back.

Pure: the ledger hands in plain values and the time. Every figure carries the ids of the jobs behind it.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import lru_cache
from operator import attrgetter, itemgetter

import msgspec

from benchlog.history.rates import NOTHING, Rate, Spread, spread
from benchlog.history.survival import Estimate, Followed, Survival, kaplan_meier
from benchlog.outcome import Outcome
from benchlog.records import Result

Ids = tuple[int, ...]
"""Keys of jobs, in order."""

# As plain text: a member of an Enum is slow to reach, and this is asked of every job.
_FREED, _RUNS, _WORKS = Outcome.FREED.value, Outcome.RUNS.value, Result.WORKS.value
_WAS_STUCK, _GOES = frozenset({_FREED, Outcome.STILL_STUCK.value}), frozenset({_FREED, _RUNS})


class PastJob(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """A job as the history sees it. Empty text where nothing was said; UTC instants as in the ledger.

    `outcome`: the word for how the last run that was to free it, or the last run, ended; None without a run. `result`:
    a word of `Result`. `kicks` and `kick_s`: of its runs that were to free it, kicks and s of run. `minutes` worked,
    0 where none were noted. `cents` charged. `freed_rung`: at which it came free. `came_back_utc`: when the next job of
    the same serial was opened. `hand_steps`: words of `EntryKind`. `waiting_since_utc`: None where it does not wait.
    """

    id: int
    number: int
    kind: str
    opened_utc: str
    state: str
    make: str = ""
    model: str = ""
    serial: str = ""
    cause: str = ""
    method: str = ""
    closed_utc: str | None = None
    outcome: str | None = None
    result: str = ""
    kicks: int = 0
    kick_s: float = 0.0
    minutes: int = 0
    cents: int = 0
    freed_rung: str = ""
    came_back_utc: str | None = None
    hand_steps: tuple[str, ...] = ()
    waiting_since_utc: str | None = None

    @property
    def came_free(self) -> bool:
        """It was stuck and is not any more. What runs without a kick was not stuck."""
        return self.outcome == _FREED or (self.kicks > 0 and self.outcome == _RUNS)

    @property
    def tried(self) -> bool:
        """It was stuck and somebody tried to free it. An open winding, say, is not kicked and does not count."""
        return self.kicks > 0 or self.outcome in _WAS_STUCK

    @property
    def went_out_working(self) -> bool:
        """Closed as working; where that was not said, its last outcome says so."""
        if self.closed_utc is None:
            return False
        return self.result == _WORKS or (not self.result and self.outcome in _GOES)


class Key(StrEnum):
    """By what jobs are put into groups."""

    KIND = "kind"
    MODEL = "model"
    CAUSE = "cause"
    METHOD = "method"


_SAID = {Key.KIND: ("kind",), Key.MODEL: ("make", "model"), Key.CAUSE: ("cause",), Key.METHOD: ("method",)}
_BY_ID = attrgetter("id")


@dataclass(frozen=True, slots=True, kw_only=True)
class Comebacks:
    """Of the jobs `at_risk`, how long until the thing was here again. Whole days, from date to date (UTC).

    At risk is what went out working and can be recognised. What is still out counts as out until now and no longer,
    never as a success. `unseen`: went out working without a serial, so that nobody would know it again. `within_30`
    and `within_90`: those back up to that day.
    """

    at_risk: Ids
    unseen: Ids
    within_30: Ids
    within_90: Ids
    survival: Survival

    def by(self, days: float) -> Estimate | None:
        """The share back up to that day; None where none has been out for so long."""
        return self.survival.ended_by(days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Jobs that are alike. What came of them is counted of closed ones alone: the others are not decided yet.

    `kicks` and `run_s` (s) are of those that came free, `minutes` of those that came free with minutes noted
    (`timed`), `cents` of all that were charged for (`charged`), open ones too.
    """

    label: str
    jobs: Ids
    still_open: Ids
    tried: Ids
    freed: Ids
    kicks: Spread | None
    run_s: Spread | None
    timed: Ids
    minutes: Spread | None
    charged: Ids
    cents: int
    comebacks: Comebacks

    @property
    def freed_rate(self) -> Rate:
        return Rate(hits=len(self.freed), count=len(self.tried))


def summarise(pasts: Iterable[PastJob], by: Key, now_utc: str) -> tuple[Group, ...]:
    """The groups, the largest first. Raises ValueError for an instant that is none."""
    today = day(now_utc[:10])
    groups = [_group(label, alike, today) for label, alike in grouped(pasts, by)]
    return tuple(sorted(groups, key=lambda group: (-len(group.jobs), group.label)))


def grouped(pasts: Iterable[PastJob], by: Key) -> list[tuple[str, list[PastJob]]]:
    """Label and jobs of each group, by label and by id.

    Case and blanks at the ends do not part two groups; the usual spelling is shown.
    """
    said = attrgetter(*_SAID[by])
    as_said: defaultdict[str | tuple[str, ...], list[PastJob]] = defaultdict(list)
    for past in pasts:
        as_said[said(past)].append(past)
    spellings: dict[tuple[str, ...], Counter[str]] = {}
    found: dict[tuple[str, ...], list[PastJob]] = {}
    for one_or_more, alike in as_said.items():
        words = (one_or_more,) if isinstance(one_or_more, str) else one_or_more
        folded = tuple(word.strip().casefold() for word in words)
        label = " ".join(filter(None, (word.strip() for word in words))) or NOTHING
        spellings.setdefault(folded, Counter())[label] += len(alike)
        found.setdefault(folded, []).extend(alike)
    labels = {folded: min(counts, key=lambda label: (-counts[label], label)) for folded, counts in spellings.items()}
    return sorted(((labels[folded], sorted(alike, key=_BY_ID)) for folded, alike in found.items()), key=itemgetter(0))


def ids(pasts: Iterable[PastJob]) -> Ids:
    return tuple([past.id for past in pasts])


def _group(label: str, alike: list[PastJob], today: int) -> Group:
    still_open: list[int] = []
    tried: list[int] = []
    freed: list[PastJob] = []
    out: list[PastJob] = []
    for past in alike:
        if past.closed_utc is None:
            still_open.append(past.id)
            continue
        if past.tried:
            tried.append(past.id)
            if past.came_free:
                freed.append(past)
        if past.went_out_working:
            out.append(past)
    timed = [past for past in freed if past.minutes > 0]
    charged = [past for past in alike if past.cents]
    return Group(
        label=label,
        jobs=ids(alike),
        still_open=tuple(still_open),
        tried=tuple(tried),
        freed=ids(freed),
        kicks=spread([past.kicks for past in freed]),
        run_s=spread([past.kick_s for past in freed]),
        timed=ids(timed),
        minutes=spread([past.minutes for past in timed]),
        charged=ids(charged),
        cents=sum([past.cents for past in charged]),
        comebacks=_comebacks(out, today),
    )


def _comebacks(out: list[PastJob], today: int) -> Comebacks:
    """A next job opened before this one was closed came back at once; one opened after today has not come back yet."""
    at_risk: list[int] = []
    unseen: list[int] = []
    back: list[tuple[int, int]] = []
    still_out: list[int] = []
    for past in out:
        if not past.serial.strip():
            unseen.append(past.id)
            continue
        at_risk.append(past.id)
        went = day((past.closed_utc or past.opened_utc)[:10])
        came = None if past.came_back_utc is None else day(past.came_back_utc[:10])
        if came is not None and came <= today:
            back.append((past.id, max(0, came - went)))
        else:
            still_out.append(max(0, today - went))
    return Comebacks(
        at_risk=tuple(at_risk),
        unseen=tuple(unseen),
        within_30=tuple(job for job, days in back if days <= 30),
        within_90=tuple(job for job, days in back if days <= 90),
        survival=kaplan_meier(Followed(ended=[days for _, days in back], out=still_out)),
    )


@lru_cache(maxsize=1 << 14)
def day(date_text: str) -> int:
    """The number of a day, "2026-01-31". Raises ValueError where it is none."""
    return date.fromisoformat(date_text).toordinal()
