"""The other side of the bench process: starts it, renews its lease, takes its frames.

`renew` belongs into the event loop of whoever holds the link, never into a thread: a window too busy to renew is one
too busy to take "Output off".

The link is also the last net: where the bench process and its rescue are both dead or stopped, it starts another.
"""

import collections
import contextlib
import json
import subprocess
import threading
from pathlib import Path

import msgspec

from benchlog.bench.frames import Answer, Ended, Frame, Happened, Hold, Note, Renew, Request, Stop
from benchlog.bench.lease import pack, read_payload
from benchlog.bench.rescue import GOING_OFF_SILENCE_S, Charge, KnownOff, start_now
from benchlog.clock import SystemClock
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Event, EventKind
from drivers.children import command

RESCUE_WITHIN_S = 6.0
MARGIN_S = 0.5
"""More than the bench process's own rescue needs, which is always to be first."""
OWN_TURN_S = 0.25
"""A longer pause between two calls of `poll` is this process's own, and not the bench process's silence."""
_decode = msgspec.msgpack.Decoder(Frame | Charge | KnownOff).decode


class Link:
    """One run in a process of its own. Exactly one Ended comes out of `poll`, however the run ends."""

    def __init__(self, request: Request) -> None:
        self._request = request
        self._clock = SystemClock()
        self._frames: collections.deque[Frame] = collections.deque()
        self._process: subprocess.Popen[bytes] | None = None
        self._charge: Charge | None = None
        self._known_off = False
        self._taken = 0
        self._gone = threading.Event()
        self._gone_at_s: float | None = None
        self._over = False
        # of the last net
        self._rescue: subprocess.Popen[bytes] | None = None
        self._polled_s = self._clock.now()
        self._seen, self._silent_s = 0, 0.0

    def start(self) -> None:
        """Starts the process and hands it the request. Returns at once. Raises OSError."""
        self._process = subprocess.Popen(command("benchlog.bench"), stdin=subprocess.PIPE, stdout=subprocess.PIPE)
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

    def note(self, text: str, *, hand: bool = True, moved: bool = False) -> None:
        self._send(Note(text, hand, moved))

    def hold(self, down: bool) -> None:
        """The key for the hand on the shaft; to be said again with every renewal while it is down."""
        self._send(Hold(down))

    def poll(self) -> list[Frame]:
        """Frames since the last call; never blocks. After a death, waits for word from the rescue over many calls."""
        gone = self._gone.is_set()  # before the queue is emptied, so that nothing the process said comes after its end
        frames: list[Frame] = []
        while self._frames:
            frames.append(self._frames.popleft())
        self._over = self._over or any(isinstance(frame, Ended) for frame in frames)
        if not self._over:
            self._kill_if_silent()
            if gone:
                frames += self._after_death()
        return frames

    def close(self) -> None:
        """Ends the lease and waits for the processes, some seconds at the most."""
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
        while self._gone.is_set() and not self._over and self._charge is not None:
            self.poll()
            self._clock.wait(self._clock.now() + 0.02)
        if self._process.stdout is not None:
            self._process.stdout.close()
        if self._rescue is not None:
            with contextlib.suppress(subprocess.TimeoutExpired):
                self._rescue.wait(timeout=RESCUE_WITHIN_S)
            self._rescue.kill()
            self._rescue.wait()
            if self._rescue.stdout is not None:
                self._rescue.stdout.close()

    def _send(self, message: msgspec.Struct) -> None:
        if self._process is None or self._process.stdin is None or self._process.stdin.closed:
            return
        with contextlib.suppress(OSError):
            self._process.stdin.write(pack(message))
            self._process.stdin.flush()

    def _read(self) -> None:
        assert self._process is not None
        assert self._process.stdout is not None
        with contextlib.suppress(msgspec.MsgspecError):  # what can't be read counts as the end of the process
            while (payload := read_payload(self._process.stdout)) is not None:
                self._take(_decode(payload))
        self._gone.set()

    def _take(self, frame: Frame | Charge | KnownOff) -> None:
        self._taken += 1
        match frame:
            case Charge():
                self._charge = frame
            case KnownOff():
                self._charge, self._known_off = None, True
            case _:
                self._frames.append(frame)

    def _kill_if_silent(self) -> None:
        """The output may be on and nothing was said for longer than the rescue bears: it must be stopped as well."""
        now_s = self._clock.now()
        self._silent_s += min(now_s - self._polled_s, OWN_TURN_S)
        self._polled_s = now_s
        if self._taken != self._seen:
            self._seen, self._silent_s = self._taken, 0.0
        charge = self._charge
        if charge is not None and self._silent_s > max(charge.silence_s, GOING_OFF_SILENCE_S) + MARGIN_S:
            self._rescue_here(charge)

    def _after_death(self) -> list[Frame]:
        """The process is gone without a word: what a rescue wrote down, or after a while that nothing is known."""
        assert self._process is not None
        self._process.kill()  # it may only have closed its end
        now_s = self._clock.now()
        self._gone_at_s = self._gone_at_s or now_s
        record = Path(self._request.journal + ".rescue")
        journal = self._request.journal if Path(self._request.journal).exists() else None
        confirmed, text = False, "NOT CONFIRMED: switch the supply off by hand (no word from the rescue process)."
        if record.exists():
            word = json.loads(record.read_text(encoding="utf-8"))
            confirmed, text = bool(word["confirmed_off"]), str(word["text"])
        elif self._known_off:
            confirmed, text = True, "Output off, confirmed by read-back."
        elif self._may_still_be_told(now_s - self._gone_at_s):
            return []
        self._over = True
        event = Event(t_s=0.0, kind=EventKind.RESCUE, text=text, values={"on": False, "confirmed": confirmed})
        result = RunResult(
            outcome=Outcome.STOPPED,
            reason=f"the bench process ended before the run did. {text}",
            output_confirmed_off=confirmed,
        )
        return [Happened(event=event), Ended(result=result, journal=journal)]

    def _may_still_be_told(self, gone_s: float) -> bool:
        charge = self._charge
        if charge is None:
            return gone_s < RESCUE_WITHIN_S
        first_s = charge.silence_s + MARGIN_S
        if gone_s > first_s:
            self._rescue_here(charge)
        return gone_s < first_s + RESCUE_WITHIN_S

    def _rescue_here(self, charge: Charge) -> None:
        """Kill first, as any rescue; once. The process is this one's child, so its number can't be somebody else's."""
        assert self._process is not None
        self._process.kill()
        if self._rescue is None:
            who = "a process that the window or terminal then started"
            with contextlib.suppress(OSError):
                self._rescue = start_now(msgspec.structs.replace(charge, who=who))
