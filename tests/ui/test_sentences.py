"""There is a sentence for everything, and a name for everything that can be pressed."""

import itertools

import pytest
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QPlainTextEdit, QTableWidget

from benchlog.bench.frames import Question
from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import RunKind, Stage
from benchlog.recovery.ceilings import Layer, Limits
from tests.ui.conftest import Desk
from ui import sayings, texts
from ui.shapes import SIGNS


@pytest.mark.parametrize(("kind", "outcome"), list(itertools.product(RunKind, Outcome)))
def test_every_end_of_every_run_says_what_happened_and_what_to_do(kind: RunKind, outcome: Outcome) -> None:
    say, why = sayings.ended_sentences(kind, RunResult(outcome=outcome, reason="for a reason"))
    assert say.endswith(".")
    assert "For a reason. " in why
    then = (texts.OUTCOME_DO[outcome], texts.PROVEN_DO, texts.PROBED_DO, texts.LEADS_DO, texts.LEADS_NOT_DO)
    assert why.endswith(then)


@pytest.mark.parametrize("outcome", [outcome for outcome in Outcome if outcome is not Outcome.REFUSED])
def test_an_output_that_is_not_confirmed_off_is_said_to_be_so(outcome: Outcome) -> None:
    _, why = sayings.ended_sentences(RunKind.RECOVERY, RunResult(outcome=outcome, reason="x"))
    assert why.startswith(texts.OFF_NOT_READ_BACK)
    _, why = sayings.ended_sentences(
        RunKind.RECOVERY, RunResult(outcome=outcome, reason="x", output_confirmed_off=True)
    )
    assert "NOT CONFIRMED" not in why


def test_every_word_of_the_records_has_its_word_here() -> None:
    assert set(texts.OUTCOME_SAY) == set(texts.OUTCOME_DO) == set(texts.OUTCOME_WORDS) == set(Outcome)
    assert set(texts.VERDICT_WORDS) == set(WindingVerdict)
    assert set(texts.STAGE_NAMES) == set(Stage)
    assert set(texts.LAYER_NAMES) == {layer.value for layer in Layer}
    assert set(texts.USED_NAMES) == set(Limits.__struct_fields__)
    assert {motion.value for motion in Motion} <= set(texts.MOTION_WORDS) <= set(SIGNS)
    for by_kind in (texts.RUN_BEFORE, texts.RUN_START_BUTTON, texts.RUN_AGAIN_BUTTON):
        assert set(by_kind) == {RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF}  # those that have a page of their own
    assert set(texts.RUN_KIND_NAMES) == set(RunKind)


def test_everything_that_can_be_pressed_or_filled_has_a_name(desk: Desk) -> None:
    desk.window.free.question.ask(Question(id=1, text="turn it", choices=["done", "skip"]))
    kinds = (QAbstractButton, QComboBox, QLineEdit, QPlainTextEdit, QTableWidget)
    nameless = [
        widget
        for kind in kinds
        for widget in desk.window.findChildren(kind)
        if not widget.accessibleName()
        and not isinstance(widget.parent(), QComboBox | QTableWidget)
        and not widget.objectName().startswith("qt_")
    ]
    assert nameless == []


def test_what_gloves_press_is_high_enough(desk: Desk) -> None:
    desk.window.free.question.ask(Question(id=1, text="turn it", choices=["done", "skip"]))
    for name in (
        "probe_start",
        "recovery_start",
        "proof_start",
        "hand_0",
        "choice_0",
        "safe_0_done",
        "off_acknowledge",
    ):
        found = desk.window.findChild(QAbstractButton, name)
        assert isinstance(found, QAbstractButton)
        assert found.minimumHeight() >= 44, name


@pytest.mark.parametrize(("count", "words"), [(0, "no kicks"), (1, "1 kick"), (11, "11 kicks")])
def test_kicks_are_counted_in_words(count: int, words: str) -> None:
    assert sayings.kicks_text(count) == words
