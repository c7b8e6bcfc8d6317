"""The calculators against published figures, a second way of computing, and their own descriptions."""

import dataclasses
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from benchlog.board.calculators import CALCULATORS, MOST_VOLTS, Calculation, Calculator, Result, calculate
from benchlog.board.series import lies_on
from benchlog.errors import Refused
from benchlog.recovery.ceilings import PROGRAM_VOLTS

EXAMPLES: dict[str, dict[str, float]] = {
    "divider": {"supply": 12.0, "upper": 10e3, "lower": 4700.0},
    "led": {"supply": 12.0, "forward": 2.1, "current": 0.02},
    "gate": {"drive": 12.0, "resistor": 100.0, "pulldown": 10e3, "charge": 12e-9},
    "charge-current": {"resistor": 2000.0},
    "charge-resistor": {"current": 0.5},
    "days": {"capacity": 2.2, "draw": 0.005},
}


def result(done: Calculation, name: str) -> Result:
    return next(one for one in done.results if one.name == name)


@pytest.mark.parametrize(
    # Source: data of a linear lithium charger with a 1200 V/R program pin, as published.
    ("ohm", "amps"),
    [(1200.0, 1.0), (2000.0, 0.6), (4000.0, 0.3), (10e3, 0.12)],
)
def test_the_charge_current_is_the_published_one_within_a_tenth(ohm: float, amps: float) -> None:
    (current,) = calculate("charge-current", {"resistor": ohm}).results
    assert current.value == pytest.approx(amps, rel=1e-12)
    assert [current.low, current.high] == pytest.approx([0.9 * amps, 1.1 * amps])
    back = calculate("charge-resistor", {"current": amps})
    assert result(back, "exactly").value == pytest.approx(ohm, rel=1e-12)


def test_what_is_commonly_read_otherwise_is_said_with_the_relation_s_own_figure() -> None:
    # 1.5 kΩ as about 700 mA: common practice, no source; the relation gives 800 mA.
    done = calculate("charge-current", {"resistor": 1500.0})
    assert done.results[0].value == pytest.approx(0.8)
    assert any("700 mA (common practice, no source)" in remark for remark in done.remarks)
    assert "700 mA" not in calculate("charge-current", {"resistor": 2000.0}).text


def test_the_resistor_s_own_tolerance_widens_the_limits() -> None:
    (current,) = calculate("charge-current", {"resistor": 2000.0, "tolerance": 5.0}).results
    assert [current.low, current.high] == pytest.approx([0.9 * 0.6 / 1.05, 1.1 * 0.6 / 0.95])


def test_a_current_the_cell_may_not_bear_is_said_and_a_resistor_for_it_refused() -> None:
    # Computed: 600 mA + 10 % is 660 mA.
    assert "TOO MUCH" in calculate("charge-current", {"resistor": 2000.0, "cell-limit": 0.65}).text
    assert "Within the cell's 670 mA" in calculate("charge-current", {"resistor": 2000.0, "cell-limit": 0.67}).text
    assert "Not compared" in calculate("charge-current", {"resistor": 2000.0}).text
    with pytest.raises(Refused, match="660 mA could flow with 2 kΩ, above the cell's 650 mA"):
        calculate("charge-resistor", {"current": 0.6, "cell-limit": 0.65})


def test_where_a_cell_is_charged_swollen_ones_are_refused_and_local_rules_come_first() -> None:
    for name in ("charge-current", "charge-resistor", "days"):
        cautions = " ".join(CALCULATORS[name].cautions)
        assert "swollen" in cautions
        assert "own data" in cautions
        assert "Local rules" in cautions


def test_a_divider_and_its_corners() -> None:
    # Computed by hand: 12 V · 4.7/14.7; corners 4.465/(10.5 + 4.465) and 4.935/(9.5 + 4.935).
    done = calculate("divider", EXAMPLES["divider"])
    output = result(done, "output")
    assert [output.value, output.low, output.high] == pytest.approx(
        [3.836735, 12 * 4.465 / 14.965, 12 * 4.935 / 14.435]
    )
    assert result(done, "current").value == pytest.approx(12 / 14700)
    assert result(done, "source resistance").value == pytest.approx(47e6 / 14700)


def test_an_led_gets_the_next_resistor_up_with_its_current_and_power() -> None:
    # Computed by hand: 9.9 V / 20 mA is 495 Ω; 510 Ω takes 19.4 mA and 192 mW.
    done = calculate("led", EXAMPLES["led"])
    assert result(done, "exactly").value == pytest.approx(495.0)
    assert result(done, "next E24 up").value == 510.0
    assert result(done, "current with it").value == pytest.approx(9.9 / 510)
    power = result(done, "power in it")
    assert power.value == pytest.approx(9.9**2 / 510)
    assert power.high == pytest.approx((12 - 0.9 * 2.1) ** 2 / (0.95 * 510))


def test_an_led_that_needs_all_of_the_supply_is_refused_or_may_stay_dark() -> None:
    with pytest.raises(Refused, match="3 V is not above the LED's 3 V"):
        calculate("led", {"supply": 3.0, "forward": 3.0, "current": 0.01})
    done = calculate("led", {"supply": 3.0, "forward": 2.9, "current": 0.01})
    assert result(done, "current with it").low == 0.0
    assert "may stay dark" in done.text


def test_a_pulldown_at_the_gate_divides_and_discharges() -> None:
    # Computed by hand: 12 V · 10/10.1; 12 nC/12 V is 1 nF; 99.0099 Ω · 1 nF; 10 kΩ · 1 nF; 12 V/100 Ω.
    done = calculate("gate", EXAMPLES["gate"])
    assert [one.value for one in done.results] == pytest.approx([11.881188, 1e-9, 99.0099e-9, 10e-6, 0.12], rel=1e-6)


@pytest.mark.parametrize(
    ("capacity", "draw", "usable", "discharge"),
    [(2.2, 0.005, 80.0, 3.0), (7.0, 0.001, 50.0, 10.0), (0.2, 20e-6, 100.0, 20.0), (100.0, 1.5, 80.0, 0.5)],
)
def test_after_those_days_a_solver_finds_the_usable_charge_gone(
    capacity: float, draw: float, usable: float, discharge: float
) -> None:
    # Second way: scipy's solver on dQ/dt = −draw − kQ.
    rate = -math.log(1 - discharge / 100) / 30
    given_values = {"capacity": capacity, "draw": draw, "usable": usable, "self-discharge": discharge}
    (lasts,) = calculate("days", given_values).results

    solved = solve_ivp(
        lambda _day, held: -24 * draw - rate * held, (0.0, lasts.value), [capacity], rtol=1e-10, atol=1e-12
    )
    assert solved.y[0][-1] == pytest.approx(capacity * (1 - usable / 100), abs=1e-6 * capacity)


def test_without_self_discharge_days_are_charge_over_draw() -> None:
    # Computed by hand: 0.8 · 2.4 Ah / 10 mA is 192 h.
    done = calculate("days", {"capacity": 2.4, "draw": 0.01, "self-discharge": 0.0, "tolerance": 0.0})
    (lasts,) = done.results
    assert [lasts.value, lasts.low, lasts.high] == pytest.approx([8.0, 8.0, 8.0])
    assert done.text.startswith("Days between charges: lasts 8 days; from capacity 2.4 Ah, draw 10 mA, usable 80 %")


def test_every_calculator_has_an_example_here_and_describes_itself() -> None:
    assert EXAMPLES.keys() == CALCULATORS.keys()
    for name, one in CALCULATORS.items():
        assert one.name == name
        assert min(map(len, (one.words, one.formula, one.source))) > 0
        names = [asked.name for asked in one.inputs]
        assert len(set(names)) == len(names)
        for asked in one.inputs:
            assert asked.low < asked.high
            assert asked.default is None or asked.low <= asked.default <= asked.high
            assert not (asked.optional and asked.default is not None)
            assert asked.unit != "V" or asked.high == MOST_VOLTS


def test_no_volts_above_the_program_s_own_bound() -> None:
    assert MOST_VOLTS == PROGRAM_VOLTS


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_result_is_one_line_with_every_figure_and_input(name: str) -> None:
    done = calculate(name, EXAMPLES[name])
    assert [(one.name, one.unit) for one in done.results] == list(CALCULATORS[name].gives)
    assert "\n" not in done.text
    for one in done.results:
        assert one.text in done.text
        assert one.low <= one.value <= one.high
    for key in done.given:
        assert key in done.text


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_missing_an_unknown_and_an_out_of_range_input_are_refused_by_name(name: str) -> None:
    example = EXAMPLES[name]
    for key in example:
        without = {other: value for other, value in example.items() if other != key}
        with pytest.raises(Refused, match=f"{name}: {key} is missing"):
            calculate(name, without)
    with pytest.raises(Refused, match=f'{name}: "depth" is none of its inputs'):
        calculate(name, {**example, "depth": 1.0})
    for asked in CALCULATORS[name].inputs:
        for value in (asked.low - 1e-3 * asked.high, asked.high * 1.001, math.nan, math.inf, -math.inf):
            with pytest.raises(Refused, match=f"{name}: {asked.name}: "):
                calculate(name, {**example, asked.name: value})


def test_a_calculator_that_is_none_is_refused_with_the_names_there_are() -> None:
    with pytest.raises(Refused, match='"tide" is none of divider, led, gate'):
        calculate("tide", {})


def drawn(calculator: Calculator) -> st.SearchStrategy[dict[str, float]]:
    return st.fixed_dictionaries(
        {asked.name: st.floats(asked.low, asked.high) for asked in calculator.inputs if not asked.optional}
    )


@settings(max_examples=300)
@given(st.sampled_from(list(CALCULATORS.values())), st.data())
def test_anything_within_its_ranges_is_refused_or_gives_finite_figures_within_their_limits(
    calculator: Calculator, data: st.DataObject
) -> None:
    try:
        done = calculate(calculator.name, data.draw(drawn(calculator)))
    except Refused:
        return
    for one in done.results:
        assert math.isfinite(one.low)
        assert math.isfinite(one.high)
        assert one.low <= one.value * (1 + 1e-12)
        assert one.value <= one.high * (1 + 1e-12)
    assert done.text


@settings(max_examples=200)
@given(st.data())
def test_inside_the_tolerance_no_figure_leaves_its_limits(data: st.DataObject) -> None:
    share = st.floats(-0.05, 0.05)
    upper, lower = 1 + data.draw(share), 1 + data.draw(share)
    cases = (("divider", ("upper", "lower")), ("gate", ("resistor", "pulldown")))
    for name, (first, second) in cases:
        nominal = calculate(name, EXAMPLES[name])
        example = EXAMPLES[name]
        off = {**example, first: example[first] * upper, second: example[second] * lower}
        for was, one in zip(nominal.results, calculate(name, off).results, strict=True):
            assert was.low * (1 - 1e-12) <= one.value <= was.high * (1 + 1e-12)


@given(st.floats(0.12, 1.0))
def test_a_program_resistor_is_a_preferred_value_that_never_gives_more_than_was_wanted(amps: float) -> None:
    done = calculate("charge-resistor", {"current": amps})
    chosen = result(done, "next E24 up").value
    assert lies_on(chosen, "E24")
    assert result(done, "current with it").value <= amps * (1 + 1e-9)


def test_descriptions_can_not_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        CALCULATORS["days"].inputs[0].low = 0.0  # type: ignore[misc]
