"""Curves that several starts fill in together, against the dense truth averaged over the supply's window."""

import math
import random
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from benchlog.motor.interleave import Interleaved, interleaved
from benchlog.motor.overlay import Curve
from benchlog.motor.startup import Values
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import draw
from tests.benchmarks.accuracy.rows import rate
from tests.benchmarks.start_figures.starting import Polled, start_once

PER_S = 20.0
STARTS = (4, 8)
SAME_ANGLE = -1.0
DIFFER = (SAME_ANGLE, 0.0, 0.05, 0.1, 0.2)
"""Standard deviation, from start to start, of a motor's resistance, friction and inertia, each by itself. The shaft
lies at another angle each time, so that the brushes do too, but for SAME_ANGLE."""
ON_S = (1.5, 3.0)
FIRST_READ_S = 0.01
"""s, middle of an average: where a curve begins to be held against the truth whose first readings are delayed too; else
a reading later, since every start's second reading comes no sooner."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """One set. Errors as shares of the true surge: rms and worst, of the starts together and of the first alone."""

    refused: bool
    why: str
    together: tuple[float, float]
    alone: tuple[float, float]


def compare(asked: tuple[int, int, int, float, bool], folder: Path) -> Filled:
    seed, number, starts, differ, at_once = asked
    drawn = draw(seed, number, "free")
    source = random.Random(f"{seed}/{number}/{starts}/{differ}")
    slow = source.random() < 0.5
    on_s = min(ON_S[1], max(ON_S[0], 6 * drawn.tau_s))
    delays = [k / starts / PER_S for k in range(starts)]
    polled = [
        start_once(
            drawn,
            per_s=PER_S,
            on_s=on_s,
            noise_seed=k,
            delay_s=delay_s,
            at_once=at_once,
            slow=slow,
            angle_rad=1.0 if differ == SAME_ANGLE else None,
            changes={name: math.exp(source.gauss(0, max(differ, 0.0))) for name in ("ohms", "coulomb_nm", "inertia")},
        )
        for k, delay_s in enumerate(delays)
    ]
    told = interleaved([one.curve for one in polled], delays)
    return _filled(polled, told, FIRST_READ_S + (1 / PER_S if at_once else 0.0))


def _filled(polled: list[Polled], told: Interleaved, from_s: float) -> Filled:
    first = polled[0]
    averages = first.dense.averages(first.dense.amps)
    last_s = min(float(one.curve.t_s[-1]) for one in polled)
    at_s = np.arange(from_s, last_s - first.start.within_s, 1e-3)
    true = averages.over(at_s, first.start.window_s)
    surge = float(np.max(averages.over(np.arange(FIRST_READ_S, last_s, 1e-3), first.start.window_s)) - true[-1])
    alone = _error(first.curve, at_s, true, first, surge)
    together = (math.nan, math.nan) if told.curve is None else _error(told.curve, at_s, true, first, surge)
    return Filled(refused=told.curve is None, why=told.why, together=together, alone=alone)


def _error(curve: Curve, at_s: Values, true: Values, first: Polled, surge: float) -> tuple[float, float]:
    """Straight lines between its points. Where a reading lies between question and reply is the same for all: it is
    taken out, and so is the zero."""
    off_s = first.start.within_s
    read = np.interp(at_s, curve.t_s - off_s, curve.amps - first.zero.amps)
    error = (read - true) / surge
    return float(np.sqrt(np.mean(error**2))), float(np.max(np.abs(error)))


def measure(motors: int, seed: int, workers: int) -> str:
    lines = [
        f"{PER_S:g} readings/s a start. Errors as shares of the surge, against the first start's dense truth averaged "
        "over\nthe window, from where each start has readings: median and 95th of the sets.\n",
        "| starts | they differ by | delayed from | refused | together: rms; worst | one alone: rms; worst |",
        "|---|---|---|---|---|---|",
    ]
    for starts in STARTS:
        for differ, at_once in [*((differ, True) for differ in DIFFER), (0.0, False)]:
            sets = each(compare, [(seed, number, starts, differ, at_once) for number in range(motors)], workers)
            given = [one for one in sets if not one.refused]
            lines.append(
                f"| {starts} | {_words(differ)} | {'second' if at_once else 'first'} reading | "
                f"{rate(len(sets) - len(given), len(sets))} | "
                f"{_told([one.together for one in given])} | {_told([one.alone for one in given])} |"
            )
    return "\n".join(lines)


def _words(differ: float) -> str:
    return "nothing, not even the shaft's angle" if differ == SAME_ANGLE else f"{differ:.0%} and the shaft's angle"


def _told(errors: list[tuple[float, float]]) -> str:
    if not errors:
        return "none given"
    rms, worst = np.array(errors).T
    return "; ".join(f"{np.median(one):.2%} (95th {np.percentile(one, 95):.2%})" for one in (rms, worst))
