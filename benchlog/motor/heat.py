"""An upper bound of the winding temperature, one reading at a time, for runs of seconds and of a day.

Of an unknown motor neither the winding's heat capacity C nor any heat resistance is known, only limits: C is at least
what a heating rate of 60 K/s at stall allows; from winding to housing it is at most 40 K/W; the housing holds at least
ten times the winding's least heat, and gives it to the air through no more than a compact body of that size would. What
one joule still stands for a time t later, z(t) in K/J, is then at most each of

    sup over C >= C_least of 1/C exp(-t / (C R))  +  1 / C_housing      nothing reaches the air
    R_all / (e t),  for t > T  R_all / T exp(-t / T)                     whatever the bodies are, it falls as it must

with R_all from winding to air and T = 30 min, the slowest that any part cools: a body that only conducts heat answers a
joule with a sum of falling exponentials whose area is R_all. So of all that went in, each watt counts at most for the s
it lasted times z, and all watts together never for more than R_all K/W: the temperature is at most what is left when
the largest watts take that area first. What goes in besides the winding's own heat, friction and iron losses, counts
as if it went into the winding too: brushes rub on the commutator, and iron loses in the armature. From there it warms
the winding at most as much as a joule in the winding itself (a potential is largest where the current goes in).

Source: the two limits of z are calculus; that z is such a sum: Foster's theorem for networks of resistances and
capacities, from memory. 60 K/s (copper at 110 A/mm² at stall, from dT/dt = 0.005 J² K/s), 40 K/W, ten times: starting
values of this project, as is T, which a motor of 1.5 kg has. A motor that heats faster at stall is not covered.
"""

import math
from dataclasses import dataclass

from benchlog.motor.pulses import Pulses

STALL_RATE_K_S = 60.0
C_LEAST_J_K, C_MOST_J_K = 0.2, 10.0
R_MOST_K_W = 40.0
HOUSING_TIMES = 10.0
AIR_K_W = 200.0
"""K/W from a housing of 1 J/K to still air, at most; it falls with the surface, as J/K to the power of 2/3. Source:
10 W/(m² K) on a body of 0.45 J/(g K) and 3 g/cm³, computed; a starting value of this project."""
THROUGH_SHARE = 0.4
"""Of the resistance to the air: from winding to housing at most, where the mass is known. Starting value."""
HOUSING_J_G_K = 0.35
"""J/(g K) of a motor's mass that is its housing's heat, at least: steel 0.46, copper 0.385, without the winding."""
MOST_J_G_K = 0.9
"""J/(g K): no motor's mass holds more; ferrite has 0.8."""
SLOWEST_S = 1800.0
CONTACT_AND_HEAT = 2.2
"""How many times its known resistance a winding may have: contact up to twice as bad, and copper warmer."""
READBACK_K = 0.1
"""K: what the error of the readback may hide of the first small powers; of larger ones the housing's share bears it."""
_RENEW_S = 0.05


def least_heat_capacity(stall_watts: float | None) -> float:
    """J/K: the least that the winding may hold, from the power at stall and rated volts; unknown: the smallest."""
    if stall_watts is None:
        return C_LEAST_J_K
    return min(C_MOST_J_K, max(C_LEAST_J_K, stall_watts / STALL_RATE_K_S))


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """The limits of what a motor may be: J/K of winding and housing at least, K/W to the housing and the air at most.

    `slowest_s`: the longest time constant of any of it.
    """

    winding_j_k: float
    housing_j_k: float
    through_k_w: float
    air_k_w: float
    slowest_s: float

    @property
    def all_k_w(self) -> float:
        return self.through_k_w + self.air_k_w

    def left_of_winding(self, age_s: float) -> float:
        """K/J that a joule put into the winding so long ago still stands for at most."""
        constant_s = self.winding_j_k * self.through_k_w
        if age_s <= constant_s:
            share = math.exp(-age_s / constant_s) / self.winding_j_k + 1 / self.housing_j_k
        else:
            share = self.through_k_w / (math.e * age_s) + 1 / self.housing_j_k
        if age_s <= 0:
            return share
        if age_s <= self.slowest_s:
            fallen = (self.through_k_w + self.air_k_w) / (math.e * age_s)
        else:
            fallen = (self.through_k_w + self.air_k_w) / self.slowest_s * math.exp(-age_s / self.slowest_s)
        return min(share, fallen)


def body_of(stall_watts: float | None, mass_g: float | None = None) -> Body:
    """What is known of a motor: the power at stall and rated volts, and what it weighs without a gear or a pump."""
    winding_j_k = least_heat_capacity(stall_watts)
    housing_j_k = max(HOUSING_TIMES * winding_j_k, HOUSING_J_G_K * (mass_g or 0.0))
    air_k_w = AIR_K_W * housing_j_k ** (-2 / 3)
    through_k_w, slowest_s = R_MOST_K_W, SLOWEST_S
    if mass_g is not None:
        through_k_w = min(R_MOST_K_W, THROUGH_SHARE * air_k_w)
        slowest_s = min(SLOWEST_S, MOST_J_G_K * mass_g * (air_k_w + through_k_w))
    return Body(
        winding_j_k=winding_j_k,
        housing_j_k=housing_j_k,
        through_k_w=through_k_w,
        air_k_w=air_k_w,
        slowest_s=slowest_s,
    )


class HeatBound:
    """The bound over time. Times in s of one monotonic clock, never backwards; energies in J; temperatures in °C."""

    def __init__(self, ambient_c: float, stall_watts: float | None = None, mass_g: float | None = None) -> None:
        self.ambient_c = ambient_c
        self._mass_g = mass_g
        self._stall_watts = stall_watts
        self._body = body_of(stall_watts, mass_g)
        self._pulses = Pulses()
        self._bound_k = 0.0
        self._bound_at_s = -math.inf

    def learn_stall_power(self, stall_watts: float) -> None:
        """The probe found the winding: the least heat capacity follows from it. It can only rise from unknown."""
        self._stall_watts = stall_watts
        self._body = body_of(stall_watts, self._mass_g)
        self._bound_at_s = -math.inf

    def stall_share(self, watts: float) -> float:
        """A power as a share of the stall power at rated volts; of the smallest winding's while that is unknown."""
        return watts / (self._stall_watts or STALL_RATE_K_S * C_LEAST_J_K)

    def add(self, at_s: float, joules: float, *, over_s: float = 0.0, rest_joules: float = 0.0) -> None:
        """Energy that went in up to `at_s`: into the winding, and beside it into the motor (`rest_joules`).

        `over_s`: how long it took at least, at its largest power; 0 where that is not known.
        """
        amount = joules + rest_joules
        if amount > 0:
            self._pulses.add(at_s, amount, amount / over_s if over_s > 0 else math.inf)
            self._bound_k += self.k_at_once(amount)

    def winding_c(self, at_s: float) -> float:
        """°C: no winding within the stated bounds is hotter. Renewed every 50 ms; between, only energy is added."""
        if at_s - self._bound_at_s > _RENEW_S:
            self._bound_k, self._bound_at_s = self._rise(at_s), at_s
        return self.ambient_c + READBACK_K + self._bound_k

    def winding_c_after(self, at_s: float, joules: float) -> float:
        """°C at a later time, and with `joules` more put into the winding just then."""
        return self.ambient_c + READBACK_K + self._rise(at_s) + self.k_at_once(joules)

    def k_at_once(self, joules: float) -> float:
        """K by which so much more, put in just now, raises the bound at most."""
        return joules * self._body.left_of_winding(0.0)

    def _rise(self, at_s: float) -> float:
        return self._pulses.rise_k(at_s, self._body.left_of_winding, self._body.all_k_w)

    @property
    def bins(self) -> int:
        """How many pulses are kept."""
        return len(self._pulses)


def winding_watts(volts: float, amps: float, reference_ohm: float | None) -> float:
    """W that may heat the winding: all that goes in, or what 2.2 times its known resistance turns to heat if less.

    A turning motor passes the rest on: as work, or as friction and iron losses, which may be in its rotor.
    """
    into = abs(volts * amps)
    return into if reference_ohm is None else min(into, amps * amps * CONTACT_AND_HEAT * reference_ohm)


def stall_watts_of(rated_volts: float, reference_ohm: float | None) -> float:
    """W at rated volts, rotor locked; of the smallest winding that is reckoned with where nothing is known."""
    return STALL_RATE_K_S * C_LEAST_J_K if reference_ohm is None else rated_volts**2 / reference_ohm
