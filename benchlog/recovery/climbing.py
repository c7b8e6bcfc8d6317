"""The steps of a ladder: a gentle start, rungs of kicks, hand steps; and whether what moved keeps turning."""

from dataclasses import dataclass

from benchlog.motor.motion import CoastVerdict, Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Plan, Watch
from benchlog.recovery.looking import (
    HOLD_S,
    LOOK_HOLD_S,
    LOOK_YOURSELF,
    QUICK_COAST_S,
    full_look,
    hold_volts,
    look_volts,
    quick_look,
    slow_look,
    too_slow_to_tell,
)
from benchlog.recovery.moves import (
    RESERVE_S,
    Finding,
    Situation,
    ask,
    down,
    drive,
    ends_s,
    held,
    locked_joules,
    mark,
    rest,
    room_for,
)
from benchlog.recovery.probing import may_have_turned
from benchlog.recovery.proving import start_from_rest
from benchlog.recovery.steps import Hand, Kicks, Start, Swap, amps_of, volts_of

DID_IT_MOVE, YES, NO = "Did it move, even a little?", "yes", "no"
AGAIN_MOST = 2
"""How often a rung at which it moved is gone through again before the ladder is climbed on. Starting value."""
LEAST_HOLD_SHARE = 0.4
"""Share of the rated volts under which a freed motor is not held: friction might stop it."""


def gentle_start(situation: Situation, step: Start, doubts: list[str]) -> Plan[Finding | None]:
    """Half the volts first: what turns at them was not stuck."""
    volts = volts_of(step, situation.rated_volts)
    amps = min(situation.stall_amps, situation.ceilings.amps.value)
    yield mark(EventKind.STEP, f"A gentle start at {show(volts, 'V')}.", name=step.name, volts=volts, amps=amps)
    slow = situation.pace.slow
    joules = locked_joules(situation, volts, amps, step.on_s + (0.0 if slow else LOOK_HOLD_S), least=1)
    if _never(situation, joules) is not None or (yield from room_for(situation, joules)) is None:
        return left_stuck(situation, doubts, "the ceilings leave no room for a gentle start")
    seen = yield from drive(volts, amps, step.on_s, Motion.UNKNOWN, least=1)
    look, coasted = yield from quick_look(situation, seen, volts, after_s=ends_s(seen, step.on_s))
    after_s = ends_s(coasted, QUICK_COAST_S)
    if look.verdict is CoastVerdict.NOT_TURNING:
        volts_looked = look_volts(situation, volts)
        from_s = yield from _room_apart(situation, volts_looked, amps, LOOK_HOLD_S, least=2, after_s=after_s)
        if from_s is None:
            return left_stuck(situation, doubts, "no time was left for a look after the gentle start")
        look, after_s = yield from slow_look(situation, volts_looked, amps, after_s=from_s)
    yield mark(EventKind.LOOK, f"Gentle start: {look.verdict}.", why=look.why, emf_share=round(look.emf_share, 3))
    if look.verdict is CoastVerdict.NOT_TURNING:
        low = yield from down(amps, Motion.LOCKED, after_s=after_s)
        yield from rest(low, 1.0)
        return None
    # A job that had kicks before was stuck: what turns now came free of them.
    outcome = Outcome.FREED if situation.budget.kicks else Outcome.RUNS
    return (yield from _judge_motion(situation, volts, amps, outcome, doubts, after_s))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rung:
    """`on_s`: of a kick, as this supply can make it."""

    number: int
    volts: float
    amps: float
    on_s: float
    step: Kicks


def kicks(situation: Situation, step: Kicks, number: int, doubts: list[str]) -> Plan[Finding | None]:
    """One rung: its kicks, each with a look; again while it moves a little."""
    volts = volts_of(step, situation.rated_volts)
    left_out = _left_out(situation, step, volts)
    if left_out is not None:
        yield mark(EventKind.STEP, f"Rung {number} left out: {left_out}.", name=step.name, rung=number, skipped=True)
        return None
    wanted = amps_of(step, situation.stall_amps)
    amps = min(wanted, situation.ceilings.amps.value)
    rung = _Rung(number=number, volts=volts, amps=amps, on_s=situation.pace.lasts_s(step.on_s, 1), step=step)
    no_room = yield from _no_room_stretched(situation, rung)
    if no_room is not None:
        situation.left_out.append(f"rung {number} was left out: {no_room}")
        yield mark(EventKind.STEP, f"Rung {number} left out: {no_room}.", name=step.name, rung=number, skipped=True)
        return None
    wide_s = situation.pace.least_kick_s if situation.pace.stretches(step.on_s) else step.on_s
    drawn = volts / situation.reference_ohm
    limited = amps < 0.95 * drawn
    yield mark(
        EventKind.STEP,
        f"Rung {number}: {show(volts, 'V')}, {volts / situation.rated_volts:.0%} of the rated; "
        f"{step.tries} kicks of {wide_s * 1000:.0f} ms.",
        why=(
            f"Limited by current, not by voltage: the winding would draw {show(drawn, 'A')}, the limit is "
            f"{show(amps, 'A')}; raising the volts does nothing."
            if limited
            else f"A locked rotor of this winding draws up to {show(drawn, 'A')} at {show(volts, 'V')}."
        ),
        name=step.name,
        rung=number,
        volts=volts,
        amps=amps,
        tries=step.tries,
    )
    for again in range(1 + AGAIN_MOST):
        if again:
            yield mark(
                EventKind.STEP,
                f"It moved: rung {number} again.",
                why="A small movement that stops again is progress, not freedom; more volts are not needed yet.",
                name=step.name,
                rung=number,
                volts=volts,
                again=again,
            )
        situation.felt = False
        for kick in range(1, step.tries + 1):
            finding = yield from _one_kick(situation, rung, doubts, kick)
            if finding is not None:
                return finding
        if not (yield from _moved_here(situation)):
            return None
    return None


def _moved_here(situation: Situation) -> Plan[bool]:
    """Whether it moved at this rung: as seen, as the operator said by themselves, or says when asked."""
    if not situation.felt and not situation.unattended:
        answer = yield from ask(situation, DID_IT_MOVE, (YES, NO))
        if answer == YES:
            situation.felt = situation.moved = True
            yield mark(EventKind.MOVED, "It moved a little, the operator says.", by="operator")
    return situation.felt


def _no_room_stretched(situation: Situation, rung: _Rung) -> Plan[str | None]:
    """Why a kick that is longer than it was asked stays out; None: there is room for it, or will be in time."""
    pace, ceilings = situation.pace, situation.ceilings
    if not pace.stretches(rung.step.on_s):
        return None
    told = f"a kick of {pace.least_kick_s:.2f} s, the shortest of this supply, at {show(rung.volts, 'V')}"
    # Volts stay set through the look as well, and count as driven in a row.
    in_a_row_s = pace.least_kick_s + pace.whole_s(2) + pace.sending_s
    if in_a_row_s > ceilings.on_s.value:
        return f"{told} and its look pass the {ceilings.on_s.layer}'s ceiling of {ceilings.on_s.value:g} s in a row"
    joules = locked_joules(situation, rung.volts, rung.amps, rung.step.on_s, least=1)
    passed = situation.budget.never_fits(joules)
    if passed is not None:
        return f"{told} passes the ceiling for {passed}, however long it rests before"
    seen = yield Watch()
    rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=joules)
    if rest_s > situation.time_left_s(seen.now_s) - RESERVE_S:
        return f"{told} has no room under the ceiling for {asked_by} in the time that is left"
    return None


def _room_apart(
    situation: Situation, volts: float, amps: float, for_s: float, *, least: int, after_s: float
) -> Plan[float | None]:
    """When a drive may follow that was given no room beforehand: of a slow supply after a rest, where it needs one.

    At once where room for all of it was asked before. None: the run is over first.
    """
    joules = locked_joules(situation, volts, amps, for_s, least=least)
    if not situation.pace.slow or situation.budget.rest_for(after_s, joules=joules)[0] <= 0:
        return after_s
    yield from down(amps, Motion.LOCKED, after_s=after_s)
    seen = yield from room_for(situation, joules)
    return None if seen is None else seen.now_s


def _never(situation: Situation, joules: float) -> str | None:
    """Which ceiling such a drive would pass on a slow supply, however long it rests before."""
    return situation.budget.never_fits(joules) if situation.pace.slow else None


def _left_out(situation: Situation, step: Kicks, volts: float) -> str | None:
    if step.only_after is not None and step.only_after in situation.skipped:
        return f'"{step.only_after}" was skipped'
    ceiling = situation.ceilings.volts
    if step.if_allowed and volts > ceiling.value:
        return f"{volts:g} V is above the {ceiling.layer}'s ceiling of {ceiling.value:g} V"
    return None


def _one_kick(situation: Situation, rung: _Rung, doubts: list[str], kick: int) -> Plan[Finding | None]:
    step, last = rung.step, kick == rung.step.tries
    joules = locked_joules(situation, rung.volts, rung.amps, step.on_s, least=1)
    if not situation.pace.slow:  # else all of it at once would have room under hardly any ceiling
        # Room for what may follow as well: a kick that frees is not left half looked at because a ceiling is near.
        gentlest = LEAST_HOLD_SHARE * situation.rated_volts
        joules += locked_joules(situation, gentlest, rung.amps, HOLD_S)
        if last:
            joules += locked_joules(situation, look_volts(situation, rung.volts), rung.amps, LOOK_HOLD_S)
    if situation.budget.kicks >= situation.ceilings.kicks.value:
        used_up = "the kicks of this job and day are used up: now it needs hands"
        return left_stuck(situation, doubts, used_up, unseen=kick > 1)
    seen = yield from room_for(situation, joules)
    if seen is None or situation.time_left_s(seen.now_s) < RESERVE_S:
        over = f"the {situation.sequence.limit_s:g} s of the sequence are over"
        return left_stuck(situation, doubts, over, unseen=kick > 1)
    kicked = yield from drive(rung.volts, rung.amps, rung.on_s, Motion.UNKNOWN, kick=True, least=1)
    over_s = ends_s(kicked, rung.on_s)
    look, coasted = yield from quick_look(situation, kicked, rung.volts, after_s=over_s)
    at = held(situation, kicked)
    yield mark(
        EventKind.KICK,
        f"Kick {situation.budget.kicks_this_run} at {show(rung.volts, 'V')}: {look.verdict}.",
        why=look.why,
        number=situation.budget.kicks_this_run,
        rung=rung.number,
        volts=round(at.volts, 4),
        amps=round(at.amps, 4),
        seconds=round(coasted[0].set_at_s - kicked[0].set_at_s, 4),
        emf_share=round(look.emf_share, 3),
    )
    after_s = ends_s(coasted, QUICK_COAST_S)
    if look.verdict is CoastVerdict.NOT_TURNING and last:
        volts = look_volts(situation, rung.volts)
        from_s = yield from _room_apart(situation, volts, rung.amps, LOOK_HOLD_S, least=2, after_s=after_s)
        if from_s is None:
            over = f"the {situation.sequence.limit_s:g} s of the sequence are over"
            return left_stuck(situation, doubts, over, unseen=True)
        look, after_s = yield from slow_look(situation, volts, rung.amps, after_s=from_s)
        yield mark(EventKind.LOOK, f"A longer look: {look.verdict}.", why=look.why, emf_share=round(look.emf_share, 3))
    if look.verdict is CoastVerdict.NOT_TURNING:
        low = yield from down(rung.amps, Motion.LOCKED, after_s=after_s)
        yield from rest(low, step.off_s)
        return None
    finding = yield from _judge_motion(situation, rung.volts, rung.amps, Outcome.FREED, doubts, after_s)
    if finding is None:
        low = yield from down(rung.amps)
        yield from rest(low, step.off_s)
    return finding


def _judge_motion(
    situation: Situation, volts: float, amps: float, outcome: Outcome, doubts: list[str], after_s: float
) -> Plan[Finding | None]:
    """Something looked like motion: hold it, and if it holds, start it again from rest. None: the ladder goes on."""
    hold = _hold_within_budget(situation, hold_volts(situation, volts), amps, after_s)
    from_s = yield from _room_apart(situation, hold, amps, HOLD_S, least=3, after_s=after_s)
    if from_s is None:
        doubts.append("something looked like motion, and no time was left to hold it within the ceilings")
        return None
    look = yield from full_look(situation, hold, amps, after_s=from_s)
    yield mark(EventKind.LOOK, f"Held at {show(hold, 'V')}: {look.verdict}.", why=look.why)
    if look.verdict is not CoastVerdict.EMF:
        if look.verdict is CoastVerdict.NOT_TURNING:
            situation.felt = situation.moved = True
            yield mark(EventKind.MOVED, "It seemed to move and stands again.", why=look.why, by="seen")
        else:
            doubts.append(look.why)
        return None
    yield mark(EventKind.STEP, "It keeps turning. Starting it again from rest.", name="restart")
    again = yield from start_from_rest(situation)
    yield mark(EventKind.LOOK, f"Restart: {again.verdict}.", why=again.why)
    if again.verdict is CoastVerdict.EMF:
        words = "it turned" if outcome is Outcome.RUNS else "it came free"
        return Finding(outcome=outcome, reason=f"{words}, kept turning, and started again from rest ({look.why})")
    situation.felt = situation.moved = True
    yield mark(EventKind.MOVED, "It turned, but did not start again from rest.", why=again.why, by="seen")
    if again.verdict is not CoastVerdict.NOT_TURNING:
        doubts.append(again.why)
    return None


def _hold_within_budget(situation: Situation, volts: float, amps: float, at_s: float) -> float:
    """V to hold at, lowered until a rotor that stood still after all would stay within every ceiling."""
    least = min(volts, LEAST_HOLD_SHARE * situation.rated_volts)
    while (
        volts > least
        and situation.budget.rest_for(at_s, joules=locked_joules(situation, volts, amps, HOLD_S, least=3))[0] > 0
    ):
        volts = max(least, 0.95 * volts)
    return volts


def by_hand(situation: Situation, step: Hand | Swap) -> Plan[Finding | None]:
    """A hand step, or the leads swapped, if there is somebody who does it."""
    swap = isinstance(step, Swap)
    if situation.unattended:
        situation.skipped.add(step.name)
        yield mark(EventKind.HAND, f"Skipped, nobody at the bench: {step.name}.", name=step.name, skipped=True)
        return None
    done = "leads are swapped" if swap else "done"
    answer = yield from ask(situation, step.text, (done, "skip"), swap=swap)
    if answer == done:
        situation.swapped ^= swap
        yield mark(EventKind.HAND, f"By hand: {step.name}.", name=step.name, skipped=False)
    else:
        situation.skipped.add(step.name)
        yield mark(EventKind.HAND, f"Skipped: {step.name}.", name=step.name, skipped=True)
    return None


def left_stuck(situation: Situation, doubts: list[str], why: str, *, unseen: bool = False) -> Finding:
    """How a climb ends that freed nothing: still stuck; undetermined where something looked like motion, where no kick
    was given, or where a supply too slow to show motion leaves it open whether the rotor stood. `unseen`: no longer
    look came after the last kick.
    """
    unkicked = bool(situation.left_out) and not situation.budget.kicks_this_run
    if situation.left_out:
        why = f"no kick was given: {situation.left_out[0]}" if unkicked else f"{why}, but {situation.left_out[0]}"
    slow = too_slow_to_tell(situation.pace.reading_s)
    if doubts:
        doubt = doubts[-1] if slow is None or doubts[-1].endswith(LOOK_YOURSELF) else f"{slow}; {doubts[-1]}"
        return Finding(outcome=Outcome.UNDETERMINED, reason=f"{doubt}; {why}")
    if slow is not None and (unseen or situation.moved or may_have_turned(situation)):
        return Finding(outcome=Outcome.UNDETERMINED, reason=f"{slow}; {why}")
    if unkicked:
        return Finding(outcome=Outcome.UNDETERMINED, reason=why)
    moved = "it moved and stopped again; " if situation.moved else ""
    return Finding(outcome=Outcome.STILL_STUCK, reason=f"{moved}{why}")
