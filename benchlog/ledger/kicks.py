"""How many kicks a job had on a day, for the ceiling of kicks a job and day."""

from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path

from sqlalchemy import select
from sqlalchemy.orm import Session

from benchlog.errors import LedgerDamaged
from benchlog.ledger.schema import EventRow, RunRow
from benchlog.records import EventKind


def kicks_of_day(path: Path, session: Session, job_id: int, day: date) -> int:
    """Kicks on one UTC day. A run's count is its result's; its events say which of them fell on the day after."""
    before = day - timedelta(days=1)
    runs = session.execute(
        select(RunRow.id, RunRow.started_utc, RunRow.kicks).where(
            # Only these two days: no run lasts longer than a few hours.
            RunRow.job_id == job_id,
            RunRow.started_utc >= before.isoformat(),
            RunRow.started_utc < (day + timedelta(days=1)).isoformat(),
        )
    ).all()
    total = 0
    for run_id, started_utc, kicks in runs:
        try:
            started = datetime.fromisoformat(started_utc).astimezone(UTC)
        except (ValueError, TypeError) as error:
            raise LedgerDamaged(path, f"run {run_id} does not say when it began") from error
        midnight_s = (datetime.combine(started.date() + timedelta(days=1), time.min, UTC) - started).total_seconds()
        times = session.scalars(
            select(EventRow.t_s).where(EventRow.run_id == run_id, EventRow.kind == EventKind.KICK.value)
        )
        after = sum(t_s >= midnight_s for t_s in times)
        total += max(kicks - after, 0) if started.date() == day else after
    return total
