"""Output off, and knowing that it is. Idempotent, each step tried on its own, within a deadline of its own."""

from collections.abc import Callable
from dataclasses import dataclass

from benchlog.clock import Clock
from drivers.supply import Reading, Setpoint, Supply, SupplyError

DEADLINE_S = 3.0
OFF_TRIES = 2
"""After so many the supply is taken to ignore OFF: then its current limit goes to zero as well."""
NOTHING = Setpoint(volts=0.0, amps=0.0)
CURRENT_GONE_A = 0.02
"""A: readback under which no current counts as flowing, beside three steps of the readback."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OffResult:
    """`confirmed`: read back as off, at 0 V set, without current. `seen`: every reading taken meanwhile."""

    confirmed: bool
    text: str
    seen: tuple[Reading, ...]


def switch_off(supply: Supply, clock: Clock, alive: Callable[[], None] = lambda: None) -> OffResult:
    """0 V and off until the supply says so; where OFF does nothing, a current limit of zero as well.

    `alive` is called before every step. Raises nothing that a supply can cause.
    """
    until_s = clock.now() + DEADLINE_S
    seen: list[Reading] = []
    text, tries = "no reply", 0
    steps: list[Callable[[], object]] = [supply.off, lambda: seen.append(supply.read())]
    while True:
        for step in steps:
            alive()
            try:
                step()
            except SupplyError as error:
                text = _reopened(supply) or str(error)
        if seen and _is_off(seen[-1], supply):
            return OffResult(confirmed=True, text="Output off, confirmed by read-back.", seen=tuple(seen))
        if seen:
            last = seen[-1]
            text = f"the supply still says {'on' if last.output_on else 'off'}, {last.volts:.2f} V, {last.amps:.3f} A"
        tries += 1
        if tries == OFF_TRIES:
            steps.insert(1, lambda: supply.set(NOTHING))
        if clock.now() > until_s:
            return OffResult(
                confirmed=False, text=f"NOT CONFIRMED: switch the supply off by hand ({text}).", seen=tuple(seen)
            )
        clock.wait(clock.now() + 0.05)


def _is_off(reading: Reading, supply: Supply) -> bool:
    floor = max(CURRENT_GONE_A, 3 * min(supply.capabilities.amps_step, 0.01))
    return not reading.output_on and reading.set_volts == 0.0 and abs(reading.amps) <= floor


def _reopened(supply: Supply) -> str | None:
    """A fresh session, or why there is none."""
    try:
        supply.reopen()
    except SupplyError as error:
        return str(error)
    return None
