"""What several commands share: the ledger they touch, numbers as a command line may give them, how they fail."""

import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, NoReturn

import click

from benchlog.errors import LedgerError, Refused
from benchlog.quantities import strict
from benchlog.recovery.ceilings import PROGRAM_VOLTS
from benchlog.settings import ledger_file
from drivers.foreign import inert

EXIT_REFUSED = 2
NO_RATING = "no rating: give the motor's rated volts with --rated-voltage"


def default_ledger() -> Path:
    """Where the ledger is when nobody says."""
    return ledger_file()


def kept_ledger(ledger: Path | None) -> Path:
    """The one that is there already. Raises Refused: a name typed wrong makes no new one."""
    path = ledger or default_ledger()
    if not path.exists():
        raise Refused(f"{path}: there is no ledger")
    return path


def ledger_option(command: Callable[..., Any]) -> Callable[..., Any]:
    return click.option(
        "--ledger",
        type=click.Path(path_type=Path),
        help=f"The ledger file.  [default: {default_ledger()}]",
    )(command)


def output_option(command: Callable[..., Any]) -> Callable[..., Any]:
    return click.option(
        "--output", default=1, show_default=True, type=click.IntRange(1, 16), help="Which output of the supply."
    )(command)


def json_option(command: Callable[..., Any]) -> Callable[..., Any]:
    return click.option("--json", "as_json", is_flag=True, help="One JSON object a line, and nothing else.")(command)


def positive(text: str, name: str, unit: str, *, at_most: float) -> float:
    """A number above zero and within a bound. Raises Refused naming value, limit and unit."""
    value = strict(text, name)
    if value <= 0:
        raise Refused(f"{name}: {value:g} {unit} is not above zero")
    if value > at_most:
        raise Refused(f"{name}: {value:g} {unit} is above the program's {at_most:g} {unit}")
    return value


def rated_volts_of(text: str) -> float:
    """V. Raises Refused."""
    return positive(text, "rated voltage", "V", at_most=PROGRAM_VOLTS)


def check_words(resource: str, **words: str) -> None:
    """Raises Refused without an address, or where a word, by its option's name, could not be kept with a run."""
    if not resource.strip():
        raise Refused("no supply: give its address with --supply")
    for name, text in words.items():
        if not text.isprintable():
            raise Refused(f"{name.replace('_', ' ')}: has characters that can't be shown")


def fail(text: str) -> NoReturn:
    """One line on stderr, exit status 2."""
    say(f"benchlog: {text}", err=True)
    sys.exit(EXIT_REFUSED)


def say(text: str, *, err: bool = False) -> None:
    """Text that may come from a supply, a file or a ledger: a terminal obeys nothing in it."""
    click.echo("\n".join(inert(one) for one in text.split("\n")), err=err)


def line(**values: Any) -> None:
    """One JSON object on stdout."""
    click.echo(json.dumps(values))


Problem = (Refused, LedgerError)
