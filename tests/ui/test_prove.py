"""The prove page's lines about the measured start: figures, when it turned, how it stands to others, what to mind."""

from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import msgspec
import pytest
from pytestqt.qtbot import QtBot

from benchlog.ledger.supplies import FOUND, keep_supply
from benchlog.motor.compare import Measured, compare
from benchlog.motor.fit import Fitted
from benchlog.quantities import show
from benchlog.records import Event, EventKind
from benchlog.recovery.ceilings import Bound, Layer, Limits, intersect
from benchlog.recovery.looking import hold_volts
from benchlog.recovery.moves import Situation
from benchlog.settings import Settings
from tests.motor.test_compare import measured
from tests.ui.conftest import RESOURCE, Desk
from ui import sayings, texts, theme
from ui.stages.prove import ProveStage


def seen_to_turn(made: Measured) -> Measured:
    moves = Fitted(value=0.05, low=0.03, high=0.07)
    return replace(made, constants=replace(made.constants, moves_s=moves))


def test_when_it_was_first_seen_to_turn_or_why_that_is_not_known() -> None:
    assert sayings.moves_text(seen_to_turn(measured(0.2))) == "First seen to turn: 0.050 s (0.030 s to 0.070 s)."
    # without the resistance of the probe a rotor that stands is not told from one that turns
    assert "not known (needs the resistance of the probe)" in sayings.moves_text(measured(0.2))


def test_the_page_says_what_a_comparison_can_not_know(qtbot: QtBot) -> None:
    page = ProveStage(theme.LIGHT)
    qtbot.addWidget(page)
    page.resize(900, 700)
    after = seen_to_turn(measured(0.2))
    told = compare(after, [measured(0.5)])
    page.show_measured(after, "the proof before in this job", told)
    measured_line, moves, against, cautions = (line.text() for line in page.told)
    assert "steady 200 mA" in measured_line
    assert "0.050 s" in moves
    assert "turns more freely" in against
    assert all(caution in cautions for caution in told.cautions)
    assert all(line.isVisibleTo(page) for line in page.told)


def test_without_others_there_is_nothing_to_mind_and_without_a_start_nothing_is_said(qtbot: QtBot) -> None:
    page = ProveStage(theme.LIGHT)
    qtbot.addWidget(page)
    page.show_measured(measured(0.2), "", None)
    assert [line.isVisibleTo(page) for line in page.told] == [True, True, True, False]
    page.show_measured(None, "", None)
    assert [line.text() for line in page.told] == [""] * 4
    assert not any(line.isVisibleTo(page) for line in page.told)


@pytest.mark.parametrize(("ceiling", "said"), [(12.0, "8.57 V"), (14.0, "10.0 V"), (16.8, "12.0 V"), (24.0, "12.0 V")])
def test_the_volts_that_are_said_are_those_that_the_plan_holds_at(ceiling: float, said: str) -> None:
    situation = SimpleNamespace(rated_volts=12.0, ceilings=intersect({Layer.JOB: Limits(volts=ceiling)}))
    held = show(hold_volts(cast(Situation, situation), 12.0), "V")
    told = sayings.starts_text(12.0, Bound(value=ceiling, layer=Layer.JOB))
    assert held in told
    assert said in told
    assert ("set by the job" in told) is (ceiling < 16.8)


def until_free(desk: Desk) -> None:
    """Taken in, probed and kicked free, with the page open on which that is to be proven."""
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    desk.until_over()
    desk.click("recovery_go_on")


def test_before_the_press_the_page_says_which_ceiling_leaves_how_many_volts(desk: Desk) -> None:
    desk.owner = Settings(ceilings=Limits(volts=10.0))
    until_free(desk)
    line = desk.window.prove.volts
    assert line.isVisible()
    assert desk.window.prove.start_button.isVisible()
    assert "7.14 V, not the rated 12 V" in line.text()
    assert "10 V, set by the owner of this workshop" in line.text()
    assert "first it measures the winding" in desk.window.prove.why_label.said.lower()


def test_after_a_proof_its_sentence_and_the_record_say_the_volts(desk: Desk) -> None:
    until_free(desk)
    desk.click("proof_start")
    desk.until_over()
    assert "Started at 8.57 V, not the rated 12 V" in desk.window.prove.why_label.said
    assert not desk.window.prove.volts.isVisible()  # once is enough
    run = desk.session.bench.runs[-1]
    kept = msgspec.structs.replace(
        run, ceilings=msgspec.json.encode(intersect({Layer.JOB: Limits(volts=12.0)})).decode()
    )
    assert sayings.filed_words(kept) == "runs, started at 8.57 V"


def test_a_supply_that_was_asked_counts_before_the_run(desk: Desk) -> None:
    keep_supply(
        desk.ledger,
        resource=RESOURCE,
        identity="bench supply",
        output=1,
        kind=FOUND,
        dialect="",
        content={"resource": RESOURCE, "usable": True, "volts_max": 7.0, "amps_max": 3.0},
    )
    desk.take_in()
    assert "5.00 V, not the rated 12 V" in desk.window.prove.volts.text()
    assert "supply" in desk.window.prove.volts.text()


def test_before_a_run_the_volts_are_at_most_where_no_supply_told_its_range_and_after_it_they_are_the_runs(
    qtbot: QtBot,
) -> None:
    page = ProveStage(theme.LIGHT)
    qtbot.addWidget(page)
    job = Bound(value=40.0, layer=Layer.JOB)
    page.show_volts(24.0, job, range_known=False)
    assert page.volts.text() == f"Each start at the rated 24.0 V. {texts.PROOF_AT_MOST}"
    values: dict[str, float | int | str | bool | None] = {"ceiling_volts": 30.0, "ceiling_volts_from": "supply"}
    page.show_event(Event(t_s=0.0, kind=EventKind.SUPPLY, text="Supply: bench.", values=values))
    during = page.volts.text()
    assert during.startswith("Each start at 21.4 V, not the rated 24 V")
    page.show_volts(24.0, job, range_known=False)  # the page is shown again after the run
    assert page.volts.text() == during
    page.show_volts(24.0, Bound(value=28.0, layer=Layer.JOB), range_known=False)  # another ceiling was given
    assert page.volts.text().startswith("Each start at 20.0 V")
