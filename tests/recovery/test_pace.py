"""How long what is asked of a supply becomes: by hand from its times, and as asked of a quick one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.recovery.pace import QUICK_READING_S, Pace

SLOW = Pace(reading_s=0.25, sending_s=0.1, settled_s=0.06)
QUICK = Pace(reading_s=QUICK_READING_S, sending_s=0.05, settled_s=0.06)


def test_a_quick_supply_makes_every_time_as_it_was_asked() -> None:
    assert not QUICK.slow
    assert (QUICK.lasts_s(0.2, 3), QUICK.charged_s(0.2, 3), QUICK.whole_s(3)) == (0.2, 0.2, 0.0)
    assert not QUICK.stretches(0.06)


def test_a_supply_that_was_not_measured_counts_as_quick() -> None:
    assert not Pace().slow
    assert Pace().charged_s(0.3, 2) == 0.3


def test_the_shortest_kick_is_a_reading_that_began_too_early_one_that_did_not_and_what_down_takes() -> None:
    # set at 0; read 0 to 0.25, begun before it settled at 0.06; read 0.25 to 0.5, whole; 0 V sent by 0.6
    assert SLOW.least_kick_s == pytest.approx(0.6)
    assert SLOW.stretches(0.2)
    assert not SLOW.stretches(0.6)


def test_more_whole_readings_take_a_reading_more_each() -> None:
    assert SLOW.whole_s(3) - SLOW.whole_s(1) == pytest.approx(2 * 0.25)


def test_a_reading_that_begins_just_as_it_has_settled_is_whole() -> None:
    assert Pace(reading_s=0.3, settled_s=0.6).whole_s(1) == pytest.approx(0.9)


def test_what_is_asked_longer_than_it_has_to_be_stays_as_long() -> None:
    assert SLOW.lasts_s(2.0, 3) == 2.0


def test_a_drive_is_charged_from_the_reading_before_it_to_the_one_after_it() -> None:
    # sent 0.1, held 0.5, sent down 0.1, and the next reading 0.25 is charged at the larger power of its two ends
    assert SLOW.charged_s(0.2, 1) == pytest.approx(0.1 + 0.5 + 0.1 + 0.25)


times = st.floats(0.0, 2.0)


@given(times, times, times, st.floats(0.0, 3.0), st.integers(1, 4))
def test_nothing_is_reckoned_shorter_than_it_was_asked_nor_charged_shorter_than_it_lasts(
    reading_s: float, sending_s: float, settled_s: float, asked_s: float, least: int
) -> None:
    pace = Pace(reading_s=reading_s, sending_s=sending_s, settled_s=settled_s)
    assert asked_s <= pace.lasts_s(asked_s, least) <= pace.charged_s(asked_s, least)
