"""The right of the window: what the supply does now, how much of each ceiling is used, and "Output off"."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from benchlog.bench.frames import Progress, Used
from benchlog.quantities import show
from ui import texts, theme
from ui.off_state import OffState
from ui.output_off import OutputOffButton
from ui.pieces import label
from ui.shapes import Sign
from ui.theme import Tokens

MOST_CEILINGS = 6


class SupplyPanel(QWidget):
    """`off_pressed` at a press of the button, `acknowledged` when a person says the supply was switched off by hand."""

    off_pressed = Signal()
    acknowledged = Signal()

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self.setFixedWidth(256)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.numerals = Numerals(tokens)
        self.ceilings = CeilingBars(tokens)
        self.off = OffNotice(tokens)
        self.button = OutputOffButton(tokens)
        column.addWidget(self.numerals)
        column.addWidget(self.ceilings)
        column.addStretch(1)
        column.addWidget(self.off)
        column.addWidget(self.button)
        column.addWidget(label(texts.NO_EMERGENCY_STOP, "second", px=theme.SECOND_PX - 1, wrap=True))
        self.button.pressed.connect(self.off_pressed)
        self.off.acknowledged.connect(self.acknowledged)

    def show_progress(self, progress: Progress) -> None:
        self.numerals.show_progress(progress)
        self.ceilings.show_used(progress.used)

    def rest(self) -> None:
        """No run is on: nothing is measured, and the last figures must not look as if they were live."""
        self.numerals.rest()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        for part in (self.numerals, self.ceilings, self.off, self.button):
            part.set_tokens(tokens)


class Numerals(QFrame):
    """Volts and amps readable from a metre away, and the motor's state in a word with a shape."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.setProperty("look", "card")
        grid = QGridLayout(self)
        grid.setContentsMargins(18, 8, 18, 8)
        grid.setSpacing(0)
        grid.setColumnStretch(0, 1)
        self.volts, self.amps = label("", px=theme.NUMERAL_PX, bold=True), label("", px=theme.NUMERAL_PX, bold=True)
        self.volts.setObjectName("numeral_volts")
        self.amps.setObjectName("numeral_amps")
        self._bars = (ColourBar(tokens.volts), ColourBar(tokens.amps))
        for row, (number, unit) in enumerate(((self.volts, "V"), (self.amps, "A"))):
            number.setFixedHeight(58)
            line = QHBoxLayout()
            line.setSpacing(6)
            line.addWidget(number)
            small = label(unit, "second", px=20)
            small.setFixedHeight(44)
            small.setAlignment(Qt.AlignmentFlag.AlignBottom)
            line.addWidget(small)
            line.addStretch(1)
            grid.addLayout(line, row, 0)
            grid.addWidget(self._bars[row], row, 1)
        rule = QFrame()
        rule.setProperty("look", "line")
        rule.setFixedHeight(1)
        grid.addWidget(rule, 2, 0, 1, 2)
        state = QHBoxLayout()
        state.setContentsMargins(0, 10, 0, 4)
        state.setSpacing(10)
        self.sign = Sign(tokens.ink)
        self.word = label("", px=18, bold=True)
        self.word.setObjectName("motion_word")
        self.regulation = label("", "second", px=theme.SECOND_PX)
        self.regulation.setToolTip(texts.REGULATION_HINT)
        state.addWidget(self.sign)
        state.addWidget(self.word)
        state.addStretch(1)
        state.addWidget(self.regulation)
        grid.addLayout(state, 3, 0, 1, 2)
        self.rest()

    def show_progress(self, progress: Progress) -> None:
        if progress.volts:
            self._put(progress.volts[-1], progress.amps[-1])
        self._say(progress.motion)
        self.regulation.setText(progress.regulation if progress.output_on else texts.OFF_SHORT)

    def rest(self) -> None:
        self._put(None, None)
        self._say("resting")
        self.regulation.setText("")

    def _put(self, volts: float | None, amps: float | None) -> None:
        for number, value, places, accessible in (
            (self.volts, volts, 2, texts.VOLTS_ACCESSIBLE),
            (self.amps, amps, 3, texts.AMPS_ACCESSIBLE),
        ):
            text = texts.NOTHING if value is None else f"{max(value, 0.0):.{places}f}"
            number.setText(text)
            number.setAccessibleName(accessible.format(value=text))

    def _say(self, motion: str) -> None:
        self.word.setText(texts.MOTION_WORDS.get(motion, texts.MOTION_WORDS["unknown"]))
        self.sign.show_sign(motion, self._tokens.ink)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self._bars[0].set_colour(tokens.volts)
        self._bars[1].set_colour(tokens.amps)
        self.sign.show_sign(self.sign.sign, tokens.ink)


class ColourBar(QWidget):
    """Ties a numeral to its line on the chart."""

    def __init__(self, colour: str) -> None:
        super().__init__()
        self._colour = colour
        self.setFixedSize(4, 34)

    def set_colour(self, colour: str) -> None:
        self._colour = colour
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self._colour))
        painter.end()


class CeilingBars(QFrame):
    """How much of each ceiling is used, as a bar and as value / ceiling."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setProperty("look", "card")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(18, 10, 18, 12)
        self._grid.setVerticalSpacing(6)
        self._grid.setHorizontalSpacing(10)
        self._grid.setColumnStretch(2, 1)
        self._grid.addWidget(label(texts.USED_TITLE, "second", px=theme.SECOND_PX), 0, 0, 1, 3)
        self._none = label(texts.USED_NONE, "second", px=theme.SECOND_PX)
        self._grid.addWidget(self._none, 1, 0, 1, 3)
        self._rows: list[tuple[QLabel, UsedBar, QLabel]] = []
        for row in range(MOST_CEILINGS):
            parts = (label("", px=theme.SECOND_PX), UsedBar(tokens), label("", "second", px=theme.SECOND_PX))
            parts[2].setAlignment(Qt.AlignmentFlag.AlignRight)
            for column, part in enumerate(parts):
                self._grid.addWidget(part, row + 2, column)
                part.hide()
            self._rows.append(parts)

    def show_used(self, used: list[Used]) -> None:
        self._none.setVisible(not used)
        for index, parts in enumerate(self._rows):
            for part in parts:
                part.setVisible(index < len(used))
            if index < len(used):
                self._fill(parts, used[index])

    def _fill(self, parts: tuple[QLabel, "UsedBar", QLabel], used: Used) -> None:
        name, unit = texts.USED_NAMES.get(used.name, (used.name, ""))
        value, ceiling = _figures(used.value, used.ceiling, unit)
        layer = texts.LAYER_NAMES.get(used.layer, used.layer)
        parts[0].setText(name)
        parts[1].set_share(used.value / used.ceiling if used.ceiling > 0 else 0.0)
        parts[2].setText(texts.USED_OF.format(value=value, ceiling=ceiling))
        for part in parts:
            part.setToolTip(texts.USED_HINT.format(name=name, ceiling=ceiling, layer=layer))
        parts[1].setAccessibleName(texts.USED_ACCESSIBLE.format(name=name, value=value, ceiling=ceiling, layer=layer))

    def set_tokens(self, tokens: Tokens) -> None:
        for _, bar, _ in self._rows:
            bar.set_tokens(tokens)


def _figures(value: float, ceiling: float, unit: str) -> tuple[str, str]:
    """Both in the ceiling's own unit, so that they can be compared at a glance."""
    if not unit:
        return f"{value:.0f}", f"{ceiling:.0f}"
    if unit == "A" and ceiling < 1:
        return f"{value * 1e3:.0f}", show(ceiling, unit)
    return f"{value:.{0 if unit in ('°C', 'J') else 1 if unit == 'V' else 2}f}", show(ceiling, unit)


class UsedBar(QWidget):
    """A bar that is full at the ceiling; amber from nine tenths on, with the figure beside it."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self._share = 0.0
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(52, 6)

    def set_share(self, share: float) -> None:
        self._share = min(max(share, 0.0), 1.0)
        self.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        box = QRectF(self.rect())
        painter.setBrush(QColor(self._tokens.selection))
        painter.drawRoundedRect(box, 3, 3)
        painter.setBrush(QColor(self._tokens.amber if self._share >= 0.9 else self._tokens.second))
        if self._share > 0:
            painter.drawRoundedRect(QRectF(0, 0, max(3.0, box.width() * self._share), box.height()), 3, 3)
        painter.end()


class OffNotice(QFrame):
    """What is known about the output being off. In red with a shape where it is not confirmed, until acknowledged."""

    acknowledged = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.setObjectName("off_notice")
        row = QGridLayout(self)
        row.setContentsMargins(12, 8, 12, 8)
        row.setHorizontalSpacing(8)
        row.setColumnStretch(1, 1)
        self.sign = Sign(tokens.second, side=22)
        self.words = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.words.setObjectName("off_words")
        self.seen = QPushButton(texts.OFF_ACKNOWLEDGE)
        self.seen.setObjectName("off_acknowledge")
        self.seen.setAccessibleName(texts.OFF_ACKNOWLEDGE)
        self.seen.setProperty("look", "alarm")
        self.seen.setFont(theme.semibold(theme.SECOND_PX))
        self.seen.setMinimumHeight(theme.TOUCH_PX)
        self.seen.clicked.connect(self.acknowledged)
        row.addWidget(self.sign, 0, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.words, 0, 1)
        row.addWidget(self.seen, 1, 0, 1, 2)
        self._state = OffState.IDLE
        self.show_state(OffState.IDLE, texts.OFF_IDLE)

    def show_state(self, state: OffState, words: str) -> None:
        self._state = state
        alarm = state is OffState.NOT_CONFIRMED
        self.setProperty("look", "alarm" if alarm else "quiet")
        self.words.setProperty("look", "alarm" if alarm else "second")
        self.words.setFont(theme.semibold() if alarm else theme.font(theme.SECOND_PX))
        self.words.setText(words)
        self.seen.setVisible(alarm)
        sign = {
            OffState.NOT_CONFIRMED: "alarm",
            OffState.CONFIRMED: "done",
            OffState.RUNNING: "turning",
            OffState.COMMANDED: "creeping",
            OffState.IDLE: "resting",
        }[state]
        self.sign.show_sign(sign, self._tokens.red if alarm else self._tokens.second)
        for part in (self, self.words):
            part.style().unpolish(part)
            part.style().polish(part)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.show_state(self._state, self.words.text())
