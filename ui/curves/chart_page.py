"""The curves themselves: what they say in a sentence and why, the chart, and what can be laid over it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from ui import curve_texts as texts
from ui import theme
from ui.charts.overlay_plot import OverlayPlot
from ui.density import Density
from ui.pieces import FewLines, button, card, grey, label, scrolled
from ui.stages.question import QuestionCard
from ui.theme import Tokens
from ui.wrapping import WrapRow


class ChartPage(QWidget):
    """`before_wanted` when before/after is switched; `over_wanted` to lay a capture over or take it off;
    `export_wanted`."""

    before_wanted = Signal(bool)
    over_wanted = Signal()
    export_wanted = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.say_label.setObjectName("curves_say")
        self.why_label = FewLines(2, "second")
        self.why_label.setObjectName("curves_why")
        self.question = QuestionCard(tokens)
        self.plot = OverlayPlot(tokens)
        self.plot.setObjectName("curves_plot")
        chart = card()
        inside = QVBoxLayout(chart)
        inside.setContentsMargins(6, 6, 4, 4)
        inside.addWidget(self.plot)
        self.read_out = FewLines(2)
        self.read_out.setObjectName("curves_read_out")
        self.read_out.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        work = QWidget()
        middle = QVBoxLayout(work)
        middle.setContentsMargins(0, 0, 0, 0)
        middle.setSpacing(6)
        middle.addWidget(self.question)
        middle.addWidget(chart, 1)
        middle.addWidget(self.read_out)
        middle.addLayout(self._press_row())
        column.addWidget(scrolled(work), 1)
        self.plot.cursor_read.connect(self._show_read_out)

    def fit(self, density: Density) -> None:
        self.plot.setMinimumSize(240, density.chart_px)

    def _press_row(self) -> WrapRow:
        self.before = self._pill("curves_before", texts.BEFORE_AFTER, texts.BEFORE_AFTER_NAME, checkable=True)
        self.cursors = self._pill("curves_cursors", texts.CURSORS, texts.CURSORS_NAME, checkable=True)
        self.volts = self._pill("curves_volts", texts.VOLTS, texts.VOLTS_NAME, checkable=True)
        self.at_motor = self._pill("curves_at_motor", texts.AT_MOTOR, texts.AT_MOTOR_NAME, checkable=True)
        self.over = self._pill("curves_over", texts.LAY_OVER, texts.LAY_OVER_NAME)
        self.copying = self._pill("curves_copy", texts.COPY, texts.COPY_NAME)
        self.export = self._pill("curves_export", texts.EXPORT, texts.EXPORT_NAME)
        self.before.toggled.connect(self.before_wanted)
        self.cursors.clicked.connect(self.plot.show_cursors)
        self.volts.toggled.connect(lambda _: self._show_volts())
        self.at_motor.toggled.connect(lambda _: self._show_volts())
        self.over.clicked.connect(self.over_wanted)
        self.copying.clicked.connect(self.plot.copy)
        self.export.clicked.connect(self.export_wanted)
        row = WrapRow(spacing=6)
        for one in (self.before, self.cursors, self.volts, self.at_motor, self.over, self.copying, self.export):
            row.add(one)
        self.lead_ohm = 0.0
        return row

    def _pill(self, name: str, words: str, accessible: str, *, checkable: bool = False) -> QPushButton:
        made = button(words, name, "pill", accessible=accessible)
        made.setToolTip(accessible)
        made.setFont(theme.font(theme.SECOND_PX + 1))
        made.setCheckable(checkable)
        made.setMinimumWidth(theme.TOUCH_PX + 8)  # narrower than its ends are round it would be drawn square
        return made

    def _show_volts(self) -> None:
        at_motor = self.at_motor.isChecked()
        self.plot.show_volts(at_motor or self.volts.isChecked(), lead_ohm=self.lead_ohm if at_motor else 0.0)

    def _show_read_out(self, words: str) -> None:
        self._read = words
        self.cursors.setChecked(self.plot.cursors is not None)
        self._show_line()

    def tell(self, words: str) -> None:
        """Of what is laid over the starts; cursors come first."""
        self._told = words
        self._show_line()

    def _show_line(self) -> None:
        words = self._read or self._told
        self.read_out.setVisible(bool(words))
        self.read_out.say(words)

    _read = _told = ""

    def say(self, what: str, why: str) -> None:
        self.say_label.setText(what)
        self.why_label.say(why)

    def show_leads(self, lead_ohm: float) -> None:
        """Ω that "V at the motor" takes out; 0 where the leads were not measured."""
        self.lead_ohm = lead_ohm
        grey(self.at_motor, "" if lead_ohm > 0 else texts.NO_LEADS)
        if self.at_motor.isChecked():
            self._show_volts()

    def set_tokens(self, tokens: Tokens) -> None:
        self.plot.set_tokens(tokens)
        self.question.set_tokens(tokens)
