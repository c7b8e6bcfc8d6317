"""A supply with a running motor on it, cheap enough for a day: two states, in closed form where nothing changes.

What the simulated bench is too slow for. Everything from the loop on is the shipped code.
"""

import math
import random
from collections.abc import Callable
from pathlib import Path

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Frame, Request
from benchlog.bench.journal import Journal
from benchlog.clock import VirtualClock
from benchlog.outcome import RunResult
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.start_test import RunIn
from benchlog.recovery.steps import built_in
from demo_db.virtual import HeldLease
from drivers.supply import ArrayLimits, Capabilities, Dense, Protection, Reading, Regulation, Setpoint

REPLY_S, WINDOW_S, SETTLE_S = 0.01, 0.01, 0.005
_STEP_S = 0.002
_KICKED_S = 1.0


def warming(first: float, last: float, over_s: float) -> Callable[[float], float]:
    """A of friction after so many s of running: falls from `first` to `last`, to a third of the rest in `over_s`."""
    return lambda ran_s: last + (first - last) * math.exp(-ran_s / over_s)


class RunningMotor:
    """Fulfils `drivers.supply.Supply`. Ω, s until it has its speed; `friction`: A that it draws after s of running."""

    def __init__(
        self,
        clock: VirtualClock,
        *,
        ohm: float = 20.0,
        tau_s: float = 0.1,
        friction: Callable[[float], float] = lambda ran_s: 0.05,
        stops_at_s: float = math.inf,
        opens_at_s: float = math.inf,
        leaks_at_s: float = math.inf,
        leak_a: float = 0.0,
        noise: float = 0.0005,
        seed: int = 1,
    ) -> None:
        self._clock, self._ohm, self._tau_s, self._friction = clock, ohm, tau_s, friction
        self._stops_at_s, self._opens_at_s = stops_at_s, opens_at_s
        self._leaks_at_s, self._leak_a = leaks_at_s, leak_a
        self._noise, self._source = noise, random.Random(seed)
        self._set, self._on = Setpoint(volts=0.0, amps=0.0), False
        self._emf = 0.0
        self._at_s = self._set_at_s = clock.now()
        self.ran_s = 0.0
        self.reads = 0
        self.most_volts = 0.0

    @property
    def capabilities(self) -> Capabilities:
        return Capabilities(
            identity="Harbour,Bench Supply,0001,1.0",
            dialect="test",
            volts_max=30.0,
            amps_max=5.0,
            volts_step=0.001,
            amps_step=0.001,
            latches=frozenset(),
            window_s=WINDOW_S,
            settle_s=SETTLE_S,
            reply_s=REPLY_S,
        )

    def read(self) -> Reading:
        self.reads += 1
        sent_s = self._clock.now()
        self._go_on(sent_s)
        volts, amps, limited = self._terminals()
        self._clock.advance(REPLY_S)
        regulation = Regulation.CC if limited else Regulation.CV
        return Reading(
            sent_s=sent_s,
            received_s=self._clock.now(),
            volts=round(volts + self._source.gauss(0.0, self._noise), 3),
            amps=round(amps + self._source.gauss(0.0, self._noise), 3),
            set_volts=self._set.volts,
            set_amps=self._set.amps,
            output_on=self._on,
            regulation=regulation if self._on else Regulation.UNKNOWN,
        )

    def _terminals(self) -> tuple[float, float, bool]:
        """V, A, and whether the current is at its limit. The supply can't sink current."""
        if not self._on:
            return self._emf, 0.0, False
        if self.ran_s >= self._opens_at_s:
            return self._set.volts, 0.0, False
        if self.ran_s >= self._leaks_at_s:  # its lead came off, and a resistance of its current took its place
            amps = min(self._leak_a, self._set.amps)
            return self._set.volts * amps / self._leak_a, amps, amps < self._leak_a
        amps = max(0.0, (self._set.volts - self._emf) / self._ohm)
        limited = amps > self._set.amps
        amps = min(amps, self._set.amps)
        return max(self._emf + amps * self._ohm, 0.0), amps, limited

    def _go_on(self, until_s: float) -> None:
        while self._at_s < until_s:
            quick = self._at_s - self._set_at_s < _KICKED_S
            step_s = min(until_s - self._at_s, _STEP_S if quick else 1.0)
            self._turn(step_s)
            self._at_s += step_s

    def _turn(self, step_s: float) -> None:
        needs = self._friction(self.ran_s)
        _, amps, limited = self._terminals()
        if self.ran_s >= self._stops_at_s or (self._emf <= 0 and amps <= needs):
            self._emf = 0.0
            return
        if limited or amps == 0.0:
            self._emf = max(0.0, self._emf + self._ohm * (amps - needs) * step_s / self._tau_s)
        else:
            end = self._set.volts - needs * self._ohm
            self._emf = max(0.0, end + (self._emf - end) * math.exp(-step_s / self._tau_s))
        self.ran_s += step_s

    def set(self, setpoint: Setpoint) -> None:
        self._go_on(self._clock.now())
        self._set, self._set_at_s = setpoint, self._clock.now()
        self.most_volts = max(self.most_volts, setpoint.volts)

    def switch(self, on: bool) -> None:
        self._go_on(self._clock.now())
        self._on, self._set_at_s = on, self._clock.now()

    def off(self) -> None:
        self.set(Setpoint(volts=0.0, amps=self._set.amps))
        self.switch(False)

    def protect(self, wanted: Protection) -> Protection:
        return wanted

    def tripped(self) -> str | None:
        return None

    def clear(self) -> None:
        self.off()

    def errors(self) -> list[str]:
        return []

    def watch(self, silence_s: float | None) -> float | None:
        return None

    def four_wire(self, on: bool) -> bool:
        raise ValueError("no choice")

    def find_array(self) -> ArrayLimits | None:
        return None

    def acquire(self, points: int, interval_s: float, alive: Callable[[], None] = lambda: None) -> float:
        raise ValueError("no array")

    def fetch(self, alive: Callable[[], None] = lambda: None) -> Dense:
        raise ValueError("no array")

    def reopen(self) -> None:
        pass

    def close(self) -> None:
        pass


def run_in_request(journal: Path, asked: RunIn, **changes: object) -> Request:
    """A fan at 12 V, with room above the volts held for a coast."""
    fields: dict[str, object] = {
        "uid": journal.stem,
        "kind": RunKind.RUN_IN,
        "resource": "test",
        "rated_volts": 12.0,
        "layers": {Layer.JOB: Limits(volts=18.0)},
        "sequence": built_in("starting-ladder"),
        "journal": str(journal),
        "job": None,
        "unattended": True,
        "run_in": asked,
    }
    return Request(**(fields | changes))  # type: ignore[arg-type]


def conducted(
    motor: RunningMotor, clock: VirtualClock, request: Request, emit: Callable[[Frame], None] = lambda frame: None
) -> RunResult:
    """One run to its end in virtual time."""
    conductor = Conductor(
        request,
        clock=clock,
        lease=HeldLease(clock),
        emit=emit,
        beat=lambda: None,
        going_off=lambda: None,
        journal=Journal(Path(request.journal), sync_thread=False),
    )
    return conductor.run(lambda: motor, lambda capabilities: None)
