"""Running in: one start from rest, held for hours at a low rate, with a short coast every so often; then a warm start.

What is kept of the readings is bounded: means of spans that widen with the time. The record on disk has them all.
"""

import math
from collections import deque
from dataclasses import dataclass, field
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
from benchlog.recovery.start_test import RunIn

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
    held = yield from _first_seconds(situation, asked, amps)
    ended = yield from _held_on(situation, held, amps)
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
    return (yield from _restarted(situation, asked, amps, f"{ran} ({ended.why})"))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ended:
    """Why the hold ended; an outcome where it ended the run as well, None where a warm start is still to come."""

    why: str
    outcome: Outcome | None = None


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


def _first_seconds(situation: Situation, asked: RunIn, amps: float) -> Plan[_Held]:
    """Volts on again, read as fast as the supply answers."""
    seen = yield Apply(volts=asked.volts, amps=amps, belief=Motion.TURNING)
    span_s = max(1.0, asked.pace_s, asked.flat_for_s / RECENT_SPANS)
    held = _Held(asked=asked, began_s=seen.set_at_s, recent=Course(span_s))
    yield from _read_quickly(held, seen, QUICK_S, 0.0)
    return held


def _read_quickly(held: _Held, seen: Seen, for_s: float, pace_s: float) -> Plan[None]:
    """At a quicker rate for a time; what the motor draws until it has its speed again counts for no drift."""
    until_s = seen.set_at_s + for_s
    held.last.clear()
    while seen.now_s < until_s or not held.last:
        seen = yield Watch(at_s=seen.now_s + pace_s)
        if seen.whole:
            held.last.append(seen)


def _held_on(situation: Situation, held: _Held, amps: float) -> Plan[_Ended]:
    """Reading by reading until something ends it."""
    asked = held.asked
    early_s = asked.pace_s / 2  # between two readings: on one of them a replay could not tell on which side it was
    looked_s = checked_s = told_s = held.began_s
    read_at_s = held.last[-1].now_s
    while True:
        read_at_s = max(read_at_s + asked.pace_s, held.last[-1].now_s)
        seen = yield Watch(at_s=read_at_s)
        if not seen.whole:
            continue
        now_s, drawn = seen.now_s, seen.reading.amps - situation.known_meter.zero_amps
        odd = _odd(situation, held, drawn)
        if odd or now_s - looked_s > asked.look_every_s - early_s:
            if odd:  # what it drew before is of another state
                held.last.clear()
            held.last.append(seen)
            ended = yield from _looked(situation, held, amps, odd)
            looked_s, read_at_s = held.last[-1].set_at_s, held.last[-1].now_s
            if held.doubtful:
                looked_s -= asked.look_every_s - DOUBTFUL_AGAIN_S
            if ended is not None:
                return ended
            continue
        held.take(seen, drawn)
        if now_s - told_s > TELL_EVERY_S - early_s:
            told_s = now_s
            yield _still_running(held, now_s)
        if now_s - checked_s > CHECK_EVERY_S - early_s:
            checked_s = now_s
            ended = _ends(situation, held, seen)
            if ended is not None:
                return ended
        if now_s - held.began_s + asked.pace_s + early_s > asked.at_most_s:
            return _Ended(why=f"{minutes(asked.at_most_s)} were asked for")


def _odd(situation: Situation, held: _Held, drawn: float) -> str:
    """A current that jumped or collapsed since the last seconds, in words."""
    usual, noise = held.usual_amps, 5 * situation.known_meter.u_amps
    if usual is None:
        return ""
    if drawn > JUMPED * usual + noise:
        return f"the current jumped from {show(usual, 'A')} to {show(drawn, 'A')}"
    if drawn < COLLAPSED * usual - noise:
        return f"the current fell from {show(usual, 'A')} to {show(drawn, 'A')} at once"
    return ""


def _looked(situation: Situation, held: _Held, amps: float, odd: str) -> Plan[_Ended | None]:
    """A short coast, then on at the volts again; or why that is the end."""
    asked = held.asked
    look, coasted = yield from look_while_running(situation, list(held.last), asked.volts, after_s=held.last[-1].now_s)
    held.looks += 1
    if look.verdict is CoastVerdict.EMF:
        situation.budget.was_turning(held.began_s)
        held.doubtful = 0
    else:
        held.doubtful += 1
    if odd or look.verdict is not CoastVerdict.EMF or held.looks == 1:
        text = f"Looked: {look.verdict}." if not odd else f"Looked, since {odd}: {look.verdict}."
        yield mark(EventKind.LOOK, text, why=look.why, turning=WORDS.get(look.verdict, "doubtful"))
    if look.verdict is CoastVerdict.NOT_TURNING:
        return _Ended(why=f"it stopped turning: {look.why}", outcome=Outcome.STILL_STUCK)
    if look.verdict is not CoastVerdict.EMF and (odd or held.doubtful > 1):
        return _Ended(why=f"it is no longer sure to turn: {look.why}", outcome=Outcome.UNDETERMINED)
    seen = yield Apply(volts=asked.volts, amps=amps, belief=Motion.TURNING, at_s=ends_s(coasted, COAST_S))
    yield from _read_quickly(held, seen, AGAIN_S, min(AGAIN_PACE_S, asked.pace_s))
    if odd:
        held.usual_amps = fmean(one.reading.amps for one in held.last) - situation.known_meter.zero_amps
    return None


def _ends(situation: Situation, held: _Held, seen: Seen) -> _Ended | None:
    """Whether a rule ends it: no more room below a ceiling, the current risen by half, or flat for long enough."""
    asked, at_s, drawn = held.asked, seen.now_s - held.began_s, seen.reading.amps
    rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=drawn**2 * situation.reference_ohm * asked.pace_s)
    if rest_s > 0:
        closer = "; with the motor's mass given the bound lies closer" if asked.mass_g is None else ""
        return _Ended(why=f"no room was left below the ceiling for {asked_by}{closer}")
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


def _restarted(situation: Situation, asked: RunIn, amps: float, ran: str) -> Plan[Finding]:
    """From rest once more while it is warm, and how that ends the run."""
    yield mark(EventKind.STEP, "Once more from rest, while it is warm.", name=RESTART, volts=asked.volts, amps=amps)
    look = yield from _start(situation, asked, amps)
    if look is None:
        yield mark(EventKind.LOOK, f"No warm restart: {NO_ROOM}.", name=RESTART, turning="not-made")
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
