"""`benchlog jobs`: the ledger's jobs, newest first."""

from pathlib import Path

import click

from benchlog.cli.options import Problem, default_ledger, fail, json_option, ledger_option, line
from drivers.foreign import inert


@click.command("jobs")
@click.argument("text", default="")
@click.option("--limit", default=50, show_default=True, type=click.IntRange(1, 10_000))
@ledger_option
@json_option
def command(text: str, limit: int, ledger: Path | None, as_json: bool) -> None:
    """List jobs, newest first; with TEXT only those that contain it."""
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(ledger or default_ledger()) as book:
            jobs = [(job, book.runs(job.id)) for job in book.jobs(text=text, limit=limit)]
    except Problem as problem:
        fail(str(problem))
    for job, runs in jobs:
        if as_json:
            line(
                job=job.number,
                tag=job.tag,
                state=job.state,
                opened_utc=job.opened_utc,
                closed_utc=job.closed_utc,
                item=job.item.kind,
                make=job.item.make,
                model=job.item.model,
                serial=job.item.serial,
                rated_volts=job.motor.rated_volts,
                complaint=job.complaint,
                outcome=job.last_outcome,
                runs=[{"run": run.id, "kind": run.kind, "outcome": run.result.outcome} for run in runs],
            )
        else:
            name = " · ".join(part for part in (job.item.kind, job.item.model, job.item.serial) if part)
            last = f"{job.last_outcome or 'no run yet'}"
            numbers = ", ".join(str(run.id) for run in runs) or "—"
            told = f"{name:32.32}  {last:13}  runs {numbers:12}  {job.complaint}"
            click.echo(inert(f"{job.number:04d}  {job.opened_utc[:10]}  {told}"))
    if not jobs and not as_json:
        click.echo("No jobs yet." if not text else f'No job contains "{text}".')
