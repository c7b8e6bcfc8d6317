"""The right of the window: what the supply does now, how much of each ceiling is used, and "Output off"."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.bench.frames import Progress
from ui import texts, theme
from ui.ceiling_bars import CeilingBars
from ui.numerals import Numerals
from ui.off_notice import OffNotice
from ui.output_off import OutputOffButton
from ui.pieces import label
from ui.theme import Tokens


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
        self.ceilings.rest()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        for part in (self.numerals, self.ceilings, self.off, self.button):
            part.set_tokens(tokens)
