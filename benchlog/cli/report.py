"""`benchlog report`: a job's sheet or its tag, for paper."""

from pathlib import Path

import click

from benchlog.cli.ceilings import number_of
from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.errors import Refused
from benchlog.reports.regions import Paper, Region, here
from benchlog.settings import owner_settings

_SHEET, _TAG = (".pdf", ".html"), (".pdf", ".svg")


@click.command("report")
@click.argument("job")
@click.option(
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    help="File to write: .pdf or .html; .pdf or .svg of a tag.",
)
@click.option("--tag", "as_tag", is_flag=True, help="A tag of 62 x 29 mm; with --paper a sheet to cut it out of.")
@click.option("--paper", type=click.Choice([paper.value for paper in Paper]), help="Paper size, if not the usual here.")
@click.option("--photos", is_flag=True, help="With the job's photos, small.")
@ledger_option
@json_option
def command(
    job: str, output: Path | None, as_tag: bool, paper: str | None, photos: bool, ledger: Path | None, as_json: bool
) -> None:
    """Write the sheet of JOB, a number, as PDF or HTML. A file that is there stays as it is."""
    from benchlog.ledger.files import files_of
    from benchlog.ledger.store import Ledger
    from benchlog.reports.sheet import gather

    try:
        region = region_of(paper)
        with Ledger.open(kept_ledger(ledger)) as book:
            found = book.job_by_number(number_of(job))
            name = output or Path(f"{file_name(found.tag)}{'-tag' if as_tag else ''}.pdf")
            check_name(name, _TAG if as_tag else _SHEET)
            sheet = gather(book, found, photos=files_of(book, found.id) if photos else ())
        if as_tag:
            from benchlog.reports.drawing import svg
            from benchlog.reports.sheet_pdf import drawing_pdf
            from benchlog.reports.tag import strip, tag

            drawing = strip(found, region, demo=sheet.demo) if paper else tag(found, demo=sheet.demo)
            data = svg(drawing).encode() if name.suffix == ".svg" else drawing_pdf(drawing, f"Tag {found.tag}")
        else:
            from benchlog.reports.document import document

            told = document(sheet, region, currency=owner_settings().shop.currency)
            if name.suffix == ".html":
                from benchlog.reports.sheet_html import html_of

                data = html_of(told, region.paper).encode()
            else:
                from benchlog.reports.sheet_pdf import sheet_pdf

                data = sheet_pdf(told, region.paper)
        write_new(name, data)
    except Problem as problem:
        fail(str(problem))
    if as_json:
        line(file=str(name), bytes=len(data), job=found.number, tag=found.tag, paper=region.paper, demo=sheet.demo)
    else:
        say(f"{name}: {'tag' if as_tag else 'sheet'} of job {found.number:04d}", err=True)


def region_of(paper: str | None) -> Region:
    """As asked, else as the owner's settings say, else as it is usual where this computer is."""
    usual, told = here(), paper or owner_settings().shop.paper
    return Region(decimal=usual.decimal, paper=Paper(told)) if told else usual


def file_name(tag: str) -> str:
    # A ledger from elsewhere may hold any text as a tag.
    return "".join(letter if letter.isalnum() or letter in "-_" else "_" for letter in tag)[:60] or "job"


def check_name(name: Path, suffixes: tuple[str, ...]) -> None:
    if name.suffix not in suffixes:
        raise Refused(f"{name}: write a name that ends in {' or '.join(suffixes)}")
    if name.exists():
        raise Refused(f"{name}: is there already, and stays as it is")


def write_new(name: Path, data: bytes) -> None:
    try:
        with name.open("xb") as file:
            file.write(data)
    except FileExistsError as error:
        raise Refused(f"{name}: is there already, and stays as it is") from error
    except OSError as error:
        raise Refused(f"{name}: {error.strerror}") from error
