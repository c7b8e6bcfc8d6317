"""`python -m ui`: looks at what the window stands on, then opens it."""

import importlib
import multiprocessing
import os
import sys

from ui.ground import EX_UNAVAILABLE, missing_display, missing_qt


def main(argv: list[str]) -> int:
    missing = missing_qt(lambda: importlib.import_module("PySide6.QtWidgets")) or missing_display(
        os.environ, sys.platform
    )
    if missing is not None:
        sys.stderr.write(missing + "\n")
        return EX_UNAVAILABLE
    from ui.app import main as open_window  # only now: the import is what fails where a library is missing

    return open_window(argv)


if __name__ == "__main__":
    multiprocessing.freeze_support()
    sys.exit(main(sys.argv[1:]))
