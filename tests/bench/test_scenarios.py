"""The main job on every scenario of the simulated bench, in virtual time: the right word, nothing above a ceiling."""

from pathlib import Path

import msgspec
import numpy as np
import pytest

from benchlog.bench.journal import read_journal
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.records import TICK_S, EventKind
from benchlog.recovery.ceilings import Layer, Limits
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.simulated.scenario import load, names
from drivers.simulated.truth import ReadingTruth
from tests.benchmarks.accuracy.population import draw
from tests.benchmarks.accuracy.population import run as run_drawn
from tests.conftest import BEGAN, RunVirtually, events_of

OVERSHOOT_SHARE, OVERSHOOT_V, OVERSHOOT_A = 1.1, 0.02, 0.02
"""The simulated supply's own regulation, from CV to CC by up to 10 % for a moment: not the program's to prevent."""


@pytest.mark.parametrize("seed", [0, 11])
@pytest.mark.parametrize("scenario", names())
def test_each_scenario_ends_in_its_own_word_with_the_output_off(
    run_virtually: RunVirtually, scenario: str, seed: int
) -> None:
    run = run_virtually(scenario, seed=seed)
    assert run.result.outcome == load(scenario).expected
    assert run.result.output_confirmed_off
    assert not run.bench.output.on
    assert run.lasted_s < 180.0
    _assert_within_ceilings(run, load(scenario).rated_volts, 5.0)


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("scenario", names(look_alikes=True))
def test_a_locked_motor_that_looks_like_a_turning_one_is_never_called_freed(
    run_virtually: RunVirtually, scenario: str, seed: int
) -> None:
    outcome = run_virtually(scenario, seed=seed).result.outcome
    assert outcome in (Outcome.STILL_STUCK, Outcome.UNDETERMINED)


@pytest.mark.parametrize("number", [103, 221, 228])
def test_a_rotor_that_the_probe_turned_and_that_stops_too_fast_is_undetermined(tmp_path: Path, number: int) -> None:
    ran = run_drawn(draw(8, number, "free"), tmp_path)
    assert ran.max_speed > 50.0
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "where a standing motor of" in ran.result.reason
    assert "a rotor that stops too fast" in ran.result.reason


@pytest.mark.parametrize("number", [103, 221, 228])
def test_a_plainly_locked_motor_stays_stuck(tmp_path: Path, number: int) -> None:
    ran = run_drawn(draw(8, number, "locked"), tmp_path)
    assert ran.result.outcome is Outcome.STILL_STUCK


def test_a_freed_motor_was_seen_to_turn_by_the_truth_and_its_evidence_is_in_the_record(
    run_virtually: RunVirtually,
) -> None:
    run = run_virtually("stuck-soft")
    assert run.result.kicks >= 1
    last = readings_of(run)[-60:]
    assert max(abs(t.speed) for t in last) > 50.0
    assert not any(t.holding for t in last)
    looks = events_of(run, EventKind.LOOK)
    assert "at" in str(looks[-1].values["why"])
    assert "turning rotor" in str(looks[-1].values["why"])


def test_the_resistance_interval_holds_the_cold_resistance(run_virtually: RunVirtually) -> None:
    for scenario in ("stuck-soft", "hopeless", "stuck-hard"):
        result = run_virtually(scenario).result
        assert result.winding_verdict is WindingVerdict.WINDING
        motor = load(scenario).motor
        assert motor is not None
        assert result.resistance_low_ohm is not None
        assert result.resistance_high_ohm is not None
        # what the brush contact adds at this angle belongs to what the probe measures
        ripple = motor.contact.ripple if motor.contact is not None else 0.0
        assert result.resistance_low_ohm <= motor.ohms * (1 + ripple)
        assert result.resistance_high_ohm >= motor.ohms * (1 - ripple)


def test_the_lowest_ceiling_of_all_layers_binds_the_whole_run(run_virtually: RunVirtually) -> None:
    layers = {Layer.JOB: Limits(volts=12.0, amps=1.0), Layer.OWNER: Limits(amps=0.6)}
    run = run_virtually("hopeless", layers=layers)
    assert run.result.outcome is Outcome.STILL_STUCK
    assert run.result.max_amps is not None
    _assert_within_ceilings(run, 12.0, 0.6)
    limited = [e for e in events_of(run, EventKind.STEP) if "by current, not by voltage" in str(e.values.get("why"))]
    assert limited


def test_the_filed_samples_are_what_the_instrument_really_said(run_virtually: RunVirtually) -> None:
    run = run_virtually("stuck-soft", seed=5)
    trace = read_journal(run.journal).trace
    # identification and arming ask before the record begins
    told = readings_of(run)[-len(trace.volts) :]
    assert len(told) > 500
    assert np.allclose(trace.volts, np.array([t.reported_volts for t in told]), atol=1e-9)
    assert np.allclose(trace.amps, np.array([t.reported_amps for t in told]), atol=1e-9)
    # 12 mV and 6 mA: six times the scenario's noise, rounding and offset together
    assert np.abs(trace.volts - np.array([t.true_volts for t in told])).max() < 0.012
    assert np.abs(trace.amps - np.array([t.true_amps for t in told])).max() < 0.006
    ended_s = np.array([t.at_s for t in told])
    assert np.abs(trace.sent * TICK_S - ended_s).max() < 0.001


def test_volts_from_another_source_refuse_the_run_before_the_output_is_on(
    run_virtually: RunVirtually, tmp_path: Path
) -> None:
    scenario = load("stuck-soft")
    scenario = msgspec.structs.replace(
        scenario, supply=msgspec.structs.replace(scenario.supply, volts_on_terminals=3.7)
    )
    bench = VirtualBench(scenario, seed=0, began=BEGAN)
    run = bench.run(bench.request(tmp_path / "cell.journal"))
    assert run.result.outcome is Outcome.REFUSED
    assert "another source" in run.result.reason
    assert bench.bench.extremes.output_on_s == 0.0


def readings_of(run: VirtualRun) -> list[ReadingTruth]:
    return [t for t in run.bench.truth if isinstance(t, ReadingTruth)]


def _assert_within_ceilings(run: VirtualRun, ceiling_volts: float, ceiling_amps: float) -> None:
    assert run.bench.extremes.max_volts <= ceiling_volts + OVERSHOOT_V
    assert run.bench.extremes.max_amps <= ceiling_amps * OVERSHOOT_SHARE + OVERSHOOT_A
