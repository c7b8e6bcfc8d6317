"""The benchmark of accuracy itself: its second solver against published figures and the first, its draws, its rows."""

import random
from pathlib import Path

import msgspec
import pytest

from benchlog.outcome import Outcome
from drivers.simulated.motor import Motor, MotorData
from tests.benchmarks.accuracy import motion, winding
from tests.benchmarks.accuracy.__main__ import PARTS
from tests.benchmarks.accuracy.motion import Told
from tests.benchmarks.accuracy.population import STUCK, draw, run
from tests.benchmarks.accuracy.rows import Row, rate, table
from tests.benchmarks.accuracy.second_solver import Extras, ThetaMotor
from tests.drivers.simulated.test_motor_start import CASE_A, CASE_C, LOCKED, TABLE, VOLTS

FINE_S = 2e-6


def amps_and_speed(motor: Motor | ThetaMotor, volts: float, until_s: float, step_s: float) -> tuple[float, float]:
    for _ in range(round(until_s / step_s)):
        motor.affine(step_s)
        motor.commit(volts, step_s)
    return motor.amps, motor.speed


@pytest.mark.parametrize("row", [row for row in TABLE if row[0] <= 0.05], ids=lambda row: f"{row[0] * 1000:g} ms")
def test_the_second_solver_starts_as_tabulated(row: tuple[float, ...]) -> None:
    # Source: as of TABLE, computed, five solvers agree. Tolerances of this project: the start is no event here.
    for data, amps, speed in ((CASE_A, row[1], row[2]), (CASE_C, row[3], row[4]), (LOCKED, row[5], 0.0)):
        motor = ThetaMotor(data, VOLTS, random.Random(0))
        found = amps_and_speed(motor, VOLTS, row[0], FINE_S)
        assert found[0] == pytest.approx(amps, abs=1e-4)
        assert found[1] == pytest.approx(speed, abs=0.05)


@pytest.mark.parametrize("number", range(6))
def test_both_solvers_agree_on_random_motors_in_the_steps_of_the_bench(number: int) -> None:
    # The step of 0.1 ms is not short against L/R of some: what a reading of 20 ms shows differs by far less.
    scenario = draw(2, number, "free").scenario
    assert scenario.motor is not None
    data: MotorData = msgspec.structs.replace(scenario.motor, contact=None)
    volts = scenario.rated_volts
    for until_s in (0.05, 0.3):
        first = amps_and_speed(Motor(data, volts, random.Random(0)), volts, until_s, 1e-4)
        second = amps_and_speed(ThetaMotor(data, volts, random.Random(0)), volts, until_s, 1e-4)
        assert second[0] == pytest.approx(first[0], rel=0.01, abs=0.002 * volts / data.ohms)
        assert second[1] == pytest.approx(first[1], rel=0.01)


def test_a_drop_at_the_brushes_takes_its_volts_and_leaves_none_at_rest() -> None:
    motor = ThetaMotor(LOCKED, VOLTS, random.Random(0), Extras(brush_volts=0.5))
    amps, _ = amps_and_speed(motor, VOLTS, 0.02, FINE_S)
    assert amps == pytest.approx((VOLTS - 0.5) / LOCKED.ohms, rel=0.01)
    assert amps_and_speed(motor, 0.0, 0.02, FINE_S)[0] == pytest.approx(0.0, abs=1e-4)


def test_draws_are_the_same_every_time_within_their_ranges_and_half_of_the_second_solver() -> None:
    drawn = [draw(3, number, "free") for number in range(200)]
    assert drawn[7] == draw(3, 7, "free")
    assert drawn[7] != draw(4, 7, "free")
    assert sum(one.second for one in drawn) == 100
    for one in drawn:
        motor, rated = one.scenario.motor, one.scenario.rated_volts
        assert motor is not None
        assert 0.3 <= motor.ohms <= 40.0
        assert 0.08 <= rated / motor.ohms <= 10.0
        assert 0.01 <= one.tau_s <= 2.0
        assert 4.0 <= one.ratio <= 30.0
        assert 0.01 <= one.reply_s <= 0.2


@pytest.mark.parametrize("kind", STUCK)
def test_a_stuck_motor_does_not_run(kind: str, tmp_path: Path) -> None:
    for number in (0, 1):
        ran = run(draw(5, number, kind), tmp_path)
        assert ran.result.outcome in (Outcome.STILL_STUCK, Outcome.UNDETERMINED, Outcome.CEILING)
        assert kind == "angle" or ran.max_speed == 0.0


def test_a_free_motor_of_either_solver_turns_and_is_found(tmp_path: Path) -> None:
    for number in (2, 1):
        drawn = draw(3, number, "free")
        assert drawn.second == (number == 1)
        ran = run(drawn, tmp_path)
        assert ran.max_speed > 10.0
        assert ran.result.outcome in (Outcome.FREED, Outcome.RUNS)


def test_the_winding_part_measures() -> None:
    verdict, interval, energy = winding.measure(16, 3, 1)
    assert verdict.count == 16
    assert interval.count >= 3
    assert energy.count == 8
    assert "of 16" in verdict.reached
    assert set(winding.KINDS) == set(winding.RIGHT)


def told(kind: str, outcome: Outcome, *, first: bool = False, decidable: bool = True) -> Told:
    return Told(
        kind=kind,
        number=1,
        outcome=outcome,
        reason="",
        first=first,
        decidable=decidable,
        readings_per_s=20.0,
        second=True,
    )


def test_the_motion_part_counts_what_was_said() -> None:
    found = [told(kind, Outcome.STILL_STUCK) for kind in STUCK] + [told("lift", Outcome.FREED)]
    found += [told("free", Outcome.RUNS, first=True), told("free", Outcome.STILL_STUCK), told("creeping", Outcome.OPEN)]
    rows = {row.what: row for row in motion.rows(found)}
    assert "1 of 6" in rows["“freed” or “runs” said of a motor that does not turn"].reached
    assert "1 of 2" in rows["the same, lift"].reached
    assert "0 of 1" in rows["the same, locked"].reached
    assert "1 of 2" in rows["running motor recognised at the first hold after a kick, or before, all"].reached
    assert "1 of 2" in rows["running motor said not to run"].reached


def test_a_rate_carries_the_exact_interval() -> None:
    # Clopper and Pearson: 0 of n has the upper limit 1 - 0.025^(1/n), here 0.00123; computed from the formula
    assert rate(0, 3000, per=1000) == "0 in 1,000 (0 to 1.23); 0 of 3000"
    assert rate(0, 0) == "none to count"


def test_the_table_is_one_line_a_row() -> None:
    row = Row(what="a", goal="b", reached="c", count=2000)
    assert table([row]).splitlines()[-1] == "| a | b | c | 2,000 |  |"
    assert {"winding", "motion"} <= set(PARTS)
