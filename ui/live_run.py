"""One run as the window holds it: the lease renewed from the event loop, frames taken, orders sent.

The lease is renewed by a timer of the window's own thread on purpose: a window too busy to take "Output off" must count
as dead.
"""

from collections.abc import Callable
from typing import Protocol, assert_never

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from benchlog.bench.frames import RENEW_EVERY_S, Ended, Frame, Happened, Progress, Question, Request

POLL_EVERY_MS = 33


class BenchLink(Protocol):
    """What the window needs of the other side."""

    def start(self) -> None: ...
    def renew(self) -> None: ...
    def poll(self) -> list[Frame]: ...
    def stop(self, reason: str = ...) -> None: ...
    def answer(self, question: int, choice: str) -> None: ...
    def note(self, text: str, *, hand: bool = True, moved: bool = False) -> None: ...
    def hold(self, down: bool) -> None: ...
    def close(self) -> None: ...


LinkFactory = Callable[[Request], BenchLink]


class LiveRun(QObject):
    """At most one at a time. `ended` comes once for every run that began."""

    progressed = Signal(object)
    happened = Signal(object)
    asked = Signal(object)
    ended = Signal(object)

    def __init__(self, link_factory: LinkFactory, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._link_factory = link_factory
        self._link: BenchLink | None = None
        self.request: Request | None = None
        self._down = False
        self._renewal, self._polling = QTimer(self), QTimer(self)
        self._renewal.setTimerType(Qt.TimerType.PreciseTimer)
        self._renewal.setInterval(int(RENEW_EVERY_S * 1000))
        self._renewal.timeout.connect(self._renew)
        self._polling.setInterval(POLL_EVERY_MS)
        self._polling.timeout.connect(self.poll)

    @property
    def on(self) -> bool:
        return self._link is not None

    def begin(self, request: Request) -> None:
        """Raises OSError where the bench process can't be started; then nothing was switched on."""
        if self._link is not None:
            raise RuntimeError("a run is on")
        link = self._link_factory(request)
        link.start()
        self._link, self.request = link, request
        self._renewal.start()
        self._polling.start()

    def stop(self, reason: str) -> None:
        if self._link is not None:
            self._link.stop(reason)

    def answer(self, question: int, choice: str) -> None:
        if self._link is not None:
            self._link.answer(question, choice)

    def note(self, text: str, *, hand: bool = True, moved: bool = False) -> None:
        if self._link is not None:
            self._link.note(text, hand=hand, moved=moved)

    def hold(self, down: bool) -> None:
        """The key for the hand on the shaft: told at once, and again with every renewal while it is down."""
        self._down = down
        if self._link is not None:
            self._link.hold(down)

    def _renew(self) -> None:
        if self._link is not None:
            self._link.renew()
            if self._down:
                self._link.hold(True)

    def poll(self) -> None:
        if self._link is None:
            return
        for frame in self._link.poll():
            match frame:
                case Progress():
                    self.progressed.emit(frame)
                case Happened():
                    self.happened.emit(frame.event)
                case Question():
                    self.asked.emit(frame)
                case Ended():
                    self._finish(frame)
                    return
                case _:
                    assert_never(frame)

    def _finish(self, frame: Ended) -> None:
        link, self._link = self._link, None
        self._down = False
        self._renewal.stop()
        self._polling.stop()
        if link is not None:
            link.close()
        self.ended.emit(frame)
