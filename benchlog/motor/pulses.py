"""Pulses of energy over any time, in as many bins as its logarithm, and what they stand for together at most.

For the bound of the winding's temperature, see benchlog.motor.heat.
"""

import math
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, field

_JOINED_S, _JOINED_LATER_S = 0.1, 2.0
_LATER_S = 3.0
_WIDEST_S, _WIDEST_LATER_S = 0.2, 1.0
"""s: a bin counts at its latest instant, where a light winding still has nearly all of it."""
_SHARE_OF_AGE = 0.08
_OLD_RENEW_S, _MANY = 0.5, 64


@dataclass(slots=True)
class _Bin:
    """Energy of about one power: J, the largest W, and from when to when it went in."""

    first_s: float
    last_s: float
    joules: float
    watts: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What old bins stand for at an instant: W, K and K/W of each, the largest W first, and the sums of K and K/W."""

    at_s: float
    left: Callable[[float], float]
    parts: list[tuple[float, float, float]]
    rise_k: float
    area: float


@dataclass(slots=True)
class Pulses:
    """What went in, old pulses joined into bins that widen with their age: as many as the logarithm of the time.

    A bin counts as having gone in at its latest instant, where it is hottest, at the largest of its powers: joining can
    only raise what it stands for. Powers apart by more than a half share no bin, so that a short surge does not count
    for the hours around it.
    """

    _fresh: dict[int, deque[_Bin]] = field(default_factory=dict)
    _old: dict[int, list[_Bin]] = field(default_factory=dict)
    _told: "_Told | None" = None

    def add(self, at_s: float, joules: float, watts: float) -> None:
        kind = _kind(watts)
        bins = self._fresh.setdefault(kind, deque())
        last = bins[-1] if bins else None
        if last is not None and at_s - last.last_s < _JOINED_S and at_s - last.first_s < _WIDEST_S:
            _join(last, at_s, joules, watts)
        else:
            bins.append(_Bin(at_s, at_s, joules, watts))
            self._age(at_s)

    def _age(self, at_s: float) -> None:
        for kind, bins in self._fresh.items():
            old = self._old.setdefault(kind, [])
            moved = False
            while bins and at_s - bins[0].last_s > _LATER_S:
                one, moved = bins.popleft(), True
                last = old[-1] if old else None
                close = last is not None and one.last_s - last.last_s < _JOINED_LATER_S
                if last is not None and close and one.last_s - last.first_s < _WIDEST_LATER_S:
                    _join(last, one.last_s, one.joules, one.watts)
                else:
                    old.append(one)
            if moved:
                self._old[kind], self._told = _thinned(old, at_s), None

    def rise_k(self, at_s: float, left: Callable[[float], float], most_k_w: float) -> float:
        """K at most: the largest powers take the area of `most_k_w` first."""
        old = self._old_parts(at_s, left)
        fresh = [_part(one, at_s, left) for bins in self._fresh.values() for one in bins]
        if old.area + sum([area for _, _, area in fresh]) <= most_k_w:
            return old.rise_k + sum([k for _, k, _ in fresh])
        rise = 0.0
        for watts, k, area in sorted(old.parts + fresh, reverse=True):
            if area >= most_k_w:
                return rise + most_k_w * watts
            rise += k
            most_k_w -= area
        return rise

    def _old_parts(self, at_s: float, left: Callable[[float], float]) -> "_Told":
        """Where they are many, as they stood a moment ago: they can only have cooled since."""
        told = self._told
        if told is not None and told.left == left and 0 <= at_s - told.at_s <= _OLD_RENEW_S:
            return told
        parts = sorted([_part(one, at_s, left) for bins in self._old.values() for one in bins], reverse=True)
        told = _Told(
            at_s=at_s,
            left=left,
            parts=parts,
            rise_k=sum([k for _, k, _ in parts]),
            area=sum([area for _, _, area in parts]),
        )
        self._told = told if len(parts) > _MANY else None
        return told

    def __len__(self) -> int:
        return sum(len(bins) for bins in (*self._old.values(), *self._fresh.values()))


def _part(one: _Bin, at_s: float, left: Callable[[float], float]) -> tuple[float, float, float]:
    """W, K and K/W that a bin still stands for at most."""
    k = one.joules * left(at_s - one.last_s)
    return one.watts, k, k / one.watts


def _kind(watts: float) -> int:
    """Powers within a half of one another."""
    return 10_000 if math.isinf(watts) else math.floor(math.log(max(watts, 1e-12)) / math.log(1.5))


def _join(one: _Bin, at_s: float, joules: float, watts: float) -> None:
    one.last_s, one.joules, one.watts = at_s, one.joules + joules, max(one.watts, watts)


def _thinned(bins: list[_Bin], at_s: float) -> list[_Bin]:
    """Neighbours joined where both together are narrow against their age."""
    kept: list[_Bin] = []
    for one in bins:
        last = kept[-1] if kept else None
        if last is not None and one.last_s - last.first_s < _SHARE_OF_AGE * (at_s - one.last_s):
            _join(last, one.last_s, one.joules, one.watts)
        else:
            kept.append(one)
    return kept
