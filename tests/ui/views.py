"""In which looks and sizes a page is pictured: two sizes of screen, light and dark, at 100 % and 150 %."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QPoint, QSize
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from ui import theme
from ui.main_window import MainWindow
from ui.theme import Tokens

Taking = Callable[[MainWindow, str], None]
"""What is done with each page of a walk: it gets the window as it stands, and the page's name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """`wide` by `high` pixels of a screen, at `ratio` of them to one of the window's."""

    tokens: Tokens
    wide: int
    high: int
    ratio: float = 1.0

    @property
    def name(self) -> str:
        return f"{self.tokens.name}-{self.wide}x{self.high}-{self.ratio:.0%}".rstrip("%")

    @property
    def size(self) -> QSize:
        return QSize(round(self.wide / self.ratio), round(self.high / self.ratio))


SCREENS = ((1366, 768), (1920, 1080))
VIEWS = tuple(
    View(tokens=tokens, wide=wide, high=high, ratio=ratio)
    for ratio in (1.0, 1.5)
    for tokens in (theme.LIGHT, theme.DARK)
    for wide, high in SCREENS
)
USUAL = VIEWS[0]


def picture(window: MainWindow, view: View) -> QImage:
    """The window as the view shows it; it is left so."""
    if window.tokens is not view.tokens:
        window.wear(view.tokens)
    window.resize(view.size)
    for _ in range(3):
        QApplication.processEvents()
    made = QImage(QSize(view.wide, view.high), QImage.Format.Format_RGB32)
    made.setDevicePixelRatio(view.ratio)
    window.render(made, QPoint(0, 0))
    return made


def into(folder: Path, views: Sequence[View] = VIEWS) -> Taking:
    """Writes each page in each view as a PNG."""
    folder.mkdir(parents=True, exist_ok=True)

    def take(window: MainWindow, name: str) -> None:
        before = window.size()
        for view in views:
            picture(window, view).save(str(folder / f"{name}-{view.name}.png"))
        window.resize(before)

    return take
