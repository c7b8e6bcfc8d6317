"""What is known about the output being off."""

import itertools

import pytest
from PySide6.QtWidgets import QLabel

from tests.ui.conftest import Desk
from ui import texts
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


def test_the_foot_and_the_panel_say_the_same_of_the_output_all_the_way(desk: Desk) -> None:
    foot = desk.window.foot.findChild(QLabel, "foot_output")
    assert isinstance(foot, QLabel)
    seen = []

    def look() -> None:
        assert foot.text() == desk.window.panel.off.words.text()
        seen.append(foot.text())

    signs: dict[str, str] = {}
    desk.session.off.changed.connect(
        lambda _, words: signs.setdefault(words.split()[0], desk.window.panel.off.sign.sign)
    )
    look()
    desk.session.off.changed.connect(lambda *_: look())
    desk.begin_probe()
    desk.until_over()
    assert seen[:2] == [texts.OFF_IDLE, texts.OFF_RUNNING]
    assert [words.split()[0] for words in seen[2:]] == ["OUTPUT", "Off,", "Off,"]
    assert seen[-1].startswith("Off, confirmed by read-back at ")
    assert signs == {"Output": "unknown", "OUTPUT": "on", "Off,": "resting"}


def test_before_the_first_read_back_nothing_is_said_to_be_on_or_off(desk: Desk) -> None:
    link = desk.begin_probe()
    link.per_poll_s = 0.0
    told = (
        desk.window.probe.say_label.text(),
        desk.window.probe.why_label.said,
        desk.window.panel.off.words.text(),
    )
    assert told == (*texts.RUN_STARTING, texts.OFF_RUNNING)
    assert "not read back yet" in texts.OFF_RUNNING
