"""The work of a run, the same for probe, free and prove: two sentences, the chart, and a row of what can be pressed."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.bench.frames import Progress, Question, Request
from benchlog.outcome import RunResult
from benchlog.records import Event, EventKind, Run, RunKind, Trace
from ui import retelling, sayings, texts, theme
from ui.charts.live_plot import LivePlot
from ui.charts.marks import Mark
from ui.density import ROOMY, Density
from ui.moments import clock_text, day_text, now_utc
from ui.pieces import FewLines, button, card, label, scrolled, set_look, show_if
from ui.run_request import ceilings_of
from ui.stages.question import QuestionCard
from ui.stages.rungs import RungRow
from ui.theme import Tokens
from ui.wrapping import WrapRow

_SPOKEN = frozenset(EventKind) - {
    EventKind.QUESTION,
    EventKind.ANSWER,
    EventKind.NOTE,
    EventKind.HAND,
    EventKind.SUPPLY,
}
"""Events whose sentence becomes the one at the top; the others leave it standing."""
_STRONG = frozenset({EventKind.TURNING, EventKind.TRIP, EventKind.RESCUE})


class RunView(QWidget):
    """`begun` asks for a run, `went_on` for the next stage; `hand` is a hand step pressed, `answered` a choice."""

    begun = Signal()
    went_on = Signal()
    hand = Signal(str)
    answered = Signal(int, str)

    def __init__(self, kind: RunKind, tokens: Tokens, *, ladder: bool = False) -> None:
        super().__init__()
        self.kind = kind
        self.shown = kind
        """The kind of the run that is shown: a stage may have more than one."""
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        column = self._column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.say_label.setObjectName(f"{kind.value}_say")
        self.why_label = FewLines(2, "second")
        self.why_label.setObjectName(f"{kind.value}_why")
        self.question = QuestionCard(tokens)
        self.question.answered.connect(self.answered)
        chart_card = card()
        inside = QVBoxLayout(chart_card)
        inside.setContentsMargins(6, 4, 2, 4)
        self.plot = LivePlot(tokens)
        self.plot.setObjectName(f"{kind.value}_plot")
        inside.addWidget(self.plot)
        self.rungs = RungRow(tokens) if ladder else None
        work = QWidget()
        self.middle = QVBoxLayout(work)
        self.middle.setContentsMargins(0, 0, 0, 0)
        self.middle.addWidget(self.question)
        self.middle.addWidget(chart_card, 1)
        if self.rungs is not None:
            self.middle.addWidget(self.rungs)
        self.work = scrolled(work)
        self.press_row = WrapRow()
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        column.addWidget(self.work, 1)
        column.addLayout(self.press_row)
        self._make_actions()
        self.say(*texts.RUN_BEFORE[kind])
        self.fit(ROOMY)

    def fit(self, density: Density) -> None:
        """What is said and what can be pressed stay in sight; the work between them is scrolled where it is narrow."""
        self.plot.setMinimumSize(240, density.chart_px)
        for column in (self._column, self.middle):
            column.setSpacing(min(8, density.gap_px - 2))

    def _make_actions(self) -> None:
        self.press_row.add_stretch()
        self.start_button = button(texts.RUN_START_BUTTON[self.kind], f"{self.kind.value}_start", "main")
        self.start_button.setToolTip(texts.RUN_START_HINT)
        self.start_button.clicked.connect(self.begun)
        self.on_button = button("", f"{self.kind.value}_go_on", "main")
        self.on_button.clicked.connect(self.went_on)
        self.press_row.add(self.start_button)
        self.press_row.add(self.on_button)
        self.on_button.hide()

    # what is said

    def say(self, what: str, why: str) -> None:
        self.say_label.setText(what)
        self.why_label.say(why)

    def offer(self, *, start: bool, again: bool, on_to: str, done: bool) -> None:
        """Which buttons there are: to begin (again), and to go on to the stage named `on_to` ("" for none).

        The likelier one is the heavier: going on where this stage is `done`.
        """
        words = texts.RUN_AGAIN_BUTTON if again else texts.RUN_START_BUTTON
        self.start_button.setText(words[self.kind])
        self.start_button.setAccessibleName(words[self.kind])
        show_if(self.start_button, start, else_to=self)
        self.on_button.setText(texts.GO_ON.format(stage=on_to))
        self.on_button.setAccessibleName(self.on_button.text())
        show_if(self.on_button, bool(on_to), else_to=self)
        set_look(self.start_button, "" if done else "main")
        set_look(self.on_button, "main" if done else "")

    # a run as it goes

    def begin(self, request: Request) -> None:
        self.shown = request.kind
        self.plot.clear()
        self.plot.caption.run = caption_of(request.kind, now_utc())
        self._lay_out(request)
        self.say(*texts.RUN_STARTING)

    def _lay_out(self, request: Request) -> None:
        ceiling = min((limits.volts for limits in request.layers.values() if limits.volts), default=request.rated_volts)
        amps = min((limits.amps for limits in request.layers.values() if limits.amps), default=None)
        self.plot.set_ceilings(ceiling, amps)
        if self.rungs is not None:
            self.rungs.lay_out(request.sequence, request.rated_volts, ceiling)

    def show_progress(self, progress: Progress) -> None:
        self.plot.add_readings(progress.t_s, progress.volts, progress.amps)
        bounds = {used.name: used.ceiling for used in progress.used}
        if "volts" in bounds or "amps" in bounds:
            self.plot.set_ceilings(bounds.get("volts"), bounds.get("amps"))

    def show_event(self, event: Event) -> None:
        if event.kind in _SPOKEN:
            why = event.values.get("why")
            self.say(sayings.sentence(event.text), sayings.sentence(str(why)) if why else _usual_why(event))
        if event.kind is EventKind.QUESTION:
            self.plot.end_band(event.t_s)
            self.say(*texts.QUESTION_SAY)
        left_out = bool(event.values.get("skipped"))
        if event.kind is EventKind.STEP and not left_out:
            self.plot.begin_band(band_name(event), event.t_s, important="rung" in event.values)
        rung = event.values.get("rung")
        if self.rungs is not None and isinstance(rung, int):
            if left_out:
                self.rungs.leave_out(rung)
            elif event.kind is EventKind.STEP:
                self.rungs.reach(rung)
            elif event.kind is EventKind.KICK:
                self.rungs.kick(rung)
        word = texts.MARK_WORDS.get(event.kind.value)
        if word is not None and "seconds" not in event.values:  # what lasted has a band of its own
            self.plot.add_mark(Mark(t_s=event.t_s, word=mark_word(event, word), strong=event.kind in _STRONG))

    def ask(self, question: Question) -> None:
        self.question.ask(question)
        self.work.verticalScrollBar().setValue(0)  # where it is asked

    def end(self, result: RunResult) -> None:
        self.question.withdraw()
        self.plot.finish()
        if self.rungs is not None:
            self.rungs.reach(None)
        self.say(*sayings.ended_sentences(self.shown, result, self.how(result)))

    def how(self, result: RunResult) -> str:
        """What else is to be known of the run that ended, as a sentence; "" for nothing."""
        return ""

    # a run that was filed

    def show_filed(self, run: Run, request: Request, events: list[Event], trace: Trace) -> None:
        self.begin(request)
        self.plot.caption.run = caption_of(run.kind, run.started_utc)
        self.plot.set_ceilings(*ceilings_of(run))
        self.plot.add_readings(trace.t_s, trace.volts, trace.amps)
        for event in events:
            self.show_event(event)
        self.end(run.result)

    def blank(self) -> None:
        """For another job."""
        self.question.withdraw()
        self.plot.clear()
        self.plot.set_ceilings(None, None)
        self.say(*texts.RUN_BEFORE[self.kind])

    def set_tokens(self, tokens: Tokens) -> None:
        self.plot.set_tokens(tokens)
        self.question.set_tokens(tokens)
        if self.rungs is not None:
            self.rungs.set_tokens(tokens)


def caption_of(kind: RunKind, started_utc: str) -> str:
    """For a picture of the run: "probe, 2026-11-25 14:03"."""
    at = f"{day_text(started_utc)} {clock_text(started_utc)}"
    return texts.RUN_NAME.format(kind=texts.RUN_KIND_NAMES[kind], at=at)


def mark_word(event: Event, usual: str) -> str:
    """A hand step by its own short name, where it has one."""
    if event.kind is not EventKind.HAND:
        return usual
    named = retelling.told(event.text.rstrip(".").rpartition(": ")[2])
    return named if 0 < len(named) <= 14 else usual


def _usual_why(event: Event) -> str:
    return texts.WHY_BY_KIND.get(event.kind.value, "")


def band_name(event: Event) -> str:
    """Rungs by their volts, which is what tells them apart; other steps by their name."""
    volts = event.values.get("volts")
    if isinstance(event.values.get("rung"), int) and isinstance(volts, int | float):
        return sayings.short(volts, "V")
    return retelling.told(str(event.values.get("name", "")))
