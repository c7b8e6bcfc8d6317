"""One unit against limits: pass, fail and can't be told, and by how much."""

from dataclasses import replace

import msgspec
import numpy as np
import pytest

from benchlog.motor.fit import Fitted
from benchlog.motor.judging import about_starts, judge
from benchlog.motor.limits import Band, Judged, JudgedFigure
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import FIGURES
from tests.motor import known_good as kg

GOOD_OHM = Band(low=1.8, high=2.2, mean=2.0, spread=0.05, n=8, factor=3.7)


def judged(curves: list[Curve] | None = None, ohm: Fitted | None = None, count: int = 3, **times: float) -> Judged:
    """`curves` None: like the known good ones."""
    return judge(
        [kg.told(kg.fan(**times)) for _ in range(count)],
        [kg.curve(phase_s=0.005 * start) for start in range(count)] if curves is None else curves,
        kg.limits(),
        ohm=ohm,
        ohm_good=None if ohm is None else GOOD_OHM,
    )


def row(of: Judged, name: str) -> JudgedFigure:
    return next(row for row in of.rows if row.name == name)


def test_a_unit_like_the_known_good_ones_passes_with_its_margins() -> None:
    found = judged()
    assert found.passed is True
    assert [one.name for one in found.rows] == [kind.name for kind in FIGURES]
    run_up = row(found, "run_up_s")
    assert run_up.inside is True
    assert run_up.low is not None
    assert run_up.high is not None
    assert run_up.value == pytest.approx(0.48)
    assert run_up.margin == pytest.approx(min(0.48 - run_up.low, run_up.high - 0.48))
    assert found.curve_outside_share == 0
    assert found.curve_outside_at_s is None
    assert found.sentence == "It starts like the known good ones."
    assert found.because == "All 5 figures that have limits are inside."


def test_a_figure_outside_fails_the_unit_by_what_it_is_beyond_the_limit() -> None:
    found = judged(steady_amps=1.6)
    steady = row(found, "steady_amps")
    assert found.passed is False
    assert steady.inside is False
    assert steady.high is not None
    assert steady.margin == pytest.approx(steady.high - 1.6 * 0.25)
    assert steady.margin is not None
    assert steady.margin < 0
    assert [one.name for one in found.rows if one.inside is False] == ["steady_amps"]


def test_the_mean_of_the_starts_is_judged() -> None:
    limits = kg.limits(curved=False)
    high = limits.bands["peak_amps"].high
    assert high is not None
    values = [0.98 * high, 0.99 * high, 1.02 * high]
    found = judge([kg.told({**kg.FAN, "peak_amps": value}) for value in values], [], limits)
    assert row(found, "peak_amps").value == pytest.approx(sum(values) / 3)
    assert found.passed is True


@pytest.mark.parametrize("starts", [1, 3])
def test_an_interval_over_the_limit_is_said_and_changes_nothing(starts: int) -> None:
    """By how one motor repeats; where units were started once, by the interval of the figure itself."""
    limits = kg.limits(starts=starts, curved=False)
    high, within = limits.bands["peak_amps"].high, limits.within.get("peak_amps")
    assert high is not None
    half = 0.002 * high if within is None else 1.96 * within / 3**0.5
    for off, passed, close in ((-1.5, True, False), (-0.5, True, True), (0.5, False, True), (1.5, False, False)):
        found = judge([kg.told({**kg.FAN, "peak_amps": high + off * half})] * starts, [], limits)
        assert found.passed is passed
        assert ("reaches over the limit" in row(found, "peak_amps").why) is close
        assert ("Inside, but its interval reaches over a limit: peak readback." in found.because) is (close and passed)


def test_a_figure_that_is_not_told_leaves_it_open() -> None:
    limits = kg.limits(curved=False)
    found = judge(kg.without([kg.told(kg.FAN)] * 3, "run_up_s"), [], limits)
    assert found.passed is None
    assert row(found, "run_up_s").inside is None
    assert row(found, "run_up_s").value is None
    assert found.sentence == "It can't be told: run-up (lost in the ripple)."


def test_a_figure_outside_fails_even_where_another_is_not_told() -> None:
    found = judge(kg.without([kg.told(kg.fan(steady_amps=2.0))] * 3, "run_up_s"), [], kg.limits(curved=False))
    assert found.passed is False


def test_no_start_at_all_is_not_told() -> None:
    found = judge([], [], kg.limits())
    assert found.passed is None
    assert all(one.inside is None for one in found.rows)


def test_a_figure_without_limits_decides_nothing() -> None:
    limits = kg.limits(curved=False)
    without = msgspec.structs.replace(
        limits, bands={n: b for n, b in limits.bands.items() if n != "ripple_amps"}, why={"ripple_amps": "too coarse"}
    )
    found = judge([kg.told(kg.fan(ripple_amps=50.0))] * 3, [], without)
    assert found.passed is True
    assert row(found, "ripple_amps").inside is None
    assert row(found, "ripple_amps").value == pytest.approx(0.45)
    assert row(found, "ripple_amps").why == "no limits: too coarse"


def test_without_any_limits_nothing_is_judged() -> None:
    none = msgspec.structs.replace(kg.limits(), bands={}, curve=None)
    found = judge([kg.told(kg.FAN)] * 3, [kg.curve()], none)
    assert found.passed is None
    assert found.sentence == "It can't be judged: there are no limits for any figure."


def test_a_curve_outside_fails_and_says_where() -> None:
    bump = kg.curve()
    bump = replace(bump, amps=bump.amps + 0.6 * np.exp(-(((bump.t_s - 0.7) / 0.05) ** 2)))
    found = judged(curves=[bump] * 3)
    assert found.passed is False
    assert found.curve_outside_share is not None
    assert 0 < found.curve_outside_share < 0.3
    assert found.curve_outside_at_s == pytest.approx(0.7, abs=0.03)
    assert found.sentence == "Its curve is unlike those of the known good ones."
    assert "the curve is outside, most at 0." in found.because


@pytest.mark.parametrize("curves", [[], [replace(kg.curve(), t_s=kg.curve().t_s - 1.0)]])
def test_a_curve_that_is_missing_or_too_short_leaves_it_open(curves: list[Curve]) -> None:
    found = judged(curves=curves)
    assert found.passed is None
    assert found.curve_outside_share is None
    assert found.sentence.startswith("It can't be told: the curve (")


def test_starts_read_at_another_pace_are_not_judged() -> None:
    found = judge([kg.told(kg.fan(peak_amps=3.0), interval_s=0.1)] * 3, [kg.curve()], kg.limits())
    assert found.passed is None
    assert found.sentence == "Not judged: read every 0.10 s, the known good ones every 0.02 s."
    assert row(found, "peak_amps").inside is None
    assert row(found, "peak_amps").value == pytest.approx(4.2)


def test_fewer_starts_are_judged_by_wider_limits_and_without_the_curve() -> None:
    fewer, all_of_them = judged(count=1), judged(count=3)
    one, three = row(fewer, "run_up_s"), row(all_of_them, "run_up_s")
    assert fewer.passed is True
    assert fewer.curve_outside_share is None
    assert "Judged by 1 of the 3 starts" in fewer.because
    assert one.low is not None
    assert three.low is not None
    assert one.low < three.low
    assert one.high is not None
    assert three.high is not None
    assert one.high > three.high


def test_limits_widen_by_what_one_motor_spreads() -> None:
    """Computed: 0.03² between, 0.04² within, the mean of 4 starts: 0.0361 in all; of one start 0.05."""
    band = Band(low=0.9, high=1.12, mean=1.0, spread=(0.03**2 + 0.04**2 / 4) ** 0.5, n=9, factor=3.0)
    wider = about_starts(band, 0.04, 1, 4)
    times = 0.05 / band.spread
    assert wider.low == pytest.approx(1 - 0.1 * times)
    assert wider.high == pytest.approx(1 + 0.12 * times)
    assert about_starts(band, 0.04, 4, 4) == band
    assert about_starts(band, 10.0, 1, 4).low is None


def test_the_resistance_is_told_beside_and_decides_nothing() -> None:
    found = judged(ohm=Fitted(value=3.0, low=2.9, high=3.1))
    beside = row(found, "ohms")
    assert found.passed is True
    assert beside.inside is False
    assert beside.margin == pytest.approx(-0.8)
    assert "decides nothing" in beside.why


def test_what_was_judged_comes_back_from_json_as_it_was() -> None:
    found = judged(steady_amps=1.6)
    assert msgspec.json.decode(msgspec.json.encode(found), type=Judged) == found


def paused(from_s: float, for_s: float, start: Curve) -> Curve:
    """The same where nothing was read for a while."""
    kept = (start.t_s <= from_s) | (start.t_s >= from_s + for_s)
    return replace(start, t_s=start.t_s[kept], volts=start.volts[kept], amps=start.amps[kept])


@pytest.mark.parametrize("from_s", [0.0, 0.02, 0.1])
@pytest.mark.parametrize("steady", [1.0, 1.6])
def test_where_nothing_was_read_for_a_while_nothing_is_judged(from_s: float, steady: float) -> None:
    """Over the steep part a line between the readings would be far outside; a figure outside may be the pause's too."""
    curves = [kg.curve(phase_s=0.005 * start) for start in range(3)]
    curves[1] = paused(from_s, 0.25, curves[1])
    found = judged(curves, steady_amps=steady)
    assert found.passed is None
    assert found.curve_outside_share is None
    assert all(one.inside is None for one in found.rows)
    longest_s = np.diff(np.maximum(curves[1].t_s, 0.0)).max()
    assert found.sentence == f"Not judged: {1e3 * longest_s:.0f} ms without a reading."


@pytest.mark.parametrize(("steady", "passed"), [(1.0, True), (1.6, False)])
def test_a_pause_over_which_known_good_ones_stay_straight_is_judged(steady: float, passed: bool) -> None:
    curves = [kg.curve(phase_s=0.005 * start) for start in range(3)]
    found = judged([paused(0.8, 0.25, curves[0]), *curves[1:]], steady_amps=steady)
    assert (found.passed, found.curve_outside_share) == (passed, 0)


def test_without_a_band_nobody_knows_what_a_pause_hides() -> None:
    curves = [kg.curve(phase_s=0.005 * start) for start in range(3)]
    limits = kg.limits(curved=False)
    figures = [kg.told(kg.FAN)] * 3
    assert judge(figures, curves, limits).passed is True
    assert judge(figures, [paused(0.8, 0.25, curves[0]), *curves[1:]], limits).passed is None


def test_a_pause_no_longer_than_the_pace_explains_or_before_the_start_is_judged() -> None:
    curves = [kg.curve(phase_s=0.005 * start) for start in range(3)]
    for from_s, for_s in ((0.8, 0.03), (-0.08, 0.075)):
        assert judged([paused(from_s, for_s, curves[0]), *curves[1:]]).passed is True
