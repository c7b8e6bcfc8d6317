"""Very many lines at once, as a picture: for each column of pixels how far every line reaches in it, then how many lie
on each pixel.

Drawn one by one, 500 lines of 2,000 readings cost a painter 28 ms and more a time. Here a line that rises alone is
still seen, since its whole reach is counted, and where many lie upon each other it is darker. Far out, reaches come
from cells laid down once, over the whole of the time; close up, where a column is less than a cell, from the lines.
"""

import math
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from ui.charts.reduction import Floats
from ui.charts.scale import Scale

CELLS = 4096
ABSENT = np.float32(1e30)
"""Where a line is not: above every plot, so that it is cut off like what lies above."""
_ABSENT_FROM = 1e29
LEAST_ALPHA, MOST_ALPHA = 0.12, 0.6
"""How much of its colour a single line has, among very many and alone."""

Reaches = tuple[npt.NDArray[np.float32], npt.NDArray[np.float32]]
"""Lowest and highest, float32[columns, lines]; ABSENT in both where a line is not."""


class Crowd:
    """`put` the lines, each as (t_s, values); times rise. `tops`: the lowest and highest value of all."""

    def __init__(self) -> None:
        self._lines: list[tuple[Floats, Floats]] = []
        self._levels: list[Reaches] = []
        self.span = (0.0, 1.0)
        self.tops = (0.0, 0.0)

    def __len__(self) -> int:
        return len(self._lines)

    def put(self, lines: Sequence[tuple[Floats, Floats]]) -> None:
        self._lines = [line for line in lines if line[0].size > 1]
        self._levels = []
        if self._lines:
            self.span = min(float(t[0]) for t, _ in self._lines), max(float(t[-1]) for t, _ in self._lines)
            self.tops = (
                min(float(values.min()) for _, values in self._lines),
                max(float(values.max()) for _, values in self._lines),
            )
        else:
            self.span, self.tops = (0.0, 1.0), (0.0, 0.0)

    def reaches(self, low_s: float, high_s: float, columns: int) -> Reaches:
        """Of every line in each of so many columns of equal width; close up, where lines are flat, of half as many."""
        cell_s = (self.span[1] - self.span[0]) / CELLS
        if (high_s - low_s) / columns >= cell_s:
            return self._from_cells(np.linspace(low_s, high_s, columns + 1), cell_s)
        edges = np.linspace(low_s, high_s, max(1, columns // 2) + 1)
        at_edges = np.empty((len(self._lines), edges.size), dtype=np.float32)
        for number, line in enumerate(self._lines):
            at_edges[number] = _at_edges(edges, *line)
        return _joined(np.ascontiguousarray(at_edges.T))

    def _from_cells(self, edges: Floats, cell_s: float) -> Reaches:
        if not self._levels:
            self._levels = _halved(_laid_down(self._lines, np.linspace(*self.span, CELLS + 1)))
        level = min(max(0, int(math.log2((edges[1] - edges[0]) / cell_s)) - 1), len(self._levels) - 1)
        lows, highs = self._levels[level]
        cells, cell_s = CELLS >> level, cell_s * (1 << level)
        first = np.floor((edges[:-1] - self.span[0]) / cell_s).astype(np.int64)
        last = np.floor((edges[1:] - self.span[0]) / cell_s).astype(np.int64)
        # Columns outside read the cell after the last, which is kept empty.
        outside = (last < 0) | (first >= cells)
        at, most = (np.where(outside, cells, np.clip(ends, 0, cells - 1)) for ends in (first, last))
        low, high = lows[at], highs[at]
        while (at < most).any():
            at = np.minimum(at + 1, most)
            np.minimum(low, lows[at], out=low)
            np.maximum(high, highs[at], out=high)
        high[high < -_ABSENT_FROM] = ABSENT
        return low, high

    def picture(self, reaches: Reaches, upward: Scale, colour: tuple[int, int, int]) -> npt.NDArray[np.uint32]:
        """uint32[height, columns], premultiplied 0xAARRGGBB: darker where more lines lie."""
        height = max(1, round(upward.begin - upward.end))
        count = counts(reaches, upward, height)
        shades = _shades(len(self._lines), colour)
        return np.ascontiguousarray(shades.take(count, mode="clip").T)


def counts(reaches: Reaches, upward: Scale, height: int) -> npt.NDArray[np.int64]:
    """int64[columns, height], from the top: how many lines lie on each pixel."""
    low, high = reaches
    columns = low.shape[0]
    per_px = np.float32(height / (upward.high - upward.low))
    base = (np.arange(columns, dtype=np.int32) * (height + 1))[:, None]
    size = columns * (height + 1)
    enters, leaves = (
        np.bincount(_row(edge, np.float32(upward.high), per_px, thick, height, base), minlength=size)
        for edge, thick in ((high, 0), (low, 1))
    )
    counted: npt.NDArray[np.int64] = np.cumsum((enters - leaves).reshape(columns, height + 1)[:, :height], axis=1)
    return counted


def _row(
    values: npt.NDArray[np.float32],
    top: np.float32,
    per_px: np.float32,
    thick: int,
    height: int,
    base: npt.NDArray[np.int32],
) -> npt.NDArray[np.int64]:
    """Places in the flattened picture. In place throughout: half a million of them are made for every look."""
    down = values - top
    down *= -per_px
    down += np.float32(thick)
    np.clip(down, 0, height, out=down)
    places = down.astype(np.int32)
    places += base
    return places.ravel()  # type: ignore[return-value]


def columns_of(t_s: Floats, values: Floats, low_s: float, high_s: float, columns: int) -> tuple[Floats, Floats]:
    """Times and values that draw the same picture of one line: all in view where few, else ends and extremes a column.

    One reading more at either side, so that the line goes on to the edge.
    """
    begin, end = t_s.searchsorted([low_s, high_s])
    begin, end = max(0, int(begin) - 1), min(t_s.size, int(end) + 1)
    t_s, values = t_s[begin:end], values[begin:end]
    if t_s.size <= 4 * columns:
        return t_s, values
    size = -(-t_s.size // columns)
    whole = t_s.size // size * size
    blocks = values[:whole].reshape(-1, size)
    first = np.arange(0, whole, size)
    lowest, highest = first + blocks.argmin(axis=1), first + blocks.argmax(axis=1)
    places = np.stack((first, np.minimum(lowest, highest), np.maximum(lowest, highest), first + size - 1), axis=1)
    kept = np.concatenate((np.unique(places), np.arange(whole, t_s.size)))
    return t_s[kept], values[kept]


def _at_edges(edges: Floats, t_s: Floats, values: Floats) -> npt.NDArray[np.float32]:
    # Only what is in view: a search through all of it would cost as much as the picture.
    begin, end = t_s.searchsorted([edges[0], edges[-1]])
    begin, end = max(0, int(begin) - 1), min(t_s.size, int(end) + 1)
    if end - begin < 2:
        return np.full(edges.size, ABSENT)
    found = np.interp(edges, t_s[begin:end], values[begin:end], left=float(ABSENT), right=float(ABSENT))
    return np.asarray(found, dtype=np.float32)


def _joined(at_edges: npt.NDArray[np.float32]) -> Reaches:
    """From values at edges to reaches between them. At an end of a line the one edge that it has."""
    low = np.minimum(at_edges[:-1], at_edges[1:])
    high = np.maximum(at_edges[:-1], at_edges[1:])
    return low, np.where(high > _ABSENT_FROM, low, high)


def _laid_down(lines: Sequence[tuple[Floats, Floats]], edges: Floats) -> Reaches:
    """For cells, and one that stays empty: what the line has at their edges, and the readings within them.

    A line that is not in a cell has ABSENT as its lowest there and -ABSENT as its highest.
    """
    low = np.full((edges.size, len(lines)), ABSENT, dtype=np.float32)
    high = -low
    for number, (t_s, values) in enumerate(lines):
        one_low, one_high = (part[:, 0] for part in _joined(_at_edges(edges, t_s, values)[:, None]))
        one_high[one_high > _ABSENT_FROM] = -ABSENT
        cell = np.clip(edges.searchsorted(t_s, side="right") - 1, 0, edges.size - 2)
        begins = np.flatnonzero(np.diff(cell, prepend=-1))
        at = cell[begins]
        one_low[at] = np.minimum(one_low[at], np.minimum.reduceat(values, begins))
        one_high[at] = np.maximum(one_high[at], np.maximum.reduceat(values, begins))
        low[:-1, number], high[:-1, number] = one_low, one_high
    return low, high


def _halved(cells: Reaches) -> list[Reaches]:
    """The cells, and pairs of them joined again and again: wide columns need not look at every cell."""
    levels = [cells]
    while (count := levels[-1][0].shape[0] - 1) > 64:
        low, high = levels[-1]
        pairs = (low[0:count:2], low[1:count:2]), (high[0:count:2], high[1:count:2])
        levels.append((np.vstack((np.minimum(*pairs[0]), low[-1:])), np.vstack((np.maximum(*pairs[1]), high[-1:]))))
    return levels


def _shades(lines: int, colour: tuple[int, int, int]) -> npt.NDArray[np.uint32]:
    alone = max(LEAST_ALPHA, MOST_ALPHA / max(1.0, lines / 40) ** 0.6)
    alpha = 1 - (1 - alone) ** np.arange(min(lines, 400) + 1)
    parts = [np.round(alpha * part).astype(np.uint32) for part in (255, *colour)]
    shade: npt.NDArray[np.uint32] = (parts[0] << 24) | (parts[1] << 16) | (parts[2] << 8) | parts[3]
    return shade
