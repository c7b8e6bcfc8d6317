"""Top, foot and notices of the window: what the job is, which room one is in, the facts, and what has to be said."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QPushButton, QWidget

from ui import texts, theme
from ui.demo_mark import DemoMark
from ui.density import Density
from ui.pieces import Elided, button, label

_NO_MOST = 16_777_215
"""Qt's own word for no greatest width."""
WIDE_PX = 1000
"""Below it the header has room for signs only where words have one."""


class Header(QWidget):
    """`room_picked` 0 for the bench, 1 the curves, 2 the history, 3 the settings, 4 the help; `new_job` to put this job
    aside and begin another."""

    room_picked = Signal(int)
    new_job = Signal()

    def __init__(self, *, demo: str = "") -> None:
        super().__init__()
        self.setObjectName("header")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedHeight(52)
        row = self._row = QHBoxLayout(self)
        row.setContentsMargins(20, 0, 20, 0)
        row.setSpacing(8)
        self.title = _Title(texts.NO_JOB)
        self.about = Elided(texts.NO_JOB_ABOUT, "second")
        self.about.setObjectName("job_about")
        row.addWidget(self.title)
        row.addSpacing(4)
        row.addWidget(self.about, 1)
        self.new_button = button(texts.NEW_JOB, "new_job", "room")
        self.new_button.clicked.connect(self.new_job)
        self.new_button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.new_button.hide()
        row.addWidget(self.new_button)
        self.demo = DemoMark(demo) if demo else None
        if self.demo is not None:
            row.addWidget(self.demo)
        self.rooms = QButtonGroup(self)
        names = (("room_bench", texts.BENCH), ("room_curves", texts.CURVES), ("room_history", texts.HISTORY))
        made: list[QPushButton] = [button(word, name, "room") for name, word in names]
        self._signs = (
            SignButton(texts.SETTINGS, "room_settings", "settings", accessible=texts.SETTINGS_NAME),
            SignButton(texts.HELP, "room_help", "help", accessible=texts.HELP_NAME),
        )
        for index, one in enumerate((*made, *self._signs)):
            one.setMinimumHeight(theme.TOUCH_PX - 4)
            one.setCheckable(True)
            one.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            one.setChecked(index == 0)
            self.rooms.addButton(one, index)
            row.addWidget(one)
        self.rooms.idClicked.connect(self.room_picked)

    def show_job(self, title: str, about: str, *, on_bench: bool) -> None:
        self.title.setText(title)
        self._about = about
        self.about.say(about)
        self.new_button.setVisible(on_bench)

    def told(self) -> str:
        """What is shown, whole: for a picture's title line."""
        return texts.CHART_CAPTION.format(job=self.title.text(), run=self._about)

    _about = ""

    def fit(self, density: Density) -> None:
        self.setFixedHeight(density.header_px)
        self._row.setContentsMargins(density.side_px, 0, density.side_px, 0)
        self._row.setSpacing(4 if density.narrow else 8)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self.demo is not None:
            self.demo.show_thing(self.width() >= WIDE_PX)
        for one in self._signs:
            one.show_word(self.width() >= WIDE_PX)


class _Title(QLabel):
    """What the job is; cut with a sign that there is more where there is no room, and never in what it says it is."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setObjectName("job_title")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(theme.semibold(18))

    def minimumSizeHint(self) -> QSize:
        return QSize(80, super().minimumSizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        shown = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width())
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, shown)
        painter.end()


class SignButton(QPushButton):
    """A word where there is room, else a sign drawn here, so that no font has to have it; the name stays."""

    def __init__(self, word: str, name: str, sign: str, *, accessible: str) -> None:
        super().__init__(word)
        self._word, self._sign = word, sign
        self.setObjectName(name)
        self.setAccessibleName(accessible)
        self.setToolTip(accessible)
        self.setFont(theme.font())
        self.setProperty("look", "room")
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_word(self, shown: bool) -> None:
        self.setText(self._word if shown else "")
        self.setMinimumWidth(0 if shown else theme.TOUCH_PX)
        self.setMaximumWidth(_NO_MOST if shown else theme.TOUCH_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.text():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().color(QPalette.ColorRole.Text)
        middle = QRectF(self.rect()).center()
        if self._sign == "help":
            painter.setPen(ink)
            painter.setFont(theme.semibold(20))
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, "?")
        else:  # three slides of a desk
            painter.setPen(QPen(ink, 2))
            painter.setBrush(ink)
            for down, along in ((-7, 4), (0, -4), (7, 2)):
                y = middle.y() + down
                painter.drawLine(QPointF(middle.x() - 9, y), QPointF(middle.x() + 9, y))
                painter.drawEllipse(QPointF(middle.x() + along, y), 2.5, 2.5)
        painter.end()


class Foot(QWidget):
    """Facts in a fixed order: output, supply, readings, trace, ledger."""

    NAMES = ("output", "supply", "rate", "trace", "ledger")

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("foot")
        self.setFixedHeight(28)
        row = self._row = QHBoxLayout(self)
        row.setContentsMargins(20, 0, 20, 0)
        row.setSpacing(22)
        self.facts = {name: label("", "second", px=theme.SECOND_PX) for name in self.NAMES}
        for name, fact in self.facts.items():
            fact.setObjectName(f"foot_{name}")
            row.addWidget(fact)
        row.addStretch(1)

    def fit(self, density: Density) -> None:
        """Facts that have no room any more go from the end; at the tightest the line gives its room to the work."""
        self.setVisible(density.foot_px > 0)
        self.setFixedHeight(max(1, density.foot_px))
        self._row.setContentsMargins(density.side_px, 0, density.side_px, 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._drop_what_has_no_room()

    def minimumSizeHint(self) -> QSize:
        return QSize(0, super().minimumSizeHint().height())

    def _drop_what_has_no_room(self) -> None:
        left = self.width() - 2 * self._row.contentsMargins().left() - self._row.spacing() // 2
        for fact in self.facts.values():
            left -= fact.sizeHint().width()
            fact.setVisible(left >= 0)
            left -= self._row.spacing()

    def say(self, name: str, text: str) -> None:
        fact = self.facts[name]
        if fact.text() != text:
            fact.setText(text)
            self._drop_what_has_no_room()
