"""The timeline on the screen: a heading a day, then time, kind and words of each line, as high as its words."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QResizeEvent, QTextLayout, QTextOption
from PySide6.QtWidgets import QListView, QListWidget, QListWidgetItem, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ui import texts, theme
from ui.moments import clock_text, day_text
from ui.pieces import plain_hint
from ui.record.timeline import Line
from ui.theme import Tokens

SIDE_PX, PAD_PX, BATCH = 88, 6, 60
MOST_SHOWN, MOST_HINT = 400, 4000
"""Characters of one line shown here, and in its tooltip; the ledger has all of it."""
_LINE, _DAY = Qt.ItemDataRole.UserRole, Qt.ItemDataRole.UserRole + 1
Index = QModelIndex | QPersistentModelIndex


class TimelineList(QListWidget):
    """Newest first, so that the newest is in sight."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.lines: list[Line] = []
        self.setObjectName("record_timeline")
        self.setAccessibleName(texts.TIMELINE_NAME)
        self.setFrameShape(QListWidget.Shape.NoFrame)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        # Of a long record only what is in sight is laid out at once.
        self.setLayoutMode(QListView.LayoutMode.Batched)
        self.setBatchSize(BATCH)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self._delegate = _LineDelegate(tokens, self)
        self.setItemDelegate(self._delegate)

    def show_lines(self, lines: Sequence[Line]) -> None:
        if list(lines) == self.lines:
            return
        self.lines = list(lines)
        self.clear()
        day = ""
        for line in self.lines:
            if (of_line := day_text(line.utc)) != day:
                day = of_line
                heading = QListWidgetItem(day)
                heading.setData(_DAY, day)
                heading.setFlags(Qt.ItemFlag.NoItemFlags)
                self.addItem(heading)
            item = QListWidgetItem()
            item.setData(_LINE, line)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, line.said[:MOST_HINT])
            if len(line.text) > MOST_SHOWN:
                item.setToolTip(plain_hint(line.said[:MOST_HINT]))
            self.addItem(item)
        self.scrollToTop()

    def set_tokens(self, tokens: Tokens) -> None:
        self._delegate.tokens = tokens
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()


class _LineDelegate(QStyledItemDelegate):
    def __init__(self, tokens: Tokens, view: TimelineList) -> None:
        super().__init__(view)
        self.tokens = tokens
        self._view = view
        self._text, self._small, self._strong = (
            theme.font(),
            theme.font(theme.SECOND_PX),
            theme.semibold(theme.SECOND_PX),
        )

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        box: QRect = option.rect
        state: QStyle.StateFlag = option.state
        painter.save()
        if state & QStyle.StateFlag.State_Selected and self._view.hasFocus():
            painter.fillRect(box, QColor(self.tokens.selection))
        line = index.data(_LINE)
        if isinstance(line, Line):
            self._paint_line(painter, box, line)
        else:
            painter.setFont(self._strong)
            painter.setPen(QColor(self.tokens.second))
            painter.drawText(box.adjusted(PAD_PX, PAD_PX, 0, 0), Qt.AlignmentFlag.AlignVCenter, str(index.data(_DAY)))
        painter.restore()

    def _paint_line(self, painter: QPainter, box: QRect, line: Line) -> None:
        side = QRect(box.left() + PAD_PX, box.top() + PAD_PX, SIDE_PX - PAD_PX, box.height())
        painter.setFont(self._small)
        painter.setPen(QColor(self.tokens.second))
        painter.drawText(side, Qt.AlignmentFlag.AlignTop, f"{clock_text(line.utc)}\n{line.kind}")
        words = QPointF(box.left() + SIDE_PX + 4, box.top() + PAD_PX)
        laid = self._laid(self._text, line.text)
        painter.setPen(QColor(self.tokens.ink))
        laid.draw(painter, words)
        if line.about:
            painter.setPen(QColor(self.tokens.second))
            self._laid(self._small, line.about).draw(painter, words + QPointF(0, laid.boundingRect().height()))
        painter.setPen(QColor(self.tokens.band))
        painter.drawLine(box.left() + SIDE_PX + 4, box.bottom(), box.right(), box.bottom())

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        line = index.data(_LINE)
        if not isinstance(line, Line):
            return QSize(SIDE_PX, QFontMetrics(self._strong).height() + 2 * PAD_PX)
        high = self._laid(self._text, line.text).boundingRect().height()
        high += self._laid(self._small, line.about).boundingRect().height() if line.about else 0
        return QSize(SIDE_PX, max(math.ceil(high), 2 * QFontMetrics(self._small).lineSpacing()) + 2 * PAD_PX)

    def _width(self) -> int:
        return max(80, self._view.viewport().width() - SIDE_PX - 12)

    def _laid(self, font: QFont, text: str) -> QTextLayout:
        """Wrapped between words, and within one that is longer than a line."""
        shown = text if len(text) <= MOST_SHOWN else f"{text[: MOST_SHOWN - 2]} …"
        made = QTextLayout(shown.replace("\n", "\u2028"), font)
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        made.setTextOption(option)
        made.beginLayout()
        high = 0.0
        while (line := made.createLine()).isValid():
            line.setLineWidth(self._width())
            line.setPosition(QPointF(0, high))
            high += line.height()
        made.endLayout()
        return made
