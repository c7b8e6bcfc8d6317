"""The output stage: regulation, one quadrant, limits in time, latches."""

import math
import random

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.simulated.loads import Diode, Load, Parallel, Resistor
from drivers.simulated.motor import Motor, MotorData
from drivers.simulated.supply_model import CLAMP_V, MASK_S, Mode, OutputStage, SupplyData, Trip

EXACT = SupplyData(noise_v=0.0, noise_a=0.0, offset_v=0.0, offset_a=0.0, gain=0.0)
STEP_S = 1e-4
OPEN = 1e9


def stage(data: SupplyData = EXACT, *, volts: float = 0.0, amps: float = 1.0, on: bool = True) -> OutputStage:
    output = OutputStage(data, random.Random(0))
    output.change(set_v=volts, limit_a=amps)
    output.switch(on)
    return output


def let(output: OutputStage, load: Load, for_s: float, step_s: float = STEP_S) -> None:
    for _ in range(round(for_s / step_s)):
        output.step(load, step_s)


def test_volts_follow_the_setpoint_with_its_lag() -> None:
    output = stage(msgspec.structs.replace(EXACT, slew_v_per_s=1e9), volts=10.0)
    let(output, Resistor(100.0), 0.002)
    assert output.volts == pytest.approx(10.0 * (1.0 - math.exp(-1.0)), rel=1e-9)
    let(output, Resistor(100.0), 0.05)
    assert output.volts == pytest.approx(10.0, abs=1e-5)
    assert output.mode is Mode.CV


def test_slew_bounds_a_large_step() -> None:
    output = stage(msgspec.structs.replace(EXACT, slew_v_per_s=100.0, setpoint_lag_s=1e-5), volts=10.0, amps=5.0)
    let(output, Resistor(100.0), 0.05)
    assert output.volts == pytest.approx(5.0, rel=1e-6)


def test_the_limit_holds_the_current_into_a_resistor() -> None:
    output = stage(volts=10.0, amps=0.5)
    load = Resistor(4.0)
    let(output, load, 0.05)
    assert output.mode is Mode.CC
    assert load.amps == pytest.approx(0.5, rel=1e-6)
    assert output.volts == pytest.approx(2.0, rel=1e-6)


def test_at_the_limit_into_nothing_the_capacitor_charges_in_a_straight_line_to_the_setpoint() -> None:
    # C dV/dt = I: 0.1 A into 100 uF is 1 V/ms.
    data = msgspec.structs.replace(EXACT, setpoint_lag_s=1e-6, slew_v_per_s=1e9, limit_lag_s=1e-6)
    output = stage(data, volts=12.0, amps=0.1)
    let(output, Resistor(OPEN), 0.005)
    assert output.volts == pytest.approx(5.0, rel=0.01)
    let(output, Resistor(OPEN), 0.02)
    assert output.volts == pytest.approx(12.0, abs=1e-6)
    assert output.mode is Mode.CV


def test_the_preload_takes_nothing_from_the_load_at_the_limit() -> None:
    output = stage(msgspec.structs.replace(EXACT, preload_ohm=50.0), volts=10.0, amps=0.2)
    load = Resistor(20.0)
    let(output, load, 0.05)
    assert load.amps == pytest.approx(0.2, rel=1e-6)


def test_the_limit_does_not_bind_at_once() -> None:
    data = msgspec.structs.replace(EXACT, farads=30e-6, limit_lag_s=0.005)
    output = stage(data, volts=4.0, amps=1.5)
    load = Resistor(4.0)
    let(output, load, 0.2)
    assert output.mode is Mode.CV
    output.change(limit_a=0.15)
    let(output, load, 0.002)
    assert load.amps > 0.5
    let(output, load, 0.05)
    assert load.amps == pytest.approx(0.15, rel=0.01)


def test_a_load_above_the_limit_passes_it_by_the_headroom_and_for_a_moment_only() -> None:
    def most_a(headroom: float) -> tuple[float, float]:
        """The largest current on the way into the limit, and how long it was above 1.02 limits."""
        output = stage(msgspec.structs.replace(EXACT, farads=1e-6, limit_headroom=headroom), volts=0.0, amps=0.6)
        load = Resistor(5.0)
        let(output, load, 0.05)
        output.change(set_v=12.0)
        largest, above_s = 0.0, 0.0
        for _ in range(1000):
            output.step(load, STEP_S)
            largest = max(largest, load.amps)
            above_s += STEP_S if load.amps > 1.02 * 0.6 else 0.0
        return largest, above_s

    largest, above_s = most_a(0.1)
    assert 0.61 < largest <= 0.6 * 1.1 + 0.01
    assert 0.0 < above_s < 0.005
    assert most_a(0.0)[0] <= 0.6 * (1.0 + 1e-9)


def test_without_a_load_the_terminals_come_down_by_the_preload_only() -> None:
    output = stage(volts=10.0)
    let(output, Resistor(OPEN), 0.05)
    output.change(set_v=0.0)
    let(output, Resistor(OPEN), 0.1)  # one time constant of 1000 ohm and 100 uF
    assert output.mode is Mode.FLOATING
    assert output.volts == pytest.approx(10.0 * math.exp(-1.0), rel=0.03)


def test_switched_off_without_a_load_the_terminals_float_down_by_the_bleed() -> None:
    output = stage(volts=10.0)
    let(output, Resistor(OPEN), 0.05)
    output.switch(False)
    let(output, Resistor(OPEN), 0.47)
    assert output.mode is Mode.OFF
    assert output.volts == pytest.approx(10.0 * math.exp(-1.0), rel=0.01)


def test_a_coasting_motor_lifts_the_terminals_and_no_current_is_sunk() -> None:
    data = MotorData(ohms=8.0, henries=4e-3, k=0.0175, inertia=2e-5, coulomb_nm=5e-4)
    motor = Motor(data, 12.0, random.Random(0))
    output = stage(volts=12.0, amps=2.0)
    let(output, motor, 3.0)
    output.change(set_v=2.0)
    let(output, motor, 0.02)
    assert output.mode is Mode.FLOATING
    assert output.volts > 10.0
    assert output.volts == pytest.approx(data.k * motor.speed, rel=0.02)
    # Only what the preload takes flows back.
    assert motor.amps == pytest.approx(-output.volts / 1000.0, rel=0.1)


def test_a_motor_turning_the_other_way_is_clamped_by_the_diode_across_the_output() -> None:
    data = MotorData(ohms=8.0, henries=4e-3, k=0.0175, inertia=2e-5, coulomb_nm=5e-4)
    motor = Motor(data, 12.0, random.Random(0))
    motor.speed = -400.0
    output = stage(on=False)
    let(output, motor, 0.05)
    assert output.volts == pytest.approx(CLAMP_V)


def test_over_voltage_trips_at_once_even_while_over_current_is_masked() -> None:
    output = stage(volts=10.0)
    output.over_volts = 8.0
    let(output, Resistor(100.0), 0.02)
    assert output.trip is Trip.OVER_VOLTS
    assert not output.on


def test_over_current_trips_only_after_its_mask_and_each_setpoint_starts_the_mask_anew() -> None:
    output = stage(volts=10.0, amps=2.0)
    output.over_amps, output.over_amps_on = 0.5, True
    load = Resistor(10.0)
    let(output, load, MASK_S - 0.01)
    output.change(set_v=10.1)
    let(output, load, MASK_S - 0.01)
    assert output.trip is None
    assert load.amps > 1.0
    let(output, load, 0.02)
    assert output.trip is Trip.OVER_AMPS


def test_clearing_a_trip_restores_what_was_last_wanted_of_the_output() -> None:
    tripped = stage(volts=10.0)
    tripped.over_volts = 8.0
    let(tripped, Resistor(100.0), 0.02)
    tripped.over_volts = 12.0
    tripped.clear()
    assert tripped.on
    tripped.switch(False)
    assert not tripped.on


def test_a_source_on_the_terminals_shows_while_the_output_is_off() -> None:
    output = stage(on=False)
    load = Parallel((Resistor(OPEN), Resistor(0.5, emf_volts=3.7)))
    let(output, load, 0.05)
    assert output.volts == pytest.approx(3.7, rel=1e-3)


def test_a_diode_holds_the_volts_whatever_the_current() -> None:
    volts = []
    for amps in (0.02, 0.05, 0.1, 0.5):
        output = stage(volts=2.0, amps=amps)
        load = Diode()
        let(output, load, 0.2)
        assert load.amps == pytest.approx(amps, rel=1e-3)
        volts.append(output.volts)
    assert volts == sorted(volts)
    assert 0.6 <= volts[0] <= volts[-1] <= 1.5
    assert volts[2] < 1.2 * volts[0]


def test_a_short_on_a_small_capacitor_is_stable_and_at_the_limit() -> None:
    output = stage(msgspec.structs.replace(EXACT, farads=30e-6), volts=12.0, amps=0.1)
    load = Resistor(0.05)
    let(output, load, 0.1)
    assert load.amps == pytest.approx(0.1, rel=1e-4)
    assert output.volts == pytest.approx(0.005, rel=1e-4)


def test_charge_into_the_terminals_is_charge_out_of_them() -> None:
    # At the limit: what the source gives is what the load took plus what the capacitor gained.
    data = msgspec.structs.replace(EXACT, limit_lag_s=1e-7, setpoint_lag_s=1e-6, slew_v_per_s=1e9)
    output = stage(data, volts=20.0, amps=0.2)
    load = Resistor(60.0)
    taken_c = 0.0
    for _ in range(50):
        output.step(load, STEP_S)
        taken_c += load.amps * STEP_S
    assert output.mode is Mode.CC
    assert taken_c + data.farads * output.volts == pytest.approx(0.2 * 50 * STEP_S, rel=0.01)


@settings(max_examples=60, deadline=None)
@given(
    ohms=st.floats(0.05, 1e6),
    farads=st.floats(30e-6, 1e-3),
    volts=st.floats(0.1, 30.0),
    amps=st.floats(0.01, 5.0),
)
def test_once_settled_either_volts_or_amps_are_at_their_setpoint_and_neither_is_above(
    ohms: float, farads: float, volts: float, amps: float
) -> None:
    output = stage(msgspec.structs.replace(EXACT, farads=farads), volts=volts, amps=amps)
    load = Resistor(ohms)
    # Charging takes C V / I, and near the limit some time constants of the load with the capacitor.
    needed_s = 0.1 + 2.0 * farads * volts / amps + 12.0 * farads * min(ohms, volts / amps)
    let(output, load, needed_s, max(1e-3, needed_s / 2000.0))
    assert output.volts <= volts * (1.0 + 1e-6)
    assert load.amps <= amps * (1.0 + 1e-3)
    at_volts = output.volts == pytest.approx(volts, rel=1e-3)
    at_amps = load.amps == pytest.approx(amps, rel=1e-3)
    assert at_volts or at_amps
