"""The process that holds the supply, for one run: `python -m benchlog.bench`, orders on stdin, frames on stdout.

No Qt and no SQL. Frames leave through a thread and are dropped when the pipe is full: the loop never blocks on it, and
a pipe that nobody reads ends the lease.
"""

import contextlib
import gc
import logging
import os
import queue
import signal
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import msgspec

from benchlog.bench import rescue
from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import LEASE_S, Ended, Frame, Happened, Order, Question, Request
from benchlog.bench.lease import Lease, pack, read_orders, read_payload
from benchlog.bench.opening import dialect_of, open_supply
from benchlog.bench.rescue import Charge, KnownOff
from benchlog.bench.supply_lock import HeldSupply, hold_for
from benchlog.clock import Clock, SystemClock
from benchlog.errors import Refused
from benchlog.logs import keep_log
from benchlog.outcome import Outcome, RunResult
from drivers.dialect import DialectError
from drivers.supply import Capabilities, Supply

MOST_WAITING = 256
_log = logging.getLogger("benchlog.bench")


class FrameSender:
    """Frames to the other side. Progress is dropped when it is slow; what must not be lost waits a little longer.

    `gone` is called at once, from the thread, when the other side has closed its end.
    """

    def __init__(self, file: int, gone: Callable[[], None] = lambda: None) -> None:
        self._file, self._gone = file, gone
        self._clock = SystemClock()
        self._writing_since_s: float | None = None
        self._waiting: queue.Queue[bytes | None] = queue.Queue(MOST_WAITING)
        self._thread = threading.Thread(target=self._send, name="frames", daemon=True)
        self._thread.start()

    @property
    def stuck_s(self) -> float:
        """s for which the other side has taken nothing of what is being written."""
        since_s = self._writing_since_s
        return 0.0 if since_s is None else self._clock.now() - since_s

    def emit(self, frame: Frame | Charge | KnownOff) -> None:
        room = MOST_WAITING - self._waiting.qsize()
        if room > (1 if isinstance(frame, Happened | Question | Ended | KnownOff) else MOST_WAITING // 2):
            with contextlib.suppress(queue.Full):
                self._waiting.put_nowait(pack(frame))

    def _send(self) -> None:
        while (data := self._waiting.get()) is not None:
            try:
                while data:
                    self._writing_since_s = self._clock.now()
                    data = data[os.write(self._file, data) :]
                    self._writing_since_s = None
            except OSError:
                self._writing_since_s = None
                self._gone()
                return

    def close(self) -> None:
        with contextlib.suppress(queue.Full):
            self._waiting.put(None, timeout=0.5)
        self._thread.join(timeout=1.0)


def main() -> int:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C reaches every process of the terminal; its owner decides
    if hasattr(signal, "SIGHUP"):
        signal.signal(signal.SIGHUP, signal.SIG_IGN)
    logging.basicConfig(stream=sys.stderr, format="bench: %(message)s")
    logging.getLogger().handlers[0].setLevel(logging.ERROR)
    keep_log("bench")
    rescue.go_first()
    # Unbuffered: a thread that waits in a buffered read would hold its lock when the interpreter ends.
    orders = open(sys.stdin.fileno(), "rb", buffering=0, closefd=False)  # noqa: SIM115
    payload = read_payload(orders)
    if payload is None:
        return 2
    request = msgspec.msgpack.decode(payload, type=Order)
    if not isinstance(request, Request):
        return 2
    clock = SystemClock()
    lease = Lease(clock)
    # From a thread: the handler may interrupt the main one inside the very event that a stop sets.
    told = threading.Thread(target=lease.end, args=("the bench process was told to end",), daemon=True)
    signal.signal(signal.SIGTERM, lambda *_: None if told.ident else told.start())
    threading.Thread(target=read_orders, args=(orders, lease), name="orders", daemon=True).start()
    sender = FrameSender(sys.stdout.fileno(), lambda: lease.end("the window or terminal takes no more frames"))
    held = _held(request)
    files = held.files if isinstance(held, HeldSupply) else ()
    waiting = rescue.Rescue(request.resource, Path(request.journal + ".rescue"), request.dialect, files)
    charge: Charge | None = None
    charged = False

    def beat() -> None:
        nonlocal charged
        # From the first step of the loop on, before which nothing is on: making a slow supply ready sends no frame.
        if charge is not None and not charged:
            charged = True
            sender.emit(charge)
        if not waiting.beat():
            lease.end("the waiting rescue process is gone")
        if (stuck_s := sender.stuck_s) > LEASE_S:
            lease.end(f"the window or terminal has not taken a frame for {stuck_s:.1f} s")

    def stand_by(capabilities: Capabilities) -> None:
        nonlocal charge
        charge = waiting.charge(capabilities)
        if not waiting.stand_by(capabilities):
            raise Refused("the rescue process did not start: nothing is switched on without it")

    def going_off() -> None:
        waiting.beat(rescue.GOING_OFF)
        if charge is not None:
            sender.emit(charge)

    def known_off() -> None:
        waiting.beat(rescue.SAFE)
        sender.emit(KnownOff())

    try:
        conductor = Conductor(
            request, clock=clock, lease=lease, emit=sender.emit, beat=beat, going_off=going_off, known_off=known_off
        )
    except OSError as error:
        refusal = RunResult(outcome=Outcome.REFUSED, reason=f"the record can't be begun: {error}")
        sender.emit(Ended(result=refusal, journal=None))
        waiting.release(safe=True)
        sender.close()
        return 1
    gc.freeze()
    confirmed = reached = False

    def opened() -> Supply:
        nonlocal reached
        supply = _open(request, held, clock)
        reached = True
        return supply

    result: RunResult | None = None
    try:
        result = conductor.run(opened, stand_by)
        confirmed = result.output_confirmed_off
    finally:
        sender.close()
        if result is not None and result.outcome is Outcome.REFUSED and not reached:
            _log.info("the run was refused before a supply was reached: nothing was driven")
        elif not confirmed:
            _log.warning("the run ended, and the output is not confirmed off")
        # Last, because a rescue begins by killing this process. Where off is not confirmed it is left to find this
        # process gone, and to try once more on its own.
        waiting.release(safe=confirmed)
        if confirmed and isinstance(held, HeldSupply):  # else the rescue has it until it is through
            held.release()
    return 0


def _held(request: Request) -> HeldSupply | Refused:
    """Taken before anything else, so that the rescue inherits it; what is in the way is raised where it is opened."""
    try:
        return hold_for(request, dialect_of(request.dialect))
    except DialectError as error:
        return Refused(f"the dialect of the supply: {error}")
    except Refused as refusal:
        return refusal


def _open(request: Request, held: HeldSupply | Refused, clock: Clock) -> Supply:
    """Raises Refused, SupplyError."""
    if isinstance(held, Refused):
        raise held
    dialect = dialect_of(request.dialect)
    return open_supply(request.resource, clock.now, dialect=dialect, output=request.output, identity=request.identity)


if __name__ == "__main__":
    sys.exit(main())
