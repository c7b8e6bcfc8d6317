"""The winding's temperature: the guard's bound, which may not be too low, and the estimate, which may say nothing.

Motors on paper: a thermal network is driven through kicks, holds and rests, with copper that warms, contacts that step
and a noisy readback; the shipped budget and thermometer see the readings only. scipy's matrix exponential solves the
network, of two bodies for even numbers and of three (iron between winding and housing) for odd ones.
All heat, of the contact too, goes into the winding: the worst case.

Stated population: V²/R / C_w at most 60 K/s, C_w 0.2 to 10 J/K, 3 to 40 K/W from winding to housing, the bodies around
the winding ten times its heat or more, contact up to twice as bad or half as good after a movement.
"""

import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median

import numpy as np
import numpy.typing as npt
from scipy.linalg import expm

from benchlog.motor.meter import Meter
from benchlog.motor.motion import Motion
from benchlog.motor.temperature import Thermometer
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import Layer, Limits, intersect
from drivers.supply import Reading, Regulation
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import log_uniform
from tests.benchmarks.accuracy.rows import Row, rate

AMBIENT_C = 20.0
COPPER_K = 235.0
CYCLES = 6
KICK_S, REST_S, HOLD_S, LONG_REST_S = 0.15, 1.5, 1.5, 2.0
LIMIT_C = 140.0
PROBE_SHARE = 0.3
STATED_K_S = 60.0
KNOWN_SHARE = 0.02
Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cold:
    """A motor on paper. Ω at ambient, rated V, the network's matrix (1/s) and the J/K of its first body."""

    ohms: float
    rated: float
    matrix: Floats
    winding_j_k: float
    contact_ohm: float
    steps: bool
    period_s: float
    noise_v: float
    noise_a: float
    step: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Heated:
    """K above the truth, smallest and median; the estimate: how often it was given, wrong, and whether R was good."""

    moves: bool
    stall_watts: float
    least_k: float
    median_k: float
    estimated: int
    known: int
    within: int
    within_known: int
    outside: int
    looked: int


def draw_cold(source: random.Random, *, bodies: int, fastest_k_s: float, slowest_k_s: float, iron: float) -> Cold:
    """One motor; `iron`: the least heat of the body next to the winding, in windings."""
    while True:
        rated, ohms = log_uniform(source, 1.5, 24.0), log_uniform(source, 0.3, 40.0)
        rate_k_s = log_uniform(source, slowest_k_s, fastest_k_s)
        stall_watts = rated**2 / ohms
        winding = min(10.0, max(0.2, stall_watts / rate_k_s))
        reached_k_s = stall_watts / winding
        fits = reached_k_s <= fastest_k_s and (fastest_k_s <= STATED_K_S or reached_k_s > STATED_K_S)
        if fits and 0.08 <= rated / ohms <= 10.0:
            break
    heats = [winding, winding * log_uniform(source, iron, 20 * iron)]
    ways = [log_uniform(source, 3.0, 40.0), log_uniform(source, 5.0, 300.0)]
    if bodies == 3:
        heats.append(winding * log_uniform(source, 10.0, 200.0))
        first = source.uniform(0.3, 0.9)
        ways = [ways[0] * first, ways[0] * (1 - first), ways[1]]
    matrix = np.zeros((bodies + 1, bodies + 1))
    for k, way in enumerate(ways):
        flow = 1 / way
        matrix[k, k] -= flow / heats[k]
        if k + 1 < bodies:
            matrix[k, k + 1] += flow / heats[k]
            matrix[k + 1, k] += flow / heats[k + 1]
            matrix[k + 1, k + 1] -= flow / heats[k + 1]
    matrix[0, bodies] = 1 / winding  # times watts
    step = source.choice((0.001, 0.001, 0.002, 0.005))
    return Cold(
        ohms=ohms,
        rated=rated,
        matrix=matrix,
        winding_j_k=winding,
        contact_ohm=ohms * (source.uniform(0.0, 1.0) if source.random() < 0.25 else source.uniform(0.0, 0.1)),
        steps=source.random() < 0.5,
        period_s=1 / log_uniform(source, 5.0, 100.0),
        noise_v=log_uniform(source, 0.0002, 0.005),
        noise_a=log_uniform(source, 0.0002, 0.005),
        step=step,
    )


def script(period_s: float) -> Iterator[tuple[float, float, bool]]:
    """s, share of the rated volts, whether the shaft may move at its beginning; first a probe of three readings."""
    yield REST_S, 0.0, False
    yield 3 * period_s, PROBE_SHARE, False
    yield REST_S, 0.0, False
    for _ in range(CYCLES):
        yield KICK_S, 1.0, True
        yield REST_S, 0.0, False
        yield HOLD_S, 1.0, False
        yield LONG_REST_S, 0.0, False


def heat(asked: tuple[int, int, float, float, float], folder: Path) -> Heated:
    """One motor through the script. The guard's bound ends a drive at its ceiling, as in a run."""
    seed, number, slowest_k_s, fastest_k_s, iron = asked
    source = random.Random(f"{seed}/{number}/heat/{fastest_k_s}/{iron}")
    bodies = 2 + number % 2
    cold = draw_cold(source, bodies=bodies, fastest_k_s=fastest_k_s, slowest_k_s=slowest_k_s, iron=iron)
    reference = cold.ohms + cold.contact_ohm
    budget = Budget(intersect({Layer.MOTOR: Limits(winding_c=LIMIT_C)}), ambient_c=AMBIENT_C, rated_volts=cold.rated)
    budget.learn(reference)
    meter = Meter(
        zero_volts=0.0, zero_amps=0.0, sigma_volts=cold.noise_v, sigma_amps=cold.noise_a, step_volts=cold.step,
        step_amps=cold.step, count=8,
    )  # fmt: skip
    stall_watts = cold.rated**2 / reference
    thermometer = Thermometer(ambient_c=AMBIENT_C, stall_watts=stall_watts, reference_ohm=reference, meter=meter)
    probe_v = PROBE_SHARE * cold.rated
    unsure = 3 * (meter.u_volts / probe_v + meter.u_amps * reference / probe_v)
    pieces = max(1, round(cold.period_s / 0.02))
    spans: dict[float, Floats] = {}
    state = np.zeros(bodies + 1)
    now_s, contact = 0.0, cold.contact_ohm
    over: list[float] = []
    counts = dict.fromkeys(("estimated", "known", "within", "within_known", "outside", "looked"), 0)
    off_v, off_a = source.uniform(-0.003, 0.003), source.uniform(-0.003, 0.003)
    for span_s, share, may_move in script(cold.period_s):
        if budget.winding_c(now_s) > LIMIT_C:
            share = 0.0
        moved = may_move and share > 0 and cold.steps
        if moved:
            contact = cold.ohms * source.choice((source.uniform(0.0, 0.2), source.uniform(0.5, 1.0)))
        readings = max(1, round(span_s / cold.period_s))
        each_s = span_s / readings
        flow = spans.setdefault(each_s, expm(cold.matrix * (each_s / pieces)))
        for first in range(readings):
            drive = share > 0 and budget.winding_c(now_s) <= LIMIT_C
            volts = amps = 0.0
            for _ in range(pieces):
                if drive:
                    ohm = cold.ohms * (COPPER_K + AMBIENT_C + state[0]) / (COPPER_K + AMBIENT_C) + contact
                    volts = share * cold.rated
                    amps = volts / ohm
                state[bodies] = volts * amps
                state = flow @ state
            now_s += each_s
            true_c = AMBIENT_C + float(state[0])
            seen_v = cold.step * round((volts + off_v + source.gauss(0.0, cold.noise_v)) / cold.step)
            seen_a = cold.step * round((amps + off_a + source.gauss(0.0, cold.noise_a)) / cold.step)
            set_volts = share * cold.rated if drive else 0.0
            reading = Reading(
                sent_s=now_s, received_s=now_s, volts=seen_v, amps=seen_a, set_volts=set_volts,
                set_amps=10.0, output_on=drive, regulation=Regulation.CV,
            )  # fmt: skip
            budget.charge(reading, Motion.LOCKED)
            over.append(budget.winding_c(now_s) - true_c)
            found = thermometer.feed(now_s, seen_v, seen_a, driven=drive, still=not (moved and first == 0))
            counts["looked"] += 1
            counts["outside"] += not found.low_c <= true_c <= found.high_c
            near = abs(found.winding_c - true_c) <= 10.0
            known = drive and share == 1.0 and not cold.steps and unsure <= KNOWN_SHARE
            counts["known"] += known
            counts["within_known"] += known and near and found.identifiable
            counts["estimated"] += found.identifiable
            counts["within"] += found.identifiable and near
    return Heated(moves=cold.steps, stall_watts=stall_watts, least_k=min(over), median_k=median(over), **counts)


def measure(motors: int, seed: int, workers: int) -> list[Row]:
    """The stated population, then motors outside it: faster at stall, and light iron around the winding."""
    stated = each(heat, [(seed, k, 0.5, STATED_K_S, 10.0) for k in range(motors)], workers)
    fast = each(heat, [(seed, k, STATED_K_S, 3 * STATED_K_S, 10.0) for k in range(motors // 8)], workers)
    light = each(heat, [(seed, k, 0.5, STATED_K_S, 1.0) for k in range(motors // 8)], workers)
    rows = [
        bound_row("bound of the winding below the truth", "≤ 1 in 1,000, never by more than 5 K", stated),
        bound_row("the same, faster at stall than stated (60 to 180 K/s)", "none: outside what is covered", fast),
        bound_row("the same, iron of 1 to 20 windings' heat next to it", "none: outside what is covered", light),
    ]
    unmoved = [one for one in stated if not one.moves]
    for what, ones in (("shaft unmoved", unmoved), ("shaft moves, contact steps", [m for m in stated if m.moves])):
        given, looked = sum(one.estimated for one in ones), sum(one.looked for one in ones)
        rows.append(
            Row(
                what=f"estimate of the winding, where one is given, within ± 10 K: {what}",
                goal="all; else “not identifiable”",
                reached=rate(sum(one.within for one in ones), given),
                count=given,
                note=f"readings of {len(ones):,} motors; given at {rate(given, looked)}; truth outside the interval "
                f"{rate(sum(one.outside for one in ones), looked)}",
            )
        )
    known = sum(one.known for one in unmoved)
    rows.append(
        Row(
            what="driven readings with R known to 2 %, shaft unmoved: estimate given and within ± 10 K",
            goal="all",
            reached=rate(sum(one.within_known for one in unmoved), known),
            count=known,
            note=f"readings of {sum(one.known > 0 for one in unmoved):,} motors",
        )
    )
    return rows


def bound_row(what: str, goal: str, ones: list[Heated]) -> Row:
    """Counted in motors: below at any reading."""
    return Row(
        what=what,
        goal=goal,
        reached=rate(sum(one.least_k < 0 for one in ones), len(ones), per=1000),
        count=len(ones),
        note=f"worst {min(one.least_k for one in ones):+.1f} K; below by more than 5 K "
        f"{sum(one.least_k < -5 for one in ones)}; median over-estimate "
        f"{median(one.median_k for one in ones):.0f} K",
    )
