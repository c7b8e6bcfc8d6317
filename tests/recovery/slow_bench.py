"""A motor in virtual time on a supply that is slow: any dialect, with habits, and what it was sent and when."""

from collections.abc import Callable
from pathlib import Path

from msgspec.structs import replace

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Answer, Frame, Question
from benchlog.bench.journal import Journal
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.climbing import NO
from benchlog.recovery.steps import Sequence, Step
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.motor import MotorData
from drivers.simulated.quirks import together
from drivers.simulated.scenario import Scenario, load, with_ranges
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Supply
from tests.conftest import BEGAN


class Heard(VirtualSession):
    """Keeps when it was sent what, in `log`."""

    def __init__(self, bench: Bench, now: Callable[[], float], wait: Callable[[float], None]) -> None:
        super().__init__(bench, now, wait)
        self._at, self.log = now, list[tuple[float, str]]()

    def write(self, message: str) -> None:
        self.log.append((self._at(), message))
        super().write(message)


class SlowBench(VirtualBench):
    """A motor on a supply that speaks a dialect, with habits. `says`: who is there, to every question."""

    def __init__(self, motor: Scenario, dialect: str = "terse-serial", habits: tuple[str, ...] = ()) -> None:
        speaks, quirks = shipped(dialect), together(habits)
        super().__init__(with_ranges(motor, speaks), seed=11, began=BEGAN)
        self.bench = Bench(self.scenario, 11, speaks=speaks, quirks=quirks)
        self._described = quirks.described(speaks)
        self.heard = Heard(self.bench, self.clock.now, self.clock.wait)
        self.asked: list[str] = []
        self.says = NO

    def open_supply(self) -> Supply:
        return ScpiSupply(self.open_session, self._described, self.clock.now, wait=self.clock.wait)

    def open_session(self, timeout_s: float) -> Session:
        self.heard.set_timeout(timeout_s)
        return self.heard

    def emit(self, frame: Frame) -> None:
        self.frames.append(frame)
        if isinstance(frame, Question):
            self.asked.append(frame.text)
            self.lease.take(Answer(frame.id, self.says))

    def climb(self, journal: Path, *steps: Step, attended: bool = False, in_a_row_s: float | None = None) -> VirtualRun:
        request = self.request(
            journal,
            sequence=Sequence(name="test", steps=steps),
            layers={Layer.JOB: Limits(volts=self.scenario.rated_volts, amps=5.0), Layer.OWNER: Limits(on_s=in_a_row_s)},
            unattended=not attended,
        )
        began_s = self.clock.now()
        result = Conductor(
            request,
            clock=self.clock,
            lease=self.lease,
            emit=self.emit,
            beat=lambda: None,
            going_off=lambda: None,
            journal=Journal(journal, sync_thread=False),
        ).run(self.open_supply, lambda capabilities: None)
        return VirtualRun(
            result=result,
            frames=self.frames,
            journal=journal,
            bench=self.bench,
            lasted_s=self.clock.now() - began_s,
        )


def easy(rated_volts: float) -> Scenario:
    """A small fan that turns on 12 mA, less than the least current of a probe. 15 Ω, 20 ms to its speed."""
    motor = MotorData(ohms=15.0, henries=5e-3, k=2e-3, inertia=5.3e-9, coulomb_nm=2.4e-5, static_nm=2.6e-5)
    return replace(load("free"), rated_volts=rated_volts, motor=motor)
