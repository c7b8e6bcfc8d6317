"""`benchlog leads` as a user runs it, and that later runs on that supply know of it."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from benchlog.ledger.leads import LEADS_ITEM, lead_check
from benchlog.ledger.store import Ledger
from tests.processes import BenchProcess


def benchlog(*arguments: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-P", "-m", "benchlog.cli", *arguments],
        capture_output=True,
        text=True,
        timeout=60.0,
        stdin=subprocess.DEVNULL,
        cwd="/",
    )


@pytest.fixture
def joined(tmp_path: Path) -> BenchProcess:
    """0.05 Ω between the clips: what joined leads are like."""
    return BenchProcess(tmp_path, "short")


def test_leads_are_measured_filed_in_one_job_and_taken_out_later(tmp_path: Path, joined: BenchProcess) -> None:
    path = tmp_path / "ledger.db"
    try:
        for _ in range(2):
            done = benchlog("leads", "--yes", "--supply", joined.resource, "--ledger", str(path))
            assert done.returncode == 0, done.stderr
            assert "The leads." in done.stdout
            assert "confirmed by read-back" in done.stdout
        told = benchlog(
            *("recover", "--yes", "--json", "--supply", joined.resource, "--rated-voltage", "12"),
            *("--ledger", str(path)),
        )
        supply = json.loads(told.stdout.splitlines()[0])
    finally:
        joined.close()
    with Ledger.open(path) as ledger:
        check = lead_check(ledger, joined.resource)
        assert check is not None
        assert check.low_ohm <= 0.05 <= check.high_ohm
        jobs = [job for job in ledger.jobs() if job.item.kind == LEADS_ITEM]
        assert [(job.runs, job.last_outcome) for job in jobs] == [(2, None)]
    assert supply["lead_ohm"] == pytest.approx(check.ohm)
    assert "taken out" in supply["why"]


def test_what_is_refused_is_said_in_one_line_and_measures_nothing(tmp_path: Path) -> None:
    path = tmp_path / "ledger.db"
    for arguments in ((), ("--supply", "nowhere", "--job", "x"), ("--supply", "TCPIP::127.0.0.1::9::SOCKET")):
        done = benchlog("leads", *arguments, "--ledger", str(path), *(("--yes",) if len(arguments) != 2 else ()))
        assert done.returncode == 2
        assert len(done.stderr.strip().splitlines()) <= 2
        assert "Traceback" not in done.stderr
