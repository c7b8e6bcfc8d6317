"""How far the supply's readback can be trusted: its zero, its noise, its last digit."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

OFFSET_LEFT_V = 0.003
OFFSET_LEFT_A = 0.003
"""Offset that may be left after zeroing, V and A. Starting values of this project; a hand-held check is better."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Meter:
    """Zero readings with the output off, and what one reading is uncertain by.

    zero_*: mean, V and A. sigma_*: standard deviation of one reading. step_*: resolution. count: readings in the zero.
    """

    zero_volts: float
    zero_amps: float
    sigma_volts: float
    sigma_amps: float
    step_volts: float
    step_amps: float
    count: int

    @property
    def u_volts(self) -> float:
        """V: noise, rounding and offset of one reading, added."""
        return self.sigma_volts + self.step_volts / math.sqrt(12) + OFFSET_LEFT_V

    @property
    def u_amps(self) -> float:
        """A: noise, rounding and offset of one reading, added."""
        return self.sigma_amps + self.step_amps / math.sqrt(12) + OFFSET_LEFT_A


def zeroed(volts: Sequence[float], amps: Sequence[float], *, step_volts: float, step_amps: float) -> Meter:
    """A Meter from at least two readings with the output off and the motor at rest. Raises ValueError for fewer.

    A residual voltage on the terminals is not the meter's offset: no more than the offset that may be left is taken
    out of the volts.
    """
    if len(volts) < 2 or len(volts) != len(amps):
        raise ValueError("zeroing takes two readings or more")
    return Meter(
        zero_volts=max(-OFFSET_LEFT_V, min(OFFSET_LEFT_V, fmean(volts))),
        zero_amps=fmean(amps),
        sigma_volts=stdev(volts),
        sigma_amps=stdev(amps),
        step_volts=step_volts,
        step_amps=step_amps,
        count=len(volts),
    )
