"""A whole bench - supply, load, instrument - under a time that is given, so that it runs in any kind of time.

The model is advanced lazily, to the time of each message. Steps are 0.1 ms, and 1 ms while nothing but heat changes.
"""

import random
from collections.abc import Callable
from dataclasses import dataclass

import msgspec

from drivers.dialect import Dialect
from drivers.simulated.array import SampleArray
from drivers.simulated.instrument import Instrument
from drivers.simulated.loads import Diode, Driver, Leads, Load, Parallel, Resistor
from drivers.simulated.motor import Motor
from drivers.simulated.outlet import NEVER_S, Outlet
from drivers.simulated.quirks import Quirks
from drivers.simulated.readback import Integrals, Meter
from drivers.simulated.scenario import ResistorData, Scenario, unit
from drivers.simulated.speaks import Speaker
from drivers.simulated.supply_model import OutputStage
from drivers.simulated.truth import Extremes, OutputTruth, ReadingTruth, Truth
from drivers.simulated.wire import Manner

STEP_S = 1e-4
CALM_STEP_S = 1e-3
REST_STEP_S, LONGEST_REST_S = 0.02, 1800.0
"""Of what is off the terminals: nothing but heat changes once it stands, and after half an hour it is cold."""
OPEN_OHM = 1e8
OTHER_OHM = 20.0
STALLED_A = 0.01
"""Less than this in a standing motor is not counted as stalled time."""


class Bench:
    """`now_s` is how far the model has come; the first time it is given a time, it begins there.

    `truth` holds every reading that was served and every switch of the output, in order; `on_truth`, if set, gets
    each of them as it happens.

    `speaks`: the dialect of its instrument, with `quirks`; without one it is the strict SCPI instrument. `others`: what
    hangs on its further outputs, each of which is in `others` as a bench of its own. Without a word every further
    output of the dialect has a resistor.
    """

    def __init__(
        self,
        scenario: Scenario,
        seed: int = 0,
        *,
        speaks: Dialect | None = None,
        quirks: Quirks | None = None,
        others: tuple[Scenario, ...] | None = None,
    ) -> None:
        source = random.Random(seed)
        self.scenario = scenario
        self.seed = seed
        self.truth: list[Truth] = []
        self.extremes = Extremes()
        self.on_truth: Callable[[Truth], None] | None = None
        self.now_s: float | None = None
        self.output = OutputStage(scenario.supply, source)
        self._things: dict[tuple[Scenario, int], _Thing] = {}
        self._thing = self._hang(scenario, 0, source)
        self._meter = Meter(scenario.supply, source)
        self._array = self._measurement_array()
        self.others: tuple[Bench, ...] = ()
        self.instrument: Instrument | Speaker
        if speaks is None:
            self.instrument = Instrument(scenario.supply, self.output, self._acquire, scenario.name, self._array)
        else:
            further = others if others is not None else (_resistor(scenario),) * (speaks.outputs.count - 1)
            self.others = tuple(Bench(one, seed + place) for place, one in enumerate(further, start=1))
            self.instrument = self._speaker(speaks, quirks or Quirks())
        self.manner: Manner = self.instrument.manner
        self.gap_share = 1.0
        self.sessions: list[object] = []
        self._free_s = -NEVER_S
        self._integrals = Integrals(scenario.supply.window_s, STEP_S, 0.0)
        self._acquired: ReadingTruth | None = None
        self._was_on = False
        self._busy_until_s = 0.0

    def send(self, message: str, at_s: float) -> tuple[str | None, float]:
        """One program message at `at_s`, or when the one before is done. Returns the reply and when it leaves.

        Without a reply the time is when the message was taken.
        """
        self.advance(max(at_s, self._busy_until_s))
        taken_s = self._time()
        latency_s = self.instrument.write(message)
        self._note_output("command")
        if not self.instrument.reply_waits:
            return None, taken_s
        self._busy_until_s = taken_s + latency_s
        return self.instrument.read(), self._busy_until_s

    def exchange(self, message: str, at_s: float) -> list[tuple[float, bytes]]:
        """As `send`, on the instrument's own line: what leaves, and when. Nothing where it came too early."""
        manner = self.manner
        if manner.gap_s and at_s < self._free_s - 1e-9:
            self.advance(at_s)
            return []
        taken_s = max(at_s, self._busy_until_s)
        reply, leaves_s = self.send(message, at_s)
        self._free_s = leaves_s + manner.gap_s * self.gap_share
        left = [(taken_s, manner.said(message))] if manner.echo else []
        return left if reply is None else [*left, (leaves_s, manner.said(reply))]

    def advance(self, to_s: float) -> None:
        """Lets the model go on until `to_s`; a time that has passed already changes nothing."""
        while (due_s := self.instrument.due_s) <= to_s and self.now_s is not None:
            self._advance(due_s)
            self.instrument.happen(due_s)
            self._note_output("by itself")
        self._advance(to_s)

    def _advance(self, to_s: float) -> None:
        now_s = self.now_s
        for other in self.others:
            other.advance(to_s)
        if now_s is None:
            self.now_s = to_s
            self._integrals = Integrals(self.scenario.supply.window_s, STEP_S, to_s)
            return
        output, load, integrals = self.output, self._load, self._integrals
        array = self._array if self._array is not None and self._array.running else None
        while to_s - now_s > 1e-9:
            step_s = min(to_s - now_s, CALM_STEP_S if output.settled else STEP_S)
            volts, amps = output.volts, output.amps
            output.step(load, step_s)
            now_s += step_s
            mean_volts, mean_amps = 0.5 * (volts + output.volts), 0.5 * (amps + output.amps)
            integrals.add(now_s, mean_volts, mean_amps, step_s)
            self.now_s = now_s
            if array is not None:
                array.add(now_s, mean_volts, mean_amps, step_s)
            self._total(step_s)
        self.instrument.follow_output()

    def hang(self, scenario: Scenario | None, number: int = 0) -> None:
        """Another thing on the terminals of this supply, by hand; None for the first. What was there comes to rest and
        cools, and is the same when it is hung there again.

        `number`: which of several of a kind, from 1 on, each a little different; 0 is the kind as it is described.
        """
        kind = self.scenario if scenario is None else scenario
        self._thing.off_s = self._time()
        self._thing = self._hang(kind, number, random.Random(f"{self.seed} {kind.name} {number}"))
        self._thing.rest(self._time())
        self.output.settled = False

    def _hang(self, scenario: Scenario, number: int, source: random.Random) -> "_Thing":
        key = msgspec.structs.replace(scenario, supply=self.scenario.supply), number
        if key not in self._things:
            one = unit(scenario, source) if number else scenario
            motor = Motor(one.motor, one.rated_volts, source) if one.motor else None
            self._things[key] = _Thing(motor, Leads(_item(one, motor)))
        thing = self._things[key]
        self.motor, self._leads = thing.motor, thing.leads
        self._load = _terminals(self.scenario, thing.leads)
        return thing

    def swap_leads(self) -> None:
        """Swaps the two leads of the item by hand."""
        self._leads.way = -self._leads.way
        self.output.settled = False

    def _total(self, step_s: float) -> None:
        output, extremes, motor = self.output, self.extremes, self.motor
        if output.volts > extremes.max_volts:
            extremes.max_volts = output.volts
        if output.amps > extremes.max_amps:
            extremes.max_amps = output.amps
        on = output.on
        if on != self._was_on:
            self._note_output(output.trip.value if output.trip is not None else "command")
        if not on:
            return
        extremes.output_on_s += step_s
        extremes.energy_j += output.volts * output.amps * step_s
        if motor is not None:
            if motor.speed == 0.0 and abs(motor.amps) > STALLED_A:
                extremes.stalled_s += step_s
            if extremes.max_winding_c is None or motor.winding_c > extremes.max_winding_c:
                extremes.max_winding_c = motor.winding_c

    def _acquire(self) -> tuple[float, float]:
        at_s = self._time()
        if self._acquired is None or self._acquired.at_s != at_s:
            true_volts, true_amps = self._integrals.means()
            reported_volts, reported_amps = self._meter.read(true_volts, true_amps)
            motor = self.motor
            self._acquired = ReadingTruth(
                at_s=at_s,
                true_volts=true_volts,
                true_amps=true_amps,
                reported_volts=reported_volts,
                reported_amps=reported_amps,
                speed=motor.speed if motor is not None else 0.0,
                holding=motor.holding if motor is not None else False,
                winding_c=motor.winding_c if motor is not None else None,
                output_on=self.output.on,
            )
            self._tell(self._acquired)
        return self._acquired.reported_volts, self._acquired.reported_amps

    def _speaker(self, speaks: Dialect, quirks: Quirks) -> Speaker:
        latch = speaks.over_amps
        always_on = latch is not None and bool(latch.set) and not latch.enable
        outlets = [
            Outlet(bench.scenario.supply, bench.output, bench._acquire, quirks, over_amps_on=always_on)
            for bench in (self, *self.others)
        ]
        return Speaker(speaks, outlets, quirks, self.scenario.name, self._time, self._array)

    def _measurement_array(self) -> SampleArray | None:
        data = self.scenario.supply.array
        if data is None:
            return None
        source = random.Random(f"measurement array {self.seed}")
        return SampleArray(data, self._meter, source, now=self._time, tell=self._tell)

    def _note_output(self, why: str) -> None:
        for other in self.others:
            other._note_output(why)
        on = self.output.on
        if on != self._was_on:
            self._was_on = on
            self._tell(OutputTruth(at_s=self._time(), on=on, why=why, volts=self.output.volts, amps=self.output.amps))

    def _tell(self, record: Truth) -> None:
        self.truth.append(record)
        if self.on_truth is not None:
            self.on_truth(record)

    def _time(self) -> float:
        return self.now_s if self.now_s is not None else 0.0


@dataclass(slots=True)
class _Thing:
    """What hangs on the terminals, or did until `off_s`."""

    motor: Motor | None
    leads: Leads
    off_s: float | None = None

    def rest(self, until_s: float) -> None:
        """No current flows where nothing is connected."""
        left_s = 0.0 if self.off_s is None else min(until_s - self.off_s, LONGEST_REST_S)
        while left_s > 0.0:
            step_s = min(left_s, REST_STEP_S if self.leads.settled else STEP_S)
            intercept, slope = self.leads.affine(step_s)
            self.leads.commit(-intercept / slope if slope else 0.0, step_s)
            left_s -= step_s
        self.off_s = None


def _resistor(scenario: Scenario) -> Scenario:
    return Scenario(
        item="lamp",
        story="a plain resistance",
        rated_volts=12.0,
        expected="not-freed",
        supply=scenario.supply,
        resistor=ResistorData(ohms=OTHER_OHM),
        name=scenario.name,
    )


def _item(scenario: Scenario, motor: Motor | None) -> Load:
    """What the two leads go to."""
    parts: list[Load] = []
    if motor is not None:
        parts.append(motor)
    if scenario.driver is not None:
        parts.append(Driver(scenario.driver))
    if scenario.diode is not None:
        diode = Leads(Diode())
        diode.way = float(scenario.diode.way)
        parts.append(diode)
    if scenario.resistor is not None:
        parts.append(Resistor(scenario.resistor.ohms))
    if not parts:
        parts.append(Resistor(OPEN_OHM))
    return parts[0] if len(parts) == 1 else Parallel(tuple(parts))


def _terminals(scenario: Scenario, leads: Leads) -> Load:
    supply = scenario.supply
    if supply.volts_on_terminals == 0.0:
        return leads
    return Parallel((leads, Resistor(supply.terminals_ohm, supply.volts_on_terminals)))
