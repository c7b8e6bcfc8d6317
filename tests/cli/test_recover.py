"""`benchlog recover` as a user runs it: from another folder, over TCP, on every scenario, and on every bad input."""

import json
import os
import socket
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from benchlog.ledger.store import Ledger
from benchlog.outcome import EXIT_STATUS, Outcome
from drivers.simulated.scenario import load, names
from tests.processes import BenchProcess, TerminalProcess

LONG = ("hopeless", "stuck-hard", "grips-again-at-rest")
NOBODY = "TCPIP::127.0.0.1::9::SOCKET"
PROMISED = {
    *("outcome", "winding_verdict", "resistance_ohm", "kicks", "max_volts", "max_amps"),
    *("output_confirmed_off", "job", "run"),
}


def benchlog(*arguments: str, timeout_s: float = 60.0) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-P", "-m", "benchlog.cli", *arguments],
        capture_output=True,
        text=True,
        timeout=timeout_s,
        stdin=subprocess.DEVNULL,
        cwd="/",
    )


def recover(*arguments: str) -> tuple[int, dict[str, Any], str]:
    """Exit status, the last line, standard error."""
    done = benchlog("recover", "--yes", "--json", *arguments)
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    assert lines, done.stderr
    assert "Traceback" not in done.stderr
    return done.returncode, lines[-1], done.stderr


@pytest.fixture(scope="module")
def all_runs(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, Any]]:
    """Every scenario, each on a bench and a ledger of its own; four at a time, because they run in real time."""
    folders = {name: tmp_path_factory.mktemp(name) for name in names()}
    benches: list[BenchProcess] = []

    def run(name: str) -> dict[str, Any]:
        bench = BenchProcess(folders[name], name)
        benches.append(bench)
        ledger = folders[name] / "ledger.db"
        terminal = TerminalProcess(bench.resource, ledger, rated=str(load(name).rated_volts))
        try:
            status, said, err = terminal.ended(220.0)
        finally:
            terminal.close()
        return {"status": status, "said": said, "err": err, "bench": bench, "ledger": ledger}

    longest_first = sorted(names(), key=lambda name: name not in LONG)
    try:
        with ThreadPoolExecutor(4) as pool:
            yield dict(zip(longest_first, pool.map(run, longest_first), strict=True))
    finally:
        for bench in benches:
            bench.close()


@pytest.mark.timeout(300)
@pytest.mark.parametrize("scenario", names())
def test_each_scenario_over_the_wire_ends_in_its_own_word(all_runs: dict[str, Any], scenario: str) -> None:
    run = all_runs[scenario]
    last = run["said"][-1]
    assert last["event"] == "filed"
    assert set(last) >= PROMISED
    assert last["outcome"] == load(scenario).expected, last["reason"]
    assert run["status"] == EXIT_STATUS[Outcome(last["outcome"])]
    assert last["output_confirmed_off"] is True
    assert all({"event", "t_s"} <= set(line) for line in run["said"][:-1])
    switches = run["bench"].switches()
    assert switches[-1]["on"] is False
    assert max(t["true_volts"] for t in run["bench"].readings()) <= load(scenario).rated_volts + 0.02
    assert run["said"][-2]["t_s"] < 180.0


@pytest.mark.timeout(300)
def test_the_filed_trace_is_the_truth_at_the_terminals_sample_by_sample(all_runs: dict[str, Any]) -> None:
    run = all_runs["stuck-soft"]
    with Ledger.open(run["ledger"]) as ledger:
        trace = ledger.trace(run["said"][-1]["run"])
    told = run["bench"].readings()[-len(trace.volts) :]
    assert len(told) == len(trace.volts) > 400
    assert np.allclose(trace.volts, [t["reported_volts"] for t in told], atol=1e-9)
    assert np.allclose(trace.amps, [t["reported_amps"] for t in told], atol=1e-9)
    assert np.abs(trace.volts - [t["true_volts"] for t in told]).max() < 0.012
    assert np.abs(trace.amps - [t["true_amps"] for t in told]).max() < 0.006
    # one epoch on both sides of the wire: the interval between any two samples agrees with the truth's
    served_s = np.array([t["at_s"] for t in told])
    asked_s = trace.sent * 1e-4
    assert np.percentile(np.abs((asked_s - asked_s[0]) - (served_s - served_s[0])), 95) < 0.010


@pytest.mark.timeout(300)
def test_jobs_and_export_read_what_was_filed(all_runs: dict[str, Any], tmp_path: Path) -> None:
    run = all_runs["free"]
    ledger = str(run["ledger"])
    (job,) = [json.loads(line) for line in benchlog("jobs", "--json", "--ledger", ledger).stdout.splitlines()]
    assert (job["outcome"], job["job"]) == ("runs", run["said"][-1]["job"])
    number = str(run["said"][-1]["run"])
    csv = benchlog("export", number, "--ledger", ledger).stdout.splitlines()
    assert csv[0] == "t_s,volts,amps,set_volts,set_amps,output_on,regulation"
    assert len(csv) > 300
    target = tmp_path / "run.csv"
    assert benchlog("export", number, "--ledger", ledger, "--output", str(target)).returncode == 0
    assert target.read_text(encoding="utf-8").splitlines() == csv
    missing = benchlog("export", "999", "--ledger", ledger)
    assert missing.returncode == 2
    assert "999" in missing.stderr


@pytest.mark.parametrize("rating", ["0", "-12", "nan", "3,0", "48", "", "inf", "12V", "1e9", "٣"])
def test_a_bad_rating_is_refused_with_the_reason_and_nothing_is_touched(rating: str, tmp_path: Path) -> None:
    ledger = tmp_path / "ledger.db"
    status, last, err = recover("--supply", NOBODY, f"--rated-voltage={rating}", "--ledger", str(ledger))
    assert (status, last["event"], last["outcome"]) == (2, "filed", "refused")
    assert set(last) >= PROMISED
    assert "rated voltage" in last["reason"]
    assert last["reason"] in err
    assert not ledger.exists()


@pytest.mark.parametrize(
    ("option", "value", "word"),
    [("--max-voltage", "60", "42.4"), ("--max-voltage", "0", "above zero"), ("--max-current", "nan", "not a number")],
)
def test_a_bad_ceiling_is_refused(option: str, value: str, word: str, tmp_path: Path) -> None:
    status, last, _ = recover(
        "--supply", NOBODY, "--rated-voltage", "12", option, value, "--ledger", str(tmp_path / "l")
    )
    assert (status, last["outcome"]) == (2, "refused")
    assert word in last["reason"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("name = 'x'\ncolour = 1\n", ["colour"]),
        ("{kicks}voltage = nan\n", ["steps[0].voltage"]),
        ("{kicks}voltage = 7.5\n", ["steps[0].voltage: 7.5 V is above the job's ceiling of 6 V"]),
        ("\x00\x01", ["TOML"]),
    ],
)
def test_a_bad_sequence_is_refused_naming_the_place(text: str, words: list[str], tmp_path: Path) -> None:
    kicks = "name='x'\n[[steps]]\nkind='kicks'\nname='a'\ncurrent_ratio=1.0\non_s=0.2\noff_s=1.0\ntries=2\n"
    path = tmp_path / "mine.toml"
    path.write_text(text.replace("{kicks}", kicks), encoding="utf-8")
    ledger = str(tmp_path / "l.db")
    status, last, _ = recover("--supply", NOBODY, "--rated-voltage", "6", "--sequence", str(path), "--ledger", ledger)
    assert (status, last["outcome"]) == (2, "refused")
    for word in words:
        assert word in last["reason"]


def test_no_supply_at_the_address(tmp_path: Path) -> None:
    status, last, _ = recover("--supply", NOBODY, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db"))
    assert (status, last["outcome"], last["run"]) == (2, "refused", None)
    assert "nothing listens" in last["reason"]


@pytest.mark.parametrize("address", ["", "not an address", "TCPIP::127.0.0.1::70000::SOCKET", "ASRL/dev/none::INSTR"])
def test_an_address_that_is_none(address: str, tmp_path: Path) -> None:
    status, last, _ = recover("--supply", address, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db"))
    assert (status, last["outcome"], last["run"]) == (2, "refused", None)
    assert last["reason"]


def test_something_that_never_answers(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as silent:
        address = f"TCPIP::127.0.0.1::{silent.getsockname()[1]}::SOCKET"
        status, last, _ = recover("--supply", address, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db"))
    assert (status, last["outcome"]) == (2, "refused")
    assert "does not identify itself" in last["reason"]


def test_a_supply_that_another_program_holds(tmp_path: Path) -> None:
    bench = BenchProcess(tmp_path, "free", "--clients", "1")
    try:
        port = int(bench.resource.split("::")[2])
        with socket.create_connection(("127.0.0.1", port)):
            status, last, _ = recover(
                "--supply", bench.resource, "--rated-voltage", "12", "--ledger", str(tmp_path / "l")
            )
        assert (status, last["outcome"]) == (2, "refused")
        assert "another program holds it" in last["reason"]
        assert not any(t["on"] for t in bench.switches())
    finally:
        bench.close()


def test_volts_on_the_terminals_refuse_the_run_and_are_filed(tmp_path: Path) -> None:
    bench = BenchProcess(tmp_path, "stuck-soft", "--volts-on-terminals", "3.7")
    try:
        status, last, _ = recover(
            "--supply", bench.resource, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db")
        )
        assert (status, last["outcome"]) == (2, "refused")
        assert "another source" in last["reason"]
        assert last["run"] is not None
        assert not any(t["on"] for t in bench.switches())
    finally:
        bench.close()


def test_a_supply_that_ignores_off_once_is_told_again(tmp_path: Path) -> None:
    # the first two OFFs are those of arming and of clearing the latches
    bench = BenchProcess(tmp_path, "open", "--ignore-off", "4")
    try:
        status, last, _ = recover(
            "--supply", bench.resource, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db")
        )
        assert status == 3
        assert last["output_confirmed_off"] is True
        assert bench.switches()[-1]["on"] is False
    finally:
        bench.close()


def test_a_ledger_that_is_locked_newer_or_none_refuses_before_anything_is_switched_on(tmp_path: Path) -> None:
    none = tmp_path / "letter.txt"
    none.write_text("Dear customer", encoding="utf-8")
    newer = tmp_path / "newer.db"
    Ledger.open(newer).close()
    with sqlite3.connect(newer) as db:
        db.execute("UPDATE alembic_version SET version_num = '9999'")
    db.close()
    locked = tmp_path / "locked.db"
    Ledger.open(locked).close()
    holder = sqlite3.connect(locked, isolation_level=None)
    holder.execute("BEGIN EXCLUSIVE")
    folder = tmp_path / "folder.db"
    folder.mkdir()
    try:
        for path, word in (
            (none, "not a ledger"),
            (newer, "9999"),
            (locked, "another program"),
            (folder, "not a file"),
        ):
            status, last, _ = recover("--supply", NOBODY, "--rated-voltage", "12", "--ledger", str(path))
            assert status == 2, path
            assert (last["outcome"], word in last["reason"]) == ("refused", True), last["reason"]
    finally:
        holder.close()
    assert none.read_text(encoding="utf-8") == "Dear customer"


def test_without_yes_and_without_anybody_at_the_keyboard_nothing_is_driven(tmp_path: Path) -> None:
    done = benchlog("recover", "--supply", NOBODY, "--rated-voltage", "12", "--ledger", str(tmp_path / "l.db"))
    assert done.returncode == 2
    assert "--yes" in done.stderr


def test_help_and_version_need_no_heavy_library() -> None:
    code = (
        "import sys; from benchlog.cli import main\n"
        "try: main(['--help'])\n"
        "except SystemExit: pass\n"
        "bad = {'PySide6', 'pyvisa', 'sqlalchemy', 'alembic', 'scipy', 'pyqtgraph'} & set(sys.modules)\n"
        "sys.exit(str(bad) if bad else 0)"
    )
    done = subprocess.run(
        [sys.executable, "-P", "-c", code], capture_output=True, text=True, timeout=30, env=os.environ
    )
    assert done.returncode == 0, done.stderr
