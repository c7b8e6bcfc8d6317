"""The motor alone on an ideal voltage step: against tabulated values and, in the same test, a second solver."""

import random

import control
import msgspec
import numpy as np
import pytest

from drivers.simulated.bench import STEP_S
from drivers.simulated.joint import JointData
from drivers.simulated.motor import Motor, MotorData

VOLTS = 3.0
CASE_A = MotorData(ohms=2.0, henries=1e-3, k=0.01, inertia=2e-6, viscous=1e-6, copper_per_k=0.0)
CASE_C = msgspec.structs.replace(CASE_A, coulomb_nm=5e-4)
LOCKED = msgspec.structs.replace(CASE_A, joint=JointData(breaks_at=20.0))

# Computed (30-digit closed form; five solvers agree): t s, i A, w A, i C, w C, i locked.
TABLE = (
    (0.0002, 0.494355550, 0.263648, 0.494396099, 0.215771, 0.494519931),
    (0.0005, 0.946238959, 1.378090, 0.946462039, 1.255408, 0.948180838),
    (0.001, 1.286873092, 4.241568, 1.287571000, 3.995054, 1.296997075),
    (0.002, 1.433334881, 11.180218, 1.435188193, 10.690219, 1.472526542),
    (0.005, 1.356026619, 32.205478, 1.361384697, 31.021104, 1.499931900),
    (0.010, 1.195383608, 63.934640, 1.206031030, 61.706052, 1.499999997),
    (0.020, 0.929992308, 116.327473, 0.949373770, 112.374634, 1.5),
    (0.050, 0.444390696, 212.193630, 0.479753328, 205.085831, 1.5),
    (0.100, 0.143488879, 271.596852, 0.188754204, 262.534091, 1.5),
    (0.200, 0.038032484, 292.415768, 0.086768383, 282.667855, 1.5),
)


def started(data: MotorData, volts: float, until_s: float, step_s: float = STEP_S) -> list[tuple[float, float, float]]:
    """(t, amps, speed) after every step from rest at constant volts."""
    motor = Motor(data, volts, random.Random(0))
    points = []
    for index in range(round(until_s / step_s)):
        motor.affine(step_s)
        motor.commit(volts, step_s)
        points.append(((index + 1) * step_s, motor.amps, motor.speed))
    return points


def at(points: list[tuple[float, float, float]], time_s: float) -> tuple[float, float]:
    _, amps, speed = points[round(time_s / STEP_S) - 1]
    return amps, speed


def second_solver(
    data: MotorData, volts: float, times: list[float], begin: tuple[float, float]
) -> "np.ndarray[tuple[int, ...], np.dtype[np.float64]]":
    """Current and speed by python-control from `begin` (amps, speed), the friction torque as a second input."""
    system = control.ss(
        [[-data.ohms / data.henries, -data.k / data.henries], [data.k / data.inertia, -data.viscous / data.inertia]],
        [[1.0 / data.henries, 0.0], [0.0, -1.0 / data.inertia]],
        np.eye(2),
        np.zeros((2, 2)),
    )
    inputs = np.array([[volts] * len(times), [data.coulomb_nm] * len(times)])
    response = control.forced_response(system, T=times, U=inputs, X0=list(begin))
    return np.asarray(response.outputs)


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0] * 1000:g} ms")
def test_the_start_without_dry_friction_is_the_tabulated_one(row: tuple[float, ...]) -> None:
    # Tolerance 1e-6 relative, or the last printed digit of the table where that is coarser.
    amps, speed = at(started(CASE_A, VOLTS, row[0]), row[0])
    assert amps == pytest.approx(row[1], rel=1e-6)
    assert speed == pytest.approx(row[2], rel=1e-6, abs=6e-7)


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0] * 1000:g} ms")
def test_the_start_against_dry_friction_is_the_tabulated_one_breakaway_inside_a_step(row: tuple[float, ...]) -> None:
    amps, speed = at(started(CASE_C, VOLTS, row[0]), row[0])
    assert amps == pytest.approx(row[3], rel=1e-6)
    assert speed == pytest.approx(row[4], rel=1e-6, abs=6e-7)


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0] * 1000:g} ms")
def test_a_locked_rotor_draws_the_tabulated_current(row: tuple[float, ...]) -> None:
    amps, speed = at(started(LOCKED, VOLTS, row[0]), row[0])
    assert amps == pytest.approx(row[5], rel=1e-6)
    assert speed == 0.0


@pytest.mark.parametrize(
    ("data", "amps_end", "speed_end", "peak_a", "peak_s"),
    [
        # Computed (30-digit closed form; five solvers agree).
        (CASE_A, 0.0294117647, 294.117647, 1.435669168, 2.235185e-3),
        (CASE_C, 0.0784313725, 284.3137255, 1.437813529, 2.252136e-3),
    ],
    ids=["without dry friction", "with dry friction"],
)
def test_peak_and_steady_state_are_the_computed_ones(
    data: MotorData, amps_end: float, speed_end: float, peak_a: float, peak_s: float
) -> None:
    _, amps, speed = started(data, VOLTS, 2.0)[-1]
    assert amps == pytest.approx(amps_end, rel=1e-8)
    assert speed == pytest.approx(speed_end, rel=1e-8)
    fine_s = 1e-6
    time_s, top_a, _ = max(started(data, VOLTS, 0.004, fine_s), key=lambda point: point[1])
    assert top_a == pytest.approx(peak_a, rel=1e-8)
    assert time_s == pytest.approx(peak_s, abs=2 * fine_s)


def test_a_second_solver_agrees_with_the_table_and_with_the_motor_without_dry_friction() -> None:
    times = [0.0, *(index * STEP_S for index in range(1, 2001))]
    theirs = second_solver(CASE_A, VOLTS, times, (0.0, 0.0))
    ours = started(CASE_A, VOLTS, 0.2)
    for row in TABLE:
        assert theirs[0][round(row[0] / STEP_S)] == pytest.approx(row[1], rel=1e-6)
    assert [point[1] for point in ours] == pytest.approx(list(theirs[0][1:]), rel=1e-7)
    assert [point[2] for point in ours] == pytest.approx(list(theirs[1][1:]), rel=1e-7)


def test_a_second_solver_agrees_with_the_motor_from_breakaway_on() -> None:
    # The rotor comes loose where K i = Tc: 50 mA, reached at -L/R ln(1 - R Ic/V) (computed from the locked current).
    loose_s = -5e-4 * np.log(1.0 - 2.0 * 0.05 / 3.0)
    step_s = 1e-4
    times = [index * step_s for index in range(2001)]
    theirs = second_solver(CASE_C, VOLTS, times, (0.05, 0.0))
    motor = Motor(CASE_C, VOLTS, random.Random(0))
    motor.affine(loose_s)
    motor.commit(VOLTS, loose_s)
    assert motor.amps == pytest.approx(0.05, rel=1e-9)
    for index in range(1, len(times)):
        motor.affine(step_s)
        motor.commit(VOLTS, step_s)
        assert motor.amps == pytest.approx(theirs[0][index], rel=1e-6)
        assert motor.speed == pytest.approx(theirs[1][index], rel=1e-6)


def test_the_length_of_the_steps_does_not_matter() -> None:
    coarse = started(CASE_C, VOLTS, 0.2, 1e-3)
    fine = started(CASE_C, VOLTS, 0.2, 1e-5)
    assert coarse[-1][1] == pytest.approx(fine[-1][1], rel=1e-8)
    assert coarse[-1][2] == pytest.approx(fine[-1][2], rel=1e-8)


def test_the_textbook_motor_settles_as_published() -> None:
    # Published: University of Michigan control tutorials, DC motor speed: final 0.1 rad/s, settling (2 %) 2.07 s.
    # Computed for the same inputs: 0.0999001 rad/s, 2.0652 s.
    data = MotorData(ohms=1.0, henries=0.5, k=0.01, inertia=0.01, viscous=0.1, copper_per_k=0.0)
    points = started(data, 1.0, 6.0, 1e-3)
    final = points[-1][2]
    assert final == pytest.approx(0.1, rel=0.005)
    assert final == pytest.approx(0.0999001, abs=2e-6)
    settled_s = max(time_s for time_s, _, speed in points if abs(speed / 0.0999001 - 1.0) > 0.02)
    assert settled_s == pytest.approx(2.07, rel=0.005)
    assert settled_s == pytest.approx(2.0652, abs=2e-3)


def test_a_servo_motor_stalls_and_settles_as_its_sheet_says() -> None:
    # Published: brushed servo motor sheet, 48 V: R 0.365 ohm, L 0.161 mH, Kt 0.123, J 1340 g cm2; stall 131 A,
    # mechanical time constant 3.25 ms (computed 3.233).
    data = MotorData(ohms=0.365, henries=1.61e-4, k=0.123, inertia=1.34e-4, copper_per_k=0.0)
    locked = msgspec.structs.replace(data, joint=JointData(breaks_at=20.0))
    assert started(locked, 48.0, 0.05)[-1][1] == pytest.approx(131.0, rel=0.006)
    # The sheet's mechanical time constant leaves the inductance out, so next to none is given here.
    points = started(msgspec.structs.replace(data, henries=1e-7), 48.0, 0.1)
    speeds = {round(time_s, 4): points[-1][2] - speed for time_s, _, speed in points}
    tau_s = 0.01 / np.log(speeds[0.005] / speeds[0.015])
    assert tau_s == pytest.approx(3.25e-3, rel=0.006)
    assert tau_s == pytest.approx(3.233e-3, rel=5e-4)


@pytest.mark.parametrize(
    ("ohms", "volts", "published_a"),
    [
        (1.7, 6.0, 3.5),  # published: MIT 2.007 motor page, 260 size
        (8.7 / 3.9, 24.0, 10.8),  # published: locked-rotor low-voltage test, 8.7 V 3.9 A taken to 24 V
    ],
)
def test_stall_current_is_volts_over_resistance_as_published(ohms: float, volts: float, published_a: float) -> None:
    data = MotorData(ohms=ohms, henries=1e-3, k=0.002, inertia=1e-6, copper_per_k=0.0, joint=JointData(breaks_at=20.0))
    assert started(data, volts, 0.05)[-1][1] == pytest.approx(published_a, rel=0.01)


def test_the_exact_time_constants_are_those_of_the_poles() -> None:
    # Computed: 38.71908 ms and 0.506413 ms for case A.
    points = started(CASE_A, VOLTS, 0.4)
    early, late = points[999], points[1999]
    tau_s = (late[0] - early[0]) / np.log((294.1176470588 - early[2]) / (294.1176470588 - late[2]))
    assert tau_s == pytest.approx(38.71908e-3, rel=1e-6)
