"""Captured starts come out of the ledger as they were measured: curves, figures, what the supply measured itself."""

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest
from sqlalchemy import event

from benchlog.bench.journal import Dense
from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.capture_request import capture_request
from benchlog.ledger.captured import captured, captured_of_lot, captured_of_runs
from benchlog.ledger.dense_codec import decode_dense, encode_dense
from benchlog.ledger.filing import file_journal
from benchlog.ledger.lots import add_unit, units
from benchlog.ledger.schema import DenseRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.trace_codec import Coded, TraceDamaged
from benchlog.ledger.unlocks import OwnerLayer
from benchlog.outcome import Outcome
from benchlog.recovery.ceilings import Layer, Limits
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load, with_array
from tests.ledger.benches import (
    BEGAN,
    QUICK_LOOK,
    START_EVERY_S,
    ZERO_S,
    a_lot,
    blocks,
    figures_like,
    file_start_up,
    fresh_ledger,
    request,
    write_journal,
)

ARRAY = Dense(2, 25_001, 0.0005, (11.9, 12.0, 12.1), (0.1, 1.5, 1.25), 0.0004)


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, VirtualClock(utc_start=datetime.fromisoformat(BEGAN).astimezone(UTC))) as ledger:
        yield ledger


def test_each_start_has_its_curve_from_before_its_trigger_on_and_its_figures_as_filed(
    ledger: Ledger, tmp_path: Path
) -> None:
    run = file_start_up(ledger, tmp_path, "a", peaks=(2.0, 2.1, 1.9))
    found = captured(ledger, run)
    assert (found.run.id, found.lead_ohm, found.test, found.dense) == (run, 0.12, QUICK_LOOK, ())
    assert [event.values["number"] for event in found.starts] == [1, 2, 3]
    assert found.figures == tuple(figures_like(peak) for peak in (2.0, 2.1, 1.9))
    trace = ledger.trace(run)
    for number, (curve, peak) in enumerate(zip(found.curves, (2.0, 2.1, 1.9), strict=True), 1):
        assert (curve.number, curve.run) == (number, run)
        assert -QUICK_LOOK.before_s <= curve.t_s[0] < 0.0 < 0.9 < curve.t_s[-1] < 1.0
        assert curve.amps.max() == peak
        assert (curve.amps[curve.t_s < -0.01] == 0.0).all()
        first = int(np.searchsorted(trace.sent, round(((number - 1) * START_EVERY_S + ZERO_S) * 1e4)))
        driven = curve.amps[curve.amps > 0]
        assert np.array_equal(driven, trace.amps[first : first + len(driven)])


def test_a_run_that_captured_nothing_is_refused(ledger: Ledger, tmp_path: Path) -> None:
    run = file_journal(ledger, write_journal(tmp_path / "a.journal", blocks(request("a")))).run
    with pytest.raises(Refused, match=f"run {run} captured no starts"):
        captured(ledger, run)
    with pytest.raises(Refused, match="no run 4711"):
        captured(ledger, 4711)
    assert captured_of_runs(ledger, [run]) == []


def test_what_the_supply_measured_itself_is_kept_number_for_number_and_lies_on_the_trigger(
    ledger: Ledger, tmp_path: Path
) -> None:
    run = file_start_up(ledger, tmp_path, "a", dense=(ARRAY,))
    (kept,) = ledger.dense(run)
    assert (kept.number, kept.began_s, kept.u_began_s, kept.interval_s) == (2, 2.5001, 0.0004, 0.0005)
    assert (kept.volts.tolist(), kept.amps.tolist()) == ([11.9, 12.0, 12.1], [0.1, 1.5, 1.25])
    found = captured(ledger, run)
    (curve,) = found.dense_curves
    assert (curve.dense, curve.number, curve.window_s) == (True, 2, 0.0005)
    # Its first window began 0.1 ms after the trigger at 2.5 s; a value stands for the middle of its window.
    assert curve.t_s == pytest.approx([0.00035, 0.00085, 0.00135], abs=1e-12)
    assert len(found.curves) == 2


def test_a_lot_s_unit_captured_on_a_bench_with_an_array_comes_back_with_both_curves_on_one_trigger(
    ledger: Ledger, tmp_path: Path
) -> None:
    fans = a_lot(ledger)
    unit = add_unit(ledger, fans, "CF-1")
    bench = VirtualBench(with_array(load("free")), seed=5, began=datetime.fromisoformat(BEGAN))
    asked = capture_request(
        ledger,
        resource="TCPIP::127.0.0.1::5025::SOCKET",
        rated_volts=12.0,
        test=QUICK_LOOK,
        layers={Layer.JOB: Limits(volts=12.0)},
        owner=OwnerLayer(limits=Limits(volts=24.0)),
        unit=unit,
        unattended=True,
    )
    filed = file_journal(ledger, bench.run(asked).journal)
    assert (filed.job, filed.outcome, units(ledger, fans)[0].run) == (fans.job.number, Outcome.RUNS, filed.run)
    found = captured(ledger, filed.run)
    assert (found.test, found.run.unit, len(found.starts)) == (QUICK_LOOK, unit.id, 2)
    for polled, dense, figures in zip(found.curves, found.dense_curves, found.figures, strict=True):
        # Against each other, as computed: a reading is the mean of the array over the window that it stands for.
        first, steady = dense.t_s[np.argmax(dense.amps > 0.1)], figures.values["steady_amps"]
        assert 0.0 <= first < 0.002
        # The first reading may be of a window that had begun before the voltage was there.
        windows = [np.abs(dense.t_s - t) <= polled.window_s / 2 for t in polled.t_s[polled.t_s > 0.06]]
        means = np.array([dense.amps[window].mean() for window in windows])
        assert np.abs(means - polled.amps[polled.t_s > 0.06]).max() < 0.05 * dense.amps.max()
        assert steady.low <= dense.amps[dense.t_s > 0.75].mean() <= steady.high
        assert dense.amps.max() > polled.amps.max()


def test_an_array_of_a_start_that_was_never_told_is_kept_all_the_same(ledger: Ledger, tmp_path: Path) -> None:
    run = file_start_up(ledger, tmp_path, "a", peaks=(2.0,), dense=(ARRAY, Dense(1, 5000, 0.001, (), ())))
    found = captured(ledger, run)
    assert [(one.number, len(one.amps)) for one in found.dense] == [(2, 3), (1, 0)]
    assert [one.number for one in found.dense_curves] == [1]


def test_numbers_that_are_none_do_not_keep_a_run_out_of_the_ledger(ledger: Ledger, tmp_path: Path) -> None:
    nan = float("nan")
    run = file_start_up(ledger, tmp_path, "a", dense=(Dense(1, 5000, nan, (nan, 1.0), (1.0,), nan),))
    (kept,) = ledger.dense(run)
    assert (kept.interval_s, kept.u_began_s) == (0.0, 0.0)
    assert np.array_equal(kept.volts, [nan, 1.0], equal_nan=True)
    assert np.array_equal(kept.amps, [1.0, nan], equal_nan=True)


def test_a_lot_of_many_is_read_in_as_many_questions_as_a_lot_of_one(ledger: Ledger, tmp_path: Path) -> None:
    asked: list[str] = []
    event.listen(ledger._engine, "before_cursor_execute", lambda *told: asked.append(told[2]))

    def questions() -> int:
        asked.clear()
        captured_of_lot(ledger, fans)
        return sum(text.lstrip().startswith("SELECT") for text in asked)

    fans = a_lot(ledger)
    runs, counts = [], []
    for number in range(6):
        unit = add_unit(ledger, fans, f"CF-{number}")
        utc = f"2026-11-25T10:{number:02d}:00.000Z"
        runs.append(file_start_up(ledger, tmp_path, f"u{number}", job=fans.job.id, unit=unit.id, utc=utc))
        counts.append(questions())
    file_start_up(ledger, tmp_path, "elsewhere")
    found = captured_of_lot(ledger, fans)
    assert [one.run.id for one in found] == runs
    assert [one.run.unit for one in found] == list(range(1, 7))
    assert all(len(one.curves) == len(one.figures) == 2 for one in found)
    assert found[3].curves[0].amps.tolist() == captured(ledger, runs[3]).curves[0].amps.tolist()
    assert [one.run.id for one in captured_of_runs(ledger, [runs[5], runs[2], runs[5]])] == [runs[5], runs[2]]
    assert set(counts) == {4}


def test_a_damaged_curve_is_said_to_be_one(ledger: Ledger, tmp_path: Path) -> None:
    run = file_start_up(ledger, tmp_path, "a", dense=(ARRAY,))
    with ledger.writing() as session:
        row = session.get_one(DenseRow, (run, 0))
        row.data = row.data[:-1] + bytes([row.data[-1] ^ 1])
    with pytest.raises(LedgerDamaged, match=f"curve 0 of run {run}"):
        ledger.dense(run)
    assert len(ledger.trace(run).volts) == 200


@pytest.mark.parametrize(
    "change",
    [{"format": 2}, {"samples": 4}, {"samples": -1}, {"samples": 1 << 40}, {"checksum": 0}, {"data": b""}],
)
def test_what_was_not_coded_here_is_not_decoded(change: dict[str, object]) -> None:
    coded = encode_dense(np.array([1.0, 2.0, 3.5]), np.array([0.1, 0.2, 0.3]))
    volts, amps = decode_dense(coded)
    assert (volts.tolist(), amps.tolist()) == ([1.0, 2.0, 3.5], [0.1, 0.2, 0.3])
    fields: dict[str, object] = {
        "samples": coded.samples,
        "format": coded.format,
        "checksum": coded.checksum,
        "data": coded.data,
    }
    with pytest.raises(TraceDamaged):
        decode_dense(Coded(**(fields | change)))  # type: ignore[arg-type]


def test_columns_of_two_lengths_are_no_curve() -> None:
    with pytest.raises(ValueError, match="one length"):
        encode_dense(np.zeros(3), np.zeros(4))
