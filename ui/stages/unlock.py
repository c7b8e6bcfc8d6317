"""Where a job is let go up to the owner's higher ceilings: who, why, and a button. Part of the intake page."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from benchlog.ledger.unlocks import Unlock
from benchlog.recovery.ceilings import Limits
from ui import sayings, texts, theme
from ui.moments import clock_text
from ui.pieces import Elided, button, label


class UnlockRow(QWidget):
    """`pressed` carries who and why. Hidden where the owner's settings allow no unlock or no job is open."""

    pressed = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(4)
        self.said = Elided("", "second", px=theme.SECOND_PX)
        self.said.setObjectName("unlock_said")
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        grid.addWidget(self.said, 0, 0, 1, 3)
        self.who, self.why = QLineEdit(), QLineEdit()
        for column, (field, name, title) in enumerate(
            ((self.who, "unlock_who", texts.FIELD_UNLOCK_WHO), (self.why, "unlock_why", texts.FIELD_UNLOCK_WHY))
        ):
            field.setObjectName(name)
            field.setAccessibleName(title)
            field.setFont(theme.font())
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            text = label(title, "second", px=theme.SECOND_PX)
            text.setBuddy(field)
            grid.addWidget(text, 1, column)
            grid.addWidget(field, 2, column)
            grid.setColumnStretch(column, 1 + column)
        self.button = button(texts.UNLOCK, "unlock")
        self.button.clicked.connect(lambda: self.pressed.emit(self.who.text(), self.why.text()))
        grid.addWidget(self.button, 2, 2)
        self.hide()

    def offer(self, allowed: Limits | None, held: Unlock | None) -> None:
        """`allowed`: how far the owner's settings let an unlock go; None where they don't, or there is no job."""
        self.setVisible(allowed is not None)
        if allowed is None:
            self.forget()
        elif held is not None:
            at = clock_text(held.until_utc)
            self.said.say(texts.UNLOCKED.format(who=held.who, at=at, why=held.why))
        else:
            self.said.say(texts.UNLOCK_ALLOWED.format(limits=sayings.limits_text(allowed)))

    def forget(self) -> None:
        self.who.clear()
        self.why.clear()

    def lock(self, locked: bool) -> None:
        for part in (self.who, self.why, self.button):
            part.setEnabled(not locked)
