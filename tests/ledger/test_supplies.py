"""What is kept of supplies: the last counts, by address and identity, and runs get it."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import CHECKED, FOUND, TOLD, KeptSupply, keep_supply, kept_supply, last_check, spoken_with
from drivers.dialect import shipped, to_json
from tests.ledger.benches import fresh_ledger

HERE, THERE = "TCPIP::127.0.0.1::5025::SOCKET", "TCPIP::127.0.0.1::5026::SOCKET"


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock()


@pytest.fixture
def ledger(tmp_path: Path, clock: VirtualClock) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, clock) as ledger:
        yield ledger


def keep(
    ledger: Ledger, clock: VirtualClock, kind: str = FOUND, *, resource: str = HERE, **changes: object
) -> KeptSupply:
    clock.advance(1.0)
    asked: dict[str, object] = {"identity": "Harbour,17", "output": 1, "dialect": to_json(shipped()), "content": {}}
    return keep_supply(ledger, resource=resource, kind=kind, **(asked | changes))  # type: ignore[arg-type]


def test_the_last_that_was_found_or_told_counts(ledger: Ledger, clock: VirtualClock) -> None:
    keep(ledger, clock, content={"usable": True})
    told = keep(ledger, clock, TOLD, content={"most": 30.0})
    assert kept_supply(ledger, f" {HERE} ") == told
    assert kept_supply(ledger, THERE) is None
    assert kept_supply(ledger, HERE, "Other,1") is None


def test_runs_get_the_dialect_whom_it_was_found_for_and_the_last_check(ledger: Ledger, clock: VirtualClock) -> None:
    assert spoken_with(ledger, HERE) == {}
    keep(ledger, clock)
    assert spoken_with(ledger, HERE) == {"dialect": to_json(shipped()), "identity": "Harbour,17", "checked": ""}
    checked = keep(ledger, clock, CHECKED, dialect="", content={"passed": True})
    assert f"Supply checked on {checked.utc[:10]}, all within" in spoken_with(ledger, HERE)["checked"]
    keep(ledger, clock, CHECKED, dialect="", content={"passed": False})
    assert "not all within" in spoken_with(ledger, HERE)["checked"]
    assert last_check(ledger, THERE) is None


def test_the_check_of_another_instrument_at_the_same_address_is_not_this_ones(
    ledger: Ledger, clock: VirtualClock
) -> None:
    keep(ledger, clock, CHECKED, identity="Other,1", dialect="", content={"passed": True})
    keep(ledger, clock)
    assert spoken_with(ledger, HERE)["checked"] == ""


def test_what_can_not_be_read_is_damage_and_no_supply(ledger: Ledger, clock: VirtualClock) -> None:
    keep(ledger, clock)
    with closing(sqlite3.connect(ledger.path)) as connection:
        connection.execute("UPDATE supply SET content = 'x'")
        connection.commit()
    with pytest.raises(LedgerDamaged):
        kept_supply(ledger, HERE)
