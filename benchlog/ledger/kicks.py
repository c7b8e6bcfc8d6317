"""How many kicks a job had on a day, for the ceiling of kicks a job and day."""

from datetime import UTC, date, datetime, timedelta

from sqlalchemy import select
from sqlalchemy.orm import Session

from benchlog.ledger.schema import EventRow, RunRow
from benchlog.records import EventKind


def kicks_of_day(session: Session, job_id: int, day: date) -> int:
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
        started = datetime.fromisoformat(started_utc).astimezone(UTC)
        midnight_s = datetime.combine(started.date() + timedelta(days=1), started.timetz().min, UTC) - started
        times = session.scalars(
            select(EventRow.t_s).where(EventRow.run_id == run_id, EventRow.kind == EventKind.KICK.value)
        )
        after = sum(t_s >= midnight_s.total_seconds() for t_s in times)
        total += max(kicks - after, 0) if started.date() == day else after
    return total
