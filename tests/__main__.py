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


def main() -> int:
    environment = os.environ | {"QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen")}
    gates = GATES | {
        "tests": ["-m", "pytest", "-n", "2", "--dist", "loadfile", "--no-loadscope-reorder", *sys.argv[1:]]
    }
    failed = []
    for name, arguments in gates.items():
        sys.stdout.write(f"== {name}\n")
        sys.stdout.flush()
        if subprocess.run([sys.executable, *arguments], cwd=ROOT, env=environment).returncode:
            failed.append(name)
    sys.stdout.write(f"== failed: {', '.join(failed)}\n" if failed else "== all gates passed\n")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
