"""A day's run-in through the shipped loop, guard, plan, journal and filing, in virtual time: memory, size, opening.

The supply is a cheap stand-in (tests/running_motor.py) with a fan that warms up; everything from the loop on is what
ships. Frames go where a window would keep them: into the ring of its chart. Memory is what Python holds (tracemalloc,
which slows the run some four times) and the process's resident set.

    python -m tests.benchmarks.run_in_day [--rates 1,20] [--hours 24] [--seed 1]
"""

import argparse
import gc
import resource
import tempfile
import time
import tracemalloc
from pathlib import Path

from benchlog.bench.frames import Frame, Happened, Progress
from benchlog.bench.journal import read_journal
from benchlog.clock import VirtualClock
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.recovery.start_test import RunIn
from tests.running_motor import RunningMotor, conducted, run_in_request, warming
from ui.charts.readings import Readings

MASS_G = 60.0
BOUND_MB = 8.0
"""MB that the process may hold more at the end of the day than after its first ten minutes, the chart apart."""


class Window:
    """Takes frames as the window does: readings into the chart's ring, events as they come; memory every hour."""

    def __init__(self) -> None:
        self.readings = Readings()
        self.events = 0
        self.held: list[tuple[float, float]] = []
        self._next_s = 600.0

    def take(self, frame: Frame) -> None:
        if isinstance(frame, Progress):
            self.readings.append(frame.t_s, frame.volts, frame.amps)
            if frame.t_s[-1] >= self._next_s:
                self.held.append(
                    (frame.t_s[-1], tracemalloc.get_traced_memory()[0] / 1e6 if tracing() else resident_mb())
                )
                self._next_s = frame.t_s[-1] + 3600.0
        elif isinstance(frame, Happened):
            self.events += 1


def tracing() -> bool:
    return tracemalloc.is_tracing()


def resident_mb() -> float:
    """MB of this process now. Linux."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * resource.getpagesize() / 1e6


def day(rate: float, hours: float, seed: int, folder: Path, *, trace: bool) -> None:
    """One run-in at that many readings a second, and what came of it."""
    clock = VirtualClock(start_s=100.0)
    motor = RunningMotor(clock, ohm=24.0, tau_s=0.4, friction=warming(0.1, 0.034, 400.0), seed=seed)
    asked = RunIn(volts=12.0, at_most_s=3600.0 * hours, pace_s=1 / rate, flat_for_s=0.0, mass_g=MASS_G)
    journal = folder / f"day{rate:g}{trace}.journal"
    window = Window()
    gc.collect()
    if trace:
        tracemalloc.start()
    began_s = time.perf_counter()
    result = conducted(motor, clock, run_in_request(journal, asked), window.take)
    took_s = time.perf_counter() - began_s
    first, last = window.held[0], window.held[-1]
    ring = window.readings.t_s.base
    ring_mb = 0.0 if ring is None else ring.nbytes / 1e6
    kind = "traced" if trace else "resident"
    print(
        f"{rate:g}/s, {hours:g} h: {result.outcome}, {motor.reads:,} readings, {took_s:.0f} s, {window.events} events"
    )
    print(f"  {result.reason}; bound {result.winding_bound_c} °C")
    print(
        f"  {kind} memory {first[1]:.1f} MB after {first[0] / 60:.0f} min, "
        f"{last[1]:.1f} MB after {last[0] / 3600:.1f} h"
    )
    grown_mb = last[1] - first[1] - ring_mb
    print(f"  of it the chart's ring {ring_mb:.1f} MB: {grown_mb:.1f} MB more beside it, {BOUND_MB:g} are allowed")
    print(f"  {took_s / motor.reads * 1e6:.0f} µs a reading, all told")
    if trace:
        tracemalloc.stop()
        return
    print(f"  journal {journal.stat().st_size / 1e6:.1f} MB")
    _filed(journal, folder / f"day{rate:g}.db")


def _filed(journal: Path, path: Path) -> None:
    before = resident_mb()
    began_s = time.perf_counter()
    contents = read_journal(journal)
    read_s = time.perf_counter() - began_s
    samples = len(contents.trace.sent)
    del contents
    with Ledger.open(path) as ledger:
        began_s = time.perf_counter()
        filed = file_journal(ledger, journal)
        filed_s = time.perf_counter() - began_s
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3
        opened: list[tuple[float, float]] = []
        for _ in range(5):
            began_s, worked_s = time.perf_counter(), time.process_time()
            trace = ledger.trace(filed.run)
            opened.append((time.perf_counter() - began_s, time.process_time() - worked_s))
        assert len(trace.sent) == samples
    print(
        f"  reading the journal {read_s:.2f} s; filing it {filed_s:.2f} s, "
        f"resident {before:.0f} MB before, peak {peak:.0f}"
    )
    open_s, cpu_s = sorted(opened)[2]
    opened_ms = f"{1000 * open_s:.0f} ms, of them {1000 * cpu_s:.0f} worked"
    print(f"  ledger {path.stat().st_size / 1e6:.2f} MB; opening the trace {opened_ms}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rates", default="1,20")
    parser.add_argument("--hours", type=float, default=24.0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--trace", action="store_true", help="also by tracemalloc, slow")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        for rate in asked.rates.split(","):
            day(float(rate), asked.hours, asked.seed, Path(folder), trace=False)
            if asked.trace:
                day(float(rate), asked.hours, asked.seed, Path(folder), trace=True)


if __name__ == "__main__":
    main()
