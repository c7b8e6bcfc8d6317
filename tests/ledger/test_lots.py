"""Lots: units of one kind, each measured, judged and kept; what is due to be checked; what only was measured."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerReadOnly, Refused
from benchlog.history.rates import Rate
from benchlog.ledger.filing import file_journal
from benchlog.ledger.finding_jobs import count_jobs, find_jobs
from benchlog.ledger.known_good import keep_limits
from benchlog.ledger.likes import past_of
from benchlog.ledger.lot_checks import MOST_ZERO_A, SHIFT_S
from benchlog.ledger.lots import (
    add_unit,
    change_lot,
    check_due,
    check_from_run,
    checks,
    close_lot,
    keep_check,
    keep_judged,
    lot,
    lot_of,
    lots,
    open_lot,
    set_limits,
    unit,
    units,
)
from benchlog.ledger.pasts import pasts_of
from benchlog.ledger.start_tests import lock
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Order, Wanted
from benchlog.motor.limits import Judged
from benchlog.outcome import Outcome
from benchlog.records import CheckKind, Item, JobState, Lot, Purpose, RunKind, Unit
from benchlog.reports.lot import gather_lot
from tests.ledger.benches import (
    BEGAN,
    BILGE_PUMP,
    FANS,
    FREED,
    MOTOR,
    QUICK_LOOK,
    a_lot,
    blocks,
    file_start_up,
    fresh_ledger,
    judged_as,
    limits_like,
    request,
    write_journal,
)


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock(utc_start=datetime.fromisoformat(BEGAN).astimezone(UTC))


@pytest.fixture
def ledger(tmp_path: Path, clock: VirtualClock) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, clock) as ledger:
        yield ledger


@pytest.fixture
def fans(ledger: Ledger) -> Lot:
    return a_lot(ledger)


def passed_checks(ledger: Ledger, fans: Lot) -> None:
    keep_check(ledger, fans, "zero", 0.001, "A", True, "day bench")
    keep_check(ledger, fans, "short", 0.12, "Ω", True, "day bench")


def measured(ledger: Ledger, folder: Path, fans: Lot, serial: str, *, utc: str = BEGAN) -> tuple[Unit, int]:
    one = add_unit(ledger, fans, serial)
    return one, file_start_up(ledger, folder, f"{serial} {utc[11:13]}", job=fans.job.id, unit=one.id, utc=utc)


def judging(ledger: Ledger, folder: Path, fans: Lot) -> Lot:
    """The lot, judged by limits from a unit of its own."""
    _, run = measured(ledger, folder, fans, "CF-0")
    return set_limits(ledger, fans, keep_limits(ledger, limits_like((run,))))


def rows_of(ledger: Ledger, table: str) -> int:
    with closing(sqlite3.connect(ledger.path)) as connection:
        return int(connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0])


def test_an_opened_lot_is_a_job_that_measures(ledger: Ledger, fans: Lot) -> None:
    assert (fans.name, fans.operator, fans.leads, fans.fixture) == (
        "fans of spring",
        "day bench",
        "blue, 1 m",
        "clamp B",
    )
    assert (fans.ambient_c, fans.limits_id, fans.units) == (21.5, None, 0)
    assert (fans.job.purpose, fans.job.item, fans.job.motor, fans.job.who) == (
        Purpose.MEASURING,
        FANS,
        MOTOR,
        "day bench",
    )
    assert ledger.job(fans.job.id) == fans.job
    assert lot(ledger, fans.job.number) == lot_of(ledger, fans.job.id) == fans
    assert lots(ledger) == [fans]


def test_a_repair_is_no_lot(ledger: Ledger, fans: Lot) -> None:
    job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
    assert job.purpose is Purpose.REPAIR
    assert lot_of(ledger, job.id) is None
    with pytest.raises(Refused, match="no lot number 2"):
        lot(ledger, job.number)
    with pytest.raises(Refused, match="measures no lot"):
        add_unit(ledger, msgspec.structs.replace(fans, job=job), "CF-1")
    assert rows_of(ledger, "unit") == 0


@pytest.mark.parametrize(
    ("wrong", "why"),
    [
        ({"name": "  "}, "needs a name"),
        ({"name": "a\x1bb"}, "needs a name"),
        ({"item": BILGE_PUMP}, "BP-17.*of one unit"),
        ({"ambient_c": float("nan")}, "ambient"),
        ({"ambient_c": 210.0}, "ambient"),
        ({"test_id": 4711}, "no start test with the key 4711"),
        ({"limits_id": 4711}, "no limits with the key 4711"),
    ],
)
def test_a_lot_that_could_not_be_measured_is_refused_and_leaves_nothing(
    ledger: Ledger, wrong: dict[str, object], why: str
) -> None:
    asked: dict[str, object] = {"name": "fans", "item": FANS, "motor": MOTOR, "test_id": lock(ledger, QUICK_LOOK).id}
    with pytest.raises(Refused, match=why):
        open_lot(ledger, **(asked | wrong))  # type: ignore[arg-type]
    assert lots(ledger) == []
    assert rows_of(ledger, "job") == rows_of(ledger, "item") == 0


def test_units_are_numbered_as_they_come_and_a_serial_seen_again_is_the_same_one(ledger: Ledger, fans: Lot) -> None:
    first, second = add_unit(ledger, fans, "CF-1"), add_unit(ledger, fans, " CF-2\n")
    assert [(one.number, one.serial, one.run, one.passed) for one in (first, second)] == [
        (1, "CF-1", None, None),
        (2, "CF-2", None, None),
    ]
    assert add_unit(ledger, fans, "CF-1") == first
    assert units(ledger, fans) == [first, second]
    assert lot(ledger, fans.job.number).units == 2
    others = a_lot(ledger, name="fans of autumn")
    assert add_unit(ledger, others, "CF-1").id != first.id
    assert units(ledger, fans) == [first, second]


@pytest.mark.parametrize("serial", ["", "  ", "CF\x07", "7" * 101])
def test_what_is_no_serial_makes_no_unit(ledger: Ledger, fans: Lot, serial: str) -> None:
    with pytest.raises(Refused, match="serial"):
        add_unit(ledger, fans, serial)
    assert units(ledger, fans) == []


def test_a_unit_shows_its_last_run_and_what_that_was_judged_to_be(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    fans = judging(ledger, tmp_path, fans)
    passed_checks(ledger, fans)
    one, run = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T10:10:00.000Z")
    assert unit(ledger, one.id).run == run
    keep_judged(ledger, one.id, run, judged_as(False))
    keep_judged(ledger, one.id, run, judged_as(True))
    now = unit(ledger, one.id)
    assert (now.run, now.passed) == (run, True)
    assert msgspec.json.decode(now.judged, type=Judged) == judged_as(True)
    assert rows_of(ledger, "judged") == 2
    _, again = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T11:00:00.000Z")
    measured_again = units(ledger, fans)[1]
    assert (measured_again.run, measured_again.judged_run, measured_again.counts) == (again, run, run)
    assert (measured_again.passed, measured_again.failed_before) == (True, True)
    assert [run.id for run in ledger.runs(fans.job.id) if run.unit == one.id] == [run, again]


def test_a_verdict_stands_until_another_takes_its_place(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    fans = judging(ledger, tmp_path, fans)
    passed_checks(ledger, fans)
    one, failed = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T10:10:00.000Z")
    keep_judged(ledger, one.id, failed, judged_as(False))
    _, stopped = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T10:20:00.000Z")
    for kept in (None, judged_as(None)):  # as it is filed, and as it is judged: not at all
        if kept is not None:
            keep_judged(ledger, one.id, stopped, kept)
        now = unit(ledger, one.id)
        assert (now.run, now.passed, now.judged_run, now.ever_failed) == (stopped, False, failed, True)
        assert not now.failed_before
        assert msgspec.json.decode(now.judged, type=Judged) == judged_as(False)
        assert gather_lot(ledger, fans).pass_rate == Rate(hits=0, count=1)
    _, again = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T10:30:00.000Z")
    keep_judged(ledger, one.id, again, judged_as(True))
    now = unit(ledger, one.id)
    assert (now.run, now.passed, now.judged_run, now.failed_before) == (again, True, again, True)
    assert gather_lot(ledger, fans).pass_rate == Rate(hits=1, count=1)


def test_a_run_is_judged_only_as_its_own_unit_and_only_by_limits(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    first, run = measured(ledger, tmp_path, fans, "CF-1")
    second, _ = measured(ledger, tmp_path, fans, "CF-2")
    with pytest.raises(Refused, match="has no limits yet"):
        keep_judged(ledger, first.id, run, judged_as(True))
    set_limits(ledger, fans, keep_limits(ledger, limits_like((run,))))
    with pytest.raises(Refused, match="not of this unit"):
        keep_judged(ledger, second.id, run, judged_as(True))
    assert rows_of(ledger, "judged") == 0


def test_limits_of_another_test_do_not_judge_a_lot(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    _, run = measured(ledger, tmp_path, fans, "CF-1")
    right, wrong = (keep_limits(ledger, limits_like((run,), version=version)) for version in (1, 2))
    with pytest.raises(Refused, match=r'limits 2 are of test "quick look", version 2.*version 1'):
        set_limits(ledger, fans, wrong)
    assert lot(ledger, fans.job.number).limits_id is None
    assert set_limits(ledger, fans, right).limits_id == right
    other = keep_limits(ledger, limits_like((run,)))
    assert set_limits(ledger, fans, other).limits_id == other
    assert [entry.text for entry in ledger.entries(fans.job.id)] == [
        "Judged by limits 3 from now on; until now by limits 1"
    ]


def test_who_measures_and_at_what_ambient_may_change_and_what_was_is_written_down(ledger: Ledger, fans: Lot) -> None:
    assert change_lot(ledger, fans) == fans
    changed = change_lot(ledger, fans, operator=" night bench", ambient_c=-3.5)
    assert changed == lot(ledger, fans.job.number)
    assert (changed.operator, changed.job.who, changed.ambient_c) == ("night bench", "night bench", -3.5)
    assert (changed.leads, changed.fixture) == (fans.leads, fans.fixture)
    told = [entry.text for entry in ledger.entries(fans.job.id)]
    assert told == [
        "Operator from now on: night bench; until now day bench",
        "Ambient from now on: -3.5 °C; until now 21.5 °C",
    ]
    for ambient in (float("nan"), 400.0):
        with pytest.raises(Refused, match="ambient"):
            change_lot(ledger, fans, operator="x", ambient_c=ambient)
    with pytest.raises(Refused, match="was closed"):
        change_lot(ledger, close_lot(ledger, fans), operator="x")
    assert lot(ledger, fans.job.number).operator == "night bench"
    assert [entry.text for entry in ledger.entries(fans.job.id)] == told


def test_checks_are_due_until_they_pass_and_again_after_a_shift(ledger: Ledger, fans: Lot, clock: VirtualClock) -> None:
    assert check_due(ledger, fans) == (CheckKind.ZERO, CheckKind.SHORT)
    keep_check(ledger, fans, "zero", 0.001, "A", True, "day bench")
    keep_check(ledger, fans, "short", 0.9, "Ω", False, "day bench")
    assert check_due(ledger, fans) == (CheckKind.SHORT,)
    clock.advance(60.0)
    kept = keep_check(ledger, fans, "short", 0.12, "Ω", True, "day bench")
    assert check_due(ledger, fans) == ()
    assert [(one.kind, one.value, one.passed) for one in checks(ledger, fans)] == [
        ("zero", 0.001, True),
        ("short", 0.9, False),
        ("short", 0.12, True),
    ]
    assert (kept.utc, kept.unit, kept.who, kept.run) == ("2026-11-25T10:01:00.000Z", "Ω", "day bench", None)
    clock.advance(SHIFT_S)
    assert check_due(ledger, fans) == (CheckKind.ZERO,)
    clock.advance(1.0)
    assert check_due(ledger, fans) == (CheckKind.ZERO, CheckKind.SHORT)


def test_a_later_check_that_fails_makes_it_due_at_once(ledger: Ledger, fans: Lot, clock: VirtualClock) -> None:
    passed_checks(ledger, fans)
    clock.advance(60.0)
    keep_check(ledger, fans, "zero", 0.2, "A", False)
    assert check_due(ledger, fans) == (CheckKind.ZERO,)


@pytest.mark.parametrize(("kind", "value"), [("warm", 1.0), ("zero", float("nan")), ("short", float("inf"))])
def test_what_is_no_check_is_not_kept(ledger: Ledger, fans: Lot, kind: str, value: float) -> None:
    with pytest.raises(Refused):
        keep_check(ledger, fans, kind, value, "A", True)
    assert checks(ledger, fans) == []


def test_while_a_check_is_due_a_unit_is_measured_and_kept_but_neither_passes_nor_fails(
    ledger: Ledger, fans: Lot, tmp_path: Path, clock: VirtualClock
) -> None:
    fans = judging(ledger, tmp_path, fans)
    one, run = measured(ledger, tmp_path, fans, "CF-1")
    for said in (True, False):
        kept = keep_judged(ledger, one.id, run, judged_as(said))
        assert (kept.passed, kept.sentence) == (None, "Check due: zero and leads.")
        assert judged_as(said).sentence in kept.because
        assert unit(ledger, one.id).passed is None
    assert len(ledger.trace(run).volts) > 0
    # Checks made after the run say nothing of how the bench was before it.
    clock.advance(60.0)
    passed_checks(ledger, fans)
    assert keep_judged(ledger, one.id, run, judged_as(True)).passed is None
    _, again = measured(ledger, tmp_path, fans, "CF-1", utc="2026-11-25T11:00:00.000Z")
    assert keep_judged(ledger, one.id, again, judged_as(True)).passed is True


def test_a_run_tells_the_zero_and_a_measurement_of_the_leads_tells_the_leads(
    ledger: Ledger, fans: Lot, tmp_path: Path
) -> None:
    _, run = measured(ledger, tmp_path, fans, "CF-1")
    zero = check_from_run(ledger, fans, run, "day bench")
    assert (zero.kind, zero.value, zero.unit, zero.passed, zero.run) == (CheckKind.ZERO, 0.0, "A", True, run)
    assert (zero.utc, zero.who) == (BEGAN, "day bench")

    def leads(uid: str, outcome: Outcome, ohm: float | None) -> int:
        asked = msgspec.structs.replace(request(uid), kind=RunKind.LEADS)
        result = msgspec.structs.replace(FREED, outcome=outcome, resistance_ohm=ohm, reason="no current flows")
        said = blocks(asked, events=(), result=result)
        return file_journal(ledger, write_journal(tmp_path / f"{uid}.journal", said)).run

    short = check_from_run(ledger, fans, leads("joined", Outcome.SHORT, 0.12))
    assert (short.kind, short.value, short.unit, short.passed) == (CheckKind.SHORT, 0.12, "Ω", True)
    assert check_due(ledger, fans) == ()
    loose = check_from_run(ledger, fans, leads("loose", Outcome.UNDETERMINED, 4.2))
    assert (loose.value, loose.passed) == (4.2, False)
    before = checks(ledger, fans)
    with pytest.raises(Refused, match="no resistance of the leads: no current flows"):
        check_from_run(ledger, fans, leads("open", Outcome.OPEN, None))
    assert checks(ledger, fans) == before


def test_a_zero_beside_nothing_does_not_pass(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    said = blocks(request("leak"), events=())
    leaking = [
        msgspec.structs.replace(one, amps=MOST_ZERO_A + 0.001, flags=0) if hasattr(one, "amps") else one for one in said
    ]
    run = file_journal(ledger, write_journal(tmp_path / "leak.journal", leaking)).run
    assert check_from_run(ledger, fans, run).passed is False
    assert CheckKind.ZERO in check_due(ledger, fans)


def test_a_closed_lot_takes_no_new_unit_and_no_other_limits(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    one, run = measured(ledger, tmp_path, fans, "CF-1")
    closed = close_lot(ledger, fans)
    assert (closed.job.state, closed.units) == (JobState.CLOSED, 1)
    assert add_unit(ledger, closed, "CF-1").id == one.id
    with pytest.raises(Refused, match="was closed"):
        add_unit(ledger, closed, "CF-2")
    limits = keep_limits(ledger, limits_like((run,)))
    with pytest.raises(Refused, match="was closed"):
        set_limits(ledger, closed, limits)
    with pytest.raises(Refused, match="was closed"):
        close_lot(ledger, closed)
    assert lot(ledger, fans.job.number) == closed


def test_beside_a_window_that_writes_runs_and_judgements_are_kept_and_nothing_is_changed(
    ledger: Ledger, fans: Lot, tmp_path: Path
) -> None:
    fans = judging(ledger, tmp_path, fans)
    passed_checks(ledger, fans)
    one = add_unit(ledger, fans, "CF-1")
    with Ledger.open(ledger.path, clock=VirtualClock(), sole_writer=True):
        run = file_start_up(ledger, tmp_path, "beside", job=fans.job.id, unit=one.id, utc="2026-11-25T10:10:00.000Z")
        assert keep_judged(ledger, one.id, run, judged_as(True)).passed is True
        assert add_unit(ledger, fans, "CF-1").id == one.id
        for change in (
            lambda: add_unit(ledger, fans, "CF-2"),
            lambda: keep_check(ledger, fans, "zero", 0.0, "A", True),
            lambda: set_limits(ledger, fans, 1),
            lambda: close_lot(ledger, fans),
            lambda: a_lot(ledger, name="others"),
        ):
            with pytest.raises(LedgerReadOnly):
                change()
    assert [(one.serial, one.passed) for one in units(ledger, fans)] == [("CF-0", None), ("CF-1", True)]
    assert (len(lots(ledger)), len(checks(ledger, fans))) == (1, 2)


def test_lists_and_history_are_of_repairs_and_lots_are_found_by_their_words(
    ledger: Ledger, fans: Lot, tmp_path: Path
) -> None:
    repair = ledger.new_job(item=Item(kind="cabin fan", model=FANS.model), motor=MOTOR, complaint="", load_state="dry")
    measured(ledger, tmp_path, fans, "CF-0417")
    assert [job.id for job in ledger.jobs()] == [repair.id]
    for wanted in (Wanted(), Wanted(order=Order.OLDEST), Wanted(order=Order.CHANGED), Wanted(kind="cabin fan")):
        assert {job.id for job in find_jobs(ledger, wanted).jobs} == {repair.id, fans.job.id}, wanted
        assert count_jobs(ledger, wanted) == 2
        repairs = replace(wanted, purpose=Purpose.REPAIR)
        assert [job.id for job in find_jobs(ledger, repairs).jobs] == [repair.id], wanted
        assert count_jobs(ledger, repairs) == 1
    for words in ("spring", "day bench", "CF-0417", "cf 04", "clamp", "blue"):
        for order in Order:
            assert [job.id for job in find_jobs(ledger, Wanted(text=words, order=order)).jobs] == [fans.job.id], words
        assert find_jobs(ledger, Wanted(text=words, purpose=Purpose.REPAIR)).jobs == []
    only = Wanted(purpose=Purpose.MEASURING)
    assert [job.id for job in find_jobs(ledger, only).jobs] == [fans.job.id]
    assert count_jobs(ledger, only) == 1
    assert {job.id for job in find_jobs(ledger, Wanted(text="cabin fan")).jobs} == {repair.id, fans.job.id}
    for wanted in (Wanted(), Wanted(text="cabin"), Wanted(kind="cabin fan"), only):
        assert all(past.id == repair.id for past in pasts_of(ledger, wanted, hand_steps=True)), wanted
    assert len(pasts_of(ledger)) == 1


def test_what_a_measuring_job_went_through_advises_nobody(ledger: Ledger, fans: Lot, tmp_path: Path) -> None:
    for uid, job in (("m", fans.job.id), ("r", ledger.new_job(item=FANS, motor=MOTOR, complaint="", load_state="").id)):
        file_journal(ledger, write_journal(tmp_path / f"{uid}.journal", blocks(request(uid, job=job))))
    assert [past.job for past in past_of(ledger, FANS)] == [2]
