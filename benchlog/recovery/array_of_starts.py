"""The supply's own measurement array, where it has one: a dense curve beside the readback of each start."""

from dataclasses import dataclass

from benchlog.recovery.commands import Fetch, Plan, Switch, Watch
from benchlog.recovery.guard import FOREIGN_VOLTS
from benchlog.recovery.moves import REST_PACE_S, Situation, discharged, rest, until_still
from benchlog.recovery.start_test import StartTest, Trigger

LEAD_S = 0.1
"""s by which the array outlasts a start: it begins a few round trips before the setpoint is sent."""

_ROUND_TRIPS = 3
"""Replies between the array's own start and the setpoint: of the start, of the reading after it, and one to spare."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Array:
    """What is asked of it for each start."""

    points: int
    interval_s: float

    @property
    def lasts_s(self) -> float:
        return self.points * self.interval_s


def array_for(situation: Situation, test: StartTest) -> Array | None:
    """As dense as a whole start allows; None without an array, or where the instant of the start is not known ahead."""
    limits = situation.capabilities.array
    if limits is None or test.trigger is not Trigger.OUTPUT_ON:
        return None
    lasts_s = test.on_s + 2 * LEAD_S + _ROUND_TRIPS * situation.capabilities.reply_s
    interval_s = max(limits.least_interval_s, lasts_s / limits.most_points)
    return Array(points=min(limits.most_points, int(lasts_s / interval_s) + 1), interval_s=interval_s)


def fetched(situation: Situation, array: Array, number: int, began_s: float, *, last: bool) -> Plan[str]:
    """At 0 V: until the array is full and the rotor stands, then off, read, and on again unless it was the `last`.

    "", or why the output can't go on again.
    """
    seen = yield Watch()
    seen, _ = yield from until_still(situation, seen)
    seen = yield from rest(seen, max(0.3, began_s + 1.1 * array.lasts_s + LEAD_S - seen.now_s))
    yield Switch(on=False)
    seen = yield Fetch(number=number)
    if last:
        return ""
    seen = yield from discharged(seen)
    until_s = seen.now_s + (situation.start_test.still_s if situation.start_test is not None else 0.0)
    while abs(seen.reading.volts) > 0.8 * FOREIGN_VOLTS:
        if seen.now_s > until_s:
            return f"{seen.reading.volts:.2f} V stayed on the terminals with the output off"
        seen = yield Watch(at_s=seen.now_s + REST_PACE_S)
    yield Switch(on=True)
    return ""
