"""Constants of a motor from one start at constant volts, with intervals, or why they can't be told.

With R, L, K, J and friction the current of a start is the sum of two exponentials; both poles are roots of
s² + (R/L + b/J) s + (K² + R b)/(J L). The faster, electrical one is over within a reading of any polled supply and is
out of reach. What is left, some time constants of it later, is exactly

    i(t) = i_ss + A exp(-t / tau)

averaged over the supply's window, which multiplies A alone: tau is unbiased. For each tau the other two follow by
linear least squares, so that only tau is searched for, in closed form and without an integrator.

Source of the poles: textbook; checked against the published examples in the tests.
"""

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from benchlog.motor.heat import STALL_RATE_K_S
from benchlog.motor.startup import UNKNOWN_ZERO_A, Z95, Start, Values, t95

TAU_RANGE_S = (0.004, 6.0)
_GRID = 60
_ZOOMS = 3
LEAST_READINGS = 8
LEAST_TAU_WINDOWS = 2.0
LEAST_TAU_READINGS = 0.5
"""A time constant shorter than two averaging windows, or half a reading's pace, has no lower limit that holds."""
RUN_UP_TAUS = 10.0
WHOLE_TAUS = 3.0
"""Time constants that a record must last for its end to be told as the steady current."""
SYSTEMATIC_TAU = 0.04
"""Share: cogging, brushes and warming bend a start in ways that are no noise. Measured over the population."""
SYSTEMATIC_AMPS = 0.01
GAIN_AMPS = 0.002
VOLTS_WITHIN = 0.01
COPPER_PER_K = 0.00393
"""Share of R at 20 °C per K. Source: IEC 60028, from memory."""
IDENTIFIABLE_WITHIN = 0.05
"""A value is called identified where its 95 % interval is no wider than this to either side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A value with its 95 % interval, in the unit its name says."""

    value: float
    low: float
    high: float

    @property
    def half_share(self) -> float:
        """Half the interval's width as a share of the value."""
        return 0.5 * (self.high - self.low) / abs(self.value) if self.value else math.inf


@dataclass(frozen=True, slots=True, kw_only=True)
class Constants:
    """Of one start; None where it can't be told, with the reason in `why` by the name.

    tau_s: mechanical time constant J R/(K² + R b), at the resistance while turning. steady_amps: A at those volts, the
    current that overcomes friction. stall_ratio: stall over steady current. steady_emf_volts: V - R i.
    moves_s: s after the start, when the current left the line of a locked rotor for good, between two readings.
    K and J by themselves need a speed; Coulomb and viscous friction need two voltages.
    """

    tau_s: Fitted | None
    steady_amps: Fitted | None
    stall_ratio: Fitted | None
    steady_emf_volts: Fitted | None
    why: dict[str, str]
    moves_s: Fitted | None = None


def poles(ohms: float, henries: float, k: float, inertia: float, viscous: float = 0.0) -> tuple[complex, complex]:
    """1/s: of current and speed of a motor on constant volts, the slower one first. SI units, all above zero."""
    half = 0.5 * (ohms / henries + viscous / inertia)
    product = (k * k + ohms * viscous) / (inertia * henries)
    root = complex(half * half - product) ** 0.5
    return -half + root, -half - root


def start_current(
    t_s: Values,
    volts: float,
    *,
    ohms: float,
    henries: float,
    k: float,
    inertia: float,
    viscous: float = 0.0,
    coulomb_nm: float = 0.0,
) -> Values:
    """A, float64[n]: the exact start from rest, from breakaway on, with constant Coulomb friction.

    Before it the rotor stands: i = V/R (1 - exp(-R t/L)) until K i reaches the friction. Poles must be real.
    """
    stall, tau_e = volts / ohms, henries / ohms
    breaks_a = coulomb_nm / k
    if breaks_a >= stall:
        return np.asarray(stall * -np.expm1(-t_s / tau_e), dtype=np.float64)
    breaks_s = -tau_e * math.log1p(-breaks_a / stall)
    slow, fast = (pole.real for pole in poles(ohms, henries, k, inertia, viscous))
    steady = (viscous * volts + k * coulomb_nm) / (k * k + ohms * viscous)
    slope = (volts - ohms * breaks_a) / henries  # di/dt at breakaway, the rotor at rest
    slow_a = (slope - fast * (breaks_a - steady)) / (slow - fast)
    fast_a = breaks_a - steady - slow_a
    since = np.maximum(t_s - breaks_s, 0.0)
    turning = steady + slow_a * np.exp(slow * since) + fast_a * np.exp(fast * since)
    standing = stall * -np.expm1(-t_s / tau_e)
    return np.asarray(np.where(t_s < breaks_s, standing, turning), dtype=np.float64)


def constants(
    start: Start,
    *,
    ohm: Fitted | None = None,
    lead_ohm: float = 0.0,
    sigma_amps: float = 0.0,
    zero_amps: float = 0.0,
    u_zero_amps: float = UNKNOWN_ZERO_A,
) -> Constants:
    """What one start tells. `ohm`: of the probe, without leads; `lead_ohm`: theirs; zero: readback at rest.

    `sigma_amps`: noise and rounding of one reading; `u_zero_amps`: how far off the zero may be, 95 %.
    """
    why: dict[str, str] = {}
    steady_volts = held_volts(start)
    t_s, amps = start.t_s[steady_volts], start.amps[steady_volts] - zero_amps
    if len(t_s) < LEAST_READINGS:
        return _nothing(f"{len(t_s)} readings are too few")
    tau, steady, amplitude, residual = _search(t_s, amps)
    late = t_s >= max(RUN_UP_TAUS * tau, 0.5 * float(t_s[-1]))
    tail = amps[late] if late.sum() >= LEAST_READINGS and amplitude > 0 else None
    early = t_s <= t_s[0] + RUN_UP_TAUS * tau
    if tail is not None and early.sum() >= LEAST_READINGS:  # what drifts after the run-up is heat, and not part of it
        t_s, amps = t_s[early], amps[early]
        tau, steady, amplitude, residual = _search(t_s, amps)
    # Readings closer than the averaging window tell the same thing more than once.
    overlap = max(1.0, start.window_s * start.readings_per_s)
    overlap = max(overlap, correlated(amps - steady - amplitude * np.exp(-t_s / tau)))
    free = max(len(t_s) / overlap - 3, 1.0)
    variance = max(residual / max(len(t_s) - 3, 1), sigma_amps**2)
    covariance = _covariance(t_s, tau, amplitude) * variance * overlap
    factor = t95(free)
    tau_fit: Fitted | None
    told_tau = tau_fit = _tau_interval(t_s, amps, tau, residual, variance, overlap, factor)
    u_noise = factor * math.sqrt(covariance[0])
    if tail is not None:
        steady = float(np.mean(tail))
        once = max(1.0, start.window_s * start.readings_per_s, correlated(tail - steady))
        u_noise = Z95 * max(float(np.std(tail)), sigma_amps) * math.sqrt(once / len(tail))
    u_steady = math.hypot(u_noise, u_zero_amps, (SYSTEMATIC_AMPS + GAIN_AMPS) * abs(steady))
    told_steady = Fitted(value=steady, low=steady - u_steady, high=steady + u_steady)
    steady_fit: Fitted | None = told_steady
    pace_s = 1.0 / start.readings_per_s
    if amplitude <= 4 * math.sqrt(covariance[1]):
        why["tau_s"] = "no run-up is seen in the readings: over before the first of them, or none"
        tau_fit = None
    elif tau < max(LEAST_TAU_WINDOWS * start.window_s, LEAST_TAU_READINGS * pace_s):
        why["tau_s"] = f"shorter than {max(LEAST_TAU_WINDOWS * start.window_s, LEAST_TAU_READINGS * pace_s):.2g} s"
        tau_fit = None
    elif told_tau.half_share > IDENTIFIABLE_WITHIN:
        why["tau_s"] = f"between {told_tau.low:.3g} and {told_tau.high:.3g} s: not identifiable at this sampling"
        tau_fit = None
    lasted_s = float(start.t_s[-1])
    if lasted_s < WHOLE_TAUS * tau:
        why["steady_amps"] = f"the record lasts {lasted_s:.2g} s, the run-up has a time constant of {tau:.2g} s"
        steady_fit = None
    elif told_steady.half_share > IDENTIFIABLE_WITHIN:
        why["steady_amps"] = (
            f"between {told_steady.low:.3g} and {told_steady.high:.3g} A: not identifiable with this readback"
        )
        steady_fit = None
    ratio = emf = None
    if steady_fit is None or ohm is None:
        why["stall_ratio"] = why["steady_emf_volts"] = "needs the steady current and the resistance of the probe"
    else:
        volts = float(np.mean(start.volts[-max(4, len(t_s) // 4) :]))
        whole = Fitted(value=ohm.value + lead_ohm, low=ohm.low + lead_ohm, high=ohm.high + lead_ohm)
        stall = volts / whole.value
        share = math.hypot(steady_fit.half_share, whole.half_share)
        ratio = Fitted(value=stall / steady, low=stall / steady * (1 - share), high=stall / steady * (1 + share))
        drop, value = share * whole.value * steady, volts - whole.value * steady
        emf = Fitted(value=value, low=value - drop, high=value + drop)
    moves, why_not = began_to_move(start, ohm, lead_ohm=lead_ohm, sigma_amps=sigma_amps, zero_amps=zero_amps)
    if moves is None:
        why["moves_s"] = why_not
    return Constants(
        tau_s=tau_fit, steady_amps=steady_fit, stall_ratio=ratio, steady_emf_volts=emf, why=why, moves_s=moves
    )


def began_to_move(
    start: Start, ohm: Fitted | None, *, lead_ohm: float = 0.0, sigma_amps: float = 0.0, zero_amps: float = 0.0
) -> tuple[Fitted | None, str]:
    """When the first voltage of its own is shown, or why that is not seen. A locked winding may heat meanwhile.

    As far as the probe's contact holds: a worse one at the start's angle is told as already turning.
    """
    if ohm is None:
        return None, "needs the resistance of the probe"
    warmed = 1 + COPPER_PER_K * STALL_RATE_K_S * start.t_s
    line = start.volts / (ohm.high * warmed + lead_ohm)
    left = start.amps - zero_amps < line - 2 * Z95 * sigma_amps
    on_line = np.flatnonzero(~left)
    if len(on_line) == 0:
        return None, f"already turning at the first reading, {start.t_s[0]:.2g} s after the start"
    last = int(on_line[-1])
    if last + 1 == len(left):
        return None, "the current did not leave the line of a locked rotor for good"
    low = max(0.0, float(start.t_s[last]) - start.window_s / 2)
    high = float(start.t_s[last + 1]) + start.window_s / 2
    return Fitted(value=(low + high) / 2, low=low, high=high), ""


def held_volts(start: Start) -> npt.NDArray[np.bool_]:
    """bool[n]: from when on the volts were constant. Before, the supply's limit or its slew held them down."""
    level = float(np.median(start.volts[-max(4, len(start.volts) // 4) :]))
    noise = float(np.std(start.volts[-max(4, len(start.volts) // 4) :]))
    low = np.flatnonzero(start.volts < (1 - VOLTS_WITHIN) * level - 3 * noise)
    kept = np.ones(len(start.volts), dtype=np.bool_)
    if len(low):
        kept[: int(low[-1]) + 1] = False
    return kept


def _nothing(reason: str) -> Constants:
    names = ("tau_s", "steady_amps", "stall_ratio", "steady_emf_volts", "moves_s")
    return Constants(
        tau_s=None, steady_amps=None, stall_ratio=None, steady_emf_volts=None, why=dict.fromkeys(names, reason)
    )


def correlated(residual: Values) -> float:
    """How many readings tell as much as one that stands alone, from how alike neighbours are: cogging, brush noise."""
    spread = float(np.mean(residual**2))
    if len(residual) < LEAST_READINGS or spread <= 0:
        return 1.0
    alike = float(np.mean(residual[1:] * residual[:-1])) / spread
    return (1 + alike) / (1 - alike) if 0 < alike < 0.95 else 1.0 if alike <= 0 else 39.0


def _solve(t_s: Values, amps: Values, taus: Values) -> tuple[Values, Values, Values]:
    """For each tau: steady amps, amplitude and the sum of squares left. float64[m] each."""
    shape = np.exp(-t_s[None, :] / taus[:, None])
    count = len(t_s)
    mean_shape, mean_amps = shape.mean(axis=1), float(amps.mean())
    spread = (shape * shape).mean(axis=1) - mean_shape**2
    together = shape @ amps / count - mean_shape * mean_amps
    amplitude = together / np.maximum(spread, 1e-300)
    left = count * np.maximum(float(np.mean(amps * amps)) - mean_amps**2 - amplitude * together, 0.0)
    return mean_amps - amplitude * mean_shape, amplitude, left


def _search(t_s: Values, amps: Values) -> tuple[float, float, float, float]:
    """tau, steady, amplitude, sum of squares: the least over a grid, then finer around it."""
    low, high = (math.log(value) for value in TAU_RANGE_S)
    for zoom in range(1 + _ZOOMS):
        grid = np.linspace(low, high, _GRID if zoom == 0 else 13)
        steady, amplitude, left = _solve(t_s, amps, np.exp(grid))
        best = int(np.argmin(left))
        step = grid[1] - grid[0]
        low, high = grid[best] - step, grid[best] + step
    return float(np.exp(grid[best])), float(steady[best]), float(amplitude[best]), float(left[best])


def _covariance(t_s: Values, tau: float, amplitude: float) -> npt.NDArray[np.float64]:
    """Of steady amps, amplitude and tau, for a variance of one: the diagonal, float64[3]."""
    shape = np.exp(-t_s / tau)
    design = np.stack([np.ones_like(t_s), shape, amplitude * t_s / tau**2 * shape], axis=1)
    try:
        return np.asarray(np.abs(np.diag(np.linalg.inv(design.T @ design))), dtype=np.float64)
    except np.linalg.LinAlgError:
        return np.full(3, math.inf)


def _tau_interval(
    t_s: Values, amps: Values, tau: float, left: float, variance: float, overlap: float, factor: float
) -> Fitted:
    """Where the sum of squares stays within what noise explains; the systematic share added in quadrature."""
    allowed = left + factor**2 * variance * overlap
    grid = tau * np.exp(np.linspace(-math.log(4.0), math.log(4.0), 241))
    over = _solve(t_s, amps, grid)[2] - allowed
    inside = np.flatnonzero(over <= 0)
    low, high = (
        (_edge(grid, over, int(inside[0]), -1), _edge(grid, over, int(inside[-1]), 1)) if len(inside) else (tau, tau)
    )
    down = math.hypot(1 - low / tau, SYSTEMATIC_TAU)
    up = math.hypot(high / tau - 1, SYSTEMATIC_TAU)
    return Fitted(value=tau, low=tau * max(0.0, 1 - down), high=tau * (1 + up))


def _edge(grid: Values, over: Values, last: int, step: int) -> float:
    """Where `over` passes zero between the last point inside and its neighbour; the last point at the grid's end."""
    beyond = last + step
    if not 0 <= beyond < len(grid):
        return float(grid[last])
    share = over[last] / (over[last] - over[beyond])
    return float(grid[last] + share * (grid[beyond] - grid[last]))
