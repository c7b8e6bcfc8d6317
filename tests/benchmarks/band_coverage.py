"""`python -m tests.benchmarks.band_coverage [--lots N] [--seed N] [--workers N]`: what limits hold, by counting.

A band claims a share of all units with a confidence: of many lots, each with limits made from its own known good units,
at least that share must have that many units inside. Counted on units that no limits were made from, through the
shipped figures, limits and judging. Twenty lots share a type of motor, and with it the units that are counted.
Seeds 1 to 99 are for tuning.
"""

import argparse
import sys
import time
from functools import partial
from pathlib import Path
from statistics import fmean

import numpy as np

from benchlog.motor.judging import about_starts
from benchlog.motor.limits import CurveBand, StartLimits, judge, limits_from
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import FIGURES, StartFigures, figures_of
from benchlog.motor.startup import Zero, start_of_readings
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.band_counts import CAUSES, CONFIDENCE, COVERAGE, CURVE, KNOWN_GOOD, ONE_START, Counts, report
from tests.benchmarks.band_population import (
    FAULTS,
    POPULATIONS,
    SETTLE_S,
    WINDOW_S,
    Starts,
    draw_starts,
    draw_type,
)

LOTS_A_TYPE = 20
COUNTED, COUNTED_CURVES, COUNTED_FAULTS, JUDGED = 400, 300, 40, 2
"""Units a type; units a lot and fault. A share counted on 300 shifts the share of lots by 0.2 % at the most (drawn)."""


Unit = tuple[list[StartFigures], list[Curve]]


def units_of(starts: Starts) -> list[Unit]:
    """Through the shipped figures."""
    type_, found = starts.type, []
    sigma_a = float(np.hypot(type_.noise_a, type_.step_a / np.sqrt(12)))
    zero = Zero(amps=0.0, sigma_amps=sigma_a, u_amps=type_.noise_a, step_amps=type_.step_a)
    volts = np.full(starts.t_s.shape[-1], type_.volts)
    for t_s, amps in zip(starts.t_s, starts.amps, strict=True):
        figures, curves = [], []
        for number, (at_s, read) in enumerate(zip(t_s + 0.5 * WINDOW_S, amps, strict=True)):
            start = start_of_readings(
                at_s,
                at_s,
                volts,
                read,
                set_volts=type_.volts,
                began_s=0.0,
                window_s=WINDOW_S,
                settle_s=SETTLE_S,
                name="start",
            )
            figures.append(figures_of(start, lead_ohm=0.0, zero=zero))
            curves.append(
                Curve(
                    name="start",
                    run=1,
                    number=number + 1,
                    t_s=at_s - 0.5 * WINDOW_S,
                    volts=volts,
                    amps=read,
                    window_s=WINDOW_S,
                )
            )
        found.append((figures, curves))
    return found


def one_type(seed: int, asked: tuple[int, str], folder: Path) -> Counts:
    """`asked`: number of the type, population."""
    number, population = asked
    source = np.random.default_rng([seed, number, POPULATIONS.index(population)])
    type_, starts_each = draw_type(source), int(source.integers(1, 6))

    def draw(units: int, fault: str = "good") -> list[Unit]:
        return units_of(draw_starts(type_, units, starts_each, source, population=population, fault=fault))

    counted = draw(COUNTED)
    told = {kind.name: (_means(counted, kind.name), _firsts(counted, kind.name)) for kind in FIGURES}
    faulty = {fault: draw(COUNTED_FAULTS, fault) if fault != "good" else counted for fault in FAULTS}
    counts = Counts()
    for lot in range(LOTS_A_TYPE):
        known = draw(max(KNOWN_GOOD))
        for n in KNOWN_GOOD:
            limits = _limits(known[:n])
            _count_figures(counts, population, n, limits, told, several=starts_each > 1)
            if limits.curve is None:
                counts.none[population, CURVE, n] += 1
            else:
                counts.shares[population, CURVE, n].append(_curves_inside(counted[:COUNTED_CURVES], limits.curve))
            for fault, units in faulty.items():
                for figures, curves in units[lot * JUDGED : (lot + 1) * JUDGED]:
                    judged = judge(figures, curves, limits)
                    counts.judged[population, fault, n, judged.passed] += 1
                    if judged.passed is False and fault in CAUSES:
                        counts.named[population, fault, n] += CAUSES[fault] in judged.sentence
                    counts.said[population, fault, judged.sentence.split(" (")[0]] += n == max(KNOWN_GOOD)
    return counts


def _limits(known: list[Unit]) -> StartLimits:
    return limits_from(
        [figures for figures, _ in known],
        [curves for _, curves in known],
        test="counted",
        version=1,
        coverage=COVERAGE,
        confidence=CONFIDENCE,
        runs=(),
    )


def _means(units: list[Unit], name: str) -> np.ndarray:
    values = [[one.values[name].value for one in figures if name in one.values] for figures, _ in units]
    return np.array([fmean(told) for told in values if told])


def _firsts(units: list[Unit], name: str) -> np.ndarray:
    return np.array([figures[0].values[name].value for figures, _ in units if name in figures[0].values])


def _count_figures(
    counts: Counts,
    population: str,
    n: int,
    limits: StartLimits,
    told: dict[str, tuple[np.ndarray, np.ndarray]],
    *,
    several: bool,
) -> None:
    for kind in FIGURES:
        band = limits.bands.get(kind.name)
        if band is None:
            counts.none[population, kind.label, n] += 1
            continue
        low, high = -np.inf if band.low is None else band.low, np.inf if band.high is None else band.high
        means, firsts = told[kind.name]
        counts.shares[population, kind.label, n].append(float(np.mean((means >= low) & (means <= high))))
        if several:
            wider = about_starts(band, limits.within.get(kind.name, 0.0), 1, limits.starts_each)
            low, high = -np.inf if wider.low is None else wider.low, np.inf if wider.high is None else wider.high
            counts.shares[population, ONE_START, n].append(float(np.mean((firsts >= low) & (firsts <= high))))


def _curves_inside(units: list[Unit], band: CurveBand) -> float:
    """As judging does, for all at once: each curve's times are moved clear of the others'."""
    t_s, low, high = np.array(band.t_s), np.array(band.low_amps), np.array(band.high_amps)
    curves = [curve for _, of_unit in units for curve in of_unit]
    clear_s = 10.0 * np.arange(len(curves))[:, None]
    read_s = np.concatenate(np.stack([curve.t_s for curve in curves]) + clear_s)
    amps = np.interp(t_s + clear_s, read_s, np.concatenate([curve.amps for curve in curves]))
    means = amps.reshape(len(units), -1, len(t_s)).mean(axis=1)
    return float(np.mean(np.all(((means >= low) | (low == 0)) & (means <= high), axis=1)))


def main(argv: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.band_coverage", description=__doc__)
    parser.add_argument("--lots", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1005)
    parser.add_argument("--population", choices=POPULATIONS, help="one of them alone")
    parser.add_argument("--workers", type=int, default=2)
    chosen = parser.parse_args(argv)
    began_s = time.perf_counter()
    types = max(1, chosen.lots // LOTS_A_TYPE)
    populations = POPULATIONS if chosen.population is None else (chosen.population,)
    asked = [(number, population) for number in range(types) for population in populations]
    counts = Counts()
    for found in each(partial(one_type, chosen.seed), asked, chosen.workers):
        counts.add(found)
    print(
        f"{types * LOTS_A_TYPE:,} lots of each population, seed {chosen.seed}\n\n"
        f"{report(counts, populations, chosen.seed)}"
    )
    sys.stderr.write(f"{time.perf_counter() - began_s:.0f} s\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
