"""The heat bound: never below the truth of any motor within the stated limits; checked against published heating."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import expm

from benchlog.motor.heat import HeatBound, least_heat_capacity, winding_watts


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
