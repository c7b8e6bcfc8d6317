"""The last page: what the runs propose, what is compared, and what can be done once it is closed."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from benchlog.outcome import Outcome, RunResult
from benchlog.records import Result, Run, RunKind
from tests.ui.conftest import Desk
from ui import texts
from ui.main_window import HISTORY_ROOM
from ui.stages.close import CloseStage, proposal

PROBE, FREE, HAND, PROOF = RunKind.PROBE, RunKind.RECOVERY, RunKind.HAND, RunKind.PROOF


def run(kind: RunKind, outcome: Outcome, *, moved: bool = False) -> Run:
    return Run(
        id=1,
        job=1,
        kind=kind,
        started_utc="2026-11-25T14:03:00.000Z",
        duration_s=20.0,
        resource="",
        identity="",
        rated_volts=12.0,
        load_state="dry, uncoupled",
        sequence_name="",
        request="",
        ceilings="",
        program="test",
        result=RunResult(outcome=outcome, reason="", moved=moved),
        complete=True,
        samples=0,
    )


@pytest.mark.parametrize(
    ("runs", "proposed"),
    [
        ([], None),
        ([run(PROBE, Outcome.UNDETERMINED)], None),
        ([run(PROBE, Outcome.OPEN)], (Result.NOT_REPAIRED, "")),  # nothing was tried
        ([run(FREE, Outcome.STILL_STUCK), run(PROBE, Outcome.OPEN)], (Result.NOT_REPAIRED, "nothing helped")),
        ([run(FREE, Outcome.STILL_STUCK)], (Result.NOT_REPAIRED, "nothing helped")),
        ([run(FREE, Outcome.FREED)], None),
        ([run(FREE, Outcome.FREED), run(PROOF, Outcome.STOPPED)], None),
        ([run(FREE, Outcome.FREED), run(PROOF, Outcome.RUNS)], (Result.WORKS, "kicks")),
        (
            [run(HAND, Outcome.UNDETERMINED), run(FREE, Outcome.FREED), run(PROOF, Outcome.RUNS)],
            (Result.WORKS, "kicks and by hand"),
        ),
        ([run(HAND, Outcome.FREED), run(PROOF, Outcome.RUNS)], (Result.WORKS, "by hand")),
        ([run(FREE, Outcome.RUNS), run(PROOF, Outcome.RUNS)], (Result.WORKS, "")),
        ([run(FREE, Outcome.FREED), run(PROOF, Outcome.STILL_STUCK, moved=True)], (Result.PARTLY, "")),
        (
            [run(FREE, Outcome.FREED), run(PROOF, Outcome.STILL_STUCK)],
            (Result.NOT_REPAIRED, "nothing helped"),
        ),
    ],
)
def test_the_last_run_proposes_what_it_came_to_and_only_where_it_decides_it(
    runs: list[Run], proposed: tuple[Result, str] | None
) -> None:
    assert proposal(runs) == proposed
    if proposed is not None and proposed[1]:
        assert proposed[1] in texts.METHODS


def until_close(desk: Desk) -> CloseStage:
    """A job freed by kicks and proven, with its last page open."""
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    desk.click("recovery_start")
    desk.until_over()
    desk.click("recovery_go_on")
    desk.click("proof_start")
    desk.until_over()
    desk.click("proof_go_on")
    return desk.window.close_stage


def cell(page: CloseStage, name: str) -> QLabel:
    found = page.findChild(QLabel, f"summary_{name}")
    assert isinstance(found, QLabel)
    return found


def test_from_the_proof_to_the_sheet_of_the_closed_job(desk: Desk) -> None:
    page = until_close(desk)
    assert [cell(page, f"ended_{place}").text() for place in ("before", "freed", "after")] == [
        "winding",
        "freed, 13 kicks",
        "runs",
    ]
    assert cell(page, "ended_freed").isVisible()
    # nothing is chosen by itself
    assert page.result.currentIndex() < 0
    assert "works, kicks" in page.proposed.text()
    QTest.keyClicks(page.cause, "dried residue")
    desk.click("close_job")
    assert page.problem.text() == texts.NEEDS_RESULT
    desk.click("close_take")
    assert page.problem.text() == ""
    assert not page.take_button.isVisible()
    assert (page.result.currentData(), page.method.currentText()) == (Result.WORKS, "kicks")
    assert not page.sheet_button.isVisible()
    desk.click("close_job")
    assert desk.ledger.job_by_number(1).method == "kicks"
    assert not page.proposal.isVisible()
    desk.click("close_sheet")
    desk.session.desktop.previewing.settle()
    assert desk.session.desktop.previewing.shown
    assert desk.window.room == HISTORY_ROOM


def test_a_person_says_otherwise_than_proposed(desk: Desk) -> None:
    desk.scenario = "short"
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    page = desk.window.close_stage
    assert page.take_button.isVisible()
    assert not cell(page, "ended_freed").isVisible()
    page.result.setFocus()
    QTest.keyClick(page.result, Qt.Key.Key_Down)
    assert page.result.currentData() == Result.WORKS
    assert not page.proposal.isVisible()


def test_a_sentence_about_the_last_page_goes_when_its_field_is_mended(desk: Desk) -> None:
    desk.scenario = "short"
    desk.begin_probe()
    desk.until_over()
    desk.click("probe_go_on")
    page = desk.window.close_stage
    desk.click("close_job")
    assert page.problem.text() == texts.NEEDS_CAUSE
    QTest.keyClicks(page.advice, "x")
    assert page.problem.text() == texts.NEEDS_CAUSE
    QTest.keyClicks(page.cause, "c")
    assert page.problem.text() == ""
