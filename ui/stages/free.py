"""Free: kicks rung by rung, with hand work between them."""

from benchlog.records import RunKind
from benchlog.recovery.steps import Sequence
from ui.stages.run_view import RunView
from ui.theme import Tokens


class FreeStage(RunView):
    """The ladder is shown before it is climbed; hand steps can be pressed only while there is a record to take them."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.RECOVERY, tokens, ladder=True)
        self.take_hand_steps(False)

    def show_ladder(self, sequence: Sequence, rated_volts: float, ceiling_volts: float) -> None:
        if self.rungs is not None:
            self.rungs.lay_out(sequence, rated_volts, ceiling_volts)

    def take_hand_steps(self, possible: bool) -> None:
        for part in self.hand_parts:
            part.setEnabled(possible)
