"""Between the history room and the ledger: what is asked for is read and shown. Reads only."""

from PySide6.QtCore import QObject

from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import unlocks
from ui.history.record import record_lines
from ui.history.room import HistoryRoom
from ui.run_request import ceilings_of

PAGE = 100


class Browsing(QObject):
    """Wired once; `refresh` reads the newest page again."""

    def __init__(self, room: HistoryRoom, ledger: Ledger, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._room, self._ledger = room, ledger
        room.searched.connect(self.find)
        room.older_wanted.connect(self._find_older)
        room.job_picked.connect(self._pick_job)
        room.run_picked.connect(self._pick_run)

    def refresh(self) -> None:
        self.find(self._room.search.text())

    def find(self, text: str) -> None:
        found = self._ledger.jobs(text=text, limit=PAGE)
        self._room.show_jobs(found, more=len(found) == PAGE)

    def pick(self, job_id: int) -> None:
        """One job alone, whatever was searched for."""
        self._room.show_jobs([self._ledger.job(job_id)], more=False)
        self._room.table.selectRow(0)

    def _find_older(self, text: str, before: int) -> None:
        found = self._ledger.jobs(text=text, limit=PAGE, before_number=before)
        self._room.show_jobs(found, more=len(found) == PAGE, added=True)

    def _pick_job(self, job_id: int) -> None:
        self._room.show_job(self._ledger.job(job_id), self._ledger.runs(job_id))
        self._room.show_record(record_lines(self._ledger.entries(job_id), unlocks(self._ledger, job_id)))

    def _pick_run(self, run_id: int) -> None:
        run = self._ledger.run(run_id)
        self._room.show_run(ceilings_of(run), self._ledger.events(run_id), self._ledger.trace(run_id))
