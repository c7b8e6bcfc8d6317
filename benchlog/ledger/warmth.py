"""What the runs of the last minutes left in a motor, for the ceilings that count over time and the winding's heat."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from sqlalchemy import or_, select

from benchlog.history.cold_restart import COLD_AFTER_S
from benchlog.ledger.off_by_hand import switched_off_utc
from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import ItemRow, JobRow, RunRow, UnitRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import output_of_run
from benchlog.records import Run, RunKind
from benchlog.recovery.budget import Pulse, pulses_of

FORGOTTEN_S = 900.0
"""After a quarter of an hour what is left of a run of minutes is less than the margins; not so of a run-in."""
_RUNS = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Warmth:
    """Ω of the winding as last found, and the pulses of energy, newest last."""

    known_ohm: float | None
    pulses: tuple[Pulse, ...]


def warmth_of(ledger: Ledger, *, job: int | None, resource: str, output: int = 1, unit: int | None = None) -> Warmth:
    """Of a job's motor; without a job of whatever was last on that output, since it may be the same one.

    `unit`: the key of a lot's unit, whose motor it is: what has another serial is another motor, by the operator's
    word, and the same serial anywhere is the same. Raises LedgerError.
    """
    now = datetime.fromisoformat(ledger.clock.utc()).astimezone(UTC)
    runs = None if unit is None else _of_serial(ledger, unit)
    if runs is None:
        runs = ledger.runs(job) if job is not None else ledger.recent_runs(limit=_RUNS)
    known_ohm: float | None = None
    pulses: list[Pulse] = []
    for run in sorted(runs, key=lambda one: one.started_utc)[-_RUNS:]:
        ended_ago_s = max(0.0, (now - _ended(run)).total_seconds())
        off_ago_s = _off_ago_s(ledger, run, now, ended_ago_s)
        elsewhere = run.resource != resource or output_of_run(run) not in (None, output)
        if off_ago_s > forgotten_s(run) or (job is None and unit is None and elsewhere):
            continue
        winding_ohm = None if run.kind is RunKind.LEADS else run.result.resistance_ohm
        known_ohm = winding_ohm or known_ohm
        pulses += pulses_of(
            ledger.trace(run.id),
            ended_ago_s=ended_ago_s,
            off_ago_s=off_ago_s,
            reference_ohm=winding_ohm,
            rated_volts=run.rated_volts,
        )
    return Warmth(known_ohm=known_ohm, pulses=tuple(sorted(pulses, key=lambda one: -one.ago_s)))


def forgotten_s(run: Run) -> float:
    """s after its end until what a run left in its motor is forgotten."""
    return COLD_AFTER_S if run.kind is RunKind.RUN_IN else FORGOTTEN_S


def _of_serial(ledger: Ledger, unit: int) -> list[Run] | None:
    """The last runs of this serial, as a unit of any lot or as the thing of any job; None where there is no such unit.

    Labels that both give a make, and not the same one, are of two things.
    """
    with ledger.reading() as session:
        row = session.get(UnitRow, unit)
        if row is None:
            return None
        item = select(ItemRow.make).join(JobRow, JobRow.item_id == ItemRow.id)
        make = session.scalar(item.where(JobRow.id == row.job_id)) or ""
        of_units = (
            select(UnitRow.id).join(JobRow, JobRow.id == UnitRow.job_id).join(ItemRow, ItemRow.id == JobRow.item_id)
        )
        of_jobs = select(JobRow.id).join(ItemRow, ItemRow.id == JobRow.item_id)
        if make:
            of_units, of_jobs = (of.where(ItemRow.make.in_(["", make])) for of in (of_units, of_jobs))
        wanted = or_(
            RunRow.unit_id.in_(of_units.where(UnitRow.serial == row.serial)),
            RunRow.job_id.in_(of_jobs.where(ItemRow.serial == row.serial)),
        )
        last = select_runs().where(wanted).order_by(RunRow.started_utc.desc(), RunRow.id.desc()).limit(_RUNS)
        return [run_of(ledger.path, one) for one in session.execute(last)][::-1]


def _off_ago_s(ledger: Ledger, run: Run, now: datetime, ended_ago_s: float) -> float:
    """s since the output is known to have been off; 0 where nobody said so yet."""
    if run.complete and run.result.output_confirmed_off:
        return ended_ago_s
    try:
        off = datetime.fromisoformat(switched_off_utc(ledger, run) or "").astimezone(UTC)
    except (ValueError, OverflowError):
        return 0.0
    return min(max(0.0, (now - off).total_seconds()), ended_ago_s)


def _ended(run: Run) -> datetime:
    return datetime.fromisoformat(run.started_utc).astimezone(UTC) + timedelta(seconds=run.duration_s)
