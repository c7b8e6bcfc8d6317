"""Forms that were begun and not kept yet: saved as they are filled in, so that nothing typed is lost."""

import msgspec

from benchlog.errors import LedgerDamaged
from benchlog.ledger.schema import DraftRow
from benchlog.ledger.store import Ledger

Fields = dict[str, str | bool | int | None]


def keep_draft(ledger: Ledger, key: str, fields: Fields) -> None:
    """`key` names the form, such as "intake" or "close 12". Raises LedgerError."""
    with ledger.writing() as session:
        text = msgspec.json.encode(fields).decode()
        session.merge(DraftRow(key=key, utc=ledger.clock.utc(), fields=text))


def draft(ledger: Ledger, key: str) -> Fields | None:
    """None where there is none. Raises LedgerError."""
    with ledger.reading() as session:
        row = session.get(DraftRow, key)
        if row is None:
            return None
        try:
            return msgspec.json.decode(row.fields, type=Fields)
        except (msgspec.MsgspecError, TypeError) as error:
            raise LedgerDamaged(ledger.path, f"the draft of {key[:40]} can't be read ({error})") from error


def drop_draft(ledger: Ledger, key: str) -> None:
    """The form was kept, or given up. Raises LedgerError."""
    with ledger.writing() as session:
        if (row := session.get(DraftRow, key)) is not None:
            session.delete(row)
