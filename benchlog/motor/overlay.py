"""Starts laid over one another: aligned at the trigger, their mean and how far they spread.

The trigger is known to a reading or so. A shift of less than that is fitted for each curve, and applied only where the
curve then fits the others better than noise explains.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from benchlog.motor.splines import knots_of, splines
from benchlog.motor.startup import Values, timing_of
from benchlog.records import TICK_S, Event, EventKind, Trace

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
GAP_INTERVALS = 3.0
"""A curve says nothing within a hole in its readings longer than this."""
FAST_INTERVALS = 20.0
"""After the trigger, the mean is followed at its finest for so many readings. Starting value of this project."""
_FINER = 8
_NINE = np.linspace(-1.0, 1.0, 9)
_PER_KNOT = 2
_MOST_POINTS = 5000
Counts = npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """One start as it was read back. `number`: of the start in `run`; `window_s`: what a reading is an average over.

    t_s: float64[n], s since the trigger, rising, below zero before it; volts, amps: float64[n]. `dense`: measured by
    the supply itself into an array, not polled.
    """

    name: str
    run: int
    number: int
    t_s: Values
    volts: Values
    amps: Values
    window_s: float
    dense: bool = False

    @property
    def interval_s(self) -> float:
        """Median, from reading to reading; 0 for fewer than two."""
        return float(np.median(np.diff(self.t_s))) if len(self.t_s) > 1 else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Overlay:
    """Of several curves, on a common grid of g points. NaN where fewer curves than needed say anything.

    grid_s: float64[g], s since the trigger. mean_amps, mean_volts: of one curve or more. spread_amps: standard
    deviation between curves, of two or more. count: int64[g]. offsets_s: float64[curves], by how much each was moved
    to later; 0 where its trigger was kept.
    """

    grid_s: Values
    mean_amps: Values
    spread_amps: Values
    mean_volts: Values
    offsets_s: Values
    count: Counts


def at_motor(curve: Curve, lead_ohm: float) -> Curve:
    """The same with the drop of the leads taken out of its volts."""
    return replace(curve, volts=curve.volts - lead_ohm * curve.amps)


def curves_of(trace: Trace, events: Iterable[Event], *, run: int, before_s: float) -> list[Curve]:
    """One for each START event: from `before_s` before the trigger until level or limit changed."""
    told = list(events)
    window_s, _ = timing_of(told)
    sent_s = trace.sent * TICK_S
    middle_s = np.asarray(0.5 * ((trace.sent + trace.received) * TICK_S - window_s), dtype=np.float64)
    found: list[Curve] = []
    for event in told:
        trigger_s, began_s = event.values.get("trigger_s"), event.values.get("began_s")
        if event.kind is not EventKind.START or not isinstance(trigger_s, int | float):
            continue
        driven_s = float(began_s) if isinstance(began_s, int | float) else float(trigger_s)
        first = int(np.searchsorted(sent_s, driven_s - TICK_S / 2))
        if first >= len(sent_s):
            continue
        # The look afterwards has the same volts at next to no current.
        same = (trace.set_volts[first:] == trace.set_volts[first]) & (trace.set_amps[first:] == trace.set_amps[first])
        other = np.flatnonzero(~same)
        end = first + int(other[0]) if len(other) else len(sent_s)
        begin = int(np.searchsorted(middle_s, trigger_s - before_s))
        kept = slice(min(begin, first), end)
        number = int(event.values.get("number") or len(found) + 1)
        found.append(
            Curve(
                name=f"start {number}",
                run=run,
                number=number,
                t_s=middle_s[kept] - trigger_s,
                volts=trace.volts[kept],
                amps=trace.amps[kept],
                window_s=window_s,
            )
        )
    return found


def overlay(curves: Sequence[Curve]) -> Overlay:
    """Raises ValueError without a curve of two readings or more."""
    usable = [curve for curve in curves if len(curve.t_s) > 1]
    if not usable:
        raise ValueError("an overlay takes a curve of two readings or more")
    pace_s = float(np.median([curve.interval_s for curve in usable]))
    offsets = _offsets(curves, pace_s)
    first_s = min(float(c.t_s[0] + o) for c, o in zip(curves, offsets, strict=True) if len(c.t_s) > 1)
    last_s = max(float(c.t_s[-1] + o) for c, o in zip(curves, offsets, strict=True) if len(c.t_s) > 1)
    grid = pace_s * np.arange(np.ceil(first_s / pace_s), np.floor(last_s / pace_s) + 1)
    amps, volts = np.full((len(curves), len(grid)), np.nan), np.full((len(curves), len(grid)), np.nan)
    for row, (curve, offset_s) in enumerate(zip(curves, offsets, strict=True)):
        if len(curve.t_s) > 1:
            at_s = curve.t_s + offset_s
            silent = _silent(at_s, grid)
            amps[row], volts[row] = np.interp(grid, at_s, curve.amps), np.interp(grid, at_s, curve.volts)
            amps[row, silent] = volts[row, silent] = np.nan
    count = np.sum(~np.isnan(amps), axis=0)
    some, several = np.maximum(count, 1), np.maximum(count - 1, 1)
    mean = np.where(count > 0, np.nansum(amps, axis=0) / some, np.nan)
    spread = np.sqrt(np.nansum((amps - mean) ** 2, axis=0) / several)
    return Overlay(
        grid_s=grid,
        mean_amps=mean,
        spread_amps=np.where(count > 1, spread, np.nan),
        mean_volts=np.where(count > 0, np.nansum(volts, axis=0) / some, np.nan),
        offsets_s=offsets,
        count=count.astype(np.int64),
    )


def _silent(at_s: Values, grid: Values) -> npt.NDArray[np.bool_]:
    """bool[g]: before the first reading, after the last, or within a hole."""
    after = np.searchsorted(at_s, grid)
    outside = (grid < at_s[0]) | (grid > at_s[-1])
    inner = np.clip(after, 1, len(at_s) - 1)
    apart = at_s[inner] - at_s[inner - 1]
    return np.asarray(outside | ((apart > GAP_INTERVALS * np.median(np.diff(at_s))) & (at_s[inner] != grid)))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Mean:
    """A smooth curve through all readings together: float64[m] each; slope in A/s; of how many knots."""

    t_s: Values
    amps: Values
    slope: Values
    knots: int

    def amps_at(self, at_s: Values) -> Values:
        return np.asarray(np.interp(at_s, self.t_s, self.amps), dtype=np.float64)


def _offsets(curves: Sequence[Curve], pace_s: float) -> Values:
    """float64[curves]: how much later each belongs, by least squares against the mean of all."""
    offsets = np.zeros(len(curves))
    able = [row for row, curve in enumerate(curves) if len(curve.t_s) >= LEAST_READINGS]
    if len(able) < 2:
        return offsets
    mean = _rough_mean([curves[row] for row in able], pace_s)
    parts = {row: _changing(curves[row], mean, pace_s) for row in able}
    rows = [row for row in able if len(parts[row]) >= LEAST_CHANGING and _alike(curves[row], parts[row], mean)]
    if len(rows) < 2:
        return offsets
    offsets[rows] = _fit_offsets(
        np.concatenate([curves[row].t_s[parts[row]] for row in rows]),
        np.concatenate([curves[row].amps[parts[row]] for row in rows]),
        np.array([len(parts[row]) for row in rows]),
        np.array([curves[row].interval_s for row in rows]),
        pace_s,
    )
    return offsets


def _rough_mean(curves: Sequence[Curve], pace_s: float) -> _Mean:
    return _mean_of(np.concatenate([c.t_s for c in curves]), np.concatenate([c.amps for c in curves]), pace_s, 1.0)


def _changing(curve: Curve, mean: _Mean, pace_s: float) -> Counts:
    """int64[m]: its readings where the slope is worth something to an alignment, and one more to either side; no more
    than enough."""
    steep = np.flatnonzero(np.abs(mean.slope) >= CHANGES_SHARE * float(np.max(np.abs(mean.slope))))
    begin_s, end_s = float(mean.t_s[steep[0]]) - pace_s, float(mean.t_s[steep[-1]]) + pace_s
    within = np.flatnonzero((curve.t_s >= begin_s) & (curve.t_s <= end_s))
    return within[:: 1 + len(within) // ENOUGH_READINGS]


def _alike(curve: Curve, part: Counts, mean: _Mean) -> bool:
    off = curve.amps[part] - mean.amps_at(curve.t_s[part])
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
