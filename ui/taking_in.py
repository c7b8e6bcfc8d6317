"""What is said of a job on its first and last page: drafts of both, changes and undoing them, a thing come back."""

from PySide6.QtCore import QObject, QTimer, Signal

from benchlog.ledger.edits import change, edits_of, undo
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import earlier_jobs
from ui import texts
from ui.bench_job import BenchJob
from ui.drafting import Drafting
from ui.main_window import MainWindow
from ui.running import minding_the_ledger

_PAUSE_MS = 250


class TakingIn(QObject):
    """`changed`: the record of the job on the bench is another one now; `earlier_wanted`: an earlier job to look at."""

    changed = Signal()
    earlier_wanted = Signal(int)

    def __init__(self, window: MainWindow, ledger: Ledger, bench: BenchJob) -> None:
        super().__init__(window)
        self._window, self._ledger, self._bench = window, ledger, bench
        self._intake = Drafting(window.intake, ledger, self)
        self._close = Drafting(window.close_stage, ledger, self)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(_PAUSE_MS)
        self._pause.timeout.connect(self.look_for_earlier)
        window.intake.serial.textChanged.connect(lambda: self._pause.start())
        window.intake.edited.connect(self._change)
        window.intake.undone.connect(self._undo)
        window.intake.earlier_wanted.connect(self.earlier_wanted)

    def follow(self) -> None:
        """Drafts are kept of what can be typed now; whether one was found is said."""
        job = self._bench.job
        found = self._intake.follow("intake" if job is None else "")
        open_job = job is not None and not self._bench.closed
        found |= self._close.follow(f"close {job.number}" if job is not None and open_job else "")
        if found:
            self._window.notice.tell(texts.DRAFT_FOUND)
        if job is not None:
            with minding_the_ledger(self._window.notice):
                edits = edits_of(self._ledger, job.id)
                can_undo = any(edit.undone_utc is None and edit.run is None for edit in edits)
                self._window.intake.show_record(job, can_undo=can_undo and open_job)

    def taken_in(self) -> None:
        """The form became a job."""
        self._intake.drop()

    def closed(self) -> None:
        """The last page became part of the record."""
        self._close.drop()

    def keep(self) -> None:
        """The window is about to close."""
        self._intake.keep_now()
        self._close.keep_now()

    def look_for_earlier(self) -> None:
        """Jobs of the same thing, by its serial."""
        job, intake = self._bench.job, self._window.intake
        with minding_the_ledger(self._window.notice):
            intake.comeback.offer(earlier_jobs(self._ledger, intake.item(), before=None if job is None else job.id))

    def _change(self, changes: dict[str, object]) -> None:
        job = self._bench.job
        if job is None:
            return
        with minding_the_ledger(self._window.notice):
            change(self._ledger, job.id, changes, who=self._window.intake.owner.who.text())
            self._bench.reload()
        self.changed.emit()

    def _undo(self) -> None:
        job = self._bench.job
        if job is None:
            return
        with minding_the_ledger(self._window.notice):
            back = undo(self._ledger, job.id)
            self._bench.reload()
            if back:
                fields = ", ".join(dict.fromkeys(texts.JOB_FIELDS.get(edit.field, edit.field) for edit in back))
                self._window.notice.tell(texts.UNDONE.format(fields=fields))
        self.changed.emit()
