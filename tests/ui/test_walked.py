"""Where the keyboard leads on the pages of a job: as the eye goes, to the answers first, and never to an old choice."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from benchlog.bench.frames import Question
from benchlog.records import Stage
from tests.ui.conftest import Desk


def walk(desk: Desk, count: int) -> list[str]:
    """Names of what Tab leads to from where the keyboard is."""
    seen = []
    for _ in range(count):
        QTest.keyClick(desk.window.focusWidget() or desk.window, Qt.Key.Key_Tab)
        focus = desk.window.focusWidget()
        seen.append("" if focus is None else focus.objectName())
    return seen


def test_another_job_s_lines_are_walked_to_from_their_first_choice(desk: Desk) -> None:
    desk.take_in()
    for index, choice in enumerate(("done", "not_fitting", "not_fitting", "done", "done", "done")):
        desk.click(f"safe_{index}_{choice}")
    desk.session.new_job()
    desk.take_in()
    seen = [name for name in walk(desk, 40) if name.startswith("safe_")]
    assert seen[:4] == ["safe_0_done", "safe_1_done", "safe_2_done", "safe_3_done"]  # arrows lead to the others


def test_on_the_pages_of_runs_tab_goes_as_the_eye_goes(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    seen = walk(desk, 40)
    assert seen.index("probe_leads_start") < seen.index("probe_start")
    for stage, first, then in (
        (Stage.PROVE, "proof_starts_3", "proof_start"),
        (Stage.FREE, "free_hand", "recovery_start"),
    ):
        desk.window.show_stage(stage)
        for name in (first, then):
            found = desk.window.findChild(QWidget, name)
            assert found is not None
            found.show()
            found.setEnabled(True)
        seen = walk(desk, 60)
        assert seen.index(first) < seen.index(then)


def test_a_button_that_goes_hands_the_keyboard_to_its_page(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    page = desk.window.probe
    page.on_button.show()
    page.on_button.setFocus()
    page.offer(start=True, again=False, on_to="", done=False)
    assert page.hasFocus()  # and not the next in line, which the space bar would press
    page.start_button.setFocus()
    page.offer(start=True, again=True, on_to="", done=False)
    assert page.start_button.hasFocus()


def test_tab_leads_from_a_question_to_its_answers_one_after_the_other(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    desk.window.show_stage(Stage.FREE)
    card = desk.window.free.question
    card.ask(Question(id=1, text="Has it moved?", choices=["it turns", "still stuck", "skip"]))
    assert card.hasFocus()
    assert walk(desk, 3) == ["choice_0", "choice_1", "choice_2"]
    note = desk.window.free.note
    note.setEnabled(True)
    note.setFocus()
    card.ask(Question(id=2, text="Has it moved?", choices=["it turns", "skip"]))
    assert note.hasFocus()  # what is typed there goes on
