"""How warm the winding is, as an estimate with an interval; the guard's upper bound is heat.py.

While the shaft has not moved, resistance tells: t2 = R2/R1 (k + t1) - k. The brush contact changes by 5 to 100 % with
angle, and 2 % of R is 5 K, so after any movement the level says nothing: the next steady reading becomes the new
reference, at the interval believed just then, and only what changes after it counts. Between steady readings a two-body
model carries the value, and its constants are assumed; the interval then opens as fast as the fastest winding within
the limits of heat.py heats and cools.

Source: the relation and k, IEC 60034-1; the constants of the model and the limits are starting values of this project.
"""

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from benchlog.motor.heat import HOUSING_TIMES, HeatBound, least_heat_capacity, winding_watts
from benchlog.motor.meter import Meter
from benchlog.records import FLAG_ON, Trace

COPPER_K, ALUMINIUM_K = 235.0, 225.0
"""°C. Source: IEC 60034-1. Other texts use 234.5 for copper: 0.1 to 0.25 K apart at rises of 60 to 130 K."""
IDENTIFIABLE_K = 10.0
"""K: an interval that reaches further from its value is no estimate."""
R_LEAST_K_W = 3.0
"""K/W: no winding gives its heat to the housing more easily."""
ASSUMED_RATE_K_S = 10.0
_SIGMAS = 3.0  # many readings narrow one interval: two would be passed by chance
_STEADY_SHARE = 0.05
_LEAST_AMPS_U = 10.0


def warm_c(ohm: float, *, cold_ohm: float, cold_c: float, k: float = COPPER_K) -> float:
    """°C of a winding of `ohm` that had `cold_ohm` at `cold_c`. Ω above zero; k in °C of the metal."""
    return ohm / cold_ohm * (k + cold_c) - k


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoBody:
    """A winding in a housing. J/K, and K/W from winding to housing and from housing to the air; all above zero."""

    winding_j_k: float
    housing_j_k: float
    winding_k_w: float
    housing_k_w: float

    def step(self, winding_k: float, housing_k: float, watts: float, span_s: float) -> tuple[float, float]:
        """K above the air after `span_s` of steady power, exact for any span."""
        a = 1 / (self.winding_k_w * self.winding_j_k)
        b = 1 / (self.winding_k_w * self.housing_j_k)
        c = 1 / (self.housing_k_w * self.housing_j_k)
        mean = -(a + b + c) / 2
        apart = math.sqrt((a - b - c) ** 2 / 4 + a * b)
        fast = mean - apart
        slow = a * c / fast  # the product of both is a c: no difference of two near numbers
        e_slow, e_fast = math.exp(slow * span_s), math.exp(fast * span_s)
        both, odd = (e_slow + e_fast) / 2, (e_slow - e_fast) / (2 * apart)
        end_w, end_h = watts * (self.winding_k_w + self.housing_k_w), watts * self.housing_k_w
        w, h = winding_k - end_w, housing_k - end_h
        return (
            end_w + both * w + odd * ((-a - mean) * w + a * h),
            end_h + both * h + odd * (b * w + (-b - c - mean) * h),
        )


def assumed(stall_watts: float | None) -> TwoBody:
    """The middle of what is reckoned with, from the power at stall and rated volts."""
    least = least_heat_capacity(None)
    winding = least if stall_watts is None else min(10.0, max(least, stall_watts / ASSUMED_RATE_K_S))
    return TwoBody(winding_j_k=winding, housing_j_k=15 * winding, winding_k_w=11.0, housing_k_w=30.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """°C with the limits it lies between, and what it rests on, in words. `identifiable`: worth showing as a figure."""

    t_s: float
    winding_c: float
    low_c: float
    high_c: float
    basis: str

    @property
    def identifiable(self) -> bool:
        return max(self.high_c - self.winding_c, self.winding_c - self.low_c) <= IDENTIFIABLE_K


class Thermometer:
    """Fed with readings one by one. It begins with the winding at ambient, or between ambient and `warmest_c`.

    `stall_watts`: V²/R at rated volts. `lead_ohm`: taken out of every resistance. A reference from the probe need not
    be given: the first steady reading becomes it. Temperatures in °C, times in s of one clock.
    """

    def __init__(
        self,
        *,
        ambient_c: float,
        stall_watts: float,
        reference_ohm: float,
        meter: Meter,
        lead_ohm: float = 0.0,
        warmest_c: float | None = None,
        k: float = COPPER_K,
    ) -> None:
        self._ambient_c, self._reference_ohm, self._meter, self._lead_ohm, self._k = (
            ambient_c,
            reference_ohm,
            meter,
            lead_ohm,
            k,
        )
        self._bound = HeatBound(ambient_c, stall_watts)
        self._bodies = assumed(stall_watts)
        self._least_j_k = least_heat_capacity(stall_watts)
        self._fastest_s = self._least_j_k * R_LEAST_K_W
        # Warm from before: the bound knows no pulse of that, so it does not narrow what is given here.
        self._bound_c = warmest_c is None
        self._low_c, self._high_c = ambient_c, ambient_c if warmest_c is None else max(ambient_c, warmest_c)
        self._winding_k, self._housing_k = (self._low_c + self._high_c) / 2 - ambient_c, 0.0
        self._last: tuple[float, float, float] | None = None
        self._was_driven = False
        self._anchor: tuple[float, float, float, float, float] | None = None  # s, Ω, share of Ω, low and high °C
        self._moved_why = ""

    def feed(self, t_s: float, volts: float, amps: float, *, driven: bool, still: bool) -> Estimate:
        """The estimate at this reading. `driven`: on, with volts set. `still`: unmoved since the last reading.

        Volts, amps: zero taken out.
        """
        last, self._last = self._last, (t_s, volts, amps)
        if last is not None and t_s > last[0]:
            # What was driven at the last reading may have been until this one.
            self._carry(t_s, t_s - last[0], last, volts, amps, driven or self._was_driven)
        self._was_driven = driven
        if not still:
            self._anchor, self._moved_why = None, "the shaft may have moved"
        basis = "two-body model, constants assumed"
        if still and last is not None and self._steady(last, volts, amps):
            basis = self._from_resistance(t_s, volts, amps) or basis
        value_c = min(self._high_c, max(self._low_c, self._ambient_c + self._winding_k))
        self._winding_k = value_c - self._ambient_c
        found = Estimate(t_s=t_s, winding_c=value_c, low_c=self._low_c, high_c=self._high_c, basis=basis)
        if found.identifiable:
            return found
        why = self._moved_why or "nothing steady was read yet"
        reason = f"not identifiable: {why}, and the motor's heat constants are not known"
        return Estimate(t_s=t_s, winding_c=value_c, low_c=self._low_c, high_c=self._high_c, basis=reason)

    def _carry(
        self, t_s: float, span_s: float, last: tuple[float, float, float], volts: float, amps: float, driven: bool
    ) -> None:
        was = winding_watts(last[1], last[2], self._reference_ohm) if driven else 0.0
        now = winding_watts(volts, amps, self._reference_ohm) if driven else 0.0
        most_j = max(was, now) * span_s
        into = max(abs(last[1] * last[2]), abs(volts * amps)) if driven else 0.0
        rest_j = max(0.0, into * span_s - most_j)
        self._bound.add(t_s, most_j, over_s=span_s, rest_joules=rest_j)
        self._high_c += (most_j + rest_j) / self._least_j_k * (1 + 1 / HOUSING_TIMES)
        if self._bound_c:
            self._high_c = min(self._high_c, self._bound.winding_c(t_s))
        self._low_c = self._ambient_c + (self._low_c - self._ambient_c) * math.exp(-span_s / self._fastest_s)
        self._winding_k, self._housing_k = self._bodies.step(self._winding_k, self._housing_k, (was + now) / 2, span_s)

    def _steady(self, last: tuple[float, float, float], volts: float, amps: float) -> bool:
        return (
            amps > _LEAST_AMPS_U * self._meter.u_amps
            and volts > _LEAST_AMPS_U * self._meter.u_volts
            and abs(volts - last[1]) <= _STEADY_SHARE * volts
            and abs(amps - last[2]) <= _STEADY_SHARE * amps
        )

    def _from_resistance(self, t_s: float, volts: float, amps: float) -> str | None:
        ohm = volts / amps - self._lead_ohm
        share = _SIGMAS * math.hypot(self._meter.u_volts / volts, self._meter.u_amps / amps)
        if ohm <= 0:
            return None
        if self._anchor is None:
            self._anchor = (t_s, ohm, share, self._low_c, self._high_c)
            return None
        since_s, cold_ohm, cold_share, cold_low_c, cold_high_c = self._anchor
        unsure = math.hypot(share, cold_share)
        low_c = warm_c(ohm * (1 - unsure), cold_ohm=cold_ohm, cold_c=cold_low_c, k=self._k)
        high_c = warm_c(ohm * (1 + unsure), cold_ohm=cold_ohm, cold_c=cold_high_c, k=self._k)
        if low_c > self._high_c or high_c < self._low_c:
            self._anchor, self._moved_why = None, "the contact changed by more than heat explains"
            return None
        self._low_c, self._high_c = max(low_c, self._low_c), min(high_c, self._high_c)
        cold_c = (cold_low_c + cold_high_c) / 2
        self._winding_k = warm_c(ohm, cold_ohm=cold_ohm, cold_c=cold_c, k=self._k) - self._ambient_c
        return f"from resistance, shaft unmoved since {since_s:.1f} s"


def of_trace(trace: Trace, still: npt.NDArray[np.bool_], thermometer: Thermometer) -> list[Estimate]:
    """One Estimate for each reading of a filed trace. `still`: bool[n], as `Thermometer.feed` has it."""
    driven = ((trace.flags & FLAG_ON) > 0) & (trace.set_volts > 0)
    columns = (trace.t_s, trace.volts, trace.amps, driven, still)
    return [
        thermometer.feed(t_s, volts, amps, driven=on, still=unmoved)
        for t_s, volts, amps, on, unmoved in zip(*(column.tolist() for column in columns), strict=True)
    ]
