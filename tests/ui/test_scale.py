"""Round figures on an axis, and pixels there and back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ui.charts.scale import Scale, ticks, top_above

positive = st.floats(1e-6, 1e6)


@given(positive)
def test_a_top_is_above_its_value_and_not_far(value: float) -> None:
    assert value < top_above(value) <= 2.2 * value


@given(positive, st.integers(2, 12))
def test_ticks_are_within_and_near_the_wanted_number(span: float, about: int) -> None:
    found = ticks(0.0, span, about)
    assert found[0] == 0.0
    assert found[-1] <= span * (1 + 1e-6) + 1e-9
    assert len(found) <= about + 2


@given(st.floats(0, 1))
def test_a_value_goes_to_its_pixel_and_back(share: float) -> None:
    up = Scale(low=2.0, high=12.0, start=300.0, end=20.0)
    value = 2.0 + 10.0 * share
    assert up.value(up.px(value)) == pytest.approx(value)


def test_an_empty_range_is_refused() -> None:
    with pytest.raises(ValueError, match="not below"):
        Scale(low=1.0, high=1.0, start=0.0, end=10.0)
