"""A run's readbacks drawn: volts over amps on one time axis, each on an axis of its own. Legible without colour.

The lines stand apart in panes of their own and are named at their end; ceilings are dashed. Colour adds nothing.
"""

import math
from collections.abc import Callable
from itertools import pairwise

from benchlog.records import Event, EventKind
from benchlog.reports.drawing import FAINT, INK, SECOND, Boxes, Drawing, Line, Words
from benchlog.reports.sheet import Curve, Outline

WIDTH = 178.0
LEFT, RIGHT, TOP, PANE, GAP, BOTTOM = 13.0, 25.0, 6.0, 21.0, 6.5, 7.0
HEIGHT = TOP + PANE + GAP + PANE + BOTTOM
VOLTS, AMPS = "#0072B2", "#D55E00"
VOLTS_MM, AMPS_MM = 0.25, 0.45
SMALL = 2.5
_LETTER = 0.56
"""Width of a letter as a share of its size, on the wide side: what is placed by it does not touch."""

_MARK_WORDS = {
    EventKind.TURNING: "turning",
    EventKind.MOVED: "moved",
    EventKind.TRIP: "cut off",
    EventKind.HAND: "by hand",
    EventKind.RESCUE: "rescued",
}
Say = Callable[[str], str]


def draw(curve: Curve, *, most_volts: float, most_amps: float, say: Say = str) -> Drawing:
    """`most_volts`, `most_amps`: what the axes reach at least, so that before and after are on the same ones.

    `say` writes numbers as the place does.
    """
    lasted = max(_end(curve.volts), _end(curve.amps), 1e-3)
    across = WIDTH - LEFT - RIGHT

    def x_of(t_s: float) -> float:
        return LEFT + across * t_s / lasted

    amps_top = TOP + PANE + GAP
    volts = _pane(curve.volts, "volts", "V", TOP, most_volts, curve.ceiling_volts, VOLTS, VOLTS_MM, x_of, say)
    amps = _pane(curve.amps, "amps", "A", amps_top, most_amps, curve.ceiling_amps, AMPS, AMPS_MM, x_of, say)
    told = (
        f"Run {curve.run.id}, {curve.run.kind}: volts and amps as read back over {say(f'{lasted:.3g}')} s, "
        f"up to {say(f'{_most(curve.volts):.3g}')} V and {say(f'{_most(curve.amps):.3g}')} A."
    )
    marks = (*_times(lasted, amps_top + PANE, x_of, say), *volts, *amps, *_events(curve.marks, lasted, x_of))
    return Drawing(width=WIDTH, height=HEIGHT, marks=marks, told=told)


def most(*outlines: Outline) -> float:
    """The largest of several curves, for a common axis."""
    return max((_most(one) for one in outlines), default=0.0)


def _most(outline: Outline) -> float:
    return float(outline.values.max()) if len(outline.values) else 0.0


def _end(outline: Outline) -> float:
    return float(outline.t_s[-1]) if len(outline.t_s) else 0.0


def _pane(
    outline: Outline,
    name: str,
    unit: str,
    top: float,
    at_least: float,
    ceiling: float | None,
    ink: str,
    width: float,
    x_of: Callable[[float], float],
    say: Say,
) -> list[Line | Boxes | Words]:
    ticks = ticks_up_to(max(at_least, _most(outline), 1e-3))
    low = min(0.0, float(outline.values.min())) if len(outline.values) else 0.0
    high = ticks[-1]
    low = low if low < -0.02 * high else 0.0
    right = WIDTH - RIGHT

    def y_of(value: float) -> float:
        return top + PANE * (high - value) / (high - low)

    marks: list[Line | Boxes | Words] = []
    for tick in ticks:
        y = y_of(tick)
        marks.append(Line(points=((LEFT, y), (right, y)), width=0.15 if tick else 0.25, ink=FAINT if tick else SECOND))
        unit_too = f" {unit}" if tick == high else ""
        marks.append(
            Words(at=(LEFT - 1.2, y + 0.9), text=say(f"{tick:.10g}") + unit_too, size=SMALL, ink=SECOND, anchor="end")
        )
    label_y = y_of(float(outline.values[-1])) if len(outline.values) else y_of(0.0)
    if ceiling is not None and ceiling <= high:
        y = y_of(ceiling)
        marks.append(Line(points=((LEFT, y), (right, y)), width=0.3, ink=SECOND, dash=(1.6, 1.1)))
        marks.append(
            Words(at=(right + 1.2, y + 0.9), text=f"ceiling {say(f'{ceiling:.4g}')} {unit}", size=SMALL, ink=SECOND)
        )
        label_y = max(label_y, y + 3.4)
    points = [(x_of(t), y_of(v)) for t, v in zip(outline.t_s.tolist(), outline.values.tolist(), strict=True)]
    marks.append(Line(points=_needed(points), width=width, ink=ink))
    marks.append(Words(at=(right + 1.2, label_y + 0.9), text=name, size=3.0, bold=True))
    return marks


def _needed(points: list[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Without points between two at the same height, which no eye could see."""
    if len(points) < 3:
        return tuple(points)
    same = [abs(a[1] - b[1]) < 0.005 for a, b in pairwise(points)]
    middle = (point for point, left, right in zip(points[1:-1], same, same[1:], strict=False) if not (left and right))
    return (points[0], *middle, points[-1])


def _times(lasted: float, bottom: float, x_of: Callable[[float], float], say: Say) -> list[Line | Boxes | Words]:
    marks: list[Line | Boxes | Words] = []
    ticks = [tick for tick in ticks_up_to(lasted, 8) if tick <= lasted]
    for tick in ticks:
        x = x_of(tick)
        marks.append(Line(points=((x, TOP), (x, bottom)), width=0.1, ink=FAINT))
        unit = " s" if tick == ticks[-1] else ""
        marks.append(
            Words(at=(x, bottom + 4.2), text=say(f"{tick:.10g}") + unit, size=SMALL, ink=SECOND, anchor="middle")
        )
    return marks


def _events(events: tuple[Event, ...], lasted: float, x_of: Callable[[float], float]) -> list[Line | Boxes | Words]:
    """Kicks as small ticks with their numbers, the rest as words, where there is room for them."""
    marks: list[Line | Boxes | Words] = []
    taken = LEFT - 1.0
    said = ""
    for event in sorted(events, key=lambda one: (one.t_s, one.kind is EventKind.KICK)):
        if not 0 <= event.t_s <= lasted:
            continue
        x = x_of(event.t_s)
        kick = event.kind is EventKind.KICK
        marks.append(Line(points=((x, TOP - 2.2), (x, TOP - 0.6)), width=0.25 if kick else 0.5, ink=INK))
        word = str(event.values.get("number", "")) if kick else _MARK_WORDS[event.kind]
        word = f"kick {word}" if kick and said != "kick" else word
        wide = _LETTER * SMALL * len(word) / 2
        if x - wide > taken + 0.8 and x + wide < WIDTH:
            marks.append(
                Words(
                    at=(x, TOP - 2.9),
                    text=word,
                    size=SMALL,
                    ink=SECOND if kick else INK,
                    anchor="middle",
                    bold=not kick,
                )
            )
            taken, said = x + wide, "kick" if kick else word
    return marks


def ticks_up_to(most_value: float, count: int = 4) -> list[float]:
    """Round numbers from 0 to the first at or above `most_value`, some `count` of them. `most_value` > 0."""
    step = 10.0 ** math.floor(math.log10(most_value / count))
    step = next(step * times for times in (1, 2, 2.5, 5, 10) if step * times * count >= most_value * 0.999)
    return [round(step * n, 12) for n in range(math.ceil(most_value / step * 0.999) + 1)]
