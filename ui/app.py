"""Opens the window on a ledger and stays until it is closed."""

import argparse
import contextlib
import gc
import logging
import os
import signal
import sys
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal, SignalInstance
from PySide6.QtWidgets import QApplication, QMessageBox, QWidget

from benchlog.bench.link import Link
from benchlog.errors import LedgerError
from benchlog.ledger.store import Ledger
from benchlog.logs import keep_log
from benchlog.settings import ledger_file
from ui import sayings, texts, theme
from ui.alarms import What
from ui.awake import Awake, system_here
from ui.backing_up import BackingUp
from ui.charts.live_plot import load_library
from ui.faults import hook_faults
from ui.main_window import MainWindow
from ui.output_off import OutputOffKeys
from ui.placing import keep_place, put_back, room_left
from ui.preferences import COLOURS, Preferring, preferences_file
from ui.session import Session
from ui.snapshots import take_all
from ui.translating import speak_language, wanted_language

EX_NO_LEDGER = 74
QUIET_AFTER_MS = 400
"""After it was drawn, which takes some starts longer; no run is on yet that a pause could disturb."""


def arguments(argv: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="benchlog window", description=texts.ABOUT)
    parser.add_argument("--ledger", type=Path, metavar="FILE", help=texts.HELP_LEDGER)
    parser.add_argument("--supply", default="", metavar="RESOURCE", help=texts.HELP_SUPPLY)
    parser.add_argument("--demo", action="store_true", help=texts.HELP_DEMO)
    parser.add_argument("--item", default="", metavar="KIND", help=texts.HELP_ITEM)
    parser.add_argument("--rated-voltage", type=float, metavar="V", help=texts.HELP_RATED)
    parser.add_argument("--complaint", default="", metavar="TEXT", help=texts.HELP_COMPLAINT)
    parser.add_argument("--theme", choices=COLOURS, default=None, help=texts.HELP_THEME)
    parser.add_argument("--snapshot", type=Path, metavar="DIR", help=texts.HELP_SNAPSHOT)
    return parser.parse_args(argv)


def main(argv: list[str], *, from_icon: bool = False) -> int:
    """The exit status. A ledger that can't be opened is one line, and no window. Without `--ledger`: the user's own."""
    chosen = arguments(argv)
    bench = to_the_bench() if chosen.demo else -1
    logging.basicConfig(level=logging.WARNING)
    keep_log("window")
    preferring = Preferring(preferences_file())
    if preferring.now.size != 1.0:
        os.environ["QT_SCALE_FACTOR"] = str(preferring.now.size)  # Qt asks for it once, when the application is made
    application = QApplication.instance() or QApplication(sys.argv[:1])
    if not isinstance(application, QApplication):
        raise TypeError("an application without widgets is already there")
    application.setStyle("Fusion")
    application.setAttribute(Qt.ApplicationAttribute.AA_DontUseNativeDialogs)  # theirs would take the keys
    application.setApplicationName(texts.PROGRAM)
    application.setFont(theme.font())
    kind = next((place for place, one in enumerate(texts.KINDS) if one.casefold() == chosen.item.casefold()), None)
    speak_language(wanted_language(preferring.now.language), application)
    try:
        ledger = Ledger.open(chosen.ledger or ledger_file(), sole_writer=True)
    except LedgerError as error:
        tell(texts.NO_LEDGER.format(what=error), from_icon=from_icon)
        return EX_NO_LEDGER
    item = chosen.item if kind is None else texts.KINDS[kind]
    with ledger:
        window = MainWindow(
            _theme(chosen, preferring),
            resource=chosen.supply,
            demo=(item or texts.DEMO_FIRST) if chosen.demo else "",
        )
        window.wear(window.tokens)
        session = Session(window, ledger, Link, resource=chosen.supply, preferring=preferring)
        if item:
            complaint = chosen.complaint or (texts.DEMO_COMPLAINT if chosen.demo else "")
            window.intake.suggest(kind=item, rated_volts=chosen.rated_voltage, complaint=complaint)
        if window.header.demo is not None:
            window.header.demo.hung.connect(lambda thing: hang(bench, thing))
        hook_faults(session.fault)
        close_on_signals(window)
        off_at_session_end(application.commitDataRequest, session)
        Awake(session.running, system_here(session, os.getpid()))
        theme.follow_desktop(lambda: session.desktop.arranging.wear(_theme(chosen, preferring)))
        if chosen.snapshot is None:
            put_back(window, preferring)
            window.closing.connect(lambda: keep_place(window, preferring))
            QTimer.singleShot(0, lambda: session.show_room(room_left(preferring)))
        window.show()
        keys = OutputOffKeys(application, liked=lambda: preferring.now)
        keys.pressed.connect(session.running.output_off)
        for filtering in (session.start_keys, session.teaching, session.running.keys, keys):
            application.installEventFilter(filtering)  # no key comes before; thousands of other events do
        QTimer.singleShot(QUIET_AFTER_MS, standing)
        painted = FirstPaint(window)
        painted.over.connect(lambda: QTimer.singleShot(QUIET_AFTER_MS, fetch_library))
        backing_up = BackingUp(window, ledger)
        if ledger.read_only:
            window.notice.tell(sayings.sentence(ledger.read_only), What.READ_ONLY)
        else:
            QTimer.singleShot(2 * QUIET_AFTER_MS, backing_up.start)
        if chosen.snapshot is not None:
            QTimer.singleShot(0, lambda: take_all(session, chosen.snapshot))
        try:
            return application.exec()
        finally:
            backing_up.stop()


def _theme(chosen: argparse.Namespace, preferring: Preferring) -> theme.Tokens:
    """What was asked for on the command line holds over what is preferred."""
    return theme.preferred_theme(chosen.theme or preferring.now.colours, preferring.now.contrast)


def standing() -> None:
    """The window stands. What is there by now stays: no look for garbage goes through it again, which took longest."""
    gc.enable()
    gc.freeze()


def fetch_library() -> None:
    """That of the charts, which stays as well."""
    load_library()
    gc.freeze()


class FirstPaint(QObject):
    """`over` comes once, when a window has been painted for the first time, however long that took."""

    over = Signal()

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            self.over.emit()
        return False


def tell(line: str, *, from_icon: bool) -> None:
    """Why there is no window. Whoever started it from an icon sees no terminal."""
    if from_icon:
        QMessageBox.critical(None, texts.PROGRAM, line)
    else:
        sys.stderr.write(line + "\n")


def to_the_bench() -> int:
    """The simulated bench listens at the other end of the standard output, which is for it alone from now on: what else
    is written goes where errors go, and whatever this program starts can't hold that end open. -1: none."""
    try:
        bench = os.dup(1)
    except OSError:
        return -1
    with contextlib.suppress(OSError):
        os.dup2(2, 1)
    return bench


def hang(bench: int, thing: str) -> None:
    """Tells the bench what hangs on its clips from now on."""
    with contextlib.suppress(OSError):  # it has gone: the lost link tells
        os.write(bench, f"{thing}\n".encode())


def off_at_session_end(asked: SignalInstance, session: Session) -> None:
    """At a logout or a shutdown: output off at once, since there may be no time for more than the command."""
    asked.connect(lambda _: session.running.output_off(texts.STOP_SESSION_ENDS))


def close_on_signals(window: MainWindow) -> None:
    """Ctrl-C, a polite end and a logout close the window as its own button does: off, confirmed, closed.

    The handler runs when Python next has a turn; the foot's timer gives it one several times a second.
    """
    for number in (signal.SIGINT, signal.SIGTERM, *([signal.SIGHUP] if hasattr(signal, "SIGHUP") else [])):
        signal.signal(number, lambda *_: QTimer.singleShot(0, window.close))
