"""What a lot's report tells, as a plain value: gathered once from the ledger, then said on paper, in HTML, in text."""

from collections.abc import Sequence
from statistics import fmean

import msgspec

from benchlog.errors import LedgerDamaged
from benchlog.history.rates import Rate
from benchlog.ledger.captured import Captured, captured, captured_of_lot
from benchlog.ledger.known_good import KeptLimits, kept_limits
from benchlog.ledger.lot_checks import check_due, checks
from benchlog.ledger.lots import units
from benchlog.ledger.start_tests import KeptTest, start_test
from benchlog.ledger.store import Ledger
from benchlog.motor.limit_values import Judged, JudgedFigure
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import FIGURES
from benchlog.records import Entry, Lot, LotCheck, Run, RunKind, Unit
from benchlog.reports.sheet import is_demo


class Measured(msgspec.Struct, frozen=True, kw_only=True):
    """One unit with the run that counts: what it was judged, the mean of each figure over its starts, its curves."""

    unit: Unit
    run: Run | None = None
    judged: Judged | None = None
    means: dict[str, float] = {}
    curves: tuple[Curve, ...] = ()


class LotReport(msgspec.Struct, frozen=True, kw_only=True):
    """All of a lot that goes in its report. `due`: what was not checked in this shift, in words; `damaged`: what could
    not be read."""

    lot: Lot
    as_of_utc: str
    test: KeptTest
    limits: KeptLimits | None = None
    measured: tuple[Measured, ...] = ()
    checks: tuple[LotCheck, ...] = ()
    entries: tuple[Entry, ...] = ()
    due: tuple[str, ...] = ()
    demo: bool = False
    damaged: tuple[str, ...] = ()

    @property
    def judged(self) -> tuple[Measured, ...]:
        """Those that passed or failed."""
        return tuple(one for one in self.measured if one.unit.passed is not None)

    @property
    def pass_rate(self) -> Rate:
        judged = self.judged
        return Rate(hits=sum(bool(one.unit.passed) for one in judged), count=len(judged))


def gather_lot(ledger: Ledger, lot: Lot) -> LotReport:
    """The report of a lot as the ledger has it now. Raises LedgerError; a run that can't be read is only told."""
    damaged: list[str] = []
    runs = ledger.runs(lot.job.id)
    starts = _captured(ledger, lot, runs, damaged)
    by_run = {run.id: run for run in runs}
    return LotReport(
        lot=lot,
        as_of_utc=ledger.clock.utc(),
        test=start_test(ledger, lot.test_id),
        limits=None if lot.limits_id is None else kept_limits(ledger, lot.limits_id),
        measured=tuple(_measured(unit, by_run, starts, damaged) for unit in units(ledger, lot)),
        checks=tuple(checks(ledger, lot)),
        entries=tuple(ledger.entries(lot.job.id)),
        due=tuple(check_due(ledger, lot)),
        demo=is_demo(ledger, runs),
        damaged=tuple(damaged),
    )


def _captured(ledger: Ledger, lot: Lot, runs: Sequence[Run], damaged: list[str]) -> dict[int, Captured]:
    try:
        return {one.run.id: one for one in captured_of_lot(ledger, lot)}
    except LedgerDamaged:
        pass
    # One that can't be read must not cost the others their place.
    found = {}
    for run in runs:
        if run.kind is RunKind.START_UP:
            try:
                found[run.id] = captured(ledger, run.id)
            except LedgerDamaged as error:
                damaged.append(error.what)
    return found


def _measured(unit: Unit, runs: dict[int, Run], starts: dict[int, Captured], damaged: list[str]) -> Measured:
    run = None if unit.counts is None else runs.get(unit.counts)
    if run is None:
        return Measured(unit=unit)
    judged = _judged(unit, damaged)
    found = starts.get(run.id)
    if found is None:
        return Measured(unit=unit, run=run, judged=judged)
    values = {
        kind.name: [start.values[kind.name].value for start in found.figures if kind.name in start.values]
        for kind in FIGURES
    }
    return Measured(
        unit=unit,
        run=run,
        judged=judged,
        means={name: fmean(numbers) for name, numbers in values.items() if numbers},
        curves=found.curves,
    )


def _judged(unit: Unit, damaged: list[str]) -> Judged | None:
    if not unit.judged:
        return None
    try:
        return msgspec.json.decode(unit.judged, type=Judged)
    except msgspec.MsgspecError as error:
        damaged.append(f"what unit {unit.number} was judged ({error})")
        return None


_DECIDE = {kind.name for kind in FIGURES}
"""What else stands beside them is there for words."""


def worst_figure(judged: Judged) -> JudgedFigure | None:
    """The figure nearest to a limit, or farthest outside one, by the width of its band; None where none was judged."""
    told = [(share, row) for row in judged.rows if (share := _share(row)) is not None]
    return min(told, key=lambda one: one[0])[1] if told else None


def _share(row: JudgedFigure) -> float | None:
    if row.margin is None or row.inside is None or row.name not in _DECIDE:
        return None
    wide = row.high - row.low if row.low is not None and row.high is not None else abs(row.high or row.low or 1.0)
    return row.margin / wide if wide > 0 else row.margin


def by_margin(measured: Sequence[Measured]) -> list[Measured]:
    """Judged ones, the worst first."""
    told = [
        (share, one.unit.number, one)
        for one in measured
        if one.judged is not None
        and (row := worst_figure(one.judged)) is not None
        and (share := _share(row)) is not None
    ]
    return [one for *_, one in sorted(told, key=lambda each: each[:2])]
