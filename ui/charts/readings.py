"""Readings of one run, kept for drawing: appended as they come, handed out as contiguous arrays.

The newest `capacity` readings are kept. The record on disk keeps them all; this is only what the chart can show.
"""

import numpy as np

from ui.charts.reduction import BLOCK, Extremes, Floats, outline

VOLTS, AMPS = 1, 2
"""Lines; row 0 is the time."""


class Readings:
    """A ring laid out flat: twice the room, moved down when full, so that a view never wraps."""

    def __init__(self, capacity: int = 1 << 20) -> None:
        if capacity < 1:
            raise ValueError(f"capacity: {capacity} is below 1")
        self._capacity = capacity
        self._rows = np.empty((3, min(2 * capacity, 4096)), dtype=np.float64)
        self._count = 0
        self._extremes = {line: Extremes() for line in (VOLTS, AMPS)}
        self.dropped = 0
        """How many were let go."""

    def __len__(self) -> int:
        return min(self._count, self._capacity)

    def append(self, t_s: Floats | list[float], volts: Floats | list[float], amps: Floats | list[float]) -> None:
        """Of one length, or ValueError. Times never fall."""
        fresh = np.array((t_s, volts, amps), dtype=np.float64)
        left_out = max(0, fresh.shape[1] - self._capacity)
        if left_out:
            self.dropped += self._count + left_out
            self._count = 0
            fresh = fresh[:, left_out:]
        need = fresh.shape[1]
        if self._count + need > self._rows.shape[1]:
            self._make_room(need)
        self._rows[:, self._count : self._count + need] = fresh
        self._count += need
        self._note_extremes()

    def _make_room(self, need: int) -> None:
        if self._rows.shape[1] < 2 * self._capacity:
            wider = min(2 * self._capacity, max(2 * self._rows.shape[1], self._count + need))
            self._rows = np.concatenate((self._rows, np.empty((3, wider - self._rows.shape[1]))), axis=1)
        if self._count + need > self._rows.shape[1]:
            keep = self._capacity
            self._rows[:, :keep] = self._rows[:, self._count - keep : self._count].copy()
            self.dropped += self._count - keep
            self._count = keep

    def _note_extremes(self) -> None:
        whole = (self.dropped + self._count) // BLOCK
        for line, extremes in self._extremes.items():
            begin = max(len(extremes), -(-self.dropped // BLOCK))
            if begin < whole:
                values = self._rows[line, begin * BLOCK - self.dropped : whole * BLOCK - self.dropped]
                extremes.note(values, begin)

    def clear(self) -> None:
        self._count = 0
        self.dropped = 0
        for extremes in self._extremes.values():
            extremes.clear()

    @property
    def first_index(self) -> int:
        """The number, since the run began, of the oldest reading handed out."""
        return self.dropped + self._count - len(self)

    @property
    def t_s(self) -> Floats:
        return self._kept(0)

    @property
    def volts(self) -> Floats:
        return self._kept(VOLTS)

    @property
    def amps(self) -> Floats:
        return self._kept(AMPS)

    def outline(self, line: int, low_s: float, high_s: float, columns: int) -> tuple[Floats, Floats]:
        """Times and values that draw `line` from `low_s` to `high_s`, and one reading more at either side."""
        t_s, values, first = self.t_s, self._kept(line), self.first_index
        begin, end = t_s.searchsorted([low_s, high_s])
        begin, end = max(0, int(begin) - 1), min(t_s.size, int(end) + 1)
        places = outline(values, first, self._extremes[line], first + begin, first + end, columns)
        return t_s[places], values[places]

    def _kept(self, row: int) -> Floats:
        return self._rows[row, self._count - len(self) : self._count]
