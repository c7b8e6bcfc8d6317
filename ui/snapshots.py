"""Pictures of the window as it stands, every stage and room, in both sizes and both themes. Begins nothing."""

from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication

from benchlog.records import Stage
from ui import theme
from ui.main_window import CURVES_ROOM, HISTORY_ROOM, MainWindow
from ui.session import Session

SIZES = (QSize(1366, 768), QSize(1920, 1080))


def take_all(session: Session, folder: Path) -> None:
    """Takes the newest job on the bench to look at, pictures everything, and closes the window."""
    newest = session.ledger.jobs(limit=1)
    if newest:
        session.open_job(newest[0].id)
    for stage in Stage:
        if session.bench.way().may_go_to(stage):
            session.go_to(stage)
            take(session.window, folder, stage.value)
    session.show_room(CURVES_ROOM)
    session.curving.settle()
    take(session.window, folder, "curves")
    session.show_room(HISTORY_ROOM)
    session.browsing.settle()
    if session.window.history.table.rowCount():
        session.window.history.table.selectRow(0)
        session.browsing.settle()
    take(session.window, folder, "history")
    if not session.window.close():
        QApplication.exit()  # an output that is not confirmed off keeps the window open; nobody is there to say so


def take(window: MainWindow, folder: Path, name: str) -> list[Path]:
    """One picture for each size and theme."""
    folder.mkdir(parents=True, exist_ok=True)
    before = window.tokens
    taken = []
    for tokens in (theme.LIGHT, theme.DARK):
        window.wear(tokens)
        for size in SIZES:
            window.resize(size)
            for _ in range(3):
                QApplication.processEvents()
            path = folder / f"{name}-{tokens.name}-{size.width()}x{size.height()}.png"
            window.grab().save(str(path))
            taken.append(path)
    window.wear(before)
    return taken
