"""Starts that are captured, on the shipped driver, loop, guard and plan, held against the truth at the terminals."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from msgspec.structs import replace

from benchlog.bench.journal import JournalContents, read_journal
from benchlog.motor.start_figures import figures_from_event
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.replay import replay
from benchlog.recovery.start_test import StartTest, Trigger
from benchlog.recovery.steps import Sequence
from demo_db.virtual import VirtualBench
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import Scenario, load, with_array
from drivers.simulated.truth import OutputTruth, ReadingTruth
from drivers.supply import Dense, Supply
from tests.conftest import BEGAN
from tests.recovery.test_replay import filed_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Captured:
    """A start-up run and the bench's own truth about it."""

    result: RunResult
    journal: Path
    contents: JournalContents
    bench: Bench

    @property
    def starts(self) -> list[Event]:
        return [event for event in self.contents.events if event.kind is EventKind.START]

    @property
    def steps(self) -> list[Event]:
        named = (event for event in self.contents.events if event.kind is EventKind.STEP)
        return [event for event in named if str(event.values["name"]).startswith("start ")]

    def truth(self, start: Event) -> list[ReadingTruth]:
        """What the terminals really did, reading by reading, while a start was held."""
        began_s, until_s = self.number(start, "trigger_s"), self.number(start, "trigger_s") + 1.4
        readings = [one for one in self.bench.truth if isinstance(one, ReadingTruth)]
        return [one for one in readings if began_s <= one.at_s <= until_s]

    @staticmethod
    def number(event: Event, name: str) -> float:
        value = event.values[name]
        assert isinstance(value, int | float), (name, value)
        return float(value)


Capture = Callable[..., Captured]


@pytest.fixture
def capture(tmp_path: Path) -> Capture:
    """A start-up run: scenario, the job's ceilings, and fields of the test; `seed` of the bench."""

    def run(scenario: str | Scenario, limits: Limits, *, seed: int = 3, **fields: Any) -> Captured:
        bench = VirtualBench(load(scenario) if isinstance(scenario, str) else scenario, seed=seed, began=BEGAN)
        journal = tmp_path / f"{len(list(tmp_path.iterdir()))}.journal"
        of_test: dict[str, Any] = {"name": "drawn up here", "volts": 8.0, "starts": 2, "rest_s": 0.5} | fields
        test = StartTest(**of_test)
        asked = {"start_test": test, "layers": {Layer.JOB: limits}, "sequence": Sequence(name="start-up")}
        ran = bench.run(bench.request(journal, RunKind.START_UP, **asked))
        return Captured(result=ran.result, journal=journal, contents=read_journal(journal), bench=ran.bench)

    return run


TWELVE = Limits(volts=12.0)


def _replays(ran: Captured) -> None:
    """Today's guard and plan come to the same from the record."""
    told = replay(filed_of(ran.journal))
    assert told.differences == []
    assert told.readings > 300


def test_every_start_of_a_free_motor_is_on_record_with_figures_that_hold_the_truth(capture: Capture) -> None:
    ran = capture("free", TWELVE)
    assert (ran.result.outcome, ran.result.output_confirmed_off) == (Outcome.RUNS, True)
    assert [start.values["number"] for start in ran.starts] == [1, 2]
    assert [start.values["turning"] for start in ran.starts] == ["turning"] * 2
    assert len(ran.steps) == 2
    for start in ran.starts:
        figures, told = figures_from_event(start), ran.truth(start)
        assert set(figures.values) == {"peak_amps", "run_up_s", "steady_amps", "energy_j", "ripple_amps"}
        assert len(told) == pytest.approx(1.4 / figures.interval_s, abs=2)
        peak, steady = figures.values["peak_amps"], figures.values["steady_amps"]
        assert peak.low <= max(one.true_amps for one in told) <= peak.high
        assert steady.low <= np.mean([one.true_amps for one in told[-40:]]) <= steady.high
        assert figures.interval_s == pytest.approx(np.mean(np.diff([one.at_s for one in told])), rel=1e-3)
        assert start.values["trigger_s"] == start.values["began_s"]
        assert (start.values["limited"], start.values["cut"]) == (False, "")
        before_s = ran.contents.trace.t_s - Captured.number(start, "trigger_s")
        assert ((before_s > -0.1) & (before_s < 0.0)).sum() == pytest.approx(0.1 / figures.interval_s, abs=2)
    note = next(event for event in ran.contents.events if event.kind is EventKind.NOTE)
    assert note.text == (
        "This supply reads back every 8.00 ms, the mean of 20.0 ms each: the first 22.0 ms of a start, its real "
        "inrush, can't be seen."
    )


def test_held_at_its_only_ceiling_it_is_still_told_to_turn_and_nothing_passes_the_ceiling(capture: Capture) -> None:
    ran = capture("free", TWELVE, volts=12.0, starts=1)
    assert ran.result.outcome is Outcome.RUNS
    assert ran.contents.trace.set_volts.max() == 12.0
    assert ran.bench.extremes.max_volts < 12.0 * 1.002 + 0.01


@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.parametrize("scenario", ["brush-lifts", "protector-opens", "locked-hot", "stuck-hard"])
def test_what_stands_is_never_told_to_turn_with_no_room_above_its_volts(
    capture: Capture, scenario: str, seed: int
) -> None:
    rated = load(scenario).rated_volts
    ran = capture(scenario, Limits(volts=rated), seed=seed, volts=rated, starts=3)
    assert ran.result.outcome in (Outcome.STILL_STUCK, Outcome.UNDETERMINED)
    assert ran.starts or "was not made" in ran.result.reason
    assert all(start.values["turning"] != "turning" for start in ran.starts)


def test_a_motor_that_does_not_turn_is_started_once_cut_short_and_filed(capture: Capture) -> None:
    ran = capture("stuck-hard", TWELVE, volts=12.0, starts=5)
    assert ran.result.outcome is Outcome.STILL_STUCK
    (start,) = ran.starts
    assert (start.values["number"], start.values["turning"]) == (1, "not-turning")
    assert "winding temperature" in str(start.values["cut"])
    assert start.values["run_up_s"] is None
    assert start.values["why_run_up_s"]
    assert "start 1 did not turn" in ran.result.reason
    _replays(ran)
    assert (ran.bench.extremes.max_winding_c or 0.0) < 90.0, "the motor's layer is class A less 15 K"


def test_a_start_that_the_limit_shapes_says_so(capture: Capture) -> None:
    ran = capture("free", TWELVE, volts=9.0, amps=0.7, starts=1)
    (start,) = ran.starts
    assert start.values["limited"] is True
    assert "limited by current, not voltage" in start.text
    assert ran.contents.trace.amps.max() < 0.72
    assert Captured.number(start, "run_up_s") > 0.3, "0.23 s without the limit"


def test_starts_are_read_in_turn_so_that_their_readings_fill_one_period_evenly(capture: Capture) -> None:
    ran = capture("free", TWELVE, starts=3, interleave=3)
    assert ran.result.outcome is Outcome.RUNS
    period_s = Captured.number(ran.starts[0], "interval_s")
    delays_s = [Captured.number(start, "delay_s") for start in ran.starts]
    assert delays_s == pytest.approx([period_s * k / 3 for k in range(3)], abs=1e-5)
    phases, first_s = [], []
    for start in ran.starts:
        asked_s = ran.contents.trace.sent * 1e-4 - Captured.number(start, "trigger_s")
        first_s.append(float(asked_s[asked_s >= -1e-4].min()))
        phases.append(float(np.median(asked_s[(asked_s > 0.05) & (asked_s < 1.0)] % period_s)) / period_s)
    apart = np.diff(sorted(phases))
    assert np.abs(apart - 1 / 3).max() < 0.03, phases
    assert first_s == pytest.approx(delays_s, abs=2e-4), "from the first reading on, where the current rises"
    assert all(Captured.number(start, "jitter_s") < 1e-4 for start in ran.starts), "the delay itself is no jitter"
    _replays(ran)


def test_a_start_begins_where_the_current_rises_through_the_level(capture: Capture) -> None:
    ran = capture("free", TWELVE, starts=1, trigger=Trigger.AMPS, level=0.3, hysteresis=0.1)
    (start,) = ran.starts
    trigger_s, began_s = Captured.number(start, "trigger_s"), Captured.number(start, "began_s")
    assert began_s <= trigger_s < began_s + 0.02
    assert ran.result.outcome is Outcome.RUNS
    held = ran.contents.trace.t_s[ran.contents.trace.set_volts == 8.0]
    assert held[-1] - trigger_s > 1.45
    _replays(ran)


def test_where_nothing_crosses_the_level_the_output_goes_down_and_that_is_said(capture: Capture) -> None:
    ran = capture("free", TWELVE, volts=2.0, trigger=Trigger.AMPS, level=0.8, hysteresis=0.2, arm_s=2.0)
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "nothing crossed 800 mA within 2 s" in ran.result.reason
    assert ran.starts == []
    looks = [event for event in ran.contents.events if event.kind is EventKind.LOOK]
    assert "nothing crossed" in looks[-1].text
    trace = ran.contents.trace
    held = trace.t_s[(trace.set_volts == 2.0) & (trace.set_amps > 0.35)]
    assert 1.9 < held[-1] - held[0] < 2.1
    assert trace.set_volts[-1] == 0.0


def test_waiting_for_a_trigger_ends_before_the_ceiling_for_time_in_a_row(capture: Capture) -> None:
    limits = Limits(volts=12.0, on_s=1.6)
    ran = capture("free", limits, volts=2.0, trigger=Trigger.AMPS, level=0.8, hysteresis=0.2, arm_s=30.0)
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "cut short before the ceiling for time in a row" in ran.result.reason
    trace = ran.contents.trace
    held = trace.t_s[(trace.set_volts == 2.0) & (trace.set_amps > 0.35)]
    assert 1.5 < held[-1] - held[0] < 1.6


@pytest.mark.parametrize(
    ("fields", "limits", "words"),
    [
        ({"volts": 6.0}, Limits(volts=5.0), "start_test.volts: 6 V is above the job's ceiling of 5 V"),
        ({"amps": 2.5}, Limits(volts=12.0, amps=2.0), "start_test.amps: 2.5 A is above the job's ceiling of 2 A"),
        ({"amps": 6.0}, TWELVE, "start_test.amps: 6 A is above the supply's ceiling of 5 A"),
        ({"on_s": 1.5}, Limits(volts=12.0, on_s=1.0), "start_test.on_s: 1.5 s is above the job's ceiling of 1 s"),
        ({"volts": float("nan")}, TWELVE, "volts: nan is outside"),
        ({"starts": 501}, TWELVE, "starts: 501 is outside 1 to 500"),
    ],
)
def test_a_test_above_a_ceiling_is_refused_by_its_field_and_nothing_is_sent(
    capture: Capture, fields: dict[str, Any], limits: Limits, words: str
) -> None:
    ran = capture("free", limits, **fields)
    assert ran.result.outcome is Outcome.REFUSED
    assert words in ran.result.reason
    assert not any(isinstance(one, OutputTruth) for one in ran.bench.truth)
    assert len(ran.contents.trace.sent) <= 1
    assert ran.result.output_confirmed_off


def test_a_start_up_run_without_a_test_is_refused(tmp_path: Path) -> None:
    bench = VirtualBench(load("free"), seed=3, began=BEGAN)
    ran = bench.run(bench.request(tmp_path / "a.journal", RunKind.START_UP))
    assert ran.result.outcome is Outcome.REFUSED
    assert "says what it is to be" in ran.result.reason
    assert not any(isinstance(one, OutputTruth) for one in ran.bench.truth)


def test_where_a_start_never_fits_below_a_ceiling_none_is_begun(capture: Capture) -> None:
    ran = capture("free", Limits(volts=12.0, energy_j=3.0))
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "does not fit below the job's ceiling of 3 J" in ran.result.reason
    assert ran.steps == []
    assert ran.contents.trace.set_volts.max() <= 6.0, "the probe's compliance"


def test_a_start_that_no_time_is_left_to_look_at_is_not_told_to_turn(capture: Capture) -> None:
    ran = capture("free", Limits(volts=12.0, on_s=1.6), starts=1)
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert ran.starts[0].values["turning"] == "not-looked"
    assert "no time for a look" in ran.result.reason
    assert ran.starts[0].values["steady_amps"] is not None


def test_a_rotor_that_does_not_come_to_rest_is_not_started_again(capture: Capture) -> None:
    scenario = load("free")
    assert scenario.motor is not None
    heavy = replace(scenario, motor=replace(scenario.motor, inertia=8 * scenario.motor.inertia))
    ran = capture(heavy, TWELVE, volts=12.0, on_s=3.0, still_s=1.0)
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "1 of 2 starts were seen to turn; start 2 was not made: it did not come to rest in 1 s" in ran.result.reason
    assert len(ran.starts) == 1


@pytest.mark.parametrize(("scenario", "outcome"), [("open", Outcome.OPEN), ("short", Outcome.SHORT)])
def test_what_is_no_winding_is_not_started(capture: Capture, scenario: str, outcome: Outcome) -> None:
    rated = load(scenario).rated_volts
    ran = capture(scenario, Limits(volts=rated), volts=0.5 * rated)
    assert ran.result.outcome is outcome
    assert ran.steps == []


def test_a_supply_with_an_array_of_its_own_keeps_a_dense_curve_of_each_start(capture: Capture) -> None:
    ran = capture(with_array(load("free")), TWELVE, volts=12.0)
    assert ran.result.outcome is Outcome.RUNS
    assert [number for number, _ in ran.contents.dense] == [1, 2]
    for (_, dense), start in zip(ran.contents.dense, ran.starts, strict=True):
        t_s = dense.began * 1e-4 - Captured.number(start, "trigger_s") + dense.interval_s * np.arange(len(dense.amps))
        amps = np.array(dense.amps)
        assert dense.interval_s < 1e-3
        assert t_s[0] < -0.005, "what was before the start is in it"
        assert t_s[-1] > 1.5
        assert np.abs(amps[t_s < -0.002]).max() < 0.01
        assert 0.0 < t_s[amps.argmax()] < 0.02
    # The real inrush, by the truth of the simulated bench, which readback averages away.
    inrush = ran.bench.extremes.max_amps
    most = max(max(dense.amps) for _, dense in ran.contents.dense)
    read_back = max(Captured.number(start, "peak_amps") for start in ran.starts)
    assert 0.98 * inrush < most < 1.005 * inrush
    assert read_back < 0.98 * inrush
    _replays(ran)


class NothingToFetch(ScpiSupply):
    """Its array can be started, and has nothing to give."""

    def fetch(self, alive: Callable[[], None] = lambda: None) -> Dense:
        raise ValueError("the array holds nothing")


class BenchOfThat(VirtualBench):
    def open_supply(self) -> Supply:
        return NothingToFetch(self.open_session, shipped(), self.clock.now)


def test_an_array_that_gives_nothing_is_said_and_ends_no_run(tmp_path: Path) -> None:
    bench = BenchOfThat(with_array(load("free")), seed=3, began=BEGAN)
    test = StartTest(name="drawn up here", volts=8.0, starts=1, rest_s=0.5)
    ran = bench.run(
        bench.request(tmp_path / "a.journal", RunKind.START_UP, start_test=test, sequence=Sequence(name="start-up"))
    )
    contents = read_journal(tmp_path / "a.journal")
    assert ran.result.outcome is Outcome.RUNS
    assert contents.dense == ()
    notes = [event.text for event in contents.events if event.kind is EventKind.NOTE]
    assert notes[1:] == ["No dense curve of start 1: the array holds nothing."]
