"""Markings on resistors and capacitors against published readings.

Marks: V read in a published text, M from memory, CP common practice without a source.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.board.markings import AS_SUCH, EIA_96, FOUR, JUMPER, LETTER, R_NOTATION, THREE, readings
from benchlog.board.series import SERIES
from benchlog.errors import Refused

EIA_LETTERS = {"Z": -3, "Y": -2, "R": -2, "X": -1, "S": -1, "A": 0, "B": 1, "H": 1, "C": 2, "D": 3, "E": 4, "F": 5}


@pytest.mark.parametrize(
    # Source: IEC 60062 digits and letters, EIA-96 codes, as published tables print them (V).
    ("marking", "ohm", "code"),
    [
        ("471", 470.0, THREE),
        ("563", 56e3, THREE),
        ("472", 4700.0, THREE),
        ("220", 22.0, THREE),
        ("103", 10e3, THREE),
        ("1002", 10e3, FOUR),
        ("R47", 0.47, R_NOTATION),
        ("4R7", 4.7, R_NOTATION),
        ("R010", 0.010, R_NOTATION),
        ("10R0", 10.0, R_NOTATION),
        ("4K7", 4700.0, LETTER),
        ("47K3", 47300.0, LETTER),
        ("4M7", 4.7e6, LETTER),
        ("01C", 10e3, EIA_96),
        ("68X", 49.9, EIA_96),
        ("01A", 100.0, EIA_96),
        ("18B", 1500.0, EIA_96),
        ("11B", 1270.0, EIA_96),
        ("01E", 1e6, EIA_96),
        ("12X", 13.0, EIA_96),
        ("30A", 200.0, EIA_96),
    ],
)
def test_the_likeliest_reading_is_the_published_one(marking: str, ohm: float, code: str) -> None:
    first = readings(marking)[0]
    assert (first.value, first.unit, first.code) == (ohm, "Ω", code)


@pytest.mark.parametrize("letter", EIA_LETTERS)
@pytest.mark.parametrize("number", range(1, 97))
def test_every_number_and_letter_of_eia_96(number: int, letter: str) -> None:
    # Computed: 100 · 10^((n − 1)/96) to three digits times the letter's power. Letters: published (V).
    significant = round(100 * 10 ** ((number - 1) / 96))
    (found,) = [one for one in readings(f"{number:02}{letter}") if one.code == EIA_96]
    assert found.value == float(f"{significant}e{EIA_LETTERS[letter]}")
    assert found.tolerance == "± 1 %"  # what the code is for: M


@pytest.mark.parametrize(
    # CP: no source; which is meant only a measurement tells.
    ("marking", "all_readings"),
    [
        ("220", [(THREE, 22.0), (AS_SUCH, 220.0)]),
        ("1000", [(FOUR, 100.0), (AS_SUCH, 1000.0)]),
        ("10R", [(R_NOTATION, 10.0), (EIA_96, 1.24)]),
        ("100K", [(LETTER, 100e3), (THREE, 10.0), (AS_SUCH, 100.0)]),
        ("4m7", [(LETTER, 4.7e6), (LETTER, 4.7e-3)]),
        ("471", [(THREE, 470.0)]),
        ("01A", [(EIA_96, 100.0)]),
    ],
)
def test_a_marking_with_more_than_one_meaning_gives_all_of_them_in_order(
    marking: str, all_readings: list[tuple[str, float]]
) -> None:
    assert [(one.code, one.value) for one in readings(marking)] == all_readings


@pytest.mark.parametrize("marking", ["0", "00", "000", "0000", "0R", "R0", "0R0", "R000"])
def test_zeros_are_a_jumper(marking: str) -> None:
    # CP, no source.
    (found,) = readings(marking)
    assert (found.code, found.value, found.text) == (JUMPER, 0.0, "0 Ω (jumper)")


@pytest.mark.parametrize(
    # Computed from the code and the tables of IEC 60063 (V for E12 and E24).
    ("marking", "text"),
    [
        ("152", "1.5 kΩ (E12 and E24; neighbours 1.2 and 1.8 kΩ)"),
        ("102", "1 kΩ (E12 and E24; neighbours 820 Ω and 1.2 kΩ)"),
        ("432", "4.3 kΩ (E24; neighbours 3.9 and 4.7 kΩ)"),
        ("18B", "1.5 kΩ ± 1 % (E96; neighbours 1.47 and 1.54 kΩ)"),
        ("47K3", "47.3 kΩ (on none of E12, E24, E96; E24 neighbours 47 and 51 kΩ)"),
        ("4K7J", "4.7 kΩ ± 5 % (E12 and E24; neighbours 3.9 and 5.6 kΩ)"),
    ],
)
def test_a_reading_says_its_series_and_its_neighbours(marking: str, text: str) -> None:
    assert readings(marking)[0].text == text


@pytest.mark.parametrize(
    # IEC 60062: three digits in pF and letters V2 or M; multipliers 8, 9 and tolerance letters M.
    ("marking", "farad", "low", "high"),
    [
        ("104", 100e-9, None, None),
        ("104K", 100e-9, 90e-9, 110e-9),
        ("103Z", 10e-9, 8e-9, 18e-9),
        ("220J", 22e-12, 20.9e-12, 23.1e-12),
        ("479C", 4.7e-12, 4.45e-12, 4.95e-12),
        ("688", 0.68e-12, None, None),
        ("4p7", 4.7e-12, None, None),
        ("4n7", 4.7e-9, None, None),
        ("n47M", 0.47e-9, 0.376e-9, 0.564e-9),
        ("u47", 0.47e-6, None, None),
        ("µ47", 0.47e-6, None, None),
        ("47J", 47e-12, 44.65e-12, 49.35e-12),
    ],
)
def test_a_capacitor_s_first_reading_and_its_tolerance(
    marking: str, farad: float, low: float | None, high: float | None
) -> None:
    first = readings(marking, capacitor=True)[0]
    assert first.unit == "F"
    assert first.value == pytest.approx(farad, rel=1e-12)
    assert first.low == (None if low is None else pytest.approx(low, rel=1e-9))
    assert first.high == (None if high is None else pytest.approx(high, rel=1e-9))


@pytest.mark.parametrize(
    "garbage",
    [
        "",
        "  ",
        "97A",
        "00A",
        "XYZ",
        "012",
        "R",
        "K",
        "4K7Q",
        "103Z",
        "12345",
        "٤٧٢",
        "9K9K9",
        "4.7k",
        "-47",
        "1" * 500_000,
    ],
)
def test_what_is_in_no_code_is_refused_in_a_short_sentence(garbage: str) -> None:
    with pytest.raises(Refused, match="marking: ") as refused:
        readings(garbage)
    assert len(str(refused.value)) < 160


@pytest.mark.parametrize("garbage", ["000", "0", "0R0", "01C", "4K7", "104X", "p"])
def test_what_is_no_marking_of_a_capacitor_is_refused(garbage: str) -> None:
    with pytest.raises(Refused, match="marking: "):
        readings(garbage, capacitor=True)


@given(st.integers(10, 999), st.integers(0, 7))
def test_digits_and_power_are_read_back(significant: int, power: int) -> None:
    value = float(f"{significant}e{power}")
    assert readings(f"{significant}{power}")[0].value == value
    assert readings(f"{significant}{power}", capacitor=True)[0].value == pytest.approx(value * 1e-12, rel=1e-12)


@given(st.integers(0, 99), st.integers(0, 99), st.sampled_from([("R", 0), ("K", 3), ("k", 3), ("M", 6), ("G", 9)]))
def test_a_letter_as_the_point_is_read_back(whole: int, part: int, letter: tuple[str, int]) -> None:
    if whole or part:
        found = readings(f"{whole}{letter[0]}{part:02}")[0]
        assert found.value == float(f"{whole}.{part:02}e{letter[1]}")


@given(st.sampled_from(SERIES["E24"]), st.integers(0, 6), st.sampled_from("BCDFGJKMN"))
def test_a_tolerance_letter_encloses_the_value(hundredths: int, power: int, letter: str) -> None:
    for one in readings(f"{hundredths // 10}{power}{letter}"):
        if one.low is not None and one.high is not None:
            assert 0 < one.low < one.value < one.high


@given(st.text(max_size=14) | st.text("0123456789RKMGLFJpnuµmABCXYZ", min_size=1, max_size=6), st.booleans())
def test_any_text_is_refused_or_read_as_finite_values_that_can_be_shown(text: str, capacitor: bool) -> None:
    try:
        found = readings(text, capacitor=capacitor)
    except Refused:
        return
    assert found
    for one in found:
        assert 0 <= one.value < 1e17
        assert one.unit in one.text
