"""`python -m ui`: looks at what the window stands on, then opens it."""

import ctypes
import gc
import importlib
import multiprocessing
import os
import sys
from pathlib import Path

from ui.ground import EX_UNAVAILABLE, missing_display, missing_plugin, missing_qt


def main(argv: list[str], *, from_icon: bool = False) -> int:
    missing = (
        missing_display(os.environ, sys.platform)
        or missing_qt(_import_qt)
        or missing_plugin(os.environ, sys.platform, _plugin(), ctypes.CDLL)
    )
    if missing is not None:
        if sys.stderr is not None:  # nor is there one where a desktop starts a program without a terminal
            sys.stderr.write(missing + "\n")
        return EX_UNAVAILABLE
    from ui.app import main as open_window  # only now: the import is what fails where a library is missing

    return open_window(argv, from_icon=from_icon)


def _import_qt() -> None:
    """After all that is not Qt. What is made while a program starts stays: looking for garbage in it is for nothing."""
    gc.disable()  # until the window stands: ui.app
    importlib.import_module("ui.before_qt")
    importlib.import_module("PySide6.QtWidgets")


def _plugin() -> Path:
    """The file with which Qt draws on an X display, as its wheels for Linux lay it out."""
    home = importlib.import_module("PySide6").__file__ or ""
    return Path(home).parent / "Qt" / "plugins" / "platforms" / "libqxcb.so"


if __name__ == "__main__":
    multiprocessing.freeze_support()
    sys.exit(main(sys.argv[1:]))
