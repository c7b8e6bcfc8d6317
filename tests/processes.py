"""Real processes for tests: a simulated bench with its truth on file, and a terminal that runs on it."""

import contextlib
import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from benchlog.bench.frames import Order, Renew, Request
from benchlog.bench.lease import pack
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import built_in

WAIT_S = 20.0


def wait_until(condition: Callable[[], Any], within_s: float = WAIT_S) -> Any:
    """The condition's first true value. Fails the test after a while."""
    until_s = time.perf_counter() + within_s
    while time.perf_counter() < until_s:
        if found := condition():
            return found
        time.sleep(0.005)
    raise AssertionError(f"not within {within_s} s: {condition}")


class BenchProcess:
    """`drivers.simulated` on a free port, with the truth it writes."""

    def __init__(self, folder: Path, scenario: str, *options: str) -> None:
        self.truth_path = folder / f"truth-{scenario}-{len(list(folder.iterdir()))}.jsonl"
        self.process = subprocess.Popen(
            [
                *(sys.executable, "-P", "-m", "drivers.simulated", "--scenario", scenario),
                *("--truth", str(self.truth_path), "--until-stdin-closes", *options),
            ],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert self.process.stdout is not None
        self.resource = self.process.stdout.readline().removeprefix("listening on ").strip()
        assert self.resource.startswith("TCPIP::127.0.0.1::")

    def truth(self) -> list[dict[str, Any]]:
        """Everything so far: served readings and switches of the output. Times in perf_counter seconds."""
        lines = self.truth_path.read_text(encoding="utf-8").split("\n")[:-1]
        return [json.loads(line) for line in lines]

    def readings(self) -> list[dict[str, Any]]:
        return [t for t in self.truth() if t["kind"] == "reading"]

    def switches(self) -> list[dict[str, Any]]:
        return [t for t in self.truth() if t["kind"] == "output"]

    def is_driving(self) -> bool:
        """Whether current was flowing at the last reading."""
        last = self.readings()[-1:]
        return bool(last) and last[0]["output_on"] and last[0]["true_amps"] > 0.015

    def off_at_s(self, since_s: float) -> float | None:
        """When the output went off after an instant and stayed off, or None."""
        after = [t for t in self.switches() if t["at_s"] >= since_s - 0.002]
        return after[0]["at_s"] if after and not any(t["on"] for t in after) else None

    def close(self) -> None:
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self.process.stdin.close()
        try:
            self.process.wait(timeout=5.0)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
        self.process.stdout.close()


class TerminalProcess:
    """`benchlog recover --yes --json` on a bench."""

    def __init__(self, resource: str, ledger: Path, *options: str, rated: str = "12") -> None:
        self.process = subprocess.Popen(
            [
                *(sys.executable, "-P", "-m", "benchlog.cli", "recover", "--supply", resource),
                *("--rated-voltage", rated, "--yes", "--json", "--ledger", str(ledger), *options),
            ],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            cwd="/",
        )
        self._pids = [self.process.pid]

    def pids(self) -> tuple[int, int]:
        """Of the process that holds the supply, and of the rescue process."""
        bench_pid = int(wait_until(lambda: children_of(self.process.pid))[0])
        rescue_pid = int(wait_until(lambda: children_of(bench_pid))[0])
        self._pids += [bench_pid, rescue_pid]
        return bench_pid, rescue_pid

    def ended(self, within_s: float = 200.0) -> tuple[int, list[dict[str, Any]], str]:
        """Exit status, what it said as JSON, and its standard error."""
        out, err = self.process.communicate(timeout=within_s)
        return self.process.returncode, [json.loads(line) for line in out.splitlines()], err

    def close(self) -> None:
        if self.process.poll() is None:
            self._pids += children_of(self.process.pid)
        for pid in self._pids:
            end(pid)
        if self.process.stdout is not None and not self.process.stdout.closed:
            self.process.communicate(timeout=10.0)


class OwnedProcess:
    """`benchlog.bench` by itself: the test holds its lease, and reads its frames or does not."""

    def __init__(self, resource: str, journal: Path, *, job: int | None = None) -> None:
        self.journal = journal
        self.process = subprocess.Popen(
            [sys.executable, "-P", "-m", "benchlog.bench"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            bufsize=0,
        )
        request = Request(
            uid=journal.stem,
            kind=RunKind.RECOVERY,
            resource=resource,
            rated_volts=12.0,
            layers={Layer.JOB: Limits(volts=12.0)},
            sequence=built_in("starting-ladder"),
            journal=str(journal),
            job=job,
            unattended=True,
        )
        self._tell(request)

    def _tell(self, order: Order) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write(pack(order))

    def renew(self) -> None:
        with contextlib.suppress(BrokenPipeError):
            self._tell(Renew())

    def renewing_until(self, condition: Callable[[], Any], within_s: float = WAIT_S) -> Any:
        """The condition's first true value, the lease renewed meanwhile. Fails the test after a while."""
        until_s = time.perf_counter() + within_s
        while time.perf_counter() < until_s:
            if found := condition():
                return found
            self.renew()
            time.sleep(0.02)
        raise AssertionError(f"not within {within_s} s: {condition}")

    def close(self) -> None:
        pids = [self.process.pid, *children_of(self.process.pid)]
        for pid in pids:
            end(pid)
        self.process.wait()
        for pipe in (self.process.stdin, self.process.stdout):
            if pipe is not None and not pipe.closed:
                pipe.close()


def children_of(pid: int) -> list[int]:
    try:
        return [int(word) for word in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]
    except OSError:
        return []


def end(pid: int) -> None:
    try:
        os.kill(pid, signal.SIGKILL)
    except ProcessLookupError:
        return
