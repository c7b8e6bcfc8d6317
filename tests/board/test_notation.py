"""Values of parts, typed and written."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.board.notation import read, write, write_two

UNITS = ["Ω", "V", "A", "F", "C", "W", "s", "Ah"]


@pytest.mark.parametrize(
    # What people type (common practice, no source); the letter as the point is IEC 60062's.
    ("text", "unit", "value"),
    [
        ("4k7", "Ω", 4700.0),
        ("4.7k", "Ω", 4700.0),
        ("4,7 kΩ", "Ω", 4700.0),
        ("4.7K", "Ω", 4700.0),
        ("4K7 ohm", "Ω", 4700.0),
        ("4.7 k\u2126", "Ω", 4700.0),
        ("4R7", "Ω", 4.7),
        ("470R", "Ω", 470.0),
        ("4M7", "Ω", 4.7e6),
        ("4m7", "Ω", 4.7e-3),
        ("0,5 A", "A", 0.5),
        ("500m", "A", 0.5),
        ("20 mA", "A", 0.02),
        ("12 nC", "C", 12e-9),
        ("100 pF", "F", 100e-12),
        ("0.1µF", "F", 0.1e-6),
        ("4u7", "F", 4.7e-6),
        ("2200 mAh", "Ah", 2.2),
        ("7Ah", "Ah", 7.0),
        ("5", "%", 5.0),
        ("5 %", "%", 5.0),
        ("3 days", "days", 3.0),
        ("٥", "V", 5.0),
    ],
)
def test_what_is_typed_is_read(text: str, unit: str, value: float) -> None:
    assert read(text, unit) == value


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("", "Ω"),
        ("k", "Ω"),
        ("4kk7", "Ω"),
        ("4k k", "Ω"),
        ("4k7k", "Ω"),
        ("4R7", "A"),
        ("5 V", "A"),
        ("5m", "%"),
        ("5k%", "%"),
        ("nan", "Ω"),
        ("inf", "Ω"),
        ("1e3", "Ω"),
        ("1.000,5", "Ω"),
        ("1" * 41, "Ω"),
        ("1" * 500_000, "Ω"),
    ],
)
def test_what_is_no_number_in_the_unit_is_an_error_and_its_text_kept_short(text: str, unit: str) -> None:
    with pytest.raises(ValueError, match="is not a number in") as wrong:
        read(text, unit)
    assert len(str(wrong.value)) < 80


@pytest.mark.parametrize(
    ("value", "unit", "digits", "text"),
    [
        (4700.0, "Ω", 3, "4.7 kΩ"),
        (47300.0, "Ω", 3, "47.3 kΩ"),
        (999.6, "Ω", 3, "1 kΩ"),
        (100e-9, "F", 3, "100 nF"),
        (1.24, "Ω", 3, "1.24 Ω"),
        (1000.0, "Ω", 6, "1 kΩ"),
        (0.0, "A", 3, "0 A"),
        (5.0, "%", 3, "5 %"),
        (1234.0, "days", 3, "1230 days"),
        (0.012, "days", 3, "0.012 days"),
        (2.2, "Ah", 3, "2.2 Ah"),
        (-0.005, "V", 3, "-5 mV"),
        (10.0, "Ω", 3, "10 Ω"),
    ],
)
def test_what_is_written_has_its_digits_and_no_zeros_behind_them(
    value: float, unit: str, digits: int, text: str
) -> None:
    assert write(value, unit, digits) == text


def test_two_values_share_a_unit_where_they_can() -> None:
    assert write_two(1200.0, "and", 1800.0, "Ω") == "1.2 and 1.8 kΩ"
    assert write_two(820.0, "and", 1200.0, "Ω") == "820 Ω and 1.2 kΩ"
    assert write_two(0.0, "to", 0.005, "A") == "0 to 5 mA"


@given(st.integers(1, 999), st.integers(-11, 8), st.sampled_from(UNITS))
def test_what_was_written_is_read_back_exactly(number: int, power: int, unit: str) -> None:
    value = float(f"{number}e{power}")
    assert read(write(value, unit, 3), unit) == value


@given(st.integers(0, 999), st.integers(0, 9), st.sampled_from("kMGmµnp"))
def test_a_prefix_in_place_of_the_point_is_the_same_as_behind_the_number(whole: int, tenth: int, prefix: str) -> None:
    assert read(f"{whole}{prefix}{tenth}", "Ω") == read(f"{whole}.{tenth} {prefix}Ω", "Ω")


@given(st.text(max_size=60), st.sampled_from([*UNITS, "%", "days"]))
def test_any_text_gives_a_finite_number_or_an_error(text: str, unit: str) -> None:
    try:
        assert math.isfinite(read(text, unit))
    except ValueError as wrong:
        assert "is not a number in" in str(wrong)  # noqa: PT017
