"""Prove: several starts from rest. One start is luck."""

from PySide6.QtWidgets import QButtonGroup

from benchlog.records import RunKind
from ui import texts
from ui.pieces import button, label
from ui.stages.run_view import RunView
from ui.theme import Tokens

STARTS = (3, 5, 10)
USUAL = 5


class ProveStage(RunView):
    """`starts()` is how often it is to start from rest. Few buttons rather than a spin box: they take gloves."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.PROOF, tokens)
        self.group = QButtonGroup(self)
        self.press_row.insertWidget(0, label(texts.STARTS_LABEL, "second"))
        for place, count in enumerate(STARTS, start=1):
            choice = button(
                str(count), f"proof_starts_{count}", "choice", accessible=texts.STARTS_ACCESSIBLE.format(count=count)
            )
            choice.setCheckable(True)
            choice.setChecked(count == USUAL)
            choice.setMinimumWidth(56)
            self.group.addButton(choice, count)
            self.press_row.insertWidget(place, choice)

    def lock(self, locked: bool) -> None:
        for choice in self.group.buttons():
            choice.setEnabled(not locked)

    def starts(self) -> int:
        return self.group.checkedId()
