"""Rows of the room's forms: a small name above a field of touching size."""

from PySide6.QtWidgets import QLineEdit, QWidget

from ui import theme
from ui.pieces import named
from ui.wrapping import FieldGrid


def line(name: str, accessible: str, hint: str = "") -> QLineEdit:
    made = QLineEdit()
    made.setObjectName(name)
    made.setAccessibleName(accessible)
    made.setPlaceholderText(hint)
    made.setFont(theme.font())
    made.setMinimumHeight(theme.TOUCH_PX - 4)
    return made


def put(grid: FieldGrid, row: int, column: int, words: str, field: QWidget, span: int = 1) -> None:
    """The field with its name above it."""
    part, _ = named(words, field)
    grid.put(row, column, part, span)


def grid_of(parent: QWidget, columns: int) -> FieldGrid:
    made = FieldGrid(parent, columns)
    made.setContentsMargins(18, 12, 18, 14)
    made.setHorizontalSpacing(14)
    made.setVerticalSpacing(8)
    return made


def whole(field: QLineEdit) -> int | None:
    """A whole number above zero as it is typed; None where it is none."""
    text = field.text().strip()
    return int(text) if text.isascii() and text.isdigit() and 0 < len(text) < 6 and int(text) > 0 else None
