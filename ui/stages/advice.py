"""Advice on a page: a few sentences, and what can be taken over with one press."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from benchlog.recovery.advice import Advice, Past
from ui import retelling, texts, theme
from ui.pieces import Elided, button, label
from ui.wrapping import WrapRow

MOST_LINES = 4


class AdviceCard(QFrame):
    """Hidden where there is nothing to say. `again`: the same as last time; `higher`: begin at the rung advised."""

    again = Signal()
    higher = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("look", "card")
        self.setObjectName("advice")
        row = WrapRow(self)
        row.setContentsMargins(16, 8, 12, 8)
        told = QWidget()
        words = QVBoxLayout(told)
        words.setContentsMargins(0, 0, 0, 0)
        words.setSpacing(1)
        words.addWidget(label(texts.ADVICE_TITLE, "second", px=theme.SECOND_PX))
        self.lines = [Elided("", px=theme.SECOND_PX) for _ in range(MOST_LINES)]
        for index, line in enumerate(self.lines):
            line.setObjectName(f"advice_{index}")
            words.addWidget(line)
        row.add(told, stretch=1, least=260)
        self.again_button = button(texts.SAME_AS_LAST, "advice_again", accessible=texts.SAME_AS_LAST)
        self.higher_button = button("", "advice_higher", accessible=texts.BEGIN_AT_ACCESSIBLE)
        self.again_button.clicked.connect(self.again)
        self.higher_button.clicked.connect(self.higher)
        row.add(self.again_button)
        row.add(self.higher_button)
        self.hide()

    def show_advice(self, advice: Advice | None, again: Past | None, why_not: str = "") -> None:
        """`again`: the run that can be done the same way; `why_not`: why the last one can't be."""
        said = [*advice.remarks, *([why_not] if why_not else [])] if advice is not None else []
        for line, text in zip(self.lines, [*said, *[""] * MOST_LINES], strict=False):
            line.say(retelling.told(text))
            line.setVisible(bool(text))
        self.again_button.setVisible(again is not None)
        if again is not None:
            self.again_button.setToolTip(texts.SAME_AS_LAST_HINT.format(job=again.job, run=again.run))
        first = advice.first_rung if advice is not None else 1
        self.higher_button.setText(texts.BEGIN_AT.format(rung=first))
        self.higher_button.setVisible(first > 1)
        self.setVisible(bool(said) or again is not None)
