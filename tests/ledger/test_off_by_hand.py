"""An output that was not confirmed off stays so until a person says that the supply was switched off by hand."""

from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.ledger.filing import file_journal
from benchlog.ledger.off_by_hand import acknowledge, not_confirmed
from benchlog.ledger.store import Ledger
from benchlog.records import RunKind, Stage
from tests.ledger.benches import BILGE_PUMP, FREED, MOTOR, blocks, request, write_journal

HERE, ELSEWHERE = "TCPIP::127.0.0.1::5025::SOCKET", "TCPIP::127.0.0.1::5026::SOCKET"
NOT_OFF = msgspec.structs.replace(FREED, output_confirmed_off=False)


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        yield ledger


def filed(ledger: Ledger, uid: str, *, off: bool, resource: str = HERE, kind: RunKind = RunKind.RECOVERY) -> int:
    asked = msgspec.structs.replace(request(uid, job=1), resource=resource, kind=kind)
    said = blocks(asked, result=FREED if off else NOT_OFF)
    return file_journal(ledger, write_journal(ledger.path.parent / f"{uid}.journal", said)).run


def test_a_run_that_is_confirmed_off_asks_for_nothing(ledger: Ledger) -> None:
    filed(ledger, "a", off=True)
    assert not_confirmed(ledger) == []


def test_a_run_that_is_not_stays_until_it_is_acknowledged_also_when_the_ledger_is_opened_again(ledger: Ledger) -> None:
    run = filed(ledger, "a", off=False, kind=RunKind.PROOF)
    filed(ledger, "b", off=True)  # a later run says nothing for an earlier one
    with Ledger.open(ledger.path, clock=VirtualClock()) as again:
        (found,) = not_confirmed(again)
        assert found.id == run
        acknowledge(again, [found])
        acknowledge(again, [found])
        assert not_confirmed(again) == []
    (entry,) = ledger.entries(1)
    assert entry.text == f"run {run}: its output was not confirmed off; the supply was switched off by hand"
    assert (entry.stage, entry.utc) == (Stage.PROVE, "2026-01-01T00:00:00.000Z")
    assert entry.who


def test_supplies_are_told_apart_and_the_last_run_comes_first(ledger: Ledger) -> None:
    runs = [
        filed(ledger, "a", off=False),
        filed(ledger, "b", off=False, resource=ELSEWHERE),
        filed(ledger, "c", off=False),
    ]
    assert [run.id for run in not_confirmed(ledger)] == runs[::-1]
    here = not_confirmed(ledger, resource=HERE)
    assert [run.id for run in here] == [runs[2], runs[0]]
    acknowledge(ledger, here)
    assert [run.id for run in not_confirmed(ledger)] == [runs[1]]


def test_another_run_with_a_number_that_begins_the_same_is_not_acknowledged_along(ledger: Ledger) -> None:
    runs = [filed(ledger, f"r{index}", off=index not in (0, 10)) for index in range(11)]
    (eleventh, first) = not_confirmed(ledger)
    assert (first.id, eleventh.id) == (runs[0], runs[10]) == (1, 11)
    acknowledge(ledger, [first])
    assert [run.id for run in not_confirmed(ledger)] == [11]


def test_a_run_that_a_crash_cut_short_is_not_confirmed(ledger: Ledger) -> None:
    said = blocks(request("a", job=1), result=None)
    file_journal(ledger, write_journal(ledger.path.parent / "a.journal", said))
    assert len(not_confirmed(ledger, resource=HERE)) == 1
