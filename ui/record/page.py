"""The page of a job's record: the timeline and what is done by hand at the left, forms by kind at the right."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QBoxLayout, QButtonGroup, QFrame, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from benchlog.ledger.drafts import Fields
from benchlog.records import HAND_STEPS, JobState
from ui import retelling, texts, theme
from ui.density import Density
from ui.pictures import Pictures
from ui.pieces import Elided, button, card, grey, label, scrolled, set_look
from ui.record.costs_card import CostsCard
from ui.record.fields import line_edit, padded_card
from ui.record.findings_card import FindingsCard
from ui.record.job_record import JobRecord
from ui.record.limit_bar import standing_text
from ui.record.timeline import timeline, waiting_text
from ui.record.timeline_list import TimelineList
from ui.record.waiting_card import WaitingCard
from ui.theme import Tokens
from ui.wrapping import WrapRow

LEFT, RIGHT, LEAST_PICTURES_PX = 11, 10, 280
FINDINGS, COSTS, WAITING, PICTURES, TIMELINE = range(5)
"""The last one is a page of its own only where there is no room for it beside the others."""


class RecordPage(QWidget):
    """`hand` is a hand step pressed, `noted` a line kept, each with what is typed; `back` to the stage.

    Shows what it is given and says what is wanted; it reads nothing itself, and can switch nothing on.
    """

    hand = Signal(object, str)
    noted = Signal(str)
    back = Signal()
    changed = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.words = line_edit("record_words", texts.FIELD_RECORD_WORDS, texts.RECORD_WORDS_HINT)
        self.findings, self.costs, self.waiting = FindingsCard(), CostsCard(tokens), WaitingCard()
        self.pictures = Pictures()
        self.timeline = TimelineList(tokens)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._top())
        self.why = Elided("", "second")
        self.why.setObjectName("record_why")
        column.addWidget(self.why)
        self._narrow = False
        self.left, self.right = self._left(), self._right()
        self._body = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._body.setSpacing(12)
        self._body.addWidget(self.left, LEFT)
        self._body.addWidget(self.right, RIGHT)
        column.addLayout(self._body, 1)
        for part in (self.findings, self.costs, self.waiting):
            part.changed.connect(self.changed)
        self.words.textEdited.connect(lambda _: self.changed.emit())

    def fit(self, density: Density) -> None:
        """Where it is narrow the timeline is one more page, below the buttons for all of them."""
        self._narrow = density.narrow
        along = QBoxLayout.Direction.BottomToTop if density.narrow else QBoxLayout.Direction.LeftToRight
        self._body.setDirection(along)
        self._body.setSpacing(min(12, density.gap_px))
        self.kinds.button(TIMELINE).setVisible(density.narrow)
        if not density.narrow and self.kinds.checkedId() == TIMELINE:
            self.pick(self.stack.currentIndex())
        self._show_picked()

    def _show_picked(self) -> None:
        of_time = self.kinds.checkedId() == TIMELINE
        self.left.setVisible(of_time or not self._narrow)
        self.stack.setVisible(not (of_time and self._narrow))
        self._body.setStretch(1, 0 if of_time and self._narrow else RIGHT)

    def _top(self) -> WrapRow:
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True)
        self.say_label.setObjectName("record_say")
        self.who = line_edit("record_who", texts.FIELD_RECORD_WHO, texts.RECORD_WHO_HINT)
        self.who.setMaximumWidth(150)
        title = label(texts.FIELD_RECORD_WHO, "second", px=theme.SECOND_PX)
        title.setBuddy(self.who)
        self.back_button = button("", "record_back")
        self.back_button.clicked.connect(self.back)
        self.show_back("", your_turn=False)
        row = WrapRow()
        row.add(self.say_label, stretch=3, least=150)
        row.add(title)
        row.add(self.who, stretch=1, least=90)
        row.add(self.back_button)
        return row

    def _left(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        frame = card()
        inside = QVBoxLayout(frame)
        inside.setContentsMargins(6, 6, 4, 6)
        inside.addWidget(self.timeline)
        column.addWidget(frame, 1)
        pills = WrapRow(spacing=6)
        self.pills: list[QPushButton] = []
        for kind in HAND_STEPS:
            shown = retelling.told(kind.value)
            pill = button(shown, f"record_{kind.value}", "pill")
            pill.setAccessibleName(texts.HAND_ACCESSIBLE.format(step=shown))
            pill.clicked.connect(lambda _=False, done=kind: self.hand.emit(done, self.words.text().strip()))
            pills.add(pill, stretch=1)
            self.pills.append(pill)
        column.addLayout(pills)
        self.words.setMinimumHeight(theme.TOUCH_PX)
        self.words.returnPressed.connect(self._note)
        self.note = button(texts.RECORD_NOTE, "record_note")
        self.note.clicked.connect(self._note)
        row = WrapRow()
        row.add(self.words, stretch=1, least=200)
        row.add(self.note)
        column.addLayout(row)
        return made

    def _right(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.kinds = QButtonGroup(self)
        self.stack = QStackedWidget()
        pictures, inside = padded_card()
        inside.addWidget(self.pictures)
        pictures.setMinimumHeight(LEAST_PICTURES_PX)
        self.pictures.list.setFrameShape(QFrame.Shape.NoFrame)
        tabs = WrapRow(spacing=6)
        for index, (name, words, shown) in enumerate(
            (
                ("findings", texts.RECORD_FINDINGS, scrolled(self.findings)),
                ("costs", texts.RECORD_COSTS, scrolled(self.costs)),
                ("waiting", texts.RECORD_WAITING, scrolled(self.waiting)),
                ("pictures", texts.RECORD_PICTURES, scrolled(pictures)),
            )
        ):
            tabs.add(self._tab(index, f"record_{name}", words), stretch=1)
            self.stack.addWidget(shown)
        tabs.add(self._tab(TIMELINE, "record_timeline_page", texts.RECORD_TIMELINE), stretch=1)
        self.kinds.button(TIMELINE).hide()
        self.kinds.idClicked.connect(self.pick)
        column.addLayout(tabs)
        column.addWidget(self.stack, 1)
        return made

    def _tab(self, index: int, name: str, words: str) -> QPushButton:
        made = button(words, name, "choice")
        made.setCheckable(True)
        made.setChecked(index == FINDINGS)
        self.kinds.addButton(made, index)
        return made

    def pick(self, kind: int) -> None:
        self.kinds.button(kind).setChecked(True)
        if kind != TIMELINE:
            self.stack.setCurrentIndex(kind)
        self._show_picked()

    def _note(self) -> None:
        if text := self.words.text().strip():
            self.noted.emit(text)

    # what is shown

    def show_record(self, record: JobRecord) -> None:
        is_open, currency = record.job.state is not JobState.CLOSED, record.shop.currency
        self.say_label.setText(texts.RECORD_SAY.format(number=record.job.number))
        stands = waiting_text(record.job) or (texts.WORK_GOES_ON if is_open else texts.STATE_CLOSED)
        stands = stands[:1].upper() + stands[1:].rstrip(".")
        self.why.say(texts.RECORD_WHY.format(stands=stands, costs=standing_text(record.standing, currency)))
        self.timeline.show_lines(timeline(record))
        grey(self.findings, "" if is_open else texts.JOB_IS_CLOSED)
        self.findings.show_findings(record.findings)
        self.costs.show_costs(record.charges, record.parts, record.standing, record.shop, open_job=is_open)
        self.waiting.show_job(record.job)
        for pill in self.pills:
            grey(pill, "" if is_open else texts.JOB_IS_CLOSED)
        self.note.setText(texts.RECORD_NOTE if is_open else texts.RECORD_CORRECTION)
        self.note.setAccessibleName(self.note.text())

    def show_back(self, stage: str, *, your_turn: bool) -> None:
        """`your_turn`: a run waits for an answer on its own page."""
        self.back_button.setText((texts.RECORD_YOUR_TURN if your_turn else texts.RECORD_BACK).format(stage=stage))
        self.back_button.setAccessibleName(self.back_button.text())
        set_look(self.back_button, "ask" if your_turn else "")

    # drafts

    def form(self) -> Fields:
        """What is half typed; nothing of what is empty."""
        fields: Fields = {"record_words": self.words.text()} if self.words.text() else {}
        return fields | self.findings.form() | self.costs.form() | self.waiting.form()

    def fill(self, form: Fields) -> None:
        self.words.setText(str(form.get("record_words", "")))
        for part in (self.findings, self.costs, self.waiting):
            part.fill(form)

    def blank(self) -> None:
        """For another job; who works stays."""
        self.words.clear()
        self.timeline.show_lines([])
        for part in (self.findings, self.costs, self.waiting):
            part.blank()

    def set_tokens(self, tokens: Tokens) -> None:
        self.timeline.set_tokens(tokens)
        self.costs.set_tokens(tokens)
