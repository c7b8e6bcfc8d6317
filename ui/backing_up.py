"""The day's backup, made beside the window; what came of it is told in the window's own thread."""

from PySide6.QtCore import QObject, Signal

from benchlog.ledger.backups import Backup, BackupOfTheDay
from benchlog.ledger.store import Ledger
from ui import retelling, texts
from ui.alarms import What
from ui.main_window import MainWindow


class BackingUp(QObject):
    """`made` carries a Backup, or what went wrong as text. A backup that fails is said and stops nothing."""

    made = Signal(object)

    def __init__(self, window: MainWindow, ledger: Ledger) -> None:
        super().__init__(window)
        self._window = window
        self._thread = BackupOfTheDay(ledger.path, ledger.clock, self.made.emit)
        self.made.connect(self._tell)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        """Waits until a half-made copy is put away."""
        if self._thread.ident is not None:
            self._thread.stop()

    def _tell(self, told: Backup | str) -> None:
        if isinstance(told, str):
            self._window.notice.tell(texts.BACKUP_FAILED.format(what=retelling.told(str(told))), What.BACKUP)
        elif told.trouble:
            self._window.notice.tell(texts.BACKUP_LACKS.format(what=retelling.told(told.trouble)), What.BACKUP)
