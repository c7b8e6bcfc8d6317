"""A drawing as plain values, in mm from the top left corner: whoever writes paper draws the same one. SVG is text."""

from collections.abc import Sequence
from html import escape
from typing import Literal

import msgspec

Point = tuple[float, float]
INK, SECOND, FAINT = "#1d1f21", "#5b5f63", "#d9d7d2"
FAMILIES = ("Inter", "Segoe UI", "Noto Sans", "Source Sans 3", "DejaVu Sans Condensed", "DejaVu Sans")
"""In order of liking."""


class Line(msgspec.Struct, frozen=True, kw_only=True):
    """A polyline. `width` mm; `dash`: mm drawn and mm left out, in turns."""

    points: Sequence[Point]
    width: float
    ink: str = INK
    dash: tuple[float, ...] = ()


class Boxes(msgspec.Struct, frozen=True, kw_only=True):
    """Filled boxes as one shape, so that no seam shows between them: x, y, width, height, mm."""

    boxes: Sequence[tuple[float, float, float, float]]
    ink: str = INK


class Words(msgspec.Struct, frozen=True, kw_only=True):
    """A line of text. `at`: its base line, at its start, middle or end; `size` mm."""

    at: Point
    text: str
    size: float = 2.6
    ink: str = INK
    anchor: Literal["start", "middle", "end"] = "start"
    bold: bool = False


class Drawing(msgspec.Struct, frozen=True, kw_only=True):
    """`width`, `height` mm. `told`: the same in words, for whoever can't see it. Later marks lie over earlier ones."""

    width: float
    height: float
    marks: tuple[Line | Boxes | Words, ...]
    told: str


def svg(drawing: Drawing) -> str:
    """One element, without a script, a style sheet or a reference to anything outside."""
    families = ", ".join(f"'{family}'" if " " in family else family for family in FAMILIES)
    size = (
        f'width="{drawing.width:g}mm" height="{drawing.height:g}mm" viewBox="0 0 {drawing.width:g} {drawing.height:g}"'
    )
    said = escape(drawing.told)
    return "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img" aria-label="{said}" '
            f'font-family="{families}, sans-serif">',
            *(_element(mark) for mark in drawing.marks),
            "</svg>",
        )
    )


def _element(mark: Line | Boxes | Words) -> str:
    match mark:
        case Line():
            dash = f' stroke-dasharray="{" ".join(f"{part:g}" for part in mark.dash)}"' if mark.dash else ""
            points = " ".join(f"{x:.2f},{y:.2f}" for x, y in mark.points)
            return (
                f'<polyline points="{points}" fill="none" stroke="{mark.ink}" stroke-width="{mark.width:g}" '
                f'stroke-linejoin="round"{dash}/>'
            )
        case Boxes():
            path = "".join(f"M{x:.3f} {y:.3f}h{w:.3f}v{h:.3f}h{-w:.3f}z" for x, y, w, h in mark.boxes)
            return f'<path d="{path}" fill="{mark.ink}"/>'
        case Words():
            weight = ' font-weight="600"' if mark.bold else ""
            return (
                f'<text x="{mark.at[0]:.2f}" y="{mark.at[1]:.2f}" font-size="{mark.size:g}" fill="{mark.ink}" '
                f'text-anchor="{mark.anchor}"{weight}>{escape(mark.text)}</text>'
            )
