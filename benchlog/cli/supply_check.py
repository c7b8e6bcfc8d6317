"""`benchlog supply --check`: the supply with a resistor of known value on its leads, through the bench process."""

import math
import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import click
import msgspec

from benchlog.bench.frames import Request
from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.one_run import run_and_tell
from benchlog.cli.options import line, positive, say
from benchlog.errors import Refused
from benchlog.quantities import show
from benchlog.records import EventKind, Item, RunKind
from benchlog.recovery.ceilings import PROGRAM_VOLTS, Layer, Limits
from benchlog.recovery.checking import LATCH_SHARE, ROOM
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed
    from benchlog.ledger.store import Ledger
    from drivers.supply import Capabilities

ITEM = "supply check"
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
    runs = _Runs(book, resource, can, owner, as_json=as_json, ask=ask)
    status = runs.run(check)
    if can.over_volts and runs.went_through:
        latch_v = round(LATCH_SHARE * check.volts, 3)
        runs.run(msgspec.structs.replace(check, latch_v=latch_v))
    if not runs.figures:
        return status
    passed = all(one["passed"] for one in runs.figures)
    kept = keep_supply(
        book,
        resource=resource,
        identity=can.identity,
        output=can.output,
        kind=CHECKED,
        dialect="",
        content={"passed": passed, "ohm": given.ohm, "ohm_share": given.ohm_share, "share": given.share}
        | {"figures": runs.figures, "runs": runs.filed},
    )
    if as_json:
        line(event="checked", utc=kept.utc, passed=passed, figures=runs.figures, runs=runs.filed)
    else:
        _tell(runs.figures, passed, kept.utc, has_latch=can.over_volts)
    return 0 if passed else 1


def _confirm(check: SupplyCheck, *, yes: bool, ask: bool) -> None:
    if yes:
        return
    if not ask:
        raise Refused("nobody at the keyboard to confirm: give --yes if the resistor is connected, and nothing else")
    most = f"at most {show(check.volts, 'V')} and {show(ROOM * check.amps, 'A')}"
    if not click.confirm(f"Is the resistor of {show(check.ohm, 'Ω')} on the leads, and nothing else ({most})?"):
        raise Refused("not confirmed")


class _Runs:
    """The runs of one check, and the figures that they brought."""

    def __init__(
        self, book: "Ledger", resource: str, can: "Capabilities", owner: Limits, *, as_json: bool, ask: bool
    ) -> None:
        self._book, self._resource, self._can, self._owner = book, resource, can, owner
        self._as_json, self._ask = as_json, ask
        self._job: int | None = None
        self.figures: list[dict[str, Any]] = []
        self.filed: list[int] = []
        self.went_through = False

    def run(self, check: SupplyCheck) -> int:
        from benchlog.ledger.filing import journals_of
        from benchlog.ledger.supplies import spoken_with

        book, uid = self._book, uuid.uuid4().hex
        request = Request(
            uid=uid,
            kind=RunKind.CHECK,
            resource=self._resource,
            rated_volts=check.volts,
            layers={Layer.OWNER: self._owner, Layer.JOB: Limits(volts=check.volts, amps=ROOM * check.amps)},
            sequence=Sequence(name=ITEM),
            journal=str(journals_of(book.path) / f"{uid}.journal"),
            job=self._job,
            item=Item(kind=ITEM),
            complaint=f"supply at {self._resource}",
            load_state=f"resistor of {check.ohm:g} Ω",
            unattended=True,
            output=self._can.output,
            check=check,
            **spoken_with(book, self._resource),
        )

        def more(filed: "Filed") -> Mapping[str, object]:
            self._take(filed, check)
            return {}

        return run_and_tell(book, request, as_json=self._as_json, ask=self._ask, more=more)

    def _take(self, filed: "Filed", check: SupplyCheck) -> None:
        run = self._book.run(filed.run)
        self._job = run.job
        self.filed.append(filed.run)
        events = self._book.events(filed.run)
        found = [dict(event.values) for event in events if event.kind is EventKind.FINDING and "passed" in event.values]
        self.went_through = bool(found)
        if check.latch_v is not None:
            tripped = any(
                "latch tripped" in event.text or "switched off at the supply" in event.text for event in events
            )
            found = [{"what": "over-voltage latch", "passed": tripped, "unit": "V", "wanted": check.latch_v}]
        off = bool(run.result.output_confirmed_off)
        self.figures += [*found, {"what": "off", "passed": off}]


def _tell(figures: list[dict[str, Any]], passed: bool, utc: str, *, has_latch: bool) -> None:
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
    if not has_latch:
        say("  It has no over-voltage latch that could be tried.")
    verdict = "all within what was stated" if passed else "NOT all within what was stated"
    say(f"Supply checked on {utc[:10]}: {verdict}.\n\n{NO_CALIBRATION}")
