"""The project's gates, in one command: `python -m tests`. Stops at nothing, fails if anything failed.

Format, lint, types, import contracts, migrations against the schema, tests. Extra arguments go to pytest.
"""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

GATES: dict[str, list[str]] = {
    "format": ["-m", "ruff", "format", "--check", "."],
    "lint": ["-m", "ruff", "check", "."],
    "types": ["-m", "mypy"],
    "import contracts": ["-c", "from importlinter.cli import lint_imports_command as run; run()"],
    "migrations": [
        "-c",
        "import sys; from benchlog.ledger.migrating import check_migrations as check; sys.exit(bool(check()))",
    ],
}
TESTS = ["-m", "pytest", "-n", "2", "--dist", "loadfile", "--no-loadscope-reorder"]
"""Two at once on two cores: beside a third, and types, a run in real time was ended because its bench process had been
kept waiting for half a second."""


def main() -> int:
    environment = os.environ | {
        "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen"),
        # Kept compiled: the tests start hundreds of processes, and each would compile the program anew.
        "PYTHONDONTWRITEBYTECODE": "",
    }

    def passed(name: str, arguments: list[str]) -> bool:
        sys.stdout.write(f"== {name}\n")
        sys.stdout.flush()
        return subprocess.run([sys.executable, *arguments], cwd=ROOT, env=environment).returncode == 0

    gates = GATES | {"tests": [*TESTS, *sys.argv[1:]]}
    failed = [name for name, arguments in gates.items() if not passed(name, arguments)]
    sys.stdout.write(f"== failed: {', '.join(failed)}\n" if failed else "== all gates passed\n")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
