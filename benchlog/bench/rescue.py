"""The process that waits: when the bench process is gone or silent while the output may be on, it switches off.

Started by the bench process before the output can be on, in a process group of its own, its imports done, no session
open. It reads beats from a pipe. The order is: kill first (many supplies take one client), connect, off, read back,
write down what came of it beside the journal. Started as `python -m benchlog.bench.rescue`. Where it is gone or stopped
too, whoever holds the link starts another.
"""

import contextlib
import json
import logging
import os
import queue
import signal
import subprocess
import sys
import threading
from pathlib import Path
from typing import IO

import msgspec

from benchlog.bench.arming import disarm
from benchlog.bench.opening import dialect_of, open_supply
from benchlog.bench.switching_off import switch_off
from benchlog.clock import SystemClock
from benchlog.logs import keep_log
from drivers.children import command
from drivers.supply import Capabilities, SupplyError

SAFE, ALIVE, GOING_OFF = b"0", b"1", b"2"
BEAT_EVERY_S = 0.05
GOING_OFF_SILENCE_S = 1.5
"""Switching off may have to reopen a session, which takes longer than any reading."""
LATE_S = 0.01
"""For beats that came while this process itself was stopped, or the computer slept: they are read first."""
READY = b"ready\n"
PRIORITY = -10
_log = logging.getLogger("benchlog.bench.rescue")


class Charge(msgspec.Struct, frozen=True, kw_only=True, tag="charge"):
    """What a rescue has to look after; one JSON line on its standard input, before the first beat.

    Also a frame to the link: from now on the output may be on. Repeated at every try to switch off. `who` does it.
    `dialect`: as of a Request.
    """

    resource: str
    pid: int
    record: str
    capabilities: Capabilities
    who: str = "the waiting process"
    dialect: str = ""

    @property
    def silence_s(self) -> float:
        """How long the bench process may be silent while the output may be on: a setpoint, a reading, and some more."""
        can = self.capabilities
        return max(0.5, 6 * can.reply_s + 0.1, 1.5 * can.reading_s + 0.1)


class KnownOff(msgspec.Struct, frozen=True, tag="known off"):
    """A frame to the link: the output was read back as off, and there is nothing left to be rescued."""


class Rescue:
    """The bench process's side: starts the waiting process and tells it that all is well."""

    def __init__(self, resource: str, record: Path, dialect: str = "", inherits: tuple[int, ...] = ()) -> None:
        """`inherits`: files that the process keeps open, the locks of the supply."""
        self._resource, self._record, self._dialect = resource, record, dialect
        self._state = SAFE
        self._last_s = 0.0
        self._clock = SystemClock()
        self._process = start(inherits)
        self.pid = self._process.pid
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._pipe, self._words = self._process.stdin, self._process.stdout

    def charge(self, capabilities: Capabilities) -> Charge:
        return Charge(
            resource=self._resource,
            pid=os.getpid(),
            record=str(self._record),
            capabilities=capabilities,
            dialect=self._dialect,
        )

    def stand_by(self, capabilities: Capabilities) -> bool:
        """Hands over the charge and waits until it is taken; False if the process is not there."""
        try:
            self._pipe.write(msgspec.json.encode(self.charge(capabilities)) + b"\n")
            self._pipe.flush()
        except OSError:
            return False
        ready = self._words.readline() == READY
        if hasattr(os, "set_blocking") and sys.platform != "win32":
            os.set_blocking(self._pipe.fileno(), False)  # a stopped rescue must not stop the loop
        return ready

    def beat(self, state: bytes = ALIVE) -> bool:
        """Says that this process lives; at most every 50 ms, a change of state at once. False: nobody listens."""
        now_s = self._clock.now()
        if state == self._state and now_s - self._last_s < BEAT_EVERY_S:
            return True
        self._state, self._last_s = state, now_s
        try:
            os.write(self._pipe.fileno(), state)
        except OSError:
            return False
        return True

    def release(self, *, safe: bool) -> None:
        """Ends the charge. `safe`: the output is known to be off; otherwise the process does what it waits for."""
        if safe:
            self.beat(SAFE)
        with contextlib.suppress(OSError):
            self._pipe.close()
        self._words.close()
        if safe:
            try:
                self._process.wait(timeout=2.0)
            except subprocess.TimeoutExpired:  # stopped, perhaps: it has nothing left to wait for
                self._process.kill()
                self._process.wait()


def go_first() -> None:
    """Before other programs, where the system lets this one ask: a busy computer must not look like a hung process."""
    with contextlib.suppress(OSError, AttributeError):
        os.setpriority(os.PRIO_PROCESS, 0, PRIORITY)


def start(inherits: tuple[int, ...] = ()) -> subprocess.Popen[bytes]:
    """A process that waits for its charge. Raises OSError."""
    return subprocess.Popen(
        command("benchlog.bench.rescue"),
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        start_new_session=True,
        pass_fds=() if sys.platform == "win32" else inherits,  # there a lock is its process's own
        creationflags=getattr(subprocess, "CREATE_NEW_PROCESS_GROUP", 0),
    )


def start_now(charge: Charge) -> subprocess.Popen[bytes]:
    """A process that takes the charge and finds the bench process gone. Never waits. Raises OSError."""
    process = start()
    assert process.stdin is not None
    with process.stdin as pipe, contextlib.suppress(BrokenPipeError):
        pipe.write(msgspec.json.encode(charge) + b"\n" + ALIVE)
    return process


def wait_for_trouble(beats: "queue.SimpleQueue[bytes]", silence_s: float) -> str | None:
    """Blocks until the bench process is gone, or silent with the output perhaps on, and says which; None: all well."""
    state = SAFE
    while True:
        limit = {SAFE: None, ALIVE: silence_s, GOING_OFF: max(silence_s, GOING_OFF_SILENCE_S)}[state]
        try:
            beat = beats.get(timeout=limit)
        except queue.Empty:
            try:
                beat = beats.get(timeout=LATE_S)
            except queue.Empty:
                return "was silent"
        if beat == b"":
            return None if state == SAFE else "is gone"
        state = beat


def _read_beats(pipe: IO[bytes], beats: "queue.SimpleQueue[bytes]") -> None:
    # Unbuffered single bytes: only the last of those waiting matters.
    while chunk := os.read(pipe.fileno(), 4096):
        beats.put(chunk[-1:])
    beats.put(b"")


def rescue(charge: Charge, why: str) -> bool:
    """Kill, connect, off, read back, write down; whether the output was read back as off."""
    clock = SystemClock()
    # An orphan's parent is another: then the process is gone, and its number may be somebody else's.
    if os.getppid() == charge.pid:
        with contextlib.suppress(OSError):
            os.kill(charge.pid, signal.SIGTERM if sys.platform == "win32" else signal.SIGKILL)
    text, confirmed = "", False
    dialect = dialect_of(charge.dialect)
    until_s = clock.now() + 3.0
    while not confirmed and clock.now() < until_s:
        try:
            known = charge.capabilities
            supply = open_supply(charge.resource, clock.now, known, dialect=dialect, output=known.output)
        except SupplyError as error:
            text = f"NOT CONFIRMED: switch the supply off by hand ({error})."
            clock.wait(clock.now() + 0.02)
            continue
        off = switch_off(supply, clock)
        if off.confirmed:
            disarm(supply)
        supply.close()
        text, confirmed = off.text, off.confirmed
    line = {
        "utc": clock.utc(),
        "confirmed_off": confirmed,
        "text": f"The bench process {why}; {charge.who} switched off. {text}",
    }
    record = Path(charge.record)
    if record.exists() and not confirmed:
        return False  # another was here before: its word is as good or better
    partial = record.with_name(f"{record.name}.{os.getpid()}.part")
    partial.write_text(json.dumps(line) + "\n", encoding="utf-8")
    os.replace(partial, record)
    return confirmed


def main() -> None:
    # A logout tells every process to end. This one ends with its pipe, once nothing is left to be switched off.
    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_IGN)
    go_first()
    keep_log("rescue")
    import pyvisa

    pyvisa.ResourceManager("@py")  # its first use imports a good deal: not when it is urgent
    pipe = sys.stdin.buffer
    line = b""
    while not line.endswith(b"\n"):
        byte = os.read(pipe.fileno(), 1)
        if not byte:
            return
        line += byte
    charge = msgspec.json.decode(line, type=Charge)
    with contextlib.suppress(OSError):  # whoever started it may be gone by now: all the more is there to do
        os.write(sys.stdout.fileno(), READY)
    beats: queue.SimpleQueue[bytes] = queue.SimpleQueue()
    threading.Thread(target=_read_beats, args=(pipe, beats), daemon=True).start()
    trouble = wait_for_trouble(beats, charge.silence_s)
    if trouble is not None:
        confirmed = rescue(charge, trouble)
        _log.warning(
            "acted for a bench process; it was gone, not silent: %s; read back as off: %s",
            trouble == "is gone",
            confirmed,
        )


if __name__ == "__main__":
    main()
