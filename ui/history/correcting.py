"""A correction of a closed job, or of one of its runs: what is right, who says so, and why. What was stays kept."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QLineEdit, QWidget

from benchlog.errors import Refused
from benchlog.ledger.edits import FIELDS
from benchlog.money import parse_money, show_money
from benchlog.records import Job, Result
from ui import retelling, texts, theme
from ui.pieces import Chooser, Elided, button, grey, label
from ui.wrapping import WrapRow

_OF_ITEM = ("kind", "make", "model", "serial")


class CorrectionForm(QFrame):
    """`kept` with the field, what is right as it is kept, who and why; a field of a run as "run outcome"."""

    kept = Signal(str, object, str, str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._job: Job | None = None
        self.setProperty("look", "here")
        self.setObjectName("correction")
        self.field = Chooser("correction_field", texts.CORRECT_FIELD)
        self.new, self.who, self.why = (
            _line(name, said)
            for name, said in (
                ("correction_new", texts.CORRECT_NEW),
                ("correction_who", texts.CORRECT_WHO),
                ("correction_why", texts.CORRECT_WHY),
            )
        )
        self.field.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.field.setMinimumContentsLength(12)
        self.was = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.was.setObjectName("correction_was")
        self.trouble = label("", "look", px=theme.SECOND_PX, wrap=True)
        self.trouble.setObjectName("correction_trouble")
        self.keep = button(texts.CORRECT_KEEP, "correction_keep", "main")
        self.leave = button(texts.CORRECT_LEAVE, "correction_leave")
        self.field.currentIndexChanged.connect(lambda _: self._show_was())
        for field in (self.new, self.who, self.why):
            field.textChanged.connect(lambda: self._judge())
            field.returnPressed.connect(self._press)
        self.keep.clicked.connect(self._press)
        self.leave.clicked.connect(self.left)
        self._lay_out()

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(16, 12, 16, 12)
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(4)
        grid.addWidget(label(texts.CORRECT_SAY, bold=True, wrap=True), 0, 0, 1, 3)
        for column, (name, field) in enumerate(
            ((texts.CORRECT_FIELD, self.field), (texts.CORRECT_WHO, self.who), (texts.CORRECT_WHY, self.why))
        ):
            grid.addWidget(_named(name, field), 1, column)
            grid.addWidget(field, 2, column)
        grid.addWidget(_named(texts.CORRECT_NEW, self.new), 3, 0, 1, 3)
        grid.addWidget(self.new, 4, 0, 1, 3)
        grid.addWidget(self.was, 5, 0, 1, 3)
        row = WrapRow()
        row.add(self.keep)
        row.add(self.leave)
        row.add(self.trouble, stretch=1, least=160)
        grid.addLayout(row, 6, 0, 1, 3)
        grid.setRowStretch(7, 1)
        for column, share in enumerate((2, 2, 4)):
            grid.setColumnStretch(column, share)
        for first, then in (
            (self.field, self.who),
            (self.who, self.why),
            (self.why, self.new),
            (self.new, self.keep),
            (self.keep, self.leave),
        ):
            QWidget.setTabOrder(first, then)

    def begin(self, job: Job, run: str) -> None:
        """`run`: the run that is looked at, in words; "" where there is none."""
        self._job = job
        self.field.blockSignals(True)
        self.field.clear()
        for name in (*CORRECTABLE, *(RUN_FIELDS if run else ())):
            said = texts.JOB_FIELDS.get(name) or texts.RUN_FIELDS[name].format(run=run)
            self.field.addItem(said[:1].upper() + said[1:], name)
        self.field.setCurrentIndex(self.field.findData("cause"))
        self.field.blockSignals(False)
        self.why.clear()
        self._show_was()
        self.field.setFocus()

    def value(self) -> object:
        """What is typed, as it is kept. Raises Refused where it is none."""
        name, said = str(self.field.currentData()), self.new.text().strip()
        if name == "spending_limit_cents":
            return parse_money(said) if said else None
        if name == "warranty_days":
            if said and not (said.isascii() and said.isdigit() and len(said) <= 5):
                raise Refused(texts.WRONG_WARRANTY)
            return int(said) if said else None
        if name == "result":
            found = next((one for one, word in texts.RESULTS.items() if word == said), None)
            if found is None:
                raise Refused(texts.CORRECT_RESULT.format(words=", ".join(texts.RESULTS.values())))
            return found
        if name in ("kind", "cause") and not said:
            raise Refused(texts.CORRECT_EMPTY)
        return said

    def _show_was(self) -> None:
        name = str(self.field.currentData())
        was = "" if self._job is None or name in RUN_FIELDS else _shown(self._job, name)
        self.was.setText(
            texts.CORRECT_RUN_STAYS if name in RUN_FIELDS else texts.CORRECT_WAS.format(was=was or texts.NOTHING)
        )
        self.new.setText(was)
        self._judge()

    def _trouble(self) -> str:
        if not (self.who.text().strip() and self.why.text().strip()):
            return texts.CORRECT_NEEDS
        try:
            value = self.value()
        except Refused as refusal:
            return retelling.told(str(refusal))
        name = str(self.field.currentData())
        if name in RUN_FIELDS:
            return "" if value else texts.CORRECT_NEEDS_NEW
        was = None if self._job is None else _of(self._job, name)
        return texts.CORRECT_SAME if value == was else ""

    def _judge(self) -> None:
        trouble = self._trouble()
        self.trouble.setText(trouble)
        grey(self.keep, trouble)

    def _press(self) -> None:
        if not self._trouble():
            self.kept.emit(
                str(self.field.currentData()), self.value(), self.who.text().strip(), self.why.text().strip()
            )


RUN_FIELDS = ("run note", "run outcome", "run reason", "run load_state", "run rated_volts", "run resistance_ohm")
CORRECTABLE = tuple(name for name in texts.JOB_FIELDS if name in FIELDS and name != "consent")
"""What of a closed job can be said anew in words. Consent is given, not corrected."""


def _of(job: Job, name: str) -> object:
    return getattr(job.item if name in _OF_ITEM else job, name)


def _shown(job: Job, name: str) -> str:
    value = _of(job, name)
    if value is None:
        return ""
    if name == "spending_limit_cents" and isinstance(value, int):
        return show_money(value)
    return texts.RESULTS.get(value, "") if isinstance(value, Result) else str(value)


def _line(name: str, accessible: str) -> QLineEdit:
    made = QLineEdit()
    made.setObjectName(name)
    made.setAccessibleName(accessible)
    made.setFont(theme.font())
    made.setMinimumHeight(theme.TOUCH_PX - 4)
    made.setMaxLength(4000)
    return made


def _named(text: str, field: QWidget) -> QLabel:
    made = Elided(text, "second", px=theme.SECOND_PX)
    made.setBuddy(field)
    return made
