"""The history finds jobs, shows their runs as they were, and switches nothing."""

import threading
from collections.abc import Callable
from contextlib import nullcontext
from datetime import date
from functools import partial
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QPushButton, QScrollArea
from pytestqt.qtbot import QtBot

from benchlog.clock import SystemClock
from benchlog.ledger.backups import back_up, last_good
from benchlog.ledger.edits import change, edits_of
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Month, Order, Waits, Wanted, opened_from, opened_until
from benchlog.outcome import Outcome
from benchlog.records import Closing, Item, JobState, Motor, RunKind, TakenIn
from benchlog.settings import Settings
from tests.ledger.benches import FREED, a_lot, blocks, request, write_journal
from tests.ui.conftest import Desk
from ui import texts, theme
from ui.history.browsing import PAGE, Browsing
from ui.history.errands import Errands
from ui.history.room import NUMBERS_PAGE, HistoryRoom
from ui.moments import now_utc
from ui.notice import Notice


def fill(ledger: Ledger, kind: str, count: int = 1, taken_in: TakenIn | None = None) -> None:
    for _ in range(count):
        ledger.new_job(
            item=Item(kind=kind),
            motor=Motor(rated_volts=12.0),
            complaint="dead",
            load_state="dry, uncoupled",
            taken_in=taken_in,
        )


def kinds(room: HistoryRoom) -> list[str]:
    return [job.item.kind for job in room.list.jobs]


class Room:
    """The room on a ledger, without the rest of the window."""

    def __init__(self, qtbot: QtBot, ledger: Ledger, in_the_way: Callable[[], str] = str) -> None:
        self.room, self.notice = HistoryRoom(theme.LIGHT), Notice(theme.LIGHT)
        qtbot.addWidget(self.room, before_close_func=lambda _: self.browsing.stop())  # what is typed is asked later
        qtbot.addWidget(self.notice)
        self.room.resize(1060, 640)
        self.browsing = Browsing(self.room, ledger, self.notice, settings=Settings, in_the_way=in_the_way)
        self.room.show()
        self.browsing.refresh()
        self.browsing.settle()

    def pick(self, row: int = 0) -> None:
        self.room.table.selectRow(row)
        self.browsing.settle()


def test_typing_finds(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    fill(ledger, "Cabin fan")
    made = Room(qtbot, ledger)
    assert kinds(made.room) == ["Cabin fan", "Bilge pump"]
    QTest.keyClicks(made.room.search, "PUMP")
    qtbot.waitUntil(lambda: kinds(made.room) == ["Bilge pump"], timeout=5000)
    qtbot.waitUntil(lambda: made.room.count.text() == "1 job", timeout=5000)


def test_further_jobs_come_while_scrolling(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump", PAGE + 3)
    made = Room(qtbot, ledger)
    assert len(made.room.list.jobs) == PAGE
    assert made.room.count.text() == f"{PAGE + 3} jobs"
    made.room.table.scrollToBottom()
    made.browsing.settle()
    numbers = [job.number for job in made.room.list.jobs]
    assert numbers == list(range(PAGE + 3, 0, -1))
    assert made.room.table.rowCount() == PAGE + 3


def test_typing_goes_on_while_the_ledger_is_slow(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    let_go = threading.Event()
    made.browsing._errands.ask("jobs", lambda: let_go.wait(20), lambda _: None)
    QTest.keyClicks(made.room.search, "zinc")
    assert made.room.search.text() == "zinc"
    assert not let_go.is_set()
    qtbot.waitUntil(lambda: made.room.list.pages.currentIndex() == 1, timeout=5000)
    let_go.set()
    made.browsing.settle()
    assert made.room.list.pages.currentIndex() == 1


def test_filters_are_what_the_ledger_is_asked_for(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump", taken_in=TakenIn(who="Ana"))
    fill(ledger, "Cabin fan")
    made = Room(qtbot, ledger)
    wanting = made.room.wanting
    wanting.who.setCurrentIndex(wanting.who.findData("Ana"))
    made.browsing.settle()
    assert kinds(made.room) == ["Bilge pump"]
    wanting.blank()
    assert wanting.wanted() == Wanted()
    wanting.state.setCurrentIndex(wanting.state.findText(texts.STATE_WAITING))
    assert wanting.wanted() == Wanted(state=Waits.WAITING)
    wanting.state.setCurrentIndex(wanting.state.findText(texts.STATE_WORDS[JobState.CLOSED]))
    wanting.order.setCurrentIndex(1)
    assert wanting.wanted() == Wanted(state=JobState.CLOSED, order=Order.OLDEST)
    made.browsing.settle()


def test_both_days_are_included_and_a_day_that_is_none_is_marked(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    wanting, today = made.room.wanting, made.room.list.table.item(0, 1)
    assert today is not None
    wanting.since.setText(today.text())
    wanting.until.setText(today.text())
    wanting.changed.emit()
    made.browsing.settle()
    assert kinds(made.room) == ["Bilge pump"]
    wanting.since.setText("2026-13-01")
    assert wanting.wanted().since_utc == ""
    assert wanting.since.property("wrong") == "true"
    assert texts.NOT_A_DAY.format(said="2026-13-01") == wanting.not_a_day.text()
    wanting.since.setText("25/11/2026")
    assert wanting.wanted().since_utc == ""
    wanting.since.setText("1.11.2026")
    assert wanting.wanted().since_utc.startswith(("2026-10-31", "2026-11-01"))
    assert wanting.not_a_day.isHidden()
    wanting.since.setText("")
    wanting.until.setText("1999-12-31")
    wanting.changed.emit()
    made.browsing.settle()
    assert kinds(made.room) == []


@pytest.mark.parametrize("month", [*Month])
def test_a_month_is_one_press_and_another_takes_it_back(qtbot: QtBot, ledger: Ledger, month: Month) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    wanting = made.room.wanting
    first, last = month.days(now_utc())
    QTest.mouseClick(wanting.months[month], Qt.MouseButton.LeftButton)
    assert (wanting.since.text(), wanting.until.text()) == (str(first), str(last))
    assert wanting.wanted() == Wanted(since_utc=opened_from(first), until_utc=opened_until(last))
    assert [one for one in Month if wanting.months[one].isChecked()] == [month]
    QTest.mouseClick(wanting.months[month], Qt.MouseButton.LeftButton)
    assert wanting.wanted() == Wanted()
    QTest.mouseClick(wanting.months[month], Qt.MouseButton.LeftButton)
    wanting.since.setText("2026-01-01")
    wanting.changed.emit()
    assert not wanting.months[month].isChecked()
    made.browsing.settle()


@pytest.mark.parametrize(
    ("now_utc", "last", "this"),
    [
        ("2026-01-15T12:00:00.000Z", ("2025-12-01", "2025-12-31"), ("2026-01-01", "2026-01-31")),
        ("2024-02-29T12:00:00.000Z", ("2024-01-01", "2024-01-31"), ("2024-02-01", "2024-02-29")),
        ("2026-03-31T12:00:00.000Z", ("2026-02-01", "2026-02-28"), ("2026-03-01", "2026-03-31")),
    ],
)
def test_a_month_has_all_its_days(now_utc: str, last: tuple[str, str], this: tuple[str, str]) -> None:
    for month, days in ((Month.LAST, last), (Month.THIS, this)):
        assert month.days(now_utc) == tuple(map(date.fromisoformat, days))


def test_what_measures_is_listed_counted_and_told_from_repairs(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    lot = a_lot(ledger)
    made = Room(qtbot, ledger)
    ended = [made.room.table.item(row, 5) for row in range(2)]
    assert [one.text() for one in ended if one] == [texts.MEASURING, texts.NO_RUN_YET]
    both = texts.COUNT_MEASURING.format(jobs=texts.JOBS_COUNT.format(count=2), count=1)
    assert made.room.count.text() == both
    made.pick()
    assert made.room.card.job == lot.job
    assert not made.room.card.bench_button.isVisible()
    assert made.room.words.text().startswith(texts.MEASURING_ABOUT[:20])
    made.pick(1)
    assert made.room.card.bench_button.isVisible()
    made.room.show_page(NUMBERS_PAGE)
    made.browsing.refresh()
    made.browsing.settle()
    assert made.room.count.text() == texts.JOBS_COUNT_ONE
    assert "1 repair" in made.room.numbers.about.text()


def test_a_check_of_a_supply_says_what_it_is_and_what_it_found(qtbot: QtBot, ledger: Ledger, tmp_path: Path) -> None:
    found = "the supply was checked with 10 Ω: 9 of 9 figures are within what was stated"
    asked = replace(
        request("check", journal=str(tmp_path / "check.journal")), kind=RunKind.CHECK, item=Item(kind="supply check")
    )
    result = replace(FREED, outcome=Outcome.UNDETERMINED, reason=found, kicks=0)
    file_journal(ledger, write_journal(tmp_path / "check.journal", blocks(asked, result=result)))
    made = Room(qtbot, ledger)
    made.pick()
    card = made.room.card
    assert card.runs.currentText().startswith("supply check, ")
    assert card.runs.currentText().endswith(found)
    assert (made.room.words.toolTip() or made.room.words.text()) == texts.SUPPLY_CHECK_ABOUT
    assert card.plot.last_s > 0
    (line,) = [line for line in made.room.record.lines if line.kind == texts.LINE_RUN]
    assert line.text == f"supply check: {found}"
    assert not any(word in line.text for word in ("undetermined", "kick"))


@pytest.mark.parametrize(("typed", "say"), [("zinc", "No job has “zinc” anywhere."), ("", texts.EMPTY_LEDGER[0])])
def test_an_empty_list_says_why(qtbot: QtBot, ledger: Ledger, typed: str, say: str) -> None:
    made = Room(qtbot, ledger)
    made.room.search.setText(typed)
    made.room.wanting.changed.emit()
    made.browsing.settle()
    assert made.room.list.empty_say.text() == say
    assert made.room.list.empty_all.isVisible() is bool(typed)


def test_all_jobs_again(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    made.room.search.setText("zinc")
    made.room.wanting.changed.emit()
    made.browsing.settle()
    assert kinds(made.room) == []
    made.room.list.empty_all.click()
    made.browsing.settle()
    assert kinds(made.room) == ["Bilge pump"]
    assert made.room.search.text() == ""


def test_a_job_picked_shows_its_last_run_as_it_was(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("room_history")
    desk.session.browsing.settle()
    desk.window.history.table.selectRow(0)
    desk.session.browsing.settle()
    assert desk.window.history.plot.last_s > 1.0
    assert desk.window.history.runs.count() == 1
    assert [line.kind for line in desk.window.history.record.lines].count(texts.LINE_RUN) == 1
    desk.click("history_to_bench")
    assert desk.session.bench.job is not None
    assert desk.window.rooms.currentIndex() == 0


def test_nothing_in_this_room_begins_a_run(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    begun = len(desk.links)
    desk.session.show_room(1)
    desk.session.browsing.settle()
    desk.window.history.table.selectRow(0)
    desk.session.browsing.settle()
    for found in desk.window.history.findChildren(QPushButton):
        if found.menu() is None:  # a menu waits for its choice
            found.click()
            desk.session.browsing.settle()
    assert len(desk.links) == begun


def closed_job(ledger: Ledger) -> int:
    fill(ledger, "Bilge pump")
    job = ledger.jobs()[0].id
    ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
    return job


def test_a_closed_job_is_corrected_by_somebody_for_a_reason(qtbot: QtBot, ledger: Ledger) -> None:
    job = closed_job(ledger)
    made = Room(qtbot, ledger)
    made.pick()
    card, form = made.room.card, made.room.card.correction
    assert not card.bench_button.isVisible()
    QTest.mouseClick(card.correct_button, Qt.MouseButton.LeftButton)
    assert form.new.text() == "rust"
    assert not form.keep.isEnabled()
    form.new.setText("dried residue")
    assert not form.keep.isEnabled()
    form.who.setText("Ana")
    form.why.setText("looked again")
    QTest.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    made.browsing.settle()
    assert ledger.job(job).cause == "dried residue"
    (edit,) = edits_of(ledger, job)
    assert (edit.who, edit.why, edit.old, edit.new) == ("Ana", "looked again", '"rust"', '"dried residue"')
    assert made.room.words.text() == "Dried residue."
    assert any("rust" in line.text for line in made.room.record.lines)


def test_a_closed_job_and_the_foot_are_in_sight_together_on_a_small_screen(qtbot: QtBot, ledger: Ledger) -> None:
    closed_job(ledger)
    made = Room(qtbot, ledger)
    made.room.resize(1054, 660)  # what the window leaves the room at 1366 x 768
    made.pick()
    QApplication.processEvents()
    (area,) = made.room.findChildren(QScrollArea, options=Qt.FindChildOption.FindDirectChildrenOnly)
    assert area.verticalScrollBar().maximum() == 0
    assert made.room.back_up.mapTo(made.room, made.room.back_up.rect().bottomLeft()).y() < made.room.height()


@pytest.mark.parametrize(
    ("field", "typed", "problem"),
    [
        ("warranty_days", "1.5", texts.WRONG_WARRANTY),
        ("spending_limit_cents", "1.234", "whole cents"),
        ("result", "splendid", "works"),
        ("cause", "", texts.CORRECT_EMPTY),
        ("kind", "Bilge pump", texts.CORRECT_SAME),
    ],
)
def test_what_can_not_be_right_is_not_kept(qtbot: QtBot, ledger: Ledger, field: str, typed: str, problem: str) -> None:
    closed_job(ledger)
    made = Room(qtbot, ledger)
    made.pick()
    form = made.room.card.correction
    made.room.card.correct_button.click()
    form.field.setCurrentIndex(form.field.findData(field))
    for line, said in ((form.who, "Ana"), (form.why, "looked again"), (form.new, typed)):
        line.setText(said)
    assert problem in form.trouble.text()
    assert not form.keep.isEnabled()


def test_the_line_of_the_last_backup_follows_whoever_makes_one(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    line = made.room.backup
    assert line.text() == texts.NO_BACKUP
    for jobs in ("1 job", "2 jobs"):  # the first makes its folder as well
        back_up(ledger.path, SystemClock())
        qtbot.waitUntil(lambda jobs=jobs: jobs in (line.toolTip() or line.text()), timeout=10_000)  # type: ignore[misc]
        fill(ledger, "Cabin fan")


@pytest.mark.parametrize(("what", "begins"), [("pdf", b"%PDF"), ("html", b"<!DOCTYPE html>"), ("tag", b"%PDF")])
def test_paper_is_written_into_a_new_file(
    qtbot: QtBot, ledger: Ledger, tmp_path: Path, what: str, begins: bytes
) -> None:
    job = closed_job(ledger)
    made = Room(qtbot, ledger)
    made.pick()
    path = tmp_path / "sheet"
    made.browsing.write_file(what, job, 0, Wanted(), path)
    made.browsing.settle()
    assert path.read_bytes()[: len(begins)].lower() == begins.lower()
    path.write_bytes(b"kept")
    made.browsing.write_file(what, job, 0, Wanted(), path)
    made.browsing.settle()
    assert path.read_bytes() == b"kept"
    assert "stays as it is" in made.notice.words.text()


def test_the_list_is_exported_as_it_is_filtered(qtbot: QtBot, ledger: Ledger, tmp_path: Path) -> None:
    fill(ledger, "Bilge pump")
    fill(ledger, "Cabin fan")
    made = Room(qtbot, ledger)
    path = tmp_path / "jobs.csv"
    made.browsing.write_file("jobs", 1, 0, Wanted(kind="Cabin fan"), path)
    made.browsing.settle()
    told = path.read_text(encoding="utf-8")
    assert "Cabin fan" in told
    assert "Bilge pump" not in told
    assert (tmp_path / "jobs.csv-metadata.json").exists()


def test_the_file_is_asked_for_in_a_dialog_of_the_window_and_not_while_an_output_may_be_on(
    qtbot: QtBot, ledger: Ledger, tmp_path: Path
) -> None:
    closed_job(ledger)
    trouble = [""]
    made = Room(qtbot, ledger, in_the_way=lambda: trouble[0])
    made.pick()
    made.browsing._want_file("pdf")
    dialog = made.browsing.dialog
    assert dialog is not None
    assert dialog.testOption(dialog.Option.DontUseNativeDialog)
    dialog.setDirectory(str(tmp_path))
    dialog.selectFile("sheet.pdf")
    dialog.accept()
    made.browsing.settle()
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
    trouble[0] = texts.NOT_WHILE_ON
    made.browsing.write_file("pdf", 1, 0, Wanted(), tmp_path / "second.pdf")
    made.browsing.settle()
    assert not (tmp_path / "second.pdf").exists()
    assert made.notice.words.text() == texts.NOT_WHILE_ON


def test_a_backup_is_made_and_then_the_last_good_one(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    assert made.room.backup.text() == texts.NO_BACKUP
    made.room.back_up.click()
    assert not made.room.back_up.isEnabled()
    made.browsing.settle()
    found = last_good(ledger.path)
    assert found is not None
    assert found.jobs == 1
    assert "1 job" in made.room.backup.text()
    assert made.room.back_up.isEnabled()


def test_a_ledger_that_can_only_be_read_says_so_and_greys_what_writes(qtbot: QtBot, ledger: Ledger) -> None:
    closed_job(ledger)
    ledger.read_only = "another program has this ledger open for writing"
    made = Room(qtbot, ledger)
    made.pick()
    assert made.room.read_only.isVisible()
    for writes in (made.room.card.correct_button, made.room.back_up):
        assert not writes.isEnabled()
        assert writes.toolTip() == ledger.read_only
    assert made.room.card.paper_button.isEnabled()


def test_a_comeback_is_laid_over_the_job_it_came_back_from(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    first = desk.session.bench.job
    assert first is not None
    desk.session.new_job()
    desk.take_in()
    second = desk.session.bench.job
    assert second is not None
    desk.make_safe()
    desk.click("probe_start")
    desk.until_over()
    change(desk.ledger, second.id, {"comeback_of": first.id})
    desk.click("room_history")
    desk.session.browsing.settle()
    desk.window.history.table.selectRow(0)
    desk.session.browsing.settle()
    card = desk.window.history.card
    assert card.under.currentText().startswith(f"under it: job {first.number:04d}")
    shown = card.plot._shown
    assert len(shown.under) == len(shown.readings)
    assert shown.under_name == f"job {first.number:04d}"
    card.under.setCurrentIndex(0)
    card.under.activated.emit(0)
    desk.session.browsing.settle()
    assert len(shown.under) == 0


def test_everything_that_takes_the_keys_has_a_name(qtbot: QtBot, ledger: Ledger) -> None:
    closed_job(ledger)
    made = Room(qtbot, ledger)
    made.pick()
    named = [
        widget
        for widget in made.room.findChildren(QLineEdit) + made.room.findChildren(QPushButton)
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and widget.objectName().startswith(("history", "corr", "fig"))
    ]
    assert len(named) > 15
    assert [widget.objectName() for widget in named if not widget.accessibleName()] == []


def test_tab_goes_from_the_search_through_the_filters_to_the_list(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    made = Room(qtbot, ledger)
    made.room.activateWindow()
    made.room.search.setFocus()
    seen = []
    for _ in range(12):
        here = made.room.focusWidget()
        assert here is not None
        QTest.keyClick(here, Qt.Key.Key_Tab)
        focus = made.room.focusWidget()
        seen.append("" if focus is None else focus.objectName())
        if seen[-1] == "history_table":
            break
    assert seen[0] == "history_kind"
    assert seen[-1] == "history_table"
    QTest.keyClick(made.room.table, Qt.Key.Key_Down)
    assert made.room.picked() is not None
    made.browsing.settle()


def test_after_its_end_nothing_is_begun_that_a_late_timer_asks_for(qtbot: QtBot) -> None:
    errands = Errands(nullcontext)
    begun: list[str] = []
    errands.stop()
    errands.ask("jobs", lambda: begun.append("late"), lambda _: begun.append("shown"))
    errands.settle(0.1)
    assert begun == []


def test_of_one_channel_only_the_newest_counts(qtbot: QtBot) -> None:
    seen: list[object] = []
    errands = Errands(nullcontext)
    for number in range(5):
        errands.ask("one", partial(str, number), seen.append)
    errands.ask("other", lambda: "other", seen.append)
    errands.settle()
    assert sorted(map(str, seen)) == ["4", "other"]
    errands.stop()


def test_an_error_in_the_thread_is_raised_where_it_can_be_said(qtbot: QtBot) -> None:
    errands = Errands(nullcontext)

    def fail() -> None:
        raise ZeroDivisionError

    errands.ask("one", fail, lambda _: None)
    with pytest.raises(ZeroDivisionError):
        errands.settle()
    errands.stop()
