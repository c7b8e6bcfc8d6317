"""One run from the terminal, from its request to its filing, and what is said of it; for every command that has one."""

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from benchlog.bench.frames import Ended, Request
from benchlog.cli.off_by_hand import shout, wait_for_acknowledgement
from benchlog.cli.options import Problem, line, say
from benchlog.cli.words import NOT_OFF, OUTCOMES, off_sentence
from benchlog.errors import JournalDamaged, LedgerError, Refused
from benchlog.outcome import EXIT_STATUS, Outcome, RunResult
from benchlog.quantities import show
from benchlog.records import RunKind

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed
    from benchlog.ledger.store import Ledger


def nothing_more(filed: "Filed") -> Mapping[str, object]:
    """What most commands say of a filed run beyond what all do."""
    return {}


def run_and_tell(
    book: "Ledger",
    request: Request,
    *,
    as_json: bool,
    ask: bool,
    more: Callable[["Filed"], Mapping[str, object]] = nothing_more,
) -> int:
    """The exit status. When this returns or raises, the run is over and filed, or why not was said.

    `more`: what a command has to say of the filed run before the last line; with --json its fields are in that line.
    """
    from benchlog.bench.link import Link
    from benchlog.cli.watching import Stopper, signals_to, watch
    from benchlog.ledger.filing import file_journal

    with signals_to(Stopper()) as stopper:  # until it is filed: a second Ctrl-C takes nothing away
        ended = watch(Link(request), stopper, as_json=as_json)
        filed, problem = None, "nothing was reached that could be filed"
        if ended.journal is not None:
            try:
                filed = file_journal(book, Path(ended.journal))
            except (LedgerError, Refused, JournalDamaged, OSError) as error:
                problem = f"not filed yet, nothing is lost: {error}; it is filed at the next start"
        beyond = {} if filed is None else _more(more, filed)
        _tell(request.kind, ended, filed, problem, beyond, as_json=as_json)
        if filed is not None:
            _back_up(book)
    if ask and off_sentence(ended) == NOT_OFF:  # Ctrl-C leaves it open again
        wait_for_acknowledgement(book, request.resource)
    if request.kind is RunKind.LEADS and ended.result.outcome is Outcome.SHORT:
        return 0  # joined clips are what was asked for
    return EXIT_STATUS[ended.result.outcome]


def _more(more: Callable[["Filed"], Mapping[str, object]], filed: "Filed") -> Mapping[str, object]:
    """The run is filed: what goes wrong with saying more of it is said and changes nothing."""
    try:
        return more(filed)
    except (LedgerError, Refused, OSError) as error:
        say(f"benchlog: {error}", err=True)
        return {}


def _back_up(book: "Ledger") -> None:
    """The day's backup, once the run is filed: what goes wrong with it is said and changes nothing."""
    from benchlog.ledger.backups import back_up, due

    try:
        if due(book.path, book.clock):
            back_up(book.path, book.clock)
    except (LedgerError, Refused, OSError) as error:
        say(f"benchlog: the day's backup was not made: {error}", err=True)


def end_with(run: Callable[[], int], *, as_json: bool) -> NoReturn:
    """Ends the program with the status of a run, or of what stood in its way before there was one."""
    try:
        sys.exit(run())
    except Problem as problem:
        sys.exit(ended_early(Outcome.REFUSED, str(problem), as_json=as_json))
    except OSError as error:
        sys.exit(ended_early(Outcome.REFUSED, f"{error.strerror or error}", as_json=as_json))
    except KeyboardInterrupt:
        sys.exit(ended_early(Outcome.STOPPED, "Ctrl-C before anything was switched on", as_json=as_json))


def ended_early(outcome: Outcome, text: str, *, as_json: bool) -> int:
    """For what ended before there was a run; the exit status."""
    if as_json:
        line(event="filed", **_fields(RunResult(outcome=outcome, reason=text)), job=None, run=None)
    say(f"benchlog: {outcome}: {text}", err=True)
    return EXIT_STATUS[outcome]


def _tell(
    kind: RunKind, ended: Ended, filed: "Filed | None", problem: str, beyond: Mapping[str, object], *, as_json: bool
) -> None:
    result = ended.result
    if filed is None:
        say(f"benchlog: {problem}", err=True)
    if as_json:
        job, run = (None, None) if filed is None else (filed.job, filed.run)
        line(event="filed", **_fields(result), job=job, run=run, **beyond)
        if off_sentence(ended) == NOT_OFF:
            click.echo(f"benchlog: {NOT_OFF}", err=True)
        return
    leads = kind is RunKind.LEADS
    head = "The leads." if leads and result.outcome is Outcome.SHORT else OUTCOMES[result.outcome]
    head = "The supply." if kind is RunKind.CHECK else head
    say(f"\n{head}\n  {result.reason}")
    if result.resistance_ohm is not None and not leads:
        low, high = show(result.resistance_low_ohm, "Ω"), show(result.resistance_high_ohm, "Ω")
        click.echo(f"  Winding {show(result.resistance_ohm, 'Ω')} ({low} to {high}).")
    if result.max_volts is not None:
        most = f"{show(result.max_volts, 'V')} and {show(result.max_amps, 'A')}"
        kicks = "" if leads else f"{result.kicks} kicks; "
        click.echo(f"  {kicks}at most {most} read back.")
    if filed is not None:
        click.echo(f"  Filed as run {filed.run} of job {filed.job:04d}.")
    off = off_sentence(ended)
    if off == NOT_OFF:
        shout()
    else:
        click.echo(f"  {off}")


def _fields(result: RunResult) -> dict[str, object]:
    return {name: getattr(result, name) for name in result.__struct_fields__}
