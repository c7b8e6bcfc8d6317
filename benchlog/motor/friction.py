"""Friction split in two, as far as V and I tell: the part that is there at no speed, and the part that grows with it.

At a steady speed the torque K I is Coulomb friction and b w, and w = E/K with E = V - R I. So over holds at two or more
voltages the steady current is a line,

    I = I_C + G E,    I_C = T_C/K in A,    G = b/K² in A/V

K itself needs a speed. A load that grows faster than the speed, as a fan's does, makes I_C small or negative.
Source: textbook.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from benchlog.motor.fit import GAIN_AMPS, Fitted
from benchlog.motor.startup import STEADY_WITHIN, Z95, Values, Zero, t95, timing_of
from benchlog.records import FLAG_ON, TICK_S, Event, Trace

LEAST_HOLD_S = 0.8
LATE_SHARE, LATE_MOST_S = 0.5, 1.5
"""Of a hold, at its end: what its steady current is taken from; all of it where the time constant is known."""
LEAST_READINGS = 4
AT_VOLTS_SHARE = 0.02
"""A hold is at its setpoint within this: else the supply limits, or a rotor runs above it."""
LEAST_EMF_SHARE = 0.5
SAME_VOLTS_SHARE = 0.05
CONTACT_LOW, CONTACT_HIGH = 0.5, 1.25
"""Times the probe's resistance: what it may be while turning. At rest brushes can have twice that of the winding."""
BRUSH_DROP_SHARE = 0.05
"""Of the volts: what brushes may take whatever the current, so that E is less. Starting value of this project."""
TOLD_WITHIN = 0.25
"""Of the steady current: a part of it that is known no better than this is not told."""
NO_VOLTAGE = "the current was steady at no voltage"
ONE_VOLTAGE = "not identifiable from one voltage"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """The steady end of a hold: V at the terminals, A without the zero, and the 95 % of these A by itself."""

    volts: float
    amps: float
    u_amps: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Friction:
    """`coulomb_amps`: A that flow at no speed; `viscous_a_per_v`: A more for each volt of the rotor's own.

    None where they can't be told, and why. `at_volts`: of the steady holds, the lowest first.
    """

    coulomb_amps: Fitted | None
    viscous_a_per_v: Fitted | None
    why: str = ""
    at_volts: tuple[float, ...] = ()


def friction(
    trace: Trace,
    events: Iterable[Event],
    zero: Zero,
    *,
    from_s: float,
    ohm: Fitted | None,
    lead_ohm: float = 0.0,
    tau_s: float | None = None,
) -> Friction:
    """Out of the steady holds from `from_s`, s since the run began. `ohm`: of the probe, without leads; `tau_s`: the
    time constant of the run-up, with which the current also goes over to that of a lower hold."""
    if ohm is None:
        return Friction(coulomb_amps=None, viscous_a_per_v=None, why="needs the resistance of the probe")
    found = [
        hold
        for hold in holds_of(trace, events, zero, from_s, tau_s)
        if hold.volts - hold.amps * (ohm.high + lead_ohm) > LEAST_EMF_SHARE * hold.volts
    ]
    return split(found, ohm=ohm, lead_ohm=lead_ohm, u_zero_amps=zero.u_amps)


def holds_of(
    trace: Trace, events: Iterable[Event], zero: Zero, from_s: float = 0.0, tau_s: float | None = None
) -> list[Hold]:
    """Where the output stayed at one level above 0 V, at these volts, and the current had become steady."""
    window_s, settle_s = timing_of(events)
    on = (trace.flags & FLAG_ON) > 0
    level = np.where(on, trace.set_volts, 0.0)
    edges = np.flatnonzero(np.diff(level)) + 1
    holds = []
    for first, end in zip((0, *edges), (*edges, len(level)), strict=True):
        sent = trace.sent[first:end] * TICK_S
        if first == end or level[first] <= 0 or sent[0] < from_s:
            continue
        volts, amps = trace.volts[first:end], trace.amps[first:end] - zero.amps
        off_level = np.flatnonzero(np.abs(volts / level[first] - 1) > AT_VOLTS_SHARE)
        since = sent - window_s - sent[0]
        whole = since >= settle_s
        if len(off_level):  # a rotor that fed back until it had slowed
            whole[: int(off_level[-1]) + 1] = False
        if sent[-1] - sent[0] < LEAST_HOLD_S or whole.sum() < LEAST_READINGS:
            continue
        late_s = (LATE_SHARE if tau_s is None else 1.0) * float(since[-1] - since[whole][0])
        late = since >= since[-1] - min(LATE_MOST_S, late_s)
        hold = _hold(volts[late], amps[late], sent[late], window_s, zero, tau_s)
        if hold is not None:
            holds.append(hold)
    return holds


def _hold(volts: Values, amps: Values, at_s: Values, window_s: float, zero: Zero, tau_s: float | None) -> Hold | None:
    """None where the current was still changing, or is told by too few readings."""
    count = len(amps)
    if count < LEAST_READINGS:
        return None
    mean, of_mean, free = float(np.mean(amps)), 1 / count, 1
    if tau_s is not None:  # what is left of the way to the steady current is taken out
        shape = np.exp(-(at_s - at_s[0]) / tau_s)
        design = np.stack([np.ones(count), shape], axis=1)
        (mean, amplitude), *_ = np.linalg.lstsq(design, amps, rcond=None)
        amps, free = amps - amplitude * shape, 2
        of_mean = 1 / (count * float(np.var(shape))) * float(np.mean(shape**2)) if np.ptp(shape) > 0 else math.inf
    half = count // 2
    spread = max(float(np.sqrt(np.sum((amps - mean) ** 2) / (count - free))), zero.sigma_amps)
    changed = abs(float(np.mean(amps[:half])) - float(np.mean(amps[half:])))
    if changed > STEADY_WITHIN * abs(mean) + 2 * spread * math.sqrt(2 / half):
        return None
    # Readings closer than the averaging window tell the same thing more than once.
    overlap = max(1.0, window_s * (count - 1) / float(at_s[-1] - at_s[0]))
    noise = t95(max(1.0, count / overlap - free)) * spread * math.sqrt(of_mean * overlap)
    u_amps = math.hypot(noise, Z95 * zero.step_amps / math.sqrt(12), changed if tau_s is None else 0.0)
    return Hold(volts=float(np.mean(volts)), amps=float(mean), u_amps=u_amps)


def split(holds: Sequence[Hold], *, ohm: Fitted, lead_ohm: float = 0.0, u_zero_amps: float = 0.0) -> Friction:
    """The line through holds. `u_zero_amps`: how far off the zero of all of them may be, 95 %."""
    at_volts: list[float] = []
    for volts in sorted(hold.volts for hold in holds):
        if not at_volts or volts > (1 + SAME_VOLTS_SHARE) * at_volts[-1]:
            at_volts.append(volts)
    if len(at_volts) < 2:
        why = ONE_VOLTAGE if at_volts else NO_VOLTAGE
        return Friction(coulomb_amps=None, viscous_a_per_v=None, why=why, at_volts=tuple(at_volts))
    coulomb, viscous, u_coulomb, u_viscous = _line(holds, ohm.value + lead_ohm)
    corners = [_line(holds, share + lead_ohm) for share in (CONTACT_LOW * ohm.low, CONTACT_HIGH * ohm.high)]
    top = max(holds, key=lambda hold: hold.volts)
    u_coulomb = math.hypot(u_coulomb, u_zero_amps, GAIN_AMPS * coulomb)
    g_low, g_high = (pick(one[1] for one in corners) for pick in (min, max))
    c_low, c_high = (pick(one[0] for one in corners) for pick in (min, max))
    g = Fitted(
        value=viscous,
        low=viscous - math.hypot(u_viscous, viscous - g_low),
        high=viscous + math.hypot(u_viscous, g_high - viscous),
    )
    dropped = max(0.0, viscous) * BRUSH_DROP_SHARE * top.volts
    c = Fitted(
        value=coulomb,
        low=coulomb - math.hypot(u_coulomb, coulomb - c_low),
        high=coulomb + math.hypot(u_coulomb, c_high - coulomb) + dropped,
    )
    emf = top.volts - top.amps * (ohm.value + lead_ohm)
    widest = max(c.high - c.low, (g.high - g.low) * emf) / 2
    if widest > TOLD_WITHIN * top.amps:
        why = (
            f"between {c.low:.3g} and {c.high:.3g} A of {top.amps:.3g} A would flow at no speed: "
            "not identifiable with this readback"
        )
        return Friction(coulomb_amps=None, viscous_a_per_v=None, why=why, at_volts=tuple(at_volts))
    return Friction(coulomb_amps=c, viscous_a_per_v=g, at_volts=tuple(at_volts))


def _line(holds: Sequence[Hold], ohms: float) -> tuple[float, float, float, float]:
    """Current at no speed, slope, and the 95 % of both: least squares, each hold weighed by its own."""
    amps = np.array([hold.amps for hold in holds])
    emf = np.array([hold.volts for hold in holds]) - ohms * amps
    weight = 1 / np.array([max(hold.u_amps, 1e-6) for hold in holds]) ** 2
    total = float(weight.sum())
    mean_emf, mean_amps = float(weight @ emf) / total, float(weight @ amps) / total
    spread = float(weight @ (emf - mean_emf) ** 2)
    slope = float(weight @ ((emf - mean_emf) * (amps - mean_amps))) / spread
    at_none = mean_amps - slope * mean_emf
    left = float(weight @ (amps - at_none - slope * emf) ** 2) * Z95**2
    worse = math.sqrt(max(1.0, left / (len(holds) - 2))) if len(holds) > 2 else 1.0
    u_slope = worse / math.sqrt(spread)
    return at_none, slope, math.hypot(worse / math.sqrt(total), mean_emf * u_slope), u_slope
