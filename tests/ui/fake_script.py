"""Plausible runs of a stuck 12 V pump, as items on a time line: what the bench would have sent, and when.

A run is a generator. It yields readings, events and questions; a question's answer comes back into it.
"""

import math
from collections.abc import Generator, Iterator
from dataclasses import dataclass
from typing import TypeAlias

import msgspec

from benchlog.bench.frames import Question, Request
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.steps import Hand, Kicks, Swap, volts_of

OHM, RUN_AMPS, STEP_S = 8.2, 0.24, 0.02


@dataclass(frozen=True, slots=True)
class Sampled:
    """One reading, and what the bench would say about it."""

    t_s: float
    volts: float
    amps: float
    set_volts: float
    on: bool
    motion: str


Item: TypeAlias = Sampled | Event | Question
Script: TypeAlias = Generator[Item, str, RunResult]


class Pen:
    """Keeps the time of a script while it is written."""

    def __init__(self) -> None:
        self.t_s = 0.0
        self.kicks = 0
        self.asked = 0

    def hold(self, seconds: float, volts: float, amps: float, motion: str, *, on: bool = True) -> Iterator[Sampled]:
        for index in range(max(1, round(seconds / STEP_S))):
            wobble = 0.004 * math.sin(index * 1.7) * volts
            yield Sampled(round(self.t_s, 4), max(0.0, volts + wobble), amps, volts, on, motion)
            self.t_s += STEP_S

    def start_up(self, seconds: float, volts: float) -> Iterator[Sampled]:
        """Stall current that falls in one step as the rotor comes up."""
        for index in range(round(seconds / STEP_S)):
            amps = RUN_AMPS + (volts / OHM - RUN_AMPS) * math.exp(-index * STEP_S / 0.12)
            ripple = 0.008 * math.sin(index * 2.3)
            yield Sampled(round(self.t_s, 4), volts, amps + ripple, volts, True, "turning" if index > 5 else "unknown")
            self.t_s += STEP_S

    def event(self, kind: EventKind, text: str, **values: float | int | str | bool | None) -> Event:
        return Event(t_s=round(self.t_s, 4), kind=kind, text=text, values=values)


def probe(request: Request, scenario: str) -> Script:
    pen = Pen()
    yield from _opening(pen)
    yield from _probing(pen, scenario)
    found = _VERDICTS.get(scenario)
    if found is not None:
        verdict, outcome, reason = found
        yield pen.event(EventKind.FINDING, reason)
        yield from pen.hold(0.2, 0.0, 0.0, "resting", on=False)
        return RunResult(
            outcome=outcome,
            reason=reason,
            winding_verdict=verdict,
            max_volts=0.3,
            max_amps=0.1,
            output_confirmed_off=True,
        )
    yield pen.event(EventKind.FINDING, "A winding of 8.20 Ω.", why="Three levels agree within 1 %.")
    yield from pen.hold(0.3, 0.0, 0.0, "resting", on=False)
    return _result(Outcome.UNDETERMINED, "three levels agree within 1 %", kicks=0, max_volts=0.82, max_amps=0.1)


def recovery(request: Request, scenario: str) -> Script:
    pen = Pen()
    yield from _opening(pen)
    yield from _probing(pen, "freed")
    yield pen.event(
        EventKind.STEP,
        "A gentle start at half the rated volts.",
        name="gentle start",
        why="What turns here was not stuck.",
    )
    yield from pen.hold(0.2, request.rated_volts / 2, request.rated_volts / 2 / OHM, "locked")
    yield from pen.hold(1.0, 0.0, 0.0, "resting")
    rung = 0
    for step in request.sequence.steps:
        if isinstance(step, Kicks):
            rung += 1
            if step.if_allowed:
                yield pen.event(
                    EventKind.STEP,
                    f"Rung {rung} left out: above the job's ceiling.",
                    name=step.name,
                    rung=rung,
                    skipped=True,
                )
                continue
            freed = yield from _rung(pen, step, rung, request.rated_volts, frees=scenario == "freed" and rung == 4)
            if freed:
                yield from _held_and_restarted(pen, request.rated_volts)
                return _result(
                    Outcome.FREED,
                    "it came free, kept turning and started again from rest",
                    kicks=pen.kicks,
                    max_volts=request.rated_volts,
                    max_amps=request.rated_volts / OHM,
                )
        elif isinstance(step, Hand | Swap):
            pen.asked += 1
            yield from pen.hold(0.1, 0.0, 0.0, "resting", on=False)
            yield pen.event(EventKind.QUESTION, step.text)
            answer = yield Question(id=pen.asked, text=step.text, choices=["done", "skip"])
            yield pen.event(EventKind.ANSWER, answer)
            yield pen.event(EventKind.HAND, f"By hand: {step.name}.")
    return _result(
        Outcome.STILL_STUCK,
        "no rung moved it",
        kicks=pen.kicks,
        max_volts=request.rated_volts,
        max_amps=request.rated_volts / OHM,
    )


def proof(request: Request, scenario: str) -> Script:
    pen = Pen()
    held = intersect(request.layers | {Layer.SUPPLY: Limits(volts=30.0, amps=5.0)}).volts
    volts = min(request.rated_volts, held.value / 1.4)
    yield from _opening(pen, ceiling_volts=held.value, ceiling_volts_from=held.layer.value)
    for start in range(1, request.starts + 1):
        yield pen.event(
            EventKind.STEP,
            f"Start {start} of {request.starts}, from rest.",
            name=f"start {start}",
            volts=volts,
            why="After standing still.",
        )
        yield from pen.start_up(1.2, volts)
        yield pen.event(EventKind.TURNING, "It turns.", why="The current fell in one step and stayed.")
        yield from pen.hold(0.6, volts, RUN_AMPS, "turning")
        yield from pen.hold(1.0, 0.0, 0.0, "resting")
    yield pen.event(EventKind.STEP, "A start to be measured.", name="measured start", volts=volts)
    yield from pen.start_up(3.0, volts)
    yield pen.event(EventKind.LOOK, "Measured start: a turning rotor's voltage.")
    yield from pen.hold(0.5, 0.0, 0.0, "resting")
    yield from pen.hold(0.2, 0.0, 0.0, "resting", on=False)
    return _result(
        Outcome.RUNS,
        f"{request.starts} of {request.starts} starts from rest",
        kicks=0,
        max_volts=volts,
        max_amps=volts / OHM,
    )


def leads(request: Request, scenario: str) -> Script:
    pen = Pen()
    yield from _opening(pen)
    for amps in (0.1, 0.3, 1.0):
        yield from pen.hold(0.16, 0.12 * amps, amps, "unknown")
        yield from pen.hold(0.3, 0.0, 0.0, "resting")
    yield from pen.hold(0.1, 0.0, 0.0, "resting", on=False)
    return RunResult(
        outcome=Outcome.SHORT,
        reason="at 1 A the leads take 120 mV",
        winding_verdict=WindingVerdict.SHORT,
        resistance_ohm=0.12,
        resistance_low_ohm=0.116,
        resistance_high_ohm=0.124,
        output_confirmed_off=True,
    )


def hand(request: Request, scenario: str) -> Script:
    pen = Pen()
    yield from _opening(pen)
    yield from _probing(pen, "freed")
    volts = request.rated_volts / 4
    yield pen.event(
        EventKind.STEP,
        "Hand on the shaft: while the key is held, at most 366 mA.",
        why="A quarter of the stall current, 1.46 A, at most. Keep fingers clear of blades and gears.",
        name="hand on the shaft",
    )
    yield from pen.hold(0.2, 0.0, 0.0, "resting", on=False)
    yield pen.event(EventKind.QUESTION, HAND_QUESTION)
    for number in (1, 2):
        yield from pen.hold(1.0, 0.0, 0.0, "resting", on=False)
        yield pen.event(EventKind.STEP, f"Hold {number}.", name=f"hold {number}")
        yield from pen.hold(1.5, volts, volts / OHM, "unknown")
        yield pen.event(EventKind.HAND, "Held for 1.5 s, at most 366 mA.", number=number, seconds=1.5)
    answer = yield Question(id=1, text=HAND_QUESTION, choices=["it turns", "still stuck"])
    yield pen.event(EventKind.ANSWER, answer)
    yield from pen.hold(0.1, 0.0, 0.0, "resting", on=False)
    outcome = Outcome.UNDETERMINED if answer == "it turns" else Outcome.STILL_STUCK
    told = _result(outcome, "2 holds with the hand on the shaft", kicks=0, max_volts=volts, max_amps=volts / OHM)
    return msgspec.structs.replace(told, moved=outcome is Outcome.UNDETERMINED)


HAND_QUESTION = "Hold the key and turn the shaft by hand, both ways. Let go of the key and the output is off."
SCRIPTS = {
    RunKind.PROBE: probe,
    RunKind.RECOVERY: recovery,
    RunKind.PROOF: proof,
    RunKind.LEADS: leads,
    RunKind.HAND: hand,
}
_VERDICTS = {
    "short": (WindingVerdict.SHORT, Outcome.SHORT, "0.3 V at 0.1 A, whatever the level"),
    "open": (WindingVerdict.OPEN, Outcome.OPEN, "no current up to the rated volts"),
}


def _opening(pen: Pen, **values: float | str) -> Iterator[Item]:
    yield pen.event(EventKind.SUPPLY, "A supply of 30 V and 5 A.", **values)
    yield from pen.hold(0.3, 0.0, 0.0, "resting", on=False)
    yield pen.event(EventKind.OUTPUT, "Output on at 0 V.", why="Limits and latches were read back first.")


def _probing(pen: Pen, scenario: str) -> Iterator[Item]:
    yield pen.event(
        EventKind.STEP,
        "Looking at the winding.",
        name="probe",
        why="Three short pulses of small current tell what it is.",
    )
    for level in (0.02, 0.05, 0.1):
        yield from pen.hold(0.16, 0.3 if scenario == "short" else level * OHM, level, "locked")
        yield from pen.hold(0.5, 0.0, 0.0, "resting")


def _rung(pen: Pen, step: Kicks, rung: int, rated: float, *, frees: bool) -> Generator[Item, str, bool]:
    volts = volts_of(step, rated)
    amps = volts / OHM
    yield pen.event(
        EventKind.STEP,
        f"Rung {rung}: {volts:.1f} V, {step.tries} kicks of {step.on_s * 1000:.0f} ms.",
        why=f"A locked rotor of this winding draws {amps:.2f} A at {volts:.1f} V.",
        name=step.name,
        rung=rung,
        volts=volts,
        amps=amps,
    )
    for number in range(1, step.tries + 1):
        pen.kicks += 1
        yield from pen.hold(step.on_s, volts, amps, "locked")
        if frees and number == 2:
            yield pen.event(EventKind.KICK, f"Kick {pen.kicks}.", number=pen.kicks, rung=rung, volts=volts, amps=amps)
            return True
        yield from pen.hold(0.15, 0.3, 0.0, "unknown")
        yield pen.event(
            EventKind.KICK,
            f"Kick {pen.kicks} at {volts:.1f} V: it did not turn.",
            why="No voltage of a turning rotor was left after the kick.",
            number=pen.kicks,
            rung=rung,
            volts=volts,
            amps=amps,
            seconds=step.on_s,
        )
        yield from pen.hold(step.off_s, 0.0, 0.0, "resting")
    return False


def _held_and_restarted(pen: Pen, rated: float) -> Iterator[Item]:
    yield pen.event(
        EventKind.TURNING,
        f"It turns. Holding {rated:.0f} V to see that it keeps turning.",
        why="Current fell from 1.46 A to 0.24 A in one step while the voltage stood still: that is motion. "
        "Heat would fall slowly.",
    )
    yield from pen.start_up(2.4, rated)
    yield from pen.hold(0.8, 0.0, 0.0, "resting")
    yield pen.event(EventKind.STEP, "It keeps turning. Starting it again from rest.", name="restart")
    yield from pen.start_up(2.0, rated)
    yield from pen.hold(0.4, 0.0, 0.0, "resting", on=False)


def _result(outcome: Outcome, reason: str, *, kicks: int, max_volts: float, max_amps: float) -> RunResult:
    return RunResult(
        outcome=outcome,
        reason=reason,
        winding_verdict=WindingVerdict.WINDING,
        resistance_ohm=OHM,
        resistance_low_ohm=8.1,
        resistance_high_ohm=8.3,
        kicks=kicks,
        max_volts=max_volts,
        max_amps=max_amps,
        output_confirmed_off=True,
    )
