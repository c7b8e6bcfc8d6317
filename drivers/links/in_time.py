"""Calls that know no deadline, under one: name look-ups, and libraries that wait for ever.

The thread of a call that never comes back stays behind until the process ends. So these are for what can't be done
otherwise, and for the process that may be killed.
"""

import queue
import threading
import time
from collections.abc import Callable
from typing import Any, TypeVar

_R = TypeVar("_R")


class InTime:
    """One thread, which does one thing after the other. After a call that was late it does nothing any more."""

    def __init__(self) -> None:
        self._asked: queue.SimpleQueue[Callable[[], Any] | None] = queue.SimpleQueue()
        self._done: queue.SimpleQueue[tuple[Any, BaseException | None]] = queue.SimpleQueue()
        self._late = False
        threading.Thread(target=self._work, name="in time", daemon=True).start()

    def call(self, act: Callable[[], _R], deadline_s: float, what: str) -> _R:
        """Raises what `act` raises, and TimeoutError(what) at the deadline."""
        if self._late:
            raise ConnectionError("an earlier call has not come back")
        self._asked.put(act)
        try:
            result, error = self._done.get(timeout=max(0.0, deadline_s - time.monotonic()))
        except queue.Empty:
            self._late = True
            raise TimeoutError(what) from None
        if error is not None:
            raise error
        return result  # type: ignore[no-any-return]

    def close(self, last: Callable[[], object], deadline_s: float) -> None:
        """Does `last` when all before is done, by the deadline or later; what it raises is of no matter."""
        self._asked.put(last)
        self._asked.put(None)
        if not self._late:
            try:
                self._done.get(timeout=max(0.0, deadline_s - time.monotonic()))
            except queue.Empty:
                self._late = True

    def _work(self) -> None:
        while (act := self._asked.get()) is not None:
            try:
                self._done.put((act(), None))
            # It goes to whoever asked, whatever it is.
            except BaseException as error:  # noqa: BLE001
                self._done.put((None, error))
