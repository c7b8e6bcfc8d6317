"""Starts drawn over each other at their trigger: all of them grey, their mean, a band, some picked out by name.

Legible without colour: the picked ones are thicker and named at the line's end; the first of them shows its readings as
dots, the others are dashed each its own way. The amps are readbacks: between two of them nothing was seen.
"""

from collections.abc import Callable, Sequence

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.motor.limit_values import CurveBand
from benchlog.motor.overlay import Curve, Overlay
from benchlog.reports.axes import ticks_between
from benchlog.reports.drawing import FAINT, INK, SECOND, Boxes, Drawing, Line, Point, Words
from benchlog.reports.sheet import outline
from benchlog.reports.words import short

WIDTH, LEFT, RIGHT, TOP, PANE, BOTTOM = 178.0, 14.0, 36.0, 7.0, 74.0, 10.0
HEIGHT = TOP + PANE + BOTTOM
OTHERS, BAND, PICKED = "#a9a7a2", "#ebe9e4", "#D55E00"
SMALL, APART, DOT, LEAST_DOT = 2.5, 3.6, 0.9, 0.45
"""mm: of small letters; of two labels at the least; of a reading's dot where there is room, and at the least."""
DASHES: tuple[tuple[float, ...], ...] = ((), (2.2, 0.9), (0.7, 0.7))
MOST_PICKED = len(DASHES)
MOST_NAME, MOST_DOTS = 22, 400
MOST_POINTS = 120_000
"""Of all that is grey; above, each curve is drawn in fewer, its peaks kept."""
BAND_COLUMNS = 300
Say = Callable[[str], str]
Floats = npt.NDArray[np.float64]
Mark = Line | Boxes | Words


class _Axes(msgspec.Struct, frozen=True, kw_only=True):
    """s and A at the edges of the pane."""

    from_s: float
    to_s: float
    low: float
    high: float

    def x(self, t_s: float) -> float:
        return LEFT + (WIDTH - LEFT - RIGHT) * (t_s - self.from_s) / (self.to_s - self.from_s)

    def y(self, amps: float) -> float:
        return TOP + PANE * (self.high - amps) / (self.high - self.low)

    def points(self, t_s: Floats, amps: Floats) -> tuple[Point, ...]:
        """Of what is within the pane from left to right."""
        inside = (t_s >= self.from_s) & (t_s <= self.to_s) & np.isfinite(amps)
        return tuple((self.x(t), self.y(a)) for t, a in zip(t_s[inside].tolist(), amps[inside].tolist(), strict=True))


class _End(msgspec.Struct, frozen=True, kw_only=True):
    """Of a line, and what it is called there."""

    at: Point
    name: str
    bold: bool


def draw_starts(
    curves: Sequence[Curve],
    *,
    mean: Overlay | None = None,
    band: CurveBand | None = None,
    picked: Sequence[Curve] = (),
    say: Say = str,
) -> Drawing:
    """`curves`: all of them; `mean`: of the first of these, which are drawn as it aligned them, as far as all of them
    go; `picked`: some of them or others, at most MOST_PICKED. `say` writes numbers as the place does. Raises
    ValueError where there is nothing to draw."""
    picked = [curve for curve in picked if _drawn(curve)][:MOST_PICKED]
    every = [curve for curve in (*curves, *picked) if _drawn(curve)]
    if not every:
        raise ValueError("no start to draw")
    averaged = 0 if mean is None else len(mean.offsets_s)
    offsets = np.zeros(len(curves))
    if mean is not None:
        offsets[:averaged] = mean.offsets_s
    axes = _axes(every, band)
    ends: list[_End] = []
    marks = [*_band(axes, band), *_grid(axes, say)]
    columns = max(20, min(600, MOST_POINTS // (4 * len(every))))
    for curve, offset_s in zip(curves, offsets.tolist(), strict=True):
        drawn = outline(curve.t_s + offset_s, curve.amps, columns)
        marks.append(Line(points=axes.points(drawn.t_s, drawn.values), width=0.15, ink=OTHERS))
    marks += _edges(axes, band, ends)
    if mean is not None and averaged > 1:
        every_one = np.flatnonzero(mean.count == mean.count.max())
        whole = slice(every_one[0], every_one[-1] + 1)  # beyond, it would step wherever a curve ends
        drawn = outline(mean.grid_s[whole], mean.mean_amps[whole])
        _line(axes, marks, ends, drawn.t_s, drawn.values, f"mean of {averaged}", width=0.55, ink=INK)
    for number, (curve, dash) in enumerate(zip(picked, DASHES, strict=False)):
        drawn = outline(curve.t_s, curve.amps)
        name = short(curve.name, MOST_NAME)
        dots = axes.points(curve.t_s, curve.amps) if number == 0 and len(curve.t_s) <= MOST_DOTS else ()
        _line(axes, marks, ends, drawn.t_s, drawn.values, name, width=0.3 if dots else 0.4, ink=PICKED, dash=dash)
        if dots:
            marks.append(_dots(dots))
    marks += [*_trigger(axes), *_labels(ends)]
    return Drawing(width=WIDTH, height=HEIGHT, marks=tuple(marks), told=_told(curves, mean, band, picked, say))


def _drawn(curve: Curve) -> bool:
    return bool(np.isfinite(curve.amps).any())


def _axes(curves: Sequence[Curve], band: CurveBand | None) -> _Axes:
    amps = [float(value) for c in curves for value in (np.nanmin(c.amps), np.nanmax(c.amps))]
    if band is not None and band.t_s:
        amps += [min(band.low_amps), max(band.high_amps)]
    high = ticks_between(0.0, max(*amps, 1e-3), 6)[-1]
    low = min(0.0, *amps)
    low = low if low < -0.02 * high else 0.0
    from_s = min(0.0, *(float(c.t_s[0]) for c in curves))
    return _Axes(from_s=from_s, to_s=max(float(c.t_s[-1]) for c in curves) or 1.0, low=low, high=high)


def _grid(axes: _Axes, say: Say) -> list[Mark]:
    marks: list[Mark] = []
    right, bottom = WIDTH - RIGHT, TOP + PANE
    values = ticks_between(0.0, axes.high, 6)
    for value in values:
        y = axes.y(value)
        marks.append(
            Line(points=((LEFT, y), (right, y)), width=0.15 if value else 0.25, ink=FAINT if value else SECOND)
        )
        unit = " A" if value == values[-1] else ""
        text = say(f"{value:.10g}") + unit
        marks.append(Words(at=(LEFT - 1.2, y + 0.9), text=text, size=SMALL, ink=SECOND, anchor="end"))
    times = [t for t in ticks_between(axes.from_s, axes.to_s, 9) if axes.from_s <= t <= axes.to_s]
    for t_s in times:
        x = axes.x(t_s)
        marks.append(Line(points=((x, TOP), (x, bottom)), width=0.1, ink=FAINT))
        text = say(f"{t_s:.10g}").replace("-", "−") + (" s" if t_s == times[-1] else "")
        marks.append(Words(at=(x, bottom + 4.2), text=text, size=SMALL, ink=SECOND, anchor="middle"))
    words = "since the trigger; current as read back"
    marks.append(Words(at=(LEFT, bottom + 8.4), text=words, size=SMALL, ink=SECOND))
    return marks


def _band(axes: _Axes, band: CurveBand | None) -> list[Mark]:
    if band is None or len(band.t_s) < 2:
        return []
    t_s = np.asarray(band.t_s)
    # Boxes side by side: a shape that paper, screen and SVG all fill the same way.
    edges = np.linspace(max(t_s[0], axes.from_s), min(t_s[-1], axes.to_s), BAND_COLUMNS + 1)
    middle = (edges[1:] + edges[:-1]) / 2
    low, high = np.interp(middle, t_s, band.low_amps), np.interp(middle, t_s, band.high_amps)
    boxes = tuple(
        (axes.x(a), axes.y(top), axes.x(b) - axes.x(a), axes.y(under) - axes.y(top))
        for a, b, under, top in zip(edges.tolist(), edges[1:].tolist(), low.tolist(), high.tolist(), strict=False)
    )
    return [Boxes(boxes=boxes, ink=BAND)]


def _edges(axes: _Axes, band: CurveBand | None, ends: list[_End]) -> list[Mark]:
    if band is None or len(band.t_s) < 2:
        return []
    marks: list[Mark] = []
    t_s = np.asarray(band.t_s)
    for amps, name in ((band.high_amps, "limit, high"), (band.low_amps, "limit, low")):
        drawn = outline(t_s, np.asarray(amps))
        _line(axes, marks, ends, drawn.t_s, drawn.values, name, width=0.25, ink=SECOND, dash=(1.6, 1.1))
    return marks


def _line(
    axes: _Axes,
    marks: list[Mark],
    ends: list[_End],
    t_s: Floats,
    amps: Floats,
    name: str,
    *,
    width: float,
    ink: str,
    dash: tuple[float, ...] = (),
) -> None:
    points = axes.points(t_s, amps)
    if points:
        marks.append(Line(points=points, width=width, ink=ink, dash=dash))
        ends.append(_End(at=points[-1], name=name, bold=ink == PICKED))


def _dots(points: Sequence[Point]) -> Boxes:
    apart = (points[-1][0] - points[0][0]) / max(len(points) - 1, 1)
    side = min(DOT, max(LEAST_DOT, 0.6 * apart))
    return Boxes(boxes=tuple((x - side / 2, y - side / 2, side, side) for x, y in points), ink=PICKED)


def _trigger(axes: _Axes) -> list[Mark]:
    x = axes.x(0.0)
    return [
        Line(points=((x, TOP - 1.5), (x, TOP + PANE)), width=0.3, ink=INK, dash=(0.6, 0.6)),
        Words(at=(x, TOP - 2.4), text="trigger", size=SMALL, ink=INK, anchor="middle", bold=True),
    ]


def _labels(ends: Sequence[_End]) -> list[Mark]:
    """Each at the height of its line's end, pushed apart where two would touch, with a thin line that leads there."""
    marks: list[Mark] = []
    ordered = sorted(ends, key=lambda end: (end.at[1], end.name))
    places = spread_out([end.at[1] for end in ordered], APART, TOP + 1.0, TOP + PANE)
    right = WIDTH - RIGHT
    for end, place in zip(ordered, places, strict=True):
        x, y = end.at
        marks.append(Line(points=((x + 0.3, y), (right + 0.3, y), (right + 3.2, place)), width=0.15, ink=SECOND))
        marks.append(Words(at=(right + 3.8, place + 0.9), text=end.name, size=SMALL, bold=end.bold))
    return marks


def spread_out(wanted: Sequence[float], apart: float, low: float, high: float) -> list[float]:
    """Places near the wanted ones, in their order, at least `apart` from each other; from `low` to `high` where all
    have room there. `wanted`: ascending."""
    places: list[float] = []
    for want in wanted:
        places.append(max(want, low if not places else places[-1] + apart))
    limit = max(high, low + apart * (len(places) - 1))
    for n in reversed(range(len(places))):
        places[n] = min(places[n], limit)
        limit = places[n] - apart
    return places


def _told(
    curves: Sequence[Curve], mean: Overlay | None, band: CurveBand | None, picked: Sequence[Curve], say: Say
) -> str:
    drawn = list(curves) or list(picked)
    peak = max(float(np.nanmax(curve.amps)) for curve in drawn if _drawn(curve))
    lasted = max(float(curve.t_s[-1]) for curve in drawn if _drawn(curve))
    parts = [
        f"{len(drawn)} {'start' if len(drawn) == 1 else 'starts'} aligned at the trigger: amps as read back over "
        f"{say(f'{lasted:.3g}')} s, up to {say(f'{peak:.3g}')} A"
    ]
    if mean is not None and len(mean.offsets_s) > 1:
        some = len(mean.offsets_s)
        parts.append("with their mean" if some == len(drawn) else f"with the mean of {some} of them")
    if band is not None and band.t_s:
        parts.append(f"the limits from {band.n} known good units")
    if picked:
        parts.append(f"picked out: {', '.join(short(curve.name, MOST_NAME) for curve in picked)}")
    return "; ".join(parts) + "."
