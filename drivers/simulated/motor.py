"""A brushed DC motor between two leads: winding, rotor, friction, a joint that may hold it, and heat.

Seen from the leads, a step is affine: with the volts held over the step, amps at its end = a + g * volts. The supply
model uses that to find the volts; the motor then takes the step. Standstill and breakaway are events inside a step.
"""

import math
import random

import msgspec

from drivers.simulated.contact import Contact, ContactData
from drivers.simulated.joint import Joint, JointData
from drivers.simulated.loads import slow
from drivers.simulated.propagation import Propagator, crossing_s, turning

REFERENCE_C = 20.0
"""Temperature at which a motor's `ohms` hold."""
DRIFT = 1e-6
"""Relative change of resistance from which the step of a turning rotor is worked out anew."""
EVENTS_A_STEP = 12


class MotorData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """SI units. `ohms` with brushes at 20 °C; `k` is torque and EMF constant; `static_nm` holds a resting shaft even
    without a joint and is at least `coulomb_nm`. Thermal: winding and housing in J/K, winding-to-housing and
    housing-to-air in K/W. `copper_per_k`: 0.00393, annealed copper at 20 °C (NBS Handbook 100, published)."""

    ohms: float
    henries: float
    k: float
    inertia: float
    viscous: float = 0.0
    coulomb_nm: float = 0.0
    static_nm: float = 0.0
    copper_per_k: float = 0.00393
    winding_j_per_k: float = 5.0
    housing_j_per_k: float = 60.0
    winding_k_per_w: float = 6.0
    housing_k_per_w: float = 12.0
    ambient_c: float = 20.0
    joint: JointData | None = None
    contact: ContactData | None = None


class Motor:
    """State: `amps` through the leads, `speed` in rad/s, `angle_rad`, `winding_c`, `housing_c`, and its joint."""

    __slots__ = (
        "_contact",
        "_data",
        "_friction",
        "_intercept",
        "_known_ohms",
        "_known_step_s",
        "_propagator",
        "_slope",
        "_speed_intercept",
        "_speed_slope",
        "_static_nm",
        "_viscous",
        "amps",
        "angle_rad",
        "housing_c",
        "joint",
        "ohms",
        "settled",
        "speed",
        "winding_c",
    )

    def __init__(self, data: MotorData, rated_volts: float, source: random.Random) -> None:
        stall_a = rated_volts / data.ohms
        self._data = data
        self._static_nm = max(data.static_nm, data.coulomb_nm)
        self._viscous = data.viscous
        self.joint = Joint(data.joint, stall_a * data.k, self._static_nm) if data.joint else None
        self._contact = Contact(data.contact, stall_a, source) if data.contact else None
        self.amps = 0.0
        self.speed = 0.0
        self.angle_rad = 0.0
        self.winding_c = self.housing_c = data.ambient_c
        self.settled = False
        self._known_ohms = self._known_step_s = -1.0
        self._propagator: Propagator | None = None
        self._intercept = self._slope = self._friction = 0.0
        self._speed_intercept = self._speed_slope = 0.0
        self.ohms = self._ohms_now(0.0)

    @property
    def holding(self) -> bool:
        """Whether a joint holds the shaft."""
        return self.joint is not None and self.joint.holding

    def affine(self, step_s: float) -> tuple[float, float]:
        """(a, g): amps at the end of a step of `step_s` are a + g * volts, as long as no event falls into it."""
        if self.speed == 0.0:
            decay = math.exp(-step_s * self.ohms / self._data.henries)
            self._intercept = decay * self.amps
            self._slope = (1.0 - decay) / self.ohms
            return self._intercept, self._slope
        p = self._step_of(step_s)
        self._friction = self._drag_nm() if self.speed > 0.0 else -self._drag_nm()
        ii, iw, iv, it, wi, ww, wv, wt = p
        amps, speed, friction = self.amps, self.speed, self._friction
        self._intercept, self._slope = ii * amps + iw * speed - it * friction, iv
        self._speed_intercept, self._speed_slope = wi * amps + ww * speed - wt * friction, wv
        return self._intercept, iv

    def commit(self, volts: float, step_s: float) -> float:
        """Takes the step that `affine` described, at `volts`; returns the amps at its end."""
        before = self.amps
        if self.speed == 0.0:
            amps = self._intercept + self._slope * volts
            if abs(amps) * self._data.k > self._breakaway_nm():
                self._through_events(volts, step_s)
            else:
                self.amps = amps
                self._stand(step_s)
            self.settled = self.speed == 0.0 and slow(before, self.amps, step_s)
        else:
            speed = self._speed_intercept + self._speed_slope * volts
            if speed * self.speed <= 0.0:
                self._through_events(volts, step_s)
            else:
                self.amps = self._intercept + self._slope * volts
                self._turn(0.5 * (speed + self.speed) * step_s, speed)
            self.settled = False
        self._warm(0.5 * (before + self.amps), step_s)
        return self.amps

    def _through_events(self, volts: float, step_s: float) -> None:
        """The same step in pieces, cut where the shaft comes loose or comes to rest."""
        left = step_s
        for _ in range(EVENTS_A_STEP):
            if left <= 0.0:
                return
            left -= self._until_loose(volts, left) if self.speed == 0.0 else self._until_rest(volts, left)
        # A shaft that starts and stops this often within one step rests, for all that can be seen from outside.
        self.speed = 0.0

    def _until_loose(self, volts: float, step_s: float) -> float:
        """From standstill: goes on until the torque exceeds what holds the shaft, and sets it moving. Returns time."""
        final, tau = volts / self.ohms, self._data.henries / self.ohms
        breaking = self._breakaway_nm() / self._data.k
        if abs(self.amps) > breaking:
            used = 0.0
        else:
            wanted = math.copysign(breaking, final)
            used = crossing_s(self.amps, final, wanted, tau) if abs(final) > breaking else math.inf
        if used >= step_s:
            self.amps = final + (self.amps - final) * math.exp(-step_s / tau)
            self._stand(step_s)
            return step_s
        self.amps = final + (self.amps - final) * math.exp(-used / tau)
        if self.joint is not None:
            self.joint.give_way(self.angle_rad)
        way = math.copysign(1.0, self.amps if self.amps else volts)
        # A first short move gives the speed its sign; from there the linear step is exact.
        rest = step_s - used
        p = turning(self.ohms, self._data.henries, self._data.k, self._data.inertia, self._viscous, rest)
        friction = way * self._drag_nm()
        speed = p.wi * self.amps + p.wv * volts - p.wt * friction
        if speed * way <= 0.0:
            self.amps = final + (self.amps - final) * math.exp(-rest / tau)
            return step_s
        self.amps = p.ii * self.amps + p.iv * volts - p.it * friction
        self._turn(0.5 * speed * rest, speed)
        return step_s

    def _until_rest(self, volts: float, step_s: float) -> float:
        """From turning: goes on until the speed is zero, or to the end of the step. Returns the time it took."""
        friction = math.copysign(self._drag_nm(), self.speed)
        low, high = 0.0, step_s
        low_speed = self.speed
        high_speed = self._at(volts, friction, high)[1]
        if high_speed * self.speed > 0.0:
            amps, speed = self._at(volts, friction, step_s)
            self.amps = amps
            self._turn(0.5 * (self.speed + speed) * step_s, speed)
            return step_s
        for _ in range(60):
            if high - low < 1e-12 or low_speed == high_speed:
                break
            # Regula falsi held away from the ends: the speed is nearly straight over so short a time.
            middle = low + (high - low) * min(0.95, max(0.05, low_speed / (low_speed - high_speed)))
            speed = self._at(volts, friction, middle)[1]
            if speed * self.speed > 0.0:
                low, low_speed = middle, speed
            else:
                high, high_speed = middle, speed
        self.amps = self._at(volts, friction, high)[0]
        self._turn(0.5 * self.speed * high, 0.0)
        return high

    def _at(self, volts: float, friction_nm: float, after_s: float) -> tuple[float, float]:
        data = self._data
        p = turning(self.ohms, data.henries, data.k, data.inertia, self._viscous, after_s)
        return (
            p.ii * self.amps + p.iw * self.speed + p.iv * volts - p.it * friction_nm,
            p.wi * self.amps + p.ww * self.speed + p.wv * volts - p.wt * friction_nm,
        )

    def _step_of(self, step_s: float) -> Propagator:
        known = self._propagator
        if known is None or step_s != self._known_step_s or abs(self.ohms - self._known_ohms) > DRIFT * self.ohms:
            data = self._data
            known = turning(self.ohms, data.henries, data.k, data.inertia, self._viscous, step_s)
            self._propagator, self._known_step_s, self._known_ohms = known, step_s, self.ohms
        return known

    def _breakaway_nm(self) -> float:
        joint = self.joint
        if joint is None:
            return self._static_nm
        return self._static_nm + joint.drag_nm + (joint.hold_nm if joint.holding else 0.0)

    def _drag_nm(self) -> float:
        return self._data.coulomb_nm + (self.joint.drag_nm if self.joint is not None else 0.0)

    def _stand(self, step_s: float) -> None:
        if self.joint is not None:
            self.joint.stand(self._data.k * self.amps, self._static_nm + self.joint.drag_nm, step_s)

    def _turn(self, by_rad: float, speed: float) -> None:
        self.angle_rad += by_rad
        self.speed = speed
        if self.joint is not None and self.joint.turn(by_rad, self.angle_rad):
            self.speed = 0.0

    def _warm(self, amps: float, step_s: float) -> None:
        data = self._data
        flow = (self.winding_c - self.housing_c) / data.winding_k_per_w
        self.winding_c += step_s * (amps * amps * self._copper_ohms() - flow) / data.winding_j_per_k
        lost = (self.housing_c - data.ambient_c) / data.housing_k_per_w
        self.housing_c += step_s * (flow - lost) / data.housing_j_per_k
        self.ohms = self._ohms_now(step_s)

    def _copper_ohms(self) -> float:
        return self._data.ohms * (1.0 + self._data.copper_per_k * (self.winding_c - REFERENCE_C))

    def _ohms_now(self, step_s: float) -> float:
        ohms = self._copper_ohms()
        if self._contact is None:
            return ohms
        return ohms * self._contact.factor(self.angle_rad) + self._contact.added_ohm(self.amps, step_s)
