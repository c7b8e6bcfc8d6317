"""What is known of the supplies: which dialect was found or told for each, and when one was last checked.

A supply is its address and its own word for itself together: another instrument at the same address is another supply.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import msgspec
from sqlalchemy import select

from benchlog.clock import day_text
from benchlog.errors import LedgerDamaged
from benchlog.ledger.schema import SupplyRow
from benchlog.ledger.store import Ledger
from benchlog.records import Run

FOUND, TOLD, CHECKED = "found", "told", "checked"
SETTLING = "settling"
"""A check that has this in its content is about how quick the supply is, and about nothing else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSupply:
    """An entry. `kind`: found by asking, told by a person, or a check. `dialect`: as JSON; `content`: plain values."""

    utc: str
    resource: str
    identity: str
    output: int
    kind: str
    dialect: str
    content: dict[str, Any]


def keep_supply(
    ledger: Ledger, *, resource: str, identity: str, output: int, kind: str, dialect: str, content: dict[str, Any]
) -> KeptSupply:
    """Written once, and so also beside another program that writes. Raises LedgerError."""
    kept = KeptSupply(
        utc=ledger.clock.utc(),
        resource=resource.strip(),
        identity=identity,
        output=output,
        kind=kind,
        dialect=dialect,
        content=content,
    )
    with ledger.adding() as session:
        session.add(
            SupplyRow(
                utc=kept.utc,
                resource=kept.resource,
                identity=identity,
                output=output,
                kind=kind,
                dialect=dialect,
                content=msgspec.json.encode(content).decode(),
            )
        )
    return kept


def kept_supply(ledger: Ledger, resource: str, identity: str | None = None) -> KeptSupply | None:
    """The last that was found or told of a supply at this address; None where there is nothing. Raises LedgerError."""
    return _last(ledger, resource, identity, (FOUND, TOLD))


def last_check(ledger: Ledger, resource: str, identity: str | None = None) -> KeptSupply | None:
    """The last check of a supply at this address. Raises LedgerError."""
    return _last(ledger, resource, identity, (CHECKED,), lambda kept: SETTLING not in kept.content)


def last_settling(ledger: Ledger, resource: str, identity: str, output: int) -> KeptSupply | None:
    """How quick an output was when that was last measured, in `content[SETTLING]`. Raises LedgerError."""
    return _last(
        ledger, resource, identity, (CHECKED,), lambda kept: SETTLING in kept.content and kept.output == output
    )


class _Asked(msgspec.Struct, frozen=True):
    output: int | None = None


def output_of_run(run: Run) -> int | None:
    """Which output of its supply a run was on; None where its request is older than that, or can't be read."""
    try:
        return msgspec.json.decode(run.request, type=_Asked).output
    except msgspec.MsgspecError:
        return None


def spoken_with(ledger: Ledger, resource: str) -> dict[str, Any]:
    """The fields of a Request that say how the supply at this address is spoken to, and who it has to be; none where
    nothing is kept. Raises LedgerError."""
    kept = kept_supply(ledger, resource)
    if kept is None:
        return {}
    check = last_check(ledger, resource, kept.identity)
    return {"dialect": kept.dialect, "identity": kept.identity, "checked": _said(check)}


def _said(check: KeptSupply | None) -> str:
    """For the record of a run; "" where there was no check."""
    if check is None:
        return ""
    within = "all" if check.content.get("passed") else "not all"
    where = "" if check.output == 1 else f" at output {check.output}"
    return f"Supply checked on {day_text(check.utc)}{where}, {within} within what was stated; no calibration."


def _last(
    ledger: Ledger,
    resource: str,
    identity: str | None,
    kinds: tuple[str, ...],
    wanted_one: Callable[[KeptSupply], bool] = lambda kept: True,
) -> KeptSupply | None:
    wanted = select(SupplyRow).where(SupplyRow.resource == resource.strip(), SupplyRow.kind.in_(kinds))
    if identity is not None:
        wanted = wanted.where(SupplyRow.identity == identity)
    with ledger.reading() as session:
        rows = session.scalars(wanted.order_by(SupplyRow.utc.desc(), SupplyRow.id.desc()))
        return next((kept for kept in (_kept_of(ledger, row) for row in rows) if wanted_one(kept)), None)


def _kept_of(ledger: Ledger, row: SupplyRow) -> KeptSupply:
    try:
        content = msgspec.json.decode(row.content, type=dict[str, Any])
    except ValueError as error:
        raise LedgerDamaged(ledger.path, f"what is kept of a supply can't be read: {error}") from error
    return KeptSupply(
        utc=row.utc,
        resource=row.resource,
        identity=row.identity,
        output=row.output,
        kind=row.kind,
        dialect=row.dialect,
        content=content,
    )
