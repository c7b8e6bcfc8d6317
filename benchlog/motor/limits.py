"""What known good motors of a kind do when they start, as limits: a tolerance band for each figure and the curve."""

import msgspec

LEAST_UNITS = 5
"""Known good units: fewer tell too little of the spread, and limits from them would pass nearly anything."""


class Band(msgspec.Struct, frozen=True, kw_only=True):
    """Of one figure, in its unit. `low`, `high`: None where that side has no limit. `mean`, `spread`: of the units.

    `n`: units; `factor`: of the standard deviation. `scale`: on which it was taken to be normal: "linear" or "log";
    for "log" the mean is the geometric one and `spread` the standard deviation of the natural logarithm.
    """

    low: float | None
    high: float | None
    mean: float
    spread: float
    n: int
    factor: float
    scale: str = "linear"


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
    `why`: figures without a band, and why; `within`, `between`: standard deviations of one motor's starts and of the
    motors themselves, on the band's scale. `curve`: None with its reason in `why["curve"]`. `runs`: where it comes
    from. `warning`: "" or what to mind about these limits.
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
