"""One hit: a run of the shipped terminal on a simulated bench, its processes struck within a pulse, and what followed.

The terminal is the owner of the lease here; the window holds it through the same link. All times are of the one
monotonic clock that every process of this machine shares.
"""

import json
import os
import random
import signal
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from benchlog.bench.journal import read_journal
from benchlog.ledger.filing import file_left_behind, journals_of
from benchlog.ledger.store import Ledger
from benchlog.records import Trace
from tests.processes import BenchProcess, TerminalProcess, children_of, end, wait_until

KILL, STOP = signal.SIGKILL, signal.SIGSTOP
PULSES_S = (0.2, 0.2, 0.2, 0.2, 0.95)
"""How long current flows, pulse by pulse, in the shipped sequence on what does not move: a probe, then a start."""
FLOWS_A = 0.012
BEFORE_THE_RECORD = 3
"""Readings that identification and arming take before the record begins."""
OFF_WITHIN_S = 15.0
WATCHED_S = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """`blows`: who is struck and how. `goals_ms`: until OFF, for many clients and for one; None: none was set."""

    name: str
    blows: tuple[tuple[str, signal.Signals], ...]
    goals_ms: tuple[float | None, float | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """What came of one. Times in ms; `off_ms` is None where the output never went off."""

    while_on: bool
    while_flowing: bool
    off_ms: float | None
    on_again: int
    lost_ms: float
    wrong: tuple[str, ...]


class TruthTail:
    """The truth file, read as it grows."""

    def __init__(self, path: Path) -> None:
        self._file = path.open("rb")
        self._rest = b""
        self.all: list[dict[str, Any]] = []

    def read(self) -> list[dict[str, Any]]:
        *lines, self._rest = (self._rest + self._file.read()).split(b"\n")
        self.all += (new := [json.loads(line) for line in lines])
        return new

    def close(self) -> None:
        self._file.close()


def wait_for_pulse(tail: TruthTail, number: int) -> float:
    """When current began to flow for the given time, counted from 0."""
    flowed, until_s = False, time.perf_counter() + 30.0
    while time.perf_counter() < until_s:
        for truth in tail.read():
            if truth["kind"] == "reading":
                flows = truth["output_on"] and truth["true_amps"] > FLOWS_A
                number -= flows and not flowed
                flowed = flows
                if number < 0:
                    return float(truth["at_s"])
        time.sleep(0.001)
    raise AssertionError("no such pulse")


def hit(case: Case, source: random.Random, phase: float, *options: str) -> Hit:
    """Strikes at a share of a pulse from its beginning."""
    number = source.randrange(len(PULSES_S))
    blows = source.sample(case.blows, len(case.blows))
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        ledger = folder / "workshop.ledger"
        bench = BenchProcess(folder, "hopeless", *options)
        tail = TruthTail(bench.truth_path)
        terminal = TerminalProcess(bench.resource, ledger)
        try:
            bench_pid, rescue_pid = terminal.pids()
            pids = {"terminal": terminal.process.pid, "bench": bench_pid, "rescue": rescue_pid}
            began_s = wait_for_pulse(tail, number)
            (journal,) = journals_of(ledger).glob("*.journal")
            kept = folder / "kept"
            os.link(journal, kept)  # the same file: it stays when the journal is removed
            time.sleep(max(0.0, began_s + phase * PULSES_S[number] - time.perf_counter()))
            struck_s = time.perf_counter()
            for who, how in blows:
                os.kill(pids[who], how)
            off_s = _off(tail, struck_s)
            all_ended = _end_all(terminal, case, pids)
            time.sleep(WATCHED_S)
            tail.read()
            found = _found(tail.all, kept, case, struck_s, off_s)
            return Hit(**found, wrong=(*_filing(ledger, kept), *(() if all_ended else ("a process did not end",))))
        finally:
            terminal.close()
            tail.close()
            bench.close()


def _off(tail: TruthTail, since_s: float) -> float | None:
    until_s = time.perf_counter() + OFF_WITHIN_S
    while time.perf_counter() < until_s:
        tail.read()
        for truth in tail.all:
            if truth["kind"] == "output" and not truth["on"] and truth["at_s"] >= since_s:
                return float(truth["at_s"])
        time.sleep(0.005)
    return None


def _end_all(terminal: TerminalProcess, case: Case, pids: dict[str, int]) -> bool:
    """Lets who still lives come to an end by itself; who was stopped is killed. False: somebody did not end."""
    struck = dict(case.blows)
    try:
        for pid in (pids[who] for who in ("bench", "terminal", "rescue") if who not in struck):
            wait_until(lambda pid=pid: not _lives(pid), 20.0)  # type: ignore[misc]
    except AssertionError:
        return False
    for pid in (*children_of(terminal.process.pid), *pids.values()):
        end(pid)
    terminal.process.communicate(timeout=10.0)
    wait_until(lambda: not any(_lives(pid) for pid in pids.values()), 10.0)
    return True


def _lives(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


def _found(
    truths: list[dict[str, Any]], kept: Path, case: Case, struck_s: float, off_s: float | None
) -> dict[str, Any]:
    switches = [truth for truth in truths if truth["kind"] == "output"]
    readings = [truth for truth in truths if truth["kind"] == "reading"]
    before = [truth for truth in readings if truth["at_s"] <= struck_s]
    was_on = [truth["on"] for truth in switches if truth["at_s"] <= struck_s][-1:] == [True]
    # What the bench process could know: to its own end, or to the OFF that it sent itself.
    until_s = struck_s if "bench" in dict(case.blows) or off_s is None else off_s
    served = [truth for truth in readings if truth["at_s"] <= until_s][BEFORE_THE_RECORD:]
    trace = read_journal(kept).trace
    pairs = zip(trace.volts.tolist(), trace.amps.tolist(), strict=True)
    known = sum(
        (truth["reported_volts"], truth["reported_amps"]) == pair for truth, pair in zip(served, pairs, strict=False)
    )
    return {
        "while_on": was_on,
        "while_flowing": was_on and before[-1]["true_amps"] > FLOWS_A,
        "off_ms": None if off_s is None else (off_s - struck_s) * 1e3,
        "on_again": 0 if off_s is None else sum(truth["on"] for truth in switches if truth["at_s"] > off_s),
        "lost_ms": (served[-1]["at_s"] - served[known - 1]["at_s"]) * 1e3 if known else float("inf"),
    }


def _filing(ledger: Path, kept: Path) -> list[str]:
    """What is wrong with what the next start files, or the terminal filed itself."""
    wrong: list[str] = []
    contents = read_journal(kept)
    with Ledger.open(ledger) as book:
        file_left_behind(book, journals_of(ledger), report=lambda path, why: wrong.append(f"{path.name}: {why}"))
        runs = book.recent_runs()
        if len(runs) != 1:
            return [*wrong, f"{len(runs)} runs are filed"]
        if not same(contents.trace, book.trace(runs[0].id)):
            wrong.append("the filed trace is not the journal's")
        events = book.events(runs[0].id)
        if tuple(events[: len(contents.events)]) != contents.events:
            wrong.append("the filed events are not the journal's")
        if not runs[0].result.output_confirmed_off:
            wrong.append("OFF was not confirmed in the record")
    return wrong


def same(one: Trace, other: Trace) -> bool:
    """Bit for bit, all seven columns."""
    names = ("sent", "received", "volts", "amps", "set_volts", "set_amps", "flags")
    return all(getattr(one, name).tobytes() == getattr(other, name).tobytes() for name in names)
