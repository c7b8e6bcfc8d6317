"""What is looked for among the jobs: a plain value, made where no database is needed."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum

from benchlog.clock import utc_text
from benchlog.records import JobState, Purpose


class Order(StrEnum):
    """Numbers are given in the order in which jobs are opened: by number is oldest first."""

    NEWEST = "newest"
    OLDEST = "oldest"
    CHANGED = "changed"


class Waits(StrEnum):
    """In any of the waiting states."""

    WAITING = "waiting"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What is looked for; "" and None let all through.

    `text`: words anywhere in a job: its item, serial, tag and number, complaint, owner, persons, cause, work, method,
    prognosis, entries, findings, parts, how it ended, names of files. Each is as much of a word as is typed, whatever
    case and accents, and a plural may stand for its singular; all must be there. `kind`, `cause`, `who`: as they are
    written. `outcome`: of the last run; "freed" also where it was then proven. `since_utc`, `until_utc`: opened from
    the one on and before the other, ISO 8601. `purpose`: what measures is among the jobs unless only repairs are
    wanted.
    """

    text: str = ""
    kind: str = ""
    cause: str = ""
    outcome: str = ""
    state: JobState | Waits | None = None
    since_utc: str = ""
    until_utc: str = ""
    who: str = ""
    purpose: Purpose | None = None
    order: Order = Order.NEWEST


class Month(StrEnum):
    """Of the calendar where the workshop is."""

    THIS = "this"
    LAST = "last"

    def days(self, now_utc: str) -> tuple[date, date]:
        """Its first and its last day, as the workshop's calendar stands at that instant."""
        first = datetime.fromisoformat(now_utc).astimezone().date().replace(day=1)
        if self is Month.LAST:
            last = first - timedelta(days=1)
            return last.replace(day=1), last
        return first, (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)


def opened_from(day: date) -> str:
    """`since_utc` of what was opened on this day of the workshop's calendar, or later."""
    midnight = datetime.combine(day, time())
    try:
        # Where the clocks go forward at midnight there is none: one of the two readings of it is the day before.
        begins = sorted(midnight.replace(fold=fold).astimezone(UTC) for fold in (0, 1))
        return utc_text(next(at for at in begins if at.astimezone().date() >= day))
    except (OverflowError, ValueError, OSError):  # a year that the system's own calendar does not reach
        return day.isoformat()


def opened_until(day: date) -> str:
    """`until_utc` of what was opened on this day of the workshop's calendar, or earlier; "" where none comes after."""
    return opened_from(day + timedelta(days=1)) if day < date.max - timedelta(days=1) else ""
