"""The owner's numbers as rows to show: each with its words and the jobs behind it. Knows no widget."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchlog.history.past import Group, Ids, Key, PastJob, summarise
from benchlog.history.prior import Hopeless, RungFreed, Waiting, hopeless, rungs, waiting
from benchlog.history.rates import NOTHING, Rate, Spread
from benchlog.history.survival import Survival
from benchlog.money import show_money
from ui import retelling, texts

RUNG = "rung"
DAYS = (30, 90)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """`jobs`: those behind the figure; none where there is nothing to open."""

    text: str
    jobs: Ids = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """`rate` for the plot; `survival`: how long they were not back, None where that is not asked."""

    label: str
    cells: tuple[Cell, ...]
    rate: Rate
    jobs: Ids
    survival: Survival | None = None
    unseen: Ids = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """A sentence below the table, with the jobs behind it."""

    text: str
    jobs: Ids


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """All of the page. `count`: the jobs that were looked at."""

    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    hopeless: tuple[Remark, ...]
    waits: tuple[Remark, ...]
    count: int


def figures_of(pasts: Sequence[PastJob], by: str, now_utc: str, currency: str) -> Figures:
    """`by`: a word of Key, or "rung" for which rung frees which kind."""
    groups = summarise(pasts, Key.KIND if by == RUNG else Key(by), now_utc)
    columns: tuple[str, ...]
    charged = texts.CHARGED_IN.format(currency=currency) if currency else texts.CHARGED
    if by == RUNG:
        columns, rows = texts.RUNG_COLUMNS, [_rung(one) for one in rungs(pasts, Key.KIND)]
    else:
        columns, rows = (*texts.FIGURE_COLUMNS, charged), [_group(group, by) for group in groups]
    return Figures(
        columns=columns,
        rows=tuple(rows),
        hopeless=tuple(map(_hopeless, hopeless(groups))),
        waits=tuple(map(_waits, waiting(pasts, now_utc))),
        count=len(pasts),
    )


def _group(group: Group, by: str) -> Row:
    label = retelling.told(group.label) if by == Key.METHOD else group.label  # others are a person's own words
    back = group.comebacks
    returned = []
    for days, jobs in zip(DAYS, (back.within_30, back.within_90), strict=True):
        share = back.by(days)
        returned.append(Cell(text=NOTHING if share is None else retelling.told(share.text), jobs=jobs))
    money = show_money(group.cents) if group.charged else NOTHING
    return Row(
        label=label,
        cells=(
            Cell(text=label, jobs=group.jobs),
            Cell(text=str(len(group.jobs)), jobs=group.jobs),
            Cell(text=retelling.told(group.freed_rate.text) if group.tried else NOTHING, jobs=group.tried),
            Cell(text=_middle(group.kicks), jobs=group.freed),
            Cell(text=_middle(group.minutes), jobs=group.timed),
            *returned,
            Cell(text=money, jobs=group.charged),
        ),
        rate=group.freed_rate,
        jobs=group.tried,
        survival=back.survival,
        unseen=back.unseen,
    )


def _rung(one: RungFreed) -> Row:
    rung = retelling.told(one.rung)
    label = f"{one.label}, {rung}"
    cells = (
        Cell(text=one.label, jobs=one.jobs),
        Cell(text=rung, jobs=one.jobs),
        Cell(text=retelling.told(one.rate.text), jobs=one.jobs),
    )
    return Row(label=label, cells=cells, rate=one.rate, jobs=one.jobs)


def _hopeless(one: Hopeless) -> Remark:
    return Remark(text=f"{one.label}: {retelling.told(one.why)}", jobs=one.jobs)


def _waits(one: Waiting) -> Remark:
    words = texts.WAITS_ONE if len(one.jobs) == 1 else texts.WAITS_MANY
    days = round(one.days[0])
    said = texts.STATE_WORDS[one.state]
    return Remark(
        text=words.format(
            count=len(one.jobs), state=said, days=texts.DAYS_ONE if days == 1 else texts.DAYS_MANY.format(days=days)
        ),
        jobs=one.jobs,
    )


def _middle(one: Spread | None) -> str:
    if one is None:
        return NOTHING
    return f"{one.median:.0f} {texts.INTERVAL.format(low=round(one.low), high=round(one.high))}"
