"""How often values came, as boxes: one small pane a figure, its limits as dashed lines, what is outside in black.

Where there are limits the axis is made for them: one unit that is far off would leave no room for all the others.
"""

import math
from collections.abc import Callable, Sequence

import msgspec

from benchlog.reports.axes import ticks_between
from benchlog.reports.drawing import FAINT, INK, SECOND, Boxes, Drawing, Line, Words

WIDTH, ACROSS, GAP = 178.0, 2, 14.0
LEFT, EDGE, PANE, TOP, BOTTOM = 9.0, 3.0, 24.0, 9.0, 8.0
SMALL = 2.5
INSIDE = "#a9a7a2"
FEWEST, MOST = 6, 24
"""Boxes of a pane."""
FAR = 0.5
"""Of the width between the limits, on either side: what is farther outside stands in the box at the edge."""
Say = Callable[[str], str]
Mark = Line | Boxes | Words


class Pane(msgspec.Struct, frozen=True, kw_only=True):
    """`values`: one or more, in `unit`; `low`, `high`: the limits, None where there is none at that side."""

    title: str
    unit: str
    values: tuple[float, ...]
    low: float | None = None
    high: float | None = None


def draw_histograms(panes: Sequence[Pane], *, say: Say = str) -> Drawing:
    """Two beside each other. Raises ValueError for none."""
    if not panes:
        raise ValueError("nothing to draw")
    down = -(-len(panes) // ACROSS)
    wide, high = (WIDTH - GAP * (ACROSS - 1)) / ACROSS, TOP + PANE + BOTTOM
    marks: list[Mark] = []
    for number, pane in enumerate(panes):
        x, y = (number % ACROSS) * (wide + GAP), (number // ACROSS) * high
        marks += _pane(pane, x + LEFT, y + TOP, wide - LEFT - EDGE, say)
    return Drawing(width=WIDTH, height=down * high, marks=tuple(marks), told=" ".join(_told(p, say) for p in panes))


def outside(value: float, low: float | None, high: float | None) -> bool:
    return bool((low is not None and value < low) or (high is not None and value > high))


def _pane(pane: Pane, x: float, y: float, wide: float, say: Say) -> list[Mark]:
    scale, prefix = _scale(pane)
    values = [value * scale for value in pane.values]
    low, high = (None if one is None else one * scale for one in (pane.low, pane.high))
    ends = _ends(values, low, high)
    room = max(0.04 * (max(ends) - min(ends)), 0.02 * max(map(abs, ends)), 1e-9)
    begin, end = min(ends) - room, max(ends) + room
    columns = max(FEWEST, min(MOST, math.ceil(2 * math.sqrt(len(values)) * (end - begin) / _middle_span(values, room))))

    def x_of(value: float) -> float:
        return x + wide * (value - begin) / (end - begin)

    counts = [[0, 0] for _ in range(columns)]
    for value in values:
        column = int((value - begin) / (end - begin) * columns)
        counts[max(0, min(columns - 1, column))][outside(value, low, high)] += 1
    most = max(map(sum, counts))
    ticks = [tick for tick in ticks_between(0, most, 3) if tick == int(tick)]
    top = ticks[-1]
    marks: list[Mark] = []
    for tick in ticks:
        at = y + PANE * (1 - tick / top)
        marks.append(
            Line(points=((x, at), (x + wide, at)), width=0.15 if tick else 0.25, ink=FAINT if tick else SECOND)
        )
        marks.append(Words(at=(x - 1.2, at + 0.9), text=f"{tick:g}", size=SMALL, ink=SECOND, anchor="end"))
    step = wide / columns
    for part, ink in ((0, INSIDE), (1, INK)):
        boxes = tuple(
            (x + n * step + 0.2, y + PANE * (1 - sum(pair[: part + 1]) / top), step - 0.4, PANE * pair[part] / top)
            for n, pair in enumerate(counts)
            if pair[part]
        )
        if boxes:
            marks.append(Boxes(boxes=boxes, ink=ink))
    for tick in ticks_between(begin, end, 6):
        if begin <= tick <= end:
            at = x_of(tick)
            marks.append(Line(points=((at, y + PANE), (at, y + PANE + 0.9)), width=0.2, ink=SECOND))
            words = say(f"{tick:.10g}").replace("-", "−")
            marks.append(Words(at=(at, y + PANE + 4.0), text=words, size=SMALL, ink=SECOND, anchor="middle"))
    for limit in (low, high):
        if limit is not None:
            at = x_of(limit)
            marks.append(Line(points=((at, y - 1.2), (at, y + PANE)), width=0.35, ink=INK, dash=(1.4, 0.8)))
    title = f"{pane.title[:1].upper()}{pane.title[1:]}, {prefix}{pane.unit}"
    marks.append(Words(at=(x, y - 3.4), text=title, size=3.0, bold=True))
    if far := _far(values, begin, end):
        marks.append(Words(at=(x + wide, y - 3.4), text=far, size=SMALL, anchor="end"))
    return marks


def _ends(values: Sequence[float], low: float | None, high: float | None) -> list[float]:
    """What must be on the axis: all values, but not what is so far off that the limits would shrink to a line."""
    if low is None or high is None or high <= low:
        return [*values, *(one for one in (low, high) if one is not None)]
    far = FAR * (high - low)
    return [low, high, max(min(values), low - far), min(max(values), high + far)]


def _far(values: Sequence[float], begin: float, end: float) -> str:
    """ "1 farther left, 2 farther right": in the boxes at the edges, beyond what the axis shows."""
    left, right = sum(value < begin for value in values), sum(value > end for value in values)
    return ", ".join(f"{count} farther {side}" for count, side in ((left, "left"), (right, "right")) if count)


def _middle_span(values: Sequence[float], room: float) -> float:
    """Of the middle three quarters: one that is far off must not make a single box of all the others."""
    ordered = sorted(values)
    cut = len(ordered) // 8
    return max(ordered[len(ordered) - 1 - cut] - ordered[cut], room)


def _scale(pane: Pane) -> tuple[float, str]:
    """Thousandths where all is below one."""
    most = max(abs(one) for one in (*pane.values, pane.low or 0.0, pane.high or 0.0))
    return (1e3, "m") if 0 < most < 0.8 else (1.0, "")


def _told(pane: Pane, say: Say) -> str:
    scale, prefix = _scale(pane)
    unit = f"{prefix}{pane.unit}"

    def told(value: float) -> str:
        return say(f"{value * scale:.3g}")

    count = f"{len(pane.values)} {'value' if len(pane.values) == 1 else 'values'}"
    parts = [f"{pane.title[:1].upper()}{pane.title[1:]}: {count} from {told(min(pane.values))}"]
    parts.append(f" to {told(max(pane.values))} {unit}")
    limits = [f"{word} {told(one)}" for word, one in (("from", pane.low), ("to", pane.high)) if one is not None]
    if limits:
        out = sum(outside(value, pane.low, pane.high) for value in pane.values)
        parts.append(f", limits {' '.join(limits)} {unit}, {out} outside")
    return "".join(parts) + "."
