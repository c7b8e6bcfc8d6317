"""`benchlog jobs`: the ledger's jobs by text and filters, newest first."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from benchlog.cli.options import Problem, default_ledger, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.cli.words import cold_words
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.history.cold_restart import Due, cold_restart_due
from benchlog.history.rates import NOTHING
from benchlog.ledger.wanted import Month, Order, Waits, Wanted, opened_from, opened_until
from benchlog.outcome import Outcome
from benchlog.records import Job, JobState, Purpose, Run

if TYPE_CHECKING:
    from benchlog.ledger.finding_jobs import Choices
    from benchlog.ledger.store import Ledger

MOST_RUNS, MOST_KINDS = 4, 20
_STATES: dict[str, JobState | Waits] = {state.value: state for kinds in (JobState, Waits) for state in kinds}


def opened_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """When a job was opened, as `wanted_of` takes it."""
    for option in (
        click.option(
            "--month",
            default="",
            type=click.Choice(["", *(one.value for one in Month)]),
            metavar="this|last",
            help="Opened this month or last month, by the calendar here.",
        ),
        click.option("--until", default="", metavar="DATE", help="Opened on that day or earlier."),
        click.option("--since", default="", metavar="DATE", help="Opened on that day or later, by the calendar here."),
    ):
        command = option(command)
    return command


@click.command("jobs")
@click.argument("text", default="")
@click.option("--kind", default="", help="What it is, as it is written in the job.")
@click.option("--cause", default="", help="What was wrong, as it is written in the job.")
@click.option(
    "--outcome",
    default="",
    type=click.Choice(["", *(one.value for one in Outcome)]),
    metavar="WORD",
    help="How its last run ended: freed (also where it was then proven), runs, still-stuck, …",
)
@click.option("--state", type=click.Choice([*_STATES]), help="Where it stands; waiting: for anything.")
@opened_options
@click.option("--who", default="", help="The technician.")
@click.option(
    "--purpose",
    type=click.Choice([one.value for one in Purpose]),
    help="measuring: lots.  [default: repairs, and with TEXT lots too]",
)
@click.option("--order", default=Order.NEWEST.value, type=click.Choice([one.value for one in Order]), show_default=True)
@click.option("--limit", default=50, show_default=True, type=click.IntRange(1, 10_000))
@ledger_option
@json_option
def command(ledger: Path | None, limit: int, as_json: bool, **asked: str) -> None:
    """List jobs, newest first; with TEXT only those in which each of its words begins a word.

    A motor that was run in and is to be started cold is listed whatever its job is for.
    """
    from benchlog.ledger.finding_jobs import COUNTED, choices_for, count_jobs, find_jobs
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(default_ledger() if ledger is None else kept_ledger(ledger)) as book:
            choices = choices_for(book)
            wanted = wanted_of(choices, book.clock.utc(), **asked)
            hides = wanted.purpose is None and not wanted.text.strip()
            if hides:
                wanted = replace(wanted, purpose=Purpose.REPAIR)
            jobs = [(job, book.runs(job.id)) for job in find_jobs(book, wanted, limit=limit).jobs]
            count = count_jobs(book, wanted) if len(jobs) == limit else len(jobs)
            now_utc = book.clock.utc()
            hidden, cold_ones = _not_shown(book, wanted, now_utc) if hides else (0, [])
    except Problem as problem:
        fail(str(problem))
    for job, runs in (*jobs, *cold_ones):
        cold = cold_restart_due(runs, now_utc)
        if as_json:
            _line(job, runs, cold)
        else:
            name = " · ".join(part for part in (job.item.kind, job.item.model, job.item.serial) if part)
            numbers = ", ".join(str(run.id) for run in runs[:MOST_RUNS]) or NOTHING
            numbers += f" … {runs[-1].id}" if len(runs) > MOST_RUNS else ""
            ended = job.last_outcome or (NOTHING if runs else "no run yet")
            told = f"{name:32.32}  {ended:13}  runs {numbers:12}  {job.complaint:.200}"
            said = "" if cold is None else f"  [{cold_words(cold, job.number)}]"
            say(f"{job.number:04d}  {day_text(job.opened_utc)}  {told}{said}".replace("\n", " "))
    if as_json:
        return
    if not jobs and not cold_ones and not hidden:
        say(
            "No jobs yet."
            if hides and wanted == Wanted(purpose=Purpose.REPAIR)
            else nothing_found(choices.kinds, wanted)
        )
    elif count > len(jobs):
        click.echo(f"{len(jobs)} of {f'{COUNTED:,} or more' if count == COUNTED else count}.")
    if hidden:
        told = f"{COUNTED:,} or more" if hidden == COUNTED else f"{hidden}"
        what = "measuring job is" if hidden == 1 else "measuring jobs are"
        click.echo(f"{told} {what} not shown: --purpose measuring")


def nothing_found(kinds: list[str], wanted: Wanted) -> str:
    told = ["No job is like this."]
    if wanted.text.strip():
        told.append(
            "Each word is looked for from the beginning of a word, and pumps finds pump: shorter words find more."
        )
    if wanted.kind and wanted.kind not in kinds:
        listed = ", ".join(kinds[:MOST_KINDS]) + (", …" if len(kinds) > MOST_KINDS else "")
        told.append(f"The kinds there are: {listed or 'none'}.")
    return "\n".join(told)


def _not_shown(book: "Ledger", wanted: Wanted, now_utc: str) -> tuple[int, list[tuple[Job, list[Run]]]]:
    """How many jobs that measure are left out, and those of them that are listed all the same: a cold start is due."""
    from benchlog.ledger.finding_jobs import count_jobs, run_in_jobs

    measuring = replace(wanted, purpose=Purpose.MEASURING)
    found = [(job, book.runs(job.id)) for job in run_in_jobs(book, measuring)]
    cold = [(job, runs) for job, runs in found if cold_restart_due(runs, now_utc) is not None]
    return count_jobs(book, measuring) - len(cold), cold


def wanted_of(
    choices: "Choices",
    now_utc: str,
    *,
    text: str = "",
    kind: str = "",
    cause: str = "",
    outcome: str = "",
    state: str | None = None,
    since: str = "",
    until: str = "",
    month: str = "",
    who: str = "",
    purpose: str | None = None,
    order: str = Order.NEWEST.value,
) -> Wanted:
    """What a command line asks for. Raises Refused for a day that is none, and for a month beside days."""
    if month and (since or until):
        raise Refused("--month is a month's first and last day: leave --since and --until out beside it")
    first = _day(since, "--since") if since else None
    last = _day(until, "--until") if until else None
    if month:
        first, last = Month(month).days(now_utc)
    return Wanted(
        text=text,
        kind=_as_written(kind, choices.kinds),
        cause=_as_written(cause, choices.causes),
        outcome=outcome,
        state=_STATES[state] if state else None,
        since_utc=opened_from(first) if first else "",
        until_utc=opened_until(last) if last else "",
        who=_as_written(who, choices.persons),
        purpose=Purpose(purpose) if purpose else None,
        order=Order(order),
    )


def _day(said: str, name: str) -> date:
    try:
        day = date.fromisoformat(said)
    except ValueError:
        raise Refused(f'{name}: "{said[:40]}" is no day; write it like 2026-11-25') from None
    if day >= date.max:
        raise Refused(f"{name}: {said[:40]} is past the end of the calendar")
    return day


def _as_written(said: str, written: list[str]) -> str:
    """As the ledger has it, whatever case; as it was said where the ledger has it not, which then finds nothing."""
    return next((one for one in written if one == said), None) or next(
        (one for one in written if one.casefold() == said.casefold()), said
    )


def _line(job: Job, runs: list[Run], cold: Due | None) -> None:
    line(
        job=job.number,
        tag=job.tag,
        state=job.state,
        purpose=job.purpose,
        opened_utc=job.opened_utc,
        closed_utc=job.closed_utc,
        item=job.item.kind,
        make=job.item.make,
        model=job.item.model,
        serial=job.item.serial,
        rated_volts=job.motor.rated_volts,
        complaint=job.complaint,
        owner=job.owner,
        who=job.who,
        cause=job.cause,
        result=job.result,
        waiting_for=job.waiting_for,
        outcome=job.last_outcome,
        runs=[{"run": run.id, "kind": run.kind, "outcome": run.result.outcome} for run in runs],
        cold_start_from_utc=None if cold is None else cold.from_utc,
    )
