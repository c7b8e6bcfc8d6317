"""The mark of a demonstration, which is also what one takes hold of: what hangs on the simulated supply's clips."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenu, QPushButton

from ui import texts, theme

FANS = 6
"""Of the kind that starts: five to take limits from, and one to judge."""


class DemoMark(QPushButton):
    """`hung`: the simulated bench's word for what hangs on its terminals from now on. `item`: what hung there first."""

    hung = Signal(str)

    def __init__(self, item: str) -> None:
        super().__init__(texts.DEMO)
        self.setObjectName("demo_mark")
        self.setProperty("look", "mark")
        self.setFont(theme.semibold(theme.SECOND_PX))
        self.setMinimumHeight(theme.TOUCH_PX - 4)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setToolTip(texts.DEMO_HINT)
        self._wide = True
        menu = QMenu(self)
        self._things = QActionGroup(self)
        things = {"first": item, "short": texts.DEMO_JOINED}
        things |= {f"free {number}": texts.DEMO_FAN.format(number=number) for number in range(1, FANS + 1)}
        for word, name in things.items():
            action = self._things.addAction(name)
            action.setCheckable(True)
            action.setData(word)
            action.setChecked(word == "first")
            menu.addAction(action)
        self._things.triggered.connect(self._hang)
        self.setMenu(menu)
        self._say()

    def _hang(self, action: QAction) -> None:
        self.hung.emit(action.data())
        self._say()

    def show_thing(self, shown: bool) -> None:
        """Whether there is room for it beside the word."""
        self._wide = shown
        self._say()

    def _say(self) -> None:
        action = self._things.checkedAction()
        told = texts.DEMO_WITH.format(thing=action.text() if action else "")
        self.setText(told if self._wide else texts.DEMO)
        self.setAccessibleName(texts.DEMO_NAME.format(thing=action.text() if action else ""))
