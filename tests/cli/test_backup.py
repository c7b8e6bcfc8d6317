"""`benchlog backup`: a copy on request, to a file of one's own, and the list with the last good one."""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.clock import VirtualClock
from benchlog.ledger.backups import back_up, folder_of, originals_of
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.ledger.test_backups import flip, original


@pytest.fixture
def book(tmp_path: Path) -> Path:
    path = tmp_path / "ledger.db"
    with Ledger.open(path) as ledger:
        item, motor = Item(kind="Fresh-water pump"), Motor(rated_volts=12.0)
        ledger.new_job(item=item, motor=motor, complaint="hums", load_state="dry")
    return path


def run(book: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, [*arguments, "--ledger", str(book)])


def test_a_backup_says_when_how_big_and_where_and_the_list_shows_it(book: Path) -> None:
    assert run(book, "backup", "--list").stdout == "There is no backup yet.\n"
    done = run(book, "backup")
    assert (done.exit_code, done.stderr) == (0, "")
    assert "1 jobs  verified" in done.stdout
    listed = run(book, "backup", "--list").stdout.splitlines()
    assert listed == [f"Last good backup: {done.stdout.strip()}", f"  {done.stdout.strip()}"]
    assert str(folder_of(book)) in done.stdout


def test_in_json_each_backup_is_a_line(book: Path) -> None:
    made = json.loads(run(book, "backup", "--json").stdout)
    (listed,) = [json.loads(text) for text in run(book, "backup", "--list", "--json").stdout.splitlines()]
    assert made == listed
    assert (made["jobs"], made["there"], Path(made["path"]).stat().st_size) == (1, True, made["size"])


def test_with_the_ledger_open_for_writing_it_works_all_the_same(book: Path) -> None:
    with Ledger.open(book, sole_writer=True):
        assert run(book, "backup").exit_code == 0


def test_output_writes_one_file_with_its_originals_and_never_over_another(book: Path, tmp_path: Path) -> None:
    photo = original(book, b"a photo")
    out = tmp_path / "stick" / "copy.db"
    out.parent.mkdir()
    done = run(book, "backup", "--output", str(out))
    assert (done.exit_code, done.stderr) == (0, "")
    assert {one.name for one in out.parent.iterdir()} == {out.name, f"{out.name}.files"}
    assert (originals_of(out) / photo.name).read_bytes() == b"a photo"
    with Ledger.open(out) as ledger:
        assert len(ledger.jobs()) == 1
    again = run(book, "backup", "--output", str(out))
    assert (again.exit_code, "already" in again.stderr) == (2, True)
    assert run(book, "backup", "--output", str(book)).exit_code == 2
    assert run(book, "backup", "--list").stdout == "There is no backup yet.\n"
    assert run(book, "backup", "--output", str(tmp_path / "nowhere" / "copy.db")).exit_code == 2


def test_of_a_damaged_ledger_none_is_made_and_the_last_good_one_is_named(book: Path) -> None:
    assert "there is none from before" in run(book.with_name("none.db"), "backup").stderr
    run(book, "backup")
    with closing(sqlite3.connect(book)) as connection:
        (page,) = connection.execute("SELECT rootpage FROM sqlite_master WHERE name = 'entry'").fetchone()
    flip(book, page)
    done = run(book, "backup")
    assert done.exit_code == 2
    assert done.stderr.startswith("benchlog: no backup was made: ")
    assert "the last good one is " in done.stderr
    assert len(run(book, "backup", "--list").stdout.splitlines()) == 2


def test_a_backup_that_is_gone_is_told_so(book: Path) -> None:
    Path(back_up(book, VirtualClock()).path).unlink()
    listed = run(book, "backup", "--list").stdout
    assert "There is no backup yet." in listed
    assert "NOT THERE" in listed
