"""Before anything is chosen: what the room is for, and the three steps to the first curve."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from ui import curve_texts as texts
from ui import theme
from ui.pieces import button, card, label, set_look
from ui.wrapping import WrapRow


class EmptyPage(QWidget):
    """`test_wanted`, `lot_wanted`, `job_wanted`: what is pressed."""

    test_wanted = Signal()
    lot_wanted = Signal()
    job_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(label(texts.EMPTY_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True))
        column.addWidget(label(texts.EMPTY_WHY, "second", wrap=True))
        steps = card()
        grid = QGridLayout(steps)
        grid.setContentsMargins(22, 18, 22, 18)
        grid.setHorizontalSpacing(18)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(1, 1)
        for row, (number, what, why) in enumerate(texts.EMPTY_STEPS):
            grid.addWidget(label(number, "third", px=30, bold=True), 3 * row, 0, 2, 1)
            grid.addWidget(label(what, px=theme.BODY_PX + 1, bold=True, wrap=True), 3 * row, 1)
            grid.addWidget(label(why, "second", wrap=True), 3 * row + 1, 1)
            if row < len(texts.EMPTY_STEPS) - 1:
                grid.setRowMinimumHeight(3 * row + 2, 16)
        column.addWidget(steps)
        self.test = button(texts.EMPTY_TEST, "curves_define_test", "main")
        self.lot = button(texts.EMPTY_LOT, "curves_open_lot")
        self.job = button(texts.EMPTY_JOB, "curves_take_job")
        row_of = WrapRow()
        for one, signal in ((self.test, self.test_wanted), (self.lot, self.lot_wanted), (self.job, self.job_wanted)):
            one.clicked.connect(signal)
            row_of.add(one)
        column.addLayout(row_of)
        column.addStretch(1)

    def show_tests(self, there: bool) -> None:
        """Whether one is defined already: then a lot is what comes next."""
        set_look(self.test, "" if there else "main")
        set_look(self.lot, "main" if there else "")
