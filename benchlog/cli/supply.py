"""`benchlog supply`: what a supply is, what it can and what it is without, before anything is switched on."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from benchlog.cli.options import (
    EXIT_REFUSED,
    Problem,
    default_ledger,
    fail,
    json_option,
    ledger_option,
    line,
    positive,
)
from benchlog.cli.supply_report import Report
from benchlog.cli.supply_words import as_toml
from benchlog.errors import Refused

if TYPE_CHECKING:
    from benchlog.cli.supply_check import Resistor

MOST_VOLTS, MOST_AMPS, MOST_OUTPUTS = 1000.0, 1000.0, 16


@click.command("supply")
@click.argument("resource")
@click.option("--output", default=1, show_default=True, type=click.IntRange(1, MOST_OUTPUTS), help="Which output.")
@click.option("--most-volts", metavar="V", help="What its outputs can give, where it does not tell.")
@click.option("--most-amps", metavar="A", help="What its outputs can give, where it does not tell.")
@click.option("--dialect", "told", metavar="NAME|FILE", help="Do not look for the dialect: it is this one.")
@click.option("--write", "draft", type=click.Path(path_type=Path), help="Write the dialect to a file, to complete it.")
@click.option("--try", "tries", is_flag=True, help="With the output off, also try what no answer tells: it writes.")
@click.option("--check", "checks", is_flag=True, help="With a resistor of known value on the leads: switches on.")
@click.option("--settling", "settles", is_flag=True, help="With nothing connected: how quick it is. Switches on.")
@click.option("--ohm", metavar="Ω", help="The resistor of a check.")
@click.option("--ohm-tolerance", "ohm_percent", default="1", show_default=True, metavar="%")
@click.option("--tolerance", "percent", default="2", show_default=True, metavar="%", help="Of volts and amps.")
@click.option("--watts", default="1", show_default=True, metavar="W", help="What the resistor bears.")
@click.option("--yes", is_flag=True, help="What is to be confirmed is so.")
@click.option("--within", "within_s", default=7.5, show_default=True, type=click.FloatRange(1.0, 120.0), metavar="S")
@ledger_option
@json_option
def command(
    resource: str,
    output: int,
    most_volts: str | None,
    most_amps: str | None,
    told: str | None,
    draft: Path | None,
    within_s: float,
    tries: bool,
    checks: bool,
    settles: bool,
    yes: bool,
    ledger: Path | None,
    as_json: bool,
    **stated: Any,
) -> None:
    """Ask a supply what it is: by questions only, nothing is set or switched.

    What is found is kept, and runs on this address then open with it. What no question can tell is asked of you.

    Exit status: 0 if runs can be made with it, 2 otherwise.
    """
    try:
        if checks and settles:
            raise Refused("--check wants a resistor on the leads and --settling nothing: one after the other")
        given = _resistor(**stated) if checks else None
        ranges = _ranges(most_volts, most_amps)
        report = Report(resource.strip(), output, settles=settles)
        if tries:
            _agreed(yes=yes, as_json=as_json)
        report.take(told, ranges, within_s, tries=tries)
        if draft is not None and report.dialect is not None:
            draft.write_text(as_toml(report.dialect), encoding="utf-8")
        report.keep(ledger or default_ledger(), told=told is not None or ranges is not None)
    except Problem as problem:
        fail(str(problem))
    except OSError as error:
        fail(f"{error.strerror or error}")
    line(**report.plain()) if as_json else report.tell()
    if not (checks or settles) or report.measured is None:
        sys.exit(0 if report.usable else EXIT_REFUSED)
    try:
        sys.exit(_switching_on(report, given, ledger or default_ledger(), yes=yes, as_json=as_json))
    except Problem as problem:
        fail(str(problem))
    except KeyboardInterrupt:
        fail("Ctrl-C before anything was switched on")


def _resistor(ohm: str | None, ohm_percent: str, percent: str, watts: str) -> "Resistor":
    """Raises Refused."""
    from benchlog.cli.supply_check import resistor

    return resistor(ohm, ohm_percent, percent, watts)


def _switching_on(report: Report, given: "Resistor | None", ledger: Path, *, yes: bool, as_json: bool) -> int:
    """A check with a resistor, else settling. The exit status. Raises Refused, LedgerError."""
    from benchlog.cli.supply_check import check_supply
    from benchlog.cli.supply_settling import measure_settling
    from benchlog.ledger.filing import file_left_behind, journals_of
    from benchlog.ledger.store import Ledger

    assert report.measured is not None
    with Ledger.open(ledger) as book:
        file_left_behind(book, journals_of(book.path))
        can = report.measured.capabilities
        if given is not None:
            return check_supply(book, report.resource, can, given, yes=yes, as_json=as_json)
        status, report.settled = measure_settling(book, report.resource, can, yes=yes, as_json=as_json)
        if report.settled is not None:
            report.keep_in(book)
        return status


def _agreed(*, yes: bool, as_json: bool) -> None:
    """Raises Refused."""
    from benchlog.cli.off_by_hand import somebody_there

    if yes:
        return
    if not somebody_there(yes=yes, as_json=as_json):
        raise Refused("nobody at the keyboard to agree: give --yes if its setpoints may be changed, and put back")
    if not click.confirm("Its setpoints are changed, to 0.5 V and 50 mA, and put back; its output stays off. Agreed?"):
        raise Refused("not agreed")


def _ranges(volts: str | None, amps: str | None) -> tuple[float, float] | None:
    """Raises Refused."""
    if volts is None and amps is None:
        return None
    if volts is None or amps is None:
        raise Refused("give both, --most-volts and --most-amps")
    return (
        positive(volts, "most volts", "V", at_most=MOST_VOLTS),
        positive(amps, "most amps", "A", at_most=MOST_AMPS),
    )
