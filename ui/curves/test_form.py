"""How starts are captured, as a form: free until it is locked, and from then on only to be read or copied."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from benchlog.ledger.start_tests import KeptTest
from benchlog.quantities import show
from benchlog.recovery.start_test import StartTest, Trigger
from ui import curve_texts as texts
from ui import theme
from ui.curves.form_rows import grid_of, line, put, whole
from ui.moments import day_text
from ui.pieces import Chooser, button, card, grey, label
from ui.quantity_edit import QuantityEdit
from ui.wrapping import WrapRow

_USUAL = StartTest(name="", volts=0.0)


class TestForm(QWidget):
    """`locking(StartTest, who)` when it is to be locked; `next_wanted` asks which version of a name is free."""

    __test__ = False  # no test of pytest's

    locking = Signal(object, str)
    next_wanted = Signal(str)
    used = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setMaximumWidth(theme.FORM_PX)
        self._tests: list[KeptTest] = []
        self._version = 1
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(label(texts.TESTS_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True))
        column.addWidget(label(texts.TESTS_WHY, "second", wrap=True))
        self.chosen = Chooser("test_chosen", texts.TEST_CHOOSE)
        self.chosen.currentIndexChanged.connect(lambda _: self._show_chosen())
        column.addWidget(self.chosen)
        column.addWidget(self._fields_card())
        self.words = label("", "second", wrap=True)
        self.words.setObjectName("test_words")
        column.addWidget(self.words)
        column.addLayout(self._press_row())
        column.addStretch(1)
        self.show_tests([])

    def _fields_card(self) -> QWidget:
        made = card()
        grid = grid_of(made, 4)
        self.name = line("test_name", texts.TEST_NAME, texts.TEST_NAME_HINT)
        self.version = line("test_version", texts.TEST_VERSION)
        self.version.setReadOnly(True)
        self.starts = line("test_starts", texts.TEST_STARTS)
        self.trigger = Chooser("test_trigger", texts.TEST_TRIGGER)
        for trigger, words in texts.TRIGGERS.items():
            self.trigger.addItem(words, trigger)
        self.trigger.currentIndexChanged.connect(lambda _: self._follow_trigger())
        self.interleave = Chooser("test_interleave", texts.TEST_INTERLEAVE)
        self.interleave.setToolTip(texts.INTERLEAVE_HINT)
        for count, words in texts.INTERLEAVES.items():
            self.interleave.addItem(words, count)
        self.quantities = {
            "volts": QuantityEdit("V", texts.TEST_VOLTS),
            "amps": QuantityEdit("A", texts.TEST_AMPS, optional=True),
            "on_s": QuantityEdit("s", texts.TEST_ON),
            "rest_s": QuantityEdit("s", texts.TEST_REST),
            "still_s": QuantityEdit("s", texts.TEST_STILL),
            "before_s": QuantityEdit("s", texts.TEST_BEFORE),
            "level": QuantityEdit("A", texts.TEST_LEVEL),
            "hysteresis": QuantityEdit("A", texts.TEST_HYSTERESIS),
            "arm_s": QuantityEdit("s", texts.TEST_ARM),
        }
        for name, quantity in self.quantities.items():
            quantity.setObjectName(f"test_{name}")
            quantity.setFont(theme.font())
        self.quantities["amps"].setPlaceholderText(texts.TEST_AMPS_HINT)
        q = self.quantities
        put(grid, 0, 0, texts.TEST_NAME, self.name, 3)
        put(grid, 0, 3, texts.TEST_VERSION, self.version)
        rows: tuple[tuple[tuple[str, QWidget], ...], ...] = (
            (
                (texts.TEST_VOLTS, q["volts"]),
                (texts.TEST_AMPS, q["amps"]),
                (texts.TEST_ON, q["on_s"]),
                (texts.TEST_STARTS, self.starts),
            ),
            (
                (texts.TEST_REST, q["rest_s"]),
                (texts.TEST_STILL, q["still_s"]),
                (texts.TEST_BEFORE, q["before_s"]),
                (texts.TEST_INTERLEAVE, self.interleave),
            ),
            (
                (texts.TEST_TRIGGER, self.trigger),
                (texts.TEST_LEVEL, q["level"]),
                (texts.TEST_HYSTERESIS, q["hysteresis"]),
                (texts.TEST_ARM, q["arm_s"]),
            ),
        )
        for number, row in enumerate(rows, start=1):
            for column, (words, field) in enumerate(row):
                put(grid, number, column, words, field)
        return made

    def _press_row(self) -> WrapRow:
        self.who = line("test_who", texts.TEST_WHO, texts.TEST_WHO)
        self.who.setMaximumWidth(260)
        self.who.textChanged.connect(lambda _: self._offer_lock())
        self.problem = label("", "ask", px=theme.SECOND_PX, wrap=True)
        self.problem.setObjectName("test_problem")
        self.lock = button(texts.TEST_LOCK, "test_lock", "main")
        self.lock.clicked.connect(self._lock)
        self.next = button(texts.TEST_NEXT, "test_next")
        self.next.clicked.connect(lambda: self.next_wanted.emit(self.name.text()))
        self.use = button(texts.TEST_USE, "test_use", "main")
        self.use.clicked.connect(lambda: self.used.emit(self._tests[self.chosen.currentIndex() - 1].id))
        row = WrapRow()
        row.add(self.who, stretch=1, least=160)
        row.add(self.lock)  # nothing else ever stands in its place: a second press must meet no other button
        row.add(self.problem, stretch=1, least=160)
        for one in (self.next, self.use):
            row.add(one)
        return row

    # which test

    def show_tests(self, tests: Sequence[KeptTest], chosen: int | None = None) -> None:
        """All there are; `chosen`: the key of the one to look at, None for a new one."""
        self._tests = list(tests)
        self.chosen.blockSignals(True)
        self.chosen.clear()
        self.chosen.addItem(texts.TEST_NEW, 0)
        for kept in self._tests:
            self.chosen.addItem(texts.TEST_CALLED.format(name=kept.test.name, version=kept.test.version), kept.id)
        self.chosen.setCurrentIndex(max(0, self.chosen.findData(chosen)) if chosen else 0)
        self.chosen.blockSignals(False)
        self._show_chosen()

    def copy_as(self, version: int) -> None:
        """The shown test, free to be changed, as another version."""
        test = self._shown()
        self.chosen.blockSignals(True)
        self.chosen.setCurrentIndex(0)
        self.chosen.blockSignals(False)
        self._put(test or _USUAL, version, None)
        self.name.setReadOnly(True)
        self.quantities["volts"].setFocus()

    def _shown(self) -> StartTest | None:
        index = self.chosen.currentIndex()
        return self._tests[index - 1].test if 0 < index <= len(self._tests) else None

    def _show_chosen(self) -> None:
        index = self.chosen.currentIndex()
        kept = self._tests[index - 1] if 0 < index <= len(self._tests) else None
        self._put(_USUAL if kept is None else kept.test, 1 if kept is None else kept.test.version, kept)

    def _put(self, test: StartTest, version: int, kept: KeptTest | None) -> None:
        self._version = version
        self.problem.setText("")
        self.name.setText(test.name)
        self.version.setText(str(version))
        self.starts.setText(str(test.starts))
        self.trigger.setCurrentIndex(max(0, self.trigger.findData(test.trigger.value)))
        self.interleave.setCurrentIndex(max(0, self.interleave.findData(test.interleave)))
        for name, field in self.quantities.items():
            value = getattr(test, name)
            field.setText(show(value, field.unit) if value else "")
        locked = kept is not None
        for line_edit in (self.name, self.starts, *self.quantities.values()):
            line_edit.setReadOnly(locked)
        grey(self.trigger, texts.TEST_IS_LOCKED if locked else "")
        for part, shown in ((self.who, not locked), (self.lock, not locked), (self.next, locked), (self.use, locked)):
            part.setVisible(shown)
        self.words.setText(texts.TEST_OPEN if kept is None else _locked_words(kept))
        self._offer_lock()
        self._follow_trigger()

    def _follow_trigger(self) -> None:
        trigger = Trigger(self.trigger.currentData())
        unit = "V" if trigger is Trigger.VOLTS else "A"
        for name in ("level", "hysteresis", "arm_s"):
            field = self.quantities[name]
            grey(field, texts.ONLY_WITH_LEVEL if trigger is Trigger.OUTPUT_ON else "")
            if name != "arm_s":
                field.unit = unit
        at_on = "" if trigger is Trigger.OUTPUT_ON else texts.ONLY_AT_ON
        grey(self.interleave, texts.TEST_IS_LOCKED if self.name.isReadOnly() else at_on)

    # what it says

    def test(self) -> StartTest | str:
        """As typed, or what is wrong with it."""
        trigger = Trigger(self.trigger.currentData())
        starts = whole(self.starts)
        if starts is None:
            return texts.WRONG_COUNT.format(name=texts.TEST_STARTS)
        values = {}
        for name, field in self.quantities.items():
            if name in ("level", "hysteresis") and trigger is Trigger.OUTPUT_ON:
                continue
            value = field.value()
            if value is None and (field.text().strip() or name in ("volts", "on_s")):
                return texts.WRONG_FIELD.format(name=field.accessibleName().partition(",")[0], unit=field.unit)
            if value is not None:
                values[name] = value
        if not self.quantities["before_s"].text().strip():
            values["before_s"] = 0.0
        interleave = self.interleave.currentData() if trigger is Trigger.OUTPUT_ON else 1
        return StartTest(
            name=self.name.text().strip(),
            version=self._version,
            starts=starts,
            trigger=trigger,
            interleave=int(interleave),
            **values,
        )

    def _offer_lock(self) -> None:
        """What can never be changed again has a name under it."""
        grey(self.lock, "" if self.who.text().strip() else texts.NEEDS_WHO_LOCKS)

    def _lock(self) -> None:
        test = self.test()
        self.problem.setText(test if isinstance(test, str) else "")
        if isinstance(test, StartTest):
            self.locking.emit(test, self.who.text().strip())

    def fields(self) -> list[QLineEdit]:
        return [self.name, self.starts, *self.quantities.values()]


def _locked_words(kept: KeptTest) -> str:
    words = texts.TEST_LOCKED if kept.who else texts.TEST_LOCKED_NOBODY
    return words.format(day=day_text(kept.utc), who=kept.who)
