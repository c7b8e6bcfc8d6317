"""The few shapes the window is made of: a label of a look and size, a card, a button of touching size."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QWidget

from ui import theme


def label(text: str, look: str = "", *, px: int = theme.BODY_PX, bold: bool = False, wrap: bool = False) -> QLabel:
    """`look` picks the colour in the style sheet: second, third, ask, alarm, look."""
    made = QLabel(text)
    made.setFont(theme.semibold(px) if bold else theme.font(px))
    made.setWordWrap(wrap)
    if look:
        made.setProperty("look", look)
    return made


def card(look: str = "card") -> QFrame:
    made = QFrame()
    made.setProperty("look", look)
    return made


def button(text: str, name: str, look: str = "", *, accessible: str = "", bold: bool = False) -> QPushButton:
    """`name` is the object's name, for automation; high enough for gloves."""
    made = QPushButton(text)
    made.setObjectName(name)
    made.setAccessibleName(accessible or text)
    made.setFont(theme.semibold() if bold or look in ("main", "ask", "alarm") else theme.font())
    made.setMinimumHeight(theme.TOUCH_PX)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    if look:
        made.setProperty("look", look)
    return made


def set_look(widget: QWidget, look: str) -> None:
    """Another look for a widget that is already shown."""
    if widget.property("look") != look:
        widget.setProperty("look", look)
        widget.style().unpolish(widget)
        widget.style().polish(widget)
