"""One unit against limits: pass or fail, by how much, which figure, and what that looks like in words.

Decided on the values: how far a measurement scatters is within the limits already, as known good units were measured
the same way. Where a value's own interval, by how one motor repeats, reaches over a limit, that is said, and changes
nothing.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, median

import msgspec
import numpy as np

from benchlog.motor.curve_limits import mean_on
from benchlog.motor.fit import Fitted
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
from benchlog.motor.overlay import GAP_INTERVALS, Curve
from benchlog.motor.start_figures import FIGURES, StartFigures
from benchlog.motor.start_words import FRICTION, NEAR_STALL, Signs, words_for
from benchlog.motor.startup import Z95
from benchlog.quantities import show

COVERED = 0.9
"""Share of the band's time that a curve must have readings in, to be judged. Starting value of this project."""
STALL_SHARE = 0.7
"""Of the peak readback: a motor that turns draws less than that when steady. Starting value of this project."""
LEAST_SILENCE = 0.015
"""Share of a start's time: a pause as short hides less than the steps a band has. Starting value of this project."""
HIDDEN_SHARE = 0.25
"""Of half the band's width: a pause over which known good ones stay as near to a straight line hides nothing that
decides. Starting value of this project."""
_OHMS = "ohms"
_BESIDE = "told beside the figures and decides nothing: it changes with the angle of the brushes"


@dataclass(frozen=True, slots=True, kw_only=True)
class _CurveSeen:
    """`share`: of the band's points outside; `at_s`: where it is farthest outside. None where it can't be judged."""

    share: float | None
    at_s: float | None
    why: str = ""


def judge(
    figures: Sequence[StartFigures],
    curves: Sequence[Curve],
    limits: StartLimits,
    *,
    ohm: Fitted | None = None,
    ohm_good: Band | None = None,
) -> Judged:
    """The starts of one unit, by their mean. `ohm`: of its probe, `ohm_good`: of the known good ones; both for words.

    Fails where a figure or the curve is outside; passes where all that have limits are inside; neither where one of
    them can't be told and none is outside. By fewer starts than the limits are about, by figures alone. Neither where
    nothing was read while it changed: a line drawn over the pause, and a peak within it, would be nobody's reading.
    """
    unlike = _silent(curves, limits.curve) or _unlike(figures, limits)
    rows = tuple(_row(figures, kind.name, kind.label, kind.unit, limits, unlike) for kind in FIGURES)
    fewer = len(figures) < limits.starts_each
    seen = _CurveSeen(share=None, at_s=None) if fewer else _curve(curves, limits.curve, unlike)
    decided = [row.inside for row in rows if row.name in limits.bands]
    if limits.curve is not None and not fewer:
        decided.append(None if seen.share is None else seen.share == 0)
    passed = False if False in decided else None if None in decided or not decided else True
    beside = () if ohm is None or ohm_good is None else (_judged(_OHMS, "resistance", "Ω", ohm, ohm_good, _BESIDE),)
    told = words_for(_signs((*rows, *beside), limits, seen), rows) if passed is not None else None
    return Judged(
        passed=passed,
        rows=(*rows, *beside),
        curve_outside_share=seen.share,
        curve_outside_at_s=seen.at_s,
        sentence=_untold(rows, limits, seen, unlike) if told is None else told.sentence,
        because=" ".join(filter(None, ("" if told is None else told.because, *_notes(figures, rows, limits)))),
    )


def _row(
    figures: Sequence[StartFigures], name: str, label: str, unit: str, limits: StartLimits, unlike: str
) -> JudgedFigure:
    band = limits.bands.get(name)
    values = told_values(figures, name)
    if not values:
        reasons = [start.why[name] for start in figures if name in start.why]
        return JudgedFigure(
            name=name,
            label=label,
            unit=unit,
            value=None,
            low=band.low if band else None,
            high=band.high if band else None,
            margin=None,
            inside=None,
            why=reasons[0] if reasons else "not told by these starts",
        )
    told = [start.values[name] for start in figures if name in start.values]
    value, within = fmean(values), limits.within.get(name)
    # What is off by gain or method is off in the known good ones as well: how one motor repeats is what is left.
    own = fmean(0.5 * (one.high - one.low) for one in told)
    half = own if within is None else Z95 * within / math.sqrt(len(told))
    fitted = Fitted(value=value, low=value - half, high=value + half)
    if band is None:
        why = f"no limits: {limits.why.get(name, 'none were made')}"
        return _judged(name, label, unit, fitted, None, why)
    band = about_starts(band, within or 0.0, len(told), limits.starts_each)
    return _judged(name, label, unit, fitted, band, unlike, decides=not unlike)


def about_starts(band: Band, within: float, starts: int, starts_each: int) -> Band:
    """The limits about the mean of fewer starts: wider by what one motor's starts spread."""
    if starts >= starts_each or band.spread <= 0:
        return band
    wider = math.sqrt(1 + within**2 * (1 / starts - 1 / starts_each) / band.spread**2)
    low = None if band.low is None else band.mean + wider * (band.low - band.mean)
    return msgspec.structs.replace(
        band,
        low=low if low is not None and low > 0 else None,
        high=None if band.high is None else band.mean + wider * (band.high - band.mean),
    )


def _judged(
    name: str, label: str, unit: str, value: Fitted, band: Band | None, why: str, *, decides: bool = True
) -> JudgedFigure:
    low, high = (band.low, band.high) if band else (None, None)
    below = [value.value - low] if low is not None else []
    above = [high - value.value] if high is not None else []
    margin = min(below + above, default=None)
    over = [limit for limit in (low, high) if limit is not None and value.low < limit < value.high]
    close = f"its interval, {show(value.low, unit)} to {show(value.high, unit)}, reaches over the limit" if over else ""
    return JudgedFigure(
        name=name,
        label=label,
        unit=unit,
        value=value.value,
        low=low,
        high=high,
        margin=margin,
        inside=None if margin is None or not decides else margin >= 0,
        why=why or close,
    )


def _curve(curves: Sequence[Curve], band: CurveBand | None, unlike: str) -> _CurveSeen:
    if band is None or unlike:
        return _CurveSeen(share=None, at_s=None)
    t_s = np.asarray(band.t_s)
    usable = [curve for curve in curves if len(curve.t_s) > 1]
    if not usable:
        return _CurveSeen(share=None, at_s=None, why="no curve was captured")
    read = (t_s >= max(curve.t_s[0] for curve in usable)) & (t_s <= min(curve.t_s[-1] for curve in usable))
    if np.mean(read) < COVERED:
        return _CurveSeen(share=None, at_s=None, why="its curve covers too little of the band's time")
    low, high = np.asarray(band.low_amps)[read], np.asarray(band.high_amps)[read]
    amps = mean_on(usable, t_s[read])
    # Where the band has no lower limit its low is 0, and noise about zero is not below it.
    beyond = np.maximum(amps - high, np.where(low > 0, low - amps, 0.0))
    outside = beyond > 0
    at_s = float(t_s[read][int(np.argmax(beyond))]) if outside.any() else None
    return _CurveSeen(share=float(np.mean(outside)), at_s=at_s)


def _unlike(figures: Sequence[StartFigures], limits: StartLimits) -> str:
    """Why these starts were not read as the known good ones were; "" where they were, or nobody knows."""
    if limits.interval_s <= 0 or not figures:
        return ""
    pace_s = median(start.interval_s for start in figures)
    if limits.interval_s / SAME_PACE <= pace_s <= limits.interval_s * SAME_PACE:
        return ""
    return f"read every {show(pace_s, 's', 2)}, the known good ones every {show(limits.interval_s, 's', 2)}"


def _silent(curves: Sequence[Curve], band: CurveBand | None) -> str:
    """For how long nothing was read while a start changed, where that is too long; "" else."""
    longest_s = 0.0
    for curve in curves:
        at_s = np.maximum(curve.t_s, 0.0)
        least_s = max(GAP_INTERVALS * curve.interval_s, LEAST_SILENCE * float(at_s[-1:].sum()))
        for before in np.flatnonzero(np.diff(at_s) > least_s):
            began_s, ended_s = float(at_s[before]), float(at_s[before + 1])
            if band is None or not _straight(band, began_s, ended_s):
                longest_s = max(longest_s, ended_s - began_s)
    return f"{1e3 * longest_s:.0f} ms without a reading" if longest_s else ""


def _straight(band: CurveBand, began_s: float, ended_s: float) -> bool:
    """Whether known good ones change so evenly in between that a line from reading to reading stands for them."""
    t_s, mean = np.asarray(band.t_s), np.asarray(band.mean_amps)
    if began_s < t_s[0]:
        return False  # before its first instant nobody knows them, and the peak is near
    between = (t_s >= began_s) & (t_s <= ended_s)
    line = np.interp(t_s[between], [began_s, ended_s], np.interp([began_s, ended_s], t_s, mean))
    half = 0.5 * (np.asarray(band.high_amps) - np.asarray(band.low_amps))[between]
    return bool(np.all(np.abs(mean[between] - line) <= HIDDEN_SHARE * half))


def _signs(rows: Sequence[JudgedFigure], limits: StartLimits, seen: _CurveSeen) -> Signs:
    """Of each figure with a band: +1 above it, -1 below, 0 inside; None where it can't be told."""
    signs = {row.name: _sign(row) for row in rows if row.name == _OHMS or row.name in limits.bands}
    values = {row.name: row.value for row in rows if row.value is not None}
    run_up, steady = limits.bands.get("run_up_s"), limits.bands.get("steady_amps")
    also = set()
    if run_up and steady and steady.high and values.get("run_up_s") and values.get("steady_amps"):
        # A weaker magnet alone raises the current as 1/K and the run-up as 1/K²: what is beyond that is friction.
        by_magnet = max(1.0, values["run_up_s"] / run_up.mean) ** 0.5
        if values["steady_amps"] / by_magnet > steady.high:
            also.add(FRICTION)
    if values.get("steady_amps", 0.0) > STALL_SHARE * values.get("peak_amps", math.inf):
        also.add(NEAR_STALL)
    return Signs(signs=signs, also=frozenset(also), curve_at_s=seen.at_s)


def _sign(row: JudgedFigure) -> int | None:
    if row.inside is None or row.value is None:
        return None
    if row.inside:
        return 0
    return 1 if row.high is not None and row.value > row.high else -1


def _untold(rows: Sequence[JudgedFigure], limits: StartLimits, seen: _CurveSeen, unlike: str) -> str:
    if not limits.bands and limits.curve is None:
        return "It can't be judged: there are no limits for any figure."
    if unlike:
        return f"Not judged: {unlike}."
    missing = [f"{row.label} ({row.why})" for row in rows if row.name in limits.bands and row.inside is None]
    if seen.why:
        missing.append(f"the curve ({seen.why})")
    return f"It can't be told: {listed(missing)}."


def _notes(figures: Sequence[StartFigures], rows: Sequence[JudgedFigure], limits: StartLimits) -> list[str]:
    notes = []
    close = [row.label for row in rows if row.inside and row.why]
    if close:
        notes.append(f"Inside, but its interval reaches over a limit: {listed(close)}.")
    if len(figures) < limits.starts_each:
        notes.append(
            f"Judged by {len(figures)} of the {limits.starts_each} starts that the limits are about: by wider limits, "
            "and without the curve."
        )
    return notes
