"""Intake and close as they are filled in: drafts, changes and undoing them, a thing come back."""

import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QLineEdit, QWidget
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


@pytest.mark.parametrize("name", ["intake_max_volts", "intake_max_amps"])
def test_words_in_a_field_for_a_figure_are_told_of_when_it_is_left_and_no_longer_once_it_is_mended(
    desk: Desk, name: str
) -> None:
    type_into(desk.window.intake.rated, "12")
    field, problem = desk.window.findChild(QLineEdit, name), desk.window.intake.problem
    assert isinstance(field, QLineEdit)
    change_to(field, "about two")
    assert "“about two” is no number" in problem.text()
    change_to(field, "2")
    assert problem.text() == ""


def test_a_sentence_about_one_field_stays_while_another_is_typed_into_and_goes_when_its_own_is_mended(
    desk: Desk,
) -> None:
    intake = desk.window.intake
    desk.click("intake_open")
    assert intake.problem.text() == texts.NEEDS_KIND
    type_into(intake.serial, "BP-71")
    assert intake.problem.text() == texts.NEEDS_KIND
    type_into(intake.kind, "Bilge pump")
    assert intake.problem.text() == ""
    assert desk.ledger.jobs() == []


def test_an_address_with_a_space_is_not_taken_in_and_one_typed_anew_is(desk: Desk) -> None:
    intake = desk.window.intake
    change_to(intake.supply, "TCPIP::192.0.2.7 ::5025::SOCKET")
    assert intake.problem.text() == texts.ADDRESS_WITH_SPACE
    desk.take_in()
    assert intake.problem.text() == texts.ADDRESS_WITH_SPACE
    assert desk.ledger.jobs() == []
    change_to(intake.supply, RESOURCE)
    assert intake.problem.text() == ""
    desk.click("intake_open")
    assert len(desk.ledger.jobs()) == 1


def test_a_usb_instrument_may_have_a_space_in_its_serial_number(desk: Desk) -> None:
    change_to(desk.window.intake.supply, "USB0::0x1234::0x5678::BENCH 71::INSTR")
    assert desk.window.intake.address_problem() == ""


def test_an_address_spoiled_after_taking_in_begins_no_run(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    desk.session.go_to(Stage.INTAKE)
    change_to(desk.window.intake.supply, "TCPIP:: 192.0.2.7")
    desk.session.go_to(Stage.PROBE)
    desk.click("probe_start")
    assert desk.links == []
    assert desk.window.notice.words.text() == texts.ADDRESS_WITH_SPACE


def test_both_boxes_of_the_load_state_have_a_name_that_is_seen_and_read_aloud(desk: Desk) -> None:
    intake = desk.window.intake
    seen = {label.buddy(): label.text() for label in intake.findChildren(QLabel) if label.isVisible()}
    for box in (intake.wet, intake.coupled):
        assert seen[box] == box.accessibleName() != ""
    assert seen[intake.wet] != seen[intake.coupled]


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
    assert texts.RESULTS[Result.WORKS] in row.words.text()
    desk.click("comeback_look")
    assert desk.window.rooms.currentWidget() is desk.window.history
    desk.session.browsing.settle()
    assert desk.window.history.picked() == desk.ledger.job(before.id)
    desk.session.show_room(0)
    desk.take_in()
    assert desk.ledger.job_by_number(2).comeback_of == before.id


def test_an_outcome_that_this_program_does_not_know_is_told_as_it_is(desk: Desk) -> None:
    job = desk.ledger.new_job(
        item=Item(kind="Bilge pump", serial="BP-17"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry"
    )
    desk.window.intake.comeback.offer([msgspec.structs.replace(job, last_outcome="melted")])
    assert "melted" in desk.window.intake.comeback.words.text()


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
