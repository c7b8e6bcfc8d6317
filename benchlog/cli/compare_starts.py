"""The figures of captured starts and how they differ from others', for `benchlog compare`."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

from benchlog.cli.captured_runs import captured_run, test_of
from benchlog.cli.options import line, say
from benchlog.motor.compare import Difference
from benchlog.motor.compare_starts import Together, changes, together, verdict
from benchlog.motor.start_figures import FIGURES
from benchlog.quantities import show, show_fine

if TYPE_CHECKING:
    from benchlog.ledger.captured import Captured
    from benchlog.ledger.store import Ledger

_WIDTH = 76
NOT_COMPARABLE = 2


def compare_starts(book: "Ledger", run: int, others: Sequence[int], *, as_json: bool) -> int:
    """The exit status: 1 where a figure surely differs, 2 where the tests were not the same. Raises Refused,
    LedgerError."""
    from benchlog.ledger.earlier_starts import earlier_starts, not_alike

    after = captured_run(book, run)
    test_of(after)
    if others:
        words, found = "the runs named", [captured_run(book, number) for number in dict.fromkeys(others)]
    else:
        words, before = earlier_starts(book, after)
        found = [] if before is None else [before]
    not_same = [told for other in found for told in not_alike(after, other)]
    differences = changes(after.figures, [other.figures for other in found]) if found and not not_same else ()
    told = [one for kind in FIGURES if (one := together(after.figures, kind)) is not None]
    if as_json:
        _as_json(after, told, found, differences, not_same)
    else:
        _starts(after)
        _means(after, told)
        if found:
            _against(words, found, differences, not_same)
        else:
            click.echo("Nothing to compare with: no earlier starts of this motor.")
    if not_same:
        return NOT_COMPARABLE
    return 1 if any(one.sure for one in differences) else 0


def _as_json(
    after: "Captured",
    told: Sequence[Together],
    found: Sequence["Captured"],
    differences: Sequence[Difference],
    not_same: Sequence[str],
) -> None:
    for curve, figures in zip(after.curves, after.figures, strict=True):
        values = {name: [one.value, one.low, one.high] for name, one in figures.values.items()}
        line(
            run=after.run.id,
            start=curve.number,
            figures=values,
            why=figures.why,
            interval_s=figures.interval_s,
            jitter_s=figures.jitter_s,
            readings=figures.readings,
        )
    for one in told:
        line(
            figure=one.kind.name,
            unit=one.kind.unit,
            starts=one.count,
            mean=one.mean,
            spread=one.spread,
            low=one.low,
            high=one.high,
        )
    line(
        against=[other.run.id for other in found],
        verdict=verdict(differences, not_same) if found else None,
        not_same=list(not_same),
        differences=[
            {"name": d.name, "unit": d.unit, "before": d.before, "after": d.after, "low": d.low, "high": d.high}
            for d in differences
        ],
    )


def _starts(after: "Captured") -> None:
    test, count = test_of(after), len(after.starts)
    load = f", {after.run.load_state}" if after.run.load_state else ""
    say(
        f"Run {after.run.id}: {count} {'start' if count == 1 else 'starts'} by {test.name}, version {test.version}, "
        f"at {show(test.volts, 'V')}{load}"
    )
    for curve, figures in zip(after.curves, after.figures, strict=True):
        pace = f"read every {figures.interval_s * 1e3:.3g} ms, ± {figures.jitter_s * 1e3:.2f} ms"
        say(f"  start {curve.number}: {pace}, {figures.readings} readings")
        for kind in FIGURES:
            fitted = figures.values.get(kind.name)
            if fitted is not None:
                value, low, high = (show_fine(one, kind.unit) for one in (fitted.value, fitted.low, fitted.high))
                say(f"    {kind.label:18}{value:>10}  ({low} to {high})")
            else:
                why = figures.why.get(kind.name, "")
                say(click.wrap_text(f"not told: {why}", _WIDTH, f"    {kind.label:18}", " " * 22))


def _means(after: "Captured", told: Sequence[Together]) -> None:
    if len(after.starts) > 1:
        click.echo("  all of them: mean, and standard deviation of the starts")
        for one in told:
            unit = one.kind.unit
            mean, low, high = (show_fine(value, unit) for value in (one.mean, one.low, one.high))
            spread = show_fine(one.spread, unit)
            say(f"    {one.kind.label:18}{mean:>10}  ({low} to {high})  ± {spread}, n = {one.count}")


def _against(
    words: str, found: Sequence["Captured"], differences: Sequence[Difference], not_same: Sequence[str]
) -> None:
    click.echo(f"\nAgainst {words} (run {', '.join(str(other.run.id) for other in found)}):")
    for one in differences:
        before, after, low, high = (show_fine(value, one.unit) for value in (one.before, one.after, one.low, one.high))
        say(f"  {one.name:16}before {before}, now {after}, by {low} to {high}{'' if one.sure else ' (unsure)'}")
    say(click.wrap_text(verdict(differences, not_same), _WIDTH, initial_indent="  ", subsequent_indent="  "))
