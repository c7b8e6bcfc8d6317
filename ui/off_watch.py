"""Follows what is known about the output being off, and puts it into words with the time of day."""

from PySide6.QtCore import QObject, QTimer, Signal

from ui import texts
from ui.moments import now_text
from ui.off_state import OffEvent, OffState, after

OVERDUE_MS = 3000
"""After so long without an answer "off" counts as not confirmed. Starting value of this project: several reply
times of the slowest supply, and the time that the rescue needs."""


class OffWatch(QObject):
    """`changed` carries the state and its words."""

    changed = Signal(OffState, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.state = OffState.IDLE
        self.words = texts.OFF_IDLE
        self.seen: bool | None = None
        """What the last reading of the run said of the output."""
        self._deadline = QTimer(self)
        self._deadline.setSingleShot(True)
        self._deadline.setInterval(OVERDUE_MS)
        self._deadline.timeout.connect(lambda: self.tell(OffEvent.OVERDUE))

    @property
    def may_begin(self) -> bool:
        return self.state in (OffState.IDLE, OffState.CONFIRMED)

    def output_seen(self, on: bool) -> None:
        """While a run goes on, what the last reading says of the output."""
        if self.state is OffState.RUNNING and on is not self.seen:
            self.seen = on
            self.words = (texts.OFF_RUNNING_ON if on else texts.OFF_RUNNING_OFF).format(at=now_text())
            self.changed.emit(self.state, self.words)

    def tell(self, event: OffEvent) -> None:
        state = after(self.state, event)
        if state is self.state:
            return
        self.state, self.seen = state, None
        if state is OffState.COMMANDED:
            self._deadline.start()
        else:
            self._deadline.stop()
        self.words = {
            OffState.IDLE: texts.OFF_IDLE,
            OffState.RUNNING: texts.OFF_RUNNING,
            OffState.COMMANDED: texts.OFF_COMMANDED,
            OffState.CONFIRMED: texts.OFF_CONFIRMED,
            OffState.NOT_CONFIRMED: texts.OFF_NOT_CONFIRMED,
        }[state].format(at=now_text())
        self.changed.emit(state, self.words)
