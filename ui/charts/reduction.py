"""Fewer points for a chart without losing anything that can be seen.

A kick may be one reading long. So each bucket of readings keeps its first, lowest, highest and last, in the order
they came. Buckets are aligned to the number of the reading since the run began, not to the view: as the chart moves,
no bucket changes what it holds, and nothing shimmers. Where the extremes of every block of readings stand is noted
once, as the readings come; a view of a million of them then looks at some thousands of blocks.
"""

import math
from typing import TypeVar

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]
Kept = TypeVar("Kept", Floats, Places)
BLOCK = 64


class Extremes:
    """The lowest and the highest reading of each whole block of one line, and their numbers since the run began."""

    def __init__(self) -> None:
        self._at = np.empty((2, 64), dtype=np.int64)
        self._values = np.empty((2, 64), dtype=np.float64)
        self._count = 0

    def __len__(self) -> int:
        return self._count

    def note(self, values: Floats, first_block: int) -> None:
        """More whole blocks, not before the last noted one. Blocks left out between are never to be asked for."""
        blocks = values.reshape(-1, BLOCK)
        count = first_block + len(blocks)
        if count > self._at.shape[1]:
            self._at = _wider(self._at, 2 * count, self._count)
            self._values = _wider(self._values, 2 * count, self._count)
        begins = np.arange(first_block, count, dtype=np.int64) * BLOCK
        self._at[0, first_block:count] = begins + blocks.argmin(axis=1)
        self._at[1, first_block:count] = begins + blocks.argmax(axis=1)
        self._values[0, first_block:count] = blocks.min(axis=1)
        self._values[1, first_block:count] = blocks.max(axis=1)
        self._count = count

    def clear(self) -> None:
        self._count = 0

    def of_buckets(self, begin: int, end: int, size: int) -> tuple[Places, Places]:
        """The numbers of the lowest and the highest reading of each bucket of `size` readings, some whole blocks."""
        blocks = slice(begin // BLOCK, end // BLOCK)
        per = size // BLOCK
        lows, highs = (kept[blocks].reshape(-1, per) for kept in self._values)
        bucket = np.arange(lows.shape[0])
        low_at, high_at = (kept[blocks].reshape(-1, per) for kept in self._at)
        return low_at[bucket, lows.argmin(axis=1)], high_at[bucket, highs.argmax(axis=1)]


def _wider(kept: Kept, columns: int, count: int) -> Kept:
    made = np.empty((2, columns), dtype=kept.dtype)
    made[:, :count] = kept[:, :count]
    return made


def outline(values: Floats, first: int, extremes: Extremes, begin: int, end: int, columns: int) -> Places:
    """Which of the readings numbered `begin` to `end` draw the same picture, as places in `values`.

    All of them where they are few, else about 4 × `columns`. `values` begin with the reading numbered `first`.
    """
    if columns < 1:
        raise ValueError(f"columns: {columns} is below 1")
    count = end - begin
    if count <= 4 * columns:
        return np.arange(begin, end, dtype=np.int64) - first
    size = 1 << max(1, math.ceil(math.log2(count / columns)))  # a power of two changes seldom while a run grows
    whole = min(-(-begin // size) * size, end)
    rest = max(end // size * size, whole)
    firsts = np.arange(whole, rest, size, dtype=np.int64)
    lows, highs = _whole_buckets(values, first, extremes, firsts, size)
    parts = [np.stack((firsts, np.minimum(lows, highs), np.maximum(lows, highs), firsts + size - 1), axis=1).ravel()]
    if begin < whole:
        parts.insert(0, _one_bucket(values, first, begin, whole))
    if rest < end:
        parts.append(_one_bucket(values, first, rest, end))
    kept: Places = np.concatenate(parts) - first
    return kept[np.concatenate(([True], kept[1:] > kept[:-1]))]


def _whole_buckets(values: Floats, first: int, extremes: Extremes, firsts: Places, size: int) -> tuple[Places, Places]:
    """The numbers of the lowest and the highest of each."""
    if not firsts.size:
        return firsts, firsts
    begin, end = int(firsts[0]), int(firsts[-1]) + size
    if size < BLOCK:
        buckets = values[begin - first : end - first].reshape(-1, size)
        return firsts + buckets.argmin(axis=1), firsts + buckets.argmax(axis=1)
    return extremes.of_buckets(begin, end, size)


def _one_bucket(values: Floats, first: int, begin: int, end: int) -> Places:
    """The cut ones at either end of a view."""
    part = values[begin - first : end - first]
    return np.array(sorted((begin, begin + int(part.argmin()), begin + int(part.argmax()), end - 1)), dtype=np.int64)
