"""A sheet as one HTML file: nothing outside is asked for, no script, everything that was typed is escaped."""

from base64 import b64encode
from collections.abc import Iterable
from html import escape

from benchlog.reports.document import Block, Document, Facts, Heading, Photos, Picture, Prose, Table
from benchlog.reports.drawing import FAMILIES, svg
from benchlog.reports.regions import Paper

_STYLE = """\
@page { size: PAPER; margin: 16mm;
  @bottom-right { font: 8pt sans-serif; content: counter(page) " / " counter(pages); } }
* { box-sizing: border-box; }
body { font: 15px/1.45 FAMILIES, sans-serif; color: #1d1f21; background: #fff; margin: 0 auto; padding: 24px;
  max-width: 800px; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
header { border-bottom: 2px solid #1d1f21; padding-bottom: 12px; margin-bottom: 16px; }
header p { margin: 0; }
h1 { font-size: 24px; margin: 0 0 4px; display: flex; justify-content: space-between; gap: 16px; }
h2 { font-size: 15px; margin: 24px 0 8px; border-bottom: 1px solid #d9d7d2; padding-bottom: 4px; break-after: avoid; }
h3 { font-size: 13px; margin: 16px 0 4px; break-after: avoid; }
p { margin: 0 0 8px; white-space: pre-line; }
.name { font-weight: 600; }
.state, .small, dt, th { color: #5b5f63; }
.verdict { font-size: 22px; font-weight: 600; margin-top: 8px; }
.small { font-size: 13px; margin-top: 16px; }
.caution { padding-left: 20px; position: relative; }
.caution::before { content: "!"; position: absolute; left: 4px; font-weight: 700; }
dl { display: grid; grid-template-columns: 170px 1fr; gap: 2px 12px; margin: 0; }
.short { grid-template-columns: 110px 1fr 110px 1fr; }
dd { margin: 0; white-space: pre-line; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; }
th { text-align: left; font-weight: 400; font-size: 13px; }
th, td { padding: 4px 8px 4px 0; vertical-align: top; border-bottom: 1px solid #d9d7d2; white-space: pre-line; }
.figures { text-align: right; }
.foot td { font-weight: 600; border-bottom: 0; }
tr, figure, .caution { break-inside: avoid; }
figure { margin: 0; }
svg { width: 100%; height: auto; }
.photos { display: flex; flex-wrap: wrap; gap: 12px; }
.photos figure { width: 240px; }
.photos img { max-width: 240px; max-height: 240px; display: block; }
.demo { position: fixed; inset: 0; display: flex; align-items: center; justify-content: center; z-index: -1;
  font-size: 200px; font-weight: 700; color: #ececec; transform: rotate(-35deg); }
@media print { body { padding: 0; max-width: none; font-size: 10pt; } h1 { font-size: 18pt; }
  .small { font-size: 8pt; } }
"""


def html_of(document: Document, paper: Paper = Paper.A4) -> str:
    """A whole page. `paper` is for whoever prints it."""
    name = f"{document.title} {document.tag}"
    families = ", ".join(f'"{family}"' for family in FAMILIES)
    style = _STYLE.replace("PAPER", paper.value.lower()).replace("FAMILIES", families)
    verdict = f'<p class="verdict">{escape(document.verdict)}</p>' if document.verdict else ""
    mark = '<div class="demo" aria-hidden="true">DEMO</div>' if document.demo else ""
    demo = " · DEMO" if document.demo else ""
    return "\n".join(
        (
            "<!DOCTYPE html>",
            f'<html lang="en"><head><meta charset="utf-8"><title>{escape(name)}{demo}</title>',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            # Even if something got through, a browser would neither run nor fetch it.
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
            'img-src data:">',
            f"<style>{style}</style></head><body>{mark}",
            f"<header><h1><span>{escape(document.title)}{demo}</span><span>{escape(document.tag)}</span></h1>",
            f'<p class="name">{escape(document.name)}</p>',
            f'<p class="state">{escape(document.state)}</p>{verdict}</header>',
            *(part for block in document.blocks for part in _parts(block)),
            "</body></html>",
            "",
        )
    )


def _parts(block: Block) -> Iterable[str]:
    match block:
        case Heading():
            yield f"<h2>{escape(block.text)}</h2>"
        case Facts():
            pairs = "".join(f"<dt>{escape(name)}</dt><dd>{escape(value)}</dd>" for name, value in block.rows)
            short = ' class="short"' if block.short else ""
            yield f"<dl{short}>{pairs}</dl>"
        case Prose():
            yield f'<p class="{block.kind}">{escape(block.text)}</p>'
        case Picture():
            yield f"<figure><h3>{escape(block.title)}</h3>{svg(block.drawing)}</figure>"
        case Photos():
            yield f'<div class="photos">{"".join(_photo(*one) for one in block.shown)}</div>'
        case Table():
            yield from _table(block)


def _photo(data: bytes, caption: str) -> str:
    return (
        f'<figure><img alt="" src="data:{media_type(data)};base64,{b64encode(data).decode()}">'
        f"{escape(caption)}</figure>"
    )


def media_type(data: bytes) -> str:
    """Of a thumbnail, by its first bytes. Source: the PNG specification, 5.2; anything else is taken for a JPEG."""
    return "image/png" if data.startswith(b"\x89PNG\r\n\x1a\n") else "image/jpeg"


def _table(table: Table) -> Iterable[str]:
    widths = "".join(f'<col style="width:{100 * column.share:.4g}%">' for column in table.columns)
    kinds = [' class="figures"' if column.figures else "" for column in table.columns]
    yield f"<table><colgroup>{widths}</colgroup><thead><tr>"
    yield "".join(f"<th{kind}>{escape(c.name)}</th>" for c, kind in zip(table.columns, kinds, strict=True))
    yield "</tr></thead><tbody>"
    first_foot = len(table.rows) - table.feet
    for number, row in enumerate(table.rows):
        cells = "".join(f"<td{kind}>{escape(cell)}</td>" for cell, kind in zip(row, kinds, strict=True))
        foot = ' class="foot"' if number >= first_foot else ""
        yield f"<tr{foot}>{cells}</tr>"
    yield "</tbody></table>"
