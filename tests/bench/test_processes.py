"""Real processes killed, stopped and frozen while current flows: the output goes off and stays off, the run is filed.

Limits here are generous, because test machines are shared; measured times are in tests/benchmarks.
"""

import fcntl
import os
import resource
import signal
import sqlite3
import sys
import time
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from benchlog.bench.journal import read_journal
from benchlog.ledger.filing import file_journal, file_left_behind, journals_of
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import EventKind
from tests.campaign.processes.hits import same
from tests.processes import BenchProcess, OwnedProcess, TerminalProcess, children_of, end, wait_until

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="finds processes through /proc")

GENEROUS_S = 2.5
LAST_NET_S = 6.0


@pytest.fixture(params=[(), ("--clients", "1")], ids=["many clients", "one client"])
def bench(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[BenchProcess]:
    process = BenchProcess(tmp_path, "hopeless", *request.param)
    yield process
    process.close()


@pytest.fixture
def terminal(bench: BenchProcess, tmp_path: Path) -> Iterator[TerminalProcess]:
    process = TerminalProcess(bench.resource, tmp_path / "ledger.db")
    yield process
    process.close()


@pytest.fixture
def quiet_bench(tmp_path: Path) -> Iterator[BenchProcess]:
    process = BenchProcess(tmp_path, "hopeless", "--clients", "1")
    yield process
    process.close()


@pytest.fixture
def owned(quiet_bench: BenchProcess, tmp_path: Path) -> Iterator[OwnedProcess]:
    process = OwnedProcess(quiet_bench.resource, tmp_path / "owned.journal")
    yield process
    process.close()


def when_driving(bench: BenchProcess, terminal: TerminalProcess) -> tuple[int, int]:
    """Pids of the bench and the rescue process, with current flowing now."""
    pids = terminal.pids()
    wait_until(bench.is_driving)
    return pids


def assert_off_and_staying_off(bench: BenchProcess, since_s: float, within_s: float = GENEROUS_S) -> None:
    off_s = wait_until(lambda: bench.off_at_s(since_s), within_s)
    assert off_s - since_s < within_s
    time.sleep(0.3)
    assert bench.off_at_s(since_s) == off_s


def test_the_terminal_killed(bench: BenchProcess, terminal: TerminalProcess, tmp_path: Path) -> None:
    bench_pid, _ = when_driving(bench, terminal)
    os.kill(terminal.process.pid, signal.SIGKILL)
    since_s = time.perf_counter()
    assert_off_and_staying_off(bench, since_s)
    wait_until(lambda: not Path(f"/proc/{bench_pid}").exists())
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        (filed,) = file_left_behind(ledger, journals_of(ledger.path))
        run = ledger.run(filed.run)
        assert run.result.outcome is Outcome.STOPPED
        assert run.result.output_confirmed_off
        assert run.complete
        assert run.samples > 5


def test_the_bench_process_killed(bench: BenchProcess, terminal: TerminalProcess, tmp_path: Path) -> None:
    bench_pid, _ = when_driving(bench, terminal)
    os.kill(bench_pid, signal.SIGKILL)
    since_s = time.perf_counter()
    assert_off_and_staying_off(bench, since_s)
    status, said, _ = terminal.ended(20.0)
    assert status == 4
    assert said[-1]["event"] == "filed"
    assert said[-1]["outcome"] == "stopped"
    assert said[-1]["output_confirmed_off"] is True
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        run = ledger.run(said[-1]["run"])
        assert not run.complete
        assert run.result.output_confirmed_off
        assert ledger.events(run.id)[-1].kind is EventKind.RESCUE
        # identification and arming took three readings before the record begins; the last one may have been on its way
        served = [t for t in bench.readings() if t["at_s"] <= since_s]
        assert run.samples >= len(served) - 4 > 0


def test_the_bench_process_stopped(bench: BenchProcess, terminal: TerminalProcess) -> None:
    bench_pid, _ = when_driving(bench, terminal)
    os.kill(bench_pid, signal.SIGSTOP)
    assert_off_and_staying_off(bench, time.perf_counter())
    status, said, _ = terminal.ended(20.0)
    assert (status, said[-1]["output_confirmed_off"]) == (4, True)
    # By the first net, which has to kill the one that holds the session, and not by the last one.
    assert "was silent; the waiting process switched off" in said[-1]["reason"]


def test_the_terminal_and_the_bench_process_killed_together(
    bench: BenchProcess, terminal: TerminalProcess, tmp_path: Path
) -> None:
    bench_pid, _ = when_driving(bench, terminal)
    os.kill(terminal.process.pid, signal.SIGKILL)
    os.kill(bench_pid, signal.SIGKILL)
    assert_off_and_staying_off(bench, time.perf_counter())
    folder = journals_of(tmp_path / "ledger.db")
    wait_until(lambda: list(folder.glob("*.rescue")))
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        (filed,) = file_left_behind(ledger, folder)
        assert ledger.run(filed.run).result.output_confirmed_off


KILL, STOP = signal.SIGKILL, signal.SIGSTOP
PAIRS = {
    "terminal killed, bench stopped": ("terminal", KILL, "bench", STOP),
    "terminal frozen, rescue killed": ("terminal", STOP, "rescue", KILL),
    # In this order: a rescue that was stopped after it had connected holds the only session there is.
    "rescue stopped, bench killed": ("rescue", STOP, "bench", KILL),
    "bench stopped, rescue killed": ("bench", STOP, "rescue", KILL),
    "both stopped": ("bench", STOP, "rescue", STOP),
}
"""The others, and many clients, are in tests.campaign.processes."""


@pytest.mark.parametrize("bench", [("--clients", "1")], ids=["one client"], indirect=True)
@pytest.mark.parametrize("pair", PAIRS.values(), ids=PAIRS)
def test_two_of_the_three_processes_killed_or_stopped_at_once(
    pair: tuple[str, signal.Signals, str, signal.Signals],
    bench: BenchProcess,
    terminal: TerminalProcess,
    tmp_path: Path,
) -> None:
    one, how, other, also = pair
    bench_pid, rescue_pid = when_driving(bench, terminal)
    pids = {"terminal": terminal.process.pid, "bench": bench_pid, "rescue": rescue_pid}
    since_s = time.perf_counter()
    os.kill(pids[one], how)
    os.kill(pids[other], also)
    assert_off_and_staying_off(bench, since_s, LAST_NET_S)
    if "terminal" not in (one, other):
        wait_until(lambda: terminal.process.poll() is not None)
        end(rescue_pid)  # it shares the terminal's standard error
        status, said, _ = terminal.ended(20.0)
        assert (status, said[-1]["output_confirmed_off"]) == (4, True)
        assert "window or terminal then started" in said[-1]["reason"]
        return
    end(terminal.process.pid)
    wait_until(lambda: not Path(f"/proc/{bench_pid}").exists())
    folder = journals_of(tmp_path / "ledger.db")
    if other == "bench":
        wait_until(lambda: list(folder.glob("*.rescue")))
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        (filed,) = file_left_behind(ledger, folder)
        assert ledger.run(filed.run).result.output_confirmed_off


def test_the_terminal_frozen(bench: BenchProcess, terminal: TerminalProcess) -> None:
    when_driving(bench, terminal)
    os.kill(terminal.process.pid, signal.SIGSTOP)
    since_s = time.perf_counter()
    assert_off_and_staying_off(bench, since_s)
    os.kill(terminal.process.pid, signal.SIGCONT)
    status, said, _ = terminal.ended(20.0)
    assert status == 4
    assert "silent" in said[-1]["reason"]


def test_the_rescue_process_killed_ends_the_run(bench: BenchProcess, terminal: TerminalProcess) -> None:
    _, rescue_pid = when_driving(bench, terminal)
    os.kill(rescue_pid, signal.SIGKILL)
    assert_off_and_staying_off(bench, time.perf_counter())
    status, said, _ = terminal.ended(20.0)
    assert status == 4
    assert "rescue process is gone" in said[-1]["reason"]


def test_a_stopped_rescue_process_never_stops_the_loop(bench: BenchProcess, terminal: TerminalProcess) -> None:
    _, rescue_pid = when_driving(bench, terminal)
    os.kill(rescue_pid, signal.SIGSTOP)
    before = len(bench.readings())
    wait_until(lambda: len(bench.readings()) > before + 100)
    os.kill(terminal.process.pid, signal.SIGINT)
    status, said, _ = terminal.ended(20.0)
    assert (status, said[-1]["outcome"], said[-1]["output_confirmed_off"]) == (4, "stopped", True)


def test_ctrl_c_is_output_off_confirmed_and_filed(bench: BenchProcess, terminal: TerminalProcess) -> None:
    when_driving(bench, terminal)
    os.kill(terminal.process.pid, signal.SIGINT)
    assert_off_and_staying_off(bench, time.perf_counter())
    status, said, _ = terminal.ended(20.0)
    assert status == 4
    assert said[-1]["outcome"] == "stopped"
    assert "Ctrl-C" in said[-1]["reason"]
    assert said[-1]["output_confirmed_off"] is True
    assert said[-1]["run"] is not None


def test_the_supply_gone_is_supply_lost(bench: BenchProcess, terminal: TerminalProcess) -> None:
    when_driving(bench, terminal)
    bench.process.kill()
    status, said, _ = terminal.ended(30.0)
    assert status == 5, said[-1]["reason"]
    assert said[-1]["outcome"] == "supply-lost"
    assert said[-1]["output_confirmed_off"] is False
    assert said[-1]["run"] is not None


def trip_of(owned: OwnedProcess, folder: Path) -> str:
    """Files the run: whole, confirmed off. The reason it gave."""
    owned.process.wait(timeout=10.0)
    with Ledger.open(folder / "ledger.db") as ledger:
        run = ledger.run(file_journal(ledger, owned.journal).run)
        assert run.result.output_confirmed_off
        assert run.samples > 5
        return run.result.reason


def test_a_pipe_that_nobody_reads_counts_as_a_dead_window(
    quiet_bench: BenchProcess, owned: OwnedProcess, tmp_path: Path
) -> None:
    assert owned.process.stdout is not None
    fcntl.fcntl(owned.process.stdout, fcntl.F_SETPIPE_SZ, 4096)
    owned.renewing_until(quiet_bench.is_driving)
    owned.renewing_until(lambda: quiet_bench.off_at_s(0.0) or not quiet_bench.switches()[-1]["on"])
    assert "has not taken a frame" in trip_of(owned, tmp_path)


def test_a_closed_frame_pipe_ends_the_run_though_the_lease_is_renewed(
    quiet_bench: BenchProcess, owned: OwnedProcess, tmp_path: Path
) -> None:
    owned.renewing_until(quiet_bench.is_driving)
    assert owned.process.stdout is not None
    owned.process.stdout.close()
    since_s = time.perf_counter()
    off_s = owned.renewing_until(lambda: quiet_bench.off_at_s(since_s))
    assert off_s - since_s < GENEROUS_S
    assert "takes no more frames" in trip_of(owned, tmp_path)


def test_the_bench_process_told_to_end(quiet_bench: BenchProcess, owned: OwnedProcess, tmp_path: Path) -> None:
    owned.renewing_until(quiet_bench.is_driving)
    os.kill(owned.process.pid, signal.SIGTERM)
    os.kill(owned.process.pid, signal.SIGTERM)
    since_s = time.perf_counter()
    owned.renewing_until(lambda: quiet_bench.off_at_s(since_s))
    assert "told to end" in trip_of(owned, tmp_path)


def test_a_disk_that_takes_no_more_while_current_flows(
    quiet_bench: BenchProcess, owned: OwnedProcess, tmp_path: Path
) -> None:
    owned.renewing_until(quiet_bench.is_driving)
    most = owned.journal.stat().st_size + 2000
    resource.prlimit(owned.process.pid, resource.RLIMIT_FSIZE, (most, most))
    since_s = time.perf_counter()
    owned.renewing_until(lambda: quiet_bench.off_at_s(since_s))
    owned.process.wait(timeout=10.0)
    assert owned.journal.stat().st_size <= most
    samples = len(read_journal(owned.journal).trace.sent)
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        run = ledger.run(file_journal(ledger, owned.journal).run)
        assert (run.complete, run.samples) == (False, samples)
        assert samples > 20


def test_a_supply_that_answers_nothing_for_a_while_is_off_when_it_answers_again(
    bench: BenchProcess, terminal: TerminalProcess
) -> None:
    when_driving(bench, terminal)
    os.kill(bench.process.pid, signal.SIGSTOP)
    time.sleep(0.8)
    os.kill(bench.process.pid, signal.SIGCONT)
    assert_off_and_staying_off(bench, time.perf_counter())
    status, said, _ = terminal.ended(20.0)
    assert (status, said[-1]["outcome"], said[-1]["output_confirmed_off"]) == (5, "supply-lost", True)


def test_a_logout_ends_the_run_off_and_filed(bench: BenchProcess, terminal: TerminalProcess) -> None:
    bench_pid, rescue_pid = when_driving(bench, terminal)
    since_s = time.perf_counter()
    for number in (signal.SIGHUP, signal.SIGTERM):
        for pid in (rescue_pid, bench_pid, terminal.process.pid):
            os.kill(pid, number)
    assert_off_and_staying_off(bench, since_s)
    status, said, _ = terminal.ended(20.0)
    assert (status, said[-1]["output_confirmed_off"], said[-1]["run"]) == (4, True, 1)


def test_a_rescue_process_told_to_end_by_a_logout_still_switches_off_for_a_hung_bench_process(
    quiet_bench: BenchProcess, owned: OwnedProcess
) -> None:
    owned.renewing_until(quiet_bench.is_driving)
    (rescue_pid,) = children_of(owned.process.pid)
    for number in (signal.SIGHUP, signal.SIGTERM):
        os.kill(rescue_pid, number)
    os.kill(owned.process.pid, signal.SIGSTOP)
    since_s = time.perf_counter()
    assert_off_and_staying_off(quiet_bench, since_s)


def test_a_ledger_that_another_program_holds_when_the_run_ends_loses_nothing(
    quiet_bench: BenchProcess, tmp_path: Path
) -> None:
    path = tmp_path / "ledger.db"
    terminal = TerminalProcess(quiet_bench.resource, path)
    try:
        when_driving(quiet_bench, terminal)
        with closing(sqlite3.connect(path, isolation_level=None)) as other:
            other.execute("BEGIN EXCLUSIVE")
            os.kill(terminal.process.pid, signal.SIGINT)
            status, said, err = terminal.ended(60.0)
        assert (status, said[-1]["outcome"], said[-1]["run"]) == (4, "stopped", None)
        assert err.count("not filed yet, nothing is lost") == 1
        assert len(err.strip().splitlines()) == 1, err
    finally:
        terminal.close()
    (journal,) = journals_of(path).glob("*.journal")
    trace = read_journal(journal).trace
    with Ledger.open(path) as ledger:
        (filed,) = file_left_behind(ledger, journals_of(path))
        assert same(ledger.trace(filed.run), trace)
