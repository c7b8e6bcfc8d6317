"""A question of this page with a field for its answer: who agreed, or why a line is taken back."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QVBoxLayout

from ui import theme
from ui.pieces import button, label
from ui.record.fields import bring_into_sight, line_edit


class AskCard(QFrame):
    """Hidden until asked. `answered` carries what is in the field, once it is not blank."""

    answered = Signal(str)
    given_up = Signal()

    def __init__(self, name: str, *, field: str, yes: str, no: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.setProperty("look", "ask")
        self.words = label("", "ask", bold=True, wrap=True)
        self.words.setObjectName(f"{name}_words")
        self.field = line_edit(f"{name}_field", field)
        title = label(field, "second", px=theme.SECOND_PX)
        title.setBuddy(self.field)
        self.yes, self.no = button(yes, f"{name}_yes", "ask"), button(no, f"{name}_no")
        self.yes.clicked.connect(self._press)
        self.no.clicked.connect(self.withdraw)
        self.no.clicked.connect(self.given_up)
        self.field.returnPressed.connect(self._press)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.no)
        row.addStretch(1)
        row.addWidget(self.yes)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 10, 14, 12)
        column.setSpacing(6)
        for part in (self.words, title, self.field):
            column.addWidget(part)
        column.addLayout(row)
        self.hide()

    def ask(self, words: str) -> None:
        self.words.setText(words)
        self.field.clear()
        self.show()
        self.field.setFocus()
        bring_into_sight(self)

    def withdraw(self) -> None:
        """The keyboard stays on this page, and does not go to what is next in line anywhere."""
        focus, above = QApplication.focusWidget(), self.parentWidget()
        if above is not None and focus is not None and self.isAncestorOf(focus):
            above.setFocus()
        self.hide()

    def _press(self) -> None:
        text = self.field.text().strip()
        if text:
            self.answered.emit(text)
        else:
            self.field.setFocus()
