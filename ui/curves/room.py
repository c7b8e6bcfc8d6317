"""Curves: how motors start, one over the other. What is done here is wired in `ui.curves.curving`."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QButtonGroup, QStackedWidget, QVBoxLayout, QWidget

from benchlog.records import Lot
from ui import curve_texts as texts
from ui.curves.capture_form import CaptureForm
from ui.curves.chart_page import ChartPage
from ui.curves.empty_page import EmptyPage
from ui.curves.lot_form import LotForm
from ui.curves.run_in_page import RunInPage
from ui.curves.side import CurvesSide
from ui.curves.test_form import TestForm
from ui.curves.units_page import UnitsPage
from ui.pieces import Chooser, button, scrolled
from ui.theme import Tokens
from ui.wrapping import WrapRow

CHART_PAGE, UNITS_PAGE, TESTS_PAGE, EMPTY_PAGE, LOT_PAGE, CAPTURE_PAGE, RUN_IN_PAGE = range(7)
_SWITCHED = (CHART_PAGE, UNITS_PAGE, TESTS_PAGE, RUN_IN_PAGE)
_GONE_TO = {
    Qt.FocusReason.MouseFocusReason: True,
    Qt.FocusReason.TabFocusReason: True,
    Qt.FocusReason.BacktabFocusReason: True,
    Qt.FocusReason.OtherFocusReason: False,
}
"""Whether the chart was gone to by hand, by why it got the focus; by any other reason it stays as it was."""
NOTHING, JOB = 0, -1
"""What may be chosen to be shown beside lots, which go by the number of their job."""


class CurvesRoom(QWidget):
    """`page_picked` by the row above, `page_shown` however it came; `shown_picked` a lot's number, JOB or NOTHING;
    `lot_wanted` a new one; `aside_changed` when there may be something to tell at the side, or nothing any more."""

    page_picked = Signal(int)
    page_shown = Signal(int)
    shown_picked = Signal(int)
    lot_wanted = Signal()
    aside_changed = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.chart, self.units, self.tests = ChartPage(tokens), UnitsPage(), TestForm()
        self.empty, self.lot_form, self.capture = EmptyPage(), LotForm(), CaptureForm()
        self.run_in = RunInPage(tokens)
        self.side = CurvesSide(tokens)
        self.pages = QStackedWidget()
        for page in (
            self.chart,
            self.units,
            scrolled(self.tests),
            scrolled(self.empty),
            scrolled(self.lot_form),
            scrolled(self.capture),
            self.run_in,
        ):
            self.pages.addWidget(page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._top_row())
        column.addWidget(self.pages, 1)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.chart.plot.installEventFilter(self)
        self.side.lot.limits_wanted.connect(self._to_limits)
        self.show_page(EMPTY_PAGE)

    def _to_limits(self) -> None:
        self.page_picked.emit(UNITS_PAGE)
        self.units.who.setFocus()

    def _top_row(self) -> WrapRow:
        self.shown = Chooser("curves_shown", texts.SHOWN_NAME)
        self.shown.activated.connect(lambda _: self.shown_picked.emit(int(self.shown.currentData())))
        self.switch = QButtonGroup(self)
        self.shown.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.shown.setMinimumContentsLength(12)
        row = WrapRow(spacing=6)
        row.add(self.shown, stretch=1, least=104)
        for number, words in zip(_SWITCHED, texts.PAGES, strict=True):
            one = button(words, f"curves_page_{number}", "choice")
            one.setMinimumHeight(one.minimumHeight() - 4)
            one.setCheckable(True)
            self.switch.addButton(one, number)
            row.add(one)
        self.switch.idClicked.connect(self.page_picked)
        self.new_lot = button(texts.NEW_LOT, "curves_new_lot")
        self.new_lot.setMinimumHeight(self.new_lot.minimumHeight() - 4)
        self.new_lot.clicked.connect(self.lot_wanted)
        row.add(self.new_lot)
        return row

    def show_page(self, page: int) -> None:
        focus, shown = QApplication.focusWidget(), self.pages.currentWidget()
        if page != self.page and focus is not None and shown is not None and shown.isAncestorOf(focus):
            self.setFocus()  # else the next in line takes it, and the space bar would press that
        self.pages.setCurrentIndex(page)
        self.side.found.setVisible(page != RUN_IN_PAGE)  # what was found of starts is not said of a run-in
        self.page_shown.emit(page)
        self.switch.setExclusive(False)
        for number in _SWITCHED:
            self.switch.button(number).setChecked(number == (CHART_PAGE if page == EMPTY_PAGE else page))
        self.switch.setExclusive(True)

    @property
    def page(self) -> int:
        return self.pages.currentIndex()

    @property
    def tells_aside(self) -> bool:
        """Whether the page has a verdict and a next start at its side."""
        return self.page not in (EMPTY_PAGE, RUN_IN_PAGE) and not self.side.verdict.isHidden()

    def tell_aside(self, told: bool) -> None:
        """Whether there is a verdict and figures to show at all."""
        self.side.verdict.setVisible(told)
        self.side.figures.setVisible(told)
        self.aside_changed.emit()

    def offer_shown(self, lots: Sequence[Lot], job: int | None, chosen: int) -> None:
        """What can be shown; `job`: the number of the one on the bench."""
        self.shown.clear()
        self.shown.addItem(texts.SHOWN_NOTHING, NOTHING)
        if job is not None:
            self.shown.addItem(texts.SHOWN_JOB.format(number=job), JOB)
        for lot in lots:
            words = texts.SHOWN_LOT.format(name=lot.name, kind=lot.job.item.kind, count=texts.units(lot.units))
            self.shown.addItem(words, lot.job.number)
        self.shown.setCurrentIndex(max(0, self.shown.findData(chosen)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What nobody else took: the space bar, or a scan."""
        self.side.next.take_key(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The chart's own keys are characters too, and a scan may begin with one: they are the chart's only where it
        was gone to by a click or with Tab."""
        if event.type() is QEvent.Type.FocusIn and isinstance(event, QFocusEvent):
            self.chart.plot.characters = _GONE_TO.get(event.reason(), self.chart.plot.characters)
        if self.chart.plot.characters and event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            taken = ("+", "-") if self.chart.plot.cursors is None else ("+", "-", "x", "X")
            if event.text() in taken:
                self.side.next.note_key(event.text())
        return super().eventFilter(watched, event)

    def set_tokens(self, tokens: Tokens) -> None:
        self.chart.set_tokens(tokens)
        self.run_in.set_tokens(tokens)
        self.side.set_tokens(tokens)
