"""Each figure from polled readback against what it is on the true curve, at four paces."""

import math
import random
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from benchlog.motor.start_figures import FIGURES, LEAST_LATE_S, STEADY_PART, figures_of
from benchlog.motor.surge import RUN_UP_LEFT
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import draw
from tests.benchmarks.accuracy.rows import rate
from tests.benchmarks.start_figures.starting import Polled, start_once

PACES = (10.0, 20.0, 50.0, 100.0)
ON_S = (1.5, 10.0)
"""s: as a tester would set it, ten time constants within these."""
SMOOTH_S = 0.005
"""Brush noise would pass the level of a run-up again and again, and be its top: for it alone the true curve is averaged
over this, and the run-up ends midway between the first and the last crossing."""
FURTHER = {
    "peak_amps": ("peak, against the largest average over any window", "peak, against the true inrush"),
    "ripple_amps": ("ripple, against the true current's own",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One figure of one start; None where it was not told. `true`: as FIGURES, the further truths after it."""

    name: str
    value: float | None
    low: float
    high: float
    true: tuple[float, ...]


def true_figures(polled: Polled) -> dict[str, tuple[float, ...]]:
    """By the name of the figure: what its interval is about, then what a reader might take it for."""
    dense, supply, start = polled.dense, polled.supply, polled.start
    last_s = float(start.t_s[-1])
    late_from_s = last_s - max(LEAST_LATE_S, STEADY_PART * last_s)
    late = (dense.t_s >= late_from_s) & (dense.t_s <= last_s)
    weights = dense.step_s[late]
    steady = float(np.average(dense.amps[late], weights=weights))
    own_ripple = math.sqrt(float(np.average((dense.amps[late] - steady) ** 2, weights=weights)))
    averages = dense.averages(dense.amps)
    half = 0.5 * supply.window_s
    middles = np.arange(half - supply.window_s + 1e-4, last_s, 1e-3)
    over = averages.over(middles, supply.window_s)
    seen = float(np.std(over[middles >= late_from_s]))
    inrush = float(np.max(dense.amps))
    smooth = averages.over(middles, SMOOTH_S)
    high = smooth > steady + RUN_UP_LEFT * (float(np.max(smooth)) - steady)
    after = np.flatnonzero(~high & (middles > middles[np.argmax(smooth)]))
    run_up = 0.5 * float(middles[np.flatnonzero(high)[-1]] + middles[after[0]]) if len(after) else math.nan
    until = dense.t_s <= last_s
    return {
        "peak_amps": (float(np.max(polled.read_amps)), float(np.max(over)), inrush),
        "run_up_s": (run_up,),
        "steady_amps": (steady,),
        "energy_j": (float(np.sum((dense.volts * dense.amps * dense.step_s)[until])),),
        "ripple_amps": (math.hypot(seen, supply.noise_a, supply.step_a / math.sqrt(12)), own_ripple),
    }


def compare(asked: tuple[int, int, float], folder: Path) -> list[Compared]:
    seed, number, per_s = asked
    drawn = draw(seed, number, "free")
    slow = random.Random(f"{seed}/{number}/slow").random() < 0.5
    on_s = min(ON_S[1], max(ON_S[0], 10 * drawn.tau_s))
    polled = start_once(drawn, per_s=per_s, on_s=on_s, noise_seed=1, slow=slow)
    told, true = figures_of(polled.start, lead_ohm=0.0, zero=polled.zero).values, true_figures(polled)
    found = []
    for kind in FIGURES:
        fit = told.get(kind.name)
        found.append(
            Compared(
                name=kind.name,
                value=None if fit is None else fit.value,
                low=math.nan if fit is None else fit.low,
                high=math.nan if fit is None else fit.high,
                true=true[kind.name],
            )
        )
    return found


def measure(motors: int, seed: int, workers: int) -> str:
    """A table: per figure and pace how far it is off, as shares of the true one, and how many intervals hold it."""
    by_pace = {per_s: each(compare, [(seed, number, per_s) for number in range(motors)], workers) for per_s in PACES}
    lines = [
        "| figure | readings/s | told | error: median (5 % to 95 %) | half of interval, median | interval holds it |",
        "|---|---|---|---|---|---|",
    ]
    for kind in FIGURES:
        names = (kind.label, *FURTHER.get(kind.name, ()))
        for which, name in enumerate(names):
            lines += [
                _row(name, per_s, [one for start in starts for one in start if one.name == kind.name], which)
                for per_s, starts in by_pace.items()
            ]
    return "\n".join(lines)


def _row(name: str, per_s: float, found: list[Compared], which: int) -> str:
    told = [one for one in found if one.value is not None and math.isfinite(one.true[which])]
    beginning = f"| {name} | {per_s:.0f} | {rate(len(told), len(found))} |"
    if not told:
        return f"{beginning} none told | | |"
    errors = [100 * (one.value / one.true[which] - 1) for one in told if one.value is not None and one.true[which]]
    low, middle, high = np.percentile(errors, (5, 50, 95))
    halves = np.median([50 * (one.high - one.low) / abs(one.true[which]) for one in told if one.true[which]])
    held = (
        rate(sum(one.low <= one.true[which] <= one.high for one in told), len(told)) if which == 0 else "not about it"
    )
    return f"{beginning} {middle:+.2g} % ({low:+.2g} to {high:+.2g}) | {halves:.2g} % | {held} |"
