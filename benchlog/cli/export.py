"""`benchlog export`: a run's trace as CSV."""

import io
import sys
from pathlib import Path

import click

from benchlog.cli.options import Problem, default_ledger, fail, ledger_option


@click.command("export")
@click.argument("run", type=int)
@click.option("--output", type=click.Path(path_type=Path, dir_okay=False), help="File to write.  [default: stdout]")
@ledger_option
def command(run: int, output: Path | None, ledger: Path | None) -> None:
    """Write the trace of RUN as CSV: times in s, V, A, decimal points."""
    from benchlog.ledger.store import Ledger
    from benchlog.reports.trace_csv import write_csv

    text = io.StringIO(newline="")
    try:
        with Ledger.open(ledger or default_ledger()) as book:
            write_csv(book.run(run), book.trace(run), text)
    except Problem as problem:
        fail(str(problem))
    if output is None:
        sys.stdout.flush()
        sys.stdout.buffer.write(text.getvalue().encode("utf-8"))
        return
    try:
        # Never over what is there: it could be the ledger itself.
        with output.open("xb") as file:
            file.write(text.getvalue().encode("utf-8"))
    except FileExistsError:
        fail(f"{output}: is there already, and stays as it is")
    except OSError as error:
        fail(f"{output}: {error.strerror}")
    click.echo(f"{output}: run {run}", err=True)
