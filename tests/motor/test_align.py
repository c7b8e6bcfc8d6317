"""Curves laid on readings whose offset is known: made up here, and held against a second solver."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import signal

from benchlog.motor.align import NEAR_S, Aligned, Averages, align, middles
from benchlog.motor.startup import Values, starts_of
from tests.motor.test_startup import SUPPLY, trace_of

WINDOW_S = 0.02
START_S = 2.0


def current(t_s: Values, starts: tuple[float, ...] = (START_S,), tau_s: float = 0.1, lasts_s: float = 3.0) -> Values:
    """Starts from rest of 0.2 A steady and 1.5 A stalled, each on for `lasts_s`."""
    amps = np.zeros_like(t_s)
    for start_s in starts:
        since = t_s - start_s
        on = (since >= 0) & (since < lasts_s)
        amps[on] = (0.2 + 1.3 * np.exp(-since[on] / tau_s)) * -np.expm1(-since[on] / 0.001)
    return amps


def readings_of(
    noise: np.random.Generator,
    starts: tuple[float, ...] = (START_S,),
    *,
    pace_s: float = 0.0104,
    sigma: float = 1e-3,
    gain: float = 1.0,
    lasts_s: float = 8.0,
) -> tuple[Values, Values]:
    """Middles and readbacks: averages over the window, an offset of 4 mA, noise, rounded to 1 mA."""
    fine = np.arange(-0.1, lasts_s + 0.1, 5e-5)
    middle_s = np.arange(0.05, lasts_s - 0.05, pace_s)
    middle_s = middle_s + noise.uniform(0, 0.1 * pace_s, len(middle_s))
    average = Averages(fine, current(fine, starts)).over(middle_s, WINDOW_S)
    return middle_s, np.round(0.004 + gain * average + noise.normal(0, sigma, len(middle_s)), 3)


def curve_of(
    noise: np.random.Generator,
    offset_s: float,
    starts: tuple[float, ...] = (START_S,),
    *,
    begin_s: float = -0.3,
    end_s: float = 1.0,
    sigma: float = 5e-3,
) -> tuple[Values, Values]:
    """10,000 samples a second, as another instrument would take them with its own zero of time."""
    t_s = np.arange(begin_s, end_s, 1e-4)
    return t_s, current(t_s + offset_s, starts) + noise.normal(0, sigma, len(t_s))


def laid(curve: tuple[Values, Values], readings: tuple[Values, Values], near_s: float | None = None) -> Aligned:
    return align(*curve, *readings, window_s=WINDOW_S, near_s=near_s)


@pytest.mark.parametrize(
    ("pace_s", "sigma", "gain", "most_s"),
    [(0.0104, 1e-3, 1.0, 2e-4), (0.0104, 0.01, 1.0, 1e-3), (0.0104, 1e-3, 0.5, 4e-4), (0.02, 1e-3, 1.0, 1e-3)],
)
def test_an_offset_is_found_far_finer_than_a_reading_and_lies_in_its_interval(
    pace_s: float, sigma: float, gain: float, most_s: float
) -> None:
    inside = 0
    for seed in range(20):
        noise = np.random.default_rng(seed)
        true_s = START_S + float(noise.uniform(-0.2, 0.1))
        found = laid(curve_of(noise, true_s), readings_of(noise, pace_s=pace_s, sigma=sigma, gain=gain))
        assert found.offset_s is not None, found.why
        assert found.offset_s.value == pytest.approx(true_s, abs=most_s)
        assert found.gain is not None
        assert found.gain.value == pytest.approx(gain, rel=0.02)
        assert found.zero == pytest.approx(0.004, abs=0.002 + sigma)
        inside += found.offset_s.low <= true_s <= found.offset_s.high
    assert inside >= 17  # 95 % of 20 are 19; 17 or more come with a chance of 0.98


def test_where_an_offset_is_told_at_few_readings_a_second_it_is_right() -> None:
    told = 0
    for seed in range(30):
        noise = np.random.default_rng(seed)
        true_s = START_S + float(noise.uniform(-0.2, 0.1))
        found = laid(curve_of(noise, true_s, end_s=3.0), readings_of(noise, pace_s=0.2))
        assert (found.offset_s is None) == bool(found.why)
        if found.offset_s is not None:
            told += 1
            assert found.offset_s.value == pytest.approx(true_s, abs=0.005)
    assert told >= 5


def test_the_offset_is_that_of_a_second_solver() -> None:
    # scipy.signal: a boxcar over the window, then the lag of the highest cross-correlation; to half a step.
    noise = np.random.default_rng(4)
    step_s = 1e-3
    t_s = np.arange(-0.3, 1.0, step_s)
    curve = current(t_s + 1.9137)
    boxcar = np.ones(20) / 20
    fine = np.arange(0.0, 8.0, step_s)
    run = signal.oaconvolve(current(fine), boxcar, "same") + noise.normal(0, 1e-3, len(fine))
    middle_s = fine - 0.5 * step_s  # twenty points from 10 before to 9 after
    smooth = signal.oaconvolve(curve, boxcar, "same")
    alike = signal.correlate(run - run.mean(), smooth - smooth.mean(), "valid")
    other_s = float(middle_s[int(np.argmax(alike))] - (t_s[0] - 0.5 * step_s))
    # The readings of a run stand apart: every tenth.
    found = laid((t_s, curve), (middle_s[::10], run[::10]))
    assert found.offset_s is not None, found.why
    assert found.offset_s.value == pytest.approx(other_s, abs=0.6 * step_s)


@given(st.lists(st.floats(-10, 10), min_size=2, max_size=30), st.floats(0.01, 0.9), st.floats(0.0, 1.0))
@settings(deadline=None)
def test_an_average_is_the_exact_integral_of_the_lines_between_samples(
    values: list[float], share: float, at: float
) -> None:
    t_s = np.cumsum(np.linspace(0.5, 1.5, len(values)))
    window_s = share * float(t_s[-1] - t_s[0])
    middle_s = float(t_s[0]) + 0.5 * window_s + at * (float(t_s[-1] - t_s[0]) - window_s)
    found = Averages(t_s, np.array(values)).over(np.array([middle_s]), window_s)[0]
    corners = np.unique(np.clip(t_s, middle_s - window_s / 2, middle_s + window_s / 2))
    corners = np.unique(np.append(corners, [middle_s - window_s / 2, middle_s + window_s / 2]))
    plain = np.trapezoid(np.interp(corners, t_s, values), corners) / window_s
    assert found == pytest.approx(float(plain), abs=1e-9 / min(share, 1))


def test_starts_that_are_alike_are_not_told_apart_unless_a_place_is_named() -> None:
    noise = np.random.default_rng(2)
    starts = (START_S, 6.0, 10.0)
    readings = readings_of(noise, starts, lasts_s=14.0)
    curve = curve_of(noise, 5.95, starts)
    found = laid(curve, readings)
    assert found.offset_s is None
    assert "nearly as well; say near which" in found.why
    near = laid(curve, readings, 6.0 - 0.5 * NEAR_S)
    assert near.offset_s is not None, near.why
    assert near.offset_s.value == pytest.approx(5.95, abs=2e-4)
    assert laid(curve, readings, 4.0).offset_s is None


def test_a_start_of_another_shape_is_told_apart() -> None:
    noise = np.random.default_rng(3)
    fine = np.arange(-0.1, 10.1, 5e-5)
    both = Averages(fine, current(fine, (2.0,)) + current(fine, (6.0,), tau_s=0.3))
    middle_s = np.arange(0.05, 10.0, 0.0104)
    readings = np.round(both.over(middle_s, WINDOW_S) + noise.normal(0, 1e-3, len(middle_s)), 3)
    t_s = np.arange(-0.3, 1.0, 1e-4)
    found = laid((t_s, current(t_s + 6.01, (6.0,), tau_s=0.3)), (middle_s, readings))
    assert found.offset_s is not None, found.why
    assert found.offset_s.value == pytest.approx(6.01, abs=2e-4)


@pytest.mark.parametrize("shape", ["flat", "noise", "steady", "falling edge"])
def test_what_shares_no_edge_has_no_offset(shape: str) -> None:
    noise = np.random.default_rng(5)
    t_s = np.arange(0.0, 1.0, 1e-4)
    values = {
        "flat": np.full(len(t_s), 0.3),
        "noise": noise.normal(0, 0.01, len(t_s)),
        "steady": current(t_s + 4.0) + noise.normal(0, 5e-3, len(t_s)),
        "falling edge": np.where(t_s < 0.5, 0.2, 0.0),
    }[shape]
    found = laid((t_s, values), readings_of(noise, lasts_s=4.0))
    assert found.offset_s is None
    assert "share no edge" in found.why


def test_a_slope_that_never_ends_is_wider_than_a_window_or_fits_everywhere() -> None:
    noise = np.random.default_rng(6)
    middle_s = np.arange(0.0, 8.0, 0.0104)
    t_s = np.arange(0.0, 2.0, 1e-3)
    found = laid((t_s, 0.1 * t_s), (middle_s, 0.1 * middle_s + noise.normal(0, 1e-3, len(middle_s))))
    assert found.offset_s is None
    assert found.why


@pytest.mark.parametrize(("begin_s", "end_s"), [(-0.005, 0.005), (-0.02, 0.05)])
def test_a_curve_too_short_for_readings_says_so(begin_s: float, end_s: float) -> None:
    noise = np.random.default_rng(7)
    found = laid(curve_of(noise, START_S, begin_s=begin_s, end_s=end_s), readings_of(noise))
    assert found.offset_s is None
    assert "fewer than 8 readings" in found.why


def test_a_curve_that_began_before_the_run_and_one_that_contains_it_are_laid() -> None:
    noise = np.random.default_rng(8)
    for begin_s, end_s in ((-3.0, 2.0), (-3.0, 8.0)):
        found = laid(curve_of(noise, 1.95, begin_s=begin_s, end_s=end_s), readings_of(noise))
        assert found.offset_s is not None, found.why
        assert found.offset_s.value == pytest.approx(1.95, abs=2e-4)


def test_a_reading_stands_where_a_start_has_it() -> None:
    trace = trace_of([(0.4, 0, "rest"), (1.0, 9, "start")])
    start = starts_of(trace, [SUPPLY])[0]
    assert middles(trace, 0.02)[-len(start.t_s) :] == pytest.approx(start.began_s + start.t_s)


def test_a_run_that_is_read_more_slowly_while_it_rests_is_laid_as_well() -> None:
    inside = 0
    for seed in range(20):
        noise = np.random.default_rng(seed)
        middle_s, readings = readings_of(noise, pace_s=0.008, lasts_s=20.0)
        kept = (np.abs(middle_s - 3.5) < 2.0) | (np.arange(len(middle_s)) % 7 == 0)
        true_s = START_S + float(noise.uniform(-0.2, 0.1))
        found = laid(curve_of(noise, true_s), (middle_s[kept], readings[kept]))
        assert found.offset_s is not None, found.why
        assert found.offset_s.value == pytest.approx(true_s, abs=2e-4)
        inside += found.offset_s.low <= true_s <= found.offset_s.high
    assert inside >= 17


def test_a_curve_of_one_sample_or_a_window_of_nothing_is_a_fault_of_the_caller() -> None:
    one, ten = np.zeros(1), np.arange(10.0)
    with pytest.raises(ValueError, match="two samples"):
        align(one, one, ten, ten, window_s=0.02)
    with pytest.raises(ValueError, match="above zero"):
        align(ten, ten, ten, ten, window_s=0.0)
