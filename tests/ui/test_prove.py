"""The prove page's lines about the measured start: figures, when it turned, how it stands to others, what to mind."""

from dataclasses import replace

from pytestqt.qtbot import QtBot

from benchlog.motor.compare import Measured, compare
from benchlog.motor.fit import Fitted
from tests.motor.test_compare import measured
from ui import sayings, theme
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
