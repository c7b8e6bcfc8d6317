"""How quick a supply is with nothing on its terminals: on, up, down, off, and the shortest kick that a reading sees.

What is told is an upper bound as its readback shows it: from the command to the end of the first reading that is
where all later ones are. With nothing connected volts fall only as fast as the supply itself empties its output.
"""

from statistics import fmean

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Apply, Plan, Seen, Switch, Watch
from benchlog.recovery.moves import Finding, Situation, discharged, mark
from benchlog.recovery.probing import zero
from benchlog.recovery.supply_check import SupplyCheck

FIRST_SHARE = 0.25
"""Of the volts, for the first look: something that is on the terminals shows at little."""
UPS = (0.5, 1.0)
ROUNDS = 2
KICKS = 5
STABLE = 4
"""Readings in a row that have to agree, and a supply has settled."""
LONGEST_S = 3.0
"""For one step; a slow supply gets at least twice the readings that have to agree."""
STEPS_OF_READBACK, SIGMAS = 2.0, 4.0
SHOWS_SHARE, GONE_SHARE = 0.9, 0.1
"""Of the volts of a kick: what a reading has to show, and what they fall below before the next."""
FALLS_SHARE = 0.98
FILLED_S = 0.3
"""After which the supply's own output takes no more current at the least limit."""
CURRENT_A, SHARE_OF_LIMIT = 0.01, 0.3
"""Above which something is on the terminals; below, a share of the limit counts. Starting values of this project."""


def settling_run(situation: Situation, check: SupplyCheck) -> Plan[Finding]:
    """Ends early where current flows. Every time is a mark of its own."""
    assert check.settling_a is not None
    moves = _Moves(situation, check.settling_a)
    on = yield from zero(situation)
    steps: list[tuple[str, float, float | None]] = [("on", FIRST_SHARE, on.set_at_s)]
    for _ in range(ROUNDS):
        steps += [("fall", 0.0, None), ("rise", UPS[0], None), ("rise", UPS[1], None), ("fall", UPS[0], None)]
    for what, share, since_s in steps:
        problem = yield from moves.step(what, share * check.volts, since_s)
        if problem:
            return Finding(outcome=Outcome.UNDETERMINED, reason=problem)
    yield from moves.kicks(check.volts)
    yield from moves.off(check.volts)
    if moves.problem:
        return Finding(outcome=Outcome.UNDETERMINED, reason=moves.problem)
    return Finding(outcome=Outcome.UNDETERMINED, reason="how quick the supply is was measured with its leads open")


class _Moves:
    """`problem`: what stands in the way of going on, once something does."""

    def __init__(self, situation: Situation, limit_a: float) -> None:
        self._situation, self._limit_a = situation, limit_a
        self._volts = 0.0
        self.problem = ""

    @property
    def _band_v(self) -> float:
        meter = self._situation.known_meter
        return max(STEPS_OF_READBACK * meter.step_volts, SIGMAS * meter.sigma_volts)

    def step(self, what: str, volts: float, since_s: float | None) -> Plan[str]:
        """To other volts until they have settled. `since_s`: of a command before, that counts as the beginning."""
        before, self._volts = self._volts, volts
        seen = [(yield Apply(volts=volts, amps=self._limit_a))]
        began_s = seen[0].set_at_s if since_s is None else since_s
        while not self._stable(seen) and not self._too_long(seen):
            if seen[-1].now_s > seen[0].set_at_s + FILLED_S and self._flows(seen):
                break  # no reason to go on feeding it
            seen.append((yield Watch()))
        settled = self._stable(seen)
        seconds = self._settled_at_s(seen) - began_s if settled else seen[-1].reading.received_s - began_s
        self.problem = self._flows(seen)
        told = f"{show(before, 'V')} to {show(volts, 'V')}"
        took = f"settled in at most {_ms(seconds)}" if settled else f"not settled after {_ms(seconds)}"
        left = "" if settled else f", {show(seen[-1].reading.volts, 'V')} are left"
        yield mark(
            EventKind.FINDING,
            f"{what.capitalize()}, {told}: {took}{left}.",
            settling=what,
            seconds=round(seconds, 5),
            settled=settled,
            before=before,
            volts=volts,
        )
        return self.problem

    def kicks(self, volts: float) -> Plan[None]:
        """As a kick of a run: volts, and 0 V as soon as a reading shows them."""
        yield Apply(volts=0.0, amps=self._limit_a, belief=Motion.RESTING)
        for _ in range(KICKS):
            yield from self._empty(GONE_SHARE * volts)
            first = seen = yield Apply(volts=volts, amps=self._limit_a)
            while seen.reading.volts < SHOWS_SHARE * volts and seen.now_s < first.now_s + LONGEST_S:
                seen = yield Watch()
            shows = seen.reading.volts >= SHOWS_SHARE * volts
            low = yield Apply(volts=0.0, amps=self._limit_a, belief=Motion.RESTING)
            width_s = low.set_at_s - first.set_at_s
            yield mark(
                EventKind.FINDING,
                f"The shortest kick of which a reading shows the volts: {_ms(width_s)}."
                if shows
                else f"No reading showed {show(volts, 'V')} within {_ms(width_s)}.",
                settling="kick",
                seconds=round(width_s, 5),
                settled=shows,
                volts=volts,
            )
        self._volts = 0.0

    def off(self, volts: float) -> Plan[None]:
        """Off under volts, which without current wears no relay, until they are seen to fall."""
        if self.problem or (yield from self.step("rise", volts, None)):
            return
        first = seen = yield Switch(on=False)
        while seen.reading.volts > FALLS_SHARE * volts and seen.now_s < first.now_s + LONGEST_S:
            seen = yield Watch()
        falls = seen.reading.volts <= FALLS_SHARE * volts
        seconds = seen.reading.received_s - first.set_at_s
        yield mark(
            EventKind.FINDING,
            f"Off: volts begin to fall within {_ms(seconds)}." if falls else f"Off: they stay up for {_ms(seconds)}.",
            settling="off",
            seconds=round(seconds, 5),
            settled=falls,
            volts=volts,
        )
        yield Apply(volts=0.0, amps=0.0, belief=Motion.RESTING)
        yield from discharged(seen)

    def _empty(self, volts: float) -> Plan[None]:
        seen = yield Watch()
        until_s = seen.now_s + LONGEST_S
        while seen.reading.volts > volts and seen.now_s < until_s:
            seen = yield Watch()

    def _stable(self, seen: list[Seen]) -> bool:
        # For as long again as it took: what creeps agrees with itself over a few readings.
        half_s = 0.5 * (seen[0].set_at_s + seen[-1].now_s)
        count = max(STABLE, sum(s.reading.sent_s >= half_s for s in seen))
        last = [s.reading.volts for s in seen[-count:]]
        near = abs(fmean(last) - self._volts) <= 0.05 * self._volts + 10 * self._band_v
        return len(last) >= STABLE and max(last) - min(last) <= 2 * self._band_v and near

    def _too_long(self, seen: list[Seen]) -> bool:
        return len(seen) >= 2 * STABLE and seen[-1].now_s > seen[0].now_s + LONGEST_S

    def _settled_at_s(self, seen: list[Seen]) -> float:
        """The end of the first reading that is, as all after it are, where the last ones are."""
        there = fmean(s.reading.volts for s in seen[-STABLE:])
        at_s = seen[-1].reading.received_s
        for one in reversed(seen):
            if abs(one.reading.volts - there) > self._band_v:
                break
            at_s = one.reading.received_s
        return at_s

    def _flows(self, seen: list[Seen]) -> str:
        """What is said where current goes on flowing; what fills the supply's own output is over by then."""
        meter = self._situation.known_meter
        amps = fmean(s.reading.amps for s in seen[-STABLE:]) - meter.zero_amps
        floor = min(max(CURRENT_A, 3.0 * meter.u_amps), SHARE_OF_LIMIT * self._limit_a + 3.0 * meter.u_amps)
        if abs(amps) <= floor:
            return ""
        return f"{show(amps, 'A')} flow: something is on the terminals; take the leads off and ask again"


def _ms(seconds: float) -> str:
    return show(1e3 * seconds, "ms") if seconds < 1.0 else show(seconds, "s")
