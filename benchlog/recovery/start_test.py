"""How starts are captured and how a motor is run in, as data: locked with a name and a version, filed with every run.

A test that is in use never changes: what differs is another version, so that two starts under one name and version were
measured the same way.
"""

import math
from enum import StrEnum

import msgspec

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Ceilings


class Trigger(StrEnum):
    """What counts as the instant of a start."""

    OUTPUT_ON = "output-on"
    AMPS = "amps"
    VOLTS = "volts"


class StartTest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """V, A, s. `amps`: current limit, None for the stall current that the probe finds, within every ceiling.

    `on_s`: held after the trigger; `before_s`: kept of the time before it. `still_s`: waited for the rotor to stand, at
    most; `rest_s`: at rest before each start. `trigger`: the setpoint going out, or amps or volts rising through
    `level` after having been below `level` - `hysteresis`, the volts already set; waited for `arm_s` at most.
    `interleave`: starts are read in turn at 0, 1/m … (m-1)/m of a reading later, so that m of them fill in one curve.
    """

    name: str
    version: int = 1
    volts: float
    amps: float | None = None
    on_s: float = 1.5
    starts: int = 5
    rest_s: float = 2.0
    still_s: float = 60.0
    trigger: Trigger = Trigger.OUTPUT_ON
    level: float | None = None
    hysteresis: float = 0.0
    before_s: float = 0.1
    arm_s: float = 30.0
    interleave: int = 1


class RunIn(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A long recording at `volts`. `at_most_s`: ends by then; `pace_s`: s from reading to reading.

    `look_every_s`: a short coast that shows that it still turns. `flat_for_s`, `flat_share`: ends early once the
    current has changed by no more than that share over that time; 0 for never. `restart`: a warm start from rest at
    its end. `mass_g`: what the motor weighs, without a gear or a pump: a heavier one gives off more heat.
    """

    volts: float
    amps: float | None = None
    at_most_s: float = 3600.0
    pace_s: float = 1.0
    look_every_s: float = 60.0
    flat_for_s: float = 600.0
    flat_share: float = 0.02
    restart: bool = True
    mass_g: float | None = None


MOST_READINGS = 2_500_000
"""Of a run-in at its pace. With those of its looks it stays below what one trace may have."""
_RANGES: dict[str, tuple[float, float]] = {
    "volts": (0.01, 1e3),  # the ceilings decide; here only the absurd is named
    "amps": (0.001, 1e3),
    "on_s": (0.5, 30.0),
    "starts": (1, 500),
    "rest_s": (0.5, 600.0),
    "still_s": (1.0, 600.0),
    "level": (0.0, 1e3),
    "hysteresis": (0.0, 1e3),
    "before_s": (0.0, 10.0),
    "arm_s": (1.0, 600.0),
    "interleave": (1, 20),
    "version": (1, 9999),
    "at_most_s": (10.0, 86_400.0),
    "pace_s": (0.01, 1.0),  # a ceiling can't be passed for longer than one reading
    "look_every_s": (5.0, 3600.0),
    "flat_for_s": (0.0, 36_000.0),
    "flat_share": (0.0, 0.5),
    "mass_g": (1.0, 5000.0),
}
"""Field: (lowest, highest). Starting values of this project."""


def check(asked: StartTest | RunIn) -> None:
    """Raises Refused naming the field, its value and what it may be."""
    for name, (low, high) in _RANGES.items():
        value = getattr(asked, name, None)
        if value is not None and not (math.isfinite(value) and low <= value <= high):
            raise Refused(f"{name}: {value:g} is outside {low:g} to {high:g}")
    if isinstance(asked, RunIn):
        readings = asked.at_most_s / asked.pace_s
        if readings > MOST_READINGS:
            raise Refused(f"pace_s: {readings:,.0f} readings in {asked.at_most_s:g} s are more than can be filed")
        return
    if not asked.name.strip() or not asked.name.isprintable():
        raise Refused("name: a start test has a name that can be read")
    if asked.trigger is Trigger.OUTPUT_ON:
        return
    if not asked.level:
        raise Refused(f"level: a trigger on {asked.trigger} needs a level above zero")
    if not 0 < asked.hysteresis < asked.level:
        raise Refused(f"hysteresis: {asked.hysteresis:g} is not between zero and the level of {asked.level:g}")
    if asked.interleave > 1:
        raise Refused("interleave: the instant of the start must be the program's own: trigger on output-on")


def above_test_ceilings(asked: StartTest | RunIn, ceilings: Ceilings) -> list[str]:
    """Every field that asks for more than a ceiling, as sentences that name it."""
    place = "start_test" if isinstance(asked, StartTest) else "run_in"
    held = ("on_s", asked.on_s) if isinstance(asked, StartTest) else ("at_most_s", asked.at_most_s)
    return [
        f"{place}.{name}: {value:g} {unit} is above the {bound.layer}'s ceiling of {bound.value:g} {unit}"
        for name, value, bound, unit in (
            ("volts", asked.volts, ceilings.volts, "V"),
            ("amps", asked.amps, ceilings.amps, "A"),
            (*held, ceilings.on_s, "s"),
        )
        if value is not None and value > bound.value
    ]
