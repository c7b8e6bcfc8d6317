"""What a job costs, line by line, against what its owner allows; and the spare parts that the shop keeps."""

from dataclasses import dataclass

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from benchlog.errors import Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.rows import value_of
from benchlog.ledger.schema import ChargeRow, JobRow, PartRow
from benchlog.ledger.store import Ledger
from benchlog.records import Charge, ChargeKind, JobState, Part

NEAR = 0.8
"""The share of the limit from which on it is said how much is left. Starting value of this project."""
MOST_COUNT, MOST_CENTS = 100_000, 100_000_000_00


class OverLimit(Refused):
    """The line would bring the job above what its owner allows. `cents`: what it would come to; `limit_cents`."""

    def __init__(self, cents: int, limit_cents: int) -> None:
        super().__init__("this would bring the job above what its owner allows: stop, or ask first")
        self.cents, self.limit_cents = cents, limit_cents


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What a job has cost so far, in cents, and what its owner allows; None where no limit was agreed."""

    cents: int
    limit_cents: int | None

    @property
    def left_cents(self) -> int | None:
        return None if self.limit_cents is None else self.limit_cents - self.cents

    @property
    def near(self) -> bool:
        """Whether it is time to think of the limit."""
        return self.limit_cents is not None and self.cents >= NEAR * self.limit_cents


def charge_minutes(
    ledger: Ledger, job_id: int, minutes: int, *, hour_cents: int, text: str = "", who: str = "", agreed: str = ""
) -> Charge:
    """Work, by the minute; half a cent is rounded up. See charge_other for `agreed` and the errors."""
    cents = (minutes * hour_cents + 30) // 60
    return _charge(ledger, job_id, ChargeKind.MINUTES, text, minutes, hour_cents, cents, who, agreed)


def charge_part(
    ledger: Ledger, job_id: int, part_id: int, count: int = 1, *, who: str = "", agreed: str = ""
) -> Charge:
    """A part from the shop's stock, which becomes less; below nothing it is taken all the same, and seen in the list.

    See charge_other for `agreed` and the errors.
    """
    part = next((part for part in parts(ledger) if part.id == part_id), None)
    if part is None:
        raise Refused(f"there is no part with the key {part_id}")
    text = " ".join(word for word in (part.name, part.number) if word)
    each = part.each_cents
    return _charge(ledger, job_id, ChargeKind.PART, text, count, each, count * each, who, agreed, part_id)


def charge_other(ledger: Ledger, job_id: int, text: str, cents: int, *, who: str = "", agreed: str = "") -> Charge:
    """Anything else, with its price. `agreed`: who allowed it where it passes the limit of the job's owner.

    Raises OverLimit where nobody did, Refused for a closed job or a count or price out of range; LedgerError.
    """
    if not text.strip():
        raise Refused("what it is for is not said")
    return _charge(ledger, job_id, ChargeKind.OTHER, text, 1, cents, cents, who, agreed)


def take_back(ledger: Ledger, charge_id: int, *, who: str, why: str) -> Charge:
    """A line that was wrong is balanced by one of its own; the part goes back into the stock. Closed jobs too.

    Raises Refused where who or why is not said, there is no such line, or it was taken back; LedgerError.
    """
    if not (who.strip() and why.strip()):
        raise Refused("to take a line back, say who does it, and why")
    with ledger.writing() as session:
        row = session.get(ChargeRow, charge_id)
        if row is None:
            raise Refused(f"there is no line with the key {charge_id}")
        if row.corrects is not None:
            raise Refused("this line itself takes one back")
        if session.scalar(select(ChargeRow.id).where(ChargeRow.corrects == charge_id)) is not None:
            raise Refused("this line was taken back already")
        back = ChargeRow(
            job_id=row.job_id,
            utc=ledger.clock.utc(),
            who=who.strip(),
            kind=row.kind,
            text=f"{row.text}: taken back, {why.strip()}",
            part_id=row.part_id,
            count=-row.count,
            each_cents=row.each_cents,
            cents=-row.cents,
            corrects=charge_id,
        )
        return _add(ledger, session, back)


def charges_of(ledger: Ledger, job_id: int) -> list[Charge]:
    """Oldest first, with those that take one back. Raises LedgerError."""
    with ledger.reading() as session:
        wanted = select(ChargeRow).where(ChargeRow.job_id == job_id).order_by(ChargeRow.id)
        return [_charge_of(ledger, row) for row in session.scalars(wanted)]


def standing(ledger: Ledger, job_id: int) -> Standing:
    """Raises Refused where there is no such job, LedgerError."""
    with ledger.reading() as session:
        return _standing(session, job_row(session, job_id))


def parts(ledger: Ledger) -> list[Part]:
    """By name. Raises LedgerError."""
    with ledger.reading() as session:
        return [
            _part_of(ledger, row) for row in session.scalars(select(PartRow).order_by(PartRow.name, PartRow.number))
        ]


def keep_part(ledger: Ledger, name: str, number: str = "", *, each_cents: int, stock: int) -> Part:
    """A part with its price and how many are there; one of the same name and number gets both anew.

    Raises Refused for a name that is blank or a price out of range, LedgerError.
    """
    if not name.strip():
        raise Refused("a part needs a name")
    if not (0 <= each_cents <= MOST_CENTS and abs(stock) <= MOST_COUNT):
        raise Refused("a price or count out of range")
    with ledger.writing() as session:
        same = select(PartRow).filter_by(name=name.strip(), number=number.strip())
        row = session.scalars(same).one_or_none() or PartRow(name=name.strip(), number=number.strip())
        row.each_cents, row.stock = each_cents, stock
        session.add(row)
        session.flush()
        return _part_of(ledger, row)


def _charge(
    ledger: Ledger,
    job_id: int,
    kind: ChargeKind,
    text: str,
    count: int,
    each_cents: int,
    cents: int,
    who: str,
    agreed: str,
    part_id: int | None = None,
) -> Charge:
    if not (0 < count <= MOST_COUNT and 0 <= each_cents <= MOST_CENTS):
        raise Refused("a count or price out of range")
    with ledger.writing() as session:
        job = job_row(session, job_id)
        if job.state == JobState.CLOSED:
            raise Refused(f"job {job.tag} is closed: nothing more is charged to it")
        stands = _standing(session, job)
        passed = stands.limit_cents is not None and stands.cents + cents > stands.limit_cents
        if passed and not agreed.strip():
            assert stands.limit_cents is not None
            raise OverLimit(stands.cents + cents, stands.limit_cents)
        row = ChargeRow(
            job_id=job_id,
            utc=ledger.clock.utc(),
            who=who.strip(),
            kind=kind.value,
            text=f"{text.strip()} (above the limit, agreed by {agreed.strip()})" if passed else text.strip(),
            part_id=part_id,
            count=count,
            each_cents=each_cents,
            cents=cents,
        )
        return _add(ledger, session, row)


def _add(ledger: Ledger, session: Session, row: ChargeRow) -> Charge:
    session.add(row)
    if row.part_id is not None:
        session.get_one(PartRow, row.part_id).stock -= row.count
    session.flush()
    mark_changed(session, job_row(session, row.job_id), row.utc)
    return _charge_of(ledger, row)


def _standing(session: Session, job: JobRow) -> Standing:
    cents = session.scalar(select(func.sum(ChargeRow.cents)).where(ChargeRow.job_id == job.id))
    return Standing(cents=int(cents or 0), limit_cents=job.spending_limit_cents)


def _charge_of(ledger: Ledger, row: ChargeRow) -> Charge:
    return value_of(
        ledger.path, f"charge {row.id}", {name: getattr(row, name) for name in Charge.__struct_fields__}, Charge
    )


def _part_of(ledger: Ledger, row: PartRow) -> Part:
    return value_of(ledger.path, f"part {row.id}", {name: getattr(row, name) for name in Part.__struct_fields__}, Part)
