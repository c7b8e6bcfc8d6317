"""Where a built program begins: it is the window, the terminal, or one of its own processes.

Which one is decided before Qt or anything else that is heavy is imported: a rescue has to be there at once.
"""

import multiprocessing
import runpy
import sys
from pathlib import Path

from benchlog.children import CHILD

PARTS = frozenset(
    {"benchlog.bench", "benchlog.bench.rescue", "benchlog.cli", "drivers.discovery", "drivers.simulated", "ui"}
)
"""What may be started so: every module that is handed to `children.command`."""

WINDOW = "benchlog-window"
"""The name of the program that opens the window; under any other name it is the terminal's."""


def part_of(argv: list[str]) -> tuple[str, list[str]]:
    """Which module is to run, and its arguments. Raises ValueError for one that is no part of this program."""
    if argv[1:2] != [CHILD]:
        return ("ui.own" if Path(argv[0]).stem == WINDOW else "benchlog.cli"), argv[1:]
    if len(argv) < 3 or argv[2] not in PARTS:
        raise ValueError(f"no part of this program: {' '.join(argv[2:3])}")
    return argv[2], argv[3:]


def main() -> None:
    multiprocessing.freeze_support()
    try:
        module, arguments = part_of(sys.argv)
    except ValueError as error:
        sys.exit(f"benchlog: {error}")
    sys.argv[1:] = arguments
    runpy.run_module(module, run_name="__main__", alter_sys=True)


if __name__ == "__main__":
    main()
