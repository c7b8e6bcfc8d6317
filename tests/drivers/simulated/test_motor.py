"""The motor beyond its first start: standing, coming loose, coming to rest, heat."""

import math
import random

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.simulated.contact import ContactData, ProtectorData
from drivers.simulated.joint import JointData
from drivers.simulated.motor import Motor, MotorData

PLAIN = MotorData(
    ohms=8.0,
    henries=4e-3,
    k=0.0175,
    inertia=3.8e-6,
    viscous=8e-7,
    coulomb_nm=2.6e-3,
    static_nm=3.6e-3,
    copper_per_k=0.0,
)
RATED_V = 12.0
STALL_NM = 0.0175 * 12.0 / 8.0


def motor(data: MotorData = PLAIN) -> Motor:
    return Motor(data, RATED_V, random.Random(0))


def drive(subject: Motor, volts: float, for_s: float, step_s: float = 1e-4) -> None:
    for _ in range(round(for_s / step_s)):
        subject.affine(step_s)
        subject.commit(volts, step_s)


def holds(subject: Motor) -> bool:
    return subject.holding


def loose_volts(data: MotorData, subject: Motor | None = None) -> float:
    """The lowest volts in steps of 10 mV at which a motor comes loose within 60 ms."""
    subject = subject or motor(data)
    volts = 0.0
    while subject.speed == 0.0 and volts < 2 * RATED_V:
        volts += 0.01
        drive(subject, volts, 0.06)
    return volts


def test_a_resting_shaft_stays_until_static_friction_is_exceeded() -> None:
    needed_v = 3.6e-3 / 0.0175 * 8.0
    assert loose_volts(PLAIN) == pytest.approx(needed_v, abs=0.011)


def test_a_joint_holds_until_its_share_of_the_stall_torque_and_then_lets_go() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=0.64))
    subject = motor(data)
    drive(subject, 0.63 * RATED_V, 0.2)
    assert holds(subject)
    assert subject.speed == 0.0
    drive(subject, 0.65 * RATED_V, 0.2)
    assert not holds(subject)
    assert subject.speed > 100.0


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_motor_runs_the_same_both_ways(way: float) -> None:
    subject = motor()
    drive(subject, way * RATED_V, 1.0)
    friction = PLAIN.coulomb_nm
    speed = (PLAIN.k * RATED_V - PLAIN.ohms * friction) / (PLAIN.k**2 + PLAIN.ohms * PLAIN.viscous)
    assert subject.speed * way == pytest.approx(speed, rel=1e-3)


def test_a_coasting_rotor_comes_to_rest_and_stays_there() -> None:
    subject = motor()
    drive(subject, RATED_V, 0.5)
    turned_rad = subject.angle_rad
    drive(subject, 0.0, 1.0)
    assert subject.speed == 0.0
    assert subject.amps == pytest.approx(0.0, abs=1e-9)
    assert subject.angle_rad > turned_rad


def test_reversing_at_speed_passes_through_rest_and_draws_about_twice_the_stall_current() -> None:
    # Common practice: about twice the stall current.
    subject = motor(msgspec.structs.replace(PLAIN, coulomb_nm=5e-4, static_nm=5e-4))
    drive(subject, RATED_V, 1.0)
    most_a = 0.0
    for _ in range(10000):
        drive(subject, -RATED_V, 1e-4)
        most_a = max(most_a, -subject.amps)
    assert most_a == pytest.approx(2.0 * RATED_V / PLAIN.ohms, rel=0.15)
    assert subject.speed < -500.0


def test_impulses_wear_a_joint_only_when_they_come_near_its_strength() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=1.2, wears=0.2))
    weak, strong = motor(data), motor(data)
    for subject, ratio in ((weak, 0.5), (strong, 1.0)):
        for _ in range(3):
            drive(subject, ratio * RATED_V, 0.2)
            drive(subject, 0.0, 0.2)
    assert weak.joint is not None
    assert strong.joint is not None
    fresh_nm = 1.2 * STALL_NM - PLAIN.static_nm
    assert weak.joint.hold_nm == pytest.approx(fresh_nm, rel=1e-9)
    assert strong.joint.hold_nm < 0.8 * fresh_nm


def test_alternating_impulses_wear_a_joint_more_than_the_same_way_again() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=1.6, wears=0.2))
    same, rocked = motor(data), motor(data)
    for turn in range(4):
        drive(same, RATED_V, 0.2)
        drive(rocked, RATED_V * (-1) ** turn, 0.2)
        drive(same, 0.0, 0.1)
        drive(rocked, 0.0, 0.1)
    assert same.joint is not None
    assert rocked.joint is not None
    assert holds(same)
    assert holds(rocked)
    fresh_nm = 1.6 * STALL_NM - PLAIN.static_nm
    assert fresh_nm - rocked.joint.hold_nm > 1.2 * (fresh_nm - same.joint.hold_nm) > 0.0


def test_a_long_push_wears_a_joint_no_more_than_one_impulse() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=1.2, wears=0.2))
    once, long = motor(data), motor(data)
    drive(once, RATED_V, 0.5)
    drive(long, RATED_V, 5.0)
    drive(once, 0.0, 0.1)
    drive(long, 0.0, 0.1)
    assert once.joint is not None
    assert long.joint is not None
    assert long.joint.hold_nm == pytest.approx(once.joint.hold_nm, rel=1e-3)


def test_residue_drags_after_breaking_and_clears_with_turns() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=0.6, residue=0.3, residue_turns=10.0))
    subject = motor(data)
    drive(subject, RATED_V, 0.3)
    assert subject.joint is not None
    turns = subject.angle_rad / (2.0 * math.pi)
    assert subject.joint.drag_nm == pytest.approx(0.3 * STALL_NM * math.exp(-turns / 10.0), rel=1e-6)
    slow = subject.speed
    drive(subject, RATED_V, 2.0)
    assert subject.joint.drag_nm < 1e-3 * STALL_NM
    assert subject.speed > slow


def test_residue_also_has_to_be_overcome_when_the_shaft_starts_again() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=0.9, residue=0.3, residue_turns=1e9))
    subject = motor(data)
    drive(subject, RATED_V, 0.2)
    drive(subject, 0.0, 0.5)
    assert not holds(subject)
    needed_nm = PLAIN.static_nm + 0.3 * STALL_NM
    assert loose_volts(data, subject) == pytest.approx(needed_nm / PLAIN.k * PLAIN.ohms, abs=0.011)


def test_a_joint_that_grips_again_is_as_strong_as_before_after_its_rest() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=0.6, regrips_s=0.3))
    subject = motor(data)
    drive(subject, RATED_V, 0.5)
    assert not holds(subject)
    while subject.speed != 0.0:
        drive(subject, 0.0, 1e-4)
    drive(subject, 0.0, 0.28)
    assert not holds(subject)
    drive(subject, 0.0, 0.03)
    assert holds(subject)
    assert loose_volts(data, subject) == pytest.approx(0.6 * RATED_V, abs=0.011)


def test_a_joint_that_slips_stops_the_shaft_within_its_angle_for_good() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=0.6, slips_rad=0.3))
    subject = motor(data)
    drive(subject, RATED_V, 0.5)
    assert holds(subject)
    assert subject.speed == 0.0
    assert 0.3 <= subject.angle_rad < 0.32
    drive(subject, 2 * RATED_V, 0.5)
    assert subject.angle_rad < 0.32


def test_a_winding_heats_by_its_loss_over_its_capacity_and_its_resistance_follows_copper() -> None:
    # 0.00393 per K at 20 °C: NBS Handbook 100, published.
    data = msgspec.structs.replace(
        PLAIN, joint=JointData(breaks_at=20.0), copper_per_k=0.00393, winding_j_per_k=5.0, winding_k_per_w=1e6
    )
    subject = motor(data)
    drive(subject, 12.0, 0.1)
    rise_k = subject.winding_c - 20.0
    assert rise_k == pytest.approx(18.0 * 0.1 / 5.0, rel=0.02)
    drive(subject, 12.0, 10.0)
    assert subject.ohms == pytest.approx(8.0 * (1.0 + 0.00393 * (subject.winding_c - 20.0)), rel=1e-12)


def test_heat_put_in_is_heat_in_winding_and_housing_when_nothing_escapes() -> None:
    data = msgspec.structs.replace(PLAIN, joint=JointData(breaks_at=20.0), housing_k_per_w=1e9)
    subject = motor(data)
    drive(subject, 12.0, 5.0)
    stored_j = (subject.winding_c - 20.0) * data.winding_j_per_k + (subject.housing_c - 20.0) * data.housing_j_per_k
    # 18 W but for the first milliseconds, in which the current rises: L/R = 0.5 ms takes 1.5 time constants off.
    assert stored_j == pytest.approx(18.0 * (5.0 - 1.5 * 0.5e-3), rel=1e-4)
    assert subject.winding_c > subject.housing_c > 20.0


def test_electrical_energy_is_heat_and_friction_and_stored_motion() -> None:
    subject = motor(msgspec.structs.replace(PLAIN, viscous=0.0))
    step_s, taken_j, heat_j = 1e-5, 0.0, 0.0
    for _ in range(20000):
        before_a = subject.amps
        drive(subject, RATED_V, step_s, step_s)
        mean_a = 0.5 * (before_a + subject.amps)
        taken_j += RATED_V * mean_a * step_s
        heat_j += mean_a * mean_a * PLAIN.ohms * step_s
    stored_j = 0.5 * PLAIN.inertia * subject.speed**2 + 0.5 * PLAIN.henries * subject.amps**2
    rubbed_j = PLAIN.coulomb_nm * subject.angle_rad
    assert taken_j == pytest.approx(heat_j + stored_j + rubbed_j, rel=1e-4)


def test_a_protector_opens_after_its_time_at_stall_and_later_with_less() -> None:
    data = msgspec.structs.replace(
        PLAIN, joint=JointData(breaks_at=20.0), contact=ContactData(protector=ProtectorData(opens_s=0.5))
    )
    full, half = motor(data), motor(data)
    drive(full, RATED_V, 0.48)
    assert full.amps == pytest.approx(1.5, rel=1e-3)
    drive(full, RATED_V, 0.05)
    assert full.amps < 0.01
    drive(half, RATED_V / 2, 1.5)
    assert half.amps == pytest.approx(0.75, rel=1e-3)


def test_a_contact_step_raises_resistance_beyond_its_angle_only() -> None:
    data = msgspec.structs.replace(
        PLAIN, joint=JointData(breaks_at=0.6, slips_rad=0.3), contact=ContactData(step=0.9, step_at_rad=0.2)
    )
    subject = motor(data)
    assert subject.ohms == pytest.approx(8.0)
    drive(subject, RATED_V, 0.5)
    assert subject.ohms == pytest.approx(8.0 * 1.9)


@settings(max_examples=40, deadline=None)
@given(
    ohms=st.floats(0.3, 40.0),
    k=st.floats(0.003, 0.05),
    tau_s=st.floats(0.005, 2.0),
    friction=st.floats(0.0, 0.5),
    levels=st.lists(st.floats(-1.2, 1.2), min_size=1, max_size=4),
)
def test_no_motor_draws_more_than_its_volts_and_emf_account_for(
    ohms: float, k: float, tau_s: float, friction: float, levels: list[float]
) -> None:
    coulomb = friction * k * RATED_V / ohms
    # L/R of 0.5 ms against at least 5 ms of mechanical time constant: overdamped, so nothing rings above its source.
    inertia = tau_s * k * k / ohms
    data = MotorData(ohms=ohms, henries=ohms * 5e-4, k=k, inertia=inertia, coulomb_nm=coulomb, copper_per_k=0.0)
    subject = motor(data)
    for level in levels:
        for _ in range(60):
            drive(subject, level * RATED_V, 1e-3, 1e-3)
            assert abs(subject.amps) <= 2.4 * RATED_V / ohms * (1.0 + 1e-9)
            assert abs(subject.speed) <= 1.2 * RATED_V / k * (1.0 + 1e-9)
