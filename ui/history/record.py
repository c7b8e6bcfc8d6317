"""A job's own record as lines to read: its entries and its unlocks, oldest first."""

from collections.abc import Sequence

from benchlog.ledger.unlocks import Unlock
from benchlog.records import Entry
from ui import texts
from ui.moments import clock_text, day_text


def record_lines(entries: Sequence[Entry], unlocks: Sequence[Unlock]) -> list[str]:
    """Each with its day and time of day, and who said it where that is kept."""
    dated = [(entry.utc, _with_who(entry)) for entry in entries]
    for one in unlocks:
        told = texts.UNLOCKED.format(who=one.who, at=clock_text(one.until_utc), why=one.why)
        dated.append((one.utc, told))
    return [f"{day_text(utc)} {clock_text(utc)}  {text}" for utc, text in sorted(dated, key=lambda line: line[0])]


def _with_who(entry: Entry) -> str:
    return texts.SAID_BY.format(text=entry.text, who=entry.who) if entry.who else entry.text
