"""`benchlog lot`: units of one kind, measured one after the other: begin, check the bench, look, report, close."""

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click
import msgspec

from benchlog.cli.ceilings import number_of
from benchlog.cli.options import (
    Problem,
    default_ledger,
    fail,
    json_option,
    kept_ledger,
    ledger_option,
    line,
    rated_volts_of,
    say,
)
from benchlog.cli.start_test import kept_test
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.quantities import show, strict
from benchlog.records import Item, JobState, Lot, LotCheck, Motor, Unit

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from benchlog.reports.lot import LotReport

_RESULTS = {True: "pass", False: "FAIL", None: "not judged"}


@click.group("lot", context_settings={"help_option_names": ["-h", "--help"]})
def command() -> None:
    """Units of one kind, measured one after the other by one locked start test.

    benchlog capture --lot N --serial S measures one of them.
    """


@command.command("new")
@click.option("--name", default="", help="What the lot is called.")
@click.option("--kind", default="", help="What its units are, such as cabin fan.")
@click.option("--make", default="", help="As the label says.")
@click.option("--model", default="", help="As the label says.")
@click.option("--rated-voltage", "rated", default="", metavar="V", help="As the label says.")
@click.option("--load", default="dry, uncoupled", show_default=True, help="What the motor drives.")
@click.option("--test", "test_name", default="", metavar="NAME", help="The start test it is measured by, locked.")
@click.option("--version", type=int, help="Of the test.  [default: the newest]")
@click.option("--limits", "limits_id", type=int, metavar="ID", help="Judge by these.  [default: by none yet]")
@click.option("--operator", default="", help="Who measures.")
@click.option("--leads", default="", help="Which leads, in words.")
@click.option("--fixture", default="", help="What holds the unit, in words.")
@click.option("--ambient", default="25", show_default=True, metavar="°C")
@ledger_option
@json_option
def new(
    name: str,
    kind: str,
    make: str,
    model: str,
    rated: str,
    load: str,
    test_name: str,
    version: int | None,
    limits_id: int | None,
    operator: str,
    leads: str,
    fixture: str,
    ambient: str,
    ledger: Path | None,
    as_json: bool,
) -> None:
    """Begin a lot, without a unit yet."""
    from benchlog.ledger.lots import open_lot
    from benchlog.ledger.store import Ledger

    try:
        needed = (("--name", name), ("--kind", kind), ("--rated-voltage", rated), ("--test", test_name))
        for option, text in needed:
            if not text.strip():
                raise Refused(f"a lot needs {option}")
        motor, ambient_c = Motor(rated_volts=rated_volts_of(rated)), strict(ambient, "ambient")
        with Ledger.open(ledger or default_ledger()) as book:
            made = open_lot(
                book,
                name=name,
                item=Item(kind=kind.strip(), make=make.strip(), model=model.strip()),
                motor=motor,
                test_id=kept_test(book, test_name, version).id,
                operator=operator,
                leads=leads,
                fixture=fixture,
                ambient_c=ambient_c,
                load_state=load,
                limits_id=limits_id,
            )
    except Problem as problem:
        fail(str(problem))
    _tell_lot(made, as_json=as_json)
    if not as_json:
        begun = made.job.number
        click.echo(f"Lot {begun} begun. Next: benchlog leads, then benchlog lot check {begun} --run N")


@command.command("list")
@click.option("--limit", default=50, show_default=True, type=click.IntRange(1, 10_000))
@ledger_option
@json_option
def list_lots(limit: int, ledger: Path | None, as_json: bool) -> None:
    """Show lots, newest first."""
    from benchlog.ledger.lots import lots
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            found = lots(book, limit)
    except Problem as problem:
        fail(str(problem))
    for one in found:
        _tell_lot(one, as_json=as_json)
    if not found and not as_json:
        click.echo("No lot yet.")


@command.command("show")
@click.argument("number")
@ledger_option
@json_option
def show_lot(number: str, ledger: Path | None, as_json: bool) -> None:
    """Show lot NUMBER: its test, limits and units. Exit status 1 where a unit failed. Writes nothing."""
    from benchlog.ledger.store import Ledger
    from benchlog.reports.lot import gather_lot
    from benchlog.reports.lot_document import lot_document
    from benchlog.reports.regions import here
    from benchlog.reports.sheet_text import text_of

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            report = gather_lot(book, _lot(book, number))
    except Problem as problem:
        fail(str(problem))
    if as_json:
        _tell_lot(report.lot, as_json=True)
        for one in report.measured:
            _tell_unit(one.unit, as_json=True)
        _tell_rate(report)
    else:
        click.echo(text_of(lot_document(report, here())), nl=False)
    sys.exit(0 if report.pass_rate.hits == report.pass_rate.count else 1)


@command.command("unit")
@click.argument("number")
@click.argument("serial")
@ledger_option
@json_option
def add(number: str, serial: str, ledger: Path | None, as_json: bool) -> None:
    """Add the unit SERIAL to lot NUMBER. One that is in it already is that unit, and will be measured again."""
    from benchlog.ledger.lots import add_unit
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            added = add_unit(book, _lot(book, number), serial)
    except Problem as problem:
        fail(str(problem))
    _tell_unit(added, as_json=as_json)


@command.command("check")
@click.argument("number")
@click.option("--run", type=int, help="A run of benchlog leads, or any other for its zero.")
@click.option("--zero", metavar="A", help="Readback at no current, as seen.")
@click.option("--who", default="", metavar="NAME", help="Who checked.  [default: the lot's operator]")
@ledger_option
@json_option
def check(number: str, run: int | None, zero: str | None, who: str, ledger: Path | None, as_json: bool) -> None:
    """Keep a check of lot NUMBER: of leads and fixture joined (a run), or of the zero (a run, or as seen).

    Holds for a shift of 8 h; without both no unit is judged. Exit status 1 where it did not pass.
    """
    from benchlog.ledger.lot_checks import MOST_ZERO_A, check_due, check_from_run, keep_check
    from benchlog.ledger.lot_units import measured_before_check
    from benchlog.ledger.store import Ledger

    try:
        if (run is None) == (zero is None):
            raise Refused("a check is either a --run or a --zero as seen")
        with Ledger.open(kept_ledger(ledger)) as book:
            lot = _lot(book, number)
            who = who.strip() or lot.operator
            if run is not None:
                made = check_from_run(book, lot, run, who)
            else:
                amps = strict(zero or "", "zero")
                made = keep_check(book, lot, "zero", amps, "A", abs(amps) <= MOST_ZERO_A, who)
            due = check_due(book, lot)
            again = [] if due else measured_before_check(book, lot)
    except Problem as problem:
        fail(str(problem))
    _tell_check(made, due, again, as_json=as_json)
    sys.exit(0 if made.passed else 1)


@command.command("shift")
@click.argument("number")
@click.option("--operator", metavar="NAME", help="Who measures from now on.")
@click.option("--ambient", metavar="°C", help="What it is now.")
@ledger_option
@json_option
def shift(number: str, operator: str | None, ambient: str | None, ledger: Path | None, as_json: bool) -> None:
    """Another operator or ambient for lot NUMBER from now on. What it was until then stays on record."""
    from benchlog.ledger.lots import change_lot
    from benchlog.ledger.store import Ledger

    try:
        if operator is None and ambient is None:
            raise Refused("nothing changes: give --operator, --ambient or both")
        ambient_c = None if ambient is None else strict(ambient, "ambient")
        with Ledger.open(kept_ledger(ledger)) as book:
            changed = change_lot(book, _lot(book, number), operator=operator, ambient_c=ambient_c)
    except Problem as problem:
        fail(str(problem))
    _tell_lot(changed, as_json=as_json)


@command.command("limits")
@click.argument("number")
@click.argument("limits_id", metavar="ID", type=int)
@ledger_option
@json_option
def by_limits(number: str, limits_id: int, ledger: Path | None, as_json: bool) -> None:
    """Judge lot NUMBER by the limits ID from now on, and the last run of each unit again.

    What was judged by others before stays on record. Exit status 1 where a unit fails.
    """
    from benchlog.ledger.lots import set_limits, units
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            lot = set_limits(book, _lot(book, number), limits_id)
            judged = _judge_again(book, lot, limits_id)
            after = units(book, lot)
    except Problem as problem:
        fail(str(problem))
    for one in after:
        if one.id in judged:
            _tell_unit(one, as_json=as_json)
    if not judged and not as_json:
        click.echo("No unit has a run yet.")
    failed = any(one.passed is False for one in after if one.id in judged)
    sys.exit(1 if failed else 0)


def _judge_again(book: "Ledger", lot: Lot, limits_id: int) -> set[int]:
    """Keys of the units that were judged."""
    from benchlog.ledger.captured import captured_of_lot
    from benchlog.ledger.judging_runs import judge_captured
    from benchlog.ledger.known_good import kept_limits
    from benchlog.ledger.lots import keep_judged, units

    kept = kept_limits(book, limits_id)
    starts = {one.run.id: one for one in captured_of_lot(book, lot) if one.starts}
    done = set()
    for unit in units(book, lot):
        if unit.run in starts:
            found = starts[unit.run]
            keep_judged(book, unit.id, found.run.id, judge_captured(book, found, kept))
            done.add(unit.id)
    return done


@command.command("close")
@click.argument("number")
@click.option("--remark", default="", help="What is to be said of it.")
@ledger_option
@json_option
def close(number: str, remark: str, ledger: Path | None, as_json: bool) -> None:
    """Close lot NUMBER: no unit comes any more."""
    from benchlog.ledger.lots import close_lot
    from benchlog.ledger.store import Ledger
    from benchlog.records import Closing

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            closed = close_lot(book, _lot(book, number), Closing(cause="", work_done=remark.strip()))
    except Problem as problem:
        fail(str(problem))
    _tell_lot(closed, as_json=as_json)


@command.command("report")
@click.argument("number")
@click.option(
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    help="File to write: .pdf or .html.  [default: its tag, .pdf]",
)
@click.option("--paper", type=click.Choice(["A4", "Letter"]), help="Paper size, if not the usual here.")
@ledger_option
@json_option
def report(number: str, output: Path | None, paper: str | None, ledger: Path | None, as_json: bool) -> None:
    """Write the report of lot NUMBER as PDF or HTML. A file that is there stays as it is."""
    from benchlog.cli.report import check_name, file_name, region_of, write_new
    from benchlog.ledger.store import Ledger
    from benchlog.reports.lot import gather_lot
    from benchlog.reports.lot_document import lot_document

    try:
        region = region_of(paper)
        with Ledger.open(kept_ledger(ledger)) as book:
            lot = _lot(book, number)
            name = output or Path(f"{file_name(lot.job.tag)}.pdf")
            check_name(name, (".pdf", ".html"))
            told = lot_document(gather_lot(book, lot), region)
        if name.suffix == ".html":
            from benchlog.reports.sheet_html import html_of

            data = html_of(told, region.paper).encode()
        else:
            from benchlog.reports.sheet_pdf import sheet_pdf

            data = sheet_pdf(told, region.paper)
        write_new(name, data)
    except Problem as problem:
        fail(str(problem))
    if as_json:
        line(file=str(name), bytes=len(data), lot=lot.job.number, paper=region.paper, demo=told.demo)
    else:
        say(f"{name}: report of lot {lot.job.number:04d}", err=True)


def _lot(book: "Ledger", number: str) -> Lot:
    from benchlog.ledger.lots import lot

    return lot(book, number_of(number))


def _tell_lot(lot: Lot, *, as_json: bool) -> None:
    job = lot.job
    if as_json:
        line(
            lot=job.number,
            tag=job.tag,
            name=lot.name,
            state=job.state,
            opened_utc=job.opened_utc,
            closed_utc=job.closed_utc,
            item=job.item.kind,
            make=job.item.make,
            model=job.item.model,
            rated_volts=job.motor.rated_volts,
            test=lot.test_id,
            limits=lot.limits_id,
            operator=lot.operator,
            leads=lot.leads,
            fixture=lot.fixture,
            ambient_c=lot.ambient_c,
            units=lot.units,
        )
        return
    kind = " · ".join(part for part in (job.item.kind, job.item.model) if part)
    count = f"{lot.units} {'unit' if lot.units == 1 else 'units'}"
    state = ", closed" if job.state is JobState.CLOSED else ""
    limits = "no limits" if lot.limits_id is None else f"limits {lot.limits_id}"
    say(f"{job.number:04d}  {day_text(job.opened_utc)}  {lot.name}: {kind}, {count}, {limits}{state}")


def _tell_unit(unit: Unit, *, as_json: bool) -> None:
    from benchlog.motor.limit_values import Judged

    judged = msgspec.json.decode(unit.judged, type=Judged) if unit.judged else None
    if as_json:
        line(
            unit=unit.number,
            serial=unit.serial,
            run=unit.run,
            passed=unit.passed,
            judged_run=unit.judged_run,
            failed_before=unit.failed_before,
            judged=None if judged is None else msgspec.to_builtins(judged),
        )
        return
    run = "no run yet" if unit.run is None else f"run {unit.counts}: {_RESULTS[unit.passed]}"
    if unit.failed_before:
        run += ", failed before"
    if unit.counts != unit.run:
        run += f"; run {unit.run} has no verdict"
    say(f"{unit.number:4d}  {unit.serial:24.24}  {run}" + (f"; {judged.sentence}" if judged else ""))


def _tell_rate(report: "LotReport") -> None:
    rate = report.pass_rate
    line(judged=rate.count, passed=rate.hits, interval=rate.interval, due=list(report.due), demo=report.demo)


def _tell_check(made: LotCheck, due: Iterable[str], again: Iterable[Unit], *, as_json: bool) -> None:
    serials = [one.serial for one in again]
    if as_json:
        line(**msgspec.to_builtins(made), due=list(due), measured_before=serials)
        return
    held = "passed" if made.passed else "did NOT pass"
    say(f"{made.kind} check: {show(made.value, made.unit)}, {held}")
    if left := list(due):
        click.echo(f"Still due in this shift: {' and '.join(left)}")
    for serial in serials:
        say(f"{serial}: measured before the check: measure it again")
