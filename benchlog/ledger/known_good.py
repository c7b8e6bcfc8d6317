"""Limits from known good ones, kept as they were worked out. They never change: others stand beside them."""

import math
from dataclasses import dataclass

import msgspec
from sqlalchemy import select

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.schema import ItemRow, JobRow, LimitsRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.motor.limits import StartLimits
from benchlog.records import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptLimits:
    """Limits, of what kind of thing, when and by whom. `item` has no serial."""

    id: int
    item: Item
    limits: StartLimits
    utc: str
    who: str


def keep_limits(ledger: Ledger, limits: StartLimits, who: str = "") -> int:
    """Their key. What they are of is what the things were whose runs they come from.

    Raises Refused where they come from no run, from one that is not in this ledger, from things of different kinds,
    makes or models, or where a number is none; LedgerError.
    """
    if not limits.runs:
        raise Refused("limits come from runs of known good ones: none is named")
    content = _text(limits)
    with ledger.writing() as session:
        of_runs = (
            select(RunRow.id, ItemRow.kind, ItemRow.make, ItemRow.model)
            .join(JobRow, JobRow.id == RunRow.job_id)
            .join(ItemRow, ItemRow.id == JobRow.item_id)
        )
        found = [one for run in set(limits.runs) for one in session.execute(of_runs.where(RunRow.id == run))]
        if missing := sorted(set(limits.runs) - {run for run, *_ in found}):
            raise Refused(f"there is no run {missing[0]}")
        labels = {tuple(label) for _, *label in found}
        if len(labels) > 1:
            kinds = "; ".join(sorted(" ".join(filter(None, label)) for label in labels))
            raise Refused(f"these runs are of different things, which have no limits in common: {kinds}")
        kind, make, model = labels.pop()
        row = LimitsRow(
            test_name=limits.test,
            test_version=limits.version,
            kind=kind,
            make=make,
            model=model,
            n=limits.n,
            coverage=limits.coverage,
            confidence=limits.confidence,
            content=content,
            utc=ledger.clock.utc(),
            who=who.strip(),
        )
        session.add(row)
        session.flush()
        return row.id


def kept_limits(ledger: Ledger, limits_id: int) -> KeptLimits:
    """Raises Refused where there are none, LedgerDamaged where they can't be read; LedgerError."""
    with ledger.reading() as session:
        row = session.get(LimitsRow, limits_id)
        if row is None:
            raise Refused(f"there are no limits with the key {limits_id}")
        return _kept(ledger, row)


def limits_for(
    ledger: Ledger, test_name: str | None = None, version: int | None = None, model: str | None = None
) -> list[KeptLimits]:
    """Newest first, of a test and a model; None lets all through. Raises LedgerError."""
    wanted = select(LimitsRow).order_by(LimitsRow.id.desc())
    for column, asked in (
        (LimitsRow.test_name, test_name),
        (LimitsRow.test_version, version),
        (LimitsRow.model, model),
    ):
        if asked is not None:
            wanted = wanted.where(column == asked)
    with ledger.reading() as session:
        return [_kept(ledger, row) for row in session.scalars(wanted)]


def _text(limits: StartLimits) -> str:
    # A number that is none becomes null in JSON, and null is "no limit here": what failed would pass.
    plain = msgspec.to_builtins(limits)
    if not _finite(plain):
        raise Refused("a number of these limits is none")
    return msgspec.json.encode(plain).decode()


def _finite(plain: object) -> bool:
    if isinstance(plain, float):
        return math.isfinite(plain)
    if isinstance(plain, dict):
        return all(_finite(one) for one in plain.values())
    return all(_finite(one) for one in plain) if isinstance(plain, list | tuple) else True


def _kept(ledger: Ledger, row: LimitsRow) -> KeptLimits:
    try:
        limits = msgspec.json.decode(row.content, type=StartLimits)
    except (msgspec.MsgspecError, TypeError, ValueError, RecursionError) as error:
        raise LedgerDamaged(ledger.path, f"limits {row.id} can't be read ({error})") from error
    return KeptLimits(
        id=row.id,
        item=Item(kind=row.kind, make=row.make, model=row.model),
        limits=limits,
        utc=row.utc,
        who=row.who,
    )
