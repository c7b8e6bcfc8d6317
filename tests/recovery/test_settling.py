"""How quick a supply is, leads open: bounds that hold for the simulated supply, whose truth is known."""

from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from benchlog.bench.frames import Happened
from benchlog.outcome import Outcome
from benchlog.records import Event, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.settling import KICKS, ROUNDS, UPS
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.simulated.scenario import ResistorData, load

VOLTS, LIMIT_A = 5.0, 0.1
CHECK = SupplyCheck(ohm=0.0, ohm_share=0.0, share=0.0, volts=VOLTS, settling_a=LIMIT_A)


def measured(tmp_path: Path, *, ohm: float = 1e7, **supply: float) -> VirtualRun:
    scenario = load("short")
    scenario = msgspec.structs.replace(
        scenario, resistor=ResistorData(ohms=ohm), supply=msgspec.structs.replace(scenario.supply, **supply)
    )
    bench = VirtualBench(scenario, seed=3, began=datetime(2026, 11, 30, 9, tzinfo=UTC))
    return bench.run(
        bench.request(
            tmp_path / "settling.journal",
            RunKind.CHECK,
            rated_volts=VOLTS,
            layers={Layer.JOB: Limits(volts=VOLTS, amps=LIMIT_A)},
            sequence=Sequence(name="supply check"),
            check=CHECK,
        )
    )


def times(run: VirtualRun, what: str) -> list[Event]:
    events = [frame.event for frame in run.frames if isinstance(frame, Happened)]
    return [event for event in events if event.values.get("settling") == what]


def seconds(run: VirtualRun, what: str) -> list[float]:
    return [float(event.values["seconds"] or 0.0) for event in times(run, what)]


def test_each_time_is_measured_and_the_output_is_off_at_the_end(tmp_path: Path) -> None:
    run = measured(tmp_path)
    counts = {what: len(times(run, what)) for what in ("on", "rise", "fall", "kick", "off")}
    assert counts == {"on": 1, "rise": ROUNDS * len(UPS) + 1, "fall": 2 * ROUNDS, "kick": KICKS, "off": 1}
    assert (run.result.output_confirmed_off, run.result.outcome) == (True, Outcome.UNDETERMINED)
    assert run.bench.extremes.max_volts <= VOLTS * 1.02


def test_a_rise_is_never_told_shorter_than_it_was_and_at_most_two_readings_longer(tmp_path: Path) -> None:
    lag_s = 0.05
    run = measured(tmp_path, setpoint_lag_s=lag_s)
    # An exponential comes to within d of its end after lag * ln(step / d): from 2.5 to 5 V within 4 mV.
    assert all(event.values["settled"] for event in times(run, "rise"))
    assert 6.0 * lag_s < max(seconds(run, "rise")) < 10.0 * lag_s
    quick = measured(tmp_path / "..", setpoint_lag_s=0.002)
    assert max(seconds(quick, "rise")) < 0.1


def test_a_fall_with_nothing_connected_takes_what_the_supplys_own_output_takes(tmp_path: Path) -> None:
    run = measured(tmp_path, farads=2e-3, preload_ohm=1000.0)  # 2 s in which a third is left
    to_nothing = [event for event in times(run, "fall") if event.values["volts"] == 0.0]
    assert [event.values["settled"] for event in to_nothing] == [False] * ROUNDS
    assert all("are left" in event.text for event in to_nothing)
    assert run.result.output_confirmed_off


def test_a_kick_is_as_short_as_volts_and_a_reading_take(tmp_path: Path) -> None:
    run = measured(tmp_path)
    assert all(event.values["settled"] for event in times(run, "kick"))
    assert 0.005 < min(seconds(run, "kick")) <= max(seconds(run, "kick")) < 0.1


@pytest.mark.parametrize("ohm", [0.05, 12.0, 100.0])
def test_something_on_the_terminals_ends_it_at_the_first_step(tmp_path: Path, ohm: float) -> None:
    run = measured(tmp_path, ohm=ohm)
    assert "something is on the terminals" in run.result.reason or run.result.outcome is not Outcome.UNDETERMINED
    assert not times(run, "kick")
    assert run.result.output_confirmed_off
    assert run.bench.extremes.max_volts < 0.3 * VOLTS
