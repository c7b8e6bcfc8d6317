"""What is looked for among the jobs: a plain value, made where no database is needed."""

from dataclasses import dataclass
from enum import StrEnum

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
    case and accents; all must be there. `kind`, `cause`, `outcome` (of the last run), `who`: as they are written.
    `since_utc`, `until_utc`: opened from the one on and before the other, ISO 8601. `purpose`: None for repairs, and
    where words are looked for for all that they are in.
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
