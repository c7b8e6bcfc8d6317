"""Backups: what counts as one, which of them stay, and that making one disturbs nobody."""

import hashlib
import os
import signal
import sqlite3
import subprocess
import sys
import threading
import time
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError
from benchlog.ledger import backups as module
from benchlog.ledger.backups import (
    Backup,
    BackupOfTheDay,
    Stopped,
    back_up,
    backups,
    due,
    folder_of,
    last_good,
    originals_of,
    sha256_of,
    staying,
)
from benchlog.ledger.filing import file_journal
from benchlog.ledger.opening import HEAD
from benchlog.ledger.store import Ledger
from benchlog.ledger.writer_lock import take
from tests.ledger.benches import BILGE_PUMP, MOTOR, bench_trace, blocks, leave_journal, request, write_journal

DAY_S = 86_400.0
BEGAN = datetime(2026, 1, 1, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "work[shop].ledger"
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
        file_journal(ledger, leave_journal(tmp_path, "a", job=job))
    return path


def original(path: Path, content: bytes) -> Path:
    file = originals_of(path) / f"{hashlib.sha256(content).hexdigest()}.jpg"
    file.parent.mkdir(exist_ok=True)
    file.write_bytes(content)
    return file


def names(folder: Path) -> set[str]:
    return {entry.name for entry in folder.iterdir()} if folder.exists() else set()


# which stay: all of this is counted by hand from the rule, 7 days, 4 weeks, 12 months


def test_a_daily_backup_of_two_years_leaves_seven_days_four_weeks_and_twelve_months() -> None:
    made = [BEGAN + timedelta(days=day) for day in range(730)]
    kept: set[datetime] = set()
    for one in made:
        kept = staying([*kept, one])
    days = sorted(kept)
    assert days[-7:] == made[-7:]
    # 2027-12-31 is a Friday: weeks end on Sundays 12-26, 12-19, 12-12.
    assert {datetime(2027, 12, day, tzinfo=UTC) for day in (12, 19, 26, 31)} <= kept
    ends = [datetime(2027, month, 1, tzinfo=UTC) - timedelta(days=1) for month in range(2, 13)]
    assert set(ends) <= kept
    assert len(kept) == 7 + 2 + 11  # one Sunday is among the last seven days; December's last is the newest of all


def test_a_shop_that_opens_seldom_keeps_its_seven_last_days_however_old() -> None:
    made = [BEGAN + timedelta(days=100 * number) for number in range(20)]
    assert staying(made) == set(made[-12:])


def test_of_one_day_only_the_newest_stays() -> None:
    made = [BEGAN + timedelta(hours=hour) for hour in range(20)]
    assert staying(made) == {made[-1]}
    assert staying([]) == set()


MOMENTS = st.integers(0, 40_000_000).map(lambda minutes: BEGAN + timedelta(minutes=minutes))


@given(st.lists(MOMENTS, min_size=1, max_size=60))
def test_the_newest_always_stays_and_what_stays_stays_again(made: list[datetime]) -> None:
    stay = staying(made)
    assert max(made) in stay
    assert staying(stay) == stay
    assert stay <= set(made)
    assert len(stay) <= 7 + 4 + 12


# what one is


def test_a_backup_is_the_whole_ledger_with_its_originals_and_on_record(path: Path) -> None:
    photo = original(path, b"a photo of a bilge pump")
    made = back_up(path, VirtualClock())
    copy = Path(made.path)
    assert copy.parent == folder_of(path)
    assert (made.jobs, made.revision, made.trouble) == (1, HEAD, "")
    assert (made.size, made.sha256) == (copy.stat().st_size, sha256_of(copy))
    assert last_good(path) == made
    assert names(copy.parent) == {copy.name, f"{copy.name}.json", "files"}
    kept = copy.parent / "files" / photo.name
    assert kept.read_bytes() == photo.read_bytes()
    assert not kept.samefile(photo)  # the same bytes on the disk would be damaged together
    with Ledger.open(copy) as opened:
        assert [job.complaint for job in opened.jobs()] == ["hums"]


def test_an_original_is_kept_once_for_all_backups_and_never_removed(path: Path) -> None:
    photo = original(path, b"a photo")
    clock = VirtualClock()
    back_up(path, clock)
    kept = folder_of(path) / "files" / photo.name
    first = kept.stat().st_mtime_ns
    photo.unlink()
    clock.advance(DAY_S)
    back_up(path, clock)
    assert kept.stat().st_mtime_ns == first


def test_an_original_that_is_not_what_its_name_says_stays_out_and_is_told(path: Path) -> None:
    photo = original(path, b"a photo")
    photo.write_bytes(b"a phota")
    (originals_of(path) / "notes.txt").write_text("not an original")
    made = back_up(path, VirtualClock())
    assert photo.name in made.trouble
    assert list((folder_of(path) / "files").iterdir()) == []


def test_an_original_that_the_ledger_names_and_nobody_has_is_told(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(
            "INSERT INTO file (job_id, utc, who, sha256, name, media_type, size, caption)"
            " VALUES (1, '2026-01-01T00:00:00.000Z', '', ?, 'pump.jpg', 'image/jpeg', 7, '')",
            ("0" * 64,),
        )
    assert "missing: 1" in back_up(path, VirtualClock()).trouble


def test_backups_day_by_day_let_go_only_of_what_need_not_stay(path: Path) -> None:
    clock = VirtualClock()
    mine = folder_of(path) / f"{path.name}.20250101T000000000Z"
    mine.parent.mkdir()
    mine.write_text("not made by the program")
    for _ in range(40):
        back_up(path, clock)
        clock.advance(DAY_S)
    found = backups(path)
    # 2026-02-09, a Monday, is the last day: 7 days to 02-03; Sundays 02-08, 02-01, 01-25; the end of January.
    days = [one.utc[5:10] for one in found]
    assert days == ["02-09", "02-08", "02-07", "02-06", "02-05", "02-04", "02-03", "02-01", "01-31", "01-25"]
    copies = {Path(one.path).name for one in found}
    assert names(folder_of(path)) == copies | {f"{name}.json" for name in copies} | {mine.name}


def test_nothing_is_let_go_of_when_the_new_one_is_not_sound(path: Path) -> None:
    clock = VirtualClock()
    for _ in range(8):
        back_up(path, clock)
        clock.advance(3600.0)
    before = names(folder_of(path))
    flip(path, 2)
    with pytest.raises(LedgerError):
        back_up(path, clock)
    assert names(folder_of(path)) == before
    assert last_good(path) is not None


def flip(path: Path, page: int) -> None:
    with path.open("rb+") as file:
        file.seek((page - 1) * 4096)
        content = file.read(4096)
        file.seek((page - 1) * 4096)
        file.write(bytes(byte ^ 0xFF for byte in content))


def test_of_a_ledger_with_a_spoiled_page_there_is_no_backup_or_a_sound_one(path: Path) -> None:
    """Every page in turn. What lies in a page that no table uses may pass: then every row is there."""
    sound = path.read_bytes()
    refused = 0
    for page in range(1, len(sound) // 4096 + 1):
        path.write_bytes(sound)
        flip(path, page)
        try:
            made = back_up(path, VirtualClock(page * 1.0, BEGAN + timedelta(days=page)))
        except LedgerError:
            refused += 1
        else:
            with Ledger.open(Path(made.path)) as opened:
                assert len(opened.trace(1).volts) == 40
    assert refused >= len(sound) // 4096 - 2


def test_a_backup_that_was_cut_short_or_lost_its_file_is_none(path: Path) -> None:
    first = Path(back_up(path, VirtualClock()).path)
    second = Path(back_up(path, VirtualClock(0.0, BEGAN + timedelta(days=1))).path)
    second.write_bytes(second.read_bytes()[:-4096])
    assert [one.there for one in backups(path)] == [False, True]
    good = last_good(path)
    assert good is not None
    assert good.path == str(first)
    first.unlink()
    assert last_good(path) is None
    (folder_of(path) / f"{path.name}.20260105T000000000Z.json").write_text("{")
    assert len(backups(path)) == 2


def test_a_second_backup_at_the_same_time_is_refused(path: Path) -> None:
    folder_of(path).mkdir()
    held = take(folder_of(path) / "making")
    assert held is not None
    with held, pytest.raises(LedgerBusy, match="another backup"):
        back_up(path, VirtualClock())
    back_up(path, VirtualClock())


# beside others


def test_a_backup_while_runs_are_filed_is_whole_and_holds_nobody_up(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Small steps, so that the filing falls between them and the copy has to begin anew until it takes all at once."""
    monkeypatch.setattr(module, "_PAGES", 1)
    made: list[Backup] = []
    copying = threading.Thread(target=lambda: made.append(back_up(path, VirtualClock())), daemon=True)
    trace = bench_trace(4_000)
    with Ledger.open(path, sole_writer=True) as ledger:
        copying.start()
        filed = 0
        while copying.is_alive():
            journal = write_journal(path.parent / f"{filed}.journal", blocks(request(f"r{filed}"), trace=trace))
            file_journal(ledger, journal)
            filed += 1
        copying.join()
        assert filed > 1
        assert len(ledger.recent_runs(limit=1000)) == filed + 1
    with Ledger.open(Path(made[0].path)) as copy:
        runs = copy.recent_runs(limit=1000)
        assert 1 <= len(runs) <= filed + 1
        assert all(len(copy.trace(run.id).volts) == run.samples for run in runs)


def test_a_ledger_that_another_program_holds_for_good_is_busy_and_the_backup_gives_up(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("benchlog.ledger.connection.BUSY_TIMEOUT_S", 0.05)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(LedgerBusy):
            back_up(path, VirtualClock())
        other.execute("ROLLBACK")
    assert names(folder_of(path)) == set()


def test_the_day_s_backup_is_made_once_a_day_and_told(path: Path) -> None:
    clock = VirtualClock()
    told: list[Backup | str] = []

    def start() -> None:
        day = BackupOfTheDay(path, clock, told.append)
        day.start()
        day.join(timeout=30)
        assert not day.is_alive()

    start()
    start()
    assert told == backups(path)
    assert not due(path, clock)
    clock.advance(DAY_S)
    assert due(path, clock)
    start()
    assert len(told) == len(backups(path)) == 2


def test_a_backup_of_the_day_that_fails_is_told_and_is_due_again(path: Path) -> None:
    folder_of(path).write_text("in the way")
    told: list[Backup | str] = []
    day = BackupOfTheDay(path, VirtualClock(), told.append)
    day.run()
    (text,) = told
    assert isinstance(text, str)
    assert text.startswith("no backup today: ")
    folder_of(path).unlink()
    assert due(path, VirtualClock())


def test_without_a_ledger_nothing_is_due(tmp_path: Path) -> None:
    assert not due(tmp_path / "none.ledger", VirtualClock())


def test_a_backup_that_is_told_to_stop_leaves_nothing(path: Path) -> None:
    stop = threading.Event()
    stop.set()
    with pytest.raises(Stopped):
        back_up(path, VirtualClock(), stop=stop)
    assert names(folder_of(path)) == set()


BACK_UP = """
import sys
from pathlib import Path
from benchlog.clock import SystemClock
from benchlog.ledger import backups
backups._PAGES = 8
print("ready", flush=True)
sys.stdin.readline()
while True:
    backups.back_up(Path(sys.argv[1]), SystemClock())
"""


@pytest.mark.skipif(os.name == "nt", reason="no such signal")
def test_a_kill_at_any_moment_of_a_backup_leaves_only_whole_ones(path: Path) -> None:
    with Ledger.open(path) as ledger:
        file_journal(ledger, write_journal(path.parent / "l.journal", blocks(request("l"), trace=bench_trace(40_000))))
    rows = jobs_and_samples(path)
    original(path, b"x" * 300_000)
    left_parts = 0
    for number in range(12):
        child = started(BACK_UP, path)
        time.sleep(0.004 + 0.007 * number)
        child.send_signal(signal.SIGKILL)
        child.wait()
        close_pipes(child)
        left_parts += any(name.endswith(".part") for name in names(folder_of(path)))
        for one in backups(path):
            if one.there:
                assert sha256_of(Path(one.path)) == one.sha256
                assert jobs_and_samples(Path(one.path)) == rows
    assert left_parts  # else no kill fell into a backup
    last = back_up(path, VirtualClock(0.0, datetime(2099, 1, 1, tzinfo=UTC)))
    assert last_good(path) == last
    assert not any(".part" in name for name in names(folder_of(path)))
    assert jobs_and_samples(path) == rows


def jobs_and_samples(path: Path) -> list[tuple[int, int]]:
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        return connection.execute("SELECT run_id, samples FROM trace ORDER BY run_id").fetchall()


def started(code: str, *arguments: Path) -> "subprocess.Popen[str]":
    """A program that says "ready" and goes on when it is told to; it has been."""
    child = subprocess.Popen(
        [sys.executable, "-c", code, *map(str, arguments)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(Path(__file__).parents[2]), *sys.path])},
    )
    assert child.stdin is not None
    assert child.stdout is not None
    assert child.stdout.readline() == "ready\n"
    child.stdin.write("go\n")
    child.stdin.flush()
    return child


def close_pipes(child: "subprocess.Popen[str]") -> None:
    for pipe in (child.stdin, child.stdout):
        if pipe is not None:
            pipe.close()


def test_a_spoiled_ledger_is_told_as_damaged(path: Path) -> None:
    with Ledger.open(path) as ledger:
        file_journal(ledger, write_journal(path.parent / "l.journal", blocks(request("l"), trace=bench_trace(9_000))))
    with closing(sqlite3.connect(path)) as connection:
        (page,) = connection.execute("SELECT rootpage FROM sqlite_master WHERE name = 'entry'").fetchone()
    flip(path, page)
    with pytest.raises(LedgerDamaged):
        back_up(path, VirtualClock())
