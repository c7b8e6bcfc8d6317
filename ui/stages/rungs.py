"""The ladder as a row of cards: each rung with its volts and its tries as dots."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from benchlog.recovery.steps import Kicks, Sequence, Swap, volts_of
from ui import retelling, sayings, texts, theme
from ui.pieces import Elided, label, set_look
from ui.theme import Tokens
from ui.wrapping import WrapRow

CARD_PX, HIGH_PX = 92, 74
"""As wide as a rung is at the least, so that its volts and what is said beside them can be read."""


class RungRow(QWidget):
    """Lay out a sequence, then `reach` a rung as its step begins and `kick` for each try."""

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._row = WrapRow(self)
        self.cards: list[RungCard] = []
        self.here = 0

    def lay_out(self, sequence: Sequence, rated_volts: float, ceiling_volts: float) -> None:
        for old in self.cards:
            self._row.removeWidget(old)
            old.hide()  # it is deleted only when the event loop comes round
            old.deleteLater()
        swaps = {step.name for step in sequence.steps if isinstance(step, Swap)}
        rungs = [step for step in sequence.steps if isinstance(step, Kicks)]
        self.cards = [
            RungCard(
                number, step, volts_of(step, rated_volts), ceiling_volts, self._tokens, swapped=step.only_after in swaps
            )
            for number, step in enumerate(rungs, start=1)
        ]
        for made in self.cards:
            self._row.add(made, stretch=1, least=CARD_PX)
        self.here = 0

    def reach(self, rung: int | None) -> None:
        """None: no rung is being tried now."""
        self.here = rung or 0
        for made in self.cards:
            made.set_here(made.number == self.here)

    def kick(self, rung: int) -> None:
        if 1 <= rung <= len(self.cards):
            self.cards[rung - 1].add_try()

    def leave_out(self, rung: int) -> None:
        if 1 <= rung <= len(self.cards):
            self.cards[rung - 1].say_left_out()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        for made in self.cards:
            made.dots.set_tokens(tokens)


class RungCard(QFrame):
    """One rung. Quiet until it is reached; left out where a ceiling is below what it asks."""

    def __init__(
        self, number: int, step: Kicks, volts: float, ceiling_volts: float, tokens: Tokens, *, swapped: bool
    ) -> None:
        super().__init__()
        self.number = number
        self._step, self._volts = step, volts
        self.setObjectName(f"rung_{number}")
        self.setProperty("look", "quiet")
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.setFixedHeight(HIGH_PX)
        self.left_out = step.if_allowed and volts > ceiling_volts
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 4, 10)
        column.setSpacing(3)
        named = texts.RUNG_TITLE.format(number=number, name=retelling.told(step.name))
        title = Elided(named, "second", px=theme.SECOND_PX)
        self.figure: QLabel = label(sayings.short(volts, "V"), "third", bold=True)
        note = texts.RUNG_LEFT_OUT if self.left_out else texts.RUNG_SWAPPED if swapped else ""
        figure_row = QHBoxLayout()
        figure_row.setSpacing(6)
        figure_row.addWidget(self.figure)
        self.note = Elided(note, "second", px=theme.SECOND_PX - 1)
        figure_row.addWidget(self.note, 1)
        self.dots = Dots(step.tries, tokens)
        for part in (title, figure_row, self.dots):
            column.addLayout(part) if isinstance(part, QHBoxLayout) else column.addWidget(part)
        self.setToolTip(texts.RUNG_ABOVE_HINT if self.left_out else texts.RUNG_SWAPPED_HINT if swapped else "")
        self._describe()

    def set_here(self, here: bool) -> None:
        set_look(self, "here" if here else "card" if self.dots.filled else "quiet")
        set_look(self.figure, "" if here or self.dots.filled else "third", name="tone")

    def say_left_out(self) -> None:
        self.left_out = True
        self.note.say(texts.RUNG_LEFT_OUT)
        self.setToolTip(texts.RUNG_LEFT_OUT_HINT)

    def add_try(self) -> None:
        self.dots.fill(self.dots.filled + 1)
        set_look(self.figure, "", name="tone")
        self._describe()

    def _describe(self) -> None:
        self.setAccessibleName(
            texts.RUNG_ACCESSIBLE.format(
                number=self.number,
                name=retelling.told(self._step.name),
                volts=sayings.short(self._volts, "V"),
                tries=self.dots.filled,
                of=self._step.tries,
            )
        )


class Dots(QWidget):
    """Tries: filled where made, hollow to come."""

    def __init__(self, count: int, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.count, self.filled = count, 0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def fill(self, filled: int) -> None:
        self.filled = min(filled, self.count)
        self.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(60, 10)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pitch = min(13.0, self.width() / max(1, self.count))
        side = min(8.0, pitch - 2)
        ink = QColor(self._tokens.ink)
        for index in range(self.count):
            painter.setPen(QPen(ink, 1.2))
            painter.setBrush(ink if index < self.filled else QColor(0, 0, 0, 0))
            painter.drawEllipse(QRectF(1 + index * pitch, 1, side, side))
        painter.end()
