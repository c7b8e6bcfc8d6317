"""Small signs drawn rather than typed, so that no font has to have them: states of the motor, and warnings."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui import theme

SIGNS = ("turning", "locked", "creeping", "resting", "unknown", "none", "on", "alarm", "look", "ask", "done")


class Sign(QWidget):
    """One sign in one colour. `show_sign` takes a word of SIGNS; any other is drawn as unknown."""

    def __init__(self, colour: str, side: int = 16, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._colour = colour
        self._side = side
        self.sign = "resting"
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_sign(self, sign: str, colour: str) -> None:
        self.sign, self._colour = sign, colour
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._side, self._side)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_sign(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), self.sign, QColor(self._colour))
        painter.end()


def draw_focus(painter: QPainter, box: QRectF, tokens: theme.Tokens) -> None:
    """The ring around what the keyboard acts on, where the style sheet can't draw it."""
    painter.setPen(QPen(QColor(tokens.ink), 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 5, 5)


def draw_sign(painter: QPainter, box: QRectF, sign: str, colour: QColor) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    left, right, top, bottom, middle = box.left(), box.right(), box.top(), box.bottom(), box.center()
    match sign:
        case "turning":
            painter.drawPolygon(QPolygonF([QPointF(left, top), QPointF(right, middle.y()), QPointF(left, bottom)]))
        case "locked":
            painter.drawRect(box)
        case "creeping":
            corners = [(middle.x(), top), (right, middle.y()), (middle.x(), bottom), (left, middle.y())]
            painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
        case "resting":
            painter.setPen(QPen(colour, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(box.adjusted(1, 1, -1, -1))
        case "none":
            painter.drawRect(QRectF(left, middle.y() - 1, box.width(), 2))
        case "on":
            painter.drawEllipse(box.adjusted(1, 1, -1, -1))
        case "done":
            painter.setPen(QPen(colour, 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            unit = box.width()
            tick = [(0.15, 0.55), (0.4, 0.78), (0.85, 0.25)]
            painter.drawPolyline(QPolygonF([QPointF(left + x * unit, top + y * unit) for x, y in tick]))
        case "alarm":
            painter.drawPolygon(QPolygonF([QPointF(middle.x(), top), QPointF(right, bottom), QPointF(left, bottom)]))
            painter.setPen(QColor(255, 255, 255) if colour.lightness() < 140 else QColor(0, 0, 0))
            painter.setFont(theme.semibold(max(8, int(box.height() * 0.6))))
            painter.drawText(box.adjusted(0, box.height() * 0.2, 0, 0), Qt.AlignmentFlag.AlignCenter, "!")
        case "look" | "ask":
            if sign == "look":
                painter.drawEllipse(box)
            else:
                painter.drawRoundedRect(box, box.width() * 0.18, box.width() * 0.18)
            painter.setPen(QColor(255, 255, 255) if colour.lightness() < 140 else QColor(0, 0, 0))
            painter.setFont(theme.semibold(max(8, int(box.height() * 0.7))))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "!" if sign == "look" else "?")
        case _:
            painter.setPen(colour)
            painter.setFont(theme.semibold(max(8, int(box.height()))))
            painter.drawText(box.adjusted(-4, -4, 4, 4), Qt.AlignmentFlag.AlignCenter, "?")
