"""Photos and files are dropped, pasted or chosen, read beside the window, and refused in words."""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt, QTimer, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog
from pytestqt.qtbot import QtBot

from benchlog.ledger.files import attach, files_of
from benchlog.ledger.store import Ledger
from benchlog.pictures.taking import Taken
from benchlog.records import Attached, Item, Motor
from tests.pictures import making
from ui import texts
from ui.pictures import Pictures


@pytest.fixture
def pictures(qtbot: QtBot) -> Iterator[Pictures]:
    made = Pictures()
    qtbot.addWidget(made)
    made.show()
    yield made
    made.finish()


def _files(*paths: Path) -> QMimeData:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    return mime


def test_a_dropped_photo_is_shown_small_with_its_caption_and_told(
    qtbot: QtBot, pictures: Pictures, tmp_path: Path
) -> None:
    (tmp_path / "pump.jpg").write_bytes(making.jpeg(6))
    pictures.caption.setText("rust on the hub")
    mime = _files(tmp_path / "pump.jpg")
    assert (pictures.none.isVisible(), pictures.none.text()) == (True, texts.FILES_NONE)
    button, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    with qtbot.waitSignal(pictures.taken, timeout=5000) as told:
        pictures.dropEvent(QDropEvent(QPoint(5, 5), Qt.DropAction.CopyAction, mime, button, keys))
    taken, caption = told.args or (None, None)
    assert isinstance(taken, Taken)
    assert (taken.name, taken.data, caption) == ("pump.jpg", making.jpeg(6), "rust on the hub")
    assert pictures.list.item(0).text() == "rust on the hub"
    assert pictures.list.item(0).data(Qt.ItemDataRole.AccessibleTextRole) == "pump.jpg. rust on the hub"
    assert pictures.words.said == texts.FILES_HINT
    assert pictures.caption.text() == ""
    assert not pictures.none.isVisible()
    pictures.show_files([])
    assert pictures.none.isVisible()


def test_a_picture_is_pasted_with_the_keyboard(qtbot: QtBot, pictures: Pictures) -> None:
    clipboard = QApplication.clipboard()
    clipboard.clear()
    QTest.keyClick(pictures, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert pictures.words.said == texts.NOTHING_PASTED
    clipboard.setImage(making.painted())
    with qtbot.waitSignal(pictures.taken, timeout=5000) as told:
        QTest.keyClick(pictures, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    taken = (told.args or [None])[0]
    assert isinstance(taken, Taken)
    assert (taken.media_type, taken.width, taken.height) == ("image/png", making.WIDTH, making.HEIGHT)
    clipboard.clear()


def test_what_is_refused_is_said_and_nothing_is_shown(qtbot: QtBot, pictures: Pictures, tmp_path: Path) -> None:
    (tmp_path / "pump.jpg").write_bytes(making.jpeg()[:300])
    pictures.add_pasted(_files(tmp_path / "pump.jpg"))
    qtbot.waitUntil(lambda: "is cut short" in pictures.words.said, timeout=5000)
    assert pictures.list.count() == 0


def test_it_is_kept_beside_the_window_where_a_way_to_keep_it_is_given(
    qtbot: QtBot, pictures: Pictures, ledger: Ledger, tmp_path: Path
) -> None:
    job = ledger.new_job(item=Item(kind="Bilge pump"), motor=Motor(rated_volts=12.0), complaint="", load_state="dry")

    def keep(taken: Taken, caption: str) -> Attached:
        return attach(ledger, job.id, taken, caption=caption)

    pictures.keep = keep
    (tmp_path / "pump.png").write_bytes(making.png())
    with qtbot.waitSignal(pictures.kept, timeout=5000) as told:
        pictures.add_files([tmp_path / "pump.png"])
    assert files_of(ledger, job.id) == told.args
    pictures.show_files(files_of(ledger, job.id))
    assert [pictures.list.item(row).text() for row in range(pictures.list.count())] == ["pump.png"]


def test_no_dialog_is_opened_while_the_output_may_be_on(pictures: Pictures) -> None:
    pictures.set_output_off(False)
    pictures.add_button.click()
    assert pictures.findChildren(QFileDialog) == []
    assert (pictures.add_button.isEnabled(), pictures.add_button.toolTip()) == (False, texts.FILES_WAIT_FOR_OFF)
    pictures.set_output_off(True)
    assert pictures.add_button.isEnabled()


def test_the_window_goes_on_while_a_large_picture_is_read(qtbot: QtBot, pictures: Pictures, tmp_path: Path) -> None:
    (tmp_path / "pump.jpg").write_bytes(making.encoded(b"JPEG", making.painted(7000, 6000)))
    beats: list[float] = []
    timer = QTimer()
    timer.timeout.connect(lambda: beats.append(time.perf_counter()))
    timer.start(1)
    with qtbot.waitSignal(pictures.taken, timeout=20_000):
        pictures.add_files([tmp_path / "pump.jpg"])
        before = len(beats)
    timer.stop()
    assert before == 0
    assert len(beats) > 3  # it was not read in the call that asked for it, and the event loop ran meanwhile
