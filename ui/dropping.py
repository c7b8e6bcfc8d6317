"""Files and pictures dropped anywhere on the window, or pasted where no field takes them, are kept with the job.

They are read and kept beside the window by the page of files, also while a run is on. What is no photo or paper of a
job gets a sentence that says where it belongs.
"""

from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QObject
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent

from benchlog.records import Attached
from ui import texts
from ui.bench_job import BenchJob
from ui.main_window import HISTORY_ROOM, MainWindow

LEDGERS, TABLES = frozenset({".db", ".sqlite", ".sqlite3"}), frozenset({".csv", ".tsv"})


class Dropping(QObject):
    """Watches the window as a whole, before any field is asked: a field would take a photo for its address."""

    def __init__(self, window: MainWindow, bench: BenchJob) -> None:
        super().__init__(window)
        self._window, self._bench = window, bench
        window.installEventFilter(self)
        window.record.pictures.kept.connect(self._say_kept)
        self._watched: QObject | None = None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self._window:
            handle = self._window.windowHandle() if event.type() is QEvent.Type.Show else None
            if handle is not None and handle is not self._watched:
                handle.installEventFilter(self)
                self._watched = handle
            return False
        if isinstance(event, QDropEvent) and not self._over_files(event):
            if not _has_something(event.mimeData()):
                return False
            event.acceptProposedAction()
            if not isinstance(event, QDragEnterEvent | QDragMoveEvent):
                self.take(event.mimeData())
            return True
        return False

    def _over_files(self, event: QDropEvent) -> bool:
        """The page of files takes them itself, with the caption that is typed there."""
        under = self._window.childAt(event.position().toPoint())
        pictures = self._window.record.pictures
        return under is not None and (under is pictures or pictures.isAncestorOf(under))

    def take(self, mime: QMimeData) -> bool:
        """Whether there was anything to take."""
        if not _has_something(mime):
            return False
        if words := _elsewhere(mime):
            self._window.notice.tell(words)
        else:
            self._keep(mime)
        return True

    def _keep(self, mime: QMimeData) -> None:
        picked = self._window.history.picked() if self._window.room == HISTORY_ROOM else None
        on_bench = self._bench.job
        if picked is not None and (on_bench is None or picked.id != on_bench.id):
            self._window.notice.tell(texts.DROPPED_ELSEWHERE.format(number=picked.number))
        elif on_bench is None:
            self._window.notice.tell(texts.DROPPED_NO_JOB)
        else:
            self._window.record.pictures.add_pasted(mime)

    def _say_kept(self, file: Attached) -> None:
        if self._bench.job is not None and not self._window.record.pictures.isVisible():
            number = self._bench.job.number
            self._window.notice.tell(texts.DROPPED_KEPT.format(name=file.name, number=number))


def _has_something(mime: QMimeData) -> bool:
    return mime.hasImage() or any(url.isLocalFile() for url in mime.urls())


def _elsewhere(mime: QMimeData) -> str:
    """Where what was dropped belongs, if not with a job; "" where it does."""
    ends = {Path(url.toLocalFile()).suffix.lower() for url in mime.urls() if url.isLocalFile()}
    if ends & LEDGERS:
        return texts.DROPPED_LEDGER
    return texts.DROPPED_TABLE if ends & TABLES else ""
