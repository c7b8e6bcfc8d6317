"""What a supply told of itself, line by line, and the fields for what it did not tell."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLayoutItem, QVBoxLayout, QWidget

from benchlog.quantities import show
from ui import retelling, texts, theme
from ui.asking_supplies import RANGE_QUESTION, Told
from ui.moments import day_text
from ui.pieces import button, label
from ui.quantity_edit import QuantityEdit
from ui.wrapping import WrapRow

NAME_PX = 130


class SupplyReport(QWidget):
    """`again` carries volts and amps."""

    again = Signal(float, float)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("supply_report")
        self.grid = QGridLayout()
        self.grid.setHorizontalSpacing(16)
        self.grid.setVerticalSpacing(4)
        self.grid.setColumnMinimumWidth(0, NAME_PX)
        self.grid.setColumnStretch(1, 1)
        self.volts = QuantityEdit("V", texts.FIELD_MOST_VOLTS)
        self.amps = QuantityEdit("A", texts.FIELD_MOST_AMPS)
        self.problem = label("", "ask", px=theme.SECOND_PX)
        self.button = button(texts.ASK_AGAIN, "supply_ask_again", accessible=texts.ASK_AGAIN_NAME)
        self.button.clicked.connect(self._press)
        self.fields = QWidget()
        row = WrapRow(self.fields)
        row.setContentsMargins(0, 4, 0, 0)
        for field, name, title in (
            (self.volts, "supply_most_volts", texts.FIELD_MOST_VOLTS),
            (self.amps, "supply_most_amps", texts.FIELD_MOST_AMPS),
        ):
            field.setObjectName(name)
            field.setFont(theme.font())
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            field.setMaximumWidth(120)
            text = label(title, "second", px=theme.SECOND_PX)
            text.setBuddy(field)
            row.add(text)
            row.add(field)
        row.add(self.button)
        row.add(self.problem, stretch=1, least=160)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(self.grid)
        column.addWidget(self.fields)

    def show_told(self, told: Told | None) -> None:
        while self.grid.count():
            _drop(self.grid.takeAt(0))
        lines = [] if told is None else lines_of(told)
        for row, (name, text) in enumerate(lines):
            head = label(name, "second", px=theme.SECOND_PX, wrap=True)
            self.grid.addWidget(head, row, 0, Qt.AlignmentFlag.AlignTop)
            said = label(text, px=theme.SECOND_PX, wrap=True)
            said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)  # a command is copied
            self.grid.addWidget(said, row, 1)
        self.setAccessibleName(texts.REPORT_NAME.format(told="; ".join(f"{name}: {text}" for name, text in lines)))
        self.fields.setVisible(told is not None and told.wants_range)
        self.problem.setText("")

    def text(self) -> str:
        return self.accessibleName()

    def _press(self) -> None:
        volts, amps = self.volts.value(), self.amps.value()
        if volts is None or amps is None:
            self.problem.setText(texts.NEEDS_RANGE)
            return
        self.problem.setText("")
        self.again.emit(volts, amps)


def lines_of(told: Told) -> list[tuple[str, str]]:
    """Names and texts: what it is, how it is spoken to, what it is without and what is done about that, questions."""
    lines = [(texts.REPORT_IDENTITY, told.identity or texts.NOTHING)]
    lines.append((texts.REPORT_SPEAKS, retelling.told(told.speaks)))
    if told.usable:
        lines.append((texts.REPORT_GIVES, _range(told)))
        rate = texts.NOTHING if told.readings_per_s is None else f"{told.readings_per_s:.0f}"
        quick = texts.REPORT_LATENCY.format(latency=_s(told.latency_s), reading=_s(told.reading_s), rate=rate)
        lines += [
            (texts.REPORT_QUICK, quick),
            (texts.REPORT_KICK, _least(told)),
            (texts.REPORT_TERMINAL, texts.REPORT_COMMANDS.format(address=told.resource) if told.resource else ""),
        ]
    for gap, about in told.missing.items():
        name = retelling.told(gap)
        lines.append((name[:1].upper() + name[1:], texts.REPORT_GAPS.get(gap) or retelling.told(about)))
    for question in told.questions:
        by_file = "" if question.startswith(RANGE_QUESTION) else f" {texts.REPORT_BY_FILE}"
        lines.append((texts.REPORT_QUESTION, retelling.told(question) + by_file))
    return [(name, text) for name, text in lines if text] + [("", retelling.told(remark)) for remark in told.remarks]


def _least(told: Told) -> str:
    if told.settling is None:
        return texts.REPORT_LEAST.format(least=_s(told.least_kick_s))
    return texts.REPORT_TRIED.format(least=_s(told.least_kick_s), day=day_text(told.settling.utc))


def _range(told: Told) -> str:
    if told.volts_max is None or told.amps_max is None:
        return texts.REPORT_NO_RANGE
    words = texts.REPORT_RANGE_OF if told.outputs > 1 else texts.REPORT_RANGE
    volts, amps = show(told.volts_max, "V"), show(told.amps_max, "A")
    return words.format(volts=volts, amps=amps, output=told.output, outputs=told.outputs)


def _s(value: float | None) -> str:
    if value is None:
        return texts.NOTHING
    return show(1e3 * value, "ms") if value < 1.0 else show(value, "s")


def _drop(item: QLayoutItem | None) -> None:
    widget = None if item is None else item.widget()
    if widget is not None:
        widget.hide()
        widget.deleteLater()
