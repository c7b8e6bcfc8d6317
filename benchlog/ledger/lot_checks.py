"""Whether a lot's bench is what it was: the readback at no current and the leads, clips joined, once a shift."""

import math
from collections.abc import Iterable
from datetime import UTC, datetime

from sqlalchemy import select

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.rows import value_of
from benchlog.ledger.schema import LotCheckRow, LotRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.motor.startup import UNKNOWN_ZERO, zero_of
from benchlog.outcome import Outcome
from benchlog.records import CheckKind, Lot, LotCheck, RunKind

CHECK_WORDS = {CheckKind.ZERO: "zero", CheckKind.SHORT: "leads"}
"""What a check is called where it is told."""

SHIFT_S = 8 * 3600.0
"""How long a check holds. Starting value of this project."""

MOST_ZERO_A = 0.005
"""A at no current beyond which something flows beside the motor, or the readback is off. Starting value of this
project; the zero itself is taken out of every run."""

AMPERES, OHMS = "A", "Ω"


def keep_check(
    ledger: Ledger,
    lot: Lot,
    kind: str,
    value: float,
    unit: str,
    passed: bool,
    who: str = "",
    *,
    run: int | None = None,
    utc: str | None = None,
) -> LotCheck:
    """A check as it came out, failed ones too. `utc`: None for now. Never edited: the next one stands beside it.

    Raises Refused for a kind that is none of CheckKind, a value that is no number, or where there is no such lot or
    run; LedgerError.
    """
    if kind not in list(CheckKind):
        raise Refused(f'"{kind:.40}" is no check of a lot: {", ".join(CheckKind)}')
    if not math.isfinite(value):
        raise Refused(f"{CHECK_WORDS[CheckKind(kind)]} check: {value} is no measured value")
    with ledger.writing() as session:
        if session.get(LotRow, lot.job.id) is None:
            raise Refused(f"job {lot.job.tag} measures no lot")
        if run is not None and session.get(RunRow, run) is None:
            raise Refused(f"there is no run {run}")
        row = LotCheckRow(
            job_id=lot.job.id,
            run_id=run,
            utc=utc or ledger.clock.utc(),
            kind=CheckKind(kind).value,
            value=value,
            unit=unit,
            passed=passed,
            who=who.strip(),
        )
        session.add(row)
        session.flush()
        mark_changed(session, job_row(session, lot.job.id), ledger.clock.utc())
        return _check_of(ledger, row)


def check_from_run(ledger: Ledger, lot: Lot, run: int, who: str = "") -> LotCheck:
    """What a run, by its key, says: of the leads where it measured them, of the zero where it measured anything else.

    The leads pass where they were found joined; the zero, read before the output went on, within MOST_ZERO_A. Counts
    from when the run began. Raises Refused where the run tells neither; LedgerError.
    """
    measured = ledger.run(run)
    if measured.kind is RunKind.LEADS:
        ohm = measured.result.resistance_ohm
        if ohm is None:
            raise Refused(f"run {run} found no resistance of the leads: {measured.result.reason}")
        kind, value, unit, passed = CheckKind.SHORT, ohm, OHMS, measured.result.outcome is Outcome.SHORT
    else:
        zero = zero_of(ledger.trace(run))
        if zero == UNKNOWN_ZERO:
            raise Refused(f"run {run} has too few readings before the output went on to tell its zero")
        kind, value, unit, passed = CheckKind.ZERO, zero.amps, AMPERES, abs(zero.amps) <= MOST_ZERO_A
    return keep_check(ledger, lot, kind, value, unit, passed, who, run=run, utc=measured.started_utc)


def checks(ledger: Ledger, lot: Lot) -> list[LotCheck]:
    """Oldest first. Raises LedgerError."""
    return _checks(ledger, lot.job.id)


def check_due(ledger: Ledger, lot: Lot, now_utc: str | None = None) -> tuple[CheckKind, ...]:
    """Which checks did not pass when they were last made in the SHIFT_S before `now_utc`, None for now; () for none.

    Measuring goes on and is filed all the same, but no unit is judged until they pass. Raises LedgerError.
    """
    return due_in(ledger, lot.job.id, now_utc or ledger.clock.utc())


def due_words(due: Iterable[CheckKind]) -> str:
    """ "zero and leads"."""
    return " and ".join(CHECK_WORDS[kind] for kind in due)


def due_in(ledger: Ledger, job_id: int, now_utc: str) -> tuple[CheckKind, ...]:
    """The same, of the lot of a job, by its key."""
    now = _instant(ledger, now_utc)
    last: dict[CheckKind, bool] = {}
    for one in _checks(ledger, job_id):
        if 0.0 <= (now - _instant(ledger, one.utc)).total_seconds() <= SHIFT_S:
            last[one.kind] = one.passed
    return tuple(kind for kind in CheckKind if not last.get(kind, False))


def _checks(ledger: Ledger, job_id: int) -> list[LotCheck]:
    wanted = select(LotCheckRow).where(LotCheckRow.job_id == job_id).order_by(LotCheckRow.utc, LotCheckRow.id)
    with ledger.reading() as session:
        return [_check_of(ledger, row) for row in session.scalars(wanted)]


def _instant(ledger: Ledger, utc: str) -> datetime:
    try:
        return datetime.fromisoformat(utc).astimezone(UTC)
    except (ValueError, TypeError, OverflowError) as error:
        raise LedgerDamaged(ledger.path, f"a check of a lot does not say when it was made ({error})") from error


def _check_of(ledger: Ledger, row: LotCheckRow) -> LotCheck:
    fields = {name: getattr(row, name) for name in LotCheck.__struct_fields__ if name != "run"} | {"run": row.run_id}
    return value_of(ledger.path, f"check {row.id}", fields, LotCheck)
