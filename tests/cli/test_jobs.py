"""`benchlog jobs` as a user runs it."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli.jobs import command
from benchlog.clock import VirtualClock
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.records import Closing, JobState
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, MOTOR, leave_journal


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
    assert jobs(book, "zebra").stdout == "No job is like this.\n"


@pytest.mark.parametrize("day", ["2026-13-01", "tomorrow", "9999-12-31"])
def test_a_day_that_is_none_is_refused_in_one_line(book: Path, day: str) -> None:
    told = jobs(book, "--until", day)
    assert (told.exit_code, told.stdout, told.stderr.count("\n")) == (2, "", 1)
    assert day in told.stderr
