"""The foot line's facts, and how old they are: output, supply, readings, trace, ledger."""

import time

from PySide6.QtCore import QObject, QTimer, Signal

from benchlog.bench.frames import Progress
from ui import texts
from ui.frame_parts import Foot
from ui.moments import now_text
from ui.off_state import OffState

AGE_EVERY_MS = 250
STALE_S = 1.0
"""Older than this a reading says nothing of now. Starting value of this project: several readings of a slow supply."""


class FootFacts(QObject):
    """The age of the last reading goes on counting when no reading comes; `stale` says that it is too old to show."""

    stale = Signal()

    def __init__(self, foot: Foot, ledger_name: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._foot = foot
        self._last_s: float | None = None
        self._rate = 0.0
        self._ledger_name = ledger_name
        foot.say("output", texts.OFF_IDLE)
        foot.say("rate", texts.FOOT_NO_RATE)
        foot.say("trace", texts.FOOT_NO_TRACE)
        self.in_history(False)
        self._timer = QTimer(self)
        self._timer.setInterval(AGE_EVERY_MS)
        self._timer.timeout.connect(self._show_rate)
        self._timer.start()

    def supply(self, resource: str, output: int = 1) -> None:
        if resource and output > 1:
            resource = texts.FOOT_OUTPUT.format(resource=resource, output=output)
        self._foot.say("supply", texts.FOOT_SUPPLY.format(resource=resource) if resource else texts.FOOT_NO_SUPPLY)

    def in_history(self, history: bool) -> None:
        ledger = texts.FOOT_LEDGER.format(name=self._ledger_name)
        self._foot.say("ledger", f"{ledger} · {texts.FOOT_HISTORY}" if history else ledger)

    def progress(self, progress: Progress) -> None:
        if progress.t_s:
            self._last_s = time.monotonic()
            self._rate = progress.readings_per_s
            self._foot.say("trace", texts.FOOT_TRACE.format(at=now_text()))

    def output_state(self, state: OffState, words: str) -> None:
        """In the same words as above the button: what is known of the output is said once."""
        self._foot.say("output", words)

    def ended(self) -> None:
        self._last_s = None
        self._show_rate()

    def filed(self, number: int) -> None:
        self._foot.say("trace", texts.FOOT_FILED.format(number=number))

    def _show_rate(self) -> None:
        if self._last_s is None:
            self._foot.say("rate", texts.FOOT_NO_RATE)
            return
        age_s = time.monotonic() - self._last_s
        if age_s > STALE_S:
            self.stale.emit()
        age = texts.AGE_MS.format(value=age_s * 1e3) if age_s < 1 else texts.AGE_S.format(value=age_s)
        self._foot.say("rate", texts.FOOT_RATE.format(rate=self._rate, age=age))
