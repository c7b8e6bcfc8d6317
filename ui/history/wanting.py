"""What is looked for: a search field over everything, and filters that narrow it down. Both pages follow them."""

from datetime import date

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from benchlog.ledger.finding_jobs import Choices
from benchlog.ledger.wanted import Month, Order, Waits, Wanted, opened_from, opened_until
from benchlog.outcome import Outcome
from benchlog.records import JobState
from ui import texts, theme
from ui.moments import now_utc
from ui.pieces import Chooser, button, label, set_look
from ui.wrapping import WrapRow

SEARCH_PAUSE_MS = 120
LEAST_PX, BESIDE_PX, LEAST_DAY_PX, MOST_DAY_PX, LEAST_DAYS_PX = 116, 50, 96, 180, 424
"""BESIDE_PX: what a chooser has around its words, its arrow among it."""


class Wanting(QWidget):
    """`changed` a moment after the last letter, at once for a filter."""

    changed = Signal()

    def __init__(self, before: QWidget, after: QWidget) -> None:
        """`before` and `after`: what else stands in the row of the search field."""
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._search_row(before, after))
        column.addLayout(self._filter_row())
        column.addWidget(self.not_a_day)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(SEARCH_PAUSE_MS)
        self._pause.timeout.connect(self.changed)

    def _search_row(self, before: QWidget, after: QWidget) -> WrapRow:
        self.search = QLineEdit()
        self.search.setObjectName("history_search")
        self.search.setAccessibleName(texts.SEARCH_NAME)
        self.search.setPlaceholderText(texts.SEARCH_ALL_HINT)
        self.search.setFont(theme.font(17))
        self.search.setMinimumHeight(theme.TOUCH_PX)
        self.search.textChanged.connect(lambda: self._pause.start())
        row = WrapRow()
        row.add(before)
        row.add(self.search, stretch=1, least=180)
        row.add(after)
        return row

    def _filter_row(self) -> WrapRow:
        row = WrapRow(spacing=6)
        self.kind = self._filter("history_kind", texts.FILTER_KIND, texts.ANY_KIND)
        self.cause = self._filter("history_cause", texts.FILTER_CAUSE, texts.ANY_CAUSE)
        self.outcome = self._filter("history_outcome", texts.FILTER_OUTCOME, texts.ANY_OUTCOME)
        for outcome in Outcome:
            self.outcome.addItem(texts.OUTCOME_WORDS[outcome], outcome.value)
        self.state = self._filter("history_state", texts.FILTER_STATE, texts.ANY_STATE)
        self.state.addItem(texts.STATE_WAITING, Waits.WAITING)
        for state in JobState:
            self.state.addItem(texts.STATE_WORDS[state], state)
        self.who = self._filter("history_who", texts.FILTER_WHO, texts.ANY_WHO)
        for chooser in (self.kind, self.cause, self.outcome, self.state, self.who):
            row.add(chooser, stretch=3, least=LEAST_PX)
        self.order = self._filter("history_order", texts.FILTER_ORDER, "")
        self.order.clear()
        for order, said in texts.ORDERS.items():
            self.order.addItem(said, Order(order))
        row.add(self.order, stretch=3, least=LEAST_PX)
        row.add(self._days(), stretch=9, least=LEAST_DAYS_PX)
        self.not_a_day = label("", "ask", px=theme.SECOND_PX, wrap=True)
        self.not_a_day.setObjectName("history_not_a_day")
        self.not_a_day.hide()
        return row

    def _days(self) -> QWidget:
        """Two days, and months that one press writes into them."""
        self.since, self.until = (
            self._day(name, said, hint)
            for name, said, hint in (
                ("history_since", texts.FILTER_SINCE, texts.SINCE_HINT),
                ("history_until", texts.FILTER_UNTIL, texts.UNTIL_HINT),
            )
        )
        self.months = {month: self._month(month) for month in Month}
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        for part in self.months.values():
            row.addWidget(part)
        for field in (self.since, self.until):
            field.setMaximumWidth(MOST_DAY_PX)
            row.addWidget(field, 1)
        row.addStretch(0)
        return made

    def _month(self, month: Month) -> QPushButton:
        made = button(texts.MONTHS[month], f"history_{month}_month", "choice")
        made.setFont(theme.font(theme.SECOND_PX))
        made.setMinimumHeight(theme.TOUCH_PX - 4)
        made.setCheckable(True)
        made.setToolTip(texts.MONTHS_HINT)
        made.clicked.connect(lambda on: self._pick_month(month if on else None))
        return made

    def _pick_month(self, month: Month | None) -> None:
        days = month.days(now_utc()) if month else ("", "")
        for field, day in zip((self.since, self.until), days, strict=True):
            field.setText(str(day))
        self._pause.stop()
        self.changed.emit()

    def _filter(self, name: str, accessible: str, everything: str) -> Chooser:
        made = Chooser(name, accessible)
        made.setToolTip(accessible)
        made.setFont(theme.font(theme.SECOND_PX))
        made.setMinimumWidth(max(LEAST_PX, made.fontMetrics().horizontalAdvance(everything) + BESIDE_PX))
        made.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        made.setMinimumContentsLength(6)
        made.view().setMinimumWidth(220)
        made.addItem(everything, None)
        made.currentIndexChanged.connect(lambda _: self.changed.emit())
        return made

    def _day(self, name: str, accessible: str, hint: str) -> QLineEdit:
        made = QLineEdit()
        made.setObjectName(name)
        made.setAccessibleName(accessible)
        made.setToolTip(accessible)
        made.setPlaceholderText(hint)
        made.setFont(theme.font(theme.SECOND_PX))
        made.setMinimumHeight(theme.TOUCH_PX - 4)
        made.setMinimumWidth(LEAST_DAY_PX)
        made.setMaxLength(10)
        made.textChanged.connect(lambda: self._pause.start())
        return made

    def offer(self, choices: Choices) -> None:
        """What there is in this ledger; what is chosen stays chosen."""
        for chooser, found in ((self.kind, choices.kinds), (self.cause, choices.causes), (self.who, choices.persons)):
            chosen = chooser.currentData()
            chooser.blockSignals(True)
            while chooser.count() > 1:
                chooser.removeItem(1)
            for one in found:
                chooser.addItem(one, one)
            chooser.setCurrentIndex(max(0, chooser.findData(chosen)))
            chooser.blockSignals(False)

    def wanted(self) -> Wanted:
        """Days are those of this place, both included; what is no day yet lets all through and is marked."""
        since, until = self._read_day(self.since), self._read_day(self.until)
        wrong = [field.text().strip() for field in (self.since, self.until) if field.property("wrong") == "true"]
        self.not_a_day.setText(texts.NOT_A_DAY.format(said=wrong[0]) if wrong else "")
        self.not_a_day.setVisible(bool(wrong))
        for month, one in self.months.items():
            one.setChecked((since, until) == month.days(now_utc()))
        return Wanted(
            text=self.search.text(),
            kind=self.kind.currentData() or "",
            cause=self.cause.currentData() or "",
            outcome=self.outcome.currentData() or "",
            state=_state(self.state.currentData()),
            since_utc=opened_from(since) if since else "",
            until_utc=opened_until(until) if until else "",
            who=self.who.currentData() or "",
            order=Order(self.order.currentData()),
        )

    def blank(self) -> None:
        """All jobs again, in the order that was chosen; nothing is told."""
        fields = (self.search, self.since, self.until)
        choosers = (self.kind, self.cause, self.outcome, self.state, self.who)
        for field in fields:
            field.clear()
        for chooser in choosers:
            chooser.blockSignals(True)
        for chooser in choosers:
            chooser.setCurrentIndex(0)
            chooser.blockSignals(False)
        self._pause.stop()
        self.wanted()

    def _read_day(self, field: QLineEdit) -> date | None:
        said = field.text().strip()
        found = _day_of(said)
        set_look(field, "true" if said and found is None else "false", name="wrong")
        return found


def _day_of(said: str) -> date | None:
    """2026-11-25 or 25.11.2026; None for all else: with strokes nobody knows which is the month."""
    day, dot, rest = said.partition(".")
    if dot:
        month, _, year = rest.partition(".")
        said = f"{year}-{month:0>2}-{day:0>2}"
    try:
        return date.fromisoformat(said)
    except ValueError:
        return None


def _state(data: object) -> JobState | Waits | None:
    # A combo box gives a str back where it was given a kind of str.
    if data is None:
        return None
    return Waits.WAITING if str(data) == Waits.WAITING.value else JobState(str(data))
