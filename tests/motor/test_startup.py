"""Starts found in a trace, and their figures."""

from dataclasses import replace

import numpy as np
import pytest

from benchlog.motor.startup import figures, starts_of, timing_of, zero_of
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


def test_figures_of_a_start() -> None:
    trace = trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (3, 9, "start")])
    zero = zero_of(trace)
    assert (zero.amps, zero.sigma_amps, zero.u_amps) == pytest.approx((0.004, 0.0, 0.0), abs=1e-6)
    found = figures(starts_of(trace, [SUPPLY])[0], lead_ohm=0.5, zero_amps=zero.amps)
    assert found.steady_amps == pytest.approx(0.2, abs=1e-6)
    assert found.peak_amps == pytest.approx(1.5, abs=1e-6)
    assert found.run_up_s == pytest.approx(0.1 * np.log(10), abs=0.02)
    assert found.motor_volts == pytest.approx(9 - 0.5 * 0.2, abs=1e-3)
    assert found.ripple_amps == pytest.approx(0.0, abs=1e-6)
    assert found.readings_per_s == pytest.approx(50.0)
    assert found.why == {}


def test_a_current_that_still_changes_has_no_steady_value() -> None:
    found = figures(starts_of(trace_of([(0.4, 0, "rest"), (1.0, 9, "start")], tau=1.0), [SUPPLY])[0])
    assert found.steady_amps is None
    assert found.run_up_s is None
    assert found.motor_volts is None
    assert "still changing" in found.why["motor_volts"]
    assert "still changing" in found.why["steady_amps"]


def test_a_run_up_over_before_its_first_reading_is_not_told() -> None:
    found = figures(starts_of(trace_of([(0.4, 0, "rest"), (1.0, 9, "start")], tau=0.002), [SUPPLY])[0])
    assert found.run_up_s is None
    assert "before the first" in found.why["run_up_s"]


def test_energy_counts_the_time_before_the_first_whole_reading() -> None:
    made = starts_of(trace_of([(0.4, 0, "rest"), (3.0, 9, "start")]), [SUPPLY])[0]
    found = figures(made, zero_amps=0.004).energy_j
    lasted_s = float(made.t_s[-1])
    true = 9 * (0.2 * lasted_s + 1.3 * 0.1 * (1 - np.exp(-lasted_s / 0.1)))
    assert found == pytest.approx(true, rel=0.05)


def test_a_surge_within_the_ripple_has_no_run_up() -> None:
    made = starts_of(trace_of([(0.4, 0, "rest"), (3.0, 9, "start")], tau=0.012), [SUPPLY])[0]
    source = np.random.default_rng(1)
    for _ in range(20):
        noise = source.normal(0, 0.01, len(made.amps))
        noisy = replace(made, amps=made.amps + noise, all_amps=np.append(made.amps + noise, 0.4))
        assert figures(noisy).run_up_s is None
