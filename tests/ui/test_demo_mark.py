"""The mark of a demonstration: what hangs on the simulated clips is chosen with it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Desk
from ui import app, texts
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
    assert hung == ["", "short", *(f"free {number}" for number in range(1, FANS + 1))]


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


def test_it_is_written_where_the_bench_reads_it(capfd: pytest.CaptureFixture[str]) -> None:
    app.hang("free 3")
    assert capfd.readouterr().out == "free 3\n"
