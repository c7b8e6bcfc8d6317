"""Readings of one run, kept for drawing: appended as they come, handed out as contiguous arrays.

The newest `capacity` readings are kept. The record on disk keeps them all; this is only what the chart can show.
"""

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


class Readings:
    """A ring laid out flat: twice the room, moved down when full, so that a view never wraps."""

    def __init__(self, capacity: int = 1 << 18) -> None:
        if capacity < 1:
            raise ValueError(f"capacity: {capacity} is below 1")
        self._capacity = capacity
        self._rows = np.empty((3, min(2 * capacity, 4096)), dtype=np.float64)
        self._count = 0
        self.dropped = 0
        """How many were let go."""

    def __len__(self) -> int:
        return min(self._count, self._capacity)

    def append(self, t_s: Floats | list[float], volts: Floats | list[float], amps: Floats | list[float]) -> None:
        """Of one length, or ValueError. Times never fall."""
        fresh = np.array((t_s, volts, amps), dtype=np.float64)
        self.dropped += max(0, fresh.shape[1] - self._capacity)
        fresh = fresh[:, -self._capacity :]
        need = fresh.shape[1]
        if self._count + need > self._rows.shape[1]:
            self._make_room(need)
        self._rows[:, self._count : self._count + need] = fresh
        self._count += need

    def _make_room(self, need: int) -> None:
        if self._rows.shape[1] < 2 * self._capacity:
            wider = min(2 * self._capacity, max(2 * self._rows.shape[1], self._count + need))
            self._rows = np.concatenate((self._rows, np.empty((3, wider - self._rows.shape[1]))), axis=1)
        if self._count + need > self._rows.shape[1]:
            keep = self._capacity
            self._rows[:, :keep] = self._rows[:, self._count - keep : self._count].copy()
            self.dropped += self._count - keep
            self._count = keep

    def clear(self) -> None:
        self._count = 0
        self.dropped = 0

    @property
    def first_index(self) -> int:
        """The number, since the run began, of the oldest reading handed out."""
        return self.dropped + self._count - len(self)

    @property
    def t_s(self) -> Floats:
        return self._kept(0)

    @property
    def volts(self) -> Floats:
        return self._kept(1)

    @property
    def amps(self) -> Floats:
        return self._kept(2)

    def _kept(self, row: int) -> Floats:
        return self._rows[row, self._count - len(self) : self._count]
