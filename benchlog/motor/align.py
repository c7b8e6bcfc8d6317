"""Where in a run a curve belongs that was taken by another instrument, and how well that is known.

A readback is an average over the supply's window. So the curve is averaged over the same window at each reading's
middle before the two are compared: readback = zero + gain × average. A first offset is where they correlate best; from
there Gauss-Newton on zero, gain and offset gives the offset finer than a sample and its interval. What does not change
can't be placed, and what is alike in two places isn't told apart by its shape: both end in a reason, not in an offset.
"""

import math
from dataclasses import dataclass

import numpy as np

from benchlog.motor.fit import LEAST_READINGS, Fitted
from benchlog.motor.startup import Values, t95
from benchlog.records import TICK_S, Trace

NEAR_S = 1.0
"""How far from the place named an offset is looked for."""
LEAST_ALIKE = 0.8
"""Share of the readings' variance that the curve must explain where it is laid."""
AS_WELL = 4.0
"""A place fits nearly as well where it leaves less than this many times the best one's share unexplained.

Starting value of this project. Measured on 800 made-up decays read 5 and 10 times a second: without it 21 of 598
offsets told were over 2 ms outside their interval, with it none of 574."""
_NO_EDGE = "the curve and the readback share no edge by which one could be laid on the other"
LEAST_SHARED = 0.5
"""Of the shorter of the two records, that the other must cover."""
_PLACES, _STEPS, _MOST_POINTS = 6, 12, 1 << 20
_LEAST_STEP_S, _WIDER, _MOST_CONDITION = 1e-6, 1.5, 1e6


@dataclass(frozen=True, slots=True, kw_only=True)
class Aligned:
    """`offset_s`: to be added to the curve's times, with its 95 % interval; None where it can't be told, with `why`.

    readback = zero + gain × averaged curve, over `readings` of them; `left`: standard deviation of what remains, in the
    readings' unit. All None or 0 where nothing could be laid at all.
    """

    offset_s: Fitted | None
    gain: Fitted | None = None
    zero: float | None = None
    left: float | None = None
    readings: int = 0
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    offset_s: float
    u_offset_s: float
    doubt_s: float
    gain: float
    u_gain: float
    zero: float
    left: float
    unexplained: float
    readings: int
    pace_s: float


class Averages:
    """Means of a curve over windows: exact integrals of the straight lines between its samples."""

    def __init__(self, t_s: Values, values: Values) -> None:
        self._t_s, self._values = t_s, values
        self._areas = np.concatenate(([0.0], np.cumsum(np.diff(t_s) * 0.5 * (values[1:] + values[:-1]))))

    def over(self, middle_s: Values, window_s: float) -> Values:
        """float64[n], of windows about `middle_s` (s, in the curve's time) that lie within the curve."""
        half = 0.5 * window_s
        return np.asarray((self._area(middle_s + half) - self._area(middle_s - half)) / window_s, dtype=np.float64)

    def _area(self, t_s: Values) -> Values:
        at = np.clip(np.searchsorted(self._t_s, t_s, side="right") - 1, 0, len(self._t_s) - 2)
        since = t_s - self._t_s[at]
        slope = (self._values[at + 1] - self._values[at]) / (self._t_s[at + 1] - self._t_s[at])
        return np.asarray(self._areas[at] + since * (self._values[at] + 0.5 * slope * since), dtype=np.float64)


def middles(trace: Trace, window_s: float) -> Values:
    """float64[n], s since the run began: the middle of what each reading may be an average of, as a start's are."""
    return np.asarray(0.5 * ((trace.sent + trace.received) * TICK_S - window_s), dtype=np.float64)


def align(
    t_s: Values,
    values: Values,
    middle_s: Values,
    readings: Values,
    *,
    window_s: float,
    near_s: float | None = None,
) -> Aligned:
    """Lays a curve on readings of the same quantity and unit; t_s and middle_s increase, s.

    `near_s`: an offset to look around, within NEAR_S. The interval is that of the fit: how far into its query a reading
    was taken is not in it. No offset is told where the interval is wider than the window, or than the readings' pace.
    Raises ValueError for fewer than two samples and for a window that is not above zero.
    """
    if len(t_s) < 2 or window_s <= 0:
        raise ValueError("a curve of two samples or more, and a window above zero, are needed")
    lasts_s = float(t_s[-1] - t_s[0])
    if len(middle_s) < LEAST_READINGS or lasts_s <= window_s:
        return Aligned(offset_s=None, why=_too_few(lasts_s))
    pace_s = float(np.median(np.diff(middle_s)))
    # About zero, so that sums over a million samples lose nothing.
    averages = Averages(t_s, values - float(np.mean(values)))
    where = "" if near_s is None else f" within {NEAR_S:g} s of the place named"
    offsets = _candidates(t_s, averages, middle_s, readings, window_s, pace_s, near_s)
    if not offsets and lasts_s - window_s > LEAST_READINGS * pace_s:
        return Aligned(offset_s=None, why=_NO_EDGE + where)
    laid = [_lay(offset_s, t_s, averages, middle_s, readings, window_s, pace_s) for offset_s in offsets]
    places = [place for place in laid if place is not None]
    if not places:
        return Aligned(offset_s=None, why=_too_few(lasts_s, where))
    best = min(places, key=lambda place: place.unexplained)
    told = Aligned(
        offset_s=None,
        gain=Fitted(value=best.gain, low=best.gain - best.u_gain, high=best.gain + best.u_gain),
        zero=best.zero - best.gain * float(np.mean(values)),
        left=best.left,
        readings=best.readings,
        why=_why_not(best, places, window_s),
    )
    if told.why:
        return told
    offset = Fitted(value=best.offset_s, low=best.offset_s - best.u_offset_s, high=best.offset_s + best.u_offset_s)
    return Aligned(offset_s=offset, gain=told.gain, zero=told.zero, left=told.left, readings=told.readings)


def _too_few(lasts_s: float, where: str = "") -> str:
    return f"the curve lasts {lasts_s:.3g} s, and fewer than {LEAST_READINGS} readings{where} lie within it"


def _why_not(best: _Place, places: list[_Place], window_s: float) -> str:
    pace_s = best.pace_s
    if 1 - best.unexplained < LEAST_ALIKE or best.gain <= best.u_gain or not math.isfinite(best.u_offset_s):
        return _NO_EDGE
    apart_s = _reach_s(window_s, pace_s)
    floor = AS_WELL * best.unexplained
    for other in places:
        if abs(other.offset_s - best.offset_s) > apart_s and other.unexplained <= floor and other.gain > 0:
            return f"{best.offset_s:.3f} s fits, and {other.offset_s:.3f} s nearly as well; say near which it belongs"
    within_s = max(best.u_offset_s, best.doubt_s)
    if 2 * within_s > min(window_s, pace_s):
        low, high = best.offset_s - within_s, best.offset_s + within_s
        most = "the averaging window" if window_s <= pace_s else "the pace of readings"
        return f"between {low:.3f} and {high:.3f} s, which is wider than {most} of {min(window_s, pace_s):.3g} s"
    return ""


def _candidates(
    t_s: Values,
    averages: Averages,
    middle_s: Values,
    readings: Values,
    window_s: float,
    pace_s: float,
    near_s: float | None,
) -> list[float]:
    """Offsets in s where the correlation has its highest peaks, highest first."""
    half = 0.5 * window_s
    first_s, last_s = float(t_s[0]) + half, float(t_s[-1]) - half
    run_s = float(middle_s[-1] - middle_s[0])
    step_s = max(0.5 * min(window_s, pace_s), (run_s + last_s - first_s) / _MOST_POINTS)
    curve = averages.over(np.arange(first_s, last_s, step_s), window_s)
    grid_s = np.arange(float(middle_s[0]), float(middle_s[-1]), step_s)
    run = np.interp(grid_s, middle_s, readings)
    alike = _correlation(curve, run, least=max(2.0, LEAST_SHARED * min(len(curve), len(run))))
    # Place k of it lays the curve's first point on the run's point k - (len(curve) - 1).
    offsets = (np.arange(len(alike)) - (len(curve) - 1)) * step_s + grid_s[0] - first_s
    if near_s is not None:
        alike[np.abs(offsets - near_s) > NEAR_S] = 0.0
    padded = np.concatenate(([-1.0], alike, [-1.0]))
    peaks = np.flatnonzero((alike > 0) & (padded[1:-1] >= padded[:-2]) & (padded[1:-1] >= padded[2:]))
    found: list[float] = []
    for at in peaks[np.argsort(alike[peaks])[::-1]]:
        if all(abs(offsets[at] - one) > _reach_s(window_s, pace_s) for one in found):
            found.append(float(offsets[at]))
            if len(found) == _PLACES:
                break
    return found


def _correlation(curve: Values, run: Values, *, least: float) -> Values:
    """float64[m + n - 1]: Pearson's, for every way to lay m points on n; 0 where fewer than `least` meet."""
    curve, run = curve - curve.mean(), run - run.mean()
    size = len(curve) + len(run) - 1
    fast = 1 << (size - 1).bit_length()

    def meeting(a: Values, b: Values) -> Values:
        product = np.fft.rfft(a[::-1], fast) * np.fft.rfft(b, fast)
        return np.asarray(np.fft.irfft(product, fast)[:size], dtype=np.float64)

    ones_curve, ones_run = np.ones_like(curve), np.ones_like(run)
    count = np.maximum(np.rint(meeting(ones_curve, ones_run)), 1.0)
    sum_curve, sum_run = meeting(curve, ones_run), meeting(ones_curve, run)
    spread_curve = count * meeting(curve * curve, ones_run) - sum_curve**2
    spread_run = count * meeting(ones_curve, run * run) - sum_run**2
    # Below a millionth of the whole spread there is nothing but rounding of the transform.
    seen = (spread_curve > 1e-6 * count**2 * np.mean(curve**2)) & (spread_run > 1e-6 * count**2 * np.mean(run**2))
    seen &= count >= least
    spread = np.where(seen, spread_curve * spread_run, 1.0)
    return np.where(seen, (count * meeting(curve, run) - sum_curve * sum_run) / np.sqrt(spread), 0.0)


def _reach_s(window_s: float, pace_s: float) -> float:
    """How far a place by correlation may be off; further away is another one."""
    return pace_s + 0.25 * window_s


def _lay(
    offset_s: float,
    t_s: Values,
    averages: Averages,
    middle_s: Values,
    readings: Values,
    window_s: float,
    pace_s: float,
) -> _Place | None:
    """The best place within a reading or a window of `offset_s`; None where too few readings lie within the curve."""
    # Readings that leave the curve on the way could not be compared.
    reach_s = _reach_s(window_s, pace_s)
    nudge_s = 0.125 * window_s
    edge_s = 0.5 * window_s + nudge_s + reach_s
    within = (middle_s >= t_s[0] + offset_s + edge_s) & (middle_s <= t_s[-1] + offset_s - edge_s)
    at_s, seen = middle_s[within], readings[within]
    count = len(seen)
    spread = float(np.sum((seen - seen.mean()) ** 2)) if count else 0.0
    if count < LEAST_READINGS or spread == 0:
        return None

    def solved(offset: float) -> tuple[float, float, Values]:
        average = averages.over(at_s - offset, window_s)
        about = average - average.mean()
        power = float(about @ about)
        gain = float(about @ seen) / power if power > 0 else 0.0
        zero = float(seen.mean() - gain * average.mean())
        return zero, gain, np.asarray(seen - zero - gain * average, dtype=np.float64)

    def design_at(offset: float, gain: float) -> Values:
        # The slope by time over part of a window: noise of single samples says nothing about time.
        sooner, now, later = (averages.over(at_s - offset - nudge, window_s) for nudge in (-nudge_s, 0.0, nudge_s))
        return np.stack([np.ones(count), now, gain * (later - sooner) / (2 * nudge_s)], axis=1)

    def left_at(offset: float) -> float:
        residual = solved(offset)[2]
        return float(residual @ residual)

    points = 1 + 2 * math.ceil(reach_s / (0.125 * window_s))
    scan = np.linspace(offset_s - reach_s, offset_s + reach_s, points)
    scanned = np.array([left_at(float(one)) for one in scan])
    offset, least = float(scan[np.argmin(scanned)]), float(scanned.min())
    for _ in range(_STEPS):
        _, gain, residual = solved(offset)
        step = float(np.linalg.lstsq(design_at(offset, gain), residual, rcond=None)[0][2])
        while abs(step) > _LEAST_STEP_S:
            new = min(max(offset + step, float(scan[0])), float(scan[-1]))
            if (left := left_at(new)) < least:
                offset, least = new, left
                break
            step *= 0.5
        else:
            break
    zero, gain, residual = solved(offset)
    resolution = _resolution(readings)
    variance = max(least / (count - 3), resolution**2 / 12)
    # Readings closer than the window, or with like remainders, tell the same thing more than once.
    local_s = float(np.median(np.diff(at_s)))  # a run is read more slowly while it rests
    once = max(1.0, window_s / local_s, _repeated(residual))
    allowed = t95(max(count / once - 3, 1.0)) ** 2 * variance * once
    u_gain, u_offset = (math.sqrt(allowed) * one for one in _spreads(design_at(offset, gain)))

    def edge(sign: int) -> float:
        """How far away the sum of squares still is what noise explains: an edge between two readings has no slope."""
        far = min(u_offset, reach_s)
        while far < 2 * reach_s and left_at(offset + sign * far) <= least + allowed:
            far *= _WIDER
        return far

    floor = max(least, count * resolution**2 / 12)
    # Noise of the curve itself makes one of many places that are alike the best by chance.
    alike = np.abs(scan[scanned <= AS_WELL * floor] - offset)
    return _Place(
        offset_s=offset,
        # Where between two samples of the curve an edge was is not known either.
        u_offset_s=math.hypot(max(u_offset, edge(-1), edge(1)), 0.5 * float(np.median(np.diff(t_s)))),
        doubt_s=float(alike.max(initial=0.0)),
        gain=gain,
        u_gain=u_gain,
        zero=zero,
        left=math.sqrt(least / (count - 3)),
        unexplained=floor / spread,
        readings=count,
        pace_s=local_s,
    )


def _spreads(design: Values) -> tuple[float, float]:
    """Standard deviations of gain and offset, for a variance of one."""
    scale = np.linalg.norm(design, axis=0)
    if not (scale > 0).all() or np.linalg.cond(design / scale) > _MOST_CONDITION:
        return math.inf, math.inf
    one = design / scale
    found = np.sqrt(np.diag(np.linalg.inv(one.T @ one))) / scale
    return float(found[1]), float(found[2])


def _resolution(readings: Values) -> float:
    apart = np.diff(np.unique(np.round(readings, 9)))
    return float(apart.min()) if len(apart) else 0.0


def _repeated(residual: Values) -> float:
    """How many remainders in a row tell as much as one that stands alone."""
    power = float(np.sum(residual**2))
    alike = float(np.sum(residual[1:] * residual[:-1])) / power if power > 0 else 0.0
    alike = min(max(alike, 0.0), 0.95)
    return (1 + alike) / (1 - alike)
