"""A whole run, from the request to the complete journal: identify, arm, loop, off in any case, ending.

The one path for the bench process and for runs in virtual time.
"""

import os
from collections.abc import Callable
from importlib.metadata import version
from pathlib import Path

from benchlog.bench import arming
from benchlog.bench.frames import Ended, Frame, Happened, Request
from benchlog.bench.journal import Armed, Begun, Ending, Happening, Journal
from benchlog.bench.lease import Lease
from benchlog.bench.loop import Loop
from benchlog.bench.reporting import Reporter
from benchlog.bench.switching_off import OffResult, switch_off
from benchlog.clock import Clock
from benchlog.errors import Refused
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.quantities import show
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Ceilings, Layer, Limits, intersect
from benchlog.recovery.guard import Guard
from benchlog.recovery.moves import Finding, Situation
from benchlog.recovery.plan import plan_of
from benchlog.recovery.setting_up import set_up
from benchlog.recovery.start_test import above_test_ceilings, check
from benchlog.recovery.steps import above_ceilings
from drivers.supply import Capabilities, Protection, Supply, SupplyError


class Conductor:
    """One run. `beat` is called at every step of the loop, `going_off` at every try to switch off, then `known_off`."""

    def __init__(
        self,
        request: Request,
        *,
        clock: Clock,
        lease: Lease,
        emit: Callable[[Frame], None],
        beat: Callable[[], None],
        going_off: Callable[[], None],
        known_off: Callable[[], None] = lambda: None,
        journal: Journal | None = None,
    ) -> None:
        self._request, self._clock, self._lease, self._emit = request, clock, lease, emit
        self._beat, self._going_off, self._known_off = beat, going_off, known_off
        self._zero_s = clock.now()
        self._journal = journal or Journal(Path(request.journal))
        self._journal.write(Begun(request=request, utc=clock.utc(), program=f"benchlog {version('benchlog')}"))
        self._loop: Loop | None = None
        self._situation: Situation | None = None
        self._guard: Guard | None = None

    def run(self, open_supply: Callable[[], Supply], armed: Callable[[Capabilities], None]) -> RunResult:
        """To the end. `armed` is called once the supply is known, before the output can be on; it may raise Refused.

        A run that ended before a supply was identified leaves no journal: nothing happened that could be filed.
        """
        finding = Finding(outcome=Outcome.STOPPED, reason="a fault in this program ended the run")
        off = OffResult(confirmed=False, text="no supply was reached, nothing was switched on", seen=())
        supply: Supply | None = None
        try:
            supply = open_supply()
            finding = self._with(supply, armed)
        except Refused as refusal:
            finding = Finding(outcome=Outcome.REFUSED, reason=str(refusal))
        except SupplyError as error:
            outcome = Outcome.REFUSED if supply is None else Outcome.SUPPLY_LOST
            finding = Finding(outcome=outcome, reason=str(error))
        except OSError as error:
            finding = Finding(outcome=Outcome.STOPPED, reason=f"the record can't be kept: {error}")
        finally:
            if supply is not None:
                off = switch_off(supply, self._clock, self._going_off)
                if off.confirmed:
                    self._known_off()
                    arming.disarm(supply)
                supply.close()
            result = self._result(finding, off)
            self._close(result, off, keep=supply is not None)
        return result

    def _with(self, supply: Supply, armed: Callable[[Capabilities], None]) -> Finding:
        request, can = self._request, supply.capabilities
        ceilings = intersect(request.layers | {Layer.SUPPLY: Limits(volts=can.volts_max, amps=can.amps_max)})
        self._journal.write(Armed(identity=can.identity, dialect=can.dialect, ceilings=ceilings))
        problems = above_ceilings(request.sequence, request.rated_volts, ceilings) + _test_problems(request, ceilings)
        if problems:
            raise Refused("; ".join(problems))
        armed(can)
        if request.kind is RunKind.START_UP:
            supply.find_array()  # before arming, which drains what a supply without one has to say about it
            can = supply.capabilities
        ready = arming.arm(supply, ceilings, request.check)
        self._situation, self._guard = situation, guard = set_up(request, ceilings, can, began_s=self._zero_s)
        situation.check = request.check
        self._loop = Loop(
            supply=supply,
            guard=guard,
            journal=self._journal,
            lease=self._lease,
            clock=self._clock,
            screen=Reporter(self._emit, guard, self._zero_s).screen,
            zero_s=self._zero_s,
            beat=self._beat,
        )
        self._loop.note(_introduced(can, ceilings, ready, request))
        if request.unlocked:
            self._loop.note(Event(t_s=0.0, kind=EventKind.NOTE, text=f"Ceilings {request.unlocked}."))
        return self._loop.run(plan_of(request.kind, situation, request.starts))

    def _result(self, finding: Finding, off: OffResult) -> RunResult:
        situation, loop = self._situation, self._loop
        winding = situation.winding if situation is not None else None
        volts = [reading.volts for reading in off.seen]
        amps = [reading.amps for reading in off.seen]
        if loop is not None and loop.max_volts is not None and loop.max_amps is not None:
            volts.append(loop.max_volts)
            amps.append(loop.max_amps)
        return RunResult(
            outcome=finding.outcome,
            reason=finding.reason,
            winding_verdict=winding.verdict if winding is not None else WindingVerdict.NOT_PROBED,
            resistance_ohm=winding.ohm if winding is not None else None,
            resistance_low_ohm=winding.low_ohm if winding is not None else None,
            resistance_high_ohm=winding.high_ohm if winding is not None else None,
            kicks=situation.budget.kicks_this_run if situation is not None else 0,
            moved=situation.moved if situation is not None else False,
            max_volts=max(volts, default=None),
            max_amps=max(amps, default=None),
            winding_bound_c=round(situation.budget.winding_c(self._clock.now()), 1) if situation is not None else None,
            locked_s=round(situation.budget.locked_total_s, 3) if situation is not None else 0.0,
            output_confirmed_off=off.confirmed,
        )

    def _close(self, result: RunResult, off: OffResult, *, keep: bool) -> None:
        now_s = self._clock.now()
        event = Event(
            t_s=round(now_s - self._zero_s, 4),
            kind=EventKind.OUTPUT,
            text=off.text,
            values={
                "on": False,
                "confirmed": off.confirmed,
                "utc": self._clock.utc(),
                "settling_s": round(self._guard.settling_s, 4) if self._guard is not None else None,
            },
        )
        try:
            for reading in off.seen:
                self._journal.sample(reading, self._zero_s)
            self._journal.write(Happening(event))
            self._journal.write(Ending(result=result, duration_s=round(now_s - self._zero_s, 4)))
            self._journal.close()
        except OSError as error:
            result_text = f"{result.reason}; the end of the record could not be kept: {error}"
            self._emit(Happened(event=Event(t_s=event.t_s, kind=EventKind.TRIP, text=result_text)))
        if not keep:
            os.unlink(self._request.journal)
        self._emit(Happened(event=event))
        self._emit(Ended(result=result, journal=self._request.journal if keep else None))


def _test_problems(request: Request, ceilings: Ceilings) -> list[str]:
    """What of a start test or a run-in can't be. Raises Refused where it is missing or no such thing."""
    if request.kind is RunKind.CHECK and request.check is None:
        raise Refused("a check of a supply without the resistor's value")
    asked = {RunKind.START_UP: request.start_test, RunKind.RUN_IN: request.run_in}
    if request.kind not in asked:
        return []
    test = asked[request.kind]
    if test is None:
        raise Refused(f"a {request.kind} run says what it is to be; this one does not")
    check(test)
    return above_test_ceilings(test, ceilings)


def _in_words(ceilings: Ceilings, latches: Protection) -> str:
    volts, amps = ceilings.volts, ceilings.amps
    told = f"Ceilings: {volts.value:g} V (from the {volts.layer}), {amps.value:g} A (from the {amps.layer})."
    set_to = [
        f"{level:g} {unit}"
        for level, unit in ((latches.over_volts, "V"), (latches.over_amps, "A"))
        if level is not None
    ]
    return f"{told} Its own latches: {', '.join(set_to)}, read back." if set_to else told


def _introduced(can: Capabilities, ceilings: Ceilings, ready: arming.Armed, request: Request) -> Event:
    leads = f"Leads of {show(request.lead_ohm, 'Ω')} are taken out of resistances." if request.lead_ohm else ""
    return Event(
        t_s=0.0,
        kind=EventKind.SUPPLY,
        text=f"Supply: {can.identity}.",
        values={
            "identity": can.identity,
            "dialect": can.dialect,
            "volts_max": can.volts_max,
            "amps_max": can.amps_max,
            "reply_s": round(can.reply_s, 4),
            "volts_step": can.volts_step,
            "amps_step": can.amps_step,
            "window_s": can.window_s,
            "settle_s": can.settle_s,
            "array_interval_s": can.array.least_interval_s if can.array else None,
            "array_points": can.array.most_points if can.array else None,
            "over_volts": ready.protection.over_volts,
            "over_amps": ready.protection.over_amps,
            "ceiling_volts": ceilings.volts.value,
            "ceiling_volts_from": ceilings.volts.layer,
            "ceiling_amps": ceilings.amps.value,
            "ceiling_amps_from": ceilings.amps.layer,
            "lead_ohm": request.lead_ohm,
            "why": " ".join(
                part for part in (_in_words(ceilings, ready.protection), leads, request.checked, *ready.remarks) if part
            ),
        },
    )
