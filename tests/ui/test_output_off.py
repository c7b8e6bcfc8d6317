"""The keys reach "Output off" from everywhere, and the button can't be taken away."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QMenu, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Desk
from ui import theme
from ui.main_window import CURVES_ROOM, HELP_ROOM, HISTORY_ROOM, SETTINGS_ROOM
from ui.output_off import OutputOffButton, OutputOffKeys


@pytest.fixture
def presses(qapp: QApplication) -> Iterator[list[str]]:
    keys = OutputOffKeys()
    heard: list[str] = []
    keys.pressed.connect(lambda: heard.append("off"))
    qapp.installEventFilter(keys)
    yield heard
    qapp.removeEventFilter(keys)


@pytest.mark.parametrize("key", [Qt.Key.Key_Escape, Qt.Key.Key_Pause])
def test_the_keys_are_heard_in_the_window(qtbot: QtBot, presses: list[str], key: Qt.Key) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    QTest.keyClick(window, key)
    assert presses


def test_escape_is_heard_with_a_modal_dialog_open(qtbot: QtBot, presses: list[str]) -> None:
    box = QMessageBox()
    qtbot.addWidget(box)
    QTimer.singleShot(50, lambda: QTest.keyClick(box, Qt.Key.Key_Escape))
    QTimer.singleShot(2000, box.reject)
    box.exec()
    assert presses


def test_escape_is_heard_with_a_menu_open(qtbot: QtBot, presses: list[str]) -> None:
    menu = QMenu()
    qtbot.addWidget(menu)
    menu.addAction("something")
    menu.popup(menu.pos())
    qtbot.waitUntil(menu.isVisible)
    QTest.keyClick(menu, Qt.Key.Key_Escape)
    assert presses


def test_escape_is_heard_with_a_combo_popup_open(qtbot: QtBot, presses: list[str]) -> None:
    combo = QComboBox()
    qtbot.addWidget(combo)
    combo.addItems(["dry", "wet"])
    combo.show()
    combo.showPopup()
    popup = combo.view()
    qtbot.waitUntil(popup.isVisible)
    QTest.keyClick(popup, Qt.Key.Key_Escape)
    assert presses


def test_other_keys_are_not(qtbot: QtBot, presses: list[str]) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert not presses


def test_the_button_acts_when_pressed_down_not_when_let_go(qtbot: QtBot) -> None:
    button = OutputOffButton(theme.LIGHT)
    qtbot.addWidget(button)
    button.show()
    with qtbot.waitSignal(button.pressed, timeout=500):
        QTest.mousePress(button, Qt.MouseButton.LeftButton)


def test_the_button_can_not_be_disabled(qtbot: QtBot) -> None:
    button = OutputOffButton(theme.LIGHT)
    qtbot.addWidget(button)
    button.setEnabled(False)
    assert button.isEnabled()


def test_the_button_is_in_the_same_corner_in_every_stage_and_room(desk: Desk) -> None:
    window = desk.window
    corners = set()
    desk.take_in()
    desk.make_safe()
    ways: tuple[Callable[[], object], ...] = (
        lambda: window.stages.setCurrentIndex(0),
        lambda: window.stages.setCurrentIndex(3),
        lambda: window.stages.setCurrentIndex(5),
        lambda: desk.session.show_room(CURVES_ROOM),
        lambda: desk.session.show_room(HISTORY_ROOM),
        lambda: desk.session.show_room(SETTINGS_ROOM),
        lambda: desk.session.show_room(HELP_ROOM),
        lambda: desk.session.fault("something"),
    )
    for show in ways:
        show()
        desk.bot.wait(20)
        corner = window.panel.button.mapTo(window, window.panel.button.rect().bottomRight())
        corners.add((corner.x(), corner.y()))
        middle = window.panel.button.mapTo(window, window.panel.button.rect().center())
        assert window.childAt(middle) is window.panel.button
    assert len(corners) == 1


def test_no_native_dialog_is_ever_made_and_none_in_the_window_but_for_files() -> None:
    """One of the system's would take the keys. What `app.py` says in a box, it says before there is a window."""
    for path in (Path(__file__).parents[2] / "ui").rglob("*.py"):
        source = path.read_text(encoding="utf-8")
        assert source.count("QFileDialog(") == source.count("Option.DontUseNativeDialog"), path.name
        before_a_window = ("QMessageBox",) if path.name == "app.py" else ()
        for other in ("QMessageBox", "QInputDialog", "QColorDialog", "QFontDialog", "getOpenFile", "getSaveFile"):
            assert other not in source or other in before_a_window, path.name
