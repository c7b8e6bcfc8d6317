"""Rows that go on in the next line, and grids of fields that stand in fewer columns, where the width is too small."""

from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QGridLayout, QLayout, QLayoutItem, QSpacerItem, QWidget, QWidgetItem

NARROW_PX = 620
"""Below it fields stand in two columns. Four of them, in type of this size, are too narrow to be read then."""


class WrapRow(QLayout):
    """Like a horizontal box while all has room; else in as many lines as it takes, in order.

    A part with a `stretch` gets what is left of its line; with `least` it counts for so many pixels when lines are
    made, and without it for what it asks.
    """

    def __init__(self, parent: QWidget | None = None, *, spacing: int = 8) -> None:
        super().__init__(parent)
        self._items: list[_Part] = []
        self._known: dict[int, list[list[tuple[_Part, int]]]] = {}
        self._heights: dict[int, int] = {}
        self.setSpacing(spacing)
        self.setContentsMargins(0, 0, 0, 0)

    def add(self, widget: QWidget, *, stretch: int = 0, least: int = 0, at: int | None = None) -> None:
        self.addChildWidget(widget)
        place = len(self._items) if at is None else at
        self._items.insert(place, _Part(QWidgetItem(widget), stretch, least))
        if at is not None:  # it was made later than what comes after it
            there = [one for part in self._items if (one := part.item.widget()) is not None]
            for before, after in pairwise(there):
                QWidget.setTabOrder(before, after)
        self.invalidate()

    def add_stretch(self) -> None:
        """What follows stands at the right end of its line, and of those it goes on in."""
        self._items.append(_Part(QSpacerItem(0, 0), 1, 0))
        self.invalidate()

    # what Qt asks of a layout

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(_Part(item, 0, 0))

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index].item if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index).item if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        around = self.contentsMargins()
        return self._high(width - around.left() - around.right()) + around.top() + around.bottom()

    def invalidate(self) -> None:
        """Qt says that a part has changed. Until then a layout asks for the same widths over and over."""
        self._known.clear()
        self._heights.clear()
        super().invalidate()

    def _high(self, width: int) -> int:
        if width not in self._heights:
            self._heights[width] = self._reckoned(width)
        return self._heights[width]

    def _reckoned(self, width: int) -> int:
        lines = self._lines(width)
        high = sum(max((_high(part, wide) for part, wide in line), default=0) for line in lines)
        return high + self.spacing() * max(0, len(lines) - 1)

    def sizeHint(self) -> QSize:
        shown = self._shown()
        wide = sum(part.wants() for part in shown) + self.spacing() * max(0, len(shown) - 1)
        high = max((_high(part, part.wants()) for part in shown), default=0)
        return QSize(wide, high) + self._around()

    def minimumSize(self) -> QSize:
        shown = self._shown()
        wide = max((part.needs() for part in shown), default=0)
        return QSize(wide, max((part.item.minimumSize().height() for part in shown), default=0)) + self._around()

    def _around(self) -> QSize:
        around = self.contentsMargins()
        return QSize(around.left() + around.right(), around.top() + around.bottom())

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        rect = rect.marginsRemoved(self.contentsMargins())
        top, parent = rect.top(), self.parentWidget()
        right_to_left = parent is not None and parent.layoutDirection() is Qt.LayoutDirection.RightToLeft
        lines = self._lines(rect.width())
        spare = max(0, rect.height() - self._high(rect.width())) if len(lines) == 1 else 0
        for line in lines:
            high = max((_high(part, wide) for part, wide in line), default=0) + spare
            left = rect.left()
            for part, wide in line:
                at = QRect(QPoint(left, top), QSize(wide, high))
                if right_to_left:
                    at.moveRight(rect.right() - (left - rect.left()))
                part.item.setGeometry(at)
                left += wide + (self.spacing() if part.counts() else 0)
            top += high + self.spacing()

    def _shown(self) -> "list[_Part]":
        return [part for part in self._items if part.counts() and not part.item.isEmpty()]

    def _lines(self, width: int) -> "list[list[tuple[_Part, int]]]":
        """Parts by line, each with its width."""
        if width not in self._known:
            self._known[width] = self._split(width)
        return self._known[width]

    def _split(self, width: int) -> "list[list[tuple[_Part, int]]]":
        lines: list[list[_Part]] = [[]]
        used, before = 0, list[_Part]()
        for part in self._items:
            if not part.counts():
                before = [part]
                lines[-1].append(part)
            elif not part.item.isEmpty():
                wants = min(part.wants(), width)
                if used and used + wants > width:
                    lines.append(before.copy())
                    used = 0
                lines[-1].append(part)
                used += wants + self.spacing()
        return [self._widths(line, width) for line in lines if any(part.counts() for part in line)]

    def _widths(self, line: "list[_Part]", width: int) -> "list[tuple[_Part, int]]":
        left = width - self.spacing() * max(0, sum(part.counts() for part in line) - 1)
        wide = [min(part.wants(), part.most(), width) for part in line]
        left -= sum(wide)
        growing = [number for number, part in enumerate(line) if part.stretch]
        while left > 0 and growing:  # what one may not take goes to the others
            shares = sum(line[number].stretch for number in growing)
            more = {number: left * line[number].stretch // shares for number in growing}
            full = [number for number in growing if line[number].most() - wide[number] <= more[number]]
            for number in full or growing:
                grown = min(more[number], line[number].most() - wide[number])
                wide[number] += grown
                left -= grown
            growing = [number for number in growing if number not in full] if full else []
        return list(zip(line, wide, strict=True))


@dataclass(frozen=True, slots=True)
class _Part:
    item: QLayoutItem
    stretch: int
    least: int

    def counts(self) -> bool:
        """Whether it is more than room between others."""
        return not isinstance(self.item, QSpacerItem)

    def wants(self) -> int:
        widget = self.item.widget()
        least = widget.minimumWidth() if widget is not None else 0
        if self.stretch and self.least:
            return max(self.least, least)
        return max(self.item.sizeHint().width(), least)

    def needs(self) -> int:
        """Less than this it can't be."""
        return max(self.least, min(self.item.minimumSize().width(), self.wants()))

    def most(self) -> int:
        return self.item.maximumSize().width()


def _high(part: _Part, width: int) -> int:
    if part.item.hasHeightForWidth():
        return part.item.heightForWidth(width)
    return part.item.sizeHint().height() if part.counts() else 0


class FieldGrid(QGridLayout):
    """Parts in rows of `columns`, in two where `parent` is narrower than NARROW_PX: then a part that spanned more than
    one takes the whole line."""

    def __init__(self, parent: QWidget, columns: int) -> None:
        super().__init__(parent)
        self._columns, self._now = columns, 0
        self._parts: list[tuple[int, int, int, QWidget]] = []
        parent.installEventFilter(self)
        self.setContentsMargins(0, 0, 0, 0)
        self._stretch(columns)

    def put(self, row: int, column: int, part: QWidget, span: int = 1) -> None:
        self._parts.append((row, column, span, part))
        self.addWidget(part, row, column, 1, span)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        parent = self.parentWidget()
        if event.type() is QEvent.Type.Resize and parent is not None and watched is parent:
            self._fit(parent.width())
        return False

    def _fit(self, width: int) -> None:
        columns = min(2, self._columns) if width < NARROW_PX else self._columns
        if columns == self._now:
            return
        self._now = columns
        for *_, part in self._parts:
            self.removeWidget(part)
        self._stretch(columns)
        if columns == self._columns:
            for row, column, span, part in self._parts:
                self.addWidget(part, row, column, 1, span)
            return
        row = column = 0
        for _, _, span, part in sorted(self._parts, key=lambda one: one[:2]):
            wide = min(span, columns)
            if column + wide > columns:
                row, column = row + 1, 0
            self.addWidget(part, row, column, 1, wide)
            column += wide

    def _stretch(self, columns: int) -> None:
        for column in range(self._columns):
            self.setColumnStretch(column, 1 if column < columns else 0)
