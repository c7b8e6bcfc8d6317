"""`benchlog limits`: limits from known good units, and a run held against them."""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click
import msgspec

from benchlog.cli.captured_runs import by_serial, good_of_lot, good_run, test_of
from benchlog.cli.ceilings import number_of
from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.clock import day_text
from benchlog.errors import Refused
from benchlog.motor.start_figures import FIGURES
from benchlog.quantities import show_fine, strict

if TYPE_CHECKING:
    from benchlog.ledger.captured import Captured
    from benchlog.ledger.known_good import KeptLimits
    from benchlog.ledger.store import Ledger
    from benchlog.motor.limit_values import Judged, JudgedFigure, StartLimits

_WIDTH = 78


@click.command("limits")
@click.argument("runs", nargs=-1, type=click.IntRange(min=1))
@click.option("--lot", "lot_number", metavar="NUMBER", help="The last run of every known good unit of this lot.")
@click.option("--coverage", default="0.95", show_default=True, metavar="SHARE", help="Of such units within the limits.")
@click.option("--confidence", default="0.95", show_default=True, metavar="SHARE", help="How sure that is.")
@click.option("--keep", is_flag=True, help="Keep them in the ledger, with --who.")
@click.option("--who", default="", metavar="NAME", help="Who says that these units are good.")
@click.option("--list", "listing", is_flag=True, help="Show the limits there are, newest first.")
@click.option("--show", "shown", type=int, metavar="ID", help="Show limits that are kept.")
@click.option("--judge", "judged", type=int, metavar="RUN", help="Hold a run against limits that are kept.")
@click.option("--against", type=int, metavar="ID", help="The limits to judge by.")
@ledger_option
@json_option
def command(
    runs: tuple[int, ...],
    lot_number: str | None,
    coverage: str,
    confidence: str,
    keep: bool,
    who: str,
    listing: bool,
    shown: int | None,
    judged: int | None,
    against: int | None,
    ledger: Path | None,
    as_json: bool,
) -> None:
    """Limits from RUNS of known good units, five units or more: for each figure and for the curve.

    Known good: every start of the test was captured and turned, and no judgement failed the unit. A run without a
    serial is refused: whether it is another motor can't be told.

    A band holds at least the --coverage of such units, with the --confidence; the table says from how many. Exit
    status of --judge: 0 passed, 1 failed or not to be told, 2 refused.
    """
    from benchlog.ledger.known_good import keep_limits, kept_limits, limits_for
    from benchlog.ledger.store import Ledger

    passed: bool | None = True
    try:
        with Ledger.open(kept_ledger(ledger)) as book:
            asked = sum((bool(runs or lot_number), listing, shown is not None, judged is not None))
            if asked != 1 or (judged is None) != (against is None):
                raise Refused("name RUNS or a --lot, or --list, or --show ID, or --judge RUN --against ID; one of them")
            if listing:
                _list(limits_for(book), as_json=as_json)
            elif shown is not None:
                kept = kept_limits(book, shown)
                tell_limits(kept.limits, kept.id, as_json=as_json)
            elif judged is not None and against is not None:
                passed = _judge(book, judged, against, as_json=as_json)
            else:
                if keep and not who.strip():
                    raise Refused("kept limits need --who: somebody says that these units are good")
                shares = strict(coverage, "coverage"), strict(confidence, "confidence")
                made = _make(book, _good(book, runs, lot_number), *shares)
                key = keep_limits(book, made, who) if keep else None
                tell_limits(made, key, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    sys.exit(0 if passed else 1)


def _good(book: "Ledger", runs: Sequence[int], lot_number: str | None) -> list["Captured"]:
    from benchlog.ledger.lots import lot

    if runs and lot_number is not None:
        raise Refused("name RUNS or a --lot, not both")
    if lot_number is not None:
        return good_of_lot(book, lot(book, number_of(lot_number)))
    return [good_run(book, number) for number in dict.fromkeys(runs)]


def _make(book: "Ledger", good: Sequence["Captured"], coverage: float, confidence: float) -> "StartLimits":
    from benchlog.motor.limits import limits_from

    for name, share in (("coverage", coverage), ("confidence", confidence)):
        if not 0.5 <= share <= 0.999:
            raise Refused(f"{name}: {share:g} is outside 0.5 to 0.999")
    tests = {(test_of(one).name, test_of(one).version) for one in good}
    if len(tests) > 1:
        told = ", ".join(f'"{name}" version {version}' for name, version in sorted(tests))
        raise Refused(f"these runs were not measured the same way: {told}")
    name, version = tests.pop()
    motors = by_serial(book, good)
    return limits_from(
        [[figures for one in motor for figures in one.figures] for motor in motors],
        [[curve for one in motor for curve in one.curves] for motor in motors],
        test=name,
        version=version,
        coverage=coverage,
        confidence=confidence,
        runs=tuple(one.run.id for one in good),
    )


def _judge(book: "Ledger", run: int, limits_id: int, *, as_json: bool) -> bool | None:
    from benchlog.ledger.judging_runs import judge_run

    judged = judge_run(book, run, limits_id)
    tell_judged(judged, run, limits_id, as_json=as_json)
    if told := _other_thing(book, run, limits_id):
        say(f"  {told}", err=as_json)
    return judged.passed


def _other_thing(book: "Ledger", number: int, limits_id: int) -> str:
    """What is doubtful about whose run it is, held against what the limits are of."""
    from benchlog.ledger.filing import UNNAMED
    from benchlog.ledger.known_good import kept_limits

    run, of = book.run(number), kept_limits(book, limits_id).item.kind
    item = book.job(run.job).item
    kind = "" if item.kind == UNNAMED.kind else item.kind
    unknown = [name for name, said in (("kind", kind), ("serial", item.serial or run.unit)) if not said]
    told = []
    if kind and of and kind.casefold() != of.casefold():
        told.append(f"Kinds differ: this run is of a {kind}, the limits are of a {of}.")
    if unknown:
        told.append(f"Of this run not known: {' and '.join(unknown)}; whether it is a {of or 'thing'} nobody said.")
    return " ".join(told)


def _list(found: Sequence["KeptLimits"], *, as_json: bool) -> None:
    for kept in found:
        limits = kept.limits
        if as_json:
            line(**_about(limits, kept.id), utc=kept.utc, who=kept.who, item=kept.item.kind, model=kept.item.model)
            continue
        thing = " · ".join(part for part in (kept.item.kind, kept.item.model) if part)
        say(f"{kept.id:4d}  {day_text(kept.utc)}  {limits.test}, version {limits.version}: {thing}, {_claim(limits)}")
    if not found and not as_json:
        click.echo("No limits yet.")


def _claim(limits: "StartLimits") -> str:
    return f"n = {limits.n}, {limits.coverage * 100:g} % at {limits.confidence * 100:g} %"


def _about(limits: "StartLimits", key: int | None) -> dict[str, object]:
    curve = limits.curve
    return {
        "limits": key,
        "test": limits.test,
        "version": limits.version,
        "coverage": limits.coverage,
        "confidence": limits.confidence,
        "n": limits.n,
        "starts_each": limits.starts_each,
        "runs": list(limits.runs),
        "warning": limits.warning,
        "curve": None if curve is None else {"claim": curve.claim, "n": curve.n, "factor": curve.factor},
    }


def tell_limits(limits: "StartLimits", key: int | None, *, as_json: bool) -> None:
    """The bands with what they claim."""
    if as_json:
        for kind in FIGURES:
            band = limits.bands.get(kind.name)
            told = {} if band is None else msgspec.to_builtins(band)
            spreads = {"within": limits.within.get(kind.name), "between": limits.between.get(kind.name)}
            line(figure=kind.name, unit=kind.unit, **told, **spreads, why=limits.why.get(kind.name, ""))
        line(**_about(limits, key))
        return
    name = "Limits" if key is None else f"Limits {key}"
    say(f"{name} of {limits.test}, version {limits.version}")
    runs = ", ".join(map(str, limits.runs))
    _wrapped(f"From {limits.n} known good units, {limits.starts_each} starts or more of each: runs {runs}.")
    _wrapped(
        f"Each band holds at least {limits.coverage * 100:g} % of such units, with {limits.confidence * 100:g} % "
        "confidence, if they, or their logarithms, are spread normally."
    )
    say(f"\n  {'':16}{'low':>10}{'mean':>10}{'high':>10}{'n':>5}{'factor':>8}{'one unit':>10}{'units':>9}")
    for kind in FIGURES:
        if (band := limits.bands.get(kind.name)) is not None:
            edges = "".join(f"{show_fine(value, kind.unit):>10}" for value in (band.low, band.mean, band.high))
            shares = (_spread(held, kind.name, band.mean) for held in (limits.within, limits.between))
            within, between = shares
            say(f"  {kind.label:16}{edges}{band.n:>5}{band.factor:>8.3f}{within:>10}{between:>9}")
    _wrapped("One unit, units: standard deviations of one unit's starts and between units, as shares of the mean.")
    for figure, why in limits.why.items():
        label = next((kind.label for kind in FIGURES if kind.name == figure), figure)
        _wrapped(f"{label[:1].upper()}{label[1:]}: {why}")
    if limits.curve is not None:
        _wrapped(f"Curve: {limits.curve.claim}")
    if limits.warning:
        _wrapped(f"Mind: {limits.warning}")


def _spread(spreads: dict[str, float], name: str, mean: float) -> str:
    """As a share of the mean."""
    value = spreads.get(name)
    return "—" if value is None or not mean else f"{100 * value / abs(mean):.2g} %"


def _wrapped(text: str, indent: int = 2) -> None:
    say(click.wrap_text(text, _WIDTH, initial_indent=" " * indent, subsequent_indent=" " * indent))


_WORDS = {True: "pass", False: "FAIL", None: "not judged"}
_DECIDE = {kind.name for kind in FIGURES}


def tell_judged(judged: "Judged", run: int, limits_id: int, *, as_json: bool) -> None:
    """Every figure with its limits and margin, then the verdict."""
    if as_json:
        for row in judged.rows:
            line(**msgspec.to_builtins(row))
        rest = {name: getattr(judged, name) for name in judged.__struct_fields__ if name != "rows"}
        line(run=run, limits=limits_id, failed=[row.name for row in judged.rows if row.inside is False], **rest)
        return
    say(f"Run {run} against limits {limits_id}: {_WORDS[judged.passed]}")
    say(f"  {'':16}{'value':>10}{'low':>10}{'high':>10}{'margin':>11}")
    for row in judged.rows:
        edges = "".join(f"{show_fine(value, row.unit):>10}" for value in (row.value, row.low, row.high))
        say(f"  {row.label:16}{edges}{_margin(row):>11}  {_result(row)}".rstrip())
        if row.why:
            _wrapped(row.why, 4)
    if judged.curve_outside_share:
        at = "" if judged.curve_outside_at_s is None else f", most at {show_fine(judged.curve_outside_at_s, 's')}"
        _wrapped(f"Curve: {100 * judged.curve_outside_share:.2g} % of it outside{at}")
    for text in (judged.sentence, judged.because):
        if text:
            _wrapped(text)


def _result(row: "JudgedFigure") -> str:
    """What is told beside the figures, such as a resistance, decides nothing."""
    if row.inside is False and row.name not in _DECIDE:
        return "outside, not judged"
    return "" if row.inside else _WORDS[row.inside]


def _margin(row: "JudgedFigure") -> str:
    return "—" if row.margin is None else f"{'-' if row.margin < 0 else '+'}{show_fine(abs(row.margin), row.unit)}"
