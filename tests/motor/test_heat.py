"""The heat bound: never below the truth of any motor within the stated limits; checked against published heating."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.linalg import expm

from benchlog.motor.heat import HeatBound, body_of, least_heat_capacity, winding_watts


def least_j_k(stall_watts: float) -> float:
    """The lightest winding that the bound claims to cover, written down here a second time: 60 K/s, 0.2 to 10 J/K."""
    return min(10.0, max(0.2, stall_watts / 60.0))


@settings(max_examples=60, deadline=None)
@given(
    stall_watts=st.floats(1.0, 200.0),
    heavier=st.floats(1.0, 20.0),
    loss_k_w=st.floats(3.0, 40.0),
    housing_times=st.floats(10.0, 200.0),
    pulses=st.lists(st.tuples(st.floats(0.05, 40.0), st.floats(0.05, 1.0)), min_size=1, max_size=12),
    rest_s=st.floats(0.0, 60.0),
)
def test_no_motor_within_the_stated_limits_is_ever_hotter_than_the_bound(
    stall_watts: float,
    heavier: float,
    loss_k_w: float,
    housing_times: float,
    pulses: list[tuple[float, float]],
    rest_s: float,
) -> None:
    # A second solver: two bodies, exact by scipy's matrix exponential, with constants that the bound does not know.
    least = least_j_k(stall_watts)
    winding_j_k = least * heavier
    housing_j_k = max(housing_times * winding_j_k, 10 * least)
    bound = HeatBound(25.0, stall_watts)
    now_s, winding_k, housing_k = 0.0, 0.0, 0.0
    for gap_s, on_s in [*pulses, (rest_s, 0.0)]:
        for span_s, watts in ((gap_s, 0.0), (on_s, stall_watts)):
            flow = np.array(
                [
                    [-1 / (loss_k_w * winding_j_k), 1 / (loss_k_w * winding_j_k), watts / winding_j_k],
                    [1 / (loss_k_w * housing_j_k), -1 / (loss_k_w * housing_j_k), 0.0],
                    [0.0, 0.0, 0.0],
                ]
            )
            winding_k, housing_k, _ = expm(flow * span_s) @ np.array([winding_k, housing_k, 1.0])
            for _ in range(10):
                now_s += span_s / 10
                bound.add(now_s, watts * span_s / 10)
            assert bound.winding_c(now_s) >= 25.0 + winding_k - 1e-6


def test_adiabatic_heating_agrees_with_the_rate_of_copper_at_a_current_density() -> None:
    # dT/dt = rho J² / (c d). Source of the constants: NBS Handbook 100 (0.017241 Ω mm²/m), 385 J/(kg K), 8 890 kg/m³
    # (secondary page); computed. 60 K/s is 110 A/mm².
    def rate_k_s(amps_per_mm2: float) -> float:
        return 0.017241e-6 * (amps_per_mm2 * 1e6) ** 2 / (385 * 8890)

    assert rate_k_s(20) == pytest.approx(2.0, rel=0.01)
    assert rate_k_s(110) == pytest.approx(60.0, rel=0.02)


@pytest.mark.parametrize(
    ("metal", "from_c", "to_c", "k"),
    # k = K sqrt(ln((β+θf)/(β+θi))). Source: tables of IEC 60364-5-54 / 60364-4-43 as published; tolerance 0.5.
    [
        ("Cu", 70, 160, 115),
        ("Cu", 70, 140, 103),
        ("Cu", 90, 160, 100),
        ("Cu", 90, 140, 86),
        ("Cu", 90, 250, 143),
        ("Cu", 60, 200, 141),
        ("Cu", 85, 220, 134),
        ("Cu", 180, 350, 132),
        ("Al", 70, 160, 76),
        ("Al", 90, 250, 94),
        ("Al", 60, 200, 93),
        ("Al", 85, 220, 89),
        ("Al", 180, 350, 87),
    ],
)
def test_the_adiabatic_relation_gives_the_published_k(metal: str, from_c: float, to_c: float, k: float) -> None:
    big, beta = {"Cu": (226.0, 234.5), "Al": (148.0, 228.0)}[metal]
    assert big * math.sqrt(math.log((beta + to_c) / (beta + from_c))) == pytest.approx(k, abs=0.5)


def test_energy_between_two_looks_is_never_forgotten() -> None:
    bound = HeatBound(25.0, 18.0)
    bound.add(1.0, 3.6)
    assert bound.winding_c(1.0) >= 25.0 + 3.6 / least_heat_capacity(18.0)
    bound.add(1.01, 3.6)
    assert bound.winding_c(1.01) >= 25.0 + 2 * 3.6 / least_heat_capacity(18.0) - 0.1


def test_a_turning_motor_heats_its_winding_with_less_than_it_takes() -> None:
    assert winding_watts(12.0, 0.24, 8.0) == pytest.approx(0.24**2 * 2.2 * 8.0)
    assert winding_watts(12.0, 1.5, 8.0) == pytest.approx(18.0)
    assert winding_watts(12.0, 0.24, None) == pytest.approx(2.88)


@pytest.mark.parametrize(
    ("diameter_mm", "amps", "to_c", "takes_s"),
    # I²t = k²S². Source: diameters of AWG 36 and 40 from a published wire table; times computed, 0.1 %.
    [(0.12700, 1.0, 130.0, 2.785), (0.12700, 1.0, 155.0, 3.329), (0.07987, 0.5, 130.0, 1.743)],
)
def test_a_thin_wire_reaches_its_class_as_soon_as_the_adiabatic_relation_says(
    diameter_mm: float, amps: float, to_c: float, takes_s: float
) -> None:
    k = 226.0 * math.sqrt(math.log((234.5 + to_c) / (234.5 + 25.0)))
    area_mm2 = math.pi * diameter_mm**2 / 4
    assert (k * area_mm2 / amps) ** 2 == pytest.approx(takes_s, rel=1e-3)
    # The rate that the bound's constants rest on, resistance warming with the wire, gives the same within 3 %.
    warm_c, span_s = 25.0, takes_s / 1000
    for _ in range(1000):
        ohm_mm2_m = 0.017241 * (234.5 + warm_c) / 254.5
        warm_c += span_s * ohm_mm2_m * 1e-6 * (amps / area_mm2 * 1e6) ** 2 / (385 * 8890)
    assert warm_c - 25.0 == pytest.approx(to_c - 25.0, rel=0.03)


def test_a_readback_that_hides_the_first_milliwatts_does_not_put_the_bound_below_the_truth() -> None:
    # 0.6 V and 27 mA for 0.6 s, read as 24 mA: an offset of 3 mA, more than the housing's tenth bears
    bound = HeatBound(25.0, 0.5)
    bound.add(0.6, 0.6 * 0.024 * 0.6)
    assert bound.winding_c(0.6) > 25.0 + 0.6 * 0.027 * 0.6 / 0.2
    assert bound.winding_c_after(0.6, 0.0) > 25.0 + 0.6 * 0.027 * 0.6 / 0.2


def air_k_w(housing_j_k: float) -> float:
    """The worst way to the air that the bound claims to cover, written down a second time: 200 K/W at 1 J/K."""
    return 200.0 * math.pow(housing_j_k, -2 / 3)


def network(winding_j_k: float, housing_j_k: float, through_k_w: float, to_air_k_w: float) -> np.ndarray:
    """Winding, housing, and the W into each, as a matrix for scipy's exponential."""
    flow, out = 1 / through_k_w, 1 / to_air_k_w
    return np.array(
        [
            [-flow / winding_j_k, flow / winding_j_k, 1 / winding_j_k, 0.0],
            [flow / housing_j_k, -(flow + out) / housing_j_k, 0.0, 1 / housing_j_k],
            [0.0] * 4,
            [0.0] * 4,
        ]
    )


@settings(max_examples=20, deadline=None)
@given(
    stall_watts=st.floats(1.0, 200.0),
    heavier=st.floats(1.0, 3.0),
    through_k_w=st.floats(3.0, 40.0),
    housing_times=st.floats(1.0, 20.0),
    air_share=st.floats(0.2, 1.0),
    weighed=st.booleans(),
    in_rotor=st.floats(0.0, 1.0),
    spans=st.lists(
        st.tuples(st.sampled_from([0.3, 2.0, 30.0, 300.0, 3000.0]), st.floats(0.0, 1.0), st.floats(0.0, 0.2)),
        min_size=1,
        max_size=10,
    ),
)
def test_no_motor_that_gives_its_heat_to_the_air_is_hotter_than_the_bound_after_minutes_or_hours(
    stall_watts: float,
    heavier: float,
    through_k_w: float,
    housing_times: float,
    air_share: float,
    weighed: bool,
    in_rotor: float,
    spans: list[tuple[float, float, float]],
) -> None:
    winding_j_k = least_j_k(stall_watts) * heavier
    housing_j_k = 10 * least_j_k(stall_watts) * housing_times
    mass_g = housing_j_k / 0.35 if weighed else None
    if weighed:
        through_k_w = min(through_k_w, 0.4 * air_k_w(housing_j_k))
    to_air_k_w = air_share * air_k_w(housing_j_k)
    assume(winding_j_k * (through_k_w + to_air_k_w) + housing_j_k * to_air_k_w < (1800.0 if not weighed else 1e9))
    assume(not weighed or winding_j_k + housing_j_k < 0.9 * (mass_g or 0.0))
    matrix = network(winding_j_k, housing_j_k, through_k_w, to_air_k_w)
    bound = HeatBound(25.0, stall_watts, mass_g)
    now_s, state = 0.0, np.zeros(4)
    for span_s, share, friction in spans:
        # Long spans carry little: what a running motor takes. Short ones may be at stall.
        copper = stall_watts * (share if span_s < 10 else 0.05 * share)
        losses = stall_watts * friction * (span_s > 1)
        # Brush friction and iron losses heat the rotor, that of the bearings the housing.
        state[2], state[3] = copper + in_rotor * losses, (1 - in_rotor) * losses
        pieces = 20
        step = expm(matrix * (span_s / pieces))
        for _ in range(pieces):
            state, now_s = step @ state, now_s + span_s / pieces
            joules, rest = copper * span_s / pieces, losses * span_s / pieces
            bound.add(now_s, joules, over_s=span_s / pieces, rest_joules=rest)
            assert bound.winding_c(now_s) >= 25.0 + state[0]


def test_a_day_at_steady_power_ends_at_what_its_resistances_make_of_it_and_needs_no_more_room() -> None:
    body = body_of(18.0, 60.0)
    bound, bins = HeatBound(25.0, 18.0, 60.0), []
    for minute in range(24 * 60):
        bound.add(60.0 * (minute + 1), 60 * 0.5, over_s=60.0, rest_joules=60 * 1.0)
        bins.append(bound.bins)
    most_k = (0.5 + 1.0) * body.all_k_w
    assert 0.999 * most_k < bound.winding_c(86400.0) - 25.0 < 1.001 * most_k + 0.1
    assert max(bins) < 400
    assert max(bins[720:]) < 1.2 * max(bins[:720])
    # The worst motor of that mass, in closed form, is there as well: the bound is not wasteful either.
    assert most_k == pytest.approx(1.5 * 1.4 * air_k_w(21.0), rel=0.01)


def test_bins_of_a_day_stand_for_no_less_than_every_reading_by_itself() -> None:
    source, body = np.random.default_rng(1), body_of(6.0)
    bound, now_s = HeatBound(0.0, 6.0), 0.0
    every: list[tuple[float, float]] = []
    for k in range(4000):
        now_s += 1.0 if k % 400 else 200.0
        watts = float(0.2 * (1 + 0.2 * source.random())) if k % 60 else 3.0
        bound.add(now_s, watts, over_s=1.0)
        every.append((watts, now_s))
    area = rise = 0.0
    for watts, at_s in sorted(every, reverse=True):
        share = min(body.left_of_winding(now_s - at_s), body.all_k_w - area)
        area, rise = area + share, rise + watts * share
    assert rise <= bound.winding_c(now_s) < 1.3 * rise + 0.1


def test_within_the_first_minute_kicks_count_as_two_bodies_that_keep_their_heat() -> None:
    bound, least = HeatBound(0.0, 18.0), 0.3
    kicks = [(2.0 * k, 2.7) for k in range(12)]
    for at_s, joules in kicks:
        bound.add(at_s, joules)
    now_s = 30.0

    def left(age_s: float) -> float:
        near = math.exp(-age_s / (least * 40)) / least if age_s <= least * 40 else 40 / (math.e * age_s)
        return near + 1 / (10 * least)

    plain = sum(joules * left(now_s - at_s) for at_s, joules in kicks)
    # joined at their latest instants they may stand for a little more, never for less
    assert plain <= bound.winding_c(now_s) < 1.25 * plain + 0.2


def test_friction_warms_the_motor_and_a_weighed_one_is_known_to_bear_more() -> None:
    def after_an_hour(rest_watts: float, mass_g: float | None) -> float:
        bound = HeatBound(25.0, 6.0, mass_g)
        for minute in range(60):
            bound.add(60.0 * (minute + 1), 60 * 0.1, over_s=60.0, rest_joules=60 * rest_watts)
        return bound.winding_c(3600.0)

    assert after_an_hour(0.2, None) > after_an_hour(0.0, None) + 20.0
    assert after_an_hour(0.2, 40.0) < after_an_hour(0.2, None) - 20.0


def test_what_a_motor_keeps_after_a_run_in_is_less_with_every_quarter_of_an_hour() -> None:
    bound = HeatBound(25.0, 6.0)
    for minute in range(600):
        bound.add(60.0 * (minute + 1), 60 * 0.2, over_s=60.0)
    rises = [bound.winding_c_after(36000.0 + 900.0 * quarter, 0.0) - 25.1 for quarter in range(17)]
    assert all(later < earlier for earlier, later in pairwise(rises[1:]))
    assert rises[16] < 0.01 * rises[0]


@pytest.mark.parametrize(("watts", "copper_share", "mass_g"), [(3.2, 0.1, 100.0), (2.2, 0.12, 60.0), (2.4, 0.08, None)])
def test_hours_of_friction_at_the_brushes_and_in_the_armature_stay_below_the_bound(
    watts: float, copper_share: float, mass_g: float | None
) -> None:
    # Computed: the worst motor within the limits, four fifths of what is not copper loss in its rotor, in closed form.
    body, bound = body_of(36.0, mass_g), HeatBound(25.0, 36.0, mass_g)
    copper, rest = copper_share * watts, (1 - copper_share) * watts
    for second in range(4 * 360):
        bound.add(10.0 * (second + 1), 10 * copper, over_s=10.0, rest_joules=10 * rest)
    in_winding = copper + 0.8 * rest
    truth_k = 0.97 * (in_winding * body.through_k_w + watts * body.air_k_w)
    assert bound.winding_c(14_400.0) - 25.0 > truth_k
    assert truth_k > 1.05 * (copper * body.all_k_w + rest * body.air_k_w)


def test_seconds_at_the_full_rate_stand_for_little_more_than_each_reading_by_itself() -> None:
    bound, body = HeatBound(0.0, 18.0, 150.0), body_of(18.0, 150.0)
    for k in range(1000):
        bound.add(0.01 * (k + 1), 2.4 * 0.01, over_s=0.01)
    every = sum(2.4 * 0.01 * body.left_of_winding(10.0 - 0.01 * (k + 1)) for k in range(1000))
    assert every <= bound.winding_c(10.0) < 1.15 * every + 0.2
