"""Intake and close as they are filled in: drafts, changes and undoing them, a thing come back."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from benchlog.ledger.drafts import draft
from benchlog.ledger.edits import edits_of
from benchlog.records import Closing, Item, Motor, Result, Stage
from tests.ui.conftest import RESOURCE, Desk, gone
from ui import texts, theme
from ui.main_window import MainWindow
from ui.session import Session


def type_into(field: QWidget, text: str) -> None:
    QTest.keyClicks(field, text)


def change_to(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    type_into(field, text)
    QTest.keyClick(field, Qt.Key.Key_Tab)


def test_all_that_is_asked_at_the_intake_is_kept(desk: Desk) -> None:
    owner = desk.window.intake.owner
    type_into(owner.owner, "berth 12")
    type_into(owner.limit, "45,50")
    type_into(owner.pumped, "sea water")
    owner.consent.click()
    desk.take_in()
    job = desk.ledger.job_by_number(1)
    assert (job.owner, job.spending_limit_cents, job.pumped, job.consent) == ("berth 12", 4550, "sea water", True)


def test_a_limit_that_is_no_amount_is_said_and_nothing_is_taken_in(desk: Desk) -> None:
    type_into(desk.window.intake.owner.limit, "45.505")
    desk.take_in()
    assert "two decimals" in desk.window.intake.problem.text()
    assert desk.ledger.jobs() == []


def test_a_label_put_right_is_kept_beside_what_it_was_and_can_be_taken_back(desk: Desk) -> None:
    desk.take_in()
    intake = desk.window.intake
    desk.session.go_to(Stage.INTAKE)
    assert not intake.undo_button.isEnabled()
    change_to(intake.serial, "BP-71")
    job = desk.ledger.job_by_number(1)
    assert job.item.serial == "BP-71"
    assert [(edit.field, edit.old) for edit in edits_of(desk.ledger, job.id)] == [("serial", '""')]
    desk.click("intake_undo")
    assert desk.ledger.job_by_number(1).item.serial == ""
    assert intake.serial.text() == ""
    assert texts.UNDONE.format(fields="serial") in desk.window.notice.words.text()


def test_what_is_typed_is_there_again_after_the_program_was_killed(desk: Desk, qtbot: QtBot) -> None:
    type_into(desk.window.intake.complaint, "hums, then")
    type_into(desk.window.intake.owner.owner, "berth 12")
    qtbot.waitUntil(lambda: draft(desk.ledger, "intake") is not None, timeout=5_000)
    qtbot.waitUntil(lambda: (draft(desk.ledger, "intake") or {}).get("intake_owner") == "berth 12", timeout=5_000)

    window = MainWindow(theme.LIGHT, resource=RESOURCE)
    again = Session(window, desk.ledger, desk.make_link, resource=RESOURCE)
    assert window.intake.owner.owner.text() == "berth 12"
    assert window.notice.words.text() == texts.DRAFT_FOUND
    assert again.bench.job is None
    gone(window)


def test_a_job_taken_in_leaves_no_draft(desk: Desk, qtbot: QtBot) -> None:
    type_into(desk.window.intake.owner.owner, "berth 12")
    qtbot.waitUntil(lambda: draft(desk.ledger, "intake") is not None, timeout=5_000)
    desk.take_in()
    qtbot.wait(600)
    assert draft(desk.ledger, "intake") is None


def test_a_thing_come_back_is_offered_with_its_earlier_job(desk: Desk, qtbot: QtBot) -> None:
    before = desk.ledger.new_job(
        item=Item(kind="Bilge pump", serial="BP-17"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry"
    )
    desk.ledger.close_job(before.id, Closing(cause="seal", result=Result.WORKS))
    type_into(desk.window.intake.serial, "BP-17")
    row = desk.window.intake.comeback
    qtbot.waitUntil(row.isVisible, timeout=5_000)
    assert "job 0001" in row.words.text()
    desk.click("comeback_look")
    assert desk.window.rooms.currentWidget() is desk.window.history
    desk.session.browsing.settle()
    assert desk.window.history.picked() == desk.ledger.job(before.id)
    desk.session.show_room(0)
    desk.take_in()
    assert desk.ledger.job_by_number(2).comeback_of == before.id


def test_closing_says_what_it_came_to_and_a_draft_of_it_is_kept(desk: Desk, qtbot: QtBot) -> None:
    desk.begin_probe()
    desk.until_over()
    page = desk.window.close_stage
    desk.session.go_to(Stage.CLOSE)
    type_into(page.cause, "seal")
    qtbot.waitUntil(lambda: draft(desk.ledger, "close 1") is not None, timeout=5_000)
    desk.click("close_job")
    assert page.problem.text() == texts.NEEDS_RESULT
    page.result.setCurrentIndex(0)
    type_into(page.warranty, "180")
    type_into(page.advice, "run it dry once a month")
    desk.click("close_job")
    job = desk.ledger.job_by_number(1)
    assert (job.result, job.warranty_days, job.advice) == (Result.WORKS, 180, "run it dry once a month")
    assert draft(desk.ledger, "close 1") is None
