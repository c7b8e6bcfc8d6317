"""Drives a run from the terminal: renews the lease from this loop, prints what happens, passes on what is typed."""

import contextlib
import queue
import signal
import sys
import threading
import time
from collections.abc import Iterator
from types import FrameType

import click

from benchlog.bench.frames import RENEW_EVERY_S, Ended, Frame, Happened, Progress, Question
from benchlog.bench.link import Link
from benchlog.cli.options import line, say
from benchlog.cli.starts_told import start_fields
from benchlog.quantities import show
from benchlog.records import EventKind

_TURN_S = 0.02
_STATUS_EVERY_S = 0.5


class Terminal:
    """Shows frames, plain or as JSON, and answers questions with what is typed."""

    def __init__(self, link: Link, *, as_json: bool) -> None:
        self._link, self._as_json = link, as_json
        self._asked: Question | None = None
        self._typed: queue.SimpleQueue[str] = queue.SimpleQueue()
        self._live = not as_json and sys.stderr.isatty()
        self._shown_s = 0.0
        self._kicks: int | None = None

    def show(self, frame: Frame) -> None:
        match frame:
            case Happened():
                event = frame.event
                if self._as_json:
                    fields = start_fields(event) if event.kind is EventKind.START else event.values
                    line(event=event.kind, t_s=event.t_s, text=event.text, **fields)
                else:
                    self._plain(f"{event.t_s:8.2f} s  {event.text}")
                    if why := event.values.get("why"):
                        self._plain(f"            {why}")
            case Question():
                self._asked = frame
                if not self._as_json:
                    choices = "  ".join(f"[{k}] {choice}" for k, choice in enumerate(frame.choices, 1))
                    self._plain(f"            {choices}")
                    threading.Thread(target=self._read_line, daemon=True).start()
            case Progress():
                self._status(frame)
            case Ended():
                pass

    def _plain(self, text: str) -> None:
        if self._live:
            click.echo("\r\x1b[K", nl=False, err=True)
        say(text)

    def _status(self, progress: Progress) -> None:
        if self._live and self._kicks is not None and progress.kicks > self._kicks:
            click.echo("\a", nl=False, err=True)  # a tick for each kick: eyes can stay on the shaft
        self._kicks = progress.kicks
        now_s = time.monotonic()
        if not self._live or self._asked is not None or now_s - self._shown_s < _STATUS_EVERY_S:
            return
        self._shown_s = now_s
        status = f"{show(progress.volts[-1], 'V')}  {show(progress.amps[-1], 'A')}  {progress.motion}"
        click.echo(f"\r\x1b[K            {status}, {progress.kicks} kicks  (Ctrl-C: output off)", nl=False, err=True)

    def _read_line(self) -> None:
        self._typed.put(sys.stdin.readline())

    def pass_on_typed(self) -> None:
        """An answer, once one was typed; the end of the input counts as skip."""
        if self._asked is None or self._typed.empty():
            return
        question, typed = self._asked, self._typed.get().strip()
        self._asked = None
        chosen = int(typed) - 1 if typed.isascii() and typed.isdigit() else len(question.choices) - 1
        self._link.answer(question.id, question.choices[min(max(chosen, 0), len(question.choices) - 1)])


class Stopper:
    """What a signal that would end the program does while a run is on, or its record is being filed: output off."""

    def __init__(self) -> None:
        self._reason: str | None = None

    def __call__(self, number: int, _: FrameType | None) -> None:
        """Only kept: the signal may come while the loop is in the middle of writing to the very same pipe."""
        self._reason = "Ctrl-C was pressed" if number == signal.SIGINT else "the terminal was told to end"

    def pass_on(self, link: Link) -> None:
        """Output off, with the next turn of the loop."""
        reason, self._reason = self._reason, None
        if reason is not None:
            link.stop(reason)


@contextlib.contextmanager
def signals_to(stopper: Stopper) -> Iterator[Stopper]:
    """Ctrl-C, a closed terminal and a request to end go to `stopper` for a while."""
    numbers = [signal.SIGINT, signal.SIGTERM] + ([signal.SIGHUP] if hasattr(signal, "SIGHUP") else [])
    before = {number: signal.signal(number, stopper) for number in numbers}
    try:
        yield stopper
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def watch(link: Link, stopper: Stopper, *, as_json: bool) -> Ended:
    """From start to end. When this returns or raises, the run is over. Raises OSError where it can't be started."""
    terminal = Terminal(link, as_json=as_json)
    link.start()
    try:
        renewed_s = 0.0
        while True:
            stopper.pass_on(link)
            now_s = time.monotonic()
            if now_s - renewed_s >= RENEW_EVERY_S:
                link.renew()
                renewed_s = now_s
            for frame in link.poll():
                terminal.show(frame)
                if isinstance(frame, Ended):
                    return frame
            terminal.pass_on_typed()
            time.sleep(_TURN_S)
    finally:
        link.close()
