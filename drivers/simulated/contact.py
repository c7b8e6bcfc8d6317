"""What stands in series with the winding and changes: brushes, commutator, thermal protector.

Each of these makes a locked motor look as if it began to turn. All are off unless a scenario asks for them.
"""

import math
import random

import msgspec

LIFTED_OHM = 1e6


class ProtectorData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A thermal protector. At the stall current of rated volts it opens after `opens_s`; it cools with `cools_s`."""

    opens_s: float
    cools_s: float = 60.0
    open_ohm: float = 2000.0


class LiftData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A brush that lifts while current flows: so many times a second, each for a log-uniform time between the two."""

    per_s: float
    shortest_s: float = 0.005
    longest_s: float = 0.6


class ContactData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`ripple`: share by which resistance swings with angle, `bars` times a turn. From `step_at_rad` away from where
    the shaft began, resistance is `step` higher (0.5 = half as much again)."""

    ripple: float = 0.0
    bars: int = 5
    step: float = 0.0
    step_at_rad: float = 0.0
    protector: ProtectorData | None = None
    lift: LiftData | None = None


class Contact:
    """State of the series path."""

    __slots__ = ("_data", "_heat", "_lift_left_s", "_random", "_stall_a", "protector_open")

    def __init__(self, data: ContactData, stall_a: float, source: random.Random) -> None:
        self._data = data
        self._stall_a = stall_a
        self._random = source
        self._heat = 0.0
        self._lift_left_s = 0.0
        self.protector_open = False

    def factor(self, angle_rad: float) -> float:
        """By how much winding and brushes together are above their nominal resistance at this angle."""
        data = self._data
        factor = 1.0 + data.ripple * math.sin(data.bars * angle_rad)
        if data.step and abs(angle_rad) >= data.step_at_rad:
            factor *= 1.0 + data.step
        return factor

    def added_ohm(self, amps: float, step_s: float) -> float:
        """Ohms in series after one more step at `amps`."""
        added = 0.0
        protector = self._data.protector
        if protector is not None:
            load = amps / self._stall_a
            self._heat += step_s * (load * load / protector.opens_s - self._heat / protector.cools_s)
            self.protector_open = self._heat > (0.5 if self.protector_open else 1.0)
            if self.protector_open:
                added += protector.open_ohm
        lift = self._data.lift
        if lift is not None:
            if self._lift_left_s > 0.0:
                self._lift_left_s -= step_s
                added += LIFTED_OHM
            elif abs(amps) > 0.02 * self._stall_a and self._random.random() < lift.per_s * step_s:
                low, high = math.log(lift.shortest_s), math.log(lift.longest_s)
                self._lift_left_s = math.exp(self._random.uniform(low, high))
        return added
