"""What is being typed into a page is kept as a draft, so that a crash or a power cut takes nothing of it away."""

from typing import Protocol

from PySide6.QtCore import QObject, QTimer, SignalInstance

from benchlog.errors import LedgerBusy, LedgerError, Refused
from benchlog.ledger.drafts import Fields, draft, drop_draft, keep_draft
from benchlog.ledger.store import Ledger

PAUSE_MS = 400


class Page(Protocol):
    """A page that can be drafted. `changed` is emitted as a person types; `form` is what is there, `fill` puts it."""

    @property
    def changed(self) -> SignalInstance: ...
    def form(self) -> Fields: ...
    def fill(self, form: Fields) -> None: ...


class Drafting(QObject):
    """One page and one key at a time; with no key nothing is kept. A ledger that can't be written costs only the draft:
    what is typed is still on the screen, and keeping it for good says what is wrong."""

    def __init__(self, page: Page, ledger: Ledger, parent: QObject) -> None:
        super().__init__(parent)
        self._page, self._ledger, self._key = page, ledger, ""
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self.keep)
        page.changed.connect(self._touched)

    def follow(self, key: str) -> bool:
        """From now on what is typed is kept under this key; whether a draft of it was there, and was filled in."""
        if key == self._key:
            return False
        self.keep_now()
        self._key = "" if self._ledger.read_only else key
        try:
            found = draft(self._ledger, key) if self._key else None
        except (LedgerError, Refused):
            return False
        if found is not None:
            self._page.fill(found)
            self._pause.stop()  # putting it there is no typing
        return found is not None

    def keep_now(self) -> None:
        """What still waits for a pause."""
        if self._pause.isActive():
            self._pause.stop()
            self.keep()

    def keep(self) -> None:
        """Keeps the page as it is."""
        if self._key:
            try:
                keep_draft(self._ledger, self._key, self._page.form())
            except LedgerBusy:
                self._pause.start()
            except LedgerError:
                return  # the next key tries again

    def drop(self) -> None:
        """It was kept for good, or given up."""
        self._pause.stop()
        key, self._key = self._key, ""
        if key:
            try:
                drop_draft(self._ledger, key)
            except LedgerError:
                return  # an old draft is offered once more, and seen to be one

    def _touched(self) -> None:
        if self._key:
            self._pause.start()
