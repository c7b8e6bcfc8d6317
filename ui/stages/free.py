"""Free: kicks rung by rung, with hand work between them."""

from benchlog.records import RunKind
from benchlog.recovery.steps import Sequence
from ui import texts
from ui.moments import now_text
from ui.stages.run_view import RunView
from ui.theme import Tokens


class FreeStage(RunView):
    """The ladder is shown before it is climbed. Hand steps go into the run, or between runs into the job's record."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.RECOVERY, tokens, ladder=True)
        self.take_hand_steps(False)

    def show_ladder(self, sequence: Sequence, rated_volts: float, ceiling_volts: float) -> None:
        self.plot.set_ceilings(ceiling_volts, None)
        if self.rungs is not None:
            self.rungs.lay_out(sequence, rated_volts, ceiling_volts)

    def take_hand_steps(self, possible: bool) -> None:
        for part in self.hand_parts:
            part.setEnabled(possible)

    def say_kept(self, step: str) -> None:
        """A hand step between runs went into the job's own record."""
        self.why_label.say(texts.HAND_KEPT.format(step=step, at=now_text()))
