"""A question of the run, in the work area with big buttons: never a dialog, so that nothing covers "Output off"."""

from itertools import pairwise

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from benchlog.bench.frames import Question
from ui import sayings, texts
from ui.bench_keys import typing
from ui.pieces import button, label
from ui.shapes import Sign
from ui.theme import Tokens
from ui.wrapping import WrapRow

WORDS_PX = 300
"""The choices stand below the words where less than this is left for them beside."""


class QuestionCard(QFrame):
    """Hidden until something is asked. `answered` carries the question's id and the choice, once."""

    answered = Signal(int, str)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setObjectName("question")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setProperty("look", "ask")
        asked = QWidget()
        row = QHBoxLayout(asked)
        row.setContentsMargins(0, 0, 4, 0)
        row.setSpacing(12)
        self.sign = Sign(tokens.blue, side=26)
        self.sign.show_sign("ask", tokens.blue)
        words = QVBoxLayout()
        words.setSpacing(2)
        words.addWidget(label(texts.QUESTION_TITLE, "ask", bold=True))
        self.text = label("", wrap=True)
        self.text.setObjectName("question_text")
        words.addWidget(self.text)
        row.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addLayout(words, 1)
        self._row = WrapRow(self)
        self._row.setContentsMargins(14, 8, 12, 8)
        self._row.add(asked, stretch=1, least=WORDS_PX)
        self.buttons: list[QPushButton] = []
        self.hide()

    def ask(self, question: Question) -> None:
        self.withdraw()
        self.text.setText(sayings.sentence(question.text))
        self.setAccessibleName(self.text.text())
        for index, choice in enumerate(question.choices):
            made = button(sayings.choice_text(choice), f"choice_{index}", "ask" if index == 0 else "plain-ask")
            made.setMinimumWidth(96)
            made.clicked.connect(lambda _checked=False, asked=question.id, chosen=choice: self._answer(asked, chosen))
            self._row.add(made)
            self.buttons.append(made)
        for before, after in pairwise((self, *self.buttons)):
            QWidget.setTabOrder(before, after)
        self.show()
        if self.isVisible() and not typing():  # another room keeps the keyboard
            self.setFocus()  # nothing is pressed by it; Tab goes to the first answer

    def withdraw(self) -> None:
        for old in self.buttons:
            self._row.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.buttons = []
        self.hide()

    def _answer(self, asked: int, chosen: str) -> None:
        self.withdraw()
        self.answered.emit(asked, chosen)

    def set_tokens(self, tokens: Tokens) -> None:
        self.sign.show_sign("ask", tokens.blue)
