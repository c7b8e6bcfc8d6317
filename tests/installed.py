"""The wheel and the built folder, made and tried: `python -m tests.installed [--folder dist/benchlog]`.

Not part of the suite: it builds, installs and starts, which takes minutes. The wheel goes into an environment of its
own and is tried from a folder that has nothing of the sources. A folder that `bash .ci/one_folder` made is tried as it
lies.
"""

import argparse
import os
import subprocess
import sys
import tempfile
import time
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
ROOMS = ("benchlog", "ui", "drivers", "migrations", "demo_db")


def main() -> int:
    chosen = argparse.ArgumentParser(prog="python -m tests.installed")
    chosen.add_argument("--folder", type=Path, help="a built folder; without it the wheel is built")
    folder = chosen.parse_args().folder
    with tempfile.TemporaryDirectory() as scratch:
        home = Path(scratch)
        programs = _install(home) if folder is None else folder.resolve()
        failed = [name for name, arguments in _trials(home).items() if not _try(name, programs, arguments, home)]
        pictures = sorted((home / "pictures").glob("*.png"))
        print(f"  the window pictured itself {len(pictures)} times")
        if not pictures:
            failed.append("pictures")
    print(f"failed: {', '.join(failed)}" if failed else "all of it works")
    return 1 if failed else 0


def _install(home: Path) -> Path:
    """Where the programs are of the wheel that was built and installed."""
    subprocess.run([sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "-w", home / "wheel", ROOT], check=True)
    (wheel,) = (home / "wheel").glob("*.whl")
    inside = set(zipfile.ZipFile(wheel).namelist())
    lacking = [
        str(path.relative_to(ROOT))
        for room in ROOMS
        for path in (ROOT / room).rglob("*")
        if path.is_file() and "__pycache__" not in path.parts and path.relative_to(ROOT).as_posix() not in inside
    ]
    print(f"{wheel.name}: {len(inside)} files, {wheel.stat().st_size >> 10} kB; lacking: {lacking or 'nothing'}")
    if lacking:
        raise SystemExit(1)
    subprocess.run([sys.executable, "-m", "venv", home / "environment"], check=True)
    programs = home / "environment" / ("Scripts" if os.name == "nt" else "bin")
    subprocess.run([programs / "python", "-m", "pip", "install", "-q", wheel], check=True)
    return programs


def _trials(home: Path) -> dict[str, list[str]]:
    book = str(home / "demo.db")
    return {
        "version": ["benchlog", "--version"],
        "the main job": ["benchlog", "demo", "--terminal", "--ledger", book],
        "job sheet": ["benchlog", "report", "1", "--ledger", book, "--output", str(home / "sheet.pdf")],
        "curve": ["benchlog", "export", "1", "--ledger", book, "--output", str(home / "run.csv")],
        "udev rule": ["benchlog", "supplies", "--udev-rule"],
        "licences": ["benchlog", "licences"],
        "support bundle": ["benchlog", "support-bundle", "--ledger", book, "--output", str(home / "support.zip")],
        "window": ["benchlog-window", "--ledger", book, "--snapshot", str(home / "pictures")],
        "own ledger": ["benchlog-window", "--snapshot", str(home / "pictures")],
    }


def _try(name: str, programs: Path, arguments: list[str], home: Path) -> bool:
    """In a folder with nothing of the sources, and with none of this process's own paths."""
    environment = {"HOME": str(home), "PATH": "/usr/bin:/bin", "LANG": "C.UTF-8", "QT_QPA_PLATFORM": "offscreen"}
    if os.name == "nt":
        environment = os.environ | {"QT_QPA_PLATFORM": "offscreen"}
    began_s = time.perf_counter()
    command = [str(programs / arguments[0]), *arguments[1:]]
    done = subprocess.run(command, cwd=home, env=environment, capture_output=True, text=True, timeout=300, check=False)
    well = done.returncode == 0
    print(f"{'ok    ' if well else 'FAILED'} {time.perf_counter() - began_s:6.1f} s  {name}")
    if not well:
        print(done.stdout[-2000:], done.stderr[-2000:])
    return well


if __name__ == "__main__":
    sys.exit(main())
