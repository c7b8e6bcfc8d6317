"""What the jobs came to: every number opens the jobs behind it, and the plots say the same as the table."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from benchlog.history.past import Key, PastJob, summarise
from benchlog.history.rates import Rate
from benchlog.history.survival import Followed, kaplan_meier
from benchlog.ledger.pasts import pasts_of
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from tests.ui.crowded import crowded_ledger
from tests.ui.test_history import Room
from ui import texts, theme
from ui.charts.shares import Bar, Intervals, NotBack
from ui.history.figures import RUNG, figures_of
from ui.history.room import JOBS_PAGE, NUMBERS_PAGE

NOW = "2026-11-25T12:00:00.000Z"
JOBS = 60


@pytest.fixture(scope="module")
def crowd(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Ledger]:
    ledger = crowded_ledger(Path(tmp_path_factory.mktemp("crowd")) / "harbour.db", JOBS)
    yield ledger
    ledger.close()


@pytest.fixture
def numbers(qtbot: QtBot, crowd: Ledger) -> Room:
    made = Room(qtbot, crowd)
    QTest.mouseClick(made.room.switch.button(NUMBERS_PAGE), Qt.MouseButton.LeftButton)
    made.browsing.settle()
    return made


def past(number: int, outcome: Outcome, **more: object) -> PastJob:
    told = {"opened_utc": "2026-01-01T08:00:00.000Z", "closed_utc": "2026-01-02T08:00:00.000Z", "state": "closed"}
    return PastJob(id=number, number=number, kind="cabin fan", outcome=outcome.value, **{**told, **more})  # type: ignore[arg-type]


def test_a_row_says_counts_with_intervals_and_nothing_where_nothing_was_measured() -> None:
    pasts = [past(n, Outcome.FREED, kicks=n, cents=1250) for n in range(1, 8)]
    pasts += [past(n, Outcome.STILL_STUCK, kicks=9) for n in (8, 9)]
    (row,) = figures_of(pasts, Key.KIND.value, NOW, "EUR").rows
    # "7 of 9 (45 to 94 %)" is the way rates are written here; limits by Wilson's score, computed from its formula.
    assert [cell.text for cell in row.cells] == [
        "cabin fan", "9", "7 of 9 (45 to 94 %)", "4 (2 to 6)", "—", "—", "—", "87.50",
    ]  # fmt: skip
    assert row.cells[2].jobs == tuple(range(1, 10))
    assert row.cells[3].jobs == tuple(range(1, 8))
    assert row.unseen == tuple(range(1, 8))
    assert figures_of(pasts, Key.KIND.value, NOW, "EUR").columns[-1] == "Charged, EUR"


def test_by_rung_each_line_is_of_those_of_its_kind_that_came_free() -> None:
    pasts = [past(n, Outcome.FREED, kicks=2, freed_rung="short kicks" if n < 3 else "long kicks") for n in range(1, 5)]
    figures = figures_of(pasts[:3], RUNG, NOW, "")
    assert [(row.cells[1].text, row.rate.hits, row.rate.count) for row in figures.rows] == [
        ("short kicks", 2, 3),
        ("long kicks", 1, 3),
    ]


def test_what_waits_is_said_with_its_days() -> None:
    waits = past(
        1, Outcome.FREED, state="waiting-for-part", closed_utc=None, waiting_since_utc="2026-11-20T12:00:00.000Z"
    )
    (remark,) = figures_of([waits], Key.KIND.value, NOW, "").waits
    assert remark.text == "waits: part: 1 job, for 5 days"
    assert remark.jobs == (1,)


def test_every_number_of_the_page_opens_the_jobs_behind_it(numbers: Room, crowd: Ledger) -> None:
    groups = summarise(pasts_of(crowd), Key.KIND, crowd.clock.utc())
    page = numbers.room.numbers
    assert page.table.rowCount() == len(groups) == 5
    opened = 0
    for row in range(page.table.rowCount()):
        for column in range(1, page.table.columnCount()):
            jobs = page._rows[row].cells[column].jobs
            if not jobs:
                continue
            numbers.room.show_page(NUMBERS_PAGE)
            page.table.cellClicked.emit(row, column)
            numbers.browsing.settle()
            assert numbers.room.pages.currentIndex() == JOBS_PAGE
            assert [job.id for job in numbers.room.list.jobs] == sorted(jobs, reverse=True)
            assert numbers.room.list.only.isVisible()
            opened += 1
    assert opened > 20


def test_a_number_opens_with_the_keys_too_and_all_jobs_come_back(numbers: Room) -> None:
    table = numbers.room.numbers.table
    table.setFocus()
    table.setCurrentCell(0, 0)
    QTest.keyClick(table, Qt.Key.Key_Right)
    QTest.keyClick(table, Qt.Key.Key_Return)
    numbers.browsing.settle()
    behind = len(numbers.room.list.jobs)
    assert 0 < behind < JOBS
    assert numbers.room.list.only_words.text().startswith("The jobs behind: ")
    QTest.mouseClick(numbers.room.list.only_all, Qt.MouseButton.LeftButton)
    numbers.browsing.settle()
    assert len(numbers.room.list.jobs) == JOBS
    assert not numbers.room.list.only.isVisible()


def test_the_numbers_follow_what_is_looked_for(numbers: Room, crowd: Ledger) -> None:
    kind = numbers.room.wanting.kind
    kind.setCurrentIndex(kind.findData("cabin fan"))
    numbers.browsing.settle()
    assert [row.label for row in numbers.room.numbers._rows] == ["cabin fan"]
    count = sum(past.kind == "cabin fan" for past in pasts_of(crowd))
    assert numbers.room.count.text() == f"{count} jobs"


def test_a_group_picked_is_picked_in_both_plots(numbers: Room) -> None:
    page = numbers.room.numbers
    label = page._rows[2].label
    page.table.setCurrentCell(2, 0)
    assert page.intervals._picked == 2
    assert page.not_back_title.text() == f"Not back yet: {label}"
    QTest.mouseClick(page.intervals, Qt.MouseButton.LeftButton, pos=QPoint(60, 5))
    assert page.table.currentRow() == 0


def test_what_hardly_ever_comes_free_is_said_and_opens(numbers: Room) -> None:
    page = numbers.room.numbers
    opens = page.findChild(QPushButton, "figures_hopeless_0")
    assert opens is not None
    assert "anchor-light dimmer fan" in opens.accessibleName()
    opens.click()
    numbers.browsing.settle()
    assert {job.item.kind for job in numbers.room.list.jobs} == {"anchor-light dimmer fan"}


def test_the_plots_say_in_words_what_they_show(qtbot: QtBot) -> None:
    intervals, steps = Intervals(theme.LIGHT), NotBack(theme.LIGHT)
    for widget in (intervals, steps):
        qtbot.addWidget(widget)
        widget.resize(360, 200)
    intervals.show_bars(
        [Bar(name="cabin fan", rate=Rate(hits=7, count=9)), Bar(name="pump", rate=Rate(hits=0, count=0))]
    )
    assert "cabin fan: 7 of 9 (45 to 94 %)" in intervals.accessibleName()
    # Of four one was back after 10 days: Kaplan and Meier's share is 3/4, by hand.
    steps.show_survival("cabin fan", kaplan_meier(Followed(ended=[10], out=[40, 50, 60])))
    assert "30 days: 75 %" in steps.accessibleName()
    assert "90 days: —" in steps.accessibleName()
    steps.show_survival(texts.NOT_BACK_NONE, None)
    assert texts.NOT_BACK_NONE in steps.accessibleName()


def test_the_steps_are_drawn_at_their_shares(qtbot: QtBot) -> None:
    steps = NotBack(theme.LIGHT)
    qtbot.addWidget(steps)
    line, lower, upper = steps._corners(kaplan_meier(Followed(ended=[10, 20], out=[40, 50])), 50.0)
    # Of four one ends at 10, one of three at 20: 1, 3/4, 1/2, by hand.
    assert line == [(0.0, 1.0), (10, 1.0), (10, 0.75), (20, 0.75), (20, 0.5), (50.0, 0.5)]
    for middle, low, high in zip(line, lower, upper, strict=True):
        assert low[0] == middle[0] == high[0]
        assert low[1] <= middle[1] <= high[1]


@pytest.mark.parametrize("tokens", [theme.LIGHT, theme.DARK], ids=lambda tokens: str(tokens.name))
def test_both_plots_are_painted_in_ink_in_either_theme(qtbot: QtBot, tokens: theme.Tokens) -> None:
    intervals, steps = Intervals(tokens), NotBack(tokens)
    intervals.show_bars([Bar(name="cabin fan", rate=Rate(hits=7, count=9))] * 40)
    intervals.pick(39)
    steps.show_survival("cabin fan", kaplan_meier(Followed(ended=[0, 10, 20], out=[400])))
    for widget in (intervals, steps):
        qtbot.addWidget(widget)
        widget.resize(360, 200)
        image = widget.grab().toImage()
        assert any(
            image.pixelColor(x, y).name() == tokens.ink.lower()
            for x in range(image.width())
            for y in range(image.height())
        )


def test_nothing_is_counted_while_an_output_may_be_on(qtbot: QtBot, crowd: Ledger) -> None:
    trouble = [texts.NOT_WHILE_ON]
    made = Room(qtbot, crowd, in_the_way=lambda: trouble[0])
    made.room.switch.button(NUMBERS_PAGE).click()
    made.browsing.settle()
    assert made.room.numbers.table.rowCount() == 0
    assert made.room.numbers.about.text() == texts.FIGURES_LATER
    trouble[0] = ""
    made.browsing.refresh()
    made.browsing.settle()
    assert made.room.numbers.table.rowCount() == 5
