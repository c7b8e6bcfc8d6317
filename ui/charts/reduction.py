"""Fewer points for a chart without losing anything that can be seen.

A kick may be one reading long. So each bucket of readings keeps its first, lowest, highest and last, in the order
they came. Buckets are aligned to the number of the reading since the run began, not to the view: as the chart moves,
no bucket changes what it holds, and nothing shimmers.
"""

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


def thin(x: Floats, y: Floats, columns: int, first_index: int = 0) -> tuple[Floats, Floats]:
    """At most about 4 × `columns` points of a line of n; the line itself where that is no fewer. x rises."""
    if columns < 1:
        raise ValueError(f"columns: {columns} is below 1")
    if x.size <= 4 * columns:
        return x, y
    size = _bucket_size(x.size, columns)
    starts = _starts(x.size, size, first_index)
    ends = np.append(starts[1:], x.size)
    keep = np.concatenate((starts, _extremes(y, starts, ends), ends - 1))
    keep = np.unique(keep)
    return x[keep], y[keep]


def _bucket_size(count: int, columns: int) -> int:
    """A power of two, so that it changes seldom while a run grows."""
    return 1 << max(1, int(np.ceil(np.log2(count / columns))))


def _starts(count: int, size: int, first_index: int) -> npt.NDArray[np.intp]:
    """Where buckets begin: a whole number of `size` since the run began, and the first reading there is."""
    starts = np.arange(-(first_index % size), count, size, dtype=np.intp)
    starts[0] = 0
    return starts


def _extremes(y: Floats, starts: npt.NDArray[np.intp], ends: npt.NDArray[np.intp]) -> npt.NDArray[np.intp]:
    """Indices of the lowest and the highest of each bucket."""
    lengths = ends - starts
    bucket = np.repeat(np.arange(starts.size), lengths)
    lowest = np.repeat(np.minimum.reduceat(y, starts), lengths)
    highest = np.repeat(np.maximum.reduceat(y, starts), lengths)
    first_of = np.empty((2, starts.size), dtype=np.intp)
    for row, hits in enumerate((np.flatnonzero(y == lowest), np.flatnonzero(y == highest))):
        # written backwards, the first hit of each bucket is the one that stays
        first_of[row, bucket[hits[::-1]]] = hits[::-1]
    return first_of.ravel()
