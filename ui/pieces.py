"""The few shapes the window is made of: a label of a look and size, a card, a button of touching size."""

import html

from PySide6.QtCore import QPoint, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QPolygonF, QResizeEvent, QTextLayout, QWheelEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QFrame,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QStackedWidget,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionButton,
    QStyleOptionComboBox,
    QVBoxLayout,
    QWidget,
)

from ui import theme
from ui.density import SENTENCE, TIGHT, Density

_WHY, _HINT = "why_grey", "usual_hint"


def label(text: str, tone: str = "", *, px: int = theme.BODY_PX, bold: bool = False, wrap: bool = False) -> QLabel:
    """`tone` picks the colour in the style sheet: second, third, ask, alarm, look. A label is a frame: no "look"."""
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setFont(theme.semibold(px) if bold else theme.font(px))
    made.setWordWrap(wrap)
    if px == theme.SENTENCE_PX:
        made.setProperty(SENTENCE, True)
    if tone:
        made.setProperty("tone", tone)
    return made


def card(look: str = "card") -> QFrame:
    made = QFrame()
    made.setProperty("look", look)
    return made


def named(name: str, field: QWidget) -> tuple[QWidget, QLabel]:
    """A field with its name above it, as one part, and the name."""
    part, text = QWidget(), Elided(name, "second", px=theme.SECOND_PX)
    column = QVBoxLayout(part)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(2)
    text.setBuddy(field)
    column.addWidget(text)
    column.addWidget(field)
    return part, text


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


def scrolled(content: QWidget) -> QScrollArea:
    """A page that is as high as it is: what has no room is scrolled to, and never cut."""
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(content)
    area.viewport().setAutoFillBackground(False)
    content.setAutoFillBackground(False)
    return area


def show_if(widget: QWidget, shown: bool, *, else_to: QWidget) -> None:
    """Shown or hidden; where it has the keyboard and goes, that is `else_to`'s, and not the next one's in line."""
    if not shown and widget.hasFocus():
        else_to.setFocus()
    widget.setVisible(shown)


def grey(widget: QWidget, why: str) -> None:
    """Can be used, unless there is a reason why not: then that is its tooltip and what is read of it aloud.

    "" for none: the tooltip it had is there again.
    """
    if widget.isEnabled() and not widget.property(_WHY):
        widget.setProperty(_HINT, widget.toolTip())
    if why == (widget.property(_WHY) or "") and widget.isEnabled() is not bool(why):
        return
    widget.setProperty(_WHY, why)
    widget.setEnabled(not why)
    widget.setToolTip(plain_hint(why) if why else str(widget.property(_HINT) or ""))
    widget.setAccessibleDescription(why)


def why_grey(widget: QWidget) -> str:
    """As grey() was told; "" where it can be used, or where nobody said why it can't."""
    return str(widget.property(_WHY) or "")


def plain_hint(text: str) -> str:
    """Text for a tooltip, which would take what looks like HTML for HTML."""
    return f'<p style="white-space: pre-wrap">{html.escape(text)}</p>' if "<" in text else text


def set_look(widget: QWidget, look: str, *, name: str = "look") -> None:
    """Another look (or, by `name`, tone) for a widget that is already shown."""
    if widget.property(name) != look:
        widget.setProperty(name, look)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


class EmptyWords(QLabel):
    """In the middle of a list while it has no rows: what would stand there."""

    def __init__(self, view: QAbstractItemView, words: str) -> None:
        super().__init__(words)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(theme.font(theme.SECOND_PX))
        self.setProperty("tone", "second")
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        column = QVBoxLayout(view.viewport())
        column.addWidget(self)
        self._model = view.model()
        for changed in (self._model.rowsInserted, self._model.rowsRemoved, self._model.modelReset):
            changed.connect(self._follow)

    def _follow(self) -> None:
        self.setVisible(self._model.rowCount() == 0)


class Pages(QStackedWidget):
    """No larger than the page that is shown needs: one that is not must not hold the window open."""

    def sizeHint(self) -> QSize:
        page = self.currentWidget()
        return super().sizeHint() if page is None else page.sizeHint()

    def minimumSizeHint(self) -> QSize:
        page = self.currentWidget()
        return super().minimumSizeHint() if page is None else page.minimumSizeHint()


class Elided(QLabel):
    """A label that is cut with "…" where there is no room, and then says the whole in its tooltip."""

    def __init__(self, text: str, tone: str = "", *, px: int = theme.BODY_PX) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self._whole = text
        self.setFont(theme.font(px))
        self.setProperty("tone", tone)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.say(text)

    def say(self, text: str) -> None:
        self._whole = text
        shown = self.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, max(self.width(), 1))
        self.setText(shown if self.isVisible() else text)
        self.setToolTip(plain_hint(text) if self.isVisible() and shown != text else "")

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        shown = self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideRight, self.width())
        self.setText(shown)
        self.setToolTip(plain_hint(self._whole) if shown != self._whole else "")


class FewLines(QLabel):
    """As high as `count` lines (one where the window is tight), so that nothing around it moves, and one more where it
    is narrow and the words need it; what has no room ends in "…", whole in the tooltip. `said` is the whole."""

    def __init__(self, count: int = 2, tone: str = "", *, px: int = theme.BODY_PX) -> None:
        super().__init__()
        self._most, self._more, self.said = count, 0, ""
        self.setFont(theme.font(px))
        self.setProperty("tone", tone)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.set_count(count)

    def fit(self, density: Density) -> None:
        self._more = int(density.narrow)
        self.set_count(1 if density is TIGHT else self._most)

    def set_count(self, count: int) -> None:
        self._count = count
        self._fit()

    def say(self, text: str) -> None:
        self.said = text
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        count = self._count
        lines, whole = self._lines(count)
        if not whole and self._more:
            count += 1
            lines, whole = self._lines(count)
        self.setFixedHeight(count * self.fontMetrics().lineSpacing() + 4)
        self.setText("\n".join(lines))
        self.setToolTip("" if whole else plain_hint(self.said))

    def _lines(self, count: int) -> tuple[list[str], bool]:
        """The words in so many lines at the most, and whether that is all of them."""
        width, begin = max(1, self.width()), 0
        lines: list[str] = []
        layout = QTextLayout(self.said, self.font())
        layout.beginLayout()
        while len(lines) < count - 1 and (line := layout.createLine()).isValid():
            line.setLineWidth(width)
            begin = line.textStart() + line.textLength()
            lines.append(self.said[line.textStart() : begin].rstrip())
        layout.endLayout()
        rest = self.said[begin:]
        cut = self.fontMetrics().elidedText(rest, Qt.TextElideMode.ElideRight, width)
        whole = cut == rest
        if not whole and " " in cut:
            cut = f"{cut[:-1].rpartition(' ')[0]} …"  # a word is whole or not there
        return [part for part in (*lines, cut) if part], whole


BESIDE_PX, LEAST_CHOICE_PX, LIST_EDGE_PX = 4, 110, 44


class Chooser(QComboBox):
    """A combo box whose arrow is drawn here: with a border from the style sheet the style draws none. Its longest words
    hold no page open: what has no room ends in "…", whole in the list."""

    def __init__(self, name: str, accessible: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.setAccessibleName(accessible)
        self.setFont(theme.font())
        self.setMinimumHeight(theme.TOUCH_PX - 4)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setItemDelegate(QStyledItemDelegate(self))  # the combo box's own knows no height from the style sheet

    def minimumSizeHint(self) -> QSize:
        whole = super().minimumSizeHint()
        return QSize(min(whole.width(), LEAST_CHOICE_PX), whole.height())

    def initStyleOption(self, option: QStyleOptionComboBox) -> None:
        super().initStyleOption(option)
        control, field = QStyle.ComplexControl.CC_ComboBox, QStyle.SubControl.SC_ComboBoxEditField
        room = max(1, self.style().subControlRect(control, option, field, self).width() - BESIDE_PX)
        option.currentText = self.fontMetrics().elidedText(option.currentText, Qt.TextElideMode.ElideRight, room)

    def showPopup(self) -> None:
        """The list is as wide as its longest words, as far as the window is."""
        wide = self.view().sizeHintForColumn(0) + LIST_EDGE_PX
        self.view().setMinimumWidth(min(wide, max(self.width(), self.window().width() - LIST_EDGE_PX)))
        super().showPopup()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Without the focus the page around it is scrolled, and nothing is chosen."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(QPalette.ColorRole.Text), 1.5))
        x, y = self.width() - 17.0, self.height() / 2.0
        painter.drawPolyline(QPolygonF([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)]))
        painter.end()


BOX_PX, LEAST_WORDS_PX = 34, 110
_WRAPPED = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap


class Tick(QCheckBox):
    """A box to tick, large enough for gloves. The tick is drawn here: with a box from the style sheet none is; and the
    words, which go on in the next line where they have no room."""

    def __init__(self, text: str, name: str) -> None:
        super().__init__(text)
        self.setObjectName(name)
        self.setAccessibleName(text)
        self.setFont(theme.font())
        self.setMinimumHeight(theme.TOUCH_PX - 4)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def minimumSizeHint(self) -> QSize:
        whole = self.sizeHint()
        return QSize(min(whole.width(), BOX_PX + LEAST_WORDS_PX), whole.height())

    def sizeHint(self) -> QSize:
        return QSize(BOX_PX + self.fontMetrics().horizontalAdvance(self.text()) + 4, theme.TOUCH_PX - 4)

    def heightForWidth(self, width: int) -> int:
        words = QRect(0, 0, max(1, width - BOX_PX), 1000)
        high = self.fontMetrics().boundingRect(words, _WRAPPED, self.text()).height()
        return max(theme.TOUCH_PX - 4, high + 6)

    def hitButton(self, pos: QPoint) -> bool:
        return self.rect().contains(pos)

    def paintEvent(self, event: QPaintEvent) -> None:
        option = QStyleOptionButton()
        self.initStyleOption(option)
        option.text = ""
        painter = QPainter(self)
        self.style().drawControl(QStyle.ControlElement.CE_CheckBox, option, painter, self)
        role = QPalette.ColorRole.Text if self.isEnabled() else QPalette.ColorRole.PlaceholderText
        painter.setPen(self.palette().color(role))
        painter.drawText(self.rect().adjusted(BOX_PX, 0, 0, 0), _WRAPPED, self.text())
        if not self.isChecked():
            painter.end()
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(QPalette.ColorRole.Text), 2.5))
        y = self.height() / 2.0
        painter.drawPolyline(QPolygonF([QPointF(6, y), QPointF(10.5, y + 5), QPointF(18, y - 5)]))
        painter.end()
