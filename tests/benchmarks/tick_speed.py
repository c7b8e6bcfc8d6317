"""One tick of motion, heat and guard, and as a ratio against a bare loop over the same readings.

The tick: the guard judges a reading (budget and heat bound in it), the thermometer is fed, a coast of three points is
looked at, and the next setpoint is put before the guard. The bare loop only sums the power. Pulses of a motor that is
kicked for minutes are in the bound.

    python -m tests.benchmarks.tick_speed [--readings 20000]
"""

import argparse
import statistics
import time
from collections.abc import Callable, Sequence

from benchlog.motor.meter import Meter
from benchlog.motor.motion import CoastPoint, Held, Motion, look_at_coast
from benchlog.motor.temperature import Thermometer
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.commands import Apply, Switch
from benchlog.recovery.guard import Guard
from drivers.supply import Capabilities, Reading, Regulation

RATED_V, COLD_OHM, PERIOD_S = 12.0, 24.0, 0.02
METER = Meter(
    zero_volts=0.0, zero_amps=0.0, sigma_volts=0.001, sigma_amps=0.001, step_volts=0.001, step_amps=0.001, count=8
)
KICK, REST = Apply(volts=2.0, amps=1.0, belief=Motion.LOCKED), Apply(volts=0.0, amps=1.0, belief=Motion.LOCKED)
CYCLE, DRIVEN = 150, 25
"""Readings: 0.5 s driven of every 3 s, at a sixth of the rated volts, so that no ceiling ends it."""


def readings(count: int) -> list[Reading]:
    """As a supply would give them, every 20 ms."""
    made = []
    for k in range(count):
        volts = KICK.volts if 1 <= k % CYCLE <= DRIVEN else 0.0
        made.append(
            Reading(
                sent_s=k * PERIOD_S,
                received_s=k * PERIOD_S + 0.002,
                volts=volts,
                amps=volts / COLD_OHM,
                set_volts=volts,
                set_amps=1.0,
                output_on=True,
                regulation=Regulation.CV,
            )
        )
    return made


def bare(ones: Sequence[Reading]) -> list[float]:
    """s for each reading of a loop that does nothing but add the energy up."""
    spent, joules = [], 0.0
    for one in ones:
        began_s = time.perf_counter()
        joules += one.volts * one.amps * PERIOD_S
        spent.append(time.perf_counter() - began_s)
    return spent


def ticks(ones: Sequence[Reading], capabilities: Capabilities) -> list[float]:
    """s for each tick. Raises RuntimeError where the guard trips or refuses: it would not be a tick of a run."""
    ceilings = intersect({Layer.MOTOR: Limits(winding_c=140.0)})
    budget = Budget(ceilings, ambient_c=20.0, rated_volts=RATED_V)
    budget.learn(COLD_OHM)
    guard = Guard(ceilings, capabilities, budget)
    thermometer = Thermometer(ambient_c=20.0, stall_watts=RATED_V**2 / COLD_OHM, reference_ohm=COLD_OHM, meter=METER)
    guard.sent(REST, -2.0)
    guard.sent(Switch(on=True), -1.0)
    spent = []
    for k, one in enumerate(ones):
        command = KICK if k % CYCLE < DRIVEN else REST
        began_s = time.perf_counter()
        trip = guard.judge(one)
        found = thermometer.feed(one.received_s, one.volts, one.amps, driven=one.set_volts > 0, still=True)
        points = [CoastPoint(volts=one.volts, amps=one.amps, since_s=0.02 * n) for n in range(3)]
        look_at_coast(Held(volts=RATED_V, amps=0.2), points, small_amps=0.03, reference_ohm=COLD_OHM, meter=METER)
        refused = guard.admit(command)
        spent.append(time.perf_counter() - began_s)
        if trip is not None or refused is not None:
            raise RuntimeError(f"{k}: {trip} {refused} {found}")
        guard.sent(command, one.received_s)
    return spent


def timed(work: Callable[[], list[float]], times: int = 3) -> list[float]:
    """The quickest of a few goes: other programs only slow it down."""
    return min((work() for _ in range(times)), key=sum)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--readings", type=int, default=20000)
    ones = readings(parser.parse_args().readings)
    capabilities = Capabilities(
        identity="bench", dialect="bench", volts_max=60.0, amps_max=20.0, volts_step=0.001, amps_step=0.001,
        latches=frozenset(), window_s=0.02, settle_s=0.012, reply_s=0.002,
    )  # fmt: skip
    alone, tick = timed(lambda: bare(ones)), timed(lambda: ticks(ones, capabilities))
    quantiles = statistics.quantiles(tick, n=100)
    print(f"{len(ones):,} readings, goal 100 µs a tick")
    print(f"tick: mean {1e6 * statistics.fmean(tick):.1f}, p50 {1e6 * quantiles[49]:.1f}, ", end="")
    print(f"p99 {1e6 * quantiles[98]:.1f}, worst {1e6 * max(tick):.0f} µs")
    plain = statistics.median(alone)
    print(f"bare loop: p50 {1e6 * plain:.2f} µs; ratio of both p50 {quantiles[49] / plain:.0f}")


if __name__ == "__main__":
    main()
