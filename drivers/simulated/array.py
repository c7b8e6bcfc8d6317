"""The supply's own measurement array: true means over windows that follow one another, as its meter shows them.

It starts at once when it is told to, samples beside the readings without disturbing them (this simulation's choice),
and stops when it is full. Its noise has a source of its own: with an array or without, all else is the same.
"""

import random
from collections.abc import Callable

from drivers.simulated.readback import Meter, nearest_step
from drivers.simulated.status import Refusal
from drivers.simulated.supply_model import ArrayData
from drivers.simulated.truth import ArrayTruth

_START_INTERVAL_S, _START_POINTS = 1e-3, 1024


class SampleArray:
    """`now` is the model's time in s; `tell` gets the truth of each array once it is full."""

    def __init__(
        self,
        data: ArrayData,
        meter: Meter,
        source: random.Random,
        *,
        now: Callable[[], float],
        tell: Callable[[ArrayTruth], None],
    ) -> None:
        self.data = data
        self._meter = meter
        self._source = source
        self._now = now
        self._tell = tell
        self.interval_s = max(_START_INTERVAL_S, data.least_interval_s)
        self.points = min(_START_POINTS, data.most_points)
        self.running = False
        self._began_s = 0.0
        self._volt_seconds = self._coulombs = 0.0
        self._true: list[tuple[float, float]] = []
        self._reported: list[tuple[float, float]] = []

    def set_interval(self, value_s: float) -> None:
        """The nearest interval that its clock can make. What was held is gone."""
        self.abort()
        self._reported = []
        self.interval_s = max(self.data.least_interval_s, nearest_step(value_s, self.data.interval_step_s))

    def set_points(self, value: float) -> None:
        """How many samples the next array has. What was held is gone."""
        self.abort()
        self._reported = []
        self.points = round(value)

    def start(self) -> None:
        """The first window begins now. Raises Refusal -213 while one is running."""
        if self.running:
            raise Refusal(-213, "INIT")
        self._began_s = self._now()
        self._volt_seconds = self._coulombs = 0.0
        self._true, self._reported = [], []
        self.running = True

    def abort(self) -> None:
        """Stops. What is not full holds nothing."""
        self.running = False

    def held(self) -> list[tuple[float, float]]:
        """Volts and amps of each sample as the meter shows them. Raises Refusal -230 unless there are all."""
        if self.running or len(self._reported) != self.points:
            raise Refusal(-230)
        return self._reported

    def add(self, at_s: float, mean_v: float, mean_a: float, step_s: float) -> None:
        """The model's step that ended at `at_s`; windows end inside it where they do."""
        from_s = at_s - step_s
        while self.running:
            end_s = self._began_s + (len(self._true) + 1) * self.interval_s
            if end_s > at_s:
                break
            part_s = max(0.0, end_s - from_s)
            self._end_window(self._volt_seconds + mean_v * part_s, self._coulombs + mean_a * part_s)
            self._volt_seconds = self._coulombs = 0.0
            from_s = end_s
        self._volt_seconds += mean_v * (at_s - from_s)
        self._coulombs += mean_a * (at_s - from_s)

    def _end_window(self, volt_seconds: float, coulombs: float) -> None:
        volts, amps = volt_seconds / self.interval_s, coulombs / self.interval_s
        self._true.append((volts, amps))
        self._reported.append(self._meter.read(volts, amps, self._source))
        if len(self._true) < self.points:
            return
        self.running = False
        true_volts, true_amps = zip(*self._true, strict=True)
        self._tell(
            ArrayTruth(began_s=self._began_s, interval_s=self.interval_s, true_volts=true_volts, true_amps=true_amps)
        )
