"""How long until something comes about, where for many it has not come about yet: Kaplan and Meier's estimate.

Times are in any one unit. Who was followed no longer than to a time counts as at risk up to and including it.
"""

import math
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from benchlog.history.rates import percents
from benchlog.quantities import wilson

_Z = 1.959963984540054
"""Two-sided 95 % of the standard normal distribution."""
_ROUNDING = 1e-9
"""By how much a product of shares may miss one half."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Followed:
    """How long each of a group was followed: those for which it came about then, and those still `out` (censored).

    Raises ValueError for a time that is negative or no number.
    """

    ended: Sequence[float] = ()
    out: Sequence[float] = ()

    def __post_init__(self) -> None:
        for times in (self.ended, self.out):
            if times and not (min(times) >= 0 and math.isfinite(sum(times))):
                raise ValueError("a time is negative or no number")


class Step(NamedTuple):
    """From `time` on `share` are left, 0 to 1: of the `at_risk` just before it `ended` ended then.

    `spread`: the sum of Greenwood's formula; infinite where none are left.
    """

    time: float
    at_risk: int
    ended: int
    share: float
    spread: float

    @property
    def limits(self) -> tuple[float, float]:
        """95 % limits of `share`, pointwise."""
        return _limits(self.share, self.spread, self.at_risk)


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """A share, 0 to 1, with 95 % limits. `at_risk`: how many were followed at least that long."""

    share: float
    low: float
    high: float
    at_risk: int

    @property
    def text(self) -> str:
        """As "12 % (5 to 26 %)"."""
        return f"{100 * self.share:.0f} % ({percents(self.low, self.high)})"


@dataclass(frozen=True, slots=True, kw_only=True)
class Survival:
    """`steps` in order of time, one for each at which some ended. `times`: how long each was followed, in order."""

    steps: tuple[Step, ...]
    times: tuple[float, ...]

    @property
    def ended(self) -> int:
        return sum(step.ended for step in self.steps)

    @property
    def median(self) -> float | None:
        """The first time from which at most half are left; None where more are left at the end."""
        return next((step.time for step in self.steps if step.share <= 0.5 + _ROUNDING), None)

    def left(self, time: float) -> Estimate | None:
        """The share left just after `time`; None where nobody was followed that long and some were left before."""
        at_risk = len(self.times) - bisect_left(self.times, time)
        number = bisect_right(self.steps, time, key=lambda step: step.time)
        step = self.steps[number - 1] if number else Step(0.0, at_risk, 0, 1.0, 0.0)
        if at_risk == 0 and (step.share > 0 or not number):
            return None
        low, high = _limits(step.share, step.spread, at_risk or step.at_risk)
        return Estimate(share=step.share, low=low, high=high, at_risk=at_risk)

    def ended_by(self, time: float) -> Estimate | None:
        """The share that ended up to `time`: what is not left."""
        left = self.left(time)
        if left is None:
            return None
        return Estimate(share=1 - left.share, low=1 - left.high, high=1 - left.low, at_risk=left.at_risk)


def kaplan_meier(followed: Followed) -> Survival:
    """Source: Kaplan and Meier 1958, from memory: the product over times of 1 - ended / at risk."""
    times = tuple(sorted([*followed.ended, *followed.out]))
    steps, share, spread, place = [], 1.0, 0.0, 0
    for time, ended in sorted(Counter(followed.ended).items()):
        place = bisect_left(times, time, place)
        at_risk = len(times) - place
        share *= (at_risk - ended) / at_risk
        spread += ended / (at_risk * (at_risk - ended)) if ended < at_risk else math.inf
        steps.append(Step(time, at_risk, ended, share, spread))
    return Survival(steps=tuple(steps), times=times)


def _limits(share: float, spread: float, at_risk: int) -> tuple[float, float]:
    """On the scale of log(-log(share)), which keeps them within 0 to 1.

    Where all or none are left that scale has no limits; then Wilson's of those at risk alone, which errs to wide.
    Source: Kalbfleisch and Prentice, from memory.
    """
    if 0 < share < 1:
        off = math.exp(_Z * math.sqrt(spread) / abs(math.log(share)))
        return share**off, share ** (1 / off)
    return (wilson(at_risk, at_risk)[0], 1.0) if share else (0.0, wilson(0, at_risk)[1])


@dataclass(frozen=True, slots=True, kw_only=True)
class LogRank:
    """`chi_square` with one degree of freedom; `p`: how often chance alone parts two like groups at least so far."""

    chi_square: float
    p: float


def log_rank(one: Followed, other: Followed) -> LogRank | None:
    """Whether it comes about sooner in one group than in the other; None where that can't be told.

    Source: Mantel 1966, from memory: ended in one group against expected, with the hypergeometric variance.
    """
    mine = sorted([*one.ended, *one.out])
    both = kaplan_meier(Followed(ended=[*one.ended, *other.ended], out=[*one.out, *other.out]))
    expected = variance = 0.0
    for step in both.steps:
        share = (len(mine) - bisect_left(mine, step.time)) / step.at_risk
        expected += step.ended * share
        if step.at_risk > 1:
            variance += step.ended * share * (1 - share) * (step.at_risk - step.ended) / (step.at_risk - 1)
    if variance == 0:
        return None
    chi_square = (len(one.ended) - expected) ** 2 / variance
    return LogRank(chi_square=chi_square, p=math.erfc(math.sqrt(chi_square / 2)))
