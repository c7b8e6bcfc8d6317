"""Words for what is outside: each pattern, and that none says more than it shows."""

import re

import pytest

from benchlog.motor.fit import Fitted
from benchlog.motor.judging import judge
from benchlog.motor.limits import Band, Judged
from benchlog.motor.start_words import Signs, words_for
from tests.motor import known_good as kg

LIMITS = kg.limits(curved=False)
GOOD_OHM = Band(low=1.8, high=2.2, mean=2.0, spread=0.05, n=8, factor=3.7)
AS_GOOD, MORE_OHM = Fitted(value=2.0, low=1.9, high=2.1), Fitted(value=2.8, low=2.7, high=2.9)


def judged(ohm: Fitted | None = None, **times: float) -> Judged:
    return judge([kg.told(kg.fan(**times))] * 3, [], LIMITS, ohm=ohm, ohm_good=GOOD_OHM)


@pytest.mark.parametrize(
    ("times", "sentence"),
    [
        ({"steady_amps": 2.0, "run_up_s": 1.3, "energy_j": 1.5}, "It starts slowly: friction, not the winding."),
        ({"steady_amps": 1.3, "run_up_s": 1.69}, "It starts slowly: friction or a weak magnet, not the winding."),
        ({"steady_amps": 2.0}, "It turns harder: friction or load, not the winding."),
        ({"steady_amps": 0.6}, "It draws less when it runs: it turns more freely, or with less load."),
        (
            {"run_up_s": 1.5},
            "It starts slowly and then draws what the others do: more to set moving, more resistance or a weaker "
            "magnet.",
        ),
        (
            {"peak_amps": 0.77, "run_up_s": 1.3},
            "It draws less from the first reading on: more resistance in the circuit (brush, lead, winding).",
        ),
        (
            {"peak_amps": 1.3, "steady_amps": 1.5},
            "It draws more from the first reading on, and keeps it up: friction or shorted turns.",
        ),
        (
            {"peak_amps": 1.3, "steady_amps": 1.5, "run_up_s": 1.5},
            "It draws more from the first reading on, and starts slowly: signs of shorted turns or a weak magnet.",
        ),
        (
            {"peak_amps": 1.3, "run_up_s": 1.5},
            "It starts slowly and then draws what the others do: more to set moving, or a weaker magnet.",
        ),
        ({"peak_amps": 1.3}, "It draws more at first: less resistance in the circuit, or a colder winding."),
        ({"ripple_amps": 2.0}, "Its current is rougher: brushes, contact, or something that catches."),
        ({"energy_j": 1.4}, "It takes more energy: friction, load or a slower start."),
        ({"energy_j": 0.6}, "It is outside in energy."),
    ],
)
def test_each_pattern_has_its_words(times: dict[str, float], sentence: str) -> None:
    found = judged(None, **times)
    assert found.passed is False
    assert found.sentence == sentence


def test_what_is_like_the_others_is_the_reason() -> None:
    found = judged(ohm=AS_GOOD, steady_amps=2.0, run_up_s=1.3)
    assert found.sentence == "It starts slowly: friction, not the winding."
    assert found.because == "Resistance and peak are like the others."
    assert judged(steady_amps=2.0, run_up_s=1.3).because == "Peak is like the others."


def test_where_nothing_is_like_the_others_the_reason_is_what_is_outside() -> None:
    because = judged(peak_amps=1.3, steady_amps=1.5, run_up_s=1.5).because
    assert because.startswith("Peak readback 1.82 A is above 1.")
    assert "steady current 375 mA is above" in because
    assert judged(peak_amps=1.3, steady_amps=1.5).because == "Run-up is like the others."


def test_a_value_just_above_its_limit_is_told_with_as_many_digits_as_show_it() -> None:
    high = kg.limits(curved=False).bands["steady_amps"].high
    assert high is not None
    words = judged(peak_amps=1.3, steady_amps=1.0001 * high / kg.FAN["steady_amps"], run_up_s=1.5).because
    ((value, bound),) = re.findall(r"steady current ([\d.]+) mA is above ([\d.]+) mA", words)
    assert float(value) > float(bound)
    assert float(value) == pytest.approx(1000.1 * high, abs=0.1)


def test_the_winding_is_not_cleared_where_its_resistance_is_not_like_the_others() -> None:
    found = judged(ohm=MORE_OHM, steady_amps=2.0, run_up_s=1.3)
    assert "winding" not in found.sentence
    assert found.sentence == "It is outside in run-up and steady current."


def test_shorted_turns_alone_are_said_only_of_a_lower_resistance() -> None:
    less = Fitted(value=1.5, low=1.4, high=1.6)
    assert judged(ohm=less, peak_amps=1.3, steady_amps=1.5).sentence.endswith(": signs of shorted turns.")
    assert judged(ohm=AS_GOOD, peak_amps=1.3, steady_amps=1.5).sentence.endswith(": friction or shorted turns.")


def test_a_slow_start_with_the_resistance_of_the_others_is_not_put_down_to_resistance() -> None:
    assert judged(ohm=AS_GOOD, run_up_s=1.5).sentence.endswith("more to set moving, or a weaker magnet.")


def test_a_weak_magnet_alone_is_never_called_friction() -> None:
    """Source: the equations of a motor; the current at speed goes as 1/K, the time constant as 1/K²."""
    for k in (0.95, 0.9, 0.85, 0.8, 0.7):
        assert "friction, not" not in judged(steady_amps=1 / k, run_up_s=1 / k**2).sentence


def test_no_run_up_near_the_peak_may_not_have_turned() -> None:
    still = kg.without([kg.told(kg.fan(steady_amps=1.35 / 0.25))] * 3, "run_up_s")
    found = judge(still, [], LIMITS)
    assert found.passed is False
    assert found.sentence == "It draws much and shows no run-up: it may not have turned."


def test_figures_inside_and_a_curve_outside_are_said_as_that() -> None:
    told = words_for(Signs(signs={"peak_amps": 0}, also=frozenset(), curve_at_s=0.12), ())
    assert told.sentence == "Its curve is unlike those of the known good ones."
    assert told.because == "Its figures are inside; the curve is outside, most at 0.120 s."
