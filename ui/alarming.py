"""When the window makes itself heard, and when the red card covers the work."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

from benchlog.bench.frames import Ended
from benchlog.outcome import Outcome
from ui import texts
from ui.alarms import LEVEL_OF, Level, Told, What
from ui.live_run import LiveRun
from ui.main_window import MainWindow
from ui.moments import now_text
from ui.off_state import OffState
from ui.off_watch import OffWatch

REPEAT_MS = 2000


class Alarming(QObject):
    """Every alarm sounds once; one of the highest level again and again while it is not acknowledged and the output
    may be on."""

    def __init__(self, window: MainWindow, off: OffWatch, run: LiveRun, beep: Callable[[], None]) -> None:
        super().__init__(window)
        self._window, self._off, self._beep = window, off, beep
        self._before = off.state
        self._repeat = QTimer(self)
        self._repeat.setInterval(REPEAT_MS)
        self._repeat.timeout.connect(beep)
        window.notice.told.connect(self._hear)
        window.notice.changed.connect(self._follow)
        off.changed.connect(self._show_off)
        run.asked.connect(lambda _: self._sound(What.QUESTION))
        run.ended.connect(self._show_end)

    @property
    def sounding(self) -> bool:
        return self._repeat.isActive()

    def _hear(self, told: Told) -> None:
        self._sound(told.what)
        self._follow()

    def _sound(self, what: What) -> None:
        if LEVEL_OF[what] is not Level.SAID:
            self._beep()

    def _show_off(self, state: OffState) -> None:
        before, self._before = self._before, state
        if state is OffState.NOT_CONFIRMED and before in (OffState.RUNNING, OffState.COMMANDED):
            self._window.red.show_alarm(texts.RED_WHY, now_text())
            self._window.notice.tell(f"{texts.RED_DO} {texts.RED_WHY}", What.LINK_LOST)
        elif state is not OffState.NOT_CONFIRMED:
            self._lift()
        self._follow()

    def _lift(self) -> None:
        if self._window.red.isHidden():
            return
        self._window.red.hide()
        self._window.notice.settle(What.LINK_LOST)
        self._window.stages.setFocus()

    def _show_end(self, ended: Ended) -> None:
        """More has become known of what the card says."""
        if self._window.red.isHidden():
            return
        if ended.result.output_confirmed_off:
            self._window.red.say_since(texts.RED_SINCE.format(at=now_text()))
        elif ended.result.outcome is Outcome.SUPPLY_LOST:
            self._window.red.say(texts.RED_WHY_LINK)

    def _follow(self) -> None:
        red = self._window.notice.alarms.urgent or self._off.state is OffState.NOT_CONFIRMED
        if not (red and not self._off.may_begin):
            self._repeat.stop()
        elif not self._repeat.isActive():
            self._repeat.start()
