"""Keys for foot switches: what can be taught, and that a stray key begins nothing."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QKeyCombination, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Desk
from ui import texts
from ui.main_window import HISTORY_ROOM
from ui.output_off import OutputOffKeys
from ui.preferences import Preferences, Preferring
from ui.start_keys import SETTLE_S, StartKeys
from ui.taught_keys import Role, Teaching, refusal, taught

K, M = Qt.Key, Qt.KeyboardModifier
PLAIN = M.NoModifier


def why(key: Qt.Key, held: Qt.KeyboardModifier = PLAIN, role: Role = Role.START, **kept: str) -> str:
    return refusal(QKeyCombination(held, key), role, Preferences(**kept))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("key", "held"),
    [
        (K.Key_F9, PLAIN),
        (K.Key_F13, PLAIN),
        (K.Key_F9, M.ShiftModifier),
        (K.Key_MediaPlay, PLAIN),
        (K.Key_VolumeUp, PLAIN),
        (K.Key_5, M.KeypadModifier),
        (K.Key_G, M.ControlModifier),
        (K.Key_PageDown, M.AltModifier),
    ],
)
def test_keys_that_type_nothing_can_be_taught(key: Qt.Key, held: Qt.KeyboardModifier) -> None:
    assert why(key, held) == ""


@pytest.mark.parametrize(
    ("key", "held"),
    [
        (K.Key_Escape, PLAIN),
        (K.Key_Pause, PLAIN),
        (K.Key_Space, PLAIN),
        (K.Key_Space, M.ControlModifier),
        (K.Key_M, PLAIN),
        (K.Key_Return, PLAIN),
        (K.Key_Enter, M.KeypadModifier),
        (K.Key_Tab, PLAIN),
        (K.Key_S, PLAIN),
        (K.Key_S, M.ShiftModifier),
        (K.Key_5, PLAIN),
        (K.Key_Adiaeresis, PLAIN),
        (K.Key_Dead_Acute, PLAIN),
        (K.Key_Left, PLAIN),
        (K.Key_Left, M.KeypadModifier),
        (K.Key_Backspace, PLAIN),
        (K.Key_C, M.ControlModifier),
        (K.Key_F4, M.AltModifier),
        (K.Key_F1, PLAIN),
        (K.Key_N, M.ControlModifier),
        (K.Key_Shift, M.ShiftModifier),
        (K.Key_CapsLock, PLAIN),
        (K.Key_unknown, PLAIN),
    ],
)
def test_keys_that_type_or_have_their_work_are_refused_with_a_reason(key: Qt.Key, held: Qt.KeyboardModifier) -> None:
    assert why(key, held)


def test_output_off_does_not_hang_on_num_lock() -> None:
    assert why(K.Key_5, M.KeypadModifier, Role.OFF) == texts.KEY_NUM_LOCK


def test_no_key_has_two_meanings() -> None:
    assert texts.ROLE_NEXT in why(K.Key_F9, next_key="F9")
    assert why(K.Key_F9, start_key="F9") == ""


@pytest.mark.parametrize("kept", ["Space", "Esc", "F9, F10", "nonsense", ""])
def test_a_key_that_could_not_have_been_taught_is_none(kept: str) -> None:
    assert taught(Role.START, Preferences(start_key=kept)) is None


class Lesson:
    """A teaching that is listened to, and the keys of "Output off" over it."""

    def __init__(self, app: QApplication) -> None:
        self.preferring = Preferring()
        self.busy = ""
        self.teaching = Teaching(self.preferring, in_the_way=lambda: self.busy)
        self.off = OutputOffKeys(liked=lambda: self.preferring.now)
        self.heard: list[tuple[str, ...]] = []
        self.teaching.heard.connect(lambda role, text: self.heard.append(("heard", role, text)))
        self.teaching.refused.connect(lambda role, why: self.heard.append(("refused", role, why)))
        self.teaching.ended.connect(lambda role: self.heard.append(("ended", role)))
        self.off.pressed.connect(lambda: self.heard.append(("off",)))
        app.installEventFilter(self.teaching)
        app.installEventFilter(self.off)


@pytest.fixture
def lesson(qapp: QApplication, qtbot: QtBot) -> Iterator[Lesson]:
    made = Lesson(qapp)
    yield made
    qapp.removeEventFilter(made.teaching)
    qapp.removeEventFilter(made.off)


@pytest.fixture
def typed_into(qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    made.show()
    return made


def test_the_next_key_is_kept_for_the_role_and_said(lesson: Lesson, typed_into: QWidget) -> None:
    lesson.teaching.begin("start_key")
    QTest.keyClick(typed_into, K.Key_F9)
    assert lesson.heard == [("heard", "start_key", "F9"), ("ended", "start_key")]
    assert lesson.preferring.now.start_key == "F9"
    assert lesson.teaching.text("start_key") == "F9"
    lesson.teaching.forget("start_key")
    assert lesson.preferring.now.start_key == ""


def test_what_is_refused_is_said_and_the_next_one_may_do(lesson: Lesson, typed_into: QWidget) -> None:
    lesson.teaching.begin("next_key")
    QTest.keyClick(typed_into, K.Key_Space)
    QTest.keyClick(typed_into, K.Key_F10)
    assert [told[0] for told in lesson.heard] == ["refused", "heard", "ended"]
    assert lesson.preferring.now.next_key == "F10"


def test_escape_is_output_off_and_ends_the_teaching(lesson: Lesson, typed_into: QWidget) -> None:
    lesson.teaching.begin("start_key")
    QTest.keyClick(typed_into, K.Key_Escape)
    assert ("off",) in lesson.heard
    assert ("ended", "start_key") in lesson.heard
    assert lesson.preferring.now.start_key == ""
    QTest.keyClick(typed_into, K.Key_F9)
    assert lesson.preferring.now.start_key == ""


def test_a_taught_off_key_is_heard_also_while_another_is_taught_and_with_more_keys_held(
    lesson: Lesson, typed_into: QWidget
) -> None:
    lesson.preferring.change(off_key="F12")
    lesson.teaching.begin("start_key")
    QTest.keyClick(typed_into, K.Key_F12, M.ShiftModifier)
    assert ("off",) in lesson.heard
    lesson.teaching.end()
    lesson.heard.clear()
    QTest.keyClick(typed_into, K.Key_F12)
    QTest.keyClick(typed_into, K.Key_F11)
    assert set(lesson.heard) == {("off",)}


def test_nothing_is_taught_while_an_output_may_be_on(lesson: Lesson, typed_into: QWidget) -> None:
    lesson.busy = texts.NOT_WHILE_ON
    assert not lesson.teaching.begin("start_key")
    QTest.keyClick(typed_into, K.Key_F9)
    assert lesson.heard == [("refused", "start_key", texts.NOT_WHILE_ON)]
    assert lesson.preferring.now.start_key == ""


# pressing them


class Feet:
    """F9 starts and F10 goes on; time passes only when it is told to."""

    def __init__(self, desk: Desk) -> None:
        self.desk, self.now_s = desk, 0.0
        self.blocked = False
        preferring = Preferring()
        preferring.change(start_key="F9", next_key="F10")
        self.keys = StartKeys(desk.window, preferring, blocked=lambda: self.blocked, now_s=lambda: self.now_s)
        self.told: list[str] = []
        self.keys.told.connect(self.told.append)

    def press(self, key: Qt.Key, held: Qt.KeyboardModifier = PLAIN) -> None:
        self.now_s += 2 * SETTLE_S
        QTest.keyClick(self.desk.window, key, held)


@pytest.fixture
def feet(desk: Desk, qapp: QApplication) -> Iterator[Feet]:
    desk.take_in()
    desk.make_safe()
    made = Feet(desk)
    qapp.installEventFilter(made.keys)
    desk.bot.waitUntil(desk.window.isActiveWindow, timeout=2000)
    yield made
    qapp.removeEventFilter(made.keys)


def test_the_start_key_begins_the_page_s_run_and_the_next_key_only_goes_on(feet: Feet) -> None:
    feet.press(K.Key_F10)
    assert feet.desk.links == []
    assert feet.told == [texts.KEY_NOTHING_HERE]
    feet.press(K.Key_F9)
    assert len(feet.desk.links) == 1
    feet.desk.until_over()
    feet.press(K.Key_F10)
    assert feet.desk.window.stages.currentWidget() is feet.desk.window.free
    feet.press(K.Key_F10)
    assert len(feet.desk.links) == 1


def test_a_stray_start_key_begins_nothing(feet: Feet, qapp: QApplication) -> None:
    window = feet.desk.window
    feet.press(K.Key_F9, M.ShiftModifier)
    QTest.keyPress(window, K.Key_X)
    feet.press(K.Key_F9)
    QTest.keyRelease(window, K.Key_X)
    feet.blocked = True
    feet.press(K.Key_F9)
    feet.blocked = False
    feet.desk.session.show_room(HISTORY_ROOM)
    feet.press(K.Key_F9)
    feet.desk.session.show_room(0)
    feet.desk.session.go_to(next(iter(window._pages)))
    window.intake.complaint.setFocus()
    feet.press(K.Key_F9)
    assert feet.desk.links == []


def test_shift_that_comes_up_before_tab_leaves_the_key_alive(feet: Feet) -> None:
    window = feet.desk.window
    QTest.keyPress(window, K.Key_Shift, M.ShiftModifier)
    QTest.keyPress(window, K.Key_Backtab, M.ShiftModifier)
    QTest.keyRelease(window, K.Key_Shift)
    QTest.keyRelease(window, K.Key_Tab)  # as it is called without Shift
    feet.press(K.Key_F9)
    assert len(feet.desk.links) == 1


def test_what_has_just_come_up_is_not_pressed_unread(feet: Feet) -> None:
    feet.keys.rest()
    feet.now_s += 0.9 * SETTLE_S
    QTest.keyClick(feet.desk.window, K.Key_F9)
    assert feet.desk.links == []
    feet.press(K.Key_F9)
    assert len(feet.desk.links) == 1


def test_a_key_that_is_held_down_starts_once(feet: Feet) -> None:
    window = feet.desk.window
    feet.now_s += 2 * SETTLE_S
    QTest.keyPress(window, K.Key_F9)
    assert len(feet.desk.links) == 1
    feet.desk.until_over()
    feet.now_s += 2 * SETTLE_S
    QTest.keyPress(window, K.Key_F9)
    assert len(feet.desk.links) == 1
    QTest.keyRelease(window, K.Key_F9)


def test_a_press_meant_for_the_run_before_begins_no_other(desk: Desk, qapp: QApplication) -> None:
    keys = desk.session.start_keys
    told: list[str] = []
    keys.told.connect(told.append)
    desk.session.preferring.change(start_key="F9", next_key="F10")
    desk.begin_probe()
    desk.until_over()
    qapp.installEventFilter(keys)
    QTest.keyClick(desk.window, K.Key_F9)
    QTest.keyClick(desk.window, K.Key_F10)
    qapp.removeEventFilter(keys)
    assert (len(desk.links), told) == (1, [])
    assert desk.window.stages.currentWidget() is desk.window.probe


def test_the_key_taught_for_it_stands_on_output_off_and_goes_when_it_is_forgotten(
    desk: Desk, qapp: QApplication
) -> None:
    button, teaching = desk.window.panel.button, desk.session.teaching
    plain = button.grab().toImage()
    qapp.installEventFilter(teaching)
    try:
        assert teaching.begin(Role.OFF.value)
        QTest.keyClick(desk.window, K.Key_F9)
    finally:
        qapp.removeEventFilter(teaching)
    assert "F9" in button.accessibleName()
    assert "F9" in button.toolTip()
    assert button.grab().toImage() != plain
    teaching.forget(Role.OFF.value)
    assert button.accessibleName() == texts.OUTPUT_OFF_ACCESSIBLE
    assert button.grab().toImage() == plain
