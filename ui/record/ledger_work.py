"""Work on the ledger beside the window: a disk that is slow, or a ledger that is busy, must not hold up its lease."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from typing import TypeVar

from PySide6.QtCore import QObject, Signal

Result = TypeVar("Result")


class LedgerWork(QObject):
    """One thing at a time, in the order in which it was asked."""

    _over = Signal(object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._worker = ThreadPoolExecutor(max_workers=1, thread_name_prefix="record")
        self._finished = False
        self._over.connect(self._call)
        self.destroyed.connect(lambda _=None, worker=self._worker: worker.shutdown(wait=False, cancel_futures=True))

    def do(
        self, work: Callable[[], Result], then: Callable[[Result], None], otherwise: Callable[[Exception], None]
    ) -> None:
        """`work` beside the window; then in the window's thread one of the others, whatever became of it.

        After finish() nothing: there is no window any more to ask for it, or to show it.
        """
        if not self._finished:
            self._worker.submit(self._run, work, then, otherwise)

    def wait(self) -> None:
        """Until what was asked is done. Not while an output may be on."""
        if not self._finished:
            self._worker.submit(lambda: None).result()

    def finish(self) -> None:
        """What was asked is done first. For the window's end, with the output off."""
        self._finished = True
        self._worker.shutdown(wait=True)

    def _run(
        self, work: Callable[[], Result], then: Callable[[Result], None], otherwise: Callable[[Exception], None]
    ) -> None:
        try:
            try:
                told: Callable[[], None] = partial(then, work())
            except Exception as error:  # noqa: BLE001  a thread of its own: it is told, or raised again, in the window's
                told = partial(otherwise, error)
            self._over.emit(told)
        except RuntimeError:
            pass  # the window is gone

    def _call(self, told: Callable[[], None]) -> None:
        told()
