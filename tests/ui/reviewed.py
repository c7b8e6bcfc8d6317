"""Pages as they were last looked at by a person: small pictures of each in every view, with what was looked at.

    python -m tests.ui.reviewed compare            what differs now, in every view
    python -m tests.ui.reviewed accept PAGE… --remark "what was looked at"

`accept` takes new pictures of the pages named ("all" for each one); the remark is not optional. What is kept is small
on purpose: it tells a page that has moved, been cut or lost a part from one in which only a clock went on.
"""

import argparse
import os
import sys
import tomllib
from datetime import UTC, datetime
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QImage, QPainter

from tests.ui.pictures import walk
from tests.ui.views import VIEWS, View, picture
from ui import theme
from ui.main_window import MainWindow

FOLDER = Path(__file__).parent / "reviewed"
REMARKS = FOLDER / "remarks.toml"
WIDE, HIGH = 160, 90
"""Of the small picture of a page in one view."""
CELLS_WIDE, CELLS_HIGH = 64, 36
LEVELS = 20
"""Of 255 in one colour of one cell: digits that went on differ by less."""
CELLS = 10
"""How many cells may differ by more: a line of text that is longer by a word. Tried out on runs minutes apart."""

MOVING = frozenset(
    {
        "11-free-by-hand",
        "13-free-kicking",
        "15-free-turning",
        "26-prove-commanded",
        "curves-17-capturing",
        "curves-22-run-in",
    }
)
"""Pictured while a run goes on: how far it is differs from time to time, so they are looked at and not compared."""

Grey = npt.NDArray[np.int16]


def place(view: View) -> QRect:
    """Where a view stands in the picture of its page."""
    at = VIEWS.index(view)
    return QRect(at % 4 * WIDE, at // 4 * HIGH, WIDE, HIGH)


def small(image: QImage) -> QImage:
    """Without its ratio; both sizes of screen are as good as equally wide for their height."""
    image.setDevicePixelRatio(1.0)
    return image.scaled(WIDE, HIGH, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation)


def cells(image: QImage) -> Grey:
    """(CELLS_HIGH, CELLS_WIDE, 3): the mean colour of each."""
    scaled = image.scaled(
        CELLS_WIDE, CELLS_HIGH, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation
    ).convertToFormat(QImage.Format.Format_RGB32)
    raw = np.frombuffer(scaled.constBits(), dtype=np.uint8).reshape(CELLS_HIGH, CELLS_WIDE, 4)
    return raw[:, :, :3].astype(np.int16)


def differing(now: QImage, then: QImage) -> int:
    """How many cells differ by more than a clock that went on."""
    return int(np.count_nonzero(np.abs(cells(now) - cells(then)).max(axis=2) > LEVELS))


class Reviewed:
    """What is kept, by the name of a page."""

    def __init__(self, folder: Path = FOLDER) -> None:
        self.folder = folder
        self.remarks: dict[str, dict[str, str]] = {}
        self.family = theme.font().family()
        if (folder / REMARKS.name).exists():
            kept = tomllib.loads((folder / REMARKS.name).read_text(encoding="utf-8"))
            self.family, self.remarks = kept["family"], kept["pages"]

    def picture(self, page: str) -> QImage | None:
        image = QImage(str(self.folder / f"{page}.png"))
        return None if image.isNull() else image.convertToFormat(QImage.Format.Format_RGB32)

    def trouble(self, page: str, view: View, now: QImage) -> str:
        """What is wrong with a page as it is now; "" where nothing is."""
        then = self.picture(page)
        if then is None or not self.remarks.get(page, {}).get("remark"):
            return f"{page}: nobody has looked at it yet"
        if page in MOVING:
            return ""
        count = differing(small(now), then.copy(place(view)))
        return f"{page}, {view.name}: {count} of {CELLS_WIDE * CELLS_HIGH} cells differ" if count > CELLS else ""

    def accept(self, page: str, views: dict[str, QImage], remark: str) -> None:
        sheet = QImage(4 * WIDE, 2 * HIGH, QImage.Format.Format_RGB32)
        painter = QPainter(sheet)
        for view in VIEWS:
            painter.drawImage(QPoint(place(view).topLeft()), small(views[view.name]))
        painter.end()
        self.folder.mkdir(exist_ok=True)
        sheet.save(str(self.folder / f"{page}.png"), quality=0)  # packed as tightly as can be; no colour is changed
        self.remarks[page] = {"looked": datetime.now(UTC).date().isoformat(), "remark": remark}

    def keep(self) -> None:
        """Writes the remarks; those of pages that are gone go with their pictures."""
        self.family = theme.font().family()
        lines = [f'family = "{self.family}"', ""]
        for page, about in sorted(self.remarks.items()):
            remark = about["remark"].replace("\\", "\\\\").replace('"', '\\"')
            lines += [f'[pages."{page}"]', f'looked = "{about["looked"]}"', f'remark = "{remark}"', ""]
        (self.folder / REMARKS.name).write_text("\n".join(lines), encoding="utf-8")


def shot(views: tuple[View, ...]) -> dict[str, dict[str, QImage]]:
    """Every page in the given views: by page, then by the view's name."""
    made: dict[str, dict[str, QImage]] = {}
    for view in views:  # a walk for each: dressing a window anew is what takes long

        def take(window: MainWindow, page: str, view: View = view) -> None:
            made.setdefault(page, {})[view.name] = picture(window, view)

        walk(take, first=view.tokens)
    return made


def main(argv: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.ui.reviewed", description=__doc__)
    parser.add_argument("what", choices=("compare", "accept"))
    parser.add_argument("pages", nargs="*")
    parser.add_argument("--remark", default="")
    chosen = parser.parse_args(argv)
    if chosen.what == "accept" and not (chosen.remark and chosen.pages):
        parser.error("accept wants pages and a remark: what was looked at")
    pages = shot(VIEWS)  # first: without an application there are no fonts to ask for
    reviewed = Reviewed()
    if chosen.what == "accept":
        for page in pages if chosen.pages == ["all"] else chosen.pages:
            reviewed.accept(page, pages[page], chosen.remark)
        for gone in set(reviewed.remarks) - set(pages):
            del reviewed.remarks[gone]
            (reviewed.folder / f"{gone}.png").unlink(missing_ok=True)
        reviewed.keep()
        return 0
    found = [
        trouble
        for page, views in pages.items()
        for view in VIEWS
        if (trouble := reviewed.trouble(page, view, views[view.name]))
    ]
    print("\n".join(dict.fromkeys(found)) or f"{len(pages)} pages in {len(VIEWS)} views: as they were looked at")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
