"""How often something came about, with how sure that is; and the middle of a few figures."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from benchlog.quantities import wilson

NOTHING = "—"
"""Shown where nothing was measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """`hits` of `count`, both 0 or more. Raises ValueError where that is no share."""

    hits: int
    count: int

    def __post_init__(self) -> None:
        if not 0 <= self.hits <= self.count:
            raise ValueError(f"{self.hits} of {self.count} is no share")

    @property
    def interval(self) -> tuple[float, float] | None:
        """95 % limits, 0 to 1, by Wilson's score; None where nothing was counted."""
        return wilson(self.hits, self.count) if self.count else None

    @property
    def text(self) -> str:
        """As "7 of 9 (45 to 94 %)"; "0 of 0" has no limits."""
        share = f"{self.hits} of {self.count}"
        return f"{share} ({percents(*self.interval)})" if self.interval else share


def percents(low: float, high: float) -> str:
    """Limits of a share, 0 to 1, as "45 to 94 %": whole percents, or as many places as tell the two apart."""
    width = 100 * (high - low)
    places = 0 if width >= 1 else 4 if width < 1e-4 else math.ceil(-math.log10(width))
    return f"{100 * low:.{places}f} to {100 * high:.{places}f} %"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The middle of `count` figures, and between which two the middle half lies; all in the figures' own unit."""

    count: int
    low: float
    median: float
    high: float


def spread(values: Iterable[float]) -> Spread | None:
    """Median and quartiles, between neighbours in proportion; None of nothing.

    Source: definition 7 of Hyndman and Fan 1996, from memory; the one that most programs take.
    """
    found = sorted(values)
    if not found:
        return None
    low, median, high = (_quantile(found, share) for share in (0.25, 0.5, 0.75))
    return Spread(count=len(found), low=low, median=median, high=high)


def _quantile(ordered: list[float], share: float) -> float:
    place = share * (len(ordered) - 1)
    below = int(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (place - below) * (ordered[above] - ordered[below])
