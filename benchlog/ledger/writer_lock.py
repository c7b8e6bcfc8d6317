"""Which program is the one that writes: an advisory lock on a file, held while it does.

A file that lies there says nothing; only the lock on it does, and that ends with its process, however it ends.
"""

import os
import time
from contextlib import suppress
from pathlib import Path
from types import TracebackType

from benchlog.bench.file_lock import lock_file

_TRIES, _BETWEEN_S = 10, 0.02
"""Others may hold the lock for a moment, only to see whether somebody has it."""


class HeldLock:
    """Made by take(). Let go of with release(), or at the end of a `with`."""

    def __init__(self, path: Path, file: int) -> None:
        self._path = path
        self._file: int | None = file

    def release(self) -> None:
        """Idempotent."""
        if self._file is None:
            return
        with suppress(OSError):  # Windows removes no open file; then it lies there and says nothing
            if _is(self._file, self._path):
                self._path.unlink()
        os.close(self._file)
        self._file = None

    def __enter__(self) -> "HeldLock":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.release()


def seat_of(ledger: Path) -> Path:
    """The lock of a ledger's one writer, beside it."""
    return ledger.with_name(f"{ledger.name}.writer")


def take(path: Path) -> HeldLock | None:
    """The lock, its file made where there is none; None where another program has it. Raises OSError."""
    for _ in range(_TRIES):
        file = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
        try:
            if lock_file(file) and _is(file, path):
                held, file = HeldLock(path, file), -1
                return held
        finally:
            if file != -1:
                os.close(file)
        time.sleep(_BETWEEN_S)
    return None


def held_elsewhere(path: Path) -> bool:
    """Whether somebody has the lock, without making its file. Raises OSError."""
    try:
        file = os.open(path, os.O_RDWR)
    except FileNotFoundError:
        return False
    try:
        return not lock_file(file)
    finally:
        os.close(file)


def _is(file: int, path: Path) -> bool:
    # Whoever had it may have removed it between the opening and the locking: that lock would keep nobody out.
    with suppress(FileNotFoundError):
        return os.path.samestat(os.fstat(file), path.stat())
    return False
