"""Free: kicks rung by rung, with hand work between them, or with the hand on the shaft."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from benchlog.outcome import RunResult
from benchlog.records import RunKind
from benchlog.recovery.steps import Sequence
from ui import retelling, texts, theme
from ui.bench_keys import HOLD_BUTTON
from ui.moments import now_text
from ui.pieces import button, grey, label, show_if
from ui.stages.advice import AdviceCard
from ui.stages.run_view import RunView
from ui.theme import Tokens
from ui.wrapping import WrapRow


class FreeStage(RunView):
    """The ladder is shown before it is climbed. Hand steps go into the run, or between runs into the job's record.

    `noted` a line typed, `moved` "it moved" pressed, `hand_begun` asks for a run with the hand on the shaft,
    `held` while its button is down.
    """

    noted = Signal(str)
    moved = Signal()
    hand_begun = Signal()
    held = Signal(bool)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.RECOVERY, tokens, ladder=True)
        self.advice = AdviceCard()
        self.middle.insertWidget(1, self.advice)
        self._make_hand_row()
        self._make_presses()
        self.take_hand_steps(texts.NEEDS_JOB)
        self.show_run(None)

    def _make_hand_row(self) -> None:
        """What is put down in the record, by one press or as a line typed."""
        row = WrapRow()
        self.hand_parts: list[QWidget] = [label(texts.HAND_LABEL, "second", px=theme.SECOND_PX)]
        for index, step in enumerate(texts.HAND_STEPS):
            shown = retelling.told(step)
            pill = button(shown, f"hand_{index}", "pill", accessible=texts.HAND_ACCESSIBLE.format(step=shown))
            pill.clicked.connect(lambda _checked=False, done=step: self.hand.emit(done))
            self.hand_parts.append(pill)
        for part in self.hand_parts:
            row.add(part)
        self.note = QLineEdit()
        self.note.setObjectName("free_note")
        self.note.setAccessibleName(texts.FIELD_NOTE)
        self.note.setPlaceholderText(texts.NOTE_HINT)
        self.note.setFont(theme.font())
        self.note.setMinimumHeight(theme.TOUCH_PX)
        self.note.returnPressed.connect(self._note)
        row.add(self.note, stretch=1, least=180)
        self.middle.addLayout(row)

    def _make_presses(self) -> None:
        self.moved_button = button(texts.MOVED_BUTTON, "free_moved", accessible=texts.MOVED_ACCESSIBLE)
        self.moved_button.clicked.connect(self.moved)
        self.hand_button = button(texts.HAND_START, "free_hand", accessible=texts.HAND_START_ACCESSIBLE)
        self.hand_button.setToolTip(texts.HAND_START_ACCESSIBLE)
        self.hand_button.clicked.connect(self.hand_begun)
        self.hold_button = button(texts.HOLD_BUTTON, HOLD_BUTTON, "main", accessible=texts.HOLD_ACCESSIBLE)
        self.hold_button.setMinimumWidth(200)
        self.hold_button.pressed.connect(lambda: self.held.emit(True))
        self.hold_button.released.connect(lambda: self.held.emit(False))
        for place, part in enumerate((self.moved_button, self.hand_button, self.hold_button)):
            self.press_row.add(part, at=place)

    def _note(self) -> None:
        text = self.note.text().strip()
        if text:
            self.noted.emit(text)
        self.note.clear()

    def show_run(self, kind: RunKind | None) -> None:
        """What can be pressed while a run of this kind is on, or none."""
        show_if(self.hold_button, kind is RunKind.HAND, else_to=self)
        show_if(self.moved_button, kind in (RunKind.RECOVERY, RunKind.HAND), else_to=self)

    def offer_hand(self, possible: bool) -> None:
        show_if(self.hand_button, possible, else_to=self)

    def end(self, result: RunResult) -> None:
        super().end(result)
        self.show_run(None)

    def show_ladder(self, sequence: Sequence, rated_volts: float, ceiling_volts: float) -> None:
        self.plot.set_ceilings(ceiling_volts, None)
        if self.rungs is not None:
            self.rungs.lay_out(sequence, rated_volts, ceiling_volts)

    def take_hand_steps(self, why: str) -> None:
        """Why none is kept now; "" where they are."""
        for part in (*self.hand_parts, self.note):
            grey(part, why)

    def say_kept(self, step: str) -> None:
        """A hand step or a note between runs went into the job's own record."""
        self.why_label.say(texts.HAND_KEPT.format(step=retelling.told(step), at=now_text()))
