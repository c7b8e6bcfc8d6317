"""`benchlog start-test`: locks how starts are captured under a name and a version, or lists the tests there are."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
import msgspec

from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line, say
from benchlog.cli.start_test_options import given_fields, start_test_options
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.quantities import show
from benchlog.recovery.ceilings import intersect
from benchlog.recovery.start_test import StartTest, Trigger, above_test_ceilings

if TYPE_CHECKING:
    from benchlog.ledger.start_tests import KeptTest
    from benchlog.ledger.store import Ledger


@click.command("start-test")
@click.argument("name", required=False)
@start_test_options
@click.option("--version", type=int, help="Lock it as this version.  [default: the next one that is free]")
@click.option("--who", default="", metavar="NAME", help="Who locks it.")
@click.option("--list", "listing", is_flag=True, help="Show the tests there are, or those of NAME; lock none.")
@ledger_option
@json_option
def command(
    name: str | None,
    version: int | None,
    who: str,
    listing: bool,
    ledger: Path | None,
    as_json: bool,
    **options: str | int | None,
) -> None:
    """Lock a start test under NAME and a version. A locked test never changes: what differs is another version.

    The same values again are the version that has them. The ceilings still decide what a run may do.
    """
    from benchlog.ledger.start_tests import start_tests
    from benchlog.ledger.store import Ledger

    try:
        if not listing and not (name and name.strip()):
            raise Refused("a start test needs a NAME; --list shows those there are")
        with Ledger.open(ledger or default_ledger()) as book:
            if listing:
                found = [kept for kept in start_tests(book) if name is None or kept.test.name == name]
            else:
                assert name is not None
                found = [_lock(book, name, version, given_fields(options), who)]
    except Problem as problem:
        fail(str(problem))
    for kept in found:
        tell(kept, as_json=as_json)
    if not found and not as_json:
        click.echo("No start test yet.")


def _lock(book: "Ledger", name: str, version: int | None, fields: dict[str, Any], who: str) -> "KeptTest":
    """Raises Refused without volts, and for more than the program's own ceilings; LedgerError."""
    from benchlog.ledger.start_tests import lock, next_version, start_tests

    if "volts" not in fields:
        raise Refused("no level: give --volts")
    asked: dict[str, Any] = {"name": " ".join(name.split()), "version": version or 1} | fields
    test = StartTest(**asked)
    if problems := above_test_ceilings(test, intersect({})):
        raise Refused("; ".join(problems))
    if version is None:
        named = [kept for kept in start_tests(book) if kept.test.name == test.name]
        same = (kept for kept in named if msgspec.structs.replace(test, version=kept.test.version) == kept.test)
        if (known := next(same, None)) is not None:
            return known
        test = msgspec.structs.replace(test, version=next_version(book, test.name))
    return lock(book, test, who)


def kept_test(book: "Ledger", name: str, version: int | None = None) -> "KeptTest":
    """The newest version of a locked test, or the one asked for. Raises Refused, LedgerError."""
    from benchlog.ledger.start_tests import start_tests

    named = [kept for kept in start_tests(book) if kept.test.name == " ".join(name.split())]
    if not named:
        raise Refused(f'there is no start test called "{name[:40]}": benchlog start-test locks one')
    found = named if version is None else [kept for kept in named if kept.test.version == version]
    if not found:
        raise Refused(f'start test "{name[:40]}" has no version {version}')
    return found[0]


def tell(kept: "KeptTest", *, as_json: bool) -> None:
    """One test, all its fields."""
    test = kept.test
    if as_json:
        line(**msgspec.to_builtins(test), id=kept.id, locked_utc=kept.utc, who=kept.who, digest=kept.digest)
        return
    say(f"{test.name}, version {test.version}, locked {day_text(kept.utc)}{f' by {kept.who}' if kept.who else ''}")
    for row in lines_of(test):
        say(f"  {row}")


def lines_of(test: StartTest) -> list[str]:
    """A test in a few lines of words."""
    limit = "the stall current that the probe finds" if test.amps is None else show(test.amps, "A")
    trigger = f"trigger on {test.trigger.value}"
    if test.trigger is not Trigger.OUTPUT_ON and test.level is not None:
        unit = "A" if test.trigger is Trigger.AMPS else "V"
        trigger += f" through {show(test.level, unit)}, hysteresis {show(test.hysteresis, unit)}"
    found = [
        f"{test.starts} {'start' if test.starts == 1 else 'starts'} at {show(test.volts, 'V')}, limit {limit}",
        f"held {show(test.on_s, 's')}, at rest {show(test.rest_s, 's')} before each, still within "
        f"{show(test.still_s, 's')}",
        f"{trigger}, {show(test.before_s, 's')} kept before it",
    ]
    if test.trigger is not Trigger.OUTPUT_ON:
        found.append(f"armed for {show(test.arm_s, 's')} at most")
    if test.interleave > 1:
        found.append(f"interleaved: {test.interleave} starts fill in one curve")
    return found
