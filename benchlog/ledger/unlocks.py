"""Unlocks: for a while one job may go up to the owner's higher ceilings. Who, when and why is kept for good.

The owner's layer of a job is put together here and nowhere else: the settings, and an unlock of that job that holds.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta

import msgspec
from sqlalchemy import select

from benchlog.clock import utc_text
from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.schema import JobRow, UnlockRow
from benchlog.ledger.store import Ledger
from benchlog.records import JobState
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings, settings_file

HOLDS = timedelta(hours=12)
"""How long an unlock holds. Starting value of this project: a day's work, and never the next day's."""

_MOST_WHO, _MOST_WHY = 80, 500


class Unlock(msgspec.Struct, frozen=True, kw_only=True):
    """An entry of the ledger, never changed. `job`: the ledger's key. `limits`: how far the settings then let it go."""

    job: int
    utc: str
    until_utc: str
    who: str
    why: str
    limits: Limits

    def __str__(self) -> str:
        return f"unlocked by {self.who} until {self.until_utc[11:16]} UTC: {self.why}"


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnerLayer:
    """The owner's ceilings for one job now, and the unlock that they are due to, if any."""

    limits: Limits
    unlock: Unlock | None = None

    @property
    def unlocked(self) -> str:
        """A sentence for the record of a run; "" where no unlock holds."""
        return "" if self.unlock is None else str(self.unlock)


def owner_layer(ledger: Ledger, settings: Settings, job_id: int | None) -> OwnerLayer:
    """The owner's layer for a job, or for none. An unlock raises a ceiling as far as it was given and still is allowed.

    Raises LedgerError.
    """
    unlock = None if job_id is None else _holding(ledger, job_id)
    if unlock is None:
        return OwnerLayer(limits=settings.ceilings)
    return OwnerLayer(limits=raised(settings.ceilings, settings.unlocked, unlock.limits), unlock=unlock)


def unlock(ledger: Ledger, settings: Settings, job_id: int, *, who: str, why: str) -> Unlock:
    """Writes an unlock into the ledger; it holds from now on. A second one is a second entry.

    Raises Refused where the settings allow none, the job is closed or not there, or who or why isn't said; LedgerError.
    """
    if not settings.allow_unlocks:
        raise Refused(f"nothing can be unlocked: {settings_file()} gives no [unlocked] ceilings")
    who, why = _said(who, "who unlocks", _MOST_WHO), _said(why, "the reason", _MOST_WHY)
    if len(why.split()) < 2:
        raise Refused(f'the reason: "{why}" is one word; say in a few why the usual ceilings don\'t do')
    utc = ledger.clock.utc()
    made = Unlock(
        job=job_id,
        utc=utc,
        until_utc=utc_text(datetime.fromisoformat(utc) + HOLDS),
        who=who,
        why=why,
        limits=settings.unlocked,
    )
    with ledger.writing() as session:
        job = session.get(JobRow, job_id)
        if job is None:
            raise Refused(f"there is no job with the key {job_id}")
        if job.state == JobState.CLOSED:
            raise Refused(f"job {job.tag} is closed: nothing is run on it that could be unlocked")
        session.add(
            UnlockRow(
                job_id=job_id,
                utc=made.utc,
                until_utc=made.until_utc,
                who=made.who,
                why=made.why,
                limits=msgspec.json.encode(made.limits).decode(),
            )
        )
    return made


def unlocks(ledger: Ledger, job_id: int | None = None) -> list[Unlock]:
    """Of one job or of all, oldest first. Raises LedgerError."""
    wanted = select(UnlockRow).order_by(UnlockRow.utc, UnlockRow.id)
    if job_id is not None:
        wanted = wanted.where(UnlockRow.job_id == job_id)
    with ledger.reading() as session:
        return [_unlock_of(ledger, row) for row in session.scalars(wanted)]


def _holding(ledger: Ledger, job_id: int) -> Unlock | None:
    # One that begins later than now was made by a clock that has been set back since: it holds for nobody.
    now = ledger.clock.utc()
    held = [one for one in unlocks(ledger, job_id) if one.utc <= now < one.until_utc]
    return held[-1] if held else None


def raised(usual: Limits, allowed: Limits, given: Limits) -> Limits:
    """The owner's usual ceilings, as far up as the settings allow now and an unlock was given."""
    values = {}
    for name in Limits.__struct_fields__:
        low, most, then = getattr(usual, name), getattr(allowed, name), getattr(given, name)
        # Not below the usual one, which the owner may have raised since.
        values[name] = low if None in (low, most, then) else max(low, min(most, then))
    return Limits(**values)


def _unlock_of(ledger: Ledger, row: UnlockRow) -> Unlock:
    fields = {name: getattr(row, name) for name in ("utc", "until_utc", "who", "why")}
    try:
        limits = msgspec.json.decode(row.limits, type=Limits)
        found = msgspec.convert(fields | {"job": row.job_id, "limits": limits}, Unlock)
    except (msgspec.MsgspecError, TypeError, RecursionError) as error:  # in a damaged file a column may hold anything
        raise LedgerDamaged(ledger.path, f"unlock {row.id} can't be read ({error})") from error
    if not "".join((found.utc, found.until_utc, found.who, found.why)).isprintable():
        raise LedgerDamaged(ledger.path, f"unlock {row.id} has characters that are never written")
    return found


def _said(text: str, name: str, at_most: int) -> str:
    text = " ".join(text.split())
    if not text:
        raise Refused(f"{name}: not said; an unlock is kept with it")
    if len(text) > at_most:
        raise Refused(f"{name}: {len(text)} characters are more than {at_most}")
    if not text.isprintable():
        raise Refused(f"{name}: has characters that can't be shown")
    return text
