"""A chart as a picture on the clipboard: in light colours for paper, twice as fine, below a line of what it is."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter, QPen

from ui import texts, theme
from ui.theme import LIGHT, Tokens

FINER = 2
HEAD_PX, EDGE_PX = 56, 12
MARK_SHARE = 0.09
"""How strong the mark of a demonstration lies over the picture."""


@dataclass(slots=True, kw_only=True)
class Caption:
    """What a copied picture says of itself. `of_job` is asked when it is copied."""

    of_job: Callable[[], str] = str
    run: str = ""
    demo: bool = False

    def words(self) -> str:
        return texts.CHART_CAPTION.format(job=self.of_job(), run=self.run) if self.run else self.of_job()


class Copied(Protocol):
    """A chart that can be painted anew in other colours."""

    caption: Caption

    def picture_size(self) -> QSize: ...
    def picture_words(self) -> str: ...
    def paint_picture(self, painter: QPainter, tokens: Tokens, finer: int) -> None: ...


def copy_chart(chart: Copied) -> str:
    """Puts the picture on the clipboard; the sentence that says so."""
    image = picture(chart)
    clipboard = QGuiApplication.clipboard()
    clipboard.setImage(image)
    return texts.CHART_COPIED.format(width=image.width(), height=image.height())


def picture(chart: Copied) -> QImage:
    """The chart below its title line; marked where it is a demonstration."""
    size = chart.picture_size()
    whole = QSize(size.width() + 2 * EDGE_PX, size.height() + HEAD_PX + EDGE_PX)
    made = QImage(whole * FINER, QImage.Format.Format_RGB32)
    made.fill(QColor(LIGHT.card))
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(FINER, FINER)
    _paint_head(painter, chart, QRectF(EDGE_PX, 0, size.width(), HEAD_PX))
    painter.save()
    painter.translate(EDGE_PX, HEAD_PX)
    chart.paint_picture(painter, LIGHT, FINER)
    painter.restore()
    if chart.caption.demo:
        _paint_mark(painter, QRectF(EDGE_PX, HEAD_PX, size.width(), size.height()))
    painter.end()
    return made


def _paint_head(painter: QPainter, chart: Copied, box: QRectF) -> None:
    middle = Qt.AlignmentFlag.AlignVCenter
    room = box.width()
    if chart.caption.demo:
        painter.setFont(theme.semibold(theme.SECOND_PX))
        mark = QRectF(box.right() - 64, 9, 64, 22)
        painter.setPen(QPen(QColor(LIGHT.ink), 2))
        painter.drawRoundedRect(mark, 4, 4)
        painter.drawText(mark, Qt.AlignmentFlag.AlignCenter, texts.DEMO)
        room -= 76
    for words, font, ink, top in (
        (chart.caption.words(), theme.semibold(), LIGHT.ink, 8),
        (chart.picture_words(), theme.font(theme.SECOND_PX), LIGHT.second, 32),
    ):
        painter.setFont(font)
        painter.setPen(QColor(ink))
        fitting = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, int(room))
        painter.drawText(QRectF(box.left(), top, room, 24), middle, fitting)
        room = box.width()


def _paint_mark(painter: QPainter, box: QRectF) -> None:
    """Across the picture, so that a part cut out of it says so too."""
    ink = QColor(LIGHT.ink)
    ink.setAlphaF(MARK_SHARE)
    painter.save()
    painter.setPen(ink)
    painter.setFont(theme.semibold(max(24, int(min(box.width() / 5, box.height() / 2)))))
    painter.translate(box.center())
    painter.rotate(-20)
    painter.drawText(QRectF(-box.width(), -200, 2 * box.width(), 400), Qt.AlignmentFlag.AlignCenter, texts.DEMO)
    painter.restore()
