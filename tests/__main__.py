"""The project's gates, in one command: `python -m tests`. Stops at nothing, fails if anything failed.

Format, lint, import contracts, migrations against the schema, tests, and types beside the tests, told of at the end:
they take one core half a minute. Extra arguments go to pytest.
"""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

GATES: dict[str, list[str]] = {
    "format": ["-m", "ruff", "format", "--check", "."],
    "lint": ["-m", "ruff", "check", "."],
    "import contracts": ["-c", "from importlinter.cli import lint_imports_command as run; run()"],
    "migrations": [
        "-c",
        "import sys; from benchlog.ledger.migrating import check_migrations as check; sys.exit(bool(check()))",
    ],
}


TYPES = ["-m", "mypy"]
TESTS = ["-m", "pytest", "-n", "3", "--dist", "loadfile", "--no-loadscope-reorder"]
"""Three at once on two cores: one of them mostly waits for processes that run in real time."""


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

    with subprocess.Popen(
        [sys.executable, *TYPES], cwd=ROOT, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as types:
        gates = GATES | {"tests": [*TESTS, *sys.argv[1:]]}
        failed = [name for name, arguments in gates.items() if not passed(name, arguments)]
        said, _ = types.communicate()
    sys.stdout.write(f"== types\n{said}")
    failed += ["types"] if types.returncode else []
    sys.stdout.write(f"== failed: {', '.join(failed)}\n" if failed else "== all gates passed\n")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
