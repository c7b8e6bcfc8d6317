"""Which program is the one that writes: an advisory lock on a file, held while it does.

A file that lies there says nothing; only the lock on it does, and that ends with its process, however it ends.
"""

import os
from pathlib import Path

from benchlog.bench.file_lock import HeldLock as HeldLock
from benchlog.bench.file_lock import lock_file
from benchlog.bench.file_lock import take as take


def seat_of(ledger: Path) -> Path:
    """The lock of a ledger's one writer, beside it."""
    return ledger.with_name(f"{ledger.name}.writer")


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
