"""`benchlog run-in`: a motor held running for hours, its current recorded and filed as in the window."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.ceilings import job_limits, number_of
from benchlog.cli.confirming import confirm
from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.one_run import end_with, run_and_tell
from benchlog.cli.options import (
    NO_RATING,
    check_words,
    default_ledger,
    json_option,
    ledger_option,
    output_option,
    positive,
    rated_volts_of,
    say,
)
from benchlog.errors import Refused
from benchlog.history.cold_restart import COLD_AFTER_S, cold_restart_due
from benchlog.motor.drift import minutes as minutes_text
from benchlog.motor.insulation import winding_ceiling_c
from benchlog.quantities import show
from benchlog.records import Item
from benchlog.recovery.ceilings import PROGRAM_VOLTS, Layer, Limits, intersect
from benchlog.recovery.running_in import DRIFT, RESTART
from benchlog.recovery.start_test import RunIn, above_test_ceilings, check
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed
    from benchlog.ledger.store import Ledger

STAY_NEAR = "Stay near it: nobody here sees smoke, smells heat or hears a bearing."
DRIFT_FIGURES = (
    "verdict",
    "seconds",
    "slope_a_s",
    "slope_low",
    "slope_high",
    "flat_since_s",
    "first_amps",
    "last_amps",
)


@click.command("run-in")
@click.option("--supply", "resource", default="", help="VISA address, such as TCPIP::127.0.0.1::5025::SOCKET.")
@click.option("--rated-voltage", default="", metavar="V", help="The motor's rated volts.")
@click.option("--volts", metavar="V", help="Volts that it is run at.  [default: the rated voltage]")
@click.option("--hours", metavar="H", help="It ends by then.  [default: 1]")
@click.option("--minutes", metavar="M", help="The same in minutes.")
@click.option("--pace", metavar="S", help="Seconds from reading to reading, 1 at the most.  [default: 1]")
@click.option("--stop-when-flat/--no-stop-when-flat", default=True, help="End once the current stays for 10 minutes.")
@click.option("--mass", metavar="G", help="Grams of the motor without a gear or a pump: lets a heavier one run warmer.")
@click.option("--max-voltage", metavar="V", help="Ceiling for this job.  [default: the rated voltage]")
@click.option("--max-current", metavar="A", help="Ceiling for this job.  [default: what the supply can]")
@click.option("--job", "job_number", metavar="NUMBER", help="File with this job.  [default: a new one]")
@click.option("--item", "item_kind", default="motor", help="What it is, for a new job.")
@click.option("--serial", default="", help="Its serial, for a new job.")
@click.option("--load-state", default="dry, uncoupled", show_default=True)
@click.option("--thermal-class", default="A", show_default=True, help="Of the winding, as the label says (IEC 60085).")
@click.option("--yes", is_flag=True, help="Confirm that the bench is safe.")
@output_option
@ledger_option
@json_option
def command(as_json: bool, **asked: object) -> None:
    """Run a motor for minutes or hours and see what its current does: falling and then flat, or rising.

    It starts from rest, is looked at every minute whether it still turns, and starts once more while it is warm. Once
    more when it is cold is up to you: `benchlog jobs` says when.

    Exit status: 0 runs, 1 still stuck or undetermined, 2 refused, 3 an electrical finding, 4 a ceiling or stopped,
    5 supply lost.
    """
    end_with(lambda: run_in(as_json=as_json, **asked), as_json=as_json)  # type: ignore[arg-type]


def run_in(
    *,
    resource: str,
    rated_voltage: str,
    volts: str | None,
    hours: str | None,
    minutes: str | None,
    pace: str | None,
    stop_when_flat: bool,
    mass: str | None,
    max_voltage: str | None,
    max_current: str | None,
    job_number: str | None,
    item_kind: str,
    serial: str,
    load_state: str,
    thermal_class: str,
    yes: bool,
    output: int,
    ledger: Path | None,
    as_json: bool,
) -> int:
    """The exit status. Raises Refused, LedgerError before anything is switched on."""
    from benchlog.ledger.capture_request import capture_request
    from benchlog.ledger.filing import file_left_behind, journals_of
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.unlocks import owner_layer

    check_words(resource, item=item_kind, serial=serial, load_state=load_state)
    if not rated_voltage.strip():
        raise Refused(NO_RATING)
    rated_volts = rated_volts_of(rated_voltage)
    asked = _asked(rated_volts, volts, hours, minutes, pace, mass, stop_when_flat=stop_when_flat)
    motor, settings = Limits(winding_c=winding_ceiling_c(thermal_class)), owner_settings()
    layers = {Layer.MOTOR: motor, Layer.JOB: job_limits(rated_volts, max_voltage, max_current)}
    ask = somebody_there(yes=yes, as_json=as_json)
    with Ledger.open(ledger or default_ledger()) as book:
        for left in file_left_behind(book, journals_of(book.path)):
            click.echo(f"Filed what was left of run {left.run}, job {left.job:04d}.", err=True)
        look_back(book, resource, ask=ask)
        job = None if job_number is None else book.job_by_number(number_of(job_number))
        owner = owner_layer(book, settings, None if job is None else job.id)
        ceilings = intersect(layers | {Layer.OWNER: owner.limits})
        if problems := above_test_ceilings(asked, ceilings):
            raise Refused("; ".join(problems))
        if not yes:
            click.echo(f"Run at {show(asked.volts, 'V')} for {minutes_text(asked.at_most_s)} at most. {STAY_NEAR}")
            confirm(rated_volts, ceilings, owner.unlocked, ask=ask)
        request = capture_request(
            book,
            resource=resource,
            rated_volts=rated_volts,
            test=asked,
            layers=layers,
            owner=owner,
            job=None if job is None else job.id,
            unattended=yes,
            load_state=load_state,
            item=Item(kind=item_kind, serial=serial),
            output=output,
        )

        def more(filed: "Filed") -> Mapping[str, object]:
            return tell_run_in(book, filed, as_json=as_json)

        return run_and_tell(book, request, as_json=as_json, ask=ask, more=more)


def tell_run_in(book: "Ledger", filed: "Filed", *, as_json: bool) -> Mapping[str, object]:
    """What the current did, whether it started again warm, and when it is to be started cold."""
    events = book.events(filed.run)
    told = next((event for event in events if event.values.get("name") == DRIFT), None)
    again = next((event for event in events if event.values.get("name") == RESTART and "turning" in event.values), None)
    due = cold_restart_due(book.runs(filed.job_id), book.clock.utc())
    if not as_json:
        for event in (told, again):
            if event is not None:
                say(f"  {event.text}")
        if due is not None:
            after = f"tomorrow, or after {COLD_AFTER_S / 3600:g} hours"
            say(f"  Start it once more when it is cold, {after}; then: benchlog capture --job {filed.job}")
        return {}
    figures = {} if told is None else {name: told.values.get(name) for name in DRIFT_FIGURES}
    return {
        "drift": figures or None,
        "warm_restart": None if again is None else again.values["turning"],
        "cold_start_from_utc": None if due is None else due.from_utc,
    }


def _asked(
    rated_volts: float,
    volts: str | None,
    hours: str | None,
    minutes: str | None,
    pace: str | None,
    mass: str | None,
    *,
    stop_when_flat: bool,
) -> RunIn:
    if hours is not None and minutes is not None:
        raise Refused("give --hours or --minutes, not both")
    at_most_s = 3600.0
    if hours is not None:
        at_most_s = 3600.0 * positive(hours, "hours", "h", at_most=24.0)
    if minutes is not None:
        at_most_s = 60.0 * positive(minutes, "minutes", "min", at_most=24.0 * 60.0)
    asked = RunIn(
        volts=rated_volts if volts is None else positive(volts, "volts", "V", at_most=PROGRAM_VOLTS),
        at_most_s=at_most_s,
        pace_s=1.0 if pace is None else positive(pace, "pace", "s", at_most=1.0),
        flat_for_s=600.0 if stop_when_flat else 0.0,
        mass_g=None if mass is None else positive(mass, "mass", "g", at_most=5000.0),
    )
    check(asked)
    return asked
