"""What is found while an item is taken apart: a form, the readings of a marking, a small calculator, the list."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from benchlog.board.markings import Reading, readings
from benchlog.errors import Refused
from benchlog.ledger.drafts import Fields
from benchlog.records import Finding
from ui import retelling, texts, theme
from ui.pieces import Tick, button, label
from ui.record.calculator_box import CalculatorBox
from ui.record.fields import bring_into_sight, field_grid, line_edit, padded_card, put
from ui.record.row_stack import RowStack
from ui.record.timeline import finding_text

MOST_READINGS = 4


class FindingsCard(QWidget):
    """`kept` when a finding is complete and pressed: see said(). `changed` as a person types."""

    kept = Signal()
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.corrects: int | None = None
        self._found: list[Reading] = []
        self._make_fields()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self._form_card())
        self.rows = RowStack(8)
        column.addWidget(self.rows)
        column.addStretch(1)
        self.blank()

    def _make_fields(self) -> None:
        self.part = line_edit("finding_part", texts.FIELD_PART, texts.PART_HINT)
        self.place = line_edit("finding_place", texts.FIELD_PLACE, texts.PLACE_HINT)
        self.marking = line_edit("finding_marking", texts.FIELD_MARKING, texts.MARKING_HINT)
        self.purpose = line_edit("finding_purpose", texts.FIELD_PURPOSE, texts.PURPOSE_HINT)
        self.value = line_edit("finding_value", texts.FIELD_VALUE, texts.VALUE_HINT)
        self.edits = (self.part, self.place, self.marking, self.purpose, self.value)
        self.capacitor = Tick(texts.FIELD_CAPACITOR, "finding_capacitor")
        for edit in self.edits:
            edit.textEdited.connect(lambda _: self.changed.emit())
        self.marking.textChanged.connect(self._decode)
        self.value.textChanged.connect(self.value.setToolTip)
        self.capacitor.toggled.connect(self._decode)
        self.capacitor.clicked.connect(lambda _: self.changed.emit())
        for edit in self.edits:
            edit.returnPressed.connect(self._press)

    def _form_card(self) -> QWidget:
        made, column = padded_card()
        self.title = label(texts.FINDING_NEW, bold=True, wrap=True)
        self.title.setObjectName("finding_title")
        grid = field_grid()
        put(grid, 0, 0, texts.FIELD_PART, self.part)
        put(grid, 0, 1, texts.FIELD_PLACE, self.place)
        put(grid, 1, 0, texts.FIELD_MARKING, self.marking)
        grid.addWidget(self.capacitor, 3, 1)
        self.unread = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.unread.setObjectName("marking_unread")
        self.readings: list[QPushButton] = []
        reading_rows = QVBoxLayout()
        reading_rows.setSpacing(6)
        reading_rows.addWidget(self.unread)
        for index in range(MOST_READINGS):
            made_button = button("", f"reading_{index}", accessible=texts.READING_NAME.format(number=index + 1))
            made_button.setStyleSheet("text-align: left;")
            made_button.setFont(theme.font(theme.SECOND_PX))
            made_button.setMinimumHeight(theme.TOUCH_PX + 4)
            made_button.clicked.connect(lambda _=False, place=index: self._take_reading(place))
            self.readings.append(made_button)
            reading_rows.addWidget(made_button)
        below = field_grid()
        put(below, 0, 0, texts.FIELD_PURPOSE, self.purpose)
        put(below, 0, 1, texts.FIELD_VALUE, self.value)
        self.calculator = CalculatorBox()
        self.calculator.taken.connect(self._take_value)
        self.calculator.changed.connect(self.changed)
        self.calculate = button(texts.CALCULATE, "finding_calculate")
        self.calculate.setCheckable(True)
        self.calculate.toggled.connect(lambda on: self.calculator.setVisible(on))
        self.give_up = button(texts.FINDING_GIVE_UP, "finding_give_up")
        self.give_up.clicked.connect(self._give_up)
        self.keep = button(texts.FINDING_KEEP, "finding_keep", "main")
        self.keep.clicked.connect(self._press)
        self.problem = label("", "ask", bold=True, wrap=True)
        self.problem.setObjectName("finding_problem")
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.calculate)
        row.addStretch(1)
        row.addWidget(self.give_up)
        row.addWidget(self.keep)
        column.addWidget(self.title)
        column.addLayout(grid)
        column.addLayout(reading_rows)
        column.addLayout(below)
        column.addWidget(self.calculator)
        column.addWidget(self.problem)
        column.addLayout(row)
        return made

    def _decode(self) -> None:
        """What the marking can mean, the likeliest first."""
        found: Sequence[Reading] = ()
        told = ""
        if self.marking.text().strip():
            try:
                found = readings(self.marking.text(), capacitor=self.capacitor.isChecked())
            except Refused as refusal:
                told = retelling.told(str(refusal))
        self._found = list(found)[:MOST_READINGS]
        self.unread.setText(told)
        self.unread.setVisible(bool(told))
        for index, made in enumerate(self.readings):
            made.setVisible(index < len(self._found))
            if index < len(self._found):
                value, _, rest = self._found[index].text.partition(" (")
                about = retelling.told(f"{self._found[index].code}: {rest.rstrip(')')}")
                made.setText(f"{value}\n{about}")
                made.setAccessibleName(texts.READING_TAKE.format(value=value, about=about))

    def _take_reading(self, index: int) -> None:
        self._take_value(self._found[index].text.partition(" (")[0])

    def _take_value(self, text: str) -> None:
        self.value.setText(text)
        self.value.setCursorPosition(0)
        self.changed.emit()

    def _press(self) -> None:
        missing = not self.part.text().strip()
        self.say_problem(texts.NEEDS_PART if missing else "")
        if not missing:
            self.kept.emit()

    def say_problem(self, words: str) -> None:
        self.problem.setText(words)
        self.problem.setVisible(bool(words))
        if words:
            bring_into_sight(self.problem)

    def said(self) -> dict[str, str]:
        """What the form says, by the names of a finding's fields."""
        return {edit.objectName().partition("_")[2]: edit.text().strip() for edit in self.edits}

    def show_findings(self, findings: Sequence[Finding]) -> None:
        """Oldest first as they come, newest first on the page; without those in whose place another stands."""
        gone = {finding.corrects for finding in findings}
        standing = [finding for finding in findings if finding.id not in gone]
        if self.corrects is not None and self.corrects not in {finding.id for finding in standing}:
            self._correct(None)
        self.rows.show_rows([(finding, partial(self._row, finding)) for finding in reversed(standing)])

    def _row(self, finding: Finding) -> QWidget:
        made, column = padded_card("quiet")
        column.setContentsMargins(14, 6, 8, 6)
        row = QHBoxLayout()
        words = label(finding_text(finding), wrap=True)
        again = button(texts.FINDING_CORRECT, f"finding_correct_{finding.id}")
        again.setAccessibleName(texts.FINDING_CORRECT_NAME.format(part=finding.part))
        again.clicked.connect(lambda _=False, one=finding: self._correct(one))
        row.addWidget(words, 1)
        row.addWidget(again)
        column.addLayout(row)
        return made

    def _correct(self, finding: Finding | None) -> None:
        """Begins a correction of a finding, which fills the form; or none, which leaves what is typed."""
        self.corrects = None if finding is None else finding.id
        if finding is not None:
            for edit in self.edits:
                edit.setText(getattr(finding, edit.objectName().partition("_")[2]))
                edit.setCursorPosition(0)
            self.part.setFocus()
            bring_into_sight(self.title)
            self.changed.emit()
        self._show_correcting()

    def _show_correcting(self) -> None:
        correcting = self.corrects is not None
        self.title.setText(texts.FINDING_CORRECTING if correcting else texts.FINDING_NEW)
        self.keep.setText(texts.FINDING_KEEP_CORRECTION if correcting else texts.FINDING_KEEP)
        self.keep.setAccessibleName(self.keep.text())
        self.give_up.setVisible(correcting)

    def _give_up(self) -> None:
        self.blank()
        self.changed.emit()

    def form(self) -> Fields:
        fields: Fields = {edit.objectName(): edit.text() for edit in self.edits if edit.text()}
        fields |= self.calculator.form()
        if self.capacitor.isChecked():
            fields["finding_capacitor"] = True
        return fields if self.corrects is None else fields | {"finding_corrects": self.corrects}

    def fill(self, form: Fields) -> None:
        for edit in self.edits:
            edit.setText(str(form.get(edit.objectName(), "")))
        self.capacitor.setChecked(bool(form.get("finding_capacitor")))
        corrects = form.get("finding_corrects")
        self.corrects = corrects if isinstance(corrects, int) else None
        self.calculator.fill(form)
        self.calculate.setChecked(not self.calculator.isHidden())
        self._show_correcting()

    def blank(self) -> None:
        for edit in self.edits:
            edit.clear()
        self.capacitor.setChecked(False)
        self.corrects = None
        self.calculator.blank()
        self.calculate.setChecked(False)
        self.say_problem("")
        self._show_correcting()
        self._decode()
