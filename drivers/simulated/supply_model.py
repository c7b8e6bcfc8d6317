"""The output stage of a bench supply: what the terminals do for given setpoints, protections and load.

One quadrant: it sources current and cannot sink it; only the preload, and after switching off the bleed, pull the
terminals down. The output capacitor sits behind the current sense, so at the limit into an open load the volts climb
with C dV/dt = I, and a load that suddenly grows is first fed from the capacitor. Each step is implicit in the volts,
so that neither a short nor a small capacitor can make it unstable. All sizes are this simulation's own choices.
"""

import math
import random
from enum import Enum

import msgspec

from drivers.simulated.loads import Load, slow


class ArrayData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A measurement array: its shortest interval, what its clock can divide time into, and its room."""

    least_interval_s: float = 2e-4
    interval_step_s: float = 1e-5
    most_points: int = 4096


class SupplyData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Ranges, output stage and meter of one supply. `clients` 0: any number at once. `array`: None, it has none.

    `limit_headroom`: share (and tenths of an ampere) by which the current may pass its limit until the current loop
    has caught up, which takes a few `limit_lag_s`; with 0 the limit binds within a step.
    """

    volts_max: float = 30.0
    amps_max: float = 5.0
    farads: float = 100e-6
    preload_ohm: float = 1000.0
    bleed_ohm: float = 4700.0
    setpoint_lag_s: float = 0.002
    slew_v_per_s: float = 3000.0
    limit_lag_s: float = 0.0005
    limit_headroom: float = 0.1
    window_s: float = 0.02
    noise_v: float = 0.001
    noise_a: float = 0.001
    step_v: float = 0.001
    step_a: float = 0.001
    offset_v: float = 0.002
    offset_a: float = 0.002
    gain: float = 0.0005
    clients: int = 0
    ignore_off: int = 0
    volts_on_terminals: float = 0.0
    terminals_ohm: float = 0.5
    array: ArrayData | None = None


class Mode(Enum):
    """What holds the terminals in the last step."""

    OFF = "off"
    CV = "CV"
    CC = "CC"
    FLOATING = "floating"


class Trip(Enum):
    """Which latch switched the output off."""

    OVER_VOLTS = "over-voltage"
    OVER_AMPS = "over-current"


MASK_S = 0.1
"""Over-current is usually not looked at for this long after a setpoint change or switching on. Common practice, no
source."""
CLAMP_V = -0.7
"""The diode across the output keeps the terminals from going further negative."""


class OutputStage:
    """State of the output. `volts` and `amps` are at the terminals; `reference_v` is what the voltage loop follows."""

    __slots__ = (
        "_cap_a",
        "_data",
        "_lag_known",
        "_limit_error",
        "_mask_left_s",
        "_volts_error",
        "amps",
        "limit_a",
        "mask_s",
        "mode",
        "over_amps",
        "over_amps_on",
        "over_volts",
        "over_volts_on",
        "reference_v",
        "set_v",
        "settled",
        "trip",
        "volts",
        "wanted_on",
    )

    def __init__(self, data: SupplyData, source: random.Random) -> None:
        self._data = data
        self._volts_error = (1.0 + source.uniform(-data.gain, data.gain), source.uniform(-0.5, 0.5) * data.offset_v)
        self._limit_error = (1.0 + source.uniform(-data.gain, data.gain), source.uniform(-0.5, 0.5) * data.offset_a)
        self.volts = self.amps = self.reference_v = 0.0
        self._lag_known = (-1.0, 0.0, 0.0, 0.0)
        self._mask_left_s = 0.0
        self.mask_s = MASK_S
        self.trip: Trip | None = None
        self.settled = False
        self.mode = Mode.OFF
        self.reset()

    @property
    def on(self) -> bool:
        """Whether the output is truly on: wanted, and no latch has tripped."""
        return self.wanted_on and self.trip is None

    def reset(self) -> None:
        """Power-on state: 0 V, a tenth of the current range, off, over-voltage latch at its maximum."""
        data = self._data
        self.set_v = 0.0
        self.limit_a = 0.1 * data.amps_max
        self.over_volts, self.over_volts_on = 1.1 * data.volts_max, True
        self.over_amps, self.over_amps_on = 1.1 * data.amps_max, False
        self.wanted_on = False
        self._cap_a = self.limit_a
        self.settled = False

    def change(self, *, set_v: float | None = None, limit_a: float | None = None) -> None:
        """New setpoints, within range."""
        if set_v is not None:
            self.set_v = set_v
        if limit_a is not None:
            self.limit_a = limit_a
        self._mask_left_s = self.mask_s
        self.settled = False

    def switch(self, on: bool) -> None:
        """The output relay. Switching on starts softly from whatever the terminals have."""
        if on and not self.wanted_on:
            self._start_softly()
        self.wanted_on = on
        self.settled = False

    def clear(self) -> None:
        """Takes the latch back. The output returns to what was last wanted of it, as many supplies do."""
        if self.trip is not None:
            self.trip = None
            if self.wanted_on:
                self._start_softly()
        self.settled = False

    def step(self, load: Load, step_s: float) -> None:
        """One step of supply and load together."""
        data = self._data
        per_volt = data.farads / step_s
        intercept, slope = load.affine(step_s)
        before = self.volts
        charge = per_volt * before - intercept
        if not self.on:
            self.mode = Mode.OFF
            volts = charge / (per_volt + 1.0 / data.bleed_ohm + slope)
            self.reference_v = max(0.0, volts)
        else:
            volts = self._regulated(charge, per_volt, slope, step_s)
        if volts < CLAMP_V:
            volts = CLAMP_V
        self.volts = volts
        self.amps = load.commit(volts, step_s)
        self.settled = load.settled and slow(before, volts, step_s)
        self._watch(step_s)

    def _regulated(self, charge: float, per_volt: float, slope: float, step_s: float) -> float:
        lag, fall, rise = self._lags(step_s)
        target = max(0.0, self.set_v * self._volts_error[0] + self._volts_error[1]) if self.set_v > 0.0 else 0.0
        move = (target - self.reference_v) * lag
        most = self._data.slew_v_per_s * step_s
        self.reference_v += min(most, max(-most, move))
        if abs(target - self.reference_v) < 1e-7:
            self.reference_v = target
        limit = max(0.0, self.limit_a * self._limit_error[0] + self._limit_error[1]) if self.limit_a > 0.0 else 0.0
        asked = (per_volt + slope) * self.reference_v - charge  # into capacitor and load, to be at the reference
        if asked > self._cap_a:
            self.mode = Mode.CC
            volts = (charge + self._cap_a) / (per_volt + slope)
        elif asked + self.reference_v / self._data.preload_ohm < 0.0:
            self.mode = Mode.FLOATING
            volts = charge / (per_volt + 1.0 / self._data.preload_ohm + slope)
        else:
            self.mode = Mode.CV
            volts = self.reference_v
        # The current loop winds up while it has nothing to do, so the limit binds only after a while.
        if asked > limit:
            self._cap_a += (limit - self._cap_a) * fall
        else:
            self._cap_a += (limit + self._data.limit_headroom * (limit + 0.1) - self._cap_a) * rise
        return volts

    def _lags(self, step_s: float) -> tuple[float, float, float]:
        known = self._lag_known
        if known[0] != step_s:
            data = self._data
            known = (
                step_s,
                1.0 - math.exp(-step_s / data.setpoint_lag_s),
                1.0 - math.exp(-step_s / data.limit_lag_s),
                1.0 - math.exp(-step_s / (5.0 * data.limit_lag_s)),
            )
            self._lag_known = known
        return known[1], known[2], known[3]

    def _watch(self, step_s: float) -> None:
        if self._mask_left_s > 0.0:
            self._mask_left_s -= step_s
        if not self.on:
            return
        if self.over_volts_on and self.volts > self.over_volts:
            self.trip = Trip.OVER_VOLTS
        elif self.over_amps_on and self._mask_left_s <= 0.0 and self.amps > self.over_amps:
            self.trip = Trip.OVER_AMPS

    def _start_softly(self) -> None:
        self.reference_v = max(0.0, min(self.volts, self.set_v))
        self._cap_a = self.limit_a
        self._mask_left_s = self.mask_s
