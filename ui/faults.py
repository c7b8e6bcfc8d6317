"""A bug in a slot is not only printed: it is logged, shown, and it presses "Output off"."""

import logging
import sys
from collections.abc import Callable
from types import TracebackType

_log = logging.getLogger(__name__)


def hook_faults(on_fault: Callable[[str], None]) -> None:
    """Qt hands what a slot raises to sys.excepthook. `on_fault` gets one line; it is not called for its own faults."""
    busy = False

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        nonlocal busy
        _log.critical("a fault in the window", exc_info=(kind, error, trace))
        if busy:
            return
        busy = True
        try:
            on_fault(f"{kind.__name__}: {error}")
        finally:
            busy = False

    sys.excepthook = hook
