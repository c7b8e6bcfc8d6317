"""`benchlog restore`: puts a backup in the ledger's place, and keeps what was there."""

import sys
from pathlib import Path

import click

from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line, say
from benchlog.errors import Refused


@click.command("restore")
@click.argument("source", metavar="FROM", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--yes", is_flag=True, help="Do not ask.")
@ledger_option
@json_option
def command(source: Path, yes: bool, ledger: Path | None, as_json: bool) -> None:
    """Check the backup FROM, and put it in the ledger's place. The old file is kept under a dated name.

    Works with a damaged ledger, and with none. Refused while another program has the ledger open for writing.
    """
    from benchlog.clock import SystemClock, minute_text
    from benchlog.ledger.restoring import look, restore

    book = ledger or default_ledger()
    try:
        found = look(source)
        made = "" if found.utc is None else f" of {minute_text(found.utc)}"
        if not yes:
            if as_json or not sys.stdin.isatty():
                raise Refused("nobody at the keyboard to confirm: give --yes to restore")
            say(f"The backup{made} holds {found.jobs} jobs. What was written into {book} since is not in it.")
            if not click.confirm("Put it in the ledger's place?", default=False):
                raise Refused("not confirmed")
        done = restore(source, book, SystemClock())
    except Problem as problem:
        fail(str(problem))
    except OSError as error:
        fail(f"{book}: {error.strerror or error}")
    kept = None if done.kept is None else str(done.kept)
    if as_json:
        aside = [str(one) for one in done.set_aside]
        told = {"kept": kept, "jobs": found.jobs, "revision": found.revision, "utc": found.utc}
        line(ledger=str(book), source=str(source), **told, set_aside=aside, trouble=list(done.trouble))
        return
    say(f"Restored: {book} is the backup{made}, {found.jobs} jobs.")
    if kept is not None:
        say(f"What was there before is kept: {kept}")
    for journal in done.set_aside:
        say(f"A run that was not filed yet is of a job that the backup does not have. Its record is kept: {journal}")
    for trouble in done.trouble:
        say(f"Not brought back: {trouble}")
