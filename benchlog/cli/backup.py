"""`benchlog backup`: a verified copy of the ledger now, or the list of those there are."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line, say
from benchlog.clock import minute_text
from benchlog.quantities import show

if TYPE_CHECKING:
    from benchlog.ledger.backups import Backup


@click.command("backup")
@click.option(
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Copy to this file, its originals beside it.  [default: beside the ledger, with the others]",
)
@click.option("--list", "listing", is_flag=True, help="Show the backups there are, newest first; make none.")
@ledger_option
@json_option
def command(output: Path | None, listing: bool, ledger: Path | None, as_json: bool) -> None:
    """Copy the ledger, and check the copy. Works while a window is open.

    A backup is made by itself at the day's first start; one made later that day takes its place. Kept are the newest of
    7 days, 4 weeks and 12 months; what --output wrote stays until you remove it.
    """
    book = ledger or default_ledger()
    try:
        if listing:
            _list(book, as_json=as_json)
        elif output is not None:
            _copy_to(book, output, as_json=as_json)
        else:
            _back_up(book, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    except OSError as error:
        fail(f"{book}: {error.strerror or error}")


def told(backup: "Backup") -> str:
    """One backup in a line."""
    state = "verified" if backup.there else "NOT THERE, or not of its size"
    text = f"{minute_text(backup.utc)}  {show(backup.size, 'B')}  {backup.jobs} jobs  {state}  {backup.path}"
    return f"{text}  ({backup.trouble})" if backup.trouble else text


def _fields(backup: "Backup") -> dict[str, object]:
    return {name: getattr(backup, name) for name in backup.__struct_fields__}


def _list(book: Path, *, as_json: bool) -> None:
    from benchlog.ledger.backups import backups, last_good

    found = backups(book)
    if as_json:
        for one in found:
            line(**_fields(one))
        return
    good = last_good(book)
    say(f"Last good backup: {told(good)}" if good else "There is no backup yet.")
    for one in found:
        say(f"  {told(one)}")


def _back_up(book: Path, *, as_json: bool) -> None:
    from benchlog.clock import SystemClock
    from benchlog.ledger.backups import back_up, last_good
    from benchlog.ledger.opening import revision_of

    try:
        revision_of(book)
        made = back_up(book, SystemClock())
    except Problem as problem:
        good = last_good(book)
        last = f"the last good one is {told(good)}" if good else "there is none from before"
        fail(f"no backup was made: {problem}; {last}")
    if as_json:
        line(**_fields(made))
    else:
        say(told(made))


def _copy_to(book: Path, output: Path, *, as_json: bool) -> None:
    from benchlog.ledger.backups import copy_verified, keep_originals, originals_of, told_by
    from benchlog.ledger.opening import revision_of
    from benchlog.ledger.sql_errors import translated

    revision = revision_of(book)
    copy_verified(book, output)
    with translated(output):
        trouble = "; ".join(keep_originals(originals_of(book), originals_of(output)))
        _, jobs, _ = told_by(output)
        size = output.stat().st_size
    if as_json:
        line(path=str(output), size=size, revision=revision, jobs=jobs, trouble=trouble)
    else:
        say(f"{output}: {show(size, 'B')}, {jobs} jobs, verified" + (f" ({trouble})" if trouble else ""))
