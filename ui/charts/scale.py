"""From values to pixels and round figures for an axis."""

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """Values `low`..`high` drawn over pixels `start`..`end`; `end` may be the smaller, as it is for a vertical axis."""

    low: float
    high: float
    start: float
    end: float

    def __post_init__(self) -> None:
        if not self.low < self.high:
            raise ValueError(f"scale: {self.low} is not below {self.high}")

    def px(self, value: float) -> float:
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)

    def many(self, values: Floats) -> Floats:
        return np.asarray(self.start + (values - self.low) * ((self.end - self.start) / (self.high - self.low)))

    def value(self, px: float) -> float:
        return self.low + (px - self.start) / (self.end - self.start) * (self.high - self.low)


def ticks(low: float, high: float, about: int) -> list[float]:
    """Round figures from `low` to `high`, 1, 2 or 5 times a power of ten apart, near `about` in number."""
    step = _round_step((high - low) / max(1, about))
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return [round(index * step, 10) for index in range(first, last + 1)]


def tick_text(value: float) -> str:
    return f"{value:g}"


def top_above(value: float) -> float:
    """A round top for an axis, a little above `value`, for a value above zero."""
    step = _round_step(value / 4)
    return step * math.ceil(value * 1.06 / step - 1e-9)


def _round_step(raw: float) -> float:
    power: float = 10.0 ** math.floor(math.log10(raw))
    for factor in (1.0, 2.0, 5.0):
        if raw <= factor * power * (1 + 1e-9):
            return factor * power
    return 10.0 * power
