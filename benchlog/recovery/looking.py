"""Does it turn? Holds, coasts at almost no current, a step, a second coast: the look that decides, as moves."""

from dataclasses import dataclass, replace

from benchlog.motor.motion import (
    CAPACITOR_FALLS,
    CoastLook,
    CoastVerdict,
    Held,
    Motion,
    capacitor_fall_s,
    coast_amps,
    look_at_coast,
    surged,
)
from benchlog.records import EventKind
from benchlog.recovery.commands import Plan, Seen, Watch
from benchlog.recovery.moves import Situation, down, drive, ends_s, held, mark, points
from benchlog.recovery.probing import may_have_turned, winding_after

COAST_S = 0.2
QUICK_COAST_S = 0.15
HOLD_S = 0.9
LOOK_HOLD_S = 0.45
STEP_S = 0.25
FIRST_RAISE, SECOND_RAISE = 1.2, 1.4
ROOM_SHARE, BELOW_SHARE = 1.1, 0.02
"""Of the volts held: how far above them a coast's limit must lie for an open circuit to climb, and how far below them
what is read must stay where it does not. Starting values of this project."""
SLOWED_SHARE = 0.6
"""Of the volts between what was held and the rotor's own: by how much more it slows for a surge at the same volts."""
SLOWEST_READING_S = 0.2
"""s: what a coast says was studied down to 5 readings a second (see benchlog.motor.motion)."""
LOOK_YOURSELF = "too slow to see a motor turn, so look at the shaft yourself"


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What a full look came to: turning, not turning, or doubtful, and which evidence decided."""

    verdict: CoastVerdict
    why: str


def hold_volts(situation: Situation, at_most: float) -> float:
    """V to hold at: rated or less, with room above it for the raised limits of the coasts."""
    return min(at_most, situation.rated_volts, situation.ceilings.volts.value / SECOND_RAISE)


def look_volts(situation: Situation, at_most: float) -> float:
    """V of the short hold of a slow look: gentler than a hold that is to prove motion, whatever the ceiling allows."""
    return min(hold_volts(situation, at_most), situation.rated_volts / SECOND_RAISE)


def coast(
    situation: Situation,
    before: list[Seen],
    limit_volts: float,
    for_s: float,
    *,
    after_s: float,
    belief: Motion,
    steady: bool = True,
) -> Plan[tuple[CoastLook, list[Seen], Held]]:
    """One look at almost no current, the volts limit raised above what was held as far as the ceiling allows."""
    was = held(situation, before)
    small = min(coast_amps(was.amps), situation.ceilings.amps.value)
    limit = min(limit_volts, situation.ceilings.volts.value)
    for_s = max(for_s, CAPACITOR_FALLS * capacitor_fall_s(was, situation.reference_ohm, situation.known_meter))
    seen = yield from drive(limit, small, for_s, belief, after_s=after_s, least=2)
    look = look_at_coast(
        was,
        points(situation, seen),
        small_amps=small,
        reference_ohm=situation.reference_ohm,
        meter=situation.known_meter,
        steady=steady,
    )
    return _not_too_slow(look, seen, situation), seen, was


def _not_too_slow(look: CoastLook, seen: list[Seen], situation: Situation) -> CoastLook:
    """A rotor's voltage that was read too slowly to be one: between two such readings a protector opens and cools.

    Nor is a rotor told to stand by its current then, where the probe may have found the current of one that turned.
    """
    why = too_slow_to_tell(max(s.reading.received_s - s.reading.sent_s for s in seen))
    stands = look.verdict is CoastVerdict.NOT_TURNING and not may_have_turned(situation)
    if why is None or stands or look.verdict not in (CoastVerdict.EMF, CoastVerdict.NOT_TURNING):
        return look
    return replace(look, verdict=CoastVerdict.DOUBTFUL, why=why)


def too_slow_to_tell(reading_s: float) -> str | None:
    """Why no look shows motion on a supply that takes so long for a reading; None: it is quick enough."""
    if reading_s <= SLOWEST_READING_S:
        return None
    return f"one reading takes {reading_s:.2f} s: {LOOK_YOURSELF}"


def full_look(situation: Situation, volts: float, amps: float, *, after_s: float = 0.0) -> Plan[Look]:
    """Hold, coast, step, coast: turning only if every part agrees. Ends at 0 V."""
    seen = yield from drive(volts, amps, HOLD_S, Motion.UNKNOWN, after_s=after_s, least=3)
    return (yield from look_after(situation, seen, volts, amps, after_s=ends_s(seen, HOLD_S)))


def look_after(
    situation: Situation, seen: list[Seen], volts: float, amps: float, *, after_s: float, slow_s: float | None = None
) -> Plan[Look]:
    """The same after a hold of any length, whose readings since its setpoint are `seen`. Ends at 0 V.

    `slow_s`: of a hold that may have come near a ceiling. Where the volts can't step up, a rotor may coast for so much
    longer, to draw a surge at the step back; and the step is left out where it might pass a ceiling.
    """
    began_s = seen[0].set_at_s
    first, coasted, was = yield from coast(
        situation,
        seen,
        FIRST_RAISE * volts,
        COAST_S,
        after_s=after_s,
        belief=Motion.UNKNOWN,
    )
    first = _with_little_room(situation, first, coasted, was)
    if first.verdict is not CoastVerdict.EMF:
        yield from down(amps, after_s=ends_s(coasted, COAST_S))
        return Look(verdict=first.verdict, why=first.why)
    # Once a rotor's voltage was seen, the hold was not locked time.
    situation.budget.was_turning(began_s)
    yield mark(EventKind.TURNING, "It turns. Holding on to see that it keeps turning.", why=first.why)
    step_volts = min(FIRST_RAISE * volts, situation.ceilings.volts.value)
    if slow_s is not None:
        if _little_room(coasted, was):
            coasted += yield from _slowed(situation, coasted, was, slow_s)
        left_out = _no_room_for_step(situation, coasted[-1], step_volts, amps)
        if left_out:
            yield from down(amps, Motion.TURNING, after_s=ends_s(coasted, COAST_S))
            return Look(verdict=CoastVerdict.DOUBTFUL, why=f"{first.why}; seen once only: {left_out}")
    stepped = yield from drive(step_volts, amps, STEP_S, Motion.TURNING, after_s=ends_s(coasted, COAST_S), least=2)
    second, last, before = yield from coast(
        situation,
        stepped,
        SECOND_RAISE * volts,
        COAST_S,
        after_s=ends_s(stepped, STEP_S),
        belief=Motion.TURNING,
        steady=False,
    )
    second = _with_little_room(situation, second, last, before)
    low = yield from down(amps, Motion.TURNING, after_s=ends_s(last, COAST_S))
    between = _surge_between(situation, coasted, stepped, was)
    if second.verdict is CoastVerdict.EMF and between is None:
        between = yield from winding_after(situation, was, low)
    if second.verdict is CoastVerdict.EMF and between is not None:
        return Look(verdict=CoastVerdict.EMF, why=f"{first.why}; {between}; the same again higher up")
    doubt = (
        second.why
        if second.verdict is not CoastVerdict.EMF
        else "no surge between the looks, and no winding found right after them"
    )
    return Look(verdict=CoastVerdict.DOUBTFUL, why=f"a rotor's voltage was seen once, but not all agrees: {doubt}")


def _little_room(coasted: list[Seen], was: Held) -> bool:
    return coasted[-1].reading.set_volts < ROOM_SHARE * was.volts


def _slowed(situation: Situation, coasted: list[Seen], was: Held, at_most_s: float) -> Plan[list[Seen]]:
    """Coasts on until the step back will draw clearly more than was held: what it fell by then shows in the surge."""
    first_volts = points(situation, coasted)[0].volts
    enough_volts = first_volts - SLOWED_SHARE * (was.volts - first_volts)
    more, last = list[Seen](), coasted[-1]
    until_s = last.now_s + at_most_s
    while last.reading.volts - situation.known_meter.zero_volts > enough_volts and last.now_s < until_s:
        last = yield Watch()
        more.append(last)
    return more


def _no_room_for_step(situation: Situation, last: Seen, volts: float, amps: float) -> str:
    """Why a step up from this coast might pass a ceiling; "" where there is room for it."""
    drawn = min(amps, max(0.0, volts - last.reading.volts) / situation.reference_ohm)
    took_s = last.reading.received_s - last.reading.sent_s
    rest_s, asked_by = situation.budget.rest_for(last.now_s, joules=volts * drawn * (STEP_S + 2 * took_s))
    return f"the ceiling for {asked_by} leaves no room for a second look" if rest_s > 0 else ""


def _with_little_room(situation: Situation, look: CoastLook, coasted: list[Seen], was: Held) -> CoastLook:
    """Where no ceiling leaves room above what was held, an open circuit shows the limit itself, and does not climb.

    A rotor's voltage then counts only below that limit, and falling where it is near to it.
    """
    limit, meter = coasted[-1].reading.set_volts, situation.known_meter
    if look.verdict is not CoastVerdict.EMF or not _little_room(coasted, was):
        return look
    seen = points(situation, coasted)
    below = was.volts - max(point.volts for point in seen)
    falls = seen[0].volts - seen[-1].volts > 3 * meter.u_volts or ROOM_SHARE * seen[-1].volts < limit
    if falls and below > max(BELOW_SHARE * was.volts, 5 * meter.u_volts):
        return look
    why = (
        f"the terminals held {seen[-1].volts:.3g} V at a limit of {limit:.3g} V, which an open circuit does as well; "
        f"a ceiling of {FIRST_RAISE * was.volts:.3g} V would tell"
    )
    return replace(look, verdict=CoastVerdict.DOUBTFUL, why=why)


def _surge_between(situation: Situation, coasted: list[Seen], stepped: list[Seen], was: Held) -> str | None:
    """The evidence between the two coasts, in words: what the step drew at first."""
    meter, reference = situation.known_meter, situation.reference_ohm
    coast_points, step_points = points(situation, coasted), points(situation, stepped)
    if (
        coast_points
        and step_points
        and surged(step_points[0], coast_points[-1].volts, was, reference_ohm=reference, meter=meter)
    ):
        return "a surge at the step, as a winding draws"
    return None


def quick_look(
    situation: Situation, kicked: list[Seen], volts: float, *, after_s: float
) -> Plan[tuple[CoastLook, list[Seen]]]:
    """A short coast straight after a kick."""
    look, seen, _ = yield from coast(
        situation, kicked, FIRST_RAISE * volts, QUICK_COAST_S, after_s=after_s, belief=Motion.UNKNOWN
    )
    return look, seen


def look_while_running(
    situation: Situation, before: list[Seen], volts: float, *, after_s: float
) -> Plan[tuple[CoastLook, list[Seen]]]:
    """A coast in the middle of a long run, of a motor that was seen to turn; the caller drives it on."""
    look, seen, was = yield from coast(
        situation, before, FIRST_RAISE * volts, COAST_S, after_s=after_s, belief=Motion.TURNING
    )
    return _with_little_room(situation, look, seen, was), seen


def slow_look(situation: Situation, volts: float, amps: float, *, after_s: float) -> Plan[tuple[CoastLook, float]]:
    """A short hold and a coast, for rotors too slow to show anything straight after a kick. Also: when it ended."""
    seen = yield from drive(volts, amps, LOOK_HOLD_S, Motion.UNKNOWN, after_s=after_s, least=2)
    look, coasted, _ = yield from coast(
        situation,
        seen,
        FIRST_RAISE * volts,
        QUICK_COAST_S,
        after_s=ends_s(seen, LOOK_HOLD_S),
        belief=Motion.UNKNOWN,
    )
    return look, ends_s(coasted, QUICK_COAST_S)
