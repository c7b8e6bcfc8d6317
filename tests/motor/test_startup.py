"""Starts found in a trace or built from readings, and the zero that belongs to them."""

import math

import numpy as np
import pytest

from benchlog.motor.meter import zeroed
from benchlog.motor.startup import start_of_readings, starts_of, timing_of, zero_by, zero_of
from benchlog.records import FLAG_CV, FLAG_ON, TICK_S, Event, EventKind, Trace

PACE_S = 0.02


def trace_of(spells: list[tuple[float, float, str]], tau: float = 0.1) -> Trace:
    """Spells of (seconds, volts, kind): "off", "rest" at 0 V, "start" as a motor of 0.2 A steady, 1.5 A stalled."""
    rows: list[tuple[float, float, float, int]] = []
    for seconds, volts, kind in spells:
        for index in range(round(seconds / PACE_S)):
            t_s = index * PACE_S
            amps = 0.2 + 1.3 * np.exp(-t_s / tau) if kind == "start" else 0.0
            rows.append((volts, volts, float(amps) + 0.004, 0 if kind == "off" else FLAG_ON | FLAG_CV))
    count = len(rows)
    ticks = np.round(np.arange(count) * PACE_S / TICK_S).astype(np.int64)
    volts_, set_volts, amps_, flags = (np.array(column) for column in zip(*rows, strict=True))
    return Trace(
        sent=ticks,
        received=ticks + 80,
        volts=volts_,
        amps=amps_,
        set_volts=set_volts,
        set_amps=np.full(count, 2.0),
        flags=flags.astype(np.uint8),
    )


SUPPLY = Event(t_s=0.0, kind=EventKind.SUPPLY, text="x", values={"window_s": 0.02, "settle_s": 0.012})


def step(t_s: float, name: str) -> Event:
    return Event(t_s=t_s, kind=EventKind.STEP, text=name, values={"name": name})


def test_starts_are_found_by_their_setpoints_and_named_by_their_steps() -> None:
    trace = trace_of(
        [(0.4, 0, "off"), (1, 0, "rest"), (0.2, 12, "start"), (1, 0, "rest"), (3, 9, "start"), (1, 0, "rest")]
    )
    found = starts_of(trace, [SUPPLY, step(1.3, "kick"), step(2.5, "measured start")])
    assert [(one.name, one.set_volts) for one in found] == [("measured start", 9.0)]
    assert found[0].began_s == pytest.approx(2.6, abs=0.001)
    assert found[0].t_s[0] > 0.012


def test_a_reading_stands_for_the_middle_of_what_was_averaged() -> None:
    found = starts_of(trace_of([(0.4, 0, "rest"), (1.0, 9, "start")]), [SUPPLY])[0]
    # sent 40 ms after the setpoint, the window of 20 ms before it, the reply 8 ms later: the middle is at 34 ms
    assert found.t_s[0] == pytest.approx(0.040 + 0.5 * (0.008 - 0.020), abs=1e-6)
    assert timing_of([]) == (0.02, 0.012)


def test_what_is_read_at_no_current_is_known_before_the_output_is_on() -> None:
    zero = zero_of(trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (3, 9, "start")]))
    assert (zero.amps, zero.sigma_amps, zero.u_amps) == pytest.approx((0.004, 0.0, 0.0), abs=1e-6)
    meter = zeroed([0.0, 0.0], [0.003, 0.005], step_volts=0.001, step_amps=0.001)
    by_run = zero_by(meter)
    assert by_run.amps == pytest.approx(0.004)
    assert by_run.sigma_amps == pytest.approx(math.hypot(0.002 / math.sqrt(2), 0.001 / math.sqrt(12)))
    assert by_run.u_amps > 12.7 * 0.001 * 0.7  # two readings: Student's t of one degree of freedom, from memory


def test_a_start_from_readings_is_the_start_of_the_trace_that_was_made_of_them() -> None:
    trace = trace_of([(0.4, 0, "rest"), (1.0, 9, "start")])
    filed = starts_of(trace, [SUPPLY])[0]
    driven = trace.set_volts > 0
    made = start_of_readings(
        trace.sent[driven] * TICK_S,
        trace.received[driven] * TICK_S,
        trace.volts[driven],
        trace.amps[driven],
        set_volts=9.0,
        began_s=filed.began_s,
        window_s=0.02,
        settle_s=0.012,
        name="",
    )
    assert np.array_equal(made.t_s, filed.t_s)
    assert np.array_equal(made.all_amps, filed.all_amps)
    assert (made.within_s, made.began_s) == pytest.approx((0.004, 0.4))


def test_a_start_cut_short_may_have_no_whole_reading() -> None:
    made = start_of_readings(
        [1.0], [1.008], [3.0], [0.5], set_volts=9.0, began_s=1.0, window_s=0.02, settle_s=0.012, name="start 1"
    )
    assert (len(made.t_s), len(made.all_t_s), made.readings_per_s) == (0, 1, 0.0)
