"""`python -m tests.benchmarks.accuracy [--part NAME] [--motors N] [--seed N] [--workers N]`: the table of accuracy.

Seeds 1 to 99 are for tuning; the table in DEVELOPERS.md is of seed 1001, which nothing was tuned on.
"""

import argparse
import importlib
import sys
import time

from tests.benchmarks.accuracy.rows import Row, table

PARTS = ("winding", "motion", "heat", "startup")


def main(argv: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.accuracy", description=__doc__)
    parser.add_argument("--part", choices=PARTS)
    parser.add_argument("--motors", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1001)
    parser.add_argument("--workers", type=int, default=2)
    chosen = parser.parse_args(argv)
    rows: list[Row] = []
    for part in PARTS if chosen.part is None else (chosen.part,):
        began_s = time.perf_counter()
        module = importlib.import_module(f"tests.benchmarks.accuracy.{part}")
        rows += module.measure(chosen.motors, chosen.seed, chosen.workers)
        sys.stderr.write(f"{part}: {time.perf_counter() - began_s:.0f} s\n")
    print(f"{chosen.motors:,} motors a part, seed {chosen.seed}\n")
    print(table(rows))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
