"""Values onto pixels and back, and the round figures beside them."""

import pytest

from ui.charts.scale import Scale, round_step, tick_text


def test_there_and_back_is_where_one_began() -> None:
    upward = Scale(low=-0.1, high=1.5, begin=400.0, end=0.0)
    assert upward.px(-0.1) == 400.0
    assert upward.px(1.5) == 0.0
    assert upward.value(upward.px(0.37)) == pytest.approx(0.37)


def test_ticks_are_round_in_view_and_far_enough_apart() -> None:
    across = Scale(low=-0.12, high=1.04, begin=50.0, end=850.0)
    ticks = across.ticks(100.0)
    assert ticks == pytest.approx([0.0, 0.2, 0.4, 0.6, 0.8, 1.0])
    assert across.px(ticks[1]) - across.px(ticks[0]) >= 100


@pytest.mark.parametrize(("least", "step"), [(0.11, 0.2), (0.2, 0.2), (3.0, 5.0), (7.0, 10.0), (1e-5, 1e-5)])
def test_a_step_is_one_two_or_five(least: float, step: float) -> None:
    assert round_step(least) == pytest.approx(step)


def test_a_step_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="a step"):
        round_step(0.0)


def test_a_tick_says_no_more_than_it_must() -> None:
    assert [tick_text(value) for value in (0.30000000000000004, -0.0, 1.0, 2e-3)] == ["0.3", "0", "1", "0.002"]
