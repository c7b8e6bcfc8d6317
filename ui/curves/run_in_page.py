"""Running a motor in: how long and at what pace, and its current as it goes, over all of that time."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.bench.frames import Progress, Question, Request
from benchlog.errors import Refused
from benchlog.outcome import RunResult
from benchlog.quantities import parse
from benchlog.records import Event, EventKind, Run, RunKind, Trace
from benchlog.recovery.running_in import DRIFT
from benchlog.recovery.start_test import RunIn, check
from ui import curve_texts as texts
from ui import retelling, sayings, theme
from ui.charts.live_plot import LivePlot
from ui.charts.marks import Mark
from ui.curves.form_rows import grid_of, line, put
from ui.density import Density
from ui.moments import now_utc
from ui.pieces import FewLines, Tick, button, card, grey, label, scrolled
from ui.quantity_edit import QuantityEdit
from ui.stages.question import QuestionCard
from ui.stages.run_view import caption_of
from ui.theme import Tokens
from ui.wrapping import WrapRow

HOUR_S = 3600.0
LEAST_SPAN_S = 120.0
FLAT_FOR_S = 600.0


class RunInPage(QWidget):
    """`begun` a RunIn that is to begin; `cleared` when hands are said to be clear. Takes a run's frames itself."""

    begun = Signal(object)
    cleared = Signal()
    rungs = None

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.kind = RunKind.RUN_IN
        self._drift = ""
        self.say_label = label(texts.RUN_IN_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.say_label.setObjectName("run_in_say")
        self.why_label = FewLines(2, "second")
        self.why_label.say(texts.RUN_IN_WHY)
        self.question = QuestionCard(tokens)
        self.plot = LivePlot(tokens, characters=False)
        self.plot.setObjectName("run_in_plot")
        self.plot.follow_whole(LEAST_SPAN_S)
        chart = card()
        inside = QVBoxLayout(chart)
        inside.setContentsMargins(6, 4, 2, 4)
        inside.addWidget(self.plot)
        self.due = FewLines(2, "look")
        self.due.setObjectName("run_in_due")
        self.due.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        work = QWidget()
        middle = QVBoxLayout(work)
        middle.setContentsMargins(0, 0, 0, 0)
        middle.setSpacing(8)
        middle.addWidget(self.question)
        middle.addWidget(chart, 1)
        middle.addWidget(self.due)
        middle.addWidget(self._fields_card())
        column.addWidget(scrolled(work), 1)

    def fit(self, density: Density) -> None:
        self.plot.setMinimumSize(240, density.chart_px)

    def _fields_card(self) -> QWidget:
        self.form = card()
        column = QVBoxLayout(self.form)
        column.setContentsMargins(18, 12, 18, 14)
        column.setSpacing(8)
        fields = QWidget()
        grid = grid_of(fields, 4)
        grid.setContentsMargins(0, 0, 0, 0)
        column.addWidget(fields)
        self.volts = QuantityEdit("V", texts.RUN_IN_VOLTS)
        self.volts.setObjectName("run_in_volts")
        self.volts.setFont(theme.font())
        self.hours = line("run_in_hours", texts.RUN_IN_HOURS)
        self.hours.setText("1")
        self.pace = QuantityEdit("s", texts.RUN_IN_PACE)
        self.pace.setObjectName("run_in_pace")
        self.pace.setFont(theme.font())
        self.pace.put(1.0)
        self.mass = line("run_in_mass", texts.RUN_IN_MASS, texts.RUN_IN_MASS_HINT)
        for place, (words, field) in enumerate(
            (
                (texts.RUN_IN_VOLTS, self.volts),
                (texts.RUN_IN_HOURS, self.hours),
                (texts.RUN_IN_PACE, self.pace),
                (texts.RUN_IN_MASS, self.mass),
            )
        ):
            put(grid, 0, place, words, field)
        self.flat = Tick(texts.RUN_IN_FLAT, "run_in_flat")
        self.flat.setChecked(True)
        self.restart = Tick(texts.RUN_IN_RESTART, "run_in_restart")
        self.restart.setChecked(True)
        self.clear = Tick(retelling.told(texts.RUN_IN_CLEAR), "run_in_clear")
        self.clear.toggled.connect(lambda on: self.cleared.emit() if on else None)
        self.clear.toggled.connect(lambda _: self._judge())
        self.problem = label("", "ask", px=theme.SECOND_PX, wrap=True)
        self.problem.setObjectName("run_in_problem")
        self.start = button(texts.RUN_IN_START, "run_in_start", "main")
        self.start.clicked.connect(self._begin)
        ticks, row = WrapRow(spacing=28), WrapRow()
        for tick in (self.flat, self.restart):
            ticks.add(tick)
        row.add(self.clear)
        row.add(self.problem, stretch=1, least=120)
        row.add(self.start)
        column.addLayout(ticks)
        column.addLayout(row)
        self._why = texts.RUN_IN_NO_JOB
        self._judge()
        return self.form

    # before

    def offer(self, why: str, rated_volts: float | None) -> None:
        """`why` nothing can begin; "" where it can."""
        self._why = why
        if rated_volts is not None and not self.volts.text():
            self.volts.put(rated_volts)
        self._judge()

    def forget(self) -> None:
        """Another job."""
        self.volts.clear()
        self.clear.setChecked(False)
        self.plot.clear()
        self.show_due("")
        self.say(texts.RUN_IN_SAY, texts.RUN_IN_WHY)

    def show_due(self, words: str) -> None:
        """That it is to be started once more when it is cold; "" where it is not."""
        self.due.say(words)
        self.due.setVisible(bool(words))

    def _judge(self) -> None:
        why = self._why or ("" if self.clear.isChecked() else texts.NEEDS_CLEAR)
        grey(self.start, why)

    def asked(self) -> RunIn | str:
        """As typed, or what is wrong with it."""
        volts, pace_s = self.volts.value(), self.pace.value()
        if volts is None:
            return texts.WRONG_FIELD.format(name=texts.RUN_IN_VOLTS, unit="V")
        if pace_s is None or pace_s > 1.0:
            return texts.RUN_IN_WRONG_PACE
        try:
            hours = parse(self.hours.text(), "")
            mass_g = parse(self.mass.text(), "") if self.mass.text().strip() else None
            made = RunIn(
                volts=volts,
                at_most_s=HOUR_S * hours,
                pace_s=pace_s,
                flat_for_s=FLAT_FOR_S if self.flat.isChecked() else 0.0,
                restart=self.restart.isChecked(),
                mass_g=mass_g,
            )
            check(made)
        except (ValueError, Refused) as problem:
            return sayings.sentence(str(problem))
        return made

    def _begin(self) -> None:
        asked = self.asked()
        self.problem.setText(asked if isinstance(asked, str) else "")
        if isinstance(asked, RunIn):
            self.begun.emit(asked)

    def say(self, what: str, why: str) -> None:
        self.say_label.setText(what)
        self.why_label.say(why)

    # a run as it goes

    def begin(self, request: Request) -> None:
        self.form.hide()
        self.plot.clear()
        self.plot.caption.run = caption_of(request.kind, now_utc())
        self._drift = ""
        ceiling = min((one.volts for one in request.layers.values() if one.volts), default=request.rated_volts)
        amps = min((one.amps for one in request.layers.values() if one.amps), default=None)
        self.plot.set_ceilings(ceiling, amps)
        self.plot.setFocus()
        self.say(*texts.BEGINNING)

    def show_progress(self, progress: Progress) -> None:
        self.plot.add_readings(progress.t_s, progress.volts, progress.amps)

    def show_event(self, event: Event) -> None:
        why = event.values.get("why")
        if event.kind in (EventKind.STEP, EventKind.NOTE, EventKind.LOOK, EventKind.TRIP, EventKind.RESCUE):
            self.say(sayings.sentence(event.text), sayings.sentence(str(why)) if why else texts.RUN_IN_STAY)
        if event.kind is EventKind.STEP:
            self.plot.begin_band(retelling.told(str(event.values.get("name", ""))), event.t_s)
        if event.kind is EventKind.TRIP:
            self.plot.add_mark(Mark(t_s=event.t_s, word=texts.CUT_OFF, strong=True))
        if event.values.get("name") == DRIFT:
            self._drift = sayings.sentence(event.text)

    def ask(self, question: Question) -> None:
        self.question.ask(question)

    def end(self, result: RunResult) -> None:
        self.form.show()
        self.question.withdraw()
        self.plot.finish()
        self.plot.look(None)
        say, why = sayings.ended_sentences(RunKind.RUN_IN, result)
        self.say(self._drift or say, f"{say} {why}" if self._drift else why)

    def show_filed(self, run: Run, events: list[Event], trace: Trace) -> None:
        """The last one of a job, to look at."""
        self.plot.clear()
        self._drift = ""
        self.plot.caption.run = caption_of(run.kind, run.started_utc)
        self.plot.add_readings(trace.t_s, trace.volts, trace.amps)
        for event in events:
            self.show_event(event)
        self.end(run.result)

    def set_tokens(self, tokens: Tokens) -> None:
        self.plot.set_tokens(tokens)
        self.question.set_tokens(tokens)
