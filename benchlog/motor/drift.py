"""How a current drifts over minutes and hours: falling, then flat; still falling; rising; or it can't be told.

Readings of one motor are not independent: brushes and bearings wander for minutes. So slopes are fitted to the means of
a few long blocks, and their interval is widened by what neighbouring blocks still have in common.

What is said rests on three looks. The tail: does the current change by more than a share of itself in the time asked
for? The whole: has it risen from its lowest settled value? The beginning: was it higher than the tail is?
"""

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
import numpy.typing as npt

from benchlog.quantities import show

Floats = npt.NDArray[np.float64]
BLOCKS, MOST_BLOCKS = 10, 400
_STUDENT = (4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306)
"""Student's t for 2 to 8 degrees of freedom, 95 % two-sided. Source: computed with scipy."""
_MOST_SHARED = 0.85
LEAST_POINTS = 20
TAIL_SHARE = 0.25
"""Of the record is its tail, where no time is asked for."""
BEGINNING = 200
"""Part of the readings whose mean is told as what it began with."""
RISEN_SHARE = 0.05
"""Of the lowest settled current: a rise of more is one. Starting value of this project."""
_SIGMAS = 4.0


class Verdict(StrEnum):
    FALLING_THEN_FLAT = "falling-then-flat"
    FALLING = "falling"
    FLAT = "flat"
    RISING = "rising"
    UNDETERMINED = "undetermined"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """A/s of a stretch with its 95 % interval, and its mean, A."""

    value: float
    low: float
    high: float
    mean: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Drift:
    """What a current does. Slope of the tail in A/s with its 95 % interval; None where there is too little to tell.

    `flat_since_s`: on the record's own time, from when on it stayed as it is; None unless it is flat. `words`: a
    sentence. `first`, `last`: A, mean of the first readings and of the tail.
    """

    verdict: Verdict
    slope: float | None
    slope_low: float | None
    slope_high: float | None
    flat_since_s: float | None
    first: float | None
    last: float | None
    words: str


def drift(t_s: npt.ArrayLike, amps: npt.ArrayLike, *, for_s: float | None = None, share: float = 0.02) -> Drift:
    """`t_s`: s[n], rising; `amps`: A[n]. Flat: changes by no more than `share` of itself in `for_s`.

    `for_s` None: in the record's last quarter. Raises ValueError for arrays that do not fit one another.
    """
    t, a = np.asarray(t_s, dtype=np.float64), np.asarray(amps, dtype=np.float64)
    if t.shape != a.shape or t.ndim != 1:
        raise ValueError(f"{t.shape} times and {a.shape} currents do not fit one another")
    span_s = float(t[-1] - t[0]) if t.size else 0.0
    tail_s = TAIL_SHARE * span_s if for_s is None else min(for_s, span_s)
    tail = slope_of(t, a, t[-1] - tail_s) if t.size else None
    if tail is None or tail.mean <= 0 or (for_s is not None and span_s < 0.98 * for_s):
        return _undetermined("too little was recorded to tell a drift")
    times, means = _fine(t, a, tail_s)
    first, lowest, noise = _levels(means)
    began = float(a[: max(1, a.size // BEGINNING)].mean())
    rises = _rises(t, a, times, means, tail_s)
    told = _verdict(tail, tail_s, share, first=first, lowest=lowest, noise=noise, rises=rises)
    flat_since_s = None
    if told in (Verdict.FLAT, Verdict.FALLING_THEN_FLAT):
        flat_since_s = _flat_since(times, means, tail, tail_s, share)
    return Drift(
        verdict=told,
        slope=tail.value,
        slope_low=tail.low,
        slope_high=tail.high,
        flat_since_s=flat_since_s,
        first=began,
        last=tail.mean,
        words=_words(
            told, first=began, last=tail.mean, lowest=lowest, over_s=span_s, flat_s=float(t[-1]) - (flat_since_s or 0.0)
        ),
    )


def slope_of(t: Floats, a: Floats, since_s: float) -> Slope | None:
    """Of the stretch since then; None where it has fewer than LEAST_POINTS readings."""
    kept = t >= since_s
    if np.count_nonzero(kept) < LEAST_POINTS:
        return None
    times, means = _blocks(t[kept], a[kept], BLOCKS)
    if len(times) < BLOCKS:
        return None
    around = times - times.mean()
    value = float((around * means).sum() / (around**2).sum())
    left = means - means.mean() - value * around
    squares = float((left**2).sum())
    # A line through n blocks hides some of what neighbours share: the estimate is short by some (2 + 4 shared) / n.
    shared = (float((left[1:] * left[:-1]).sum()) / max(squares, 1e-300) + 2 / BLOCKS) / (1 - 4 / BLOCKS)
    shared = min(_MOST_SHARED, max(0.0, shared))
    free = max(2, round(BLOCKS * (1 - shared) / (1 + shared)) - 2)
    wider = _STUDENT[free - 2] * math.sqrt((1 + shared) / (1 - shared))
    half = wider * math.sqrt(squares / (BLOCKS - 2) / float((around**2).sum()))
    return Slope(value=value, low=value - half, high=value + half, mean=float(means.mean()))


def flat_over(t_s: Floats, amps: Floats, for_s: float, share: float) -> bool:
    """Whether the last `for_s` are all there and the current changed by no more than `share` of itself over them."""
    if not t_s.size or t_s[-1] - t_s[0] < 0.95 * for_s:
        return False
    slope = slope_of(t_s, amps, t_s[-1] - for_s)
    return slope is not None and max(abs(slope.low), abs(slope.high)) * for_s <= share * abs(slope.mean)


def _blocks(t: Floats, a: Floats, count: int) -> tuple[Floats, Floats]:
    """Mean time and current of `count` equal spans, those without a reading left out."""
    span = max(float(t[-1] - t[0]), 1e-9)
    place = np.minimum(((t - t[0]) / span * count).astype(np.int64), count - 1)
    held = np.bincount(place, minlength=count)
    there = held > 0
    return (
        np.bincount(place, weights=t, minlength=count)[there] / held[there],
        np.bincount(place, weights=a, minlength=count)[there] / held[there],
    )


def _fine(t: Floats, a: Floats, tail_s: float) -> tuple[Floats, Floats]:
    """The whole in blocks as long as a tenth of the tail."""
    count = round(float(t[-1] - t[0]) / max(tail_s / BLOCKS, 1e-9))
    return _blocks(t, a, max(BLOCKS, min(MOST_BLOCKS, count)))


def _levels(means: Floats) -> tuple[float, float, float]:
    """A: at the beginning, the lowest settled, and how much a block wanders by itself."""
    # Second differences leave a steady slope out.
    wander = float(np.median(np.abs(np.diff(means, 2)))) / (0.6745 * math.sqrt(6)) if len(means) > 2 else 0.0
    settled = np.convolve(means, np.ones(3) / 3, mode="valid") if len(means) >= 3 else means
    return float(means[0]), float(settled.min()), wander


def _rises(t: Floats, a: Floats, times: Floats, means: Floats, tail_s: float) -> Slope | None:
    """The slope since the current was lowest; None where that is its tail."""
    since_s = float(times[int(means.argmin())])
    return slope_of(t, a, since_s) if since_s < t[-1] - tail_s else None


def _verdict(
    tail: Slope, tail_s: float, share: float, *, first: float, lowest: float, noise: float, rises: Slope | None
) -> Verdict:
    low, high, value = (slope * tail_s / tail.mean for slope in (tail.low, tail.high, tail.value))
    risen = tail.mean - lowest > RISEN_SHARE * lowest + _SIGMAS * noise and rises is not None and rises.low > 0
    if risen or (low > 0 and value > share):
        return Verdict.RISING
    if high < 0 and value < -share:
        return Verdict.FALLING
    if not (-share <= low and high <= share):
        return Verdict.UNDETERMINED
    fell = first - tail.mean > max(RISEN_SHARE, 2 * share) * tail.mean + _SIGMAS * noise
    return Verdict.FALLING_THEN_FLAT if fell else Verdict.FLAT


def _flat_since(times: Floats, means: Floats, tail: Slope, tail_s: float, share: float) -> float:
    """From when on every block stays within twice the share, and what blocks wander, of the tail."""
    in_tail = means[times >= times[-1] - tail_s]
    within = 2 * share * tail.mean + 3 * float(np.std(in_tail))
    out = np.flatnonzero(np.abs(means - tail.mean) > within)
    return float(times[0]) if len(out) == 0 else float(times[min(int(out[-1]) + 1, len(times) - 1)])


def _undetermined(words: str) -> Drift:
    return Drift(
        verdict=Verdict.UNDETERMINED,
        slope=None,
        slope_low=None,
        slope_high=None,
        flat_since_s=None,
        first=None,
        last=None,
        words=words,
    )


def _words(told: Verdict, *, first: float, last: float, lowest: float, over_s: float, flat_s: float) -> str:
    from_to = f"from {show(first, 'A')} to {show(last, 'A')} in {minutes(over_s)}"
    match told:
        case Verdict.FALLING_THEN_FLAT:
            return f"the current fell {from_to} and has been flat for the last {minutes(flat_s)}"
        case Verdict.FALLING:
            return f"the current still falls, {from_to}"
        case Verdict.RISING:
            return f"the current rises: {show(lowest, 'A')} at its lowest, now {show(last, 'A')}: binding or brushes"
        case Verdict.FLAT:
            return f"the current is flat, {show(last, 'A')} over {minutes(over_s)}"
    return f"whether the current still changes can't be told, {show(last, 'A')} at the end"


def minutes(span_s: float) -> str:
    """A time as people say it: 45 s, 12 min, 3 h 20 min."""
    if span_s < 90:
        return f"{span_s:.0f} s"
    whole = round(span_s / 60)
    return f"{whole} min" if whole < 120 else f"{whole // 60} h {whole % 60} min".replace(" 0 min", "")


class Course:
    """A current over any time in at most `MOST` means of equal spans: when it is full, neighbours become one."""

    MOST = 512

    def __init__(self, span_s: float = 1.0) -> None:
        self.span_s = span_s
        self._times: list[float] = []
        self._means: list[float] = []
        self._counts: list[int] = []
        self._began_s: float | None = None

    def add(self, t_s: float, amps: float) -> None:
        if self._times and t_s - self._place(t_s) < 0:
            raise ValueError(f"{t_s} s is before the last reading")
        begins_s = self._place(t_s)
        if self._began_s == begins_s:
            count = self._counts[-1]
            self._times[-1] += (t_s - self._times[-1]) / (count + 1)
            self._means[-1] += (amps - self._means[-1]) / (count + 1)
            self._counts[-1] = count + 1
            return
        if len(self._times) == self.MOST:
            self._halve()
            begins_s = self._place(t_s)
        self._times.append(t_s)
        self._means.append(amps)
        self._counts.append(1)
        self._began_s = begins_s

    def _place(self, t_s: float) -> float:
        return math.floor(t_s / self.span_s) * self.span_s

    def _halve(self) -> None:
        self.span_s *= 2
        times, means, counts = self._times, self._means, self._counts
        self._times, self._means, self._counts = [], [], []
        self._began_s = None
        for t_s, amps, count in zip(times, means, counts, strict=True):
            begins_s = self._place(t_s)
            if self._began_s == begins_s:
                both = self._counts[-1] + count
                self._times[-1] += (t_s - self._times[-1]) * count / both
                self._means[-1] += (amps - self._means[-1]) * count / both
                self._counts[-1] = both
            else:
                self._times.append(t_s)
                self._means.append(amps)
                self._counts.append(count)
                self._began_s = begins_s

    def since(self, since_s: float) -> tuple[Floats, Floats]:
        """s[n] and A[n], n at most MOST, from an instant on."""
        times = np.array(self._times)
        kept = times >= since_s
        return times[kept], np.array(self._means)[kept]

    def forget_before(self, t_s: float) -> None:
        """For a course of the last minutes only."""
        gone = int(np.searchsorted(np.array(self._times), t_s))
        del self._times[:gone], self._means[:gone], self._counts[:gone]

    def __len__(self) -> int:
        return len(self._times)
