"""The units of a lot, or the runs of a job, in a list: pass or fail, what is nearest its limit and by how much."""

import math

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QButtonGroup,
    QHeaderView,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from benchlog.motor.limits import Judged, JudgedFigure
from benchlog.outcome import Outcome
from ui import curve_texts as texts
from ui import retelling, theme
from ui import texts as window_texts
from ui.curves.figure_words import margin_share, margin_words
from ui.curves.form_rows import line
from ui.curves.reading import Measured, Shown
from ui.curves.verdict_card import DECIDING
from ui.density import Density
from ui.history.job_list import plain_table
from ui.moments import clock_text, day_text
from ui.pieces import EmptyWords, button, grey, label, plain_hint
from ui.wrapping import WrapRow

_WIDTHS = (56, 0, 156, 146, 148, 66, 160)
_NARROW = {0: 44, 2: 104, 4: 152}
_LEFT_OUT = (3, 5, 6)
"""Columns that go where it is narrow: which figure is nearest, of how many starts, and when."""
LEAST_GOOD = 5


class UnitsPage(QWidget):
    """`picked` the number of what was measured; `limits_wanted` who says that these are good; `report_wanted`."""

    picked = Signal(int)
    limits_wanted = Signal(str)
    report_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._shown: Shown | None = None
        self._order: list[int] = []
        self.say = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.why = label("", "second", wrap=True)
        self.table = plain_table("curves_units", texts.UNITS_TABLE, texts.UNIT_COLUMNS)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        for index, width in enumerate(_WIDTHS):
            if width:
                self.table.setColumnWidth(index, width)
            else:
                self.table.horizontalHeader().setSectionResizeMode(index, QHeaderView.ResizeMode.Stretch)
        self.none = EmptyWords(self.table, texts.UNITS_NONE)
        self.table.cellDoubleClicked.connect(lambda row, _: self._pick(row))
        self.table.installEventFilter(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.say)
        column.addWidget(self.why)
        column.addLayout(self._order_row())
        column.addWidget(self.table, 1)
        column.addLayout(self._limits_row())

    def fit(self, density: Density) -> None:
        for column in _LEFT_OUT:
            self.table.setColumnHidden(column, density.narrow)
        for column, narrow in _NARROW.items():
            self.table.setColumnWidth(column, narrow if density.narrow else _WIDTHS[column])

    def _order_row(self) -> WrapRow:
        self.order = QButtonGroup(self)
        row = WrapRow(spacing=4)
        for number, (words, accessible) in enumerate(
            zip((texts.BY_NUMBER, texts.WORST_FIRST), texts.ORDER_NAMES, strict=True)
        ):
            one = button(words, f"curves_order_{number}", "choice", accessible=accessible)
            one.setCheckable(True)
            one.setChecked(number == 0)
            self.order.addButton(one, number)
            row.add(one)
        self.order.idClicked.connect(lambda _: self._fill())
        row.add_stretch()
        self.report = button(texts.LOT_REPORT, "curves_lot_report", accessible=texts.LOT_REPORT_NAME)
        self.report.setToolTip(texts.LOT_REPORT_NAME)
        self.report.clicked.connect(self.report_wanted)
        row.add(self.report)
        self.sound = button(texts.SOUND, "curves_sound", "choice", accessible=texts.SOUND_NAME)
        self.sound.setToolTip(texts.SOUND_NAME)
        self.sound.setCheckable(True)
        self.sound.setChecked(True)
        row.add(self.sound)
        return row

    def _limits_row(self) -> WrapRow:
        self.not_limits = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.not_limits.setObjectName("curves_not_limits")
        self.who = line("curves_who_good", texts.WHO_GOOD, texts.WHO_GOOD_HINT)
        self.who.setMaximumWidth(240)
        self.make_limits = button(texts.MAKE_LIMITS, "curves_make_limits", accessible=texts.MAKE_LIMITS_NAME)
        self.make_limits.clicked.connect(lambda: self.limits_wanted.emit(self.who.text().strip()))
        row = WrapRow()
        self.who_label = label(texts.WHO_GOOD_LABEL, "second", px=theme.SECOND_PX)
        self.who_label.setBuddy(self.who)
        row.add(self.not_limits, stretch=2, least=200)
        row.add(self.who_label)
        row.add(self.who, stretch=1, least=160)
        row.add(self.make_limits)
        return row

    def show_shown(self, shown: Shown) -> None:
        self._shown = shown
        if shown.lot is not None:
            self.say.setText(texts.UNITS_SAY.format(name=shown.lot.name))
            self.why.setText(texts.UNITS_WHY)
            self.none.setText(texts.UNITS_NONE)
        else:
            self.say.setText(texts.RUNS_SAY.format(number=shown.job.number))
            self.why.setText(texts.RUNS_WHY)
            self.none.setText(texts.RUNS_NONE)
        may = shown.lot is not None and shown.good >= LEAST_GOOD
        self.make_limits.setVisible(shown.lot is not None)
        self.report.setVisible(shown.lot is not None)
        grey(self.report, "" if shown.lines else texts.EXPORT_NOTHING)
        for part in (self.who_label, self.who):
            part.setVisible(shown.lot is not None)
        grey(self.make_limits, "" if may or shown.lot is None else texts.too_few_good(shown.good))
        of = texts.LIMITS_OF.format(good=shown.good, count=len(shown.measured))
        self.not_limits.setText("" if shown.lot is None else of if may else texts.too_few_good(shown.good))
        self._fill()

    def _fill(self) -> None:
        shown = self._shown
        if shown is None:
            return
        order = list(range(len(shown.measured)))
        if self.order.checkedId() == 1:
            order.sort(key=lambda number: _worth(shown.measured[number]))
        row = self.table.currentRow()
        before = self._order[row] if 0 <= row < len(self._order) else None
        self._order = order
        self.table.setRowCount(len(order))
        for row, number in enumerate(order):
            for column, text in enumerate(_cells(shown.measured[number])):
                cell = QTableWidgetItem(text)
                cell.setToolTip(plain_hint(text))
                if column == 2 and text.startswith(texts.UNIT_FAIL):
                    cell.setFont(theme.semibold())
                self.table.setItem(row, column, cell)
        if before in order:  # the unit stays marked, not the row
            self.table.setCurrentCell(order.index(before), 0)

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self._order):
            self.picked.emit(self._order[row])

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        keys = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and event.key() in keys:
            self._pick(self.table.currentRow())
            return True
        return super().eventFilter(watched, event)


def worst(judged: Judged) -> JudgedFigure | None:
    """The figure nearest its limit, or farthest outside, by the width of its band."""
    told = [row for row in judged.rows if row.margin is not None and row.inside is not None and row.name in DECIDING]
    return min(told, key=_share, default=None)


def _share(row: JudgedFigure) -> float:
    share = margin_share(row)
    return (row.margin or 0.0) if share is None else share


def _worth(one: Measured) -> tuple[int, float]:
    """For the order: what is farthest outside first, what was not judged last."""
    row = None if one.judged is None else worst(one.judged)
    if row is None:  # one that failed and was then measured without being judged stays in front
        return (0, -math.inf) if one.failed else (1, 0.0)
    return 0, _share(row)


def _cut(one: Measured) -> str:
    """How its run ended, where it was cut short."""
    if one.captured is None or one.captured.run.result.outcome is Outcome.RUNS:
        return texts.NO_VALUE
    return window_texts.OUTCOME_SAY[one.captured.run.result.outcome]


def _cells(one: Measured) -> tuple[str, ...]:
    run = None if one.captured is None else one.captured.run
    passed = one.unit.passed if one.unit is not None else None if one.judged is None else one.judged.passed
    verdict = {True: texts.UNIT_PASS, False: texts.UNIT_FAIL, None: texts.UNIT_OPEN}[passed]
    if one.unit is not None and one.unit.failed_before:
        verdict = texts.UNIT_BEFORE.format(verdict=verdict)
    row = None if one.judged is None else worst(one.judged)
    return (
        str(one.unit.number) if one.unit is not None else str(run.id) if run is not None else texts.NO_VALUE,
        one.unit.serial if one.unit is not None else one.name,
        texts.UNIT_NEW if one.captured is None else verdict,
        _cut(one) if row is None else retelling.told(row.label),
        texts.NO_VALUE if row is None else margin_words(row),
        texts.NO_VALUE if one.captured is None else str(len(one.captured.curves)),
        texts.NO_VALUE if run is None else f"{day_text(run.started_utc)} {clock_text(run.started_utc)}",
    )
