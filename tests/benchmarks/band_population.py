"""Lots of one type of motor each, and what a polled supply reads of their starts: closed form, many at once.

Types are drawn wide, units of a type as they come from one maker, starts of a unit as one motor repeats. All sizes are
starting values of this project. Two populations: "normal", whose parameters are; and "odd", on purpose not: lognormal
friction, resistance spread evenly, and every fifth unit from another batch with weaker magnets and more friction.
"""

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Values = npt.NDArray[np.float64]
WINDOW_S, SETTLE_S, ON_S = 0.02, 0.012, 1.5
POPULATIONS = ("normal", "odd")
FAULTS: dict[str, dict[str, float]] = {
    "good": {},
    "friction times 2": {"friction": 2.0},
    "resistance + 30 %": {"ohms": 1.3},
    "magnet - 15 %": {"k": 0.85},
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Type:
    """Means and, as shares, standard deviations: of its units (`spread_*`) and of one motor's starts (`again_*`).

    `ripple`: rms share of the current in one readback; `noise_a`, `step_a`: of the supply, A.
    """

    volts: float
    ohms: float
    k: float
    inertia: float
    coulomb_nm: float
    viscous: float
    spread_ohms: float
    spread_k: float
    spread_inertia: float
    spread_friction: float
    again_ohms: float
    again_friction: float
    ripple: float
    noise_a: float
    step_a: float
    interval_s: float
    jitter_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Starts:
    """Of `units` units, `each` starts apiece. t_s (since the trigger, middle of what was averaged), amps:
    float64[units, each, readings]."""

    type: Type
    t_s: Values
    amps: Values


def draw_type(source: np.random.Generator) -> Type:
    def log_uniform(low: float, high: float) -> float:
        return math.exp(source.uniform(math.log(low), math.log(high)))

    volts, ohms = log_uniform(1.5, 12.0), log_uniform(1.0, 20.0)
    tau, ratio = log_uniform(0.04, 0.2), log_uniform(5.0, 15.0)
    k = (1 - 1 / ratio) * volts / log_uniform(150.0, 1000.0)
    no_load_nm = k * volts / ohms / ratio
    viscous_share = source.uniform(0.1, 0.6)
    viscous = viscous_share * no_load_nm / ((volts - volts / ratio) / k)
    stall_a = volts / ohms
    return Type(
        volts=volts,
        ohms=ohms,
        k=k,
        inertia=tau * (k * k / ohms + viscous),
        coulomb_nm=(1 - viscous_share) * no_load_nm,
        viscous=viscous,
        spread_ohms=source.uniform(0.015, 0.04),
        spread_k=source.uniform(0.015, 0.04),
        spread_inertia=source.uniform(0.01, 0.04),
        spread_friction=source.uniform(0.05, 0.15),
        again_ohms=log_uniform(0.001, 0.01),
        again_friction=log_uniform(0.005, 0.04),
        ripple=log_uniform(0.003, 0.03),
        noise_a=log_uniform(0.0003, 0.002),
        step_a=float(source.choice((0.001, 0.001, 0.002))) if stall_a > 0.3 else 0.0005,
        interval_s=1.0 / log_uniform(20.0, 100.0),
        jitter_s=0.001,
    )


def draw_starts(
    type_: Type, units: int, each: int, source: np.random.Generator, *, population: str = "normal", fault: str = "good"
) -> Starts:
    """Units of the type, whole starts of each, as read."""

    def normal(share: float, *shape: int) -> Values:
        return np.asarray(np.maximum(1 + share * source.standard_normal(shape), 0.05), dtype=np.float64)

    ohms, k = normal(type_.spread_ohms, units, 1), normal(type_.spread_k, units, 1)
    inertia, friction = normal(type_.spread_inertia, units, 1), normal(type_.spread_friction, units, 1)
    ripple = type_.ripple * normal(0.1, units, 1)
    if population == "odd":
        ohms = 1 + math.sqrt(3) * type_.spread_ohms * source.uniform(-1, 1, (units, 1))
        friction = np.exp(2 * type_.spread_friction * source.standard_normal((units, 1)))
        ripple = type_.ripple * np.exp(0.4 * source.standard_normal((units, 1)))
        other = source.random((units, 1)) < 0.2
        k, friction = np.where(other, 0.94 * k, k), np.where(other, 1.3 * friction, friction)
    worse = FAULTS[fault]
    ohms = type_.ohms * ohms * worse.get("ohms", 1.0) * normal(type_.again_ohms, units, each)
    friction = friction * worse.get("friction", 1.0) * normal(type_.again_friction, units, each)
    k = type_.k * k * worse.get("k", 1.0)
    readings = round(ON_S / type_.interval_s)
    at_s = type_.interval_s * (np.arange(readings) + source.random((units, each, 1)))
    at_s = at_s + type_.jitter_s * source.uniform(-0.5, 0.5, at_s.shape)
    amps = _averaged(
        at_s,
        type_.volts,
        ohms[..., None],
        k[..., None],
        type_.inertia * inertia[..., None],
        type_.viscous * friction[..., None],
        type_.coulomb_nm * friction[..., None],
    )
    amps = amps * (1 + ripple[..., None] * source.standard_normal(amps.shape))
    amps = amps + type_.noise_a * source.standard_normal(amps.shape)
    return Starts(type=type_, t_s=at_s - 0.5 * WINDOW_S, amps=np.round(amps / type_.step_a) * type_.step_a)


def _averaged(
    at_s: Values, volts: float, ohms: Values, k: Values, inertia: Values, viscous: Values, coulomb_nm: Values
) -> Values:
    """Mean of the exact current over the window that ends at `at_s`, 0 before the start: a difference of charges."""
    henries = 5e-4 * ohms
    half = 0.5 * (ohms / henries + viscous / inertia)
    root = np.sqrt(half * half - (k * k + ohms * viscous) / (inertia * henries))
    slow, fast = -half + root, -half - root
    slow = (k * k + ohms * viscous) / (inertia * henries) / fast  # the difference above loses digits
    stall, tau_e, breaks_a = volts / ohms, henries / ohms, coulomb_nm / k
    breaks_s = -tau_e * np.log1p(-np.minimum(breaks_a / stall, 1 - 1e-12))
    steady = (viscous * volts + k * coulomb_nm) / (k * k + ohms * viscous)
    slope = (volts - ohms * breaks_a) / henries
    slow_a = (slope - fast * (breaks_a - steady)) / (slow - fast)
    fast_a = breaks_a - steady - slow_a

    def charge(t_s: Values) -> Values:
        t_s = np.maximum(t_s, 0.0)
        stood = np.minimum(t_s, breaks_s)
        since = t_s - stood
        standing = stall * (stood + tau_e * np.expm1(-stood / tau_e))
        turning = steady * since + slow_a / slow * np.expm1(slow * since) + fast_a / fast * np.expm1(fast * since)
        return np.asarray(standing + turning, dtype=np.float64)

    return np.asarray((charge(at_s) - charge(at_s - WINDOW_S)) / WINDOW_S, dtype=np.float64)
