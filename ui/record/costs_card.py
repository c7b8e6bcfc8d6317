"""What a job costs: minutes, parts and anything else, against what its owner allows; lines taken back."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from benchlog.ledger.costs import MOST_COUNT, Standing
from benchlog.ledger.drafts import Fields
from benchlog.money import show_money
from benchlog.quantities import plain_digits
from benchlog.records import Charge, Part
from benchlog.settings import Shop
from ui import texts, theme
from ui.money_edit import MoneyEdit
from ui.pieces import Chooser, button, grey, label, why_grey
from ui.record.ask_card import AskCard
from ui.record.charges import FromStock, Minutes, Other, Wanted
from ui.record.fields import bring_into_sight, line_edit, padded_card
from ui.record.limit_bar import LimitBar
from ui.record.row_stack import RowStack
from ui.record.stock_form import StockForm
from ui.record.timeline import charge_text
from ui.theme import Tokens

NUMBER_PX = 76


class CostsCard(QWidget):
    """`charged` carries what is wanted and who agreed to pass the limit; `taken_back` a line's key and why."""

    charged = Signal(object, str)
    taken_back = Signal(int, str)
    changed = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._wanted: Wanted | None = None
        self._taking_back: int | None = None
        self._minutes_so_far = 0
        self._shown: tuple[object, ...] = ()
        self._parts: list[Part] = []
        self.bar = LimitBar(tokens)
        self.over = AskCard("over_limit", field=texts.FIELD_AGREED, yes=texts.OVER_KEEP, no=texts.OVER_STOP)
        self.over.answered.connect(self._agreed)
        self.back = AskCard("take_back", field=texts.FIELD_BACK_WHY, yes=texts.BACK_KEEP, no=texts.BACK_STOP)
        self.back.answered.connect(self._take_back)
        self._make_fields()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self._form_card())
        self.rows = RowStack(4)
        column.addWidget(self.back)
        self.lines, lines = padded_card()
        lines.setContentsMargins(16, 6, 8, 6)
        lines.addWidget(self.rows)
        column.addWidget(self.lines)
        column.addStretch(1)

    def _make_fields(self) -> None:
        self.minutes = line_edit("cost_minutes", texts.FIELD_MINUTES, texts.MINUTES_HINT)
        self.done = line_edit("cost_minutes_text", texts.FIELD_DONE, texts.DONE_HINT)
        self.proposal = button("", "cost_proposal")
        self.part = Chooser("cost_part", texts.FIELD_STOCK)
        self.part.setPlaceholderText(texts.NO_STOCK)
        self.count = line_edit("cost_count", texts.FIELD_COUNT, "1")
        self.other = line_edit("cost_other", texts.FIELD_OTHER, texts.OTHER_HINT)
        self.price = MoneyEdit("cost_price", texts.FIELD_PRICE)
        self.price.setPlaceholderText("0.00")
        self.edits: tuple[QLineEdit, ...] = (self.minutes, self.done, self.count, self.other, self.price)
        for edit in self.edits:
            edit.textEdited.connect(lambda _: self.changed.emit())
            edit.textEdited.connect(lambda _: self.over.withdraw())
        self.part.activated.connect(lambda _: self.changed.emit())
        for edit in (self.minutes, self.count, self.price):
            edit.setFixedWidth(NUMBER_PX)
        self.part.setMinimumContentsLength(8)
        self.part.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.charge_minutes = self._charge_button("charge_minutes", texts.CHARGE_MINUTES, self._press_minutes)
        self.stock = StockForm()
        self.stock.changed.connect(self.changed)
        self.stock.refused.connect(self.say_problem)
        self.open_stock = button(texts.STOCK_OPEN, "stock_open", "room", accessible=texts.STOCK_OPEN_NAME)
        self.open_stock.setMinimumHeight(theme.TOUCH_PX - 12)
        self.open_stock.clicked.connect(self._open_stock)
        self.charge_part = self._charge_button("charge_part", texts.CHARGE_PART, self._press_part)
        self.charge_other = self._charge_button("charge_other", texts.CHARGE_OTHER, self._press_other)
        self.proposal.clicked.connect(self._take_proposal)
        self.show_minutes(0)
        for edit, press in (
            (self.minutes, self._press_minutes),
            (self.done, self._press_minutes),
            (self.count, self._press_part),
            (self.other, self._press_other),
            (self.price, self._press_other),
        ):
            edit.returnPressed.connect(press)

    def _charge_button(self, name: str, accessible: str, press: object) -> QPushButton:
        made = button(texts.CHARGE, name, accessible=accessible)
        made.clicked.connect(press)
        return made

    def _form_card(self) -> QWidget:
        made, column = padded_card()
        self.hour = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.problem = label("", "ask", bold=True, wrap=True)
        self.problem.setObjectName("cost_problem")
        self.problem.hide()
        column.addWidget(self.bar)
        column.addWidget(self.over)
        column.addWidget(self.problem)
        for title, rows in (
            (texts.FIELD_MINUTES, ((self.minutes, self.proposal), (self.done, self.charge_minutes))),
            (texts.FIELD_STOCK, ((self.part, self.count, self.charge_part),)),
            (texts.FIELD_OTHER, ((self.other, self.price, self.charge_other),)),
        ):
            text = label(title, "second", px=theme.SECOND_PX)
            text.setBuddy(rows[0][0])
            column.addSpacing(2)
            head = QHBoxLayout()
            head.addWidget(text, 1)
            if title == texts.FIELD_STOCK:
                head.addWidget(self.open_stock)
            column.addLayout(head)
            for parts in rows:
                row = QHBoxLayout()
                row.setSpacing(8)
                for part in parts:
                    row.addWidget(part, 1 if part in (self.part, self.other, self.done, self.proposal) else 0)
                column.addLayout(row)
            if title == texts.FIELD_MINUTES:
                column.addWidget(self.hour)
            elif title == texts.FIELD_STOCK:
                column.addWidget(self.stock)
        return made

    # what is pressed

    def _take_proposal(self) -> None:
        self.minutes.setText(str(self._minutes_so_far))
        self.minutes.setFocus()
        self.changed.emit()

    def _press_minutes(self) -> None:
        count = _whole(self.minutes.text())
        if count is None:
            self.say_problem(texts.WRONG_MINUTES)
        else:
            self._want(Minutes(count, self.done.text().strip()))

    def _press_part(self) -> None:
        count, part_id = _whole(self.count.text() or "1"), self.part.currentData()
        if part_id is None:
            self.say_problem(texts.NEEDS_STOCK)
        elif count is None:
            self.say_problem(texts.WRONG_COUNT)
        else:
            self._want(FromStock(part_id, count))

    def _press_other(self) -> None:
        cents = self.price.cents()
        if not self.other.text().strip():
            self.say_problem(texts.NEEDS_OTHER)
        elif cents is None:
            self.say_problem(self.price.problem() or texts.NEEDS_PRICE)
        else:
            self._want(Other(self.other.text().strip(), cents))

    def _open_stock(self) -> None:
        if self.stock.isHidden():
            self.stock.offer(next((part for part in self._parts if part.id == self.part.currentData()), None))
            self.stock.show()
            self.stock.name.setFocus()
        else:
            self.stock.blank()
        self.changed.emit()

    def _want(self, wanted: Wanted) -> None:
        self.say_problem("")
        self.over.withdraw()
        self._wanted = wanted
        self.charged.emit(wanted, "")

    def _agreed(self, who: str) -> None:
        if self._wanted is not None:
            self.charged.emit(self._wanted, who)

    def ask_over(self, cents: int, limit_cents: int, currency: str) -> None:
        """The line would pass the limit: stop, or who agreed."""
        told = texts.OVER_SAY.format(cents=show_money(cents, currency), limit=show_money(limit_cents, currency))
        self.over.ask(told)

    def kept(self, wanted: Wanted) -> None:
        """The line is in the ledger: its part of the form is empty again."""
        self.over.withdraw()
        match wanted:
            case Minutes():
                gone: tuple[QLineEdit, ...] = (self.minutes, self.done)
            case FromStock():
                gone = (self.count,)
                self.part.setCurrentIndex(-1)
            case Other():
                gone = (self.other, self.price)
        for edit in gone:
            edit.clear()
        self.changed.emit()

    def _ask_back(self, charge: Charge, told: str) -> None:
        self._taking_back = charge.id
        self.back.ask(texts.BACK_SAY.format(line=told))

    def _take_back(self, why: str) -> None:
        if self._taking_back is not None:
            self.taken_back.emit(self._taking_back, why)

    def say_problem(self, words: str) -> None:
        self.problem.setText(words)
        self.problem.setVisible(bool(words))
        if words:
            bring_into_sight(self.problem)

    # what is shown

    def show_minutes(self, minutes: int) -> None:
        """How long the job was on the bench since the last that was charged: a proposal only."""
        self._minutes_so_far = minutes
        words = texts.MINUTES_PROPOSED.format(count=minutes)
        if self.proposal.text() != words:
            self.proposal.setText(words)
            self.proposal.setAccessibleName(texts.MINUTES_PROPOSED_NAME.format(count=minutes))
        grey(self.proposal, why_grey(self.minutes) or ("" if minutes > 0 else texts.NO_MINUTES))

    def show_costs(
        self, charges: Sequence[Charge], parts: Sequence[Part], standing: Standing, shop: Shop, *, open_job: bool
    ) -> None:
        self.bar.show_standing(standing, shop.currency)
        hour = texts.HOUR_UNKNOWN
        if shop.hour_cents:
            hour = texts.HOUR_COSTS.format(cents=show_money(shop.hour_cents, shop.currency))
        self.hour.setText(" ".join(filter(None, (hour, "" if shop.currency else texts.CURRENCY_UNKNOWN))))
        for part in (*self.edits, self.part, self.charge_minutes, self.charge_part, self.charge_other):
            grey(part, "" if open_job else texts.JOB_IS_CLOSED)
        self.show_minutes(self._minutes_so_far)
        shown = (list(charges), list(parts), shop)
        if shown != self._shown:
            self._shown = shown
            self._show_parts(parts, shop.currency)
            self._show_lines(charges, shop.currency)

    def _show_parts(self, parts: Sequence[Part], currency: str) -> None:
        chosen = self.part.currentData()
        self._parts = list(parts)
        self.part.clear()
        for part in parts:
            name = " ".join(word for word in (part.name, part.number) if word)
            price = show_money(part.each_cents, currency)
            self.part.addItem(texts.STOCK_LINE.format(name=name, price=price, stock=part.stock), part.id)
        self.part.setCurrentIndex(self.part.findData(chosen))

    def _show_lines(self, charges: Sequence[Charge], currency: str) -> None:
        gone = {charge.corrects for charge in charges}
        if self._taking_back in gone:
            self._taking_back = None
            self.back.withdraw()
        can_go = {charge.id: charge.corrects is None and charge.id not in gone for charge in charges}
        self.rows.show_rows(
            [
                ((charge, currency, can_go[charge.id]), partial(self._row, charge, currency, can_go=can_go[charge.id]))
                for charge in reversed(charges)
            ]
        )
        self.lines.setVisible(bool(charges))

    def _row(self, charge: Charge, currency: str, *, can_go: bool) -> QWidget:
        told = f"{charge_text(charge)}: {show_money(charge.cents, currency)}"
        made, row = QWidget(), QHBoxLayout()
        made.setLayout(row)
        row.setContentsMargins(0, 3, 0, 3)
        row.setSpacing(8)
        row.addWidget(label(charge_text(charge), "" if can_go else "second", wrap=True), 1)
        row.addWidget(label(show_money(charge.cents, currency), "" if can_go else "second"))
        if can_go:
            back = button(texts.TAKE_BACK, f"take_back_{charge.id}", accessible=texts.TAKE_BACK_NAME.format(line=told))
            back.clicked.connect(lambda: self._ask_back(charge, told))
            row.addWidget(back)
        else:
            made.setMinimumHeight(theme.TOUCH_PX - 8)
        return made

    def form(self) -> Fields:
        fields: Fields = {edit.objectName(): edit.text() for edit in self.edits if edit.text()}
        fields |= self.stock.form()
        chosen = self.part.currentData()
        return fields if chosen is None else fields | {"cost_part": chosen}

    def fill(self, form: Fields) -> None:
        """The stock may be shown only later: what was chosen of it is then chosen again."""
        for edit in self.edits:
            edit.setText(str(form.get(edit.objectName(), "")))
        self.stock.fill(form)
        chosen = form.get("cost_part")
        if isinstance(chosen, int) and self.part.findData(chosen) < 0:
            self.part.addItem("", chosen)
        self.part.setCurrentIndex(self.part.findData(chosen))

    def blank(self) -> None:
        for edit in self.edits:
            edit.clear()
        self.part.setCurrentIndex(-1)
        self.stock.blank()
        self._wanted = self._taking_back = None
        self.over.withdraw()
        self.back.withdraw()
        self.say_problem("")

    def set_tokens(self, tokens: Tokens) -> None:
        self.bar.set_tokens(tokens)


def _whole(text: str) -> int | None:
    """A whole number above zero, as typed."""
    typed = plain_digits(text.strip())
    if not (typed.isascii() and typed.isdigit() and len(typed) <= 6):
        return None
    return int(typed) if 0 < int(typed) <= MOST_COUNT else None
