"""Run-ins of motors on a stand-in supply in virtual time: what ends one, what it says, that it stays below ceilings."""

import math
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace

from benchlog.bench.journal import JournalContents, read_journal
from benchlog.clock import VirtualClock
from benchlog.outcome import Outcome, RunResult
from benchlog.records import FLAG_ON, Event, EventKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.replay import replay as replayed
from benchlog.recovery.running_in import DRIFT, RESTART
from benchlog.recovery.start_test import RunIn
from tests.recovery.test_replay import filed_of
from tests.running_motor import RunningMotor, conducted, run_in_request, warming

FAN = {"ohm": 40.0, "tau_s": 0.5}
WEIGHED = RunIn(volts=12.0, mass_g=60.0)


class Ran:
    """One run-in and what it left."""

    def __init__(self, folder: Path, asked: RunIn, motor: dict[str, object], **request: object) -> None:
        clock = VirtualClock(start_s=100.0)
        self.motor = RunningMotor(clock, **(FAN | motor))  # type: ignore[arg-type]
        journal = folder / "run.journal"
        self.result: RunResult = conducted(self.motor, clock, run_in_request(journal, asked, **request))
        self.kept: JournalContents = read_journal(journal)

    def named(self, name: str) -> list[Event]:
        return [event for event in self.kept.events if event.values.get("name") == name]

    @property
    def looks(self) -> list[Event]:
        return [event for event in self.kept.events if event.kind is EventKind.LOOK]

    @property
    def lasted_s(self) -> float:
        return float(self.named(DRIFT)[0].values["seconds"] or 0.0)


def test_a_fan_that_warms_up_is_run_until_its_current_stays_and_starts_again_warm(tmp_path: Path) -> None:
    asked = replace(WEIGHED, at_most_s=7200.0, flat_for_s=300.0)
    ran = Ran(tmp_path, asked, {"friction": warming(0.1, 0.03, 100.0), "noise": 0.0001})
    assert ran.result.outcome is Outcome.RUNS
    assert "it started again warm" in ran.result.reason
    assert not ran.result.moved
    (told,) = ran.named(DRIFT)
    assert told.values["verdict"] == "falling-then-flat"
    assert "flat for 5 min" in str(told.values["why"])
    # 2 % of 30 mA in 300 s: 70 mA e^(-t/100) (e^3 - 1) falls below 0.6 mA some 770 s after the start
    assert 700 < ran.lasted_s < 1200
    assert ran.named(RESTART)[-1].values["turning"] == "turning"
    assert ran.result.output_confirmed_off
    assert ran.motor.most_volts <= 18.0
    assert not ran.kept.trace.flags[-1] & FLAG_ON


def test_it_reads_at_the_pace_that_was_asked_for_and_says_what_that_means(tmp_path: Path) -> None:
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=300.0, pace_s=0.5, restart=False), {})
    sent_s = ran.kept.trace.t_s
    assert np.median(np.diff(sent_s[sent_s > 30.0])) == pytest.approx(0.5, abs=0.01)
    assert 290 <= ran.lasted_s <= 300
    assert any("noticed within one reading" in event.text for event in ran.kept.events)
    assert not ran.named(RESTART)
    assert ran.result.outcome is Outcome.RUNS


def test_a_motor_that_stops_is_looked_at_within_a_reading_and_let_go(tmp_path: Path) -> None:
    # on 4 V, so that the second until the next reading fits below the ceiling for the winding
    ran = Ran(tmp_path, RunIn(volts=4.0, mass_g=60.0, at_most_s=900.0), {"stops_at_s": 200.0, "friction": small})
    assert ran.result.outcome is Outcome.STILL_STUCK
    assert ran.result.moved
    assert "stopped turning" in ran.result.reason
    assert "jumped" in ran.looks[-1].text
    assert ran.looks[-1].values["turning"] == "not-turning"
    trace = ran.kept.trace
    stuck = (trace.amps > 0.08) & (trace.t_s > 100.0)
    assert np.ptp(trace.t_s[stuck]) < 1.2
    assert not ran.named(RESTART)


def test_a_motor_that_stops_at_full_volts_is_let_go_below_the_ceiling(tmp_path: Path) -> None:
    ran = Ran(tmp_path, RunIn(volts=12.0, at_most_s=900.0), {"stops_at_s": 100.0, "friction": lambda ran_s: 0.03})
    assert ran.result.outcome is Outcome.STILL_STUCK
    assert ran.result.locked_s > 0.2
    trace = ran.kept.trace
    assert np.ptp(trace.t_s[(trace.amps > 0.25) & (trace.t_s > 60.0)]) < 1.0
    assert ran.result.output_confirmed_off


@pytest.mark.parametrize("stops_at_s", [12.0, 60.3, 300.5, 301.0])
def test_wherever_it_stalls_the_bound_stays_below_the_ceiling(tmp_path: Path, stops_at_s: float) -> None:
    motor = {"ohm": 8.0, "tau_s": 0.3, "friction": lambda ran_s: 0.2, "stops_at_s": stops_at_s}
    ran = Ran(tmp_path, RunIn(volts=12.0, mass_g=150.0), motor)
    assert ran.motor.ran_s >= stops_at_s, "it has stalled, not been let go before"
    assert ran.result.outcome is Outcome.STILL_STUCK
    assert ran.result.winding_bound_c is not None
    assert ran.result.winding_bound_c <= 90.0
    assert "fast" in ran.named("pace")[-1].text or float(ran.named("pace")[-1].values["pace_s"] or 0.0) < 1.0


@pytest.mark.parametrize(("ohm", "draws"), [(8.0, 0.4), (6.0, 0.4), (4.0, 0.7), (2.0, 0.9)])
def test_what_never_stalls_ends_in_order_before_the_ceiling(tmp_path: Path, ohm: float, draws: float) -> None:
    motor = {"ohm": ohm, "tau_s": 0.3, "friction": lambda ran_s: draws}
    ran = Ran(tmp_path, RunIn(volts=12.0, mass_g=150.0, restart=False), motor)
    assert ran.result.outcome is Outcome.RUNS
    assert "ended before the ceiling for winding temperature" in ran.result.reason
    assert not [event for event in ran.kept.events if event.kind is EventKind.TRIP]


@pytest.mark.parametrize("look_every_s", [60.0, 3600.0])
def test_a_motor_that_stalls_into_its_current_limit_is_looked_at_at_once(tmp_path: Path, look_every_s: float) -> None:
    # 95 mA are less than 1.6 times the 60 mA that it runs on: no jump
    asked = replace(WEIGHED, amps=0.095, look_every_s=look_every_s, restart=False)
    ran = Ran(tmp_path, asked, {"friction": lambda ran_s: 0.06, "stops_at_s": 100.0, "tau_s": 0.15, "noise": 0.0001})
    assert ran.result.outcome is Outcome.STILL_STUCK
    assert "at a limit of 95.0 mA" in ran.looks[-1].text
    assert ran.lasted_s < 105.0
    assert 0.05 < ran.result.locked_s < 1.0


def test_a_motor_that_runs_at_its_limit_is_looked_at_now_and_then_and_goes_on(tmp_path: Path) -> None:
    asked = replace(WEIGHED, amps=0.095, at_most_s=60.0, restart=False)
    heavier = {"friction": lambda ran_s: 0.06 if ran_s < 15.0 else 0.0865, "tau_s": 0.15, "noise": 0.0001}
    ran = Ran(tmp_path, asked, heavier)
    assert ran.result.outcome is Outcome.RUNS
    assert ran.lasted_s > 55.0
    assert len([look for look in ran.looks if "limit" in look.text]) == 1
    coasts = np.diff((ran.kept.trace.set_volts > 12.5).astype(int)) > 0
    assert 7 < coasts.sum() < 16


def test_it_is_looked_at_before_it_is_said_to_run(tmp_path: Path) -> None:
    # a leak of the current that it ran on takes over: neither a jump nor a limit
    asked = replace(WEIGHED, at_most_s=100.0, look_every_s=3600.0, restart=False)
    ran = Ran(tmp_path, asked, {"friction": lambda ran_s: 0.05, "leaks_at_s": 60.0, "leak_a": 0.05, "noise": 0.0001})
    assert ran.result.outcome is not Outcome.RUNS
    assert "its end" in ran.looks[-1].text
    assert ran.result.locked_s > 0.2


def small(ran_s: float) -> float:
    return 0.02


def test_a_circuit_that_opens_is_not_taken_for_a_motor_that_runs(tmp_path: Path) -> None:
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=900.0), {"opens_at_s": 200.0})
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "open" in ran.result.reason
    assert ran.kept.trace.t_s[-1] < 320.0


def test_a_current_that_rises_by_half_ends_it_and_says_binding_or_brushes(tmp_path: Path) -> None:
    binding = {"friction": lambda ran_s: 0.03 + 0.03 * max(0.0, ran_s - 300.0) / 600.0, "noise": 0.0001}
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=7200.0, flat_for_s=0.0), binding)
    (told,) = ran.named(DRIFT)
    assert told.values["verdict"] == "rising"
    assert "rose by half above its lowest" in str(told.values["why"])
    assert 500 < ran.lasted_s < 800
    assert "binding or brushes" in ran.result.reason


def test_a_motor_that_does_not_start_is_not_run_in(tmp_path: Path) -> None:
    ran = Ran(tmp_path, WEIGHED, {"friction": lambda ran_s: 5.0})
    assert ran.result.outcome is Outcome.STILL_STUCK
    assert not ran.result.moved
    assert not ran.named("run-in")
    assert not ran.named(DRIFT)


@pytest.mark.parametrize(("ceiling", "outcome"), [(12.0, Outcome.RUNS), (14.5, Outcome.RUNS)])
def test_without_room_above_the_volts_a_rotor_that_slows_down_still_shows(
    tmp_path: Path, ceiling: float, outcome: Outcome
) -> None:
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=120.0), {}, layers={Layer.JOB: Limits(volts=ceiling)})
    assert ran.result.outcome is outcome
    assert ran.motor.most_volts <= ceiling


def test_a_rotor_that_holds_its_volts_at_the_ceiling_is_not_told_from_an_open_lead(tmp_path: Path) -> None:
    coasting = {"friction": lambda ran_s: 0.005, "tau_s": 2.0}
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=120.0), coasting, layers={Layer.JOB: Limits(volts=12.0)})
    assert ran.result.outcome is Outcome.UNDETERMINED
    assert "a ceiling of 14.4 V would tell" in ran.result.reason
    assert ran.lasted_s < 80.0


@pytest.mark.parametrize(
    ("asked", "layer", "field"),
    [
        (RunIn(volts=19.0), Limits(volts=18.0), "run_in.volts"),
        (RunIn(volts=12.0, amps=2.0), Limits(volts=18.0, amps=1.0), "run_in.amps"),
        (RunIn(volts=12.0, at_most_s=3600.0), Limits(volts=18.0, on_s=600.0), "run_in.at_most_s"),
        (RunIn(volts=12.0, pace_s=2.0), Limits(volts=18.0), "pace_s"),
        (RunIn(volts=12.0, at_most_s=86_400.0, pace_s=0.02), Limits(volts=18.0), "pace_s: 4,320,000 readings"),
        (RunIn(volts=12.0, at_most_s=90_000.0), Limits(volts=18.0), "at_most_s"),
        (RunIn(volts=12.0, mass_g=math.nan), Limits(volts=18.0), "mass_g"),
    ],
)
def test_what_asks_for_too_much_is_refused_by_its_name_and_nothing_is_switched_on(
    tmp_path: Path, asked: RunIn, layer: Limits, field: str
) -> None:
    ran = Ran(tmp_path, asked, {}, layers={Layer.JOB: layer})
    assert ran.result.outcome is Outcome.REFUSED
    assert field in ran.result.reason
    assert ran.motor.most_volts == 0.0
    assert not (ran.kept.trace.flags & FLAG_ON).any()


def test_near_a_ceiling_it_ends_by_itself_and_says_what_would_let_it_go_on(tmp_path: Path) -> None:
    ran = Ran(tmp_path, RunIn(volts=12.0, at_most_s=7200.0, flat_for_s=0.0), {"friction": lambda ran_s: 0.04})
    assert ran.result.outcome is Outcome.RUNS
    assert "winding temperature" in ran.result.reason
    assert "mass" in ran.result.reason
    assert ran.result.winding_bound_c is not None
    assert ran.result.winding_bound_c <= 90.0
    weighed = tmp_path / "weighed"
    weighed.mkdir()
    longer = Ran(
        weighed, replace(WEIGHED, at_most_s=900.0, flat_for_s=0.0, restart=False), {"friction": lambda ran_s: 0.04}
    )
    assert longer.lasted_s > 890.0 > 2 * ran.lasted_s


def test_a_winding_too_warm_for_a_locked_start_is_not_started_again_and_that_is_said(tmp_path: Path) -> None:
    # 18 W at stall: 0.9 s of them are 54 K in the lightest winding, more than minutes at no load leave
    ran = Ran(tmp_path, replace(WEIGHED, at_most_s=200.0), {"ohm": 8.0, "friction": lambda ran_s: 0.1})
    assert ran.result.outcome is Outcome.RUNS
    assert "not started again warm" in ran.result.reason
    assert ran.named(RESTART)[-1].values["turning"] == "not-made"
    trace = ran.kept.trace
    assert not (trace.set_volts[trace.t_s > ran.lasted_s + 60.0] > 2.5).any()


def test_a_filed_run_in_replays_with_no_difference(tmp_path: Path) -> None:
    asked = replace(WEIGHED, at_most_s=300.0, pace_s=0.7, flat_for_s=0.0)
    ran = Ran(tmp_path, asked, {"friction": warming(0.08, 0.03, 30.0)})
    assert ran.result.outcome is Outcome.RUNS
    told = replayed(filed_of(tmp_path / "run.journal"))
    assert told.differences == []
    assert told.readings == len(ran.kept.trace.sent)
