"""The work of a run, the same for probe, free and prove: two sentences, the chart, and a row of what can be pressed."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from benchlog.bench.frames import Progress, Question, Request
from benchlog.outcome import RunResult
from benchlog.quantities import show
from benchlog.records import Event, EventKind, Run, RunKind, Trace
from ui import texts, theme
from ui.charts.live_plot import LivePlot
from ui.charts.marks import Mark
from ui.pieces import button, card, label
from ui.stages.question import QuestionCard
from ui.stages.rungs import RungRow
from ui.theme import Tokens

_SPOKEN = frozenset(EventKind) - {EventKind.ANSWER, EventKind.NOTE, EventKind.HAND, EventKind.SUPPLY}
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
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.say_label.setObjectName(f"{kind.value}_say")
        self.why_label = label("", "second", wrap=True)
        self.why_label.setObjectName(f"{kind.value}_why")
        self.why_label.setMinimumHeight(42)
        self.why_label.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.question = QuestionCard(tokens)
        self.question.answered.connect(self.answered)
        chart_card = card()
        inside = QVBoxLayout(chart_card)
        inside.setContentsMargins(6, 4, 2, 4)
        self.plot = LivePlot(tokens)
        self.plot.setObjectName(f"{kind.value}_plot")
        inside.addWidget(self.plot)
        self.rungs = RungRow(tokens) if ladder else None
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        column.addWidget(self.question)
        column.addWidget(chart_card, 1)
        if self.rungs is not None:
            column.addWidget(self.rungs)
        self.actions = QHBoxLayout()
        self.actions.setSpacing(8)
        column.addLayout(self.actions)
        self._make_actions(ladder)
        self.say(*texts.RUN_BEFORE[kind])

    def _make_actions(self, ladder: bool) -> None:
        self.hand_parts: list[QWidget] = []
        if ladder:
            self.hand_parts.append(label(texts.HAND_LABEL, "second", px=theme.SECOND_PX))
            for index, step in enumerate(texts.HAND_STEPS):
                pill = button(step, f"hand_{index}", "pill", accessible=texts.HAND_ACCESSIBLE.format(step=step))
                pill.clicked.connect(lambda _checked=False, done=step: self.hand.emit(done))
                self.hand_parts.append(pill)
        for part in self.hand_parts:
            self.actions.addWidget(part)
        self.actions.addStretch(1)
        self.start_button = button(texts.RUN_START_BUTTON[self.kind], f"{self.kind.value}_start", "main")
        self.start_button.clicked.connect(self.begun)
        self.on_button = button("", f"{self.kind.value}_go_on", "main")
        self.on_button.clicked.connect(self.went_on)
        self.actions.addWidget(self.start_button)
        self.actions.addWidget(self.on_button)
        self.on_button.hide()

    # what is said

    def say(self, what: str, why: str) -> None:
        self.say_label.setText(what)
        self.why_label.setText(why)

    def offer(self, *, start: bool, again: bool, on_to: str) -> None:
        """Which buttons there are: to begin (again), and to go on to the stage named `on_to` ("" for none)."""
        words = texts.RUN_AGAIN_BUTTON if again else texts.RUN_START_BUTTON
        self.start_button.setText(words[self.kind])
        self.start_button.setVisible(start)
        self.on_button.setText(texts.GO_ON.format(stage=on_to))
        self.on_button.setVisible(bool(on_to))
        look = "" if on_to else "main"
        self.start_button.setProperty("look", look)
        self.start_button.style().unpolish(self.start_button)
        self.start_button.style().polish(self.start_button)

    # a run as it goes

    def begin(self, request: Request) -> None:
        self.plot.clear()
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
            self.say(texts.sentence(event.text), texts.sentence(str(why)) if why else self._fallback_why(event))
        if event.kind is EventKind.QUESTION:
            self.plot.end_band(event.t_s)
        left_out = bool(event.values.get("skipped"))
        if event.kind is EventKind.STEP and not left_out:
            self.plot.begin_band(_band_name(event), event.t_s)
        rung = event.values.get("rung")
        if self.rungs is not None and isinstance(rung, int):
            if left_out:
                self.rungs.leave_out(rung)
            elif event.kind is EventKind.STEP:
                self.rungs.reach(rung)
            elif event.kind is EventKind.KICK:
                self.rungs.kick(rung)
        word = texts.MARK_WORDS.get(event.kind.value)
        if word is not None:
            said = event.text if event.kind is EventKind.HAND and len(event.text) <= 18 else word
            self.plot.add_mark(Mark(t_s=event.t_s, word=said, strong=event.kind in _STRONG))

    def _fallback_why(self, event: Event) -> str:
        return texts.WITHOUT_WHY.format(t_s=event.t_s)

    def ask(self, question: Question) -> None:
        self.question.ask(question)

    def end(self, result: RunResult) -> None:
        self.question.withdraw()
        self.plot.finish()
        if self.rungs is not None:
            self.rungs.reach(None)
        self.say(*texts.ended_sentences(self.kind, result))

    # a run that was filed

    def show_filed(self, run: Run, request: Request, events: list[Event], trace: Trace) -> None:
        self.begin(request)
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


def _band_name(event: Event) -> str:
    """Rungs by their volts, which is what tells them apart; other steps by their name."""
    volts = event.values.get("volts")
    if isinstance(event.values.get("rung"), int) and isinstance(volts, int | float):
        return show(volts, "V")
    return str(event.values.get("name", ""))
