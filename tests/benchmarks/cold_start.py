"""From the start of the process to a window that is painted and takes a click: `python -m tests.benchmarks.cold_start`.

Each round starts the window on a small ledger, and a bare Qt window with one button, in turn. It is "cold" after the
files of both were dropped from the file cache, as far as nobody else holds them, and "warm" after a start. Both use
compiled modules in a folder of their own, as an installed program has them. Under Xvfb where it is there.
"""

import argparse
import contextlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

ROOT = Path(__file__).resolve().parents[2]
GOAL_MS = 1500
BEGAN = "BENCHLOG_BENCHMARK_BEGAN"

_WATCH = """
import os, sys, threading, time
began = int(os.environ["BENCHLOG_BENCHMARK_BEGAN"])

def watch(button_of):
    def wait():
        while (qt := sys.modules.get("PySide6.QtWidgets")) is None or not getattr(qt, "QApplication", None):
            time.sleep(0.002)
        while (application := qt.QApplication.instance()) is None:
            time.sleep(0.002)
        sys.modules["PySide6.QtCore"].QTimer.singleShot(0, application, lambda: begin(application, button_of))
    threading.Thread(target=wait, daemon=True).start()

def begin(application, button_of):
    from PySide6.QtCore import QEvent, QObject, QPointF, QTimer, Qt
    from PySide6.QtGui import QMouseEvent
    window = next(one for one in application.topLevelWidgets() if one.isVisible())

    class Painted(QObject):
        def eventFilter(self, watched, event):
            if watched is button and event.type() == QEvent.Type.Paint:
                button.removeEventFilter(self)
                QTimer.singleShot(0, click)
            return False

    def click():
        painted.append(time.perf_counter_ns())
        at = QPointF(button.rect().center())
        there = button.mapToGlobal(at)
        for kind, held in ((QEvent.Type.MouseButtonPress, Qt.MouseButton.LeftButton),
                           (QEvent.Type.MouseButtonRelease, Qt.MouseButton.NoButton)):
            application.postEvent(button, QMouseEvent(kind, at, there, Qt.MouseButton.LeftButton, held,
                                                      Qt.KeyboardModifier.NoModifier))

    def taken():
        print((painted[0] - began) / 1e6, (time.perf_counter_ns() - began) / 1e6, 1e3 * time.process_time(), flush=True)
        os._exit(0)

    painted, filtering = [], Painted()
    button = button_of(window)
    button.clicked.connect(taken)
    button.installEventFilter(filtering)
    button.update()
    window.kept = filtering
"""

_WINDOW = (
    _WATCH
    + """
def output_off(window):
    from PySide6.QtWidgets import QAbstractButton
    return next(one for one in window.findChildren(QAbstractButton) if one.isVisible() and one.isEnabled())

watch(output_off)
from ui.__main__ import main
sys.exit(main(sys.argv[1:]))
"""
)

_BARE = (
    _WATCH
    + """
from PySide6.QtWidgets import QApplication, QMainWindow, QPushButton
application = QApplication([])
watch(lambda window: window.centralWidget())
window = QMainWindow()
window.setCentralWidget(QPushButton("off"))
window.show()
sys.exit(application.exec())
"""
)


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.cold_start")
    parser.add_argument("--times", type=int, default=10)
    times = parser.parse_args().times
    with tempfile.TemporaryDirectory() as scratch, _display() as display:
        home = Path(scratch)
        environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        environment |= display | {"HOME": scratch, "PYTHONPYCACHEPREFIX": str(home / "compiled")}
        for folder in ("XDG_STATE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"):
            environment[folder] = str(home / folder)
        ledger = str(home / "harbour.db")
        _start(_WINDOW, environment, ledger)  # makes the ledger and compiles the modules
        _start(_BARE, environment)
        load = os.getloadavg()[0]
        print(f"{times} starts each, {display['QT_QPA_PLATFORM']}, load {load:.1f}; ms until painted / clicked; CPU")
        for state in ("cold", "warm"):
            found: dict[str, list[tuple[float, float, float]]] = {"bare": [], "window": []}
            for _ in range(times):
                for name, code, arguments in (("bare", _BARE, ()), ("window", _WINDOW, (ledger,))):
                    if state == "cold":
                        _drop(Path(sys.prefix), ROOT, home)
                    found[name].append(_start(code, environment, *arguments))
            for name, both in found.items():
                _tell(state, name, both)
            more = median(one[1] for one in found["window"]) - median(one[1] for one in found["bare"])
            print(f"{state}: the window takes {more:.0f} ms more than a bare one (medians)")


def _tell(state: str, name: str, both: list[tuple[float, float, float]]) -> None:
    painted, clicked = sorted(one[0] for one in both), sorted(one[1] for one in both)
    within = sum(one <= GOAL_MS for one in clicked)
    best, middle, worst = (f"{pick(painted):.0f} / {pick(clicked):.0f}" for pick in (min, median, max))
    cpu = median(one[2] for one in both)
    print(f"{state} {name:6}: best {best}, median {middle}, worst {worst}; CPU {cpu:.0f}")
    print(f"{'':13} {within} of {len(clicked)} within {GOAL_MS} ms")


def _start(code: str, environment: dict[str, str], ledger: str = "") -> tuple[float, float, float]:
    """ms from before the process is started until a button is painted, and until its click is taken; ms of CPU."""
    arguments = ["--ledger", ledger] if ledger else []
    began = {BEGAN: str(time.perf_counter_ns())}
    done = subprocess.run(
        [sys.executable, "-P", "-c", f"import sys; sys.path.insert(0, {str(ROOT)!r})\n{code}", *arguments],
        env=environment | began, cwd="/", capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip
    if done.returncode:
        raise SystemExit(done.stderr)
    painted, clicked, cpu = map(float, done.stdout.split())
    return painted, clicked, cpu


def _drop(*folders: Path) -> None:
    """Their files from the file cache; what another process has mapped stays in it."""
    for folder in folders:
        for path in folder.rglob("*"):
            if path.suffix in (".py", ".pyc", ".so", ".toml") or ".so." in path.name:
                with contextlib.suppress(OSError):
                    file = os.open(path, os.O_RDONLY)
                    os.posix_fadvise(file, 0, 0, os.POSIX_FADV_DONTNEED)
                    os.close(file)


@contextlib.contextmanager
def _display() -> Iterator[dict[str, str]]:
    """A display of its own, else Qt's own without one."""
    if shutil.which("Xvfb") is None:
        yield {"QT_QPA_PLATFORM": "offscreen"}
        return
    read, write = os.pipe()
    command = ["Xvfb", "-displayfd", str(write), "-screen", "0", "1366x768x24", "-nolisten", "tcp"]
    server = subprocess.Popen(command, pass_fds=(write,), stderr=subprocess.DEVNULL)
    os.close(write)
    try:
        with os.fdopen(read) as told:
            number = told.readline().strip()
        yield {"QT_QPA_PLATFORM": "xcb", "DISPLAY": f":{number}"}
    finally:
        server.terminate()
        server.wait()


if __name__ == "__main__":
    main()
