"""Runs with a person at the bench, and the runs of other stages: questions, swaps, raised volts, proof and probe."""

from pathlib import Path

import msgspec
import pytest

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Answer, Frame, Note, Question
from benchlog.bench.journal import Journal, read_journal
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.climbing import DID_IT_MOVE, NO
from benchlog.recovery.steps import built_in
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load
from tests.conftest import BEGAN, RunVirtually, events_of


class Attended:
    """A bench with a person who takes a while, then answers every question the same way, swapping leads if asked to."""

    def __init__(self, scenario: str, choice: int, *, takes_s: float = 0.0, limit_s: float = 180.0) -> None:
        self.bench = VirtualBench(load(scenario), seed=2, began=BEGAN)
        self._choice, self._takes_s = choice, takes_s
        self._sequence = msgspec.structs.replace(built_in("starting-ladder"), limit_s=limit_s)
        self.asked: list[str] = []
        self.on_while_asked: list[bool] = []

    def emit(self, frame: Frame) -> None:
        self.bench.frames.append(frame)
        if isinstance(frame, Question):
            self.asked.append(frame.text)
            self.on_while_asked.append(self.bench.bench.output.on)
            self.bench.clock.advance(self._takes_s)
            if "Swap" in frame.text and self._choice == 0:
                self.bench.bench.swap_leads()
            moved = "Did it move" in frame.text
            self.bench.lease.take(Answer(frame.id, NO if moved else frame.choices[self._choice]))

    def run(self, journal: Path) -> RunResult:
        request = self.bench.request(journal, unattended=False, sequence=self._sequence)
        conductor = Conductor(
            request,
            clock=self.bench.clock,
            lease=self.bench.lease,
            emit=self.emit,
            beat=lambda: None,
            going_off=lambda: None,
            journal=Journal(journal, sync_thread=False),
        )
        return conductor.run(self.bench.open_supply, lambda capabilities: None)


def events(journal: Path, kind: EventKind) -> list[Event]:
    return [event for event in read_journal(journal).events if event.kind is kind]


def test_questions_are_put_with_the_output_off_and_their_time_does_not_count(tmp_path: Path) -> None:
    person = Attended("hopeless", 0, takes_s=100.0, limit_s=1200.0)
    result = person.run(tmp_path / "a.journal")
    assert result.outcome is Outcome.STILL_STUCK
    assert "every rung" in result.reason
    assert person.asked.count(DID_IT_MOVE) == 5
    assert len(person.asked) == 2 + 5
    assert not any(person.on_while_asked)
    assert [e.values["skipped"] for e in events(tmp_path / "a.journal", EventKind.HAND)] == [False, False]
    # by hand brings its rung back, and with the leads swapped the other way round is kicked as well
    assert result.kicks == 3 + 3 + 5 + 3 + 5


def test_a_skipped_swap_leaves_its_rung_out_and_says_so(tmp_path: Path) -> None:
    person = Attended("contact-step", 1)
    result = person.run(tmp_path / "b.journal")
    assert result.kicks == 3 + 3 + 5
    left_out = [e for e in events(tmp_path / "b.journal", EventKind.STEP) if e.values.get("skipped")]
    assert any("swap leads" in e.text for e in left_out)


def test_a_note_made_meanwhile_is_in_the_record(tmp_path: Path) -> None:
    person = Attended("open", 0)
    person.bench.lease.take(Note("tapped the housing"))
    person.run(tmp_path / "c.journal")
    assert [e.text for e in events(tmp_path / "c.journal", EventKind.HAND)] == ["tapped the housing"]


def test_an_answer_to_an_older_question_is_none(tmp_path: Path) -> None:
    person = Attended("hopeless", 0, limit_s=1200.0)
    person.bench.lease.take(Answer(99, "done"))
    assert person.run(tmp_path / "d.journal").kicks == 19
    assert len(events(tmp_path / "d.journal", EventKind.ANSWER)) == len(person.asked) == 7


def test_raised_volts_are_used_only_where_a_ceiling_was_given_for_them(run_virtually: RunVirtually) -> None:
    plain = run_virtually("contact-step", seed=1)
    patient = msgspec.structs.replace(built_in("starting-ladder"), limit_s=1200.0)
    raised = run_virtually("contact-step", seed=1, layers={Layer.JOB: Limits(volts=18.0)}, sequence=patient)
    assert any("above the job's ceiling" in e.text for e in events_of(plain, EventKind.STEP))
    kicks = [e.values["volts"] for e in events_of(raised, EventKind.KICK)]
    assert raised.bench.extremes.max_volts <= 18.02
    assert {round(float(str(v))) for v in kicks} == {7, 10, 12, 15, 18}


def test_a_proof_counts_the_starts_from_rest(run_virtually: RunVirtually) -> None:
    run = run_virtually("free", kind=RunKind.PROOF, starts=3)
    assert run.result.outcome is Outcome.RUNS
    assert "3 of 3" in run.result.reason
    assert run.result.kicks == 0
    stuck = run_virtually("hopeless", kind=RunKind.PROOF, starts=3)
    assert stuck.result.outcome is Outcome.STILL_STUCK
    assert "0 of 3" in stuck.result.reason


@pytest.mark.parametrize(
    ("scenario", "outcome", "verdict"),
    [
        ("stuck-soft", Outcome.UNDETERMINED, WindingVerdict.WINDING),
        ("open", Outcome.OPEN, WindingVerdict.OPEN),
        ("diode", Outcome.DIODE, WindingVerdict.DIODE),
    ],
)
def test_a_probe_only_says_what_lies_between_the_leads(
    run_virtually: RunVirtually, scenario: str, outcome: Outcome, verdict: WindingVerdict
) -> None:
    result = run_virtually(scenario, kind=RunKind.PROBE).result
    assert (result.outcome, result.winding_verdict, result.kicks) == (outcome, verdict, 0)
    assert result.output_confirmed_off


def test_a_motor_that_turns_after_the_kicks_of_an_earlier_run_was_freed(run_virtually: RunVirtually) -> None:
    assert run_virtually("free", kicks_today=2).result.outcome is Outcome.FREED
    assert run_virtually("free", kicks_today=0).result.outcome is Outcome.RUNS


def test_no_more_kicks_than_a_job_and_day_may_have(run_virtually: RunVirtually) -> None:
    run = run_virtually("hopeless", kicks_today=57)
    assert run.result.kicks == 3
    assert "needs hands" in run.result.reason
