"""A second motor for the simulated bench, independent of the first: another method, and things the first leaves out.

The first propagates the linear equations exactly between events. This one steps them with the theta method and adds
cogging, brush noise and a constant drop at the brushes. It stands in the bench through the same small protocol.
"""

import contextlib
import math
import random
from collections.abc import Iterator
from dataclasses import dataclass

import drivers.simulated.bench
from drivers.simulated.contact import Contact
from drivers.simulated.joint import Joint
from drivers.simulated.motor import MotorData

NOISE_CORRELATION_S = 0.003
COGS = 7
DROP_FULL_SHARE = 0.01
"""Of the stall current: where half of the drop at the brushes is reached. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Extras:
    """What the first solver does not have.

    `cogging`: torque that swings with angle, share of the friction. `brush_volts`: constant drop. `brush_noise`: rms
    share of R while turning. `twist`: share by which R changes with the torque on a held shaft.
    """

    cogging: float = 0.0
    brush_volts: float = 0.0
    brush_noise: float = 0.0
    twist: float = 0.0


class ThetaMotor:
    """Amps, speed (rad/s), angle, temperatures: as `drivers.simulated.motor.Motor`, by other means."""

    def __init__(self, data: MotorData, rated_volts: float, source: random.Random, extras: Extras = Extras()) -> None:
        stall_a = rated_volts / data.ohms
        self.data, self.extras, self._source = data, extras, source
        self._stall_a = stall_a
        self._static_nm = max(data.static_nm, data.coulomb_nm)
        self.joint = Joint(data.joint, stall_a * data.k, self._static_nm) if data.joint else None
        self.contact = Contact(data.contact, stall_a, source) if data.contact else None
        self.amps = self.speed = self.angle_rad = 0.0
        self.winding_c = self.housing_c = data.ambient_c
        self.settled = False
        self._noise = 0.0
        self.ohms = self._ohms_now(0.0)
        self._a = self._g = 0.0
        self._step = (0.0, 0.0, 0.0)

    @property
    def holding(self) -> bool:
        return self.joint is not None and self.joint.holding

    def affine(self, step_s: float) -> tuple[float, float]:
        """Amps at the end of a step are a + g * volts, unless the shaft stops or starts in it."""
        data, ohms, inductance = self.data, self.ohms, self.data.henries
        theta = 0.5 if step_s <= 1.5 * inductance / ohms else 1.0
        # Carbon: nearly constant at a working current, and none at no current. Lagged by a step, as a resistance.
        ohms += self.extras.brush_volts / (abs(self.amps) + DROP_FULL_SHARE * self._stall_a)
        h = step_s / inductance
        if self.speed == 0.0:
            below = 1.0 + h * theta * ohms
            self._a = self.amps * (1.0 - h * (1.0 - theta) * ohms) / below
            self._g = h / below
            self._step = (theta, 0.0, 0.0)
            return self._a, self._g
        # speed at the end: w1 = p + q * i1
        friction = math.copysign(self._drag_nm(), self.speed)
        hj = step_s / data.inertia
        wb = 1.0 + hj * theta * data.viscous
        q = hj * theta * data.k / wb
        p = (
            self.speed * (1.0 - hj * (1.0 - theta) * data.viscous)
            + hj * ((1.0 - theta) * data.k * self.amps - friction)
        ) / wb
        below = 1.0 + h * theta * ohms + h * theta * data.k * q
        known = self.amps * (1.0 - h * (1.0 - theta) * ohms) - h * (data.k * ((1.0 - theta) * self.speed + theta * p))
        self._a, self._g = known / below, h / below
        self._step = (theta, p, q)
        return self._a, self._g

    def commit(self, volts: float, step_s: float) -> float:
        before = self.amps
        amps = self._a + self._g * volts
        if self.speed == 0.0:
            held_nm = self._breakaway_nm()
            if abs(amps) * self.data.k > held_nm:
                if self.joint is not None:
                    self.joint.give_way(self.angle_rad)
                torque = self.data.k * amps - math.copysign(self._drag_nm(), amps)
                self.speed = torque * step_s / self.data.inertia
                if self.speed * amps <= 0.0:
                    self.speed = 0.0
                self._turn(0.5 * self.speed * step_s)
            elif self.joint is not None:
                self.joint.stand(self.data.k * amps, self._static_nm + self.joint.drag_nm, step_s)
            self.settled = self.speed == 0.0 and abs(amps - before) < 1e-6 + 0.3 * step_s * abs(amps)
        else:
            speed = self._step[1] + self._step[2] * amps
            if speed * self.speed <= 0.0:
                self.speed = 0.0
            else:
                by_rad = 0.5 * (speed + self.speed) * step_s
                self.speed = speed
                self._turn(by_rad)
            self.settled = False
        self.amps = amps
        self._warm(0.5 * (before + amps), step_s)
        return amps

    def _turn(self, by_rad: float) -> None:
        self.angle_rad += by_rad
        if self.joint is not None and self.joint.turn(by_rad, self.angle_rad):
            self.speed = 0.0

    def _breakaway_nm(self) -> float:
        joint = self.joint
        if joint is None:
            return self._static_nm
        return self._static_nm + joint.drag_nm + (joint.hold_nm if joint.holding else 0.0)

    def _drag_nm(self) -> float:
        cog = 1.0 + self.extras.cogging * math.sin(COGS * self.angle_rad)
        return self.data.coulomb_nm * cog + (self.joint.drag_nm if self.joint is not None else 0.0)

    def _warm(self, amps: float, step_s: float) -> None:
        data = self.data
        flow = (self.winding_c - self.housing_c) / data.winding_k_per_w
        heating = amps * amps * self._copper_ohms()
        self.winding_c += step_s * (heating - flow) / data.winding_j_per_k
        self.housing_c += (
            step_s * (flow - (self.housing_c - data.ambient_c) / data.housing_k_per_w) / data.housing_j_per_k
        )
        if self.speed != 0.0 and self.extras.brush_noise:
            keep = math.exp(-step_s / NOISE_CORRELATION_S)
            self._noise = keep * self._noise + math.sqrt(1 - keep * keep) * self._source.gauss(0.0, 1.0)
        self.ohms = self._ohms_now(step_s)

    def _copper_ohms(self) -> float:
        return self.data.ohms * (1.0 + self.data.copper_per_k * (self.winding_c - 20.0))

    def _ohms_now(self, step_s: float) -> float:
        ohms = self._copper_ohms()
        if self.extras.twist and self.speed == 0.0:
            ohms *= 1.0 + self.extras.twist * min(1.0, abs(self.amps) / self._stall_a)
        if self.contact is not None:
            ohms = ohms * self.contact.factor(self.angle_rad) + self.contact.added_ohm(self.amps, step_s)
        if self.speed != 0.0 and self.extras.brush_noise:
            ohms *= max(0.3, 1.0 + self.extras.brush_noise * self._noise)
        return ohms


@contextlib.contextmanager
def second_motor(extras: Extras) -> Iterator[None]:
    """Benches made meanwhile have this motor."""
    place = vars(drivers.simulated.bench)
    first = place["Motor"]
    place["Motor"] = lambda data, rated, source: ThetaMotor(data, rated, source, extras)
    try:
        yield
    finally:
        place["Motor"] = first
