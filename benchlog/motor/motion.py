"""Locked or turning: what V and I can decide, and what they can't.

Thresholds on V/I are useless: a hot winding, a worse brush contact, an opening protector all look like back-EMF. What
decides is the voltage at almost no current. A resistance, whatever its value, holds almost none; an open circuit climbs
to the voltage limit, which is raised above what was held so that it shows; only a rotor holds a voltage between, and it
can only fall. Seen twice, with a surge between or the winding found right after, it is motion. A current that is
small from early on says nothing: a protector that opened in the kick passes one as well.

Source of the structure and its constants: a simulation study by this project over wide random motors and supplies;
starting values.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from benchlog.motor.meter import Meter

OUTPUT_CAPACITANCE_F = 1e-3
"""F: the largest output capacitor that is reckoned with; it holds a voltage up for a while, as a rotor does."""
CONTACT_WORSE = 1.8
REFERENCE_WORSE = 2.2
LEAST_EMF_SHARE = 0.10
LEAST_DOUBT_SHARE = 0.03
"""Of the volts held, above all that a resistance may hold: from here on "not turning" is not said, from
LEAST_EMF_SHARE on it is a rotor."""
LEAST_CLOSED_SHARE = 0.25
"""Of the stall current: what an opened protector never passes; it has several times the winding's resistance."""
GREW = 1.3
"""By how much I/V must grow at a step: that of a resistance stays."""
TOO_LITTLE_TIMES = 1.5
"""Apparent resistance over the winding's: heat makes 1.4 of it. Above this a worse contact does, or a rotor that stops
before the first whole reading; the winding's is an upper estimate, so that a rotor which the probe turned shows too."""
COAST_SHARE = 0.10
"""Of the current held: what flows in a coast. The less, the slower a rotor is still told from a resistance."""
CAPACITOR_FALLS = 2.5
"""How many time constants of the output capacitor a coast lasts at least, so that what it held has gone."""


class Motion(StrEnum):
    """What is believed of the shaft."""

    RESTING = "resting"
    LOCKED = "locked"
    CREEPING = "creeping"
    TURNING = "turning"
    UNKNOWN = "unknown"


class CoastVerdict(StrEnum):
    """What one look at almost no current says."""

    NOT_TURNING = "not turning, or creeping"
    EMF = "a turning rotor's voltage"
    OPEN = "open, or a lifted brush"
    DOUBTFUL = "doubtful"


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What was held before a coast: mean of the last two admitted readings, zero taken out. V, A."""

    volts: float
    amps: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CoastPoint:
    """An admitted reading of a coast; `since_s`: from the command to the start of its averaging window."""

    volts: float
    amps: float
    since_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CoastLook:
    """The verdict on one coast. `emf_share`: the least voltage that can only be EMF, as a share of the volts held."""

    verdict: CoastVerdict
    emf_share: float
    why: str


def coast_amps(held_amps: float) -> float:
    """A: the small current of a coast. Enough to tell a resistance from a rotor, too little to drive one."""
    held = abs(held_amps)
    return min(max(COAST_SHARE * held, 0.005), 0.3 * held) if held > 0.0034 else 0.001


def capacitor_fall_s(held: Held, reference_ohm: float, meter: Meter) -> float:
    """s: time constant with which the largest output capacitor falls on a standing motor, twice for good measure."""
    return 2 * OUTPUT_CAPACITANCE_F * min(held.volts / max(held.amps, meter.u_amps), 1.5 * reference_ohm)


def _capacitor(held: Held, coast: Sequence[CoastPoint], fall_s: float) -> float:
    """Share of the volts held that the output capacitor may still hold at the last of these readings.

    It held no more than all that was read at each one before, and has fallen since: what stays is not the capacitor's.
    """
    last = coast[-1]
    return min(
        math.exp(-max(last.since_s, 0.0) / fall_s),
        *(max(p.volts, 0.0) / held.volts * math.exp(-(last.since_s - p.since_s) / fall_s) for p in coast),
    )


def look_at_coast(
    held: Held,
    coast: Sequence[CoastPoint],
    *,
    small_amps: float,
    reference_ohm: float,
    meter: Meter,
    steady: bool = True,
) -> CoastLook:
    """What the coast says. `reference_ohm`: from the locked probe, or an upper estimate.

    `steady`: the current held was no longer falling, so that it must fit the volts. After a step it still falls.
    """
    if not coast or held.volts <= 5 * meter.u_volts:
        return CoastLook(verdict=CoastVerdict.DOUBTFUL, emf_share=0.0, why="too few whole readings to tell")
    apparent_ohm = held.volts / max(held.amps, meter.u_amps)
    ohmic = CONTACT_WORSE * small_amps * min(apparent_ohm, REFERENCE_WORSE * reference_ohm) / held.volts
    fall_s = capacitor_fall_s(held, reference_ohm, meter)
    share = max(p.volts / held.volts - ohmic - _capacitor(held, coast[: k + 1], fall_s) for k, p in enumerate(coast))
    least = max(LEAST_EMF_SHARE, 5 * meter.u_volts / held.volts)
    if min(least, LEAST_DOUBT_SHARE + 3 * meter.u_volts / held.volts) < share <= least:
        return CoastLook(
            verdict=CoastVerdict.DOUBTFUL,
            emf_share=share,
            why=f"at {small_amps:.3g} A the terminals held {coast[-1].volts:.3g} V: more than a resistance, less than "
            "is sure to be a rotor",
        )
    if share <= least and held.volts > TOO_LITTLE_TIMES * reference_ohm * (held.amps - meter.u_amps):
        return CoastLook(
            verdict=CoastVerdict.DOUBTFUL,
            emf_share=share,
            why=f"only {held.amps:.3g} A flowed at {held.volts:.3g} V, where a standing motor of {reference_ohm:.3g} Ω "
            f"draws {held.volts / reference_ohm:.3g} A, and no rotor's voltage was left to be read: a bad contact, an "
            "opened protector, or a rotor that stops too fast",
        )
    if share <= least:
        return CoastLook(
            verdict=CoastVerdict.NOT_TURNING,
            emf_share=share,
            why=f"at {small_amps:.3g} A the volts fell to {coast[-1].volts:.3g} V, as a winding or its contacts hold",
        )
    most = max(p.volts for p in coast)
    lowest, climbed = math.inf, 0.0
    for point in coast:
        lowest = min(lowest, point.volts)
        climbed = max(climbed, point.volts - lowest)
    if most / held.volts >= 1.02 + 4 * meter.u_volts / held.volts or climbed > 6 * meter.u_volts + 0.02 * held.volts:
        return CoastLook(
            verdict=CoastVerdict.OPEN,
            emf_share=share,
            why=f"at {small_amps:.3g} A the volts climbed to {most:.3g} V: an open circuit, not a rotor",
        )
    current = held.amps - 3 * meter.u_amps
    if steady and current > 0 and (held.volts - most + 3 * meter.u_volts) / current <= 0.35 * reference_ohm:
        return CoastLook(
            verdict=CoastVerdict.DOUBTFUL,
            emf_share=share,
            why="volts and current before the coast do not belong to one turning motor",
        )
    return CoastLook(
        verdict=CoastVerdict.EMF,
        emf_share=share,
        why=f"at {small_amps:.3g} A the terminals still held {coast[-1].volts:.3g} V: a turning rotor",
    )


def surged(first: CoastPoint, coast_last_volts: float, held: Held, *, reference_ohm: float, meter: Meter) -> bool:
    """Whether the first reading after a step up drew what the winding draws from the volts above the EMF.

    A protector that has opened can't pass it. A rotor that still gained speed drew much already in the hold.
    """
    over = first.volts - coast_last_volts
    if over <= 0:
        return False
    ratio = first.amps * reference_ohm / over
    closed = held.amps * reference_ohm > LEAST_CLOSED_SHARE * held.volts
    grew = first.amps * held.volts > GREW * held.amps * first.volts
    return 0.4 <= ratio <= 2.5 and (closed or (grew and first.amps - held.amps > 5 * meter.u_amps + 0.003))
