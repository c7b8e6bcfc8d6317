"""Of which runs limits may be made: known good ones, and no others."""

from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.captured import captured
from benchlog.ledger.good_runs import good_runs_of_lot, refuse_not_good
from benchlog.ledger.known_good import keep_limits
from benchlog.ledger.lots import add_unit, keep_check, keep_judged, set_limits
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import Lot
from tests.ledger.benches import (
    CABIN_FAN,
    FANS,
    MOTOR,
    RAN,
    a_lot,
    file_start_up,
    fresh_ledger,
    judged_as,
    limits_like,
)

STUCK = msgspec.structs.replace(RAN, outcome=Outcome.STILL_STUCK, reason="start 2 did not turn")
STOPPED = msgspec.structs.replace(RAN, outcome=Outcome.STOPPED, reason="output off was pressed")


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def fans(ledger: Ledger) -> Lot:
    return a_lot(ledger)


def measured(
    ledger: Ledger, folder: Path, fans: Lot, serial: str, hour: int = 10, changes: dict[str, object] | None = None
) -> tuple[int, int]:
    """The unit's key and the run's."""
    one = add_unit(ledger, fans, serial).id
    utc = f"2026-11-25T{hour}:00:00.000Z"
    return one, file_start_up(ledger, folder, f"{serial} {hour}", job=fans.job.id, unit=one, utc=utc, **(changes or {}))


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"result": STUCK}, r"it ended as still-stuck \(start 2 did not turn\)"),
        ({"result": STOPPED, "peaks": (2.0,)}, "it ended as stopped"),
        ({"peaks": (2.0,)}, "it captured 1 of the 2 starts of its test"),
    ],
)
def test_what_did_not_turn_at_every_start_of_its_test_is_no_known_good_one(
    ledger: Ledger, fans: Lot, tmp_path: Path, changes: dict[str, object], why: str
) -> None:
    _, good = measured(ledger, tmp_path, fans, "CF-1")
    _, bad = measured(ledger, tmp_path, fans, "CF-2", changes=changes)
    assert [one.run.id for one in good_runs_of_lot(ledger, fans)] == [good]
    refuse_not_good(ledger, captured(ledger, good))
    with pytest.raises(Refused, match=f"run {bad} is of no known good one: {why}"):
        refuse_not_good(ledger, captured(ledger, bad))


def test_a_unit_that_any_judgement_failed_is_no_known_good_one_whatever_came_after(
    ledger: Ledger, fans: Lot, tmp_path: Path
) -> None:
    one, first = measured(ledger, tmp_path, fans, "CF-1")
    fans = set_limits(ledger, fans, keep_limits(ledger, limits_like((first,))))
    for kind, unit in (("zero", "A"), ("short", "Ω")):
        keep_check(ledger, fans, kind, 0.0, unit, True, utc="2026-11-25T09:00:00.000Z")
    assert keep_judged(ledger, one, first, judged_as(False)).passed is False
    _, again = measured(ledger, tmp_path, fans, "CF-1", 11)
    assert good_runs_of_lot(ledger, fans) == []
    assert keep_judged(ledger, one, again, judged_as(True)).passed is True
    assert good_runs_of_lot(ledger, fans) == []
    for run in (first, again):
        with pytest.raises(Refused, match=f"run {run} .*unit CF-1 failed"):
            refuse_not_good(ledger, captured(ledger, run))


def test_only_the_last_run_of_a_unit_stands_for_it(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    measured(ledger, tmp_path, fans, "CF-1")
    _, again = measured(ledger, tmp_path, fans, "CF-1", 11)
    assert [one.run.id for one in good_runs_of_lot(ledger, fans)] == [again]
    measured(ledger, tmp_path, fans, "CF-1", 12, {"result": STUCK})
    assert good_runs_of_lot(ledger, fans) == []


def test_without_a_serial_nobody_can_tell_whether_it_is_another_motor(ledger: Ledger, tmp_path: Path) -> None:
    for serial, refused in (("", True), ("CF-9", False)):
        item = msgspec.structs.replace(CABIN_FAN, serial=serial, model=FANS.model)
        job = ledger.new_job(item=item, motor=MOTOR, complaint="slow", load_state="dry")
        run = file_start_up(ledger, tmp_path, f"of {serial}", job=job.id)
        if refused:
            with pytest.raises(Refused, match=f"run {run} has no serial: whether it is another motor can't be told"):
                refuse_not_good(ledger, captured(ledger, run))
        else:
            refuse_not_good(ledger, captured(ledger, run))
