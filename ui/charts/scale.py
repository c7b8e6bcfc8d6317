"""Values onto pixels along one side of a plot, and back; and the few round figures written beside it."""

import math
from dataclasses import dataclass

import numpy as np

from ui.charts.reduction import Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """`low` lies at the pixel `begin`, `high` at `end`; upward where `end` is the smaller one."""

    low: float
    high: float
    begin: float
    end: float

    @property
    def per_px(self) -> float:
        """How much of the value one pixel is, above zero."""
        return (self.high - self.low) / max(1.0, abs(self.end - self.begin))

    def px(self, value: float) -> float:
        return self.begin + (value - self.low) / (self.high - self.low) * (self.end - self.begin)

    def many_px(self, values: Floats) -> Floats:
        return np.asarray(self.px(values), dtype=np.float64)  # type: ignore[arg-type]

    def value(self, px: float) -> float:
        return self.low + (px - self.begin) / (self.end - self.begin) * (self.high - self.low)

    def ticks(self, least_px: float) -> list[float]:
        """Round figures in view, at least so many pixels apart."""
        step = round_step(least_px * self.per_px)
        first, last = math.ceil(self.low / step - 1e-9), math.floor(self.high / step + 1e-9)
        return [number * step for number in range(first, last + 1)]


def round_step(least: float) -> float:
    """1, 2 or 5 times a power of ten, at least as large. Raises ValueError where `least` is not above zero."""
    if not (math.isfinite(least) and least > 0):
        raise ValueError(f"a step of {least} is none")
    power: float = 10.0 ** math.floor(math.log10(least))
    return next(factor * power for factor in (1, 2, 5, 10) if factor * power >= least * (1 - 1e-9))


def tick_text(value: float) -> str:
    """Without superfluous zeros, and no minus zero."""
    return f"{round(value, 9) + 0.0:.12g}"
