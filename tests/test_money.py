"""Money as it is typed and shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.errors import Refused
from benchlog.money import MOST_CENTS, parse_money, show_money


@pytest.mark.parametrize(
    ("text", "cents"),
    [
        ("12", 1200),
        ("12.5", 1250),
        ("12,50", 1250),
        (" 0.05 ", 5),
        ("1 250.00", 125000),
        ("1'250", 125000),
        ("٣٫٥", 350),
    ],
)
def test_what_people_type(text: str, cents: int) -> None:
    assert parse_money(text) == cents


@pytest.mark.parametrize("text", ["", "12.505", "1.250,00", "-3", "=1+1", "12 EUR", "1e3", "nan", "9" * 400, "12..5"])
def test_what_is_no_amount_is_refused_with_what_was_typed(text: str) -> None:
    with pytest.raises(Refused, match=r"money|decimals|above"):
        parse_money(text)


def test_how_it_is_shown() -> None:
    assert [show_money(cents) for cents in (5, 1250, -90, 125000000, None)] == [
        "0.05",
        "12.50",
        "-0.90",
        "1\u202f250\u202f000.00",
        "—",
    ]
    assert show_money(1250, "EUR") == "12.50 EUR"


@given(st.integers(min_value=0, max_value=MOST_CENTS))
def test_what_is_shown_can_be_typed(cents: int) -> None:
    assert parse_money(show_money(cents)) == cents
