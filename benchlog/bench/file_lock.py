"""Whether somebody is writing a file, or has what it stands for: a lock that ends with its process, however that ends.

The writer of a journal takes it before the first byte is in the file and holds it until the file is closed. Whoever
files journals that were left behind takes it first, and leaves a file alone that another holds. A file that only
stands for something else, such as a supply, says nothing by lying there; only the lock on it does.
"""

import os
import sys
import time
from contextlib import suppress
from pathlib import Path
from types import TracebackType

_TRIES, _BETWEEN_S = 10, 0.02
"""Others may hold the lock for a moment, only to see whether somebody has it."""

if sys.platform == "win32":
    import msvcrt

    _FAR_BEYOND = 1 << 40
    """A lock on Windows keeps others from reading the bytes it covers: it covers one that no journal reaches."""

    def lock_file(file: int) -> bool:
        """Takes the lock of an open file without waiting; False where another open file has it. Raises OSError."""
        here = os.lseek(file, 0, os.SEEK_CUR)
        os.lseek(file, _FAR_BEYOND, os.SEEK_SET)
        try:
            msvcrt.locking(file, msvcrt.LK_NBLCK, 1)
        except PermissionError:
            return False
        finally:
            os.lseek(file, here, os.SEEK_SET)
        return True

else:
    import fcntl

    def lock_file(file: int) -> bool:
        """Takes the lock of an open file without waiting; False where another open file has it. Raises OSError."""
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True


class HeldLock:
    """Made by take(). Let go of with release(), or at the end of a `with`."""

    def __init__(self, path: Path, file: int) -> None:
        self._path = path
        self._file: int | None = file

    def fileno(self) -> int:
        """Of the open file; a process that inherits it holds the lock as well. Raises ValueError once it is let go."""
        if self._file is None:
            raise ValueError("the lock was let go")
        return self._file

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


def _is(file: int, path: Path) -> bool:
    # Whoever had it may have removed it between the opening and the locking: that lock would keep nobody out.
    with suppress(FileNotFoundError):
        return os.path.samestat(os.fstat(file), path.stat())
    return False
