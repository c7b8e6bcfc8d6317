"""Serves a scenario on a loopback port: `python -m drivers.simulated --scenario free`.

A scenario's name on its standard input is what hangs on the terminals from then on; with a number behind it one of
several of that kind: "free 3"; "first" is what hung there first.

With `--speaks NAME|FILE.toml` its supply speaks that dialect, and with `--quirk NAME` it has that habit as well.
"""

import argparse
import contextlib
import errno
import os
import signal
import sys
import threading
import time
from pathlib import Path

import msgspec

from drivers.dialect import Dialect, DialectError, read, shipped, shipped_names
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import QUIRKS, together
from drivers.simulated.scenario import BadScenario, Scenario, load, names, with_array, with_ranges
from drivers.simulated.serve import Server
from drivers.simulated.truth import Truth

FIRST = "first"
READ_AGAIN_S = 0.5
ABOUT = (
    "A simulated bench on loopback. A scenario's name typed while it runs, and Enter, hangs that on the clips instead; "
    'with a number behind it one of several of that kind: "free 3".'
)


def main(arguments: list[str] | None = None, *, name: str = "python -m drivers.simulated") -> int:
    """Prints one line with the address and serves until SIGTERM, SIGINT or, if asked for, the end of stdin."""
    parser = _parser(name)
    asked = parser.parse_args(arguments)
    if asked.list:
        for name in names():
            sys.stdout.write(f"{name}: {load(name).story}\n")
        return 0
    if asked.quirk and asked.speaks is None:
        parser.error("--quirk needs --speaks: the strict instrument has none")
    try:
        scenario = _with_quirks(load(asked.scenario), asked)
        speaks = _dialect(asked.speaks) if asked.speaks is not None else None
        others = (load(asked.second),) if asked.second is not None else None
    except (BadScenario, DialectError) as error:
        parser.error(str(error))
    if speaks is not None:
        scenario = with_ranges(scenario, speaks)
    bench = Bench(scenario, asked.seed, speaks=speaks, quirks=together(asked.quirk), others=others)
    if asked.reply_ms is not None:
        bench.instrument.reply_s = asked.reply_ms / 1000.0
    server = Server(bench, port=asked.port, clients=scenario.supply.clients)
    for number in (signal.SIGTERM, signal.SIGINT):
        signal.signal(number, lambda *_: server.stop())
    if sys.stdin is not None:
        if hasattr(signal, "SIGTTIN"):
            signal.signal(signal.SIGTTIN, signal.SIG_IGN)  # in the background: a refused read, not a stopped process
        threading.Thread(target=_obey, args=(server, asked.until_stdin_closes), daemon=True).start()
    with _truth_file(bench, asked.truth):
        sys.stdout.write(f"listening on {server.resource}\n")
        sys.stdout.flush()
        server.run()
    return 0


def _parser(name: str) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog=name, description=ABOUT)
    parser.add_argument("--scenario", default="stuck-soft", help="a name, or a path that ends in .toml")
    parser.add_argument("--list", action="store_true", help="name the scenarios and end")
    parser.add_argument("--port", type=int, default=0, help="0: any free port")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--truth", type=Path, help="file that gets what was true, as JSON lines")
    parser.add_argument("--reply-ms", type=float, help="latency of every reply; default 8 for readings, else 1")
    parser.add_argument("--clients", type=int, help="so many clients at once; a further one waits unanswered")
    parser.add_argument("--ignore-off", type=int, help="so many OUTP OFF are ignored")
    parser.add_argument("--volts-on-terminals", type=float, help="another source on the terminals")
    parser.add_argument("--array", action="store_true", help="the supply has a measurement array of its own")
    parser.add_argument(
        "--speaks", metavar="NAME|FILE.toml", help=f"a dialect: {', '.join(shipped_names())}, or a file"
    )
    parser.add_argument("--quirk", action="append", default=[], choices=list(QUIRKS), help="of that supply; repeatable")
    parser.add_argument("--second", metavar="SCENARIO", help="what hangs on output 2; otherwise a resistor")
    parser.add_argument("--until-stdin-closes", action="store_true")
    return parser


def _dialect(name: str) -> Dialect:
    """Raises DialectError."""
    if name.endswith(".toml"):
        return read(Path(name))
    if name not in shipped_names():
        raise DialectError(f'no dialect is called "{name}"; there are: {", ".join(shipped_names())}')
    return shipped(name)


def _with_quirks(scenario: Scenario, asked: argparse.Namespace) -> Scenario:
    quirks = {
        name: getattr(asked, name)
        for name in ("clients", "ignore_off", "volts_on_terminals")
        if getattr(asked, name) is not None
    }
    scenario = msgspec.structs.replace(scenario, supply=msgspec.structs.replace(scenario.supply, **quirks))
    return with_array(scenario) if asked.array else scenario


def _obey(server: Server, until_closed: bool) -> None:
    """What is written on stdin, until it ends."""
    begun = b""
    try:
        while read := _read():
            *lines, begun = (begun + read).split(b"\n")
            for line in lines:
                _tell(_hang(server, line.decode("utf-8", "replace").strip()))
    finally:
        if until_closed:
            server.stop()


def _read() -> bytes:
    # Not through sys.stdin: a thread that waits inside its buffer would abort the interpreter's shutdown.
    while True:
        try:
            return os.read(sys.stdin.fileno(), 4096)
        except OSError as error:
            if error.errno != errno.EIO:
                return b""
            time.sleep(READ_AGAIN_S)  # in the background of a terminal: what is typed there is not for this program
        except ValueError:  # closed
            return b""


def _hang(server: Server, asked: str) -> str:
    """What is to be said of it."""
    name, _, number = asked.rpartition(" ")
    if not number.isdecimal():
        name, number = asked, "0"
    try:
        thing = None if name == FIRST else load(name)
    except BadScenario as error:
        return str(error)
    server.by_hand(lambda bench: bench.hang(thing, int(number)))
    return f"on the terminals: {asked}"


def _tell(words: str) -> None:
    """Where somebody reads it."""
    with contextlib.suppress(OSError, ValueError, AttributeError):
        sys.stderr.write(f"{words}\n")


class _truth_file:
    """Writes each truth as it happens, one JSON line, flushed; without a path nothing."""

    def __init__(self, bench: Bench, path: Path | None) -> None:
        self._bench = bench
        self._file = path.open("wb", buffering=0) if path is not None else None

    def __enter__(self) -> None:
        if self._file is not None:
            self._bench.on_truth = self._write

    def __exit__(self, *_: object) -> None:
        if self._file is not None:
            self._file.close()

    def _write(self, record: Truth) -> None:
        if self._file is not None:
            self._file.write(msgspec.json.encode(record) + b"\n")


if __name__ == "__main__":
    sys.exit(main())
