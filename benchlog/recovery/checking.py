"""A supply held against a resistor of known value on its leads: volts, amps, limit, mode, and its latches.

A check, no calibration: the supply's own readback and one resistor are held against each other, within tolerances that
the user states.
"""

import math
from collections.abc import Iterator
from statistics import fmean

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.commands import Apply, Mark, Plan, Seen, Watch
from benchlog.recovery.moves import Finding, Situation, down, drive, ends_s, mark, rest, room_for
from benchlog.recovery.probing import zero
from benchlog.recovery.settling import settling_run
from benchlog.recovery.supply_check import SupplyCheck
from drivers.supply import Regulation

SHARES = (0.25, 0.5, 1.0)
"""Of the highest volts of a check, one step after the other."""
ON_S, OFF_S = 0.4, 0.3
LIMIT_SHARE = 0.5
ROOM = 1.5
"""What the current limit leaves above the current that is to flow."""
LATCH_SHARE, BELOW_SHARE, ABOVE_SHARE = 0.6, 0.5, 0.8
"""Of the highest volts, or amps: where a latch is set, where it has to hold still, and where it has to trip."""
TRIPS_WITHIN_S = 1.0
"""Starting values of this project, all of them."""
OTHER_SHARE = 0.15
"""Further from its stated value than this it seems to be another resistor. Common practice, no source."""


def check_run(situation: Situation, check: SupplyCheck) -> Plan[Finding]:
    """Steps of volts, then the current limit; or a latch alone; or, leads open, how quick it is."""
    if check.settling_a is not None:
        return (yield from settling_run(situation, check))
    yield from zero(situation)
    for name, unit, level in (("over-voltage", "V", check.latch_v), ("over-current", "A", check.latch_a)):
        if level is not None:
            return (yield from _trip(situation, check, name, show(level, unit)))
    passed: list[bool] = []
    for share in SHARES[:1] if check.cleared else SHARES:
        volts = share * check.volts
        seen = yield from _stepped(situation, check, volts)
        if share == SHARES[0] and (doubt := _another_resistor(situation, check, seen)):
            return Finding(outcome=Outcome.UNDETERMINED, reason=doubt)
        passed += yield from _told(_step(situation, check, volts, seen))
    if not check.cleared:
        passed += yield from _limit(situation, check)
    told = f"{sum(passed)} of {len(passed)} figures are within what was stated"
    return Finding(outcome=Outcome.UNDETERMINED, reason=f"the supply was checked with {show(check.ohm, 'Ω')}: {told}")


def _stepped(situation: Situation, check: SupplyCheck, volts: float) -> Plan[list[Seen]]:
    amps = volts / _ohm(situation, check)
    return (yield from _driven(situation, volts, min(ROOM * amps, situation.ceilings.amps.value)))


def _another_resistor(situation: Situation, check: SupplyCheck, seen: list[Seen]) -> str:
    """Why this seems to be another resistor than the one that was stated, as sure as the readings are; else ""."""
    meter, stated = situation.known_meter, _ohm(situation, check)
    volts, amps = _mean_volts(situation, seen), _mean_amps(situation, seen)
    u_volts, u_amps = 2.0 * meter.u_volts, 2.0 * meter.u_amps
    least = max(0.0, volts - u_volts) / max(1e-9, amps + u_amps)
    most = (volts + u_volts) / (amps - u_amps) if amps > u_amps else math.inf
    room = max(OTHER_SHARE, check.ohm_share + 2.0 * check.share)
    if least <= (1.0 + room) * stated and most >= (1.0 - room) * stated:
        return ""
    looks = f"{show(volts / amps, 'Ω')}" if amps > u_amps else f"more than {show(least, 'Ω')}"
    return f"this looks like {looks}, not {show(check.ohm, 'Ω')}: is it the resistor?"


def _step(situation: Situation, check: SupplyCheck, volts: float, seen: list[Seen]) -> list[Mark]:
    amps = volts / _ohm(situation, check)
    return [
        _figure(situation, "volts", "V", volts, _mean_volts(situation, seen), check.share),
        _figure(situation, "amps", "A", amps, _mean_amps(situation, seen), check.share + check.ohm_share),
        *_mode(seen, Regulation.CV),
    ]


def _limit(situation: Situation, check: SupplyCheck) -> Plan[list[bool]]:
    limit_a = LIMIT_SHARE * check.amps
    seen = yield from _driven(situation, check.volts, limit_a)
    marks = [
        _figure(situation, "limit", "A", limit_a, _mean_amps(situation, seen), check.share),
        *_mode(seen, Regulation.CC),
    ]
    return (yield from _told(marks))


def _trip(situation: Situation, check: SupplyCheck, name: str, level: str) -> Plan[Finding]:
    """Below the latch nothing happens; above it the output goes off, which ends the run."""
    amps = min(ROOM * check.amps, situation.ceilings.amps.value)
    below_v, above_v = BELOW_SHARE * check.volts, ABOVE_SHARE * check.volts
    yield mark(EventKind.STEP, f"{name.capitalize()} latch at {level}.", name="latch", at=level)
    yield from _driven(situation, below_v, amps)
    yield mark(EventKind.STEP, f"Now {show(above_v, 'V')}: it has to trip.", name="above the latch", volts=above_v)
    seen = yield Apply(volts=above_v, amps=amps, belief=Motion.UNKNOWN)
    until_s = seen.now_s + TRIPS_WITHIN_S
    while seen.now_s < until_s:
        seen = yield Watch()
    low = yield from down(amps)
    yield from rest(low, OFF_S)
    flow = show(above_v / _ohm(situation, check), "A")
    reason = f"the {name} latch at {level} did not trip at {show(above_v, 'V')} and {flow}"
    return Finding(outcome=Outcome.UNDETERMINED, reason=reason)


def _driven(situation: Situation, volts: float, amps: float) -> Plan[list[Seen]]:
    yield from room_for(situation, volts * amps * 2 * ON_S)
    seen = yield from drive(volts, amps, ON_S, Motion.UNKNOWN, least=3)
    low = yield from down(amps, after_s=ends_s(seen, ON_S))
    yield from rest(low, OFF_S)
    return seen


def _told(marks: list[Mark]) -> Plan[list[bool]]:
    for one in marks:
        _ = yield one  # "yield from" a list has nobody to take what was seen
    return [bool(one.event.values["passed"]) for one in marks]


def _ohm(situation: Situation, check: SupplyCheck) -> float:
    return check.ohm + situation.lead_ohm


def _mean_volts(situation: Situation, seen: list[Seen]) -> float:
    return fmean(s.reading.volts for s in _settled(seen)) - situation.known_meter.zero_volts


def _mean_amps(situation: Situation, seen: list[Seen]) -> float:
    return fmean(s.reading.amps for s in _settled(seen)) - situation.known_meter.zero_amps


def _settled(seen: list[Seen]) -> list[Seen]:
    whole = [s for s in seen if s.whole]
    return whole[len(whole) // 2 :]


def _figure(situation: Situation, what: str, unit: str, wanted: float, read: float, share: float) -> Mark:
    meter = situation.known_meter
    within = share * wanted + 2.0 * (meter.u_volts if unit == "V" else meter.u_amps)
    passed = abs(read - wanted) <= within
    where = f"where {show(wanted, unit)} were to be, give or take {show(within, unit)}"
    text = f"{what.capitalize()}: {show(read, unit)} {where}"
    return _mark(what, f"{text}.", passed, unit=unit, wanted=wanted, read=read, within=within)


def _mode(seen: list[Seen], wanted: Regulation) -> Iterator[Mark]:
    """Nothing where the supply does not tell."""
    told = {s.reading.regulation for s in _settled(seen)} - {Regulation.UNKNOWN}
    if told:
        said = " and ".join(sorted(one.value for one in told))
        yield _mark("mode", f"Mode: it says {said} where it is {wanted.value}.", told == {wanted}, said=said)


def _mark(what: str, text: str, passed: bool, **values: float | int | str | bool | None) -> Mark:
    word = "" if passed else " Not within what was stated."
    return mark(EventKind.FINDING, f"{text}{word}", what=what, passed=passed, **values)
