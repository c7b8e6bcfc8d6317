"""The key for the hand on the shaft, "it moved", notes, and the leads."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QWidget

from benchlog.bench.frames import Question
from benchlog.records import EventKind, RunKind, Stage
from tests.ui.conftest import RESOURCE, Desk
from tests.ui.fake_link import FakeLink
from ui import texts
from ui.bench_keys import HOLD_KEY, MOVED_KEY, SPACES
from ui.main_window import BENCH_ROOM, HISTORY_ROOM


@pytest.fixture
def keyed(desk: Desk, qapp: QApplication) -> Iterator[Desk]:
    """A desk whose keys are heard, as `ui.app` installs them; its job is ready to be freed."""
    keys = desk.session.running.keys
    qapp.installEventFilter(keys)
    desk.begin_probe()
    desk.until_over()
    desk.session.go_to(Stage.FREE)
    yield desk
    qapp.removeEventFilter(keys)


def begin_by_hand(desk: Desk) -> FakeLink:
    desk.click("free_hand")
    link = desk.links[-1]
    assert link.request.kind is RunKind.HAND
    link.per_poll_s = 0.02
    return link


def test_the_key_is_told_at_once_and_again_while_it_is_down(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    QTest.keyPress(keyed.window, HOLD_KEY)
    assert link.holds == [True]
    keyed.bot.waitUntil(lambda: len(link.holds) >= 3, timeout=3000)
    assert all(link.holds)
    QTest.keyRelease(keyed.window, HOLD_KEY)
    assert link.holds[-1] is False
    told = len(link.holds)
    keyed.bot.wait(250)
    assert len(link.holds) == told


@pytest.mark.parametrize("lost", [QEvent.Type.WindowDeactivate, QEvent.Type.ApplicationDeactivate])
def test_a_lost_focus_lets_go(keyed: Desk, qapp: QApplication, lost: QEvent.Type) -> None:
    link = begin_by_hand(keyed)
    QTest.keyPress(keyed.window, HOLD_KEY)
    QApplication.sendEvent(keyed.window if lost is QEvent.Type.WindowDeactivate else qapp, QEvent(lost))
    assert link.holds[-1] is False


def test_output_off_ends_the_run_and_disarms_the_key(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    QTest.keyPress(keyed.window, HOLD_KEY)
    keyed.window.panel.button.pressed.emit()
    keyed.until_over()
    held = len(link.holds)
    QTest.keyPress(keyed.window, HOLD_KEY)
    assert len(link.holds) == held
    assert not keyed.session.running.keys.down


def test_the_key_presses_no_button_that_was_clicked_before(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    keyed.click("hand_0")
    QTest.keyClick(keyed.window.focusWidget() or keyed.window, HOLD_KEY)
    assert link.holds == [True, False]


def test_space_on_a_button_that_was_walked_to_presses_that_and_puts_no_current_on(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    moved = keyed.window.free.moved_button
    for _ in range(80):
        if moved.hasFocus():
            break
        QTest.keyClick(keyed.window.focusWidget() or keyed.window, Qt.Key.Key_Tab)
    assert moved.hasFocus()
    pressed: list[bool] = []
    moved.clicked.connect(lambda: pressed.append(True))
    QTest.keyClick(moved, HOLD_KEY)
    assert pressed == [True]
    assert link.holds == []
    keyed.window.free.hold_button.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(keyed.window.free.hold_button, HOLD_KEY)
    assert link.holds == [True, False]


@pytest.mark.parametrize("by_mouse", [True, False])
def test_a_note_that_is_typed_while_the_foot_holds_lets_go_at_once(keyed: Desk, *, by_mouse: bool) -> None:
    link = begin_by_hand(keyed)
    QTest.keyPress(keyed.window, HOLD_KEY)
    note = keyed.window.free.note
    if by_mouse:
        QTest.mouseClick(note, Qt.MouseButton.LeftButton)
    else:
        note.setFocus(Qt.FocusReason.TabFocusReason)
    assert note.hasFocus()
    assert link.holds[-1] is False
    QTest.keyClicks(note, "it gave a little")
    QTest.keyRelease(note, HOLD_KEY)
    keyed.bot.wait(250)
    assert link.holds[-1] is False
    assert note.text() == "it gave a little"


@pytest.mark.parametrize("called", [*SPACES])
def test_the_key_is_let_go_under_whatever_name_it_comes_up(keyed: Desk, called: int) -> None:
    link = begin_by_hand(keyed)
    QTest.keyPress(keyed.window, HOLD_KEY)
    up = QKeyEvent(QEvent.Type.KeyRelease, called, Qt.KeyboardModifier.ShiftModifier)
    QApplication.sendEvent(keyed.window, up)
    assert link.holds == [True, False]
    keyed.bot.wait(250)
    assert link.holds == [True, False]


def test_the_same_key_of_the_keyboard_lets_go_whatever_it_is_called(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    for kind, code, scan in ((QEvent.Type.KeyPress, HOLD_KEY, 65), (QEvent.Type.KeyRelease, Qt.Key.Key_unknown, 65)):
        QApplication.sendEvent(keyed.window, QKeyEvent(kind, code, Qt.KeyboardModifier.NoModifier, scan, 0, 0))
    assert link.holds == [True, False]


def test_back_from_another_window_space_is_still_for_what_was_walked_to(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    moved = keyed.window.free.moved_button
    moved.setFocus(Qt.FocusReason.TabFocusReason)
    other = QWidget()
    keyed.bot.addWidget(other)
    other.show()
    other.activateWindow()
    keyed.bot.waitUntil(other.isActiveWindow, timeout=3000)
    keyed.window.activateWindow()
    keyed.bot.waitUntil(moved.hasFocus, timeout=3000)
    QTest.keyClick(moved, HOLD_KEY)
    assert link.holds == []


def test_a_click_makes_space_the_key_that_is_held_again(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    pill = keyed.window.findChild(QAbstractButton, "hand_0")
    assert pill is not None
    pill.setFocus(Qt.FocusReason.TabFocusReason)
    steps: list[str] = []
    keyed.window.free.hand.connect(steps.append)
    QTest.mouseClick(pill, Qt.MouseButton.LeftButton)
    QTest.keyClick(pill, HOLD_KEY)
    assert len(steps) == 1
    assert link.holds == [True, False]


def test_in_another_room_the_key_holds_nothing_and_a_question_leaves_the_keyboard_there(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    keyed.session.show_room(HISTORY_ROOM)
    kind = keyed.window.history.wanting.kind
    kind.setFocus()
    keyed.window.free.question.ask(Question(id=1, text="Has it moved?", choices=["it turns", "skip"]))
    assert kind.hasFocus()
    QTest.keyClick(kind, HOLD_KEY)
    kind.hidePopup()
    assert link.holds == []
    keyed.session.show_room(BENCH_ROOM)
    QTest.keyClick(keyed.window, HOLD_KEY)
    assert link.holds == [True, False]


def test_begun_with_the_keyboard_the_key_holds_as_well(keyed: Desk) -> None:
    begins = keyed.window.free.hand_button
    begins.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(begins, Qt.Key.Key_Space)
    link = keyed.links[-1]
    assert link.request.kind is RunKind.HAND
    link.per_poll_s = 0.02
    QTest.keyClick(keyed.window.focusWidget() or keyed.window, HOLD_KEY)
    assert link.holds == [True, False]


def test_the_button_on_the_screen_holds_as_the_key_does(keyed: Desk) -> None:
    link = begin_by_hand(keyed)
    button = keyed.window.free.hold_button
    assert button.isVisible()
    QTest.mousePress(button, Qt.MouseButton.LeftButton)
    assert link.holds == [True]
    QTest.mouseRelease(button, Qt.MouseButton.LeftButton)
    assert link.holds[-1] is False


def test_without_a_run_by_hand_the_key_holds_nothing(keyed: Desk) -> None:
    keyed.click("recovery_start")
    QTest.keyPress(keyed.window, HOLD_KEY)
    assert keyed.links[-1].holds == []
    assert not keyed.window.free.hold_button.isVisible()


def test_one_key_says_that_it_moved_and_is_typed_as_a_letter_in_a_note(keyed: Desk) -> None:
    keyed.click("recovery_start")
    link = keyed.links[-1]
    QTest.keyClick(keyed.window, MOVED_KEY)
    assert link.notes == [texts.MOVED_NOTED]
    note = keyed.window.free.note
    note.setFocus()
    QTest.keyClicks(note, "hums more")
    QTest.keyClick(note, Qt.Key.Key_Return)
    assert link.notes == [texts.MOVED_NOTED, "hums more"]
    keyed.until_over()
    run = keyed.ledger.runs(1)[-1]
    kinds = [(event.kind, event.text) for event in keyed.ledger.events(run.id)]
    assert (EventKind.MOVED, texts.MOVED_NOTED) in kinds
    assert (EventKind.NOTE, "hums more") in kinds


def test_a_note_between_runs_is_kept_with_the_job(keyed: Desk) -> None:
    QTest.keyClicks(keyed.window.free.note, "seal looks dry")
    QTest.keyClick(keyed.window.free.note, Qt.Key.Key_Return)
    assert any("seal looks dry" in entry.text for entry in keyed.ledger.entries(1))


def test_a_run_by_hand_is_filed_with_the_stage_and_says_what_to_do_next(keyed: Desk) -> None:
    begin_by_hand(keyed).per_poll_s = 0.5
    keyed.until_over()
    run = keyed.ledger.runs(1)[-1]
    assert (run.kind, run.result.moved) == (RunKind.HAND, True)
    assert texts.HAND_ENDED_DO in keyed.window.free.why_label.said


def test_the_leads_are_measured_once_and_taken_out_of_what_comes_after(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    shown = desk.window.findChild(QLabel, "probe_leads")
    assert isinstance(shown, QLabel)
    assert shown.text() == texts.LEADS_NEVER
    desk.click("probe_leads_start")
    assert desk.links[-1].request.kind is RunKind.LEADS
    assert desk.links[-1].request.lead_ohm == 0.0
    desk.until_over()
    assert "120 mΩ" in shown.text()
    desk.click("probe_start")
    assert desk.links[-1].request.lead_ohm == pytest.approx(0.12)
    assert desk.links[-1].request.resource == RESOURCE
    desk.until_over()
    assert desk.window.rail is not None
    assert desk.session.bench.way().may_go_to(Stage.FREE), "joined clips are no short in the motor"


def test_the_thermal_class_is_asked_for_as_a_ceiling(desk: Desk) -> None:
    desk.window.intake.thermal.setCurrentText("B")
    link = desk.begin_probe()
    motor = next(limits for layer, limits in link.request.layers.items() if layer == "motor")
    assert motor.winding_c == 115.0
