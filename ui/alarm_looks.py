"""The word, the shape and the colour of each level of alarm, and the look of a card that has it."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap

from ui import texts
from ui.alarms import Level
from ui.shapes import draw_sign
from ui.theme import Tokens

SIGN_OF = {Level.ACT_NOW: "alarm", Level.LOOK: "look", Level.YOUR_TURN: "ask", Level.SAID: "on"}
CARD_OF = {Level.ACT_NOW: "alarm", Level.LOOK: "amber", Level.YOUR_TURN: "ask", Level.SAID: "card"}
TONE_OF = {Level.ACT_NOW: "alarm", Level.LOOK: "look", Level.YOUR_TURN: "ask", Level.SAID: "second"}
_ICON_PX = 18


def word_of(level: Level) -> str:
    """ "" where it is only told."""
    return {
        Level.ACT_NOW: texts.ACT_NOW,
        Level.LOOK: texts.LOOK,
        Level.YOUR_TURN: texts.YOUR_TURN,
        Level.SAID: "",
    }[level]


def colour_of(level: Level, tokens: Tokens) -> str:
    return {
        Level.ACT_NOW: tokens.red,
        Level.LOOK: tokens.amber,
        Level.YOUR_TURN: tokens.blue,
        Level.SAID: tokens.second,
    }[level]


def icon_of(level: Level, tokens: Tokens) -> QIcon:
    """For a line in a list."""
    made = QPixmap(_ICON_PX, _ICON_PX)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    draw_sign(painter, QRectF(made.rect()).adjusted(1, 1, -1, -1), SIGN_OF[level], QColor(colour_of(level, tokens)))
    painter.end()
    return QIcon(made)
