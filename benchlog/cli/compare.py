"""`benchlog compare`: the figures of a measured start, or of captured ones, and how they differ from others."""

import sys
from pathlib import Path

import click

from benchlog.cli.compare_starts import compare_starts
from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.errors import Refused
from benchlog.motor.compare import Comparison, Measured, compare
from benchlog.motor.fit import Fitted
from benchlog.motor.start_figures import FIGURES
from benchlog.quantities import show
from benchlog.records import RunKind

_WIDTH = 76


@click.command("compare")
@click.argument("run", type=click.IntRange(min=1))
@click.argument("others", nargs=-1, type=click.IntRange(min=1))
@ledger_option
@json_option
def command(run: int, others: tuple[int, ...], ledger: Path | None, as_json: bool) -> None:
    """The figures of RUN's starts, against OTHERS: of a proof its measured start, of captured starts all of them.

    Without OTHERS: the proof, or the captured starts, before of the same job or serial; a proof without one against
    known good ones of the model. Writes nothing. Exit status for captured starts: 1 where a figure surely differs, 2
    where the tests were not the same.
    """
    from benchlog.ledger.measured import measured_start, others_of
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            filed = book.run(run)
            if filed.kind is RunKind.START_UP:
                sys.exit(compare_starts(book, run, others, as_json=as_json))
            after = measured_start(book, filed)
            if after is None:
                raise Refused(f"run {run} has no measured start: a proof whose starts all turned ends with one")
            if others:
                words, found = "the runs named", []
                for number in others:
                    other = measured_start(book, book.run(number))
                    if other is None:
                        raise Refused(f"run {number} has no measured start")
                    found.append(other)
            else:
                words, found = others_of(book, filed, book.job(filed.job).item)
        _tell(after, words, found, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    sys.exit(0)


def _tell(after: Measured, words: str, others: list[Measured], *, as_json: bool) -> None:
    rows = _rows(after)
    against = compare(after, others) if others else None
    if as_json:
        for name, value, unit, interval, why in rows:
            low, high = (None, None) if interval is None else (interval.low, interval.high)
            line(figure=name, value=value, unit=unit, low=low, high=high, why=why)
        line(
            against=[one.run for one in others],
            verdict=None if against is None else against.verdict,
            not_same=[] if against is None else list(against.not_same),
            cautions=[] if against is None else list(against.cautions),
            differences=[]
            if against is None
            else [
                {"name": d.name, "unit": d.unit, "before": d.before, "after": d.after, "low": d.low, "high": d.high}
                for d in against.differences
            ],
        )
        return
    test = after.test
    figures = after.figures
    click.echo(
        f"Run {after.run}: a start at {show(test.set_volts, 'V')}, {test.load_state}, "
        f"{1 / figures.interval_s:.0f} readings a second for {figures.readings * figures.interval_s:.1f} s"
    )
    for name, value, unit, interval, why in rows:
        told = show(value, unit).strip() if value is not None else "not known"
        if interval is not None:
            told += f"  ({show(interval.low, unit).strip()} to {show(interval.high, unit).strip()})"
        click.echo(f"  {name:26}{told}")
        if why:
            say(click.wrap_text(why, _WIDTH, initial_indent=" " * 28, subsequent_indent=" " * 28))
    if against is None:
        click.echo("Nothing to compare with: no earlier proof of this motor, and no known good one of its model.")
        return
    _tell_against(against, words)


def _tell_against(against: Comparison, words: str) -> None:
    click.echo(f"\nAgainst {words} ({against.against}):")
    for one in against.differences:
        click.echo(
            f"  {one.name:26}before {show(one.before, one.unit)}, now {show(one.after, one.unit)}, "
            f"by {show(one.low, one.unit)} to {show(one.high, one.unit)}"
        )
    say(click.wrap_text(against.verdict, _WIDTH, initial_indent="  ", subsequent_indent="  "))
    told = "; ".join(against.cautions)
    say(click.wrap_text(f"Mind: {told}.", _WIDTH, initial_indent="  ", subsequent_indent="  "))
    if against.against == 1:
        click.echo("  One start each: how much starts of one motor differ is not in the intervals.")


def _rows(after: Measured) -> list[tuple[str, float | None, str, Fitted | None, str]]:
    figures, fitted = after.figures, after.constants
    told: list[tuple[str, float | None, str, Fitted | None, str]] = []
    value: Fitted | None
    for kind in FIGURES:
        if kind.name != "steady_amps":  # below, of the whole fit
            value = figures.values.get(kind.name)
            told.append(
                (kind.label, None if value is None else value.value, kind.unit, value, figures.why.get(kind.name, ""))
            )
    told.append(("volts at the motor", after.motor_volts, "V", None, figures.why.get("steady_amps", "")))
    for name, unit, label in (
        ("steady_amps", "A", "steady current"),
        ("tau_s", "s", "run-up time constant"),
        ("stall_ratio", "", "stall over steady"),
        ("steady_emf_volts", "V", "its own voltage, steady"),
        ("moves_s", "s", "first seen to turn"),
    ):
        value = getattr(fitted, name)
        told.append((label, None if value is None else value.value, unit, value, fitted.why.get(name, "")))
    for label, unit, value in (
        ("friction, at no speed", "A", after.friction.coulomb_amps),
        ("friction, with speed", "A/V", after.friction.viscous_a_per_v),
    ):
        told.append((label, None if value is None else value.value, unit, value, after.friction.why))
    return told
