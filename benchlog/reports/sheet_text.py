"""A sheet as text for the terminal."""

import textwrap
from collections.abc import Iterable

from benchlog.reports.document import Block, Document, Facts, Heading, Photos, Picture, Prose, Table

WIDTH = 78
_NAME, _GAP = 20, 2
_SPACES = {ord("\u00a0"): " ", ord("\u202f"): " "}
"""Only paper needs those that do not break."""


def text_of(document: Document) -> str:
    """Lines of no more than WIDTH letters, drawings as the words that tell of them."""
    head = f"{document.title} {document.tag}" + ("  DEMO" if document.demo else "")
    told = [head, *_wrapped(document.name), *_wrapped(document.state), *_wrapped(document.verdict)]
    for block in document.blocks:
        told += _lines(block)
    return "\n".join(line.rstrip() for line in told).translate(_SPACES) + "\n"


def _lines(block: Block) -> list[str]:
    match block:
        case Heading():
            return ["", block.text.upper()]
        case Facts():
            return [line for name, value in block.rows for line in _wrapped(value, f"{name:{_NAME}}", " " * _NAME)]
        case Prose():
            return _wrapped(
                block.text, "! " if block.kind == "caution" else "", "  " if block.kind == "caution" else ""
            )
        case Picture():
            return ["", *_wrapped(block.title), *_wrapped(block.drawing.told, "  ", "  ")]
        case Photos():
            return [caption for _, caption in block.shown]
        case Table():
            return list(_table(block))


def _wrapped(text: str, first: str = "", rest: str = "") -> list[str]:
    found: list[str] = []
    for paragraph in text.splitlines():
        begin = rest if found else first
        found += textwrap.wrap(paragraph, WIDTH, initial_indent=begin, subsequent_indent=rest) or [begin]
    return found


def _table(table: Table) -> Iterable[str]:
    every = [tuple(column.name for column in table.columns), *table.rows]
    widths = [max(len(line) for row in every for line in (row[n].splitlines() or [""])) for n in range(len(every[0]))]
    room = WIDTH - _GAP * (len(widths) - 1)
    while sum(widths) > room:
        widest = widths.index(max(widths))
        others = max((width for n, width in enumerate(widths) if n != widest), default=1)
        widths[widest] = max(min(others, widths[widest] - 1), widths[widest] - (sum(widths) - room), 1)
    for number, row in enumerate(every):
        if table.feet and number == len(every) - table.feet:
            yield "-" * (sum(widths) + _GAP * (len(widths) - 1))
        cells = [
            [part for line in (cell.splitlines() or [""]) for part in textwrap.wrap(line, width) or [""]]
            for cell, width in zip(row, widths, strict=True)
        ]
        for k in range(max(map(len, cells))):
            parts = [cell[k] if k < len(cell) else "" for cell in cells]
            yield (" " * _GAP).join(
                f"{part:>{width}}" if column.figures else f"{part:<{width}}"
                for part, width, column in zip(parts, widths, table.columns, strict=True)
            )
