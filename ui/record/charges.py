"""What is about to be charged to a job: work, a part, or anything else. Plain values between page and ledger."""

from collections.abc import Callable

import msgspec

from benchlog.ledger.costs import charge_minutes, charge_other, charge_part
from benchlog.ledger.store import Ledger
from benchlog.records import Charge
from benchlog.settings import Settings


class Minutes(msgspec.Struct, frozen=True):
    """Whole minutes of work, and what was done."""

    count: int
    text: str


class FromStock(msgspec.Struct, frozen=True):
    """So many of a part of the shop's stock."""

    part_id: int
    count: int


class Other(msgspec.Struct, frozen=True):
    """Anything with a price of its own, in cents."""

    text: str
    cents: int


Wanted = Minutes | FromStock | Other


def charge(
    ledger: Ledger, job_id: int, wanted: Wanted, settings: Callable[[], Settings], *, who: str, agreed: str
) -> Charge:
    """Raises OverLimit where nobody agreed to pass the limit, Refused, LedgerError."""
    match wanted:
        case Minutes():
            hour = settings().shop.hour_cents
            return charge_minutes(
                ledger, job_id, wanted.count, hour_cents=hour, text=wanted.text, who=who, agreed=agreed
            )
        case FromStock():
            return charge_part(ledger, job_id, wanted.part_id, wanted.count, who=who, agreed=agreed)
        case Other():
            return charge_other(ledger, job_id, wanted.text, wanted.cents, who=who, agreed=agreed)
