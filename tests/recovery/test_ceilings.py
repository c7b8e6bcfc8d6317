"""Layers and their intersection, and the promise: no sequence of commands makes the guard admit a value above one."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchlog.motor.motion import Motion
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import PROGRAM, PROGRAM_VOLTS, Layer, Limits, intersect
from benchlog.recovery.commands import Apply, Switch
from benchlog.recovery.guard import Guard
from drivers.supply import OVER_AMPS, OVER_VOLTS, Capabilities, Reading, Regulation

CAN = Capabilities(
    identity="a,b,c,d",
    dialect="test",
    volts_max=30.0,
    amps_max=5.0,
    volts_step=0.001,
    amps_step=0.001,
    latches=frozenset({OVER_VOLTS, OVER_AMPS}),
    window_s=0.02,
    settle_s=0.012,
    reply_s=0.008,
)


def guard_with(limits: Limits) -> Guard:
    ceilings = intersect({Layer.JOB: limits})
    return Guard(ceilings, CAN, Budget(ceilings, ambient_c=25.0, rated_volts=12.0))


def reading(at_s: float, volts: float, amps: float, guard: Guard, *, on: bool = True) -> Reading:
    return Reading(
        sent_s=at_s,
        received_s=at_s + 0.008,
        volts=volts,
        amps=amps,
        set_volts=guard._set.volts,
        set_amps=guard._set.amps,
        output_on=on,
        regulation=Regulation.CC,
    )


def test_the_lowest_value_wins_and_says_where_it_comes_from() -> None:
    ceilings = intersect({Layer.OWNER: Limits(volts=15.0, amps=3.0), Layer.JOB: Limits(volts=12.0, amps=4.0)})
    assert (ceilings.volts.value, ceilings.volts.layer) == (12.0, Layer.JOB)
    assert (ceilings.amps.value, ceilings.amps.layer) == (3.0, Layer.OWNER)
    assert (ceilings.kicks.value, ceilings.kicks.layer) == (60, Layer.PROGRAM)


def test_no_layer_can_raise_the_program_s_own_bound() -> None:
    # 42.4 V DC. Source: IEC 60335-1 8.1.4 as quoted in published texts.
    assert PROGRAM_VOLTS == 42.4
    assert intersect({Layer.OWNER: Limits(volts=60.0)}).volts.value == 42.4


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
def test_a_ceiling_that_is_no_finite_number_above_zero_is_not_one(bad: float) -> None:
    with pytest.raises(ValueError, match="volts"):
        Limits(volts=bad)


anything = st.floats(allow_nan=True, allow_infinity=True, width=64)
limits = st.builds(
    Limits,
    volts=st.none() | st.floats(0.01, 100.0),
    amps=st.none() | st.floats(0.001, 50.0),
    kicks=st.none() | st.integers(1, 5),
)
steps = st.lists(
    st.one_of(
        st.builds(Apply, volts=anything, amps=anything, kick=st.booleans()),
        st.builds(Apply, volts=st.floats(0, 60), amps=st.floats(0, 30), kick=st.booleans()),
        st.builds(Switch, on=st.booleans()),
        st.tuples(anything, anything, st.booleans()),
    ),
    max_size=30,
)


@settings(max_examples=400, deadline=None)
@given(layers=st.dictionaries(st.sampled_from([Layer.OWNER, Layer.SUPPLY, Layer.JOB]), limits), steps=steps)
def test_no_sequence_of_commands_and_readings_makes_the_guard_admit_a_value_above_a_ceiling(
    layers: dict[Layer, Limits], steps: list[Apply | Switch | tuple[float, float, bool]]
) -> None:
    ceilings = intersect(layers)
    guard = Guard(ceilings, CAN, Budget(ceilings, ambient_c=25.0, rated_volts=12.0))
    least_volts = min([PROGRAM.volts or 0.0] + [one.volts for one in layers.values() if one.volts is not None])
    least_amps = min([PROGRAM.amps or 0.0] + [one.amps for one in layers.values() if one.amps is not None])
    at_s, kicks = 0.0, 0
    for step in steps:
        at_s += 0.01
        if isinstance(step, tuple):
            guard.judge(reading(at_s, step[0], step[1], guard, on=step[2]))
            continue
        if guard.admit(step) is not None:
            continue
        guard.sent(step, at_s)
        if isinstance(step, Apply):
            assert 0.0 <= step.volts <= least_volts
            assert 0.0 <= step.amps <= least_amps
            kicks += step.kick
    assert kicks <= ceilings.kicks.value


@given(volts=st.floats(12.001, 1e6), amps=st.floats(0.0, 1.0))
def test_a_command_above_a_ceiling_is_refused_with_value_limit_and_unit(volts: float, amps: float) -> None:
    refusal = guard_with(Limits(volts=12.0)).admit(Apply(volts=volts, amps=amps))
    assert refusal is not None
    assert "V is above the job's ceiling of 12 V" in refusal


def test_a_refusal_changes_nothing() -> None:
    guard = guard_with(Limits(volts=12.0))
    before = (guard._set, guard.budget.kicks)
    assert guard.admit(Apply(volts=13.0, amps=0.1, belief=Motion.LOCKED, kick=True)) is not None
    assert (guard._set, guard.budget.kicks) == before
