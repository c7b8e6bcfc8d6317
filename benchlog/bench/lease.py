"""The output being on is a lease, renewed by the other side's event loop.

A thread reads orders, so that the control loop never blocks on the pipe. End of file ends the lease at once; silence
ends it after `LEASE_S`. A stop wakes the loop out of any wait.
"""

import math
import queue
import struct
import threading
from typing import IO

import msgspec

from benchlog.bench.frames import HELD_S, LEASE_S, MAX_MESSAGE, Answer, Hold, Note, Order, Renew, Request, Stop
from benchlog.clock import Clock

_LENGTH = struct.Struct("<I")
_decode = msgspec.msgpack.Decoder(Order).decode
_encode = msgspec.msgpack.Encoder().encode


def pack(message: msgspec.Struct) -> bytes:
    """A message as it goes through a pipe."""
    payload = _encode(message)
    return _LENGTH.pack(len(payload)) + payload


def read_payload(pipe: IO[bytes]) -> bytes | None:
    """The next message's bytes; None at end of file, or where the length can't be right."""
    head = _exactly(pipe, _LENGTH.size)
    if head is None:
        return None
    (length,) = _LENGTH.unpack(head)
    return None if length > MAX_MESSAGE else _exactly(pipe, length)


def _exactly(pipe: IO[bytes], count: int) -> bytes | None:
    data = b""
    while len(data) < count:
        more = pipe.read(count - len(data))
        if not more:
            return None
        data += more
    return data


class Lease:
    """What the other side wants. `ended` says why the output must go off, or None."""

    def __init__(self, clock: Clock) -> None:
        self.wake = threading.Event()
        self._clock = clock
        self._renewed_s = clock.now()
        self._held_s = -math.inf
        self._stop: str | None = None
        self._said: queue.SimpleQueue[Answer | Note] = queue.SimpleQueue()

    def take(self, order: Order) -> None:
        """One order, from whichever thread reads them."""
        match order:
            case Renew():
                self._renewed_s = self._clock.now()
            case Stop():
                self.end(order.reason)
            case Hold():
                self._held_s = self._clock.now() if order.down else -math.inf
            case Answer() | Note():
                self._said.put(order)
            case Request():
                self.end("a second request came while a run was on")

    def end(self, why: str) -> None:
        self._stop = self._stop or why
        self.wake.set()

    @property
    def expires_s(self) -> float:
        """Clock time at which it ends unless it is renewed before."""
        return self._renewed_s + LEASE_S

    def ended(self, now_s: float) -> str | None:
        if self._stop is not None:
            return self._stop
        if now_s - self._renewed_s > LEASE_S:
            return f"the window or terminal was silent for {now_s - self._renewed_s:.1f} s"
        return None

    def held(self, now_s: float) -> bool:
        """Whether the key for the hand on the shaft is down."""
        return now_s - self._held_s <= HELD_S

    def said(self) -> list[Answer | Note]:
        """Answers and notes since the last call."""
        found = []
        while not self._said.empty():
            found.append(self._said.get())
        return found


def read_orders(pipe: IO[bytes], lease: Lease) -> None:
    """Until end of file: the body of the thread that feeds a lease."""
    while (payload := read_payload(pipe)) is not None:
        try:
            lease.take(_decode(payload))
        except msgspec.MsgspecError:
            lease.end("an order could not be read")
    lease.end("the window or terminal is gone")
