"""One start while it is held: its trigger, its readings, and its end before a ceiling is passed."""

from dataclasses import dataclass, field
from itertools import pairwise

from benchlog.motor.motion import Motion
from benchlog.quantities import show
from benchlog.recovery.commands import Apply, Plan, Seen, Watch
from benchlog.recovery.moves import Situation, locked_watts
from benchlog.recovery.start_test import StartTest, Trigger
from benchlog.recovery.trigger import Edge, seen_by

LEAST_WHOLE = 3
PERIODS_MOST = 200
"""Readings of one start whose pace the delay of the next ones is taken from."""


@dataclass(slots=True, kw_only=True)
class Hold:
    """One start while it is held. s of the shell's clock; `trigger_s` None while nothing has crossed the level."""

    began_s: float
    trigger_s: float | None
    seen: list[Seen] = field(default_factory=list)
    cut: str = ""


def held_start(situation: Situation, test: StartTest, amps: float, before: Seen, delay_s: float) -> Plan[Hold]:
    """The volts until `on_s` after the trigger, or until a ceiling is near."""
    edge = _fed(_edge(test), test, situation, before)[0] if test.trigger is not Trigger.OUTPUT_ON else None
    seen = yield Apply(volts=test.volts, amps=amps, belief=Motion.UNKNOWN, read_later_s=delay_s)
    hold = Hold(began_s=seen.set_at_s, trigger_s=seen.set_at_s if edge is None else None)
    stall_watts = locked_watts(situation, test.volts, amps)
    while True:
        hold.seen.append(seen)
        if edge is not None and hold.trigger_s is None:
            edge, crossed_s = _fed(edge, test, situation, seen)
            # A reading averages what was before it, so that the line may lead to before the setpoint.
            hold.trigger_s = None if crossed_s is None else max(crossed_s, hold.began_s)
        took_s = seen.reading.received_s - seen.reading.sent_s
        until_s = hold.began_s + test.arm_s if hold.trigger_s is None else hold.trigger_s + test.on_s
        if seen.now_s + took_s > until_s and (hold.trigger_s is None or _whole(hold) >= LEAST_WHOLE):
            return hold
        hold.cut = _ceiling_near(situation, hold.began_s, seen, stall_watts)
        if hold.cut:
            return hold
        seen = yield Watch()


def put_in(hold: Hold) -> float:
    """J into the leads while it was held."""
    readings = [seen.reading for seen in hold.seen]
    return sum(
        max(a.volts * a.amps, b.volts * b.amps, 0.0) * (b.received_s - a.received_s) for a, b in pairwise(readings)
    )


def _whole(hold: Hold) -> int:
    return sum(seen.whole for seen in hold.seen)


def _edge(test: StartTest) -> Edge:
    assert test.level is not None, "checked"
    return Edge(level=test.level, hysteresis=test.hysteresis)


def _fed(edge: Edge, test: StartTest, situation: Situation, seen: Seen) -> tuple[Edge, float | None]:
    """One reading for the trigger, at the middle of what it averages."""
    reading, meter = seen.reading, situation.known_meter
    at_s = (reading.sent_s + reading.received_s - situation.capabilities.window_s) / 2
    if test.trigger is Trigger.AMPS:
        return seen_by(edge, at_s, reading.amps - meter.zero_amps)
    return seen_by(edge, at_s, reading.volts - meter.zero_volts)


def nothing_crossed(test: StartTest) -> str:
    assert test.level is not None, "checked"
    return f"nothing crossed {show(test.level, 'A' if test.trigger is Trigger.AMPS else 'V')} within {test.arm_s:g} s"


def _ceiling_near(situation: Situation, began_s: float, seen: Seen, stall_watts: float) -> str:
    """Which ceiling one more reading might pass, and that by which the volts are down again; "" while there is room.

    A reading that averages what was before the setpoint says less than the winding may draw: `stall_watts`.
    """
    reading = seen.reading
    took_s = reading.received_s - reading.sent_s
    if seen.now_s - began_s + 2 * took_s > situation.ceilings.on_s.value:
        return "cut short before the ceiling for time in a row"
    watts = max(reading.volts * reading.amps, 0.0 if seen.whole else stall_watts)
    rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=2 * watts * took_s)
    return f"cut short before the ceiling for {asked_by}" if rest_s > 0 else ""


def periods_of(hold: Hold) -> list[float]:
    """s from reading to reading, one right after the other."""
    sent = [seen.reading.sent_s for seen in hold.seen[1:]]
    return [b - a for a, b in pairwise(sent)][:PERIODS_MOST]
