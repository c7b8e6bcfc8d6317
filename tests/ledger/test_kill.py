"""A process that is killed while it files leaves a sound ledger with whole runs only."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.ledger import filing_until_killed


@pytest.mark.skipif(not hasattr(os, "fork"), reason="the trial forks")
def test_a_kill_at_any_moment_of_filing_leaves_whole_runs_in_a_sound_ledger(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", filing_until_killed.__name__, str(tmp_path / "workshop.ledger")],
        check=False,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(Path(__file__).parents[2]), *sys.path])},
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    kills, in_a_commit, runs, recovered, wrong = json.loads(done.stdout)
    print(f"{kills} kills, {in_a_commit} of them in a commit; {runs} runs, {recovered} from journals left behind")
    assert wrong == []
    assert kills >= 10  # 30, but for a very slow disk
    assert in_a_commit >= 1
    assert recovered >= 1
