"""Hand on the shaft: while a key is held, a small current helps the hand that turns the shaft. Releasing it is off."""

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Apply, Ask, Plan, Seen, Switch, Watch
from benchlog.recovery.guard import FOREIGN_VOLTS
from benchlog.recovery.moves import REST_PACE_S, Finding, Situation, discharged, down, mark, rest

HAND_SHARE = 0.25
"""Share of the stall current that flows at most while a hand is on the shaft. Common practice, no source."""
HAND_LIMIT_S = 900.0
IT_TURNS, STILL_STUCK = "it turns", "still stuck"
_QUESTION = "Hold the key and turn the shaft by hand, both ways. Let go of the key and the output is off."
_AHEAD_S = 0.5
"""s of stall that must still fit within every ceiling for the current to go on."""
_ROOM_EVERY_S = 0.1


def hold_by_hand(situation: Situation) -> Plan[Finding]:
    """After the probe: as many holds as the operator likes, until they say what came of it."""
    amps = min(HAND_SHARE * situation.stall_amps, situation.ceilings.amps.value)
    volts = min(situation.rated_volts, situation.ceilings.volts.value)
    yield mark(
        EventKind.STEP,
        f"Hand on the shaft: while the key is held, at most {show(amps, 'A')}.",
        why=f"A quarter of the stall current, {show(situation.stall_amps, 'A')}, at most. "
        "Keep fingers clear of blades and gears.",
        name="hand on the shaft",
        volts=volts,
        amps=amps,
    )
    seen = yield from down(amps)
    seen = yield from rest(seen, 0.3)
    seen = yield Switch(on=False)
    seen = yield from discharged(seen)
    seen = yield Ask(text=_QUESTION, choices=(IT_TURNS, STILL_STUCK))
    asked_s, holds, told_to_rest = seen.now_s, 0, False
    while situation.answer is None and seen.now_s - asked_s < HAND_LIMIT_S:
        seen = yield Watch(at_s=seen.now_s + REST_PACE_S)
        # A shaft that the hand turns makes volts of its own; the output goes on only without them.
        if not seen.held or abs(seen.reading.volts) > FOREIGN_VOLTS:
            continue
        rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=2 * _AHEAD_S * volts * amps)
        if rest_s > 0:
            if not told_to_rest:
                yield mark(
                    EventKind.REST,
                    f"Resting {rest_s:.0f} s, within the ceiling for {asked_by}; hold the key again then.",
                    seconds=round(rest_s, 2),
                    ceiling=asked_by,
                )
            told_to_rest = True
            continue
        told_to_rest = False
        holds += 1
        seen = yield from _one_hold(situation, holds, volts, amps)
    return _found(situation, holds)


def _one_hold(situation: Situation, number: int, volts: float, amps: float) -> Plan[Seen]:
    """On, and off again as soon as the key is up, an answer is given, or half a second more might pass a ceiling."""
    yield Switch(on=True)
    seen = yield Apply(volts=volts, amps=amps, belief=Motion.UNKNOWN)
    began_s = looked_s = seen.set_at_s
    yield mark(EventKind.STEP, f"Hold {number}.", name=f"hold {number}")
    most_amps, room = seen.reading.amps, True
    while seen.held and situation.answer is None and room:
        seen = yield Watch()
        most_amps = max(most_amps, seen.reading.amps)
        if seen.now_s - looked_s >= _ROOM_EVERY_S:
            looked_s = seen.now_s
            joules = _AHEAD_S * max(seen.reading.volts * seen.reading.amps, 0.0)
            room = (
                situation.budget.rest_for(seen.now_s, joules=joules)[0] <= 0
                and seen.now_s - began_s + _AHEAD_S < situation.ceilings.on_s.value
            )
    let_go_s = seen.now_s
    yield from down(amps)
    seen = yield Switch(on=False)
    yield mark(
        EventKind.HAND,
        f"Held for {let_go_s - began_s:.1f} s, at most {show(most_amps, 'A')}.",
        why="" if room else "A ceiling was near: off before it. Let it rest.",
        number=number,
        seconds=round(let_go_s - began_s, 3),
        amps=round(most_amps, 4),
    )
    return seen


def _found(situation: Situation, holds: int) -> Finding:
    held = f"{holds} {'hold' if holds == 1 else 'holds'} with the hand on the shaft"
    if situation.answer == IT_TURNS:
        situation.moved = True
        return Finding(
            outcome=Outcome.UNDETERMINED, reason=f"{held}: it turns by hand; whether it starts alone is for the proof"
        )
    if situation.answer == STILL_STUCK:
        return Finding(outcome=Outcome.STILL_STUCK, reason=f"{held}: still stuck")
    return Finding(outcome=Outcome.UNDETERMINED, reason=f"{held}; nobody said what came of it")
