"""Intake: what the thing is, in the words of its label and its owner, and what the bench may do to it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from benchlog.motor.insulation import CLASS_C, UNKNOWN_CLASS
from benchlog.quantities import show
from benchlog.records import Item, Job, Motor
from benchlog.recovery.ceilings import PROGRAM_VOLTS
from ui import texts, theme
from ui.pieces import Chooser, button, card, label
from ui.quantity_edit import QuantityEdit
from ui.run_request import BenchSetting
from ui.stages.unlock import UnlockRow


class IntakeStage(QWidget):
    """`opened` when the form is complete and pressed. A job once taken in keeps what its label says."""

    opened = Signal()

    def __init__(self, resource: str) -> None:
        super().__init__()
        self._follow_rated = True
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label(texts.INTAKE_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.why_label = label(texts.INTAKE_WHY, "second", wrap=True)
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        self._make_fields(resource)
        column.addWidget(self._item_card())
        column.addWidget(self._bench_card())
        column.addStretch(1)
        self.problem = label("", "alarm", bold=True)
        self.problem.setObjectName("intake_problem")
        self.open_button = button(texts.OPEN_JOB, "intake_open", "main")
        self.open_button.setMinimumWidth(160)
        self.open_button.clicked.connect(self._press)
        row = QHBoxLayout()
        row.addWidget(self.problem, 1)
        row.addWidget(self.open_button)
        column.addLayout(row)

    def _make_fields(self, resource: str) -> None:
        self.kind = Chooser("intake_kind", texts.FIELD_KIND)
        self.kind.setEditable(True)
        self.kind.addItems(texts.KINDS)
        self.kind.setCurrentIndex(-1)
        self.make, self.model, self.serial = QLineEdit(), QLineEdit(), QLineEdit()
        self.complaint = QPlainTextEdit()
        self.complaint.setTabChangesFocus(True)
        self.complaint.setFixedHeight(46)
        self.rated = QuantityEdit("V", texts.FIELD_RATED)
        self.max_volts = QuantityEdit("V", texts.FIELD_MAX_VOLTS)
        self.max_amps = QuantityEdit("A", texts.FIELD_MAX_AMPS, optional=True)
        self.wet = Chooser("intake_wet", texts.FIELD_WET)
        self.coupled = Chooser("intake_coupled", texts.FIELD_COUPLED)
        self.thermal = Chooser("intake_class", texts.FIELD_CLASS)
        self.thermal.addItems(tuple(CLASS_C))
        self.thermal.setCurrentText(UNKNOWN_CLASS)
        self.thermal.setToolTip(texts.CLASS_HINT)
        self.supply = QLineEdit(resource)
        self.wet.addItems((texts.DRY, texts.WET))
        self.coupled.addItems((texts.UNCOUPLED, texts.COUPLED))
        self.supply.setPlaceholderText(texts.SUPPLY_EXAMPLE)
        self.max_volts.setToolTip(texts.MAX_VOLTS_HINT)
        self.max_amps.setToolTip(texts.MAX_AMPS_HINT)
        named: tuple[tuple[QWidget, str, str], ...] = (
            (self.make, "intake_make", texts.FIELD_MAKE),
            (self.model, "intake_model", texts.FIELD_MODEL),
            (self.serial, "intake_serial", texts.FIELD_SERIAL),
            (self.complaint, "intake_complaint", texts.FIELD_COMPLAINT),
            (self.rated, "intake_rated", ""),
            (self.max_volts, "intake_max_volts", ""),
            (self.max_amps, "intake_max_amps", ""),
            (self.supply, "intake_supply", texts.FIELD_SUPPLY),
        )
        for field, name, accessible in named:
            field.setObjectName(name)
            field.setFont(theme.font())
            if accessible:
                field.setAccessibleName(accessible)
            if field is not self.complaint:
                field.setMinimumHeight(theme.TOUCH_PX - 4)
        self.rated.value_changed.connect(self._follow)
        self.max_volts.textEdited.connect(self._own_ceiling)

    def _item_card(self) -> QWidget:
        made, grid = _field_card(texts.CARD_ITEM)
        _put(grid, 0, 0, texts.FIELD_KIND, self.kind, 2)
        _put(grid, 0, 2, texts.FIELD_RATED, self.rated)
        _put(grid, 1, 0, texts.FIELD_MAKE, self.make)
        _put(grid, 1, 1, texts.FIELD_MODEL, self.model)
        _put(grid, 1, 2, texts.FIELD_SERIAL, self.serial)
        _put(grid, 2, 0, texts.FIELD_COMPLAINT, self.complaint, 3)
        return made

    def _bench_card(self) -> QWidget:
        made, grid = _field_card(texts.CARD_BENCH)
        _put(grid, 0, 0, texts.FIELD_MAX_VOLTS, self.max_volts)
        _put(grid, 0, 1, texts.FIELD_MAX_AMPS, self.max_amps)
        load = QWidget()
        row = QHBoxLayout(load)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.wet, 1)
        row.addWidget(self.coupled, 2)
        _put(grid, 0, 2, texts.FIELD_LOAD, load)
        _put(grid, 1, 0, texts.FIELD_SUPPLY, self.supply, 2)
        _put(grid, 1, 2, texts.FIELD_CLASS, self.thermal)
        self.unlock = UnlockRow()
        grid.addWidget(self.unlock, 5, 0, 1, 3)
        return made

    def _follow(self) -> None:
        if self._follow_rated:
            self.max_volts.setText(self.rated.text())

    def _own_ceiling(self, typed: str) -> None:
        self._follow_rated = not typed.strip()

    def _press(self) -> None:
        self.problem.setText(self.first_problem())
        if not self.problem.text():
            self.opened.emit()

    def first_problem(self) -> str:
        """What stands in the way of a run with these figures; "" where nothing does."""
        if not self.kind.currentText().strip():
            return texts.NEEDS_KIND
        if self.rated.wrong():
            return texts.NEEDS_RATED
        return self.setting_problem()

    def setting_problem(self) -> str:
        """What is wrong with the ceilings; "" where nothing is."""
        if self.max_volts.wrong():
            return texts.NEEDS_MAX_VOLTS
        if self.max_amps.wrong():
            return texts.WRONG_AMPS
        for name, field in ((texts.FIELD_RATED, self.rated), (texts.FIELD_MAX_VOLTS, self.max_volts)):
            value = field.value() or 0.0
            if value > PROGRAM_VOLTS:
                return texts.ABOVE_PROGRAM.format(name=name, value=show(value, "V"), limit=show(PROGRAM_VOLTS, "V"))
        return ""

    def item(self) -> Item:
        return Item(
            kind=self.kind.currentText().strip(),
            make=self.make.text().strip(),
            model=self.model.text().strip(),
            serial=self.serial.text().strip(),
        )

    def motor(self) -> Motor:
        return Motor(rated_volts=self.rated.value() or 0.0)

    def complaint_text(self) -> str:
        return self.complaint.toPlainText().strip()

    def load_state(self) -> str:
        return texts.LOAD_STATE.format(wet=self.wet.currentText(), coupled=self.coupled.currentText())

    def setting(self) -> BenchSetting:
        return BenchSetting(
            max_volts=self.max_volts.value() or 0.0,
            max_amps=self.max_amps.value(),
            resource=self.supply.text().strip(),
            thermal_class=self.thermal.currentText(),
        )

    def show_job(self, job: Job, setting: BenchSetting) -> None:
        """A job that is taken in: its label's words are fixed, its bench setting is not."""
        self.say_label.setText(texts.INTAKE_OPEN_SAY.format(number=job.number))
        self.why_label.setText(texts.INTAKE_OPEN_WHY)
        self.kind.setCurrentText(job.item.kind)
        for field, text in (
            (self.make, job.item.make),
            (self.model, job.item.model),
            (self.serial, job.item.serial),
            (self.supply, setting.resource),
        ):
            field.setText(text)
        self.complaint.setPlainText(job.complaint)
        self.rated.put(job.motor.rated_volts)
        self._follow_rated = False
        self.max_volts.put(setting.max_volts)
        self.max_amps.put(setting.max_amps)
        self.thermal.setCurrentText(setting.thermal_class)
        wet, _, coupled = job.load_state.partition(", ")
        self.wet.setCurrentText(wet)
        self.coupled.setCurrentText(coupled)
        self.problem.setText("")
        self._fix(True)

    def suggest(self, *, kind: str, rated_volts: float | None, complaint: str) -> None:
        """Filled in for whoever takes it in; everything can still be changed."""
        self.kind.setCurrentText(kind)
        self.rated.put(rated_volts)
        self.complaint.setPlainText(complaint)

    def blank(self, resource: str) -> None:
        """For the next job; the supply stays."""
        self._follow_rated = True
        self.say_label.setText(texts.INTAKE_SAY)
        self.why_label.setText(texts.INTAKE_WHY)
        self.kind.setCurrentIndex(-1)
        self.kind.clearEditText()
        self.supply.setText(resource)
        for field in (self.make, self.model, self.serial, self.rated, self.max_volts, self.max_amps):
            field.clear()
        self.complaint.clear()
        self.wet.setCurrentIndex(0)
        self.coupled.setCurrentIndex(0)
        self.thermal.setCurrentText(UNKNOWN_CLASS)
        self.problem.setText("")
        self._fix(False)

    def _fix(self, fixed: bool) -> None:
        self.kind.setEnabled(not fixed)
        self.wet.setEnabled(not fixed)
        self.coupled.setEnabled(not fixed)
        for field in (self.make, self.model, self.serial, self.rated):
            field.setReadOnly(fixed)
        self.complaint.setReadOnly(fixed)
        self.open_button.setVisible(not fixed)

    def lock_setting(self, locked: bool) -> None:
        """While a run is on its ceilings are what they were when it began."""
        for field in (self.max_volts, self.max_amps, self.supply, self.thermal):
            field.setEnabled(not locked)
        self.unlock.lock(locked)


def _field_card(title: str) -> tuple[QWidget, QGridLayout]:
    made = card()
    grid = QGridLayout(made)
    grid.setContentsMargins(20, 12, 20, 12)
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(4)
    for index in range(3):
        grid.setColumnStretch(index, 1)
    grid.addWidget(label(title, bold=True), 0, 0, 1, 3)
    return made, grid


def _put(grid: QGridLayout, row: int, column: int, name: str, field: QWidget, span: int = 1) -> None:
    text = label(name, "second", px=theme.SECOND_PX)
    text.setBuddy(field)
    grid.addWidget(text, 1 + 2 * row, column, 1, span)
    grid.addWidget(field, 2 + 2 * row, column, 1, span)
