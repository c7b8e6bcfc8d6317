"""Readings a second of the shipped supply in each shipped dialect, against a bare hand-written pyvisa loop that says
the same and takes the same figures. Both on the same simulated supply, in turns.

    python -m tests.benchmarks.dialect_rate [--rounds 3] [--seconds 2]
"""

import argparse
import os
import statistics
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from typing import Any

import pyvisa

from benchlog.bench.opening import open_session
from benchlog.clock import SystemClock
from drivers import scpi
from drivers.dialect import Dialect, for_output, shipped, shipped_names
from drivers.scpi_reading import ReadingForm
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from drivers.simulated.serve import Server


class BareLoop:
    """The least that does it: one output, no check of anything, the gap kept by sleeping."""

    def __init__(self, resource: str, dialect: Dialect) -> None:
        self.dialect = for_output(dialect, 1)
        link = self.dialect.link
        self.visa: Any = pyvisa.ResourceManager("@py").open_resource(
            resource, read_termination=link.reply_ends or None, write_termination=link.termination, timeout=2000
        )
        self.queries = ReadingForm(self.dialect, 1).queries
        select = [self.dialect.outputs.select] if self.dialect.outputs.select else []
        self.one = scpi.join(*select, *(query.unit for query in self.queries))
        self.free_s = 0.0

    def read(self) -> list[float]:
        link = self.dialect.link
        if link.compound:
            return [float(part) for part in self.visa.query(self.one).split(";")]
        rows = []
        for unit, length in self.queries:
            if link.gap_s:
                time.sleep(max(0.0, self.free_s - time.monotonic()))
            if length is None:
                reply = self.visa.query(unit)
            else:
                self.visa.write_raw(unit.encode())
                reply = self.visa.read_bytes(length)
            self.free_s = time.monotonic() + link.gap_s
            rows.append(float(reply) if length != 1 and reply not in ("CV", "CC", "UR", "OFF") else 0.0)
        return rows

    def close(self) -> None:
        self.visa.close()


def rate(read: Callable[[], object], seconds: float) -> float:
    """Readings a second."""
    for _ in range(3):
        read()
    began_s, count = time.perf_counter(), 0
    while time.perf_counter() - began_s < seconds:
        read()
        count += 1
    return count / (time.perf_counter() - began_s)


def bare(resource: str, dialect: Dialect, seconds: float) -> float:
    loop = BareLoop(resource, dialect)
    found = rate(loop.read, seconds)
    loop.close()
    return found


def whole(resource: str, dialect: Dialect, seconds: float) -> float:
    supply = ScpiSupply(lambda timeout_s: open_session(resource, dialect.link, timeout_s), dialect, SystemClock().now)
    found = rate(supply.read, seconds)
    supply.close()
    return found


class Served:
    """A simulated bench that speaks a dialect, in a process of its own."""

    def __init__(self, name: str, reply_ms: float) -> None:
        self._name, self._reply_ms = name, reply_ms

    def __enter__(self) -> str:
        command = [sys.executable, "-P", "-m", "tests.benchmarks.dialect_rate", "--serve", self._name]
        self._process = subprocess.Popen(
            [*command, "--reply-ms", str(self._reply_ms)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )
        assert self._process.stdout is not None
        return self._process.stdout.readline().strip()

    def __exit__(self, *_: object) -> None:
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.close()
        self._process.wait()
        self._process.stdout.close()


def serve(name: str, reply_ms: float) -> None:
    bench = Bench(load("hopeless"), 1, speaks=shipped(name))
    bench.instrument.reply_s = reply_ms / 1000.0
    server = Server(bench, port=0, clients=0)

    def stop_at_end() -> None:
        while os.read(sys.stdin.fileno(), 4096):
            pass
        server.stop()

    threading.Thread(target=stop_at_end, daemon=True).start()
    print(server.resource, flush=True)
    server.run()


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--seconds", type=float, default=2.0)
    parser.add_argument("--reply-ms", type=float, default=2.0)
    parser.add_argument("--serve", default="")
    asked = parser.parse_args()
    if asked.serve:
        serve(asked.serve, asked.reply_ms)
        return
    print(f"{'dialect':22} {'round trips':>12} {'bare loop /s':>13} {'supply /s':>11} {'ratio':>7}")
    for name in shipped_names():
        dialect = shipped(name)
        rates: dict[Callable[[str, Dialect, float], float], list[float]] = {bare: [], whole: []}
        for _ in range(asked.rounds):
            for function, found in rates.items():
                with Served(name, asked.reply_ms) as resource:
                    found.append(function(resource, dialect, asked.seconds))
        ratio = statistics.median(w / b for w, b in zip(rates[whole], rates[bare], strict=True))
        trips = 1 if dialect.link.compound else len(ReadingForm(dialect, 1).queries)
        medians = f"{statistics.median(rates[bare]):13.1f} {statistics.median(rates[whole]):11.1f}"
        print(f"{name:22} {trips:12} {medians} {ratio:7.3f}", flush=True)


if __name__ == "__main__":
    main()
