"""What else may hang on the terminals."""

import random
from itertools import pairwise

import pytest

from drivers.simulated.loads import Diode, Driver, DriverData, Leads, Load, Parallel, Resistor
from drivers.simulated.supply_model import OutputStage, SupplyData

STEP_S = 1e-4
EXACT = SupplyData(noise_v=0.0, noise_a=0.0, offset_v=0.0, offset_a=0.0, gain=0.0)
FAN = DriverData(starts_at_volts=6.0, stops_at_volts=5.0, watts=0.42, hiccup_s=0.06, try_s=0.03, try_factor=1.1)


def held(load: Load, volts: float, for_s: float) -> list[float]:
    """Amps after each step at constant volts."""
    amps = []
    for _ in range(round(for_s / STEP_S)):
        load.affine(STEP_S)
        amps.append(load.commit(volts, STEP_S))
    return amps


def test_a_driver_draws_nothing_below_its_threshold() -> None:
    assert set(held(Driver(FAN), 5.9, 1.0)) == {0.0}


@pytest.mark.parametrize("volts", [6.5, 9.0, 12.0])
def test_a_running_driver_draws_its_watts_so_less_the_more_volts_it_gets(volts: float) -> None:
    assert held(Driver(FAN), volts, 0.5)[-1] == pytest.approx(0.42 / volts, rel=1e-6)


def test_a_driver_that_pulls_its_volts_down_hiccups() -> None:
    output = OutputStage(EXACT, random.Random(0))
    output.change(set_v=12.0, limit_a=0.02)
    output.switch(True)
    driver = Driver(FAN)
    starts, was = 0, 0.0
    for _ in range(20000):
        output.step(driver, STEP_S)
        starts += driver.amps > 0.01 >= was
        was = driver.amps
    assert 5 <= starts <= 2.0 / FAN.hiccup_s


def test_a_diode_blocks_once_its_leads_are_swapped() -> None:
    leads = Leads(Diode())
    assert held(leads, 0.7, 0.01)[-1] > 0.05
    leads.way = -1.0
    assert held(leads, 0.7, 0.01)[-1] == pytest.approx(0.0, abs=1e-12)
    assert held(leads, -0.7, 0.01)[-1] < -0.05


def test_a_diodes_pieces_meet_so_that_its_current_never_jumps() -> None:
    currents = [held(Diode(), milli / 1000, 0.001)[-1] for milli in range(500, 1000)]
    steps = [after - before for before, after in pairwise(currents)]
    assert min(steps) >= 0.0
    assert max(steps) < 0.003


def test_loads_side_by_side_draw_the_sum() -> None:
    both = Parallel((Resistor(10.0), Resistor(40.0), Resistor(2.0, emf_volts=4.0)))
    assert both.affine(STEP_S) == pytest.approx((-2.0, 0.625))
    assert held(both, 8.0, STEP_S)[-1] == pytest.approx(0.8 + 0.2 + 2.0)
