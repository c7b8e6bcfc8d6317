"""A tag to be tied to the thing: its number, what it is, the day, and the number again as a QR code.

The code holds plain text, the tag's and the job's number: nobody's name or address goes round with the thing.
"""

from benchlog.records import Job
from benchlog.reports.drawing import INK, SECOND, Boxes, Drawing, Line, Words
from benchlog.reports.regions import PAPER_MM, Region
from benchlog.reports.words import Say, one_line, short

WIDTH, HEIGHT = 62.0, 29.0
"""Of a label, mm: a usual size of label rolls. Common practice, no source."""
QR, QUIET_MODULES = 25.0, 4
"""Side of the code with its quiet zone, mm, and that zone's width. Source of the latter: ISO/IEC 18004, from memory."""
_LETTER = 0.6
"""Width of a letter as a share of its size, on the wide side."""


def code_text(job: Job) -> str:
    """What the code holds."""
    return f"{short(job.tag, 20)} job {job.number:04d}"


def tag(job: Job, *, demo: bool = False) -> Drawing:
    """The label. `demo`: marked as one that belongs to nothing real."""
    return Drawing(width=WIDTH, height=HEIGHT, marks=tuple(_marks(job, 0.0, 0.0, demo=demo)), told=_told(job))


def strip(job: Job, region: Region, *, demo: bool = False) -> Drawing:
    """A sheet of paper with the label to be cut out, and a hole to be punched at its left."""
    wide, high = PAPER_MM[region.paper]
    left, top, ear = 20.0, 20.0, 14.0
    edge = (
        (left, top),
        (left + ear + WIDTH, top),
        (left + ear + WIDTH, top + HEIGHT),
        (left, top + HEIGHT),
        (left, top),
    )
    hole = left + ear / 2, top + HEIGHT / 2
    cross = [
        Line(points=((hole[0] - 2.5, hole[1]), (hole[0] + 2.5, hole[1])), width=0.2, ink=SECOND),
        Line(points=((hole[0], hole[1] - 2.5), (hole[0], hole[1] + 2.5)), width=0.2, ink=SECOND),
    ]
    marks = (
        Line(points=edge, width=0.25, ink=SECOND, dash=(1.5, 1.5)),
        *cross,
        *_marks(job, left + ear, top, demo=demo),
        Words(at=(left, top + HEIGHT + 5.0), text="Cut along the dashes; punch at the cross.", size=2.8, ink=SECOND),
    )
    return Drawing(width=wide, height=high, marks=marks, told=_told(job))


def _told(job: Job) -> str:
    return f"Tag {one_line(job.tag)}, job {job.number:04d}, {one_line(job.item.kind)}"


def _marks(job: Job, x: float, y: float, *, demo: bool) -> list[Line | Boxes | Words]:
    room = WIDTH - QR - 4.0
    number, kind = short(job.tag, 20), job.item.kind
    shrunk = max(2.3, min(3.6, room / (_LETTER * max(len(kind), 1))))
    lines = [
        (number, min(7.5, room / (_LETTER * max(len(number), 1))), True, INK),
        (_fitting(kind[:1].upper() + kind[1:], shrunk, room), shrunk, True, INK),
        (_fitting(" ".join((job.item.make, job.item.model)).strip(), 2.8, room), 2.8, False, INK),
        (_fitting(job.item.serial and f"serial {job.item.serial}", 2.8, room), 2.8, False, INK),
        (f"{'DEMO ·' if demo else 'taken in'} {Say().day(job.opened_utc)}", 2.8, False, INK),
    ]
    marks: list[Line | Boxes | Words] = [_code(code_text(job), x + WIDTH - QR - 1.0, y + (HEIGHT - QR) / 2)]
    base = y + 1.5
    for text, size, bold, ink in lines:
        if text:
            base += size * (1.1 if size > 4 else 1.4)
            marks.append(Words(at=(x + 3.0, base), text=text, size=size, ink=ink, bold=bold))
    return marks


def _fitting(text: str, size: float, room: float) -> str:
    return short(text, int(room / (_LETTER * size) + 1e-6))


def _code(text: str, x: float, y: float) -> Boxes:
    # Error correction Q: a quarter of it may be dirty. Source: ISO/IEC 18004, from memory.
    import segno  # long to import, and seldom wanted

    matrix = [list(row) for row in segno.make(text, error="q", micro=False, boost_error=False).matrix]
    module = QR / (len(matrix) + 2 * QUIET_MODULES)
    boxes = []
    for j, row in enumerate(matrix):
        begin = None
        for i, dark in enumerate([*row, 0]):
            if dark and begin is None:
                begin = i
            elif not dark and begin is not None:
                at = x + (begin + QUIET_MODULES) * module, y + (j + QUIET_MODULES) * module
                boxes.append((*at, (i - begin) * module, module))
                begin = None
    return Boxes(boxes=boxes)
