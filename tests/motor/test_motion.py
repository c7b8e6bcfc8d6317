"""The look at almost no current: a rotor, a resistance of any value, an open circuit, and what stays doubtful."""

from dataclasses import replace

import pytest

from benchlog.motor.meter import Meter
from benchlog.motor.motion import (
    TOO_LITTLE_TIMES,
    CoastPoint,
    CoastVerdict,
    Held,
    coast_amps,
    look_at_coast,
    surged,
)

METER = Meter(
    zero_volts=0.0, zero_amps=0.0, sigma_volts=0.001, sigma_amps=0.001, step_volts=0.001, step_amps=0.001, count=6
)
R_OHM = 8.0


def coast(volts: list[float], small: float) -> list[CoastPoint]:
    return [CoastPoint(volts=v, amps=small, since_s=0.02 + 0.01 * k) for k, v in enumerate(volts)]


def look(held: Held, volts: list[float], small: float | None = None) -> CoastVerdict:
    small = coast_amps(held.amps) if small is None else small
    return look_at_coast(held, coast(volts, small), small_amps=small, reference_ohm=R_OHM, meter=METER).verdict


def test_a_turning_motor_holds_a_falling_voltage() -> None:
    assert look(Held(volts=12.0, amps=0.2), [10.4, 10.0, 9.7, 9.4]) is CoastVerdict.EMF


@pytest.mark.parametrize("contact", [1.0, 1.3, 1.8, 2.5])
@pytest.mark.parametrize("hot", [1.0, 1.4])
def test_a_resistance_of_any_value_is_no_rotor(contact: float, hot: float) -> None:
    ohm = R_OHM * contact * hot
    held = Held(volts=12.0, amps=12.0 / ohm)
    small = coast_amps(held.amps)
    # beyond what heat can make of a winding a contact explains the current as well as a rotor that stops at once does
    expected = CoastVerdict.NOT_TURNING if ohm < TOO_LITTLE_TIMES * R_OHM else CoastVerdict.DOUBTFUL
    assert look(held, [small * ohm] * 5, small) is expected


def test_a_worse_contact_after_the_kick_is_no_rotor() -> None:
    held = Held(volts=12.0, amps=1.5)
    small = coast_amps(held.amps)
    assert look(held, [small * R_OHM * 1.8] * 5, small) is CoastVerdict.NOT_TURNING


def test_an_open_circuit_climbs_and_is_no_rotor() -> None:
    assert look(Held(volts=12.0, amps=1.5), [12.6, 13.9, 14.4, 14.4]) is CoastVerdict.OPEN
    assert look(Held(volts=12.0, amps=0.3), [8.0, 7.5, 9.0, 11.0]) is CoastVerdict.OPEN


def test_a_full_stall_current_before_the_coast_does_not_belong_to_a_rotor() -> None:
    # a brush lifts just as the coast begins: the volts stay near, but the current before was a locked rotor's
    assert look(Held(volts=12.0, amps=1.5), [11.9, 11.8, 11.7]) is CoastVerdict.DOUBTFUL


def test_without_whole_readings_it_is_doubtful() -> None:
    assert look(Held(volts=12.0, amps=0.2), []) is CoastVerdict.DOUBTFUL
    assert look(Held(volts=0.01, amps=0.2), [0.0]) is CoastVerdict.DOUBTFUL


def test_a_surge_belongs_to_a_winding_and_an_opened_protector_has_none() -> None:
    held = Held(volts=12.0, amps=0.2)
    first = CoastPoint(volts=14.4, amps=0.52, since_s=0.03)
    assert surged(first, 10.0, held, reference_ohm=R_OHM, meter=METER)
    tripped = CoastPoint(volts=14.4, amps=0.03, since_s=0.03)
    assert not surged(tripped, 10.0, held, reference_ohm=R_OHM, meter=METER)
    assert not surged(CoastPoint(volts=9.0, amps=1.0, since_s=0.03), 10.0, held, reference_ohm=R_OHM, meter=METER)


def test_the_current_of_an_opened_protector_follows_the_volts_and_is_no_surge() -> None:
    # 200 Ω in series, and the output capacitor still held the volts up at the end of the coast
    held = Held(volts=24.0, amps=24.0 / 208)
    first = CoastPoint(volts=28.8, amps=28.8 / 208, since_s=0.03)
    assert not surged(first, 24.0, held, reference_ohm=R_OHM, meter=METER)


def test_a_rotor_that_still_gains_speed_surges_little_and_drew_much_before() -> None:
    held = Held(volts=12.0, amps=0.7)
    first = CoastPoint(volts=14.4, amps=0.71, since_s=0.1)
    assert surged(first, 7.0, held, reference_ohm=R_OHM, meter=METER)


def test_between_a_resistance_and_a_rotor_it_is_doubtful() -> None:
    held = Held(volts=12.0, amps=1.2)
    ohmic = 1.8 * coast_amps(1.2) * 10.0
    assert look(held, [ohmic + 0.05 * 12.0] * 30) is CoastVerdict.DOUBTFUL
    assert look(held, [ohmic] * 30) is CoastVerdict.NOT_TURNING


def test_after_a_step_the_current_that_still_falls_needs_not_fit_the_volts() -> None:
    held = Held(volts=12.0, amps=1.5)
    seen = coast([11.9, 11.8, 11.7], coast_amps(1.5))
    after = look_at_coast(held, seen, small_amps=coast_amps(1.5), reference_ohm=R_OHM, meter=METER, steady=False)
    assert after.verdict is CoastVerdict.EMF


def test_the_coast_s_current_is_small_and_never_nothing() -> None:
    assert coast_amps(2.0) == pytest.approx(0.2)
    assert coast_amps(0.02) == pytest.approx(0.005)
    assert coast_amps(0.01) == pytest.approx(0.003)
    assert coast_amps(0.0) == 0.001


def test_too_little_current_for_a_standing_motor_is_doubtful_even_without_a_voltage() -> None:
    # a rotor of 10 ms that stood before the first whole reading, or a protector that had opened
    assert look(Held(volts=12.0, amps=0.2), [0.2, 0.2], 0.02) is CoastVerdict.DOUBTFUL
    # a worse contact, or a rotor that turned when the probe asked for its resistance: V and I are the same
    assert look(Held(volts=12.0, amps=0.6), [0.5, 0.5], 0.06) is CoastVerdict.DOUBTFUL
    # heat alone explains it
    assert look(Held(volts=12.0, amps=1.1), [0.9, 0.9], 0.11) is CoastVerdict.NOT_TURNING


def test_a_current_within_the_meter_s_doubt_does_not_say_that_it_stands() -> None:
    coarse = replace(METER, sigma_amps=0.008)
    seen = coast([0.025, 0.025], 0.003)

    def said(meter: Meter) -> CoastVerdict:
        held = Held(volts=0.2, amps=0.025)
        return look_at_coast(held, seen, small_amps=0.003, reference_ohm=R_OHM, meter=meter).verdict

    assert said(METER) is CoastVerdict.NOT_TURNING
    assert said(coarse) is CoastVerdict.DOUBTFUL
