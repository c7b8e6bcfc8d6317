"""The probe: zero, a few small current levels, and where no current flowed, raised volts at a very small limit."""

import math
from statistics import fmean

from benchlog.motor.leads import lead_resistance
from benchlog.motor.meter import zeroed
from benchlog.motor.motion import REFERENCE_WORSE, Held, Motion
from benchlog.motor.winding import Level, Winding, classify
from benchlog.outcome import WindingVerdict
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Plan, Seen, Switch, Watch
from benchlog.recovery.guard import COARSEST_STEP
from benchlog.recovery.moves import (
    REST_PACE_S,
    Situation,
    ask,
    discharged,
    down,
    drive,
    ends_s,
    mark,
    rest,
    room_for,
    until_still,
)
from benchlog.recovery.pacing import paced, too_short
from benchlog.recovery.steps import Kicks

ZERO_READINGS = 6
PROBE_JOULES = 0.5
"""J: more than any probe puts into a winding; room for it is waited for if earlier runs have left none. Where nothing
flowed at first, raised volts may put up to 6 J into electronics."""
PROBE_LOCKED_SHARE = 0.9
"""Of the ceiling for locked time: what a slow supply's probe may take of it. Starting value."""
LEVEL_READINGS = 2
"""Whole readings of a level, at least."""
RAISED_LIMIT_A = 0.05
DIODE_SHARE = 0.8
LEADS_AMPS, LEADS_VOLTS = (0.1, 0.3, 1.0), 1.0
_RAISED_SHARES = (0.25, 0.4, 0.55, 0.7, 0.85, 1.0)
_RAISED_ON_S = 0.1
LAST_LIMIT_A, _LAST_ON_S = 0.25, 0.5
"""A, s: of the last level, at the rated volts. Electronics that want more than 50 mA to start never did before it."""
_TOP_SHARE = 0.3  # of the stall current
_TOP_MOST_A = 1.0
ZEROS_AGAIN, SURE = 4, 4.0
"""Readings at no current before a look for the winding, and how many standard deviations it must stand out."""
STILL_AFTER_S = 1.0
"""s after a look within which the rotor must stand for the winding to be asked for: the longer, the more likely is it
that a protector which opened in an earlier kick closes meanwhile."""
_TOP_JOULES = 0.33
"""J that the highest level puts in at most, even if the rotor turns: slow readings make it longer and so lower."""


def zero(situation: Situation, *, rungs: tuple[Kicks, ...] = ()) -> Plan[Seen]:
    """Readings with the output off, then on at 0 V. Volts that stay on the terminals are refused by the guard.

    `rungs`: of which is said, before it is on, what this supply makes of them.
    """
    seen = yield Watch()
    situation.began_s = seen.now_s
    seen = yield from discharged(seen)
    rows = [seen]
    while len(rows) < ZERO_READINGS:
        rows.append((yield Watch(at_s=rows[-1].now_s + situation.capabilities.window_s)))
    situation.meter = zeroed(
        [s.reading.volts for s in rows],
        [s.reading.amps for s in rows],
        step_volts=min(situation.capabilities.volts_step, COARSEST_STEP),
        step_amps=min(situation.capabilities.amps_step, COARSEST_STEP),
    )
    situation.pace = yield from paced(situation, rows)
    remark = too_short(situation.pace, rungs)
    if remark is not None:
        yield remark
    yield from room_for(situation, PROBE_JOULES)
    seen = yield Switch(on=True)
    yield mark(EventKind.OUTPUT, "Output on, at 0 V.", on=True)
    return seen


def probe(situation: Situation) -> Plan[Winding]:
    """What lies between the leads; kept in the situation, and its heat in the budget."""
    plan = situation.sequence.probe
    compliance = _compliance_v(situation)
    yield mark(EventKind.STEP, "Probing the winding with small currents.", name="probe", volts=compliance)
    levels: list[Level] = []
    for amps in plan.levels_a:
        if amps <= situation.ceilings.amps.value:
            levels.append((yield from _level(situation, compliance, amps, plan.on_s, plan.off_s)))
    top = _top_level(situation, levels, compliance)
    if top is not None:
        levels.append((yield from _level(situation, compliance, top, plan.on_s, plan.off_s)))
    raised: list[Level] = []
    if all(level.amps <= 3 * situation.known_meter.u_amps for level in levels):
        yield mark(EventKind.STEP, "No current yet: raising the volts at a very small limit.", name="probe, raised")
        most = min(situation.rated_volts, situation.ceilings.volts.value)
        limit = min(RAISED_LIMIT_A, situation.ceilings.amps.value)
        for share in _RAISED_SHARES:
            raised.append((yield from _level(situation, share * most, limit, _RAISED_ON_S, 0.3)))
        if all(level.most_amps <= 3 * situation.known_meter.u_amps for level in raised):
            limit = min(LAST_LIMIT_A, situation.ceilings.amps.value)
            raised.append((yield from _level(situation, most, limit, _LAST_ON_S, 0.3, least=4)))
    winding = classify(
        levels, raised, situation.known_meter, lead_ohm=situation.lead_ohm, rated_volts=situation.rated_volts
    )
    situation.winding = winding
    if winding.reference_ohm is not None:
        situation.budget.learn(winding.reference_ohm)
    yield mark(
        EventKind.FINDING,
        sentence(winding),
        why=winding.reason,
        verdict=winding.verdict,
        resistance_ohm=winding.ohm,
        low_ohm=winding.low_ohm,
        high_ohm=winding.high_ohm,
        joules=round(sum(max(one.volts * one.amps, 0.0) * one.driven_s for one in (*levels, *raised)), 4),
    )
    return winding


def may_have_turned(situation: Situation) -> bool:
    """Whether what the probe found may be a rotor that turned in it: no two levels agreed, or they could not differ,
    because at the volts of the probe even the lowest of them would not be reached."""
    plan, winding = situation.sequence.probe, situation.winding
    if winding is None or winding.ohm is None:
        return True
    return situation.reference_ohm * min(plan.levels_a) > _compliance_v(situation)


def _compliance_v(situation: Situation) -> float:
    """V that the levels of the probe may come to, which a slow supply makes long.

    A winding not known yet counts as locked by its volts alone: all levels together stay within that ceiling.
    """
    plan, pace = situation.sequence.probe, situation.pace
    volts = min(plan.compliance_v, situation.rated_volts, situation.ceilings.volts.value)
    if not pace.slow:
        return volts
    levels_s = (len(plan.levels_a) + 1) * pace.charged_s(plan.on_s, LEVEL_READINGS)
    share = PROBE_LOCKED_SHARE * situation.ceilings.locked_s.value / levels_s
    return min(volts, math.sqrt(share) * situation.rated_volts)


def winding_missing(situation: Situation) -> Plan[str | None]:
    """Before a start from rest: None where a small current still finds the winding, or what it finds instead.

    A protector that has opened before a start passes the same small current all along, as a light load does.
    """
    plan, ceilings = situation.sequence.probe, situation.ceilings
    zero_amps, noise = yield from _zero_again(situation)
    most_volts = min(max(plan.compliance_v, _TOP_SHARE * situation.rated_volts), situation.rated_volts)
    amps = min(max(*plan.levels_a, 3 * SURE * noise), ceilings.amps.value)
    volts = min(most_volts, ceilings.volts.value)
    found, low = yield from _first_amps(situation, volts, amps, zero_amps)
    yield from rest(low, plan.on_s)
    drawn = min(amps, volts / (REFERENCE_WORSE * situation.reference_ohm))
    if 0.5 * drawn < SURE * noise:
        return f"the readback is too coarse to see the {drawn:.3g} A that the winding draws at {volts:.3g} V"
    if found >= 0.5 * drawn:
        return None
    return (
        f"before the start only {found:.3g} A flowed at {volts:.3g} V, where the winding draws {drawn:.3g} A: "
        "an opened protector, or a brush"
    )


def winding_after(situation: Situation, was: Held, low: Seen) -> Plan[str | None]:
    """Whether a small current finds the winding once the rotor stands. An opened protector is still open by then.

    The current is one that a rotor which runs at `was` is not started by, if it can be measured.
    """
    _, still = yield from until_still(situation, low, at_most_s=STILL_AFTER_S)
    if not still:
        return None
    plan, ceilings, reference = situation.sequence.probe, situation.ceilings, situation.reference_ohm
    zero_amps, noise = yield from _zero_again(situation)
    amps = min(max(0.5 * was.amps, 3 * SURE * noise), max(plan.levels_a), ceilings.amps.value)
    volts = min(2 * amps * reference, plan.compliance_v, situation.rated_volts, ceilings.volts.value)
    found, _ = yield from _first_amps(situation, volts, amps, zero_amps)
    least = 0.5 * min(amps, volts / (REFERENCE_WORSE * reference))
    if found < max(least, SURE * noise) or least < SURE * noise:
        return None
    return f"the winding there right after, at {found:.3g} A"


def _zero_again(situation: Situation) -> Plan[tuple[float, float]]:
    """A at 0 V right now, and the noise of a difference to it: a wrong zero does not hide or feign a winding then."""
    meter, zeros = situation.known_meter, []
    seen = yield Watch()
    for _ in range(ZEROS_AGAIN):
        zeros.append(seen.reading.amps)
        seen = yield Watch(at_s=seen.now_s + REST_PACE_S)
    noise = (meter.sigma_amps + meter.step_amps / math.sqrt(12)) * math.sqrt(1 + 1 / ZEROS_AGAIN)
    return fmean(zeros), noise


def _first_amps(situation: Situation, volts: float, amps: float, zero_amps: float) -> Plan[tuple[float, Seen]]:
    """A of the first whole reading: a rotor that such a current turns has not come far by then. Ends at 0 V."""
    on_s = situation.sequence.probe.on_s
    driven = yield from drive(volts, amps, on_s, Motion.UNKNOWN, least=1)
    low = yield from down(amps, after_s=ends_s(driven, on_s))
    return next(s.reading.amps for s in driven if s.whole) - zero_amps, low


ANGLES_MOST = 5
TURNED, SWAPPED, ENOUGH, SWAPPED_BACK = "turned", "leads swapped", "enough", "swapped back"
_TURN = "Turn the shaft a little by hand and say so: the contact of the brushes differs with the angle."
_SWAP = "Or swap the two leads, to look for a diode across the motor."


def probe_at_angles(situation: Situation) -> Plan[None]:
    """Again at other angles, as a person turns the shaft: the lowest resistance is the winding's. And reversed."""
    assert situation.winding is not None
    found, reversed_once = [situation.winding], False
    while len(found) < ANGLES_MOST:
        choices = (TURNED, ENOUGH) if reversed_once else (TURNED, SWAPPED, ENOUGH)
        asked = _TURN if reversed_once else f"{_TURN} {_SWAP}"
        known = [one.ohm for one in found if one.ohm is not None]
        if len(found) > 1 and known:
            so_far = f"The lowest of {len(found)} angles so far: {show(min(known), 'Ω')}."
            asked = f"{so_far} {asked}"
        answer = yield from ask(situation, asked, choices, swap=True)
        if answer == TURNED:
            again = yield from probe(situation)
            if again.verdict is WindingVerdict.WINDING:
                found.append(again)
        elif answer == SWAPPED:
            reversed_once = True
            yield from _reversed(situation)
        else:
            break
    situation.winding = min(found, key=lambda one: one.reference_ohm or math.inf)
    if situation.winding.reference_ohm is not None:
        situation.budget.learn(situation.winding.reference_ohm)
    known = [one.ohm for one in found if one.ohm is not None]
    if len(known) > 1:
        yield mark(
            EventKind.FINDING,
            f"Over {len(known)} angles {show(min(known), 'Ω')} to {show(max(known), 'Ω')}; the lowest counts.",
            why="What is above it is the contact of the brushes at that angle.",
            lowest_ohm=min(known),
            highest_ohm=max(known),
            angles=len(known),
        )


def _reversed(situation: Situation) -> Plan[None]:
    """The leads swapped: a diode across the motor conducts now."""
    forward = situation.winding
    backward = yield from probe(situation)
    diode = backward.verdict is WindingVerdict.DIODE or (
        forward is not None and _falls(backward) and not _falls(forward)
    )
    yield mark(
        EventKind.FINDING,
        "A diode lies across the motor: never reverse it." if diode else "No diode seen with the leads swapped.",
        why=backward.reason,
        reversed=True,
        diode=diode,
    )
    situation.winding = forward
    yield from ask(situation, "Swap the leads back.", (SWAPPED_BACK,), swap=True)


def _falls(winding: Winding) -> bool:
    """Whether V/I fell with the current, as beside a diode that takes over. A winding's own does not."""
    return (
        winding.ohm is not None
        and winding.reference_ohm is not None
        and winding.reference_ohm < DIODE_SHARE * winding.ohm
    )


def measure_leads(situation: Situation) -> Plan[Winding]:
    """What the leads have, their clips joined; kept in the situation."""
    volts = min(LEADS_VOLTS, situation.ceilings.volts.value)
    yield mark(EventKind.STEP, "Measuring the leads, their clips joined.", name="leads", volts=volts)
    levels = []
    for amps in LEADS_AMPS:
        if amps <= situation.ceilings.amps.value:
            levels.append((yield from _level(situation, volts, amps, situation.sequence.probe.on_s, 0.3)))
    leads = lead_resistance(levels, situation.known_meter)
    situation.winding = leads
    yield mark(
        EventKind.FINDING,
        "Leads measured." if leads.ohm is not None else "No lead resistance found.",
        why=leads.reason,
        verdict=leads.verdict,
        resistance_ohm=leads.ohm,
        low_ohm=leads.low_ohm,
        high_ohm=leads.high_ohm,
    )
    return leads


def sentence(winding: Winding) -> str:
    """The verdict in words."""
    match winding.verdict:
        case WindingVerdict.WINDING if winding.ohm is not None:
            return (
                f"A winding of {show(winding.ohm, 'Ω')} "
                f"({show(winding.low_ohm, 'Ω')} to {show(winding.high_ohm, 'Ω')}) at this shaft angle."
            )
        case WindingVerdict.WINDING:
            return "A winding; its resistance can't be told."
        case WindingVerdict.OPEN:
            return "Open: no current flows. A tap on the housing may close a brush."
        case WindingVerdict.SHORT:
            return "Short: the volts hardly rise at any current."
        case WindingVerdict.DIODE:
            return "A diode conducts in this direction."
        case WindingVerdict.ELECTRONIC:
            return "An electronic driver lies between the leads and the winding."
    return "The probe could not decide."


def _top_level(situation: Situation, levels: list[Level], compliance: float) -> float | None:
    """A: 0.3 of the stall current once the winding is roughly known, if that is a step up worth taking."""
    carrying = [level for level in levels if level.amps > 3 * situation.known_meter.u_amps and level.volts > 0]
    if not carrying:
        return None
    reference = min(level.volts / level.amps for level in carrying)
    top = min(
        _TOP_SHARE * situation.rated_volts / reference,
        _TOP_JOULES / (compliance * max(level.driven_s for level in levels)),
        0.95 * compliance / reference,
        situation.ceilings.amps.value,
        _TOP_MOST_A,
    )
    return top if top > 1.2 * carrying[-1].amps else None


def _level(
    situation: Situation, volts: float, amps: float, on_s: float, off_s: float, *, least: int = LEVEL_READINGS
) -> Plan[Level]:
    meter = situation.known_meter
    seen = yield from drive(volts, amps, on_s, Motion.UNKNOWN, least=least)
    driven_s = ends_s(seen, on_s) - seen[-1].set_at_s
    rows = [s.reading for s in seen if s.whole]
    low = yield from down(amps, after_s=ends_s(seen, on_s))
    yield from rest(low, max(off_s, REST_PACE_S))
    return Level(
        volts=fmean(r.volts for r in rows) - meter.zero_volts,
        amps=fmean(r.amps for r in rows) - meter.zero_amps,
        most_amps=max(s.reading.amps for s in seen) - meter.zero_amps,
        count=len(rows),
        driven_s=driven_s,
        asked_volts=volts,
        asked_amps=amps,
    )
