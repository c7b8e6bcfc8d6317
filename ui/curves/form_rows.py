"""Rows of the room's forms: a small name above a field of touching size."""

from PySide6.QtWidgets import QGridLayout, QLineEdit, QVBoxLayout, QWidget

from ui import theme
from ui.pieces import label


def line(name: str, accessible: str, hint: str = "") -> QLineEdit:
    made = QLineEdit()
    made.setObjectName(name)
    made.setAccessibleName(accessible)
    made.setPlaceholderText(hint)
    made.setFont(theme.font())
    made.setMinimumHeight(theme.TOUCH_PX - 4)
    return made


def put(grid: QGridLayout, row: int, column: int, words: str, field: QWidget, span: int = 1) -> None:
    """The field with its name above it."""
    box = QVBoxLayout()
    box.setSpacing(2)
    box.addWidget(label(words, "second", px=theme.SECOND_PX))
    box.addWidget(field)
    grid.addLayout(box, row, column, 1, span)


def grid_of(parent: QWidget, columns: int) -> QGridLayout:
    made = QGridLayout(parent)
    made.setContentsMargins(18, 12, 18, 14)
    made.setHorizontalSpacing(14)
    made.setVerticalSpacing(8)
    for column in range(columns):
        made.setColumnStretch(column, 1)
    return made


def whole(field: QLineEdit) -> int | None:
    """A whole number above zero as it is typed; None where it is none."""
    text = field.text().strip()
    return int(text) if text.isascii() and text.isdigit() and 0 < len(text) < 6 and int(text) > 0 else None
