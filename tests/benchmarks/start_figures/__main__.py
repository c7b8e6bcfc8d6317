"""`python -m tests.benchmarks.start_figures [--part figures|interleave|laying] [--motors N] [--seed N] [--workers N]`.

Seeds 1 to 99 are for tuning; the tables in DEVELOPERS.md are of seed 1005, which nothing was tuned on.
"""

import argparse
import importlib
import sys
import time

PARTS = ("figures", "interleave", "laying")


def main(argv: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.start_figures", description=__doc__)
    parser.add_argument("--part", choices=PARTS)
    parser.add_argument("--motors", type=int, default=400)
    parser.add_argument("--seed", type=int, default=1005)
    parser.add_argument("--workers", type=int, default=2)
    chosen = parser.parse_args(argv)
    for part in PARTS if chosen.part is None else (chosen.part,):
        began_s = time.perf_counter()
        told = importlib.import_module(f"tests.benchmarks.start_figures.{part}").measure(
            chosen.motors, chosen.seed, chosen.workers
        )
        print(f"{part}: {chosen.motors:,} motors, seed {chosen.seed}\n\n{told}\n")
        sys.stderr.write(f"{part}: {time.perf_counter() - began_s:.0f} s\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
