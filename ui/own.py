"""`benchlog-window`: the window on the user's own ledger, started from an icon, where nobody reads what is written."""

import multiprocessing
import sys


def main() -> None:
    multiprocessing.freeze_support()
    from ui.__main__ import main as start

    sys.exit(start(sys.argv[1:], from_icon=True))


if __name__ == "__main__":
    main()
