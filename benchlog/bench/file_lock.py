"""Whether somebody is writing a file: a lock that ends with its process, however that ends.

The writer of a journal takes it before the first byte is in the file and holds it until the file is closed. Whoever
files journals that were left behind takes it first, and leaves a file alone that another holds.
"""

import os
import sys

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
