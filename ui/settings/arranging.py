"""The wiring of the settings: every change applies at once, is kept, and can be taken back."""

from collections.abc import Callable
from pathlib import Path

import msgspec
from PySide6.QtCore import QObject, QStandardPaths, Qt, QTimer, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QApplication, QFileDialog

from benchlog.errors import Refused
from benchlog.ledger.backups import folder_of as backups_of
from benchlog.ledger.files import folder_of as originals_of
from benchlog.ledger.filing import journals_of
from benchlog.ledger.store import Ledger
from benchlog.settings import Settings, settings_file
from ui import texts, theme
from ui.history.errands import Errands
from ui.main_window import SETTINGS_ROOM, MainWindow
from ui.pieces import grey
from ui.preferences import Preferences, Preferring
from ui.running import Running, minding_the_ledger
from ui.settings.places_card import folder_of
from ui.shown_on import screen_facts
from ui.taught_keys import Teaching


class Arranging(QObject):
    """`settings` reads the owner's file. Nothing here writes it, and nothing here reaches a supply."""

    def __init__(
        self,
        window: MainWindow,
        ledger: Ledger,
        running: Running,
        preferring: Preferring,
        teaching: Teaching,
        settings: Callable[[], Settings],
    ) -> None:
        super().__init__(window)
        self.window, self.room = window, window.settings
        self._ledger, self._running = ledger, running
        self._preferring, self._settings, self._teaching = preferring, settings, teaching
        self._known = preferring.now
        self._before: Preferences | None = None
        self._waits: theme.Tokens | None = None
        self._errands = Errands(lambda: minding_the_ledger(window.notice), self)
        self.dialog: QFileDialog | None = None
        room = self.room
        room.look.wanted.connect(lambda name, value: self.change(**{name: value}))
        room.undone.connect(self.undo)
        room.places.copied.connect(self._copy)
        room.places.opened.connect(self._open)
        room.limits.copied.connect(self._copy)
        room.bundle.wanted.connect(self._want_bundle)
        room.keys.teach.connect(self._teach)
        room.keys.forget.connect(teaching.forget)
        teaching.refused.connect(lambda _, why: room.keys.say(why))
        teaching.ended.connect(lambda _: room.keys.say(""))
        teaching.changed.connect(lambda _: self.changed_from(self._known, preferring.now))
        window.closing.connect(self._errands.stop)
        self._show()

    def settle(self) -> None:
        """Waits for what is out. Raises TimeoutError."""
        self._errands.settle()

    def change(self, **changes: object) -> None:
        """One preference, or a few at once; what was before can be had again."""
        before = self._preferring.now
        if msgspec.structs.replace(before, **changes) != before:
            self.changed_from(before, self._preferring.change(**changes))

    def changed_from(self, before: Preferences, now: Preferences) -> None:
        """Somebody kept a change: it applies."""
        self._before, self._known = before, now
        self._apply(before, now)
        self.room.said.setText("")
        self._show()

    def undo(self) -> None:
        """The last change alone; taken back twice it is there again."""
        before, now = self._before, self._preferring.now
        if before is not None:
            back = {name: getattr(before, name) for name in _changed(before, now)}
            self.changed_from(now, self._preferring.change(**back))
            self.room.said.setText(texts.SETTING_UNDONE)

    def _apply(self, before: Preferences, now: Preferences) -> None:
        if _changed(before, now) & {"colours", "contrast"}:
            self.wear(theme.preferred_theme(now.colours, now.contrast))

    def wear(self, tokens: theme.Tokens) -> None:
        """Another theme. While an output may be on it waits: dressing the window takes longer than a run's lease."""
        self._waits = tokens
        self._wear_what_waits()

    def _wear_what_waits(self) -> None:
        tokens = self._waits
        if tokens is not None and not self._running.may_be_on:
            self._waits = None
            self.window.wear(tokens)

    def refresh(self) -> None:
        """The page is looked at: what stands outside of it is read again."""
        path = settings_file()
        try:
            self.room.limits.show_limits(self._settings(), path)
        except Refused as refusal:
            self.room.limits.show_trouble(str(refusal), path)
        self.room.places.show_places(self._places())
        self.follow()
        if not self.room.licences.list.toPlainText():
            self._errands.ask("licences", _licences, self.room.licences.list.setPlainText)

    def follow(self) -> None:
        """What can be pressed follows from whether an output may be on."""
        on = self._running.may_be_on
        if not on and self._waits is not None:
            QTimer.singleShot(0, self._wear_what_waits)  # what is to be kept of the run goes first
        if self.window.room != SETTINGS_ROOM:
            return  # it looks at folders, and during a run it is called for every kick
        self.room.look.offer(texts.NOT_WHILE_ON if on else "")
        self.room.places.offer(texts.FOLDER_NOT_WHILE_ON if on else "")
        grey(self.room.bundle.make, texts.BUNDLE_NOT_WHILE_ON if on else "")
        self.room.keys.offer(texts.KEY_NOT_WHILE_ON if on else "")
        self._show()

    def _teach(self, role: str) -> None:
        if self._teaching.begin(role):
            self.room.keys.say(texts.KEY_PRESS_NOW)

    def _show(self) -> None:
        self.room.look.show_kept(self._preferring.now)
        self.room.keys.show_kept(self._preferring.now)
        grey(self.room.undo_button, "" if self._before is not None else texts.SETTING_NOTHING_CHANGED)

    def _places(self) -> dict[str, Path]:
        from benchlog.logs import log_folder

        ledger = self._ledger.path
        places = {
            "ledger": ledger,
            "backups": backups_of(ledger),
            "files": originals_of(ledger),
            "journals": journals_of(ledger),
            "owner": settings_file(),
            "logs": log_folder(),
        }
        return places if self._preferring.path is None else places | {"window": self._preferring.path}

    def _copy(self, path: Path) -> None:
        QApplication.clipboard().setText(str(path))
        self.room.said.setText(texts.COPIED.format(what=path))

    def _open(self, path: Path) -> None:
        if not QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder_of(path)))):
            self._copy(folder_of(path))
            self.room.said.setText(texts.FOLDER_NOT_OPENED)

    # the bundle

    def _want_bundle(self) -> None:
        """Asks where to. Qt's own dialog, and only while no output may be on."""
        if self._running.may_be_on:
            return
        dialog = QFileDialog(self.room, texts.BUNDLE_TITLE)
        dialog.setObjectName("bundle_save")
        dialog.setOptions(QFileDialog.Option.DontUseNativeDialog | QFileDialog.Option.DontConfirmOverwrite)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDirectory(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation))
        dialog.setDefaultSuffix("zip")
        dialog.selectFile("benchlog-support.zip")
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.fileSelected.connect(lambda path: self.make_bundle(Path(path)))
        self.dialog = dialog
        dialog.open()

    def make_bundle(self, path: Path) -> None:
        """In a thread: it looks through the whole ledger."""
        ledger, screen = self._ledger.path, screen_facts()

        def make() -> OSError | None:
            from benchlog.support import bundle

            try:
                bundle(path, ledger, screen=screen)
            except OSError as error:
                return error
            return None

        def say(trouble: OSError | None) -> None:
            failed = "" if trouble is None else texts.BUNDLE_FAILED.format(what=trouble.strerror or trouble)
            self.room.bundle.words.setText(failed or texts.BUNDLE_MADE.format(path=path))

        self._errands.ask("bundle", make, say)


def _changed(before: Preferences, now: Preferences) -> set[str]:
    return {name for name in Preferences.__struct_fields__ if getattr(before, name) != getattr(now, name)}


def _licences() -> str:
    from benchlog.licences import QT_NOTE, listing

    return "\n".join([*(f"{one.name} {one.version}: {one.licence}" for one in listing()), "", QT_NOTE])
