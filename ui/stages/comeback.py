"""Whether a thing was here before, as its serial is typed. Part of the intake page."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from benchlog.records import Job
from ui import texts
from ui.moments import day_text
from ui.pieces import Elided, Tick, button
from ui.wrapping import WrapRow


def _came_to(job: Job) -> str:
    """What whoever closed it said; else how its last run ended."""
    if job.result in texts.RESULTS:
        return texts.RESULTS[job.result]
    if not job.last_outcome:
        return texts.NO_RUN_YET
    words = {one.value: said for one, said in texts.OUTCOME_WORDS.items()}
    return words.get(job.last_outcome, job.last_outcome)  # it may be a word of a newer program


class ComebackRow(QWidget):
    """Hidden while nothing is known. `wanted` carries the key of the earlier job."""

    wanted = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._earlier: Job | None = None
        self.words = Elided("", "ask")
        self.words.setObjectName("comeback_words")
        self.same = Tick(texts.COMEBACK_SAME, "comeback_same")
        self.look = button(texts.COMEBACK_LOOK, "comeback_look")
        self.look.clicked.connect(self._want)
        row = WrapRow(self)
        row.setContentsMargins(0, 6, 0, 0)
        row.add(self.words, stretch=1, least=300)
        row.add(self.same)
        row.add(self.look)
        self.hide()

    def offer(self, earlier: Sequence[Job]) -> None:
        """Newest first."""
        before, self._earlier = self._earlier, earlier[0] if earlier else None
        self.setVisible(bool(earlier))
        if not earlier:
            return
        if before is None or before.id != earlier[0].id:
            self.same.setChecked(True)
        last = earlier[0]
        self.words.say(
            (texts.COMEBACK_ONE if len(earlier) == 1 else texts.COMEBACK_MANY).format(
                count=len(earlier),
                number=last.number,
                day=day_text(last.closed_utc or last.opened_utc),
                ended=_came_to(last),
            )
        )

    def _want(self) -> None:
        if self._earlier is not None:
            self.wanted.emit(self._earlier.id)

    def job_id(self) -> int | None:
        """The earlier job, if this is that thing come back."""
        return self._earlier.id if self._earlier is not None and self.same.isChecked() else None
