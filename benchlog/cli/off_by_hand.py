"""Says at the terminal that an output is not confirmed off, and waits for the person who switches it off by hand."""

import sys
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import say
from benchlog.cli.words import ACKNOWLEDGED, NOT_ACKNOWLEDGED, NOT_OFF, OFF_BY_HAND, UNCONFIRMED
from benchlog.clock import minute_text
from benchlog.errors import LedgerError, Refused

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger


def somebody_there(*, yes: bool, as_json: bool) -> bool:
    """Whether there is a person who can be asked."""
    return not yes and not as_json and sys.stdin.isatty()


def look_back(book: "Ledger", resource: str, *, ask: bool) -> None:
    """Before anything is done on a supply: what earlier runs left unconfirmed there.

    With `ask` it waits for a person, and raises Refused where they leave instead. Without, it is said and goes on: a
    run begins with reading back that the output is off.
    """
    from benchlog.ledger.off_by_hand import not_confirmed

    runs = not_confirmed(book, resource=resource)
    for run in runs:
        number = book.job(run.job).number
        click.echo(UNCONFIRMED.format(run=run.id, job=number, at=minute_text(run.started_utc)), err=True)
    if runs and ask and not wait_for_acknowledgement(book, resource):
        raise Refused("nobody has said that the supply was switched off by hand")


def shout() -> None:
    """The last line of a run whose output is not confirmed off."""
    click.secho(f"\n*** {NOT_OFF} ***", fg="red", bold=True)


def wait_for_acknowledgement(book: "Ledger", resource: str) -> bool:
    """Waits until a person says so, and keeps that with the jobs; False where they leave instead."""
    from benchlog.ledger.off_by_hand import acknowledge, not_confirmed

    try:
        while str(click.prompt(OFF_BY_HAND, default="", show_default=False)).strip().lower() != "off":
            shout()
    except click.Abort:
        click.echo(f"\n{NOT_ACKNOWLEDGED}")
        shout()
        return False
    try:
        runs = not_confirmed(book, resource=resource)
        acknowledge(book, runs)
        if runs:  # else it was not filed yet, and is asked again when it is
            click.echo(ACKNOWLEDGED)
    except LedgerError as error:
        say(f"benchlog: not kept, and asked again before the next run on this supply: {error}", err=True)
    return True
