"""What a finished run means for its lot: checks kept, judged by the lot's limits; and limits from what was measured."""

from contextlib import suppress
from dataclasses import dataclass

from benchlog.errors import Refused
from benchlog.ledger.captured import captured_of_lot
from benchlog.ledger.good_runs import good_runs_of_lot
from benchlog.ledger.known_good import keep_limits, kept_limits
from benchlog.ledger.lot_checks import MOST_ZERO_A, check_due, check_from_run, keep_check
from benchlog.ledger.lots import keep_judged, lot_of, set_limits, unit, units
from benchlog.ledger.start_tests import start_test
from benchlog.ledger.store import Ledger
from benchlog.motor.limits import Judged, StartLimits, limits_from
from benchlog.motor.startup import UNKNOWN_ZERO, zero_of
from benchlog.quantities import show
from benchlog.records import CheckKind, Lot, LotCheck, Unit
from ui import curve_texts as texts
from ui import retelling
from ui.curves.reading import Shown, judge_run, judged_of
from ui.moments import clock_text


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitsMade:
    """Limits and their key; how many of the lot's units were judged by them at once, and which checks are due."""

    id: int
    limits: StartLimits
    judged: int
    count: int
    due: str


def judged(ledger: Ledger, run_id: int) -> tuple[Judged | None, Unit | None]:
    """A run of a unit, judged by its lot's limits; the zero it read counts as the shift's check where that was due."""
    run = ledger.run(run_id)
    if run.unit is None:
        return None, None
    lot = lot_of(ledger, run.job)
    if lot is not None and CheckKind.ZERO in check_due(ledger, lot, run.started_utc):
        with suppress(Refused):  # too few readings to tell it: it stays due, which is said where it is judged
            check_from_run(ledger, lot, run_id, lot.operator)
    return judge_run(ledger, run), unit(ledger, run.unit)


def keep_checks(ledger: Ledger, lot: Lot, run_id: int) -> str:
    """Leads and zero of a run that measured the leads; what did not pass, in words, "" where all did."""
    run = ledger.run(run_id)
    made = [check_from_run(ledger, lot, run_id, lot.operator)]
    zero = zero_of(ledger.trace(run_id))
    if zero != UNKNOWN_ZERO:
        passed = abs(zero.amps) <= MOST_ZERO_A
        made.append(
            keep_check(
                ledger,
                lot,
                CheckKind.ZERO,
                zero.amps,
                "A",
                passed,
                lot.operator,
                run=run_id,
                utc=run.started_utc,
            )
        )
    failed = [one for one in made if not one.passed]
    if not failed:
        return ""
    kinds = ", ".join(texts.CHECK_KINDS[one.kind.value] for one in failed)
    return texts.CHECK_FAILED.format(kinds=kinds, told=", ".join(show(one.value, one.unit) for one in failed))


def make_limits(ledger: Ledger, lot: Lot, who: str) -> LimitsMade:
    """From the last run of every known good unit; the lot is judged by them from now on, and judged again.

    Raises Refused for fewer than five, with how many there are; LedgerError.
    """
    there = units(ledger, lot)
    starts = {one.run.id: one for one in captured_of_lot(ledger, lot) if one.figures}
    good = good_runs_of_lot(ledger, lot)
    test = start_test(ledger, lot.test_id).test
    try:
        made = limits_from(
            [one.figures for one in good],
            [one.curves for one in good],
            test=test.name,
            version=test.version,
            runs=tuple(one.run.id for one in good),
        )
    except Refused as refusal:
        raise Refused(texts.LIMITS_NOT.format(why=retelling.told(str(refusal)))) from refusal
    key = keep_limits(ledger, made, who)
    set_limits(ledger, lot, key)
    kept = kept_limits(ledger, key)
    told = [
        keep_judged(ledger, one.id, one.run, judged_of(ledger, starts[one.run], kept)).passed
        for one in there
        if one.run is not None and one.run in starts
    ]
    due = ", ".join(texts.CHECK_KINDS[kind.value] for kind in check_due(ledger, lot))
    return LimitsMade(id=key, limits=made, judged=len(told) - told.count(None), count=len(there), due=due)


def checks_told(shown: Shown) -> tuple[str, bool]:
    """The shift's checks on a line, and whether one is due."""
    last = {one.kind: one for one in shown.checks}
    done = [_check_words(one) for kind, one in last.items() if kind not in shown.due]
    due = ", ".join(texts.CHECK_KINDS[kind.value] for kind in shown.due)
    if due:
        return "; ".join([texts.CHECK_DUE.format(kinds=due), *done]), True
    if not last:
        return "", False
    at = clock_text(min(one.utc for one in last.values()))  # from the earlier one on they are due again
    figures = (f"{texts.CHECK_KINDS[one.kind.value]} {show(one.value, one.unit)}" for one in last.values())
    return texts.CHECK_PASSED.format(at=at, checks=", ".join(figures)), False


def _check_words(check: LotCheck) -> str:
    return texts.CHECK_DONE.format(
        kind=texts.CHECK_KINDS[check.kind.value], value=show(check.value, check.unit), at=clock_text(check.utc)
    )
