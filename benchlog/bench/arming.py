"""Before the output may be on: off, limits down, the instrument's own latches and timer set and read back, no error.

Order: off, 0 V, latches, timer, errors drained. Any mismatch of a read-back refuses the run.
"""

import contextlib
from dataclasses import dataclass

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Ceilings
from benchlog.recovery.supply_check import SupplyCheck
from drivers.supply import RANGE_NOT_TOLD, Protection, Setpoint, Supply, SupplyError

LATCH_SHARE = 1.1
LATCH_LEAST_V = 0.5
LATCH_LEAST_A = 0.05
SILENCE_S = 3.0
"""s of silence after which the instrument's own timer switches off: long enough for the rescue to be there first, which
reads back. Starting value of this project."""
SILENCE_REPLIES = 20
"""A slow supply gets so many replies of time: a reading and a setpoint one unit a message take some ten."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """The latches as the supply says they are, and what is worth knowing about them."""

    protection: Protection
    remarks: tuple[str, ...]


def arm(supply: Supply, ceilings: Ceilings, check: SupplyCheck | None = None) -> Armed:
    """Makes the supply ready, its output off. `check`: of the supply itself, which may want a latch lower.

    Raises Refused naming the mismatch, SupplyError.
    """
    supply.errors()
    supply.off()
    supply.set(Setpoint(volts=0.0, amps=0.0))
    can = supply.capabilities
    # A little above the ceiling: some supplies refuse a setpoint near the latch, and CC must not become a trip.
    wanted = Protection(
        over_volts=_level(ceilings.volts.value, LATCH_LEAST_V, can.volts_max) if can.over_volts else None,
        over_amps=_level(ceilings.amps.value, LATCH_LEAST_A, can.amps_max) if can.over_amps else None,
    )
    if check is not None:
        wanted = Protection(
            over_volts=_lower(wanted.over_volts, check.latch_v), over_amps=_lower(wanted.over_amps, check.latch_a)
        )
    supply.clear()
    try:
        found = supply.protect(wanted)
    except ValueError as error:  # a level that its fixed pattern of digits does not hold
        raise Refused(f"the supply's own latches can not be set that high: {error}") from error
    for name, unit, told, said in (
        ("over-voltage", "V", found.over_volts, wanted.over_volts),
        ("over-current", "A", found.over_amps, wanted.over_amps),
    ):
        if (told is None) != (said is None) or (
            told is not None and said is not None and abs(told - said) > 0.02 * said
        ):
            hint = f"; it tells no range, so set a ceiling of {unit} that it has" if RANGE_NOT_TOLD in can.gaps else ""
            raise Refused(
                f"the supply's {name} latch reads {told} {unit}, not the {said:g} {unit} that were sent{hint}"
            )
    timer = _start_timer(supply)
    errors = supply.errors()
    if errors:
        raise Refused(f"the supply reports: {errors[0]}")
    reading = supply.read()
    if reading.output_on or reading.set_volts != 0.0:
        raise Refused(
            f"the supply does not go off: it says {'on' if reading.output_on else 'off'}, {reading.set_volts:g} V"
        )
    if reading.set_amps > LATCH_LEAST_A:
        raise Refused(f"the supply's current limit reads {reading.set_amps:g} A where 0 A was sent")
    missing = [name for name, has in (("over-voltage", can.over_volts), ("over-current", can.over_amps)) if not has]
    return Armed(
        protection=found,
        remarks=(
            *(f"This supply has no {name} latch that could be set: one ceiling less." for name in missing),
            *timer,
        ),
    )


def disarm(supply: Supply) -> None:
    """The instrument's own timer stopped, for whoever uses the supply next. Only when the output is known to be off."""
    with contextlib.suppress(SupplyError):
        supply.watch(None)


def _start_timer(supply: Supply) -> list[str]:
    """Raises Refused where it does not say what it was told."""
    if not supply.capabilities.watchdog:
        return []
    asked_s = max(SILENCE_S, SILENCE_REPLIES * supply.capabilities.reply_s)
    told_s = supply.watch(asked_s)
    if told_s is None or told_s < asked_s:
        raise Refused(f"the supply's own output timer reads {told_s or 'off'}, not the {asked_s:g} s that were sent")
    return [f"Its own output timer switches off after {told_s:g} s of silence."]


def _lower(usual: float | None, asked: float | None) -> float | None:
    return usual if usual is None or asked is None else min(usual, asked)


def _level(ceiling: float, least_above: float, range_max: float | None) -> float:
    level = max(ceiling * LATCH_SHARE, ceiling + least_above)
    return round(level if range_max is None else min(level, LATCH_SHARE * range_max), 3)
