"""What earlier runs left in a motor, above all those whose end nobody saw."""

from datetime import UTC, datetime
from pathlib import Path

import msgspec
import numpy as np
import pytest
from sqlalchemy import update

from benchlog.bench.journal import Kicked
from benchlog.clock import VirtualClock
from benchlog.ledger.filing import file_journal, file_left_behind, rescue_record_of
from benchlog.ledger.leads import lead_check
from benchlog.ledger.lots import add_unit
from benchlog.ledger.off_by_hand import acknowledge
from benchlog.ledger.schema import RunRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.warmth import warmth_of
from benchlog.outcome import Outcome, RunResult
from benchlog.records import FLAG_ON, Item, RunKind, Trace
from tests.ledger.benches import (
    BEGAN,
    BILGE_PUMP,
    FANS,
    FREED,
    MOTOR,
    a_lot,
    blocks,
    fresh_ledger,
    request,
    write_journal,
)

RESOURCE = "TCPIP::127.0.0.1::5025::SOCKET"
WATTS, DRIVEN_S = 12.0, 4.0


def driven_to_the_end() -> Trace:
    ticks = np.arange(0, round(DRIVEN_S * 10_000), 200, dtype=np.int64)
    count = len(ticks)
    return Trace(
        sent=ticks,
        received=ticks + 80,
        volts=np.full(count, 12.0),
        amps=np.full(count, 1.0),
        set_volts=np.full(count, 12.0),
        set_amps=np.full(count, 2.0),
        flags=np.full(count, FLAG_ON, dtype=np.uint8),
    )


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock(utc_start=datetime.fromisoformat(BEGAN).astimezone(UTC))


def joules(ledger: Ledger, job: int) -> float:
    return sum(pulse.joules for pulse in warmth_of(ledger, job=job, resource=RESOURCE).pulses)


def cut_short(ledger: Ledger, folder: Path, *, rescued: str | None = None) -> int:
    job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="", load_state="dry").id
    path = folder / "a.journal"
    said = blocks(request("a", job=job), trace=driven_to_the_end(), events=(), result=None)
    write_journal(path, said)
    if rescued is not None:
        word = {"utc": rescued, "confirmed_off": True, "text": "off"}
        rescue_record_of(path).write_bytes(msgspec.json.encode(word))
    file_journal(ledger, path)
    return job


def test_an_output_that_nobody_saw_go_off_counts_as_driven_until_somebody_says_so(
    tmp_path: Path, clock: VirtualClock
) -> None:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        job = cut_short(ledger, tmp_path)
        clock.advance(604.0)
        assert joules(ledger, job) == pytest.approx(WATTS * 604.0, rel=0.01)
        acknowledge(ledger, ledger.runs(job))
        clock.advance(100.0)
        assert joules(ledger, job) == pytest.approx(WATTS * 604.0, rel=0.01)
        clock.advance(900.0)
        assert joules(ledger, job) == 0.0


def test_an_output_that_a_rescue_had_off_counts_until_then(tmp_path: Path, clock: VirtualClock) -> None:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        job = cut_short(ledger, tmp_path, rescued="2026-11-25T10:00:06.000Z")
        clock.advance(300.0)
        assert joules(ledger, job) == pytest.approx(WATTS * 6.0, rel=0.01)


def test_a_kick_counts_from_the_moment_before_it_is_sent(tmp_path: Path) -> None:
    path = tmp_path / "a.journal"
    said = blocks(request("a"), events=(), result=None)
    write_journal(path, [*said, Kicked(40_000), Kicked(50_000)])
    with Ledger.open(tmp_path / "workshop.ledger") as ledger:
        assert ledger.run(file_journal(ledger, path).run).result.kicks == 2


def test_what_was_said_of_the_item_is_kept_though_the_terminal_died(tmp_path: Path) -> None:
    asked = msgspec.structs.replace(request("a"), item=Item(kind="cabin fan", serial="F-7"), complaint="hums")
    write_journal(tmp_path / "a.journal", blocks(asked, result=None))
    with Ledger.open(tmp_path / "workshop.ledger") as ledger:
        (filed,) = file_left_behind(ledger, tmp_path)
        job = ledger.job_by_number(filed.job)
        assert (job.item.kind, job.item.serial, job.complaint) == ("cabin fan", "F-7", "hums")


@pytest.mark.parametrize(("said", "counts"), [(2, True), (1, False), (None, True)])
def test_without_a_job_what_ran_on_another_output_is_another_motor_unless_it_is_not_known(
    tmp_path: Path, clock: VirtualClock, said: int | None, counts: bool
) -> None:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        asked = msgspec.structs.replace(request("a"), output=said or 1)
        write_journal(tmp_path / "a.journal", blocks(asked, trace=driven_to_the_end(), events=()))
        run = file_journal(ledger, tmp_path / "a.journal").run
        if said is None:
            forget_output(ledger, run)
        clock.advance(10.0)
        warmth = warmth_of(ledger, job=None, resource=RESOURCE, output=2)
        assert bool(warmth.pulses) is counts


@pytest.mark.parametrize(("said", "found_at"), [(2, {2}), (1, {1}), (None, {1})])
def test_leads_are_those_of_an_output_and_old_ones_of_the_first(
    tmp_path: Path, said: int | None, found_at: set[int]
) -> None:
    joined = RunResult(outcome=Outcome.SHORT, reason="joined", resistance_ohm=0.05)
    with Ledger.open(tmp_path / "workshop.ledger") as ledger:
        asked = msgspec.structs.replace(request("a"), kind=RunKind.LEADS, output=said or 1)
        write_journal(tmp_path / "a.journal", blocks(asked, events=(), result=joined))
        run = file_journal(ledger, tmp_path / "a.journal").run
        if said is None:
            forget_output(ledger, run)
        assert {output for output in (1, 2, 3) if lead_check(ledger, RESOURCE, output) is not None} == found_at


def forget_output(ledger: Ledger, run: int) -> None:
    """As requests were before outputs were in them."""
    plain = msgspec.json.decode(ledger.run(run).request)
    del plain["output"]
    with ledger.writing() as session:
        session.execute(update(RunRow).where(RunRow.id == run).values(request=msgspec.json.encode(plain).decode()))


def file_driven(
    ledger: Ledger, folder: Path, uid: str, *, job: int, unit: int | None = None, ohm: float = 12.0
) -> None:
    """A run that ended now, with its output confirmed off."""
    asked = msgspec.structs.replace(request(uid, job=job), unit=unit)
    result = msgspec.structs.replace(FREED, resistance_ohm=ohm)
    said = blocks(asked, utc=ledger.clock.utc(), trace=driven_to_the_end(), events=(), result=result)
    file_journal(ledger, write_journal(folder / f"{uid}.journal", said))


def test_a_unit_is_warm_from_runs_of_its_serial_alone(tmp_path: Path, clock: VirtualClock) -> None:
    with fresh_ledger(tmp_path, clock) as ledger:
        fans, others = a_lot(ledger), a_lot(ledger, name="fans of autumn")
        one, two, again = (
            add_unit(ledger, fans, "CF-1"),
            add_unit(ledger, fans, "CF-2"),
            add_unit(ledger, others, "CF-1"),
        )
        repair = ledger.new_job(
            item=msgspec.structs.replace(FANS, serial="CF-1"), motor=MOTOR, complaint="", load_state=""
        )
        file_driven(ledger, tmp_path, "two", job=fans.job.id, unit=two.id, ohm=12.2)
        assert unit_joules(ledger, fans.job.id, one.id) == 0.0
        assert unit_joules(ledger, fans.job.id, two.id) == pytest.approx(WATTS * DRIVEN_S, rel=0.02)
        file_driven(ledger, tmp_path, "one", job=fans.job.id, unit=one.id)
        file_driven(ledger, tmp_path, "repair", job=repair.id, ohm=12.1)
        for job, unit in ((fans.job.id, one.id), (others.job.id, again.id)):
            assert unit_joules(ledger, job, unit) == pytest.approx(2 * WATTS * DRIVEN_S, rel=0.02)
        assert warmth_of(ledger, job=fans.job.id, resource=RESOURCE, unit=one.id).known_ohm == 12.1
        assert warmth_of(ledger, job=fans.job.id, resource=RESOURCE, unit=two.id).known_ohm == 12.2
        # Without a unit, and of one that nobody knows, it may have been any of the lot.
        assert joules(ledger, fans.job.id) == pytest.approx(2 * WATTS * DRIVEN_S, rel=0.02)
        assert unit_joules(ledger, fans.job.id, 4711) == joules(ledger, fans.job.id)
        clock.advance(905.0)
        assert unit_joules(ledger, fans.job.id, one.id) == 0.0


def test_the_same_serial_under_another_make_is_another_motor(tmp_path: Path, clock: VirtualClock) -> None:
    with fresh_ledger(tmp_path, clock) as ledger:
        made, other, unnamed = (
            a_lot(ledger, name=make or "no make", item=msgspec.structs.replace(FANS, make=make))
            for make in ("North Pier", "South Pier", "")
        )
        units = [add_unit(ledger, lot, "7") for lot in (made, other, unnamed)]
        file_driven(ledger, tmp_path, "a", job=made.job.id, unit=units[0].id)
        warm = [unit_joules(ledger, unit.job, unit.id) > 0 for unit in units]
        assert warm == [True, False, True]


def unit_joules(ledger: Ledger, job: int, unit: int) -> float:
    return sum(pulse.joules for pulse in warmth_of(ledger, job=job, resource=RESOURCE, unit=unit).pulses)
