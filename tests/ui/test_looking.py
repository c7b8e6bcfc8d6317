"""Where one looks on a run, by keys, and what is said of it."""

import numpy as np
import pytest

from ui import texts
from ui.charts.cursors import Cursors
from ui.charts.framing import LEAST_VIEW_S
from ui.charts.keys import Asked
from ui.charts.looking import Looking
from ui.charts.marks import Shown


def looking(seconds: float = 100.0, *, finished: bool = True) -> Looking:
    shown = Shown(finished=finished)
    t_s = np.arange(0, seconds + 0.01, 0.1)
    shown.readings.append(t_s, t_s / 10, t_s / 100)
    return Looking(shown=shown)


def press(place: Looking, asked: Asked, times: int = 1, *, steps: int = 1) -> None:
    for _ in range(times):
        assert place.obey(asked, steps=steps, columns=500)


def test_keys_look_closer_and_wider_around_the_middle_and_home_returns() -> None:
    place = looking()
    whole = place.view()
    press(place, Asked.CLOSER)
    low, high = place.view()
    assert high - low == pytest.approx((whole[1] - whole[0]) / 1.2)
    assert low + high == pytest.approx(sum(whole))
    press(place, Asked.WIDER)
    assert place.view() == pytest.approx(whole)
    press(place, Asked.WHOLE)
    assert place.chosen is None


def test_no_key_looks_closer_than_the_least_view() -> None:
    place = looking()
    press(place, Asked.CLOSER, 80)
    low, high = place.view()
    assert high - low == pytest.approx(LEAST_VIEW_S)


def test_arrows_go_along_and_with_cursors_they_move_the_held_one_by_a_pixel() -> None:
    place = looking()
    low, high = place.view()
    press(place, Asked.RIGHT)
    assert place.view() == pytest.approx((low + 0.05 * (high - low), high + 0.05 * (high - low)))
    press(place, Asked.WHOLE)
    press(place, Asked.CURSORS)
    assert place.cursors is not None
    first_s, second_s = place.cursors.both
    press(place, Asked.LEFT, steps=10)
    press(place, Asked.OTHER_CURSOR)
    press(place, Asked.RIGHT)
    assert place.cursors.both == pytest.approx((first_s - 10 * (high - low) / 500, second_s + (high - low) / 500))
    assert place.view() == (low, high)


def test_closer_keeps_the_held_cursor_where_it_is_seen() -> None:
    place = looking()
    place.cursors = Cursors(first_s=20.0, second_s=60.0)
    low, high = place.view()
    share = (20.0 - low) / (high - low)
    press(place, Asked.CLOSER, 3)
    low, high = place.view()
    assert (20.0 - low) / (high - low) == pytest.approx(share)


def test_cursors_read_time_volts_and_amps_and_what_lies_between() -> None:
    place = looking()
    place.cursors = Cursors(first_s=20.0, second_s=60.0)
    assert place.read() == "A 20.00 s, 2.00 V, 200 mA   B 60.00 s, 6.00 V, 600 mA   Δt +40.00 s, ΔV +4.00 V, ΔI +400 mA"
    place.show_cursors(False)
    assert place.read() == ""


def test_a_run_that_goes_on_and_is_looked_at_closer_says_that_it_is_not_followed() -> None:
    place = looking(finished=False)
    assert (place.looked(), place.way_back()) == ("", "")
    place.chosen = 20.0, 30.5
    assert place.looked() == texts.CHART_NOT_FOLLOWED.format(low="20 s", high="30.5 s")
    assert place.way_back() == texts.CHART_FOLLOW
    place.shown.finished = True
    assert place.looked() == texts.CHART_ZOOMED.format(low="20 s", high="30.5 s", whole="100 s")
    assert place.way_back() == texts.CHART_BACK


def test_before_the_first_reading_nothing_goes_on() -> None:
    place = Looking(shown=Shown(), chosen=(0.0, 5.0))
    assert not place.unfollowed
    place.show_cursors(True)
    assert "—" in place.read()


def test_a_key_that_means_nothing_now_is_left_to_others() -> None:
    assert not looking().obey(Asked.OTHER_CURSOR, steps=1, columns=500)


def test_tab_goes_from_the_first_cursor_to_the_second_and_then_leaves() -> None:
    first = Cursors(first_s=1.0, second_s=2.0)
    second = first.next(forward=True)
    assert second is not None
    assert second.held == 1
    assert second.next(forward=True) is None
    assert first.next(forward=False) is None
    assert second.next(forward=False) == first
