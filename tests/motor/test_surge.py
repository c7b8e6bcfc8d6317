"""The line through the logarithm of a surge: its time constant, its run-up, its energy; and when there is none."""

import math
from dataclasses import replace

import numpy as np
import pytest

from benchlog.motor.fit import Fitted
from benchlog.motor.startup import Start, Values, Zero
from benchlog.motor.surge import Surge, energy, run_up, surge_of
from tests.motor.five_solvers import Exact, read_back

TAU_S, STEADY_A, SURGE_A = 0.1, 0.2, 1.3
ZERO = Zero(amps=0.0, sigma_amps=1e-5, u_amps=0.0)


def start_of(amps: Values, t_s: Values) -> Start:
    base = read_back(Exact(case="A"), per_s=50.0)
    return replace(base, t_s=t_s, amps=amps, volts=np.full(len(t_s), 9.0), all_t_s=t_s, all_amps=amps, within_s=0.0)


def falling(first_s: float = 0.03, pace_s: float = 0.02, held_s: float = 0.0) -> Start:
    """On a limit at first, for `held_s`."""
    t_s = np.arange(first_s, 3.0, pace_s)
    return start_of(STEADY_A + SURGE_A * np.exp(-np.maximum(t_s - held_s, 0.0) / TAU_S), t_s)


def surge(start: Start, noise: float = 1e-5) -> Surge:
    found = surge_of(start, start.amps, STEADY_A, noise, ZERO)
    assert isinstance(found, Surge)
    return found


@pytest.mark.parametrize("first_s", [0.02, 0.035, 0.06])
@pytest.mark.parametrize("pace_s", [0.01, 0.05, 0.1])
def test_the_time_constant_does_not_depend_on_where_the_readings_fall(first_s: float, pace_s: float) -> None:
    start = falling(first_s, pace_s)
    found = surge(start)
    assert found.tau_s == pytest.approx(TAU_S, rel=1e-6)
    assert found.amps_at(0.0) == pytest.approx(SURGE_A, rel=1e-5)
    told = run_up(start, found, 1e-5, 0.0)
    assert isinstance(told, Fitted)
    assert told.low < TAU_S * math.log(10) < told.high


def test_noise_widens_the_line_as_it_scatters_it() -> None:
    source, start, taus, shares = np.random.default_rng(1), falling(), [], []
    for _ in range(300):
        noisy = replace(start, amps=start.amps + source.normal(0, 0.02, len(start.amps)))
        found = surge(noisy, 0.02)
        taus.append(found.tau_s)
        shares.append(found.u_share)
    held = np.abs(np.array(taus) / TAU_S - 1) <= np.array(shares)
    assert 0.9 <= np.mean(held) <= 0.99


def test_where_the_current_was_held_at_a_limit_the_run_up_begins_at_its_end() -> None:
    start = falling(held_s=0.25)
    found = surge(start)
    assert found.held
    told = run_up(start, found, 1e-5, 0.0)
    assert isinstance(told, Fitted)
    assert told.value == pytest.approx(0.25 + TAU_S * math.log(10), rel=0.01)
    joules = energy(start, start.amps, STEADY_A, found, lead_ohm=0.0, zero=ZERO, gain=0.0)
    assert isinstance(joules, Fitted)
    lasted_s = float(start.t_s[-1])
    assert joules.low < 9.0 * (STEADY_A * lasted_s + SURGE_A * (0.25 + TAU_S)) < joules.high


def test_energy_counts_what_passed_before_the_first_reading() -> None:
    for first_s in (0.02, 0.06, 0.1):
        start = falling(first_s)
        told = energy(start, start.amps, STEADY_A, surge(start), lead_ohm=0.0, zero=ZERO, gain=0.0)
        assert isinstance(told, Fitted)
        true = 9.0 * (STEADY_A * float(start.t_s[-1]) + SURGE_A * TAU_S)
        assert told.low < true < told.high
        assert told.value == pytest.approx(true, rel=0.02)


def test_without_a_fall_in_the_readings_there_is_no_line_and_its_reason_is_told() -> None:
    t_s = np.arange(0.03, 3.0, 0.02)
    flat = start_of(np.full(len(t_s), STEADY_A), t_s)
    assert "before the first reading" in str(surge_of(flat, flat.amps, STEADY_A, 0.001, ZERO))
    one = np.where(t_s < 0.04, 1.0, STEADY_A)
    assert "between two readings" in str(surge_of(start_of(one, t_s), one, STEADY_A, 0.001, ZERO))
    told = energy(flat, flat.amps, STEADY_A, "over", lead_ohm=0.0, zero=ZERO, gain=0.0)
    assert told == "the surge was not seen: over"


def test_a_run_up_that_the_ripple_hides_or_that_is_not_over_is_not_told() -> None:
    start = falling()
    found = surge(start)
    assert run_up(start, found, 0.03, 0.0) == "lost in the ripple"
    short = replace(start, t_s=start.t_s[:6], amps=start.amps[:6], volts=start.volts[:6])
    assert run_up(short, surge(short), 1e-5, 0.0) == "not over by the end"
