"""Small calculations about a board, each shown from its description; the result can be put into a finding."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QLineEdit, QVBoxLayout, QWidget

from benchlog.board.calculators import CALCULATORS, Calculation, calculate, span
from benchlog.board.notation import read, write
from benchlog.errors import Refused
from benchlog.ledger.drafts import Fields
from ui import retelling, texts, theme
from ui.pieces import Chooser, button, grey, label
from ui.record.fields import field_grid, line_edit, put


class CalculatorBox(QFrame):
    """`taken` carries the result as a line for a finding. `changed` as a person types."""

    taken = Signal(str)
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("calculator")
        self.setProperty("look", "quiet")
        self.result: Calculation | None = None
        self.which = Chooser("calculator_which", texts.CALCULATOR_WHICH)
        self.which.setFont(theme.font(theme.SECOND_PX))
        self.which.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.which.setMinimumContentsLength(8)
        for one in CALCULATORS.values():
            self.which.addItem(retelling.told(one.words), one.name)
        self.inputs: dict[str, QLineEdit] = {}
        self.words = label("", wrap=True)
        self.words.setObjectName("calculator_words")
        self.about = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.cautions = label("", "look", px=theme.SECOND_PX, wrap=True)
        self.cautions.setObjectName("calculator_cautions")
        self.take = button(texts.CALCULATOR_TAKE, "calculator_take")
        self.take.clicked.connect(self._take)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(12, 10, 12, 12)
        self._column.setSpacing(6)
        self._fields = QWidget()
        for part in (self.which, self._fields, self.words, self.about, self.cautions, self.take):
            self._column.addWidget(part)
        self.which.currentIndexChanged.connect(self._lay_out)
        self.which.activated.connect(lambda _: self.changed.emit())
        self._lay_out()
        self.hide()

    def _lay_out(self) -> None:
        one = CALCULATORS[self.which.currentData()]
        fresh, grid = QWidget(), field_grid()
        fresh.setLayout(grid)
        grid.setContentsMargins(0, 0, 0, 0)
        self.inputs = {}
        for index, asked in enumerate(one.inputs):
            hint = asked.unit if asked.default is None else write(asked.default, asked.unit)
            name = texts.CALCULATOR_NAMES.get(asked.name) or retelling.told(asked.name)
            words = retelling.told(asked.words)
            said = texts.QUANTITY_NAME.format(name=f"{name}, {words}", unit=asked.unit)
            field = line_edit(f"calculator_{asked.name}", said, hint)
            field.setToolTip(f"{words}; {retelling.told(span(asked))}")
            field.textChanged.connect(self._work)
            field.textEdited.connect(lambda _: self.changed.emit())
            put(grid, index // 2, index % 2, texts.CALCULATOR_INPUT.format(name=name, unit=asked.unit), field)
            self.inputs[asked.name] = field
        self._column.replaceWidget(self._fields, fresh)
        self._fields.hide()
        self._fields.deleteLater()
        self._fields = fresh
        self.about.setText(retelling.told(one.formula))
        self.about.setToolTip(retelling.told(one.source))
        self.cautions.setText("\n".join(map(retelling.told, one.cautions)))
        self.cautions.setVisible(bool(one.cautions))
        self._work()

    def _work(self) -> None:
        """The result, or what is wrong or still missing."""
        name, self.result = self.which.currentData(), None
        units = {one.name: one.unit for one in CALCULATORS[name].inputs}
        try:
            given = {key: read(field.text(), units[key]) for key, field in self.inputs.items() if field.text().strip()}
            self.result = calculate(name, given)
            told = [one.text for one in self.result.results] + list(self.result.remarks)
            self.words.setText("\n".join(map(retelling.told, told)))
        except (Refused, ValueError) as refusal:
            self.words.setText(retelling.told(str(refusal)))
        self.words.setToolTip("")
        grey(self.take, "" if self.result is not None else texts.NOTHING_CALCULATED)

    def _take(self) -> None:
        if self.result is not None:
            self.taken.emit(self.result.text)

    def form(self) -> Fields:
        fields: Fields = {
            name: field.text() for field in self.inputs.values() if field.text() for name in [field.objectName()]
        }
        return fields | {"calculator_which": self.which.currentData()} if fields else {}

    def fill(self, form: Fields) -> None:
        index = self.which.findData(form.get("calculator_which"))
        if index >= 0:
            self.which.setCurrentIndex(index)
        for field in self.inputs.values():
            field.setText(str(form.get(field.objectName(), "")))
        if index >= 0:
            self.show()

    def blank(self) -> None:
        for field in self.inputs.values():
            field.clear()
        self.hide()
