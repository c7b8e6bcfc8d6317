"""A filed run of captured starts held against kept limits."""

from collections.abc import Sequence

import msgspec

from benchlog.errors import Refused
from benchlog.ledger.captured import Captured, captured
from benchlog.ledger.known_good import KeptLimits, kept_limits
from benchlog.ledger.store import Ledger
from benchlog.motor.curve_limits import LEAST_UNITS
from benchlog.motor.fit import Fitted
from benchlog.motor.judging import judge
from benchlog.motor.limit_values import Band, Judged, StartLimits
from benchlog.motor.limits import band_of
from benchlog.outcome import Outcome
from benchlog.records import Run


def judge_run(ledger: Ledger, run: int, limits_id: int) -> Judged:
    """What a run, by its key, is by limits of the same test; nothing is kept. Where not every start turned it never
    passes. Raises Refused where it captured no start, or by another test; LedgerError.
    """
    return judge_captured(ledger, captured(ledger, run), kept_limits(ledger, limits_id))


def judge_captured(ledger: Ledger, found: Captured, kept: KeptLimits) -> Judged:
    """The same for starts that were read already."""
    run, limits, test = found.run, kept.limits, found.test
    if not found.starts:
        raise Refused(f"run {run.id} ended before its first start was captured")
    if test is None or (test.name, test.version) != (limits.test, limits.version):
        by = "a test that it does not say" if test is None else f'"{test.name}" version {test.version}'
        raise Refused(
            f'run {run.id} is by {by}, limits {kept.id} are of "{limits.test}" version {limits.version}: not comparable'
        )
    judged = judge(found.figures, found.curves, limits, ohm=ohm_of(run), ohm_good=_good_ohm(ledger, limits))
    if judged.passed and run.result.outcome is not Outcome.RUNS:
        return msgspec.structs.replace(
            judged, passed=None, sentence="Not judged: not every start turned.", because=run.result.reason
        )
    return judged


def ohm_of(run: Run) -> Fitted | None:
    """Ω: the winding as its probe found it; None where it did not."""
    found = run.result
    if found.resistance_ohm is None or found.resistance_low_ohm is None or found.resistance_high_ohm is None:
        return None
    return Fitted(value=found.resistance_ohm, low=found.resistance_low_ohm, high=found.resistance_high_ohm)


def _good_ohm(ledger: Ledger, limits: StartLimits) -> Band | None:
    """Of the known good ones, each by its first run that tells it; None for too few."""
    first: dict[tuple[str, int], float] = {}
    for run in _runs(ledger, limits.runs):
        if run.result.resistance_ohm is not None:
            first.setdefault(("job", run.job) if run.unit is None else ("unit", run.unit), run.result.resistance_ohm)
    if len(first) < LEAST_UNITS:
        return None
    band, _ = band_of(list(first.values()), coverage=limits.coverage, confidence=limits.confidence)
    return band


def _runs(ledger: Ledger, numbers: Sequence[int]) -> list[Run]:
    found = []
    for number in numbers:
        try:
            found.append(ledger.run(number))
        except Refused:  # its job may be in another ledger: the words do without
            continue
    return found
