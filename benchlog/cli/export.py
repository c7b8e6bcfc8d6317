"""`benchlog export`: a run's trace, all jobs, or captured starts, as files for other programs."""

import io
import sys
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.export_starts import Wanted, export_starts
from benchlog.cli.options import Problem, default_ledger, fail, ledger_option
from benchlog.errors import Refused

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from benchlog.records import Job

_PAGE = 500


@click.command("export")
@click.argument("run", type=int, required=False)
@click.option("--jobs", "all_jobs", is_flag=True, help="All jobs, newest first, in place of a run's trace.")
@click.option(
    "--curves",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Captured starts in place of the trace, to this file: .csv, .npz or .h5; .svg or .png for a picture.",
)
@click.option("--lot", "lot_number", metavar="NUMBER", help="With --curves: all starts of a lot in place of a run's.")
@click.option("--limits", "limits_id", type=int, metavar="ID", help="With --curves: these too.  [default: the lot's]")
@click.option("--start", type=int, metavar="NUMBER", help="With --curves: picked out in a picture.")
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
    run: int | None,
    all_jobs: bool,
    curves: Path | None,
    lot_number: str | None,
    limits_id: int | None,
    start: int | None,
    output: Path | None,
    form_name: str,
    locale: str,
    ledger: Path | None,
) -> None:
    """Write the trace of RUN, or all jobs, as CSV: times in s, V, A.

    With --output the data form gets a description of its columns (CSVW) in a file beside it. --curves writes captured
    starts with their figures and limits: of .csv one file each. A file that is there stays as it is.
    """
    from benchlog.ledger.store import Ledger
    from benchlog.reports import csvw, jobs_csv, trace_csv
    from benchlog.reports.csv_forms import DATA, Column, spreadsheet

    text = io.StringIO(newline="")
    columns: Sequence[Column] = trace_csv.COLUMNS
    key: Sequence[str] = ()
    title = f"run {run}"
    try:
        if curves is not None or lot_number is not None:
            asked = Wanted(run=run, lot=lot_number, limits=limits_id, start=start, form=form_name, locale=locale)
            if all_jobs or output is not None or curves is None or (run is None) == (lot_number is None):
                raise Refused("--curves FILE needs the number of a run, or --lot; nothing else goes with it")
            with Ledger.open(ledger or default_ledger()) as book:
                files_of_starts = export_starts(book, asked, curves)
            _write_new(files_of_starts)
            click.echo(f"{', '.join(str(path) for path in files_of_starts)}", err=True)
            return
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
    files = {output: text.getvalue().encode()}
    if form is DATA:
        beside = output.with_name(output.name + csvw.SUFFIX)
        files[beside] = csvw.description(columns, url=output.name, title=title, key=key).encode()
    _write_new(files)
    click.echo(f"{output}: {title}", err=True)


def _jobs(book: "Ledger") -> Iterator["Job"]:
    page = book.jobs(limit=_PAGE)
    while page:
        yield from page
        page = book.jobs(limit=_PAGE, before_number=page[-1].number)


def _write_new(files: dict[Path, bytes]) -> None:
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
                file.write(files[path])
    except OSError as error:
        for one in made:
            one.unlink(missing_ok=True)
        there = isinstance(error, FileExistsError)
        fail(f"{path}: {'is there already, and stays as it is' if there else error.strerror}")
