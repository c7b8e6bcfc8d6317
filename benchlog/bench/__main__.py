"""The process that holds the supply, for one run: `python -m benchlog.bench`, orders on stdin, frames on stdout.

No Qt and no SQL. Frames leave through a thread and are dropped when the pipe is full: the loop never blocks on it.
"""

import contextlib
import gc
import logging
import os
import queue
import signal
import sys
import threading
from pathlib import Path

import msgspec

from benchlog.bench import rescue
from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Ended, Frame, Happened, Order, Question, Request
from benchlog.bench.lease import Lease, pack, read_orders, read_payload
from benchlog.bench.opening import open_supply
from benchlog.clock import SystemClock
from benchlog.errors import Refused
from benchlog.outcome import Outcome, RunResult
from drivers.supply import Capabilities

MOST_WAITING = 256


class FrameSender:
    """Frames to the other side. Progress is dropped when it is slow; what must not be lost waits a little longer."""

    def __init__(self, file: int) -> None:
        self._file = file
        self._waiting: queue.Queue[bytes | None] = queue.Queue(MOST_WAITING)
        self._thread = threading.Thread(target=self._send, name="frames", daemon=True)
        self._thread.start()

    def emit(self, frame: Frame) -> None:
        room = MOST_WAITING - self._waiting.qsize()
        if room > (1 if isinstance(frame, Happened | Question | Ended) else MOST_WAITING // 2):
            with contextlib.suppress(queue.Full):
                self._waiting.put_nowait(pack(frame))

    def _send(self) -> None:
        while (data := self._waiting.get()) is not None:
            try:
                while data:
                    data = data[os.write(self._file, data) :]
            except OSError:
                return

    def close(self) -> None:
        with contextlib.suppress(queue.Full):
            self._waiting.put(None, timeout=0.5)
        self._thread.join(timeout=1.0)


def main() -> int:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C reaches every process of the terminal; its owner decides
    if hasattr(signal, "SIGHUP"):
        signal.signal(signal.SIGHUP, signal.SIG_IGN)
    logging.basicConfig(stream=sys.stderr, level=logging.ERROR, format="bench: %(message)s")
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
    signal.signal(signal.SIGTERM, lambda *_: lease.end("the bench process was told to end"))
    threading.Thread(target=read_orders, args=(orders, lease), name="orders", daemon=True).start()
    sender = FrameSender(sys.stdout.fileno())
    waiting = rescue.Rescue(request.resource, Path(request.journal + ".rescue"))

    def beat() -> None:
        if not waiting.beat():
            lease.end("the waiting rescue process is gone")

    def stand_by(capabilities: Capabilities) -> None:
        if not waiting.stand_by(capabilities):
            raise Refused("the rescue process did not start: nothing is switched on without it")

    def going_off() -> None:
        waiting.beat(rescue.GOING_OFF)

    def known_off() -> None:
        waiting.beat(rescue.SAFE)

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
    confirmed = False
    try:
        confirmed = conductor.run(lambda: open_supply(request.resource, clock.now), stand_by).output_confirmed_off
    finally:
        sender.close()
        # Last, because a rescue begins by killing this process. Where off is not confirmed it is left to find this
        # process gone, and to try once more on its own.
        waiting.release(safe=confirmed)
    return 0


if __name__ == "__main__":
    sys.exit(main())
