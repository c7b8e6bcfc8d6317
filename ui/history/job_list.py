"""The jobs found, a page at a time while scrolling; and what is said where none is."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from benchlog.records import Job, JobState, Purpose
from ui import texts, theme
from ui.density import TIGHT, Density
from ui.moments import day_text
from ui.pieces import Elided, Pages, button, card, label, plain_hint

ROW_PX, NEAR_ROWS, LEAST_ROWS = 32, 20, 4
"""So many rows before the end of the list the next page is asked for."""
_WIDTHS = (72, 114, 180, 200, 0, 134, 140)
KIND, WHAT, COMPLAINT, STANDS = 2, 3, 4, 6


def plain_table(name: str, accessible: str, columns: Sequence[str]) -> QTableWidget:
    """A table to read, without a grid, whose rows are picked with mouse or keys; Tab leaves it."""
    table = QTableWidget(0, len(columns))
    table.setObjectName(name)
    table.setAccessibleName(accessible)
    table.setHorizontalHeaderLabels(list(columns))
    table.setFont(theme.font())
    header = table.horizontalHeader()
    header.setFont(theme.font(theme.SECOND_PX))
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    header.setHighlightSections(False)
    header.setMinimumSectionSize(40)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(ROW_PX)
    table.setShowGrid(False)
    table.setTabKeyNavigation(False)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return table


class _Modest(Pages):
    """Asks for the least it can be: it grows with the room there is, and has nobody scroll where that is enough."""

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        return super().minimumSizeHint().expandedTo(QSize(0, LEAST_ROWS * ROW_PX))


class JobList(QWidget):
    """`picked` a job by its key; `more_wanted` when the end comes near; `all_wanted`: without any filter."""

    picked = Signal(int)
    more_wanted = Signal()
    all_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._jobs: list[Job] = []
        self._more = False
        self.table = plain_table("history_table", texts.HISTORY_TABLE, texts.JOB_COLUMNS)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        header = self.table.horizontalHeader()
        for index, width in enumerate(_WIDTHS):
            if width:
                self.table.setColumnWidth(index, width)
            else:
                header.setSectionResizeMode(index, QHeaderView.ResizeMode.Stretch)
        self.table.itemSelectionChanged.connect(self._pick_row)
        self.table.verticalScrollBar().valueChanged.connect(lambda _: self._look_at_end())
        self.pages = _Modest()
        self.pages.addWidget(self.table)
        self.pages.addWidget(self._empty_card())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self._only_row())
        column.addWidget(self.pages, 1)

    def fit(self, density: Density) -> None:
        """Columns go as there is room for them; all of a job is below its line once it is picked."""
        narrow = density.narrow
        for column in (WHAT, COMPLAINT):
            self.table.setColumnHidden(column, narrow)
        self.table.setColumnHidden(STANDS, density is TIGHT)
        mode = QHeaderView.ResizeMode.Stretch if narrow else QHeaderView.ResizeMode.Interactive
        self.table.horizontalHeader().setSectionResizeMode(KIND, mode)
        if not narrow:
            self.table.setColumnWidth(KIND, _WIDTHS[KIND])

    def _only_row(self) -> QWidget:
        self.only = card("quiet")
        self.only.setObjectName("history_only")
        row = QHBoxLayout(self.only)
        row.setContentsMargins(12, 2, 4, 2)
        self.only_words = Elided("")
        self.only_all = button(texts.ALL_JOBS, "history_only_all")
        self.only_all.setMinimumHeight(theme.TOUCH_PX - 8)
        self.only_all.clicked.connect(self.all_wanted)
        row.addWidget(self.only_words, 1)
        row.addWidget(self.only_all)
        self.only.hide()
        return self.only

    def _empty_card(self) -> QWidget:
        made = card()
        made.setObjectName("history_empty")
        column = QVBoxLayout(made)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(8)
        self.empty_say = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.empty_why = label("", "second", wrap=True)
        self.empty_all = button(texts.ALL_JOBS, "history_empty_all")
        self.empty_all.clicked.connect(self.all_wanted)
        column.addWidget(self.empty_say)
        column.addWidget(self.empty_why)
        column.addWidget(self.empty_all, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)  # at the top: in a small window the foot of the card is out of sight
        return made

    @property
    def jobs(self) -> list[Job]:
        return list(self._jobs)

    def show_jobs(self, jobs: Sequence[Job], *, more: bool, added: bool = False) -> None:
        """`more`: there are others after these. `added`: these come after those that are shown."""
        begin = len(self._jobs) if added else 0
        self._jobs = [*self._jobs, *jobs] if added else list(jobs)
        self._more = more
        self.table.blockSignals(True)
        if not added:
            self.table.clearSelection()
            self.table.setCurrentCell(-1, -1)
            self.table.scrollToTop()
        self.table.setRowCount(len(self._jobs))
        for row, job in enumerate(self._jobs[begin:], begin):
            for column, text in enumerate(_cells(job)):
                cell = QTableWidgetItem(text)
                cell.setToolTip(plain_hint(text))
                self.table.setItem(row, column, cell)
        self.table.blockSignals(False)
        self.pages.setCurrentIndex(0 if self._jobs else 1)

    def say_empty(self, say: str, why: str, *, filtered: bool) -> None:
        self.empty_say.setText(say)
        self.empty_why.setText(why)
        self.empty_all.setVisible(filtered)

    def show_only(self, words: str) -> None:
        """That these are the jobs behind a figure; "" where they are not."""
        self.only_words.say(words)
        self.only.setVisible(bool(words))

    def chosen(self) -> Job | None:
        rows = self.table.selectionModel().selectedRows()
        return self._jobs[rows[0].row()] if rows else None

    def put_again(self, job: Job) -> None:
        """A job that is shown has changed."""
        for row, shown in enumerate(self._jobs):
            if shown.id == job.id:
                self._jobs[row] = job
                for column, text in enumerate(_cells(job)):
                    cell = self.table.item(row, column)
                    if cell is not None:
                        cell.setText(text)
                        cell.setToolTip(plain_hint(text))

    def _pick_row(self) -> None:
        job = self.chosen()
        if job is not None:
            self.picked.emit(job.id)

    def _look_at_end(self) -> None:
        last = self.table.rowAt(self.table.viewport().height() - 1)
        if self._more and (last < 0 or last >= len(self._jobs) - NEAR_ROWS):
            self._more = False  # asked for once
            self.more_wanted.emit()


def _cells(job: Job) -> tuple[str, ...]:
    ended = texts.NO_RUN_YET
    if job.purpose is Purpose.MEASURING:
        ended = texts.MEASURING
    elif job.last_outcome is not None:
        words = {one.value: said for one, said in texts.OUTCOME_WORDS.items()}
        ended = words.get(job.last_outcome, job.last_outcome)  # it may be a word of a newer program
    elif job.state is JobState.CLOSED:
        ended = texts.NOTHING
    what = " · ".join(part for part in (job.item.model, job.item.serial) if part) or texts.NOTHING
    return (
        f"{job.number:04d}",
        day_text(job.opened_utc),
        job.item.kind,
        what,
        job.complaint,
        ended,
        texts.STATE_WORDS[job.state],
    )
