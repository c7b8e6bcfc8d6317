"""Prove: several starts from rest. One start is luck."""

from PySide6.QtWidgets import QButtonGroup

from benchlog.bench.frames import Request
from benchlog.motor.compare import Comparison, Measured
from benchlog.outcome import RunResult
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Bound, Layer
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
        self._rated_volts = 0.0
        self._ceiling: Bound | None = None
        self._given: tuple[float, Bound | None, bool] = (0.0, None, True)
        self.volts = label("", px=theme.SECOND_PX, wrap=True)
        self.volts.setObjectName("proof_volts")
        self.middle.insertWidget(1, self.volts)
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

    def show_volts(self, rated_volts: float, ceiling: Bound | None, *, range_known: bool = True) -> None:
        """The volts ceiling under which a proof would be; None where no job is there. `range_known`: the supply's.

        What a run said of itself stays until something else is given here.
        """
        given = (rated_volts, ceiling, range_known)
        if given != self._given:
            self._given = given
            self._say_volts(rated_volts, ceiling, range_known=range_known)

    def _say_volts(self, rated_volts: float, ceiling: Bound | None, *, range_known: bool = True) -> None:
        self._rated_volts, self._ceiling = rated_volts, ceiling
        at_most = "" if range_known else f" {texts.PROOF_AT_MOST}"
        self.volts.setText("" if ceiling is None else f"{sayings.starts_text(rated_volts, ceiling)}{at_most}")
        self.volts.setVisible(ceiling is not None)

    def show_event(self, event: Event) -> None:
        super().show_event(event)
        volts, layer = event.values.get("ceiling_volts"), event.values.get("ceiling_volts_from")
        if event.kind is EventKind.SUPPLY and isinstance(volts, int | float) and layer in tuple(Layer):
            self._say_volts(self._rated_volts, Bound(value=volts, layer=Layer(str(layer))))

    def end(self, result: RunResult) -> None:
        super().end(result)
        if self.how(result):
            self.volts.hide()  # what would be is what was, and that is said

    def how(self, result: RunResult) -> str:
        """Where starts were made: at which volts."""
        if self._ceiling is None or not sayings.probe_went_through(result):
            return ""
        return sayings.starts_text(self._rated_volts, self._ceiling, over=True)

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
        self._rated_volts = request.rated_volts
        self.show_measured(None, "", None)

    def blank(self) -> None:
        super().blank()
        self.show_volts(0.0, None)
        self.show_measured(None, "", None)

    def lock(self, locked: bool) -> None:
        for choice in self.group.buttons():
            grey(choice, texts.NOT_WHILE_ON if locked else "")

    def starts(self) -> int:
        return self.group.checkedId()
