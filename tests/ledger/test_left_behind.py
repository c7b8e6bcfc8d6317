"""Journals that a crash left are found and filed; those that somebody writes, or that say nothing, stay."""

import logging
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.bench.file_lock import lock_file
from benchlog.clock import VirtualClock
from benchlog.errors import LedgerTooNew
from benchlog.ledger.filing import file_left_behind, journals_of
from benchlog.ledger.store import Ledger
from benchlog.records import Stage
from tests.ledger.benches import BILGE_PUMP, MOTOR, leave_journal


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def folder(ledger: Ledger) -> Path:
    folder = journals_of(ledger.path)
    folder.mkdir()
    return folder


def test_no_folder_and_an_empty_folder_hold_nothing_to_file(ledger: Ledger, tmp_path: Path, folder: Path) -> None:
    assert file_left_behind(ledger, tmp_path / "never made") == []
    assert file_left_behind(ledger, folder) == []


def test_all_that_was_left_is_filed_oldest_first(ledger: Ledger, folder: Path) -> None:
    for age_s, uid in enumerate(("b", "a", "c")):
        journal = leave_journal(folder, uid, result=None)
        os.utime(journal, (1_000_000 + age_s, 1_000_000 + age_s))
    filed = file_left_behind(ledger, folder)
    assert [run.job for run in filed] == [1, 2, 3]
    assert ['"uid":"b"' in ledger.run(run.run).request for run in filed] == [True, False, False]
    assert list(folder.iterdir()) == []
    assert file_left_behind(ledger, folder) == []


def test_what_can_not_be_filed_stays_and_is_reported_and_the_rest_is_filed(ledger: Ledger, folder: Path) -> None:
    (folder / "0-empty.journal").touch()
    (folder / "1-other.journal").write_bytes(b"a shopping list")
    leave_journal(folder, "2-lost", job=77)
    leave_journal(folder, "3-good")
    (folder / "letter.txt").write_text("not a journal")
    problems: dict[str, str] = {}

    filed = file_left_behind(ledger, folder, report=lambda path, why: problems.update({path.name: why}))

    assert len(filed) == 1
    assert list(problems) == ["0-empty.journal", "1-other.journal", "2-lost.journal"]
    assert "key 77" in problems["2-lost.journal"]
    assert {path.name for path in folder.iterdir()} == {*problems, "letter.txt"}


def test_what_can_not_be_filed_is_in_the_log_unless_the_caller_reports_it(
    ledger: Ledger, folder: Path, caplog: pytest.LogCaptureFixture
) -> None:
    (folder / "other.journal").write_bytes(b"a shopping list")
    with caplog.at_level(logging.WARNING):
        file_left_behind(ledger, folder)
    assert "other.journal" in caplog.text
    assert "no readable head" in caplog.text


def test_a_journal_that_a_living_process_writes_is_left_until_that_process_is_gone(
    ledger: Ledger, folder: Path
) -> None:
    journal = leave_journal(folder, "a", result=None)
    content = journal.read_bytes()
    hold = """
import sys
from benchlog.bench.file_lock import lock_file
file = open(sys.argv[1], "ab")
print(lock_file(file.fileno()), flush=True)
sys.stdin.read()
"""
    command = [sys.executable, "-c", hold, str(journal)]
    environment = {"PYTHONPATH": os.pathsep.join(sys.path)}
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=environment) as writer:
        assert writer.stdout is not None
        assert writer.stdout.readline() == b"True\n"
        assert file_left_behind(ledger, folder) == []
        assert journal.read_bytes() == content
        writer.kill()
        writer.wait()
    assert len(file_left_behind(ledger, folder)) == 1
    assert not journal.exists()


def test_only_one_open_file_has_the_lock_and_closing_gives_it_up(tmp_path: Path) -> None:
    path = tmp_path / "a.journal"
    with path.open("wb") as writer, path.open("rb+") as reader:
        assert lock_file(writer.fileno())
        assert not lock_file(reader.fileno())
        writer.close()
        assert lock_file(reader.fileno())


def test_a_ledger_that_can_not_be_written_ends_the_search_and_every_journal_stays(ledger: Ledger, folder: Path) -> None:
    leave_journal(folder, "a")
    leave_journal(folder, "b")
    with ledger.writing() as session:
        session.connection().exec_driver_sql("UPDATE alembic_version SET version_num = '9000'").close()
    with pytest.raises(LedgerTooNew):
        file_left_behind(ledger, folder)
    assert len(list(folder.iterdir())) == 2


def test_a_rescue_that_ends_after_its_run_was_filed_becomes_a_line_of_the_job(ledger: Ledger, folder: Path) -> None:
    job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="", load_state="").id
    leave_journal(folder, "a", job=job, result=None)
    (filed,) = file_left_behind(ledger, folder)
    record = folder / "a.journal.rescue"
    text = '{"utc": "2026-11-25T10:00:09.000Z", "confirmed_off": true, "text": "switched off"}\n'

    for _ in range(2):  # the second time as after a crash between the commit and the removal
        record.write_text(text)
        assert file_left_behind(ledger, folder) == []
        assert not record.exists()

    (entry,) = ledger.entries(job)
    assert (entry.utc, entry.stage) == ("2026-11-25T10:00:09.000Z", Stage.FREE)
    assert entry.text == f"rescue of run {filed.run}: switched off (output confirmed off)"
    assert not ledger.run(filed.run).result.output_confirmed_off


def test_a_rescue_of_an_unknown_run_stays_and_is_reported(ledger: Ledger, folder: Path) -> None:
    record = folder / "x.journal.rescue"
    record.write_text('{"utc": "2026-11-25T10:00:09.000Z", "confirmed_off": false, "text": ""}')
    problems: list[Path] = []
    file_left_behind(ledger, folder, report=lambda path, why: problems.append(path))
    assert problems == [record]
    assert record.exists()
