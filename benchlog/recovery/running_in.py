"""Running in: one start from rest, held for hours at a low rate, with a short coast every so often; then a warm start.

What is kept of the readings is bounded: means of spans that widen with the time. The record on disk has them all.
"""

import math
from collections import deque
from dataclasses import dataclass, field, replace
from statistics import fmean

import numpy as np

from benchlog.motor.drift import Course, Drift, drift, flat_over, minutes
from benchlog.motor.motion import CoastVerdict, Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Apply, Mark, Plan, Seen, Watch
from benchlog.recovery.looking import COAST_S, HOLD_S, Look, full_look, look_while_running
from benchlog.recovery.moves import Finding, Situation, down, ends_s, locked_joules, mark, rest, room_for, until_still
from benchlog.recovery.probing import winding_missing
from benchlog.recovery.start_test import MOST_READINGS, RunIn
from drivers.supply import Regulation

QUICK_S, AGAIN_S = 10.0, 2.0
AGAIN_PACE_S = 0.1
"""s at the full rate at the beginning, and at this pace after each look, whose surge must not count for a whole slow
reading."""
STILL_WITHIN_S = 60.0
ROOM_WITHIN_S = 300.0
REST_S = 2.0
HEADROOM = 1.1
"""Limit over what the winding may draw, where none is asked for: the limit must not shape the start."""
JUMPED, COLLAPSED = 1.6, 0.4
"""Times the current of the last seconds: from there on it is looked at once. Starting values of this project."""
NEAR_LIMIT = 0.9
"""Of the current limit: from there on it shapes the current, and a stall shows as no jump. Starting value."""
NEAR_LIMIT_AGAIN_S = 5.0
"""s from look to look at a limit that goes on shaping the current of a motor that turns."""
USUAL_OVER_S = 10.0
DOUBTFUL_AGAIN_S = 5.0
RISEN = 1.5
"""Times the lowest settled current: binding or brushes, and the end. Starting value of this project."""
SETTLED_S = 60.0
TELL_EVERY_S = 3600.0
CHECK_EVERY_S = 1.0
RECENT_SPANS = 60
FLAT_SHARE = 0.02
NO_ROOM = f"the ceilings left no room for a start within {minutes(ROOM_WITHIN_S)}"
START, RESTART, DRIFT = "start", "warm restart", "drift"
WORDS = {CoastVerdict.EMF: "turning", CoastVerdict.NOT_TURNING: "not-turning"}


@dataclass(slots=True)
class _Minutes:
    """Means of a minute each: the last, the lowest, and how many in a row were far above that."""

    total: float = 0.0
    count: int = 0
    from_s: float = 0.0
    last: float | None = None
    lowest: float = math.inf
    high: int = 0

    def take(self, at_s: float, amps: float) -> None:
        self.total, self.count = self.total + amps, self.count + 1
        if at_s - self.from_s < SETTLED_S:
            return
        self.last = self.total / self.count
        self.total, self.count, self.from_s = 0.0, 0, at_s
        self.lowest = min(self.lowest, self.last)
        self.high = self.high + 1 if self.last > RISEN * self.lowest else 0


@dataclass(slots=True, kw_only=True)
class _Held:
    """A motor that is held running. s of the shell's clock; A with the zero taken out. Its size does not grow."""

    asked: RunIn
    began_s: float
    recent: Course
    course: Course = field(default_factory=Course)
    minutes: _Minutes = field(default_factory=_Minutes)
    last: deque[Seen] = field(default_factory=lambda: deque(maxlen=4))
    usual_amps: float | None = None
    pace_s: float
    quickest_s: float
    turned_s: float
    limited: bool = False
    looks: int = 0
    doubtful: int = 0

    def take(self, seen: Seen, amps: float) -> None:
        """One whole reading that no look disturbed."""
        at_s = seen.now_s - self.began_s
        self.course.add(at_s, amps)
        self.recent.add(at_s, amps)
        if len(self.recent) > 4 * RECENT_SPANS:
            self.recent.forget_before(at_s - 2 * RECENT_SPANS * self.recent.span_s)
        weight = 1 - math.exp(-(seen.now_s - self.last[-1].now_s) / USUAL_OVER_S)
        self.usual_amps = amps if self.usual_amps is None else self.usual_amps + weight * (amps - self.usual_amps)
        self.minutes.take(at_s, amps)
        self.last.append(seen)

    def drift(self, lasted_s: float) -> Drift:
        """Of all of it: the last minutes finely, what was before in the wider means of the whole."""
        all_s, all_amps = self.course.since(0.0)
        for_s, share = self.asked.flat_for_s, self.asked.flat_share or FLAT_SHARE
        if not 0 < 1.1 * for_s < lasted_s:
            return drift(all_s, all_amps, share=share)
        last_s, last_amps = self.recent.since(0.0)
        before = all_s < last_s[0]
        t_s, amps = np.concatenate([all_s[before], last_s]), np.concatenate([all_amps[before], last_amps])
        return drift(t_s, amps, for_s=for_s, share=share)


def hold_running(situation: Situation, asked: RunIn) -> Plan[Finding]:
    """After the probe: a start from rest, the hold, what the current did, the warm restart."""
    amps = _limit_amps(situation, asked)
    yield mark(
        EventKind.STEP,
        f"Running in at {show(asked.volts, 'V')}: a start from rest first.",
        name=START,
        volts=asked.volts,
        amps=amps,
    )
    look = yield from _start(situation, asked, amps)
    if look is None:
        return Finding(outcome=Outcome.UNDETERMINED, reason=f"it was not run in: {NO_ROOM}")
    yield mark(EventKind.LOOK, f"Start: {look.verdict}.", why=look.why, turning=WORDS.get(look.verdict, "doubtful"))
    if look.verdict is not CoastVerdict.EMF:
        stuck = look.verdict is CoastVerdict.NOT_TURNING
        reason = f"it was not run in: {look.why}"
        return Finding(outcome=Outcome.STILL_STUCK if stuck else Outcome.UNDETERMINED, reason=reason)
    situation.moved = True  # whatever ends it; where it still runs at the end, that says more
    yield _pace_said(asked)
    held, ended = yield from _first_seconds(situation, asked, amps)
    if ended is None:
        ended = yield from _held_on(situation, held, amps)
    if ended.outcome is None:
        ended = yield from _last_look(situation, held, ended)
    seen = yield from down(amps, Motion.TURNING)
    lasted_s = seen.now_s - held.began_s
    situation.waited_s += lasted_s  # the end of the sequence is no end of the time that was asked for
    told = held.drift(lasted_s)
    yield _drift_said(told, lasted_s, ended)
    if ended.outcome is not None:
        return Finding(outcome=ended.outcome, reason=f"after {minutes(lasted_s)} {ended.why}")
    ran = f"it ran for {minutes(lasted_s)}: {told.words}"
    if not asked.restart:
        situation.moved = False
        return Finding(outcome=Outcome.RUNS, reason=f"{ran} ({ended.why})")
    return (yield from _restarted(situation, asked, amps, f"{ran} ({ended.why})", ended.doubt))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ended:
    """Why the hold ended; an outcome where it ended the run as well, None where a warm start is still to come.

    `doubt`: why its last look could not tell whether it turned, "" where it did turn.
    """

    why: str
    outcome: Outcome | None = None
    doubt: str = ""


def _limit_amps(situation: Situation, asked: RunIn) -> float:
    if asked.amps is not None:
        return asked.amps
    return min(HEADROOM * asked.volts / situation.reference_ohm, situation.ceilings.amps.value)


def _start(situation: Situation, asked: RunIn, amps: float) -> Plan[Look | None]:
    """At rest, the winding found, with room for a start that stays locked: then a full look. Ends at 0 V.

    None where the ceilings left no room for it.
    """
    seen = yield from down(amps, Motion.TURNING)
    seen, still = yield from until_still(situation, seen, at_most_s=STILL_WITHIN_S)
    if still:
        missing = yield from winding_missing(situation)
        if missing is not None:
            return Look(verdict=CoastVerdict.DOUBTFUL, why=missing)
        seen = yield from down(amps, Motion.UNKNOWN)
        seen, still = yield from until_still(situation, seen, at_most_s=STILL_WITHIN_S)
    if not still:
        return Look(verdict=CoastVerdict.DOUBTFUL, why=f"it did not come to rest in {STILL_WITHIN_S:g} s")
    yield from rest(seen, REST_S)
    joules = locked_joules(situation, asked.volts, amps, HOLD_S)
    if (yield from room_for(situation, joules, within_s=ROOM_WITHIN_S)) is None:
        return None
    return (yield from full_look(situation, asked.volts, amps))


def _pace_said(asked: RunIn) -> Mark:
    text = (
        f"It runs. From here on a reading every {asked.pace_s:g} s, a short coast every {minutes(asked.look_every_s)}, "
        f"for {minutes(asked.at_most_s)} at most. A ceiling that is passed is noticed within one reading."
    )
    return mark(EventKind.STEP, text, name="run-in", volts=asked.volts, pace_s=asked.pace_s)


def _first_seconds(situation: Situation, asked: RunIn, amps: float) -> Plan[tuple[_Held, _Ended | None]]:
    """Volts on again, read as fast as the supply answers."""
    seen = yield Apply(volts=asked.volts, amps=amps, belief=Motion.TURNING)
    span_s = max(1.0, asked.pace_s, asked.flat_for_s / RECENT_SPANS)
    held = _Held(
        asked=asked,
        began_s=seen.set_at_s,
        recent=Course(span_s),
        pace_s=asked.pace_s,
        quickest_s=asked.pace_s,
        turned_s=seen.set_at_s,
    )
    ended = yield from _read_quickly(situation, held, amps, seen, QUICK_S, 0.0)
    return held, ended


def _read_quickly(
    situation: Situation, held: _Held, amps: float, seen: Seen, for_s: float, pace_s: float
) -> Plan[_Ended | None]:
    """At a quicker rate for a time; what the motor draws until it has its speed again counts for no drift.

    Why that was the end, where not even the full rate would notice a stall below every ceiling.
    """
    until_s = seen.set_at_s + for_s
    held.last.clear()
    while seen.now_s < until_s or not held.last:
        next_s, asked_by = _pace(situation, held, seen, amps, pace_s, 0.0)
        if next_s is None:
            held.last.append(seen)
            return _no_room(held.asked, asked_by)
        seen = yield Watch(at_s=seen.now_s + next_s)
        if seen.whole:
            held.last.append(seen)
    return None


def _pace(
    situation: Situation, held: _Held, seen: Seen, amps: float, wanted_s: float, checked_every_s: float
) -> tuple[float | None, str]:
    """s to the next reading, so that a stall just now is noticed, and let go, below every ceiling.

    Halved from the pace that is wanted, down to the rate at which the supply answers and the record can be filed. None
    where that is not enough, and which ceiling says so. Charged as the guard will: all that a locked rotor takes until
    that reading and the one after it, and what the running one takes until this is asked again.
    """
    volts, took_s = held.asked.volts, seen.reading.received_s - seen.reading.sent_s
    locked_watts = volts * min(amps, HEADROOM * volts / situation.reference_ohm)
    running_watts = abs(seen.reading.volts * seen.reading.amps)
    room_j, asked_by = situation.budget.fits(seen.now_s)
    least_s = held.asked.at_most_s / MOST_READINGS
    if least_s <= took_s:
        least_s = 0.0
    pace_s = wanted_s
    while locked_watts * (pace_s + 2 * took_s) + running_watts * max(0.0, checked_every_s - pace_s) > room_j:
        if pace_s <= least_s:
            return None, asked_by
        pace_s = pace_s / 2 if pace_s / 2 > max(least_s, took_s) else least_s
    return pace_s, asked_by


def _no_room(asked: RunIn, asked_by: str) -> _Ended:
    closer = "; with the motor's mass given the bound lies closer" if asked.mass_g is None else ""
    return _Ended(why=f"ended before the ceiling for {asked_by}, which a stall would have passed{closer}")


def _held_on(situation: Situation, held: _Held, amps: float) -> Plan[_Ended]:
    """Reading by reading until something ends it."""
    asked = held.asked
    looked_s = checked_s = told_s = held.began_s
    read_at_s = held.last[-1].now_s
    ended = yield from _paced(situation, held, held.last[-1], amps)
    while ended is None:
        read_at_s = max(read_at_s + held.pace_s, held.last[-1].now_s)
        seen = yield Watch(at_s=read_at_s)
        if not seen.whole:
            continue
        early_s = held.pace_s / 2  # between two readings: on one of them a replay could not tell on which side it was
        now_s, drawn = seen.now_s, seen.reading.amps - situation.known_meter.zero_amps
        odd = _odd(situation, held, seen, amps)
        left_s = asked.at_most_s - early_s - (now_s - held.began_s)
        if odd or now_s - looked_s > asked.look_every_s - early_s:
            if left_s < COAST_S + AGAIN_S:  # the look at its end is this one
                held.last.append(seen)
                ended = _asked_for(asked)
                continue
            ended = yield from _looked(situation, held, amps, seen, odd)
            looked_s, read_at_s = held.last[-1].set_at_s, held.last[-1].now_s
            if held.doubtful:
                looked_s -= asked.look_every_s - DOUBTFUL_AGAIN_S
            ended = ended or (yield from _paced(situation, held, held.last[-1], amps))
            continue
        held.take(seen, drawn)
        if now_s - told_s > TELL_EVERY_S - early_s:
            told_s = now_s
            yield _still_running(held, now_s)
        if now_s - checked_s > CHECK_EVERY_S - early_s:
            checked_s = now_s
            ended = _ends(held, seen) or (yield from _paced(situation, held, seen, amps))
        if ended is None and left_s < held.pace_s:
            ended = _asked_for(asked)
    return ended


def _asked_for(asked: RunIn) -> _Ended:
    return _Ended(why=f"{minutes(asked.at_most_s)} were asked for")


def _paced(situation: Situation, held: _Held, seen: Seen, amps: float) -> Plan[_Ended | None]:
    """The pace from here on, said where it is quicker than ever; or the end, where no pace would do."""
    pace_s, asked_by = _pace(situation, held, seen, amps, held.asked.pace_s, CHECK_EVERY_S)
    if pace_s is None:
        return _no_room(held.asked, asked_by)
    held.pace_s = pace_s
    if pace_s < held.quickest_s:
        held.quickest_s = pace_s
        yield _quicker_said(pace_s, asked_by)
    return None


def _quicker_said(pace_s: float, asked_by: str) -> Mark:
    every = f"every {pace_s:.2g} s" if pace_s else "as fast as the supply answers"
    text = f"Read {every} from here on: a stall must be noticed before the ceiling for {asked_by}."
    return mark(EventKind.NOTE, text, name="pace", pace_s=round(pace_s, 4))


def _odd(situation: Situation, held: _Held, seen: Seen, amps: float) -> str:
    """What calls for a look at once, in words: a current that jumped or collapsed, or that its limit shapes."""
    usual, noise = held.usual_amps, 5 * situation.known_meter.u_amps
    drawn = seen.reading.amps - situation.known_meter.zero_amps
    if usual is not None and drawn > JUMPED * usual + noise:
        return f"the current jumped from {show(usual, 'A')} to {show(drawn, 'A')}"
    if usual is not None and drawn < COLLAPSED * usual - noise:
        return f"the current fell from {show(usual, 'A')} to {show(drawn, 'A')} at once"
    limited = seen.reading.regulation is Regulation.CC or drawn > NEAR_LIMIT * amps
    if limited and not (held.limited and seen.now_s - held.turned_s < NEAR_LIMIT_AGAIN_S):
        return f"{show(drawn, 'A')} flow at a limit of {show(amps, 'A')}"
    return ""


def _looked(situation: Situation, held: _Held, amps: float, seen: Seen, odd: str) -> Plan[_Ended | None]:
    """A short coast, then on at the volts again; or why that is the end."""
    asked, turned_s = held.asked, held.turned_s
    if odd and held.last and not held.limited:
        turned_s = held.last[-1].now_s
    if odd:  # what it drew before is of another state
        held.last.clear()
    held.last.append(seen)
    look, coasted = yield from look_while_running(situation, list(held.last), asked.volts, after_s=held.last[-1].now_s)
    held.looks += 1
    limited = "at a limit" in odd
    told, held.limited = held.limited and limited, held.limited or limited
    turns = look.verdict is CoastVerdict.EMF
    if turns:
        situation.budget.was_turning(held.began_s)
    held.doubtful = 0 if turns else held.doubtful + 1
    if (odd and not told) or not turns or held.looks == 1:
        text = f"Looked: {look.verdict}." if not odd else f"Looked, since {odd}: {look.verdict}."
        yield mark(EventKind.LOOK, text, why=look.why, turning=WORDS.get(look.verdict, "doubtful"))
    stopped = look.verdict is CoastVerdict.NOT_TURNING
    if stopped or (not turns and (odd or held.doubtful > 1)):
        situation.budget.was_locked(turned_s, coasted[-1].now_s)
        if stopped:
            return _Ended(why=f"it stopped turning: {look.why}", outcome=Outcome.STILL_STUCK)
        return _Ended(why=f"it is no longer sure to turn: {look.why}", outcome=Outcome.UNDETERMINED)
    seen = yield Apply(volts=asked.volts, amps=amps, belief=Motion.TURNING, at_s=ends_s(coasted, COAST_S))
    if turns:
        held.turned_s = seen.set_at_s
    ended = yield from _read_quickly(situation, held, amps, seen, AGAIN_S, min(AGAIN_PACE_S, asked.pace_s))
    if odd:
        held.usual_amps = fmean(one.reading.amps for one in held.last) - situation.known_meter.zero_amps
    return ended


def _last_look(situation: Situation, held: _Held, ended: _Ended) -> Plan[_Ended]:
    """Before anything is said to run: a coast, and the volts stay off."""
    before = list(held.last)[-1:]  # what it drew before may be of another state
    look, coasted = yield from look_while_running(situation, before, held.asked.volts, after_s=before[-1].now_s)
    word = WORDS.get(look.verdict, "doubtful")
    yield mark(EventKind.LOOK, f"Looked at its end: {look.verdict}.", why=look.why, turning=word)
    if look.verdict is CoastVerdict.EMF:
        situation.budget.was_turning(held.began_s)
        return ended
    situation.budget.was_locked(held.turned_s, coasted[-1].now_s)
    why = f"{ended.why}; at its end {look.why}"
    if look.verdict is CoastVerdict.NOT_TURNING:
        return _Ended(why=f"it had stopped turning ({why})", outcome=Outcome.STILL_STUCK)
    if not held.asked.restart:
        return _Ended(why=f"it was not sure to turn ({why})", outcome=Outcome.UNDETERMINED)
    return replace(ended, doubt=look.why)


def _ends(held: _Held, seen: Seen) -> _Ended | None:
    """Whether a rule ends it: the current risen by half, or flat for long enough."""
    asked, at_s = held.asked, seen.now_s - held.began_s
    if held.minutes.high >= 2:
        lowest, last = show(held.minutes.lowest, "A"), show(held.minutes.last, "A")
        return _Ended(why=f"the current rose by half above its lowest, from {lowest} to {last}: binding or brushes")
    for_s = asked.flat_for_s
    if for_s and at_s > for_s + QUICK_S and flat_over(*held.recent.since(0.0), for_s, asked.flat_share):
        return _Ended(why=f"the current has been flat for {minutes(for_s)}")
    return None


def _still_running(held: _Held, now_s: float) -> Mark:
    lasted, amps = minutes(now_s - held.began_s), held.usual_amps
    text = f"Still running after {lasted}: {show(amps, 'A')}, {held.looks} looks."
    return mark(EventKind.NOTE, text, amps=None if amps is None else round(amps, 6))


def _drift_said(told: Drift, lasted_s: float, ended: _Ended) -> Mark:
    """What the current did, with the figures that it rests on."""

    def kept(value: float | None) -> float | None:
        return None if value is None else float(f"{value:.6g}")

    return mark(
        EventKind.FINDING,
        f"{told.words[0].upper()}{told.words[1:]}.",
        name=DRIFT,
        why=f"Ended after {minutes(lasted_s)}: {ended.why}.",
        verdict=told.verdict.value,
        seconds=round(lasted_s, 3),
        slope_a_s=kept(told.slope),
        slope_low=kept(told.slope_low),
        slope_high=kept(told.slope_high),
        flat_since_s=kept(told.flat_since_s),
        first_amps=kept(told.first),
        last_amps=kept(told.last),
    )


def _restarted(situation: Situation, asked: RunIn, amps: float, ran: str, doubt: str) -> Plan[Finding]:
    """From rest once more while it is warm, and how that ends the run."""
    yield mark(EventKind.STEP, "Once more from rest, while it is warm.", name=RESTART, volts=asked.volts, amps=amps)
    look = yield from _start(situation, asked, amps)
    if look is None:
        yield mark(EventKind.LOOK, f"No warm restart: {NO_ROOM}.", name=RESTART, turning="not-made")
        if doubt:
            reason = f"{ran}; at its end {doubt}, and it was not started again warm: {NO_ROOM}"
            return Finding(outcome=Outcome.UNDETERMINED, reason=reason)
        situation.moved = False
        return Finding(outcome=Outcome.RUNS, reason=f"{ran}; it was not started again warm: {NO_ROOM}")
    word = WORDS.get(look.verdict, "doubtful")
    yield mark(EventKind.LOOK, f"Warm restart: {look.verdict}.", name=RESTART, why=look.why, turning=word)
    if look.verdict is CoastVerdict.EMF:
        situation.moved = False
        return Finding(outcome=Outcome.RUNS, reason=f"{ran}; it started again warm")
    if look.verdict is CoastVerdict.NOT_TURNING:
        return Finding(outcome=Outcome.STILL_STUCK, reason=f"{ran}; warm it did not start again: {look.why}")
    return Finding(outcome=Outcome.UNDETERMINED, reason=f"{ran}; its warm restart could not be told: {look.why}")
