"""The figures of one start that are told, judged and filed: their names, units and intervals.

All are of readback: averages over the supply's window, as often as it was asked. The peak is the largest of those,
never the real inrush, which is over in milliseconds; the ripple is how much readings scatter, never the motor's own.
"""

import math
from dataclasses import dataclass

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.motor.fit import GAIN_AMPS, SYSTEMATIC_TAU, Fitted, correlated
from benchlog.motor.startup import LEAST_WHOLE, STEADY_WITHIN, Z95, Start, Values, Zero, t95
from benchlog.records import Event

RUN_UP_LEFT = 0.1
"""A run-up is over when this share of the way from the current's top to the steady current is left."""
LEAST_SURGE_SIGMAS = 5.0
"""The level at which a run-up is over must be this far above the steady current's ripple, or noise passes it."""
TOP_SHARE = 0.02
"""Of the surge: readings so close to its top are at the top, as on a current limit. Starting value of this project."""
FITTED_DOWN_TO = 0.05
"""Of the surge: readings below this are left out of the decay's slope. Starting value of this project."""
LEAST_LATE_S = 0.3
STEADY_PART = 0.25
"""Share of a start, at its end, that its steady current is the mean of; no less than LEAST_LATE_S."""
GAIN_VOLTS = 0.001
"""Share. Starting value of this project."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureKind:
    """`label`: as people read it; `unit`: SI."""

    name: str
    label: str
    unit: str


FIGURES: tuple[FigureKind, ...] = (
    FigureKind(name="peak_amps", label="peak readback", unit="A"),
    FigureKind(name="run_up_s", label="run-up", unit="s"),
    FigureKind(name="steady_amps", label="steady current", unit="A"),
    FigureKind(name="energy_j", label="energy", unit="J"),
    FigureKind(name="ripple_amps", label="ripple", unit="A"),
)


class StartFigures(msgspec.Struct, frozen=True, kw_only=True):
    """Of one start, by the names in FIGURES; a figure that can't be told is in `why` with its reason instead.

    peak_amps: the largest readback. run_up_s: s after the setpoint, until a tenth of the way from the top of the
    current to the steady one is left. steady_amps: mean of the last quarter. energy_j: at the motor, until the last
    reading. ripple_amps: standard deviation of readback in that quarter.
    `interval_s`, `jitter_s`: s from reading to reading as achieved: mean and standard deviation.
    """

    values: dict[str, Fitted]
    why: dict[str, str]
    interval_s: float
    jitter_s: float
    readings: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Steady:
    """The steady part: its mean and spread in A, what noise leaves of the mean, readings that stand alone."""

    amps: float
    spread: float
    u_noise: float
    alone: float


def figures_of(start: Start, *, lead_ohm: float, zero: Zero, gain_share: float = GAIN_AMPS) -> StartFigures:
    """With 95 % intervals. `lead_ohm`: taken out of the energy, as exact; `gain_share`: how far off the meter's gain
    may be."""
    apart = np.diff(start.all_t_s)
    values: dict[str, Fitted] = {}
    why: dict[str, str] = {}
    if len(start.t_s) < LEAST_WHOLE:
        why = {kind.name: f"{len(start.t_s)} readings of it alone are too few" for kind in FIGURES}
    else:
        amps = start.amps - zero.amps
        values["peak_amps"] = _peak(start, zero, gain_share)
        steady = _steady(start, amps, zero)
        if steady is None:
            why["steady_amps"] = why["run_up_s"] = why["ripple_amps"] = "the current was still changing at the end"
        else:
            half = math.hypot(steady.u_noise, zero.u_amps, gain_share * steady.amps)
            values["steady_amps"] = _around(steady.amps, half)
            ripple = _ripple(steady, zero)
            if ripple is None:
                why["ripple_amps"] = "too few readings of the steady part stand alone"
            else:
                values["ripple_amps"] = ripple
            run_up = _run_up(start, amps, steady, zero)
            if isinstance(run_up, str):
                why["run_up_s"] = run_up
            else:
                values["run_up_s"] = run_up
        values["energy_j"] = _energy(start, amps, lead_ohm, zero, gain_share)
    return StartFigures(
        values=values,
        why=why,
        interval_s=float(np.mean(apart)) if len(apart) else 0.0,
        jitter_s=float(np.std(apart, ddof=1)) if len(apart) > 1 else 0.0,
        readings=len(start.all_t_s),
    )


def event_values(figures: StartFigures) -> dict[str, float | int | str | bool | None]:
    """As a START event keeps them: f, f_low, f_high and why_f of each figure f, and the pace achieved."""
    kept: dict[str, float | int | str | bool | None] = {
        "interval_s": figures.interval_s,
        "jitter_s": figures.jitter_s,
        "readings": figures.readings,
    }
    for kind in FIGURES:
        name, found = kind.name, figures.values.get(kind.name)
        kept[name] = None if found is None else found.value
        kept[f"{name}_low"] = None if found is None else found.low
        kept[f"{name}_high"] = None if found is None else found.high
        kept[f"why_{name}"] = figures.why.get(name, "")
    return kept


def figures_from_event(event: Event) -> StartFigures:
    """The other way round; what an event lacks is not known."""
    kept = event.values
    values, why = {}, {}
    for kind in FIGURES:
        name = kind.name
        value, low, high = (_number(kept.get(key)) for key in (name, f"{name}_low", f"{name}_high"))
        if value is not None and low is not None and high is not None:
            values[name] = Fitted(value=value, low=low, high=high)
        elif reason := kept.get(f"why_{name}"):
            why[name] = str(reason)
    return StartFigures(
        values=values,
        why=why,
        interval_s=_number(kept.get("interval_s")) or 0.0,
        jitter_s=_number(kept.get("jitter_s")) or 0.0,
        readings=int(_number(kept.get("readings")) or 0),
    )


def _number(kept: float | int | str | bool | None) -> float | None:
    return float(kept) if isinstance(kept, int | float) and not isinstance(kept, bool) else None


def motor_volts(start: Start, figures: StartFigures, lead_ohm: float) -> float | None:
    """V at the motor in the steady part, the leads' drop taken out; None where its current was not steady."""
    steady = figures.values.get("steady_amps")
    return None if steady is None else float(np.mean(start.volts[late(start)])) - lead_ohm * steady.value


def _around(value: float, half: float) -> Fitted:
    return Fitted(value=value, low=value - half, high=value + half)


def late(start: Start) -> npt.NDArray[np.bool_]:
    """bool[n]: the last quarter of the readings' time."""
    return np.asarray(start.t_s >= start.t_s[-1] - max(LEAST_LATE_S, STEADY_PART * float(start.t_s[-1])))


def _steady(start: Start, amps: Values, zero: Zero) -> _Steady | None:
    """None while the current still changes."""
    part = late(start)
    values, times = amps[part], start.t_s[part]
    if len(values) < LEAST_WHOLE:
        return None
    half = times < np.mean(times)
    before, after = float(np.mean(values[half])), float(np.mean(values[~half]))
    mean, spread = float(np.mean(values)), float(np.std(values, ddof=1))
    if abs(after - before) > STEADY_WITHIN * abs(mean) + 2.0 * spread * math.sqrt(2.0 / len(values)):
        return None
    once = max(1.0, start.window_s * start.readings_per_s, correlated(values - mean))
    alone = len(values) / once
    noise = max(spread, zero.sigma_amps) / math.sqrt(alone)
    return _Steady(amps=mean, spread=spread, u_noise=t95(max(alone - 1, 1.0)) * noise, alone=alone)


def _peak(start: Start, zero: Zero, gain_share: float) -> Fitted:
    """The largest readback, and between which the largest of the averages behind the readbacks lies.

    Of several that are as high within noise the one with the most of it is the largest, so the lower limit allows for
    as many. It says nothing of what passed between two readings or within a window.
    """
    amps = start.all_amps - zero.amps
    peak = float(np.max(amps))
    near = int(np.sum(amps >= peak - 4 * zero.sigma_amps))
    down = math.hypot(_z(0.025 / near) * zero.sigma_amps, zero.u_amps, gain_share * peak)
    up = math.hypot(Z95 * zero.sigma_amps, zero.u_amps, gain_share * peak)
    return Fitted(value=peak, low=peak - down, high=peak + up)


def _z(tail: float) -> float:
    """Of the normal distribution, above which `tail` is left, 1e-6 to 0.5. Source: a rational approximation good to
    4.5e-4, from memory of the standard handbook of functions (26.2.23)."""
    t = math.sqrt(-2.0 * math.log(tail))
    below = 1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t**3
    return t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / below


def _ripple(steady: _Steady, zero: Zero) -> Fitted | None:
    """Chi-square; rounding hides what is below half a step."""
    free = steady.alone - 1
    if free < 3:
        return None
    spread = steady.spread
    high = spread * math.sqrt(free / _chi_square(free, -Z95))
    return Fitted(
        value=spread,
        low=spread * math.sqrt(free / _chi_square(free, Z95)),
        high=max(high, 0.5 * zero.step_amps),
    )


def _chi_square(free: float, z: float) -> float:
    """Its quantile where the normal one is z, three degrees of freedom or more. Source: Wilson and Hilferty's cube
    root, from memory; at three too low by a sixth in the lower tail, which errs to wide."""
    return free * float((1 - 2 / (9 * free) + z * math.sqrt(2 / (9 * free))) ** 3)


def _run_up(start: Start, amps: Values, steady: _Steady, zero: Zero) -> Fitted | str:
    """From the slope of the decay, so that it does not matter at which phase of it the first reading fell."""
    noise = max(steady.spread, zero.sigma_amps)
    surge = float(np.max(amps)) - steady.amps
    if RUN_UP_LEFT * surge < LEAST_SURGE_SIGMAS * noise:
        return "over before the first reading of its own, or lost in the ripple"
    top = int(np.flatnonzero(amps >= steady.amps + (1 - TOP_SHARE) * surge - 3 * zero.sigma_amps)[-1])
    low = np.flatnonzero(amps[top:] - steady.amps < max(FITTED_DOWN_TO * surge, 3 * noise))
    if len(low) == 0:
        return "not over by the end"
    t_s, excess = start.t_s[top : top + int(low[0])], (amps - steady.amps)[top : top + int(low[0])]
    if len(t_s) < 2:
        return f"over within {float(start.t_s[min(top + 1, len(start.t_s) - 1)]):.2g} s, between two readings"
    held = top > 0  # on a limit at first: the top itself was read
    told = _decayed_s(t_s, excess, surge, held=held, settle_s=start.settle_s)
    by_steady = [
        _decayed_s(t_s, excess + sign * min(steady.u_noise, 0.5 * float(excess[-1])), surge, held=held, settle_s=0.0)
        for sign in (-1, 1)
    ]
    log = np.log(excess)
    weight = excess**2 / np.sum(excess**2)
    middle = float(np.sum(weight * t_s))
    slope = float(np.sum(weight * (t_s - middle) * log) / np.sum(weight * (t_s - middle) ** 2))
    left = log - np.sum(weight * log) - slope * (t_s - middle)
    free = max(len(t_s) - 2, 1)
    variance = max(float(np.sum(weight * left**2)) * len(t_s) / free, noise**2 * len(t_s) / float(np.sum(excess**2)))
    u_slope = math.sqrt(variance / len(t_s) / float(np.sum(weight * (t_s - middle) ** 2)))
    factor = t95(free) if len(t_s) > 2 else Z95
    share = math.hypot(factor * u_slope / abs(slope), SYSTEMATIC_TAU)
    half = math.hypot(share * told, 0.5 * abs(by_steady[1] - by_steady[0]))
    half += start.within_s if held else 0.5 * start.settle_s
    return Fitted(value=told, low=max(0.0, told - half), high=told + half)


def _decayed_s(t_s: Values, excess: Values, surge: float, *, held: bool, settle_s: float) -> float:
    """s after the setpoint when a tenth is left: by a straight line through the logarithm of what is above the steady
    current. Where the top itself was not read, from half the settling on."""
    weight = excess**2 / np.sum(excess**2)
    log, middle = np.log(excess), float(np.sum(weight * t_s))
    slope = float(np.sum(weight * (t_s - middle) * log) / np.sum(weight * (t_s - middle) ** 2))
    tau = -1.0 / min(slope, -1e-9)
    if held:
        return middle + tau * (float(np.sum(weight * log)) - math.log(RUN_UP_LEFT * surge))
    return 0.5 * settle_s - tau * math.log(RUN_UP_LEFT)


def _energy(start: Start, amps: Values, lead_ohm: float, zero: Zero, gain_share: float) -> Fitted:
    """J over the time until the last reading. What passed before the first one lies between what that one says and a
    straight line back from it."""
    watts = (start.volts - lead_ohm * amps) * amps
    t_s = start.t_s
    seen = float(np.trapezoid(watts, t_s))
    first_s, slope = float(t_s[0]), float((watts[1] - watts[0]) / (t_s[1] - t_s[0]))
    rise = max(0.0, -slope * first_s)
    unseen = first_s * (float(watts[0]) + 0.5 * rise)
    u_unseen = first_s * 0.5 * rise + start.settle_s * float(watts[0] + rise)
    bent = float(np.mean(np.diff(t_s))) ** 2 / 12 * abs(slope)  # of a trapezoid under a curve
    volts, lasted_s = float(np.mean(start.volts)), float(t_s[-1])
    noise = Z95 * zero.sigma_amps * volts * math.sqrt(lasted_s * max(lasted_s / len(t_s), start.window_s))
    whole = seen + unseen
    half = math.hypot(noise, zero.u_amps * volts * lasted_s, (gain_share + GAIN_VOLTS) * whole)
    half += u_unseen + bent + start.within_s * abs(float(watts[0] - watts[-1]))
    return _around(whole, half)
