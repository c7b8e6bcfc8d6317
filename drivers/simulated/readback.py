"""What the supply's own meter says: true averages over a window, then its gain, offset, noise and resolution.

The averages are exact integrals of the straight lines between model steps (trapezoids), over [now - window, now].
"""

import random
from collections import deque

from drivers.simulated.supply_model import SupplyData


class Integrals:
    """Running integrals of terminal volts and amps, kept long enough to look back over one window."""

    __slots__ = ("_points", "_window_s")

    def __init__(self, window_s: float, shortest_step_s: float, start_s: float) -> None:
        # Twice the regular number: commands cut steps short.
        self._points: deque[tuple[float, float, float]] = deque(maxlen=2 * int(window_s / shortest_step_s) + 64)
        self._points.append((start_s, 0.0, 0.0))
        self._window_s = window_s

    def add(self, at_s: float, mean_v: float, mean_a: float, step_s: float) -> None:
        """The step that ended at `at_s`."""
        _, volt_seconds, coulombs = self._points[-1]
        self._points.append((at_s, volt_seconds + mean_v * step_s, coulombs + mean_a * step_s))

    def means(self) -> tuple[float, float]:
        """Mean volts and amps over the last window, or over what there is of it."""
        end = self._points[-1]
        begin_s = end[0] - self._window_s
        later = end
        for point in reversed(self._points):
            if point[0] <= begin_s:
                part = (begin_s - point[0]) / (later[0] - point[0]) if later[0] > point[0] else 0.0
                volt_seconds = point[1] + part * (later[1] - point[1])
                coulombs = point[2] + part * (later[2] - point[2])
                return (end[1] - volt_seconds) / self._window_s, (end[2] - coulombs) / self._window_s
            later = point
        length_s = end[0] - later[0]
        if length_s <= 0.0:
            return 0.0, 0.0
        return (end[1] - later[1]) / length_s, (end[2] - later[2]) / length_s


class Meter:
    """Errors of the meter, drawn once from the seed, and its noise."""

    __slots__ = ("_data", "_gain_a", "_gain_v", "_offset_a", "_offset_v", "_random")

    def __init__(self, data: SupplyData, source: random.Random) -> None:
        self._data = data
        self._random = source
        self._gain_v = 1.0 + source.uniform(-data.gain, data.gain)
        self._gain_a = 1.0 + 2.0 * source.uniform(-data.gain, data.gain)
        self._offset_v = source.uniform(-data.offset_v, data.offset_v)
        self._offset_a = source.uniform(-data.offset_a, data.offset_a)

    def read(self, volts: float, amps: float, source: random.Random | None = None) -> tuple[float, float]:
        """True means in, reported figures out, in whole steps of the meter's resolution. `source`: noise from there."""
        data, noise = self._data, source or self._random
        shown_v = volts * self._gain_v + self._offset_v + noise.gauss(0.0, data.noise_v)
        shown_a = amps * self._gain_a + self._offset_a + noise.gauss(0.0, data.noise_a)
        return nearest_step(shown_v, data.step_v), nearest_step(shown_a, data.step_a)


def nearest_step(value: float, step: float) -> float:
    """The nearest whole multiple of a step, free of binary dust."""
    return round(round(value / step) * step, 9)
