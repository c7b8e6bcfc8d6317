"""What is written down of faults: bounded, dated, and without a word that is not this program's own."""

import logging
import re
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from benchlog import logs
from benchlog.errors import LedgerBusy
from benchlog.logs import FILE_BYTES, FILES, LogFile, log_files

MARK = "Zaunkoenig"


@pytest.fixture
def log() -> Iterator[logging.Logger]:
    logger = logging.getLogger("benchlog.tests")
    logger.propagate = False
    yield logger
    logger.handlers.clear()
    logger.propagate = True


def written(folder: Path) -> str:
    return "".join(path.read_text(encoding="utf-8") for path in log_files(folder))


def test_an_entry_says_when_in_utc_which_process_and_which_version(log: logging.Logger, tmp_path: Path) -> None:
    log.addHandler(LogFile("bench", tmp_path))
    log.warning("no reply within %g s", 0.5)
    heading, entry = written(tmp_path).splitlines()
    assert re.match(r"# benchlog [\d.]+, Python 3\.", heading)
    assert "pyvisa" in heading
    assert re.match(
        r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z bench\[\d+\] WARNING benchlog\.tests: no reply within 0\.5 s$", entry
    )


def test_what_is_no_word_of_this_program_stands_as_its_kind_and_length(log: logging.Logger, tmp_path: Path) -> None:
    log.addHandler(LogFile("window", tmp_path))
    log.error("the ledger: %s, %s, %r", LedgerBusy(f"/home/{MARK}", MARK), MARK, Path(MARK))
    log.error("of %(owner)s", {"owner": MARK})
    assert MARK not in written(tmp_path)
    assert "benchlog.errors.LedgerBusy, <str, 10>" in written(tmp_path)


def test_an_error_is_its_class_and_places_and_those_behind_it(log: logging.Logger, tmp_path: Path) -> None:
    log.addHandler(LogFile("window", tmp_path))
    try:
        try:
            with closing(sqlite3.connect(":memory:")) as connection:
                connection.execute(f"SELECT {MARK}")
        except sqlite3.OperationalError as error:
            raise ValueError(MARK) from error
    except ValueError:
        log.exception("a fault in the window")
    text = written(tmp_path)
    assert MARK not in text
    assert "  ValueError\n    test_logs.py:" in text
    assert "  sqlite3.OperationalError SQLITE_ERROR\n" in text
    assert "/" not in text.split("ValueError\n")[1].split(" in ")[0]


def test_of_a_library_only_the_pattern_of_a_message_is_kept(tmp_path: Path) -> None:
    file = LogFile("bench", tmp_path)
    for message, arguments in ((f"read {MARK}", ()), ("read %s", (MARK,))):
        file.handle(logging.LogRecord("pyvisa", logging.WARNING, "", 0, message, arguments, None))
    assert MARK not in written(tmp_path)
    assert "pyvisa: read <str, 10>" in written(tmp_path)


def test_the_files_stay_within_their_bound_and_the_newest_entry_is_there(tmp_path: Path) -> None:
    for number in range(FILES + 3):
        (tmp_path / f"benchlog-2026010{number}T000000000000-1.log").write_bytes(b"x" * FILE_BYTES)
    (tmp_path / logs.NAME).write_bytes(b"y" * (FILE_BYTES - 10))
    LogFile("window", tmp_path).handle(logging.LogRecord("ui", logging.ERROR, "", 0, "the last one", (), None))
    files = log_files(tmp_path)
    assert len(files) == FILES
    assert all(path.stat().st_size <= FILE_BYTES for path in files)
    assert "the last one" in files[-1].read_text(encoding="utf-8")


def test_an_entry_has_an_end(log: logging.Logger, tmp_path: Path) -> None:
    log.addHandler(LogFile("window", tmp_path))
    log.error("long " * FILE_BYTES)
    assert len(written(tmp_path)) < logs.LONGEST + 500


def test_a_folder_that_can_not_be_written_is_told_to_nobody(
    log: logging.Logger, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").touch()
    log.addHandler(LogFile("bench", tmp_path / "file"))
    log.error("not written")
    assert capsys.readouterr() == ("", "")


def test_what_nobody_caught_is_written_down_and_still_shown(tmp_path: Path) -> None:
    code = (
        "from pathlib import Path; from benchlog.logs import keep_log\n"
        f"keep_log('bench', Path({str(tmp_path)!r})); raise KeyError({MARK!r})"
    )
    done = subprocess.run([sys.executable, "-P", "-c", code], capture_output=True, text=True, timeout=60, check=False)
    assert "Traceback" in done.stderr
    assert "CRITICAL benchlog.logs: a fault that nobody caught\n  KeyError\n" in written(tmp_path)
    assert MARK not in written(tmp_path)
