"""What was true at the terminals, for tests to hold a program's claims against."""

from typing import TypeAlias

import msgspec


class ReadingTruth(msgspec.Struct, frozen=True, kw_only=True, tag_field="kind", tag="reading"):
    """One served measurement. `at_s` is the end of its window; `true_*` are exact means over the window.

    `speed` rad/s, signed; `holding`: a joint holds the shaft; `winding_c` is None without a motor.
    """

    at_s: float
    true_volts: float
    true_amps: float
    reported_volts: float
    reported_amps: float
    speed: float
    holding: bool
    winding_c: float | None
    output_on: bool


class OutputTruth(msgspec.Struct, frozen=True, kw_only=True, tag_field="kind", tag="output"):
    """The output went on or off. `why` is "command", "over-voltage" or "over-current"."""

    at_s: float
    on: bool
    why: str
    volts: float
    amps: float


class ArrayTruth(msgspec.Struct, frozen=True, kw_only=True, tag_field="kind", tag="array"):
    """One full measurement array: exact means over windows that follow one another, the first from `began_s` on."""

    began_s: float
    interval_s: float
    true_volts: tuple[float, ...]
    true_amps: tuple[float, ...]


Truth: TypeAlias = ReadingTruth | OutputTruth | ArrayTruth


class Extremes(msgspec.Struct, kw_only=True):
    """Running totals since the bench began. `stalled_s`: standing still with the output on and current in a motor.

    `energy_j`: through the terminals with the output on.
    """

    max_volts: float = 0.0
    max_amps: float = 0.0
    output_on_s: float = 0.0
    stalled_s: float = 0.0
    energy_j: float = 0.0
    max_winding_c: float | None = None
