"""An upper bound of the winding temperature, one reading at a time.

Of an unknown motor neither the winding's heat capacity C nor its heat resistance to the housing is known, only bounds:
C is at least what a heating rate of 60 K/s at stall allows, the resistance is at most 40 K/W, and the housing holds at
least ten times the winding's least heat. A pulse of energy E then leaves, a time t later, at most

    sup over C >= C_least of E/C exp(-t / (C R))   +   E / C_housing
  = E/C_least exp(-t / (C_least R))  for t <= C_least R,  else  E R / (e t),   + E / C_housing

and the sum of these bounds over all pulses is a bound of the sum. All heat is charged to the winding.

Source: the sup is calculus; 60 K/s, 40 K/W and the limits of C are starting values of this project (60 K/s is copper
at 110 A/mm² at stall, from dT/dt = 0.005 J² K/s). A motor that heats faster than that at stall is not covered.
"""

import math
from collections import deque

STALL_RATE_K_S = 60.0
C_LEAST_J_K, C_MOST_J_K = 0.2, 10.0
R_MOST_K_W = 40.0
HOUSING_TIMES = 10.0
CONTACT_AND_HEAT = 2.2
"""How many times its known resistance a winding may have: contact up to twice as bad, and copper warmer."""
READBACK_K = 0.1
"""K: what the error of the readback may hide of the first small powers; of larger ones the housing's share bears it."""
_FINE_S, _COARSE_S = 0.1, 2.0
_FINE_FOR_S = 3.0
_RENEW_S = 0.05


def least_heat_capacity(stall_watts: float | None) -> float:
    """J/K: the least that the winding may hold, from the power at stall and rated volts; unknown: the smallest."""
    if stall_watts is None:
        return C_LEAST_J_K
    return min(C_MOST_J_K, max(C_LEAST_J_K, stall_watts / STALL_RATE_K_S))


class HeatBound:
    """The bound over time. Times in s of one monotonic clock, never backwards; energies in J; temperatures in °C."""

    def __init__(self, ambient_c: float, stall_watts: float | None = None) -> None:
        self.ambient_c = ambient_c
        self._c_least = least_heat_capacity(stall_watts)
        self._stall_watts = stall_watts
        self._pulses: deque[tuple[float, float]] = deque()  # (latest time of the pulse, J), coarse ones first
        self._fine: deque[tuple[float, float]] = deque()
        self._bound_k = 0.0
        self._bound_at_s = -math.inf

    def learn_stall_power(self, stall_watts: float) -> None:
        """The probe found the winding: the least heat capacity follows from it. It can only rise from unknown."""
        self._c_least = least_heat_capacity(stall_watts)
        self._stall_watts = stall_watts
        self._bound_at_s = -math.inf

    def stall_share(self, watts: float) -> float:
        """A power as a share of the stall power at rated volts; of the smallest winding's while that is unknown."""
        return watts / (self._stall_watts or STALL_RATE_K_S * C_LEAST_J_K)

    def add(self, at_s: float, joules: float) -> None:
        """Energy that went in up to `at_s`."""
        if joules <= 0:
            return
        self._bound_k += joules * (1 / self._c_least + 1 / (HOUSING_TIMES * self._c_least))
        if self._fine and at_s - self._fine[-1][0] < _FINE_S:
            # A pulse is taken at its latest instant, where it is hottest: merging can only raise the bound.
            self._fine[-1] = (at_s, self._fine[-1][1] + joules)
        else:
            self._fine.append((at_s, joules))
        while self._fine and at_s - self._fine[0][0] > _FINE_FOR_S:
            old_s, old_j = self._fine.popleft()
            if self._pulses and old_s - self._pulses[-1][0] < _COARSE_S:
                self._pulses[-1] = (old_s, self._pulses[-1][1] + old_j)
            else:
                self._pulses.append((old_s, old_j))

    def winding_c(self, at_s: float) -> float:
        """°C: no winding within the stated bounds is hotter. Renewed every 50 ms; between, only energy is added."""
        if at_s - self._bound_at_s > _RENEW_S:
            self._bound_k, self._bound_at_s = self._rise(at_s), at_s
        return self.ambient_c + READBACK_K + self._bound_k

    def winding_c_after(self, at_s: float, joules: float) -> float:
        """°C at a later time, and with `joules` more put in just then."""
        return self.ambient_c + READBACK_K + self._rise(at_s) + joules * self._share(0.0)

    def _rise(self, at_s: float) -> float:
        return sum(j * self._share(at_s - t) for t, j in self._pulses) + sum(
            j * self._share(at_s - t) for t, j in self._fine
        )

    def _share(self, age_s: float) -> float:
        """K/J that a pulse of this age still stands for at most."""
        constant_s = self._c_least * R_MOST_K_W
        body = math.exp(-age_s / constant_s) / self._c_least if age_s <= constant_s else R_MOST_K_W / (math.e * age_s)
        return body + 1 / (HOUSING_TIMES * self._c_least)


def winding_watts(volts: float, amps: float, reference_ohm: float | None) -> float:
    """W that may heat the winding: all that goes in, or what 2.2 times its known resistance turns to heat if less.

    A turning motor passes the rest on as work.
    """
    into = abs(volts * amps)
    return into if reference_ohm is None else min(into, amps * amps * CONTACT_AND_HEAT * reference_ohm)


def stall_watts_of(rated_volts: float, reference_ohm: float | None) -> float:
    """W at rated volts, rotor locked; of the smallest winding that is reckoned with where nothing is known."""
    return STALL_RATE_K_S * C_LEAST_J_K if reference_ohm is None else rated_volts**2 / reference_ohm
