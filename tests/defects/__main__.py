"""Planted defects: `python -m tests.defects [NAME ...]` applies each to a scratch copy and runs the tests it names.

A patch begins with two lines, `Defect: …` and `Tests: …`. A defect is caught when those tests pass on the copy as it
is, and fail with the patch. Ends with 1 if one was missed.
"""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
FOLDER = Path(__file__).resolve().parent
LIMIT_S = 600.0


@dataclass(frozen=True, slots=True)
class Defect:
    """What is wrong, the tests that must notice, and the patch."""

    name: str
    what: str
    tests: tuple[str, ...]
    patch: Path


def defects() -> list[Defect]:
    """All there are. Raises ValueError for a patch without its two lines."""
    found = []
    for patch in sorted(FOLDER.glob("*.patch")):
        first, second, *_ = patch.read_text(encoding="utf-8").splitlines()
        if not (first.startswith("Defect: ") and second.startswith("Tests: ")):
            raise ValueError(f"{patch.name}: no Defect and Tests lines")
        found.append(Defect(patch.stem, first[8:], tuple(second[7:].split()), patch))
    return found


def scratch_copy(folder: Path) -> None:
    """The working tree as it is, without what git does not know."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    for name in listed.stdout.splitlines():
        if (ROOT / name).is_file():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(ROOT / name, folder / name)


def applies(defect: Defect, folder: Path) -> bool:
    """Puts the patch on; False where it does not fit."""
    return subprocess.run(["git", "apply", str(defect.patch)], cwd=folder, capture_output=True).returncode == 0


def takes_back(defect: Defect, folder: Path) -> None:
    """The copy as it was."""
    subprocess.run(["git", "apply", "--reverse", str(defect.patch)], cwd=folder, check=True, capture_output=True)


def tests_pass(tests: tuple[str, ...], folder: Path) -> tuple[bool, str]:
    """Whether they do in that copy, and the last line pytest said."""
    # PYTHONPATH: the processes that the tests start must come from the copy too.
    environment = os.environ | {"PYTHONPATH": str(folder), "QT_QPA_PLATFORM": "offscreen"}
    try:
        done = subprocess.run(
            [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *tests],
            cwd=folder,
            env=environment,
            capture_output=True,
            text=True,
            timeout=LIMIT_S,
        )
    except subprocess.TimeoutExpired:
        return False, f"not within {LIMIT_S:g} s"
    lines = [line for line in done.stdout.splitlines() if line.strip()]
    if done.returncode not in (0, 1):
        raise RuntimeError(f"pytest could not run {tests}: {done.stdout[-2000:]}{done.stderr[-2000:]}")
    failed = [line.partition(" - ")[0] for line in lines if line.startswith("FAILED ")]
    return done.returncode == 0, failed[0].removeprefix("FAILED ") if failed else lines[-1]


def main() -> int:
    chosen = [one for one in defects() if not sys.argv[1:] or one.name in sys.argv[1:]]
    missed = 0
    began_s = time.perf_counter()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        scratch_copy(folder)
        sound: dict[tuple[str, ...], tuple[bool, str]] = {}
        print("| defect | caught by |\n|---|---|")
        for defect in chosen:
            if defect.tests not in sound:
                sound[defect.tests] = tests_pass(defect.tests, folder)
            passed, words = sound[defect.tests]
            if not passed:
                verdict = f"NOT TRIED: its tests fail without it: {words}"
            elif not applies(defect, folder):
                verdict = "NOT TRIED: the patch no longer fits"
            else:
                passed, words = tests_pass(defect.tests, folder)
                takes_back(defect, folder)
                verdict = "MISSED" if passed else words
            missed += verdict.startswith(("NOT", "MISSED"))
            print(f"| {defect.what} | {verdict} |", flush=True)
    took_min = (time.perf_counter() - began_s) / 60
    print(f"\n{len(chosen) - missed} of {len(chosen)} caught, in {took_min:.1f} min.")
    return int(missed > 0)


if __name__ == "__main__":
    sys.exit(main())
