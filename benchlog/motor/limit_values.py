"""Limits of a start and what is judged by them, as values: they cross into the ledger, onto paper and the screen."""

from collections.abc import Sequence

import msgspec

from benchlog.motor.start_figures import StartFigures

LEAST_TOLD = 0.5
"""Share of a unit's starts in which a figure must be told for the unit to have it. Starting value of this project."""
SAME_PACE = 2.0
"""Times: starts read so much faster or slower than others have other peaks and ripples. Starting value as well."""


class Band(msgspec.Struct, frozen=True, kw_only=True):
    """Of one figure, in its unit. `low`, `high`: None where that side has no limit. `mean`, `spread`: of the units.

    `n`: units; `factor`: standard deviations from the mean to a limit.
    """

    low: float | None
    high: float | None
    mean: float
    spread: float
    n: int
    factor: float


class CurveBand(msgspec.Struct, frozen=True, kw_only=True):
    """Over time since the trigger. s, A: as many of each; `n`: units. `claim`: in words, what the band holds."""

    t_s: tuple[float, ...]
    low_amps: tuple[float, ...]
    high_amps: tuple[float, ...]
    mean_amps: tuple[float, ...]
    n: int
    factor: float
    claim: str


class StartLimits(msgspec.Struct, frozen=True, kw_only=True):
    """Of one locked test. `n`: units, `starts_each`: the fewest starts of one. By the names in FIGURES: `bands`;
    `why`: figures without a band, or without its lower limit, and why; `within`, `between`: standard deviations of one
    motor's starts and of the motors themselves, in the figure's unit. `curve`: None with its reason in `why["curve"]`.
    `runs`: where it comes from. `warning`: "" or what to mind about these limits. `interval_s`: from reading to
    reading, 0 where not known.
    """

    test: str
    version: int
    coverage: float
    confidence: float
    n: int
    starts_each: int
    bands: dict[str, Band]
    curve: CurveBand | None
    why: dict[str, str]
    runs: tuple[int, ...]
    within: dict[str, float]
    between: dict[str, float]
    warning: str
    interval_s: float = 0.0


class JudgedFigure(msgspec.Struct, frozen=True, kw_only=True):
    """`margin`: in the figure's unit, how far inside (+) or outside (-) the nearest limit. `inside`: None where it
    can't be told. `why`: "" or what to mind."""

    name: str
    label: str
    unit: str
    value: float | None
    low: float | None
    high: float | None
    margin: float | None
    inside: bool | None
    why: str


class Judged(msgspec.Struct, frozen=True, kw_only=True):
    """`passed`: None where it can't be told. `curve_outside_share`: of the curve's points, 0 to 1;
    `curve_outside_at_s`: s since the trigger, where it is farthest outside. None where there is no curve to judge.
    """

    passed: bool | None
    rows: tuple[JudgedFigure, ...]
    curve_outside_share: float | None
    curve_outside_at_s: float | None
    sentence: str
    because: str


def told_values(starts: Sequence[StartFigures], name: str) -> list[float]:
    """A figure of one unit, start by start; none at all where too few of them tell it."""
    values = [start.values[name].value for start in starts if name in start.values]
    return values if len(values) >= max(1, LEAST_TOLD * len(starts)) else []


def listed(words: Sequence[str]) -> str:
    """ "a", "a and b", "a, b and c"."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
