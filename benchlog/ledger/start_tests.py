"""Start tests, locked: under one name and version there is one test for ever, so that starts can be compared."""

import hashlib
from dataclasses import dataclass

import msgspec
from sqlalchemy import func, select
from sqlalchemy.orm import Session

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.schema import StartTestRow
from benchlog.ledger.store import Ledger
from benchlog.recovery.start_test import StartTest, check


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptTest:
    """A locked test, when and by whom. `digest`: SHA-256 of its content as it is kept."""

    id: int
    test: StartTest
    utc: str
    who: str
    digest: str


def lock(ledger: Ledger, test: StartTest, who: str = "") -> KeptTest:
    """Keeps a test as it is. The same one again is the one that is kept already.

    Raises Refused for values out of range, and where another test has this name and version; LedgerError.
    """
    check(test)
    test = msgspec.structs.replace(test, name=" ".join(test.name.split()))
    content = msgspec.json.encode(test).decode()
    with ledger.writing() as session:
        named = select(StartTestRow).where(StartTestRow.name == test.name, StartTestRow.version == test.version)
        row = session.scalars(named).one_or_none()
        if row is None:
            row = StartTestRow(
                name=test.name,
                version=test.version,
                content=content,
                digest=_digest(content),
                utc=ledger.clock.utc(),
                who=who.strip(),
            )
            session.add(row)
            session.flush()
        elif _kept(ledger, row).test != test:
            free = _next(session, test.name)
            raise Refused(
                f'start test "{test.name}", version {test.version}, is locked and says otherwise: '
                f"what differs is another version, {free} or above"
            )
        return _kept(ledger, row)


def next_version(ledger: Ledger, name: str) -> int:
    """One above the highest of this name; 1 for a new name. Raises LedgerError."""
    with ledger.reading() as session:
        return _next(session, " ".join(name.split()))


def start_tests(ledger: Ledger) -> list[KeptTest]:
    """By name, the newest version first. Raises LedgerError."""
    wanted = select(StartTestRow).order_by(StartTestRow.name, StartTestRow.version.desc())
    with ledger.reading() as session:
        return [_kept(ledger, row) for row in session.scalars(wanted)]


def start_test(ledger: Ledger, test_id: int) -> KeptTest:
    """Raises Refused where there is none, LedgerDamaged where it is not what was locked; LedgerError."""
    with ledger.reading() as session:
        row = session.get(StartTestRow, test_id)
        if row is None:
            raise Refused(f"there is no start test with the key {test_id}")
        return _kept(ledger, row)


def _next(session: Session, name: str) -> int:
    return (session.scalar(select(func.max(StartTestRow.version)).where(StartTestRow.name == name)) or 0) + 1


def _kept(ledger: Ledger, row: StartTestRow) -> KeptTest:
    name = f"start test {row.id}"
    if not isinstance(row.content, str) or _digest(row.content) != row.digest:
        raise LedgerDamaged(ledger.path, f"{name} is not what was locked")
    try:
        test = msgspec.json.decode(row.content, type=StartTest)
    except (msgspec.MsgspecError, ValueError, RecursionError) as error:
        raise LedgerDamaged(ledger.path, f"{name} can't be read ({error})") from error
    return KeptTest(id=row.id, test=test, utc=row.utc, who=row.who, digest=row.digest)


def _digest(content: str) -> str:
    return hashlib.sha256(content.encode()).hexdigest()
