"""A part that the shop keeps: new, or one there is with another price or count."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from benchlog.ledger.drafts import Fields
from benchlog.quantities import plain_digits
from benchlog.records import Part
from ui import texts, theme
from ui.money_edit import MoneyEdit
from ui.pieces import button, label
from ui.record.fields import line_edit


class StockForm(QWidget):
    """`kept` carries name, number, price in cents and how many are there. `changed` as a person types."""

    kept = Signal(str, str, int, int)
    refused = Signal(str)
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.name = line_edit("stock_name", texts.FIELD_STOCK_NAME, texts.STOCK_NAME_HINT)
        self.number = line_edit("stock_number", texts.FIELD_STOCK_NUMBER, texts.STOCK_NUMBER_HINT)
        self.price = MoneyEdit("stock_price", texts.FIELD_STOCK_PRICE)
        self.price.setPlaceholderText(texts.STOCK_PRICE_HINT)
        self.there = line_edit("stock_there", texts.FIELD_STOCK_THERE, texts.STOCK_THERE_HINT)
        self.keep = button(texts.STOCK_KEEP, "stock_keep")
        self.keep.clicked.connect(self._press)
        self.edits: tuple[QLineEdit, ...] = (self.name, self.number, self.price, self.there)
        for edit in self.edits:
            edit.textEdited.connect(lambda _: self.changed.emit())
            edit.returnPressed.connect(self._press)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(8)
        grid.addWidget(label(texts.STOCK_SAY, "second", px=theme.SECOND_PX, wrap=True), 0, 0, 1, 3)
        grid.addWidget(self.name, 1, 0, 1, 2)
        grid.addWidget(self.number, 1, 2)
        grid.addWidget(self.price, 2, 0)
        grid.addWidget(self.there, 2, 1)
        grid.addWidget(self.keep, 2, 2)
        self.hide()

    def offer(self, part: Part | None) -> None:
        """The part that is chosen, to be put right; nothing typed is overwritten."""
        if part is not None and not self.form():
            self.name.setText(part.name)
            self.number.setText(part.number)
            self.price.put(part.each_cents)
            self.there.setText(str(part.stock))

    def _press(self) -> None:
        cents, there = self.price.cents(), plain_digits(self.there.text().strip())
        if not self.name.text().strip():
            self.refused.emit(texts.NEEDS_STOCK_NAME)
        elif cents is None:
            self.refused.emit(self.price.problem() or texts.NEEDS_PRICE)
        elif not (there.isascii() and there.isdigit() and len(there) <= 6):
            self.refused.emit(texts.WRONG_STOCK)
        else:
            self.kept.emit(self.name.text().strip(), self.number.text().strip(), cents, int(there))

    def form(self) -> Fields:
        return {edit.objectName(): edit.text() for edit in self.edits if edit.text()}

    def fill(self, form: Fields) -> None:
        for edit in self.edits:
            edit.setText(str(form.get(edit.objectName(), "")))
        self.setVisible(bool(self.form()))

    def blank(self) -> None:
        for edit in self.edits:
            edit.clear()
        self.hide()
