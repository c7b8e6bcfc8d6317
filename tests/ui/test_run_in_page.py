"""Running in by the room's buttons: asked for, followed for hours, its drift told, the cold start that is still due."""

import pytest
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchlog.records import RunKind, Stage
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ui.fake_starts import DRIFT_WORDS
from tests.ui.lot_desk import LotDesk
from ui import curve_texts as texts
from ui import theme
from ui.curves.run_in_page import LEAST_SPAN_S, RunInPage


@pytest.fixture
def desk(lot_desk: LotDesk) -> LotDesk:
    return lot_desk


def test_without_a_job_on_the_bench_nothing_can_be_run_in(desk: LotDesk) -> None:
    desk.to_the_room()
    desk.click("curves_page_6")
    page = desk.window.curves.run_in
    page.clear.click()
    assert (page.start.isEnabled(), page.start.toolTip()) == (False, texts.RUN_IN_NO_JOB)


def test_a_run_in_is_followed_its_drift_told_and_a_cold_start_asked_for(desk: LotDesk) -> None:
    job = desk.take_job()
    desk.click("curves_page_6")
    desk.settle()
    page = desk.window.curves.run_in
    assert not desk.window.curves.side.found.isVisible()  # a verdict there would be of another run
    assert page.volts.text() == "6.00 V"  # as the job is rated
    assert page.start.toolTip() == texts.NEEDS_CLEAR
    page.hours.clear()
    QTest.keyClicks(page.hours, "0,75")
    desk.click("run_in_clear")
    desk.click("run_in_start")
    asked = desk.links[-1].request.run_in
    assert asked is not None
    assert (asked.at_most_s, asked.volts, asked.pace_s, asked.restart) == (2700.0, 6.0, 1.0, True)
    desk.session.run.poll()
    low, high = page.plot.view()
    assert low == 0.0
    assert max(LEAST_SPAN_S, page.plot.last_s) <= high <= max(LEAST_SPAN_S, 1.15 * page.plot.last_s)  # the whole of it
    assert desk.window.panel.numerals.isVisible()
    assert not page.form.isVisible()
    desk.run_until_over()
    assert page.say_label.text() == DRIFT_WORDS
    assert page.form.isVisible()
    (run,) = desk.ledger.runs(job.id)
    assert run.kind is RunKind.RUN_IN
    assert page.plot.last_s > 2690
    assert page.due.text().startswith("Start it once more when it is cold, from ")
    said = [entry.text for entry in desk.ledger.entries(job.id) if entry.stage is Stage.MAKE_SAFE]
    assert said == [texts.CLEAR_ENTRY.format(hint=texts.RUN_IN_CLEAR)]
    desk.clock.wait(desk.clock.now() + 9 * 3600.0)
    desk.click("curves_page_6")
    desk.settle()
    assert page.due.text() == texts.COLD_NOW
    desk.click("curves_page_2")
    assert not desk.window.curves.side.found.isHidden()


@pytest.mark.parametrize(("field", "text"), [("hours", "many"), ("hours", "30"), ("pace", "5 s"), ("volts", "0")])
def test_what_can_not_be_is_said_and_nothing_begins(qtbot: QtBot, field: str, text: str) -> None:
    page = RunInPage(theme.LIGHT)
    qtbot.addWidget(page)
    asked: list[object] = []
    page.begun.connect(asked.append)
    page.offer("", 6.0)
    page.clear.setChecked(True)
    getattr(page, field).setText(text)
    page.start.click()
    assert page.problem.text()
    assert asked == []


def test_volts_above_a_ceiling_are_refused_by_name(desk: LotDesk) -> None:
    desk.owner = Settings(ceilings=Limits(volts=5.0))
    desk.take_job()
    desk.click("curves_page_6")
    desk.settle()
    desk.click("run_in_clear")
    desk.click("run_in_start")
    assert "un_in.volts: 6 V is above the owner's ceiling of 5 V" in desk.window.notice.words.text()
    assert desk.links == []
