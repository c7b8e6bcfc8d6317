"""The constants of a measured start, from proofs of motors that turn."""

import math
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from benchlog.motor.fit import IDENTIFIABLE_WITHIN, Fitted, constants
from benchlog.motor.friction import Friction, friction
from benchlog.motor.startup import Z95, Start, starts_of, zero_of
from benchlog.records import FLAG_ON, RunKind
from benchlog.recovery.proving import MEASURED_START
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import AMBIENT_C, Drawn, Ran, draw, run
from tests.benchmarks.accuracy.rows import Row, rate

COULD = (
    "could be: the Cramér-Rao bound of the supply's noise, rounding, zero and sampling is within "
    f"± {IDENTIFIABLE_WITHIN:.0%}, the program's own limit; cogging, brushes and warming are not in the bound"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Split:
    """Friction in two parts, told and true: A at no speed, A/V; `steady_amps` and `emf_volts` at the held volts, to
    state both as shares of one current."""

    told: Friction
    coulomb_amps: float
    viscous_a_per_v: float
    steady_amps: float
    emf_volts: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What was fitted and what is true. `could_*`: the interval that noise leaves at best is narrow enough."""

    number: int
    tau: Fitted | None
    tau_true: float
    could_tau: bool
    amps: Fitted | None
    amps_true: float
    could_amps: bool
    split: Split
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
    zero = zero_of(trace)
    told = constants(start, sigma_amps=zero.sigma_amps, zero_amps=zero.amps, u_zero_amps=zero.u_amps)
    tau_true, amps_true = truth(drawn, start.set_volts)
    zeros = int(np.argmax((trace.flags & FLAG_ON) > 0))
    half_tau, half_amps = _bound(start, tau_true, amps_true, drawn, zeros)
    return Compared(
        number=asked[1],
        tau=told.tau_s,
        tau_true=tau_true,
        could_tau=half_tau <= IDENTIFIABLE_WITHIN,
        amps=told.steady_amps,
        amps_true=amps_true,
        could_amps=half_amps <= IDENTIFIABLE_WITHIN,
        split=_split(ran, drawn, start, told.tau_s),
        why="; ".join(told.why.values()),
    )


def _split(ran: Ran, drawn: Drawn, start: Start, tau: Fitted | None) -> Split:
    motor, found = drawn.scenario.motor, ran.result
    assert motor is not None
    ohm = None
    if not (found.resistance_ohm is None or found.resistance_low_ohm is None or found.resistance_high_ohm is None):
        ohm = Fitted(value=found.resistance_ohm, low=found.resistance_low_ohm, high=found.resistance_high_ohm)
    trace, events = ran.journal.trace, ran.journal.events
    tau_s = None if tau is None else tau.value
    told = friction(trace, events, zero_of(trace), from_s=start.began_s, ohm=ohm, tau_s=tau_s)
    _, steady = truth(drawn, start.set_volts)
    return Split(
        told=told,
        coulomb_amps=motor.coulomb_nm / motor.k,
        viscous_a_per_v=motor.viscous / motor.k**2,
        steady_amps=steady,
        emf_volts=start.set_volts - motor.ohms * steady,
    )


def _bound(start: Start, tau: float, steady: float, drawn: Drawn, zeros: int) -> tuple[float, float]:
    """Half the 95 % interval of tau and of the steady current, as shares, by Cramér and Rao: what an unbiased estimate
    from these readings could reach at best with the supply's noise and rounding alone, the zero's included."""
    motor, supply = drawn.scenario.motor, drawn.scenario.supply
    assert motor is not None
    sigma = math.hypot(supply.noise_a, supply.step_a / math.sqrt(12))
    half = start.window_s / 2 / tau
    amplitude = (start.set_volts / motor.ohms - steady) * math.sinh(half) / half
    shape = np.exp(-start.t_s / tau)
    design = np.stack([np.ones_like(shape), shape, amplitude * start.t_s / tau**2 * shape], axis=1)
    scale = np.abs(design).max(axis=0)
    if not np.all(scale > 0) or np.linalg.cond(design / scale) > 1e7:
        return math.inf, math.inf
    scaled = design / scale
    overlap = max(1.0, start.window_s * start.readings_per_s)
    variance = np.diag(np.linalg.inv(scaled.T @ scaled)) / scale**2 * sigma**2 * overlap
    of_zero = sigma**2 / max(zeros, 1)
    return Z95 * math.sqrt(variance[2]) / tau, Z95 * math.sqrt(variance[0] + of_zero) / abs(steady)


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
                note=COULD,
            ),
        ]
    return rows + _friction_rows([one.split for one in found])


def _friction_rows(splits: list[Split]) -> list[Row]:
    """Errors and widths as shares of the steady current at the held volts."""
    rows = []
    for name, each_one in (
        ("friction at no speed", [(s.told.coulomb_amps, s.coulomb_amps, 1 / s.steady_amps) for s in splits]),
        (
            "friction with speed",
            [(s.told.viscous_a_per_v, s.viscous_a_per_v, s.emf_volts / s.steady_amps) for s in splits],
        ),
    ):
        told = [(fit, value, share) for fit, value, share in each_one if fit is not None]
        held = sum(fit.low <= value <= fit.high for fit, value, _ in told)
        errors = [100 * (fit.value - value) * share for fit, value, share in told]
        halves = [100 * 0.5 * (fit.high - fit.low) * share for fit, _, share in told]
        note = "none told"
        if len(told) > 1:
            note = (
                f"of the steady current: bias {np.mean(errors):.2g} %, spread {np.std(errors, ddof=1):.2g} %, "
                f"half the interval {np.median(halves):.2g} % in the middle"
            )
        rows.append(
            Row(
                what=f"{name} inside its 95 % interval",
                goal="93 to 97 %",
                reached=rate(held, len(told)),
                count=len(told),
                note=note,
            )
        )
    untold = Counter(s.told.why.partition(":")[2].strip() or s.told.why for s in splits if s.told.why)
    rows.append(
        Row(
            what="friction not split",
            goal="none set",
            reached=rate(sum(untold.values()), len(splits)),
            count=len(splits),
            note="; ".join(f"{count} {why}" for why, count in untold.most_common()),
        )
    )
    return rows
