"""What a start draws beyond its steady current, from readings that come too late and too seldom for its top.

What is above the steady current falls as exp(-t / tau), so that its logarithm is a straight line: through that line a
run-up and an energy do not depend on where in the fall the first reading happened to lie.
"""

import math
from dataclasses import dataclass

import numpy as np

from benchlog.motor.fit import Fitted
from benchlog.motor.startup import Start, Values, Zero, t95

RUN_UP_LEFT = 0.1
"""A run-up is over when this share of the way from the current's top to the steady current is left."""
LEAST_SURGE_SIGMAS = 5.0
"""The level at which a run-up is over must be this far above the steady current's ripple, or noise passes it."""
TOP_SHARE = 0.02
"""Of the surge: readings so close to its top are at the top, as on a current limit. Starting value of this project."""
FITTED_DOWN_TO = 0.05
"""Of the surge: readings below this are left out of the line. Starting value of this project."""
BENT_SHARE = 0.06
"""Of a run-up: brushes, cogging and warming bend the fall in ways that are no noise. Measured over the population."""
TOP_WITHIN_SETTLINGS = 1.6
"""The top comes within so many settling times of the setpoint: the supply's own capacitor is filled first. Measured
over the population."""
GAIN_VOLTS = 0.001
"""Share. Starting value of this project."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surge:
    """The line through the logarithm of what is above the steady current. `tau_s` with `u_share`, 95 %, of noise alone.

    `middle_s`, `log_amps`: a point of it; `top_amps`: the largest reading above the steady current; `held`: that was
    seen to last, as on a limit, so that the fall began where readings are.
    """

    tau_s: float
    u_share: float
    middle_s: float
    log_amps: float
    top_amps: float
    held: bool

    def amps_at(self, t_s: float) -> float:
        """A above the steady current, on the line."""
        return math.exp(min(self.log_amps - (t_s - self.middle_s) / self.tau_s, 50.0))


def surge_of(start: Start, amps: Values, steady_amps: float, noise_amps: float, zero: Zero) -> Surge | str:
    """Or why there is no line. `amps`: float64[n], readings less the zero."""
    above = amps - steady_amps
    top_amps = float(np.max(above))
    if top_amps < LEAST_SURGE_SIGMAS * noise_amps:
        return "over before the first reading of its own"
    top = int(np.flatnonzero(above >= (1 - TOP_SHARE) * top_amps - 3 * zero.sigma_amps)[-1])
    low = np.flatnonzero(above[top:] < max(FITTED_DOWN_TO * top_amps, 3 * noise_amps))
    end = top + int(low[0]) if len(low) else len(above)
    t_s, left = start.t_s[top:end], above[top:end]
    if len(t_s) < 2:
        return f"over within {float(start.t_s[min(top + 1, len(amps) - 1)]):.2g} s, between two readings"
    # A reading's logarithm is uncertain by its noise over its size.
    weight, log = left**2 / np.sum(left**2), np.log(left)
    middle_s, log_amps = float(np.sum(weight * t_s)), float(np.sum(weight * log))
    spread = float(np.sum(weight * (t_s - middle_s) ** 2))
    slope = float(np.sum(weight * (t_s - middle_s) * log)) / spread
    if slope >= 0:
        return "the current did not fall"
    free = max(len(t_s) - 2, 1)
    off = log - log_amps - slope * (t_s - middle_s)
    scatter = float(np.sum(weight * off**2)) * len(t_s) / free if len(t_s) > 2 else 0.0
    variance = max(scatter / len(t_s), noise_amps**2 / float(np.sum(left**2)))
    factor = t95(free) if len(t_s) > 2 else t95(math.inf)
    return Surge(
        tau_s=-1.0 / slope,
        u_share=factor * math.sqrt(variance / spread) / -slope,
        middle_s=middle_s,
        log_amps=log_amps,
        top_amps=top_amps,
        held=top > 0,
    )


def run_up(start: Start, surge: Surge, noise_amps: float, u_steady_amps: float) -> Fitted | str:
    """s after the setpoint, until a tenth of the way from the top to the steady current is left; or why not.

    Where the top was not read, it came within some settling times of the setpoint.
    """
    level = RUN_UP_LEFT * surge.top_amps
    if level < LEAST_SURGE_SIGMAS * noise_amps:
        return "lost in the ripple"
    if surge.held:
        value = surge.middle_s + surge.tau_s * (surge.log_amps - math.log(level))
        around_s = start.within_s
    else:
        around_s = 0.5 * TOP_WITHIN_SETTLINGS * start.settle_s
        value = around_s - surge.tau_s * math.log(RUN_UP_LEFT)
    if value > start.t_s[-1]:
        return "not over by the end"
    # A steady current that is off by u moves the level by as much, and the line with it.
    u_level = u_steady_amps / level * surge.tau_s
    half = math.hypot(surge.u_share * value, BENT_SHARE * value, u_level) + around_s
    if half > value:
        return f"somewhere below {value + half:.2g} s"
    return Fitted(value=value, low=max(0.0, value - half), high=value + half)


def energy(
    start: Start, amps: Values, steady_amps: float, surge: Surge | str, *, lead_ohm: float, zero: Zero, gain: float
) -> Fitted | str:
    """J at the motor until the last reading; or why not. What passed before the first one is on the surge's line."""
    watts = (start.volts - lead_ohm * amps) * amps
    if isinstance(surge, str):
        return f"the surge was not seen: {surge}"
    t_s, volts = start.t_s, float(np.median(start.volts)) - lead_ohm * steady_amps
    first_s = float(t_s[0])
    settle_s = min(start.settle_s, first_s)
    top_watts = float(watts[0])
    unseen = first_s * top_watts
    u_unseen = 0.0
    if not surge.held:
        at_first = volts * surge.amps_at(first_s)
        grown = math.expm1(min(first_s / surge.tau_s, 50.0))
        beyond = at_first * (surge.tau_s * grown - first_s)
        unseen += beyond
        top_watts += at_first * grown
        u_unseen = math.hypot(surge.u_share, BENT_SHARE) * (1 + first_s / surge.tau_s) * beyond
    unseen -= 0.5 * settle_s * top_watts  # it rises meanwhile, and does not jump
    u_rise = 0.5 * settle_s * top_watts
    lasted_s, last_watts = float(t_s[-1]), float(watts[-1])
    noise = 1.96 * zero.sigma_amps * volts * math.sqrt(lasted_s * max(lasted_s / len(t_s), start.window_s))
    seen, bent = _area(t_s, watts, volts * steady_amps)
    whole = seen + unseen
    u_zero, u_gain = zero.u_amps * volts * lasted_s, (gain + GAIN_VOLTS) * whole
    half = math.hypot(noise, u_zero, u_gain, u_unseen, u_rise, 0.5 * bent) + start.within_s * abs(
        top_watts - last_watts
    )
    if half > abs(whole):
        return "the surge was not seen: most of it was over before the first reading of its own"
    return Fitted(value=whole, low=whole - half, high=whole + half)


def _area(t_s: Values, watts: Values, steady_watts: float) -> tuple[float, float]:
    """J below the readings, each pair joined by an exponential towards the steady power where it falls towards it; and
    by how much straight lines would be more."""
    apart, above = np.diff(t_s), watts - steady_watts
    first, second = above[:-1], above[1:]
    falls = (second > 0.02 * float(np.max(above))) & (first > 1.001 * second)
    ratio = np.where(falls, first, 2.0) / np.where(falls, second, 1.0)
    straight = 0.5 * (first + second)
    mean = np.where(falls, (first - second) / np.log(ratio), straight)
    joined = float(np.sum(mean * apart))
    return joined + steady_watts * float(t_s[-1] - t_s[0]), abs(float(np.sum(straight * apart)) - joined)
