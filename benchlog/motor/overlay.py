"""Starts laid over one another: aligned at the trigger, their mean and how far they spread.

The trigger is known to a reading or so. A shift of less than that is fitted for each curve, and applied only where the
curve then fits the others better than noise explains.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from benchlog.motor.offsets import offsets_of
from benchlog.motor.startup import Values, timing_of
from benchlog.records import TICK_S, Event, EventKind, Trace

GAP_INTERVALS = 3.0
"""A curve says nothing within a hole in its readings longer than this."""
MOST_POINTS = 5000
"""Of the grid: more are not told apart on a screen."""
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
    times_s = np.concatenate([curve.t_s[[0, -1]] for curve in usable])
    pace_s = max(float(np.median([curve.interval_s for curve in usable])), float(np.ptp(times_s)) / MOST_POINTS)
    offsets = offsets_of([(curve.t_s, curve.amps) for curve in curves], pace_s)
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
