"""`benchlog supply --check`: the supply with a resistor of known value on its leads, through the bench process."""

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import click
import msgspec

from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.options import line, positive, say
from benchlog.cli.supply_runs import CheckRuns, RunSeen
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.recovery.ceilings import PROGRAM_VOLTS, Limits
from benchlog.recovery.checking import LATCH_SHARE, ROOM
from benchlog.recovery.supply_check import SupplyCheck
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from drivers.supply import Capabilities

LEAST_V, LEAST_A = 0.5, 0.02
MOST_OHM, MOST_WATTS, MOST_PERCENT = 1e4, 50.0, 20.0
NO_CALIBRATION = (
    "This is a check, no calibration. It holds the supply's own readback and one resistor against each other, within\n"
    "tolerances that you stated. A calibration compares with a standard of known uncertainty, by somebody who has\n"
    "one, and says how uncertain the result is, and when. Instruments drift: check again now and then."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Resistor:
    """As a user states it. Shares are of its value, and of volts and amps."""

    ohm: float
    ohm_share: float
    share: float
    watts: float


def resistor(ohm: str | None, ohm_percent: str, percent: str, watts: str) -> Resistor:
    """Raises Refused."""
    if ohm is None:
        raise Refused("--check needs the resistor's value: --ohm")
    return Resistor(
        ohm=positive(ohm, "resistor", "Ω", at_most=MOST_OHM),
        ohm_share=positive(ohm_percent, "tolerance of the resistor", "%", at_most=MOST_PERCENT) / 100.0,
        share=positive(percent, "tolerance of volts and amps", "%", at_most=MOST_PERCENT) / 100.0,
        watts=positive(watts, "what the resistor bears", "W", at_most=MOST_WATTS),
    )


def planned(given: Resistor, can: "Capabilities", owner: Limits) -> SupplyCheck:
    """The highest volts that resistor, supply, owner and program allow. Raises Refused where that is too little."""
    most_v = [math.sqrt(given.watts * given.ohm), PROGRAM_VOLTS]
    most_v += [volts for volts in (can.volts_max, owner.volts) if volts is not None]
    most_v += [amps / ROOM * given.ohm for amps in (can.amps_max, owner.amps) if amps is not None]
    volts = math.floor(100.0 * min(most_v)) / 100.0
    if volts < LEAST_V or volts / given.ohm < LEAST_A:
        amps = f"{show(volts, 'V')} and {show(volts / given.ohm, 'A')}"
        raise Refused(f"with this resistor only {amps} are possible, too little to be judged: 0.5 V and 20 mA it takes")
    return SupplyCheck(ohm=given.ohm, ohm_share=given.ohm_share, share=given.share, volts=volts)


def check_supply(
    book: "Ledger", resource: str, can: "Capabilities", given: Resistor, *, yes: bool, as_json: bool
) -> int:
    """The exit status: 0 where all is within what was stated, 1 where not, else that of the run. Raises Refused."""
    from benchlog.ledger.supplies import CHECKED, keep_supply
    from benchlog.ledger.unlocks import owner_layer

    ask = somebody_there(yes=yes, as_json=as_json)
    look_back(book, resource, ask=ask)
    owner = owner_layer(book, owner_settings(), None).limits
    check = planned(given, can, owner)
    _confirm(check, yes=yes, ask=ask)
    runs = CheckRuns(book, resource, can, owner, as_json=as_json, ask=ask)
    status = runs.run(check, ROOM * check.amps, f"resistor of {given.ohm:g} Ω")
    figures, untried = figures_of(runs.last), list[str]()
    if not figures:
        return status
    try_latches(runs, check, can, figures, untried)
    passed = all(one["passed"] for one in figures)
    kept = keep_supply(
        book,
        resource=resource,
        identity=can.identity,
        output=can.output,
        kind=CHECKED,
        dialect="",
        content={"passed": passed, "ohm": given.ohm, "ohm_share": given.ohm_share, "share": given.share}
        | {"figures": figures, "untried": untried, "runs": runs.filed},
    )
    if as_json:
        line(event="checked", utc=kept.utc, passed=passed, figures=figures, untried=untried, runs=runs.filed)
    else:
        _tell(figures, passed, kept.utc, untried)
    return 0 if passed else 1


def figures_of(run: RunSeen | None) -> list[dict[str, Any]]:
    """What a run found within or not, and whether its output was off at the end; none where it found nothing."""
    found = [] if run is None else [dict(event.values) for event in run.events if "passed" in event.values]
    return [*found, _off(run)] if found and run is not None else []


def _off(run: RunSeen) -> dict[str, Any]:
    return {"what": "off", "passed": run.result.output_confirmed_off}


def try_latches(
    runs: CheckRuns, check: SupplyCheck, can: "Capabilities", figures: list[dict[str, Any]], untried: list[str]
) -> None:
    """Each in a run of its own, which it ends by tripping; then one more, which begins by clearing them."""
    resistor, amps, tripped = f"resistor of {check.ohm:g} Ω", ROOM * check.amps, False
    for name, unit, there, level in (
        ("over-voltage", "V", can.over_volts, {"latch_v": round(LATCH_SHARE * check.volts, 3)}),
        ("over-current", "A", can.over_amps, {"latch_a": round(LATCH_SHARE * check.amps, 3)}),
    ):
        if not there:
            untried.append(f"It has no {name} latch that could be tried.")
            continue
        runs.run(msgspec.structs.replace(check, **level), amps, resistor)
        seen = runs.last
        if seen is None or seen.result.outcome is Outcome.REFUSED:
            untried.append(f"Its {name} latch was not tried: {'not filed' if seen is None else seen.result.reason}.")
            continue
        trips = any("latch tripped" in one.text or "switched off at the supply" in one.text for one in seen.events)
        tripped = tripped or trips
        what = {"what": f"{name} latch", "passed": trips, "unit": unit}
        figures += [what | {"wanted": next(iter(level.values()))}, _off(seen)]
    if tripped:
        runs.run(msgspec.structs.replace(check, cleared=True), amps, resistor)
        again = figures_of(runs.last)
        passed = bool(again) and all(one["passed"] for one in again)
        figures.append(
            {"what": "on again, cleared", "passed": passed, "said": "as before" if passed else "NOT as before"}
        )


def _confirm(check: SupplyCheck, *, yes: bool, ask: bool) -> None:
    if yes:
        return
    if not ask:
        raise Refused("nobody at the keyboard to confirm: give --yes if the resistor is connected, and nothing else")
    most = f"at most {show(check.volts, 'V')} and {show(ROOM * check.amps, 'A')}"
    if not click.confirm(f"Is the resistor of {show(check.ohm, 'Ω')} on the leads, and nothing else ({most})?"):
        raise Refused("not confirmed")


def _tell(figures: list[dict[str, Any]], passed: bool, utc: str, untried: list[str]) -> None:
    say("\nThe check:")
    for one in figures:
        unit, word = one.get("unit", ""), "within" if one["passed"] else "NOT WITHIN"
        if "read" in one:
            told = (
                f"{show(one['read'], unit)} where {show(one['wanted'], unit)} ± {show(one['within'], unit)} were to be"
            )
        elif "wanted" in one:
            told = f"set to {show(one['wanted'], unit)}: {'it tripped above' if one['passed'] else 'it did not trip'}"
        else:
            told = one.get("said", "confirmed by read-back" if one["passed"] else "NOT CONFIRMED")
        say(f"  {one['what']:<19} {word:<11} {told}")
    for sentence in untried:
        say(f"  {sentence}")
    verdict = "all within what was stated" if passed else "NOT all within what was stated"
    say(f"Supply checked on {day_text(utc)}: {verdict}.\n\n{NO_CALIBRATION}")
