"""Limits from known good units: from how many, about what, and what they say where there are none."""

import math
from statistics import fmean, stdev

import msgspec
import numpy as np
import pytest

from benchlog.errors import Refused
from benchlog.motor.limits import StartLimits, band_of, limits_from
from benchlog.motor.start_figures import FIGURES
from benchlog.motor.tolerance import two_sided_factor
from tests.motor import known_good as kg


@pytest.mark.parametrize("count", [0, 1, 3, 4])
def test_fewer_than_five_units_are_refused_with_their_number(count: int) -> None:
    with pytest.raises(Refused, match=f"5 known good units or more are needed; there are {count}"):
        limits_from(kg.units(count), kg.curves(count), test="cold start", version=4, runs=())


def test_many_starts_of_few_units_are_still_few_units() -> None:
    with pytest.raises(Refused, match="there are 4"):
        limits_from(kg.units(4, 10), [], test="cold start", version=4, runs=())


def test_a_unit_without_a_start_is_refused() -> None:
    with pytest.raises(Refused, match="has no start"):
        limits_from([*kg.units(5), []], [], test="cold start", version=4, runs=())


def test_a_unit_counts_once_with_the_mean_of_its_starts() -> None:
    units = kg.units(8, 3)
    band = limits_from(units, [], test="cold start", version=4, runs=(1, 2)).bands["run_up_s"]
    means = [fmean(start.values["run_up_s"].value for start in unit) for unit in units]
    assert (band.n, band.factor) == (8, two_sided_factor(8, 0.95, 0.95))
    assert band.mean == pytest.approx(fmean(means))
    assert band.spread == pytest.approx(stdev(means))
    assert band.low == pytest.approx(band.mean - band.factor * band.spread)
    logs = [math.log(mean) for mean in means]
    assert band.high == pytest.approx(math.exp(fmean(logs) + band.factor * stdev(logs)))


def test_limits_say_what_they_are_of() -> None:
    limits = kg.limits()
    assert (limits.test, limits.version, limits.n, limits.starts_each, limits.runs) == (
        "cold start",
        4,
        8,
        3,
        (1, 2, 3),
    )
    assert (limits.coverage, limits.confidence, limits.interval_s) == (0.95, 0.95, kg.INTERVAL_S)
    assert set(limits.bands) == {kind.name for kind in FIGURES}
    assert limits.why == {}
    assert limits.warning == ""


def test_limits_come_back_from_json_as_they_were() -> None:
    limits = kg.limits()
    assert msgspec.json.decode(msgspec.json.encode(limits), type=StartLimits) == limits


def test_a_figure_that_one_unit_does_not_tell_has_no_band_and_says_why() -> None:
    units = kg.units(6)
    units[2] = kg.without(units[2], "run_up_s")
    limits = limits_from(units, [], test="cold start", version=4, runs=())
    assert "run_up_s" not in limits.bands
    assert limits.why["run_up_s"] == "can't be told in 1 of 6 units: lost in the ripple"
    assert "steady_amps" in limits.bands


def test_a_figure_that_most_starts_of_a_unit_tell_is_told() -> None:
    units = kg.units(6, 3)
    units[2][0] = kg.without(units[2][:1], "run_up_s")[0]
    assert limits_from(units, [], test="cold start", version=4, runs=()).bands["run_up_s"].n == 6


def test_a_lower_limit_below_zero_is_left_open_and_said_to_be() -> None:
    values = [0.002, 0.006, 0.001, 0.009, 0.004]
    band, why = band_of(values, coverage=0.95, confidence=0.95)
    assert band is not None
    assert fmean(values) - band.factor * stdev(values) < 0
    assert band.low is None
    assert band.high is not None
    assert why == "no lower limit: it would be below zero"


def test_units_that_read_the_same_because_of_coarse_steps_have_no_band() -> None:
    band, why = band_of([0.25, 0.25, 0.26, 0.25, 0.26], coverage=0.95, confidence=0.95)
    assert band is None
    assert "only 2 different values" in why


def test_a_zero_among_the_values_leaves_the_upper_limit_of_a_normal_figure() -> None:
    values = [0.0, 0.01, 0.02, 0.015, 0.005]
    band, _ = band_of(values, coverage=0.95, confidence=0.95)
    assert band is not None
    assert band.high == pytest.approx(fmean(values) + band.factor * stdev(values))


@pytest.mark.parametrize("askew", [False, True])
def test_bands_hold_what_they_claim_of_even_and_of_askew_figures(askew: bool) -> None:
    """Computed: 400 lots of 8 units; the share of the whole population inside, by its distribution function."""
    from scipy.stats import norm

    source, held, lots = np.random.default_rng(23), 0, 400
    for _ in range(lots):
        z = source.standard_normal(8)
        band, _ = band_of((np.exp(0.2 * z) if askew else 1 + 0.1 * z).tolist(), coverage=0.95, confidence=0.95)
        assert band is not None
        assert band.high is not None
        edges = np.array([band.low or 1e-12, band.high])
        low, high = np.log(edges) / 0.2 if askew else (edges - 1) / 0.1
        held += norm.cdf(high) - norm.cdf(low) >= 0.95
    assert held / lots >= 0.95 - 3 * math.sqrt(0.95 * 0.05 / lots)


def test_limits_warn_where_one_motor_spreads_as_far_as_the_units() -> None:
    source = np.random.default_rng(2)
    units = [
        [kg.told(kg.fan(run_up_s=1 + 0.08 * source.standard_normal(), steady_amps=1 + 0.1 * off)) for _ in range(10)]
        for off in kg.OF_A_UNIT
    ]
    limits = limits_from(units, [], test="cold start", version=4, runs=())
    assert "One motor spreads as far as the units do in run-up: the test can't tell them apart there." in limits.warning
    assert "steady current" not in limits.warning
    assert limits.within["run_up_s"] > limits.between["run_up_s"]


def test_units_started_once_say_that_their_repeatability_is_not_known() -> None:
    limits = kg.limits(starts=1, curved=False)
    assert limits.warning.startswith("Units were started once")
    assert limits.within == limits.between == {}


def test_wide_limits_and_unlike_paces_are_said() -> None:
    units = [
        [kg.told(kg.fan(ripple_amps=1 + 10 * off), interval_s=pace)] * 2
        for off, pace in zip(kg.OF_A_UNIT, (0.05,) + 11 * (0.02,), strict=True)
    ]
    warning = limits_from(units, [], test="cold start", version=4, runs=()).warning
    assert "The limits are wide for ripple: more known good units would narrow them." in warning
    assert "read every 0.02 s to 0.05 s" in warning
    assert "steady current" not in warning
