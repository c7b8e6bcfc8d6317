"""The moves every plan is made of: drive, rest, wait until still, ask."""

from collections.abc import Callable
from dataclasses import dataclass, field
from statistics import fmean

from benchlog.motor.meter import Meter
from benchlog.motor.motion import CoastPoint, Held, Motion
from benchlog.motor.temperature import Estimate, Thermometer
from benchlog.motor.winding import Winding
from benchlog.outcome import Outcome
from benchlog.records import Event, EventKind
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import Ceilings
from benchlog.recovery.commands import Apply, Ask, Mark, Plan, Seen, Switch, Watch
from benchlog.recovery.pace import Pace
from benchlog.recovery.start_test import RunIn, StartTest
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck
from drivers.supply import Capabilities

REST_PACE_S = 0.05
RESERVE_S = 15.0
"""s kept at the end of a run for proving what the last kick freed."""
STILL_SHARE = 0.02
"""Share of the rated volts under which the terminals say that a rotor stands still."""


@dataclass(slots=True, kw_only=True)
class Situation:
    """What a run has to go by and what it has found so far. The only thing a plan changes besides the supply.

    `zero_s`: the clock at the instant that the record counts from; `began_s`: at the first reading. `left_out`: why
    rungs were for which this supply is too slow.
    """

    rated_volts: float
    ceilings: Ceilings
    capabilities: Capabilities
    sequence: Sequence
    budget: Budget
    unattended: bool
    lead_ohm: float = 0.0
    meter: Meter | None = None
    winding: Winding | None = None
    moved: bool = False
    felt: bool = False
    answer: str | None = None
    thermometer: Thermometer | None = None
    may_turn: bool = False
    warmth: Estimate | None = None
    swapped: bool = False
    waited_s: float = 0.0
    began_s: float | None = None
    zero_s: float = 0.0
    start_test: StartTest | None = None
    run_in: RunIn | None = None
    check: SupplyCheck | None = None
    skipped: set[str] = field(default_factory=set)
    pace: Pace = field(default_factory=Pace)
    left_out: list[str] = field(default_factory=list)

    @property
    def known_meter(self) -> Meter:
        assert self.meter is not None, "zeroed before anything is measured"
        return self.meter

    @property
    def reference_ohm(self) -> float:
        """Ω: what the winding has at most; a plan asks only after the probe found one."""
        assert self.winding is not None
        assert self.winding.reference_ohm is not None
        return self.winding.reference_ohm

    @property
    def stall_amps(self) -> float:
        """A at rated volts, rotor locked."""
        return self.rated_volts / self.reference_ohm

    def time_left_s(self, now_s: float) -> float:
        """s until the sequence's own end; time spent waiting for a person does not count."""
        assert self.began_s is not None
        return self.sequence.limit_s - (now_s - self.began_s - self.waited_s)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """How a plan ended: the outcome's word, and why, in a sentence."""

    outcome: Outcome
    reason: str


def mark(kind: EventKind, text: str, **values: float | int | str | bool | None) -> Mark:
    return Mark(event=Event(t_s=0.0, kind=kind, text=text, values=values))


def drive(
    volts: float, amps: float, for_s: float, belief: Motion, *, after_s: float = 0.0, kick: bool = False, least: int = 0
) -> Plan[list[Seen]]:
    """Volts and limit for a time, with every reading of it; longer only until `least` whole readings are in.

    The next command should carry `after_s` = `ends_s` of these, so that the width is what was asked.
    """
    seen = [(yield Apply(volts=volts, amps=amps, belief=belief, at_s=after_s, kick=kick))]
    while True:
        last = seen[-1]
        took_s = last.reading.received_s - last.reading.sent_s
        whole = sum(s.whole for s in seen)
        if last.now_s + took_s > last.set_at_s + for_s and whole >= least:
            return seen
        seen.append((yield Watch()))


def ends_s(seen: list[Seen], for_s: float) -> float:
    """When a drive of this length is over."""
    return max(seen[-1].now_s, seen[-1].set_at_s + for_s)


def down(amps: float, belief: Motion = Motion.RESTING, after_s: float = 0.0) -> Plan[Seen]:
    """0 V, the output still on: a relay is never switched under load."""
    return (yield Apply(volts=0.0, amps=amps, belief=belief, at_s=after_s))


def rest(seen: Seen, for_s: float) -> Plan[Seen]:
    """Watches, at a slow pace, for a time."""
    until_s = seen.now_s + for_s
    while seen.now_s < until_s:
        seen = yield Watch(at_s=min(until_s, seen.now_s + REST_PACE_S))
    return seen


def until_still(situation: Situation, seen: Seen, *, at_most_s: float = 10.0) -> Plan[tuple[Seen, bool]]:
    """Watches at 0 V until no rotor holds the terminals up, and whether it came to that."""
    floor = max(STILL_SHARE * situation.rated_volts, 5 * situation.known_meter.u_volts)
    until_s = seen.now_s + at_most_s
    while abs(seen.reading.volts - situation.known_meter.zero_volts) > floor:
        if seen.now_s > until_s:
            return seen, False
        seen = yield Watch(at_s=seen.now_s + REST_PACE_S)
    return seen, True


def ask(situation: Situation, text: str, choices: tuple[str, ...], *, swap: bool = False) -> Plan[str]:
    """Output off, the motor at rest, the question, and watching until it is answered; then on again, at 0 V."""
    seen = yield Apply(volts=0.0, amps=0.0, belief=Motion.RESTING)
    seen, _ = yield from until_still(situation, seen)
    seen = yield from rest(seen, 0.3)
    seen = yield Switch(on=False)
    seen = yield from discharged(seen)
    asked_s = seen.now_s
    seen = yield Ask(text=text, choices=choices, swap=swap)
    while seen.answer is None:
        seen = yield Watch(at_s=seen.now_s + REST_PACE_S)
    answer = seen.answer
    seen = yield from discharged(seen)
    situation.waited_s += seen.now_s - asked_s
    yield Switch(on=True)
    return answer


def discharged(seen: Seen) -> Plan[Seen]:
    """Watches while volts on the terminals still fall by themselves, 6 s at the most."""
    until_s = seen.now_s + 6.0
    while abs(seen.reading.volts) > 0.1 and seen.now_s < until_s:
        before = seen.reading.volts
        seen = yield from rest(seen, 0.5)
        if abs(seen.reading.volts) > 0.97 * abs(before):
            break
    return seen


def held(situation: Situation, seen: list[Seen]) -> Held:
    """Mean of the last two whole readings, zero taken out; of the last reading where none was whole."""
    last = [s.reading for s in seen if s.whole][-2:] or [seen[-1].reading]
    meter = situation.known_meter
    return Held(
        volts=fmean(r.volts for r in last) - meter.zero_volts, amps=fmean(r.amps for r in last) - meter.zero_amps
    )


def points(situation: Situation, seen: list[Seen], keep: Callable[[Seen], bool] | None = None) -> list[CoastPoint]:
    """The whole readings, zero taken out."""
    meter = situation.known_meter
    return [
        CoastPoint(volts=s.reading.volts - meter.zero_volts, amps=s.reading.amps - meter.zero_amps, since_s=s.since_s)
        for s in seen
        if s.whole and (keep is None or keep(s))
    ]


def room_for(situation: Situation, joules: float, *, within_s: float | None = None) -> Plan[Seen | None]:
    """Rests, at 0 V, until so much more fits within every ceiling; None where the run is over first.

    `within_s`: how long that may take at most, of a run that has no end of its own.
    """
    seen = yield Watch()
    until_s = seen.now_s + (situation.time_left_s(seen.now_s) - RESERVE_S if within_s is None else within_s)
    rest_s, asked_by = situation.budget.rest_for(seen.now_s, joules=joules)
    if rest_s > 0.5:
        yield mark(
            EventKind.REST,
            f"Resting {rest_s:.0f} s, so that the next look stays within the ceiling for {asked_by}.",
            seconds=round(rest_s, 2),
            ceiling=asked_by,
        )
    while rest_s > 0 and seen.now_s < until_s:
        seen = yield from rest(seen, min(rest_s, 1.0))
        rest_s, _ = situation.budget.rest_for(seen.now_s, joules=joules)
    return seen if rest_s <= 0 else None


def locked_watts(situation: Situation, volts: float, amps: float) -> float:
    """W into a locked rotor."""
    return volts * min(amps, volts / situation.reference_ohm)


def locked_joules(situation: Situation, volts: float, amps: float, for_s: float, *, least: int = 3) -> float:
    """J that are charged for a drive of a locked rotor with so many whole readings, at this supply's own pace."""
    return locked_watts(situation, volts, amps) * situation.pace.charged_s(for_s, least)
