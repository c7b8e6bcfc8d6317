"""How often a drift is told right, wrong or not at all, and how often the slope's interval holds the true one.

An hour of one reading a second; the current wanders by a share of itself and remembers that for some seconds.

    python -m tests.benchmarks.drift_verdicts [--times 400] [--seed 1]
"""

import argparse
from collections import Counter

import numpy as np

from benchlog.motor.drift import drift
from tests.benchmarks.accuracy.rows import rate
from tests.motor.test_drift import HOUR, Floats, wandering

TAIL_S = 600.0
COURSES: dict[str, Floats] = {
    "flat": 0.3 + 0 * HOUR,
    "falling-then-flat": 0.17 + 0.33 * np.exp(-HOUR / 300),
    "rising": 0.2 * (1 + 0.3 * HOUR / 3600),
    "falling": 0.2 * (1 - 0.3 * HOUR / 3600),
}
"""The true verdict of each is its name."""


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=400)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    print("| true | wander, memory | right | wrong | undetermined | slope in its interval |\n|---|---|---|---|---|---|")
    for true, amps in COURSES.items():
        slope = float(np.polyfit(HOUR[-600:], amps[-600:], 1)[0])
        for share, over_s in ((0.01, 0.0), (0.01, 5.0), (0.01, 30.0), (0.01, 120.0), (0.03, 5.0)):
            source = np.random.default_rng(asked.seed)
            told: Counter[str] = Counter()
            held = 0
            for _ in range(asked.times):
                found = drift(HOUR, amps * (1 + wandering(source, HOUR.size, over_s, share)), for_s=TAIL_S)
                told[found.verdict.value] += 1
                assert found.slope_low is not None
                assert found.slope_high is not None
                held += found.slope_low <= slope <= found.slope_high
            wrong = asked.times - told[true] - told["undetermined"]
            row = [rate(count, asked.times) for count in (told[true], wrong, told["undetermined"], held)]
            print(f"| {true} | {share:.0%}, {over_s:g} s | " + " | ".join(row) + " |")


if __name__ == "__main__":
    main()
