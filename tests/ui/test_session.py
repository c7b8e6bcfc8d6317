"""A job by hand from intake to close, and everything that can go wrong on the way."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from benchlog.bench.frames import Request
from benchlog.bench.journal import Begun, Ending, Journal
from benchlog.ledger.filing import journals_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import OwnerLayer
from benchlog.outcome import Outcome, RunResult
from benchlog.records import JobState, RunKind, Stage
from benchlog.recovery.ceilings import Layer, Limits
from tests.ui.conftest import RESOURCE, Desk
from tests.ui.fake_link import FakeLink
from ui import texts, theme
from ui.main_window import MainWindow
from ui.off_state import OffState
from ui.off_watch import OVERDUE_MS
from ui.run_request import request_for
from ui.session import Session

NOBODY_S = OwnerLayer(limits=Limits())


def test_a_whole_job_by_its_buttons(desk: Desk) -> None:
    desk.take_in()
    assert desk.window.header.title.text() == "Job 0001 · Bilge pump"
    desk.make_safe()
    desk.click("probe_start")
    desk.until_over()
    assert "8.20 Ω" in desk.window.probe.say_label.text()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    desk.until_over()
    assert desk.window.free.say_label.text() == texts.OUTCOME_SAY[Outcome.FREED]
    desk.click("recovery_go_on")
    desk.click("proof_starts_3")
    desk.click("proof_start")
    desk.until_over()
    assert desk.links[-1].request.starts == 3
    desk.click("proof_go_on")
    QTest.keyClicks(desk.window.close_stage.cause, "dried residue at the seal")
    desk.window.close_stage.result.setCurrentIndex(0)
    desk.click("close_job")

    job = desk.ledger.job_by_number(1)
    assert job.state is JobState.CLOSED
    assert job.cause == "dried residue at the seal"
    assert [run.kind for run in desk.ledger.runs(job.id)] == [RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF]
    assert len([entry for entry in desk.ledger.entries(job.id) if entry.stage is Stage.MAKE_SAFE]) == 6
    desk.click("next_job")
    assert desk.window.intake.complaint_text() == ""
    assert desk.session.here is Stage.INTAKE


def test_the_request_is_what_the_intake_says(desk: Desk) -> None:
    QTest.keyClicks(desk.window.intake.max_amps, "1,5")
    request = desk.begin_probe().request
    assert request.rated_volts == 12.0
    limits = request.layers[Layer.JOB]
    assert (limits.volts, limits.amps) == (12.0, 1.5)
    assert request.resource == RESOURCE
    assert request.load_state == "dry, uncoupled"
    assert Path(request.journal).parent == journals_of(desk.ledger.path)


def test_volts_above_the_programs_own_ceiling_are_refused(desk: Desk) -> None:
    desk.take_in("48 V")
    assert "42.4 V" in desk.window.intake.problem.text()
    assert desk.ledger.jobs() == []


def test_nothing_begins_before_every_line_is_answered(desk: Desk) -> None:
    desk.take_in()
    for index in range(5):
        desk.click(f"safe_{index}_done")
    assert not desk.window.safe.go_on.isEnabled()
    assert not desk.window.rail.rows[Stage.PROBE].isEnabled()


def test_without_an_address_the_start_says_what_is_missing(desk: Desk) -> None:
    desk.window.intake.supply.clear()
    desk.take_in()
    desk.make_safe()
    desk.click("probe_start")
    assert desk.window.notice.words.text() == texts.NEEDS_SUPPLY
    assert desk.links == []


def test_the_lease_is_renewed_from_the_event_loop(desk: Desk) -> None:
    link = desk.begin_probe()
    link.per_poll_s = 0.01
    desk.bot.waitUntil(lambda: link.renewed >= 3, timeout=5_000)


def test_output_off_stops_and_shows_commanded_then_confirmed(desk: Desk) -> None:
    link = desk.begin_probe()
    link.hold_back_end = True
    QTest.mousePress(desk.window.panel.button, Qt.MouseButton.LeftButton)
    assert link.stops == [texts.STOP_PRESSED]
    assert "commanded" in desk.window.panel.off.words.text()
    link.hold_back_end = False
    desk.until_over()
    assert "confirmed by read-back at" in desk.window.panel.off.words.text()


def test_a_bench_that_does_not_answer_is_not_confirmed(desk: Desk) -> None:
    link = desk.begin_probe()
    link.hold_back_end = True
    desk.session.running.output_off()
    desk.bot.waitUntil(lambda: desk.session.off.state is OffState.NOT_CONFIRMED, timeout=OVERDUE_MS + 2000)
    link.hold_back_end = False
    desk.until_over()
    assert desk.window.panel.off.words.text() == texts.OFF_NOT_CONFIRMED


def test_not_confirmed_stays_until_a_person_says_so(desk: Desk) -> None:
    desk.confirms = False
    desk.begin_probe()
    desk.until_over()
    desk.session.show_room(1)
    desk.session.show_room(0)
    desk.session.go_to(Stage.PROBE)
    assert desk.window.panel.off.words.text() == texts.OFF_NOT_CONFIRMED
    assert not desk.window.probe.start_button.isVisible()
    desk.session.running.begin(RunKind.PROBE)
    assert len(desk.links) == 1
    newest = desk.window.notice.alarms.newest
    assert newest is not None
    assert newest.words == texts.ACKNOWLEDGE_FIRST
    desk.click("off_acknowledge")
    assert desk.session.off.state is OffState.IDLE
    desk.click("probe_start")
    assert len(desk.links) == 2


def test_closing_while_a_run_is_on_stops_first(desk: Desk) -> None:
    link = desk.begin_probe()
    link.hold_back_end = True
    desk.window.close()
    assert link.stops == [texts.STOP_CLOSING]
    assert desk.window.isVisible()
    link.hold_back_end = False
    desk.bot.waitUntil(lambda: not desk.window.isVisible(), timeout=3000)
    assert desk.session.off.state is OffState.CONFIRMED


def test_closing_waits_for_a_person_where_off_is_not_confirmed(desk: Desk) -> None:
    desk.confirms = False
    desk.begin_probe()
    desk.window.close()
    desk.until_over()
    assert desk.window.isVisible()
    desk.click("off_acknowledge")
    assert not desk.window.isVisible()


def test_a_fault_presses_output_off_and_is_shown(desk: Desk) -> None:
    link = desk.begin_probe()
    desk.session.fault("ZeroDivisionError: division by zero")
    assert link.stops == [texts.STOP_FAULT]
    assert "ZeroDivisionError" in desk.window.notice.words.text()
    assert desk.window.notice.isVisible()


def test_a_reading_that_is_too_old_is_no_longer_shown(desk: Desk) -> None:
    link = desk.begin_probe()
    numeral = desk.window.panel.numerals.volts
    desk.bot.waitUntil(lambda: numeral.text() != texts.NOTHING, timeout=3000)
    link.per_poll_s = 0.0
    desk.bot.waitUntil(lambda: numeral.text() == texts.NOTHING, timeout=3000)
    assert desk.session.run.on
    assert desk.window.panel.numerals.word.text() == texts.MOTION_WORDS["none"]


def test_a_question_is_answered_once_and_inline(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    card = desk.window.free.question
    desk.bot.waitUntil(card.isVisible, timeout=10_000)
    assert QApplication.activeModalWidget() is None
    desk.click("choice_1")
    assert desk.links[-1].answers == [(1, "skip")]
    assert not card.isVisible()


def test_after_an_answer_the_next_key_presses_no_button(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    card = desk.window.free.question
    desk.bot.waitUntil(card.isVisible, timeout=10_000)
    card.buttons[0].setFocus()
    QTest.keyClick(card.buttons[0], Qt.Key.Key_Space)
    assert not card.isVisible()
    assert desk.window.focusWidget() is desk.window.stages


def test_a_hand_step_goes_into_the_run_and_between_runs_into_the_job(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("hand_2")
    assert [entry.text for entry in desk.ledger.entries(1) if entry.stage is Stage.FREE] == ["by hand: soaked"]
    desk.click("recovery_start")
    desk.click("hand_1")
    assert desk.links[-1].notes == ["by hand: tapped"]
    desk.until_over()
    assert len([entry for entry in desk.ledger.entries(1) if entry.stage is Stage.FREE]) == 1


def test_an_electrical_finding_goes_on_to_close(desk: Desk) -> None:
    desk.scenario = "short"
    desk.begin_probe()
    desk.until_over()
    assert not desk.window.rail.rows[Stage.FREE].isEnabled()
    desk.click("probe_go_on")
    assert desk.session.here is Stage.CLOSE


def test_still_stuck_offers_both_again_and_close(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.scenario = "still-stuck"
    desk.click("recovery_start")
    desk.until_over()
    assert desk.window.free.start_button.text() == texts.RUN_AGAIN_BUTTON[RunKind.RECOVERY]
    desk.click("recovery_go_on")
    assert desk.session.here is Stage.CLOSE


def test_no_second_job_while_a_run_is_on(desk: Desk) -> None:
    desk.begin_probe()
    desk.session.new_job()
    assert desk.session.bench.job is not None
    assert desk.window.notice.words.text() == texts.NOT_WHILE_ON


def test_a_job_taken_up_again_stands_where_it_was_left(desk: Desk) -> None:
    QTest.keyClicks(desk.window.intake.max_amps, "1.5")
    desk.begin_probe()
    desk.until_over()
    desk.session.new_job()
    desk.session.open_job(1)
    assert desk.session.here is Stage.FREE
    assert desk.window.intake.setting().max_amps == 1.5
    assert "8.20 Ω" in desk.window.probe.say_label.text()
    assert desk.window.probe.plot.last_s > 1.0


def test_a_run_left_behind_is_filed_at_the_next_start(desk: Desk, ledger: Ledger) -> None:
    desk.take_in()
    job = desk.session.bench.job
    assert job is not None
    setting = desk.window.intake.setting()
    request = request_for(RunKind.PROBE, job, setting, desk.session.running.sequence, ledger, owner=NOBODY_S, starts=5)
    with Journal(Path(request.journal), sync_thread=False) as journal:
        journal.write(Begun(request, "2026-11-25T08:00:00.000Z", "test"))
    window = another_start(desk, ledger)
    assert [run.result.outcome for run in ledger.runs(job.id)] == [Outcome.STOPPED]
    told = [one.words for one in window.notice.alarms.kept]
    assert len(told) == 1
    assert "without its output confirmed off" in told[0]
    assert told[0].endswith(texts.LEFT_BEHIND_TOO)


def test_a_run_that_was_left_behind_with_its_output_off_is_told_of_in_one_sentence(desk: Desk, ledger: Ledger) -> None:
    desk.take_in()
    job = desk.session.bench.job
    assert job is not None
    setting = desk.window.intake.setting()
    request = request_for(RunKind.PROBE, job, setting, desk.session.running.sequence, ledger, owner=NOBODY_S, starts=5)
    with Journal(Path(request.journal), sync_thread=False) as journal:
        journal.write(Begun(request, "2026-11-25T08:00:00.000Z", "test"))
        journal.write(Ending(RunResult(outcome=Outcome.STOPPED, reason="x", output_confirmed_off=True), 1.0))
    window = another_start(desk, ledger)
    told = [one.words for one in window.notice.alarms.kept]
    assert len(told) == 1
    assert "Run 1 of job 0001 (probe, begun 2026-11-25" in told[0]
    assert texts.LEFT_BEHIND_WHY in told[0]
    assert texts.OFF_READ_BACK in told[0]


def test_after_the_window_was_closed_in_a_run_the_next_start_says_what_became_of_it(desk: Desk, ledger: Ledger) -> None:
    desk.begin_probe()
    desk.bot.waitUntil(lambda: desk.window.probe.plot.last_s > 0.4, timeout=5000)
    desk.window.close()
    desk.bot.waitUntil(lambda: not desk.window.isVisible(), timeout=5000)
    started = another_start(desk, ledger)
    told = [one.words for one in started.notice.alarms.kept]
    assert len(told) == 1
    assert f"ended early: {texts.STOP_CLOSING}. {texts.OFF_READ_BACK}" in told[0]
    started.notice.leave()  # the room in which it was closed is gone back to
    started.notice.tell("Something else.")
    assert (started.notice.alarms.count, started.notice.words.text()) == (2, told[0])
    assert "filed with the job" in told[0]
    # another run, and it is no news any more
    desk.window.show()
    desk.session._closing = False
    desk.click("probe_start")
    desk.until_over()
    assert not another_start(desk, ledger).notice.alarms.kept


def another_start(desk: Desk, ledger: Ledger) -> MainWindow:
    """The window that comes up when the program is started again."""

    def no_link(_: Request) -> FakeLink:
        raise AssertionError

    window = MainWindow(theme.DARK)
    desk.bot.addWidget(window)
    Session(window, ledger, no_link)
    return window


def test_a_ledger_that_can_not_be_used_is_said_and_the_window_goes_on(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    desk.click("probe_start")
    link = desk.links[-1]
    desk.bot.waitUntil(lambda: desk.window.probe.plot.last_s > 1.0, timeout=5000)
    journal = Path(link.request.journal)
    journal.parent.mkdir(parents=True, exist_ok=True)
    link.spoil_journal = True
    desk.until_over()
    assert "could not be used" in desk.window.notice.words.text()
    assert journal.exists()
