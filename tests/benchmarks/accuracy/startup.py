"""The constants of a measured start, from proofs of motors that turn."""

import math
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from benchlog.motor.fit import IDENTIFIABLE_WITHIN, Fitted, constants
from benchlog.motor.startup import starts_of, zero_of
from benchlog.records import RunKind
from benchlog.recovery.proving import MEASURED_START
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import AMBIENT_C, Drawn, draw, run
from tests.benchmarks.accuracy.rows import Row, rate


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What was fitted and what is true. `could_*`: the noise alone leaves an interval narrower than called for."""

    number: int
    tau: Fitted | None
    tau_true: float
    could_tau: bool
    amps: Fitted | None
    amps_true: float
    could_amps: bool
    why: str


def truth(drawn: Drawn, set_volts: float) -> tuple[float, float]:
    """tau in s and steady amps at these volts, at ambient temperature and mean contact."""
    motor = drawn.scenario.motor
    assert motor is not None
    ohms = motor.ohms * (1 + motor.copper_per_k * (AMBIENT_C - 20.0))
    stiffness = motor.k**2 + ohms * motor.viscous
    volts = set_volts - (drawn.extras.brush_volts if drawn.extras is not None else 0.0)
    return motor.inertia * ohms / stiffness, (motor.viscous * volts + motor.k * motor.coulomb_nm) / stiffness


def compare(asked: tuple[int, int], folder: Path) -> Compared | None:
    """None where the proof came to no measured start."""
    drawn = draw(*asked, "free")
    ran = run(drawn, folder, RunKind.PROOF, starts=1)
    trace, events = ran.journal.trace, ran.journal.events
    measured = [one for one in starts_of(trace, events) if one.name == MEASURED_START]
    if not measured:
        return None
    start = measured[0]
    zero, sigma_read = zero_of(trace)
    supply = drawn.scenario.supply
    sigma = math.hypot(supply.noise_a, supply.step_a / math.sqrt(12))
    told = constants(start, sigma_amps=math.hypot(sigma_read, supply.step_a / math.sqrt(12)), zero_amps=zero)
    tau_true, amps_true = truth(drawn, start.set_volts)
    could_tau, could_amps = _could(start.t_s, tau_true, amps_true, start.set_volts, drawn, sigma, start.window_s)
    return Compared(
        number=asked[1],
        tau=told.tau_s,
        tau_true=tau_true,
        could_tau=could_tau,
        amps=told.steady_amps,
        amps_true=amps_true,
        could_amps=could_amps,
        why="; ".join(told.why.values()),
    )


def _could(
    t_s: "np.typing.NDArray[np.float64]",
    tau: float,
    steady: float,
    volts: float,
    drawn: Drawn,
    sigma: float,
    window_s: float,
) -> tuple[bool, bool]:
    """Cramér and Rao: what an unbiased estimate from readings with this noise alone could reach at best."""
    motor = drawn.scenario.motor
    assert motor is not None
    amplitude = volts / motor.ohms - steady
    shape = np.exp(-t_s / tau)
    design = np.stack([np.ones_like(t_s), shape, amplitude * t_s / tau**2 * shape], axis=1)
    try:
        bound = np.abs(np.diag(np.linalg.inv(design.T @ design))) * sigma**2
    except np.linalg.LinAlgError:
        return False, False
    overlap = max(1.0, window_s / drawn.reply_s)
    half_tau = 1.96 * math.sqrt(float(bound[2]) * overlap) / tau
    half_amps = math.hypot(1.96 * math.sqrt(float(bound[0]) * overlap), 0.003) / abs(steady)
    in_reach = tau >= max(2 * window_s, 0.5 * drawn.reply_s)
    return (
        in_reach and half_tau <= 0.5 * IDENTIFIABLE_WITHIN,
        half_amps <= 0.5 * IDENTIFIABLE_WITHIN and float(t_s[-1]) > 4 * tau,
    )


def measure(motors: int, seed: int, workers: int) -> list[Row]:
    found = [one for one in each(compare, [(seed, n) for n in range(motors)], workers) if one is not None]
    rows = []
    for name, fitted, true, could in (
        ("tau", [o.tau for o in found], [o.tau_true for o in found], [o.could_tau for o in found]),
        ("no-load current", [o.amps for o in found], [o.amps_true for o in found], [o.could_amps for o in found]),
    ):
        told = [(fit, value) for fit, value in zip(fitted, true, strict=True) if fit is not None]
        near = sum(abs(fit.value / value - 1) <= IDENTIFIABLE_WITHIN for fit, value in told)
        held = sum(fit.low <= value <= fit.high for fit, value in told)
        hidden = sum(fit is None for fit, possible in zip(fitted, could, strict=True) if possible)
        bias = float(np.median([fit.value / value - 1 for fit, value in told])) if told else math.nan
        rows += [
            Row(
                what=f"{name} within 5 % where called identifiable",
                goal="all",
                reached=rate(near, len(told)),
                count=len(told),
                note=f"of {len(found)} measured starts ({motors} motors); median error {100 * bias:.2g} %",
            ),
            Row(
                what=f"{name} inside its 95 % interval",
                goal="93 to 97 %",
                reached=rate(held, len(told)),
                count=len(told),
            ),
            Row(
                what=f"{name} said to be not identifiable where the noise would let it be",
                goal="≤ 20 %",
                reached=rate(hidden, sum(could)),
                count=sum(could),
            ),
        ]
    return rows
