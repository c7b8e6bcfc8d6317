"""What known good motors of a kind do when they start, as limits. Values and judging come along."""

import math
from collections.abc import Callable, Sequence
from statistics import fmean, median, stdev

from benchlog.errors import Refused
from benchlog.motor.curve_limits import LEAST_UNITS, curve_band
from benchlog.motor.judging import judge
from benchlog.motor.limit_values import (
    SAME_PACE,
    Band,
    CurveBand,
    Judged,
    JudgedFigure,
    StartLimits,
    listed,
    told_values,
)
from benchlog.motor.overlay import Curve
from benchlog.motor.repeatability import Repeatability, repeatability
from benchlog.motor.start_figures import FIGURES, StartFigures
from benchlog.motor.tolerance import two_sided_factor
from benchlog.quantities import show

__all__ = ["Band", "CurveBand", "Judged", "JudgedFigure", "StartLimits", "band_of", "judge", "limits_from"]
LEAST_DIFFERENT = 3
"""Different values among the units: with fewer, the steps of the readback hide how far the units spread."""
WIDE = 2.0
"""Times the mean: a limit beyond it is said to be wide. Starting value of this project."""


def limits_from(
    units: Sequence[Sequence[StartFigures]],
    curves: Sequence[Sequence[Curve]],
    *,
    test: str,
    version: int,
    coverage: float = 0.95,
    confidence: float = 0.95,
    runs: Sequence[int],
) -> StartLimits:
    """From known good units, the starts of each in one inner sequence; their curves in the same order, or none at all.

    A unit counts once, with the mean of its starts: the limits are about the mean of so many starts of a new unit.
    Raises Refused for fewer than LEAST_UNITS, units without a start, and shares that are none.
    """
    if len(units) < LEAST_UNITS:
        raise Refused(f"{LEAST_UNITS} known good units or more are needed; there are {len(units)}")
    if not all(units):
        raise Refused("a known good unit has no start that was captured")
    starts_each = min(len(unit) for unit in units)
    bands: dict[str, Band] = {}
    why: dict[str, str] = {}
    repeats: dict[str, Repeatability] = {}
    for kind in FIGURES:
        told = [told_values(unit, kind.name) for unit in units]
        missing = sum(not values for values in told)
        if missing:
            why[kind.name] = f"can't be told in {missing} of {len(units)} units: {_reason(units, kind.name)}"
            continue
        band, reason = band_of([fmean(values) for values in told], coverage=coverage, confidence=confidence)
        if reason:
            why[kind.name] = reason
        if band is None:
            continue
        bands[kind.name] = band
        if starts_each > 1 and all(len(values) > 1 for values in told):
            repeats[kind.name] = repeatability(told, label=kind.label)
    curve, reason = curve_band(curves, coverage=coverage, confidence=confidence, starts_each=starts_each)
    if curve is None:
        why["curve"] = reason
    return StartLimits(
        test=test,
        version=version,
        coverage=coverage,
        confidence=confidence,
        n=len(units),
        starts_each=starts_each,
        bands=bands,
        curve=curve,
        why=why,
        runs=tuple(runs),
        within={name: one.within for name, one in repeats.items()},
        between={name: one.between for name, one in repeats.items()},
        warning=" ".join(_warnings(units, starts_each, bands, repeats)),
        interval_s=median(start.interval_s for unit in units for start in unit),
    )


def band_of(values: Sequence[float], *, coverage: float, confidence: float) -> tuple[Band | None, str]:
    """Of one value a unit, none of which can be negative; or None, and why; or without a lower limit, and why.

    Nobody knows whether such a figure is spread evenly or askew: what multiplies (friction, turns) is askew to the
    high side. So the lower limit is that of a normal figure and the upper one that of a normal logarithm: either is
    the wider of the two.
    """
    if len(set(values)) < LEAST_DIFFERENT:
        return None, f"the units read only {len(set(values))} different values: the readback is too coarse to tell them"
    factor = two_sided_factor(len(values), coverage, confidence)
    mean, spread = fmean(values), stdev(values)
    low: float | None = mean - factor * spread
    high, why = mean + factor * spread, ""
    if min(values) > 0:
        logs = [math.log(value) for value in values]
        high = max(high, math.exp(fmean(logs) + factor * stdev(logs)))
    if low is not None and low <= 0:
        low, why = None, "no lower limit: it would be below zero"
    return Band(low=low, high=high, mean=mean, spread=spread, n=len(values), factor=factor), why


def _warnings(
    units: Sequence[Sequence[StartFigures]],
    starts_each: int,
    bands: dict[str, Band],
    repeats: dict[str, Repeatability],
) -> list[str]:
    labels = {kind.name: kind.label for kind in FIGURES}

    def those(names: dict[str, Band] | dict[str, Repeatability], such: Callable[[str], bool]) -> str:
        return listed([labels[name] for name in names if such(name)])

    found = []
    if starts_each == 1:
        found.append("Units were started once: how well one motor repeats is not known.")
    if swamped := those(repeats, lambda name: repeats[name].can_tell is False):
        found.append(f"One motor spreads as far as the units do in {swamped}: the test can't tell them apart there.")
    if doubtful := those(repeats, lambda name: repeats[name].can_tell is None):
        found.append(f"Whether units differ by more than one motor's starts is not known in {doubtful}.")
    if wide := those(bands, lambda name: (bands[name].high or 0.0) > WIDE * bands[name].mean):
        found.append(f"The limits are wide for {wide}: more known good units would narrow them.")
    paces = [fmean(start.interval_s for start in unit) for unit in units]
    if max(paces) > SAME_PACE * min(paces):
        found.append(f"The units were read every {show(min(paces), 's', 2)} to {show(max(paces), 's', 2)}.")
    return found


def _reason(units: Sequence[Sequence[StartFigures]], name: str) -> str:
    reasons = [start.why[name] for unit in units for start in unit if name in start.why]
    return max(set(reasons), key=reasons.count) if reasons else "no reason given"
