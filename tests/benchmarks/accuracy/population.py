"""Motors and supplies drawn at random, wider than any that were tuned on; half of them are solved by another method.

Ranges: R 0.3 to 40 Ω, rated 1.5 to 24 V, stall current 0.08 to 10 A, mechanical time constant 10 ms to 2 s, stall over
no-load current 4 to 30, 5 to 100 readings a second, supplies as one finds them. All of it is this project's own.
"""

import math
import random
from dataclasses import dataclass
from pathlib import Path

import msgspec

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Frame, Request
from benchlog.bench.journal import Journal, JournalContents, read_journal
from benchlog.outcome import RunResult
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import Kicks, Sequence, Start
from demo_db.virtual import VirtualBench
from drivers.simulated.contact import ContactData, LiftData, ProtectorData
from drivers.simulated.joint import JointData
from drivers.simulated.loads import DriverData
from drivers.simulated.motor import MotorData
from drivers.simulated.scenario import DiodeData, ResistorData, Scenario
from drivers.simulated.supply_model import SupplyData
from tests.benchmarks.accuracy.second_solver import Extras, second_motor
from tests.conftest import BEGAN

FOR_GOOD = 20.0
AMBIENT_C = 20.0
LEAST_ELECTRONIC_V = 4.5
"""V: motors with electronics in them are rated at 5 V and up (common practice, no source)."""
STUCK = ("locked", "protector", "lift", "angle", "twist")
LOOK = Sequence(
    name="accuracy",
    limit_s=90.0,
    steps=(
        Start(voltage_ratio=0.5),
        Kicks(name="kick", voltage_ratio=1.0, current_ratio=1.0, on_s=0.15, off_s=0.3, tries=2),
    ),
)
"""A gentle start, two kicks with their looks: enough to be told as freed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """One motor on one supply. `tau_s`: mechanical time constant; `ratio`: stall over no-load current."""

    kind: str
    scenario: Scenario
    extras: Extras | None
    reply_s: float
    tau_s: float = 0.0
    ratio: float = 0.0
    seed: int = 0

    @property
    def second(self) -> bool:
        """Whether the second solver has it."""
        return self.extras is not None


def log_uniform(source: random.Random, low: float, high: float) -> float:
    return math.exp(source.uniform(math.log(low), math.log(high)))


def draw_supply(source: random.Random, stall_a: float) -> SupplyData:
    step = source.choice((0.001, 0.001, 0.002, 0.005, 0.01))
    return SupplyData(
        volts_max=60.0,
        amps_max=20.0,
        farads=log_uniform(source, 30e-6, 1000e-6),
        preload_ohm=log_uniform(source, 200.0, 5000.0),
        bleed_ohm=log_uniform(source, 500.0, 5000.0),
        setpoint_lag_s=log_uniform(source, 0.0005, 0.008),
        slew_v_per_s=log_uniform(source, 2000.0, 20000.0),
        limit_headroom=source.choice((0.0, 0.05)),
        noise_v=log_uniform(source, 0.0002, 0.005),
        noise_a=log_uniform(source, 0.0002, 0.005),
        step_v=step,
        step_a=min(step, 0.002) if stall_a < 0.5 else step,
        offset_v=source.uniform(0.0, 0.005),
        offset_a=source.uniform(0.0, 0.005),
        gain=source.uniform(0.0, 0.002),
    )


def draw_motor(source: random.Random, rated: float, ohms: float) -> tuple[MotorData, float, float]:
    """The motor, its time constant and its ratio of currents; free to turn."""
    stall_a = rated / ohms
    tau, ratio = log_uniform(source, 0.01, 2.0), log_uniform(source, 4.0, 30.0)
    k = (1 - 1 / ratio) * rated / log_uniform(source, 150.0, 1500.0)
    no_load_nm = k * stall_a / ratio
    viscous_share = source.uniform(0.0, 0.7)
    speed = (rated - stall_a / ratio * ohms) / k
    viscous = viscous_share * no_load_nm / speed
    coulomb = (1 - viscous_share) * no_load_nm
    heats_k_s = log_uniform(source, 0.5, 60.0)
    winding = min(10.0, max(0.2, rated * stall_a / heats_k_s))
    data = MotorData(
        ohms=ohms,
        henries=ohms * log_uniform(source, 1e-4, 2e-3),
        k=k,
        inertia=tau * (k * k / ohms + viscous),
        viscous=viscous,
        coulomb_nm=coulomb,
        static_nm=coulomb * source.uniform(1.0, 1.6),
        winding_j_per_k=winding,
        housing_j_per_k=winding * source.uniform(10.0, 30.0),
        winding_k_per_w=log_uniform(source, 3.0, 40.0),
        ambient_c=AMBIENT_C,
        contact=ContactData(ripple=log_uniform(source, 0.025, 0.2), bars=source.choice((3, 5, 7, 9))),
    )
    return data, tau, ratio


def draw(seed: int, number: int, kind: str) -> Drawn:
    """The same for the same three, on every machine. Odd numbers go to the second solver."""
    source = random.Random(f"{seed}/{number}/{kind}")
    rated, ohms = 0.0, 1.0
    while not (0.08 <= rated / ohms <= 10.0 and (kind != "electronic" or rated >= LEAST_ELECTRONIC_V)):
        rated, ohms = round(log_uniform(source, 1.5, 24.0), 2), log_uniform(source, 0.3, 40.0)
    motor, tau, ratio = draw_motor(source, rated, ohms)
    extras = Extras(
        cogging=source.uniform(0.0, 0.3),
        brush_noise=log_uniform(source, 0.005, 0.1),
        brush_volts=source.uniform(0.0, 0.05) * rated if source.random() < 0.3 else 0.0,
        twist=source.uniform(-0.4, 0.7) if kind == "twist" else 0.0,
    )
    bare = kind in ("open", "short", "diode", "electronic")
    return Drawn(
        kind=kind,
        scenario=Scenario(
            item="bilge pump",
            story="drawn at random",
            rated_volts=rated,
            expected="not-freed",
            name="drawn",
            supply=draw_supply(source, rated / ohms),
            motor=None if bare else _of_kind(source, kind, motor, rated),
            driver=_driver(source, rated) if kind == "electronic" else None,
            diode=DiodeData(way=1) if kind == "diode" else None,
            resistor=ResistorData(ohms=log_uniform(source, 0.01, 0.12)) if kind == "short" else None,
        ),
        extras=extras if number % 2 or kind == "twist" else None,
        reply_s=log_uniform(source, 0.01, 0.2),
        tau_s=tau,
        ratio=ratio,
        seed=source.randrange(1 << 30),
    )


def _driver(source: random.Random, rated: float) -> DriverData:
    starts = source.uniform(0.35, 0.8) * rated
    return DriverData(starts_at_volts=starts, stops_at_volts=0.8 * starts, watts=source.uniform(0.02, 0.1) * rated)


def _of_kind(source: random.Random, kind: str, motor: MotorData, rated: float) -> MotorData:
    held = JointData(breaks_at=FOR_GOOD)
    plain = ContactData()
    stall_s = log_uniform(source, 0.3, 10.0)
    match kind:
        case "locked":
            return msgspec.structs.replace(motor, joint=held, contact=plain)
        case "protector":
            protector = ProtectorData(
                opens_s=stall_s, open_ohm=log_uniform(source, 200.0, 5000.0), cools_s=log_uniform(source, 10.0, 90.0)
            )
            return msgspec.structs.replace(motor, joint=held, contact=ContactData(protector=protector))
        case "lift":
            lift = LiftData(per_s=log_uniform(source, 0.2, 5.0))
            return msgspec.structs.replace(motor, joint=held, contact=ContactData(lift=lift))
        case "angle":
            slips = JointData(breaks_at=source.uniform(0.3, 0.9), slips_rad=source.uniform(0.05, 1.0))
            step = source.choice((source.uniform(0.5, 1.0), -source.uniform(0.33, 0.5)))
            contact = ContactData(step=step, step_at_rad=source.uniform(0.01, 0.05))
            return msgspec.structs.replace(motor, joint=slips, contact=contact)
        case "twist":
            return msgspec.structs.replace(motor, joint=held, contact=plain)
        case "creeping":
            friction = motor.k * rated / motor.ohms / source.uniform(1.03, 1.25)
            return msgspec.structs.replace(motor, coulomb_nm=friction, static_nm=friction, viscous=0.0)
    return motor


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """A run of the shipped code on a drawn motor, and what was true. `speed`: rad/s at the most; `heat_j`: put in."""

    result: RunResult
    journal: JournalContents
    max_speed: float
    energy_j: float


def run(drawn: Drawn, folder: Path, kind: RunKind = RunKind.RECOVERY, **changes: object) -> Ran:
    """In virtual time: shipped driver, loop, guard, plan and journal."""
    if drawn.extras is not None:
        with second_motor(drawn.extras):
            bench = VirtualBench(drawn.scenario, seed=drawn.seed, began=BEGAN)
    else:
        bench = VirtualBench(drawn.scenario, seed=drawn.seed, began=BEGAN)
    bench.bench.instrument.reply_s = drawn.reply_s
    rated = drawn.scenario.rated_volts
    asked: dict[str, object] = {
        "layers": {Layer.MOTOR: Limits(winding_c=140.0), Layer.JOB: Limits(volts=min(1.4 * rated, 42.0))},
        "sequence": LOOK,
        "ambient_c": AMBIENT_C,
        "kicks_today": 0,
    }
    path = folder / f"{drawn.seed}.journal"
    request = bench.request(path, kind, **(asked | changes))
    frames: list[Frame] = []
    conductor = Conductor(
        request,
        clock=bench.clock,
        lease=bench.lease,
        emit=frames.append,
        beat=lambda: None,
        going_off=lambda: None,
        journal=Journal(path, sync_thread=False),
    )
    result = conductor.run(bench.open_supply, lambda capabilities: None)
    contents = read_journal(path)
    path.unlink()
    speeds = [abs(one.speed) for one in bench.bench.truth if hasattr(one, "speed")]
    return Ran(
        result=result, journal=contents, max_speed=max(speeds, default=0.0), energy_j=bench.bench.extremes.energy_j
    )


def request_of(contents: JournalContents) -> Request:
    return contents.begun.request
