"""What the history is given: of each job what it came to, from its rows."""

from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.ledger.costs import charge_minutes, charge_other, take_back
from benchlog.ledger.filing import file_journal
from benchlog.ledger.pasts import pasts_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Order, Wanted
from benchlog.outcome import Outcome
from benchlog.records import Closing, Entry, EntryKind, Event, EventKind, Item, Result, RunKind, Stage
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, FREED, MOTOR, blocks, leave_journal, request, write_journal

DAY_S = 86_400.0


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock()


@pytest.fixture
def ledger(tmp_path: Path, clock: VirtualClock) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        yield ledger


def new_job(ledger: Ledger, item: Item = BILGE_PUMP) -> int:
    return ledger.new_job(item=item, motor=MOTOR, complaint="hums", load_state="dry").id


def test_a_job_from_its_item_to_its_end(ledger: Ledger, tmp_path: Path) -> None:
    job = new_job(ledger)
    file_journal(ledger, leave_journal(tmp_path, "a", job=job))
    ledger.close_job(job, Closing(cause="rust", work_done="", prognosis="", result=Result.WORKS, method="kicks"))
    (past,) = pasts_of(ledger)
    assert (past.id, past.number, past.kind, past.serial) == (job, 1, "bilge pump", "BP-17")
    assert (past.cause, past.method, past.result, past.state) == ("rust", "kicks", "works", "closed")
    assert (past.outcome, past.kicks, past.kick_s) == ("freed", FREED.kicks, 4.0)
    assert past.went_out_working
    assert past.came_free


def test_kicks_and_seconds_are_of_the_runs_that_were_to_free_it_and_its_end_is_of_the_last_of_them(
    ledger: Ledger, tmp_path: Path
) -> None:
    job = new_job(ledger)
    stuck = msgspec.structs.replace(FREED, outcome=Outcome.STILL_STUCK, kicks=5)
    runs = msgspec.structs.replace(FREED, outcome=Outcome.RUNS, kicks=0)
    told = [(RunKind.RECOVERY, stuck, "10"), (RunKind.RECOVERY, FREED, "11"), (RunKind.PROOF, runs, "12")]
    for n, (kind, result, hour) in enumerate(told):
        asked = msgspec.structs.replace(request(f"r{n}", job=job), kind=kind)
        said = blocks(asked, utc=f"2026-11-25T{hour}:00:00.000Z", result=result)
        file_journal(ledger, write_journal(tmp_path / f"r{n}.journal", said))
    (past,) = pasts_of(ledger)
    assert (past.outcome, past.kicks, past.kick_s) == ("freed", 5 + FREED.kicks, 8.0)
    assert ledger.job(job).last_outcome == "runs"


def test_minutes_and_cents_without_what_was_taken_back(ledger: Ledger) -> None:
    job = new_job(ledger)
    charge_minutes(ledger, job, 30, hour_cents=6000)
    wrong = charge_minutes(ledger, job, 10, hour_cents=6000)
    charge_other(ledger, job, "harbour launch", 250)
    take_back(ledger, wrong.id, who="Ana", why="another job's")
    (past,) = pasts_of(ledger)
    assert (past.minutes, past.cents) == (30, 3250)


def test_a_thing_that_comes_back_is_known_by_its_serial(ledger: Ledger, clock: VirtualClock) -> None:
    opened: list[str] = []
    for item in (BILGE_PUMP, CABIN_FAN, BILGE_PUMP, CABIN_FAN, BILGE_PUMP):
        new_job(ledger, item)
        opened.append(ledger.job(len(opened) + 1).opened_utc)
        clock.advance(DAY_S)
    back = [past.came_back_utc for past in pasts_of(ledger)]
    assert back == [opened[2], None, opened[4], None, None]
    # Also where the job in which it came back is not among those that are asked for.
    first = Wanted(until_utc=opened[1])
    assert [past.came_back_utc for past in pasts_of(ledger, first)] == [opened[2]]


def test_hand_steps_of_entries_and_of_runs_each_once(ledger: Ledger, tmp_path: Path) -> None:
    job = new_job(ledger)
    for kind in (EntryKind.SOAKED, EntryKind.SOAKED, EntryKind.CHECK):
        ledger.add_entry(job, Entry(utc="2026-01-01T00:00:00.000Z", stage=Stage.FREE, text="so", kind=kind))
    hands = (
        Event(t_s=1.0, kind=EventKind.HAND, text="By hand: turn and tap."),
        Event(t_s=2.0, kind=EventKind.HAND, text="Skipped: oil."),
    )
    file_journal(ledger, write_journal(tmp_path / "a.journal", blocks(request("a", job=job), events=hands)))
    assert pasts_of(ledger, hand_steps=True)[0].hand_steps == ("soaked", "tapped", "turned")


@pytest.mark.parametrize("order", [*Order])
def test_what_is_wanted_and_nothing_else_by_id(ledger: Ledger, order: Order) -> None:
    for item in (BILGE_PUMP, CABIN_FAN, BILGE_PUMP):
        new_job(ledger, item)
    assert [past.id for past in pasts_of(ledger, Wanted(order=order))] == [1, 2, 3]
    assert [past.id for past in pasts_of(ledger, Wanted(kind="bilge pump", order=order))] == [1, 3]
    assert [past.id for past in pasts_of(ledger, Wanted(text="cabin", order=order))] == [2]
    assert pasts_of(ledger, Wanted(text="zebra", order=order)) == []
