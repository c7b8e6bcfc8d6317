"""`benchlog history` as a user runs it: a rate with its limits, and the jobs behind it."""

import json
from pathlib import Path

import msgspec
import pytest
from click.testing import CliRunner, Result

from benchlog.cli.history import command
from benchlog.clock import VirtualClock
from benchlog.ledger.costs import charge_other
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.ledger.wanted import Month
from benchlog.outcome import Outcome
from benchlog.quantities import wilson
from benchlog.records import Closing, Event, EventKind, JobState
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, FREED, MOTOR, blocks, request, write_journal

DAY_S = 86_400.0


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Four bilge pumps of which three came free, and a cabin fan nobody has tried yet."""
    folder = tmp_path_factory.mktemp("history")
    path, clock = folder / "workshop.ledger", VirtualClock()
    stuck = msgspec.structs.replace(FREED, outcome=Outcome.STILL_STUCK)
    step = Event(t_s=0.5, kind=EventKind.STEP, text="kicks", values={"rung": 1, "name": "first", "volts": 9.6})
    with Ledger.open(path, clock=clock) as ledger:
        for n, result in enumerate((FREED, stuck, FREED, FREED), start=1):
            ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
            said = blocks(request(f"r{n}", job=n), result=result, events=(step,))
            file_journal(ledger, write_journal(folder / f"r{n}.journal", said))
            charge_other(ledger, n, "harbour launch", 1250)
            clock.advance(DAY_S)
            ledger.close_job(n, Closing(cause="rust", work_done="", prognosis="", method=f"way {n % 2}"))
        ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="dead", load_state="dry")
        set_waiting(ledger, 5, JobState.FOR_PART, for_what="a blade")
    return path


def history(ledger: Path, *arguments: str) -> Result:
    return CliRunner().invoke(command, [*arguments, "--ledger", str(ledger)])


def test_a_group_says_how_many_came_free_with_limits_and_what_waits(book: Path) -> None:
    told = history(book, "--jobs")
    assert (told.exit_code, told.stderr) == (0, "")
    assert "bilge pump: 4 jobs, 0 still open\n  freed        3 of 4 (30 to 95 %)\n" in told.stdout
    assert "charged      50.00" in told.stdout
    assert "jobs 0001, 0002, 0003, 0004\n" in told.stdout
    assert "waiting-for-part: 1, the longest for" in told.stdout


@pytest.mark.parametrize("by", ["kind", "model", "cause", "method"])
def test_every_job_is_behind_exactly_one_group(book: Path, by: str) -> None:
    rows = [json.loads(row) for row in history(book, "--by", by, "--json", "--jobs").stdout.splitlines()]
    groups = [row for row in rows if "group" in row]
    assert sorted(number for row in groups for number in row["jobs"]) == [1, 2, 3, 4, 5]
    for row in groups:
        assert row["interval"] == (list(wilson(row["freed"], row["of"])) if row["of"] else None)
        assert len(row["jobs"]) == row["count"]


def test_rungs_and_filters(book: Path) -> None:
    (row,) = [json.loads(row) for row in history(book, "--by", "rung", "--json", "--jobs").stdout.splitlines()]
    assert (row["kind"], row["rung"], row["freed"], row["of"]) == ("bilge pump", "first, 80 %", 3, 3)
    assert row["jobs"] == [1, 3, 4]
    assert history(book, "--kind", "zebra").stdout == (
        "No job is like this.\nThe kinds there are: bilge pump, cabin fan.\n"
    )
    assert history(book, "--since", "zebra").exit_code == 2


def test_a_ledger_named_wrong_is_refused_and_not_made(tmp_path: Path) -> None:
    told = history(tmp_path / "harbor.db")
    assert told.exit_code == 2
    assert "there is no ledger" in told.stderr
    assert list(tmp_path.iterdir()) == []


def test_a_month_stands_for_its_days_and_not_beside_others(book: Path) -> None:
    with Ledger.open(book) as ledger:
        now_utc = ledger.clock.utc()
    for month in Month:
        first, last = month.days(now_utc)
        by_month = history(book, "--month", month.value, "--json")
        assert by_month.exit_code == 0
        assert by_month.stdout == history(book, "--since", str(first), "--until", str(last), "--json").stdout
    refused = history(book, "--month", "this", "--until", "2026-01-01")
    assert (refused.exit_code, refused.stdout) == (2, "")
    assert "--month" in refused.stderr
