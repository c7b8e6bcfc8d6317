"""Prove: several starts from rest. One start is luck."""

from PySide6.QtWidgets import QButtonGroup

from benchlog.bench.frames import Request
from benchlog.motor.compare import Comparison, Measured
from benchlog.records import RunKind
from ui import retelling, sayings, texts, theme
from ui.pieces import Elided, button, grey, label
from ui.stages.run_view import RunView
from ui.theme import Tokens

STARTS = (3, 5, 10)
USUAL = 5


class ProveStage(RunView):
    """`starts()` is how often it is to start from rest. Few buttons rather than a spin box: they take gloves."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.PROOF, tokens)
        self.group = QButtonGroup(self)
        self.measured, self.moves, self.against, self.cautions = (
            Elided("", tone, px=theme.SECOND_PX) for tone in ("", "", "", "second")
        )
        self.told = (self.measured, self.moves, self.against, self.cautions)
        names = ("proof_measured", "proof_moves", "proof_against", "proof_cautions")
        for line, name in zip(self.told, names, strict=True):
            line.setObjectName(name)
            self.middle.addWidget(line)
            line.hide()
        self.press_row.add(label(texts.STARTS_LABEL, "second"), at=0)
        for place, count in enumerate(STARTS, start=1):
            choice = button(
                str(count), f"proof_starts_{count}", "choice", accessible=texts.STARTS_ACCESSIBLE.format(count=count)
            )
            choice.setCheckable(True)
            choice.setChecked(count == USUAL)
            choice.setMinimumWidth(56)
            self.group.addButton(choice, count)
            self.press_row.add(choice, at=place)

    def show_measured(self, measured: Measured | None, others: str, comparison: Comparison | None) -> None:
        """The figures of the last proof's measured start, and how they stand to others."""
        words = ("", "", "", "")
        if measured is not None:
            against, cautions = texts.MEASURED_FIRST, ""
            if comparison is not None:
                other, verdict = retelling.told(others), retelling.told(comparison.verdict)
                against = texts.MEASURED_AGAINST.format(others=other, verdict=verdict)
                cautions = texts.MEASURED_CAUTIONS.format(cautions="; ".join(map(retelling.told, comparison.cautions)))
            words = (sayings.measured_text(measured), sayings.moves_text(measured), against, cautions)
        for line, said in zip(self.told, words, strict=True):
            line.say(said)
            line.setVisible(bool(said))

    def begin(self, request: Request) -> None:
        super().begin(request)
        self.show_measured(None, "", None)

    def blank(self) -> None:
        super().blank()
        self.show_measured(None, "", None)

    def lock(self, locked: bool) -> None:
        for choice in self.group.buttons():
            grey(choice, texts.NOT_WHILE_ON if locked else "")

    def starts(self) -> int:
        return self.group.checkedId()
