"""A card of the settings is a frame with its content right inside, all of them with the same room around it."""

from typing import TypeVar

from PySide6.QtWidgets import QFrame, QLayout

_Content = TypeVar("_Content", bound=QLayout)


def framed(part: QFrame, content: _Content) -> _Content:
    """Makes `part` a card that holds `content`."""
    part.setProperty("look", "card")
    content.setContentsMargins(20, 12, 20, 14)
    part.setLayout(content)
    return content
