"""What changes on the screen is said to whoever listens to it: states, alarms and questions, the urgent at once.

A screen reader reads what has the focus; what happens elsewhere it is told here.
"""

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

from benchlog.bench.frames import Question
from ui import sayings
from ui.alarms import Level, Told
from ui.live_run import LiveRun
from ui.main_window import MainWindow
from ui.off_state import OffState
from ui.off_watch import OffWatch

_POLITE = QAccessible.AnnouncementPoliteness
_URGENT_OFF = frozenset({OffState.NOT_CONFIRMED})


class Announcing(QObject):
    """`said` carries the words, and whether they are urgent; the same words are not said twice in a row."""

    said = Signal(str, bool)

    def __init__(self, window: MainWindow, run: LiveRun, off: OffWatch) -> None:
        super().__init__(window)
        self._window, self._last = window, ""
        off.changed.connect(lambda state, words: self.say(words, urgent=state in _URGENT_OFF))
        window.notice.told.connect(self._tell)
        run.asked.connect(self._ask)
        run.happened.connect(lambda _: self._say_state())
        run.ended.connect(lambda _: self._say_state())

    def say(self, words: str, *, urgent: bool = False) -> None:
        if not words or words == self._last:
            return
        self._last = words
        self.said.emit(words, urgent)
        if QAccessible.isActive():
            event = QAccessibleAnnouncementEvent(self._window, words)
            event.setPoliteness(_POLITE.Assertive if urgent else _POLITE.Polite)
            QAccessible.updateAccessibility(event)

    def _tell(self, told: Told) -> None:
        self.say(told.words, urgent=told.level is Level.ACT_NOW)

    def _ask(self, question: Question) -> None:
        self.say(sayings.sentence(question.text), urgent=True)

    def _say_state(self) -> None:
        """The sentence at the top of the page of the run."""
        for view in self._window.views():
            if view.isVisible():
                self.say(view.say_label.text())
