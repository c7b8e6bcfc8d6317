"""Fields of the page: a title above each, and what of them goes into a draft."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFrame, QGridLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from ui import theme
from ui.pieces import Elided, card


def line_edit(name: str, accessible: str, hint: str = "") -> QLineEdit:
    made = QLineEdit()
    made.setObjectName(name)
    made.setAccessibleName(accessible)
    made.setPlaceholderText(hint)
    made.setFont(theme.font())
    made.setMinimumHeight(theme.TOUCH_PX - 4)
    return made


def put(grid: QGridLayout, row: int, column: int, title: str, field: QWidget, span: int = 1) -> None:
    """A field with its title above: two rows of the grid for each `row`."""
    text = Elided(title, "second", px=theme.SECOND_PX)
    text.setBuddy(field)
    grid.addWidget(text, 2 * row, column, 1, span)
    grid.addWidget(field, 2 * row + 1, column, 1, span)


def bring_into_sight(widget: QWidget) -> None:
    """Scrolls to it where it is part of a page that is scrolled, once the layout knows where it is."""
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        above = above.parentWidget()
    if isinstance(above, QScrollArea):
        area = above
        QTimer.singleShot(0, widget, lambda: area.ensureWidgetVisible(widget, 0, 12))


def field_grid(columns: int = 2) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(12)
    grid.setVerticalSpacing(2)
    for index in range(columns):
        grid.setColumnStretch(index, 1)
    return grid


def padded_card(look: str = "card") -> tuple[QFrame, QVBoxLayout]:
    made = card(look)
    column = QVBoxLayout(made)
    column.setContentsMargins(16, 12, 16, 14)
    column.setSpacing(8)
    return made, column
