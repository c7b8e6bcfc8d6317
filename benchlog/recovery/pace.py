"""How quick a supply is, as this run measured it, and how long what is asked of it becomes by that."""

import math
from dataclasses import dataclass

QUICK_READING_S = 0.1
"""s: read quicker than this, a drive is as long as it was asked, and what is charged around it lies within the margins
of the ceilings. Measured with 90 ms a reading: no run met a ceiling by it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """`reading_s`: a whole reading usually takes; `sending_s`: a setpoint, until all of it was sent. `settled_s`: from
    then to the start of the first reading that belongs to that setpoint alone. All zero: not measured."""

    reading_s: float = 0.0
    sending_s: float = 0.0
    settled_s: float = 0.0

    @property
    def slow(self) -> bool:
        """Whether planning has to go by what the supply makes of a time, not by what it was asked."""
        return self.reading_s > QUICK_READING_S

    @property
    def least_kick_s(self) -> float:
        """s between up and down of the shortest kick of which a reading tells anything: off can only be sent between
        two readings, and takes its time to be sent."""
        return self.whole_s(1) + self.sending_s

    def stretches(self, asked_s: float) -> bool:
        """Whether a kick of so long becomes longer."""
        return asked_s < self.least_kick_s

    def whole_s(self, least: int) -> float:
        """s after a setpoint by which so many readings are in that belong to it alone. 0 of a quick supply."""
        if not self.slow:
            return 0.0
        before = math.ceil(self.settled_s / self.reading_s - 1e-6)
        return (before + least) * self.reading_s

    def lasts_s(self, asked_s: float, least: int) -> float:
        """s that a drive of `asked_s` with so many whole readings lasts, until the next setpoint is begun."""
        return max(asked_s, self.whole_s(least))

    def charged_s(self, asked_s: float, least: int) -> float:
        """s for which such a drive is charged at its own power: from the reading before it to the one after it."""
        around_s = 2 * self.sending_s + self.reading_s if self.slow else 0.0
        return self.lasts_s(asked_s, least) + around_s
