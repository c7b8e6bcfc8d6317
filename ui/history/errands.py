"""Work done beside the window: asked for here, done in a thread, handed back in the window's own thread.

The thread touches no widget: what it brings lies in a queue, which is looked into while anything is out.
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import AbstractContextManager
from queue import Empty, SimpleQueue
from time import monotonic
from typing import Any, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal

LOOK_EVERY_MS = 15
THREADS = 2
"""One for what is asked while typing, beside one that may be at something long."""

_Made = TypeVar("_Made")


class Errands(QObject):
    """Of one channel only the newest errand counts: an older one that has not begun is left out, its result dropped.

    `minding` surrounds what is handed back, an error raised in the thread included. `busy` when that changes.
    """

    busy = Signal(bool)

    def __init__(self, minding: Callable[[], AbstractContextManager[None]], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._minding = minding
        self._pool = ThreadPoolExecutor(max_workers=THREADS, thread_name_prefix="history")
        self._back: SimpleQueue[tuple[str, int, Any, BaseException | None, Callable[[Any], None]]] = SimpleQueue()
        self._newest: dict[str, int] = {}
        self._count = self._out = 0
        self._stopped = False
        self.destroyed.connect(lambda _=None, pool=self._pool: pool.shutdown(wait=False, cancel_futures=True))
        self._look = QTimer(self)
        self._look.setInterval(LOOK_EVERY_MS)
        self._look.timeout.connect(self._take_in)

    def ask(self, channel: str, work: Callable[[], _Made], then: Callable[[_Made], None]) -> None:
        """`work` in a thread, then `then` with what it made here. `work` must touch nothing of Qt's widgets.

        After stop() nothing.
        """
        if self._stopped:
            return
        self._count += 1
        self._newest[channel] = self._count
        self._pool.submit(self._do, channel, self._count, work, then)
        self._out += 1
        if self._out == 1:
            self._look.start()
            self.busy.emit(True)

    def forget(self, channel: str) -> None:
        """What is out on a channel is not wanted any more."""
        self._newest.pop(channel, None)

    def settle(self, timeout_s: float = 30.0) -> None:
        """Waits until nothing is out. Raises TimeoutError."""
        ends = monotonic() + timeout_s
        while self._out:
            if monotonic() > ends:
                raise TimeoutError("an errand of the history is still out")
            self._take_in(wait_s=0.1)

    def stop(self) -> None:
        """What has not begun is left out; what has is waited for."""
        self._stopped = True
        self._newest.clear()
        self._look.stop()
        self._pool.shutdown(cancel_futures=True)

    def _do(self, channel: str, number: int, work: Callable[[], Any], then: Callable[[Any], None]) -> None:
        made, error = None, None
        if self._newest.get(channel) == number:
            try:
                made = work()
            except BaseException as raised:  # noqa: BLE001 - it is raised again where it can be said
                error = raised
        self._back.put((channel, number, made, error, then))

    def _take_in(self, wait_s: float = 0.0) -> None:
        try:
            channel, number, made, error, then = self._back.get(block=wait_s > 0, timeout=wait_s or None)
        except Empty:
            return
        self._out -= 1
        try:
            if self._newest.get(channel) == number:
                with self._minding():
                    if error is not None:
                        raise error
                    then(made)
        finally:
            if not self._out:
                self._look.stop()
                self.busy.emit(False)
