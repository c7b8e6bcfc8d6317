"""A lot's report in words: what was measured how, against which limits, what passed, what did not and by how much."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import tzinfo

import numpy as np

from benchlog.ledger.known_good import KeptLimits
from benchlog.motor.limit_values import JudgedFigure, StartLimits
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import FIGURES
from benchlog.outcome import Outcome
from benchlog.quantities import show_fine
from benchlog.records import JobState
from benchlog.recovery.start_test import StartTest, Trigger
from benchlog.reports.document import (
    MOST_ROWS,
    MOST_TAG,
    OUTCOME_WORDS,
    TIMED,
    Block,
    Column,
    Document,
    Facts,
    Heading,
    Picture,
    Prose,
    Table,
)
from benchlog.reports.histogram import Pane, draw_histograms
from benchlog.reports.lot import LotReport, Measured, by_margin, worst_figure
from benchlog.reports.regions import Region
from benchlog.reports.start_picture import MOST_PICKED, draw_starts
from benchlog.reports.words import MOST_CELL, NOTHING, Say, lines, one_line, short

READBACK = (
    "Volts and amps are what the supply read back, averaged by it and some time apart: a peak may have been higher, "
    "and what lies between two readings was not seen."
)
_TRIGGERS = {Trigger.OUTPUT_ON: "the output going on", Trigger.AMPS: "amps rising", Trigger.VOLTS: "volts rising"}


def lot_document(report: LotReport, region: Region, *, zone: tzinfo | None = None) -> Document:
    """The report in words. `zone`: of its times, None is this computer's."""
    lot, say = report.lot, Say(region=region, zone=zone)
    parts = [one_line(part) for part in (lot.job.item.kind, lot.job.item.make, lot.job.item.model) if part]
    kind = " · ".join(parts)
    return Document(
        tag=short(lot.job.tag, MOST_TAG),
        title="Lot report",
        name=f"{one_line(lot.name)} · {kind}",
        state=_state(report, say),
        verdict=_verdict(report),
        demo=report.demo,
        blocks=tuple(_blocks(report, say)),
    )


def _state(report: LotReport, say: Say) -> str:
    job = report.lot.job
    if job.state is JobState.CLOSED and job.closed_utc:
        return f"Closed on {say.day(job.closed_utc)}"
    return f"Open, as of {say.instant(report.as_of_utc)}: the lot is not finished"


def _verdict(report: LotReport) -> str:
    if not report.judged:
        return "Nothing was judged."
    left = len(report.measured) - report.pass_rate.count
    return f"Passed: {report.pass_rate.text}" + (f"; {left} not judged" if left else "")


def _blocks(report: LotReport, say: Say) -> Iterable[Block]:
    yield Facts(rows=_facts(report, say), short=True)
    yield Heading("The test")
    yield Facts(rows=_test(report, say), short=True)
    yield from _limits(report.limits, say)
    yield Heading("Cautions")
    yield from (Prose(caution, "caution") for caution in _cautions(report, say))
    yield from _histograms(report, say)
    yield from _worst(report, say)
    yield Heading("Units")
    yield from _units(report, say)
    yield from _not_judged(report)
    yield Heading("Zero and short checks")
    yield from _checks(report, say)
    if report.entries:
        yield Heading("Noted on the way")
        noted = [(say.instant(one.utc), lines(one.text, MOST_CELL), one_line(one.who)) for one in report.entries]
        yield Table(columns=TIMED, rows=tuple(noted[:MOST_ROWS]))
    yield Prose(
        f"Times are {say.zone_words(report.as_of_utc)}. {READBACK} Pass rate: 95 % interval by Wilson's score. "
        f"Gathered from the ledger on {say.instant(report.as_of_utc)}.",
        "small",
    )


def _facts(report: LotReport, say: Say) -> tuple[tuple[str, str], ...]:
    lot = report.lot
    told = [
        ("Lot", f"{lot.job.number:04d}"),
        ("Units", _counted(report)),
        ("Begun", say.instant(lot.job.opened_utc)),
        ("Operator", one_line(lot.operator)),
        ("Rated", say.quantity(lot.job.motor.rated_volts, "V")),
        ("Leads", one_line(lot.leads)),
        ("Fixture", one_line(lot.fixture)),
        ("Ambient", say.number(f"{lot.ambient_c:.3g} °C")),
        ("Load", one_line(lot.job.load_state)),
    ]
    return tuple((name, value) for name, value in told if value)


def _counted(report: LotReport) -> str:
    rate, count = report.pass_rate, len(report.measured)
    parts = [f"{rate.hits} passed", f"{rate.count - rate.hits} failed"]
    if left := count - rate.count:
        parts.append(f"{left} not judged")
    return f"{count}: {', '.join(parts)}"


def _test(report: LotReport, say: Say) -> tuple[tuple[str, str], ...]:
    kept = report.test
    told = [("Locked", f"{say.day(kept.utc)}{f' by {one_line(kept.who)}' if kept.who else ''}")]
    return (*facts_of(kept.test, say), *told)


def facts_of(test: StartTest, say: Say) -> tuple[tuple[str, str], ...]:
    """All fields of a test, in words."""
    limit = "the stall current that the probe finds" if test.amps is None else say.quantity(test.amps, "A")
    trigger = _TRIGGERS[test.trigger]
    if test.level is not None and test.trigger is not Trigger.OUTPUT_ON:
        unit = "A" if test.trigger is Trigger.AMPS else "V"
        trigger += (
            f" through {say.quantity(test.level, unit)}, after {say.quantity(test.level - test.hysteresis, unit)}"
        )
    turns = "none" if test.interleave == 1 else f"{test.interleave} starts in turn"
    told = [
        ("Test", f"{one_line(test.name)}, version {test.version}"),
        ("Volts", say.quantity(test.volts, "V")),
        ("Limit", limit),
        ("Held for", say.quantity(test.on_s, "s")),
        ("Starts", f"{test.starts}"),
        ("Rest before", say.quantity(test.rest_s, "s")),
        ("Still", f"waited for {say.quantity(test.still_s, 's')} at most"),
        ("Trigger", trigger),
        ("Kept before", say.quantity(test.before_s, "s")),
        ("Interleaved", turns),
    ]
    if test.trigger is not Trigger.OUTPUT_ON:
        told.append(("Armed for", f"{say.quantity(test.arm_s, 's')} at most"))
    return tuple(told)


def _limits(kept: KeptLimits | None, say: Say) -> Iterable[Block]:
    yield Heading("Limits")
    if kept is None:
        yield Prose("None were set: nothing is judged.")
        return
    limits = kept.limits
    rows = []
    for kind in FIGURES:
        band = limits.bands.get(kind.name)
        name = kind.label[:1].upper() + kind.label[1:]
        if band is not None:
            edges = (_amount(value, kind.unit, say) for value in (band.low, band.mean, band.high))
            rows.append((name, *edges, f"{band.n}", say.number(f"{band.factor:.3f}")))
    columns = (
        Column("Figure", 0.3),
        Column("Low", 0.16, figures=True),
        Column("Mean", 0.16, figures=True),
        Column("High", 0.16, figures=True),
        Column("Units", 0.1, figures=True),
        Column("Factor", 0.12, figures=True),
    )
    if rows:
        yield Table(columns=columns, rows=tuple(rows))
    yield Prose(_said_good(kept, say))
    yield Prose(claim(limits, say))
    if told := repeatability_words(limits):
        yield Prose(say.number(told))
    for name, why in limits.why.items():
        label = next((kind.label for kind in FIGURES if kind.name == name), name)
        yield Prose(f"{label[:1].upper()}{label[1:]}: {say.number(lines(why))}")
    if limits.curve is not None:
        yield Prose(f"The curve: {say.number(one_line(limits.curve.claim))}")


def _said_good(kept: KeptLimits, say: Say) -> str:
    who = one_line(kept.who)
    said = f", and {who} called the units good" if who else "; who called the units good is not on record"
    return f"Limits {kept.id}: kept on {say.day(kept.utc)}{said}."


def repeatability_words(limits: StartLimits) -> str:
    """One unit's starts against the units, figure by figure; "" where none was started twice."""
    told = [
        f"{kind.label} {_share(within, band.mean)} against {_share(between, band.mean)}"
        for kind in FIGURES
        if (band := limits.bands.get(kind.name)) is not None
        and (within := limits.within.get(kind.name)) is not None
        and (between := limits.between.get(kind.name)) is not None
    ]
    shares = "Repeatability, standard deviation of one unit's starts against that between units, of the mean"
    return f"{shares}: {'; '.join(told)}." if told else ""


def _share(value: float, mean: float) -> str:
    return f"{100 * value / abs(mean):.2g} %" if mean else NOTHING


def claim(limits: StartLimits, say: Say) -> str:
    """What the limits hold, in a sentence: n, coverage and confidence."""
    runs = ", ".join(map(str, limits.runs[:20])) + (" …" if len(limits.runs) > 20 else "")
    return say.number(
        f"Made from {limits.n} known good units, {limits.starts_each} starts or more of each (runs {runs}). Each "
        f"figure's band holds at least {limits.coverage * 100:g} % of such units, with {limits.confidence * 100:g} % "
        "confidence, if they, or their logarithms, are spread normally."
    )


def _cautions(report: LotReport, say: Say) -> Iterable[str]:
    for one in report.measured:
        run = one.run
        if run is not None and not run.result.output_confirmed_off and run.result.outcome is not Outcome.REFUSED:
            yield f"Run {run.id} of {one_line(one.unit.serial)}: the output was NOT CONFIRMED off when it ended."
        if run is not None and not run.complete:
            yield f"Run {run.id}: the program ended before the run did; its record stops there."
    if report.limits is not None and report.limits.limits.warning:
        yield say.number(lines(report.limits.limits.warning))
    if not report.checks:
        yield "No zero or short check is on record: what leads and fixture have is not known."
    elif report.due and report.lot.job.state is not JobState.CLOSED:
        yield f"Not checked in this shift: {' and '.join(report.due)}."
    yield from (
        f"A {one.kind} check did not pass on {say.instant(one.utc)}." for one in report.checks if not one.passed
    )
    yield from (f"Could not be read: {one_line(what)}." for what in report.damaged)
    yield "A start tells of the motor as it hung on the bench: with this load, these leads, at this temperature."


def _histograms(report: LotReport, say: Say) -> Iterable[Block]:
    panes = []
    for kind in FIGURES:
        values = tuple(one.means[kind.name] for one in report.measured if kind.name in one.means)
        band = None if report.limits is None else report.limits.limits.bands.get(kind.name)
        if values:
            low, high = (None, None) if band is None else (band.low, band.high)
            panes.append(Pane(title=kind.label, unit=kind.unit, values=values, low=low, high=high))
    if panes:
        yield Heading("How the figures are spread")
        title = "Units by the mean of their starts; dashed: the limits, black: outside"
        yield Picture(title=title, drawing=draw_histograms(panes, say=say.number))


def _worst(report: LotReport, say: Say) -> Iterable[Block]:
    shown = [(one, one.curves[0]) for one in report.measured if one.curves and np.isfinite(one.curves[0].amps).any()]
    if not shown:
        return
    first = {one.unit.id: _named(curve, one) for one, curve in shown}
    ranked = [one for one in by_margin(report.measured) if one.unit.id in first]
    # What failed, the worst first; where all passed, the nearest to a limit.
    worst = [first[one.unit.id] for one in ranked if one.unit.passed is False][:MOST_PICKED]
    worst = worst or [first[one.unit.id] for one in ranked[:1]]
    yield Heading("Worst curves")
    band = None if report.limits is None else report.limits.limits.curve
    drawing = draw_starts(tuple(first.values()), band=band, picked=worst, say=say.number)
    failed = any(one.unit.passed is False for one in ranked)
    words = f"; picked out: {'what failed' if failed else 'the nearest to a limit'}" if worst else ""
    yield Picture(title=f"The first start of each unit{words}", drawing=drawing)


def _named(curve: Curve, one: Measured) -> Curve:
    return replace(curve, name=one_line(one.unit.serial) or f"unit {one.unit.number}")


_RESULTS = {True: "pass", False: "FAIL", None: "not judged"}


def _units(report: LotReport, say: Say) -> Iterable[Block]:
    if not report.measured:
        yield Prose("None yet.")
        return
    shown = list(report.measured)
    if len(shown) > MOST_ROWS:
        shown.sort(key=lambda one: bool(one.unit.passed))  # what did not pass is never left out before what did
    rows = [_unit(one, say) for one in shown[:MOST_ROWS]]
    if rest := len(shown) - len(rows):
        rows.append(("", f"{rest} more, in the ledger", "", "", "", "", ""))
    columns = (
        Column("No.", 0.07, figures=True),
        Column("Serial", 0.21),
        Column("Run", 0.08, figures=True),
        Column("Result", 0.13),
        Column("Worst figure", 0.19),
        Column("Value", 0.16, figures=True),
        Column("Margin", 0.16, figures=True),
    )
    yield Table(columns=columns, rows=tuple(rows))


def _unit(one: Measured, say: Say) -> tuple[str, ...]:
    row = None if one.judged is None else worst_figure(one.judged)
    run = NOTHING if one.run is None else f"{one.run.id}"
    told = (NOTHING,) * 3 if row is None else (row.label, _amount(row.value, row.unit, say), margin_words(row, say))
    result = _RESULTS[one.unit.passed] + (", failed before" if one.unit.failed_before else "")
    return (f"{one.unit.number}", one_line(one.unit.serial), run, result, *told)


def _amount(value: float | None, unit: str, say: Say) -> str:
    return say.number(show_fine(value, unit))


def margin_words(row: JudgedFigure, say: Say) -> str:
    """ "+12 mA" inside, "−150 ms" outside."""
    if row.margin is None:
        return NOTHING
    return ("−" if row.margin < 0 else "+") + _amount(abs(row.margin), row.unit, say)


def _not_judged(report: LotReport) -> Iterable[Block]:
    reasons: dict[str, list[str]] = {}
    for one in report.measured:
        for why in why_not_judged(one, report.limits):
            reasons.setdefault(why, []).append(one_line(one.unit.serial))
    if reasons:
        yield Heading("Not judged, and why")
        rows = [(lines(why, MOST_CELL), lines(", ".join(serials), MOST_CELL)) for why, serials in reasons.items()]
        yield Table(columns=(Column("Why", 0.6), Column("Units", 0.4)), rows=tuple(rows[:MOST_ROWS]))


def why_not_judged(one: Measured, limits: KeptLimits | None) -> Iterable[str]:
    """In words, for a unit without a verdict, or whose last run has none; nothing for one that has it."""
    if one.unit.passed is not None:
        if one.unit.run != one.unit.counts:
            yield f"Run {one.unit.run} was not judged: the verdict of run {one.unit.counts} stands."
        return
    if one.run is None:
        yield "No run yet."
    elif limits is None:
        yield "The lot has no limits."
    elif one.judged is None:
        runs = one.run.result.outcome is Outcome.RUNS
        yield "Not judged yet." if runs else f"Its run ended as: {OUTCOME_WORDS[one.run.result.outcome]}."
    else:
        yield " ".join(part for part in (one.judged.sentence, one.judged.because) if part)


def _checks(report: LotReport, say: Say) -> Iterable[Block]:
    if not report.checks:
        yield Prose("None is on record.")
        return
    rows = [
        (
            say.instant(one.utc),
            one.kind,
            say.quantity(one.value, one.unit),
            "passed" if one.passed else "did NOT pass",
            one_line(one.who),
        )
        for one in report.checks[:MOST_ROWS]
    ]
    columns: Sequence[Column] = (
        Column("When", 0.3),
        Column("Check", 0.15),
        Column("Value", 0.18, figures=True),
        Column("Result", 0.2),
        Column("Who", 0.17),
    )
    yield Table(columns=tuple(columns), rows=tuple(rows))
