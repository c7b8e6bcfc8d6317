"""`benchlog attach`: photos and files kept with a job."""

import sys
from pathlib import Path

import click

from benchlog.cli.ceilings import number_of
from benchlog.cli.options import (
    EXIT_REFUSED,
    Problem,
    default_ledger,
    fail,
    json_option,
    ledger_option,
    line,
    say,
)
from benchlog.errors import Refused
from benchlog.quantities import show


@click.command("attach")
@click.argument("job")
@click.argument("files", nargs=-1, required=True, metavar="FILE...", type=click.Path(path_type=Path))
@click.option("--caption", default="", metavar="TEXT", help="What is seen on them.")
@click.option("--who", default="", metavar="NAME", help="Who attaches them.")
@ledger_option
@json_option
def command(job: str, files: tuple[Path, ...], caption: str, who: str, ledger: Path | None, as_json: bool) -> None:
    """Keep photos and other files with JOB, each byte for byte beside the ledger.

    One that is refused does not keep the others back.
    """
    from benchlog.ledger.files import attach
    from benchlog.ledger.store import Ledger
    from benchlog.pictures.taking import take_file

    refused = False
    try:
        with Ledger.open(ledger or default_ledger()) as book:
            of = book.job_by_number(number_of(job))
            for path in files:
                try:
                    taken = take_file(path)
                    kept = attach(book, of.id, taken, caption=caption, who=who)
                except Refused as problem:
                    say(f"benchlog: {problem}", err=True)
                    refused = True
                    continue
                if as_json:
                    line(
                        job=of.number,
                        file=kept.id,
                        name=kept.name,
                        media_type=kept.media_type,
                        size=kept.size,
                        width=kept.width,
                        height=kept.height,
                        sha256=kept.sha256,
                        caption=kept.caption,
                        who=kept.who,
                        thumbnail=kept.thumbnail is not None,
                        remark=taken.remark,
                    )
                    continue
                pixels = "" if kept.width is None else f", {kept.width} × {kept.height} pixels"
                say(f"Job {of.number:04d}: {kept.name} ({kept.media_type}, {show(kept.size, 'B')}{pixels})")
                if taken.remark:
                    say(f"  {taken.remark}")
    except Problem as problem:
        fail(str(problem))
    if refused:
        sys.exit(EXIT_REFUSED)
