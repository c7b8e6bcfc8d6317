"""Volts and amps readable from a metre away, and the motor's state in a word with a shape."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QWidget

from benchlog.bench.frames import Progress
from ui import texts, theme
from ui.density import ROOMY, Density
from ui.pieces import label
from ui.shapes import Sign
from ui.theme import Tokens


class Numerals(QFrame):
    """What was read last; nothing at all where no run is on."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.setProperty("look", "card")
        grid = self._grid = QGridLayout(self)
        grid.setContentsMargins(18, 8, 18, 8)
        grid.setSpacing(0)
        grid.setColumnStretch(0, 1)
        self.volts, self.amps = label("", px=theme.NUMERAL_PX, bold=True), label("", px=theme.NUMERAL_PX, bold=True)
        self.volts.setObjectName("numeral_volts")
        self.amps.setObjectName("numeral_amps")
        self._bars = (ColourBar(tokens.volts), ColourBar(tokens.amps))
        self._units = (label("V", "second", px=20), label("A", "second", px=20))
        for row, (number, small) in enumerate(zip((self.volts, self.amps), self._units, strict=True)):
            line = QHBoxLayout()
            line.setSpacing(6)
            line.addWidget(number)
            small.setAlignment(Qt.AlignmentFlag.AlignBottom)
            line.addWidget(small)
            line.addStretch(1)
            grid.addLayout(line, row, 0)
            grid.addWidget(self._bars[row], row, 1)
        rule = QFrame()
        rule.setProperty("look", "line")
        rule.setFixedHeight(1)
        grid.addWidget(rule, 2, 0, 1, 2)
        state = self._state = QHBoxLayout()
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
        self.fit(ROOMY)
        self.rest()

    def fit(self, density: Density) -> None:
        """Type and heights follow the numerals; the volts and the amps are the last that give way."""
        px, side = density.numeral_px, 10 if density.narrow else 18
        self._grid.setContentsMargins(side, side // 2 - 1, side, side // 2 - 1)
        for number, small, bar in zip((self.volts, self.amps), self._units, self._bars, strict=True):
            number.setFont(theme.semibold(px))
            number.setFixedHeight(px + 8)
            small.setFont(theme.font(min(20, px // 2 + 2)))
            small.setFixedHeight(round(px * 0.78))
            bar.setFixedSize(4, round(px * 0.68))
        self._state.setContentsMargins(0, px // 5, 0, px // 12)
        self._state.setSpacing(10 if px > 40 else 6)
        self.word.setFont(theme.semibold(min(18, px // 2 + 2)))

    def show_progress(self, progress: Progress) -> None:
        if progress.volts:
            self._put(progress.volts[-1], progress.amps[-1])
        self._say(progress.motion)
        self.regulation.setText(progress.regulation if progress.output_on else texts.OFF_SHORT)

    def rest(self) -> None:
        self._put(None, None)
        self._say("none")
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
