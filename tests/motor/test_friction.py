"""Friction split over two steady voltages: known lines, and what one voltage or a coarse readback can not tell."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.motor.fit import Fitted
from benchlog.motor.friction import NO_VOLTAGE, ONE_VOLTAGE, Hold, friction, holds_of, split
from benchlog.motor.startup import Zero, zero_of
from benchlog.records import FLAG_ON, TICK_S, Event, EventKind, Trace

SUPPLY = Event(t_s=0.0, kind=EventKind.SUPPLY, text="x", values={"window_s": 0.02, "settle_s": 0.012})
OHM = Fitted(value=5.0, low=4.95, high=5.05)
PACE_S = 0.02
# R 5 Ω, K 0.01, Coulomb 1e-3 N m, viscous 1e-6: I_C = T_C/K = 0.1 A, G = b/K² = 0.01 A/V (textbook relations)
I_C, G = 0.1, 0.01


def amps_at(volts: float, *, coulomb: float = I_C, viscous: float = G, ohms: float = 5.0) -> float:
    """A at a steady speed: I = I_C + G (V - R I)."""
    return (coulomb + viscous * volts) / (1 + viscous * ohms)


def hold(volts: float, *, u_amps: float = 0.0005, **motor: float) -> Hold:
    return Hold(volts=volts, amps=amps_at(volts, **motor), u_amps=u_amps)


def trace_of(
    spells: list[tuple[float, float]], *, noise: float = 0.0005, seed: int = 1, slows_v_per_s: float = 10.0
) -> Trace:
    """(s, V set) after 0.4 s off: a rotor that runs up in 0.1 s, and after a lower setpoint feeds back until slowed."""
    source, rows, emf = np.random.default_rng(seed), [(0.0, 0.0, 0.0, 0)] * 20, 0.0
    for seconds, volts in spells:
        steady = amps_at(volts)
        for _ in range(round(seconds / PACE_S)):
            terminal = volts
            if emf > volts:
                terminal, amps, emf = emf, 0.0, emf - slows_v_per_s * PACE_S
            else:
                amps = (volts - emf) / 5.0
                emf += (volts - 5.0 * steady - emf) * (1 - np.exp(-PACE_S / 0.1))
            rows.append((volts, terminal, amps, FLAG_ON))
    ticks = np.round(np.arange(len(rows)) * PACE_S / TICK_S).astype(np.int64)
    set_volts, volts_, amps_, flags = (np.array(column) for column in zip(*rows, strict=True))
    return Trace(
        sent=ticks,
        received=ticks + 80,
        volts=volts_,
        amps=amps_ + source.normal(0.002, noise, len(rows)),
        set_volts=set_volts,
        set_amps=np.full(len(rows), 2.0),
        flags=flags.astype(np.uint8),
    )


@given(
    coulomb=st.floats(0.01, 0.3),
    share=st.floats(0.0, 2.0),
    rated=st.floats(3.0, 24.0),
    ohms=st.floats(0.5, 10.0),
)
def test_a_line_through_two_holds_is_the_motor_it_was_made_of(
    coulomb: float, share: float, rated: float, ohms: float
) -> None:
    viscous = share * coulomb / rated
    motor = {"coulomb": coulomb, "viscous": viscous, "ohms": ohms}
    holds = [hold(rated, u_amps=0.0001 * coulomb, **motor), hold(rated / 1.4, u_amps=0.0001 * coulomb, **motor)]
    found = split(holds, ohm=Fitted(value=ohms, low=ohms, high=ohms))
    if found.coulomb_amps is None or found.viscous_a_per_v is None:  # a stall current near that of friction
        assert "not identifiable" in found.why
        return
    assert found.coulomb_amps.value == pytest.approx(coulomb, rel=1e-6)
    assert found.viscous_a_per_v.value == pytest.approx(viscous, rel=1e-6, abs=1e-9)
    assert found.coulomb_amps.low <= coulomb <= found.coulomb_amps.high
    assert found.viscous_a_per_v.low - 1e-9 <= viscous <= found.viscous_a_per_v.high + 1e-9


def test_a_resistance_of_the_contact_that_was_not_there_while_turning_is_within_the_intervals() -> None:
    at_rest = Fitted(value=9.5, low=9.4, high=9.6)  # brushes that added 90 % where it stood
    found = split([hold(9.0), hold(6.4)], ohm=at_rest)
    assert found.coulomb_amps is not None
    assert found.viscous_a_per_v is not None
    assert found.coulomb_amps.low <= I_C <= found.coulomb_amps.high
    assert found.viscous_a_per_v.low <= G <= found.viscous_a_per_v.high


def test_one_voltage_does_not_tell_them_apart() -> None:
    for holds in ([hold(9.0)], [hold(9.0), hold(9.2)]):
        found = split(holds, ohm=OHM)
        assert found.coulomb_amps is None
        assert found.viscous_a_per_v is None
        assert found.why == ONE_VOLTAGE
    assert split([], ohm=OHM).why == NO_VOLTAGE


def test_what_is_not_known_well_enough_is_not_told() -> None:
    found = split([hold(9.0, u_amps=0.01), hold(6.4, u_amps=0.01)], ohm=OHM)
    assert found.coulomb_amps is None
    assert "not identifiable with this readback" in found.why
    assert len(found.at_volts) == 2


def test_a_wrong_zero_widens_the_current_at_no_speed_alone() -> None:
    one, other = (split([hold(9.0), hold(6.4)], ohm=OHM, u_zero_amps=u) for u in (0.0, 0.01))
    assert one.coulomb_amps is not None
    assert other.coulomb_amps is not None
    assert other.coulomb_amps.high - other.coulomb_amps.value > 0.01 > one.coulomb_amps.high - one.coulomb_amps.value
    assert one.viscous_a_per_v == other.viscous_a_per_v


def test_a_third_voltage_off_the_line_widens_it() -> None:
    bent = Hold(volts=7.5, amps=amps_at(7.5) + 0.005, u_amps=0.0005)
    one, other = split([hold(9.0), hold(6.4)], ohm=OHM), split([hold(9.0), hold(6.4), bent], ohm=OHM)
    assert one.viscous_a_per_v is not None
    assert other.viscous_a_per_v is not None
    assert other.viscous_a_per_v.high - other.viscous_a_per_v.low > 2 * (
        one.viscous_a_per_v.high - one.viscous_a_per_v.low
    )


def test_out_of_a_trace_with_a_lower_hold_that_begins_above_its_volts() -> None:
    held = 0
    for seed in range(40):
        trace = trace_of([(3.0, 9.0), (1.6, 6.4)], seed=seed)
        zero = zero_of(trace)
        holds = holds_of(trace, [SUPPLY], zero)
        assert [round(one.volts, 1) for one in holds] == [9.0, 6.4]
        found = friction(trace, [SUPPLY], zero, from_s=0.0, ohm=OHM)
        assert found.coulomb_amps is not None
        assert found.viscous_a_per_v is not None
        held += (
            found.coulomb_amps.low <= I_C <= found.coulomb_amps.high
            and found.viscous_a_per_v.low <= G <= found.viscous_a_per_v.high
        )
    assert held >= 38


def test_a_known_time_constant_takes_out_what_is_left_of_the_way_to_the_steady_current() -> None:
    zero = Zero(amps=0.002, sigma_amps=0.0005, u_amps=0.001)
    slow = trace_of([(3.0, 9.0), (2.0, 9.5)])
    since = np.arange(150) * PACE_S
    slow.amps[20:170] = 0.002 + 0.2 + 1.0 * np.exp(-since / 0.8)
    slow.amps[170:] = 0.002 + 0.21 - 0.05 * np.exp(-since[:100] / 0.8)
    assert [round(one.amps, 4) for one in holds_of(slow, [SUPPLY], zero, 0.0, 0.8)] == [0.2, 0.21]
    without = holds_of(slow, [SUPPLY], zero)
    assert len(without) == 1
    assert abs(without[0].amps - 0.21) > 0.004, "else nothing is left to be taken out"


@pytest.mark.parametrize(
    "spells",
    [
        [(3.0, 9.0)],
        [(3.0, 9.0), (0.5, 6.4)],
        [(3.0, 9.0), (1.6, 3.0)],  # still above its volts at the end
    ],
)
def test_a_second_voltage_that_did_not_become_steady_is_none(spells: list[tuple[float, float]]) -> None:
    trace = trace_of(spells, slows_v_per_s=2.0)
    found = friction(trace, [SUPPLY], zero_of(trace), from_s=0.0, ohm=OHM)
    assert found.why == ONE_VOLTAGE
    assert found.at_volts == pytest.approx((9.0,))


def test_what_was_held_before_is_left_out_and_so_is_a_rotor_that_stood() -> None:
    trace = trace_of([(2.0, 6.4), (0.5, 0.0), (3.0, 9.0)])
    zero = zero_of(trace)
    assert friction(trace, [SUPPLY], zero, from_s=2.5, ohm=OHM).why == ONE_VOLTAGE
    assert friction(trace, [SUPPLY], zero, from_s=0.0, ohm=OHM).why == ""
    # at ten times the resistance the same current would be that of a winding at rest
    at_rest = Fitted(value=50.0, low=49.0, high=51.0)
    assert friction(trace, [SUPPLY], zero, from_s=0.0, ohm=at_rest).why == NO_VOLTAGE


def test_without_the_resistance_nothing_is_told() -> None:
    trace = trace_of([(3.0, 9.0), (1.6, 6.4)])
    found = friction(trace, [SUPPLY], zero_of(trace), from_s=0.0, ohm=None)
    assert found.coulomb_amps is None
    assert "resistance of the probe" in found.why


def test_a_current_that_still_changes_or_is_read_too_seldom_is_no_steady_one() -> None:
    zero = Zero(amps=0.002, sigma_amps=0.0005, u_amps=0.001)
    assert holds_of(trace_of([(0.9, 9.0)]), [SUPPLY], zero) != []
    slow = trace_of([(3.0, 9.0)])
    slow.amps[20:] = 0.002 + 0.2 + 1.0 * np.exp(-np.arange(len(slow.amps) - 20) * PACE_S / 2.0)
    assert holds_of(slow, [SUPPLY], zero) == []
    seldom = trace_of([(3.0, 9.0)])
    few = Trace(
        **{
            name: getattr(seldom, name)[np.r_[0:20, 20 : len(seldom.sent) : 50]]
            for name in ("sent", "received", "volts", "amps", "set_volts", "set_amps", "flags")
        }
    )
    assert holds_of(few, [SUPPLY], zero) == []
