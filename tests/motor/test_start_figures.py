"""Figures of a start against the curve that five solvers agree on, published examples, and ngspice."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchlog.motor.fit import Fitted, start_current
from benchlog.motor.start_figures import FIGURES, StartFigures, event_values, figures_from_event, figures_of
from benchlog.motor.startup import Start, Zero, start_of_readings, starts_of, zero_of
from benchlog.records import Event, EventKind
from tests.motor.five_solvers import (
    COULOMB_NM,
    HAVE_NGSPICE,
    PEAK,
    STEADY_A,
    TABLE,
    VOLTS,
    WINDOW_S,
    Exact,
    ngspice_start,
    read_back,
)
from tests.motor.test_startup import SUPPLY, trace_of

ZERO = Zero(amps=0.0, sigma_amps=1e-6, u_amps=1e-6)
CASES = [Exact(case="A"), Exact(case="C")]


def figures(start: Start, zero: Zero = ZERO) -> StartFigures:
    return figures_of(start, lead_ohm=0.0, zero=zero)


def holds(fit: Fitted, true: float) -> bool:
    return fit.low <= true <= fit.high


@pytest.mark.parametrize("exact", CASES)
def test_the_closed_form_that_the_figures_are_held_against_is_the_table_of_five_solvers(exact: Exact) -> None:
    at_s = np.array(list(TABLE[exact.case]))
    assert exact.amps(at_s) == pytest.approx(list(TABLE[exact.case].values()), rel=1e-6)
    peak_a, peak_s = PEAK[exact.case]
    assert float(exact.amps(np.array([peak_s]))[0]) == pytest.approx(peak_a, rel=1e-6)
    fine = np.linspace(-0.01, 1.0, 200_001)
    assert float(exact.charge(np.array([1.0]))[0]) == pytest.approx(
        float(np.trapezoid(exact.amps(fine), fine)), rel=1e-6
    )


@pytest.mark.parametrize("exact", CASES)
@pytest.mark.parametrize("per_s", [20.0, 50.0, 100.0])
@pytest.mark.parametrize("phase", [0.0, 0.4, 0.8])
def test_each_interval_holds_what_the_true_curve_has(exact: Exact, per_s: float, phase: float) -> None:
    start = read_back(exact, per_s=per_s, phase_s=phase / per_s)
    told = figures(start).values
    lasted_s = float(start.t_s[-1])
    assert holds(told["peak_amps"], float(np.max(exact.averaged(start.all_t_s))))
    assert told["peak_amps"].high < PEAK[exact.case][0], "a readback is never the inrush"
    assert holds(told["run_up_s"], exact.run_up_s())
    assert told["run_up_s"].value == pytest.approx(exact.run_up_s(), abs=0.012)
    assert told["steady_amps"].value == pytest.approx(STEADY_A[exact.case], rel=1e-3)
    assert holds(told["steady_amps"], STEADY_A[exact.case])
    assert holds(told["energy_j"], VOLTS * float(exact.charge(np.array([lasted_s]))[0]))
    assert told["ripple_amps"].value < 1e-4
    assert figures(start).why == {}


def test_at_ten_readings_a_second_the_peak_is_far_off_and_the_rest_is_right_or_not_told() -> None:
    for phase in range(10):
        start = read_back(CASES[0], per_s=10.0, phase_s=phase / 100)
        told = figures(start)
        assert told.values["peak_amps"].value < 0.85 * PEAK["A"][0]
        assert holds(told.values["steady_amps"], STEADY_A["A"])
        if "run_up_s" in told.values:
            assert holds(told.values["run_up_s"], CASES[0].run_up_s())
            assert holds(told.values["energy_j"], VOLTS * float(CASES[0].charge(start.t_s[-1:])[0]))
        else:
            assert "between two readings" in told.why["run_up_s"]
            assert "was not seen" in told.why["energy_j"]
    assert told.interval_s == pytest.approx(0.1)


def test_without_readings_in_the_fall_neither_run_up_nor_energy_is_told() -> None:
    told = figures(read_back(CASES[0], per_s=4.0, lasts_s=3.0))
    assert set(told.why) == {"run_up_s", "energy_j"}
    assert holds(told.values["steady_amps"], STEADY_A["A"])


def test_the_leads_are_taken_out_of_the_energy() -> None:
    start, lead_ohm = read_back(CASES[0], per_s=100.0), 0.5
    fine = np.linspace(0.0, float(start.t_s[-1]), 200_001)
    amps = CASES[0].amps(fine)
    told = figures_of(start, lead_ohm=lead_ohm, zero=ZERO).values["energy_j"]
    assert holds(told, float(np.trapezoid((VOLTS - lead_ohm * amps) * amps, fine)))
    assert told.high < VOLTS * float(CASES[0].charge(fine[-1:])[0])


def test_the_pace_of_readings_moves_the_peak_far_and_the_run_up_little() -> None:
    by_phase = [figures(read_back(CASES[0], per_s=30.0, phase_s=phase / 300)).values for phase in range(10)]
    peaks, run_ups = ([one[name].value for one in by_phase] for name in ("peak_amps", "run_up_s"))
    assert np.ptp(peaks) > 0.15 * max(peaks)
    assert np.ptp(run_ups) < 0.03 * max(run_ups)


def test_jitter_is_what_the_readings_had() -> None:
    start = read_back(CASES[0], per_s=50.0)
    apart = np.random.default_rng(1).uniform(-0.004, 0.004, len(start.all_t_s))
    told = figures(replace(start, all_t_s=start.all_t_s + apart))
    assert told.interval_s == pytest.approx(0.02, rel=0.01)
    assert told.jitter_s == pytest.approx(float(np.std(np.diff(apart), ddof=1)), rel=1e-9)


def test_intervals_hold_the_truth_as_often_as_they_say_with_noise_rounding_and_a_zero_that_is_off() -> None:
    exact, source, sigma, step = CASES[1], np.random.default_rng(3), 0.002, 0.001
    zero = Zero(amps=0.0, sigma_amps=math.hypot(sigma, step / math.sqrt(12)), u_amps=0.001, step_amps=step)
    held: dict[str, list[bool]] = {name: [] for name in ("peak_amps", "run_up_s", "steady_amps", "ripple_amps")}
    for _ in range(300):
        noise = source.normal(0, sigma, 200) + source.normal(0, zero.u_amps / 1.96)
        start = read_back(exact, per_s=50.0, phase_s=source.uniform(0, 0.02), noise=noise, step_a=step)
        told = figures(start, zero).values
        true = {
            "peak_amps": float(np.max(exact.averaged(start.all_t_s))),
            "run_up_s": exact.run_up_s(),
            "steady_amps": STEADY_A["C"],
            "ripple_amps": zero.sigma_amps,
        }
        for name, which in held.items():
            which.append(holds(told[name], true[name]))
    for name, which in held.items():
        assert np.mean(which) >= 0.92, name
    assert np.mean(held["ripple_amps"]) <= 0.99
    assert np.mean(held["peak_amps"]) <= 0.99


def test_a_flat_top_is_not_told_higher_for_being_read_often() -> None:
    # the largest of 70 readbacks of one level lies 2.4 standard deviations above it: its interval reaches down to it
    source, start = np.random.default_rng(2), read_back(CASES[0], per_s=50.0)
    zero = Zero(amps=0.0, sigma_amps=0.002, u_amps=0.0)
    held = []
    for _ in range(200):
        flat = replace(start, amps=start.amps * 0 + 1.0, all_amps=1.0 + source.normal(0, 0.002, len(start.all_t_s)))
        held.append(holds(figures_of(flat, lead_ohm=0.0, zero=zero, gain_share=0.0).values["peak_amps"], 1.0))
    assert np.mean(held) >= 0.95


def test_a_current_that_only_rises_has_no_run_up() -> None:
    # Control tutorials of a university, DC motor speed (published): J .01, b .1, K .01, R 1, L .5, 1 V. Its winding is
    # slower than its rotor, so the current climbs to bV/(K² + Rb) without a surge.
    start = read_back(CASES[0], per_s=50.0, lasts_s=6.0)
    amps = start_current(start.t_s, 1.0, ohms=1.0, henries=0.5, k=0.01, inertia=0.01, viscous=0.1)
    told = figures(
        replace(
            start,
            amps=amps,
            all_amps=start_current(
                np.maximum(start.all_t_s, 0), 1.0, ohms=1.0, henries=0.5, k=0.01, inertia=0.01, viscous=0.1
            ),
        )
    )
    assert told.values["steady_amps"].value == pytest.approx(0.1 / (0.01**2 + 0.1), rel=1e-3)
    assert "run_up_s" not in told.values
    assert told.why["run_up_s"]


def test_a_servo_motor_s_run_up_is_over_before_any_polled_reading_and_is_not_told() -> None:
    # Data sheet of a brushed servo motor for 48 V (published): R .365, L .161 mH, Kt .123, J 1340 g cm²; 131 A; 3.25 ms
    start = read_back(CASES[0], per_s=100.0)
    motor = {"ohms": 0.365, "henries": 0.161e-3, "k": 0.123, "inertia": 1.34e-4, "viscous": 1e-5}
    fine = np.linspace(0.0, 1.6, 160_001)
    curve = start_current(fine, 48.0, **motor)
    assert 48.0 / motor["ohms"] == pytest.approx(131.0, rel=0.005)
    assert curve.max() > 100.0
    amps = np.interp(start.t_s, fine, curve)
    told = figures(replace(start, amps=amps, all_amps=amps, all_t_s=start.t_s))
    assert "run_up_s" not in told.values
    assert told.values["peak_amps"].high < 0.1 * 131.0


def test_figures_of_a_filed_start_are_those_its_readings_were_made_of() -> None:
    trace = trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (3, 9, "start")])
    told = figures_of(starts_of(trace, [SUPPLY])[0], lead_ohm=0.0, zero=zero_of(trace)).values
    assert told["steady_amps"].value == pytest.approx(0.2, abs=1e-6)
    assert told["peak_amps"].value == pytest.approx(1.5, abs=1e-6)
    assert told["run_up_s"].value == pytest.approx(0.1 * math.log(10), abs=0.012)
    assert told["energy_j"].value == pytest.approx(9 * (0.2 * 2.97 + 1.3 * 0.1), rel=0.05)
    assert "ripple_amps" not in told  # what is left of the fall is no scatter


def test_a_current_that_still_changes_has_no_steady_value() -> None:
    told = figures(starts_of(trace_of([(0.4, 0, "rest"), (1.0, 9, "start")], tau=1.0), [SUPPLY])[0])
    assert set(told.why) == {"steady_amps", "run_up_s", "ripple_amps"}
    assert "still changing" in told.why["steady_amps"]


def test_a_surge_within_the_ripple_has_no_run_up() -> None:
    made = starts_of(trace_of([(0.4, 0, "rest"), (3.0, 9, "start")], tau=0.012), [SUPPLY])[0]
    source = np.random.default_rng(1)
    for _ in range(20):
        noisy = made.amps + source.normal(0, 0.02, len(made.amps))
        assert "run_up_s" in figures(replace(made, amps=noisy, all_amps=np.append(noisy, 0.4))).why


def test_a_start_of_too_few_readings_has_no_figures_but_its_pace() -> None:
    told = figures(read_back(CASES[0], per_s=20.0, lasts_s=0.16))
    assert told.values == {}
    assert set(told.why) == {kind.name for kind in FIGURES}
    assert told.readings == 4
    assert told.interval_s == pytest.approx(0.05)


@settings(max_examples=80)
@given(
    st.lists(st.sampled_from([0.0, 0.001, 0.002, 0.2, 1.0, 20.0, -0.5]) | st.floats(-50, 50), max_size=40),
    st.sampled_from([0.0, 1e-3]),
)
def test_whatever_was_read_each_figure_is_a_number_within_its_interval_or_has_a_reason(
    amps: list[float], sigma: float
) -> None:
    at_s = [0.02 * n for n in range(len(amps))]
    start = start_of_readings(
        at_s,
        [one + 0.008 for one in at_s],
        [9.0] * len(amps),
        amps,
        set_volts=9.0,
        began_s=0.0,
        window_s=0.02,
        settle_s=0.012,
        name="start 1",
    )
    told = figures_of(start, lead_ohm=0.1, zero=Zero(amps=0.0, sigma_amps=sigma, u_amps=sigma))
    assert set(told.values) | set(told.why) == {kind.name for kind in FIGURES}
    assert not set(told.values) & set(told.why)
    for fit in told.values.values():
        assert math.isfinite(fit.low)
        assert math.isfinite(fit.high)
        assert fit.low <= fit.value <= fit.high


numbers = st.floats(allow_nan=False, allow_infinity=False, width=64)
found = st.one_of(
    st.builds(lambda value, low, high: Fitted(value=value, low=low, high=high), numbers, numbers, numbers),
    st.text(min_size=1),
)


@settings(max_examples=40)
@given(st.fixed_dictionaries({kind.name: found for kind in FIGURES}), numbers, numbers, st.integers(0, 2**31))
def test_figures_survive_their_event(
    each: dict[str, Fitted | str], interval_s: float, jitter_s: float, readings: int
) -> None:
    figures = StartFigures(
        values={name: one for name, one in each.items() if isinstance(one, Fitted)},
        why={name: one for name, one in each.items() if isinstance(one, str)},
        interval_s=interval_s,
        jitter_s=jitter_s,
        readings=readings,
    )
    event = Event(t_s=1.0, kind=EventKind.START, text="Start 1 of 1.", values=event_values(figures))
    assert figures_from_event(event) == figures


def test_an_event_without_figures_gives_none() -> None:
    told = figures_from_event(Event(t_s=1.0, kind=EventKind.START, text="x", values={"number": 1, "peak_amps": "much"}))
    assert told == StartFigures(values={}, why={}, interval_s=0.0, jitter_s=0.0, readings=0)


@pytest.mark.skipif(not HAVE_NGSPICE, reason="ngspice is not installed")
@pytest.mark.parametrize("exact", CASES)
def test_figures_of_a_start_that_ngspice_computed(exact: Exact) -> None:
    t_s, amps, speed = ngspice_start(COULOMB_NM[exact.case])
    assert amps.max() == pytest.approx(PEAK[exact.case][0], abs=1e-4)
    assert float(np.interp(0.2, t_s, speed)) == pytest.approx({"A": 292.415768, "C": 282.667855}[exact.case], abs=0.05)
    charge = np.concatenate([[0.0], np.cumsum(np.diff(t_s) * 0.5 * (amps[1:] + amps[:-1]))])
    start = read_back(exact, per_s=50.0, phase_s=0.013, lasts_s=0.75)
    half = 0.5 * WINDOW_S
    ends, begins = (np.interp(start.all_t_s + by_s, t_s, charge) for by_s in (half, -half))
    read = (ends - begins) / WINDOW_S
    whole = len(start.all_t_s) - len(start.t_s)
    told = figures(replace(start, amps=read[whole:], all_amps=read)).values
    assert holds(told["run_up_s"], exact.run_up_s())
    assert told["peak_amps"].value == pytest.approx(float(np.max(exact.averaged(start.all_t_s))), rel=1e-4)
    assert told["steady_amps"].value == pytest.approx(STEADY_A[exact.case], abs=1e-4)
    assert holds(told["energy_j"], VOLTS * float(np.interp(start.t_s[-1], t_s, charge)))
