"""Help, settings and paper are looked at in between: where one was before, and where the keyboard was."""

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication, QWidget

from ui.main_window import BENCH_ROOM, HELP_ROOM, MainWindow

IN_BETWEEN = 3
"""The first room that one goes back from."""


class GoingBack(QObject):
    """`show_room` goes to a room as its button would."""

    def __init__(self, window: MainWindow, show_room: Callable[[int], None]) -> None:
        super().__init__(window)
        self._window, self._show_room = window, show_room
        self._before: dict[int, tuple[int, QWidget | None]] = {}
        self._on_the_way_back = False

    def leaving(self, room: int) -> None:
        """Another room is about to be shown."""
        here = self._window.room
        if room < IN_BETWEEN or room == here or self._on_the_way_back:
            return
        if here < IN_BETWEEN or room == HELP_ROOM:
            self._before[room] = here, QApplication.focusWidget()
        else:  # from help to settings: back leads to where help was asked for, not round in a ring
            self._before[room] = self._before.get(here, (BENCH_ROOM, None))

    def back(self) -> None:
        """To where one was; nowhere from a room of its own."""
        if self._window.room < IN_BETWEEN:
            return
        room, focus = self._before.get(self._window.room, (BENCH_ROOM, None))
        self._on_the_way_back = True
        try:
            self._show_room(room)
        finally:
            self._on_the_way_back = False
        if focus is not None and _is_there(focus) and focus.isVisible():
            focus.setFocus()


def _is_there(widget: QWidget) -> bool:
    """Pages may have been made anew meanwhile."""
    try:
        widget.objectName()
    except RuntimeError:
        return False
    return True
