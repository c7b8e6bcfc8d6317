"""`benchlog advise` as a user runs it: a page, the same as JSON, and every refusal in one line."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest


def advise(*arguments: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-P", "-m", "benchlog.cli", "advise", *arguments],
        capture_output=True,
        text=True,
        timeout=60.0,
        stdin=subprocess.DEVNULL,
        cwd="/",
    )


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("advise") / "demo.db"
    shutil.copy(built_demo, path)
    return path


def test_a_page_of_80_columns_with_a_reason_under_each_figure(demo: Path) -> None:
    told = advise("--ledger", str(demo), "--item", "bilge pump", "--rated-voltage", "12", "--resistance", "8")
    assert told.returncode == 0, told.stderr
    lines = told.stdout.splitlines()
    assert max(map(len, lines)) <= 80
    assert lines[0].split() == ["Volts", "12.0", "V", "at", "most", "12.0", "V"]
    assert "recoveries ended freed" in " ".join(told.stdout.split())


def test_the_same_as_json_and_for_a_job_without_writing_anything(demo: Path) -> None:
    before = demo.read_bytes()
    told = advise("--ledger", str(demo), "--job", "10", "--json")
    rows = [json.loads(row) for row in told.stdout.splitlines()]
    assert {row["proposal"] for row in rows[:-1]} >= {"volts", "winding_c"}
    assert set(rows[-1]) == {"first_rung", "steps", "remarks", "like"}
    assert demo.read_bytes() == before


@pytest.mark.parametrize(
    "arguments",
    [
        ("--rated-voltage", "99"),
        ("--resistance", "-1"),
        ("--thermal-class", "Q"),
        ("--job", "4", "--ledger", "/nowhere/at/all.db"),
        ("--job", "999999"),
    ],
)
def test_what_is_refused_is_one_line(demo: Path, arguments: tuple[str, ...]) -> None:
    told = advise(*arguments, *(() if "--ledger" in arguments else ("--ledger", str(demo))))
    assert told.returncode == 2
    assert len(told.stderr.strip().splitlines()) == 1
    assert told.stdout == ""
