"""What a job waits for: approval, a part, its owner; or that work goes on."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.ledger.drafts import Fields
from benchlog.records import Job, JobState
from ui import texts, theme
from ui.moments import day_text
from ui.pieces import button, grey, label
from ui.record.fields import line_edit, padded_card
from ui.record.timeline import waiting_text


class WaitingCard(QWidget):
    """`set` carries where the job stands from now on, and for what it waits."""

    set = Signal(object, str)
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        made, column = padded_card()
        self.words = label("", bold=True, wrap=True)
        self.words.setObjectName("waiting_words")
        self.what = line_edit("waiting_what", texts.FIELD_WAITING, texts.WAITING_HINT)
        self.what.textEdited.connect(lambda _: self.changed.emit())
        title = label(texts.FIELD_WAITING, "second", px=theme.SECOND_PX)
        title.setBuddy(self.what)
        column.addWidget(self.words)
        column.addWidget(title)
        column.addWidget(self.what)
        self.buttons = {}
        for state, words in texts.WAITING_BUTTONS.items():
            pressed = button(words, f"waiting_{state.value.rpartition('-')[2]}")
            pressed.clicked.connect(lambda _=False, chosen=state: self.set.emit(chosen, self.what.text().strip()))
            column.addWidget(pressed)
            self.buttons[state] = pressed
        outer.addWidget(made)
        outer.addStretch(1)

    def show_job(self, job: Job) -> None:
        waiting = waiting_text(job)
        if waiting and job.waiting_since_utc is not None:
            waiting = texts.WAITING_SINCE.format(waiting=waiting, day=day_text(job.waiting_since_utc))
        is_open = job.state is not JobState.CLOSED
        words = waiting[:1].upper() + waiting[1:] or (texts.WORK_GOES_ON if is_open else texts.STATE_CLOSED)
        self.words.setText(words)
        closed = "" if is_open else texts.JOB_IS_CLOSED
        grey(self.what, closed)
        for state, pressed in self.buttons.items():
            goes_on = state is JobState.OPEN and job.state is JobState.OPEN
            grey(pressed, closed or (texts.GOES_ON_ALREADY if goes_on else ""))

    def form(self) -> Fields:
        return {"waiting_what": self.what.text()} if self.what.text() else {}

    def fill(self, form: Fields) -> None:
        self.what.setText(str(form.get("waiting_what", "")))

    def blank(self) -> None:
        self.what.clear()
