"""The one next thing: scan the serial, connect, press one key. And what must be so before it."""

import time
from collections.abc import Callable

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from ui import curve_texts as texts
from ui import retelling, theme
from ui.pieces import Chooser, Elided, Tick, button, grey, label
from ui.theme import Tokens

START_PX = 52
SCAN_S = 0.3
"""A space so soon after another character was typed by a scanner. Starting value of this project."""
_SHORTCUT = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier


class StartButton(QPushButton):
    """As heavy as what is next may be, with its key beside the word; "Output off" stays heavier."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(texts.START)
        self._tokens = tokens
        self.setObjectName("curves_start")
        self.setAccessibleName(texts.START_NAME)
        self.setFont(theme.semibold(18))
        self.setMinimumHeight(START_PX)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        return QSize(160, START_PX)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The card's, which knows whether a space was meant as a press."""
        event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, box = self._tokens, QRectF(self.rect()).adjusted(1, 1, -1, -1)
        ink = QColor(tokens.ink if self.isEnabled() else tokens.second)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(QColor(tokens.selection if self.isDown() else tokens.card))
        painter.setPen(QPen(ink if self.hasFocus() or self.isEnabled() else QColor(tokens.line), 2))
        painter.drawRoundedRect(box, 8, 8)
        if self.hasFocus():
            painter.setPen(QPen(ink, 1))
            painter.drawRoundedRect(box.adjusted(3, 3, -3, -3), 5, 5)
        painter.setPen(ink)
        painter.setFont(self.font())
        painter.drawText(box.adjusted(14, 0, -78, 0), Qt.AlignmentFlag.AlignVCenter, self.text())
        key = QRectF(box.right() - 72, box.center().y() - 13, 60, 26)
        painter.setPen(QPen(ink, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(key, 5, 5)
        painter.setFont(theme.semibold(theme.SECOND_PX))
        painter.drawText(key, Qt.AlignmentFlag.AlignCenter, texts.START_KEY)
        painter.end()


class NextCard(QFrame):
    """`scanned` a serial with Enter; `started` by the button or the space bar; `cleared` the tick, once a session;
    `check_wanted` the shift's check, the clips joined; `test_chosen` the key of the test for the job on the bench;
    `told` why a key did nothing; `crowded` whether the tick and a check that is due are asked for at once.

    A scanner types into whatever has the focus, and ends with Enter. So the space bar starts a unit only after Enter
    in the serial's field, once; any other character begins the next serial there. `now_s` tells s, from any zero.
    """

    scanned = Signal(str)
    started = Signal()
    cleared = Signal()
    check_wanted = Signal()
    test_chosen = Signal(int)
    told = Signal(str)
    crowded = Signal(bool)

    def __init__(self, tokens: Tokens, now_s: Callable[[], float] = time.monotonic) -> None:
        super().__init__()
        self.now_s = now_s
        self._armed, self._typed, self._typed_s = False, "", -SCAN_S
        self.setObjectName("curves_next")
        self.setProperty("look", "card")
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 6, 12, 8)
        column.setSpacing(4)
        self.clear = Tick(texts.CLEAR_TICK, "curves_clear")
        self.clear.setToolTip(retelling.told(texts.CLEAR_HINT))
        self.clear.toggled.connect(self._tick)
        self.checked = Elided("", "second", px=theme.SECOND_PX)
        self.checked.setObjectName("curves_checked")
        self.check = button(texts.CHECK_NOW, "curves_check", accessible=texts.CHECK_NOW_NAME)
        self.check.setToolTip(texts.CHECK_HINT)
        self.check.setMinimumHeight(theme.TOUCH_PX - 4)
        self.check.clicked.connect(lambda: self._ask_joined(True))
        self.checks = QWidget()
        checks = QHBoxLayout(self.checks)
        checks.setContentsMargins(4, 0, 0, 0)
        checks.addWidget(self.checked, 1)
        checks.addWidget(self.check)
        self.joined = self._joined_row()
        self.serial = QLineEdit()
        self.serial.setObjectName("curves_serial")
        self.serial.setAccessibleName(texts.SERIAL_NAME)
        self.serial.setPlaceholderText(texts.SERIAL_HINT)
        self.serial.setFont(theme.font())
        self.serial.setMaxLength(100)
        self.serial.setMinimumHeight(START_PX)
        self.serial.returnPressed.connect(self._scan)
        self.serial.textEdited.connect(self._edited)
        self.test = Chooser("curves_test", texts.CHOOSE_TEST_NAME)
        self.test.setMinimumHeight(START_PX)
        self.test.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.test.setMinimumContentsLength(8)
        self.test.view().setMinimumWidth(360)
        self.test.activated.connect(lambda _: self.test_chosen.emit(int(self.test.currentData() or 0)))
        self.start = StartButton(tokens)
        self.start.clicked.connect(self._press)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.serial, 1)
        row.addWidget(self.test, 1)
        row.addWidget(self.start)
        column.addWidget(self.clear)
        column.addWidget(self.checks)
        column.addWidget(self.joined)
        self.checks.hide()
        self.joined.hide()
        column.addLayout(row)
        self._ready, self._needs_serial, self._checks_shown, self._check_due = "", True, False, False
        self._asking = self._refusing = False
        self.offer(needs_serial=True, ready="")

    def _joined_row(self) -> QWidget:
        """Asked before the output goes on. Leaving stands where "Check" was: a second press begins nothing."""
        made = QWidget()
        column, row = QVBoxLayout(made), QHBoxLayout()
        column.setContentsMargins(4, 0, 0, 0)
        column.setSpacing(4)
        self.begin = button(texts.CHECK_BEGIN, "curves_check_begin", accessible=texts.CHECK_BEGIN_NAME)
        self.leave = button(texts.CHECK_LEAVE, "curves_check_leave")
        for one in (self.begin, self.leave):
            one.setMinimumHeight(theme.TOUCH_PX - 4)
            row.addWidget(one)
        row.insertStretch(1)
        self.begin.clicked.connect(self._begin_check)
        self.leave.clicked.connect(lambda: self._ask_joined(False))
        asked = label(texts.CHECK_ASK, "ask", wrap=True)
        asked.setObjectName("curves_check_ask")
        column.addWidget(asked)
        column.addLayout(row)
        return made

    def _ask_joined(self, asking: bool) -> None:
        self._asking = asking
        self.setFocus()  # the space bar must not press what comes in its place
        self._lay_checks()
        self._judge()

    def _begin_check(self) -> None:
        self._ask_joined(False)
        self.check_wanted.emit()

    def offer(self, *, needs_serial: bool, ready: str) -> None:
        """`ready`: why nothing can begin now; "" where it can. Without a serial it is the job on the bench."""
        self._ready, self._needs_serial = ready, needs_serial
        if ready and self._asking:
            self._asking = False
            self._lay_checks()
        self.serial.setVisible(needs_serial)
        self.test.setVisible(not needs_serial)
        self._judge()

    def show_checks(self, words: str, *, due: bool, shown: bool) -> None:
        self._checks_shown, self._check_due = shown, due
        self._lay_checks()
        self.checked.say(words)
        self.checked.setProperty("tone", "look" if due else "second")
        self.checked.style().unpolish(self.checked)
        self.checked.style().polish(self.checked)
        self.checked.setFont(theme.font(theme.SECOND_PX))

    def _lay_checks(self) -> None:
        """What is due is in sight from the beginning; what was checked waits until hands are clear."""
        ticked = self.clear.isChecked()
        shown = self._checks_shown and (self._check_due or ticked)
        self.checks.setVisible(shown and not self._asking)
        self.joined.setVisible(shown and self._asking)
        self.crowded.emit(self._checks_shown and self._check_due and not ticked)

    def forget_clear(self) -> None:
        """Another lot, or another sitting: it is asked again."""
        self.clear.blockSignals(True)
        self.clear.setChecked(False)
        self.clear.blockSignals(False)
        self.clear.show()
        self._asking = False
        self._lay_checks()
        self._armed = False
        self._judge()

    def note_run(self, *, on: bool) -> None:
        """While one is on no serial is taken, which is said aloud."""
        self._refusing = on

    def used(self) -> None:
        """Its run began: the same serial again has to be scanned again."""
        self._armed = False
        self.serial.clear()
        self._judge()

    def next_one(self) -> None:
        """The unit is done: the next one's serial, where it was not scanned meanwhile."""
        if self.serial.isVisible() and not self._armed:
            self.serial.setFocus()

    def take_key(self, event: QKeyEvent) -> None:
        """A key that nobody took, here or in the room."""
        text = event.text()
        if self._refusing and self._needs_serial and text.isprintable() and text.strip():
            self._refusing = False  # said once a run
            self.told.emit(texts.NEXT_NOT_KEPT)
        if not self.isVisible() or event.modifiers() & _SHORTCUT or len(text) != 1 or not text.isprintable():
            event.ignore()
            return
        event.accept()
        if event.isAutoRepeat():
            return
        if text == " " and not (self._scanning() and self._typed):
            self.press_by_key()
            return
        self.note_key(text)
        if self._needs_serial:
            self.serial.setText(self._typed)
            self.serial.setFocus()
            self._edited()

    def note_key(self, text: str) -> None:
        """A character that somebody else made use of: it may have been the first of a scan."""
        self._typed = self._typed + text if self._scanning() else text
        self._typed_s = self.now_s()

    def _scanning(self) -> bool:
        return self.now_s() - self._typed_s < SCAN_S

    def press_by_key(self) -> None:
        """The space bar, or a key that was taught to start."""
        if self._scanning() or not self.start.isEnabled():
            return
        if self._armed or not self._needs_serial:
            self._press()
        else:
            self.told.emit(texts.NEEDS_ENTER)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        self.take_key(event)

    def _press(self) -> None:
        self.started.emit()

    def _tick(self, ticked: bool) -> None:
        if ticked:
            self.cleared.emit()
            self.clear.hide()
            self._lay_checks()
        self._judge()

    def _edited(self, _: str = "") -> None:
        self._armed, self._typed, self._typed_s = False, self.serial.text(), self.now_s()
        self._judge()

    def _scan(self) -> None:
        serial = self.serial.text().strip()
        if serial:
            self._armed, self._typed = True, ""
            self.scanned.emit(serial)
            self._judge()
            self.start.setFocus()  # the space bar presses it

    def _judge(self) -> None:
        why = self._ready
        if not why and not self.clear.isChecked():
            why = texts.NEEDS_CLEAR
        grey(self.check, why)
        if not why and self._asking:
            why = texts.NEEDS_JOINED
        if not why and self._needs_serial and not self.serial.text().strip():
            why = texts.NEEDS_SERIAL
        if why and self.start.hasFocus():
            self.setFocus()  # else the next in line takes it, and a scan would go there
        grey(self.start, why)

    def set_tokens(self, tokens: Tokens) -> None:
        self.start.set_tokens(tokens)
