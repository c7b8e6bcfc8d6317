"""A picked job: its record, its runs as they were, another run laid under one, and what can be done with it here."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QBoxLayout, QFrame, QHBoxLayout, QMenu, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from benchlog.records import Event, EventKind, Job, JobState, Purpose, Run, RunKind, Trace
from ui import sayings, texts, theme
from ui.charts.live_plot import LivePlot
from ui.charts.marks import Mark
from ui.density import ROOMY, Density
from ui.history.correcting import CorrectionForm
from ui.moments import clock_text, day_text
from ui.pieces import Chooser, Elided, button, grey, label, scrolled
from ui.record.timeline import Line
from ui.record.timeline_list import TimelineList
from ui.stages.run_view import band_name, mark_word
from ui.theme import Tokens
from ui.wrapping import WrapRow

RECORD_PX, LEAST_PLOT_PX = 320, 128
_NO_MOST = 16_777_215
"""Qt's own word for no greatest width."""


class JobCard(QFrame):
    """`paper_wanted` and `export_wanted` with a key of texts.PAPERS or texts.EXPORTS; runs by their keys, 0: none."""

    run_picked = Signal(int)
    under_picked = Signal(int)
    to_bench = Signal(int)
    paper_wanted = Signal(str)
    export_wanted = Signal(str)
    corrected = Signal(str, object, str, str)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setProperty("look", "card")
        self.setObjectName("history_card")
        self.job: Job | None = None
        self._names: dict[int, str] = {}
        self.plot = LivePlot(tokens)
        self.plot.setMinimumSize(240, LEAST_PLOT_PX)
        self.record = TimelineList(tokens)
        self.record.setObjectName("history_record")
        self.record.setAccessibleName(texts.HISTORY_RECORD)
        self.correction = CorrectionForm()
        self.correction.left.connect(self.show_runs)
        self.correction.kept.connect(self.corrected)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 8, 8)
        column.setSpacing(6)
        column.addLayout(self._top())
        column.addWidget(self.words)
        beside = self._beside = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        beside.setSpacing(10)
        self.left = QStackedWidget()
        self.left.addWidget(self._runs_page())
        self.left.addWidget(scrolled(self.correction))
        beside.addWidget(self.left, 1)
        beside.addWidget(self.record)
        column.addLayout(beside, 1)
        self.fit(ROOMY)

    def fit(self, density: Density) -> None:
        """The record beside the runs, or below them."""
        below = density.narrow
        self._beside.setDirection(QBoxLayout.Direction.TopToBottom if below else QBoxLayout.Direction.LeftToRight)
        self.record.setMinimumSize(0 if below else RECORD_PX, LEAST_PLOT_PX if below else 0)
        self.record.setMaximumWidth(_NO_MOST if below else RECORD_PX)

    def _top(self) -> WrapRow:
        self.detail = label("", bold=True)
        self.detail.setObjectName("history_detail")
        self.words = Elided("", "second", px=theme.SECOND_PX)
        self.words.setObjectName("history_words")
        self.bench_button = button(texts.HISTORY_TO_BENCH, "history_to_bench")
        self.bench_button.clicked.connect(self._press_to_bench)
        self.correct_button = button(texts.CORRECT, "history_correct")
        self.correct_button.clicked.connect(self._press_correct)
        self.paper_button = _menu_button(texts.PAPER, "history_paper", texts.PAPERS, self.paper_wanted.emit)
        self.export_button = _menu_button(texts.EXPORT, "history_export", texts.EXPORTS, self.export_wanted.emit)
        row = WrapRow()
        row.add(self.detail, stretch=1)
        for part in (self.bench_button, self.correct_button, self.paper_button, self.export_button):
            part.setMinimumHeight(theme.TOUCH_PX - 4)
            row.add(part)
        return row

    def _runs_page(self) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.runs = Chooser("history_runs", texts.HISTORY_RUNS)
        self.runs.activated.connect(lambda index: self.run_picked.emit(self.runs.itemData(index)))
        self.under = Chooser("history_under", texts.UNDER)
        self.under.activated.connect(lambda index: self.under_picked.emit(self.under.itemData(index)))
        row = QHBoxLayout()
        row.setSpacing(8)
        for chooser, share in ((self.runs, 5), (self.under, 4)):
            chooser.setMinimumContentsLength(12)
            chooser.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            chooser.view().setMinimumWidth(380)
            row.addWidget(chooser, share)
        column.addLayout(row)
        column.addWidget(self.plot, 1)
        return page

    def show_job(self, job: Job, runs: Sequence[Run]) -> None:
        """The last run is picked."""
        other = self.job is None or self.job.id != job.id
        self.job = job
        self.detail.setText(texts.JOB_DETAIL.format(number=job.number, kind=job.item.kind))
        measuring = job.purpose is Purpose.MEASURING
        self.bench_button.setVisible(job.state is not JobState.CLOSED and not measuring)
        self.correct_button.setVisible(job.state is JobState.CLOSED)
        told = " ".join(sayings.full_stop(part) for part in (job.cause, job.work_done, job.prognosis) if part)
        about = "" if runs else texts.HISTORY_NO_RUN
        if measuring:
            checks = bool(runs) and all(run.kind is RunKind.CHECK for run in runs)
            about = texts.SUPPLY_CHECK_ABOUT if checks else texts.MEASURING_ABOUT
        self.words.say(told or about)
        self.words.setVisible(bool(self.words.text()))
        self.runs.clear()
        self._names = {run.id: run_name(run) for run in runs}
        for run in runs:
            self.runs.addItem(run_line(run), run.id)
        self.runs.setVisible(bool(runs))
        self.under.setVisible(False)
        self.plot.clear()
        self.plot.set_ceilings(None, None)
        if other:
            self.show_runs()
        if runs:
            self.runs.setCurrentIndex(len(runs) - 1)
            self.run_picked.emit(runs[-1].id)

    def show_record(self, lines: Sequence[Line]) -> None:
        """Newest first."""
        self.record.show_lines(lines)

    def show_run(self, ceilings: tuple[float | None, float | None], events: Sequence[Event], trace: Trace) -> None:
        """The trace as it was, with its steps and marks."""
        self.plot.clear()
        self.plot.caption.run = self._names.get(self.run(), "")
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

    def offer_under(self, others: Sequence[tuple[str, int]], chosen: int) -> None:
        """Other runs, of this job and of earlier ones of the same thing, each in words and by its key."""
        self.under.clear()
        self.under.addItem(texts.UNDER_NONE, 0)
        for words, run in others:
            self.under.addItem(words, run)
        self.under.setCurrentIndex(max(0, self.under.findData(chosen)))
        self.under.setVisible(bool(others))

    def show_under(self, name: str, trace: Trace | None) -> None:
        if trace is None:
            self.plot.lay_under("", [], [], [])
        else:
            self.plot.lay_under(name, trace.t_s, trace.volts, trace.amps)

    def run(self) -> int:
        """The key of the run that is looked at; 0 where there is none."""
        return int(self.runs.currentData() or 0)

    def grey(self, *, writing: str, paper: str) -> None:
        """Why the ledger can't be changed from here, and why no file is written now; "" where it can."""
        grey(self.correct_button, writing)
        for made in (self.paper_button, self.export_button):
            grey(made, paper)

    def show_runs(self) -> None:
        had = self.left.currentIndex() == 1
        self.left.setCurrentIndex(0)
        if had:
            self.correct_button.setFocus()

    def _press_to_bench(self) -> None:
        if self.job is not None:
            self.to_bench.emit(self.job.id)

    def _press_correct(self) -> None:
        if self.job is not None:
            self.correction.begin(self.job, self._names.get(self.run(), ""))
            self.left.setCurrentIndex(1)
            self.correction.field.setFocus()


def run_name(run: Run) -> str:
    """ "probe, 2026-11-25 14:03"."""
    at = f"{day_text(run.started_utc)} {clock_text(run.started_utc)}"
    return texts.RUN_NAME.format(kind=texts.RUN_KIND_NAMES[run.kind], at=at)


def run_line(run: Run) -> str:
    """With how it ended."""
    return texts.RUN_ENDED.format(run=run_name(run), outcome=sayings.run_words(run.kind, run.result))


def _menu_button(text: str, name: str, choices: dict[str, str], chosen: object) -> QPushButton:
    made = button(text, name)
    menu = QMenu(made)
    menu.setObjectName(f"{name}_menu")
    menu.setFont(theme.font())
    for key, said in choices.items():
        action = QAction(said, menu)
        action.setObjectName(f"{name}_{key}")
        action.triggered.connect(lambda _=False, one=key: chosen(one))  # type: ignore[operator]
        menu.addAction(action)
    made.setMenu(menu)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    return made
