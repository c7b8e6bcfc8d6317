"""Preferred values of parts, IEC 60063: which series has a value, and its neighbours in one.

E24 and those within it are no rounded geometric series (2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7 and 8.2 differ); E48 and E96
are, to three digits. Source: IEC 60063 as tables print it; E48 and E96 from memory, checked against 10^(n/96).
"""

import math
from bisect import bisect_left
from dataclasses import dataclass

_E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91)
_E96 = (
    *(100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143, 147, 150, 154, 158, 162, 165),
    *(169, 174, 178, 182, 187, 191, 196, 200, 205, 210, 215, 221, 226, 232, 237, 243, 249, 255, 261, 267, 274, 280),
    *(287, 294, 301, 309, 316, 324, 332, 340, 348, 357, 365, 374, 383, 392, 402, 412, 422, 432, 442, 453, 464, 475),
    *(487, 499, 511, 523, 536, 549, 562, 576, 590, 604, 619, 634, 649, 665, 681, 698, 715, 732, 750, 768, 787, 806),
    *(825, 845, 866, 887, 909, 931, 953, 976),
)
SERIES: dict[str, tuple[int, ...]] = {
    "E6": tuple(10 * value for value in _E24[::4]),
    "E12": tuple(10 * value for value in _E24[::2]),
    "E24": tuple(10 * value for value in _E24),
    "E48": _E96[::2],
    "E96": _E96,
}
"""The values of one decade, 100 to 999."""
COARSE, FINE = ("E12", "E24"), ("E96",)
_SAME = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """The series that have a value ("E12", "E24" or "E96"; none of them: empty), and its neighbours in `of`."""

    series: tuple[str, ...]
    of: str
    below: float
    above: float


def neighbours(value: float, series: str) -> tuple[float, float]:
    """The next ones below and above, the value itself left out. Raises ValueError unless above zero, finite."""
    around = _around(value, series)
    return (
        max(one for one in around if one < value * (1 - _SAME)),
        min(one for one in around if one > value * (1 + _SAME)),
    )


def nearest(value: float, series: str) -> float:
    """The one with the smallest ratio to it. Raises ValueError unless above zero, finite."""
    return min(_around(value, series), key=lambda one: abs(math.log(one / value)))


def at_least(value: float, series: str) -> float:
    """The value itself where the series has it, else the next one up. Raises ValueError unless above zero, finite."""
    return min(one for one in _around(value, series) if one >= value * (1 - _SAME))


def lies_on(value: float, series: str) -> bool:
    """Whether the series has it. Raises ValueError unless above zero, finite."""
    return math.isclose(nearest(value, series), value, rel_tol=_SAME)


def place(value: float, *, fine: bool = False) -> Place:
    """Where a value lies: E12 and E24 first, or E96 first where its code is one of parts to 1 % (`fine`)."""
    for family in (FINE, COARSE) if fine else (COARSE, FINE):
        having = tuple(name for name in family if lies_on(value, name))
        if having:
            below, above = neighbours(value, having[0])
            return Place(series=having, of=having[0], below=below, above=above)
    of = "E96" if fine else "E24"
    below, above = neighbours(value, of)
    return Place(series=(), of=of, below=below, above=above)


def _around(value: float, series: str) -> list[float]:
    """Values of the series near this one, with two on each side at least."""
    if not (math.isfinite(value) and value > 0):
        raise ValueError(f"{value} lies on no series")
    decade = SERIES[series]
    power = math.floor(math.log10(value))
    at = bisect_left(decade, value / 10.0**power * 100)
    return [_in_decade(decade, index, power - 2) for index in range(at - 2, at + 3)]


def _in_decade(decade: tuple[int, ...], index: int, power: int) -> float:
    over, within = divmod(index, len(decade))
    return float(f"{decade[within]}e{power + over}")
