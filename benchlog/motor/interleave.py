"""One curve from several starts whose readings fall at different phases: denser than one readback allows.

It holds where the same start came each time, which is tested: what the starts have in common is fitted smoothly, and
whether each differs from it in size, level or pace by more than its readings scatter. It stays an average over the
supply's window, so that what is shorter than that is not in it, however many starts there are: never the real inrush.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from benchlog.motor.fit import correlated
from benchlog.motor.overlay import Curve
from benchlog.motor.splines import fitted, inverse, knots_of, splines
from benchlog.motor.startup import SETTLE_S, Values
from benchlog.quantities import show

SURE_Z = 2.58
"""Of the normal distribution, by which starts must differ: one set in 200 by chance. Starting value of this project."""
LEAST_DIFFERENCE = 0.01
"""Of the surge: starts that differ by less, however surely, may fill in one curve. Starting value of this project."""
HOLE_INTERVALS = 2.5
LEAST_READINGS = 8
REWEIGHTED = 2
IT_STAYS_AN_AVERAGE = "each point is still an average over the supply's window"


@dataclass(frozen=True, slots=True, kw_only=True)
class Interleaved:
    """`curve`: of all starts together, None where they were not `same` or can't fill in. `why`: in words.

    `interval_s`: from point to point. `difference`: rms of the starts from what they have in common, share of the
    surge. `z`: how surely they differ, in standard deviations of a normal one.
    """

    curve: Curve | None
    same: bool
    why: str
    interval_s: float
    difference: float
    z: float


def interleaved(curves: Sequence[Curve], delays_s: Sequence[float], *, settle_s: float = SETTLE_S) -> Interleaved:
    """`delays_s`: by how much later each start's readings fall, as planned; only whether they differ matters here."""
    if len(curves) != len(delays_s):
        raise ValueError("one delay for each curve")
    if len(set(np.round(delays_s, 6))) < 2:
        return _refused("the starts were all read at the same phase: there is nothing to fill in")
    if len({curve.window_s for curve in curves}) > 1:
        return _refused("the starts were averaged over different windows")
    # While the supply still settles readings differ by when they were taken, which is known to half an interval.
    settled_s = settle_s + 0.5 * (curves[0].window_s + max(curve.interval_s for curve in curves))
    after = [curve.t_s >= settled_s for curve in curves]
    if min(int(kept.sum()) for kept in after) < LEAST_READINGS:
        return _refused("too few readings of a start to tell whether it was the same each time")
    z, difference = _differ(
        [curve.t_s[kept] for curve, kept in zip(curves, after, strict=True)],
        [curve.amps[kept] for curve, kept in zip(curves, after, strict=True)],
        curves[0].window_s,
    )
    if z > SURE_Z and difference > LEAST_DIFFERENCE:
        return replace(
            _refused(
                f"the starts differ by {difference:.1%} of the surge, more than their readings scatter: it was not the "
                "same start each time"
            ),
            difference=difference,
            z=z,
        )
    curve = _together(curves)
    return Interleaved(
        curve=curve,
        same=True,
        why=f"{len(curves)} starts, the same within what their readings scatter; {IT_STAYS_AN_AVERAGE}{_hole(curve)}",
        interval_s=curve.interval_s,
        difference=difference,
        z=z,
    )


def _refused(why: str) -> Interleaved:
    return Interleaved(curve=None, same=False, why=why, interval_s=0.0, difference=math.nan, z=math.nan)


def _together(curves: Sequence[Curve]) -> Curve:
    t_s = np.concatenate([curve.t_s for curve in curves])
    order = np.argsort(t_s, kind="stable")
    volts, amps = (np.concatenate([getattr(curve, name) for curve in curves])[order] for name in ("volts", "amps"))
    return replace(curves[0], name=f"{len(curves)} starts together", t_s=t_s[order], volts=volts, amps=amps)


def _hole(curve: Curve) -> str:
    """In words, where after the trigger no start has a reading."""
    t_s = curve.t_s[max(0, int(np.searchsorted(curve.t_s, 1e-6)) - 1) :]
    apart = np.diff(t_s)
    if not apart.size or apart.max() <= HOLE_INTERVALS * curve.interval_s:
        return ""
    at = int(np.argmax(apart))
    return f"; between {show(float(t_s[at]), 's')} and {show(float(t_s[at + 1]), 's')} none of them was read"


def _differ(t_s: Sequence[Values], amps: Sequence[Values], window_s: float) -> tuple[float, float]:
    """z of an F test of one smooth curve for all against one that each may differ from, and the rms difference as a
    share of the surge.

    Each may differ in level, in size of the surge and in its pace: three numbers a start, less those in common.
    """
    at_s, read = np.concatenate(t_s), np.concatenate(amps)
    pace_s = float(np.median(np.concatenate([np.diff(one) for one in t_s])))
    first_s = float(at_s.min())
    smooth = splines(at_s, knots_of(first_s, float(at_s.max()), pace_s, fast_s=(first_s, first_s)))
    common, _ = fitted(smooth, read)
    steady = float(np.mean(read[at_s >= 0.75 * at_s.max()]))
    surge = float(np.max(common)) - steady
    share = np.clip((common - steady) / max(surge, 1e-9), 0.0, 1.0)
    shapes = np.stack([np.ones_like(share), share, -share * np.log(np.maximum(share, 1e-6))], axis=1)
    start = np.repeat(np.arange(len(t_s)), [len(one) for one in t_s])
    own = np.concatenate([np.where((start == k)[:, None], shapes, 0.0) for k in range(1, len(t_s))], axis=1)
    both = np.concatenate([smooth, own], axis=1)
    more, free = own.shape[1], len(read) - both.shape[1]
    sigma = np.ones_like(read)
    for _ in range(REWEIGHTED):
        each, _ = fitted(both, read, sigma)
        sigma = _scatter(at_s, common, read - each, both / sigma[:, None])
    common, left = fitted(smooth, read, sigma)
    each, left_each = fitted(both, read, sigma)
    residual = (read - each) / sigma
    once = max(1.0, window_s / pace_s, *(correlated(residual[start == k]) for k in range(len(t_s))))
    ratio = (left - left_each) / more / max(left_each / free, 1e-18) / once
    apart = _largest(at_s, each - common) / max(surge, abs(steady), 1e-9)
    return _z_of_f(ratio, more, max(free / once, 1.0)), apart


def _scatter(at_s: Values, common: Values, residual: Values, design: npt.NDArray[np.float64]) -> Values:
    """A, float64[n]: one part everywhere, and one that grows with the slope, since the instant that a reading stands
    for is not known to the millisecond. From the residuals, each over what the fit leaves of it."""
    order = np.argsort(at_s, kind="stable")
    slope = np.empty_like(common)
    slope[order] = np.gradient(common[order], at_s[order] + 1e-9 * np.arange(len(order)))
    left = 1.0 - np.sum((design @ inverse(design)) * design, axis=1)
    kept = left > 0.1
    squares, steep = residual[kept] ** 2 / left[kept], slope[kept] ** 2
    flat = steep <= np.quantile(steep, 0.5)
    still = float(np.mean(squares[flat])) + 1e-18
    moving = float(np.sum(np.maximum(squares - still, -still) * steep)) / max(float(np.sum(steep**2)), 1e-300)
    return np.asarray(np.sqrt(still + max(moving, 0.0) * slope**2), dtype=np.float64)


def _largest(at_s: Values, apart: Values) -> float:
    """A: the starts' rms difference where it is largest, over as many neighbouring readings as an eighth of them."""
    squares = (apart**2)[np.argsort(at_s)]
    over = max(1, len(squares) // 8)
    sums = np.cumsum(np.concatenate([[0.0], squares]))
    return float(np.sqrt(np.max(sums[over:] - sums[:-over]) / over))


def _z_of_f(ratio: float, more: float, free: float) -> float:
    """The normal quantile that belongs to F. Source: Paulson's approximation, from memory."""
    a, b, root = 2 / (9 * more), 2 / (9 * free), max(ratio, 1e-9) ** (1 / 3)
    return float(((1 - b) * root - (1 - a)) / math.sqrt(b * root * root + a))
