"""Free: kicks rung by rung, with hand work between them, or with the hand on the shaft."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit

from benchlog.outcome import RunResult
from benchlog.records import RunKind
from benchlog.recovery.steps import Sequence
from ui import texts, theme
from ui.moments import now_text
from ui.pieces import button
from ui.stages.advice import AdviceCard
from ui.stages.run_view import RunView
from ui.theme import Tokens


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
        self.column.insertWidget(3, self.advice)
        self._make_second_row()
        self.take_hand_steps(False)
        self.show_run(None)

    def _make_second_row(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.note = QLineEdit()
        self.note.setObjectName("free_note")
        self.note.setAccessibleName(texts.FIELD_NOTE)
        self.note.setPlaceholderText(texts.NOTE_HINT)
        self.note.setFont(theme.font())
        self.note.setMinimumHeight(theme.TOUCH_PX)
        self.note.returnPressed.connect(self._note)
        self.moved_button = button(texts.MOVED_BUTTON, "free_moved", accessible=texts.MOVED_ACCESSIBLE)
        self.moved_button.clicked.connect(self.moved)
        self.hand_button = button(texts.HAND_START, "free_hand", accessible=texts.HAND_START_ACCESSIBLE)
        self.hand_button.clicked.connect(self.hand_begun)
        self.hold_button = button(texts.HOLD_BUTTON, "free_hold", "main", accessible=texts.HOLD_ACCESSIBLE)
        self.hold_button.setMinimumWidth(220)
        self.hold_button.pressed.connect(lambda: self.held.emit(True))
        self.hold_button.released.connect(lambda: self.held.emit(False))
        row.addWidget(self.note, 1)
        for part in (self.moved_button, self.hand_button, self.hold_button):
            row.addWidget(part)
        self.column.addLayout(row)

    def _note(self) -> None:
        text = self.note.text().strip()
        if text:
            self.noted.emit(text)
        self.note.clear()

    def show_run(self, kind: RunKind | None) -> None:
        """What can be pressed while a run of this kind is on, or none."""
        self.hold_button.setVisible(kind is RunKind.HAND)
        self.moved_button.setVisible(kind in (RunKind.RECOVERY, RunKind.HAND))

    def offer_hand(self, possible: bool) -> None:
        self.hand_button.setVisible(possible)

    def end(self, result: RunResult) -> None:
        super().end(result)
        self.show_run(None)

    def show_ladder(self, sequence: Sequence, rated_volts: float, ceiling_volts: float) -> None:
        self.plot.set_ceilings(ceiling_volts, None)
        if self.rungs is not None:
            self.rungs.lay_out(sequence, rated_volts, ceiling_volts)

    def take_hand_steps(self, possible: bool) -> None:
        for part in (*self.hand_parts, self.note):
            part.setEnabled(possible)

    def say_kept(self, step: str) -> None:
        """A hand step or a note between runs went into the job's own record."""
        self.why_label.say(texts.HAND_KEPT.format(step=step, at=now_text()))
