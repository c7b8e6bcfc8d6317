"""Paper: a sheet on as many pages as it takes, or a drawing at its own size, as PDF. Lines and text stay what they are.
A drawing as PNG comes from the same painter.

Qt is imported when it is needed: the rest of the reports does without. What is laid out is a list of strokes a page,
so that every page can say of how many it is one.
"""

import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import TYPE_CHECKING

from benchlog.errors import Refused
from benchlog.reports.document import Block, Column, Document, Facts, Heading, Photos, Picture, Prose, Table
from benchlog.reports.drawing import FAINT, FAMILIES, INK, SECOND, Boxes, Drawing, Line, Words
from benchlog.reports.regions import PAPER_MM, Paper

if TYPE_CHECKING:
    from PySide6.QtGui import QFont, QGuiApplication, QPainter, QTextLayout

DPI = 1200
MM, PT = DPI / 25.4, DPI / 72.0
"""Units of the page a millimetre, and a point."""
MARGIN, HEAD, FOOT = 16 * MM, 9 * MM, 8 * MM
BODY, SMALL, HEADING, TITLE, VERDICT = 9.5, 8.0, 10.5, 19.0, 15.0
"""Sizes of type, pt."""
LEADING = 1.32
NAME_SHARE = 0.2
FEW_LINES = 12
"""A row of no more lines than this is not cut at the end of a page."""
WITH_HEADING, PHOTO = 30 * MM, 58 * MM
"""What must have room below a heading; the side of a photo at the most."""
WATERMARK = "#eeeeee"

Stroke = Callable[["QPainter"], None]
_kept: list["QGuiApplication"] = []


def sheet_pdf(document: Document, paper: Paper = Paper.A4) -> bytes:
    """The whole sheet. Raises Refused where Qt or a font is missing."""
    _ready()
    return _written(_laid(document, paper), PAPER_MM[paper], f"{document.title} {document.tag}", origin=MARGIN)


def sheet_images(document: Document, paper: Paper = Paper.A4, dots_per_mm: float = 8.0) -> list[bytes]:
    """Its pages as pictures on white, as PNG: the strokes of the PDF. Raises Refused where Qt or a font is missing."""
    _ready()
    from PySide6.QtCore import QBuffer, QIODevice, Qt
    from PySide6.QtGui import QImage, QPainter

    wide, high = PAPER_MM[paper]
    made = []
    for page in _laid(document, paper):
        image = QImage(round(wide * dots_per_mm), round(high * dots_per_mm), QImage.Format.Format_RGB32)
        image.fill(Qt.GlobalColor.white)
        painter = QPainter(image)
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
        painter.scale(dots_per_mm / MM, dots_per_mm / MM)
        painter.translate(MARGIN, MARGIN)
        for stroke in page:
            stroke(painter)
        painter.end()
        buffer = QBuffer()
        buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        image.save(buffer, "PNG")  # type: ignore[call-overload]
        made.append(bytes(buffer.data().data()))
    return made


def _laid(document: Document, paper: Paper) -> list[list[Stroke]]:
    """The pages, in units from their margins."""
    wide, high = PAPER_MM[paper]
    flow = _Flow(document=document, width=wide * MM - 2 * MARGIN, height=high * MM - 2 * MARGIN)
    _head(flow, document)
    for block, after in zip_longest(document.blocks, document.blocks[1:]):
        if isinstance(block, Heading):
            flow.keep(_with_heading(flow, after))
        _lay(flow, block)
    return flow.finished()


def drawing_pdf(drawing: Drawing, name: str) -> bytes:
    """One page of the drawing's own size. Raises Refused where Qt or a font is missing."""
    _ready()
    return _written([[lambda painter: _paint(painter, drawing, 0.0, 0.0, MM)]], (drawing.width, drawing.height), name)


def drawing_png(drawing: Drawing, dots_per_mm: float = 10.0) -> bytes:
    """A picture of the drawing on white, as PNG. Raises Refused where Qt or a font is missing."""
    _ready()
    from PySide6.QtCore import QBuffer, QIODevice, Qt
    from PySide6.QtGui import QImage, QPainter

    size = (round(drawing.width * dots_per_mm), round(drawing.height * dots_per_mm))
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    image.setDotsPerMeterX(round(dots_per_mm * 1000))
    image.setDotsPerMeterY(round(dots_per_mm * 1000))
    image.setText("Description", drawing.told)
    painter = QPainter(image)
    painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
    _paint(painter, drawing, 0.0, 0.0, dots_per_mm)
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())


def _ready() -> None:
    try:
        from PySide6.QtCore import qInstallMessageHandler
        from PySide6.QtGui import QFontDatabase, QGuiApplication
    except ImportError as error:
        raise Refused(f"a PDF or PNG needs Qt, which does not load here ({error}); .html and .svg need none") from error
    if QGuiApplication.instance() is None:
        hidden = sys.platform.startswith("linux") and "QT_QPA_PLATFORM" not in os.environ
        # It would tell the terminal what it thinks of the locale.
        before = qInstallMessageHandler(lambda *_: None)
        _kept.append(QGuiApplication(["benchlog", *(("-platform", "offscreen") if hidden else ())]))
        qInstallMessageHandler(before)
    if not QFontDatabase.families():
        raise Refused("a PDF or PNG needs a font, and none is on this computer; .html and .svg need none")


def _written(pages: Sequence[Sequence[Stroke]], size_mm: tuple[float, float], name: str, origin: float = 0.0) -> bytes:
    from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QSizeF
    from PySide6.QtGui import QPageSize, QPainter, QPdfWriter

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(DPI)
    writer.setPageSize(QPageSize(QSizeF(*size_mm), QPageSize.Unit.Millimeter))
    writer.setPageMargins(QMarginsF())
    writer.setTitle(name)
    writer.setCreator("benchlog")
    painter = QPainter(writer)
    painter.translate(origin, origin)
    for number, page in enumerate(pages):
        if number:
            writer.newPage()
        for stroke in page:
            stroke(painter)
    painter.end()
    return bytes(buffer.data().data())


def _font(size_pt: float, *, bold: bool = False) -> "QFont":
    return _font_px(round(size_pt * PT), bold=bold)


def _font_px(size: int, *, bold: bool = False) -> "QFont":
    from PySide6.QtGui import QFont, QFontDatabase

    here = QFontDatabase.families()
    font = QFont([family for family in FAMILIES if family in here] or ["Sans Serif"])
    font.setPixelSize(max(size, 1))
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    font.setFeature(QFont.Tag("tnum"), 1)
    font.setFeature(QFont.Tag("liga"), 0)  # a reader that looks for "off" finds no ligature
    return font


@dataclass(slots=True)
class _Text:
    """A text in lines of a width. Its layout is held: its lines are nothing without it."""

    layout: "QTextLayout"
    line_height: float
    ink: str
    width: float
    right: bool = False

    @property
    def count(self) -> int:
        return self.layout.lineCount()

    def stroke(self, number: int, x: float, y: float) -> Stroke:
        from PySide6.QtCore import QPointF
        from PySide6.QtGui import QColor

        line = self.layout.lineAt(number)
        at = x + (self.width - line.naturalTextWidth() if self.right else 0.0)

        def draw(painter: "QPainter") -> None:
            painter.setPen(QColor(self.ink))
            line.draw(painter, QPointF(at - line.x(), y - line.y()))

        return draw


def _text(text: str, size_pt: float, width: float, *, bold: bool = False, ink: str = INK, right: bool = False) -> _Text:
    from PySide6.QtGui import QTextLayout, QTextOption

    # Qt's own sign for a new line within a paragraph.
    layout = QTextLayout(text.replace("\n", "\u2028"), _font(size_pt, bold=bold))
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    layout.beginLayout()
    while (line := layout.createLine()).isValid():
        line.setLineWidth(width)
    layout.endLayout()
    return _Text(layout=layout, line_height=size_pt * PT * LEADING, ink=ink, width=width, right=right)


def _fitting(text: str, size_pt: float, width: float) -> str:
    """On one line, with a sign that there is more."""
    from PySide6.QtCore import Qt
    from PySide6.QtGui import QFontMetricsF

    return QFontMetricsF(_font(size_pt)).elidedText(text, Qt.TextElideMode.ElideRight, width)


@dataclass(slots=True, kw_only=True)
class _Flow:
    """Where the next thing goes. `width`, `height` within the margins; head and foot take part of the height."""

    document: Document
    width: float
    height: float
    y: float = 0.0
    pages: list[list[Stroke]] = field(default_factory=lambda: [[]])

    @property
    def room(self) -> float:
        return self.height - FOOT - self.y

    @property
    def fresh(self) -> bool:
        return self.y <= (HEAD if len(self.pages) > 1 else 0.0)

    def add(self, stroke: Stroke) -> None:
        self.pages[-1].append(stroke)

    def new_page(self) -> None:
        self.pages.append([])
        self.y = HEAD

    def keep(self, needed: float) -> None:
        """A new page where less than this is left."""
        if self.room < needed and not self.fresh:
            self.new_page()

    def rule(self, y: float, ink: str = FAINT, width: float = 0.2 * MM) -> None:
        self.add(_rule(self.width, y, ink, width))

    def say(self, text: _Text, x: float = 0.0) -> None:
        for number in range(text.count):
            self.keep(text.line_height)
            self.add(text.stroke(number, x, self.y))
            self.y += text.line_height

    def finished(self) -> list[list[Stroke]]:
        """The pages with what stands on every one of them."""
        return [self._around(number, page) for number, page in enumerate(self.pages)]

    def _around(self, number: int, page: list[Stroke]) -> list[Stroke]:
        told = self.document
        demo = "DEMO · " if told.demo else ""
        foot = _text(
            f"{demo}{told.tag} · page {number + 1} of {len(self.pages)}", SMALL, self.width, ink=SECOND, right=True
        )
        around = [foot.stroke(0, 0.0, self.height - foot.line_height)]
        if number:
            name = _text(
                _fitting(f"{told.title} {told.tag} · {told.name}", SMALL, self.width), SMALL, self.width, ink=SECOND
            )
            around += [name.stroke(0, 0.0, 0.0), _rule(self.width, 5 * MM, FAINT, 0.2 * MM)]
        return [*([_watermark(self.width, self.height)] if told.demo else []), *around, *page]


def _rule(length: float, y: float, ink: str, width: float) -> Stroke:
    from PySide6.QtCore import QRectF
    from PySide6.QtGui import QColor

    return lambda painter: painter.fillRect(QRectF(0.0, y, length, width), QColor(ink))


def _watermark(width: float, height: float) -> Stroke:
    from PySide6.QtCore import QRectF, Qt
    from PySide6.QtGui import QColor

    def draw(painter: "QPainter") -> None:
        painter.save()
        painter.translate(width / 2, height / 2)
        painter.rotate(-55.0)
        painter.setFont(_font(150.0, bold=True))
        painter.setPen(QColor(WATERMARK))
        painter.drawText(QRectF(-height, -height, 2 * height, 2 * height), Qt.AlignmentFlag.AlignCenter, "DEMO")
        painter.restore()

    return draw


def _head(flow: _Flow, document: Document) -> None:
    tag = _text(document.tag, TITLE, flow.width, bold=True, right=True)
    flow.add(tag.stroke(0, 0.0, flow.y))
    flow.say(_text(document.title + (" · DEMO" if document.demo else ""), TITLE, flow.width * 0.7, bold=True))
    flow.say(_text(document.name, BODY + 1, flow.width, bold=True))
    flow.say(_text(document.state, BODY, flow.width, ink=SECOND))
    if document.verdict:
        flow.y += 2 * MM
        flow.say(_text(document.verdict, VERDICT, flow.width, bold=True))
    flow.y += 2 * MM
    flow.rule(flow.y, INK, 0.5 * MM)
    flow.y += 3.5 * MM


def _with_heading(flow: _Flow, after: Block | None) -> float:
    """What must have room for a heading not to stand alone."""
    match after:
        case Photos():
            return PHOTO + WITH_HEADING
        case Picture():
            return after.drawing.height * flow.width / after.drawing.width + WITH_HEADING / 2
    return WITH_HEADING


def _lay(flow: _Flow, block: Block) -> None:
    match block:
        case Heading():
            flow.y += 0.0 if flow.fresh else 4 * MM
            flow.say(_text(block.text, HEADING, flow.width, bold=True))
            flow.y += 1.5 * MM
        case Facts():
            _facts(flow, block)
        case Prose():
            _prose(flow, block)
        case Table():
            _table(flow, block)
        case Picture():
            scale = flow.width / block.drawing.width
            title = _text(block.title, SMALL + 0.5, flow.width, bold=True)
            high = block.drawing.height * scale
            flow.y += 2 * MM
            flow.keep(high + title.line_height * title.count + 2 * MM)
            flow.say(title)
            top = flow.y
            flow.add(lambda painter: _paint(painter, block.drawing, 0.0, top, scale))
            flow.y += high
        case Photos():
            _photos(flow, block)


def _facts(flow: _Flow, block: Facts) -> None:
    beside = 2 if block.short else 1
    shares = (0.16, 0.34) if block.short else (NAME_SHARE, 1 - NAME_SHARE)
    columns = tuple(Column("", share) for share in shares * beside)
    down = -(-len(block.rows) // beside)
    for number in range(down):
        pairs = [block.rows[at] if at < len(block.rows) else ("", "") for at in range(number, down * beside, down)]
        _row(flow, columns, [cell for pair in pairs for cell in pair], inks=(SECOND, INK) * beside, ruled=False)


def _prose(flow: _Flow, block: Prose) -> None:
    small = block.kind == "small"
    before, indent = (3 * MM if small else 0.0), (4 * MM if block.kind in ("caution", "quote") else 0.0)
    flow.y += before
    size, ink = (SMALL, SECOND) if small else (BODY, INK)
    text = _text(block.text, size, flow.width - indent, ink=ink)
    flow.keep(text.line_height * min(text.count, FEW_LINES))
    if block.kind == "caution":
        flow.add(_text("!", size, indent, bold=True).stroke(0, 0.8 * MM, flow.y))
    flow.say(text, indent)
    flow.y += 1 * MM


def _table(flow: _Flow, table: Table) -> None:
    names = tuple(column.name for column in table.columns)

    def heads() -> None:
        _row(flow, table.columns, names, size=SMALL, inks=(SECOND,) * len(names))

    flow.keep(20 * MM)
    heads()
    for number, row in enumerate(table.rows):
        foot = number >= len(table.rows) - table.feet
        _row(flow, table.columns, row, bold=foot, ruled=not foot, again=heads)
    flow.y += 1.5 * MM


def _row(
    flow: _Flow,
    columns: Sequence[Column],
    cells: Sequence[str],
    *,
    size: float = BODY,
    inks: Sequence[str] = (),
    bold: bool = False,
    ruled: bool = True,
    again: Callable[[], None] | None = None,
) -> None:
    """One row; `again` writes the head of the table on a new page. A long row goes on there line by line."""
    gap = 3 * MM
    texts, x, places = [], 0.0, []
    for number, (column, cell) in enumerate(zip(columns, cells, strict=True)):
        last = number == len(columns) - 1
        wide = column.share * flow.width - (0.0 if last else gap)
        ink = inks[number] if inks else INK
        texts.append(_text(cell, size, wide, bold=bold, ink=ink, right=column.figures))
        places.append(x)
        x += column.share * flow.width
    pad = 0.9 * MM if ruled else 0.4 * MM
    count, high = max(text.count for text in texts), texts[0].line_height

    def turn() -> None:
        flow.new_page()
        if again is not None:
            again()

    if count <= FEW_LINES and flow.room < count * high + 2 * pad and not flow.fresh:
        turn()
    flow.y += pad
    for number in range(count):
        if flow.room < high:
            turn()
        for text, place in zip(texts, places, strict=True):
            if number < text.count:
                flow.add(text.stroke(number, place, flow.y))
        flow.y += high
    flow.y += pad
    if ruled:
        flow.rule(flow.y)


def _photos(flow: _Flow, block: Photos) -> None:
    from PySide6.QtCore import QRectF
    from PySide6.QtGui import QImage

    gap, across = 4 * MM, 3
    wide = min(PHOTO, (flow.width - gap * (across - 1)) / across)
    for begin in range(0, len(block.shown), across):
        row = [
            (QImage.fromData(data), _text(said, SMALL, wide, ink=SECOND)) for data, said in block.shown[begin:][:across]
        ]
        highs = [min(wide, wide * image.height() / image.width()) if image.width() else 0.0 for image, _ in row]
        high = max(highs)
        flow.keep(high + max(text.count * text.line_height for _, text in row) + gap)
        for number, ((image, text), tall) in enumerate(zip(row, highs, strict=True)):
            x, y = number * (wide + gap), flow.y
            if tall:
                box = QRectF(x, y, tall * image.width() / image.height(), tall)
                flow.add(lambda painter, box=box, image=image: painter.drawImage(box, image))  # type: ignore[misc]
            for line in range(text.count):
                flow.add(text.stroke(line, x, y + tall + 1 * MM + line * text.line_height))
        flow.y += high + max(text.count * text.line_height for _, text in row) + gap


def _paint(painter: "QPainter", drawing: Drawing, x: float, y: float, scale: float) -> None:
    """`scale`: units of the page a mm of the drawing."""
    from PySide6.QtCore import QPointF, QRectF, Qt
    from PySide6.QtGui import QColor, QFontMetricsF, QPainterPath, QPen, QPolygonF

    for mark in drawing.marks:
        match mark:
            case Line():
                pen = QPen(QColor(mark.ink), mark.width * scale)
                pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
                pen.setCapStyle(Qt.PenCapStyle.FlatCap)
                if mark.dash:
                    pen.setDashPattern([part / mark.width for part in mark.dash])  # Qt counts in widths of the pen
                painter.setPen(pen)
                painter.drawPolyline(QPolygonF([QPointF(x + px * scale, y + py * scale) for px, py in mark.points]))
            case Boxes():
                path = QPainterPath()
                path.setFillRule(Qt.FillRule.WindingFill)
                for bx, by, bw, bh in mark.boxes:
                    path.addRect(QRectF(x + bx * scale, y + by * scale, bw * scale, bh * scale))
                painter.fillPath(path, QColor(mark.ink))
            case Words():
                font = _font_px(round(mark.size * scale), bold=mark.bold)
                painter.setFont(font)
                painter.setPen(QColor(mark.ink))
                wide = QFontMetricsF(font).horizontalAdvance(mark.text)
                left = {"start": 0.0, "middle": wide / 2, "end": wide}[mark.anchor]
                painter.drawText(QPointF(x + mark.at[0] * scale - left, y + mark.at[1] * scale), mark.text)
