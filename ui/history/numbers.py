"""What the jobs came to, for the owner: a table whose every number opens the jobs behind it, and plots of a group."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QFont, QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from benchlog.history.past import Ids
from ui import texts, theme
from ui.charts.shares import Bar, Intervals, NotBack
from ui.density import Density
from ui.history.figures import RUNG, Figures, Remark, Row
from ui.history.job_list import plain_table
from ui.pieces import Chooser, Elided, button, card, label, plain_hint, scrolled
from ui.theme import Tokens

_WIDTHS = (0, 54, 168, 120, 120, 146, 146, 92)
_RUNG_WIDTHS = (0, 260, 220)
NAME_PX, LEAST_PX = 150, 190
"""Where it is narrow: how wide the names are, and how high each part is at the least."""
TABLE_PX = 198
"""Its head and five rows, whole: a pixel less and a bar beside them takes the names their room."""


class NumbersPage(QWidget):
    """`by_changed` when another grouping is chosen; `opened` with what a figure is called and the jobs behind it."""

    by_changed = Signal()
    opened = Signal(str, object)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._rows: tuple[Row, ...] = ()
        self._name_px = 0
        self.by = Chooser("figures_by", texts.FIGURES_BY)
        for key, said in texts.FIGURE_KEYS.items():
            self.by.addItem(said, key)
        self.by.currentIndexChanged.connect(lambda _: self.by_changed.emit())
        self.about = Elided("", "second", px=theme.SECOND_PX)
        self.about.setObjectName("figures_about")
        self.table = plain_table("figures_table", texts.FIGURES_TABLE, texts.FIGURE_COLUMNS)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.table.currentCellChanged.connect(lambda row, *_: self._pick(row))
        self.table.cellClicked.connect(self._press_cell)
        self.table.installEventFilter(self)
        self.intervals, self.not_back = Intervals(tokens), NotBack(tokens)
        self.intervals.chosen.connect(lambda row: self.table.setCurrentCell(row, 0))
        self._lay_out()

    def _lay_out(self) -> None:
        top = QHBoxLayout()
        top.setSpacing(10)
        by = label(texts.FIGURES_BY, "second", px=theme.SECOND_PX)
        by.setBuddy(self.by)
        top.addWidget(by)
        top.addWidget(self.by)
        top.addWidget(self.about, 1)
        self.intervals_card, self.intervals_title = _titled(texts.INTERVALS_TITLE, self.intervals)
        self.not_back_card, self.not_back_title = _titled(texts.NOT_BACK_TITLE, self.not_back)
        self.not_back_about = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.not_back_about.setObjectName("figures_not_back_about")
        inside = self.not_back_card.layout()
        if inside is not None:
            inside.addWidget(self.not_back_about)
        plots = self._plots = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        plots.setSpacing(8)
        plots.addWidget(self.intervals_card, 9)
        plots.addWidget(self.not_back_card, 9)
        self.remarks_card = self._remarks_card()
        plots.addWidget(self.remarks_card, 7)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(top)
        column.addWidget(self.table, 10)
        column.addLayout(plots, 9)
        self.table.setMinimumHeight(TABLE_PX)

    def fit(self, density: Density) -> None:
        """The plots stand below one another where it is narrow, and the many columns of the table are scrolled."""
        below, policy = density.narrow, Qt.ScrollBarPolicy
        self._plots.setDirection(QBoxLayout.Direction.TopToBottom if below else QBoxLayout.Direction.LeftToRight)
        self.table.setHorizontalScrollBarPolicy(policy.ScrollBarAsNeeded if below else policy.ScrollBarAlwaysOff)
        self._name_px = NAME_PX if below else 0
        self._size_columns()
        for card_of in (self.intervals_card, self.not_back_card, self.remarks_card):
            card_of.setMinimumHeight(LEAST_PX if below else 0)

    def _remarks_card(self) -> QFrame:
        inside = QWidget()
        self.remarks = QVBoxLayout(inside)
        self.remarks.setContentsMargins(0, 0, 4, 0)
        self.remarks.setSpacing(4)
        made, _ = _titled("", scrolled(inside))
        made.setObjectName("figures_remarks")
        return made

    def show_figures(self, figures: Figures) -> None:
        self._rows = figures.rows
        table = self.table
        table.blockSignals(True)
        table.clear()
        table.setColumnCount(len(figures.columns))
        table.setHorizontalHeaderLabels(list(figures.columns))
        table.setRowCount(len(figures.rows))
        self._size_columns()
        for row, one in enumerate(figures.rows):
            for column, cell in enumerate(one.cells):
                table.setItem(row, column, _item(cell.text, figures.columns[column], one.label, len(cell.jobs), column))
        table.blockSignals(False)
        self.about.say(_about(figures))
        self.intervals.show_bars([Bar(name=row.label, rate=row.rate) for row in figures.rows])
        self.intervals_title.setText(texts.RUNGS_TITLE if self.by.currentData() == RUNG else texts.INTERVALS_TITLE)
        self.not_back_card.setVisible(self.by.currentData() != RUNG)
        self._show_remarks(figures)
        if figures.rows:
            table.setCurrentCell(0, 0)
        self._pick(table.currentRow())

    def _size_columns(self) -> None:
        widths = _WIDTHS if self.table.columnCount() == len(_WIDTHS) else _RUNG_WIDTHS
        for index, width in enumerate(widths[: self.table.columnCount()]):
            wide = width or self._name_px
            mode = QHeaderView.ResizeMode.Interactive if wide else QHeaderView.ResizeMode.Stretch
            self.table.horizontalHeader().setSectionResizeMode(index, mode)
            if wide:
                self.table.setColumnWidth(index, wide)

    def _show_remarks(self, figures: Figures) -> None:
        while (item := self.remarks.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()  # until it is deleted it would stand below the new ones
                widget.deleteLater()
        for name, title, none, remarks in (
            ("hopeless", texts.HOPELESS_TITLE, texts.HOPELESS_NONE, figures.hopeless),
            ("waits", texts.WAITS_TITLE, texts.WAITS_NONE, figures.waits),
        ):
            self.remarks.addWidget(label(title, bold=True))
            if not remarks:
                self.remarks.addWidget(label(none, "second", px=theme.SECOND_PX, wrap=True))
            for number, remark in enumerate(remarks):
                self.remarks.addWidget(label(remark.text, px=theme.SECOND_PX, wrap=True))
                self.remarks.addWidget(self._opens(remark, title, f"figures_{name}_{number}"))
        self.remarks.addStretch(1)

    def _opens(self, remark: Remark, title: str, name: str) -> QPushButton:
        words = texts.OPEN_ONE if len(remark.jobs) == 1 else texts.OPEN_MANY
        made = button(words.format(count=len(remark.jobs)), name, accessible=f"{title}: {remark.text}")
        made.setMinimumHeight(theme.TOUCH_PX - 10)
        made.setFont(theme.font(theme.SECOND_PX))
        told = f"{title}: {remark.text}"
        made.clicked.connect(lambda: self.opened.emit(told, remark.jobs))
        return made

    def _pick(self, number: int) -> None:
        self.intervals.pick(number)
        if not 0 <= number < len(self._rows):
            self.not_back_title.setText(texts.NOT_BACK_TITLE)
            self.not_back.show_survival(texts.NOT_BACK_PICK, None)
            self.not_back_about.setText("")
            return
        row = self._rows[number]
        self.not_back_title.setText(texts.NOT_BACK_OF.format(label=row.label))
        count = 0 if row.survival is None else len(row.survival.times)
        self.not_back.show_survival(row.label if count else texts.NOT_BACK_NONE, row.survival)
        ended = 0 if row.survival is None else row.survival.ended
        told = texts.NOT_BACK_ABOUT.format(count=count, ended=ended) if count else ""
        if row.unseen:
            told = f"{told} {texts.NOT_BACK_UNSEEN.format(count=len(row.unseen))}".strip()
        self.not_back_about.setText(told)

    def _press_cell(self, row: int, column: int) -> None:
        """The name picks its group; a number opens its jobs."""
        if column:
            self._open(row, column)

    def _open(self, row: int, column: int) -> None:
        if not 0 <= row < len(self._rows):
            return
        cell = self._rows[row].cells[column]
        jobs: Ids = cell.jobs
        if jobs:
            header = self.table.horizontalHeaderItem(column)
            what = "" if header is None else header.text()
            self.opened.emit(texts.BEHIND.format(label=self._rows[row].label, what=what, text=cell.text), jobs)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        enter = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        pressed = isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and event.key() in enter
        if pressed and watched is self.table:
            self._open(self.table.currentRow(), self.table.currentColumn())
            return True
        return super().eventFilter(watched, event)

    def set_tokens(self, tokens: Tokens) -> None:
        self.intervals.set_tokens(tokens)
        self.not_back.set_tokens(tokens)


def _item(text: str, column: str, row: str, jobs: int, number: int) -> QTableWidgetItem:
    made = QTableWidgetItem(text)
    opens = (texts.OPENS_ONE if jobs == 1 else texts.OPENS_MANY).format(count=jobs) if jobs else texts.OPENS_NONE
    made.setToolTip(plain_hint(f"{row}, {column}: {text}. {opens}"))
    made.setData(Qt.ItemDataRole.AccessibleTextRole, f"{row}, {column}: {text}. {opens}")
    if number and jobs:
        font = QFont(theme.font())
        font.setUnderline(True)
        made.setFont(font)
    return made


def _about(figures: Figures) -> str:
    if not figures.count:
        return texts.FIGURES_EMPTY
    return (texts.FIGURES_ABOUT_ONE if figures.count == 1 else texts.FIGURES_ABOUT).format(count=figures.count)


def _titled(title: str, content: QWidget) -> tuple[QFrame, QLabel]:
    made = card()
    column = QVBoxLayout(made)
    column.setContentsMargins(14, 8, 10, 8)
    column.setSpacing(4)
    words = label(title, bold=True)
    if title:
        column.addWidget(words)
    column.addWidget(content, 1)
    return made, words
