"""Jobs, entries and searches of an open ledger."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, Entry, Item, JobState, Motor, Stage
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, MOTOR, blocks, kick, leave_journal, request, write_journal


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        yield ledger


def new_job(ledger: Ledger, item: Item = BILGE_PUMP, complaint: str = "hums, does not turn") -> int:
    return ledger.new_job(item=item, motor=MOTOR, complaint=complaint, load_state="dry").id


def test_a_new_job_is_open_and_has_the_next_number(ledger: Ledger) -> None:
    first = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry, uncoupled")
    second = ledger.new_job(
        item=CABIN_FAN, motor=Motor(rated_volts=24.0, note="two wires"), complaint="", load_state=""
    )

    assert (first.number, first.tag, first.state) == (1, "H-0001", JobState.OPEN)
    assert (first.item, first.motor, first.complaint, first.load_state) == (
        BILGE_PUMP,
        MOTOR,
        "hums",
        "dry, uncoupled",
    )
    assert (first.opened_utc, first.closed_utc) == ("2026-01-01T00:00:00.000Z", None)
    assert (second.number, second.tag, second.motor.note) == (2, "H-0002", "two wires")
    assert ledger.job(second.id) == second == ledger.job_by_number(2)


def test_a_job_that_is_not_there_is_refused(ledger: Ledger) -> None:
    with pytest.raises(Refused, match="key 7"):
        ledger.job(7)
    with pytest.raises(Refused, match="number 7"):
        ledger.job_by_number(7)
    with pytest.raises(Refused, match="run 7"):
        ledger.run(7)
    with pytest.raises(Refused, match="run 7"):
        ledger.trace(7)


def test_a_closed_job_is_not_edited_again_but_takes_entries(ledger: Ledger) -> None:
    job = new_job(ledger)
    closed = ledger.close_job(job, Closing(cause="dried residue", work_done="kicks, turned by hand", prognosis="good"))
    assert (closed.state, closed.cause, closed.prognosis) == (JobState.CLOSED, "dried residue", "good")
    assert closed.closed_utc == "2026-01-01T00:00:00.000Z"

    with pytest.raises(Refused, match="was closed"):
        ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
    assert ledger.job(job) == closed

    correction = Entry(utc="2026-01-02T00:00:00.000Z", stage=Stage.CLOSE, text="it was rust", who="bench 1")
    ledger.add_entry(job, correction)
    assert ledger.entries(job) == [correction]


def test_entries_come_in_the_order_of_their_time(ledger: Ledger) -> None:
    job = new_job(ledger)
    early = Entry(utc="2026-01-01T08:00:00.000Z", stage=Stage.MAKE_SAFE, text="drained")
    late = Entry(utc="2026-01-01T09:00:00.000Z", stage=Stage.FREE, text="turned by hand", who="bench 2")
    ledger.add_entry(job, late)
    ledger.add_entry(job, early)
    assert ledger.entries(job) == [early, late]


def test_an_entry_for_no_job_is_refused_and_leaves_nothing(ledger: Ledger) -> None:
    with pytest.raises(Refused, match="key 3"):
        ledger.add_entry(3, Entry(utc="2026-01-01T08:00:00.000Z", stage=Stage.FREE, text="lost"))
    assert ledger.entries(3) == []


def test_jobs_come_newest_first_in_pages_that_neither_repeat_nor_skip(ledger: Ledger) -> None:
    for _ in range(23):
        new_job(ledger)
    seen: list[int] = []
    before: int | None = None
    while page := ledger.jobs(limit=5, before_number=before):
        assert len(page) <= 5
        seen += [job.number for job in page]
        before = page[-1].number
    assert seen == list(range(23, 0, -1))


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("bilge", [1]),
        ("  BILGE ", [1]),
        ("bp-17", [1]),
        ("kabinenluft", [2]),
        ("luft", []),
        ("KABINENLÜFTER", [2]),
        ("Kabinenlu\u0308fter", [2]),
        ("geräusch", [2]),
        ("ankersjo", [3]),
        ("strasse", [3]),
        ("h-0003", [3]),
        ("rust", [1]),
        ("100%", [3]),
        ("%", [3, 2, 1]),
        ("_", [3, 2, 1]),
        ("17 12", [1]),
        ("17-12", []),
        ("", [3, 2, 1]),
        ("   ", [3, 2, 1]),
    ],
)
def test_a_search_knows_no_case_and_no_accents_and_no_wildcards(ledger: Ledger, text: str, found: list[int]) -> None:
    bilge = new_job(ledger)
    new_job(ledger, Item(kind="Kabinenlüfter"), "macht GERÄUSCHE")
    new_job(ledger, Item(kind="fan", make="Ankersjø"), "from the Straße, runs 100% of the time")
    ledger.close_job(bilge, Closing(cause="Rust at the shaft", work_done="", prognosis=""))
    assert [job.number for job in ledger.jobs(text=text)] == found


def test_a_search_finds_the_outcome_of_the_last_run(ledger: Ledger, tmp_path: Path) -> None:
    job = new_job(ledger)
    new_job(ledger)
    file_journal(ledger, leave_journal(tmp_path, "a", job=job))
    assert [found.id for found in ledger.jobs(text="freed")] == [job]
    later = blocks(request("b", job=job), utc="2026-11-25T11:00:00.000Z", result=None)
    file_journal(ledger, write_journal(tmp_path / "b.journal", later))
    assert ledger.jobs(text="freed") == []
    assert [(found.id, found.last_outcome, found.runs) for found in ledger.jobs(text="stopped")] == [
        (job, "stopped", 2)
    ]


def test_a_text_far_longer_than_any_label_is_searched_for_without_an_error(ledger: Ledger) -> None:
    new_job(ledger)
    assert ledger.jobs(text="x" * 200_000) == []


def test_what_no_ledger_can_keep_is_refused_and_leaves_nothing(ledger: Ledger) -> None:
    with pytest.raises(Refused, match="can't be kept"):
        new_job(ledger, complaint="half a pair: \ud83d")
    with pytest.raises(Refused, match="rated volts"):
        ledger.new_job(item=CABIN_FAN, motor=Motor(rated_volts=float("nan")), complaint="", load_state="")
    with pytest.raises(Refused):
        ledger.job_by_number(10**30)
    assert ledger.jobs() == []
    assert new_job(ledger) == 1


def test_a_job_keeps_its_texts_whatever_is_in_them(ledger: Ledger) -> None:
    complaint = "'; DROP TABLE job; --\x00\n\U0001f6e5 ﷽ " + "x" * 100_000
    assert ledger.job(new_job(ledger, complaint=complaint)).complaint == complaint
    assert len(ledger.jobs(text="drop table")) == 1


def test_the_same_label_with_a_serial_number_is_the_same_item(ledger: Ledger) -> None:
    for item in (BILGE_PUMP, BILGE_PUMP, CABIN_FAN, CABIN_FAN):
        new_job(ledger, item)
    with ledger.reading() as session:
        rows = session.connection().exec_driver_sql("SELECT kind, count(*) FROM item GROUP BY kind ORDER BY kind").all()
    assert [tuple(row) for row in rows] == [("bilge pump", 1), ("cabin fan", 2)]


def test_kicks_count_on_the_utc_day_on_which_they_were_given(ledger: Ledger, tmp_path: Path) -> None:
    job, other = new_job(ledger), new_job(ledger)
    over_midnight = blocks(
        request("late", job=job), utc="2026-11-25T23:59:58.000Z", events=(kick(1.0), kick(1.9), kick(2.0))
    )[:-1]
    file_journal(ledger, write_journal(tmp_path / "late.journal", over_midnight))
    file_journal(ledger, leave_journal(tmp_path, "day", job=job))
    file_journal(ledger, leave_journal(tmp_path, "other", job=other))

    assert ledger.kicks_on(job, "2026-11-24") == 0
    assert ledger.kicks_on(job, "2026-11-25") == 2 + 2
    assert ledger.kicks_on(job, "2026-11-26") == 1
    assert ledger.kicks_on(job, "2026-11-27") == 0


def test_runs_come_in_the_order_they_began_and_recent_ones_last_first(ledger: Ledger, tmp_path: Path) -> None:
    job, other = new_job(ledger), new_job(ledger)
    ids = {}
    for uid, owner, utc in [("b", job, "T12"), ("a", job, "T11"), ("c", other, "T10")]:
        said = blocks(request(uid, job=owner), utc=f"2026-11-25{utc}:00:00.000Z")
        ids[uid] = file_journal(ledger, write_journal(tmp_path / f"{uid}.journal", said)).run
    assert [run.id for run in ledger.runs(job)] == [ids["a"], ids["b"]]
    assert [run.id for run in ledger.recent_runs()] == [ids["b"], ids["a"], ids["c"]]
    assert [run.id for run in ledger.recent_runs(limit=1)] == [ids["b"]]
    assert ledger.runs(job)[0] == ledger.run(ids["a"])
