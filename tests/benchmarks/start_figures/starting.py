"""Starts on the simulated bench in virtual time, polled by the shipped driver, with the dense truth beside them."""

import random
from collections.abc import Sequence
from dataclasses import dataclass

import msgspec
import numpy as np

from benchlog.motor.align import Averages
from benchlog.motor.meter import zeroed
from benchlog.motor.overlay import Curve
from benchlog.motor.startup import Start, Values, Zero, start_of_readings, zero_by
from demo_db.virtual import VirtualBench
from drivers.simulated.bench import STEP_S
from drivers.simulated.motor import MotorData
from drivers.simulated.readback import Integrals
from drivers.simulated.supply_model import SupplyData
from drivers.simulated.truth import ReadingTruth
from drivers.supply import Reading, Setpoint
from tests.benchmarks.accuracy.population import Drawn
from tests.benchmarks.accuracy.second_solver import second_motor
from tests.conftest import BEGAN

ZERO_READINGS = 10
QUICK_REPLY_S = 0.002
"""Of a supply that is asked at a pace of the program's own; a slow one takes nearly the whole interval to answer."""
SLOW_SHARE = 0.97
JITTER_SHARE = 0.05
LIMIT_OF_STALL = 1.1
AT_0_V_S = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class Dense:
    """What really passed the terminals, float64[n] each: steps that end at t_s, s since the setpoint was sent, of
    step_s, with mean volts and amps."""

    t_s: Values
    step_s: Values
    volts: Values
    amps: Values

    def averages(self, what: Values) -> Averages:
        return Averages(self.t_s - 0.5 * self.step_s, what)


@dataclass(frozen=True, slots=True, kw_only=True)
class Polled:
    """One start as it was read back. `read_amps`: the true averages behind `start.all_amps`."""

    start: Start
    curve: Curve
    zero: Zero
    dense: Dense
    read_amps: Values
    supply: SupplyData


class _Recorder(Integrals):
    """Keeps every step, beside what the meter needs."""

    def __init__(self, window_s: float, start_s: float) -> None:
        super().__init__(window_s, STEP_S, start_s)
        self.steps: list[tuple[float, float, float, float]] = []

    def add(self, at_s: float, mean_v: float, mean_a: float, step_s: float) -> None:
        super().add(at_s, mean_v, mean_a, step_s)
        self.steps.append((at_s, step_s, mean_v, mean_a))


def start_once(
    drawn: Drawn,
    *,
    per_s: float,
    on_s: float,
    noise_seed: int,
    delay_s: float = 0.0,
    at_once: bool = True,
    slow: bool = False,
    changes: dict[str, float] | None = None,
    angle_rad: float | None = None,
) -> Polled:
    """One start from rest of a drawn motor at its rated volts. `delay_s`: before the second reading of it, or
    before the first where that does not follow the setpoint `at_once`; `slow`: the supply sets the pace; `changes`:
    factors of the motor's values; `angle_rad`: of the shaft, None for any."""
    bench = _bench(drawn, changes or {})
    source = random.Random(f"{drawn.seed}/{noise_seed}")
    supply = bench.open_supply()
    model = bench.bench
    model._meter._random.seed(source.randrange(1 << 30))  # other noise than at the last start; the same meter
    motor = model.motor
    assert motor is not None
    motor.angle_rad = source.uniform(0.0, 6.28) if angle_rad is None else angle_rad
    model.instrument.reply_s = QUICK_REPLY_S
    volts = drawn.scenario.rated_volts
    amps = LIMIT_OF_STALL * _stall_a(drawn)
    off = [supply.read() for _ in range(ZERO_READINGS)]
    steps = supply.capabilities
    meter = zeroed(
        [one.volts for one in off],
        [one.amps for one in off],
        step_volts=max(steps.volts_step, drawn.scenario.supply.step_v),
        step_amps=max(steps.amps_step, drawn.scenario.supply.step_a),
    )
    supply.set(Setpoint(volts=0.0, amps=amps))
    supply.switch(True)
    bench.clock.wait(bench.clock.now() + AT_0_V_S)
    supply.read()
    recorder = _Recorder(drawn.scenario.supply.window_s, model.now_s or 0.0)
    model._integrals = recorder
    first = len(model.truth)
    supply.set(Setpoint(volts=volts, amps=amps))
    began_s = bench.clock.now()
    readings: list[Reading] = []
    due_s = began_s if at_once else began_s + delay_s
    bench.clock.wait(due_s)
    while bench.clock.now() < began_s + on_s:
        apart_s = (1 + JITTER_SHARE * source.uniform(-1, 1)) / per_s
        model.instrument.reply_s = SLOW_SHARE * apart_s if slow else QUICK_REPLY_S
        readings.append(supply.read())
        due_s += apart_s + (delay_s if at_once and len(readings) == 1 else 0.0)
        bench.clock.wait(due_s)
    supply.off()
    return _polled(drawn, readings, began_s, zero_by(meter), recorder, model.truth[first:])


def _stall_a(drawn: Drawn) -> float:
    assert drawn.scenario.motor is not None
    return drawn.scenario.rated_volts / drawn.scenario.motor.ohms


def _bench(drawn: Drawn, changes: dict[str, float]) -> VirtualBench:
    data = drawn.scenario.motor
    assert data is not None
    changed: MotorData = msgspec.structs.replace(data, **{key: getattr(data, key) * by for key, by in changes.items()})
    scenario = msgspec.structs.replace(drawn.scenario, motor=changed)
    if drawn.extras is None:
        return VirtualBench(scenario, seed=drawn.seed, began=BEGAN)
    with second_motor(drawn.extras):
        return VirtualBench(scenario, seed=drawn.seed, began=BEGAN)


def _polled(
    drawn: Drawn,
    readings: Sequence[Reading],
    began_s: float,
    zero: Zero,
    recorder: _Recorder,
    truth: Sequence[object],
) -> Polled:
    supply = drawn.scenario.supply
    start = start_of_readings(
        [one.sent_s for one in readings],
        [one.received_s for one in readings],
        [one.volts for one in readings],
        [one.amps for one in readings],
        set_volts=drawn.scenario.rated_volts,
        began_s=began_s,
        window_s=supply.window_s,
        settle_s=0.012,
        name="start 1",
    )
    t_s, step_s, volts, amps = np.array(recorder.steps).T
    dense = Dense(t_s=t_s - began_s, step_s=step_s, volts=volts, amps=amps)
    curve = Curve(
        name=start.name,
        run=1,
        number=1,
        t_s=start.all_t_s,
        volts=np.array([one.volts for one in readings]),
        amps=start.all_amps,
        window_s=supply.window_s,
    )
    read = np.array([one.true_amps for one in truth if isinstance(one, ReadingTruth)])
    return Polled(start=start, curve=curve, zero=zero, dense=dense, read_amps=read[: len(readings)], supply=supply)
