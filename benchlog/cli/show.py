"""`benchlog show`: one job as its sheet tells it, in the terminal."""

from pathlib import Path

import click

from benchlog.cli.ceilings import number_of
from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line
from benchlog.errors import Refused
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

    path = ledger or default_ledger()
    try:
        if not path.exists():
            raise Refused(f"{path}: there is no ledger")
        with Ledger.open(path) as book:
            sheet = gather(book, book.job_by_number(number_of(job)))
    except Problem as problem:
        fail(str(problem))
    if as_json:
        line(**plain(sheet))
    else:
        click.echo(text_of(document(sheet, here(), currency=owner_settings().shop.currency)), nl=False)
