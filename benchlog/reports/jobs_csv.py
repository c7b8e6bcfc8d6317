"""Jobs as comma-separated values: a line a job. Owner and contact are left out: they are nobody else's business."""

from collections.abc import Callable, Iterable
from typing import TextIO

from benchlog.records import Job
from benchlog.reports.csv_forms import DATA, Column, Datatype, Form, Value, write_table

_OF: tuple[tuple[Column, Callable[[Job], Value]], ...] = (
    (Column(name="number", title="Job", datatype=Datatype.INTEGER), lambda job: job.number),
    (Column(name="tag", title="Tag", datatype=Datatype.STRING), lambda job: job.tag),
    (Column(name="kind", title="Kind", datatype=Datatype.STRING), lambda job: job.item.kind),
    (Column(name="make", title="Make", datatype=Datatype.STRING), lambda job: job.item.make),
    (Column(name="model", title="Model", datatype=Datatype.STRING), lambda job: job.item.model),
    (Column(name="serial", title="Serial", datatype=Datatype.STRING), lambda job: job.item.serial),
    (
        Column(name="rated_volts", title="Rated voltage", datatype=Datatype.DOUBLE, unit="V"),
        lambda job: job.motor.rated_volts,
    ),
    (Column(name="opened_utc", title="Opened, UTC", datatype=Datatype.INSTANT), lambda job: job.opened_utc),
    (Column(name="closed_utc", title="Closed, UTC", datatype=Datatype.INSTANT), lambda job: job.closed_utc),
    (Column(name="state", title="State", datatype=Datatype.STRING), lambda job: job.state.value),
    (Column(name="complaint", title="Complaint", datatype=Datatype.STRING), lambda job: job.complaint),
    (Column(name="cause", title="Cause", datatype=Datatype.STRING), lambda job: job.cause),
    (Column(name="work_done", title="Work done", datatype=Datatype.STRING), lambda job: job.work_done),
    (Column(name="prognosis", title="Prognosis", datatype=Datatype.STRING), lambda job: job.prognosis),
    (Column(name="last_outcome", title="Last outcome", datatype=Datatype.STRING), lambda job: job.last_outcome),
    (Column(name="runs", title="Runs", datatype=Datatype.INTEGER), lambda job: job.runs),
)
COLUMNS = tuple(column for column, _ in _OF)
KEY = ("number",)


def write_jobs(jobs: Iterable[Job], out: TextIO, form: Form = DATA) -> None:
    """Writes a line a job to `out`, which must not translate line ends (open it with newline="")."""
    write_table(COLUMNS, ([of(job) for _, of in _OF] for job in jobs), form, out)
