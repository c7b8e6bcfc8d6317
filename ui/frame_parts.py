"""Top, foot and notices of the window: what the job is, which room one is in, the facts, and what has to be said."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QPushButton, QWidget

from ui import texts, theme
from ui.pieces import Elided, button, label
from ui.shapes import Sign
from ui.theme import Tokens


class Header(QWidget):
    """`room_picked` 0 for the bench, 1 the curves, 2 the history; `new_job` to put this job aside and begin another."""

    room_picked = Signal(int)
    new_job = Signal()

    def __init__(self, *, demo: bool) -> None:
        super().__init__()
        self.setObjectName("header")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedHeight(52)
        row = QHBoxLayout(self)
        row.setContentsMargins(20, 0, 20, 0)
        row.setSpacing(8)
        self.title = label(texts.NO_JOB, px=18, bold=True)
        self.title.setObjectName("job_title")
        self.about = Elided(texts.NO_JOB_ABOUT, "second")
        self.about.setObjectName("job_about")
        row.addWidget(self.title)
        row.addSpacing(4)
        row.addWidget(self.about, 1)
        if demo:
            mark = label(texts.DEMO, "mark", px=theme.SECOND_PX, bold=True)
            mark.setObjectName("demo_mark")
            mark.setToolTip(texts.DEMO_HINT)
            mark.setFixedHeight(26)
            row.addWidget(mark)
        self.new_button = button(texts.NEW_JOB, "new_job", "room")
        self.new_button.clicked.connect(self.new_job)
        self.new_button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.new_button.hide()
        row.addWidget(self.new_button)
        self.rooms = QButtonGroup(self)
        names = (("room_bench", texts.BENCH), ("room_curves", texts.CURVES), ("room_history", texts.HISTORY))
        for index, (name, word) in enumerate(names):
            made = button(word, name, "room")
            made.setMinimumHeight(theme.TOUCH_PX - 4)
            made.setCheckable(True)
            made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            made.setChecked(index == 0)
            self.rooms.addButton(made, index)
            row.addWidget(made)
        self.rooms.idClicked.connect(self.room_picked)

    def show_job(self, title: str, about: str, *, on_bench: bool) -> None:
        self.title.setText(title)
        self.about.say(about)
        self.new_button.setVisible(on_bench)


class Foot(QWidget):
    """Facts in a fixed order: output, supply, readings, trace, ledger."""

    NAMES = ("output", "supply", "rate", "trace", "ledger")

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("foot")
        self.setFixedHeight(28)
        row = QHBoxLayout(self)
        row.setContentsMargins(20, 0, 20, 0)
        row.setSpacing(22)
        self.facts = {name: label("", "second", px=theme.SECOND_PX) for name in self.NAMES}
        for name, fact in self.facts.items():
            fact.setObjectName(f"foot_{name}")
            row.addWidget(fact)
        row.addStretch(1)

    def say(self, name: str, text: str) -> None:
        fact = self.facts[name]
        if fact.text() != text:
            fact.setText(text)


class Notice(QFrame):
    """A line above the work for what is not part of a run: a fault, trouble with the ledger, a run found again."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self._alarm = False
        self.setObjectName("notice")
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 4, 6, 4)
        row.setSpacing(10)
        self.sign = Sign(tokens.ink, side=20)
        self.words = label("", px=theme.BODY_PX, wrap=True)
        self.words.setObjectName("notice_words")
        seen: QPushButton = button(texts.DISMISS, "notice_seen")
        seen.clicked.connect(self.hide)
        row.addWidget(self.sign)
        row.addWidget(self.words, 1)
        row.addWidget(seen)
        self.hide()

    def tell(self, words: str, *, alarm: bool = False) -> None:
        self._alarm = alarm
        self.setProperty("look", "alarm" if alarm else "card")
        self.style().unpolish(self)
        self.style().polish(self)
        self._colour_sign()
        self.words.setText(words)
        self.show()

    def _colour_sign(self) -> None:
        self.sign.show_sign("alarm" if self._alarm else "on", self._tokens.red if self._alarm else self._tokens.second)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self._colour_sign()
