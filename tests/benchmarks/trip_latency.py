"""From a reading above a ceiling to the OFF bytes at the supply, with charts beside it that redraw millions of points.

Each trial is a bench process of its own, started through the shipped link, against a responder that at some reading
reports volts above the ceiling and takes the time until OFF arrives. Both times are of one clock at the supply.

    python -m tests.benchmarks.trip_latency [--trials 200] [--points 1000000]
"""

import argparse
import random
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import uuid
from multiprocessing import get_context
from multiprocessing.connection import Connection
from pathlib import Path

from benchlog.bench.frames import RENEW_EVERY_S, Ended, Request
from benchlog.bench.link import Link
from benchlog.outcome import Outcome
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import built_in

CEILING_V, ABOVE_V = 12.0, 13.0


def respond(to_parent: Connection, trials: int, seed: int) -> None:
    """A supply that obeys, until it lies about the volts. Sends its port, then for each client the s until OFF."""
    source = random.Random(seed)
    with socket.create_server(("127.0.0.1", 0)) as listener:
        to_parent.send(listener.getsockname()[1])
        for _ in range(trials):
            link, _ = listener.accept()
            link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            with link:
                to_parent.send(serve(link, source.randint(5, 40)))


def serve(link: socket.socket, lie_at: int) -> float | None:
    """One client to its end; s from the reply that lied to OFF, None if OFF never came."""
    state = {"VOLT": 0.0, "CURR": 0.0, "on": 0.0, "VOLT:PROT": 33.0, "CURR:PROT": 5.5}
    readings, lied_s, took_s, rest = 0, 0.0, None, b""
    while data := link.recv(65536):
        *lines, rest = (rest + data).split(b"\n")
        for line in lines:
            now_s = time.perf_counter()
            units = [unit.lstrip(":") for unit in line.decode().split(";")]
            if lied_s and took_s is None and "OUTP OFF" in units:
                took_s = now_s - lied_s
            replies = [reply for unit in units if (reply := answer(unit, state)) is not None]
            if len(replies) == 6:
                readings += state["on"] > 0
                if readings == lie_at and not lied_s:
                    replies[0] = f"{ABOVE_V:.3f}"
                    lied_s = time.perf_counter()
            if replies:
                link.sendall((";".join(replies) + "\n").encode())
    return took_s


def answer(unit: str, state: dict[str, float]) -> str | None:
    """The reply to one program message unit, in exact short forms."""
    fixed = {
        "*IDN?": "Harbour Workshop,Responder,0,1",
        "SYST:ERR?": '0,"No error"',
        "MEAS:VOLT?": f"{state['VOLT'] if state['on'] else 0.0:.3f}",
        "MEAS:CURR?": "0.000",
        "OUTP?": f"{state['on']:.0f}",
        "STAT:QUES:COND?": "2",
        "VOLT? MAX": "30",
        "CURR? MAX": "5",
    }
    if unit in fixed:
        return fixed[unit]
    if unit.endswith("?"):
        named = unit[:-1]
        return f"{state[named]:.4f}" if named in state else str(int(not named.endswith("TRIP")))
    name, _, value = unit.partition(" ")
    if name == "OUTP":
        state["on"] = float(value == "ON")
    elif name in state:
        state[name] = float(value)
    return None


def one_trial(port: int, folder: Path) -> None:
    """A probe on the responder, to its end."""
    uid = uuid.uuid4().hex
    link = Link(
        Request(
            uid=uid,
            kind=RunKind.PROBE,
            resource=f"TCPIP::127.0.0.1::{port}::SOCKET",
            rated_volts=CEILING_V,
            layers={Layer.JOB: Limits(volts=CEILING_V)},
            sequence=built_in("starting-ladder"),
            journal=str(folder / f"{uid}.journal"),
            job=None,
            unattended=True,
        )
    )
    link.start()
    renewed_s = 0.0
    while True:
        if time.monotonic() - renewed_s > RENEW_EVERY_S:
            link.renew()
            renewed_s = time.monotonic()
        ended = [frame for frame in link.poll() if isinstance(frame, Ended)]
        if ended:
            assert ended[0].result.outcome is Outcome.CEILING, ended[0].result.reason
            break
        time.sleep(0.01)
    link.close()


def measure(trials: int, seed: int) -> list[float]:
    """s from the lie to OFF, of each trial."""
    parent, child = get_context("spawn").Pipe()
    supply = get_context("spawn").Process(target=respond, args=(child, trials, seed))
    supply.start()
    port = parent.recv()
    took = []
    with tempfile.TemporaryDirectory() as folder:
        for _ in range(trials):
            one_trial(port, Path(folder))
            found = parent.recv()
            assert found is not None, "OFF never came"
            took.append(found)
    supply.join()
    return took


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--trials", type=int, default=200)
    parser.add_argument("--points", type=int, default=1_000_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    print(f"{'beside it':44} {'trials':>6} {'p50 ms':>8} {'p99 ms':>8} {'worst ms':>9}")
    for name, points in (("nothing", 0), (f"two charts redrawing 4 × {asked.points:,} points", asked.points)):
        drawing = (
            subprocess.Popen([sys.executable, "-P", "-m", "tests.benchmarks.redrawing", str(points)])
            if points
            else None
        )
        try:
            if drawing is not None:
                time.sleep(4.0)
            took_ms = sorted(1e3 * s for s in measure(asked.trials, asked.seed))
        finally:
            if drawing is not None:
                drawing.terminate()
                drawing.wait()
        p99 = took_ms[min(len(took_ms) - 1, round(0.99 * len(took_ms)))]
        print(f"{name:44} {len(took_ms):6} {statistics.median(took_ms):8.2f} {p99:8.2f} {took_ms[-1]:9.2f}")


if __name__ == "__main__":
    main()
