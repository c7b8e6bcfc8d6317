"""Settings, help, the sheet of a job, the chart looked into and the notice's list, as part of the pictures."""

from pathlib import Path

from PySide6.QtWidgets import QApplication

from benchlog.settings import Settings
from tests.ui.views import Taking
from ui.alarms import What
from ui.help.pages import Topic
from ui.main_window import BENCH_ROOM, HELP_ROOM, SETTINGS_ROOM, MainWindow
from ui.session import Session
from ui.taught_keys import Role

HOME = Path("/home/bench")
PLACES = {
    "ledger": HOME / "harbour.db",
    "backups": HOME / "backups",
    "files": HOME / "files",
    "journals": HOME / "journals",
    "owner": HOME / "owner.toml",
    "logs": HOME / "logs",
}
"""Fixed, where the real ones differ on every run."""


def shoot_rooms(window: MainWindow, session: Session, owner: Settings, taking: Taking) -> None:
    """Begins and ends on the bench, with the output off."""
    _settings(window, session, owner, taking)
    _help(window, session, taking)
    session.desktop.previewing.show(session.ledger.jobs()[-1])
    session.desktop.previewing.settle()
    _settle()
    taking(window, "rooms-sheet")
    session.desktop.previewing.back()
    session.show_room(BENCH_ROOM)


def _settings(window: MainWindow, session: Session, owner: Settings, taking: Taking) -> None:
    room = window.settings
    room.licences.list.setPlainText("numpy 2: BSD-3-Clause\nSQLAlchemy 2: MIT")
    session.show_room(SETTINGS_ROOM)
    room.limits.show_limits(owner, PLACES["owner"])
    room.places.show_places(PLACES)
    bar = room.cards.verticalScrollBar()
    bar.setValue(bar.minimum())
    taking(window, "rooms-settings")
    room.keys.teach.emit(Role.START.value)
    taking(window, "rooms-settings-key-heard")
    session.teaching.end()
    room.cards.ensureWidgetVisible(room.licences)
    taking(window, "rooms-settings-end")


def _help(window: MainWindow, session: Session, taking: Taking) -> None:
    session.show_room(HELP_ROOM)
    window.help.show_topic(Topic.INTAKE)
    taking(window, "rooms-help")
    window.help.search.setText("stuck")
    taking(window, "rooms-help-found")
    window.help.search.setText("zinc")
    taking(window, "rooms-help-nothing-found")
    window.help.search.clear()


def shoot_chart(window: MainWindow, taking: Taking) -> None:
    """Of the run that was just made: a part of it, then cursors on it."""
    plot = window.free.plot
    plot.look((4.0, 10.0))
    taking(window, "chart-part-of-it")
    plot.show_cursors(True)
    taking(window, "chart-cursors")
    plot.show_cursors(False)
    plot.look(None)


def shoot_notices(window: MainWindow, taking: Taking) -> None:
    """Several messages, with their list open."""
    notice = window.notice
    notice.tell(
        "A run that a crash left behind was filed with job 0005. Its output was off when seen.", What.LEFT_BEHIND
    )
    notice.tell("The last backup is older than a week.", What.BACKUP)
    notice.tell("The part was charged.")
    notice.more.setChecked(True)
    taking(window, "notice-list-open")
    notice.more.setChecked(False)
    notice.put_away()
    notice.alarms.kept.clear()


def _settle() -> None:
    for _ in range(5):
        QApplication.processEvents()
