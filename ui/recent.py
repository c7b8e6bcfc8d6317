"""Open jobs to go on with, offered while nothing is on the bench: one press takes one up again."""

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.ledger.finding_jobs import find_jobs
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Order, Waits, Wanted
from benchlog.records import Job, JobState, Purpose
from ui import texts, theme
from ui.pieces import button, label
from ui.record.timeline import waiting_text
from ui.wrapping import WrapRow

MOST, LONGEST, APART_PX = 5, 26, 6


def open_jobs(ledger: Ledger) -> list[Job]:
    """At most MOST: those that can be worked on first, then those that wait, last changed first."""
    found: list[Job] = []
    for state in (JobState.OPEN, Waits.WAITING):
        found += find_jobs(ledger, Wanted(state=state, purpose=Purpose.REPAIR, order=Order.CHANGED), None, MOST).jobs
    return found[:MOST]


class RecentRow(QWidget):
    """`picked` carries the key of a job. Hidden where there is none; one line, with as many as it has room for."""

    picked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("recent")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._shown: list[Job] = []
        self._row: QWidget | None = None
        self._parts: list[QWidget] = []
        self._soon = QTimer(self)  # not while the page is laid out: a part that goes then leaves the rest where it was
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self._fit)
        self.hide()

    def offer(self, jobs: Sequence[Job]) -> None:
        self.setVisible(bool(jobs))
        if list(jobs) == self._shown:
            return
        self._shown = list(jobs)
        if self._row is not None:
            self._row.hide()
            self._row.deleteLater()
        self._row = QWidget()
        row = WrapRow(self._row, spacing=APART_PX)
        self._parts = [label(texts.RECENT_TITLE, "second", px=theme.SECOND_PX), *map(self._button, jobs)]
        for part in self._parts:
            row.add(part)
        self._column.addWidget(self._row)
        self._row.show()
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._soon.start()

    def _fit(self) -> None:
        used = -APART_PX
        for part in self._parts:
            used += APART_PX + part.sizeHint().width()
            part.setVisible(used <= self.width())

    def _button(self, job: Job) -> QWidget:
        whole = texts.RECENT_JOB.format(number=job.number, kind=job.item.kind)
        words = whole if len(whole) <= LONGEST else f"{whole[:LONGEST].rstrip()} …"
        name = ". ".join(part for part in (texts.RECENT_NAME.format(job=whole), waiting_text(job)) if part)
        made = button(words, f"recent_{job.number}", accessible=name)
        made.setMinimumHeight(theme.TOUCH_PX - 4)
        made.setFont(theme.font(theme.SECOND_PX))
        made.setToolTip(waiting_text(job))
        made.clicked.connect(lambda: self.picked.emit(job.id))
        return made
