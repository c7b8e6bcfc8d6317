"""Half a million characters pasted into a form: nothing is lost, and the window goes on."""

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.ui.conftest import Desk

LONG = ("rusted through " * 33_334)[:500_000].strip()


def test_a_complaint_of_half_a_million_characters_is_kept_whole_and_found(desk: Desk) -> None:
    intake = desk.window.intake
    line = intake.kind.lineEdit()
    assert line is not None
    QTest.keyClicks(line, "Bilge pump")
    QTest.keyClicks(intake.rated, "12")
    QApplication.clipboard().setText(LONG)
    intake.complaint.setFocus()
    intake.complaint.paste()
    desk.click("intake_open")
    assert desk.ledger.job_by_number(1).complaint == LONG
    assert [job.number for job in desk.ledger.jobs(text="rusted")] == [1]
    desk.session.show_room(1)
    desk.session.show_room(0)
    assert desk.window.header.title.text() == "Job 0001 · Bilge pump"


def test_a_search_of_half_a_million_characters_finds_nothing_and_stalls_nothing(desk: Desk) -> None:
    desk.take_in()
    desk.session.show_room(1)
    QApplication.clipboard().setText(LONG)
    desk.window.history.search.paste()
    assert desk.ledger.jobs(text=LONG) == []
