"""How long OFF takes over each link, right after a setpoint, and round trips a second against a bare pyvisa loop.

The instrument is a simulated bench in a process of its own, behind the responders of the tests. OFF is the time from
the call in the driver until the instrument has the message; a pseudo-terminal has no baud rate, a real line takes
10 bits a byte longer. The bare loop is pyvisa with its pure-Python backend on the same instrument; both in one run, in
turns.

With --kills the bench process is killed as well, and stopped, while current flows: then it is the rescue's OFF.

    python -m tests.benchmarks.link_latency [--times 1000] [--rounds 7] [--queries 1000] [--kills 0]
"""

import argparse
import os
import signal
import statistics
import tempfile
import time
from collections.abc import Callable
from multiprocessing import get_context
from multiprocessing.connection import Connection
from pathlib import Path

import pyvisa

from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from drivers.simulated.truth import OutputTruth
from drivers.supply import Setpoint
from drivers.visa import VisaSession
from tests.drivers.link_responders import LINKS, AtBench, Said
from tests.processes import TerminalProcess, wait_until

REPLY = b"5.0000;0.12000;5.0000;0.5000;1;1\n"
QUERY = "AT:ONCE?"


def serve(link: str, to_parent: Connection) -> None:
    """Behind one link until told to end; tells when it heard OFF whenever it is asked."""
    at_bench = AtBench(Bench(load("free")), reply_s=0.0)

    def says(message: str) -> Said:
        return Said(REPLY) if message == QUERY else at_bench(message)

    with LINKS[link](says) as instrument:
        to_parent.send(instrument.resource)
        while to_parent.recv() == "heard":
            to_parent.send([at_s for at_s, message in at_bench.heard if "OUTP OFF" in message][-1])


def off_latencies(resource: str, instrument: Connection, times: int) -> list[float]:
    """s from the call to the instrument's having the message."""
    supply = ScpiSupply(
        lambda timeout_s: VisaSession(resource, termination="\n", timeout_s=timeout_s), shipped(), time.perf_counter
    )
    took = []
    for _ in range(times):
        supply.set(Setpoint(volts=5.0, amps=0.5))
        called_s = time.perf_counter()
        supply.off()
        supply.read()
        instrument.send("heard")
        took.append(instrument.recv() - called_s)
    supply.close()
    return took


def rate_of(query: Callable[[str], object], queries: int) -> float:
    query(QUERY)
    began_s = time.perf_counter()
    for _ in range(queries):
        query(QUERY)
    return queries / (time.perf_counter() - began_s)


def ours(resource: str, queries: int) -> float:
    session = VisaSession(resource, termination="\n", timeout_s=2.0)
    rate = rate_of(session.query, queries)
    session.close()
    return rate


def bare(resource: str, queries: int) -> float:
    visa = pyvisa.ResourceManager("@py").open_resource(
        resource, read_termination="\n", write_termination="\n", timeout=2000
    )
    rate = rate_of(visa.query, queries)  # type: ignore[attr-defined]
    visa.close()
    return rate


def measure(link: str, asked: argparse.Namespace) -> str:
    parent, child = get_context("spawn").Pipe()
    process = get_context("spawn").Process(target=serve, args=(link, child))
    process.start()
    try:
        resource = parent.recv()
        took_ms = sorted(1e3 * s for s in off_latencies(resource, parent, asked.times))
        rates = [(ours(resource, asked.queries), bare(resource, asked.queries)) for _ in range(asked.rounds)]
    finally:
        parent.send("end")
        process.join()
    p99 = took_ms[min(len(took_ms) - 1, round(0.99 * len(took_ms)))]
    ratio = statistics.median(our / other for our, other in rates)
    our, other = (statistics.median(column) for column in zip(*rates, strict=True))
    off = f"{statistics.median(took_ms):8.2f} {p99:8.2f} {took_ms[-1]:9.2f}"
    return f"{link:8} {len(took_ms):6} {off} {our:14.0f} {other:12.0f} {ratio:7.2f}"


def rescued(link: str, hit: signal.Signals, seed: int) -> float:
    """s from a hit at the process that holds the supply until its output was off."""
    bench = Bench(load("stuck-hard"), seed)
    switched: list[tuple[float, bool]] = []
    bench.on_truth = lambda one: (
        switched.append((time.perf_counter(), one.on)) if isinstance(one, OutputTruth) else None
    )
    with tempfile.TemporaryDirectory() as folder, LINKS[link](AtBench(bench, reply_s=0.002)) as instrument:
        terminal = TerminalProcess(instrument.resource, Path(folder) / "ledger.db")
        try:
            held, _ = terminal.pids()
            wait_until(lambda: bench.output.on and bench.output.amps > 0.015)
            hit_s = time.perf_counter()
            os.kill(held, hit)
            off_s = wait_until(lambda: [at_s for at_s, on in switched if at_s > hit_s and not on])[0]
            time.sleep(0.3)
            assert not bench.output.on
        finally:
            terminal.close()
    return float(off_s - hit_s)


def tell_rescues(kills: int) -> None:
    print(f"{'link':8} {'hits':>6} {'killed, worst ms':>18} {'stopped, worst ms':>18}")
    for link in LINKS:
        worst_ms = [
            1e3 * max(rescued(link, hit, seed) for seed in range(kills)) for hit in (signal.SIGKILL, signal.SIGSTOP)
        ]
        print(f"{link:8} {kills:6} {worst_ms[0]:18.0f} {worst_ms[1]:18.0f}", flush=True)


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--times", type=int, default=1000)
    parser.add_argument("--rounds", type=int, default=7)
    parser.add_argument("--queries", type=int, default=1000)
    parser.add_argument("--kills", type=int, default=0)
    asked = parser.parse_args()
    off = f"{'OFFs':>6} {'p50 ms':>8} {'p99 ms':>8} {'worst ms':>9}"
    print(f"{'link':8} {off} {'round trips/s':>14} {'bare /s':>12} {'ratio':>7}")
    for link in LINKS:
        print(measure(link, asked), flush=True)
    if asked.kills:
        tell_rescues(asked.kills)


if __name__ == "__main__":
    main()
