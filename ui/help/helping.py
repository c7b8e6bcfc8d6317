"""Help about the page that is looked at, and back to it."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from benchlog.records import Stage
from ui.going_back import GoingBack
from ui.help.pages import Topic
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HELP_ROOM, HISTORY_ROOM, SETTINGS_ROOM, MainWindow

_OF_ROOM = {CURVES_ROOM: Topic.CURVES, HISTORY_ROOM: Topic.HISTORY, SETTINGS_ROOM: Topic.SETTINGS}
_OF_STAGE = {
    Stage.INTAKE: Topic.INTAKE,
    Stage.MAKE_SAFE: Topic.MAKE_SAFE,
    Stage.PROBE: Topic.PROBE,
    Stage.FREE: Topic.FREE,
    Stage.PROVE: Topic.PROVE,
    Stage.CLOSE: Topic.CLOSE,
}


class Helping(QObject):
    """`stage` tells which of the bench's pages is shown; None for the record."""

    def __init__(
        self,
        window: MainWindow,
        going: GoingBack,
        show_room: Callable[[int], None],
        stage: Callable[[], Stage | None],
    ) -> None:
        super().__init__(window)
        self._window, self._going, self._show_room, self._stage = window, going, show_room, stage
        window.help.back.connect(going.back)

    def toggle(self) -> None:
        """Help about this page; from the help, back."""
        if self._window.room == HELP_ROOM:
            self._going.back()
        else:
            self._show_room(HELP_ROOM)

    def about_here(self) -> None:
        """The help is about to be shown."""
        if self._window.room != HELP_ROOM:
            self._window.help.show_topic(self.topic())

    def topic(self) -> Topic:
        """Of the page that is looked at."""
        room = self._window.room
        if room == BENCH_ROOM:
            stage = self._stage()
            return Topic.RECORD if stage is None else _OF_STAGE[stage]
        return _OF_ROOM.get(room, Topic.INTAKE)
