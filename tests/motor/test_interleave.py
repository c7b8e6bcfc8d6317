"""One curve out of several starts: right where they were the same, and refused where they were not."""

import math
from dataclasses import replace
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest

from benchlog.motor.align import Averages
from benchlog.motor.interleave import interleaved
from benchlog.motor.overlay import Curve
from tests.motor.five_solvers import COULOMB_NM, HAVE_NGSPICE, PEAK, VOLTS, WINDOW_S, Exact, ngspice_start, over_window

PACE_S = 0.05
SIGMA_A = 0.002
EXACT = Exact(case="A")


def read(amps: npt.NDArray[Any], t_s: npt.NDArray[Any], number: int = 1) -> Curve:
    return Curve(
        name=f"start {number}",
        run=1,
        number=number,
        t_s=t_s,
        volts=np.full(len(t_s), VOLTS),
        amps=amps,
        window_s=WINDOW_S,
    )


def starts(source: np.random.Generator, count: int, differ: float = 0.0) -> tuple[list[Curve], list[float]]:
    """Read at 20 a second, each start a part of an interval later; `differ`: standard deviation of their size."""
    delays = [k * PACE_S / count for k in range(count)]
    made = []
    for number, delay_s in enumerate(delays):
        t_s = -0.1 + delay_s + PACE_S * np.arange(32)
        noise = source.normal(0, SIGMA_A, len(t_s))
        made.append(read(EXACT.averaged(t_s) * math.exp(source.normal(0, differ)) + noise, t_s, number + 1))
    return made, delays


@pytest.mark.parametrize("count", [4, 8])
def test_the_same_starts_fill_in_a_curve_that_one_readback_does_not_have(count: int) -> None:
    made, delays = starts(np.random.default_rng(1), count)
    told = interleaved(made, delays)
    assert told.same
    assert told.curve is not None
    assert told.interval_s == pytest.approx(PACE_S / count)
    assert np.all(np.diff(told.curve.t_s) > 0)
    at_s = np.arange(0.02, 1.3, 1e-3)
    true = EXACT.averaged(at_s)
    together, alone = (
        float(np.max(np.abs(np.interp(at_s, one.t_s, one.amps) - true))) for one in (told.curve, made[0])
    )
    assert together < 0.3 * alone
    assert together < 0.05 * float(true.max())


def test_it_stays_an_average_over_the_window_and_never_shows_the_inrush() -> None:
    told = interleaved(*starts(np.random.default_rng(1), 20))
    assert told.curve is not None
    assert told.curve.amps.max() < 0.9 * PEAK["A"][0]
    assert "average over the supply's window" in told.why
    assert "inrush" not in told.why


def test_where_no_start_was_read_is_said() -> None:
    made, delays = starts(np.random.default_rng(1), 4)
    assert "none of them was read" not in interleaved(made, delays).why
    kept = [(one.t_s < -0.005) | (one.t_s > 0.05) for one in made]
    holed = [
        replace(one, t_s=one.t_s[part], amps=one.amps[part], volts=one.volts[part])
        for one, part in zip(made, kept, strict=True)
    ]
    told = interleaved(holed, delays)
    assert told.same
    assert told.why.endswith("between -0.012 s and 0.050 s none of them was read")


def test_starts_that_are_the_same_are_seldom_refused() -> None:
    source = np.random.default_rng(2)
    told = [interleaved(*starts(source, 4)) for _ in range(100)]
    assert sum(not one.same for one in told) <= 1
    # what the test says before its least difference: it calls one in 200 by chance
    assert sum(one.z > 2.58 for one in told) <= 5


@pytest.mark.parametrize(("differ", "least"), [(0.05, 0.5), (0.1, 0.8), (0.2, 0.9)])
def test_starts_that_differ_are_refused_with_the_reason_and_without_a_curve(differ: float, least: float) -> None:
    source = np.random.default_rng(3)
    told = [interleaved(*starts(source, 4, differ)) for _ in range(60)]
    refused = [one for one in told if not one.same]
    assert len(refused) >= least * len(told)
    assert all(one.curve is None for one in refused)
    assert "not the same start" in refused[0].why
    assert refused[0].difference > 0.01


def test_one_start_that_ran_up_more_slowly_is_noticed() -> None:
    made, delays = starts(np.random.default_rng(4), 4)
    slow = EXACT.averaged(made[2].t_s / 1.2)  # a fifth more inertia
    told = interleaved([*made[:2], replace(made[2], amps=slow), made[3]], delays)
    assert not told.same
    assert told.curve is None


def test_what_cannot_fill_in_is_refused_with_the_reason() -> None:
    made, delays = starts(np.random.default_rng(5), 4)
    same_phase = interleaved(made, [0.0] * 4)
    assert (same_phase.same, same_phase.curve) == (False, None)
    assert "same phase" in same_phase.why
    other = interleaved([replace(made[0], window_s=0.01), *made[1:]], delays)
    assert "different windows" in other.why
    few = interleaved([replace(one, t_s=one.t_s[:9], amps=one.amps[:9], volts=one.volts[:9]) for one in made], delays)
    assert "too few readings" in few.why
    with pytest.raises(ValueError, match="one delay"):
        interleaved(made, delays[:2])


@pytest.mark.skipif(not HAVE_NGSPICE, reason="ngspice is not installed")
def test_a_start_by_ngspice_is_filled_in_to_its_own_average() -> None:
    t_s, amps, _ = ngspice_start(COULOMB_NM["A"])
    averages = Averages(np.concatenate([[-1.0], t_s]), np.concatenate([[0.0], amps]))
    source, count = np.random.default_rng(6), 8
    delays = [k * PACE_S / count for k in range(count)]
    made = []
    for number, delay_s in enumerate(delays):
        at_s = delay_s + PACE_S * np.arange(15)
        made.append(read(over_window(averages, at_s) + source.normal(0, 0.001, 15), at_s, number + 1))
    told = interleaved(made, delays)
    assert told.same
    assert told.curve is not None
    at_s = np.arange(0.03, 0.7, 1e-3)
    error = np.interp(at_s, told.curve.t_s, told.curve.amps) - over_window(averages, at_s)
    assert float(np.max(np.abs(error))) < 0.02
