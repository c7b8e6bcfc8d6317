"""How far one motor's starts spread against how far motors differ: whether a test can tell motors apart at all.

One-way random effects: a start's value is its motor's own plus what changes from start to start, both normal.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchlog.errors import Refused
from benchlog.motor.fit import Fitted

CONFIDENCE = 0.95
TELLS_FROM = 1.0
"""Times what one motor spreads that the motors must spread, to be told apart. Starting value of this project."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeatability:
    """Standard deviations in the values' unit: `within` one motor's starts, `between` motors with that taken out.

    `ratio`: between over within, with its 95 % interval; infinite where the starts of a motor are all alike.
    `can_tell`: whether motors spread by more than one motor does; None where the interval includes both.
    """

    within: float
    between: float
    mean: float
    ratio: Fitted
    can_tell: bool | None
    units: int
    most_starts: int
    words: str


def repeatability(values_by_unit: Sequence[Sequence[float]], *, label: str) -> Repeatability:
    """One inner sequence a motor, of one value a start. Motors may have been started differently often.

    Variances from the means of the units and the mean square within them; the interval of their ratio by F, exact
    where all were started equally often, else with the harmonic mean of how often.
    Raises Refused for one motor, or where none was started twice.
    Source: textbook (analysis of variance, method of moments; unequal numbers: Thomas and Hultquist 1978), from memory.
    """
    units = [np.asarray(values, dtype=np.float64) for values in values_by_unit if len(values)]
    count = sum(len(values) for values in units)
    free_between, free_within = len(units) - 1, count - len(units)
    if free_between < 1 or free_within < 1:
        raise Refused("repeatability takes two motors or more, and one of them started twice or more")
    from scipy import special  # late: a fifth of a second

    each = len(units) / sum(1 / len(values) for values in units)
    means = np.array([float(np.mean(values)) for values in units])
    of_means = float(np.var(means, ddof=1))
    within = sum(float(np.sum((values - values.mean()) ** 2)) for values in units) / free_within
    quotient = of_means / within if within > 0 else math.inf if of_means > 0 else 0.0
    tail = (1 - CONFIDENCE) / 2
    low, high = (
        math.sqrt(max(0.0, quotient / float(special.fdtri(free_between, free_within, share)) - 1 / each))
        for share in (1 - tail, tail)
    )
    between = math.sqrt(max(0.0, of_means - within / each))
    ratio = Fitted(value=math.sqrt(max(0.0, quotient - 1 / each)), low=low, high=high)
    alike = within == of_means == 0
    can_tell = None if alike else True if low > TELLS_FROM else False if high < TELLS_FROM else None
    mean, most = float(np.mean(means)), max(len(values) for values in units)
    return Repeatability(
        within=math.sqrt(within),
        between=between,
        mean=mean,
        ratio=ratio,
        can_tell=can_tell,
        units=len(units),
        most_starts=most,
        words=f"One motor started {most} times spreads {_share(math.sqrt(within), mean)} in {label}; "
        f"the units spread {_share(between, mean)}: {_VERDICTS[can_tell]}.",
    )


_VERDICTS = {
    True: "the test can tell them apart",
    False: "the test can't tell them apart",
    None: "too few starts or units to say whether the test can tell them apart",
}


def _share(spread: float, mean: float) -> str:
    percent = 100 * spread / abs(mean) if mean else math.nan
    return f"{percent:.{1 if percent < 10 else 0}f} %" if math.isfinite(percent) else "—"
