"""The right of the curves room: verdict, figures, how the lot stands, and the next unit. "Output off" is below it."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.curves.figures_table import FiguresTable
from ui.curves.lot_card import LotCard
from ui.curves.next_card import NextCard
from ui.curves.verdict_card import VerdictCard
from ui.theme import Tokens

SIDE_PX = 392


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
        for part in (self.verdict, self.figures, self.lot):
            column.addWidget(part)
        column.addStretch(1)
        column.addWidget(self.next)

    def set_tokens(self, tokens: Tokens) -> None:
        self.verdict.set_tokens(tokens)
        self.next.set_tokens(tokens)
