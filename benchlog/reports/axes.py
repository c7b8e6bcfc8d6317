"""Round numbers along an axis."""

import math


def ticks_between(low: float, high: float, count: int) -> list[float]:
    """Round numbers from the first at or above `low` to the first at or above `high`, some `count` of them at the most.

    Raises ValueError where `high` is not above `low`.
    """
    if not (math.isfinite(low) and math.isfinite(high) and high > low):
        raise ValueError(f"no axis from {low:g} to {high:g}")
    span = high - low
    power = 10.0 ** math.floor(math.log10(span / count))
    step = next(power * times for times in (1, 2, 2.5, 5, 10) if power * times * count >= span * 0.999)
    first, last = math.ceil(low / step - 1e-6), math.ceil(high / step - 1e-3)
    return [round(step * n, 12) for n in range(first, last + 1)]
