"""A job's sheet or tag, a trace or a list of jobs, as the bytes of files. From any thread; Qt paints only the PDF."""

import io
from collections.abc import Callable, Iterator
from pathlib import Path

from benchlog.errors import Refused
from benchlog.ledger.files import files_of
from benchlog.ledger.finding_jobs import find_jobs
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Wanted
from benchlog.records import Job
from benchlog.reports import csvw, jobs_csv, trace_csv
from benchlog.reports.csv_forms import DATA, Form, spreadsheet
from benchlog.reports.document import Document, document
from benchlog.reports.regions import Paper, Region, here
from benchlog.reports.sheet import gather
from benchlog.reports.sheet_html import html_of
from benchlog.reports.sheet_pdf import drawing_pdf, sheet_images, sheet_pdf
from benchlog.reports.tag import tag
from benchlog.settings import Settings

SUFFIXES = {"pdf": ".pdf", "html": ".html", "tag": ".pdf", "trace": ".csv", "trace_sheet": ".csv", "jobs": ".csv"}
_PAGE = 500


def usual_name(what: str, job: Job, run: int = 0) -> str:
    """Of the file: a ledger from elsewhere may hold any text as a tag, so only what can be in a name is kept of it."""
    kept = "".join(letter if letter.isalnum() or letter in "-_" else "_" for letter in job.tag)[:60] or "job"
    middle = {"tag": "-tag", "trace": f"-run-{run}", "trace_sheet": f"-run-{run}"}.get(what, "")
    return f"{'jobs' if what == 'jobs' else kept}{middle}{SUFFIXES[what]}"


def job_paper(ledger: Ledger, job_id: int, what: str, settings: Callable[[], Settings]) -> bytes:
    """`what`: "pdf" or "html" for the sheet, "tag". Raises Refused, LedgerError."""
    if what == "tag":
        job = ledger.job(job_id)
        return drawing_pdf(tag(job, demo=gather(ledger, job).demo), f"Tag {job.tag}")
    told, paper = _sheet(ledger, job_id, settings)
    return html_of(told, paper).encode() if what == "html" else sheet_pdf(told, paper)


def job_images(ledger: Ledger, job_id: int, settings: Callable[[], Settings]) -> list[bytes]:
    """The pages of the sheet as PNG. Raises Refused, LedgerError."""
    return sheet_images(*_sheet(ledger, job_id, settings))


def _sheet(ledger: Ledger, job_id: int, settings: Callable[[], Settings]) -> tuple[Document, Paper]:
    job, shop = ledger.job(job_id), settings().shop
    usual = here()
    region = Region(decimal=usual.decimal, paper=Paper(shop.paper)) if shop.paper else usual
    sheet = gather(ledger, job, photos=files_of(ledger, job_id))
    return document(sheet, region, currency=shop.currency), region.paper


def trace_table(ledger: Ledger, run_id: int, name: str, *, locale: str = "") -> dict[str, bytes]:
    """Files by name: the trace, with the description of its columns beside it, or for a spreadsheet of a `locale`."""
    form = spreadsheet(locale) if locale else DATA
    out = io.StringIO(newline="")
    trace_csv.write_csv(ledger.run(run_id), ledger.trace(run_id), out, form)
    return _with_description(name, out, form, csvw.description(trace_csv.COLUMNS, url=name, title=f"run {run_id}"))


def jobs_table(ledger: Ledger, wanted: Wanted | tuple[int, ...], name: str) -> dict[str, bytes]:
    """Files by name: the jobs that are wanted, or those of these keys."""
    out = io.StringIO(newline="")
    jobs = map(ledger.job, wanted) if isinstance(wanted, tuple) else _all(ledger, wanted)
    jobs_csv.write_jobs(jobs, out)
    described = csvw.description(jobs_csv.COLUMNS, url=name, title="jobs", key=jobs_csv.KEY)
    return _with_description(name, out, DATA, described)


def write_new(files: dict[Path, bytes]) -> None:
    """All or none, and never over what is there: it could be the ledger itself. Raises Refused."""
    made: list[Path] = []
    path = Path()
    try:
        for path, data in files.items():
            with path.open("xb") as file:
                made.append(path)
                file.write(data)
    except OSError as error:
        for one in made:
            one.unlink(missing_ok=True)
        there = isinstance(error, FileExistsError)
        raise Refused(
            f"{path}: {'is there already, and stays as it is' if there else error.strerror or error}"
        ) from error


def _all(ledger: Ledger, wanted: Wanted) -> Iterator[Job]:
    page = find_jobs(ledger, wanted, None, _PAGE)
    yield from page.jobs
    while page.after is not None:
        page = find_jobs(ledger, wanted, page.after, _PAGE)
        yield from page.jobs


def _with_description(name: str, out: io.StringIO, form: Form, described: str) -> dict[str, bytes]:
    files = {name: out.getvalue().encode()}
    return files | ({name + csvw.SUFFIX: described.encode()} if form is DATA else {})
