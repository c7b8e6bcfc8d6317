"""Starts from rest: one after motion was seen, several for a proof, and one that is measured to be compared later."""

from statistics import fmean

from benchlog.motor.meter import Meter
from benchlog.motor.motion import LEAST_DOUBT_SHARE, CoastVerdict, Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Plan, Seen, Watch
from benchlog.recovery.looking import COAST_S, FIRST_RAISE, HOLD_S, Look, coast, full_look, hold_volts, too_slow_to_tell
from benchlog.recovery.moves import (
    RESERVE_S,
    Finding,
    Situation,
    down,
    drive,
    ends_s,
    held,
    locked_joules,
    mark,
    rest,
    room_for,
    until_still,
)
from benchlog.recovery.probing import winding_missing

REST_BEFORE_RESTART_S = 1.0
STILL_WITHIN_S = 60.0
"""s that a rotor may take to come to rest: a fan with little friction turns on for long."""
MEASURED_START = "measured start"
MEASURED_LEAST_S, MEASURED_MOST_S = 3.0, 6.0
"""s: a fit of the run-up wants some four time constants; up to 2 s are met. Starting values of this project."""
LOWER_SHARE = 1 / 1.4
LOWER_LEAST_S, LOWER_MOST_S = 1.0, 4.0
"""s: a rotor with little friction runs above the lowered volts for long before it draws current again."""
LOWER_LEAST_READINGS = 8
LOWER_STALL_SHARE = 0.5
"""Of the stall current at the lowered volts: what needs more to turn might stop there."""
_STEADY_OVER_S = 0.5
_STEADY_SHARE = 0.01
_AT_VOLTS_SHARE = 0.02


def prove(situation: Situation, starts: int) -> Plan[Finding]:
    """Starts from rest at a voltage that leaves room for the looks; where all turned, one more, held longer."""
    turned = doubtful = 0
    for number in range(1, starts + 1):
        yield mark(EventKind.STEP, f"Start {number} of {starts}, from rest.", name=f"start {number}")
        look = yield from start_from_rest(situation)
        turned += look.verdict is CoastVerdict.EMF
        doubtful += look.verdict not in (CoastVerdict.EMF, CoastVerdict.NOT_TURNING)
        yield mark(EventKind.LOOK, f"Start {number}: {look.verdict}.", why=look.why, start=number)
    situation.moved = 0 < turned < starts
    reason = f"it started {turned} of {starts} times from rest"
    if turned == starts:
        stopped = yield from measured_start(situation)
        if stopped is None:
            return Finding(outcome=Outcome.RUNS, reason=reason)
        situation.moved = True
        return Finding(outcome=Outcome.UNDETERMINED, reason=f"{reason}, but {stopped}")
    if doubtful and turned + doubtful == starts:
        reason = f"{reason}; {doubtful} could not be told"
        slow = too_slow_to_tell(situation.pace.reading_s)
        return Finding(outcome=Outcome.UNDETERMINED, reason=reason if slow is None else f"{slow}; {reason}")
    return Finding(outcome=Outcome.STILL_STUCK, reason=reason)


def start_from_rest(situation: Situation) -> Plan[Look]:
    """Still, rested, the winding still there, then a full look; a second one where the first was doubtful."""
    amps = min(situation.stall_amps, situation.ceilings.amps.value)
    volts = hold_volts(situation, situation.rated_volts)
    for _ in range(2):
        seen = yield from down(amps, Motion.TURNING)
        within_s = min(STILL_WITHIN_S, max(10.0, situation.time_left_s(seen.now_s) - RESERVE_S))
        seen, still = yield from until_still(situation, seen, at_most_s=within_s)
        if not still:
            return Look(verdict=CoastVerdict.DOUBTFUL, why=f"it did not come to rest in {within_s:.0f} s")
        yield from rest(seen, REST_BEFORE_RESTART_S)
        if (yield from room_for(situation, locked_joules(situation, volts, amps, HOLD_S))) is None:
            return Look(verdict=CoastVerdict.DOUBTFUL, why="no time was left to start it again within the ceilings")
        missing = yield from winding_missing(situation)
        if missing is not None:
            look = Look(verdict=CoastVerdict.DOUBTFUL, why=missing)
            continue
        look = yield from full_look(situation, volts, amps)
        if look.verdict in (CoastVerdict.EMF, CoastVerdict.NOT_TURNING):
            break
    return look


def measured_start(situation: Situation) -> Plan[str | None]:
    """One start from rest, held until the current is steady, for its curve. None, or why it is not sure to turn."""
    amps = min(situation.stall_amps, situation.ceilings.amps.value)
    volts = hold_volts(situation, situation.rated_volts)
    seen = yield from down(amps, Motion.TURNING)
    seen, still = yield from until_still(situation, seen)
    seen = yield from rest(seen, REST_BEFORE_RESTART_S)
    room = yield from room_for(situation, locked_joules(situation, volts, amps, HOLD_S))
    if not still or room is None or situation.time_left_s(room.now_s) < RESERVE_S:
        yield mark(EventKind.STEP, "No measured start: no time was left for it.", name=MEASURED_START, skipped=True)
        return None
    yield mark(
        EventKind.STEP,
        f"A start to be measured, at {show(volts, 'V')}, until the current is steady.",
        name=MEASURED_START,
        volts=volts,
        amps=amps,
    )
    seen_all = yield from drive(volts, amps, min(MEASURED_LEAST_S, _on_s(situation)), Motion.UNKNOWN, least=3)
    began_s = seen_all[0].set_at_s
    ends_at_s = began_s + min(MEASURED_MOST_S, _on_s(situation))
    while seen_all[-1].now_s < ends_at_s and not steady(seen_all, situation.known_meter):
        if situation.budget.rest_for(seen_all[-1].now_s, joules=0.0)[0] > 0:
            break
        seen_all.append((yield Watch()))
    look, coasted, _ = yield from coast(
        situation, seen_all, FIRST_RAISE * volts, COAST_S, after_s=seen_all[-1].now_s, belief=Motion.UNKNOWN
    )
    turning, after_s = look.verdict is CoastVerdict.EMF, ends_s(coasted, COAST_S)
    if turning:
        situation.budget.was_turning(began_s)
        if steady(seen_all, situation.known_meter):
            lower = yield from _held_lower(situation, seen_all, LOWER_SHARE * volts, amps, after_s=after_s)
            after_s = lower if lower is not None else after_s
    yield from down(amps, after_s=after_s)
    yield mark(EventKind.LOOK, f"Measured start: {look.verdict}.", why=look.why, emf_share=round(look.emf_share, 3))
    stands = look.verdict is CoastVerdict.NOT_TURNING or look.emf_share <= LEAST_DOUBT_SHARE
    return f"at the end of the measured start: {look.why}" if stands else None


def _held_lower(
    situation: Situation, before: list[Seen], volts: float, amps: float, *, after_s: float
) -> Plan[float | None]:
    """The same start at lowered volts until its current is steady again, so that friction shows at a second speed.

    After the look that says that it turns: from lower volts a quick rotor would stop before it could be seen. Until
    when, or None where there is no room for it.
    """
    meter, began_s = situation.known_meter, before[0].set_at_s
    until_s = min(began_s + _on_s(situation), after_s + LOWER_MOST_S)
    joules = locked_joules(situation, volts, amps, LOWER_LEAST_S)
    if (
        until_s - after_s < LOWER_LEAST_S
        or held(situation, before).amps > LOWER_STALL_SHARE * volts / situation.reference_ohm
        or situation.budget.rest_for(after_s, joules=joules)[0] > 0
    ):
        return None
    yield mark(
        EventKind.STEP,
        f"The same at {show(volts, 'V')}: friction at a second speed.",
        name="lower hold",
        volts=volts,
        amps=amps,
    )
    seen = yield from drive(volts, amps, LOWER_LEAST_S, Motion.UNKNOWN, after_s=after_s)
    most_volts = (1 + _AT_VOLTS_SHARE) * volts + meter.zero_volts
    while seen[-1].now_s < until_s:
        slowed = [s for s in seen if s.reading.volts <= most_volts]
        if len(slowed) >= LOWER_LEAST_READINGS and steady(slowed, meter):
            break
        if situation.budget.rest_for(seen[-1].now_s, joules=0.0)[0] > 0:
            break
        seen.append((yield Watch()))
    return ends_s(seen, LOWER_LEAST_S)


def steady(seen: list[Seen], meter: Meter) -> bool:
    """Whether the mean current of the last half second is that of the half second before."""
    now_s = seen[-1].now_s
    last = [s.reading.amps for s in seen if s.now_s > now_s - _STEADY_OVER_S]
    before = [s.reading.amps for s in seen if now_s - 2 * _STEADY_OVER_S < s.now_s <= now_s - _STEADY_OVER_S]
    if min(len(last), len(before)) < 2:
        return False
    noise = 2 * (meter.sigma_amps + meter.step_amps) / min(len(last), len(before)) ** 0.5
    return bool(abs(fmean(last) - fmean(before)) <= _STEADY_SHARE * abs(fmean(last)) + noise)


def _on_s(situation: Situation) -> float:
    return max(0.0, situation.ceilings.on_s.value - COAST_S - 0.2)
