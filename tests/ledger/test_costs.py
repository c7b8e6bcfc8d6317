"""What a job costs, against what its owner allows."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.costs import (
    OverLimit,
    charge_minutes,
    charge_other,
    charge_part,
    charges_of,
    keep_part,
    parts,
    standing,
    take_back,
)
from benchlog.ledger.edits import change
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, Job, TakenIn
from tests.ledger.benches import BILGE_PUMP, MOTOR


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def job(ledger: Ledger) -> Job:
    taken = TakenIn(spending_limit_cents=5000)
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry", taken_in=taken)


def test_minutes_parts_and_the_rest_come_to_a_sum_that_nears_the_limit(ledger: Ledger, job: Job) -> None:
    seal = keep_part(ledger, "shaft seal", "8 mm", each_cents=450, stock=3)
    assert charge_minutes(ledger, job.id, 25, hour_cents=6000, text="taken apart").cents == 2500
    assert charge_part(ledger, job.id, seal.id, 2).cents == 900
    assert not standing(ledger, job.id).near
    charge_other(ledger, job.id, "cleaner", 600)
    stands = standing(ledger, job.id)
    assert (stands.cents, stands.left_cents, stands.near) == (4000, 1000, True)
    assert [part.stock for part in parts(ledger)] == [1]


def test_half_a_cent_is_rounded_up(ledger: Ledger, job: Job) -> None:
    assert charge_minutes(ledger, job.id, 1, hour_cents=4530).cents == 76


def test_a_line_above_the_limit_is_not_kept_until_somebody_agreed(ledger: Ledger, job: Job) -> None:
    charge_other(ledger, job.id, "impeller", 4900)
    with pytest.raises(OverLimit) as refusal:
        charge_other(ledger, job.id, "seal", 101)
    assert (refusal.value.cents, refusal.value.limit_cents) == (5001, 5000)
    assert standing(ledger, job.id).cents == 4900
    charge_other(ledger, job.id, "screw", 100)
    assert "agreed by berth 12" in charge_other(ledger, job.id, "seal", 101, agreed="berth 12").text
    assert standing(ledger, job.id).left_cents == -101


def test_a_raised_limit_leaves_room_again(ledger: Ledger, job: Job) -> None:
    change(ledger, job.id, {"spending_limit_cents": 9000}, who="hand 1", why="the owner agreed by telephone")
    charge_other(ledger, job.id, "impeller", 8000)
    assert standing(ledger, job.id).left_cents == 1000


def test_a_line_taken_back_is_balanced_and_the_part_is_in_the_stock_again(ledger: Ledger, job: Job) -> None:
    seal = keep_part(ledger, "shaft seal", each_cents=450, stock=3)
    line = charge_part(ledger, job.id, seal.id, 2)
    with pytest.raises(Refused):
        take_back(ledger, line.id, who="hand 1", why="")
    back = take_back(ledger, line.id, who="hand 1", why="wrong size")
    assert (back.count, back.cents, back.corrects) == (-2, -900, line.id)
    assert standing(ledger, job.id).cents == 0
    assert [part.stock for part in parts(ledger)] == [3]
    for again in (line.id, back.id, 99):
        with pytest.raises(Refused):
            take_back(ledger, again, who="hand 1", why="again")
    assert len(charges_of(ledger, job.id)) == 2


@pytest.mark.parametrize("minutes", [0, -5, 100_001])
def test_minutes_out_of_range_are_refused(ledger: Ledger, job: Job, minutes: int) -> None:
    with pytest.raises(Refused):
        charge_minutes(ledger, job.id, minutes, hour_cents=6000)
    assert charges_of(ledger, job.id) == []


def test_a_closed_job_takes_no_new_line_but_one_can_be_taken_back(ledger: Ledger, job: Job) -> None:
    line = charge_other(ledger, job.id, "cleaner", 600)
    ledger.close_job(job.id, Closing(cause="seal", work_done="", prognosis=""))
    with pytest.raises(Refused, match="closed"):
        charge_other(ledger, job.id, "late", 100)
    take_back(ledger, line.id, who="hand 1", why="given for nothing")
    assert standing(ledger, job.id).cents == 0


def test_a_part_is_kept_once_by_name_and_number(ledger: Ledger) -> None:
    first = keep_part(ledger, "brush", "5 x 4", each_cents=300, stock=4)
    again = keep_part(ledger, " brush ", "5 x 4", each_cents=350, stock=10)
    assert (again.id, parts(ledger)) == (first.id, [again])
    for name, cents in (("", 100), ("brush", -1)):
        with pytest.raises(Refused):
            keep_part(ledger, name, each_cents=cents, stock=1)
