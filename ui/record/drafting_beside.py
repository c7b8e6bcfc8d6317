"""Drafts of a page that can be typed into while a run is on: written beside the window."""

from functools import partial

from PySide6.QtCore import QObject

from benchlog.errors import LedgerError
from benchlog.ledger.drafts import drop_draft, keep_draft
from benchlog.ledger.store import Ledger
from ui.drafting import Drafting, Page
from ui.record.ledger_work import LedgerWork


class DraftingBeside(Drafting):
    """As Drafting. A page with nothing typed leaves no draft."""

    def __init__(self, page: Page, ledger: Ledger, work: LedgerWork, parent: QObject) -> None:
        super().__init__(page, ledger, parent)
        self._work = work

    def follow(self, key: str) -> bool:
        """Waits for what is being written: not while a run is on, when no other job comes to the bench anyway."""
        if key != self._key:
            self.keep_now()
            self._work.wait()
        return super().follow(key)

    def keep(self) -> None:
        self._pause.stop()
        if self._key:
            form = self._page.form()
            write = partial(keep_draft, fields=form) if form else drop_draft
            self._work.do(partial(write, self._ledger, self._key), lambda _: None, self._again)

    def _again(self, error: Exception) -> None:
        if not isinstance(error, LedgerError):
            raise error
        if not self._ledger.read_only:
            self._pause.start()
