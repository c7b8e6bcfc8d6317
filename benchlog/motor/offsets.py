"""By how much the trigger of each of several starts is off, by least squares against what they have in common.

Each is tried within one of its readings to either side. A shift counts only where the start then fits the others better
than noise explains; one that is unlike the others keeps its trigger.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from benchlog.motor.splines import knots_of, splines
from benchlog.motor.startup import Values

ROUNDS = ((1.0, 1.0), (0.5, 1.0), (0.25, 1.0), (0.25, 0.6), (0.12, 0.4), (0.06, 0.25), (0.03, 0.25))
"""Of the fit: how far about a place others are tried, and how close the mean's knots are, in readings. A mean that is
fine at once would follow the readings as they happen to lie. Found by trial."""
SURE_CHI_SQUARE = 25.0
"""By which a shift must better the fit, in variances: five standard deviations, since the mean that it is held against
was fitted with it. Starting value of this project."""
LEAST_READINGS = 8
ENOUGH_READINGS = 200
LEAST_CHANGING = 6
"""Readings in the part of a start where its current changes, or it can't be aligned."""
CHANGES_SHARE = 0.02
"""Of the steepest slope. Starting value of this project."""
UNLIKE_SHARE = 0.25
"""Of the mean's range: a curve whose readings are that far from it, rms, is not one of them, and stays. Starting value
of this project."""
STIFF = 1e-3
"""How much the mean minds a bend, against its readings. Found by trial."""
FAST_INTERVALS = 20.0
"""After the trigger, the mean is followed at its finest for so many readings. Starting value of this project."""
_FINER = 8
_NINE = np.linspace(-1.0, 1.0, 9)
_PER_KNOT = 2
_MOST_POINTS = 5000
Counts = npt.NDArray[np.int64]
Curve: TypeAlias = tuple[Values, Values]
"""Times in s, rising, and amps: float64[n] each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Mean:
    """A smooth curve through all readings together: float64[m] each; slope in A/s; of how many knots."""

    t_s: Values
    amps: Values
    slope: Values
    knots: int

    def amps_at(self, at_s: Values) -> Values:
        return np.asarray(np.interp(at_s, self.t_s, self.amps), dtype=np.float64)


def offsets_of(curves: Sequence[Curve], pace_s: float) -> Values:
    """float64[curves]: how much later each belongs, s; 0 where its trigger is kept. `pace_s`: the usual interval."""
    offsets = np.zeros(len(curves))
    able = [row for row, (t_s, _) in enumerate(curves) if len(t_s) >= LEAST_READINGS]
    if len(able) < 2:
        return offsets
    mean = _rough_mean([curves[row] for row in able], pace_s)
    parts = {row: _changing(curves[row], mean, pace_s) for row in able}
    rows = [row for row in able if len(parts[row]) >= LEAST_CHANGING and _alike(curves[row], parts[row], mean)]
    if len(rows) < 2:
        return offsets
    offsets[rows] = _fit_offsets(
        np.concatenate([curves[row][0][parts[row]] for row in rows]),
        np.concatenate([curves[row][1][parts[row]] for row in rows]),
        np.array([len(parts[row]) for row in rows]),
        np.array([float(np.median(np.diff(curves[row][0]))) for row in rows]),
        pace_s,
    )
    return offsets


def _rough_mean(curves: Sequence[Curve], pace_s: float) -> _Mean:
    return _mean_of(
        np.concatenate([t_s for t_s, _ in curves]), np.concatenate([amps for _, amps in curves]), pace_s, 1.0
    )


def _changing(curve: Curve, mean: _Mean, pace_s: float) -> Counts:
    """int64[m]: its readings where the slope is worth something to an alignment, and one more to either side; no more
    than enough."""
    steep = np.flatnonzero(np.abs(mean.slope) >= CHANGES_SHARE * float(np.max(np.abs(mean.slope))))
    begin_s, end_s = float(mean.t_s[steep[0]]) - pace_s, float(mean.t_s[steep[-1]]) + pace_s
    within = np.flatnonzero((curve[0] >= begin_s) & (curve[0] <= end_s))
    return within[:: 1 + len(within) // ENOUGH_READINGS]


def _alike(curve: Curve, part: Counts, mean: _Mean) -> bool:
    off = curve[1][part] - mean.amps_at(curve[0][part])
    return math.sqrt(float(np.mean(off**2))) <= UNLIKE_SHARE * float(np.ptp(mean.amps))


def _fit_offsets(at_s: Values, amps: Values, lengths: Counts, most_s: Values, pace_s: float) -> Values:
    """float64[m] of m curves whose readings follow one another in `at_s` and `amps`; within `most_s` either way.

    The best of nine places for each curve, then of nine that are closer together, the mean drawn anew each time.
    """
    firsts = np.concatenate([[0], np.cumsum(lengths)[:-1]])
    found = np.zeros(len(lengths))

    def squares(by_s: Values, mean: _Mean) -> Values:
        off = amps - mean.amps_at(at_s + np.repeat(by_s, lengths))
        return np.asarray(np.add.reduceat(off * off, firsts), dtype=np.float64)

    for span, knots in ROUNDS:
        mean = _mean_of(at_s + np.repeat(found, lengths), amps, pace_s, max(knots, _PER_KNOT / len(lengths)))
        places = [np.clip(found + share * span * most_s, -most_s, most_s) for share in _NINE]
        best = np.argmin([squares(place, mean) for place in places], axis=0)
        found = np.array(places)[best, np.arange(len(lengths))]
        found = found - np.mean(found)  # no curve is more right than another: together they stay at their trigger
    mean = _mean_of(at_s + np.repeat(found, lengths), amps, pace_s, max(ROUNDS[-1][1], _PER_KNOT / len(lengths)))
    kept, left = squares(np.zeros(len(lengths)), mean), squares(found, mean)
    free = max(len(amps) - mean.knots - len(lengths), 1)
    usual = float(np.median(left / lengths)) * len(amps) / free
    return np.where((np.abs(found) < most_s) & (kept - left > SURE_CHI_SQUARE * usual), found, 0.0)


def _mean_of(at_s: Values, amps: Values, pace_s: float, closest: float) -> _Mean:
    """`closest`: of its knots, in readings."""
    first_s, last_s = float(at_s.min()), float(at_s.max())
    # Millions of readings tell no more than their means in bins far finer than any knot.
    place = ((at_s - first_s) * (_FINER / pace_s)).astype(np.int64)
    count = np.bincount(place)
    filled = count > 0
    weight = np.sqrt(count[filled])
    middle_s = np.bincount(place, weights=at_s)[filled] / count[filled]
    mean = np.bincount(place, weights=amps)[filled] / count[filled]
    knots = knots_of(first_s, last_s, closest * pace_s, fast_s=(-pace_s, FAST_INTERVALS * pace_s))
    design = splines(middle_s, knots) * weight[:, None]
    squares = design.T @ design
    # Where a spline has no reading of its own the curve goes straight on.
    bent = np.diff(np.eye(len(squares)), 2, axis=0)
    squares += STIFF * float(np.mean(np.diag(squares))) * (bent.T @ bent)
    solved = np.linalg.solve(squares, design.T @ (mean * weight))
    fine_s = np.linspace(first_s, last_s, min(_FINER * int((last_s - first_s) / pace_s) + 2, _MOST_POINTS))
    smooth = np.asarray(splines(fine_s, knots) @ solved, dtype=np.float64)
    return _Mean(
        t_s=fine_s, amps=smooth, slope=np.asarray(np.gradient(smooth, fine_s), dtype=np.float64), knots=len(knots)
    )
