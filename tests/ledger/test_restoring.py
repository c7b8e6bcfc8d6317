"""Restoring: from sound, damaged and missing ledgers, refused where it would harm, and killed at any moment."""

import hashlib
import os
import signal
import sqlite3
import time
from contextlib import closing
from pathlib import Path

import msgspec
import pytest

from benchlog.bench.journal import Journal
from benchlog.clock import VirtualClock
from benchlog.errors import LedgerBusy, LedgerDamaged, LedgerError, LedgerReadOnly, LedgerTooNew, Refused
from benchlog.ledger.backups import back_up, copy_verified, folder_of, originals_of
from benchlog.ledger.files import attach, original
from benchlog.ledger.filing import file_journal, file_left_behind, journals_of
from benchlog.ledger.lots import add_unit
from benchlog.ledger.off_by_hand import acknowledge, not_confirmed
from benchlog.ledger.opening import APPLICATION_ID, HEAD
from benchlog.ledger.restoring import look, restore
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, RunKind
from tests.ledger.benches import (
    BILGE_PUMP,
    CABIN_FAN,
    FREED,
    MOTOR,
    a_lot,
    bench_trace,
    blocks,
    file_start_up,
    fresh_ledger,
    leave_journal,
    request,
    write_journal,
)
from tests.ledger.test_backups import close_pipes, flip, started
from tests.ledger.test_migrations import REVISIONS, old_ledger

KEPT = "before-restore.20260101T000000000Z"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "workshop.ledger"
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
        file_journal(ledger, leave_journal(tmp_path, "a", job=job))
    return path


@pytest.fixture
def copy(path: Path) -> Path:
    """A backup with one job; a second job has come in since."""
    made = Path(back_up(path, VirtualClock()).path)
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="stuck", load_state="dry")
    return made


def kinds(path: Path) -> list[str]:
    with Ledger.open(path) as ledger:
        return [job.item.kind for job in ledger.jobs()]


def files_beside(path: Path) -> set[str]:
    return {entry.name for entry in path.parent.iterdir()} - {path.name, folder_of(path).name, originals_of(path).name}


def test_a_backup_takes_the_ledger_s_place_and_the_old_file_is_kept(path: Path, copy: Path) -> None:
    before = path.read_bytes()
    done = restore(copy, path, VirtualClock())
    assert kinds(path) == ["bilge pump"]
    assert done.kept == path.with_name(f"{path.name}.{KEPT}")
    assert done.kept.read_bytes() == before
    assert (done.source.jobs, done.source.revision, done.source.utc) == (1, HEAD, "2026-01-01T00:00:00.000Z")
    assert files_beside(path) == {done.kept.name}
    later = VirtualClock()
    later.advance(5.0)
    restore(done.kept, path, later)  # and back again
    assert kinds(path) == ["cabin fan", "bilge pump"]


def test_it_works_without_a_ledger(path: Path, copy: Path, tmp_path: Path) -> None:
    path.unlink()
    assert restore(copy, path, VirtualClock()).kept is None
    assert kinds(path) == ["bilge pump"]
    elsewhere = tmp_path / "new" / "place.ledger"
    restore(copy, elsewhere, VirtualClock())
    assert kinds(elsewhere) == ["bilge pump"]


@pytest.mark.parametrize("content", [b"", b"a shopping list\n", b"SQLite format 3\x00" + b"\x00" * 4096])
def test_it_works_where_something_else_is_in_the_ledger_s_place(path: Path, copy: Path, content: bytes) -> None:
    path.write_bytes(content)
    done = restore(copy, path, VirtualClock())
    assert done.kept is not None
    assert done.kept.read_bytes() == content
    assert kinds(path) == ["bilge pump"]


def test_it_works_whatever_page_of_the_ledger_is_spoiled(path: Path, copy: Path) -> None:
    sound = path.read_bytes()
    for page in range(1, len(sound) // 4096 + 1):
        path.write_bytes(sound)
        flip(path, page)
        spoiled = path.read_bytes()
        done = restore(copy, path, VirtualClock())
        assert done.kept is not None
        assert done.kept.read_bytes() == spoiled
        assert kinds(path) == ["bilge pump"]
        done.kept.unlink()


def test_a_rollback_journal_of_the_old_ledger_is_never_played_into_the_new_one(path: Path, copy: Path) -> None:
    path.write_bytes(b"no longer a ledger")
    hot = path.with_name(path.name + "-journal")
    hot.write_bytes(b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + b"\x00" * 600)
    done = restore(copy, path, VirtualClock())
    assert done.kept is not None
    assert done.kept.with_name(done.kept.name + "-journal").exists()
    assert not hot.exists()
    assert kinds(path) == ["bilge pump"]


def test_a_log_that_another_program_left_is_part_of_the_file_that_is_kept(path: Path, copy: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("PRAGMA journal_mode = WAL")
        other.execute("UPDATE job SET cause = 'rust'")
        (wal, ledger) = (path.with_name(path.name + "-wal").read_bytes(), path.read_bytes())
    path.write_bytes(ledger)  # as after a crash
    path.with_name(path.name + "-wal").write_bytes(wal)
    done = restore(copy, path, VirtualClock())
    assert done.kept is not None
    with closing(sqlite3.connect(done.kept)) as connection:
        assert connection.execute("SELECT DISTINCT cause FROM job").fetchall() == [("rust",)]
    assert kinds(path) == ["bilge pump"]


def test_originals_come_back_and_none_is_taken_away(path: Path) -> None:
    contents = {hashlib.sha256(text).hexdigest(): text for text in (b"pump, before", b"pump, after")}
    first, second = (originals_of(path) / f"{name}.jpg" for name in contents)
    originals_of(path).mkdir()
    first.write_bytes(contents[first.stem])
    copy = Path(back_up(path, VirtualClock()).path)
    second.write_bytes(contents[second.stem])
    first.unlink()
    assert restore(copy, path, VirtualClock()).trouble == ()
    assert {one.name: one.read_bytes() for one in originals_of(path).iterdir()} == {
        first.name: b"pump, before",
        second.name: b"pump, after",
    }


def unchanged(path: Path, source: Path, error: type[Exception], match: str) -> None:
    before = (path.read_bytes(), files_beside(path))
    with pytest.raises(error, match=match):
        restore(source, path, VirtualClock())
    assert (path.read_bytes(), files_beside(path)) == before


def test_what_is_no_good_is_refused_and_nothing_changes(path: Path, copy: Path, tmp_path: Path) -> None:
    other = tmp_path / "shopping.txt"
    other.write_text("bread")
    unchanged(path, other, LedgerDamaged, "not a ledger")
    unchanged(path, tmp_path / "none", LedgerError, "no such file")
    unchanged(path, path, Refused, "the ledger itself")
    assert restore(copy, path, VirtualClock()).source.path == copy


def test_a_backup_with_a_single_flipped_bit_is_refused(path: Path, copy: Path) -> None:
    """Also one in a text, that SQLite's own check does not see: the record knows the SHA-256."""
    content = bytearray(copy.read_bytes())
    at = content.index(b"hums")
    content[at] ^= 1
    copy.write_bytes(bytes(content))
    unchanged(path, copy, LedgerDamaged, "not what it was")


def test_a_damaged_copy_without_a_record_is_refused_by_its_check(path: Path, tmp_path: Path) -> None:
    plain = tmp_path / "plain.copy"
    copy_verified(path, plain)
    with closing(sqlite3.connect(plain)) as connection:
        (page,) = connection.execute("SELECT rootpage FROM sqlite_master WHERE name = 'entry'").fetchone()
    flip(plain, page)
    unchanged(path, plain, LedgerDamaged, "malformed|does not pass")


def test_a_newer_one_is_refused_with_both_numbers(path: Path, tmp_path: Path) -> None:
    newer = tmp_path / "newer.copy"
    copy_verified(path, newer)
    with closing(sqlite3.connect(newer, isolation_level=None)) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '9000'")
    with pytest.raises(LedgerTooNew) as caught:
        look(newer)
    assert "9000" in caught.value.what
    assert HEAD in caught.value.what
    unchanged(path, newer, LedgerTooNew, "9000")


@pytest.mark.parametrize("written", REVISIONS, ids=lambda path: path.stem)
def test_an_older_one_is_put_in_place_and_brought_up_to_date_when_it_is_opened(path: Path, written: Path) -> None:
    old = old_ledger(path.parent, written)
    assert restore(old, path, VirtualClock()).source.revision == written.stem.removeprefix("revision_")
    assert len(kinds(path)) == 2
    assert len(kinds(old)) == 2


def test_while_another_program_writes_it_is_refused(path: Path, copy: Path) -> None:
    with Ledger.open(path, sole_writer=True), pytest.raises(LedgerBusy, match="open for writing"):
        restore(copy, path, VirtualClock())
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        unchanged(path, copy, LedgerBusy, "is writing it")
        other.execute("ROLLBACK")
    restore(copy, path, VirtualClock())


def test_while_a_run_is_on_it_is_refused(path: Path, copy: Path) -> None:
    with Journal(journals_of(path) / "on.journal", sync_thread=False) as journal:
        for block in blocks(request("on"), result=None):
            journal.write(block)
        unchanged(path, copy, LedgerBusy, "a run is on")
    restore(copy, path, VirtualClock())


def test_runs_not_filed_yet_are_filed_afterwards_and_never_with_another_job_of_the_same_key(
    path: Path, copy: Path
) -> None:
    journals = journals_of(path)
    leave_journal(journals, "of-a-job-it-has", job=1)
    leave_journal(journals, "of-a-job-it-has-not", job=2)
    leave_journal(journals, "of-none")
    done = restore(copy, path, VirtualClock())
    assert [one.name for one in done.set_aside] == ["of-a-job-it-has-not.journal"]
    assert done.set_aside[0].exists()
    with Ledger.open(path) as ledger:
        other = ledger.new_job(item=CABIN_FAN, motor=MOTOR, complaint="another one", load_state="dry")
        assert other.id == 2
        assert sorted(filed.job_id for filed in file_left_behind(ledger, journals)) == [1, 3]
        assert ledger.runs(other.id) == []


def test_who_still_has_the_old_file_open_can_not_write_into_it_unnoticed(path: Path, copy: Path) -> None:
    with Ledger.open(path) as ledger:
        assert len(ledger.jobs()) == 2
        restore(copy, path, VirtualClock())
        with pytest.raises(LedgerError):
            ledger.close_job(1, Closing(cause="rust", work_done="", prognosis=""))


RESTORE = """
import sys
from pathlib import Path
from benchlog.clock import SystemClock
from benchlog.ledger.restoring import restore
print("ready", flush=True)
sys.stdin.readline()
restore(Path(sys.argv[2]), Path(sys.argv[1]), SystemClock())
print("done", flush=True)
sys.stdin.readline()
"""


def restored_in(path: Path, copy: Path) -> float:
    """Seconds of a restore that nobody kills."""
    child = started(RESTORE, path, copy)
    began = time.perf_counter()
    assert child.stdout is not None
    assert child.stdout.readline() == "done\n"
    took = time.perf_counter() - began
    child.kill()
    child.wait()
    close_pipes(child)
    return took


@pytest.mark.skipif(os.name == "nt", reason="no such signal")
def test_a_kill_at_any_moment_leaves_the_old_or_the_new_one_whole(path: Path, copy: Path) -> None:
    with Ledger.open(path) as ledger:
        file_journal(ledger, write_journal(path.parent / "l.journal", blocks(request("l"), trace=bench_trace(40_000))))
    old = path.read_bytes()
    whole_s = restored_in(path, copy)
    seen = set()
    for number in range(24):
        path.write_bytes(old)
        child = started(RESTORE, path, copy)
        time.sleep(whole_s * 2.0 * number / 23)  # twice as long: it may have become busier since
        child.send_signal(signal.SIGKILL)
        child.wait()
        close_pipes(child)
        assert not path.with_name(path.name + "-journal").exists()
        found = kinds(path)
        assert found in (["motor", "cabin fan", "bilge pump"], ["bilge pump"])
        seen.add(len(found))
        if len(found) == 3:
            assert path.read_bytes() == old
        else:
            assert any(one.read_bytes() == old for one in path.parent.glob("*.before-restore.*"))
    assert seen == {1, 3}  # else every kill came too soon, or too late
    print(f"{len(list(path.parent.glob('*.before-restore.*')))} old files kept, ledgers with {seen} jobs")
    path.write_bytes(old)
    restore(copy, path, VirtualClock())  # what the killed ones left is in nobody's way
    assert kinds(path) == ["bilge pump"]
    assert not list(path.parent.glob(".*"))


def test_an_output_that_nobody_knows_to_be_off_is_not_forgotten_by_a_restore(tmp_path: Path) -> None:
    path, clock = tmp_path / "work.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        made = back_up(path, clock)
        journal = tmp_path / "run-1.journal"
        unknown = msgspec.structs.replace(FREED, output_confirmed_off=False)
        file_journal(ledger, write_journal(journal, blocks(request(job=job.id), result=unknown)))
        with pytest.raises(Refused, match="switched off by hand"):
            restore(Path(made.path), path, clock)
        acknowledge(ledger, not_confirmed(ledger))
    restore(Path(made.path), path, clock)


def test_a_motor_still_warm_from_a_run_that_the_copy_lacks_keeps_its_ledger(tmp_path: Path) -> None:
    path, clock = tmp_path / "work.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        made = back_up(path, clock)
        said = blocks(request(job=job.id), utc=clock.utc())
        file_journal(ledger, write_journal(tmp_path / "run-1.journal", said))
    clock.wait(clock.now() + 60.0)
    with pytest.raises(Refused, match="warm"):
        restore(Path(made.path), path, clock)
    clock.wait(clock.now() + 900.0)
    restore(Path(made.path), path, clock)


def test_a_long_run_that_ended_just_now_counts_from_its_end(tmp_path: Path) -> None:
    path, clock = tmp_path / "work.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        made = back_up(path, clock)
        hours = blocks(request(), utc=clock.utc(), duration_s=7200.0)
        clock.advance(7200.0)
        file_journal(ledger, write_journal(tmp_path / "run-1.journal", hours))
    with pytest.raises(Refused, match="warm"):
        restore(Path(made.path), path, clock)
    with Ledger.open(path, clock=clock) as ledger:
        assert len(ledger.recent_runs()) == 1
    clock.advance(901.0)
    restore(Path(made.path), path, clock)


def test_a_unit_still_warm_keeps_its_ledger_too(tmp_path: Path) -> None:
    clock = VirtualClock()
    with fresh_ledger(tmp_path, clock) as ledger:
        path, fans = ledger.path, a_lot(ledger)
        unit = add_unit(ledger, fans, "CF-1")
        file_start_up(ledger, tmp_path, "known", job=fans.job.id, unit=unit.id, utc=clock.utc())
        made = back_up(path, clock)
        clock.advance(1.0)
        restore(Path(made.path), path, clock)
    with Ledger.open(path, clock=clock) as ledger:
        file_start_up(ledger, tmp_path, "lacking", job=fans.job.id, unit=unit.id, utc=clock.utc())
    with pytest.raises(Refused, match="warm"):
        restore(Path(made.path), path, clock)
    with Ledger.open(path, clock=clock) as ledger:
        assert len(ledger.runs(fans.job.id)) == 2


def test_a_motor_that_was_run_in_stays_warm_for_hours(tmp_path: Path) -> None:
    clock = VirtualClock()
    with fresh_ledger(tmp_path, clock) as ledger:
        path, made = ledger.path, back_up(ledger.path, clock)
        file_start_up(ledger, tmp_path, "a", kind=RunKind.RUN_IN, utc=clock.utc())
    clock.advance(3600.0)
    with pytest.raises(Refused, match=r"warm its motor is: wait 18\d min"):
        restore(Path(made.path), path, clock)
    clock.advance(3 * 3600.0 + 60.0)
    restore(Path(made.path), path, clock)


@pytest.mark.parametrize("off", [True, False])
def test_a_copy_of_an_earlier_revision_forgets_no_warm_motor_and_no_open_end_either(tmp_path: Path, off: bool) -> None:
    path, clock, source = tmp_path / "work.ledger", VirtualClock(), old_ledger(tmp_path, REVISIONS[2])
    with Ledger.open(path, clock=clock) as ledger:
        ended = msgspec.structs.replace(FREED, output_confirmed_off=off)
        said = blocks(request(), utc=clock.utc(), result=ended)
        file_journal(ledger, write_journal(tmp_path / "run-1.journal", said))
    with pytest.raises(Refused, match="warm" if off else "switched off by hand"):
        restore(source, path, clock)
    with Ledger.open(path, clock=clock) as ledger:
        assert len(ledger.recent_runs()) == 1


def test_a_file_that_is_no_whole_ledger_is_refused_before_anything_is_moved(tmp_path: Path) -> None:
    path, hollow, clock = tmp_path / "work.ledger", tmp_path / "hollow.ledger", VirtualClock()
    Ledger.open(path, clock=clock).close()
    with closing(sqlite3.connect(hollow)) as connection:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID:d}")
        connection.execute("CREATE TABLE alembic_version (version_num VARCHAR(32))")
        connection.execute(f"INSERT INTO alembic_version VALUES ('{HEAD}')")
        connection.execute('CREATE TABLE "a""b" (x)')
        connection.commit()
    before = path.read_bytes()
    with pytest.raises(LedgerDamaged):
        restore(hollow, path, clock)
    assert path.read_bytes() == before
    assert not list(tmp_path.glob("*.before-restore.*"))


def test_an_original_that_was_spoiled_comes_back_with_the_backup(tmp_path: Path) -> None:
    path, clock = tmp_path / "work.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        kept = attach(ledger, job.id, b"meter readings " * 50, "readings.txt")
        made = back_up(path, clock)
        file = original(ledger, kept.id)
        file.write_bytes(b"\0" * file.stat().st_size)
    assert restore(Path(made.path), path, clock).trouble == ()
    with Ledger.open(path, clock=clock) as ledger:
        assert original(ledger, kept.id).read_bytes() == b"meter readings " * 50


def test_a_ledger_begun_anew_does_not_push_the_full_copies_out(tmp_path: Path) -> None:
    path, clock = tmp_path / "work.ledger", VirtualClock()
    with Ledger.open(path, clock=clock) as ledger:
        ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
    full = back_up(path, clock)
    path.unlink()
    with pytest.raises(LedgerDamaged, match="its backups are there"):
        Ledger.open(path, clock=clock)
    aside = path.with_name("aside")
    folder_of(path).rename(aside)
    Ledger.open(path, clock=clock).close()
    aside.rename(folder_of(path))
    clock.wait(clock.now() + 1.0)
    back_up(path, clock)
    assert Path(full.path).exists()


def test_a_look_into_a_backup_of_an_older_form_leaves_it_as_it_is(tmp_path: Path) -> None:
    folder = tmp_path / "work.ledger.backups"
    folder.mkdir()
    copy = folder / "work.ledger.20260101T000000000Z"
    with closing(sqlite3.connect(copy)) as connection:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID:d}")
        connection.executescript(Path(__file__).with_name("revision_0002.sql").read_text(encoding="utf-8"))
    before = copy.read_bytes()
    with pytest.raises(LedgerReadOnly, match="backup"):
        Ledger.open(copy)
    assert copy.read_bytes() == before
    assert list(folder.iterdir()) == [copy]
