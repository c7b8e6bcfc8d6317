"""Taught keys that start what the page offers, or go on to the next stage.

A stray key must begin nothing: the key counts only when it is pressed alone and anew, with no text field, menu or
dialog in between, and not while something that has just come up could be pressed unread. It never holds, never
acknowledges an alarm, and never closes a job.
"""

import time
from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QPushButton, QWidget

from ui import texts
from ui.bench_keys import HOLD_BUTTON, typing
from ui.main_window import BENCH_ROOM, CURVES_ROOM, MainWindow
from ui.preferences import Preferring
from ui.stages.run_view import RunView
from ui.taught_keys import Role, taught

SETTLE_S = 0.7
"""So long after a press of these keys, and after a question came up, they do nothing. Starting value of this project:
a person's time to see that something else is to be pressed now."""
MODIFIERS = frozenset(
    {Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_AltGr, Qt.Key.Key_Meta, Qt.Key.Key_Super_L}
)
_LOST = frozenset({QEvent.Type.ApplicationDeactivate, QEvent.Type.WindowDeactivate})


class StartKeys(QObject):
    """Install with `QApplication.installEventFilter`. `told` why a press did nothing. `blocked`: an alarm waits."""

    told = Signal(str)

    def __init__(
        self,
        window: MainWindow,
        preferring: Preferring,
        *,
        blocked: Callable[[], bool] = lambda: False,
        now_s: Callable[[], float] = time.monotonic,
    ) -> None:
        super().__init__(window)
        self._window, self._preferring = window, preferring
        self._blocked, self._now_s = blocked, now_s
        self._rests_until_s = 0.0
        self._down: set[int] = set()

    def rest(self) -> None:
        """Something new can be pressed: first it has to be read."""
        self._rests_until_s = self._now_s() + SETTLE_S

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in _LOST:
            self._down.clear()
        elif isinstance(event, QKeyEvent):
            return self._key(event)
        return False

    def _key(self, event: QKeyEvent) -> bool:
        """Whether it was one of ours, and so nobody else's."""
        role = self._role_of(event)
        if event.type() is QEvent.Type.KeyRelease:
            if not event.isAutoRepeat():
                self._down.discard(event.key())
                if event.key() in MODIFIERS:  # what went down as Shift+Tab comes up as Tab
                    self._down.clear()
            return role is not None
        if role is not None and typing():
            role = None  # a keypad's digit belongs to the field
        if role is not None:
            event.accept()
        if event.type() is QEvent.Type.KeyPress and not event.isAutoRepeat():
            alone = not self._down - {event.key()}
            again = event.key() in self._down
            self._down.add(event.key())
            if role is not None and alone and not again:
                self._press(role)
        return role is not None

    def _role_of(self, event: QKeyEvent) -> Role | None:
        for role in (Role.START, Role.NEXT):
            pressed = taught(role, self._preferring.now)
            if pressed is not None and pressed == event.keyCombination():
                return role
        return None

    def _press(self, role: Role) -> None:
        if (
            QApplication.activeModalWidget() is not None
            or QApplication.activePopupWidget() is not None
            or not self._window.isActiveWindow()
            or self._blocked()
            or self._now_s() < self._rests_until_s
        ):
            return
        self.rest()
        if self._window.room == CURVES_ROOM and role is Role.START:
            card = self._window.curves.side.next
            if card.isVisible():
                card.press_by_key()
            return
        page = self._window.stages.currentWidget() if self._window.room == BENCH_ROOM else None
        found = _main_button(page) if role is Role.START else _next_button(page)
        if found is None:
            self.told.emit(texts.KEY_NOTHING_HERE)
        else:
            found.click()


def _main_button(page: QWidget | None) -> QPushButton | None:
    """The one heavy button of a run's page, or the first answer to its question; never one that is to be held."""
    if not isinstance(page, RunView):
        return None
    heavy = [
        one
        for one in page.findChildren(QPushButton)
        if one.property("look") in ("main", "ask")
        and one.isVisible()
        and one.isEnabled()
        and one.objectName() != HOLD_BUTTON
    ]
    return heavy[0] if len(heavy) == 1 else None


def _next_button(page: QWidget | None) -> QPushButton | None:
    """ "On to ..."."""
    if isinstance(page, RunView) and page.on_button.isVisible() and page.on_button.isEnabled():
        return page.on_button
    return None
