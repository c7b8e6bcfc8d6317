"""A job's record as lines: each kind of thing that is kept, newest first, and what became of it."""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.ledger.costs import charge_minutes, charge_other, charge_part, keep_part, take_back
from benchlog.ledger.edits import change, undo
from benchlog.ledger.findings import add_finding
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.records import Entry, EntryKind, Item, Job, JobState, Motor, Stage
from benchlog.settings import Settings, Shop
from ui import texts
from ui.record.job_record import read_record
from ui.record.timeline import Line, timeline, waiting_text

Timed = tuple[Ledger, Job, VirtualClock]


@pytest.fixture
def timed(tmp_path: Path) -> Iterator[Timed]:
    clock = VirtualClock(utc_start=datetime(2026, 5, 4, 9, 30, tzinfo=UTC))
    with Ledger.open(tmp_path / "harbour.db", clock=clock) as ledger:
        job = ledger.new_job(
            item=Item(kind="Bilge pump"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry, uncoupled"
        )
        yield ledger, job, clock


def lines(timed: Timed, *steps: Callable[[], object]) -> list[Line]:
    """Of what the steps kept, one a minute, oldest first."""
    ledger, job, clock = timed
    for step in steps:
        clock.wait(clock.now() + 60.0)
        step()
    return timeline(read_record(ledger, job.id, lambda: Settings(shop=Shop(currency="EUR", hour=60.0))))[::-1]


def test_hand_steps_notes_and_waiting_are_told_apart(timed: Timed) -> None:
    ledger, job, _ = timed

    def enter(kind: EntryKind, text: str) -> None:
        entry = Entry(utc=ledger.clock.utc(), stage=Stage.FREE, text=text, who="Mira", kind=kind)
        ledger.add_entry(job.id, entry)

    told = lines(
        timed,
        lambda: enter(EntryKind.TAPPED, "by hand: tapped"),
        lambda: enter(EntryKind.NOTE, "the seal is hard"),
        lambda: set_waiting(ledger, job.id, JobState.FOR_PART, for_what="shaft seal", who="Mira"),
    )
    assert [(line.kind, line.text, line.about) for line in told] == [
        (texts.LINE_HAND, "tapped", "Mira"),
        (texts.LINE_NOTE, "the seal is hard", "Mira"),
        ("state", "Waits for a part: shaft seal", "Mira"),
    ]
    assert waiting_text(ledger.job(job.id)) == "waits for a part: shaft seal"


def test_lines_are_newest_first_whatever_they_are_about(timed: Timed) -> None:
    ledger, job, _ = timed
    told = lines(
        timed,
        lambda: add_finding(ledger, job.id, "R7", marking="152", place="at the driver", value="1.5 kΩ"),
        lambda: charge_other(ledger, job.id, "post", 450),
        lambda: add_finding(ledger, job.id, "C3"),
    )
    assert [line.text for line in told] == ["R7, marked 152, at the driver: 1.5 kΩ", "post: 4.50 EUR", "C3"]
    assert [line.utc for line in told] == sorted(line.utc for line in told)


def test_a_finding_that_was_replaced_stays_and_says_so(timed: Timed) -> None:
    ledger, job, _ = timed
    first = add_finding(ledger, job.id, "R7", value="1.5 kΩ")
    told = lines(timed, lambda: add_finding(ledger, job.id, "R7", value="1.6 kΩ", who="Mira", corrects=first.id))
    assert [line.about for line in told] == [texts.FINDING_REPLACED, f"Mira, {texts.FINDING_CORRECTS}"]


def test_charges_have_their_price_and_one_taken_back_says_so(timed: Timed) -> None:
    ledger, job, _ = timed
    seal = keep_part(ledger, "shaft seal", "8 mm", each_cents=450, stock=3)
    told = lines(
        timed,
        lambda: charge_minutes(ledger, job.id, 25, hour_cents=6000, text="cleaned", who="Mira"),
        lambda: charge_part(ledger, job.id, seal.id, 2),
        lambda: take_back(ledger, 2, who="Mira", why="not used"),
    )
    assert [(line.text, line.about) for line in told] == [
        ("25 min, cleaned: 25.00 EUR", "Mira"),
        ("2 × shaft seal 8 mm: 9.00 EUR", texts.CHARGE_TAKEN_BACK),
        ("2 × shaft seal 8 mm: taken back, not used: -9.00 EUR", "Mira"),
    ]


def test_changes_say_what_was_who_and_why_and_whether_they_were_taken_back(timed: Timed) -> None:
    ledger, job, _ = timed
    told = lines(
        timed,
        lambda: change(ledger, job.id, {"spending_limit_cents": 6000}, who="Mira", why="owner rang"),
        lambda: change(ledger, job.id, {"consent": True}),
        lambda: undo(ledger, job.id),
    )
    assert [(line.text, line.about) for line in told] == [
        ("what it may cost: — → 60.00 EUR", "Mira, owner rang"),
        ("the owner’s consent: no → yes", texts.EDIT_UNDONE),
    ]
