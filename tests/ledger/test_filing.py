"""A journal becomes a run: whole, once, and as it was."""

import struct
from collections.abc import Iterator
from pathlib import Path

import msgspec
import numpy as np
import pytest

from benchlog.bench.journal import MAGIC, Dense, Ending, Happening, Sample
from benchlog.clock import VirtualClock
from benchlog.errors import JournalDamaged, Refused
from benchlog.ledger.filing import file_journal, journals_of, rescue_record_of
from benchlog.ledger.lots import add_unit, units
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import Closing, Event, EventKind, Item, RunKind, Trace
from tests.ledger.benches import (
    BEGAN,
    BILGE_PUMP,
    CABIN_FAN,
    FREED,
    MOTOR,
    a_lot,
    bench_trace,
    blocks,
    file_start_up,
    kick,
    leave_journal,
    request,
    small_trace,
    start_up,
    starts_trace,
    write_journal,
)


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def folder(ledger: Ledger) -> Path:
    return journals_of(ledger.path)


@pytest.fixture
def job(ledger: Ledger) -> int:
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id


def same(one: Trace, other: Trace) -> bool:
    names = ("sent", "received", "volts", "amps", "set_volts", "set_amps", "flags")
    return all(np.array_equal(getattr(one, name), getattr(other, name)) for name in names)


def test_journals_lie_in_a_folder_beside_their_ledger(tmp_path: Path) -> None:
    assert journals_of(tmp_path / "workshop.ledger") == tmp_path / "workshop.ledger-journals"


def test_a_filed_run_says_all_that_its_journal_said(ledger: Ledger, folder: Path, job: int) -> None:
    trace = bench_trace(3000)
    asked = request("a", job=job)
    journal = write_journal(folder / "a.journal", blocks(asked, trace=trace))

    filed = file_journal(ledger, journal)

    assert (filed.job, filed.job_id, filed.outcome) == (1, job, Outcome.FREED)
    run = ledger.run(filed.run)
    assert (run.job, run.kind, run.started_utc, run.duration_s) == (job, RunKind.RECOVERY, BEGAN, 4.0)
    assert (run.identity, run.resource, run.rated_volts) == ("Bench,Supply,1,1.0", asked.resource, 12.0)
    assert (run.load_state, run.sequence_name, run.program) == (asked.load_state, "short", "benchlog 0.1.0")
    assert (run.complete, run.samples, run.result) == (True, 3000, FREED)
    assert msgspec.json.decode(run.request, type=type(asked)) == asked
    assert msgspec.json.decode(run.ceilings)["volts"] == {"value": 42.4, "layer": "program"}
    assert ledger.events(filed.run) == [kick(1.0, 1), kick(2.5, 2)]
    assert same(ledger.trace(filed.run), trace)
    assert list(folder.iterdir()) == []


def test_filing_the_same_journal_again_finds_the_run(ledger: Ledger, folder: Path, job: int) -> None:
    journal = leave_journal(folder, "a", job=job)
    content = journal.read_bytes()
    first = file_journal(ledger, journal)
    journal.write_bytes(content)

    assert file_journal(ledger, journal) == first
    assert [run.id for run in ledger.recent_runs()] == [first.run]
    assert not journal.exists()


def test_a_journal_that_another_program_has_filed_meanwhile_is_found_by_its_run(
    ledger: Ledger, folder: Path, job: int
) -> None:
    journal = leave_journal(folder, "a", job=job)
    first = file_journal(ledger, journal)
    assert not journal.exists()
    assert file_journal(ledger, journal) == first
    with pytest.raises(FileNotFoundError):
        file_journal(ledger, journal.with_name("never.journal"))


def test_a_run_without_a_job_gets_one(ledger: Ledger, folder: Path, job: int) -> None:
    asked = msgspec.structs.replace(request("a"), item=CABIN_FAN, complaint="stands still")
    filed = file_journal(ledger, write_journal(folder / "a.journal", blocks(asked)))
    made = ledger.job(filed.job_id)
    assert (made.number, made.item, made.complaint, made.runs) == (2, CABIN_FAN, "stands still", 1)
    assert (made.motor.rated_volts, made.load_state, made.last_outcome) == (12.0, "dry, uncoupled", "freed")

    unnamed = ledger.job(file_journal(ledger, leave_journal(folder, "b")).job_id)
    assert (unnamed.number, unnamed.item) == (3, Item(kind="motor"))


def test_a_run_of_a_job_that_is_not_here_is_refused_and_stays(ledger: Ledger, folder: Path) -> None:
    journal = leave_journal(folder, "a", job=9)
    with pytest.raises(Refused, match="key 9"):
        file_journal(ledger, journal)
    assert (journal.exists(), ledger.jobs(), ledger.recent_runs()) == (True, [], [])


def test_a_run_is_filed_with_a_job_that_was_closed_meanwhile(ledger: Ledger, folder: Path, job: int) -> None:
    ledger.close_job(job, Closing(cause="", work_done="", prognosis=""))
    file_journal(ledger, leave_journal(folder, "a", job=job))
    assert len(ledger.runs(job)) == 1


def test_a_run_cut_short_is_filed_as_stopped_with_what_its_readings_show(
    ledger: Ledger, folder: Path, job: int
) -> None:
    trace = small_trace()
    moved = Event(t_s=3.0, kind=EventKind.MOVED, text="it moved")
    said = blocks(request("a", job=job), trace=trace, events=(kick(1.0), kick(2.0), moved), result=None)

    run = ledger.run(file_journal(ledger, write_journal(folder / "a.journal", said)).run)

    assert not run.complete
    assert (run.result.outcome, run.result.reason) == (Outcome.STOPPED, "the program ended before the run did")
    assert (run.result.kicks, run.result.moved, run.result.output_confirmed_off) == (2, True, False)
    assert (run.result.max_volts, run.result.max_amps) == (float(trace.volts.max()), float(trace.amps.max()))
    assert run.duration_s == 3.0


def test_a_run_cut_short_before_the_supply_answered_is_filed_too(ledger: Ledger, folder: Path, job: int) -> None:
    said = blocks(request("a", job=job))[:1]
    run = ledger.run(file_journal(ledger, write_journal(folder / "a.journal", said)).run)
    assert (run.identity, run.ceilings, run.samples, run.duration_s) == ("", "null", 0, 0.0)
    assert (run.result.max_volts, run.result.kicks) == (None, 0)
    assert len(ledger.trace(run.id).t_s) == 0


def test_a_rescue_ends_the_run_and_may_confirm_that_the_output_is_off(ledger: Ledger, folder: Path, job: int) -> None:
    journal = leave_journal(folder, "a", job=job, result=None)
    record = rescue_record_of(journal)
    assert record.name == "a.journal.rescue"
    record.write_text('{"utc": "2026-11-25T10:00:09.000Z", "confirmed_off": true, "text": "switched off"}\n')

    run = ledger.run(file_journal(ledger, journal).run)

    assert (run.result.output_confirmed_off, run.result.outcome) == (True, Outcome.STOPPED)
    rescue = ledger.events(run.id)[-1]
    assert (rescue.kind, rescue.text, rescue.t_s) == (EventKind.RESCUE, "switched off", run.duration_s)
    assert rescue.values == {"utc": "2026-11-25T10:00:09.000Z", "confirmed_off": True}
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize(
    "record", [b"", b"\xff\xfe", b'{"confirmed_off": true', b'{"confirmed_off": "yes"}', b"[" * 9000]
)
def test_a_rescue_whose_record_can_not_be_read_confirms_nothing(
    ledger: Ledger, folder: Path, job: int, record: bytes
) -> None:
    journal = leave_journal(folder, "a", job=job, result=None)
    rescue_record_of(journal).write_bytes(record)
    run = ledger.run(file_journal(ledger, journal).run)
    assert not run.result.output_confirmed_off
    assert ledger.events(run.id)[-1].kind is EventKind.RESCUE


def test_figures_that_are_no_numbers_are_filed_as_not_measured(ledger: Ledger, folder: Path, job: int) -> None:
    nan, inf = float("nan"), float("inf")
    result = msgspec.structs.replace(FREED, resistance_ohm=nan, max_amps=inf, locked_s=nan)
    bad = Event(t_s=nan, kind=EventKind.LOOK, text="", values={"emf_ratio": nan})
    said = blocks(request("a", job=job), events=(bad,), result=result, duration_s=nan)
    run = ledger.run(file_journal(ledger, write_journal(folder / "a.journal", said)).run)
    assert (run.result.resistance_ohm, run.result.max_amps, run.result.locked_s) == (None, None, 0.0)
    assert run.duration_s == 0.0
    assert ledger.events(run.id) == [Event(t_s=0.0, kind=EventKind.LOOK, text="", values={"emf_ratio": None})]


def test_readings_that_are_no_numbers_are_kept_in_the_trace_but_are_no_maximum(
    ledger: Ledger, folder: Path, job: int
) -> None:
    odd = Sample(1, 2, float("nan"), float("inf"), 0.0, 0.0, 0)
    said = [*blocks(request("a", job=job), trace=small_trace(3), result=None), odd]
    run = ledger.run(file_journal(ledger, write_journal(folder / "a.journal", said)).run)
    trace = ledger.trace(run.id)
    assert np.isnan(trace.volts[-1])
    assert np.isinf(trace.amps[-1])
    assert run.result.max_amps == float(trace.amps[:-1].max())


@pytest.mark.parametrize("utc", ["", "yesterday", "2026-11-25T10:00:00"])
def test_a_head_that_does_not_say_when_the_run_began_can_not_be_filed(
    ledger: Ledger, folder: Path, job: int, utc: str
) -> None:
    journal = write_journal(folder / "a.journal", blocks(request("a", job=job), utc=utc))
    with pytest.raises(JournalDamaged, match="when the run began"):
        file_journal(ledger, journal)
    assert (journal.exists(), ledger.recent_runs()) == (True, [])


def test_an_instant_of_another_time_zone_is_filed_as_utc(ledger: Ledger, folder: Path, job: int) -> None:
    said = blocks(request("a", job=job), utc="2026-11-26T01:30:00+02:00")
    run = ledger.run(file_journal(ledger, write_journal(folder / "a.journal", said)).run)
    assert run.started_utc == "2026-11-25T23:30:00.000Z"


def test_a_journal_that_has_grown_since_it_was_filed_stays(ledger: Ledger, folder: Path, job: int) -> None:
    said = blocks(request("a", job=job))
    first = file_journal(ledger, write_journal(folder / "a.journal", said[:-5]))
    journal = write_journal(folder / "a.journal", said)
    with pytest.raises(Refused, match="when it was shorter"):
        file_journal(ledger, journal)
    assert journal.exists()
    assert not ledger.run(first.run).complete


def ends_of_blocks(content: bytes) -> list[int]:
    ends, at = [], len(MAGIC)
    while at < len(content):
        at += 8 + struct.unpack_from("<I", content, at)[0]
        ends.append(at)
    return ends


def test_a_journal_cut_anywhere_is_filed_to_its_last_whole_block(ledger: Ledger, folder: Path, job: int) -> None:
    said = blocks(request("model", job=job), trace=small_trace(6))
    ends = ends_of_blocks(write_journal(folder / "model.journal", said).read_bytes())
    (folder / "model.journal").unlink()
    cuts = sorted({cut for end in ends for cut in (end - 1, end, end + 1, end + 7, end + 20)} | {0, 5, len(MAGIC)})
    for cut in (cut for cut in cuts if cut <= ends[-1]):
        uid = f"c{cut:04d}"  # as long as the name of the model, so that all blocks end where the model's do
        journal = write_journal(folder / f"{uid}.journal", blocks(request(uid, job=job), trace=small_trace(6)))
        journal.write_bytes(journal.read_bytes()[:cut])
        whole = said[: sum(end <= cut for end in ends)]
        if not whole:
            with pytest.raises(JournalDamaged):
                file_journal(ledger, journal)
            assert journal.stat().st_size == cut
            continue
        run = ledger.run(file_journal(ledger, journal).run)
        assert run.samples == sum(isinstance(block, Sample) for block in whole)
        assert run.complete == any(isinstance(block, Ending) for block in whole)
        assert ledger.events(run.id) == [block.event for block in whole if isinstance(block, Happening)]


def test_a_run_of_a_unit_is_filed_with_it_and_in_its_lot(ledger: Ledger, folder: Path) -> None:
    fans = a_lot(ledger)
    unit = add_unit(ledger, fans, "CF-1")
    named, by_its_unit = (
        file_start_up(ledger, folder, uid, job=job, unit=unit.id) for uid, job in (("a", fans.job.id), ("b", None))
    )
    for run in (named, by_its_unit):
        assert (ledger.run(run).job, ledger.run(run).unit) == (fans.job.id, unit.id)
    assert ledger.entries(fans.job.id) == []
    assert ledger.recent_runs()[0].unit == unit.id


def test_a_unit_that_is_not_of_the_job_costs_no_run_and_is_written_down(ledger: Ledger, folder: Path, job: int) -> None:
    fans, others = a_lot(ledger), a_lot(ledger, name="others")
    of_others = add_unit(ledger, others, "CF-1").id
    for uid, in_job, unit in (("a", job, of_others), ("b", fans.job.id, of_others), ("c", fans.job.id, 4711)):
        run = file_start_up(ledger, folder, uid, job=in_job, unit=unit)
        assert (ledger.run(run).job, ledger.run(run).unit) == (in_job, None)
        assert same(ledger.trace(run), starts_trace((2.0, 2.1)))
        (entry, *_) = reversed(ledger.entries(in_job))
        assert entry.text == f"Run {run} was to be of unit {unit}, which is not one of this job: kept without a unit"
        assert entry.stage == "prove"
    stray = file_start_up(ledger, folder, "d", unit=4711)
    assert (ledger.run(stray).unit, ledger.job(ledger.run(stray).job).purpose) == (None, "measuring")
    assert units(ledger, others)[0].run is None
    another = file_start_up(ledger, folder, "e", job=others.job.id, unit=of_others, unit_serial="CF-9")
    assert ledger.run(another).unit is None, "after a restore the key may be that of another serial"


@pytest.mark.parametrize(
    ("kind", "purpose"),
    [(RunKind.START_UP, "measuring"), (RunKind.RUN_IN, "repair"), (RunKind.PROOF, "repair"), (RunKind.LEADS, "repair")],
)
def test_the_new_job_of_a_run_that_captures_starts_measures_and_that_of_any_other_repairs(
    ledger: Ledger, folder: Path, kind: RunKind, purpose: str
) -> None:
    run = file_start_up(ledger, folder, "a", kind=kind)
    assert ledger.job(ledger.run(run).job).purpose == purpose


def test_a_journal_cut_in_the_middle_of_what_the_supply_measured_keeps_what_is_whole(
    ledger: Ledger, folder: Path
) -> None:
    arrays = tuple(Dense(number, 5000, 0.0005, (12.0,) * 40, (1.0,) * 40) for number in (1, 2))
    journal = write_journal(folder / "a.journal", start_up("a", dense=arrays)[:4])
    journal.write_bytes(journal.read_bytes()[:-9])
    run = file_journal(ledger, journal).run
    assert [curve.number for curve in ledger.dense(run)] == [1]
    assert (ledger.run(run).complete, ledger.run(run).result.outcome) == (False, "stopped")
