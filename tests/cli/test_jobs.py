"""`benchlog jobs` as a user runs it."""

import json
import time
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from msgspec.structs import replace

from benchlog.cli.jobs import command, wanted_of
from benchlog.clock import VirtualClock, day_text, minute_text
from benchlog.ledger.filing import file_journal
from benchlog.ledger.finding_jobs import choices_for, find_jobs
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.ledger.wanted import Month, opened_from
from benchlog.outcome import Outcome
from benchlog.records import Closing, JobState, RunKind
from tests.ledger.benches import (
    BILGE_PUMP,
    CABIN_FAN,
    FREED,
    MOTOR,
    RAN,
    a_lot,
    blocks,
    fresh_ledger,
    leave_journal,
    request,
    write_journal,
)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Four jobs of four days: 1 freed and closed, 2 open, 3 as 1 and waiting, 4 as 2."""
    folder = tmp_path_factory.mktemp("jobs")
    path, clock = folder / "workshop.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        for item in (BILGE_PUMP, CABIN_FAN, BILGE_PUMP, CABIN_FAN):
            ledger.new_job(item=item, motor=MOTOR, complaint="hums", load_state="dry")
            clock.advance(86_400.0)
        file_journal(ledger, leave_journal(folder, "a", job=1))
        ledger.close_job(1, Closing(cause="Rust", work_done="", prognosis=""))
        set_waiting(ledger, 3, JobState.FOR_PART, for_what="a seal")
    return path


def jobs(book: Path, *arguments: str) -> Result:
    return CliRunner().invoke(command, [*arguments, "--ledger", str(book)])


@pytest.mark.parametrize(
    ("arguments", "numbers"),
    [
        (("bil pump",), [3, 1]),
        (("bp-17",), [3, 1]),
        (("--kind", "Cabin Fan"), [4, 2]),
        (("--state", "closed"), [1]),
        (("--state", "waiting"), [3]),
        (("--cause", "rust", "--outcome", "freed"), [1]),
        (("--until", "2026-01-02"), [2, 1]),
        (("--since", "2026-01-02", "--until", "2026-01-02"), [2]),
        (("--order", "oldest", "--limit", "2"), [1, 2]),
        (("zebra",), []),
        (("--kind", "zebra"), []),
    ],
)
def test_text_and_filters(book: Path, arguments: tuple[str, ...], numbers: list[int]) -> None:
    told = jobs(book, *arguments, "--json")
    assert (told.exit_code, told.stderr) == (0, "")
    assert [json.loads(row)["job"] for row in told.stdout.splitlines()] == numbers


def test_a_line_a_job_and_how_many_more_there_are(book: Path) -> None:
    rows = jobs(book, "--limit", "3").stdout.splitlines()
    assert [row[:4] for row in rows[:3]] == ["0004", "0003", "0002"]
    assert rows[3:] == ["3 of 4."]
    assert jobs(book, "zebra").stdout.splitlines()[0] == "No job is like this."
    assert "The kinds there are: " in jobs(book, "--kind", "zebra").stdout


def test_what_measures_is_counted_where_it_is_not_listed(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        path = ledger.path
        assert jobs(path).stdout == "No jobs yet.\n"
        a_lot(ledger)
    assert jobs(path).stdout == "1 measuring job is not shown: --purpose measuring\n"
    assert (jobs(path, "--json").stdout, jobs(path, "--purpose", "repair").stdout) == ("", "No job is like this.\n")
    assert jobs(path, "--purpose", "measuring").stdout.startswith("0001")


def test_a_cold_start_that_is_due_is_listed_whatever_its_job_is_for(tmp_path: Path) -> None:
    ran_in = replace(RAN, moved=True)
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        path, lot = ledger.path, a_lot(ledger)
        a_lot(ledger, name="fans of autumn")
        one = replace(request("a", job=lot.job.id, journal=str(tmp_path / "a.journal")), kind=RunKind.RUN_IN)
        file_journal(ledger, write_journal(tmp_path / "a.journal", blocks(one, result=ran_in)))
    row, rest = jobs(path).stdout.splitlines()
    assert row.startswith("0001")
    assert row.endswith("now that it is cold: benchlog capture --job 1]")
    assert rest == "1 measuring job is not shown: --purpose measuring"


def test_what_was_freed_is_found_after_it_was_proven_as_well(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        for results in ((FREED, RAN), (RAN,), (FREED,), (FREED, replace(RAN, outcome=Outcome.STILL_STUCK))):
            job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
            for number, result in enumerate(results):
                file_journal(ledger, leave_journal(tmp_path, f"{job}-{number}", job=job, result=result))
        path = ledger.path
    found = jobs(path, "--outcome", "freed", "--json").stdout.splitlines()
    assert [json.loads(row)["job"] for row in found] == [3, 1]
    found = jobs(path, "--outcome", "runs", "--json").stdout.splitlines()
    assert [json.loads(row)["job"] for row in found] == [2, 1]


def test_a_month_is_that_of_the_calendar_here(tmp_path: Path) -> None:
    clock = VirtualClock(utc_start=datetime(2026, 10, 30, 12, tzinfo=UTC))
    with fresh_ledger(tmp_path, clock) as ledger:
        for _ in range(4):  # 30 and 31 October, 1 and 2 November
            ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
            clock.advance(86_400.0)
        choices = choices_for(ledger)
        for month, numbers in ((Month.LAST, [2, 1]), (Month.THIS, [4, 3])):
            wanted = wanted_of(choices, clock.utc(), month=month)
            assert [job.number for job in find_jobs(ledger, wanted).jobs] == numbers
        path = ledger.path
    told = jobs(path, "--month", "last", "--since", "2026-10-01")
    assert (told.exit_code, told.stderr.count("\n")) == (2, 1)


@pytest.fixture
def clock_of(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[str], None]]:
    """Sets the zone in which this process lives."""
    if not hasattr(time, "tzset"):
        pytest.skip("this system's clock can't be moved for one process")

    def move(zone: str) -> None:
        monkeypatch.setenv("TZ", zone)
        time.tzset()

    yield move
    monkeypatch.undo()
    time.tzset()


def test_days_that_are_asked_for_and_shown_are_those_of_the_calendar_here(
    tmp_path: Path, clock_of: Callable[[str], None]
) -> None:
    clock_of("Far-14")
    clock = VirtualClock(utc_start=datetime(2026, 3, 4, 9, tzinfo=UTC))
    with fresh_ledger(tmp_path, clock) as ledger:
        ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")  # 4 March, 23:00
        clock.advance(7200.0)
        ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="hums", load_state="dry")  # 5 March, 01:00
        path = ledger.path
    for asked, shown in (
        (("--until", "2026-03-04"), "0001  2026-03-04"),
        (("--since", "2026-03-05"), "0002  2026-03-05"),
    ):
        (row,) = jobs(path, *asked).stdout.splitlines()
        assert row.startswith(shown)


def test_where_there_is_no_midnight_a_day_begins_when_the_clocks_have_gone_forward(
    clock_of: Callable[[str], None],
) -> None:
    # The first Sunday of September at 24:00 on, by POSIX rules: made for this test.
    clock_of("West4Summer,M9.1.0/0,M4.1.0/0")
    assert opened_from(date(2026, 9, 6)) == "2026-09-06T04:00:00.000Z"  # 01:00, three hours behind
    assert opened_from(date(2026, 9, 5)) == "2026-09-05T04:00:00.000Z"
    assert opened_from(date(2026, 9, 7)) == "2026-09-07T03:00:00.000Z"
    # In April 23:00 comes twice; midnight once.
    assert opened_from(date(2026, 4, 5)) == "2026-04-05T04:00:00.000Z"
    assert day_text("2026-04-05T03:30:00.000Z") == "2026-04-04"


def test_instants_are_told_with_the_zone_they_are_in_and_what_is_none_as_it_was_kept(
    clock_of: Callable[[str], None],
) -> None:
    kept = "2026-03-04T22:30:00.000Z"
    for zone, day, minute in (
        ("UTC", "2026-03-04", "2026-03-04 22:30 UTC"),
        ("Far-14", "2026-03-05", "2026-03-05 12:30 UTC+14:00"),
        ("Half3:30", "2026-03-04", "2026-03-04 19:00 UTC-03:30"),
    ):
        clock_of(zone)
        assert (day_text(kept), minute_text(kept)) == (day, minute)
    clock_of("Far-14")
    for damaged in ("4 March 2026", "", "9999-12-31T23:59:59.999Z"):
        assert (day_text(damaged), minute_text(damaged)) == (damaged[:10], damaged[:16])


def test_a_plural_is_found_and_what_finds_more_is_said(book: Path) -> None:
    assert [json.loads(row)["job"] for row in jobs(book, "pumps", "--json").stdout.splitlines()] == [3, 1]
    assert "pumps finds pump" in jobs(book, "zebra").stdout


@pytest.mark.parametrize("day", ["2026-13-01", "tomorrow", "9999-12-31"])
def test_a_day_that_is_none_is_refused_in_one_line(book: Path, day: str) -> None:
    told = jobs(book, "--until", day)
    assert (told.exit_code, told.stdout, told.stderr.count("\n")) == (2, "", 1)
    assert day in told.stderr


def test_a_ledger_named_wrong_is_refused_and_not_made(tmp_path: Path) -> None:
    told = jobs(tmp_path / "harbor.db")
    assert told.exit_code == 2
    assert "there is no ledger" in told.stderr
    assert list(tmp_path.iterdir()) == []
