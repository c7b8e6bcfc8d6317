"""Prove: several starts from rest. One start is luck."""

from PySide6.QtWidgets import QSpinBox

from benchlog.records import RunKind
from ui import texts, theme
from ui.pieces import label
from ui.stages.run_view import RunView
from ui.theme import Tokens

FEWEST, MOST, USUAL = 3, 10, 5


class ProveStage(RunView):
    """`starts()` is how often it is to start from rest."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.PROOF, tokens)
        self.count = QSpinBox()
        self.count.setObjectName("proof_starts")
        self.count.setAccessibleName(texts.STARTS_LABEL)
        self.count.setRange(FEWEST, MOST)
        self.count.setValue(USUAL)
        self.count.setFont(theme.font())
        self.count.setMinimumHeight(theme.TOUCH_PX)
        self.count.setMinimumWidth(80)
        self.actions.insertWidget(0, label(texts.STARTS_LABEL, "second"))
        self.actions.insertWidget(1, self.count)

    def starts(self) -> int:
        return self.count.value()
