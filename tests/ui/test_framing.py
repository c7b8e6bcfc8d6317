"""Which part of a run is in view, and how high a plot reaches."""

from hypothesis import given
from hypothesis import strategies as st

from ui.charts.framing import FAR, FOLLOW_SPAN_S, height, usual_span
from ui.charts.marks import Shown

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


def test_a_run_that_goes_on_is_followed_or_seen_whole_where_that_is_wanted() -> None:
    shown = Shown()
    shown.readings.append([0.0, 100.0], [1.0, 1.0], [1.0, 1.0])
    assert usual_span(shown) == (100.0 - FOLLOW_SPAN_S, 100.0)
    shown.whole_s = 60.0
    assert usual_span(shown) == (0.0, 100.0)
    shown.readings.append([100.1], [1.0], [1.0])
    assert usual_span(shown) == (0.0, 110.0)
    shown.readings.append([109.9], [1.0], [1.0])
    assert usual_span(shown) == (0.0, 110.0)  # in steps: until the next one nothing that is drawn moves
    shown.whole_s = 120.0
    assert usual_span(shown) == (0.0, 120.0)
    shown.readings.clear()
    assert usual_span(shown) == (0.0, 120.0)
