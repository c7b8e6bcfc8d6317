"""The curves room by its buttons and keys: from a test to a lot's units, judged, heard and filed."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchlog.ledger.lot_checks import checks
from benchlog.ledger.start_tests import start_tests
from benchlog.records import CheckKind, Closing, RunKind, Stage
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ui.conftest import RESOURCE
from tests.ui.lot_desk import LotDesk
from ui import curve_texts as texts
from ui.curves.curving import SECOND_BEEP_MS
from ui.curves.room import CHART_PAGE, EMPTY_PAGE, JOB, LOT_PAGE, TESTS_PAGE
from ui.main_window import BENCH_ROOM
from ui.off_state import OffEvent, OffState
from ui.pieces import why_grey


@pytest.fixture
def desk(lot_desk: LotDesk) -> LotDesk:
    return lot_desk


def test_an_empty_room_leads_to_a_first_test_which_is_locked_and_then_only_read_or_copied(desk: LotDesk) -> None:
    desk.to_the_room()
    room = desk.window.curves
    assert room.page == EMPTY_PAGE
    assert not room.side.next.isVisible()
    assert desk.window.panel.numerals.isVisible()  # with nothing to tell at the side the supply's place is its own
    desk.click("curves_define_test")
    assert desk.window.panel.numerals.isVisible()
    assert room.page == TESTS_PAGE
    desk.lock_test()
    form = desk.window.curves.tests
    (kept,) = start_tests(desk.ledger)
    assert (kept.test.name, kept.test.version, kept.test.volts, kept.test.on_s) == ("cold start", 1, 3.0, 0.9)
    assert all(edit.isReadOnly() for edit in form.fields())
    assert not form.trigger.isEnabled()
    QTest.keyClicks(form.quantities["volts"], "9")
    assert form.quantities["volts"].text() == "3.00 V"
    desk.click("test_next")
    assert form.version.text() == "2"
    form.quantities["on_s"].setText("60 s")
    form.quantities["volts"].setText("4 V")
    desk.click("test_lock")
    assert form.problem.text() == "on_s: 60 is outside 0.5 to 30"
    assert len(start_tests(desk.ledger)) == 1
    form.quantities["on_s"].setText("0,9 s")
    desk.click("test_lock")
    desk.settle()
    assert [(one.test.version, one.test.volts) for one in start_tests(desk.ledger)] == [(2, 4.0), (1, 3.0)]


def test_a_unit_is_begun_with_one_key_but_not_before_hands_are_clear_and_a_serial_is_there(desk: LotDesk) -> None:
    desk.to_the_room()
    desk.lock_test()
    desk.open_lot()
    assert desk.window.curves.side.isVisible()
    card = desk.window.curves.side.next
    assert (card.start.isEnabled(), card.start.toolTip()) == (False, texts.NEEDS_CLEAR)
    assert card.check.isVisible()  # what is due is said from the beginning
    assert card.checked.text() == "Check due: zero, leads"
    assert (card.check.isEnabled(), card.check.toolTip()) == (False, texts.NEEDS_CLEAR)
    desk.click("curves_clear")
    assert (card.start.isEnabled(), card.start.toolTip()) == (False, texts.NEEDS_SERIAL)
    QTest.keyClick(desk.window.curves, Qt.Key.Key_Space)
    desk.curving.begin()
    assert desk.links == []
    kept = [entry.text for entry in desk.ledger.entries(desk.lot().job.id) if entry.stage is Stage.MAKE_SAFE]
    assert kept == [texts.CLEAR_ENTRY.format(hint=texts.CLEAR_HINT)]
    card.serial.setFocus()
    QTest.keyClicks(card.serial, "F 17")  # a space in a serial is a space
    assert desk.links == []
    QTest.keyClick(card.serial, Qt.Key.Key_Return)
    assert "F 17" in desk.window.curves.chart.say_label.text()
    desk.window.curves.setFocus()
    desk.space()
    assert card.serial.text() == ""  # the same one again has to be scanned again
    request = desk.links[-1].request
    assert (request.kind, request.job, request.rated_volts) == (RunKind.START_UP, desk.lot().job.id, 6.0)
    assert request.start_test == start_tests(desk.ledger)[0].test
    assert request.unit == desk.units()[0].id
    desk.run_until_over()
    assert [unit.serial for unit in desk.units()] == ["F 17"]
    (run,) = [one for one in desk.ledger.runs(desk.lot().job.id) if one.kind is RunKind.START_UP]
    assert run.unit == desk.units()[0].id
    assert card.serial.text() == ""
    assert desk.window.header.about.text().endswith("serial F 17")
    desk.scan("F 18")
    assert desk.window.header.about.text() == "unit 2 · serial F 18"


def test_a_scan_never_starts_the_unit_that_was_scanned_before(desk: LotDesk) -> None:
    desk.ready(checked=False)
    card, room = desk.window.curves.side.next, desk.window.curves
    desk.scan("F 17")
    assert card.start.isEnabled()
    for focus in (card.start, room, room.chart.plot):  # where the next scan arrives; its space comes at once
        focus.setFocus()
        desk.scan("F 18")
        assert (desk.links, card.serial.text()) == ([], "F 18"), focus
    desk.click("curves_cursors")
    room.chart.plot.setFocus()
    desk.scan("X- 19")  # X and - are keys of the chart
    assert (desk.links, card.serial.text()) == ([], "X- 19")
    QTest.keyClick(card.start, Qt.Key.Key_Space)  # as a scanner's last character would come
    assert (desk.links, card.serial.text()) == ([], "X- 19")
    QTest.keyClicks(card.serial, "0")  # without Enter
    card.start.setFocus()
    desk.space()
    assert desk.links == []
    assert desk.window.notice.words.text() == texts.NEEDS_ENTER
    desk.scan("F 20")
    desk.clock.wait(desk.clock.now() + 1.0)
    held = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_Space, Qt.KeyboardModifier.NoModifier, " ", True)
    QApplication.sendEvent(card.start, held)
    QApplication.sendEvent(room, held)
    assert desk.links == []
    desk.space()
    assert [link.request.unit_serial for link in desk.links] == ["F 20"]
    assert [unit.serial for unit in desk.units()] == ["F 20"]


def test_between_a_run_and_its_verdict_no_key_measures_the_same_unit_again(desk: LotDesk) -> None:
    desk.with_limits()
    begun, card = len(desk.links), desk.window.curves.side.next
    desk.scenario = "slow:7"
    card.serial.setFocus()
    desk.scan("F-7")
    desk.space()
    assert (len(desk.links), card.serial.text()) == (begun + 1, "")
    while desk.session.run.on:
        desk.session.run.poll()
    desk.space()  # it was not judged yet
    QTest.keyClick(desk.window.curves, Qt.Key.Key_Space)
    assert len(desk.links) == begun + 1
    assert not card.start.isEnabled()
    desk.scan("F-8")  # the next one, meanwhile
    desk.settle()
    assert desk.units()[-1].passed is False
    assert card.serial.text() == "F-8"
    _a_stopped_repeat_of_what_failed(desk)
    _while_off_is_not_confirmed_nothing_starts(desk)


def _a_stopped_repeat_of_what_failed(desk: LotDesk) -> None:
    """It takes no verdict away, and is told beside it."""
    desk.scenario, desk.per_poll_s = "good:7", 0.2
    desk.scan("F-7")
    desk.space()
    while not desk.window.curves.chart.plot.shown.crowd:
        desk.session.run.poll()
    desk.click("output_off")
    desk.run_until_over()
    failed = desk.units()[-1]
    assert (failed.serial, failed.passed, failed.run != failed.judged_run) == ("F-7", False, True)
    verdict = desk.window.curves.side.verdict
    assert verdict.word.text() == texts.FAIL
    assert f"It failed in run {failed.judged_run}; run {failed.run} has no verdict." in verdict.accessibleName()
    assert desk.window.curves.side.lot.words.said.startswith("5 of 6 (")
    desk.per_poll_s = 60.0
    desk.measure("F-7", "good:6")
    desk.click("curves_page_1")
    table = desk.window.curves.units.table
    assert table.item(5, 2).text() == "pass, failed before"  # type: ignore[union-attr]
    desk.click("curves_page_0")


def _while_off_is_not_confirmed_nothing_starts(desk: LotDesk) -> None:
    begun = len(desk.links)
    desk.session.off.tell(OffEvent.FOUND)
    desk.scan("F-9")
    desk.space()
    desk.curving.begin()
    assert len(desk.links) == begun
    assert "F-9" not in [unit.serial for unit in desk.units()]


def test_a_motor_that_did_not_turn_is_not_counted_among_the_known_good_ones(desk: LotDesk) -> None:
    desk.ready()
    desk.per_poll_s = 0.2
    desk.scenario = "good:1"
    desk.scan("F-1")
    desk.space()
    while not desk.window.curves.chart.plot.shown.crowd:
        desk.session.run.poll()
    desk.click("output_off")
    desk.run_until_over()
    desk.per_poll_s = 60.0
    for number in range(2, 6):
        desk.measure(f"F-{number}", f"good:{number}")
    desk.click("curves_page_1")
    units = desk.window.curves.units
    assert not units.make_limits.isEnabled()
    assert not desk.window.curves.side.lot.limits.isVisible()
    assert "4 are measured" in units.not_limits.text()
    desk.curving._make_limits("Mira")
    desk.settle()
    assert "there are 4" in desk.window.notice.words.text()
    assert desk.lot().limits_id is None


def test_a_lot_from_known_good_units_to_pass_and_fail_seen_and_heard(desk: LotDesk, qtbot: QtBot) -> None:
    desk.with_limits()
    side, room = desk.window.curves.side, desk.window.curves
    assert [unit.passed for unit in desk.units()] == [True] * 5  # those that made the limits, judged again
    limits = desk.lot().limits_id
    desk.click("curves_page_1")
    desk.click("curves_make_limits")  # once more, and nobody says that they are good
    desk.settle()
    assert desk.window.notice.words.text() == texts.NEEDS_WHO_GOOD
    assert desk.lot().limits_id == limits
    desk.click("curves_page_0")
    assert room.chart.plot.shown.band is not None
    before = desk.beeps
    desk.measure("F-6", "good:6")
    assert side.verdict.word.text() == texts.PASS
    assert desk.beeps == before + 1
    assert side.lot.words.said.startswith("6 of 6 (")
    desk.measure("F-7", "slow:7")
    assert side.verdict.word.text() == texts.FAIL
    qtbot.waitUntil(lambda: desk.beeps == before + 3, timeout=20 * SECOND_BEEP_MS)
    assert [unit.passed for unit in desk.units()][5:] == [True, False]
    rows = {row[0]: row for row in side.figures.texts()}
    assert rows["Energy"][3].startswith("+")
    assert room.chart.say_label.text().startswith("Unit 7 ")
    assert "a readback every" in room.chart.why_label.said
    desk.click("curves_page_1")
    desk.click("curves_order_1")
    table = room.units.table
    assert [table.item(0, column).text() for column in (1, 2)] == ["F-7", texts.UNIT_FAIL]  # type: ignore[union-attr]
    table.setCurrentCell(table.rowCount() - 1, 0)
    QTest.keyClick(table, Qt.Key.Key_Return)
    assert room.page == CHART_PAGE
    assert desk.curving.picked is not None
    assert room.chart.plot.shown.picked == 2 * desk.curving.picked  # its first start
    _without_the_shifts_check(desk)


def _without_the_shifts_check(desk: LotDesk) -> None:
    """Measured and filed, but not judged; and silent, as always with the sound switched off."""
    side = desk.window.curves.side
    desk.clock.wait(desk.clock.now() + 9 * 3600.0)
    desk.curving.refresh()
    desk.settle()
    assert side.next.checked.text() == "Check due: zero, leads"
    before = desk.beeps
    desk.measure("F-8", "good:8")
    assert side.verdict.word.text() == texts.NOT_JUDGED
    assert (desk.units()[-1].passed, desk.units()[-1].run is not None) == (None, True)
    links = len(desk.links)
    desk.click("curves_check")
    assert len(desk.links) == links  # asked first
    assert side.next.start.toolTip() == texts.NEEDS_JOINED
    desk.click("curves_check_leave")
    assert not side.next.begin.isVisible()
    desk.click("curves_check")
    desk.click("curves_check_begin")
    desk.run_until_over()
    assert {one.kind for one in checks(desk.ledger, desk.lot())} == set(CheckKind)
    assert desk.beeps == before
    desk.click("curves_page_1")
    desk.click("curves_sound")
    desk.measure("F-8", "good:8")
    assert side.verdict.word.text() == texts.PASS
    assert desk.beeps == before


def test_limits_take_five_known_good_units_and_say_how_many_there_are(desk: LotDesk, qtbot: QtBot) -> None:
    desk.ready()
    for number in (1, 2):
        desk.measure(f"F-{number}", f"good:{number}")
    desk.click("curves_page_1")
    units = desk.window.curves.units
    assert not units.make_limits.isEnabled()
    assert "2 are measured" in units.not_limits.text()
    desk.curving._make_limits("Mira")
    desk.settle()
    assert "there are 2" in desk.window.notice.words.text()
    assert desk.lot().limits_id is None
    _fits_1366_by_768(desk, qtbot)


def _fits_1366_by_768(desk: LotDesk, qtbot: QtBot) -> None:
    """With everything shown."""
    desk.click("curves_page_0")
    desk.window.notice.tell("a long notice, which says what has happened and what there is to do about it, " * 3)
    desk.click("curves_cursors")
    desk.click("curves_volts")

    def fits() -> None:
        least = desk.window.minimumSizeHint()
        assert (least.width() <= 1366, least.height() <= 768) == (True, True), least

    qtbot.waitUntil(fits, timeout=3000)
    for page in ("curves_page_1", "curves_page_2", "curves_new_lot"):
        desk.click(page)
        qtbot.waitUntil(fits, timeout=3000)


def test_a_new_lot_is_asked_for_from_every_page_while_another_is_shown(desk: LotDesk) -> None:
    desk.ready()
    for page in range(3):
        desk.click(f"curves_page_{page}")
        desk.click("curves_new_lot")
        assert desk.window.curves.page == LOT_PAGE
        desk.settle()  # what was shown is read again meanwhile
        assert desk.window.curves.page == LOT_PAGE
    form = desk.window.curves.lot_form
    QTest.keyClicks(form.name, "another")
    desk.click("lot_open")
    desk.settle()
    assert desk.window.curves.page == CHART_PAGE
    assert desk.curving.shown is not None
    assert desk.curving.shown.lot is not None
    assert desk.curving.shown.lot.name == "another"


def test_a_test_is_not_taken_for_a_job_that_is_closed(desk: LotDesk) -> None:
    job = desk.take_job()
    desk.ledger.close_job(job.id, Closing(cause="", work_done="", prognosis=""))
    desk.session.open_job(job.id)
    desk.to_the_room()
    desk.lock_test()
    desk.click("test_use")
    assert desk.window.curves.page == LOT_PAGE
    assert desk.window.curves.lot_form.supply.text() == RESOURCE


def test_what_a_unit_used_of_the_ceilings_is_not_shown_as_the_last_run_of_the_job_on_the_bench(desk: LotDesk) -> None:
    desk.take_job()
    desk.curving.show_chosen(0)
    desk.ready()
    desk.measure("F-1", "good:1")
    bars = desk.window.panel.ceilings
    desk.session.show_room(BENCH_ROOM)
    desk.session.refresh()
    assert not bars.of_run


def test_while_a_start_is_captured_its_readings_are_drawn_and_the_supply_is_in_sight(desk: LotDesk) -> None:
    desk.ready()
    desk.per_poll_s = 0.2
    desk.scenario = "good:1"
    card, plot, panel = desk.window.curves.side.next, desk.window.curves.chart.plot, desk.window.panel
    assert card.isVisible()
    QTest.keyClicks(card.serial, "F-1")
    desk.click("curves_start")
    assert not card.isVisible()
    assert panel.numerals.isVisible()
    while plot.shown.live is None or plot.shown.live.t_s.size < 20:
        desk.session.run.poll()
    assert plot.shown.live.t_s[0] < 0  # what was kept of the time before the trigger
    assert plot.shown.live.amps.max() > 0.5
    while not plot.shown.crowd:
        desk.session.run.poll()
    assert plot.shown.crowd[0].name == "start 1"
    view = plot.view()
    desk.scan("P-3")  # its - is no key of the chart then
    assert (plot.view(), card.serial.text()) == (view, "")
    assert desk.window.notice.words.text() == texts.NEXT_NOT_KEPT
    assert desk.window.curves.side.figures.texts()[0][1].endswith(" A")
    desk.click("output_off")
    assert desk.links[-1].stops
    desk.run_until_over()
    assert desk.session.off.state is OffState.CONFIRMED
    assert desk.units()[0].run is not None  # what was captured is filed
    assert desk.window.curves.chart.say_label.text() == "Unit 1: Stopped. 1 start captured."
    assert "output off was pressed" in desk.window.curves.chart.why_label.said.lower()
    assert card.isVisible()


def test_a_test_above_a_ceiling_is_refused_by_name_and_nothing_is_switched_on(desk: LotDesk) -> None:
    desk.owner = Settings(ceilings=Limits(volts=2.0))
    desk.ready(checked=False)
    QTest.keyClicks(desk.window.curves.side.next.serial, "F-1")
    desk.click("curves_start")
    assert "tart_test.volts: 3 V is above the owner's ceiling of 2 V" in desk.window.notice.words.text()
    assert desk.links == []
    assert desk.session.off.state is OffState.IDLE


def test_the_job_on_the_bench_before_and_after(desk: LotDesk) -> None:
    job = desk.take_job()
    desk.lock_test()
    desk.click("test_use")
    desk.settle()
    assert desk.curving.chosen == JOB
    desk.click("curves_clear")
    chart, units = desk.window.curves.chart, desk.window.curves.units
    plot = chart.plot
    assert [why_grey(one) for one in (chart.before, chart.over)] == [texts.BEFORE_NOTHING, texts.OVER_NOTHING]
    assert (units.none.isHidden(), units.none.text()) == (False, texts.RUNS_NONE)
    for scenario in ("slow:1", "good:1"):
        desk.scenario = scenario
        desk.click("curves_start")
        desk.run_until_over()
        if scenario == "slow:1":
            desk.click("curves_before")
            desk.settle()
            assert chart.read_out.text() == texts.NO_BEFORE
            desk.click("curves_before")
    assert units.none.isHidden()
    assert [run.kind for run in desk.ledger.runs(job.id)] == [RunKind.START_UP] * 2
    assert len(plot.shown.crowd) == 2
    desk.click("curves_before")
    desk.settle()
    assert plot.shown.before_name == f"before: run {desk.ledger.runs(job.id)[0].id}"
    at_s = 0.3
    before, after = (
        float(line.amps[line.t_s.searchsorted(at_s)]) for line in (plot.shown.before[0], plot.shown.crowd[0])
    )
    assert before > after + 0.1
    desk.click("curves_before")
    assert plot.shown.before == []
    desk.session.show_room(BENCH_ROOM)
    desk.session.open_job(job.id)  # its captured starts have no page of a stage
    assert desk.session.here in Stage
