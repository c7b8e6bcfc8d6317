"""What the curves room shows, as one value, read from the ledger beside the window."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import msgspec
import numpy as np

from benchlog.errors import Refused
from benchlog.history.rates import Rate
from benchlog.ledger.captured import Captured, captured, captured_of_lot
from benchlog.ledger.earlier_starts import earlier_starts
from benchlog.ledger.good_runs import why_not_good
from benchlog.ledger.judging_runs import judge_captured
from benchlog.ledger.known_good import KeptLimits, kept_limits, limits_for
from benchlog.ledger.lot_checks import check_due, checks
from benchlog.ledger.lots import keep_judged, lot, units
from benchlog.ledger.start_tests import start_test
from benchlog.ledger.store import Ledger
from benchlog.motor.interleave import Interleaved, interleaved
from benchlog.motor.limits import Judged
from benchlog.motor.overlay import Curve, overlay
from benchlog.motor.repeatability import repeatability
from benchlog.records import CheckKind, Job, Lot, LotCheck, Run, RunKind, Unit
from benchlog.recovery.start_test import StartTest
from ui import curve_texts as texts
from ui import retelling
from ui.charts.overlay_lines import BandOf, Line

TOLD_OF = ("run_up_s", "run-up")
"""The figure whose repeatability is told: the one that friction moves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A unit with its last run, or a run of a job. `captured`: None where it was not measured yet."""

    name: str
    unit: Unit | None = None
    captured: Captured | None = None
    judged: Judged | None = None

    @property
    def failed(self) -> bool:
        return self.unit is not None and self.unit.passed is False


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a line comes from: the number of what was measured, and of its start, both from 0."""

    measured: int
    start: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A lot with all its units, or a job with its runs. `lines`, `places`: every start, by the same number.

    `good`: how many known good units there are; `repeat`: whether the test can tell units apart, in words; `due`:
    checks that must pass before a unit is judged.
    """

    job: Job
    lot: Lot | None = None
    test: StartTest | None = None
    limits: KeptLimits | None = None
    measured: tuple[Measured, ...] = ()
    lines: tuple[Line, ...] = ()
    places: tuple[Place, ...] = ()
    mean: Line | None = None
    rate: Rate | None = None
    good: int = 0
    repeat: str = ""
    checks: tuple[LotCheck, ...] = ()
    due: tuple[CheckKind, ...] = ()

    def first_of(self, measured: int) -> int | None:
        """The number of its first line; None where it has none."""
        return next((line for line, place in enumerate(self.places) if place.measured == measured), None)

    def last_measured(self) -> int | None:
        """What was measured last of all."""
        runs = [(one.captured.run.started_utc, number) for number, one in enumerate(self.measured) if one.captured]
        return max(runs)[1] if runs else None


def read_lot(ledger: Ledger, number: int) -> Shown:
    """By the number of its job. Raises Refused, LedgerError."""
    found = lot(ledger, number)
    starts = {one.run.id: one for one in captured_of_lot(ledger, found)}
    measured = tuple(
        Measured(
            name=texts.UNIT_NAME.format(number=unit.number),
            unit=unit,
            captured=None if unit.run is None else starts.get(unit.run),
            judged=_stands(unit),
        )
        for unit in units(ledger, found)
    )
    judged = [one for one in measured if one.unit is not None and one.unit.passed is not None]
    shown = Shown(
        job=found.job,
        lot=found,
        test=start_test(ledger, found.test_id).test,
        limits=None if found.limits_id is None else kept_limits(ledger, found.limits_id),
        measured=measured,
        rate=Rate(hits=sum(bool(one.unit and one.unit.passed) for one in judged), count=len(judged)),
        good=sum(one.captured is not None and not why_not_good(one.captured, one.unit) for one in measured),
        repeat=_repeat([one.captured for one in measured if one.captured is not None and not one.failed]),
        checks=tuple(checks(ledger, found)),
        due=check_due(ledger, found),
    )
    return _laid(shown, range(len(measured)))


def read_job(ledger: Ledger, job_id: int, run: int | None = None) -> Shown:
    """Its runs that captured starts; the lines are those of one of them, by default the last. Raises LedgerError."""
    job = ledger.job(job_id)
    runs = [one for one in ledger.runs(job_id) if one.kind is RunKind.START_UP]
    found = [captured(ledger, one.id) for one in runs]
    last = found[-1] if found else None
    limits = _limits_of(ledger, last, job) if last is not None else None
    measured = tuple(
        Measured(
            name=texts.RUN_NAME.format(run=one.run.id),
            captured=one,
            judged=judged_of(ledger, one, limits) if limits is not None and one.figures else None,
        )
        for one in found
    )
    shown = Shown(job=job, test=None if last is None else last.test, limits=limits, measured=measured)
    wanted = [number for number, one in enumerate(found) if run is None or one.run.id == run]
    return _laid(shown, wanted[-1:])


def read_before(ledger: Ledger, of: Captured) -> tuple[str, tuple[Line, ...]]:
    """The same motor's starts before these, in words and as lines; ("", ()) where there are none."""
    _, earlier = earlier_starts(ledger, of)
    if earlier is None:
        return "", ()
    name = texts.BEFORE_NAME.format(run=earlier.run.id)
    return name, tuple(_line(curve, name) for curve in earlier.curves)


def filled_in(of: Captured, start: int = 0) -> tuple[Line | None, str]:
    """A curve denser than one readback of a start, from 0, and why it is one or is not: the supply's own array, or
    repeated starts together."""
    number = of.curves[start].number if start < len(of.curves) else None
    dense = next((curve for curve in of.dense_curves if curve.number == number), None)
    if dense is not None:
        return _line(dense, texts.dense_name(dense.interval_s)), ""
    if of.test is None or of.test.interleave < 2 or len(of.curves) < 2:
        return None, ""
    delays = [float(event.values.get("delay_s") or 0.0) for event in of.starts]
    found: Interleaved = interleaved(of.curves, delays)
    if found.curve is None:
        return None, texts.NOT_FILLED_IN.format(why=retelling.told(found.why))
    return _line(found.curve, texts.filled_in_name(len(of.curves), found.interval_s)), found.why


def judge_run(ledger: Ledger, run: Run) -> Judged | None:
    """What a lot's run came to, by the lot's limits, kept with its unit; None where there are none yet, or no start."""
    if run.unit is None:
        return None
    found = lot(ledger, ledger.job(run.job).number)
    of = captured(ledger, run.id)
    if found.limits_id is None or not of.figures:
        return None
    return keep_judged(ledger, run.unit, run.id, judged_of(ledger, of, kept_limits(ledger, found.limits_id)))


def judged_of(ledger: Ledger, of: Captured, kept: KeptLimits) -> Judged:
    """By limits, and in words also by the winding's resistance where the known good ones have one."""
    return judge_captured(ledger, of, kept)


def band_lines(kept: KeptLimits | None) -> BandOf | None:
    """For the chart, with what it claims."""
    if kept is None or kept.limits.curve is None:
        return None
    band = kept.limits.curve
    return BandOf(
        name=texts.band_name(band.n, kept.limits.coverage, kept.limits.confidence),
        t_s=np.array(band.t_s),
        low=np.array(band.low_amps),
        high=np.array(band.high_amps),
    )


def pace_of(curves: Sequence[Curve]) -> tuple[float, float, float] | None:
    """s from reading to reading after the trigger: the middle one, and between which nearly all lie."""
    apart = [np.diff(curve.t_s[curve.t_s >= 0]) for curve in curves]
    together = np.concatenate(apart) if apart else np.empty(0)
    if not together.size:
        return None
    low, middle, high = np.percentile(together, [2.5, 50, 97.5])
    return float(middle), float(low), float(high)


def _laid(shown: Shown, wanted: Sequence[int]) -> Shown:
    """With its lines, moved by less than a reading to where they fit one another best."""
    curves: list[Curve] = []
    places, names = [], []
    for number in wanted:
        one = shown.measured[number]
        for start, curve in enumerate(one.captured.curves if one.captured is not None else ()):
            if len(curve.t_s) > 1:
                curves.append(curve)
                places.append(Place(measured=number, start=start))
                names.append(texts.START_OF.format(name=one.name, number=curve.number))
    if not curves:
        return shown
    laid = overlay(curves)
    lines = tuple(
        Line(name=name, t_s=curve.t_s + offset, volts=curve.volts, amps=curve.amps)
        for name, curve, offset in zip(names, curves, laid.offsets_s.tolist(), strict=True)
    )
    told = ~np.isnan(laid.mean_amps)
    mean = Line(
        name=texts.mean_name(len(curves)),
        t_s=laid.grid_s[told],
        volts=laid.mean_volts[told],
        amps=laid.mean_amps[told],
    )
    return replace(shown, lines=lines, places=tuple(places), mean=mean)


def _line(curve: Curve, name: str) -> Line:
    return Line(name=name, t_s=curve.t_s, volts=curve.volts, amps=curve.amps)


def _stands(unit: Unit) -> Judged | None:
    """Of its last run. Where that was not judged a failure before stands, and a pass is not shown as that run's."""
    if unit.counts == unit.run:
        return _judged(unit.judged)
    said = texts.STANDS_OF.format(verdict=texts.STANDS[bool(unit.passed)], judged=unit.judged_run, run=unit.run)
    return Judged(
        passed=None if unit.passed else False,
        rows=(),
        curve_outside_share=None,
        curve_outside_at_s=None,
        sentence=said,
        because="",
    )


def _judged(content: str) -> Judged | None:
    try:
        return msgspec.json.decode(content, type=Judged) if content else None
    except msgspec.MsgspecError:
        return None


def _limits_of(ledger: Ledger, of: Captured, job: Job) -> KeptLimits | None:
    """The newest of this test and model."""
    if of.test is None:
        return None
    found = limits_for(ledger, of.test.name, of.test.version, job.item.model)
    return next((one for one in found if one.item.kind == job.item.kind), None)


def _repeat(found: Sequence[Captured]) -> str:
    name, label = TOLD_OF
    values = [[one.values[name].value for one in each.figures if name in one.values] for each in found]
    try:
        return repeatability([each for each in values if each], label=label).words
    except Refused:
        return ""
