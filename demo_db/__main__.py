"""`python -m demo_db FILE`: builds the demo ledger at FILE, which must not be there yet."""

import argparse
import sys
from pathlib import Path

from benchlog.errors import LedgerError, Refused
from demo_db import build


def main(arguments: list[str] | None = None) -> int:
    """0 when the ledger is there; 2 when it was refused, with one sentence on stderr."""
    parser = argparse.ArgumentParser(prog="python -m demo_db", description="Builds a demo ledger of invented jobs.")
    parser.add_argument("file", type=Path, metavar="FILE", help="where to; a file that is there is left as it is")
    path = parser.parse_args(arguments).file
    if not path.exists():
        sys.stdout.write("Simulated runs of a workshop's months are made and filed: a minute or two …\n")
        sys.stdout.flush()
    try:
        build(path)
    except (Refused, LedgerError, OSError) as error:
        sys.stderr.write(f"{error}\n")
        return 2
    sys.stdout.write(f"Demo ledger: {path}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
