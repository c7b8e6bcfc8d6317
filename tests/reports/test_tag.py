"""The tag: its size, its words, and a code that a reader would find whole, with nobody's name in it."""

import shutil
import subprocess
from pathlib import Path
from xml.etree import ElementTree

import pytest
import segno
from PySide6.QtGui import QImage

from benchlog.records import Item
from benchlog.reports.drawing import Boxes, Drawing, Words, svg
from benchlog.reports.regions import PAPER_MM, Paper, Region
from benchlog.reports.sheet_pdf import drawing_pdf
from benchlog.reports.tag import HEIGHT, QR, QUIET_MODULES, WIDTH, code_text, strip, tag
from tests.reports.sheets import job

needs_poppler = pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="needs poppler: apt install poppler-utils")


def words_of(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Words)]


def test_the_code_holds_the_tag_and_the_job_and_nobody() -> None:
    kept = job(owner="Ada of the mooring", contact="berth 14", complaint="hums")
    assert code_text(kept) == "H-0007 job 0007"


def test_the_label_says_what_it_is_and_since_when() -> None:
    assert words_of(tag(job())) == ["H-0007", "Bilge pump", "12 V, 30 l/min", "serial BP-0417", "taken in 5 Mar 2026"]
    assert words_of(tag(job(), demo=True))[-1] == "DEMO · 5 Mar 2026"
    ElementTree.fromstring(svg(tag(job(item=Item(kind="<&>\x1b")))))


@needs_poppler
def test_on_paper_every_module_of_the_code_is_where_it_belongs(tmp_path: Path) -> None:
    path = tmp_path / "tag.pdf"
    path.write_bytes(drawing_pdf(tag(job()), "tag"))
    subprocess.run(
        ["pdftoppm", "-r", "600", "-gray", "-png", "-singlefile", str(path), str(tmp_path / "tag")],
        check=True,
        timeout=60.0,
    )
    image = QImage(str(tmp_path / "tag.png"))
    per_mm = 600 / 25.4
    assert abs(image.width() - WIDTH * per_mm) < 3
    assert abs(image.height() - HEIGHT * per_mm) < 3
    matrix = [list(row) for row in segno.make(code_text(job()), error="q", micro=False, boost_error=False).matrix]
    module = QR / (len(matrix) + 2 * QUIET_MODULES)
    left, top = WIDTH - QR - 1.0, (HEIGHT - QR) / 2
    wide = range(-QUIET_MODULES, len(matrix) + QUIET_MODULES)

    def dark(i: int, j: int) -> bool:
        x, y = left + (i + QUIET_MODULES + 0.5) * module, top + (j + QUIET_MODULES + 0.5) * module
        return image.pixelColor(int(x * per_mm), int(y * per_mm)).value() < 128

    for j in wide:
        for i in wide:
            inside = 0 <= i < len(matrix) and 0 <= j < len(matrix)
            assert dark(i, j) == bool(inside and matrix[j][i]), (i, j)
    assert module > 0.5  # mm; finer than this is hard to read off a cheap printer. Common practice, no source.


@pytest.mark.parametrize("paper", list(Paper))
def test_the_strip_fits_its_paper_and_has_edges_to_cut_along(paper: Paper) -> None:
    drawing = strip(job(), Region(paper=paper))
    assert (drawing.width, drawing.height) == PAPER_MM[paper]
    assert "Cut along the dashes; punch at the cross." in words_of(drawing)
    assert any(isinstance(mark, Boxes) for mark in drawing.marks)


@pytest.mark.parametrize("demo", [False, True])
@pytest.mark.parametrize("long", [1, 12, 500])
def test_long_words_are_cut_with_a_sign_and_never_reach_the_code_or_an_edge(demo: bool, long: int) -> None:
    kept = job(tag="H-" + "9" * long, item=Item(kind="x" * long, make="y" * long, serial="z" * long))
    words = [mark for mark in tag(kept, demo=demo).marks if isinstance(mark, Words)]
    assert len(words) == 5
    for mark in words:
        assert mark.at[0] > 2
        assert mark.at[0] + 0.6 * mark.size * len(mark.text) <= WIDTH - QR
        assert mark.size < mark.at[1] <= HEIGHT - 2
