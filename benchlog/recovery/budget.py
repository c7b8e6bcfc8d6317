"""How much of the time-bound ceilings is used: energy and locked time in any minute, winding temperature, kicks."""

import math
from collections import deque
from collections.abc import Iterable
from typing import Any

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.motor.heat import CONTACT_AND_HEAT, READBACK_K, HeatBound, stall_watts_of, winding_watts
from benchlog.motor.motion import Motion
from benchlog.records import FLAG_ON, TICK_S, Trace
from benchlog.recovery.ceilings import Ceilings
from drivers.supply import Reading

WINDOW_S = 60.0
_BIN_S = 0.1
_MARGIN_K = 2.0
LEAST_STALL_A = 0.04
"""A: no motor that is reckoned with draws less, locked at its rated volts."""
OFF_WITHIN_S = 10.0
"""s: what it takes at most until an output is off that nobody reads any more, where it can be switched off."""

PLAIN_S = 900.0
"""s: what earlier runs put in longer ago is told in wider bins."""


class Pulse(msgspec.Struct, frozen=True, kw_only=True):
    """What an earlier run put in, up to `ago_s` before this one: J into the winding at most, s at stall power.

    `rest_joules`: J beside the winding's, into the motor; `over_s`: how long it took at least, 0 where nobody knows.
    """

    ago_s: float
    joules: float
    stall_s: float
    rest_joules: float = 0.0
    over_s: float = 0.0


class SlidingSum:
    """A sum over the last `WINDOW_S`, in bins of 0.1 s that leave the window late, never early."""

    def __init__(self) -> None:
        self._bins: deque[tuple[float, float, float]] = deque()  # first, last, amount
        self._total = 0.0

    def add(self, at_s: float, amount: float) -> None:
        if amount <= 0:
            return
        if self._bins and at_s - self._bins[-1][0] < _BIN_S:
            first_s, _, before = self._bins[-1]
            self._bins[-1] = (first_s, at_s, before + amount)
        else:
            self._bins.append((at_s, at_s, amount))
        self._total += amount

    def take_back(self, since_s: float) -> float:
        """Removes what was added since, and returns it. A bin that began earlier stays whole."""
        removed = 0.0
        while self._bins and self._bins[-1][0] >= since_s:
            removed += self._bins.pop()[2]
        self._total -= removed
        return removed

    def total(self, at_s: float) -> float:
        while self._bins and at_s - self._bins[0][1] > WINDOW_S:
            self._total -= self._bins.popleft()[2]
        if not self._bins:
            self._total = 0.0
        return self._total

    def wait_for(self, at_s: float, room: float) -> float:
        """s until no more than `room` is left in the window."""
        excess = self.total(at_s) - room
        for _, when, amount in self._bins:
            if excess <= 1e-12:
                return 0.0
            excess -= amount
            if excess <= 1e-12:
                return max(0.0, when + WINDOW_S + 0.01 - at_s)
        return 0.0 if excess <= 1e-12 else WINDOW_S


class Budget:
    """Charged with every reading.

    Locked time counts wherever the shaft is not known to turn, in seconds at stall power: a second at half the rated
    volts heats a quarter as much as one at all of them, and counts a quarter; one at 1.5 times counts 2.25.
    """

    def __init__(
        self,
        ceilings: Ceilings,
        *,
        ambient_c: float,
        rated_volts: float,
        kicks: int = 0,
        mass_g: float | None = None,
    ) -> None:
        self._ceilings = ceilings
        self._rated_volts = rated_volts
        self._heat = HeatBound(ambient_c, mass_g=mass_g)
        self._energy, self._locked, self._believed = SlidingSum(), SlidingSum(), SlidingSum()
        self._last: Reading | None = None
        self._reference_ohm: float | None = None
        self.kicks = kicks
        self.kicks_this_run = 0
        self.locked_total_s = 0.0
        self.turned = False
        """Whether motion was shown in this run."""

    def learn(self, reference_ohm: float) -> None:
        """The probe found a winding."""
        self._reference_ohm = reference_ohm
        self._heat.learn_stall_power(stall_watts_of(self._rated_volts, reference_ohm))

    def carry(self, now_s: float, earlier: Iterable[Pulse]) -> None:
        """What earlier runs put into this motor; the oldest first. Raises ValueError for one from the future."""
        for pulse in sorted(earlier, key=lambda one: -one.ago_s):
            if not pulse.ago_s >= 0:
                raise ValueError(f"a pulse of {pulse.ago_s} s ago")
            self._heat.add(now_s - pulse.ago_s, pulse.joules, over_s=pulse.over_s, rest_joules=pulse.rest_joules)
            self._energy.add(now_s - pulse.ago_s, pulse.joules)
            self._locked.add(now_s - pulse.ago_s, pulse.stall_s)

    def charge(self, reading: Reading, belief: Motion) -> None:
        """What went in between the last reading and this one, at the larger of their powers."""
        last, self._last = self._last, reading
        if last is None:
            return
        passed_s = reading.received_s - last.received_s
        if passed_s <= 0:
            return
        watts = max(winding_watts(r.volts, r.amps, self._reference_ohm) for r in (last, reading))
        # A reading that was no measurement is not charged: what was driven until the next one counts with that.
        driven = any(one.output_on and one.set_volts > 0 for one in (last, reading))
        joules = watts * passed_s if driven else 0.0
        rest_watts = max(abs(r.volts * r.amps) for r in (last, reading)) - watts
        rest_joules = max(0.0, rest_watts) * passed_s if driven else 0.0
        self._heat.add(reading.received_s, joules, over_s=passed_s, rest_joules=rest_joules)
        self._energy.add(reading.received_s, joules)
        if not driven:
            return
        if self._reference_ohm is None:
            share = max(self._share_unknown(r) for r in (last, reading))
        else:
            share = self._heat.stall_share(watts)
        locked_s = passed_s * share
        if belief is Motion.TURNING:
            self._believed.add(reading.received_s, locked_s)
            self._believed.total(reading.received_s)  # forgets what is older than a minute
            return
        self._locked.add(reading.received_s, locked_s)
        self.locked_total_s += locked_s

    def _share_unknown(self, reading: Reading) -> float:
        """Of the stall power, which follows from the volts whatever R is. None where too little flows for a stall."""
        ratio = abs(reading.volts) / self._rated_volts
        return ratio**2 if abs(reading.amps) > LEAST_STALL_A * ratio else 0.0

    def was_turning(self, since_s: float) -> None:
        """Motion was shown to have lasted since then: that time was not locked. The heat stays charged."""
        self.turned = True
        self.locked_total_s -= self._locked.take_back(since_s)

    def was_locked(self, since_s: float, at_s: float) -> None:
        """What was driven since then on the belief that it turned, of the last minute, counts as locked after all."""
        locked_s = self._believed.take_back(since_s - _BIN_S)
        self._locked.add(at_s, locked_s)
        self.locked_total_s += locked_s

    def count_kick(self) -> None:
        self.kicks += 1
        self.kicks_this_run += 1

    def energy_j(self, at_s: float) -> float:
        return self._energy.total(at_s)

    def locked_s(self, at_s: float) -> float:
        return self._locked.total(at_s)

    @property
    def ambient_c(self) -> float:
        return self._heat.ambient_c

    @property
    def warmest_c(self) -> float:
        """°C that the winding has at most at the last reading."""
        return self.ambient_c if self._last is None else self.winding_c(self._last.received_s)

    def winding_c(self, at_s: float) -> float:
        return self._heat.winding_c(at_s)

    def rest_for(self, at_s: float, *, joules: float) -> tuple[float, str]:
        """s to rest before so much more may go into a locked motor within every ceiling, and which one asks for it."""
        locked_s = self._heat.stall_share(joules)
        rests = {
            "locked time": self._locked.wait_for(at_s, 0.98 * self._ceilings.locked_s.value - locked_s),
            "energy": self._energy.wait_for(at_s, 0.95 * self._ceilings.energy_j.value - joules),
            "winding temperature": self._cooling_s(at_s, joules),
        }
        reason = max(rests, key=lambda name: rests[name])
        return rests[reason], reason

    def never_fits(self, joules: float) -> str | None:
        """Which ceiling so much at once passes even in a motor that has had all the rest it wants; None: it fits."""
        limit_k = self._ceilings.winding_c.value - _MARGIN_K - READBACK_K - self.ambient_c
        passed = {
            "locked time": self._heat.stall_share(joules) > 0.98 * self._ceilings.locked_s.value,
            "energy": joules > 0.95 * self._ceilings.energy_j.value,
            "winding temperature": self._heat.k_at_once(joules) > limit_k,
        }
        return next((name for name, is_passed in passed.items() if is_passed), None)

    def fits(self, at_s: float) -> tuple[float, str]:
        """J that may go into a locked motor now within every ceiling, and which one leaves the least."""
        limit_k = self._ceilings.winding_c.value - _MARGIN_K - self._heat.winding_c_after(at_s, 0.0)
        stall_watts = 1 / self._heat.stall_share(1.0)
        room = {
            "locked time": (0.98 * self._ceilings.locked_s.value - self.locked_s(at_s)) * stall_watts,
            "energy": 0.95 * self._ceilings.energy_j.value - self.energy_j(at_s),
            "winding temperature": limit_k / self._heat.k_at_once(1.0),
        }
        least = min(room, key=lambda name: room[name])
        return room[least], least

    def _cooling_s(self, at_s: float, joules: float) -> float:
        limit = self._ceilings.winding_c.value - _MARGIN_K
        rest = 0.0
        while rest < 300.0 and self._heat.winding_c_after(at_s + rest, joules) > limit:
            rest += max(0.25, 0.1 * rest)
        return rest


def pulses_of(
    trace: Trace,
    *,
    ended_ago_s: float,
    reference_ohm: float | None,
    rated_volts: float,
    off_ago_s: float | None = None,
) -> list[Pulse]:
    """What a filed run put in, in bins of 1 s or more, as `Budget.charge` would count it, the shaft not known to turn.

    A record that ends while driven, as one does that a crash cut short, counts as driven until the output is known to
    have been off. `ended_ago_s`, `off_ago_s`: from its last reading, and from then, to now; None: a few seconds later.
    Without a known resistance the seconds at stall power follow from the volts alone, as of a locked rotor.
    """
    if len(trace.sent) == 0:
        return []
    watts = into = np.abs(trace.volts * trace.amps)
    if reference_ohm is not None:
        watts = np.minimum(into, trace.amps**2 * CONTACT_AND_HEAT * reference_ohm)
    driving = ((trace.flags & FLAG_ON) > 0) & (trace.set_volts > 0)
    driven = driving[1:] | driving[:-1]
    at_s = trace.received * TICK_S
    most = np.maximum(watts[1:], watts[:-1])
    joules = np.where(driven, most * np.diff(at_s), 0.0)
    if reference_ohm is None:
        ratio = np.abs(trace.volts) / rated_volts
        stall_shares = np.where(np.abs(trace.amps) > LEAST_STALL_A * ratio, ratio**2, 0.0)
    else:
        stall_shares = watts / stall_watts_of(rated_volts, reference_ohm)
    stall_s = np.where(driven, np.maximum(stall_shares[1:], stall_shares[:-1]) * np.diff(at_s), 0.0)
    rest = np.maximum(0.0, np.maximum(into[1:], into[:-1]) - most)
    ages_s, bins = _bins(at_s[-1] - at_s[1:], most)
    total, total_s = np.bincount(bins, weights=joules), np.bincount(bins, weights=stall_s)
    total_rest = np.bincount(bins, weights=np.where(driven, rest * np.diff(at_s), 0.0))
    over_s = np.full(len(ages_s), np.inf)
    for spent, power in ((total, most), (total_rest, rest)):
        largest = np.zeros(len(ages_s))
        np.maximum.at(largest, bins[driven], power[driven])
        over_s = np.minimum(over_s, np.divide(spent, largest, out=np.full(len(spent), np.inf), where=largest > 0))
    pulses = [
        Pulse(
            ago_s=ended_ago_s + float(ages_s[k]),
            joules=float(total[k]),
            stall_s=float(total_s[k]),
            rest_joules=float(total_rest[k]),
            over_s=float(over_s[k]) if math.isfinite(over_s[k]) else 0.0,
        )
        for k in np.flatnonzero((total > 0) | (total_s > 0))
    ]
    if driving[-1]:
        off_s = ended_ago_s - OFF_WITHIN_S if off_ago_s is None else off_ago_s
        unseen_s = ended_ago_s - min(max(off_s, 0.0), ended_ago_s)
        pulses.append(
            Pulse(
                ago_s=ended_ago_s - unseen_s,
                joules=float(watts[-1]) * unseen_s,
                stall_s=float(stall_shares[-1]) * unseen_s,
                rest_joules=float(into[-1] - watts[-1]) * unseen_s,
                over_s=unseen_s,
            )
        )
    return pulses


def _bins(ages_s: npt.NDArray[np.float64], watts: npt.NDArray[np.float64]) -> tuple[Any, Any]:
    """The age of each bin at its newest, and which bin each of `ages_s` belongs to: float64[bins], int64[n].

    Older than `PLAIN_S` a bin spans a twentieth of its age and powers of about one size: a day is some hundred bins.
    """
    seconds = np.floor(ages_s)
    steps = np.floor(np.log(np.maximum(ages_s, PLAIN_S) / PLAIN_S) / math.log(1.05))
    sizes = np.floor(np.log(np.maximum(watts, 1e-9)) / math.log(1.5))
    keys = np.where(ages_s < PLAIN_S, seconds, 1e6 + 1e3 * steps + sizes)
    found, bins = np.unique(keys, return_inverse=True)
    newest_s = np.full(len(found), np.inf)
    np.minimum.at(newest_s, bins, seconds)
    return newest_s, bins
