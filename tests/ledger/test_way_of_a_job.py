"""Waiting, findings, drafts, and a thing that was here before."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.drafts import draft, drop_draft, keep_draft
from benchlog.ledger.findings import add_finding, findings_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import earlier_jobs, set_waiting
from benchlog.records import Closing, EntryKind, Item, Job, JobState
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, MOTOR

KEPT_UNTIL_KILLED = """
import os, signal, sys
from pathlib import Path
from benchlog.ledger.drafts import keep_draft
from benchlog.ledger.edits import change
from benchlog.ledger.store import Ledger
ledger = Ledger.open(Path(sys.argv[1]))
keep_draft(ledger, "intake", {"complaint": "half a sent"})
change(ledger, 1, {"owner": "berth 13"})
os.kill(os.getpid(), signal.SIGKILL)
"""


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def job(ledger: Ledger) -> Job:
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")


def test_a_job_waits_and_goes_on_and_its_record_says_so(ledger: Ledger, job: Job) -> None:
    waits = set_waiting(ledger, job.id, JobState.FOR_PART, for_what="shaft seal", who="hand 1")
    assert (waits.state, waits.waiting_for, waits.waiting_since_utc) == (
        JobState.FOR_PART,
        "shaft seal",
        "2026-01-01T00:00:00.000Z",
    )
    set_waiting(ledger, job.id, JobState.FOR_PART, for_what="shaft seal")
    assert set_waiting(ledger, job.id, JobState.OPEN).waiting_since_utc is None
    assert [(entry.kind, entry.text) for entry in ledger.entries(job.id)] == [
        (EntryKind.STATE, "Waits for a part: shaft seal"),
        (EntryKind.STATE, "Work goes on"),
    ]


def test_a_closed_job_waits_for_nothing(ledger: Ledger, job: Job) -> None:
    set_waiting(ledger, job.id, JobState.FOR_OWNER)
    with pytest.raises(Refused):
        set_waiting(ledger, job.id, JobState.CLOSED)
    closed = ledger.close_job(job.id, Closing(cause="seal", work_done="", prognosis=""))
    assert (closed.waiting_for, closed.waiting_since_utc) == ("", None)
    with pytest.raises(Refused):
        set_waiting(ledger, job.id, JobState.OPEN)


def test_a_finding_that_replaces_another_stands_in_its_place(ledger: Ledger, job: Job) -> None:
    first = add_finding(ledger, job.id, "resistor", marking="103", place="beside the motor", value="10 kΩ")
    second = add_finding(ledger, job.id, "resistor", marking="102", value="1 kΩ", corrects=first.id)
    assert findings_of(ledger, job.id) == [second]
    assert findings_of(ledger, job.id, replaced=True) == [first, second]
    with pytest.raises(Refused, match="already"):
        add_finding(ledger, job.id, "resistor", corrects=first.id)
    other = ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="", load_state="dry")
    with pytest.raises(Refused, match="no finding"):
        add_finding(ledger, other.id, "resistor", corrects=second.id)
    with pytest.raises(Refused):
        add_finding(ledger, job.id, " ")


def test_a_draft_is_what_was_typed_last_until_it_is_dropped(ledger: Ledger) -> None:
    assert draft(ledger, "intake") is None
    keep_draft(ledger, "intake", {"complaint": "h", "consent": True, "limit": None})
    keep_draft(ledger, "intake", {"complaint": "hums"})
    assert draft(ledger, "intake") == {"complaint": "hums"}
    drop_draft(ledger, "intake")
    drop_draft(ledger, "intake")
    assert draft(ledger, "intake") is None


def test_a_draft_and_what_can_be_undone_outlive_the_program(ledger: Ledger, job: Job) -> None:
    from benchlog.ledger.edits import undo

    ledger.close()
    subprocess.run([sys.executable, "-P", "-c", KEPT_UNTIL_KILLED, str(ledger.path)], timeout=30.0)
    with Ledger.open(ledger.path, clock=VirtualClock()) as again:
        assert draft(again, "intake") == {"complaint": "half a sent"}
        assert again.job(job.id).owner == "berth 13"
        undo(again, job.id)
        assert again.job(job.id).owner == ""


def test_a_thing_come_back_is_known_by_its_serial(ledger: Ledger, job: Job) -> None:
    again = ledger.new_job(item=Item(kind="pump", serial="BP-17"), motor=MOTOR, complaint="again", load_state="dry")
    ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="", load_state="dry")
    assert [one.id for one in earlier_jobs(ledger, BILGE_PUMP)] == [again.id, job.id]
    assert [one.id for one in earlier_jobs(ledger, BILGE_PUMP, before=again.id)] == [job.id]
    assert earlier_jobs(ledger, CABIN_FAN) == []
    assert earlier_jobs(ledger, Item(kind="bilge pump", make="Quay", serial="BP-17")) != []
