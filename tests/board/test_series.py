"""Preferred values: what a series holds, and the nearest and neighbouring ones."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.board.series import SERIES, at_least, lies_on, nearest, neighbours, place

VALUES = st.floats(min_value=1e-12, max_value=1e9)


def test_e24_and_e12_have_the_values_that_are_no_rounded_geometric_series() -> None:
    # Source: IEC 60063 as published tables print it.
    assert {270, 330, 390, 470, 820} <= set(SERIES["E12"])
    assert {300, 360, 430} <= set(SERIES["E24"])
    differ = {round(100 * 10 ** (n / 24), -1) for n in range(24)} ^ set(SERIES["E24"])
    assert differ & set(SERIES["E24"]) == {270, 300, 330, 360, 390, 430, 470, 820}


def test_the_smaller_series_as_written_out() -> None:
    # From memory of the same tables.
    assert SERIES["E6"] == (100, 150, 220, 330, 470, 680)
    assert SERIES["E12"] == (100, 120, 150, 180, 220, 270, 330, 390, 470, 560, 680, 820)


@pytest.mark.parametrize(("series", "count"), [("E48", 48), ("E96", 96)])
def test_e48_and_e96_are_the_geometric_series_to_three_digits(series: str, count: int) -> None:
    # Computed: 100 · 10^(n/count), the rule of IEC 60063 for E48, E96 (from memory).
    assert SERIES[series] == tuple(round(100 * 10 ** (n / count)) for n in range(count))


@pytest.mark.parametrize("series", SERIES)
def test_a_series_rises_and_has_as_many_values_as_its_name_says(series: str) -> None:
    values = SERIES[series]
    assert len(values) == int(series[1:])
    assert list(values) == sorted(set(values))


@pytest.mark.parametrize(
    # Read off the table of the series.
    ("value", "series", "below", "above"),
    [
        (1500.0, "E12", 1200.0, 1800.0),
        (1500.0, "E24", 1300.0, 1600.0),
        (1000.0, "E12", 820.0, 1200.0),
        (0.82, "E12", 0.68, 1.0),
        (976.0, "E96", 953.0, 1000.0),
        (1.31, "E24", 1.3, 1.5),
        (95.0, "E6", 68.0, 100.0),
        (100e-12, "E24", 91e-12, 110e-12),
    ],
)
def test_neighbours_leave_the_value_itself_out(value: float, series: str, below: float, above: float) -> None:
    assert neighbours(value, series) == (below, above)


def test_nearest_goes_by_the_ratio() -> None:
    assert nearest(12.4, "E6") == 15.0
    assert nearest(12.2, "E6") == 10.0


def test_the_place_of_a_value_names_the_coarse_series_first_unless_its_code_is_a_fine_one() -> None:
    coarse, fine = place(1500.0), place(1500.0, fine=True)
    assert (coarse.series, coarse.below, coarse.above) == (("E12", "E24"), 1200.0, 1800.0)
    assert (fine.series, fine.below, fine.above) == (("E96",), 1470.0, 1540.0)
    assert place(4300.0).series == ("E24",)
    assert place(4990.0).series == ("E96",)
    assert (place(47300.0).series, place(47300.0).of) == ((), "E24")


@given(VALUES, st.sampled_from(list(SERIES)))
def test_the_neighbours_enclose_the_value_and_the_nearest_is_one_of_them_or_itself(value: float, series: str) -> None:
    below, above = neighbours(value, series)
    assert below < value < above
    assert above / below < 2.3
    assert lies_on(value, series) or nearest(value, series) in (below, above)


@given(st.sampled_from(list(SERIES)), st.data(), st.integers(-14, 8))
def test_every_value_of_a_series_is_found_on_it_in_every_decade(series: str, data: st.DataObject, power: int) -> None:
    value = float(f"{data.draw(st.sampled_from(SERIES[series]))}e{power}")
    assert lies_on(value, series)
    assert at_least(value, series) == nearest(value, series) == value
    below, above = neighbours(value, series)
    assert lies_on(below, series)
    assert lies_on(above, series)
    assert math.isclose(neighbours(below, series)[1], value)
    assert math.isclose(neighbours(above, series)[0], value)


@given(VALUES, st.sampled_from(list(SERIES)))
def test_the_next_one_up_is_never_below(value: float, series: str) -> None:
    up = at_least(value, series)
    assert up >= value * (1 - 1e-9)
    assert lies_on(up, series)
    assert neighbours(up, series)[0] < value


@pytest.mark.parametrize("value", [0.0, -1.0, math.nan, math.inf])
def test_what_lies_on_no_series_is_an_error(value: float) -> None:
    for asked in (lambda: neighbours(value, "E12"), lambda: nearest(value, "E12"), lambda: at_least(value, "E12")):
        with pytest.raises(ValueError, match="no series"):
            asked()
