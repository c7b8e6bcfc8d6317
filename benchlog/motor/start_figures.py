"""The figures of one start that are told, judged and filed: their names, units and intervals.

All are of readback: averages over the supply's window, as often as it was asked. The peak is the largest of those,
never the real inrush, which is over in milliseconds; the ripple is how much readings scatter, never the motor's own.
"""

import math
from dataclasses import dataclass

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.motor.fit import Fitted, correlated
from benchlog.motor.startup import LEAST_WHOLE, STEADY_WITHIN, Z95, Start, Values, Zero, t95
from benchlog.motor.surge import energy, run_up, surge_of
from benchlog.records import Event

GAIN_SHARE = 0.003
"""By which a supply's ammeter may be off in 95 of 100. Starting value of this project."""
LEAST_LATE_S = 0.3
STEADY_PART = 0.25
"""Share of a start, at its end, that its steady current is the mean of; no less than LEAST_LATE_S."""


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

_NAMES = tuple(kind.name for kind in FIGURES)


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
    """The steady part: mean and spread in A, what noise leaves of the mean, readings that stand alone; whether it is
    none yet."""

    amps: float
    spread: float
    u_noise: float
    alone: float
    changes: bool


def figures_of(start: Start, *, lead_ohm: float, zero: Zero, gain_share: float = GAIN_SHARE) -> StartFigures:
    """With 95 % intervals. `lead_ohm`: taken out of the energy, as exact; `gain_share`: how far off the meter's gain
    may be."""
    apart = np.diff(start.all_t_s)
    if len(start.t_s) < LEAST_WHOLE:
        told: dict[str, Fitted | str] = dict.fromkeys(_NAMES, f"{len(start.t_s)} readings of it alone are too few")
    else:
        told = _told(start, start.amps - zero.amps, lead_ohm, zero, gain_share)
    return StartFigures(
        values={name: found for name, found in told.items() if isinstance(found, Fitted)},
        why={name: found for name, found in told.items() if isinstance(found, str)},
        interval_s=float(np.mean(apart)) if len(apart) else 0.0,
        jitter_s=float(np.std(apart, ddof=1)) if len(apart) > 1 else 0.0,
        readings=len(start.all_t_s),
    )


def _told(start: Start, amps: Values, lead_ohm: float, zero: Zero, gain_share: float) -> dict[str, Fitted | str]:
    told: dict[str, Fitted | str] = {"peak_amps": _peak(start, zero, gain_share)}
    steady = _steady(start, amps, zero)
    noise = max(steady.spread, zero.sigma_amps)
    surge = surge_of(start, amps, steady.amps, noise, zero)
    told["energy_j"] = energy(start, amps, steady.amps, surge, lead_ohm=lead_ohm, zero=zero, gain=gain_share)
    if steady.changes:
        return told | dict.fromkeys(
            ("steady_amps", "run_up_s", "ripple_amps"), "the current was still changing at the end"
        )
    half = math.hypot(steady.u_noise, zero.u_amps, gain_share * steady.amps)
    told["steady_amps"] = Fitted(value=steady.amps, low=steady.amps - half, high=steady.amps + half)
    told["run_up_s"] = surge if isinstance(surge, str) else run_up(start, surge, noise, steady.u_noise)
    told["ripple_amps"] = _ripple(steady, zero)
    return told


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


def late(start: Start) -> npt.NDArray[np.bool_]:
    """bool[n]: the last quarter of the readings' time."""
    return np.asarray(start.t_s >= start.t_s[-1] - max(LEAST_LATE_S, STEADY_PART * float(start.t_s[-1])))


def _steady(start: Start, amps: Values, zero: Zero) -> _Steady:
    part = late(start)
    values, times = amps[part], start.t_s[part]
    if len(values) < LEAST_WHOLE:
        values, times = amps[-LEAST_WHOLE:], start.t_s[-LEAST_WHOLE:]
    half = times < np.mean(times)
    before, after = float(np.mean(values[half])), float(np.mean(values[~half]))
    mean, spread = float(np.mean(values)), float(np.std(values, ddof=1))
    once = max(1.0, start.window_s * start.readings_per_s, correlated(values - mean))
    alone = len(values) / once
    return _Steady(
        amps=mean,
        spread=spread,
        u_noise=t95(max(alone - 1, 1.0)) * max(spread, zero.sigma_amps) / math.sqrt(alone),
        alone=alone,
        changes=abs(after - before) > STEADY_WITHIN * abs(mean) + 2.0 * spread * math.sqrt(2.0 / len(values)),
    )


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


def _ripple(steady: _Steady, zero: Zero) -> Fitted | str:
    """Chi-square; rounding hides what is below half a step."""
    free = steady.alone - 1
    if free < 3:
        return "too few readings of the steady part stand alone"
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
