"""The history finds jobs, shows their runs as they were, and switches nothing."""

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.ui.conftest import Desk
from ui import theme
from ui.history.browsing import PAGE, Browsing
from ui.history.room import HistoryRoom


def fill(ledger: Ledger, kind: str, count: int = 1) -> None:
    for _ in range(count):
        ledger.new_job(
            item=Item(kind=kind), motor=Motor(rated_volts=12.0), complaint="dead", load_state="dry, uncoupled"
        )


def kinds(room: HistoryRoom) -> list[str]:
    found = []
    for row in range(room.table.rowCount()):
        cell = room.table.item(row, 2)
        assert cell is not None
        found.append(cell.text())
    return found


def test_typing_finds(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump")
    fill(ledger, "Cabin fan")
    room = HistoryRoom(theme.LIGHT)
    qtbot.addWidget(room)
    browsing = Browsing(room, ledger)
    browsing.refresh()
    assert kinds(room) == ["Cabin fan", "Bilge pump"]
    QTest.keyClicks(room.search, "PUMP")
    qtbot.waitUntil(lambda: kinds(room) == ["Bilge pump"], timeout=2000)
    assert room.count.text() == "1 job"


def test_older_jobs_come_at_a_press(qtbot: QtBot, ledger: Ledger) -> None:
    fill(ledger, "Bilge pump", PAGE + 3)
    room = HistoryRoom(theme.LIGHT)
    qtbot.addWidget(room)
    browsing = Browsing(room, ledger)
    browsing.refresh()
    assert room.table.rowCount() == PAGE
    room.older.click()
    assert room.table.rowCount() == PAGE + 3
    assert not room.older.isVisibleTo(room)


def test_a_job_picked_shows_its_last_run_as_it_was(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("room_history")
    desk.window.history.table.selectRow(0)
    assert desk.window.history.plot.last_s > 1.0
    assert desk.window.history.runs.count() == 1
    desk.click("history_to_bench")
    assert desk.session.bench.job is not None
    assert desk.window.rooms.currentIndex() == 0


def test_nothing_in_this_room_begins_a_run(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    begun = len(desk.links)
    desk.session.show_room(1)
    desk.window.history.table.selectRow(0)
    for found in desk.window.history.findChildren(QPushButton):
        found.click()
    assert len(desk.links) == begun
