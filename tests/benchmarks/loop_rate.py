"""Samples a second of the control loop in a process of its own, guard, journal, lease, frames and beats on, against a
bare hand-written loop on the same simulated supply. Both in one run, in turns.

    python -m tests.benchmarks.loop_rate [--rounds 5] [--samples 1500]
"""

import argparse
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

import pyvisa

from benchlog.bench.frames import Renew
from benchlog.bench.lease import pack
from benchlog.clock import SystemClock
from drivers import scpi
from drivers.dialect import shipped

SCENARIO = "hopeless"


def bare_loop(resource: str, samples: int) -> float:
    """Readings a second of the least that reads the same six values with pyvisa."""
    visa = pyvisa.ResourceManager("@py").open_resource(
        resource, read_termination="\n", write_termination="\n", timeout=2000
    )
    back = shipped().readback
    message = scpi.join(back.volts, back.amps, back.set_volts, back.set_amps, back.output, back.condition)
    visa.query(message)  # type: ignore[attr-defined]
    began = time.perf_counter()
    rows = []
    for _ in range(samples):
        rows.append([float(part) for part in visa.query(message).split(";")])  # type: ignore[attr-defined]
    rate = samples / (time.perf_counter() - began)
    visa.close()
    return rate


def whole_loop(resource: str, samples: int) -> float:
    """Readings a second of the shipped loop, in a process of its own."""
    with tempfile.TemporaryDirectory() as folder:
        process = subprocess.Popen(
            [
                *(sys.executable, "-P", "-m", "tests.benchmarks.loop_process"),
                *(resource, str(samples), str(Path(folder) / "rate.journal")),
            ],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        )
        assert process.stdin is not None
        assert process.stderr is not None
        taken = threading.Thread(target=lambda: process.stdout and process.stdout.read(), daemon=True)
        taken.start()
        while process.poll() is None:
            try:
                process.stdin.write(pack(Renew()))
                process.stdin.flush()
            except OSError:
                break
            time.sleep(0.1)
        rate = float(process.stderr.read().split()[-1])
        process.wait()
        for pipe in (process.stdin, process.stdout, process.stderr):
            if pipe is not None:
                pipe.close()
        return rate


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--samples", type=int, default=1500)
    asked = parser.parse_args()
    SystemClock().utc()
    print(f"{'answers in':12} {'bare loop /s':>14} {'whole loop /s':>14} {'ratio':>7} {'overhead µs':>12}")
    for reply_ms in (2.0, 0.0):
        bare, whole = list[float](), list[float]()
        for _ in range(asked.rounds):
            for function, rates in ((bare_loop, bare), (whole_loop, whole)):
                with BenchAt(reply_ms) as resource:
                    rates.append(function(resource, asked.samples))
        ratio = statistics.median(w / b for w, b in zip(whole, bare, strict=True))
        over_us = statistics.median(1e6 / w - 1e6 / b for w, b in zip(whole, bare, strict=True))
        medians = f"{statistics.median(bare):14.0f} {statistics.median(whole):14.0f}"
        print(f"{reply_ms:9.0f} ms {medians} {ratio:7.3f} {over_us:12.0f}")


class BenchAt:
    """A simulated bench that answers after so many ms."""

    def __init__(self, reply_ms: float) -> None:
        self._reply_ms = reply_ms

    def __enter__(self) -> str:
        self._process = subprocess.Popen(
            [
                *(sys.executable, "-P", "-m", "drivers.simulated", "--scenario", SCENARIO),
                *("--reply-ms", str(self._reply_ms), "--until-stdin-closes"),
            ],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert self._process.stdout is not None
        return self._process.stdout.readline().removeprefix("listening on ").strip()

    def __exit__(self, *_: object) -> None:
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.close()
        self._process.wait()
        self._process.stdout.close()


if __name__ == "__main__":
    main()
