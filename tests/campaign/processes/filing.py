"""A thousand kills while runs are filed, in ledgers of fifty kills each, so that each look at them stays short."""

import json
import os
import subprocess
import sys
from pathlib import Path

from tests.ledger import filing_until_killed

KILLS_A_LEDGER = 50


def killed_while_filing(folder: Path, seed: int, kills: int) -> tuple[list[int], list[str]]:
    """Kills, those inside a commit, runs, runs from journals left behind; and everything that was wrong."""
    totals, wrong = [0, 0, 0, 0], []
    for number in range(-(-kills // KILLS_A_LEDGER)):
        path = folder / f"{number}.ledger"
        done = subprocess.run(
            [
                *(sys.executable, "-m", filing_until_killed.__name__, str(path), f"{seed * 1000 + number}"),
                *(str(min(kills - totals[0], KILLS_A_LEDGER)), "600"),
            ],
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            text=True,
            check=False,
        )
        if done.returncode:
            wrong.append(done.stderr)
            break
        *counts, found = json.loads(done.stdout)
        totals = [total + count for total, count in zip(totals, counts, strict=True)]
        wrong += found
    return totals, wrong
