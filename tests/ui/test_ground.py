"""What is missing under the window is one line, not a traceback; and starting it brings in nothing heavy."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from benchlog.ledger.store import Ledger
from ui.ground import DEBIAN_PACKAGES, missing_display, missing_plugin, missing_qt

ROOT = Path(__file__).parents[2]


def fails(error: Exception) -> str | None:
    def load() -> None:
        raise error

    return missing_qt(load)


def test_a_missing_library_is_named_with_its_package() -> None:
    words = fails(ImportError("libEGL.so.1: cannot open shared object file: No such file or directory"))
    assert words is not None
    assert "libEGL.so.1" in words
    assert "apt install libegl1" in words
    assert "\n" not in words


def test_a_library_that_is_not_listed_is_still_named() -> None:
    words = fails(ImportError("libodd.so.9: cannot open shared object file: No such file or directory"))
    assert words is not None
    assert "libodd.so.9" in words


def test_a_missing_pyside_says_how_to_get_it() -> None:
    words = fails(ModuleNotFoundError("No module named 'PySide6'"))
    assert words is not None
    assert "pip install" in words


def test_where_nothing_is_missing_nothing_is_said() -> None:
    assert missing_qt(lambda: None) is None
    assert all(package == package.lower() for package in DEBIAN_PACKAGES.values())


def test_a_plugin_that_can_not_be_loaded_names_everything_that_is_missing(tmp_path: Path) -> None:
    plugin = tmp_path / "libqxcb.so"
    plugin.touch()
    gone = {"libxcb-icccm.so.4", "libxcb-cursor.so.0"}

    def load(name: str) -> None:
        if name == str(plugin):
            raise OSError("libxcb-icccm.so.4: cannot open shared object file: No such file or directory")
        if name in gone:
            raise OSError(f"{name}: cannot open shared object file")

    words = missing_plugin({"DISPLAY": ":0"}, "linux", plugin, load)
    assert words is not None
    assert "apt install libxcb-cursor0 libxcb-icccm4" in words
    assert "\n" not in words
    assert missing_plugin({"DISPLAY": ":0"}, "linux", plugin, lambda name: None) is None
    assert missing_plugin({"QT_QPA_PLATFORM": "offscreen"}, "linux", plugin, load) is None
    assert missing_plugin({"WAYLAND_DISPLAY": "w"}, "linux", plugin, load) is None


@pytest.mark.parametrize("name", ["DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"])
def test_any_one_of_the_three_is_a_display(name: str) -> None:
    assert missing_display({name: "x"}, "linux") is None
    assert missing_display({name: ""}, "linux") is not None


def test_only_linux_needs_one_of_them() -> None:
    assert missing_display({}, "win32") is None
    assert missing_display({}, "darwin") is None


def test_no_display_is_one_line_and_status_69(tmp_path: Path) -> None:
    bare = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    done = subprocess.run(
        [sys.executable, "-m", "ui", "--ledger", str(tmp_path / "harbour.db")],
        cwd=ROOT,
        env=bare,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 69
    assert done.stdout == ""
    assert done.stderr.count("\n") == 1
    assert "DISPLAY" in done.stderr
    assert not (tmp_path / "harbour.db").exists()


IMPORTED = """
import sys
from ui.__main__ import _import_qt
_import_qt()
before = set(sys.modules) - {name for name in sys.modules if name.startswith(("PySide6", "shiboken"))}
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from ui import app
application = QApplication([])

def shown():
    assert [one for one in application.topLevelWidgets() if one.isVisible()]
    heavy = {"scipy", "alembic", "pyvisa", "pyvisa_py", "serial", "usb", "pyqtgraph", "segno", "h5py", "http"}
    print(sorted(heavy & {name.partition(".")[0] for name in sys.modules}))
    print(sorted(n for n in set(sys.modules) - before if n.startswith(("benchlog", "drivers", "sqlalchemy", "numpy"))))
    application.quit()

QTimer.singleShot(0, shown)
app.main(["--ledger", sys.argv[1]])
"""


@pytest.fixture(scope="module")
def imported(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """What is imported once the window is shown: the heavy of it, and what came after Qt without being of it."""
    path = tmp_path_factory.mktemp("shown") / "harbour.db"
    Ledger.open(path).close()  # a first start makes the ledger, which takes Alembic
    done = subprocess.run(
        [sys.executable, "-c", IMPORTED, str(path)], cwd=ROOT, capture_output=True, text=True, timeout=100, check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


def test_a_window_that_is_shown_has_imported_nothing_heavy(imported: list[str]) -> None:
    assert imported[0] == "[]"


def test_next_to_nothing_that_is_not_qt_is_imported_after_it(imported: list[str]) -> None:
    assert len(imported[1].split(",")) <= 12, imported[1]
