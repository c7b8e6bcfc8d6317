"""The sheet on paper, read back by an independent reader (poppler): text as text, every page numbered, nothing cut."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QColor, QImage

from benchlog.records import Attached, Entry, Item, Stage
from benchlog.reports.document import Heading
from benchlog.reports.regions import Paper
from benchlog.reports.sheet import Sheet
from benchlog.reports.sheet_pdf import sheet_pdf
from tests.reports.sheets import charge, job, sheet, told

pytestmark = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="needs poppler: apt install poppler-utils")


def poppler(tool: str, data: bytes, folder: Path, *arguments: str) -> str:
    """What one of poppler's tools says of a PDF."""
    path = folder / "sheet.pdf"
    path.write_bytes(data)
    done = subprocess.run(
        [tool, *arguments, str(path), *(["-"] if tool == "pdftotext" else [])],
        capture_output=True,
        timeout=60.0,
        check=True,
        env={"PATH": "/usr/bin:/bin:/usr/local/bin", "LC_ALL": "C.UTF-8"},
    )
    assert done.stderr == b""
    return done.stdout.decode("utf-8")


def text_of(made: Sheet, folder: Path, paper: Paper = Paper.A4) -> str:
    return poppler("pdftotext", sheet_pdf(told(made), paper), folder, "-layout")


def huge() -> Sheet:
    entries = tuple(
        Entry(utc=f"2026-03-05T03:{n // 60:02d}:{n % 60:02d}.000Z", stage=Stage.FREE, text=f"step {n} " * 40)
        for n in range(200)
    )
    return sheet(entries=entries, job=job(complaint="It hums. " * 60_000, work_done="W" * 5000))


def test_every_word_comes_back_as_text(tmp_path: Path) -> None:
    complaint = "Off the float, stiff. Brummt, pumpt nicht: «Süßwasser», Łódź, Ωµ°×, Не работает."
    text = " ".join(text_of(sheet(job=job(complaint=complaint)), tmp_path).split())
    for words in (complaint, "H-0007", "BP-0417", "It works.", "dried residue", "2.05 Ω (2.00 Ω to 2.10 Ω)", "57.50"):
        assert words in text
    for words in (
        "Complaint, in the owner's words",
        "averaged by it",
        "Costs",
        "Cautions",
        "Made safe",
        "90 days from 6 Mar 2026",
    ):
        assert words in text
    assert "Before: run 1, recovery" in text
    assert "After: run 2, proof" in text
    assert text.count("volts") >= 2


@pytest.mark.parametrize(("paper", "size"), [(Paper.A4, "595 x 842"), (Paper.LETTER, "612 x 792")])
def test_paper_has_its_size_and_every_page_says_which_of_how_many_it_is(
    paper: Paper, size: str, tmp_path: Path
) -> None:
    data = sheet_pdf(told(huge()), paper)
    told_of = poppler("pdfinfo", data, tmp_path)
    assert f"Page size:       {size}" in told_of
    pages = int(re.search(r"Pages: +(\d+)", told_of)[1])  # type: ignore[index]
    assert pages > 5
    parts = poppler("pdftotext", data, tmp_path, "-layout").split("\f")[:-1]
    assert [re.findall(r"H-0007 · page (\d+) of (\d+)", part) for part in parts] == [
        [(str(n), str(pages))] for n in range(1, pages + 1)
    ]


def test_nothing_is_cut_at_the_edge_of_a_page(tmp_path: Path) -> None:
    # Every word has its place; a margin of 15 mm is 42 pt.
    data = sheet_pdf(told(huge()), Paper.A4)
    page = poppler("pdftotext", data, tmp_path, "-bbox")
    boxes = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)"', page)
    assert len(boxes) > 2000
    assert all(float(left) > 42 and float(right) < 595 - 42 for left, _, right, _ in boxes)
    assert all(float(top) > 28 and float(bottom) < 842 - 28 for _, top, _, bottom in boxes)


def test_every_step_is_there_once_across_the_pages(tmp_path: Path) -> None:
    text = text_of(huge(), tmp_path)
    assert all(len(re.findall(rf"\bstep {n}\b", text)) == 40 for n in range(200))
    assert text.count("shortened here; whole in") == 2


def test_fonts_are_inside_and_lines_stay_lines(tmp_path: Path) -> None:
    data = sheet_pdf(told(sheet()))
    rows = poppler("pdffonts", data, tmp_path).splitlines()[2:]
    # The columns "emb" and "uni": inside the file, and with the letters that its shapes stand for.
    assert rows
    assert all(re.search(r"\byes +(yes|no) +yes\b", row) for row in rows)
    assert len(poppler("pdfimages", data, tmp_path, "-list").splitlines()) == 2  # its head alone: not one picture


@pytest.mark.parametrize("steps", range(0, 24, 2))
def test_no_heading_is_left_alone_at_the_foot_of_a_page(steps: int, tmp_path: Path) -> None:
    entries = tuple(Entry(utc="2026-03-05T03:00:00.000Z", stage=Stage.FREE, text="oiled") for _ in range(steps))
    image, buffer = QImage(30, 30, QImage.Format.Format_RGB32), QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]
    photo = Attached(id=1, utc="", sha256="", name="x", media_type="", size=1, thumbnail=bytes(buffer.data().data()))
    pages = text_of(sheet(entries=entries, photos=(photo,)), tmp_path).split("\f")[:-1]
    last_words = [[line.strip() for line in page.splitlines() if line.strip()][-2] for page in pages]
    headings = {block.text for block in told(sheet(photos=(photo,))).blocks if isinstance(block, Heading)}
    assert len(pages) >= 2
    assert not headings & set(last_words)


def test_a_photo_is_there_where_it_was_asked_for(tmp_path: Path) -> None:
    image, buffer = QImage(40, 30, QImage.Format.Format_RGB32), QBuffer()
    image.fill(QColor("#336699"))
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]
    photos = (
        Attached(
            id=1, utc="", sha256="", name="label.png", media_type="", size=1, thumbnail=bytes(buffer.data().data())
        ),
        Attached(id=2, utc="", sha256="", name="none.png", media_type="", size=1, thumbnail=b"no picture at all"),
    )
    data = sheet_pdf(told(sheet(photos=photos)))
    assert len(poppler("pdfimages", data, tmp_path, "-list").splitlines()) == 3
    assert "label.png" in poppler("pdftotext", data, tmp_path)


def test_the_first_paper_of_a_process_needs_no_display_and_no_window_library(tmp_path: Path) -> None:
    code = (
        "import sys; from tests.reports.sheets import sheet, told; from benchlog.reports.sheet_pdf import sheet_pdf\n"
        "assert not any(name.startswith('PySide6') for name in sys.modules)\n"
        "assert sheet_pdf(told(sheet())).startswith(b'%PDF-')\n"
        "assert 'PySide6.QtWidgets' not in sys.modules\n"
    )
    kept = {"PATH": "/usr/bin:/bin", "LC_ALL": "de_DE.UTF-8"}
    done = subprocess.run(
        [sys.executable, "-c", code], env=kept, capture_output=True, text=True, timeout=60.0, check=False
    )
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


@pytest.mark.parametrize(
    "made",
    [
        sheet(job=job(complaint="", item=Item(kind="")), runs=(), charges=(), before=None, after=None),
        sheet(job=job(tag="T" * 400, item=Item(kind="k" * 5000, serial="\u202e\0\n"), complaint="\n" * 4000)),
        sheet(charges=tuple(charge(n, 10**11, "x" * 600) for n in range(1, 60))),
    ],
    ids=["empty", "odd", "dear"],
)
def test_an_odd_job_makes_pages_too(made: Sheet, tmp_path: Path) -> None:
    assert "page 1 of" in text_of(made, tmp_path)
