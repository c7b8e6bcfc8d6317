"""Where the window stood: kept when it closes, and taken up again where that place is still on a screen."""

from PySide6.QtCore import QByteArray, QRect, QSize, Qt
from PySide6.QtGui import QGuiApplication

from ui.main_window import BENCH_ROOM, HISTORY_ROOM, MainWindow
from ui.preferences import Preferring

ROOM = "room"
USUAL = QSize(1366, 768)
GRIP = QSize(160, 40)
"""So much of the window must be in sight for it to be taken hold of. Starting value of this project."""


def keep_place(window: MainWindow, preferring: Preferring) -> None:
    place = bytes(window.saveGeometry().toBase64().data()).decode("ascii")
    preferring.change(geometry=place, parts=preferring.now.parts | {ROOM: str(window.room)})


def put_back(window: MainWindow, preferring: Preferring) -> None:
    """As it stood, or as usual: no larger than the screen, and all of the screen where that is small."""
    place = QByteArray.fromBase64(preferring.now.geometry.encode("ascii", "ignore"))
    if not place.isEmpty() and window.restoreGeometry(place) and in_sight(window.geometry(), screens()):
        return
    room = QGuiApplication.primaryScreen().availableGeometry()
    window.resize(USUAL.boundedTo(room.size()))
    window.move(room.center() - window.rect().center())
    if room.width() <= USUAL.width() or room.height() <= USUAL.height():
        window.setWindowState(Qt.WindowState.WindowMaximized)


def room_left(preferring: Preferring) -> int:
    """The room that was looked at last; the bench where that was a page of the settings or the help."""
    kept = preferring.now.parts.get(ROOM, "")
    return int(kept) if kept in {str(room) for room in range(HISTORY_ROOM + 1)} else BENCH_ROOM


def screens() -> list[QRect]:
    """What of each screen is free for windows."""
    return [screen.availableGeometry() for screen in QGuiApplication.screens()]


def in_sight(window: QRect, present: list[QRect]) -> bool:
    """Whether it can be taken hold of by its upper edge on one of the screens that are there."""
    top = QRect(window.topLeft(), QSize(window.width(), GRIP.height()))
    return any(
        both.width() >= GRIP.width() and both.height() >= GRIP.height() // 2
        for both in (top.intersected(screen) for screen in present)
    )
