"""What is known about the output being off."""

import itertools

import pytest

from ui.off_state import OffEvent, OffState, after


@pytest.mark.parametrize("event", [event for event in OffEvent if event is not OffEvent.ACKNOWLEDGED])
def test_not_confirmed_stays_whatever_else_happens(event: OffEvent) -> None:
    assert after(OffState.NOT_CONFIRMED, event) is OffState.NOT_CONFIRMED


def test_only_a_person_takes_not_confirmed_away() -> None:
    assert after(OffState.NOT_CONFIRMED, OffEvent.ACKNOWLEDGED) is OffState.IDLE


def test_confirmed_comes_only_from_a_read_back() -> None:
    for state, event in itertools.product(OffState, OffEvent):
        if after(state, event) is OffState.CONFIRMED and state is not OffState.CONFIRMED:
            assert event is OffEvent.ENDED_CONFIRMED


@pytest.mark.parametrize("state", [OffState.IDLE, OffState.CONFIRMED])
def test_a_run_that_nobody_acknowledged_is_not_confirmed_again(state: OffState) -> None:
    assert after(state, OffEvent.FOUND) is OffState.NOT_CONFIRMED


def test_a_second_press_changes_nothing() -> None:
    once = after(OffState.RUNNING, OffEvent.PRESSED)
    assert once is OffState.COMMANDED
    assert after(once, OffEvent.PRESSED) is once


def test_no_answer_for_too_long_is_not_confirmed() -> None:
    assert after(OffState.COMMANDED, OffEvent.OVERDUE) is OffState.NOT_CONFIRMED
