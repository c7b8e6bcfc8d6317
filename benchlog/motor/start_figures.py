"""The figures of one start that are told, judged and filed: their names, units and intervals."""

from dataclasses import dataclass

import msgspec

from benchlog.motor.fit import Fitted


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureKind:
    """`label`: as people read it; `unit`: SI."""

    name: str
    label: str
    unit: str


FIGURES: tuple[FigureKind, ...] = (
    FigureKind(name="peak_amps", label="peak readback", unit="A"),
    FigureKind(name="run_up_s", label="run-up", unit="s"),
    FigureKind(name="steady_amps", label="steady current", unit="A"),
    FigureKind(name="energy_j", label="energy", unit="J"),
    FigureKind(name="ripple_amps", label="ripple", unit="A"),
)


class StartFigures(msgspec.Struct, frozen=True, kw_only=True):
    """Of one start, by the names in FIGURES; a figure that can't be told is in `why` with its reason instead.

    `interval_s`, `jitter_s`: s from reading to reading as achieved: mean and standard deviation.
    """

    values: dict[str, Fitted]
    why: dict[str, str]
    interval_s: float
    jitter_s: float
    readings: int
