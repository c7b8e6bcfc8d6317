"""The campaign: `python -m tests.campaign --runs 2000 --seed 1`; one run again: `--seed 1 --only 1234`.

`--kind start-up` draws runs that capture starts, `--kind run-in` short run-ins, by numbers of their own;
`--dialects` any of these on supplies that speak any dialect, shipped or put together at random, with habits.
Each case is drawn from the seed and its number alone, so any of them replays exactly. Ends with 1 if a check failed.
"""

import argparse
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from tests.campaign.checks import CHECKS, broken
from tests.campaign.running import run_case
from tests.campaign.totals import DRAWS, Totals, run_all


def table(totals: Totals, seed: int, took_s: float, workers: int) -> str:
    """The result, in Markdown."""
    wrong = Counter(check for _, check, _ in totals.failures)
    lines = [f"| what | broken in {totals.runs:,} runs, seed {seed} |", "|---|---|"]
    lines += [f"| {name} | {wrong[name]} |" for name in CHECKS]
    if wrong["no exception"]:
        lines.append(f"| no exception | {wrong['no exception']} |")
    per_minute = 60 * totals.runs / took_s
    lines += [
        "",
        f"{totals.cases:,} cases ({totals.refused_by_parser:,} refused by the parser), {totals.readings:,} readings, "
        f"{totals.virtual_s / 3600:.1f} h of bench time in {took_s / 60:.1f} min: {per_minute:.0f} runs a minute on "
        f"{workers} {'process' if workers == 1 else 'processes'}.",
        *(
            f"{name}: " + ", ".join(f"{what} {count:,}" for what, count in counts.most_common())
            for name, counts in (("Outcomes", totals.outcomes), ("Items", totals.items), ("Faults", totals.faults))
        ),
    ]
    return "\n".join(lines)


def replay(seed: int, number: int, kind: str) -> int:
    """One case, in full."""
    case = DRAWS[kind](seed, number)
    print(case)
    with tempfile.TemporaryDirectory() as folder:
        record = run_case(case, Path(folder))
    if record.refused_by_parser is not None:
        print(f"\nrefused by the parser: {record.refused_by_parser}")
    failed = 0
    for ran in record.runs:
        print(f"\n{ran.result}\n{ran.ceilings}\nstruck: {ran.struck}\nended: {ran.ending_s}")
        for at_s, message in ran.log:
            print(f"  {at_s:9.4f}  {message}")
        for name, words in broken(case, ran).items():
            failed += 1
            print(f"BROKEN {name}: {words}")
    return int(failed > 0)


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.campaign", description=__doc__)
    parser.add_argument("--runs", type=int, default=2000, help="cases; some have two runs in a row")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, metavar="NUMBER", help="the number of the first case")
    parser.add_argument("--only", type=int, metavar="NUMBER", help="replay one case")
    parser.add_argument(
        "--kind", choices=list(DRAWS), default="any", help="start-up: runs that capture starts; run-in: short ones"
    )
    parser.add_argument("--dialects", action="store_true", help="the same kind on supplies that speak anything")
    parser.add_argument("--workers", type=int, default=2)
    asked = parser.parse_args()
    if asked.dialects and not asked.kind.endswith("dialects"):
        asked.kind = "dialects" if asked.kind == "any" else f"{asked.kind}-dialects"
    if asked.only is not None:
        return replay(asked.seed, asked.only, asked.kind)
    totals, began_s = Totals(), time.perf_counter()
    for batch in run_all(asked.seed, range(asked.first, asked.first + asked.runs), asked.workers, asked.kind):
        totals.add(batch)
        for number, check, words in batch.failures:
            kind = "" if asked.kind == "any" else f"--kind {asked.kind} "
            print(f"{kind}--seed {asked.seed} --only {number}: {check}: {words}", file=sys.stderr, flush=True)
        if sys.stderr.isatty():
            print(f"\r{totals.cases:,} cases, {len(totals.failures)} failures", end="", file=sys.stderr)
    print(table(totals, asked.seed, time.perf_counter() - began_s, asked.workers))
    return int(bool(totals.failures))


if __name__ == "__main__":
    sys.exit(main())
