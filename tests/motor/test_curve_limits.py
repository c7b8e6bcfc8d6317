"""The band over a whole curve: where it begins, what it holds, and when there is none."""

from dataclasses import replace

import numpy as np
import pytest

from benchlog.motor.curve_limits import curve_band, mean_on
from benchlog.motor.overlay import Curve
from tests.benchmarks.band_population import WINDOW_S, Type, draw_starts
from tests.motor import known_good as kg

FAN = Type(
    volts=3.0,
    ohms=2.0,
    k=0.01,
    inertia=5e-6,
    coulomb_nm=1e-3,
    viscous=2e-6,
    spread_ohms=0.03,
    spread_k=0.02,
    spread_inertia=0.03,
    spread_friction=0.08,
    again_ohms=0.003,
    again_friction=0.01,
    ripple=0.015,
    noise_a=0.001,
    step_a=0.001,
    interval_s=0.05,
    jitter_s=0.001,
)


def drawn(count: int, source: np.random.Generator) -> list[list[Curve]]:
    starts = draw_starts(FAN, count, 2, source)
    return [
        [
            Curve(name="start", run=1, number=1, t_s=at_s, volts=np.full_like(at_s, 3.0), amps=read, window_s=WINDOW_S)
            for at_s, read in zip(t_s, amps, strict=True)
        ]
        for t_s, amps in zip(starts.t_s, starts.amps, strict=True)
    ]


def test_whole_curves_stay_inside_as_often_as_claimed() -> None:
    """Computed: 60 lots of 6 fans by the closed form, against 150 more; three standard errors allowed."""
    source = np.random.default_rng(4)
    others, held, lots = drawn(150, source), 0, 60
    for _ in range(lots):
        band, _ = curve_band(drawn(6, source), coverage=0.95, confidence=0.95, starts_each=2)
        assert band is not None
        t_s, low, high = np.array(band.t_s), np.array(band.low_amps), np.array(band.high_amps)
        amps = np.array([mean_on(unit, t_s) for unit in others])
        held += bool(np.mean(np.all((amps >= low) & (amps <= high), axis=1)) >= 0.95)
    assert held / lots >= 0.95 - 3 * np.sqrt(0.95 * 0.05 / lots)


def test_the_band_begins_where_every_start_has_a_reading_of_its_own() -> None:
    band, why = curve_band(kg.curves(), coverage=0.95, confidence=0.95, starts_each=3)
    assert why == ""
    assert band is not None
    assert kg.WINDOW_S <= band.t_s[0] <= kg.WINDOW_S + kg.INTERVAL_S
    assert band.t_s[-1] <= 1.5
    assert len(band.t_s) == len(band.low_amps) == len(band.high_amps) == len(band.mean_amps)
    assert np.all(np.array(band.low_amps) < np.array(band.mean_amps))
    assert np.all(np.array(band.mean_amps) < np.array(band.high_amps))


def test_the_claim_is_of_whole_curves_and_says_of_what_mean_and_which_time() -> None:
    band, _ = curve_band(kg.curves(), coverage=0.95, confidence=0.9, starts_each=3)
    assert band is not None
    assert band.claim.startswith("95 % of such motors or more stay inside over the whole curve, 90 % sure: readback, ")
    assert "the mean of 3 starts, from 0.0" in band.claim
    assert band.n == 8


def test_a_band_that_would_reach_below_zero_is_open_there_and_says_so() -> None:
    far = [[kg.curve(friction=0.2 + 0.3 * k)] for k in range(5)]
    band, _ = curve_band(far, coverage=0.95, confidence=0.95, starts_each=1)
    assert band is not None
    assert min(band.low_amps) == 0
    assert band.claim.endswith("Where it would be below zero there is no lower limit.")


def test_currents_that_read_as_nothing_have_no_band() -> None:
    band, why = curve_band([[kg.curve(zero=0.4)]] * 5, coverage=0.95, confidence=0.95, starts_each=1)
    assert band is None
    assert "reads zero" in why


def test_units_without_curves_and_curves_of_few_readings_have_no_band() -> None:
    assert curve_band([], coverage=0.95, confidence=0.95, starts_each=1)[1] == "not every unit has its curves"
    assert curve_band([*kg.curves(5), []], coverage=0.95, confidence=0.95, starts_each=1)[0] is None
    one = kg.curve()
    short = replace(one, t_s=one.t_s[:6], volts=one.volts[:6], amps=one.amps[:6])
    band, why = curve_band([[short]] * 5, coverage=0.95, confidence=0.95, starts_each=1)
    assert band is None
    assert "too few readings" in why


def test_a_dense_curve_makes_no_more_points_than_a_picture_needs() -> None:
    t_s = np.linspace(0.0, 1.0, 5000)
    dense = [
        [Curve(name="x", run=1, number=1, t_s=t_s, volts=t_s, amps=1 + 0.1 * k + 0 * t_s, window_s=1e-3, dense=True)]
        for k in range(5)
    ]
    band, _ = curve_band(dense, coverage=0.95, confidence=0.95, starts_each=1)
    assert band is not None
    assert len(band.t_s) == 200


def test_a_unit_is_the_mean_of_its_starts_on_straight_lines_between_readings() -> None:
    first, second = kg.curve(1.0), kg.curve(2.0, phase_s=0.01)
    at_s = np.array([0.5, 0.503])
    expected = 0.5 * (np.interp(at_s, first.t_s, first.amps) + np.interp(at_s, second.t_s, second.amps))
    assert mean_on([first, second], at_s) == pytest.approx(expected)
