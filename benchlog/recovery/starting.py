"""Starts that are captured: from rest, one after the other, each with its figures and whether it turned."""

from statistics import median

from benchlog.motor.motion import CoastVerdict, Held, Motion
from benchlog.outcome import Outcome
from benchlog.records import EventKind
from benchlog.recovery.array_of_starts import array_for, fetched
from benchlog.recovery.commands import Acquire, Plan, Seen, Watch
from benchlog.recovery.holding_starts import Hold, held_start, nothing_crossed, periods_of, put_in
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
from benchlog.recovery.start_marks import (
    DOUBTFUL,
    NOT_LOOKED,
    NOT_TURNING,
    TURNING,
    Turned,
    announced,
    captured,
    what_is_seen,
)
from benchlog.recovery.start_test import StartTest

ROOM_WITHIN_S = 300.0
"""s that is waited for a start to fit within every ceiling, at most. Starting value of this project."""
STALL_SHARE = 0.5
"""Of the current that a locked rotor draws: from here on a start that was not shown to turn is the last one."""
HEADROOM = 1.1
"""Limit over the most that the winding may draw, where none is asked for: the limit must not shape the start."""
AS_THE_LAST = 1.5
"""Room for a start after one that turned, over what went into that one. A start that needs more is cut short."""
_DRIVEN_OF_LOOK_S = 2 * COAST_S + STEP_S
_READINGS_OF_LOOK = 8
"""What the look after a start takes at least, and in readings where those are slow."""
SLOW_MOST_S = 1.5
"""s that a rotor with little friction may coast on where no ceiling leaves room for a step up."""
_WORDS = {CoastVerdict.EMF: TURNING, CoastVerdict.NOT_TURNING: NOT_TURNING}


def capture_starts(situation: Situation, test: StartTest) -> Plan[Finding]:
    """After the probe: as many starts as asked for, or up to the first that did not turn."""
    amps = _limit_amps(situation, test)
    joules = locked_joules(situation, test.volts, amps, HOLD_S)
    never = _never_fits(situation, joules)
    if never:
        return Finding(outcome=Outcome.UNDETERMINED, reason=never)
    seen = yield Watch()
    array = array_for(situation, test)
    yield what_is_seen(situation, seen, array)
    turned, doubt, periods = 0, "", list[float]()
    for number in range(1, test.starts + 1):
        at_rest = yield from _at_rest(situation, test, amps, joules)
        if isinstance(at_rest, str):
            return _unfinished(situation, test, turned, f"start {number} was not made: {at_rest}")
        delay_s = (number - 1) % test.interleave / test.interleave * median(periods) if periods else 0.0
        yield announced(test, number, amps, delay_s)
        if array is not None:
            at_rest = yield Acquire(points=array.points, interval_s=array.interval_s)
        hold = yield from held_start(situation, test, amps, at_rest, delay_s)
        periods = periods_of(hold) or periods
        if hold.trigger_s is None:
            yield from down(amps, Motion.UNKNOWN)
            why = hold.cut or nothing_crossed(test)
            yield mark(EventKind.LOOK, f"Start {number}: {why}.", number=number)
            return _unfinished(situation, test, turned, why)
        stalled = _stalled(situation, held(situation, hold.seen), test, amps)
        told = yield from _looked_at(situation, test, amps, hold)
        yield captured(situation, test, number, amps, hold, told, delay_s)
        if array is not None:
            problem = yield from fetched(situation, array, number, at_rest.now_s, last=number == test.starts)
            if problem:
                return _unfinished(situation, test, turned, problem)
        if told.word == TURNING:
            turned += 1
            joules = min(joules, AS_THE_LAST * put_in(hold))
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
    if room is None:
        return f"the ceilings left no room for it within {ROOM_WITHIN_S:g} s"
    return (yield from _before(room, test.before_s))


def _before(seen: Seen, for_s: float) -> Plan[Seen]:
    """What is kept of the time before a start, read as fast as the start itself."""
    until_s = seen.now_s + for_s
    while seen.now_s < until_s:
        seen = yield Watch()
    return seen


def _looked_at(situation: Situation, test: StartTest, amps: float, hold: Hold) -> Plan[Turned]:
    """Whether it turned, by the look of a proof; the motor at 0 V afterwards."""
    last = hold.seen[-1]
    took_s = last.reading.received_s - last.reading.sent_s
    look_s = max(_DRIVEN_OF_LOOK_S, _READINGS_OF_LOOK * took_s)
    until_s = last.now_s if hold.cut or hold.trigger_s is None else max(last.now_s, hold.trigger_s + test.on_s)
    left_s = situation.ceilings.on_s.value - (until_s - hold.began_s + look_s)
    if left_s < 0:
        yield from down(amps, Motion.UNKNOWN, after_s=until_s)
        most = situation.ceilings.on_s
        return Turned(
            word=NOT_LOOKED, why=f"no time for a look below the {most.layer}'s ceiling of {most.value:g} s in a row"
        )
    look = yield from look_after(
        situation, hold.seen, test.volts, amps, after_s=until_s, slow_s=min(SLOW_MOST_S, left_s)
    )
    return Turned(word=_WORDS.get(look.verdict, DOUBTFUL), why=look.why)


def _stalled(situation: Situation, was: Held, test: StartTest, amps: float) -> bool:
    """Whether the current at the end is that of a motor which stands, or may be."""
    return was.amps > STALL_SHARE * min(amps, test.volts / situation.reference_ohm)
