"""Captured starts against others of the same test: the figures of all starts of a motor together, and what changed."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

from benchlog.motor.compare import T95_FEW, Difference
from benchlog.motor.start_figures import FIGURES, FigureKind, StartFigures
from benchlog.motor.startup import t95
from benchlog.quantities import show


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """One figure over `count` starts of a motor: mean, standard deviation of the starts (None of one), and the 95 %
    interval of the mean: by the spread of the starts and what a reading itself may be off; not below zero where no
    start is."""

    kind: FigureKind
    count: int
    mean: float
    spread: float | None
    low: float
    high: float


def together(figures: Sequence[StartFigures], kind: FigureKind) -> Together | None:
    """None where no start tells this figure."""
    told = [one.values[kind.name] for one in figures if kind.name in one.values]
    if not told:
        return None
    values = [one.value for one in told]
    mean, off = fmean(values), fmean((one.high - one.low) / 2 for one in told)
    spread = stdev(values) if len(values) > 1 else None
    half = off if spread is None else math.hypot(off, _factor(len(values) - 1) * spread / math.sqrt(len(values)))
    low = mean - half if min(values) < 0 else max(0.0, mean - half)
    return Together(kind=kind, count=len(values), mean=mean, spread=spread, low=low, high=mean + half)


def _factor(free: int) -> float:
    return T95_FEW.get(free) or t95(free)


def changes(after: Sequence[StartFigures], others: Sequence[Sequence[StartFigures]]) -> tuple[Difference, ...]:
    """After minus before for each figure that both tell. `others`: one inner sequence a motor or run.

    Against one, by both means' intervals; against several, by how far a new one of their kind lies from their mean.
    """
    found = []
    for kind in FIGURES:
        now = together(after, kind)
        then = [one for one in (together(other, kind) for other in others) if one is not None]
        if now is None or not then:
            continue
        before, half_now = fmean(one.mean for one in then), now.high - now.mean
        if len(then) == 1:
            half = math.hypot(half_now, then[0].high - then[0].mean)
        else:
            spread = stdev(one.mean for one in then) * math.sqrt(1 + 1 / len(then))
            half = math.hypot(half_now, _factor(len(then) - 1) * spread)
        gap = now.mean - before
        found.append(
            Difference(name=kind.label, unit=kind.unit, before=before, after=now.mean, low=gap - half, high=gap + half)
        )
    return tuple(found)


def verdict(found: Sequence[Difference], not_same: Sequence[str]) -> str:
    """A sentence or two: what surely changed and which way."""
    if not_same:
        return f"Not comparable: {'; '.join(not_same)}."
    if not found:
        return "No figure is told in both: nothing to compare."
    sure = [one for one in found if one.sure]
    if not sure:
        return "No difference that these starts can show."
    told = "; ".join(
        f"{one.name} {_way(one)}, {show(one.before, one.unit)} to {show(one.after, one.unit)}" for one in sure
    )
    steady = next((one for one in sure if one.name == "steady current"), None)
    meaning = "" if steady is None else f" It turns {_EASE[steady.after > steady.before]}."
    return f"{told[:1].upper()}{told[1:]}.{meaning}"


def _way(one: Difference) -> str:
    if one.unit == "s":
        return "longer" if one.after > one.before else "shorter"
    return "rose" if one.after > one.before else "fell"


_EASE = {True: "harder, or with more load", False: "more freely, or with less load"}
