"""The right of the curves room: verdict, figures, how the lot stands, and the next unit. "Output off" is below it."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.curves.figures_table import FiguresTable
from ui.curves.lot_card import LOT_LINES, LotCard
from ui.curves.next_card import NextCard
from ui.curves.verdict_card import VerdictCard
from ui.pieces import scrolled
from ui.theme import Tokens


class CurvesSide(QWidget):
    """Stands in the supply's panel while no run is on; during a run the panel shows volts, amps and ceilings."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setObjectName("curves_side")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.verdict, self.figures = VerdictCard(tokens), FiguresTable()
        self.lot, self.next = LotCard(), NextCard(tokens)
        self.found = QWidget()
        found = QVBoxLayout(self.found)
        found.setContentsMargins(0, 0, 0, 0)
        found.setSpacing(8)
        for part in (self.verdict, self.figures):
            found.addWidget(part)
        told = QWidget()
        lines = QVBoxLayout(told)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(8)
        lines.addWidget(self.found)
        lines.addWidget(self.lot)
        lines.addStretch(1)
        area = scrolled(told)
        area.setMinimumHeight(1)  # what begins the next one is in sight before all of the last one
        column.addWidget(area, 1)
        column.addWidget(self.next)
        self.next.crowded.connect(lambda on: self.lot.words.set_count(1 if on else LOT_LINES))

    def set_tokens(self, tokens: Tokens) -> None:
        self.verdict.set_tokens(tokens)
        self.next.set_tokens(tokens)
