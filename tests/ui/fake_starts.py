"""Captured starts as the bench would have sent them: readings, START events with figures by the program's own maths.

A scenario is "good" or "slow", with a number after a colon for another motor of its kind: "slow:7".
"""

import math

import numpy as np

from benchlog.bench.frames import Request
from benchlog.motor.start_figures import event_values, figures_of
from benchlog.motor.startup import SETTLE_S, WINDOW_S, Zero, start_of_readings
from benchlog.outcome import Outcome
from benchlog.records import EventKind, RunKind
from benchlog.recovery.running_in import DRIFT, RESTART
from tests.ui.fake_script import SCRIPTS, Pen, Sampled, Script, _opening, _probing, _result

PACE_S, TOOK_S = 0.015, 0.01
OHM, STEADY_A, TAU_S = 2.2, 0.25, 0.14


def capture(request: Request, scenario: str) -> Script:
    test = request.start_test
    assert test is not None
    kind, _, motor = scenario.partition(":")
    source = np.random.default_rng(int(motor or 1))
    tau_s = TAU_S * source.normal(1.0, 0.05) * (1.9 if kind == "slow" else 1.0)
    steady_a = STEADY_A * source.normal(1.0, 0.04) * (1.35 if kind == "slow" else 1.0)
    peak_a = test.volts / OHM * source.normal(1.0, 0.01)
    noise = 0.004
    pen = Pen()
    yield from _opening(pen)
    yield from _probing(pen, "freed")
    for number in range(1, test.starts + 1):
        yield from _rest(pen, 0.4)
        volts = test.volts
        yield pen.event(
            EventKind.STEP,
            f"Start {number} of {test.starts}, from rest, at {volts:.2f} V.",
            name=f"start {number}",
            number=number,
            volts=volts,
            amps=2.0,
            delay_s=0.0,
        )
        began_s, read = pen.t_s + 0.002, []
        tau, steady, peak = tau_s * source.normal(1, 0.008), steady_a * source.normal(1, 0.006), peak_a
        while pen.t_s < began_s + test.on_s:
            pen.t_s += PACE_S * (1 + source.uniform(-0.15, 0.25))
            # A reading stands for the middle of what the supply averaged over.
            since = pen.t_s - began_s - WINDOW_S / 2 + TOOK_S / 2
            rise = 1 - math.exp(-max(since, 0.0) / 0.006)
            amps = (steady + (peak - steady) * math.exp(-max(since, 0.0) / tau)) * rise + source.normal(0, noise)
            sample = Sampled(round(pen.t_s, 4), volts - 0.02 * amps, max(0.0, amps), volts, True, "turning")
            read.append(sample)
            yield sample
        start = start_of_readings(
            [one.t_s for one in read],
            [one.t_s + TOOK_S for one in read],
            [one.volts for one in read],
            [one.amps for one in read],
            set_volts=volts,
            began_s=began_s,
            window_s=WINDOW_S,
            settle_s=SETTLE_S,
            name=f"start {number}",
        )
        figures = figures_of(start, lead_ohm=0.0, zero=Zero(amps=0.0, sigma_amps=noise, u_amps=0.002))
        yield pen.event(
            EventKind.START,
            f"Start {number} of {test.starts}: turning, a reading every 15 ms.",
            why="A turning rotor’s voltage was left when the current was taken away.",
            number=number,
            trigger_s=round(began_s, 6),
            began_s=round(began_s, 6),
            delay_s=0.0,
            volts=volts,
            amps=2.0,
            limited=False,
            turning="turning",
            cut="",
            **event_values(figures),
        )
        yield from pen.hold(0.2, 0.0, 0.0, "turning")
    yield from pen.hold(0.2, 0.0, 0.0, "resting", on=False)
    return _result(
        Outcome.RUNS,
        f"it started {test.starts} of {test.starts} times from rest, all captured",
        kicks=0,
        max_volts=test.volts,
        max_amps=peak_a,
    )


def _rest(pen: Pen, seconds: float) -> Script:
    for _ in range(round(seconds / PACE_S)):
        yield Sampled(round(pen.t_s, 4), 0.0, 0.0, 0.0, True, "resting")
        pen.t_s += PACE_S
    return _result(Outcome.RUNS, "", kicks=0, max_volts=0.0, max_amps=0.0)


def run_in(request: Request, scenario: str) -> Script:
    """A current that falls for half an hour and then stays; a reading a second."""
    asked = request.run_in
    assert asked is not None
    pen = Pen()
    yield from _opening(pen)
    yield pen.event(EventKind.STEP, "It runs. From here on a reading every 1 s.", name="run-in", volts=asked.volts)
    source = np.random.default_rng(3)
    for second in range(int(min(asked.at_most_s, 3000.0))):
        amps = 0.24 + 0.06 * math.exp(-second / 600.0) + source.normal(0, 0.002)
        yield Sampled(round(pen.t_s, 4), asked.volts, amps, asked.volts, True, "turning")
        pen.t_s += 1.0
    yield pen.event(EventKind.FINDING, DRIFT_WORDS, name=DRIFT, verdict="falling-then-flat", why="Ended after 50 min.")
    yield pen.event(EventKind.STEP, "Once more from rest, while it is warm.", name=RESTART, volts=asked.volts)
    yield from pen.start_up(1.0, asked.volts)
    yield pen.event(EventKind.LOOK, "Warm restart: turning.", name=RESTART, turning="turning")
    yield from pen.hold(0.2, 0.0, 0.0, "resting", on=False)
    return _result(Outcome.RUNS, "it ran; it started again warm", kicks=0, max_volts=asked.volts, max_amps=1.4)


DRIFT_WORDS = "The current fell from 300 mA to 240 mA and has been flat for the last 20 min."
SCRIPTS[RunKind.START_UP] = capture
SCRIPTS[RunKind.RUN_IN] = run_in
