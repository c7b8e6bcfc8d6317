"""Which part of a run is in view, and how high a plot reaches."""

from hypothesis import given
from hypothesis import strategies as st

from ui.charts.framing import FAR, height

positive = st.floats(1e-3, 1e4)


@given(positive, st.none() | positive)
def test_the_readings_fit_with_a_little_room_and_are_not_pressed_flat(highest: float, ceiling: float | None) -> None:
    assert highest < height(highest, ceiling) <= max(2.2, 2.2 * FAR) * highest


@given(positive)
def test_a_ceiling_that_is_near_is_in_view(ceiling: float) -> None:
    assert height(ceiling / 2, ceiling) > ceiling


def test_it_is_round_and_stays_while_readings_rise_a_little() -> None:
    assert height(12.0, None) == height(13.0, None) == 15.0
    assert height(0.0, None) == 1.0
