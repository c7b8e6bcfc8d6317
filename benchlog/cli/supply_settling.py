"""`benchlog supply --settling`: how quick a supply is, its leads open, through the bench process."""

import math
from textwrap import fill
from typing import TYPE_CHECKING, Any

import click
import msgspec

from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.options import EXIT_REFUSED, line, say
from benchlog.cli.supply_runs import CheckRuns, RunSeen
from benchlog.cli.supply_words import WIDTH
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.quantities import show
from benchlog.recovery.ceilings import PROGRAM_VOLTS, Limits
from benchlog.recovery.supply_check import SupplyCheck
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from drivers.supply import Capabilities

MOST_V, RANGE_SHARE, MOST_A = 5.0, 0.25, 0.1
LEAST_V, LEAST_A = 1.0, 0.02
"""Starting values of this project: less is too near to the noise of a readback."""


class Settled(msgspec.Struct, frozen=True, kw_only=True):
    """Upper bounds in s, as the supply's own readback shows them, leads open; None for what was not reached in time.

    `on`: to volts that have settled, from the switch; `rise`, `fall`: the slowest; `kick`: the longest of the shortest
    kicks that a reading saw; `off`: until volts begin to fall. `volts`: the highest. `utc`: when.
    """

    utc: str
    volts: float
    amps: float
    on_s: float | None
    rise_s: float | None
    fall_s: float | None
    kick_s: float | None
    off_s: float | None
    run: int


def planned(can: "Capabilities", owner: Limits) -> SupplyCheck:
    """Low volts and little current, within what supply, owner and program allow. Raises Refused below what tells."""
    volts = [MOST_V, PROGRAM_VOLTS] + [one for one in (owner.volts,) if one is not None]
    volts += [] if can.volts_max is None else [RANGE_SHARE * can.volts_max]
    amps = [MOST_A] + [one for one in (can.amps_max, owner.amps) if one is not None]
    most_v, most_a = math.floor(100.0 * min(volts)) / 100.0, math.floor(1000.0 * min(amps)) / 1000.0
    if most_v < LEAST_V or most_a < LEAST_A:
        raise Refused(f"{show(most_v, 'V')} and {show(most_a, 'A')} are too little to tell: 1 V and 20 mA it takes")
    return SupplyCheck(ohm=0.0, ohm_share=0.0, share=0.0, volts=most_v, settling_a=most_a)


def measure_settling(
    book: "Ledger", resource: str, can: "Capabilities", *, yes: bool, as_json: bool
) -> tuple[int, Settled | None]:
    """The exit status and what was measured, which is kept; None where something stood in its way. Raises Refused."""
    from benchlog.ledger.supplies import CHECKED, SETTLING, keep_supply
    from benchlog.ledger.unlocks import owner_layer

    ask = somebody_there(yes=yes, as_json=as_json)
    look_back(book, resource, ask=ask)
    owner = owner_layer(book, owner_settings(), None).limits
    check = planned(can, owner)
    amps = check.settling_a or 0.0
    _confirm(check.volts, amps, yes=yes, ask=ask)
    runs = CheckRuns(book, resource, can, owner, as_json=as_json, ask=ask)
    status = runs.run(check, amps, "nothing, leads open")
    seen = runs.last
    if seen is None or not any(event.values.get(SETTLING) == "off" for event in seen.events):
        return status or EXIT_REFUSED, None
    settled = settled_of(seen, book.clock.utc(), check.volts, amps)
    keep_supply(
        book,
        resource=resource,
        identity=can.identity,
        output=can.output,
        kind=CHECKED,
        dialect="",
        content={SETTLING: msgspec.to_builtins(settled)},
    )
    if as_json:
        line(event="settled", **msgspec.to_builtins(settled))
    else:
        say("\n" + fill(in_words(settled), WIDTH))
    return (0 if seen.result.output_confirmed_off else status), settled


def settled_of(seen: RunSeen, utc: str, volts: float, amps: float) -> Settled:
    """The worst of each; what once did not settle has no time."""
    times: dict[str, list[float | None]] = {}
    for event in seen.events:
        values: dict[str, Any] = event.values
        if "settling" in values:
            times.setdefault(values["settling"], []).append(values["seconds"] if values["settled"] else None)

    def worst(what: str) -> float | None:
        found = times.get(what, [])
        known = [one for one in found if one is not None]
        return max(known) if known and len(known) == len(found) else None

    return Settled(
        utc=utc,
        volts=volts,
        amps=amps,
        on_s=worst("on"),
        rise_s=worst("rise"),
        fall_s=worst("fall"),
        kick_s=worst("kick"),
        off_s=worst("off"),
        run=seen.run,
    )


def kept_settling(book: "Ledger", resource: str, can: "Capabilities") -> Settled | None:
    """The last of this output; None where there is none, or a program of another age wrote it. Raises LedgerError."""
    from benchlog.ledger.supplies import SETTLING, last_settling

    kept = last_settling(book, resource, can.identity, can.output)
    try:
        return None if kept is None else msgspec.convert(kept.content[SETTLING], Settled)
    except msgspec.ValidationError:
        return None


def in_words(settled: Settled) -> str:
    """For a report."""
    up = f"up in {_ms(settled.rise_s)}, down in {_ms(settled.fall_s)}"
    return (
        f"Settles {up} at most, measured on {day_text(settled.utc)} up to {show(settled.volts, 'V')}, leads open: with "
        "nothing connected volts fall only as fast as its own output empties. "
        f"On to settled volts in {_ms(settled.on_s)}; off until volts begin to fall in {_ms(settled.off_s)}; "
        f"shortest kick that a reading saw {_ms(settled.kick_s)}."
    )


def _ms(seconds: float | None) -> str:
    if seconds is None:
        return "more than was waited for"
    return show(1e3 * seconds, "ms") if seconds < 1.0 else show(seconds, "s")


def _confirm(volts: float, amps: float, *, yes: bool, ask: bool) -> None:
    if yes:
        return
    if not ask:
        raise Refused("nobody at the keyboard to confirm: give --yes if the leads are off, and nothing is connected")
    most = f"the output goes on, at most {show(volts, 'V')} and {show(amps, 'A')}"
    if not click.confirm(f"Is nothing on the terminals, no motor and no resistor ({most})?"):
        raise Refused("not confirmed")
