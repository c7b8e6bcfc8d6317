"""The mark of a demonstration: what hangs on the simulated clips is chosen with it."""

import socket
import subprocess
import sys
import time
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Desk
from ui import texts
from ui.demo_mark import FANS, DemoMark
from ui.pieces import why_grey


@pytest.fixture
def mark(qtbot: QtBot) -> DemoMark:
    made = DemoMark("bilge pump")
    qtbot.addWidget(made)
    made.show()
    return made


def menu_of(mark: DemoMark) -> QMenu:
    menu = mark.menu()
    assert menu is not None
    return menu


def test_it_names_what_hangs_there_and_offers_clips_and_fans(mark: DemoMark) -> None:
    assert mark.text() == "DEMO: bilge pump"
    assert len(menu_of(mark).actions()) == 2 + FANS
    hung: list[str] = []
    mark.hung.connect(hung.append)
    for action in menu_of(mark).actions():
        action.trigger()
        assert mark.text() == texts.DEMO_WITH.format(thing=action.text())
        assert action.text() in mark.accessibleName()
        assert [one for one in menu_of(mark).actions() if one.isChecked()] == [action]
    assert hung == ["first", "short", *(f"free {number}" for number in range(1, FANS + 1))]


def test_where_there_is_no_room_the_word_alone_stands(mark: DemoMark) -> None:
    mark.show_thing(False)
    assert mark.text() == texts.DEMO
    menu_of(mark).actions()[1].trigger()
    assert mark.text() == texts.DEMO
    mark.show_thing(True)
    assert mark.text() == "DEMO: the clips joined"


def test_the_keyboard_opens_it_and_hangs_something_else(mark: DemoMark, qtbot: QtBot) -> None:
    mark.setFocus()
    menu = menu_of(mark)

    def choose() -> None:
        for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Return):
            QTest.keyClick(menu, key)

    menu.aboutToShow.connect(choose, Qt.ConnectionType.QueuedConnection)
    QTest.keyClick(mark, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: mark.text() == "DEMO: the clips joined", timeout=5000)


@pytest.mark.parametrize("desk", ["bilge pump"], indirect=True)
def test_while_the_output_may_be_on_nothing_is_hung(desk: Desk) -> None:
    mark = desk.window.header.demo
    assert mark is not None
    desk.begin_probe()
    assert not mark.isEnabled()
    assert why_grey(mark) == texts.DEMO_WAITS
    desk.until_over()
    assert mark.isEnabled()


def test_a_window_that_is_no_demonstration_has_none(desk: Desk) -> None:
    assert desk.window.header.demo is None


APP = """
import os, subprocess, sys
from ui import app
bench = app.to_the_bench()
print("stray words", flush=True)
other = "import sys; print('of another program'); sys.stdin.read()"
started = subprocess.Popen([sys.executable, "-c", other], stdin=subprocess.PIPE)
app.hang(bench, "free 3")
app.hang(bench, "first")
os.close(bench)
sys.stdin.readline()
started.communicate()
"""


def test_the_bench_hears_what_is_hung_and_nothing_else_and_nothing_else_holds_its_line() -> None:
    with subprocess.Popen(
        [sys.executable, "-c", APP], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as window:
        assert window.stdout is not None
        assert window.stdout.read() == "free 3\nfirst\n"  # to its end, though the other program is still there
        assert window.poll() is None
        _, said = window.communicate("\n", timeout=60.0)
    assert said.splitlines() == ["stray words", "of another program"]


@pytest.mark.timeout(120)
def test_what_is_chosen_hangs_on_the_simulated_clips(tmp_path: Path) -> None:
    """From the button's menu, through the window's own process, to the current that the supply reads."""
    with subprocess.Popen(
        [sys.executable, "-m", "drivers.simulated", "--scenario", "stuck-soft", "--until-stdin-closes"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as bench:
        assert bench.stdin is not None
        assert bench.stdout is not None
        port = int(bench.stdout.readline().split("::")[2])
        command = [sys.executable, "-c", CHOOSING, "--demo", "--item", "bilge pump", "--rated-voltage", "12"]
        done = subprocess.run(
            [*command, "--ledger", str(tmp_path / "demo.db")],
            stdout=bench.stdin,
            stderr=subprocess.PIPE,
            text=True,
            timeout=90.0,
        )
        assert done.returncode == 0, done.stderr
        with socket.create_connection(("127.0.0.1", port), timeout=10.0) as line:
            replies = line.makefile("r")
            line.sendall(b":VOLT 2;:CURR 1;:OUTP ON\n")
            time.sleep(0.3)
            line.sendall(b":MEAS:CURR?;:OUTP OFF\n")
            assert float(replies.readline()) == pytest.approx(1.0, rel=0.02)  # joined clips, at the current limit
        bench.stdin.close()
        assert bench.wait(10.0) == 0


CHOOSING = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from ui import app
from ui.demo_mark import DemoMark

def choose():
    (mark,) = [one for one in QApplication.allWidgets() if isinstance(one, DemoMark)]
    mark.menu().actions()[1].trigger()
    mark.window().close()

begun = app.FirstPaint.__init__
def begin(self, window):
    begun(self, window)
    QTimer.singleShot(500, choose)
app.FirstPaint.__init__ = begin
sys.exit(app.main(sys.argv[1:]))
"""
