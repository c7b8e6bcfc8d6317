"""Advice on the page where a motor is freed, and what one press takes over."""

from tests.ui.conftest import Desk
from ui import texts


def freed_once(desk: Desk, model: str = "H-500") -> None:
    desk.window.intake.model.setText(model)
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    desk.until_over()
    desk.session.new_job()


def test_a_known_model_offers_the_same_as_last_time_in_one_press(desk: Desk) -> None:
    freed_once(desk)
    desk.window.intake.model.setText("H-500")
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    card = desk.window.free.advice
    assert card.isVisible()
    told = " ".join(line.toolTip() or line.text() for line in card.lines)
    assert "1 of 1 (21 to 100 %) recoveries ended freed" in told
    desk.window.intake.max_amps.put(3.0)
    desk.click("advice_again")
    assert desk.session.running.sequence == desk.links[1].request.sequence
    assert desk.window.intake.setting().max_amps is None
    assert "0001" in desk.window.notice.words.text()
    desk.click("recovery_start")
    assert desk.links[-1].request.sequence == desk.links[1].request.sequence
    desk.until_over()


def test_after_two_like_it_the_ladder_may_begin_higher(desk: Desk) -> None:
    freed_once(desk)
    freed_once(desk)
    desk.window.intake.model.setText("H-500")
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    before = len(desk.session.running.sequence.steps)
    button = desk.window.free.advice.higher_button
    assert button.isVisible()
    desk.click("advice_higher")
    assert len(desk.session.running.sequence.steps) < before
    desk.session.new_job()
    assert len(desk.session.running.sequence.steps) == before, "for the next job the whole ladder again"


def test_a_low_limit_is_said_before_anything_is_switched_on(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.window.intake.max_amps.put(0.3)
    desk.click("probe_go_on")
    said = " ".join(line._whole for line in desk.window.free.advice.lines)
    assert "raising the volts does nothing" in said
    assert "may be below what this motor needs to start" in said


def test_without_anything_to_say_there_is_no_card(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    assert not desk.window.free.advice.isVisible()
    assert texts.ADVICE_TITLE
