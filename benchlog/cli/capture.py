"""`benchlog capture`: how a motor starts, as often as asked, each start filed with its figures."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
import msgspec

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
    rated_volts_of,
    say,
)
from benchlog.cli.start_test_options import given_fields, start_test_options
from benchlog.cli.starts_told import table
from benchlog.errors import Refused
from benchlog.motor.insulation import winding_ceiling_c
from benchlog.records import EventKind, Item
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.start_test import StartTest, above_test_ceilings, check
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed
    from benchlog.ledger.store import Ledger
    from benchlog.records import Job, Lot

AD_HOC = "ad hoc"


@click.command("capture")
@click.option("--supply", "resource", default="", help="VISA address, such as TCPIP::127.0.0.1::5025::SOCKET.")
@click.option("--rated-voltage", metavar="V", help="The motor's rated volts.  [default: the job's or lot's]")
@click.option("--max-voltage", metavar="V", help="Ceiling for this job.  [default: the rated voltage]")
@click.option("--max-current", metavar="A", help="Ceiling for this job.  [default: what the supply can]")
@click.option(
    "--test",
    "test_name",
    metavar="NAME",
    help="A locked test, which says all of the options from --volts to --interleave.",
)
@start_test_options
@click.option("--job", "job_number", metavar="NUMBER", help="File with this job.  [default: a new one that measures]")
@click.option("--lot", "lot_number", metavar="NUMBER", help="A unit of this lot, by the lot's own test.")
@click.option("--serial", default="", help="Of the unit, or of the thing for a new job.")
@click.option("--limits", "limits_id", type=int, metavar="ID", help="Judge by these.  [default: the lot's]")
@click.option("--item", "item_kind", default="motor", help="What it is, for a new job.")
@click.option("--load-state", default="dry, uncoupled", show_default=True)
@click.option("--thermal-class", default="A", show_default=True, help="Of the winding, as the label says (IEC 60085).")
@click.option("--yes", is_flag=True, help="Confirm that the bench is safe.")
@output_option
@ledger_option
@json_option
def command(as_json: bool, **asked: Any) -> None:
    """Capture how a motor starts from rest: a number of times, with the same guard and ceilings as every run.

    A start is at the rated volts, where neither --volts nor a locked test says otherwise. After each it is looked
    whether it turns, at up to 1.2 times its volts where the ceilings leave room.

    Exit status: 0 every start turned, 1 one did not or it can't be told, 2 refused, 3 an electrical finding, 4 a
    ceiling or stopped, 5 supply lost. With limits the verdict is said; it does not change the status.
    """
    end_with(lambda: capture(as_json=as_json, **asked), as_json=as_json)


def capture(
    *,
    resource: str,
    rated_voltage: str | None,
    max_voltage: str | None,
    max_current: str | None,
    test_name: str | None,
    job_number: str | None,
    lot_number: str | None,
    serial: str,
    limits_id: int | None,
    item_kind: str,
    load_state: str,
    thermal_class: str,
    yes: bool,
    output: int,
    ledger: Path | None,
    as_json: bool,
    **options: str | int | None,
) -> int:
    """The exit status. `options`: of the test, by field. Raises Refused, LedgerError before anything is switched on."""
    from benchlog.ledger.capture_request import capture_request
    from benchlog.ledger.filing import file_left_behind, journals_of
    from benchlog.ledger.lot_checks import due_words
    from benchlog.ledger.lots import add_unit, check_due, lot
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.unlocks import owner_layer

    check_words(resource, item=item_kind, serial=serial, load_state=load_state)
    if lot_number is not None and (job_number is not None or test_name is not None or not serial.strip()):
        raise Refused("--lot: a unit of a lot has a --serial; its job and its test are the lot's")
    given = None if rated_voltage is None else rated_volts_of(rated_voltage)
    motor, settings = Limits(winding_c=winding_ceiling_c(thermal_class)), owner_settings()
    fields = given_fields(options)
    ask = somebody_there(yes=yes, as_json=as_json)
    with Ledger.open(ledger or default_ledger()) as book:
        for left in file_left_behind(book, journals_of(book.path)):
            click.echo(f"Filed what was left of run {left.run}, job {left.job:04d}.", err=True)
        look_back(book, resource, ask=ask)
        measured = None if lot_number is None else lot(book, number_of(lot_number))
        job = None if job_number is None else book.job_by_number(number_of(job_number))
        job = job if measured is None else measured.job
        rated_volts = _rated(given, job)
        test = _test(book, test_name, measured, fields, rated_volts)
        if measured is not None:
            limits_id = measured.limits_id if limits_id is None else limits_id
            load_state = measured.job.load_state
        _same_test(book, limits_id, test)
        if measured is not None and (due := check_due(book, measured)):
            click.echo(f"Check due: {due_words(due)}: this unit will not be judged.", err=True)
        owner = owner_layer(book, settings, None if job is None else job.id)
        layers = {Layer.MOTOR: motor, Layer.JOB: job_limits(rated_volts, max_voltage, max_current)}
        ceilings = intersect(layers | {Layer.OWNER: owner.limits})
        if problems := above_test_ceilings(test, ceilings):
            raise Refused("; ".join(problems))
        if not yes:
            confirm(rated_volts, ceilings, owner.unlocked, ask=ask)
        request = capture_request(
            book,
            resource=resource,
            rated_volts=rated_volts,
            test=test,
            layers=layers,
            owner=owner,
            job=None if job is None else job.id,
            unit=None if measured is None else add_unit(book, measured, serial),
            unattended=yes,
            load_state=load_state,
            item=Item(kind=item_kind, serial=serial),
            output=output,
        )

        def more(filed: "Filed") -> Mapping[str, object]:
            return _starts_of(book, filed, limits_id, request.unit, as_json=as_json)

        return run_and_tell(book, request, as_json=as_json, ask=ask, more=more)


def _rated(given: float | None, job: "Job | None") -> float:
    if given is not None:
        return given
    if job is None:
        raise Refused(NO_RATING)
    return job.motor.rated_volts


def _test(
    book: "Ledger", name: str | None, measured: "Lot | None", fields: dict[str, Any], rated_volts: float
) -> StartTest:
    """The lot's, a locked one by its name, or one of these fields. Raises Refused, LedgerError."""
    from benchlog.cli.start_test import kept_test
    from benchlog.ledger.start_tests import start_test

    if measured is None and name is None:
        asked: dict[str, Any] = {"name": AD_HOC, "volts": rated_volts} | fields
        test = StartTest(**asked)
        check(test)
        return test
    locked = (kept_test(book, name or "") if measured is None else start_test(book, measured.test_id)).test
    for field, value in fields.items():
        if getattr(locked, field) != value:
            raise Refused(
                f'start test "{locked.name}", version {locked.version}, is locked with {field} '
                f"{getattr(locked, field)}, not {value}: lock another version of it"
            )
    return locked


def _same_test(book: "Ledger", limits_id: int | None, test: StartTest) -> None:
    """Before anything is switched on: starts are judged by limits of the same test alone. Raises Refused."""
    from benchlog.ledger.known_good import kept_limits

    if limits_id is None:
        return
    limits = kept_limits(book, limits_id).limits
    if (limits.test, limits.version) != (test.name, test.version):
        raise Refused(
            f'limits {limits_id} are of start test "{limits.test}", version {limits.version}, '
            f'not of "{test.name}", version {test.version}'
        )


def _starts_of(
    book: "Ledger", filed: "Filed", limits_id: int | None, unit: int | None, *, as_json: bool
) -> Mapping[str, object]:
    """The table of what was captured, and how it is judged."""
    starts = [event for event in book.events(filed.run) if event.kind is EventKind.START]
    if starts and not as_json:
        say("")
        for row in table(starts):
            say(row)
    if limits_id is None or not starts:
        return {}
    return _judged(book, filed.run, limits_id, unit, as_json=as_json)


def _judged(book: "Ledger", run: int, limits_id: int, unit: int | None, *, as_json: bool) -> Mapping[str, object]:
    """A run held against limits; kept where it is of a lot's unit. What did not start each time never passes."""
    from benchlog.cli.limits import tell_judged
    from benchlog.ledger.judging_runs import judge_run
    from benchlog.ledger.lots import keep_judged

    judged = judge_run(book, run, limits_id)
    if unit is not None:
        judged = keep_judged(book, unit, run, judged, limits_id)
    if as_json:
        return {"limits": limits_id, "judged": msgspec.to_builtins(judged)}
    say("")
    tell_judged(judged, run, limits_id, as_json=False)
    return {}
