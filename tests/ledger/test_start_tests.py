"""Start tests that are locked stay as they are."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged, LedgerReadOnly, Refused
from benchlog.ledger.start_tests import lock, next_version, start_test, start_tests
from benchlog.ledger.store import Ledger
from benchlog.recovery.start_test import StartTest
from tests.ledger.benches import QUICK_LOOK, fresh_ledger


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        yield ledger


def test_a_locked_test_is_read_back_as_it_was(ledger: Ledger) -> None:
    kept = lock(ledger, QUICK_LOOK, " day bench ")
    assert (kept.test, kept.utc, kept.who) == (QUICK_LOOK, "2026-01-01T00:00:00.000Z", "day bench")
    assert start_test(ledger, kept.id) == kept
    assert start_tests(ledger) == [kept]
    assert len(kept.digest) == 64


def test_the_same_test_locked_again_is_the_same_row(ledger: Ledger) -> None:
    first = lock(ledger, QUICK_LOOK, "day bench")
    ledger.clock.advance(60.0)  # type: ignore[attr-defined]
    assert lock(ledger, QUICK_LOOK, "night bench") == first
    assert lock(ledger, msgspec.structs.replace(QUICK_LOOK, name="  quick   look ")) == first
    assert start_tests(ledger) == [first]


@pytest.mark.parametrize("change", [{"volts": 12.5}, {"on_s": 1.1}, {"starts": 3}, {"amps": 2.0}, {"interleave": 2}])
def test_under_a_name_and_version_nothing_else_is_ever_locked(ledger: Ledger, change: dict[str, float]) -> None:
    kept = lock(ledger, QUICK_LOOK)
    other = msgspec.structs.replace(QUICK_LOOK, **change)
    with pytest.raises(Refused, match=r"quick look.*version 1.*2 or above"):
        lock(ledger, other)
    assert start_tests(ledger) == [kept]
    second = lock(ledger, msgspec.structs.replace(other, version=next_version(ledger, "quick look")))
    assert start_tests(ledger) == [second, kept]
    assert next_version(ledger, "quick look") == 3
    assert next_version(ledger, "long look") == 1


def test_what_is_out_of_range_is_never_locked(ledger: Ledger) -> None:
    with pytest.raises(Refused, match="on_s"):
        lock(ledger, StartTest(name="for ever", volts=12.0, on_s=3600.0))
    with pytest.raises(Refused, match="name"):
        lock(ledger, StartTest(name=" ", volts=12.0))
    assert start_tests(ledger) == []
    with pytest.raises(Refused, match="no start test"):
        start_test(ledger, 1)


def test_beside_a_window_that_writes_nothing_is_locked(ledger: Ledger) -> None:
    with Ledger.open(ledger.path, clock=VirtualClock(), sole_writer=True), pytest.raises(LedgerReadOnly):
        lock(ledger, QUICK_LOOK)
    assert start_tests(ledger) == []


@pytest.mark.parametrize("content", ["""replace(content, '"volts":12.0', '"volts":24.0')""", "'{'", "NULL || x'00'"])
def test_a_test_that_was_changed_in_the_file_is_damage_and_not_run(ledger: Ledger, content: str) -> None:
    kept = lock(ledger, QUICK_LOOK)
    with closing(sqlite3.connect(ledger.path, isolation_level=None)) as connection:
        connection.execute(f"UPDATE start_test SET content = coalesce({content}, '')")
    with pytest.raises(LedgerDamaged, match="not what was locked"):
        start_test(ledger, kept.id)
