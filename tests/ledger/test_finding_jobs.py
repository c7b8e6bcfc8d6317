"""Lists of jobs: every filter, every order, pages that neither repeat nor skip, counts up to a bound."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sqlalchemy import text

from benchlog.clock import VirtualClock
from benchlog.ledger import finding_jobs
from benchlog.ledger.filing import file_journal
from benchlog.ledger.finding_jobs import Key, choices_for, count_jobs, find_jobs
from benchlog.ledger.schema import JobRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Order, Waits, Wanted
from benchlog.records import Entry, Item, JobState, Motor, Stage, TakenIn
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, leave_journal

DAY_S = 86_400.0
KINDS = ("bilge pump", "cabin fan", "hatch actuator")
CAUSES = ("", "rust", "salt")
PERSONS = ("Ana", "Bosse")


@pytest.fixture(scope="module")
def ledger(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Ledger]:
    """Sixty jobs, one a day; the first two have a run, the third a line written long after."""
    folder = tmp_path_factory.mktemp("jobs")
    clock = VirtualClock()
    with Ledger.open(folder / "workshop.ledger", clock=clock) as ledger:
        for n in range(60):
            job = ledger.new_job(
                item=Item(kind=KINDS[n % 3], serial=f"S-{n:03d}"),
                motor=Motor(rated_volts=12.0),
                complaint="hums " + ("loudly" if n % 4 else "a bit"),
                load_state="dry",
                taken_in=TakenIn(who=PERSONS[n % 2]),
            )
            with ledger.writing() as session:
                row = session.get_one(JobRow, job.id)
                row.cause = CAUSES[n % 3 - n % 2]
                row.state = [*JobState][n % 5].value
            clock.advance(DAY_S)
        for job_id in (1, 2):
            file_journal(ledger, leave_journal(folder, f"run-{job_id}", job=job_id))
        ledger.add_entry(3, Entry(utc="2027-01-01T00:00:00.000Z", stage=Stage.CLOSE, text="a late word"))
        yield ledger


def walked(ledger: Ledger, wanted: Wanted, limit: int) -> list[int]:
    """All pages, one after the other."""
    seen: list[int] = []
    after: Key | None = None
    while True:
        page = find_jobs(ledger, wanted, after, limit)
        assert len(page.jobs) <= limit
        seen += [job.id for job in page.jobs]
        after = page.after
        if after is None:
            return seen


WANTED = st.builds(
    Wanted,
    text=st.sampled_from(["", "hums", "loud", "s-0", "s-03 bit", "zebra", "ana", "rust hatch"]),
    kind=st.sampled_from(["", *KINDS, "anchor"]),
    cause=st.sampled_from(CAUSES),
    outcome=st.sampled_from(["", "freed", "open"]),
    state=st.sampled_from([None, Waits.WAITING, JobState.OPEN, JobState.FOR_PART, JobState.CLOSED]),
    since_utc=st.sampled_from(["", "2026-01-20", "2026-02-10T00:00:00.000Z"]),
    until_utc=st.sampled_from(["", "2026-01-21", "2026-02-20"]),
    who=st.sampled_from(["", *PERSONS]),
    order=st.sampled_from([*Order]),
)


def expected(ledger: Ledger, wanted: Wanted) -> list[int]:
    """The same with nothing but Python over all jobs, newest first."""
    every = find_jobs(ledger, Wanted(), None, 1000).jobs
    in_text = {job.id for job in find_jobs(ledger, Wanted(text=wanted.text), None, 1000).jobs}
    return [
        job.id
        for job in every
        if job.id in in_text
        and wanted.kind in ("", job.item.kind)
        and wanted.cause in ("", job.cause)
        and wanted.outcome in ("", job.last_outcome)
        and wanted.who in ("", job.who)
        and (wanted.state in (None, job.state) or (wanted.state is Waits.WAITING and job.state.startswith("waiting")))
        and wanted.since_utc <= job.opened_utc
        and (not wanted.until_utc or job.opened_utc < wanted.until_utc)
    ]


@settings(max_examples=120, deadline=None)
@given(wanted=WANTED, limit=st.integers(1, 25), few=st.sampled_from([0, 3, 900]), indexed=st.booleans())
def test_pages_hold_what_is_wanted_once_and_in_order(
    ledger: Ledger, wanted: Wanted, limit: int, few: int, indexed: bool
) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(finding_jobs, "FEW", max(few, 1))
        if not indexed:
            patch.setattr(finding_jobs, "index_holds", lambda session: False)
        got = walked(ledger, wanted, limit)
        count = count_jobs(ledger, wanted, 7)
    right = expected(ledger, wanted)
    assert sorted(got) == sorted(right)
    assert count == min(len(right), 7)
    if wanted.order is Order.NEWEST:
        assert got == right
    elif wanted.order is Order.OLDEST:
        assert got == right[::-1]


def test_last_changed_comes_first(ledger: Ledger) -> None:
    # The line is of 2027, the runs of November 2026; the others were opened before, one a day.
    first = find_jobs(ledger, Wanted(order=Order.CHANGED), None, 5).jobs
    assert [job.id for job in first] == [3, 2, 1, 60, 59]


def test_what_there_is_to_choose_from(ledger: Ledger) -> None:
    choices = choices_for(ledger)
    assert (choices.kinds, choices.causes, choices.persons) == ([*KINDS], ["rust", "salt"], [*PERSONS])


def test_a_job_that_comes_in_while_pages_are_turned_moves_none_of_them(tmp_path: Path) -> None:
    with Ledger.open(tmp_path / "a.ledger", clock=VirtualClock()) as ledger:
        for item in (BILGE_PUMP, CABIN_FAN, BILGE_PUMP):
            ledger.new_job(item=item, motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry")
        page = find_jobs(ledger, Wanted(text="hums"), None, 2)
        ledger.new_job(item=CABIN_FAN, motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry")
        rest = find_jobs(ledger, Wanted(text="hums"), page.after, 2)
    assert [job.id for job in (*page.jobs, *rest.jobs)] == [3, 2, 1]
    assert rest.after is None


def test_no_page_is_found_by_counting_rows_off(ledger: Ledger) -> None:
    with ledger.reading() as session:
        said: list[str] = []
        connection = session.connection().connection.driver_connection
        assert connection is not None
        connection.set_trace_callback(said.append)
        finding_jobs._keys(session, Wanted(text="hums"), ("", 30), 5, indexed=True, counting=False)
        connection.set_trace_callback(None)
        session.execute(text("SELECT 1"))
    assert said
    assert not any("OFFSET 0" not in one and "OFFSET" in one for one in said)
