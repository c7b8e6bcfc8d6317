"""The estimate of the winding's temperature: published values, a second solver, and what it must not claim."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import expm

from benchlog.motor.meter import Meter
from benchlog.motor.temperature import ALUMINIUM_K, COPPER_K, Estimate, Thermometer, TwoBody, assumed, of_trace, warm_c
from benchlog.records import FLAG_ON, TICK_S, Trace

METER = Meter(
    zero_volts=0.0, zero_amps=0.0, sigma_volts=0.001, sigma_amps=0.001, step_volts=0.001, step_amps=0.001, count=8
)
COLD_OHM, VOLTS = 8.0, 12.0


@pytest.mark.parametrize(
    ("cold_ohm", "cold_c", "ohm", "k", "warm"),
    [
        (0.2, 20.0, 0.21, 235.0, 32.75),  # published: a resistance meter's manual, "according to IEC 60034"
        (80.0, 20.0, 100.0, 234.5, 83.625),  # published: a worked example
        (80.0, 20.0, 100.0, 235.0, 83.75),  # computed, as are the following
        (80.0, 20.0, 100.0, 225.0, 81.25),
        (80.0, 20.0, 100.0, 228.0, 82.0),
        (5.0, 22.0, 6.35, 235.0, 91.39),
    ],
)
def test_temperature_from_resistance_agrees_with_published_values(
    cold_ohm: float, cold_c: float, ohm: float, k: float, warm: float
) -> None:
    assert warm_c(ohm, cold_ohm=cold_ohm, cold_c=cold_c, k=k) == pytest.approx(warm, abs=0.005)


def test_k_is_the_one_of_the_standard_and_fits_the_coefficient_of_copper() -> None:
    # Source: IEC 60034-1 (235 copper, 225 aluminium). 1/α - 20 with 3930 ppm/K is 234.45 (published).
    assert (COPPER_K, ALUMINIUM_K) == (235.0, 225.0)
    assert pytest.approx(1 / 0.00393 - 20, abs=0.6) == COPPER_K


@pytest.mark.parametrize(("at_c", "ratio"), [(0, 0.921415), (25, 1.019646), (75, 1.216110), (130, 1.432220)])
def test_the_ratio_of_copper_at_two_temperatures_gives_the_temperature_back(at_c: float, ratio: float) -> None:
    # Source: computed with 234.5.
    assert warm_c(ratio, cold_ohm=1.0, cold_c=20.0, k=234.5) == pytest.approx(at_c, abs=1e-3)


@settings(max_examples=80, deadline=None)
@given(
    winding=st.floats(0.1, 20.0),
    times=st.floats(1.0, 200.0),
    inner=st.floats(1.0, 60.0),
    outer=st.floats(1.0, 400.0),
    watts=st.floats(0.0, 100.0),
    span_s=st.floats(0.001, 2000.0),
    begin=st.tuples(st.floats(0.0, 150.0), st.floats(0.0, 80.0)),
)
def test_one_step_of_two_bodies_is_the_matrix_exponential(
    winding: float, times: float, inner: float, outer: float, watts: float, span_s: float, begin: tuple[float, float]
) -> None:
    # A second solver: scipy's matrix exponential of the same network.
    housing = winding * times
    flow = np.array(
        [
            [-1 / (inner * winding), 1 / (inner * winding), watts / winding],
            [1 / (inner * housing), -(1 / inner + 1 / outer) / housing, 0.0],
            [0.0, 0.0, 0.0],
        ]
    )
    exact = expm(flow * span_s) @ np.array([*begin, 1.0])
    bodies = TwoBody(winding_j_k=winding, housing_j_k=housing, winding_k_w=inner, housing_k_w=outer)
    assert bodies.step(*begin, watts, span_s) == pytest.approx(tuple(exact[:2]), rel=1e-6, abs=1e-6)


def locked(
    thermometer: Thermometer, at_c: list[float], *, contact: float = 0.0, begin_s: float = 0.0, still: bool = True
) -> list[Estimate]:
    """Readings every 50 ms of a held winding that has these temperatures."""
    found = []
    for k, warm in enumerate(at_c):
        ohm = COLD_OHM * (235.0 + warm) / 255.0 + contact
        found.append(thermometer.feed(begin_s + 0.05 * (k + 1), VOLTS, VOLTS / ohm, driven=True, still=still or k > 0))
    return found


def thermometer(**changes: float) -> Thermometer:
    asked = {"ambient_c": 20.0, "stall_watts": VOLTS**2 / COLD_OHM, "reference_ohm": COLD_OHM}
    return Thermometer(meter=METER, **(asked | changes))


def test_an_unmoved_winding_tells_its_temperature_by_its_resistance() -> None:
    warming = [20.0 + 0.4 * k for k in range(80)]
    found = locked(thermometer(), warming)
    assert found[-1].basis == "from resistance, shaft unmoved since 0.1 s"
    assert found[-1].identifiable
    assert found[-1].winding_c == pytest.approx(warming[-1], abs=2.0)
    assert all(one.low_c - 0.5 <= warm <= one.high_c for one, warm in zip(found, warming, strict=True))


def test_leads_are_taken_out_of_the_resistance() -> None:
    warming = [20.0 + 0.4 * k for k in range(80)]
    found = locked(thermometer(lead_ohm=1.0), warming, contact=1.0)
    assert found[-1].winding_c == pytest.approx(warming[-1], abs=2.5)


def test_after_a_movement_the_level_of_the_resistance_lowers_nothing() -> None:
    # The contact becomes better by a third while it moves: by level the winding would be 80 K colder.
    one = thermometer()
    before = locked(one, [20.0 + 0.5 * k for k in range(120)])[-1]
    after = locked(one, [80.0] * 4, contact=-2.5, begin_s=6.0, still=False)[-1]
    assert after.low_c > 60.0
    assert after.high_c >= before.high_c - 1.0


def test_a_contact_that_changes_by_more_than_heat_explains_is_no_temperature() -> None:
    one = thermometer()
    locked(one, [20.0] * 10)
    found = locked(one, [20.0] * 3, contact=6.0, begin_s=0.5)
    assert all(estimate.winding_c < 60.0 for estimate in found)
    assert not found[1].basis.startswith("from resistance")


def test_a_kick_that_may_have_moved_the_shaft_leaves_the_temperature_open_and_says_so() -> None:
    one = thermometer()
    found = [one.feed(0.05 * k, VOLTS, 1.0, driven=True, still=False) for k in range(1, 40)][-1]
    assert not found.identifiable
    assert found.basis.startswith("not identifiable: the shaft may have moved")
    assert found.low_c == 20.0 < found.high_c


def test_at_rest_the_interval_opens_downwards_only() -> None:
    one = thermometer()
    last = locked(one, [20.0 + 0.4 * k for k in range(80)])[-1]
    one.feed(4.05, 0.0, 0.0, driven=False, still=True)
    first, later = (one.feed(t_s, 0.0, 0.0, driven=False, still=True) for t_s in (4.1, 60.0))
    assert later.high_c <= first.high_c
    assert 20.0 <= later.low_c < last.low_c


def test_what_was_driven_may_have_been_until_the_reading_that_shows_it_off() -> None:
    one = thermometer()
    before = [one.feed(0.2 * k, VOLTS, 1.5, driven=True, still=False) for k in range(3)][-1]
    after = one.feed(0.6, 0.0, 0.0, driven=False, still=False)
    least_j_k = 0.3  # 18 W at stall and 60 K/s
    assert after.high_c >= before.high_c + 0.9 * 18.0 * 0.2 / least_j_k
    assert one.feed(0.8, 0.0, 0.0, driven=False, still=False).high_c <= after.high_c


def test_a_winding_that_may_be_warm_from_before_is_not_called_cold() -> None:
    found = thermometer(warmest_c=90.0).feed(0.0, 0.0, 0.0, driven=False, still=True)
    assert (found.low_c, found.high_c) == (20.0, 90.0)
    assert found.basis.startswith("not identifiable: nothing steady was read yet")


def test_a_resistance_below_the_leads_is_none() -> None:
    found = locked(thermometer(lead_ohm=20.0), [20.0] * 5)
    assert not any(one.basis.startswith("from resistance") for one in found)


def test_the_assumed_winding_stays_within_what_is_reckoned_with() -> None:
    assert [assumed(watts).winding_j_k for watts in (None, 0.1, 18.0, 1e4)] == [0.2, 0.2, 1.8, 10.0]


def test_a_filed_trace_says_what_its_readings_said_one_by_one() -> None:
    warm = [20.0 + 0.4 * k for k in range(60)]
    amps = np.array([VOLTS / (COLD_OHM * (235.0 + one) / 255.0) for one in warm])
    ticks = np.round(0.05 * np.arange(1, 61) / TICK_S).astype(np.int64)
    full = np.full(60, VOLTS)
    trace = Trace(
        sent=ticks, received=ticks, volts=full, amps=amps, set_volts=full, set_amps=np.full(60, 3.0),
        flags=np.full(60, FLAG_ON, dtype=np.uint8),
    )  # fmt: skip
    whole, single = of_trace(trace, np.full(60, True), thermometer()), locked(thermometer(), warm)
    assert [one.winding_c for one in whole] == pytest.approx([one.winding_c for one in single], abs=1e-6)
    assert [one.basis for one in whole] == [one.basis for one in single]
