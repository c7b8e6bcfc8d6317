"""`benchlog show`: one job as its sheet tells it, in the terminal."""

from pathlib import Path

import click

from benchlog.cli.ceilings import number_of
from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line
from benchlog.cli.words import cold_words
from benchlog.history.cold_restart import cold_restart_due
from benchlog.settings import owner_settings


@click.command("show")
@click.argument("job")
@ledger_option
@json_option
def command(job: str, ledger: Path | None, as_json: bool) -> None:
    """Show JOB, a number: what its job sheet says. Writes nothing."""
    from benchlog.ledger.store import Ledger
    from benchlog.reports.document import document
    from benchlog.reports.regions import here
    from benchlog.reports.sheet import gather, plain
    from benchlog.reports.sheet_text import text_of

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            found = book.job_by_number(number_of(job))
            sheet = gather(book, found)
            cold = cold_restart_due(book.runs(found.id), book.clock.utc())
    except Problem as problem:
        fail(str(problem))
    if as_json:
        line(**plain(sheet))
    else:
        click.echo(text_of(document(sheet, here(), currency=owner_settings().shop.currency)), nl=False)
        if cold is not None:
            told = cold_words(cold, found.number)
            click.echo(f"\n{told[0].upper()}{told[1:]}")
