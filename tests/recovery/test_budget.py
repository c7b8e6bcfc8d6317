"""Sliding sums that never forget too early, and rests that are long enough."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from benchlog.motor.motion import Motion
from benchlog.records import FLAG_ON, Trace
from benchlog.recovery.budget import OFF_WITHIN_S, WINDOW_S, Budget, Pulse, SlidingSum, pulses_of
from benchlog.recovery.ceilings import Layer, Limits, intersect
from drivers.supply import Reading, Regulation


@given(st.lists(st.tuples(st.floats(0.0, 20.0), st.floats(0.0, 5.0)), max_size=60), st.floats(0.0, 30.0))
def test_a_sliding_sum_is_never_below_what_went_in_during_the_last_minute(
    additions: list[tuple[float, float]], later_s: float
) -> None:
    total, at_s, log = SlidingSum(), 0.0, []
    for gap_s, amount in additions:
        at_s += gap_s
        total.add(at_s, amount)
        log.append((at_s, amount))
    now_s = at_s + later_s
    exact = sum(amount for when, amount in log if when >= now_s - WINDOW_S)
    assert total.total(now_s) >= exact - 1e-9


@given(st.lists(st.tuples(st.floats(0.2, 20.0), st.floats(0.01, 1.0)), min_size=1, max_size=30), st.floats(0.0, 3.0))
def test_after_the_wait_there_is_room(additions: list[tuple[float, float]], room: float) -> None:
    total, at_s = SlidingSum(), 0.0
    for gap_s, amount in additions:
        at_s += gap_s
        total.add(at_s, amount)
    assert total.total(at_s + total.wait_for(at_s, room) + 0.01) <= room + 1e-9


def test_time_shown_to_be_turning_is_taken_back() -> None:
    total = SlidingSum()
    total.add(1.0, 0.5)
    for k in range(10):
        total.add(2.0 + 0.1 * k, 0.1)
    assert total.take_back(1.9) == pytest.approx(1.0)
    assert total.total(3.0) == pytest.approx(0.5)


def test_a_bin_that_began_before_is_not_taken_back() -> None:
    # readings every 10 ms, as in a run: a kick from 1.0 to 1.2 s, then a hold that was shown to be turning
    total = SlidingSum()
    for k in range(40):
        total.add(1.0 + 0.01 * k, 0.01)
    removed = total.take_back(1.2)
    assert 0.05 <= removed <= 0.2
    assert total.total(1.4) >= 0.2


def test_locked_time_of_a_small_motor_counts_at_its_own_stall_power() -> None:
    # 3 V and 10 Ω: 0.9 W at stall, well under the smallest winding that the heat bound reckons with
    ceilings = intersect({})
    budget = Budget(ceilings, ambient_c=25.0, rated_volts=3.0)
    budget.learn(10.0)
    for k in range(101):
        budget.charge(_reading(0.02 * k, 3.0, 0.3), Motion.LOCKED)
    assert budget.locked_s(2.0) == pytest.approx(2.0, rel=0.01)


def test_what_earlier_runs_put_in_counts_in_this_one() -> None:
    trace = _trace(volts=12.0, amps=1.5, seconds=2.0)
    pulses = pulses_of(trace, ended_ago_s=5.0, reference_ohm=8.0, rated_volts=12.0)
    assert sum(pulse.joules for pulse in pulses) == pytest.approx(36.0, rel=0.02)
    assert sum(pulse.stall_s for pulse in pulses) == pytest.approx(2.0, rel=0.02)
    budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    budget.carry(100.0, pulses)
    assert budget.locked_s(100.0) == pytest.approx(2.0, rel=0.02)
    assert budget.energy_j(100.0) == pytest.approx(36.0, rel=0.02)
    assert budget.winding_c(100.0) > 80.0
    assert budget.locked_s(170.0) == 0.0


def test_a_record_that_was_cut_short_while_driven_counts_as_driven_until_an_output_is_off() -> None:
    trace = _trace(volts=12.0, amps=1.5, seconds=2.0)
    trace.flags[-1] = FLAG_ON
    pulses = pulses_of(trace, ended_ago_s=60.0, reference_ohm=8.0, rated_volts=12.0)
    assert sum(pulse.joules for pulse in pulses) == pytest.approx(36.0 + OFF_WITHIN_S * 18.0, rel=0.02)
    at_once = pulses_of(trace, ended_ago_s=0.5, reference_ohm=8.0, rated_volts=12.0)
    assert sum(pulse.joules for pulse in at_once) == pytest.approx(36.0 + 9.0, rel=0.02)


def test_what_was_driven_before_a_reading_that_was_none_is_charged_with_the_next() -> None:
    budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    budget.charge(_reading(1.0, 12.0, 1.5), Motion.LOCKED)
    budget.charge(replace(_reading(1.4, 0.0, 0.0), output_on=False), Motion.RESTING)
    assert budget.energy_j(1.4) == pytest.approx(7.2)


def test_a_pulse_from_the_future_is_refused() -> None:
    budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    with pytest.raises(ValueError, match="ago"):
        budget.carry(100.0, [Pulse(ago_s=-1.0, joules=1.0, stall_s=0.1)])


def _reading(at_s: float, volts: float, amps: float) -> Reading:
    return Reading(
        sent_s=at_s,
        received_s=at_s,
        volts=volts,
        amps=amps,
        set_volts=volts,
        set_amps=amps,
        output_on=True,
        regulation=Regulation.CV,
    )


def _trace(*, volts: float, amps: float, seconds: float) -> Trace:
    """Driven all the time; the last reading is one with the output off."""
    count = round(seconds * 100) + 1
    ticks = np.arange(count, dtype=np.int64) * 100
    flags = np.full(count, FLAG_ON, dtype=np.uint8)
    flags[-1] = 0
    return Trace(
        sent=ticks,
        received=ticks,
        volts=np.full(count, volts),
        amps=np.full(count, amps),
        set_volts=np.full(count, volts),
        set_amps=np.full(count, amps),
        flags=flags,
    )


def test_a_rest_names_the_ceiling_that_asks_for_it_and_is_enough() -> None:
    ceilings = intersect({Layer.JOB: Limits(volts=12.0)})
    budget = Budget(ceilings, ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    budget._heat.add(10.0, 15.0)
    rest_s, asked_by = budget.rest_for(10.0, joules=8.0)
    assert asked_by == "winding temperature"
    assert rest_s > 1.0
    assert budget._heat.winding_c_after(10.0 + rest_s, 8.0) <= ceilings.winding_c.value


def test_of_a_winding_not_known_yet_the_volts_alone_say_what_share_of_its_stall_power_it_takes() -> None:
    # 2.4 V rated, 24 Ω, at 2.0 V for 1 s: 0.69 of the stall power, known to nobody before the probe is over
    ceilings = intersect({Layer.JOB: Limits(volts=2.4)})
    budget = Budget(ceilings, ambient_c=25.0, rated_volts=2.4)
    for k in range(11):
        at_s = 10.0 + 0.1 * k
        budget.charge(
            Reading(
                sent_s=at_s - 0.01,
                received_s=at_s,
                volts=2.0,
                amps=2.0 / 24.0,
                set_volts=2.0,
                set_amps=0.1,
                output_on=True,
                regulation=Regulation.CV,
            ),
            Motion.UNKNOWN,
        )
    assert budget.locked_s(11.0) == pytest.approx((2.0 / 2.4) ** 2, rel=1e-6)


def test_filed_hours_are_some_hundred_pulses_that_stand_for_no_less_than_they_did() -> None:
    # a reading a second at 12 V and 50 mA, with a surge every minute
    count, ohm = 12_000, 24.0
    amps = np.full(count, 0.05)
    amps[::60] = 0.4
    trace = Trace(
        sent=np.arange(count) * 10_000,
        received=np.arange(count) * 10_000 + 100,
        volts=np.full(count, 12.0),
        amps=amps,
        set_volts=np.full(count, 12.0),
        set_amps=np.full(count, 1.0),
        flags=np.full(count, FLAG_ON),
    )
    trace.flags[-1] = 0
    live = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    live.learn(ohm)
    for k in range(count):
        reading = replace(_reading(float(k), 12.0, float(amps[k])), output_on=bool(trace.flags[k]))
        live.charge(reading, Motion.TURNING)
    pulses = pulses_of(trace, ended_ago_s=600.0, reference_ohm=ohm, rated_volts=12.0)
    assert len(pulses) < 1100
    joules = sum(pulse.joules for pulse in pulses), sum(pulse.rest_joules for pulse in pulses)
    most = np.maximum(amps[1:], amps[:-1])
    winding = np.minimum(12.0 * most, 2.2 * ohm * most**2)
    assert joules[0] == pytest.approx(winding.sum(), rel=1e-6)
    assert joules[1] == pytest.approx((12.0 * most - winding).sum(), rel=1e-6)
    carried = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    carried.learn(ohm)
    carried.carry(1e6, pulses)
    for later_s in (0.0, 300.0, 3600.0):
        now_k, then_k = (
            carried.winding_c(1e6 + later_s) - 25.0,
            live.winding_c(count - 1.0 + 600.0 + later_s) - 25.0,
        )
        assert 0.99 * then_k <= now_k < 1.15 * then_k + 0.5


def test_what_a_turning_motor_takes_beside_its_winding_warms_it_as_well() -> None:
    def after_minutes(amps: float, ohm: float) -> float:
        budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
        budget.learn(ohm)
        for k in range(600):
            budget.charge(_reading(float(k), 12.0, amps), Motion.TURNING)
        return budget.winding_c(599.0)

    # 0.6 W go in: into a winding of 24 Ω at most 0.13 W of them; the rest is friction, in the same motor
    only_winding = 0.05**2 * 2.2 * 24.0
    budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(24.0)
    for k in range(600):
        budget.charge(_reading(float(k), 0.05 * 2.2 * 24.0, 0.05), Motion.LOCKED)
    assert only_winding == pytest.approx(0.132)
    assert after_minutes(0.05, 24.0) > budget.winding_c(599.0) + 10.0


def test_what_fits_is_as_much_as_needs_no_rest_and_no_more() -> None:
    ceilings = intersect({Layer.JOB: Limits(volts=12.0)})
    for joules in (0.0, 5.0, 12.0):
        budget = Budget(ceilings, ambient_c=25.0, rated_volts=12.0)
        budget.learn(8.0)
        budget._heat.add(10.0, joules)
        fits_j, asked_by = budget.fits(10.0)
        assert asked_by == "winding temperature"
        assert budget.rest_for(10.0, joules=0.999 * fits_j)[0] == 0.0
        assert budget.rest_for(10.0, joules=1.001 * fits_j)[0] > 0.0
    tight = Budget(intersect({Layer.JOB: Limits(locked_s=0.5)}), ambient_c=25.0, rated_volts=12.0)
    tight.learn(8.0)
    room_j, asked_by = tight.fits(0.0)
    assert room_j == pytest.approx(0.49 * 18.0)
    assert asked_by == "locked time"


def test_what_was_believed_to_turn_counts_as_locked_once_it_is_known_not_to_have() -> None:
    budget = Budget(intersect({}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    for k in range(101):
        budget.charge(_reading(0.1 * k, 12.0, 0.15 if k < 80 else 1.5), Motion.TURNING)
    assert budget.locked_s(10.0) == 0.0
    budget.was_locked(7.95, 10.0)
    assert 2.0 <= budget.locked_s(10.0) < 2.4
    assert budget.locked_total_s == budget.locked_s(10.0)
    budget.was_locked(7.95, 10.0)
    assert budget.locked_s(10.0) < 2.4, "not twice"


@pytest.mark.parametrize(
    ("limits", "passed"),
    [
        (Limits(locked_s=0.5), "locked time"),
        (Limits(energy_j=5.0), "energy"),
        (Limits(winding_c=60.0), "winding temperature"),
    ],
)
def test_what_never_fits_is_named_by_its_ceiling(limits: Limits, passed: str) -> None:
    # 10 J into 8 Ω of 12 V: 0.56 s at its 18 W
    budget = Budget(intersect({Layer.JOB: limits}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    assert budget.never_fits(10.0) == passed


@given(st.floats(0.1, 60.0))
def test_what_never_fits_does_not_fit_in_a_cold_motor_and_all_else_does(joules: float) -> None:
    budget = Budget(intersect({Layer.JOB: Limits(volts=12.0)}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    fits_j, _ = budget.fits(0.0)
    assume(abs(joules - fits_j) > 1e-6)
    assert (budget.never_fits(joules) is None) == (joules < fits_j)


def test_what_fits_only_after_a_rest_is_not_said_never_to_fit() -> None:
    budget = Budget(intersect({Layer.JOB: Limits(volts=12.0)}), ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    budget._heat.add(10.0, 15.0)
    assert budget.rest_for(10.0, joules=8.0)[0] > 0.0
    assert budget.never_fits(8.0) is None
