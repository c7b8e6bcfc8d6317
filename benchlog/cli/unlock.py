"""`benchlog unlock`: lets one job go up to the owner's higher ceilings for a while; who did so, when and why."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.ceilings import job_limits, number_of, show_ceilings
from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line, say
from benchlog.cli.words import QUANTITIES, quantity_text
from benchlog.clock import minute_text
from benchlog.errors import Refused
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger


@click.command("unlock")
@click.argument("job", required=False)
@click.option("--by", "who", default="", metavar="NAME", help="Who unlocks.")
@click.option("--reason", "why", default="", metavar="TEXT", help="Why the usual ceilings don't do, in a few words.")
@click.option("--list", "listing", is_flag=True, help="Show who unlocked what, when and why; unlock nothing.")
@click.option("--job", "of_job", metavar="NUMBER", help="List only those of this job.")
@ledger_option
@json_option
def command(
    job: str | None, who: str, why: str, listing: bool, of_job: str | None, ledger: Path | None, as_json: bool
) -> None:
    """Let JOB go up to the ceilings that the owner's settings give in [unlocked], for 12 hours.

    The program's own, the supply's and the job's ceilings stay as they are. Every unlock is kept in the ledger.
    """
    from benchlog.ledger.store import Ledger

    try:
        number = None if (text := of_job or job) is None else number_of(text)
        if number is None and not listing:
            raise Refused("no job: give its number, or --list")
        with Ledger.open(ledger or default_ledger()) as book:
            if listing:
                _list(book, number, as_json=as_json)
            else:
                assert number is not None
                _unlock(book, number, who=who, why=why, as_json=as_json)
    except Problem as problem:
        fail(str(problem))


def _unlock(book: "Ledger", number: int, *, who: str, why: str, as_json: bool) -> None:
    from benchlog.ledger.unlocks import owner_layer, unlock

    settings, job = owner_settings(), book.job_by_number(number)
    made = unlock(book, settings, job.id, who=who, why=why)
    if not as_json:
        click.echo(f"Job {job.number:04d} {made}\nUntil {minute_text(made.until_utc)} now holds:\n")
    show_ceilings(owner_layer(book, settings, job.id), job_limits(job.motor.rated_volts, None, None), as_json=as_json)


def _list(book: "Ledger", number: int | None, *, as_json: bool) -> None:
    from benchlog.ledger.unlocks import unlocks

    made = unlocks(book, None if number is None else book.job_by_number(number).id)
    for one in reversed(made):
        job = book.job(one.job).number
        limits = {name: value for name in QUANTITIES if (value := getattr(one.limits, name)) is not None}
        if as_json:
            line(job=job, utc=one.utc, until_utc=one.until_utc, who=one.who, why=one.why, limits=limits)
        else:
            far = ", ".join(f"{QUANTITIES[name][0]} {quantity_text(name, value)}" for name, value in limits.items())
            when = f"{minute_text(one.utc)} to {minute_text(one.until_utc)}"
            say(f"{job:04d}  {when}  {one.who}: {one.why}  [{far}]")
    if not made and not as_json:
        click.echo("Nothing was ever unlocked.")
