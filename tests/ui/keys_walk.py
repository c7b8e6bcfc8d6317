"""The window on an X display, real keys pressed with everything open that can be open; tells as JSON what was heard.

`DISPLAY=:N QT_QPA_PLATFORM=xcb python -m tests.ui.keys_walk FOLDER`
"""

import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QElapsedTimer, QEventLoop, QTimer
from PySide6.QtWidgets import QApplication, QCompleter, QFileDialog, QLineEdit, QMenu, QMessageBox, QWidget

from benchlog.bench.frames import Request
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor, RunKind
from tests.ui.fake_link import FakeLink
from tests.ui.real_keys import ESCAPE, F12, PAUSE, RealKeys
from ui import theme
from ui.main_window import CURVES_ROOM, HISTORY_ROOM, MainWindow
from ui.output_off import OutputOffKeys
from ui.preferences import Preferring
from ui.session import Session

WITHIN_MS, QUIET_MS = 3000, 60


class Walk:
    """A window with a run on whose bench does not answer, so that each press can be seen."""

    def __init__(self, folder: Path, application: QApplication) -> None:
        self.keys = RealKeys(int(os.environ["DISPLAY"].lstrip(":").partition(".")[0]))
        ledger = Ledger.open(folder / "harbour.db")
        preferring = Preferring()
        preferring.change(off_key="F12")
        self.window = MainWindow(theme.LIGHT, resource="TCPIP::192.0.2.7::5025::SOCKET")
        self.links: list[FakeLink] = []
        self.session = Session(self.window, ledger, self._link, beep=lambda: None, preferring=preferring)
        for filtering in (self.session.start_keys, self.session.teaching, self.session.running.keys):
            application.installEventFilter(filtering)
        off = OutputOffKeys(application, liked=lambda: preferring.now)
        off.pressed.connect(self.session.running.output_off)
        application.installEventFilter(off)
        job = ledger.new_job(
            item=Item(kind="Bilge pump"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry, uncoupled"
        )
        self.session.open_job(job.id)
        self.window.show()
        self.window.activateWindow()
        self.until(self.window.isActiveWindow)
        self.heard: dict[str, bool] = {}

    def _link(self, request: Request) -> FakeLink:
        self.links.append(FakeLink(request, per_poll_s=0.02))
        self.links[-1].hold_back_end = True
        return self.links[-1]

    def until(self, reached: Callable[[], bool]) -> bool:
        passed = QElapsedTimer()
        passed.start()
        while not reached() and passed.elapsed() < WITHIN_MS:
            QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)
        return reached()

    def quiet(self) -> None:
        """One press can be heard several times: the last of them has to be over."""
        passed = QElapsedTimer()
        passed.start()
        while passed.elapsed() < QUIET_MS:
            QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 5)

    def hears(self, name: str, key: int = ESCAPE) -> None:
        link = self.links[-1]
        self.quiet()
        before = len(link.stops)
        self.keys.press(key)
        self.heard[name] = self.until(lambda: len(link.stops) > before)

    def with_open(self, name: str, made: QWidget, show: Callable[[], object], shown: Callable[[], bool]) -> None:
        QTimer.singleShot(0, show)  # a modal one does not come back
        there = self.until(shown)
        self.hears(name)
        self.heard[name] &= there
        made.close()
        self.until(lambda: not made.isVisible() and self.window.isActiveWindow())
        if (popup := QApplication.activePopupWidget()) is not None:
            popup.close()


def go(walk: Walk) -> None:
    window, session = walk.window, walk.session
    session.running.begin(RunKind.PROBE)
    walk.hears("bench")
    walk.hears("bench, Pause", PAUSE)
    walk.hears("bench, taught", F12)
    for room, name in ((CURVES_ROOM, "curves"), (HISTORY_ROOM, "history"), (0, "back")):
        session.show_room(room)
        walk.hears(name)
    box = QMessageBox(QMessageBox.Icon.Question, "question", "modal", parent=window)
    walk.with_open("message box", box, box.open, box.isActiveWindow)
    files = QFileDialog(window)
    files.setOptions(QFileDialog.Option.DontUseNativeDialog)
    walk.with_open("file dialog", files, files.open, files.isActiveWindow)
    menu = QMenu(window)
    menu.addAction("something")
    walk.with_open("menu", menu, lambda: menu.popup(window.pos()), menu.isVisible)
    combo = window.intake.kind
    session.go_to(next(iter(window._pages)))
    view = combo.view()
    assert view is not None
    walk.with_open("combo popup", view, combo.showPopup, view.isVisible)
    field = QLineEdit(window)
    completer = QCompleter(["bilge pump", "cabin fan"], field)
    field.setCompleter(completer)
    field.show()
    field.setFocus()
    completer.setCompletionPrefix("b")
    proposals = completer.popup()
    assert proposals is not None
    walk.with_open("completer", proposals, completer.complete, proposals.isVisible)
    field.deleteLater()
    walk.quiet()
    walk.keys.press(ESCAPE)
    before = len(walk.links[-1].stops)
    time.sleep(0.3)  # the window's thread does something long
    walk.heard["busy"] = walk.until(lambda: len(walk.links[-1].stops) > before)


def main(folder: Path) -> None:
    application = QApplication([])
    application.setStyle("Fusion")
    walk = Walk(folder, application)
    window = walk.window
    window.show_stage(next(stage for stage, page in window._pages.items() if page is window.probe))
    window.stages.setFocus()
    go(walk)
    print(json.dumps(walk.heard), flush=True)
    os._exit(0)  # the run whose bench never answers is not waited for


if __name__ == "__main__":
    main(Path(sys.argv[1]))
