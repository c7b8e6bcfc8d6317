"""The day's backup beside the window, and a second window on the same ledger."""

from pathlib import Path

from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchlog.ledger.backups import back_up, last_good
from benchlog.ledger.drafts import draft
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.ui.conftest import RESOURCE, Desk
from ui import texts, theme
from ui.backing_up import BackingUp
from ui.main_window import MainWindow
from ui.session import Session

_PUMP, _MOTOR = Item(kind="Bilge pump"), Motor(rated_volts=12.0)


def test_the_first_start_of_a_day_makes_a_backup(desk: Desk, qtbot: QtBot) -> None:
    desk.take_in()
    backing_up = BackingUp(desk.window, desk.ledger)
    backing_up.start()
    qtbot.waitUntil(lambda: last_good(desk.ledger.path) is not None, timeout=10_000)
    backing_up.stop()
    made = last_good(desk.ledger.path)
    assert made is not None
    assert made.jobs == 1


def test_a_backup_that_fails_is_said_and_stops_nothing(desk: Desk, qtbot: QtBot) -> None:
    folder = desk.ledger.path.with_name(desk.ledger.path.name + ".backups")
    folder.write_text("no folder")
    backing_up = BackingUp(desk.window, desk.ledger)
    with qtbot.waitSignal(backing_up.made, timeout=10_000):
        backing_up.start()
    backing_up.stop()
    assert desk.window.notice.words.text().startswith(texts.BACKUP_FAILED.format(what=""))
    desk.take_in()
    assert len(desk.ledger.jobs()) == 1


def test_one_that_was_never_begun_can_be_stopped(desk: Desk) -> None:
    BackingUp(desk.window, desk.ledger).stop()


def test_a_second_window_shows_all_and_changes_nothing(tmp_path: Path, qtbot: QtBot, desk: Desk) -> None:
    path = tmp_path / "shared.db"
    with Ledger.open(path, sole_writer=True) as first:
        first_job = first.new_job(item=_PUMP, motor=_MOTOR, complaint="hums", load_state="dry, uncoupled")
        with Ledger.open(path, sole_writer=True) as second:
            assert second.read_only
            window = MainWindow(theme.LIGHT, resource=RESOURCE)
            qtbot.addWidget(window)
            session = Session(window, second, desk.make_link, resource=RESOURCE)
            window.show()
            session.open_job(first_job.id)
            assert window.header.title.text() == "Job 0001 · Bilge pump"
            for view in window.views():
                assert not view.start_button.isEnabled() or not view.start_button.isVisible()
            session.new_job()
            QTest.keyClicks(window.intake.owner.owner, "berth 12")
            line = window.intake.kind.lineEdit()
            assert line is not None
            QTest.keyClicks(line, "Cabin fan")
            QTest.keyClicks(window.intake.rated, "12")
            window.intake.open_button.click()
            assert "open" in window.notice.words.text()
            assert window.intake.owner.owner.text() == "berth 12"
            assert len(second.jobs()) == 1
            assert draft(second, "intake") is None
        back_up(path, first.clock)
