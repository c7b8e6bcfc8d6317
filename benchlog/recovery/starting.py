"""Starts that are captured: from rest, one after the other, each with its figures and whether it turned."""

import math
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import median

from benchlog.motor.motion import CoastVerdict, Held, Motion
from benchlog.motor.start_figures import StartFigures, event_values, figures_of
from benchlog.motor.startup import start_of_readings, zero_by
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.array_of_starts import Array, array_for, fetched
from benchlog.recovery.commands import Acquire, Apply, Mark, Plan, Seen, Watch
from benchlog.recovery.looking import COAST_S, HOLD_S, STEP_S, look_after
from benchlog.recovery.moves import (
    Finding,
    Situation,
    down,
    held,
    locked_joules,
    mark,
    rest,
    room_for,
    until_still,
)
from benchlog.recovery.probing import winding_missing
from benchlog.recovery.start_test import StartTest, Trigger
from benchlog.recovery.trigger import Edge, seen_by
from drivers.supply import Reading, Regulation

ROOM_WITHIN_S = 300.0
"""s that is waited for a start to fit within every ceiling, at most. Starting value of this project."""
LEAST_WHOLE = 3
STALL_SHARE = 0.5
"""Of the current that a locked rotor draws: from here on a start that was not shown to turn is the last one."""
HEADROOM = 1.1
"""Limit over the most that the winding may draw, where none is asked for: the limit must not shape the start."""
AT_LIMIT_SHARE = 0.98
AS_THE_LAST = 1.5
"""Room for a start after one that turned, over what went into that one. A start that needs more is cut short."""
_DRIVEN_OF_LOOK_S = 2 * COAST_S + STEP_S
_READINGS_OF_LOOK = 8
SLOW_MOST_S = 1.5
"""s that a rotor with little friction may coast on where no ceiling leaves room for a step up."""
"""What the look after a start takes at least, and in readings where those are slow."""
TURNING, NOT_TURNING, DOUBTFUL, NOT_LOOKED = "turning", "not-turning", "doubtful", "not-looked"
_WORDS = {CoastVerdict.EMF: TURNING, CoastVerdict.NOT_TURNING: NOT_TURNING}


@dataclass(slots=True, kw_only=True)
class _Hold:
    """One start while it is held. s of the shell's clock; `trigger_s` None while nothing has crossed the level."""

    began_s: float
    trigger_s: float | None
    seen: list[Seen] = field(default_factory=list)
    cut: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Turned:
    """Whether it turned: one of the four words, and why."""

    word: str
    why: str


def capture_starts(situation: Situation, test: StartTest) -> Plan[Finding]:
    """After the probe: as many starts as asked for, or up to the first that did not turn."""
    amps = _limit_amps(situation, test)
    joules = locked_joules(situation, test.volts, amps, HOLD_S)
    never = _never_fits(situation, joules)
    if never:
        return Finding(outcome=Outcome.UNDETERMINED, reason=never)
    seen = yield Watch()
    array = array_for(situation, test)
    yield _what_is_seen(situation, seen, array)
    turned, doubt, periods = 0, "", list[float]()
    for number in range(1, test.starts + 1):
        at_rest = yield from _at_rest(situation, test, amps, joules)
        if isinstance(at_rest, str):
            return _unfinished(situation, test, turned, f"start {number} was not made: {at_rest}")
        delay_s = (number - 1) % test.interleave / test.interleave * median(periods) if periods else 0.0
        yield _announced(test, number, amps, delay_s)
        if array is not None:
            at_rest = yield Acquire(points=array.points, interval_s=array.interval_s)
        hold = yield from _held_start(situation, test, amps, at_rest, delay_s)
        periods += _periods(hold)
        if hold.trigger_s is None:
            yield from down(amps, Motion.UNKNOWN)
            why = hold.cut or _nothing_crossed(test)
            yield mark(EventKind.LOOK, f"Start {number}: {why}.", number=number)
            return _unfinished(situation, test, turned, why)
        stalled = _stalled(situation, held(situation, hold.seen), test, amps)
        told = yield from _looked_at(situation, test, amps, hold)
        yield _captured(situation, test, number, amps, hold, told, delay_s)
        if array is not None:
            problem = yield from fetched(situation, array, number, at_rest.now_s, last=number == test.starts)
            if problem:
                return _unfinished(situation, test, turned, problem)
        if told.word == TURNING:
            turned += 1
            joules = min(joules, AS_THE_LAST * _put_in(hold))
        if told.word == NOT_TURNING:
            situation.moved = turned > 0
            return Finding(outcome=Outcome.STILL_STUCK, reason=f"start {number} did not turn: {told.why}")
        if told.word != TURNING:
            doubt = f"start {number}: {told.why}"
            if stalled:
                return _unfinished(situation, test, turned, f"{doubt}; it drew as a locked motor does")
    if turned == test.starts:
        return Finding(outcome=Outcome.RUNS, reason=f"it started {turned} of {turned} times from rest, all captured")
    return _unfinished(situation, test, turned, doubt)


def _unfinished(situation: Situation, test: StartTest, turned: int, why: str) -> Finding:
    situation.moved = turned > 0
    return Finding(outcome=Outcome.UNDETERMINED, reason=f"{turned} of {test.starts} starts were seen to turn; {why}")


def _limit_amps(situation: Situation, test: StartTest) -> float:
    """A: as asked, or a little above what the winding can draw, within the ceiling."""
    if test.amps is not None:
        return test.amps
    winding, reference = situation.winding, situation.reference_ohm
    low_ohm = winding.low_ohm if winding is not None and winding.low_ohm is not None else reference
    return min(HEADROOM * test.volts / max(low_ohm, reference / 2), situation.ceilings.amps.value)


def _never_fits(situation: Situation, joules: float) -> str:
    """Why even a motor that has rested for long leaves no room for a start."""
    ceilings = situation.ceilings
    stall_s = joules * situation.reference_ohm / situation.rated_volts**2
    for value, unit, bound in ((joules, "J", ceilings.energy_j), (stall_s, "s locked", ceilings.locked_s)):
        if value > 0.95 * bound.value:
            return (
                f"{HOLD_S:g} s of a start that stays locked are {value:.3g} {unit}, which does not fit below the "
                f"{bound.layer}'s ceiling of {bound.value:g} {unit.split()[0]}"
            )
    return ""


def _what_is_seen(situation: Situation, seen: Seen, array: Array | None) -> Mark:
    """The first note: how much of a start this supply can show."""
    can = situation.capabilities
    took_s = seen.reading.received_s - seen.reading.sent_s
    unseen_s = can.settle_s + can.window_s / 2
    text = f"This supply reads back every {_ms(took_s)}, the mean of {_ms(can.window_s)} each: "
    if array is None:
        text += f"the first {_ms(unseen_s)} of a start, its real inrush, can't be seen."
    else:
        text += (
            f"too slow for the inrush. Its own array keeps {array.points} samples of each start, one every "
            f"{_ms(array.interval_s)}."
        )
    return mark(EventKind.NOTE, text, interval_s=round(took_s, 6), unseen_s=round(unseen_s, 6))


def _announced(test: StartTest, number: int, amps: float, delay_s: float) -> Mark:
    later = f", read {_ms(delay_s)} later" if delay_s else ""
    return mark(
        EventKind.STEP,
        f"Start {number} of {test.starts}, from rest, at {show(test.volts, 'V')}{later}.",
        name=f"start {number}",
        number=number,
        volts=test.volts,
        amps=amps,
        delay_s=round(delay_s, 6),
    )


def _at_rest(situation: Situation, test: StartTest, amps: float, joules: float) -> Plan[Seen | str]:
    """Still, its winding found, still again and rested, with room for `joules` within the ceilings; or why not."""
    seen = yield from down(amps, Motion.TURNING)
    seen, still = yield from until_still(situation, seen, at_most_s=test.still_s)
    if still:
        missing = yield from winding_missing(situation)
        if missing is not None:
            return missing
        seen = yield from down(amps, Motion.UNKNOWN)
        seen, still = yield from until_still(situation, seen, at_most_s=test.still_s)
    if not still:
        return f"it did not come to rest in {test.still_s:g} s"
    yield from rest(seen, test.rest_s)
    room = yield from room_for(situation, joules, within_s=ROOM_WITHIN_S)
    return room or f"the ceilings left no room for it within {ROOM_WITHIN_S:g} s"


def _held_start(situation: Situation, test: StartTest, amps: float, before: Seen, delay_s: float) -> Plan[_Hold]:
    """The volts until `on_s` after the trigger, or until a ceiling is near."""
    edge = _fed(_edge(test), test, situation, before)[0] if test.trigger is not Trigger.OUTPUT_ON else None
    seen = yield Apply(volts=test.volts, amps=amps, belief=Motion.UNKNOWN)
    hold = _Hold(began_s=seen.set_at_s, trigger_s=seen.set_at_s if edge is None else None)
    read_at_s = seen.now_s + delay_s
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
        hold.cut = _ceiling_near(situation, hold.began_s, seen)
        if hold.cut:
            return hold
        seen = yield Watch(at_s=read_at_s)


def _put_in(hold: _Hold) -> float:
    """J into the leads while it was held."""
    readings = [seen.reading for seen in hold.seen]
    return sum(
        max(a.volts * a.amps, b.volts * b.amps, 0.0) * (b.received_s - a.received_s) for a, b in pairwise(readings)
    )


def _whole(hold: _Hold) -> int:
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


def _nothing_crossed(test: StartTest) -> str:
    assert test.level is not None, "checked"
    return f"nothing crossed {show(test.level, 'A' if test.trigger is Trigger.AMPS else 'V')} within {test.arm_s:g} s"


def _ceiling_near(situation: Situation, began_s: float, seen: Seen) -> str:
    """Which ceiling one more reading might pass, in words; "" while there is room for it."""
    reading = seen.reading
    took_s = reading.received_s - reading.sent_s
    if seen.now_s - began_s + 2 * took_s > situation.ceilings.on_s.value:
        return "cut short before the ceiling for time in a row"
    joules = max(reading.volts * reading.amps, 0.0) * took_s
    rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=joules)
    return f"cut short before the ceiling for {asked_by}" if rest_s > 0 else ""


def _looked_at(situation: Situation, test: StartTest, amps: float, hold: _Hold) -> Plan[_Turned]:
    """Whether it turned, by the look of a proof; the motor at 0 V afterwards."""
    last = hold.seen[-1]
    took_s = last.reading.received_s - last.reading.sent_s
    look_s = max(_DRIVEN_OF_LOOK_S, _READINGS_OF_LOOK * took_s)
    until_s = last.now_s if hold.cut or hold.trigger_s is None else max(last.now_s, hold.trigger_s + test.on_s)
    left_s = situation.ceilings.on_s.value - (until_s - hold.began_s + look_s)
    if left_s < 0:
        yield from down(amps, Motion.UNKNOWN, after_s=until_s)
        most = situation.ceilings.on_s
        return _Turned(
            word=NOT_LOOKED, why=f"no time for a look below the {most.layer}'s ceiling of {most.value:g} s in a row"
        )
    look = yield from look_after(
        situation, hold.seen, test.volts, amps, after_s=until_s, slow_s=min(SLOW_MOST_S, left_s)
    )
    return _Turned(word=_WORDS.get(look.verdict, DOUBTFUL), why=look.why)


def _stalled(situation: Situation, was: Held, test: StartTest, amps: float) -> bool:
    """Whether the current at the end is that of a motor which stands, or may be."""
    return was.amps > STALL_SHARE * min(amps, test.volts / situation.reference_ohm)


def _captured(
    situation: Situation, test: StartTest, number: int, amps: float, hold: _Hold, told: _Turned, delay_s: float
) -> Mark:
    """The start for the record: its figures, how it was read, whether it turned and what limited it."""
    assert hold.trigger_s is not None
    asked_at_once = int(delay_s > 0)  # the one before the delay says nothing of the pace
    readings = [seen.reading for seen in hold.seen[asked_at_once:] if seen.reading.received_s > hold.trigger_s]
    can = situation.capabilities
    start = start_of_readings(
        [one.sent_s for one in readings],
        [one.received_s for one in readings],
        [one.volts for one in readings],
        [one.amps for one in readings],
        set_volts=test.volts,
        began_s=hold.trigger_s,
        window_s=can.window_s,
        settle_s=max(0.0, hold.began_s + can.settle_s - hold.trigger_s),
        name=f"start {number}",
    )
    figures = figures_of(start, lead_ohm=situation.lead_ohm, zero=zero_by(situation.known_meter))
    limited = _limited(readings, amps)
    return mark(
        EventKind.START,
        _sentence(test, number, figures, hold.cut, limited=limited, turned=told),
        why=told.why,
        number=number,
        trigger_s=round(hold.trigger_s - situation.zero_s, 6),
        began_s=round(hold.began_s - situation.zero_s, 6),
        delay_s=round(delay_s, 6),
        volts=test.volts,
        amps=round(amps, 6),
        limited=limited,
        turning=told.word,
        cut=hold.cut,
        **event_values(figures),
    )


def _limited(readings: list[Reading], amps: float) -> bool:
    """Whether the supply held the current at its limit up to the largest reading: the start is then the limit's."""
    if not readings:
        return False
    peak = max(range(len(readings)), key=lambda k: readings[k].amps)
    if readings[peak].regulation is Regulation.UNKNOWN:
        return readings[peak].amps >= AT_LIMIT_SHARE * amps
    return any(one.regulation is Regulation.CC for one in readings[: peak + 1])


def _sentence(test: StartTest, number: int, figures: StartFigures, cut: str, *, limited: bool, turned: _Turned) -> str:
    values = figures.values
    parts = [
        f"{word} {show(values[name].value, unit) if unit != 's' else _ms(values[name].value)}"
        for name, word, unit in (
            ("peak_amps", "peak", "A"),
            ("run_up_s", "run-up", "s"),
            ("steady_amps", "steady", "A"),
        )
        if name in values
    ]
    parts.append({TURNING: "turning", NOT_TURNING: "NOT turning"}.get(turned.word, f"turning: {turned.word}"))
    parts.append(f"a reading every {_ms(figures.interval_s)} ± {_ms(figures.jitter_s)}")
    parts += ["limited by current, not voltage"] if limited else []
    parts += [cut] if cut else []
    return f"Start {number} of {test.starts}: {', '.join(parts)}."


def _periods(hold: _Hold) -> list[float]:
    """s from reading to reading, one right after the other; those at the setpoint and after a delay left out."""
    sent = [seen.reading.sent_s for seen in hold.seen[2:]]
    return [b - a for a, b in pairwise(sent)][:200]


def _ms(value_s: float) -> str:
    """ "9.4 ms": the second's thousandth is what a start is told in."""
    if value_s >= 1.0:
        return show(value_s, "s")
    digits = max(0, 2 - math.floor(math.log10(max(1000 * value_s, 0.01))))
    return f"{1000 * value_s:.{min(digits, 2)}f} ms"
