"""A run on the simulated bench in virtual time: the shipped driver, loop, guard, plan and journal, no waiting.

The same seed gives the same readings, so that what is built from them is the same every time.
"""

import math
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Frame, Request
from benchlog.bench.journal import Journal
from benchlog.bench.lease import Lease
from benchlog.clock import VirtualClock
from benchlog.outcome import RunResult
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import Sequence, built_in
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import Scenario
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Supply


class HeldLease(Lease):
    """A lease that is always renewed; a stop still ends it."""

    @property
    def expires_s(self) -> float:
        return math.inf

    def ended(self, now_s: float) -> str | None:
        return self._stop


@dataclass(frozen=True, slots=True, kw_only=True)
class VirtualRun:
    """What came of it. `journal`: complete, ready to be filed; `bench`: knows the truth at the terminals."""

    result: RunResult
    frames: list[Frame]
    journal: Path
    bench: Bench
    lasted_s: float


class VirtualBench:
    """One simulated bench, one clock, and runs on it one after the other."""

    def __init__(self, scenario: Scenario, *, seed: int, began: datetime) -> None:
        self.scenario = scenario
        self.bench = Bench(scenario, seed)
        self.clock = VirtualClock(utc_start=began)
        self.lease = HeldLease(self.clock)
        self.frames: list[Frame] = []

    def open_supply(self) -> Supply:
        """As on a wire, but without one."""
        return ScpiSupply(self.open_session, shipped(), self.clock.now)

    def open_session(self, timeout_s: float) -> Session:
        session = VirtualSession(self.bench, self.clock.now, self.clock.wait)
        session.set_timeout(timeout_s)
        return session

    def request(self, journal: Path, kind: RunKind = RunKind.RECOVERY, **changes: object) -> Request:
        """What is asked by default: unattended, the rated volts as the job's ceiling, the built-in ladder."""
        asked: dict[str, object] = {
            "uid": journal.stem,
            "kind": kind,
            "resource": "TCPIP::127.0.0.1::5025::SOCKET",
            "rated_volts": self.scenario.rated_volts,
            "layers": {Layer.JOB: Limits(volts=self.scenario.rated_volts)},
            "sequence": _ladder(),
            "journal": str(journal),
            "job": None,
            "unattended": True,
        }
        return Request(**(asked | changes))  # type: ignore[arg-type]

    def run(self, request: Request) -> VirtualRun:
        """One run to its end."""
        began_s, first = self.clock.now(), len(self.frames)
        conductor = Conductor(
            request,
            clock=self.clock,
            lease=self.lease,
            emit=self.frames.append,
            beat=lambda: None,
            going_off=lambda: None,
            journal=Journal(Path(request.journal), sync_thread=False),
        )
        result = conductor.run(self.open_supply, lambda capabilities: None)
        return VirtualRun(
            result=result,
            frames=self.frames[first:],
            journal=Path(request.journal),
            bench=self.bench,
            lasted_s=self.clock.now() - began_s,
        )


def _ladder() -> Sequence:
    return built_in("starting-ladder")
