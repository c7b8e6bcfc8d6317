"""What the disk can refuse, refused for real: no space, no permission, a file system mounted read-only."""

import os
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerFull, LedgerReadOnly
from benchlog.ledger.backups import BackupOfTheDay, back_up, backups, copy_verified, folder_of, last_good
from benchlog.ledger.filing import file_journal, journals_of
from benchlog.ledger.migrating import newest
from benchlog.ledger.opening import HEAD
from benchlog.ledger.restoring import restore
from benchlog.ledger.store import Ledger
from tests.ledger.benches import BILGE_PUMP, MOTOR, bench_trace, blocks, leave_journal, request, write_journal
from tests.ledger.test_migrations import REVISIONS, old_ledger

assert newest() == HEAD  # loads what making a ledger needs, while there still is the right to read it
AS_ROOT = hasattr(os, "geteuid") and os.geteuid() == 0


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of one megabyte."""
    if not AS_ROOT:
        pytest.skip("only root mounts a disk")
    disk = tmp_path / "disk"
    disk.mkdir()
    mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", str(disk)], capture_output=True)
    if mounted.returncode:
        pytest.skip("no disk can be mounted here")
    yield disk
    subprocess.run(["umount", "-l", str(disk)], check=True)


def fill(disk: Path) -> Path:
    ballast = disk / "ballast"
    with ballast.open("wb", buffering=0) as file:
        try:
            while True:
                file.write(b"\x00" * 4096)
        except OSError:
            return ballast


def test_a_full_disk_while_filing_loses_nothing_and_filing_again_succeeds(small_disk: Path, tmp_path: Path) -> None:
    path = small_disk / "workshop.ledger"
    said = blocks(request("long"), trace=bench_trace(20_000))
    journal = write_journal(journals_of(tmp_path / "workshop.ledger") / "long.journal", said)
    with Ledger.open(path) as ledger:
        before = path.read_bytes()
        ballast = fill(small_disk)
        with pytest.raises(LedgerFull):
            file_journal(ledger, journal)
        assert journal.exists()
        assert path.read_bytes() == before
        assert ledger.jobs() == []
        ballast.unlink()
        assert ledger.run(file_journal(ledger, journal).run).samples == 20_000
    assert not journal.exists()


def test_no_ledger_is_begun_on_a_full_disk(small_disk: Path) -> None:
    ballast = fill(small_disk)
    with pytest.raises(LedgerFull):
        Ledger.open(small_disk / "workshop.ledger")
    assert list(small_disk.iterdir()) == [ballast]


def test_a_disk_mounted_read_only_is_read_only_to_root_too(small_disk: Path) -> None:
    path = small_disk / "workshop.ledger"
    Ledger.open(path).close()
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    with pytest.raises(LedgerReadOnly):
        Ledger.open(path)
    with pytest.raises(LedgerReadOnly):
        Ledger.open(small_disk / "other.ledger")
    assert list(small_disk.iterdir()) == [path]


def test_a_file_at_its_size_limit_is_full_and_nothing_of_the_run_is_in_it(tmp_path: Path) -> None:
    journal = write_journal(tmp_path / "long.journal", blocks(request("long"), trace=bench_trace(20_000)))
    with Ledger.open(tmp_path / "workshop.ledger") as ledger:
        with ledger.writing() as session:
            session.connection().exec_driver_sql("PRAGMA max_page_count = 1").close()  # SQLite takes what it has
        with pytest.raises(LedgerFull):
            file_journal(ledger, journal)
        assert (ledger.jobs(), ledger.recent_runs(), journal.exists()) == ([], [], True)


@contextmanager
def without_rights() -> Iterator[None]:
    """Inside, root is nobody in particular."""
    if AS_ROOT:
        os.seteuid(65534)
    try:
        yield
    finally:
        if AS_ROOT:
            os.seteuid(0)


@pytest.fixture
def shared_folder(tmp_path: Path) -> Path:
    if os.name == "nt":
        pytest.skip("permissions here are of another kind")
    for folder in (tmp_path, *tmp_path.parents[:3]):
        if AS_ROOT and folder.name.startswith(("test_", "popen-", "pytest-")):
            folder.chmod(0o755)
    folder = tmp_path / "shared"
    folder.mkdir()
    Ledger.open(folder / "workshop.ledger").close()
    return folder


@pytest.mark.parametrize(
    ("file_mode", "folder_mode"), [(0o444, 0o777), (0o666, 0o555), (0o000, 0o777)], ids=["file", "folder", "unreadable"]
)
def test_a_ledger_without_the_right_to_write_file_and_folder_is_read_only(
    shared_folder: Path, file_mode: int, folder_mode: int
) -> None:
    path = shared_folder / "workshop.ledger"
    before = path.read_bytes()
    path.chmod(file_mode)
    shared_folder.chmod(folder_mode)
    with without_rights(), pytest.raises(LedgerReadOnly):
        Ledger.open(path)
    shared_folder.chmod(0o755)
    assert (list(shared_folder.iterdir()), path.read_bytes()) == ([path], before)


def test_a_ledger_with_the_right_to_write_file_and_folder_is_open_to_anybody(shared_folder: Path) -> None:
    (shared_folder / "workshop.ledger").chmod(0o666)
    shared_folder.chmod(0o777)
    with without_rights(), Ledger.open(shared_folder / "workshop.ledger") as ledger:
        assert ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="", load_state="").number == 1


def test_a_ledger_in_a_folder_without_the_right_to_write_is_not_made(shared_folder: Path) -> None:
    shared_folder.chmod(0o555)
    with without_rights(), pytest.raises(LedgerReadOnly):
        Ledger.open(shared_folder / "second.ledger")
    shared_folder.chmod(0o755)
    assert not (shared_folder / "second.ledger").exists()


def test_a_journal_that_can_not_be_removed_is_filed_once_all_the_same(tmp_path: Path) -> None:
    with Ledger.open(tmp_path / "workshop.ledger") as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="", load_state="").id
        journal = leave_journal(tmp_path, "a", job=job)
        content = journal.read_bytes()
        first = file_journal(ledger, journal)
        journal.write_bytes(content)
        assert file_journal(ledger, journal) == first
        assert len(ledger.runs(job)) == 1
        assert not journal.exists()


@pytest.mark.parametrize(
    ("room", "copied"), [(0.5, False), (1.2, True)], ids=["no room for the copy", "nor the change"]
)
def test_a_full_disk_in_a_migration_leaves_the_ledger_as_it_was(small_disk: Path, room: float, copied: bool) -> None:
    """`room`: for so many copies of the ledger."""
    old = old_ledger(small_disk, REVISIONS[2])  # from there on tables are written anew, which takes room
    before = old.read_bytes()
    ballast = fill(small_disk)
    os.truncate(ballast, ballast.stat().st_size - int(room * len(before)) // 4096 * 4096)
    with pytest.raises(LedgerFull):
        Ledger.open(old)
    assert old.read_bytes() == before
    left = {entry.name for entry in small_disk.iterdir()} - {old.name, ballast.name}
    assert len([name for name in left if ".revision-" in name]) == len(left) == int(copied)
    ballast.unlink()
    with Ledger.open(old) as ledger:
        assert len(ledger.jobs()) == 2


def test_a_backup_on_a_full_disk_is_told_and_costs_nothing_that_was_there(small_disk: Path) -> None:
    path = small_disk / "workshop.ledger"
    Ledger.open(path).close()
    first = back_up(path, VirtualClock())
    before = path.read_bytes()
    ballast = fill(small_disk)
    later = VirtualClock()
    later.advance(60.0)
    with pytest.raises(LedgerFull):
        back_up(path, later)
    told: list[object] = []
    later.advance(86_400.0)
    BackupOfTheDay(path, later, told.append).run()
    assert "no backup today" in str(told[0])
    assert (backups(path), path.read_bytes()) == ([first], before)
    assert not list(folder_of(path).glob("*.part"))
    ballast.unlink()
    assert last_good(path) == first
    assert back_up(path, later).there


def test_a_restore_on_a_full_disk_leaves_the_ledger_as_it_was(small_disk: Path, tmp_path: Path) -> None:
    path, copy = small_disk / "workshop.ledger", tmp_path / "copy"
    Ledger.open(path).close()
    copy_verified(path, copy)
    before = path.read_bytes()
    ballast = fill(small_disk)
    with pytest.raises(LedgerFull):
        restore(copy, path, VirtualClock())
    assert path.read_bytes() == before
    assert {entry.name for entry in small_disk.iterdir()} == {path.name, ballast.name}
    ballast.unlink()
    assert restore(copy, path, VirtualClock()).kept is not None


def test_a_backup_on_a_disk_that_can_not_be_written_is_restored(small_disk: Path, tmp_path: Path) -> None:
    path = tmp_path / "workshop.ledger"
    with Ledger.open(path) as ledger:
        ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
    copy_verified(path, small_disk / "copy")
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    path.unlink()
    assert restore(small_disk / "copy", path, VirtualClock()).source.jobs == 1
