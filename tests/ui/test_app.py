"""The window as a program: it opens on a ledger, pictures itself, and says in one line why it can't."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QObject, QTimer, Signal, SignalInstance
from PySide6.QtWidgets import QApplication, QMessageBox

from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.ledger.benches import leave_journal
from tests.ui.conftest import Desk
from ui import texts
from ui.app import close_on_signals, off_at_session_end, tell

ROOT = Path(__file__).parents[2]


def window(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "ui", *arguments],
        cwd=ROOT,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=100,
        check=False,
    )


def test_it_pictures_the_newest_job_in_both_sizes_and_themes(tmp_path: Path) -> None:
    with Ledger.open(tmp_path / "harbour.db") as ledger:
        ledger.new_job(
            item=Item(kind="Cabin fan"), motor=Motor(rated_volts=12.0), complaint="dead", load_state="dry, uncoupled"
        )
    pictures = tmp_path / "pictures"
    done = window("--ledger", str(tmp_path / "harbour.db"), "--demo", "--snapshot", str(pictures))
    assert (done.returncode, done.stderr) == (0, "")
    names = {path.name for path in pictures.iterdir()}
    assert {"intake-light-1366x768.png", "make-safe-dark-1920x1080.png", "history-dark-1366x768.png"} <= names
    assert not any(name.startswith("probe") for name in names)


def test_a_file_that_is_no_ledger_is_one_line_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "notes.txt"
    path.write_text("not a ledger, only notes\n" * 200, encoding="utf-8")
    before = path.read_bytes()
    done = window("--ledger", str(path))
    assert done.returncode == 74
    assert done.stderr.count("\n") == 1
    assert "notes.txt" in done.stderr
    assert path.read_bytes() == before


def test_it_pictures_itself_and_ends_also_where_an_output_is_not_confirmed_off(tmp_path: Path) -> None:
    with Ledger.open(tmp_path / "harbour.db") as ledger:
        file_journal(ledger, leave_journal(tmp_path, "a", result=None))
    done = window("--ledger", str(tmp_path / "harbour.db"), "--snapshot", str(tmp_path / "pictures"))
    assert (done.returncode, done.stderr) == (0, "")
    assert (tmp_path / "pictures" / "history-light-1366x768.png").exists()


def test_without_a_terminal_the_reason_for_no_window_is_shown(desk: Desk) -> None:
    shown: list[str] = []

    def close_it() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        shown.append(box.text())
        box.close()

    QTimer.singleShot(0, close_it)
    tell("the ledger could not be opened", from_icon=True)
    assert shown == ["the ledger could not be opened"]


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_signal_switches_off_first_and_then_closes(desk: Desk, number: signal.Signals) -> None:
    before = {each: signal.getsignal(each) for each in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)}
    try:
        close_on_signals(desk.window)
        link = desk.begin_probe()
        link.hold_back_end = True
        os.kill(os.getpid(), number)
        desk.bot.waitUntil(lambda: link.stops == [texts.STOP_CLOSING], timeout=3000)
        assert desk.window.isVisible()
        link.hold_back_end = False
        desk.bot.waitUntil(lambda: not desk.window.isVisible(), timeout=3000)
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)


class SystemSession(QObject):
    """What the desktop's session manager says to an application."""

    _ends = Signal(object)

    @property
    def ends(self) -> SignalInstance:
        return self._ends


def test_the_end_of_the_system_s_session_is_output_off(desk: Desk) -> None:
    system = SystemSession()
    off_at_session_end(system.ends, desk.session)
    link = desk.begin_probe()
    system.ends.emit(system)
    assert link.stops == [texts.STOP_SESSION_ENDS]


def test_what_is_told_about_the_first_item_is_filled_in_and_can_be_changed(desk: Desk) -> None:
    intake = desk.window.intake
    intake.blank("TCPIP::127.0.0.1::5025::SOCKET")
    intake.suggest(kind="bilge pump", rated_volts=12.0, complaint="hums, does not turn")
    assert (intake.item().kind.lower(), intake.motor().rated_volts) == ("bilge pump", 12.0)
    assert intake.complaint_text() == "hums, does not turn"
    assert intake.setting().max_volts == 12.0
    intake.rated.put(6.0)
    assert (intake.motor().rated_volts, intake.setting().max_volts) == (6.0, 6.0)
