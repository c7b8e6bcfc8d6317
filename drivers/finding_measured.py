"""What readings alone tell of a supply: how soon and how often it reads back, and what follows for a kick."""

import statistics
from collections.abc import Callable
from dataclasses import dataclass

from drivers.supply import Capabilities, Reading, Supply

READINGS = 8
LONGEST_S = 1.0
"""s in which so many readings are taken, at least two of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """`reading_s`: the usual time of a whole reading, and its worst. `least_kick_s`: the shortest time between on and
    off of which a reading can tell anything: until volts have settled, and one reading. `last`: the last reading."""

    capabilities: Capabilities
    reading_s: float
    worst_s: float
    readings_per_s: float
    least_kick_s: float
    last: Reading


def measure(supply: Supply, now: Callable[[], float]) -> Measured:
    """Readings only. Raises SupplyError."""
    took_s: list[float] = []
    began_s = now()
    while True:
        last = supply.read()
        took_s.append(last.received_s - last.sent_s)
        if len(took_s) >= READINGS or (len(took_s) >= 2 and now() - began_s > LONGEST_S):
            break
    all_s = now() - began_s
    can = supply.capabilities
    usual_s = statistics.median(took_s)
    return Measured(
        capabilities=can,
        reading_s=usual_s,
        worst_s=max(took_s),
        readings_per_s=len(took_s) / all_s if all_s > 0 else 0.0,
        least_kick_s=least_kick_s(can, max(took_s)),
        last=last,
    )


def least_kick_s(can: Capabilities, reading_s: float) -> float:
    """Reckoned, not tried: settling, and the slowest reading, since off can only be sent between two of them."""
    return can.settle_s + reading_s
