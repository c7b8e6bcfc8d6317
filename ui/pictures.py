"""Photos and files of a job: dropped, pasted or chosen, read in a thread, shown small with what is said of them."""

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData, QSize, Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QIcon,
    QImage,
    QImageWriter,
    QKeyEvent,
    QKeySequence,
    QPixmap,
)
from PySide6.QtWidgets import (
    QApplication,
    QFileDialog,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from benchlog.errors import LedgerError, Refused
from benchlog.pictures.taking import Taken, take, take_file
from benchlog.records import Attached
from ui import retelling, texts, theme
from ui.pieces import EmptyWords, FewLines, button, grey, plain_hint

PASTED = "pasted.{end}"

SMALL = QSize(112, 84)
_RAW = {"image/png": "png", "image/jpeg": "jpg", "image/webp": "webp", "image/gif": "gif"}


class Pictures(QWidget):
    """`taken(Taken, caption)` in the window's thread for each file that may be kept: its bytes, name and small picture.

    With `keep` set, it is called in the worker's thread instead, and what it returns is said with `kept(Attached)`.
    """

    taken = Signal(object, str)
    kept = Signal(object)
    _done = Signal(object, str)
    _failed = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.keep: Callable[[Taken, str], Attached] | None = None
        # One at a time: two large pictures at once would take twice the memory.
        self._worker = ThreadPoolExecutor(max_workers=1, thread_name_prefix="pictures")
        self._reading = 0
        self._trouble = ""
        self._off = True
        self.setObjectName("pictures")
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(texts.FILES_HINT)
        self._lay_out()
        self._done.connect(self._on_done)
        self._failed.connect(self._on_failed)
        self.destroyed.connect(lambda _=None, worker=self._worker: worker.shutdown(wait=False, cancel_futures=True))

    def _lay_out(self) -> None:
        self.list = QListWidget()
        self.list.setObjectName("pictures_list")
        self.list.setAccessibleName(texts.FILES_NAME)
        self.list.setViewMode(QListWidget.ViewMode.IconMode)
        self.list.setMovement(QListWidget.Movement.Static)
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setIconSize(SMALL)
        self.list.setWordWrap(True)
        self.list.setFont(theme.font(theme.SECOND_PX))
        self.list.setAcceptDrops(False)
        self.none = EmptyWords(self.list, texts.FILES_NONE)
        self.caption = QLineEdit()
        self.caption.setObjectName("pictures_caption")
        self.caption.setAccessibleName(texts.CAPTION_NAME)
        self.caption.setPlaceholderText(texts.CAPTION_HINT)
        self.caption.setFont(theme.font())
        self.caption.setMinimumHeight(theme.TOUCH_PX)
        self.add_button = button(texts.FILES_ADD, "pictures_add", accessible=texts.FILES_ADD_NAME)
        self.add_button.clicked.connect(self._choose)
        self.words = FewLines(2, "second", px=theme.SECOND_PX)
        self.words.setObjectName("pictures_words")
        row = QHBoxLayout()
        row.addWidget(self.caption, 1)
        row.addWidget(self.add_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.list, 1)
        column.addLayout(row)
        column.addWidget(self.words)
        self._say()

    def set_output_off(self, off: bool) -> None:
        """While the output may be on nothing is opened that could come before "Output off"."""
        self._off = off
        grey(self.add_button, "" if off else texts.FILES_WAIT_FOR_OFF)

    def show_files(self, files: Sequence[Attached]) -> None:
        """Those of a job, in place of what was shown."""
        self.list.clear()
        self._trouble = ""
        for file in files:
            self._show(file.name, file.caption, file.thumbnail)
        self._say()

    def add_files(self, paths: Sequence[Path]) -> None:
        for path in paths:
            self._begin(path.name, lambda path=path: take_file(path))  # type: ignore[misc]

    def add_pasted(self, mime: QMimeData) -> bool:
        """Files, or else a picture; False where there is neither."""
        paths = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        if paths:
            self.add_files(paths)
            return True
        kind = next((kind for kind in _RAW if mime.hasFormat(kind)), None)
        if kind is not None:
            data, raw_name = bytes(mime.data(kind).data()), PASTED.format(end=_RAW[kind])
            self._begin(raw_name, lambda: take(data, raw_name))
            return True
        image = mime.imageData() if mime.hasImage() else None
        if isinstance(image, QImage) and not image.isNull():
            name = PASTED.format(end="png")
            self._begin(name, lambda: take(_png(image), name))
            return True
        return False

    def finish(self) -> None:
        """Waits for what is being read. For the window's end, with the output off."""
        self._worker.shutdown(wait=True)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        mime = event.mimeData()
        if mime.hasImage() or any(url.isLocalFile() for url in mime.urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        if self.add_pasted(event.mimeData()):
            event.acceptProposedAction()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not event.matches(QKeySequence.StandardKey.Paste):
            super().keyPressEvent(event)
        elif not self.add_pasted(QApplication.clipboard().mimeData() or QMimeData()):
            self._trouble = texts.NOTHING_PASTED
            self._say()

    def _choose(self) -> None:
        if not self._off:
            return
        dialog = QFileDialog(self, texts.FILES_ADD_NAME)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setOptions(QFileDialog.Option.DontUseNativeDialog)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFiles)
        dialog.filesSelected.connect(lambda names: self.add_files([Path(name) for name in names]))
        dialog.open()

    def _begin(self, name: str, make: Callable[[], Taken]) -> None:
        caption, keep = self.caption.text().strip(), self.keep
        self.caption.clear()
        self._reading += 1
        self._trouble = ""
        self._say()
        self._worker.submit(self._work, name, make, caption, keep)

    def _work(
        self, name: str, make: Callable[[], Taken], caption: str, keep: Callable[[Taken, str], Attached] | None
    ) -> None:
        try:
            try:
                made = make()
                self._done.emit((made, None if keep is None else keep(made, caption)), caption)
            except (Refused, LedgerError) as error:
                self._failed.emit(retelling.told(str(error)))
            except Exception as error:  # noqa: BLE001  a thread of its own: nobody else would ever say it
                self._failed.emit(texts.FILE_NOT_KEPT.format(name=name, what=retelling.told(str(error))))
        except RuntimeError:
            pass  # the window is gone

    def _on_done(self, pair: tuple[Taken, Attached | None], caption: str) -> None:
        made, attached = pair
        self._reading -= 1
        self._trouble = made.remark or self._trouble
        self._show(made.name, caption, made.thumbnail)
        self._say()
        if attached is None:
            self.taken.emit(made, caption)
        else:
            self.kept.emit(attached)

    def _on_failed(self, what: str) -> None:
        self._reading -= 1
        self._trouble = what
        self._say()

    def _show(self, name: str, caption: str, thumbnail: bytes | None) -> None:
        item = QListWidgetItem(caption or name)
        item.setToolTip(plain_hint(name))
        item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{name}. {caption}" if caption else name)
        picture = QPixmap()
        if thumbnail is None or not picture.loadFromData(thumbnail, "JPEG"):
            picture = QPixmap(SMALL)
            picture.fill(Qt.GlobalColor.lightGray)
        item.setIcon(QIcon(picture))
        self.list.addItem(item)

    def _say(self) -> None:
        usual = texts.FILES_READING.format(count=self._reading) if self._reading else texts.FILES_HINT
        self.words.say(self._trouble or usual)


def _png(image: QImage) -> bytes:
    target = QBuffer()
    target.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(target, QByteArray(b"png")).write(image)
    return bytes(target.data().data())
