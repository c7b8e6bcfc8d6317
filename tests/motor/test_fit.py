"""Constants from a start: the closed form against published and solved values, the fit against known starts."""

import math

import control
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.motor.fit import Fitted, constants, held_volts, poles, start_current
from benchlog.motor.startup import Start

# Source: five solvers agree (scipy, python-control, ngspice, gym-electric-motor, 30-digit closed form); computed.
# R 2.0 Ω, L 1 mH, K 0.01, J 2e-6, b 1e-6, 3 V; A without, C with Coulomb friction of 5e-4 N m.
MOTOR = {"ohms": 2.0, "henries": 1e-3, "k": 0.01, "inertia": 2e-6, "viscous": 1e-6}
TIMES = (0.0002, 0.0005, 0.001, 0.002, 0.005, 0.010, 0.020, 0.050, 0.100, 0.200)
CASE_A = (
    *(0.494355550, 0.946238959, 1.286873092, 1.433334881, 1.356026619),
    *(1.195383608, 0.929992308, 0.444390696, 0.143488879, 0.038032484),
)
CASE_C = (
    *(0.494396099, 0.946462039, 1.287571000, 1.435188193, 1.361384697),
    *(1.206031030, 0.949373770, 0.479753328, 0.188754204, 0.086768383),
)


def test_the_closed_form_start_is_that_of_five_solvers() -> None:
    got = start_current(np.array(TIMES), 3.0, **MOTOR)
    assert got == pytest.approx(CASE_A, rel=1e-6)


def test_the_same_with_coulomb_friction_from_breakaway_on() -> None:
    got = start_current(np.array(TIMES), 3.0, **MOTOR, coulomb_nm=5e-4)
    assert got == pytest.approx(CASE_C, abs=1e-6)


def test_a_locked_rotor_draws_what_the_winding_lets_through() -> None:
    # case S of the same table
    got = start_current(np.array([0.0002, 0.001, 0.005]), 3.0, **MOTOR, coulomb_nm=1.0)
    assert got == pytest.approx((0.494519931, 1.296997075, 1.499931900), abs=1e-8)


def test_the_poles_of_a_published_example() -> None:
    # Source: Univ. of Michigan control tutorials, DC motor speed: J .01, b .1, K .01, R 1, L .5; published -2, -10
    slow, fast = poles(1.0, 0.5, 0.01, 0.01, 0.1)
    assert (slow.real, fast.real) == pytest.approx((-2.0, -10.0), rel=0.005)
    assert (slow.real, fast.real) == pytest.approx((-2.002501, -9.997499), abs=1e-6)


def test_the_time_constants_of_the_tabulated_motor() -> None:
    # computed: exact 38.71908 ms and 0.506413 ms
    slow, fast = poles(**MOTOR)
    assert (-1 / slow.real, -1 / fast.real) == pytest.approx((0.03871908, 0.000506413), rel=1e-5)


def test_a_data_sheet_s_mechanical_time_constant() -> None:
    # Source: sheet of a 48 V brushed servo motor: R .365 Ω, Kt .123, J 1340 g cm², published 3.25 ms
    assert pytest.approx(3.25e-3, rel=0.006) == 0.365 * 1340e-7 / 0.123**2
    slow, _ = poles(0.365, 1e-7, 0.123, 1340e-7)
    assert -1 / slow.real == pytest.approx(3.25e-3, rel=0.006)


@given(
    ohms=st.floats(0.5, 30.0),
    tau_e=st.floats(1e-4, 2e-3),
    tau=st.floats(0.02, 1.0),
    k=st.floats(0.003, 0.08),
    volts=st.floats(1.0, 24.0),
)
def test_against_a_second_solver(ohms: float, tau_e: float, tau: float, k: float, volts: float) -> None:
    henries, inertia = ohms * tau_e, tau * k * k / ohms
    t_s = np.linspace(0.0, 3 * tau, 200)
    system = control.ss([[-ohms / henries, -k / henries], [k / inertia, 0.0]], [[1 / henries], [0.0]], [[1, 0]], [[0]])
    other = control.step_response(system, t_s).outputs * volts
    mine = start_current(t_s, volts, ohms=ohms, henries=henries, k=k, inertia=inertia)
    assert mine == pytest.approx(other.reshape(-1), rel=1e-6, abs=1e-6 * volts / ohms)


def start(
    tau: float,
    steady: float,
    stall: float,
    *,
    rate: float = 50.0,
    lasts_s: float = 3.0,
    noise: float = 0.0005,
    seed: int = 1,
    window_s: float = 0.02,
) -> Start:
    """Readings averaged over a window, of a start with these constants."""
    source = np.random.default_rng(seed)
    t_s = np.arange(0.035, lasts_s, 1 / rate)
    widened = math.sinh(window_s / 2 / tau) / (window_s / 2 / tau)
    amps = steady + (stall - steady) * widened * np.exp(-t_s / tau) + source.normal(0, noise, len(t_s))
    volts = np.full(len(t_s), 8.57)
    return Start(
        name="measured start",
        began_s=1.0,
        set_volts=8.57,
        t_s=t_s,
        volts=volts,
        amps=amps,
        all_t_s=t_s,
        all_amps=amps,
        window_s=window_s,
    )


@pytest.mark.parametrize("tau", [0.06, 0.15, 0.4])
def test_the_intervals_hold_what_the_start_was_made_of(tau: float) -> None:
    held = 0
    for seed in range(40):
        found = constants(start(tau, 0.2, 1.5, seed=seed), sigma_amps=0.0005)
        assert found.tau_s is not None
        assert found.steady_amps is not None
        assert found.tau_s.value == pytest.approx(tau, rel=0.03)
        held += found.tau_s.low <= tau <= found.tau_s.high and found.steady_amps.low <= 0.2 <= found.steady_amps.high
    assert held >= 38


def test_what_the_readings_can_not_tell_is_not_told() -> None:
    fast = constants(start(0.012, 0.2, 1.5), sigma_amps=0.0005)
    assert fast.tau_s is None
    assert "tau_s" in fast.why
    short = constants(start(1.5, 0.2, 1.5, lasts_s=2.0), sigma_amps=0.0005)
    assert short.steady_amps is None
    assert "lasts" in short.why["steady_amps"]
    noisy = constants(start(0.1, 0.02, 0.1, noise=0.01), sigma_amps=0.01)
    assert noisy.steady_amps is None
    assert "not identifiable" in noisy.why["steady_amps"]
    few = constants(start(0.1, 0.2, 1.5, rate=2.0), sigma_amps=0.0005)
    assert few.tau_s is None
    assert "too few" in few.why["tau_s"]


def test_the_ratio_and_the_emf_need_the_resistance_of_the_probe() -> None:
    without = constants(start(0.1, 0.2, 1.5), sigma_amps=0.0005)
    assert without.stall_ratio is None
    ohm = Fitted(value=5.7, low=5.65, high=5.75)
    found = constants(start(0.1, 0.2, 1.5), sigma_amps=0.0005, ohm=ohm)
    assert found.stall_ratio is not None
    assert found.steady_emf_volts is not None
    assert found.stall_ratio.low < 8.57 / 5.7 / 0.2 < found.stall_ratio.high
    assert found.steady_emf_volts.low < 8.57 - 5.7 * 0.2 < found.steady_emf_volts.high


@given(scale=st.floats(0.2, 5.0))
def test_a_scale_of_the_current_scales_the_steady_current_and_leaves_tau(scale: float) -> None:
    one = start(0.1, 0.4, 2.0, noise=0.0)
    other = Start(
        name=one.name,
        began_s=one.began_s,
        set_volts=one.set_volts,
        t_s=one.t_s,
        volts=one.volts,
        amps=one.amps * scale,
        all_t_s=one.all_t_s,
        all_amps=one.all_amps * scale,
        window_s=one.window_s,
    )
    first, second = (constants(each, sigma_amps=0.0, u_zero_amps=0.0) for each in (one, other))
    assert first.tau_s is not None
    assert second.tau_s is not None
    assert first.steady_amps is not None
    assert second.steady_amps is not None
    assert second.tau_s.value == pytest.approx(first.tau_s.value, rel=1e-3)
    assert second.steady_amps.value == pytest.approx(scale * first.steady_amps.value, rel=1e-6)


def test_readings_before_the_volts_were_constant_are_left_out() -> None:
    made = start(0.1, 0.2, 1.5)
    made.volts[:3] = (5.0, 7.0, 8.0)
    assert held_volts(made).tolist() == [False] * 3 + [True] * (len(made.t_s) - 3)


def test_leads_take_their_share_of_the_volts() -> None:
    ohm = Fitted(value=5.7, low=5.65, high=5.75)
    found = constants(start(0.1, 0.2, 8.57 / 6.2), sigma_amps=0.0005, ohm=ohm, lead_ohm=0.5)
    assert found.steady_emf_volts is not None
    assert found.stall_ratio is not None
    assert found.steady_emf_volts.value == pytest.approx(8.57 - 6.2 * 0.2, abs=0.002)
    assert found.stall_ratio.value == pytest.approx(8.57 / 6.2 / 0.2, rel=0.002)


def test_the_start_of_motion_lies_between_two_readings_where_the_rotor_stood_at_first() -> None:
    ohm = Fitted(value=5.7, low=5.65, high=5.75)
    made = start(0.1, 0.2, 8.57 / 5.7)
    stood_s = 0.4
    since = np.maximum(made.t_s - stood_s, 0.0)
    made.amps[:] = 0.2 + (8.57 / 5.7 - 0.2) * np.exp(-since / 0.1)
    found = constants(made, sigma_amps=0.0005, ohm=ohm).moves_s
    assert found is not None
    # 400 ms standing; the heat a locked winding may have by then (10 %) hides the first 0.12 time constants or so
    assert stood_s <= found.high
    assert found.low <= stood_s + 0.02
    assert found.high - found.low == pytest.approx(0.04, abs=1e-6)


def test_a_first_reading_that_is_already_turning_does_not_tell_the_start_of_motion() -> None:
    ohm = Fitted(value=5.7, low=5.65, high=5.75)
    found = constants(start(0.1, 0.2, 8.57 / 5.7), sigma_amps=0.0005, ohm=ohm)
    assert found.moves_s is None
    assert "already turning" in found.why["moves_s"]
    assert "resistance" in constants(start(0.1, 0.2, 1.5), sigma_amps=0.0005).why["moves_s"]
    stands = start(0.1, 8.57 / 5.7, 8.57 / 5.7, noise=0.0)
    assert "did not leave" in constants(stands, ohm=ohm).why["moves_s"]
