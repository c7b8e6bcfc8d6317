"""Hundreds of starts laid over one another: how long it takes, and how well triggers that are off are found."""

import math
import time

import numpy as np

from benchlog.motor.overlay import Curve, overlay
from benchlog.motor.startup import Values
from tests.motor.five_solvers import VOLTS, WINDOW_S, Exact

MANY, READINGS = 500, 2000
SIGMA_A = 0.002
SETS = ((2, 100.0), (5, 20.0), (5, 50.0), (5, 100.0), (20, 20.0), (20, 50.0), (20, 100.0), (500, 100.0))


def starts(source: np.random.Generator, count: int, per_s: float, readings: int) -> tuple[list[Curve], Values]:
    """Of the motor that five solvers agree on, triggers off by up to half a reading; and by how much, s."""
    exact, pace_s = Exact(case="C"), 1 / per_s
    late_s = source.uniform(-0.5, 0.5, count) * pace_s
    curves = []
    for number in range(count):
        t_s = source.uniform(-0.1, -0.1 + pace_s) + pace_s * np.arange(readings)
        curves.append(
            Curve(
                name=f"start {number + 1}",
                run=1,
                number=number + 1,
                t_s=t_s - late_s[number],
                volts=np.full(readings, VOLTS),
                amps=exact.averaged(t_s) + source.normal(0, SIGMA_A, readings),
                window_s=WINDOW_S,
            )
        )
    return curves, late_s - np.mean(late_s)


def measure(motors: int, seed: int, workers: int) -> str:
    """`motors` and `workers` change nothing here."""
    source = np.random.default_rng(seed)
    many, _ = starts(source, MANY, 1000.0, READINGS)
    took_s, used_s = [], []
    for _ in range(5):
        began_s, began_cpu_s = time.perf_counter(), time.process_time()
        overlay(many)
        took_s.append(time.perf_counter() - began_s)
        used_s.append(time.process_time() - began_cpu_s)
    lines = [
        f"{MANY} starts of {READINGS:,} readings: {min(took_s):.2f} to {max(took_s):.2f} s, "
        f"{min(used_s):.2f} s of processors at best\n",
        "Rms error of the trigger, ms, of a motor whose run-up has a time constant of 39 ms:\n",
        "| starts | readings/s | as triggered | as laid | kept their trigger |",
        "|---|---|---|---|---|",
    ]
    for count, per_s in SETS:
        before, after, kept, of = 0.0, 0.0, 0, 0
        for _ in range(max(2, 100 // count)):
            curves, late_s = starts(source, count, per_s, int(1.5 * per_s))
            offsets = overlay(curves).offsets_s
            before += float(np.sum(late_s**2))
            after += float(np.sum((offsets - late_s) ** 2))
            kept, of = kept + int(np.sum(offsets == 0)), of + count
        lines.append(
            f"| {count} | {per_s:.0f} | {1e3 * math.sqrt(before / of):.2f} | {1e3 * math.sqrt(after / of):.2f} | "
            f"{kept} of {of} |"
        )
    return "\n".join(lines)
