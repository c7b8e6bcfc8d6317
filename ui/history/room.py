"""History: jobs found by a word, their runs, and a run's trace as it was. This room can switch nothing on."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QPlainTextEdit,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from benchlog.records import Event, EventKind, Job, JobState, Run, Trace
from ui import sayings, texts, theme
from ui.charts.live_plot import LivePlot
from ui.charts.marks import Mark
from ui.moments import clock_text, day_text
from ui.pieces import Chooser, button, card, label, plain_hint
from ui.stages.run_view import band_name, mark_word
from ui.theme import Tokens

SEARCH_PAUSE_MS = 150
ROW_PX, RECORD_PX = 36, 300


class HistoryRoom(QWidget):
    """Shows what it is given and says what is wanted; it reads nothing itself."""

    searched = Signal(str)
    older_wanted = Signal(str, int)
    job_picked = Signal(int)
    run_picked = Signal(int)
    to_bench = Signal(int)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._jobs: list[Job] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._search_row())
        self.table = self._make_table()
        column.addWidget(self.table, 5)
        column.addWidget(self._detail_card(tokens), 6)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(SEARCH_PAUSE_MS)
        self._pause.timeout.connect(lambda: self.searched.emit(self.search.text()))

    def _search_row(self) -> QHBoxLayout:
        self.search = QLineEdit()
        self.search.setObjectName("history_search")
        self.search.setAccessibleName(texts.SEARCH_NAME)
        self.search.setPlaceholderText(texts.SEARCH_HINT)
        self.search.setFont(theme.font(17))
        self.search.setMinimumHeight(theme.TOUCH_PX)
        self.search.textChanged.connect(lambda: self._pause.start())
        self.count = label("", "second", px=theme.SECOND_PX)
        self.count.setObjectName("history_count")
        self.older = button(texts.HISTORY_OLDER, "history_older")
        self.older.clicked.connect(self._want_older)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(self.search, 1)
        row.addWidget(self.count)
        row.addWidget(self.older)
        return row

    def _make_table(self) -> QTableWidget:
        table = QTableWidget(0, len(texts.HISTORY_COLUMNS))
        table.setObjectName("history_table")
        table.setAccessibleName(texts.HISTORY_TABLE)
        table.setHorizontalHeaderLabels(texts.HISTORY_COLUMNS)
        table.setFont(theme.font())
        table.horizontalHeader().setFont(theme.font(theme.SECOND_PX))
        table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        table.horizontalHeader().setHighlightSections(False)
        table.verticalHeader().hide()
        table.verticalHeader().setDefaultSectionSize(ROW_PX)
        table.setShowGrid(False)
        table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        header = table.horizontalHeader()
        for index, width in enumerate((72, 108, 196, 156, 0, 130, 64)):
            if width:
                table.setColumnWidth(index, width)
            else:
                header.setSectionResizeMode(index, QHeaderView.ResizeMode.Stretch)
        table.itemSelectionChanged.connect(self._pick_row)
        return table

    def _detail_card(self, tokens: Tokens) -> QWidget:
        made = card()
        lines = QVBoxLayout(made)
        lines.setContentsMargins(14, 10, 10, 8)
        lines.setSpacing(4)
        self.detail = label(texts.HISTORY_PICK, bold=True)
        self.detail.setObjectName("history_detail")
        self.runs = Chooser("history_runs", texts.HISTORY_RUNS)
        self.runs.setMinimumWidth(380)
        self.runs.activated.connect(lambda index: self.run_picked.emit(self.runs.itemData(index)))
        self.runs.hide()
        self.bench_button = button(texts.HISTORY_TO_BENCH, "history_to_bench")
        self.bench_button.clicked.connect(self._press_to_bench)
        self.bench_button.hide()
        top = QHBoxLayout()
        top.setSpacing(10)
        top.addWidget(self.detail, 1)
        top.addWidget(self.runs)
        top.addWidget(self.bench_button)
        self.words = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.words.setObjectName("history_words")
        self.record = QPlainTextEdit()
        self.record.setObjectName("history_record")
        self.record.setAccessibleName(texts.HISTORY_RECORD)
        self.record.setReadOnly(True)
        self.record.setTabChangesFocus(True)
        self.record.setFont(theme.font(theme.SECOND_PX))
        self.record.setFixedWidth(RECORD_PX)
        self.record.hide()
        self.plot = LivePlot(tokens)
        self.plot.setMinimumHeight(150)
        lines.addLayout(top)
        lines.addWidget(self.words)
        beside = QHBoxLayout()
        beside.addWidget(self.plot, 1)
        beside.addWidget(self.record)
        lines.addLayout(beside, 1)
        return made

    def show_jobs(self, jobs: Sequence[Job], *, more: bool, added: bool = False) -> None:
        """`more`: there may be older ones. `added`: these are older ones for the end of the list."""
        self._jobs = [*self._jobs, *jobs] if added else list(jobs)
        self.table.blockSignals(True)
        self.table.setRowCount(len(self._jobs))
        for row, job in enumerate(self._jobs):
            for column, text in enumerate(_cells(job)):
                cell = QTableWidgetItem(text)
                cell.setToolTip(plain_hint(text))
                self.table.setItem(row, column, cell)
        if not added:
            self.table.clearSelection()
        self.table.blockSignals(False)
        count = len(self._jobs)
        words = texts.JOBS_COUNT_MORE if more else texts.JOBS_COUNT_ONE if count == 1 else texts.JOBS_COUNT
        self.count.setText(words.format(count=count))
        self.older.setVisible(more)

    def picked(self) -> Job | None:
        rows = self.table.selectionModel().selectedRows()
        return self._jobs[rows[0].row()] if rows else None

    def _pick_row(self) -> None:
        job = self.picked()
        if job is not None:
            self.job_picked.emit(job.id)

    def _want_older(self) -> None:
        if self._jobs:
            self.older_wanted.emit(self.search.text(), self._jobs[-1].number)

    def _press_to_bench(self) -> None:
        job = self.picked()
        if job is not None:
            self.to_bench.emit(job.id)

    def show_job(self, job: Job, runs: Sequence[Run]) -> None:
        self.detail.setText(texts.JOB_DETAIL.format(number=job.number, kind=job.item.kind))
        self.bench_button.setVisible(job.state is not JobState.CLOSED)
        self.runs.clear()
        for run in runs:
            line = texts.RUN_LINE.format(
                kind=texts.RUN_KIND_NAMES[run.kind],
                at=clock_text(run.started_utc),
                outcome=sayings.run_words(run.kind, run.result),
            )
            self.runs.addItem(line, run.id)
        self.runs.setVisible(bool(runs))
        self.plot.clear()
        self.plot.set_ceilings(None, None)
        told = " ".join(sayings.sentence(part) for part in (job.cause, job.work_done, job.prognosis) if part)
        self.words.setText(told or ("" if runs else texts.HISTORY_NO_RUN))
        if runs:
            self.runs.setCurrentIndex(len(runs) - 1)
            self.run_picked.emit(runs[-1].id)

    def show_record(self, lines: Sequence[str]) -> None:
        """The newest line is in sight."""
        self.record.setPlainText("\n".join(lines))
        self.record.setVisible(bool(lines))
        self.record.verticalScrollBar().setValue(self.record.verticalScrollBar().maximum())

    def show_run(self, ceilings: tuple[float | None, float | None], events: Sequence[Event], trace: Trace) -> None:
        """The trace as it was, with its steps and marks."""
        self.plot.clear()
        self.plot.set_ceilings(*ceilings)
        self.plot.add_readings(trace.t_s, trace.volts, trace.amps)
        for event in events:
            if event.kind is EventKind.STEP and not event.values.get("skipped"):
                self.plot.begin_band(band_name(event), event.t_s, important="rung" in event.values)
            word = texts.MARK_WORDS.get(event.kind.value)
            if word is not None:
                self.plot.add_mark(
                    Mark(t_s=event.t_s, word=mark_word(event, word), strong=event.kind is EventKind.TURNING)
                )
        self.plot.finish()

    def set_tokens(self, tokens: Tokens) -> None:
        self.plot.set_tokens(tokens)


def _cells(job: Job) -> tuple[str, ...]:
    ended = texts.NO_RUN_YET
    if job.last_outcome is not None:
        ended = job.last_outcome.replace("-", " ")  # also a word of a newer program
    elif job.state is JobState.CLOSED:
        ended = texts.STATE_CLOSED
    what = " · ".join(part for part in (job.item.model, job.item.serial) if part) or texts.NOTHING
    return (
        f"{job.number:04d}",
        day_text(job.opened_utc),
        job.item.kind,
        what,
        job.complaint,
        ended,
        str(job.runs) if job.runs else texts.NOTHING,
    )
