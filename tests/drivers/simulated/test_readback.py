"""The supply's own meter: true averages over its window, then its errors."""

import random
import statistics

import msgspec
import pytest

from drivers.simulated.readback import Integrals, Meter, nearest_step
from drivers.simulated.supply_model import SupplyData

WINDOW_S = 0.02


def ramp(step_s: float, until_s: float) -> Integrals:
    """Volts = 100 t, amps = 2 - 10 t."""
    integrals = Integrals(WINDOW_S, step_s, 0.0)
    for index in range(1, round(until_s / step_s) + 1):
        middle_s = (index - 0.5) * step_s
        integrals.add(index * step_s, 100.0 * middle_s, 2.0 - 10.0 * middle_s, step_s)
    return integrals


@pytest.mark.parametrize("step_s", [1e-4, 3e-4, 7e-4, 1e-3])
def test_a_ramp_reads_as_it_was_half_a_window_ago(step_s: float) -> None:
    # Computed: the mean of a straight line over [t - w, t] is its value at t - w/2. Steps need not divide the window.
    until_s = round(0.1 / step_s) * step_s
    volts, amps = ramp(step_s, until_s).means()
    assert volts == pytest.approx(100.0 * (until_s - WINDOW_S / 2), rel=1e-3)
    assert amps == pytest.approx(2.0 - 10.0 * (until_s - WINDOW_S / 2), rel=1e-3)


def test_a_window_that_has_not_filled_yet_averages_over_what_there_is() -> None:
    volts, _ = ramp(1e-4, 0.01).means()
    assert volts == pytest.approx(100.0 * 0.005)


def test_steps_of_mixed_length_keep_a_whole_window() -> None:
    integrals = Integrals(WINDOW_S, 1e-4, 0.0)
    at_s = 0.0
    source = random.Random(5)
    for _ in range(3000):
        step_s = source.choice([1e-3, 1e-4, 1.7e-5])
        integrals.add(at_s + step_s, 100.0 * (at_s + 0.5 * step_s), 0.0, step_s)
        at_s += step_s
    # The window's own edge may fall inside a straight piece of 1 ms.
    assert integrals.means()[0] == pytest.approx(100.0 * (at_s - WINDOW_S / 2), abs=0.01)


def test_readings_scatter_by_the_noise_around_one_offset_that_belongs_to_the_seed() -> None:
    data = SupplyData(noise_v=0.004, step_v=1e-6)
    meter = Meter(data, random.Random(11))
    shown = [meter.read(5.0, 0.0)[0] for _ in range(2000)]
    assert statistics.stdev(shown) == pytest.approx(0.004, rel=0.1)
    again = Meter(data, random.Random(11))
    assert [again.read(5.0, 0.0)[0] for _ in range(5)] == shown[:5]
    offset = statistics.fmean(shown) - 5.0
    assert abs(offset) <= data.offset_v + 5.0 * data.gain + 3 * 0.004 / 2000**0.5
    others = {round(Meter(data, random.Random(seed)).read(0.0, 0.0)[0], 4) for seed in range(8)}
    assert len(others) > 4


def test_figures_come_in_whole_steps_of_the_resolution() -> None:
    meter = Meter(SupplyData(step_v=0.01, step_a=0.002), random.Random(3))
    for _ in range(100):
        volts, amps = meter.read(3.21, 0.777)
        assert volts == pytest.approx(round(volts * 100) / 100, abs=1e-12)
        assert amps == pytest.approx(round(amps * 500) / 500, abs=1e-12)


@pytest.mark.parametrize(
    ("value", "step", "nearest"), [(6.7091, 0.001, 6.709), (-0.0004, 0.001, 0.0), (1.26, 0.05, 1.25)]
)
def test_the_nearest_step_carries_no_binary_dust(value: float, step: float, nearest: float) -> None:
    assert nearest_step(value, step) == nearest


def test_a_meter_without_errors_shows_the_truth() -> None:
    exact = msgspec.structs.replace(SupplyData(), noise_v=0.0, noise_a=0.0, offset_v=0.0, offset_a=0.0, gain=0.0)
    assert Meter(exact, random.Random(0)).read(1.234, 0.567) == (1.234, 0.567)
