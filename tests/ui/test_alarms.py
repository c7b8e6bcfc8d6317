"""What is said beside a run: the most urgent first, none lost, and the red card over all of the work."""

import ast
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Desk
from ui import texts, theme
from ui.alarm_looks import CARD_OF, SIGN_OF, colour_of, word_of
from ui.alarms import HELD, KEPT, LEVEL_OF, MOST_OPEN, Alarms, Level, What
from ui.main_window import BENCH_ROOM, HISTORY_ROOM
from ui.notice import SETTLE_MS, Notice
from ui.off_state import OffState
from ui.shapes import SIGNS

UI = Path(__file__).parents[2] / "ui"


def told(alarms: Alarms, *whats: What) -> None:
    for number, what in enumerate(whats):
        alarms.tell(f"thing {number}", what, "14:03:07")


def test_every_kind_has_a_level_and_every_level_a_word_a_shape_and_a_colour_of_its_own() -> None:
    assert set(LEVEL_OF) == set(What)
    urgent = [level for level in Level if level is not Level.SAID]
    assert {LEVEL_OF[what] for what in What} == set(Level)
    for tokens in theme.PALETTES:
        assert len({colour_of(level, tokens) for level in Level}) == len(Level)
    assert len({word_of(level) for level in urgent}) == 3
    assert len({SIGN_OF[level] for level in Level}) == len({CARD_OF[level] for level in Level}) == 4
    assert set(SIGN_OF.values()) <= set(SIGNS)


def test_every_kind_is_said_somewhere() -> None:
    named = {
        node.attr
        for path in UI.rglob("*.py")
        if path.name != "alarms.py"
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "What"
    }
    assert {what.name for what in What} - named == set()


def test_the_most_urgent_stands_first_and_of_several_the_last() -> None:
    alarms = Alarms()
    told(alarms, What.BACKUP, What.FAULT, What.NEEDED, What.FAULT, What.LEDGER)
    assert alarms.top is not None
    assert (alarms.top.words, alarms.count) == ("thing 3", 5)
    assert alarms.newest is not None
    assert alarms.newest.words == "thing 4"


def test_seeing_one_off_sees_off_no_other_and_none_that_is_held() -> None:
    alarms = Alarms()
    told(alarms, What.FAULT, What.BACKUP, What.FOUND_ON)
    assert alarms.top is not None
    alarms.dismiss(alarms.top.number)
    assert alarms.top.what in HELD
    alarms.put_away()
    assert alarms.count == 2
    alarms.settle(What.FOUND_ON)
    assert alarms.top is not None
    assert alarms.top.what is What.FAULT


def test_the_answer_to_a_press_takes_the_place_of_the_last_one_and_of_no_alarm() -> None:
    alarms = Alarms()
    told(alarms, What.LEDGER, What.NEEDED, What.SAID)
    assert alarms.count == 2
    assert [one.words for one in alarms.kept] == ["thing 0", "thing 1", "thing 2"]


def test_what_is_said_again_counts_once_and_the_last_fifty_are_kept() -> None:
    alarms = Alarms()
    for _ in range(3):
        alarms.tell("the disk is full", What.LEDGER, "14:03:07")
    assert (alarms.count, len(alarms.kept)) == (1, 1)
    told(alarms, *[What.LEDGER] * (KEPT + 5))
    assert len(alarms.kept) == KEPT
    assert alarms.count == KEPT + 6


@pytest.fixture
def notice(qtbot: QtBot) -> Notice:
    made = Notice(theme.LIGHT)
    qtbot.addWidget(made)
    return made


def test_the_notice_says_level_and_time_and_keeps_the_last_word_in_sight(notice: Notice) -> None:
    notice.tell("a bug", What.FAULT)
    notice.tell("written", What.SAID)
    assert notice.level.text().startswith(texts.ACT_NOW)
    assert notice.words.text() == "a bug"
    assert notice.more.text() == texts.NOTICE_MORE.format(count=1)
    assert not notice.below.isHidden()
    assert notice._below_words.text() == "written"


def test_the_notice_opens_what_was_said_and_ends_when_all_was_seen(notice: Notice) -> None:
    notice.tell("a bug", What.FAULT)
    notice.tell("no backup", What.BACKUP)
    notice.more.click()
    assert [notice.list.item(row).text().split("   ")[1] for row in range(notice.list.count())] == [
        "no backup",
        "a bug",
    ]
    seen(notice, lambda: notice.words.text() == "no backup")
    seen(notice, notice.isHidden)


def test_a_press_meant_for_what_stood_there_before_dismisses_nothing(notice: Notice) -> None:
    notice.tell("a bug", What.FAULT)
    notice.tell("no backup", What.BACKUP)
    notice.seen.click()
    assert notice.words.text() == "a bug"
    seen(notice, lambda: notice.words.text() == "no backup")
    notice.seen.click()  # the next came to stand under the same pointer
    assert notice.words.text() == "no backup"


def test_what_was_only_told_goes_with_the_page_it_was_about_and_all_else_stays(desk: Desk) -> None:
    notice = desk.window.notice
    notice.tell("no backup", What.BACKUP)
    notice.tell("kept with the job")
    desk.session.show_room(BENCH_ROOM)
    assert notice.alarms.count == 2
    desk.session.show_room(HISTORY_ROOM)
    assert [told.words for told in notice.alarms._open] == ["no backup"]
    desk.session.show_room(BENCH_ROOM)
    desk.take_in()
    notice.tell("kept with the job")
    desk.window.rail.record.click()
    assert [told.words for told in notice.alarms._open] == ["no backup"]


def seen(notice: Notice, then: Callable[[], bool]) -> None:
    """Pressed as a person does who has read it."""
    while notice._stands.elapsed() < SETTLE_MS:
        QApplication.processEvents()
    notice.seen.click()
    assert then()


def test_what_is_held_has_no_button_to_see_it_off(notice: Notice) -> None:
    notice.tell("not confirmed", What.FOUND_ON)
    assert notice.seen.isHidden()
    notice.dismiss()
    assert not notice.isHidden()


# the red card


def not_off(desk: Desk) -> None:
    desk.confirms = False
    desk.begin_probe()
    desk.until_over()


def test_an_output_that_is_not_confirmed_off_covers_all_but_output_off(desk: Desk) -> None:
    not_off(desk)
    window = desk.window
    assert window.red.isVisible()
    assert window.red.do.text() == texts.RED_DO
    for part in (window.header, window.rail, window.stages):
        middle = part.mapTo(window, part.rect().center())
        found = window.childAt(middle)
        assert found is not None
        assert found is window.red or window.red.isAncestorOf(found)
    usable = {one.objectName() for one in window.findChildren(QPushButton) if one.isVisible() and one.isEnabled()}
    assert usable == {"off_acknowledge"}
    middle = window.panel.button.mapTo(window, window.panel.button.rect().center())
    assert window.childAt(middle) is window.panel.button


def test_no_stray_key_ends_it_and_no_shortcut_gets_past_it(desk: Desk) -> None:
    heard: list[int] = []
    shortcut = QShortcut(QKeySequence("Ctrl+9"), desk.window)
    shortcut.activated.connect(lambda: heard.append(1))
    not_off(desk)
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Space, Qt.Key.Key_Escape, Qt.Key.Key_F9):
        QTest.keyClick(desk.window.red, key)
    QTest.keyClick(desk.window, Qt.Key.Key_9, Qt.KeyboardModifier.ControlModifier)
    assert desk.window.red.isVisible()
    assert heard == []
    desk.click("off_acknowledge")
    assert not desk.window.red.isVisible()
    assert desk.session.off.state is OffState.IDLE
    assert desk.window.header.isEnabled()
    assert desk.window.notice.isHidden()
    QTest.keyClick(desk.window, Qt.Key.Key_9, Qt.KeyboardModifier.ControlModifier)
    assert heard == [1]


def test_it_says_so_when_the_supply_answers_after_all(desk: Desk) -> None:
    link = desk.begin_probe()
    link.hold_back_end = True
    desk.session.running.output_off()
    desk.session.off._deadline.timeout.emit()
    assert desk.window.red.isVisible()
    assert desk.window.red.since.isHidden()
    link.hold_back_end = False
    desk.until_over()
    assert desk.window.red.isVisible()
    assert not desk.window.red.since.isHidden()


def test_a_run_that_ends_in_order_shows_no_card(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    assert desk.window.red.isHidden()


# the beep


def sounding(desk: Desk) -> bool:
    return desk.session.alarming.sounding


def test_what_is_urgent_sounds_until_it_is_acknowledged_or_the_output_is_off(desk: Desk) -> None:
    assert not sounding(desk)
    desk.window.notice.tell("a bug", What.FAULT)
    assert not sounding(desk)
    not_off(desk)
    assert sounding(desk)
    desk.click("off_acknowledge")
    assert not sounding(desk)


def test_each_alarm_sounds_once_and_what_is_only_told_does_not(desk: Desk) -> None:
    sounded: list[int] = []
    desk.session.alarming._beep = lambda: sounded.append(1)
    desk.window.notice.tell("written", What.SAID)
    desk.window.notice.tell("no backup", What.BACKUP)
    assert len(sounded) == 1


def test_what_stays_open_for_longer_than_it_is_kept_can_be_said_again_and_what_is_open_has_an_end() -> None:
    alarms = Alarms()
    alarms.tell("an output", What.FOUND_ON, "")
    for number in range(MOST_OPEN + 5):
        alarms.tell(f"disk {number}", What.LEDGER, "")
    alarms.tell("an output", What.FOUND_ON, "")
    assert alarms.urgent
    assert alarms.count == MOST_OPEN
