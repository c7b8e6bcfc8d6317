"""What to do next, and why: ceilings, where the ladder begins, and remarks, from rating, probe, heat and history.

Nothing here raises a ceiling: a proposal is at most what holds, may be changed downwards freely and upwards to that.
Shares and rules of thumb are common practice, no source; starting values of this project.
"""

from collections.abc import Sequence as Ordered
from dataclasses import dataclass, replace
from statistics import median

import msgspec

from benchlog.errors import Refused
from benchlog.history.prior import why_hopeless
from benchlog.history.rates import Rate
from benchlog.motor.winding import Winding
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.quantities import show
from benchlog.recovery.ceilings import Ceilings, Layer, Limits
from benchlog.recovery.steps import Kicks, Sequence, above_ceilings, volts_of

START_SHARE = 0.5
"""Share of the stall current under which a limit may be too low to start a motor that runs on far less."""
UNRATED_WATTS, UNRATED_MOST_V = 3.0, 6.0
"""W that any winding reckoned with bears for a second, and V at the most, for a motor without a rating."""
READ_BACK_SHARE = 0.03
"""Share of the rated volts by which a kick's readback may lie below what was set."""
ENOUGH_LIKE = 2
"""Motors like it that must have come free before the ladder begins higher up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """A figure with its reason in one sentence and the highest it may be changed to."""

    name: str
    value: float
    unit: str
    at_most: float
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Past:
    """One earlier recovery of this motor or of one like it. `likeness`: "this serial", "this model" or "this kind".

    `freed_ratio`: volts of the kick that freed it over the rated; `freed_amps`: read back in that kick.
    `limits`, `sequence`: of that run, to be taken again.
    """

    likeness: str
    job: int
    run: int
    utc: str
    outcome: Outcome
    kicks: int = 0
    freed_ratio: float | None = None
    freed_amps: float | None = None
    hand_steps: tuple[str, ...] = ()
    limits: Limits | None = None
    sequence: Sequence | None = None

    @property
    def freed(self) -> bool:
        return self.outcome is Outcome.FREED


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """`sequence`: the ladder from `first_rung` on; None where there is nothing to kick."""

    proposals: tuple[Proposal, ...]
    first_rung: int
    sequence: Sequence | None
    remarks: tuple[str, ...]


def change(proposal: Proposal, value: float) -> Proposal:
    """With another value. Raises Refused above the ceiling and at nothing."""
    if not value > 0:
        raise Refused(f"{proposal.name}: {value:g} {proposal.unit} is not above zero")
    if value > proposal.at_most:
        raise Refused(
            f"{proposal.name}: {value:g} {proposal.unit} is above the ceiling of {proposal.at_most:g} {proposal.unit}"
        )
    return replace(proposal, value=value, why="as it was changed by hand")


def advise(
    *,
    rated_volts: float | None,
    ceilings: Ceilings,
    ladder: Sequence,
    winding: Winding | None = None,
    past: Ordered[Past] = (),
    last: Outcome | None = None,
    kicks_today: int = 0,
    rest: tuple[float, str] = (0.0, ""),
) -> Advice:
    """`past` newest first; `last`: how the last run of this job ended; `rest`: s, and the ceiling that asks for it."""
    ohm = None if winding is None else winding.reference_ohm
    volts = _volts(rated_volts, ohm, ceilings)
    proposals = [volts, *_amps(volts, ohm, ceilings), *_as_they_are(ceilings)]
    remarks = _electrical(winding)
    if remarks:
        return Advice(proposals=tuple(proposals), first_rung=1, sequence=None, remarks=tuple(remarks))
    first, why_first = _first_rung(ladder, past)
    remarks += why_first
    remarks += _limits(volts, ohm, ceilings, past)
    remarks += _history(past)
    remarks += _by_hand(last, kicks_today, ceilings, past)
    if rest[0] > 0.5:
        remarks.append(f"Rest {rest[0]:.0f} s first, so that the next kick stays within the ceiling for {rest[1]}.")
    return Advice(
        proposals=tuple(proposals),
        first_rung=first,
        sequence=begin_at(ladder, first),
        remarks=tuple(remarks),
    )


def begin_at(ladder: Sequence, rung: int) -> Sequence:
    """The ladder without the rungs before this one; the gentle start and the hand steps stay."""
    steps, number = [], 0
    for step in ladder.steps:
        number += isinstance(step, Kicks)
        if not isinstance(step, Kicks) or number >= rung:
            steps.append(step)
    return msgspec.structs.replace(ladder, steps=tuple(steps))


def same_as_last(past: Ordered[Past], ceilings: Ceilings, rated_volts: float) -> Past:
    """The last run that freed this motor or one like it, to be taken again. Raises Refused where it can't be."""
    found = next((one for one in past if one.freed and one.limits is not None and one.sequence is not None), None)
    if found is None or found.limits is None or found.sequence is None:
        raise Refused("no motor like it was freed before")
    for name, unit in (("volts", "V"), ("amps", "A")):
        asked, bound = getattr(found.limits, name), getattr(ceilings, name)
        if asked is not None and bound.layer is not Layer.JOB and asked > bound.value:
            raise Refused(
                f"job {found.job:04d} had {asked:g} {unit}, above the {bound.layer}'s ceiling of {bound.value:g} {unit}"
            )
    wider = msgspec.structs.replace(
        ceilings, volts=msgspec.structs.replace(ceilings.volts, value=found.limits.volts or ceilings.volts.value)
    )
    problems = above_ceilings(found.sequence, rated_volts, wider)
    if problems:
        raise Refused("; ".join(problems))
    return found


def _volts(rated_volts: float | None, ohm: float | None, ceilings: Ceilings) -> Proposal:
    most = ceilings.volts.value
    if rated_volts is not None:
        value = min(rated_volts, most)
        why = (
            "The rated volts."
            if value == rated_volts
            else f"The {ceilings.volts.layer}'s ceiling, below the rated volts."
        )
    elif ohm is not None:
        value = min((UNRATED_WATTS * ohm) ** 0.5, UNRATED_MOST_V, most)
        why = f"No rating: puts at most {UNRATED_WATTS:g} W into {show(ohm, 'Ω')}. Confirm it, or look for a label."
    else:
        value = min(1.5, most)
        why = "No rating and no probe yet: a single cell's volts, for the probe."
    return Proposal(name="volts", value=value, unit="V", at_most=most, why=why)


def _amps(volts: Proposal, ohm: float | None, ceilings: Ceilings) -> list[Proposal]:
    if ohm is None:
        return []
    stall, most = volts.value / ohm, ceilings.amps.value
    if stall <= most:
        why = f"The stall current at {show(volts.value, 'V')}, from {show(ohm, 'Ω')}: magnets bear no more for sure."
    else:
        why = f"The {ceilings.amps.layer}'s ceiling, below the stall current of {show(stall, 'A')}."
    return [Proposal(name="amps", value=min(stall, most), unit="A", at_most=most, why=why)]


def _as_they_are(ceilings: Ceilings) -> list[Proposal]:
    told = (
        ("locked_s", "s", "Locked in any minute, while nothing is known of how the motor takes heat."),
        ("winding_c", "°C", "The winding's hottest spot stays under its thermal class."),
    )
    bounds = [(name, unit, why, getattr(ceilings, name)) for name, unit, why in told]
    return [
        Proposal(name=name, value=bound.value, unit=unit, at_most=bound.value, why=f"{why} Set by the {bound.layer}.")
        for name, unit, why, bound in bounds
    ]


def _first_rung(ladder: Sequence, past: Ordered[Past]) -> tuple[int, list[str]]:
    ratios = [one.freed_ratio for one in past if one.freed and one.freed_ratio is not None]
    rungs = [volts_of(step, 1.0) for step in ladder.steps if isinstance(step, Kicks) and step.voltage is None]
    if len(ratios) < ENOUGH_LIKE or not rungs:
        return 1, []
    # The first rung that reaches the gentlest kick that ever freed one: what lies before it never did.
    first = next((n for n, ratio in enumerate(rungs, start=1) if ratio >= min(ratios) - READ_BACK_SHARE), 1)
    if first == 1:
        return 1, []
    return first, [
        f"Begin at rung {first}: the last {len(ratios)} like it came free at {min(ratios):.0%} of the rated volts "
        "or more."
    ]


def _limits(volts: Proposal, ohm: float | None, ceilings: Ceilings, past: Ordered[Past]) -> list[str]:
    if ohm is None:
        return []
    remarks, stall, limit = [], volts.value / ohm, ceilings.amps.value
    if limit < 0.95 * stall:
        remarks.append(
            f"Limited by current, not by voltage: at {show(limit, 'A')} the locked winding takes "
            f"{show(limit * ohm, 'V')}; raising the volts does nothing."
        )
    needed = [one.freed_amps for one in past if one.freed and one.freed_amps is not None]
    if needed and limit < 0.9 * min(needed):
        remarks.append(
            f"The limit of {show(limit, 'A')} is below what the last ones like it needed to start: "
            f"{show(min(needed), 'A')} at the least of {len(needed)}."
        )
    elif limit < START_SHARE * stall:
        remarks.append(
            f"The limit of {show(limit, 'A')} may be below what this motor needs to start: it is "
            f"{limit / stall:.0%} of the stall current. One that runs on 0.5 A can need 1.6 A to start."
        )
    ratios = [one.freed_ratio * volts.value for one in past if one.freed and one.freed_ratio is not None]
    if ratios and volts.at_most < median(ratios):
        remarks.append(
            f"The {ceilings.volts.layer}'s ceiling of {show(volts.at_most, 'V')} is below the "
            f"{show(median(ratios), 'V')} at which the middle one like it came free."
        )
    return remarks


def _history(past: Ordered[Past]) -> list[str]:
    if not past:
        return []
    freed = [one for one in past if one.freed]
    steps: dict[str, int] = {}
    for one in freed:
        for step in dict.fromkeys(one.hand_steps):
            steps[step] = steps.get(step, 0) + 1
    rate = Rate(hits=len(freed), count=len(past))
    if why := why_hopeless(rate):
        return [f"Of {past[0].likeness} {why} More kicks are hardly worth it."]
    told = f"Of {past[0].likeness}: {rate.text} recoveries ended freed"
    if freed:
        kicks = sorted(one.kicks for one in freed)
        told += f", after {kicks[0]} kicks" if kicks[0] == kicks[-1] else f", after {kicks[0]} to {kicks[-1]} kicks"
    if steps:
        most = max(steps, key=lambda step: steps[step])
        told += f"; before {steps[most]} of them: {most}"
    return [told + "."]


def _by_hand(last: Outcome | None, kicks_today: int, ceilings: Ceilings, past: Ordered[Past]) -> list[str]:
    if kicks_today >= ceilings.kicks.value:
        return [f"{ceilings.kicks.value:g} kicks today are used up. Now by hand: turn, tap, soak, warm."]
    if last is Outcome.STILL_STUCK:
        return ["Now by hand: turn, tap, soak, warm; kicks alone rarely win. Then the ladder again."]
    if last is Outcome.UNDETERMINED:
        return ["Volts and amps could not tell: turn the shaft a little, look at it, and try again."]
    return []


_NEXT = {
    WindingVerdict.OPEN: "Open: no kick reaches the motor. Tap the housing, look at brushes and leads, probe again.",
    WindingVerdict.SHORT: "Short: a kick only heats it. Look for bridged segments or a crushed lead.",
    WindingVerdict.DIODE: "A diode conducts: lift one end of it, or swap the leads, then probe again. No kicks now.",
    WindingVerdict.ELECTRONIC: "Electronics in the way: no kicks. Reach the motor's own leads behind the board.",
    WindingVerdict.UNDECIDED: "The probe could not decide: look at the leads and the supply, and probe again.",
}


def _electrical(winding: Winding | None) -> list[str]:
    return [_NEXT[winding.verdict]] if winding is not None and winding.verdict in _NEXT else []
