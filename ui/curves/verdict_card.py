"""Pass or fail in a word with a shape, readable from a metre, and how many figures say so."""

from PySide6.QtWidgets import QBoxLayout, QFrame, QHBoxLayout

from benchlog.motor.limits import Judged
from benchlog.motor.start_figures import FIGURES
from ui import curve_texts as texts
from ui import retelling, theme
from ui.density import ROOMY, TIGHT, Density
from ui.pieces import Elided, label
from ui.shapes import Sign
from ui.theme import Tokens

DECIDING = {kind.name for kind in FIGURES}
WORD_PX, TIGHT_WORD_PX, NONE_PX = 26, 21, 18
"""Without a verdict nobody has to read it from afar: where it is narrow the reason beside it needs the room."""


class VerdictCard(QFrame):
    """Shape and word are the verdict; colours stay grey: a unit that fails is no danger."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens, self._density = tokens, ROOMY
        self.setObjectName("curves_verdict")
        self.setProperty("look", "card")
        row = QHBoxLayout(self)
        row.setContentsMargins(18, 4, 14, 4)
        row.setSpacing(14)
        self.sign = Sign(tokens.ink, side=32)
        self.word = label("", px=WORD_PX, bold=True)
        self.word.setObjectName("curves_verdict_word")
        self.why = Elided("", "second")
        lines = self._lines = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        lines.setSpacing(0)
        lines.addWidget(self.word)
        lines.addWidget(self.why, 1)
        row.addWidget(self.sign)
        row.addLayout(lines, 1)
        self.show_verdict(None, measured=False)

    def fit(self, density: Density) -> None:
        self._density = density
        way = QBoxLayout.Direction
        self._lines.setDirection(way.LeftToRight if density.narrow else way.TopToBottom)
        self._lines.setSpacing(12 if density.narrow else 0)
        self._draw()

    def show_verdict(self, judged: Judged | None, *, measured: bool, limits: bool = False) -> None:
        """`measured`: there are starts; `limits`: and something to judge them by."""
        if judged is None:
            word = texts.NOT_JUDGED if measured else texts.NOT_MEASURED
            why = texts.NO_VERDICT_WHY if not measured else texts.NO_LIMITS_YET if not limits else ""
        else:
            word = {True: texts.PASS, False: texts.FAIL, None: texts.NOT_JUDGED}[judged.passed]
            why = _why(judged)
        self.word.setText(word)
        self.why.say(why)
        self._draw()
        self.setAccessibleName(texts.VERDICT_NAME.format(word=word, why=why))

    def _draw(self) -> None:
        signs = {texts.PASS: "done", texts.FAIL: "creeping", texts.NOT_JUDGED: "resting"}
        sign = signs.get(self.word.text(), "none")
        measured = self.word.text() in (texts.PASS, texts.FAIL)
        px = TIGHT_WORD_PX if self._density is TIGHT else WORD_PX
        self.word.setFont(theme.semibold(min(px, NONE_PX) if self._density.narrow and not measured else px))
        self.sign.show_sign(sign, self._tokens.ink if measured else self._tokens.second)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self._draw()


def _why(judged: Judged) -> str:
    if judged.passed is None or not judged.rows:
        return retelling.told(judged.sentence)
    told = [row for row in judged.rows if row.inside is not None and row.name in DECIDING]
    outside = sum(row.inside is False for row in told)
    if outside:
        return texts.OUTSIDE_OF.format(outside=outside, count=len(told))
    if judged.curve_outside_share:
        return texts.CURVE_OUTSIDE.format(share=f"{100 * judged.curve_outside_share:.0f} %")
    return texts.ALL_INSIDE.format(count=len(told))
