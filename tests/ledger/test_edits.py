"""Changes of a job, taken back or corrected; a run stays as it is."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.edits import change, correct_run, edits_of, undo
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, Item, Job, Result, TakenIn
from tests.ledger.benches import BILGE_PUMP, MOTOR, blocks, request, write_journal


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock()


@pytest.fixture
def ledger(tmp_path: Path, clock: VirtualClock) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        yield ledger


@pytest.fixture
def job(ledger: Ledger) -> Job:
    taken = TakenIn(owner="berth 12", consent=True, spending_limit_cents=5000)
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry", taken_in=taken)


def test_what_was_said_at_the_intake_is_kept(ledger: Ledger, job: Job) -> None:
    found = ledger.job(job.id)
    assert (found.owner, found.consent, found.spending_limit_cents) == ("berth 12", True, 5000)


def test_a_change_is_kept_with_what_was_before_and_can_be_taken_back(
    ledger: Ledger, clock: VirtualClock, job: Job
) -> None:
    changed = change(ledger, job.id, {"complaint": "hums and smells", "spending_limit_cents": None}, who="hand 1")
    assert (changed.complaint, changed.spending_limit_cents) == ("hums and smells", None)
    clock.wait(clock.now() + 1.0)
    change(ledger, job.id, {"owner": "berth 13"})
    assert ledger.jobs(text="smells")[0].id == job.id

    assert [edit.field for edit in undo(ledger, job.id)] == ["owner"]
    assert [edit.field for edit in undo(ledger, job.id)] == ["spending_limit_cents", "complaint"]
    assert undo(ledger, job.id) == []
    assert ledger.job(job.id) == job
    assert ledger.jobs(text="smells") == []
    told = [(edit.field, edit.old, edit.new, edit.undone_utc is not None) for edit in edits_of(ledger, job.id)]
    assert told == [
        ("complaint", '"hums"', '"hums and smells"', True),
        ("spending_limit_cents", "5000", "null", True),
        ("owner", '"berth 12"', '"berth 13"', True),
    ]


def test_a_label_read_wrongly_is_another_thing_and_leaves_earlier_jobs_with_theirs(ledger: Ledger, job: Job) -> None:
    second = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="again", load_state="dry")
    change(ledger, second.id, {"serial": "BP-71"})
    assert ledger.job(second.id).item == Item(kind="bilge pump", model="12 V", serial="BP-71")
    assert ledger.job(job.id).item == BILGE_PUMP
    undo(ledger, second.id)
    assert ledger.job(second.id).item == BILGE_PUMP


@pytest.mark.parametrize(
    "changes", [{"number": 7}, {"complaint": 7}, {"result": "perhaps"}, {"spending_limit_cents": -1}, {"uid": "x"}]
)
def test_what_can_t_be_changed_changes_nothing(ledger: Ledger, job: Job, changes: dict[str, object]) -> None:
    with pytest.raises(Refused):
        change(ledger, job.id, {"owner": "berth 99", **changes})
    assert ledger.job(job.id) == job
    assert edits_of(ledger, job.id) == []


def test_a_closed_job_is_corrected_only_by_somebody_and_for_a_reason(ledger: Ledger, job: Job) -> None:
    ledger.close_job(job.id, Closing(cause="seal", work_done="cleaned", prognosis="good", result=Result.WORKS))
    for who, why in (("", "seen again"), ("hand 1", " "), ("", "")):
        with pytest.raises(Refused, match="closed"):
            change(ledger, job.id, {"cause": "bearing"}, who=who, why=why)
    with pytest.raises(Refused, match="closed"):
        undo(ledger, job.id)
    corrected = change(ledger, job.id, {"cause": "bearing"}, who="hand 1", why="it came back grinding")
    assert corrected.cause == "bearing"
    (edit,) = edits_of(ledger, job.id)
    assert (edit.old, edit.new, edit.who, edit.why) == ('"seal"', '"bearing"', "hand 1", "it came back grinding")


def test_a_run_is_corrected_beside_it(ledger: Ledger, job: Job, tmp_path: Path) -> None:
    filed = file_journal(ledger, write_journal(tmp_path / "run-1.journal", blocks(request(job=job.id))))
    before = ledger.run(filed.run)
    correct_run(ledger, filed.run, about="outcome", new="still-stuck", who="hand 1", why="the coupling slipped")
    assert ledger.run(filed.run) == before
    (edit,) = edits_of(ledger, job.id)
    assert (edit.run, edit.field, edit.old, edit.new) == (filed.run, "outcome", '"freed"', '"still-stuck"')
    with pytest.raises(Refused):
        correct_run(ledger, filed.run, about="uid", new="x", who="hand 1", why="no reason")
    with pytest.raises(Refused):
        correct_run(ledger, 99, about="note", new="x", who="hand 1", why="no reason")
    with pytest.raises(Refused):
        correct_run(ledger, filed.run, about="note", new="x", who="", why="no reason")
