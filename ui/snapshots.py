"""Pictures of the window as it stands, every stage and room, in both sizes and both themes. Begins nothing."""

from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication

from benchlog.records import Stage
from ui import theme
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, MainWindow
from ui.session import Session

SIZES = (QSize(1366, 768), QSize(1920, 1080))


def take_all(session: Session, folder: Path) -> None:
    """Takes the newest job on the bench to look at, pictures everything, and closes the window."""
    folder.mkdir(parents=True, exist_ok=True)
    newest = session.ledger.jobs(limit=1)
    if newest:
        session.open_job(newest[0].id)
    for tokens in (theme.LIGHT, theme.DARK):  # the outer loop: dressing the whole window is what takes long
        session.window.wear(tokens)
        _walk(session, folder, tokens.name)
    if not session.window.close():
        QApplication.exit()  # an output that is not confirmed off keeps the window open; nobody is there to say so


def _walk(session: Session, folder: Path, look: str) -> None:
    window = session.window
    session.show_room(BENCH_ROOM)
    for stage in Stage:
        if session.bench.way().may_go_to(stage):
            session.go_to(stage)
            _take(window, folder, f"{stage.value}-{look}")
    session.show_room(CURVES_ROOM)
    session.curving.settle()
    _take(window, folder, f"curves-{look}")
    session.show_room(HISTORY_ROOM)
    session.browsing.settle()
    if window.history.table.rowCount():
        window.history.table.selectRow(0)
        session.browsing.settle()
    _take(window, folder, f"history-{look}")


def _take(window: MainWindow, folder: Path, name: str) -> None:
    for size in SIZES:
        window.resize(size)
        for _ in range(3):
            QApplication.processEvents()
        window.grab().save(str(folder / f"{name}-{size.width()}x{size.height()}.png"))
