"""The sheet of the job that is shown, painted in a thread and looked at; printed or kept from there."""

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtGui import QImage, QPainter

from benchlog.ledger.store import Ledger
from benchlog.records import Job
from benchlog.settings import Settings
from ui import texts
from ui.history import paper
from ui.history.errands import Errands
from ui.history.room import JOBS_PAGE, PAPER_PAGE
from ui.main_window import HISTORY_ROOM, MainWindow
from ui.running import minding_the_ledger


class Previewing(QObject):
    """`in_the_way` says why no sheet is made now; `keep_pdf` asks where to keep it, as the history does."""

    def __init__(
        self,
        window: MainWindow,
        ledger: Ledger,
        settings: Callable[[], Settings],
        *,
        show_room: Callable[[int], None],
        in_the_way: Callable[[], str],
        keep_pdf: Callable[[int], None],
    ) -> None:
        super().__init__(window)
        self._window, self._ledger, self._settings = window, ledger, settings
        self._show_room, self._in_the_way = show_room, in_the_way
        self._from, self._job = HISTORY_ROOM, 0
        self._errands = Errands(lambda: minding_the_ledger(window.notice), self)
        page = window.history.preview
        page.back.connect(self.back)
        page.printed.connect(self.print)
        page.saved.connect(lambda: keep_pdf(self._job))
        window.closing.connect(self._errands.stop)

    def settle(self) -> None:
        """Waits for what is out. Raises TimeoutError."""
        self._errands.settle()

    @property
    def shown(self) -> bool:
        """Whether a sheet is what is looked at."""
        return self._window.room == HISTORY_ROOM and self._window.history.pages.currentIndex() == PAPER_PAGE

    def show(self, job: Job | None) -> None:
        trouble = self._in_the_way() or ("" if job is not None else texts.NO_JOB_FOR_PAPER)
        if trouble or job is None:
            self._window.notice.tell(trouble)
            return
        ledger, settings, job_id = self._ledger, self._settings, job.id
        said = texts.PAPER_SAY.format(number=job.number, kind=job.item.kind)

        def show(images: list[bytes]) -> None:
            if trouble := self._in_the_way():  # a run began meanwhile: its page stays in front
                self._window.notice.tell(trouble)
                return
            self._from, self._job = self._window.room, job_id
            self._window.history.preview.show_pages(said, images)
            self._show_room(HISTORY_ROOM)
            self._window.history.show_page(PAPER_PAGE)
            self._window.history.preview.area.setFocus()  # keys go through the pages; Enter prints nothing

        self._errands.ask("sheet", lambda: paper.job_images(ledger, job_id, settings), show)

    def back(self) -> None:
        self._window.history.show_page(JOBS_PAGE)
        self._show_room(self._from)

    def print(self) -> None:
        """On the printer that the system uses; no dialog stands in front of the window."""
        from PySide6.QtPrintSupport import QPrinter, QPrinterInfo  # late: few ever print

        if trouble := self._in_the_way():
            self._window.notice.tell(trouble)
            return
        known = QPrinterInfo.defaultPrinter()
        if known.isNull():
            self._window.notice.tell(texts.PAPER_NO_PRINTER)
            return
        printer = QPrinter(known, QPrinter.PrinterMode.HighResolution)
        printer.setFullPage(True)
        painter = QPainter(printer)
        for number, image in enumerate(self._window.history.preview.images):
            if number:
                printer.newPage()
            painter.drawImage(painter.viewport(), QImage.fromData(image))
        painter.end()
        self._window.notice.tell(texts.PAPER_PRINTED.format(name=known.printerName()))
