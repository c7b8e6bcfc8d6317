"""Which share of motors the heat bound lets run for a day, in 25 °C: what unknown mass, volts and class do to it.

    python -m tests.benchmarks.run_in_share [--motors 20000] [--seed 1]

Motors as in the accuracy benchmark (R 0.3 to 40 Ω, 1.5 to 24 V, 0.08 to 10 A at stall), stall over no-load current 4 to
30, log-uniform. Friction is taken as the same at half the volts. Nothing is simulated: it is the bound's own end value.
"""

import argparse
import random
from collections.abc import Callable

from benchlog.motor.heat import body_of
from tests.benchmarks.accuracy.population import log_uniform
from tests.benchmarks.accuracy.rows import rate

AMBIENT_C, MARGIN_K = 25.0, 2.0
CLASSES = {"A": 90.0, "E": 105.0, "B": 115.0, "F": 140.0}


def rise_k(stall_watts: float, ratio: float, *, mass_g: float | None = None, volts_share: float = 1.0) -> float:
    """K that the bound comes to after any time of running at no load."""
    return stall_watts / ratio * volts_share * body_of(stall_watts, mass_g).all_k_w


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--motors", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    source, motors = random.Random(asked.seed), list[tuple[float, float]]()
    while len(motors) < asked.motors:
        volts, ohm = log_uniform(source, 1.5, 24.0), log_uniform(source, 0.3, 40.0)
        if 0.08 <= volts / ohm <= 10.0:
            motors.append((volts**2 / ohm, log_uniform(source, 4.0, 30.0)))
    kinds: dict[str, Callable[[float, float], float]] = {
        "mass unknown, rated volts": lambda stall, k: rise_k(stall, k),
        "mass unknown, half the volts": lambda stall, k: rise_k(stall, k, volts_share=0.5),
        "1 W at stall a gram": lambda stall, k: rise_k(stall, k, mass_g=stall),
        "0.5 W at stall a gram": lambda stall, k: rise_k(stall, k, mass_g=stall / 0.5),
        "0.25 W at stall a gram": lambda stall, k: rise_k(stall, k, mass_g=stall / 0.25),
    }
    for what, rise in kinds.items():
        for name, ceiling_c in CLASSES.items():
            room_k = ceiling_c - AMBIENT_C - MARGIN_K
            print(f"{what}, class {name}: {rate(sum(rise(*one) < room_k for one in motors), len(motors))}")
    for stall, k, mass in (
        (2.0, 8.3, None),
        (18.0, 8.3, None),
        (18.0, 8.3, 60.0),
        (18.0, 20.0, None),
        (60.0, 8.3, 250.0),
    ):
        end = f"{rise_k(stall, k, mass_g=mass):.0f} K"
        print(f"{stall:g} W at stall, 1/{k:g} of its current at no load, {mass or '?'} g: {end}")


if __name__ == "__main__":
    main()
