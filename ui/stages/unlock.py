"""Where a job is let go up to the owner's higher ceilings: who, why, and a button. Part of the intake page."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from benchlog.ledger.unlocks import Unlock
from benchlog.recovery.ceilings import Limits
from ui import sayings, texts, theme
from ui.moments import clock_text
from ui.pieces import Elided, button, grey, named
from ui.wrapping import WrapRow


class UnlockRow(QWidget):
    """`pressed` carries who and why. Hidden where the owner's settings allow no unlock or no job is open."""

    pressed = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        row = WrapRow(spacing=16)
        self.said = Elided("", "second", px=theme.SECOND_PX)
        self.said.setObjectName("unlock_said")
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        column.addWidget(self.said)
        column.addLayout(row)
        self.who, self.why = QLineEdit(), QLineEdit()
        for share, (field, name, title) in enumerate(
            ((self.who, "unlock_who", texts.FIELD_UNLOCK_WHO), (self.why, "unlock_why", texts.FIELD_UNLOCK_WHY)),
            start=1,
        ):
            field.setObjectName(name)
            field.setAccessibleName(title)
            field.setFont(theme.font())
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            part, _ = named(title, field)
            row.add(part, stretch=share, least=130)
        self.button = button(texts.UNLOCK, "unlock")
        self.button.clicked.connect(lambda: self.pressed.emit(self.who.text(), self.why.text()))
        row.add(self.button)
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
            grey(part, texts.NOT_WHILE_ON if locked else "")
