"""What may hang on the terminals besides a motor, each seen as an affine step: amps at its end = a + g * volts."""

import math
from typing import Protocol

import msgspec


class Load(Protocol):
    """Two leads. `affine` describes the next step, `commit` takes it at given volts and returns amps at its end."""

    amps: float
    settled: bool
    """True when only slow things still change, so that longer steps lose nothing."""

    def affine(self, step_s: float) -> tuple[float, float]: ...

    def commit(self, volts: float, step_s: float) -> float: ...


SLOW_PER_S = 0.3
"""Relative change a second that only heat causes: copper at 0.39 % per kelvin and 60 K/s stays below it."""


def slow(before: float, after: float, step_s: float) -> bool:
    """Whether a quantity changed over a step no faster than heat makes it."""
    return abs(after - before) < 1e-6 + SLOW_PER_S * step_s * abs(after)


class Resistor:
    """A plain resistance with its source behind it: a short, a leak, a cell (`emf_volts`) on the terminals."""

    __slots__ = ("_emf_volts", "_siemens", "amps", "settled")

    def __init__(self, ohms: float, emf_volts: float = 0.0) -> None:
        self._siemens = 1.0 / ohms
        self._emf_volts = emf_volts
        self.amps = 0.0
        self.settled = True

    def affine(self, step_s: float) -> tuple[float, float]:
        return -self._emf_volts * self._siemens, self._siemens

    def commit(self, volts: float, step_s: float) -> float:
        self.amps = (volts - self._emf_volts) * self._siemens
        return self.amps


class Diode:
    """A silicon diode as three straight pieces, conducting for positive volts.

    None below `knee_volts`; then `soft_ohm`; from `knee_volts` + `soft_volts` on `hard_ohm`. The step uses the piece
    the last volts lay on, which is at most one step late.
    """

    __slots__ = ("_pieces", "_volts", "amps", "settled")

    def __init__(
        self, knee_volts: float = 0.55, soft_ohm: float = 4.0, soft_volts: float = 0.1, hard_ohm: float = 0.5
    ) -> None:
        bend = knee_volts + soft_volts
        self._pieces = (
            (-math.inf, 0.0, 0.0),
            (knee_volts, -knee_volts / soft_ohm, 1.0 / soft_ohm),
            (bend, soft_volts / soft_ohm - bend / hard_ohm, 1.0 / hard_ohm),
        )
        self._volts = 0.0
        self.amps = 0.0
        self.settled = False

    def affine(self, step_s: float) -> tuple[float, float]:
        for begins, intercept, slope in reversed(self._pieces):
            if self._volts >= begins:
                return intercept, slope
        return 0.0, 0.0

    def commit(self, volts: float, step_s: float) -> float:
        self.settled = slow(self._volts, volts, step_s)
        self._volts = volts
        intercept, slope = self.affine(step_s)
        self.amps = intercept + slope * volts
        return self.amps


class DriverData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An electronic driver: nothing below `starts_at_volts`, stops below `stops_at_volts`, draws `watts` while it
    runs and `try_factor` times that in the first `try_s`. After the volts sagged it waits `hiccup_s` before it tries
    again."""

    starts_at_volts: float
    stops_at_volts: float
    watts: float
    hiccup_s: float = 0.25
    try_s: float = 0.03
    try_factor: float = 2.0
    lag_s: float = 0.002


class Driver:
    """State of an electronic driver: it waits, tries, and runs once a whole try went by without the volts sagging."""

    __slots__ = ("_data", "_on", "_since_s", "amps", "settled")

    def __init__(self, data: DriverData) -> None:
        self._data = data
        self._on = False
        self._since_s = data.hiccup_s
        self.amps = 0.0
        self.settled = True

    def affine(self, step_s: float) -> tuple[float, float]:
        return self.amps, 0.0

    def commit(self, volts: float, step_s: float) -> float:
        data = self._data
        self._since_s += step_s
        if self._on and volts < data.stops_at_volts:
            self._on, self._since_s = False, 0.0
        elif not self._on and volts >= data.starts_at_volts and self._since_s >= data.hiccup_s:
            self._on, self._since_s = True, 0.0
        wanted = data.watts / volts if self._on and volts > 0.0 else 0.0
        if self._on and self._since_s < data.try_s:
            wanted *= data.try_factor  # its own capacitors and rotor are still being filled
        self.amps += (wanted - self.amps) * (1.0 - math.exp(-step_s / data.lag_s))
        if not self._on and self.amps < 1e-6:
            self.amps = 0.0
        self.settled = not self._on and self.amps == 0.0 and volts < data.starts_at_volts
        return self.amps


class Parallel:
    """Several loads on the same two leads."""

    __slots__ = ("_loads", "amps", "settled")

    def __init__(self, loads: tuple[Load, ...]) -> None:
        self._loads = loads
        self.amps = 0.0
        self.settled = False

    def affine(self, step_s: float) -> tuple[float, float]:
        intercept = slope = 0.0
        for load in self._loads:
            a, g = load.affine(step_s)
            intercept += a
            slope += g
        return intercept, slope

    def commit(self, volts: float, step_s: float) -> float:
        self.amps = sum(load.commit(volts, step_s) for load in self._loads)
        self.settled = all(load.settled for load in self._loads)
        return self.amps


class Leads:
    """A load behind two leads that can be swapped."""

    __slots__ = ("_load", "amps", "settled", "way")

    def __init__(self, load: Load) -> None:
        self._load = load
        self.way = 1.0
        self.amps = 0.0
        self.settled = False

    def affine(self, step_s: float) -> tuple[float, float]:
        intercept, slope = self._load.affine(step_s)
        return self.way * intercept, slope

    def commit(self, volts: float, step_s: float) -> float:
        self.amps = self.way * self._load.commit(self.way * volts, step_s)
        self.settled = self._load.settled
        return self.amps
