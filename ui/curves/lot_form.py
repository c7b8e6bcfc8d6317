"""A new lot: what its units are, by which test they are measured, and with what."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.ledger.start_tests import KeptTest
from benchlog.quantities import parse
from benchlog.records import Item, Motor
from ui import curve_texts as texts
from ui import retelling, theme
from ui import texts as window_texts
from ui.curves.form_rows import grid_of, line, put
from ui.pieces import Chooser, button, card, label
from ui.quantity_edit import QuantityEdit
from ui.wrapping import WrapRow


@dataclass(frozen=True, slots=True, kw_only=True)
class LotAsked:
    """What open_lot() is to be told, and the supply's address, which the ledger keeps with each run."""

    name: str
    item: Item
    motor: Motor
    test_id: int
    operator: str
    leads: str
    fixture: str
    ambient_c: float
    load_state: str
    resource: str


class LotForm(QWidget):
    """`opened(LotAsked)`; `test_wanted` where there is none to choose."""

    opened = Signal(object)
    test_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(label(texts.LOT_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True))
        column.addWidget(label(texts.LOT_WHY, "second", wrap=True))
        column.addWidget(self._fields_card())
        self.problem = label("", "ask", wrap=True)
        self.problem.setObjectName("lot_problem")
        self.open_button = button(texts.LOT_OPEN, "lot_open", "main")
        self.open_button.clicked.connect(self._open)
        self.define = button(texts.EMPTY_TEST, "lot_define_test")
        self.define.clicked.connect(self.test_wanted)
        row = WrapRow()
        row.add(self.problem, stretch=1, least=160)
        row.add(self.define)
        row.add(self.open_button)
        column.addLayout(row)
        column.addStretch(1)

    def _fields_card(self) -> QWidget:
        made = card()
        grid = grid_of(made, 4)
        self.name = line("lot_name", texts.LOT_NAME, texts.LOT_NAME_HINT)
        self.kind = Chooser("lot_kind", texts.LOT_KIND)
        self.kind.setEditable(True)
        self.kind.addItems(window_texts.KINDS)
        self.kind.setCurrentText("")
        self.make, self.model = line("lot_make", texts.LOT_MAKE), line("lot_model", texts.LOT_MODEL)
        self.rated = QuantityEdit("V", texts.LOT_RATED)
        self.rated.setObjectName("lot_rated")
        self.rated.setFont(theme.font())
        self.test = Chooser("lot_test", texts.LOT_TEST)
        self.operator = line("lot_operator", texts.LOT_OPERATOR, texts.OPERATOR_HINT)
        self.leads = line("lot_leads", texts.LOT_LEADS, texts.LEADS_HINT)
        self.fixture = line("lot_fixture", texts.LOT_FIXTURE, texts.FIXTURE_HINT)
        self.ambient = line("lot_ambient", texts.LOT_AMBIENT, "°C")
        self.ambient.setText("22 °C")
        self.load = line("lot_load", texts.LOT_LOAD)
        self.load.setText(retelling.told(_usual_load()))
        self.supply = line("lot_supply", texts.LOT_SUPPLY, window_texts.SUPPLY_EXAMPLE)
        rows: tuple[tuple[tuple[str, QWidget, int], ...], ...] = (
            ((texts.LOT_NAME, self.name, 1), (texts.LOT_KIND, self.kind, 1), (texts.LOT_TEST, self.test, 2)),
            (
                (texts.LOT_MAKE, self.make, 1),
                (texts.LOT_MODEL, self.model, 1),
                (texts.LOT_RATED, self.rated, 1),
                (texts.LOT_LOAD, self.load, 1),
            ),
            (
                (texts.LOT_OPERATOR, self.operator, 1),
                (texts.LOT_LEADS, self.leads, 1),
                (texts.LOT_FIXTURE, self.fixture, 1),
                (texts.LOT_AMBIENT, self.ambient, 1),
            ),
            ((texts.LOT_SUPPLY, self.supply, 4),),
        )
        for number, row in enumerate(rows):
            column = 0
            for words, field, span in row:
                put(grid, number, column, words, field, span)
                column += span
        return made

    def show_tests(self, tests: Sequence[KeptTest], chosen: int | None = None) -> None:
        before = chosen if chosen is not None else self.test.currentData()
        self.test.clear()
        for kept in tests:
            self.test.addItem(texts.TEST_CALLED.format(name=kept.test.name, version=kept.test.version), kept.id)
        self.test.setCurrentIndex(max(0, self.test.findData(before)) if tests else -1)
        self.define.setVisible(not tests)
        self.problem.setText("" if tests else texts.LOT_NO_TEST)

    def blank(self, resource: str) -> None:
        for field in (self.name, self.make, self.model):
            field.clear()
        self.supply.setText(resource or self.supply.text())
        self.name.setFocus()

    def offer_supply(self, resource: str) -> None:
        """Where none was typed."""
        self.supply.setText(self.supply.text() or resource)

    def asked(self) -> LotAsked | str:
        """As typed, or what is wrong with it."""
        kind, rated, test = self.kind.currentText().strip(), self.rated.value(), self.test.currentData()
        if not self.name.text().strip():
            return texts.NEEDS_LOT.format(name=texts.LOT_NAME)
        if not kind:
            return texts.NEEDS_LOT.format(name=texts.LOT_KIND)
        if rated is None:
            return texts.WRONG_FIELD.format(name=texts.LOT_RATED, unit="V")
        if test is None:
            return texts.LOT_NO_TEST
        try:
            ambient_c = parse(self.ambient.text(), "°C")
        except ValueError:
            return texts.WRONG_AMBIENT
        return LotAsked(
            name=self.name.text().strip(),
            item=Item(kind=kind, make=self.make.text().strip(), model=self.model.text().strip()),
            motor=Motor(rated_volts=rated),
            test_id=int(test),
            operator=self.operator.text().strip(),
            leads=self.leads.text().strip(),
            fixture=self.fixture.text().strip(),
            ambient_c=ambient_c,
            load_state=retelling.as_kept(self.load.text().strip(), (_usual_load(),)),
            resource=self.supply.text().strip(),
        )

    def _open(self) -> None:
        asked = self.asked()
        self.problem.setText(asked if isinstance(asked, str) else "")
        if isinstance(asked, LotAsked):
            self.opened.emit(asked)


def _usual_load() -> str:
    """As the record keeps it."""
    return window_texts.LOAD_STATE.format(wet=window_texts.DRY, coupled=window_texts.UNCOUPLED)
