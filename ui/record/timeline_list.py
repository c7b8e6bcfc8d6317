"""The timeline on the screen: a heading a day, then time, kind and words of each line, as high as its words."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QResizeEvent, QTextLayout, QTextOption
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ui import texts, theme
from ui.moments import clock_text, day_text
from ui.pieces import EmptyWords, plain_hint
from ui.record.timeline import Line
from ui.theme import Tokens

SIDE_PX, PAD_PX, BATCH = 88, 6, 60
MOST_SHOWN, MOST_HINT = 400, 4000
"""Characters of one line shown here, and in its tooltip; the ledger has all of it."""
_ROW = Qt.ItemDataRole.UserRole
_NONE = QModelIndex()
Index = QModelIndex | QPersistentModelIndex


class _Rows(QAbstractListModel):
    """Lines, each day's first with the day above it. No object a row: a record may be long."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.rows: list[Line | str] = []

    def put(self, lines: Sequence[Line]) -> None:
        self.beginResetModel()
        self.rows, day = [], ""
        for line in lines:
            if (of_line := day_text(line.utc)) != day:
                day = of_line
                self.rows.append(day)
            self.rows.append(line)
        self.endResetModel()

    def rowCount(self, parent: Index = _NONE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.rows[index.row()]
        if role == _ROW:
            return row
        said = row if isinstance(row, str) else row.said[:MOST_HINT]
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return said
        if role == Qt.ItemDataRole.ToolTipRole and isinstance(row, Line) and len(row.text) > MOST_SHOWN:
            return plain_hint(said)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        day = isinstance(self.rows[index.row()], str)
        return Qt.ItemFlag.NoItemFlags if day else Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


class TimelineList(QListView):
    """Newest first, so that the newest is in sight."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.lines: list[Line] = []
        self.setObjectName("record_timeline")
        self.setAccessibleName(texts.TIMELINE_NAME)
        self.setFrameShape(QListView.Shape.NoFrame)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        # Of a long record only what is in sight is laid out at once.
        self.setLayoutMode(QListView.LayoutMode.Batched)
        self.setBatchSize(BATCH)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self._rows = _Rows(self)
        self.setModel(self._rows)
        self.none = EmptyWords(self, texts.TIMELINE_NONE)
        self._delegate = _LineDelegate(tokens, self)
        self.setItemDelegate(self._delegate)

    def show_lines(self, lines: Sequence[Line]) -> None:
        if list(lines) != self.lines:
            self.lines = list(lines)
            self._rows.put(self.lines)
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
        line = index.data(_ROW)
        if isinstance(line, Line):
            self._paint_line(painter, box, line)
        else:
            painter.setFont(self._strong)
            painter.setPen(QColor(self.tokens.second))
            painter.drawText(box.adjusted(PAD_PX, PAD_PX, 0, 0), Qt.AlignmentFlag.AlignVCenter, str(line))
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
        line = index.data(_ROW)
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
