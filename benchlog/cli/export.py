"""`benchlog export`: a run's trace, or all jobs, as CSV."""

import io
import sys
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import Problem, default_ledger, fail, ledger_option
from benchlog.errors import Refused

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from benchlog.records import Job

_PAGE = 500


@click.command("export")
@click.argument("run", type=int, required=False)
@click.option("--jobs", "all_jobs", is_flag=True, help="All jobs, newest first, in place of a run's trace.")
@click.option("--output", type=click.Path(path_type=Path, dir_okay=False), help="File to write.  [default: stdout]")
@click.option(
    "--form",
    "form_name",
    type=click.Choice(["data", "spreadsheet"]),
    default="data",
    show_default=True,
    help="data: for programs, exact, decimal points. spreadsheet: titles, decimal mark of a locale, no formulas.",
)
@click.option(
    "--locale",
    envvar=["LC_ALL", "LC_NUMERIC", "LANG"],
    default="",
    help="Of the spreadsheet form, such as de_DE.  [default: the terminal's]",
)
@ledger_option
def command(
    run: int | None, all_jobs: bool, output: Path | None, form_name: str, locale: str, ledger: Path | None
) -> None:
    """Write the trace of RUN, or all jobs, as CSV: times in s, V, A.

    With --output the data form gets a description of its columns (CSVW) in a file beside it.
    """
    from benchlog.ledger.store import Ledger
    from benchlog.reports import csvw, jobs_csv, trace_csv
    from benchlog.reports.csv_forms import DATA, Column, spreadsheet

    text = io.StringIO(newline="")
    columns: Sequence[Column] = trace_csv.COLUMNS
    key: Sequence[str] = ()
    title = f"run {run}"
    try:
        if (run is None) != all_jobs:
            raise Refused("export needs the number of a run, or --jobs for all jobs; one of the two")
        form = DATA if form_name == "data" else spreadsheet(locale)
        with Ledger.open(ledger or default_ledger()) as book:
            if run is None:
                columns, key, title = jobs_csv.COLUMNS, jobs_csv.KEY, "jobs"
                jobs_csv.write_jobs(_jobs(book), text, form)
            else:
                trace_csv.write_csv(book.run(run), book.trace(run), text, form)
    except Problem as problem:
        fail(str(problem))
    if output is None:
        sys.stdout.flush()
        sys.stdout.buffer.write(text.getvalue().encode("utf-8"))
        return
    files = {output: text.getvalue()}
    if form is DATA:
        beside = output.with_name(output.name + csvw.SUFFIX)
        files[beside] = csvw.description(columns, url=output.name, title=title, key=key)
    _write_new(files)
    click.echo(f"{output}: {title}", err=True)


def _jobs(book: "Ledger") -> Iterator["Job"]:
    page = book.jobs(limit=_PAGE)
    while page:
        yield from page
        page = book.jobs(limit=_PAGE, before_number=page[-1].number)


def _write_new(files: dict[Path, str]) -> None:
    # Never over what is there: it could be the ledger itself. All are made before a byte is written.
    made: list[Path] = []
    path = Path()
    try:
        with ExitStack() as stack:
            opened = []
            for path in files:
                opened.append(stack.enter_context(path.open("xb")))
                made.append(path)
            for path, file in zip(files, opened, strict=True):
                file.write(files[path].encode("utf-8"))
    except OSError as error:
        for one in made:
            one.unlink(missing_ok=True)
        there = isinstance(error, FileExistsError)
        fail(f"{path}: {'is there already, and stays as it is' if there else error.strerror}")
