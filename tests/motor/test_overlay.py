"""Starts laid over one another: found in a run, aligned by fit, their mean and spread; a curve nobody here wrote."""

import math
from dataclasses import replace
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest

from benchlog.motor.align import Averages
from benchlog.motor.overlay import Curve, at_motor, curves_of, overlay
from benchlog.motor.startup import Values
from benchlog.records import TICK_S, Event, EventKind
from tests.motor.five_solvers import COULOMB_NM, HAVE_NGSPICE, VOLTS, WINDOW_S, Exact, ngspice_start, over_window
from tests.motor.test_startup import SUPPLY, step, trace_of

SIGMA_A = 0.002
EXACT = Exact(case="A")


def curve(number: int, t_s: npt.NDArray[Any], amps: npt.NDArray[Any], *, late_s: float = 0.0) -> Curve:
    """`late_s`: by how much its trigger came too late, so that its times are too small."""
    return Curve(
        name=f"start {number}",
        run=1,
        number=number,
        t_s=t_s - late_s,
        volts=np.where(t_s > 0, VOLTS, 0.0),
        amps=amps,
        window_s=WINDOW_S,
    )


def shifted(count: int, per_s: float, *, seed: int = 1, sigma: float = SIGMA_A) -> tuple[list[Curve], Values]:
    """Starts whose triggers are off by up to half a reading either way; and by how much, about their mean."""
    source, pace_s = np.random.default_rng(seed), 1 / per_s
    late_s = source.uniform(-0.5, 0.5, count) * pace_s
    made = []
    for number in range(count):
        t_s = source.uniform(-0.1, -0.1 + pace_s) + pace_s * np.arange(int(1.5 * per_s))
        amps = EXACT.averaged(t_s) + source.normal(0, sigma, len(t_s))
        made.append(curve(number + 1, t_s, amps, late_s=float(late_s[number])))
    return made, late_s - np.mean(late_s)


def captured(number: int, trigger_s: float, began_s: float, volts: float) -> Event:
    return Event(
        t_s=began_s + 1.0,
        kind=EventKind.START,
        text=f"Start {number} of 2.",
        values={"number": number, "trigger_s": trigger_s, "began_s": began_s, "volts": volts},
    )


def test_every_captured_start_of_a_run_is_a_curve_with_what_came_before_its_trigger() -> None:
    trace = trace_of(
        [(0.4, 0, "off"), (1, 0, "rest"), (1, 9, "start"), (1, 0, "rest"), (1, 9, "start"), (0.2, 11, "start")]
    )
    events = [SUPPLY, step(1.3, "start 1"), captured(1, 1.4, 1.4, 9.0), captured(2, 3.43, 3.4, 9.0)]
    first, second = curves_of(trace, events, run=7, before_s=0.1)
    assert [(one.name, one.number, one.run) for one in (first, second)] == [("start 1", 1, 7), ("start 2", 2, 7)]
    assert first.t_s[0] == pytest.approx(-0.1, abs=0.021)
    assert first.t_s[-1] == pytest.approx(1.0, abs=0.03)
    assert np.sum(first.volts == 0) == pytest.approx(0.1 / 0.02, abs=1)
    # a reading's instant is the middle of what it averaged: sent, less half a window, plus half the time to the reply
    sent_s = trace.sent[trace.set_volts > 0][0] * TICK_S
    assert first.t_s[first.volts > 0][0] == pytest.approx(sent_s - 1.4 + 0.5 * (0.008 - 0.02))
    assert second.t_s[0] == pytest.approx(-0.1, abs=0.021)
    assert second.volts.max() == 9.0, "what follows at other volts is another part of the run"
    assert first.window_s == 0.02


def test_a_run_without_captured_starts_has_no_curves() -> None:
    assert (
        curves_of(trace_of([(0.4, 0, "rest"), (1, 9, "start")]), [SUPPLY, step(0.3, "start 1")], run=1, before_s=0.1)
        == []
    )


def test_the_leads_take_their_drop_off_the_volts_and_nothing_else() -> None:
    t_s = np.arange(10) * 0.02
    made = curve(1, t_s, np.full(10, 0.4))
    told = at_motor(made, 0.5)
    assert told.volts == pytest.approx(made.volts - 0.2)
    assert np.array_equal(told.amps, made.amps)


def test_the_mean_is_the_true_average_and_the_spread_shrinks_with_alignment() -> None:
    made, _ = shifted(40, 100.0)
    told = overlay(made)
    within = (told.grid_s > 0.03) & (told.grid_s < 1.0)
    assert np.max(np.abs(told.mean_amps - EXACT.averaged(told.grid_s))[within]) < 0.02
    late = told.grid_s[within] > 0.5
    assert np.mean(told.spread_amps[within][late]) == pytest.approx(SIGMA_A, rel=0.3)
    assert told.mean_volts[within] == pytest.approx(VOLTS)
    assert np.all(np.diff(told.grid_s) == pytest.approx(0.01))
    assert told.count[within].min() == 40


def test_what_a_curve_does_not_cover_is_not_counted() -> None:
    t_s = 0.02 * np.arange(60)
    whole, short = curve(1, t_s, EXACT.averaged(t_s)), curve(2, t_s[:20], EXACT.averaged(t_s[:20]))
    kept = (t_s < 0.5) | (t_s > 0.8)
    holed = curve(3, t_s[kept], EXACT.averaged(t_s[kept]))
    told = overlay([whole, short, holed])
    at = {second: int(np.argmin(np.abs(told.grid_s - second))) for second in (0.1, 0.44, 0.6, 1.1)}
    assert [int(told.count[at[second]]) for second in (0.1, 0.44, 0.6, 1.1)] == [3, 2, 1, 2]
    assert math.isnan(told.spread_amps[at[0.6]])
    assert told.mean_amps[at[0.6]] == pytest.approx(whole.amps[30])


def test_a_grid_never_outgrows_memory() -> None:
    t_s = np.concatenate([1e-4 * np.arange(50), [1000.0]])
    told = overlay([curve(n, t_s, np.ones(51)) for n in (1, 2)])
    assert len(told.grid_s) <= 5001


def test_one_curve_is_its_own_mean_and_none_is_refused() -> None:
    made, _ = shifted(1, 50.0)
    told = overlay(made)
    assert np.all(np.isnan(told.spread_amps))
    assert told.offsets_s.tolist() == [0.0]
    with pytest.raises(ValueError, match="two readings"):
        overlay([])
    with pytest.raises(ValueError, match="two readings"):
        overlay([replace(made[0], t_s=made[0].t_s[:1], amps=made[0].amps[:1], volts=made[0].volts[:1])])


def test_curves_of_no_current_at_all_are_laid_as_they_are() -> None:
    t_s = 0.02 * np.arange(60)
    told = overlay([curve(n, t_s, np.zeros(60)) for n in (1, 2)])
    assert told.offsets_s.tolist() == [0.0, 0.0]
    assert np.all(told.mean_amps == 0.0)


def test_an_empty_curve_among_others_is_passed_over() -> None:
    made, _ = shifted(3, 50.0)
    empty = replace(made[0], t_s=np.array([]), amps=np.array([]), volts=np.array([]))
    told = overlay([*made, empty])
    assert told.count.max() == 3
    assert told.offsets_s[-1] == 0.0


@pytest.mark.skipif(not HAVE_NGSPICE, reason="ngspice is not installed")
def test_starts_read_off_a_curve_by_ngspice_fall_onto_it() -> None:
    t_s, amps, _ = ngspice_start(COULOMB_NM["C"])
    fine = np.concatenate([[-1.0], t_s])
    averages = Averages(fine, np.concatenate([[0.0], amps]))
    source, pace_s, made = np.random.default_rng(6), 0.02, []
    late_s = source.uniform(-0.5, 0.5, 20) * pace_s
    for number in range(20):
        at_s = source.uniform(-0.1, -0.08) + pace_s * np.arange(42)
        read = over_window(averages, at_s) + source.normal(0, SIGMA_A, len(at_s))
        made.append(curve(number + 1, at_s, np.round(read, 3), late_s=float(late_s[number])))
    told = overlay(made)
    error = told.offsets_s - (late_s - np.mean(late_s))
    assert math.sqrt(np.mean(error**2)) < 0.1 * float(np.std(late_s))
    within = (told.grid_s > 0.04) & (told.grid_s < 0.7)
    true = over_window(averages, told.grid_s[within] + float(np.mean(late_s)))
    assert math.sqrt(np.mean((told.mean_amps[within] - true) ** 2)) < 0.01
