"""Intake: what the thing is, in the words of its label and its owner, and what the bench may do to it."""

import msgspec
from PySide6.QtCore import QEvent, QObject, QTimer, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from benchlog.ledger.drafts import Fields
from benchlog.motor.insulation import CLASS_C, UNKNOWN_CLASS
from benchlog.quantities import show
from benchlog.records import Item, Job, JobState, Motor, TakenIn
from benchlog.recovery.ceilings import PROGRAM_VOLTS
from ui import retelling, texts, theme
from ui.pieces import Chooser, button, card, grey, label, named, scrolled
from ui.quantity_edit import QuantityEdit
from ui.run_request import BenchSetting
from ui.stages.comeback import ComebackRow
from ui.stages.owner_card import OwnerFields
from ui.stages.supply_row import SupplyRow
from ui.stages.unlock import UnlockRow
from ui.wrapping import FieldGrid, WrapRow

OUTPUT_FIELD = "intake_output"
SPACES_IN = "USB"
"""The only kind of address that may have a space: in an instrument's serial number."""


class IntakeStage(QWidget):
    """`opened` when the form is complete and pressed. Afterwards `edited` carries what was changed, `undone` takes it
    back; `changed` is emitted as a person types, `earlier_wanted` asks for a job of the same thing."""

    opened = Signal()
    edited = Signal(dict)
    undone = Signal()
    changed = Signal()
    earlier_wanted = Signal(int)

    def __init__(self, resource: str) -> None:
        super().__init__()
        self._follow_rated = True
        self._job: Job | None = None
        self.owner = OwnerFields()
        self.comeback = ComebackRow()
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label(texts.INTAKE_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.why_label = label(texts.INTAKE_WHY, "second", wrap=True)
        column.addWidget(self.say_label)
        self._make_fields(resource)
        cards = QWidget()
        lines = QVBoxLayout(cards)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(8)
        lines.addWidget(self.why_label)
        for made in (self._item_card(), self._bench_card(), self._owner_card()):
            lines.addWidget(made)
        lines.addStretch(1)
        self.cards = scrolled(cards)
        column.addWidget(self.cards, 1)
        self.problem = label("", "ask", bold=True, wrap=True)
        self.problem.setObjectName("intake_problem")
        self.changed.connect(self._mend)
        self.supply.textChanged.connect(self._mend)  # also where it is put there
        self.open_button = button(texts.OPEN_JOB, "intake_open", "main")
        self.open_button.setMinimumWidth(160)
        self.open_button.clicked.connect(self._press)
        row = QHBoxLayout()
        self.undo_button = button(texts.UNDO_CHANGE, "intake_undo")
        self.undo_button.setShortcut(QKeySequence.StandardKey.Undo)
        self.undo_button.clicked.connect(self.undone)
        self.undo_button.hide()
        row.addWidget(self.problem, 1)
        row.addWidget(self.undo_button)
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
        self.complaint.setFixedHeight(40)
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
        self.wet.addItems([retelling.told(word) for word in (texts.DRY, texts.WET)])
        self.coupled.addItems([retelling.told(word) for word in (texts.UNCOUPLED, texts.COUPLED)])
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
        for edit in (self.make, self.model, self.serial, self.rated, self.max_volts, self.max_amps, self.supply):
            edit.textEdited.connect(lambda _: self.changed.emit())
        for edit in (self.make, self.model, self.serial):
            edit.editingFinished.connect(self._left)
        for edit in (self.rated, self.max_volts, self.max_amps, self.supply):
            edit.editingFinished.connect(self._judge_typed)
        self.complaint.textChanged.connect(self._complaint_typed)
        self.complaint.installEventFilter(self)
        kind = self.kind.lineEdit()
        assert kind is not None
        kind.textEdited.connect(lambda _: self.changed.emit())
        kind.editingFinished.connect(self._left)
        for chooser in (self.kind, self.wet, self.coupled, self.thermal):
            chooser.activated.connect(lambda _: self.changed.emit())
        for chooser in (self.kind, self.wet, self.coupled):
            chooser.activated.connect(lambda _: self._left())
        self.owner.changed.connect(self.changed)
        self.owner.left.connect(self._left)
        self.rated.value_changed.connect(self._follow)
        self.max_volts.textEdited.connect(self._own_ceiling)

    def _item_card(self) -> QWidget:
        made, grid = _field_card(texts.CARD_ITEM)
        _put(grid, 0, 0, texts.FIELD_KIND, self.kind, 2)
        _put(grid, 0, 2, texts.FIELD_RATED, self.rated)
        _put(grid, 0, 3, texts.FIELD_SERIAL, self.serial)
        _put(grid, 1, 0, texts.FIELD_MAKE, self.make)
        _put(grid, 1, 1, texts.FIELD_MODEL, self.model)
        _put(grid, 1, 2, texts.FIELD_PUMPED, self.owner.pumped)
        _put(grid, 1, 3, texts.FIELD_OPENED_BEFORE, self.owner.opened_before)
        _put(grid, 2, 0, texts.FIELD_COMPLAINT, self.complaint, 4)
        grid.put(3, 0, self.comeback, 4)
        self.comeback.wanted.connect(self.earlier_wanted)
        return made

    def _owner_card(self) -> QWidget:
        made, grid = _field_card(texts.CARD_OWNER)
        _put(grid, 0, 0, texts.FIELD_OWNER, self.owner.owner)
        _put(grid, 0, 1, texts.FIELD_CONTACT, self.owner.contact)
        _put(grid, 0, 2, texts.FIELD_LIMIT, self.owner.limit)
        _put(grid, 0, 3, texts.FIELD_WHO, self.owner.who)
        grid.put(1, 0, self.owner.consent, 4)
        return made

    def _bench_card(self) -> QWidget:
        made, grid = _field_card(texts.CARD_BENCH)
        _put(grid, 0, 0, texts.FIELD_MAX_VOLTS, self.max_volts)
        _put(grid, 0, 1, texts.FIELD_MAX_AMPS, self.max_amps)
        _put(grid, 0, 2, texts.FIELD_WET, self.wet)
        _put(grid, 0, 3, texts.FIELD_COUPLED, self.coupled)
        _put(grid, 1, 0, texts.FIELD_SUPPLY, self._address(), 3).setBuddy(self.supply)
        _put(grid, 1, 3, texts.FIELD_CLASS, self.thermal)
        grid.put(2, 0, self.supply_row, 4)
        self.unlock = UnlockRow()
        grid.put(3, 0, self.unlock, 4)
        return made

    def _address(self) -> QWidget:
        self.supply_row = SupplyRow()
        self.look_button = button(texts.LOOK_FOR, "supply_look", accessible=texts.LOOK_FOR_NAME)
        self.ask_button = button(texts.ASK_IT, "supply_ask", accessible=texts.ASK_IT_NAME)
        self.ask_button.setToolTip(texts.ASK_HINT)
        made = QWidget()
        row = WrapRow(made)
        row.add(self.supply, stretch=1, least=240)
        for one in (self.look_button, self.ask_button):
            one.setMinimumHeight(theme.TOUCH_PX - 4)
            row.add(one)
        return made

    def pick_supply(self, address: str) -> None:
        """From what was found; kept in the draft like one that is typed."""
        self.supply.setText(address)
        self.supply.setCursorPosition(0)
        self.changed.emit()

    def reveal(self, part: QWidget) -> None:
        """Scrolled to, once it is laid out."""
        QTimer.singleShot(0, part, lambda: self.cards.ensureWidgetVisible(part, 0, 8))

    def keep_the_keys(self) -> None:
        """A button that goes grey would give them to whatever is next in line."""
        if self.look_button.hasFocus() or self.ask_button.hasFocus() or self.supply_row.report.button.hasFocus():
            self.supply.setFocus()

    def offer_asking(self, why: str, *, looking: bool) -> None:
        """Why no supply is looked for, or asked, now; "" where it may."""
        grey(self.look_button, why or (texts.STILL_LOOKING if looking else ""))
        grey(self.ask_button, why)
        self.supply_row.lock(why)

    def _follow(self) -> None:
        if self._follow_rated:
            self.max_volts.setText(self.rated.text())

    def _complaint_typed(self) -> None:
        if self.complaint.hasFocus():
            self.changed.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.complaint and event.type() is QEvent.Type.FocusOut:
            self._left()
        return super().eventFilter(watched, event)

    def _left(self) -> None:
        """A field of a job that is taken in was left: what is other than in its record is kept there."""
        job = self._job
        if job is None:
            return
        self.problem.setText(self.owner.limit.problem() or ("" if self.item().kind else texts.NEEDS_KIND))
        if self.problem.text():
            return
        now = msgspec.structs.asdict(self.item()) | msgspec.structs.asdict(self.owner.taken_in(job.comeback_of))
        now |= {"complaint": self.complaint_text(), "load_state": self.load_state()}
        was = msgspec.structs.asdict(job) | msgspec.structs.asdict(job.item)
        if changes := {name: value for name, value in now.items() if value != was[name]}:
            self.edited.emit(changes)

    def _own_ceiling(self, typed: str) -> None:
        self._follow_rated = not typed.strip()

    def _mend(self) -> None:
        """As a person types: what was said to be wrong, and is no more, is not said any longer."""
        if self.problem.text() and self.problem.text() != self.first_problem():
            self.problem.setText("")

    def _judge_typed(self) -> None:
        """A field for a quantity or the address was left: words in it are told of at once. That a supply is not usable
        stands below its address already."""
        typed = [field for field in (self.rated, self.max_volts, self.max_amps) if field.text().strip()]
        wrong = [self._wrong(field) for field in typed if field.wrong()]
        if wrong or self.address_problem() == texts.ADDRESS_WITH_SPACE:
            self.problem.setText(wrong[0] if wrong else texts.ADDRESS_WITH_SPACE)

    def _press(self) -> None:
        self.problem.setText(self.first_problem())
        if not self.problem.text():
            self.opened.emit()

    def first_problem(self) -> str:
        """What stands in the way of a run with these figures; "" where nothing does."""
        if not self.kind.currentText().strip():
            return texts.NEEDS_KIND
        if self.rated.wrong():
            return self._wrong(self.rated)
        return self.owner.limit.problem() or self.setting_problem() or self.address_problem()

    def setting_problem(self) -> str:
        """What is wrong with the ceilings; "" where nothing is."""
        for field in (self.max_volts, self.max_amps):
            if field.wrong():
                return self._wrong(field)
        for name, field in ((texts.FIELD_RATED, self.rated), (texts.FIELD_MAX_VOLTS, self.max_volts)):
            value = field.value() or 0.0
            if value > PROGRAM_VOLTS:
                return texts.ABOVE_PROGRAM.format(name=name, value=show(value, "V"), limit=show(PROGRAM_VOLTS, "V"))
        return ""

    def _wrong(self, field: QuantityEdit) -> str:
        name, needed = {
            self.rated: (texts.FIELD_RATED, texts.NEEDS_RATED),
            self.max_volts: (texts.FIELD_MAX_VOLTS, texts.NEEDS_MAX_VOLTS),
            self.max_amps: (texts.FIELD_MAX_AMPS, ""),
        }[field]
        typed = field.text().strip()
        return texts.WRONG_QUANTITY.format(name=name, typed=typed[:24], unit=field.unit) if typed else needed

    def address_problem(self, address: str = "", output: int = 1) -> str:
        """Why nothing goes on with an address, those that are given here where no other is; "" where it may."""
        if not address:
            address, output = self.setting().resource, self.setting().output
        if any(mark.isspace() for mark in address) and not address.upper().startswith(SPACES_IN):
            return texts.ADDRESS_WITH_SPACE
        if why := self.supply_row.why_unusable(address, output):
            return texts.ADDRESS_UNUSABLE.format(why=why)
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

    def taken_in(self) -> TakenIn:
        return self.owner.taken_in(self.comeback.job_id())

    def complaint_text(self) -> str:
        return self.complaint.toPlainText().strip()

    def load_state(self) -> str:
        wet, coupled = (
            retelling.as_kept(chooser.currentText(), words)
            for chooser, words in ((self.wet, (texts.DRY, texts.WET)), (self.coupled, (texts.UNCOUPLED, texts.COUPLED)))
        )
        return texts.LOAD_STATE.format(wet=wet, coupled=coupled)

    def setting(self) -> BenchSetting:
        resource = self.supply.text().strip()
        return BenchSetting(
            max_volts=self.max_volts.value() or 0.0,
            max_amps=self.max_amps.value(),
            resource=resource,
            thermal_class=self.thermal.currentText(),
            output=self.supply_row.output_for(resource),
        )

    def show_job(self, job: Job, setting: BenchSetting) -> None:
        """A job that is taken in: what was measured at its rated volts is fixed, all else can be put right."""
        self.supply.setText(setting.resource)
        self.supply_row.put_output(setting.resource, setting.output)
        self.rated.put(job.motor.rated_volts)
        self._follow_rated = False
        self.max_volts.put(setting.max_volts)
        self.max_amps.put(setting.max_amps)
        self.thermal.setCurrentText(setting.thermal_class)
        self.problem.setText("")
        self.cards.verticalScrollBar().setValue(0)  # another job is read from its beginning
        self.show_record(job)

    def show_record(self, job: Job, *, can_undo: bool = False) -> None:
        """What the ledger has of the job."""
        self._job = None  # while it is put there
        self.say_label.setText(texts.INTAKE_OPEN_SAY.format(number=job.number))
        self.why_label.setText(texts.INTAKE_OPEN_WHY)
        self.kind.setCurrentText(job.item.kind)
        for field, text in ((self.make, job.item.make), (self.model, job.item.model), (self.serial, job.item.serial)):
            if field.text().strip() != text:
                field.setText(text)
        if self.complaint_text() != job.complaint:
            self.complaint.setPlainText(job.complaint)
        wet, _, coupled = job.load_state.partition(", ")
        self.wet.setCurrentText(retelling.told(wet))
        self.coupled.setCurrentText(retelling.told(coupled))
        self.owner.show_job(job)
        self._fix(job)
        self.undo_button.setVisible(job.state is not JobState.CLOSED)
        grey(self.undo_button, "" if can_undo else texts.NOTHING_TO_UNDO)
        self._job = job if job.state is not JobState.CLOSED else None

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
        self.cards.verticalScrollBar().setValue(0)
        self.kind.setCurrentIndex(-1)
        self.kind.clearEditText()
        self.supply.setText(resource)
        for field in (self.make, self.model, self.serial, self.rated, self.max_volts, self.max_amps):
            field.clear()
        self._job = None
        self.complaint.clear()
        self.owner.blank()
        self.comeback.offer([])
        self.undo_button.hide()
        self.wet.setCurrentIndex(0)
        self.coupled.setCurrentIndex(0)
        self.thermal.setCurrentText(UNKNOWN_CLASS)
        self.problem.setText("")
        self._fix(None)

    def form(self) -> Fields:
        """What is typed, for a draft."""
        fields: Fields = {name: edit.text() for name, edit in self._drafted().items()}
        fields |= {name: chooser.currentText() for name, chooser in self._chosen().items()}
        fields |= {OUTPUT_FIELD: self.setting().output}
        return fields | {"complaint": self.complaint.toPlainText(), "consent": self.owner.consent.isChecked()}

    def fill(self, form: Fields) -> None:
        """A draft put back; what it lacks stays as it is."""
        for name, edit in self._drafted().items():
            edit.setText(str(form.get(name, edit.text())))
        for name, chooser in self._chosen().items():
            chooser.setCurrentText(str(form.get(name, chooser.currentText())))
        output = form.get(OUTPUT_FIELD)
        if isinstance(output, int) and output > 0:
            self.supply_row.put_output(self.setting().resource, output)
        self.complaint.setPlainText(str(form.get("complaint", "")))
        self.owner.consent.setChecked(bool(form.get("consent")))
        self._follow_rated = self.max_volts.text() == self.rated.text()

    def _drafted(self) -> dict[str, QLineEdit]:
        own = (self.make, self.model, self.serial, self.rated, self.max_volts, self.max_amps, self.supply)
        return {edit.objectName(): edit for edit in (*own, *self.owner.edits())}

    def _chosen(self) -> dict[str, Chooser]:
        return {chooser.objectName(): chooser for chooser in (self.kind, self.wet, self.coupled, self.thermal)}

    def _fix(self, job: Job | None) -> None:
        self.rated.setReadOnly(job is not None)
        closed = job is not None and job.state is JobState.CLOSED
        for chooser in (self.kind, self.wet, self.coupled):
            grey(chooser, texts.JOB_IS_CLOSED if closed else "")
        for field in (self.make, self.model, self.serial, *self.owner.edits()):
            field.setReadOnly(closed)
        grey(self.owner.consent, texts.JOB_IS_CLOSED if closed else "")
        self.complaint.setReadOnly(closed)
        self.open_button.setVisible(job is None)

    def lock_setting(self, locked: bool) -> None:
        """While a run is on its ceilings are what they were when it began."""
        for field in (self.max_volts, self.max_amps, self.supply, self.thermal):
            grey(field, texts.NOT_WHILE_ON if locked else "")
        self.unlock.lock(locked)


def _field_card(title: str) -> tuple[QWidget, FieldGrid]:
    made = card()
    column = QVBoxLayout(made)
    column.setContentsMargins(16, 8, 16, 10)
    column.setSpacing(2)
    column.addWidget(label(title, bold=True))
    fields = QWidget()
    grid = FieldGrid(fields, 4)
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(2)
    column.addWidget(fields)
    return made, grid


def _put(grid: FieldGrid, row: int, column: int, name: str, field: QWidget, span: int = 1) -> QLabel:
    part, text = named(name, field)
    grid.put(row, column, part, span)
    return text
