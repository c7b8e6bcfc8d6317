"""`benchlog replay`: filed runs through today's code, and where its conclusions differ."""

import sys
import textwrap
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.clock import day_text
from benchlog.errors import LedgerDamaged, Refused

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from benchlog.records import Run
    from benchlog.recovery.filed_run import Replayed

EXIT_SAME, EXIT_DIFFERS, EXIT_REFUSED = 0, 1, 2
WIDTH = 80


@click.command("replay")
@click.argument("run", type=int, required=False)
@click.option("--all", "every", is_flag=True, help="Every run of the ledger, one line each, and a summary.")
@ledger_option
@json_option
def command(run: int | None, every: bool, ledger: Path | None, as_json: bool) -> None:
    """Put RUN through today's code and show where its conclusions differ from the filed ones.

    Guard, budget, plan, winding and motion are today's; the readings are the filed ones. No supply is touched and
    nothing is filed. Exit status 0 where nothing differs, 1 where something does, 2 where it can't be replayed.
    """
    from benchlog.ledger.store import Ledger

    if (run is None) == (not every):
        fail("give the number of one run, or --all")
    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            sys.exit(_all(book, as_json=as_json) if run is None else _one(book, run, as_json=as_json))
    except Problem as problem:
        fail(str(problem))


def replayed(book: "Ledger", number: int) -> "tuple[Run, Replayed]":
    """A run and what became of it today. Raises Refused where it can't be replayed, LedgerError."""
    import msgspec

    from benchlog.bench.frames import Request
    from benchlog.recovery.ceilings import Ceilings
    from benchlog.recovery.filed_run import Filed
    from benchlog.recovery.replay import replay

    run = book.run(number)
    try:
        asked = msgspec.json.decode(run.request, type=Request)
        ceilings = msgspec.json.decode(run.ceilings, type=Ceilings)
    except (msgspec.DecodeError, ValueError, RecursionError) as error:
        raise Refused(f"run {number}: what was asked for, or its ceilings, can't be read ({error})") from error
    if not run.samples:
        raise Refused(f"run {number}: no reading was filed")
    filed = Filed(
        kind=run.kind,
        resource=run.resource,
        rated_volts=run.rated_volts,
        ceilings=ceilings,
        sequence=asked.sequence,
        trace=book.trace(number),
        events=tuple(book.events(number)),
        result=run.result,
        complete=run.complete,
        duration_s=run.duration_s,
        unattended=asked.unattended,
        kicks_today=asked.kicks_today,
        ambient_c=asked.ambient_c,
        lead_ohm=asked.lead_ohm,
        known_ohm=asked.known_ohm,
        earlier=asked.earlier,
        starts=asked.starts,
        start_test=asked.start_test,
        run_in=asked.run_in,
    )
    return run, replay(filed)


def _one(book: "Ledger", number: int, *, as_json: bool) -> int:
    run, told = replayed(book, number)
    if as_json:
        _as_line(run, told)
    else:
        say(f"Run {run.id}: {run.kind}, {day_text(run.started_utc)}, filed as {run.result.outcome}.")
        for text in _body(told):
            say(text)
    return EXIT_DIFFERS if told.differences else EXIT_SAME


def _body(told: "Replayed") -> Iterator[str]:
    for one in told.differences:
        yield _wrapped("" if one.t_s is None else f"{one.t_s:8.2f} s  ", one.what)
        yield _wrapped("            filed:  ", one.filed)
        yield _wrapped("            today:  ", one.today)
        if one.why:
            yield _wrapped("            because ", one.why)
    for remark in told.remarks:
        yield textwrap.fill(remark, WIDTH)
    yield textwrap.fill(f"{_summary(told)} {told.readings} readings{_shifts(told)}.", WIDTH)


def _wrapped(head: str, text: str) -> str:
    head = head.ljust(12)
    return textwrap.fill(text, WIDTH, initial_indent=head, subsequent_indent=" " * len(head))


def _summary(told: "Replayed") -> str:
    count = len(told.differences)
    if not count:
        return "No difference."
    return f"{count} difference{'s' * (count != 1)}."


def _shifts(told: "Replayed") -> str:
    counts = ((told.stepped_over, "stepped over"), (told.repeated, "repeated"))
    return "".join(f", {count} {what}" for count, what in counts if count)


def _all(book: "Ledger", *, as_json: bool) -> int:
    same = differs = left = damaged = 0
    for number in _numbers(book):
        try:
            run, told = replayed(book, number)
        except (Refused, LedgerDamaged) as problem:
            left += isinstance(problem, Refused)
            damaged += isinstance(problem, LedgerDamaged)
            if as_json:
                line(run=number, replayed=False, reason=str(problem))
            else:
                say(f"{number:5d}  not replayed: {problem}")
            continue
        same += not told.differences
        differs += bool(told.differences)
        if as_json:
            _as_line(run, told)
            continue
        first = told.differences[0] if told.differences else None
        at = "" if first is None or first.t_s is None else f" at {first.t_s:.2f} s"
        words = "same" if first is None else f"differs{at}: {first.what}; today: {first.today}"
        say(_row(run, words))
    if not as_json:
        say(f"{same} the same, {differs} differ, {left + damaged} not replayed.")
    return EXIT_DIFFERS if differs else EXIT_REFUSED if left + damaged else EXIT_SAME


def _row(run: "Run", words: str) -> str:
    text = f"{run.id:5d}  {run.kind:8}  {run.result.outcome:12}  {words}"
    return text if len(text) <= WIDTH else f"{text[: WIDTH - 1]}…"


def _numbers(book: "Ledger") -> list[int]:
    """The numbers of all runs, also of those that can't be read."""
    from sqlalchemy import select

    from benchlog.ledger.schema import RunRow

    with book.reading() as session:
        return list(session.scalars(select(RunRow.id).order_by(RunRow.id)))


def _as_line(run: "Run", told: "Replayed") -> None:
    line(
        run=run.id,
        replayed=True,
        kind=run.kind,
        outcome=run.result.outcome,
        differences=[
            {"t_s": one.t_s, "what": one.what, "filed": one.filed, "today": one.today, "why": one.why}
            for one in told.differences
        ],
        remarks=told.remarks,
        readings=told.readings,
        stepped_over=told.stepped_over,
        repeated=told.repeated,
        undecided=told.undecided,
        diverged_s=told.diverged_s,
    )
