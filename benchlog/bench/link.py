"""The other side of the bench process: starts it, renews its lease, takes its frames.

`renew` belongs into the event loop of whoever holds the link, never into a thread: a window too busy to renew is one
too busy to take "Output off".
"""

import collections
import contextlib
import json
import subprocess
import sys
import threading
from pathlib import Path

import msgspec

from benchlog.bench.frames import Answer, Ended, Frame, Happened, Note, Renew, Request, Stop
from benchlog.bench.lease import pack, read_payload
from benchlog.clock import SystemClock
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Event, EventKind

RESCUE_WITHIN_S = 6.0
_decode = msgspec.msgpack.Decoder(Frame).decode


class Link:
    """One run in a process of its own. Exactly one Ended comes out of `poll`, however the run ends."""

    def __init__(self, request: Request) -> None:
        self._request = request
        self._clock = SystemClock()
        self._frames: collections.deque[Frame] = collections.deque()
        self._process: subprocess.Popen[bytes] | None = None
        self._gone = threading.Event()
        self._gone_at_s = 0.0
        self._over = False

    def start(self) -> None:
        """Starts the process and hands it the request. Returns at once. Raises OSError."""
        self._process = subprocess.Popen(
            [sys.executable, "-P", "-m", "benchlog.bench"], stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        threading.Thread(target=self._read, name="frames", daemon=True).start()
        self._send(self._request)
        self.renew()

    @property
    def pid(self) -> int | None:
        return self._process.pid if self._process is not None else None

    def renew(self) -> None:
        """Every 100 ms, from the event loop."""
        self._send(Renew())

    def stop(self, reason: str = "output off was pressed") -> None:
        """Output off. Idempotent, never blocks."""
        self._send(Stop(reason))

    def answer(self, question: int, choice: str) -> None:
        self._send(Answer(question, choice))

    def note(self, text: str, *, hand: bool = True) -> None:
        self._send(Note(text, hand))

    def poll(self) -> list[Frame]:
        """Frames since the last call; never blocks. After a death, waits for word from the rescue over many calls."""
        gone = self._gone.is_set()  # before the queue is emptied, so that nothing the process said comes after its end
        frames: list[Frame] = []
        while self._frames:
            frames.append(self._frames.popleft())
        self._over = self._over or any(isinstance(frame, Ended) for frame in frames)
        if gone and not self._over:
            frames += self._after_death()
        return frames

    def close(self) -> None:
        """Ends the lease and waits for the process, some seconds at the most."""
        if self._process is None:
            return
        with contextlib.suppress(OSError):
            if self._process.stdin is not None:
                self._process.stdin.close()
        try:
            self._process.wait(timeout=RESCUE_WITHIN_S)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait()
        self._gone.wait(timeout=1.0)
        if self._process.stdout is not None:
            self._process.stdout.close()

    def _send(self, message: msgspec.Struct) -> None:
        if self._process is None or self._process.stdin is None or self._process.stdin.closed:
            return
        with contextlib.suppress(OSError):
            self._process.stdin.write(pack(message))
            self._process.stdin.flush()

    def _read(self) -> None:
        assert self._process is not None
        assert self._process.stdout is not None
        while (payload := read_payload(self._process.stdout)) is not None:
            self._frames.append(_decode(payload))
        self._gone_at_s = self._clock.now()
        self._gone.set()

    def _after_death(self) -> list[Frame]:
        """The process is gone without a word: what the rescue wrote down, or after a while that nothing is known."""
        record = Path(self._request.journal + ".rescue")
        journal = self._request.journal if Path(self._request.journal).exists() else None
        confirmed, text = False, "NOT CONFIRMED: switch the supply off by hand (no word from the rescue process)."
        if record.exists():
            word = json.loads(record.read_text(encoding="utf-8"))
            confirmed, text = bool(word["confirmed_off"]), str(word["text"])
        elif self._clock.now() - self._gone_at_s < RESCUE_WITHIN_S:
            return []
        self._over = True
        event = Event(t_s=0.0, kind=EventKind.RESCUE, text=text, values={"on": False, "confirmed": confirmed})
        result = RunResult(
            outcome=Outcome.STOPPED,
            reason=f"the bench process ended before the run did. {text}",
            output_confirmed_off=confirmed,
        )
        return [Happened(event=event), Ended(result=result, journal=journal)]
