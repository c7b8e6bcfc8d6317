"""Where the whole curves of known good motors stay: a band over the time since the trigger."""

from collections.abc import Sequence

import numpy as np

from benchlog.motor.limit_values import CurveBand
from benchlog.motor.overlay import Curve
from benchlog.motor.startup import Values
from benchlog.motor.tolerance import two_sided_factor
from benchlog.quantities import show

LEAST_UNITS = 5
"""Known good units: fewer tell too little of the spread, and limits from them would pass nearly anything."""
WAYS_TO_DIFFER = 10
"""As many instants as tell something new, among which the share left outside is divided. Measured on simulated types
of motor one by one: with 6, noise took some below what the band claims; with 10 none of 80 was surely below."""
POOLED = 0.5
"""Share of the curve's variance that is the mean one over all instants: few units agree by chance at some instant."""
MOST_POINTS = 200
LEAST_POINTS = 8


def curve_band(
    curves: Sequence[Sequence[Curve]], *, coverage: float, confidence: float, starts_each: int
) -> tuple[CurveBand | None, str]:
    """Where whole curves stay, or None and why. From the first instant that every start has a reading of its own for.

    The variance at an instant is half its own and half that of all instants together, as a share of the mean. The share
    left outside is divided among several instants (Bonferroni), so that a whole curve is inside, not a single instant;
    what was not sure of the spread is common to all of them, so the confidence is not divided. Limits as in band_of.
    """
    if len(curves) < LEAST_UNITS or not all(curves):
        return None, "not every unit has its curves"
    grid = _grid([curve for unit in curves for curve in unit])
    if grid is None:
        return None, "the curves have too few readings in common"
    amps = np.stack([mean_on(unit, grid) for unit in curves])
    if np.any(amps <= 0):
        return None, "the current reads zero at times: too small for this supply"
    factor = two_sided_factor(len(curves), 1 - (1 - coverage) / WAYS_TO_DIFFER, confidence)
    mean, logs = np.mean(amps, axis=0), np.log(amps)
    low = mean * (1 - factor * _pooled(np.std(amps, axis=0, ddof=1) / mean))
    high = np.exp(np.mean(logs, axis=0) + factor * _pooled(np.std(logs, axis=0, ddof=1)))
    open_below = " Where it would be below zero there is no lower limit." if np.any(low <= 0) else ""
    return CurveBand(
        t_s=tuple(grid.tolist()),
        low_amps=tuple(np.maximum(low, 0.0).tolist()),
        high_amps=tuple(high.tolist()),
        mean_amps=tuple(mean.tolist()),
        n=len(curves),
        factor=factor,
        claim=f"{_percent(coverage)} of such motors or more stay inside over the whole curve, {_percent(confidence)} "
        f"sure: readback, the mean of {starts_each} {_starts(starts_each)}, from {show(float(grid[0]), 's', 2)} to "
        f"{show(float(grid[-1]), 's')} after the trigger.{open_below}",
    ), ""


def mean_on(curves: Sequence[Curve], t_s: Values) -> Values:
    """A, float64[n]: the mean of a unit's starts at `t_s` since the trigger, between readings on straight lines."""
    return np.asarray(np.mean([np.interp(t_s, curve.t_s, curve.amps) for curve in curves], axis=0), dtype=np.float64)


def _grid(curves: Sequence[Curve]) -> Values | None:
    """s since the trigger, float64[n]: from where every curve has a reading that began after the trigger."""
    if any(len(curve.t_s) < LEAST_POINTS for curve in curves):
        return None
    own = [curve.t_s[curve.t_s >= curve.window_s] for curve in curves]
    if not all(len(t_s) for t_s in own):
        return None
    first, last = max(float(t_s[0]) for t_s in own), min(float(t_s[-1]) for t_s in own)
    points = int((last - first) / float(np.median([curve.interval_s for curve in curves]))) + 1
    return np.linspace(first, last, min(points, MOST_POINTS)) if last > first and points >= LEAST_POINTS else None


def _pooled(spread: Values) -> Values:
    return np.asarray(np.sqrt((1 - POOLED) * spread**2 + POOLED * np.mean(spread**2)), dtype=np.float64)


def _percent(share: float) -> str:
    return f"{100 * share:.4g} %"


def _starts(count: int) -> str:
    return "start" if count == 1 else "starts"
