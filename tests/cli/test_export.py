"""`benchlog export` as a user runs it: both forms, both tables, what is written beside, nothing overwritten."""

import csv
import io
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor


@pytest.fixture
def ledger(tmp_path: Path) -> Path:
    path = tmp_path / "ledger.db"
    with Ledger.open(path) as book:
        for serial in ("BP-0417", "=1+1", "@SUM(A1)"):
            item = Item(kind="bilge pump", serial=serial)
            book.new_job(item=item, motor=Motor(rated_volts=13.5), complaint="hums, then stops", load_state="")
    return path


def export(ledger: Path, *arguments: str, **environment: str) -> Result:
    return CliRunner(env=environment).invoke(main, ["export", *arguments, "--ledger", str(ledger)])


def test_jobs_are_written_newest_first_and_exact(ledger: Path) -> None:
    rows = list(csv.DictReader(io.StringIO(export(ledger, "--jobs").stdout, newline="")))
    assert [row["serial"] for row in rows] == ["@SUM(A1)", "=1+1", "BP-0417"]
    assert {row["rated_volts"] for row in rows} == {"13.5"}
    assert {row["complaint"] for row in rows} == {"hums, then stops"}


def test_every_job_is_written_also_where_there_are_more_than_a_page(
    ledger: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("benchlog.cli.export._PAGE", 2)
    rows = list(csv.DictReader(io.StringIO(export(ledger, "--jobs").stdout, newline="")))
    assert [row["number"] for row in rows] == ["3", "2", "1"]


def test_a_file_has_its_description_beside_it(ledger: Path) -> None:
    path = ledger.with_name("jobs.csv")
    assert export(ledger, "--jobs", "--output", str(path)).exit_code == 0
    told = json.loads(Path(f"{path}-metadata.json").read_text(encoding="utf-8"))
    assert told["url"] == "jobs.csv"
    head = path.read_text(encoding="utf-8").splitlines()[0]
    assert ",".join(column["name"] for column in told["tableSchema"]["columns"]) == head


def test_the_spreadsheet_form_runs_nothing_and_has_the_marks_of_the_locale(ledger: Path) -> None:
    path = ledger.with_name("jobs.csv")
    done = export(ledger, "--jobs", "--form", "spreadsheet", "--locale", "de_DE", "--output", str(path))
    assert done.exit_code == 0, done.output
    text = path.read_bytes()
    assert text.startswith(b"\xef\xbb\xbfJob;Tag;")
    rows = list(csv.reader(io.StringIO(text.decode("utf-8-sig"), newline=""), delimiter=";"))
    assert [row[5] for row in rows[1:]] == ["'@SUM(A1)", "'=1+1", "BP-0417"]
    assert {row[6] for row in rows[1:]} == {"13,5"}
    assert not Path(f"{path}-metadata.json").exists()


def test_the_locale_is_the_terminals_where_none_is_named(ledger: Path) -> None:
    german = export(ledger, "--jobs", "--form", "spreadsheet", LC_ALL="de_DE.UTF-8")
    assert "13,5" in german.stdout
    unknown = export(ledger, "--jobs", "--form", "spreadsheet", LC_ALL="xx_XX.UTF-8")
    assert (unknown.exit_code, unknown.stdout) == (2, "")


@pytest.mark.parametrize("there", ["jobs.csv", "jobs.csv-metadata.json"])
def test_what_is_there_stays_and_nothing_is_written_beside_it(ledger: Path, there: str) -> None:
    ledger.with_name(there).write_text("kept")
    before = sorted(path.name for path in ledger.parent.iterdir())
    done = export(ledger, "--jobs", "--output", str(ledger.with_name("jobs.csv")))
    assert done.exit_code == 2
    assert f"{there}: is there already" in done.output
    assert sorted(path.name for path in ledger.parent.iterdir()) == before
    assert ledger.with_name(there).read_text() == "kept"


@pytest.mark.parametrize("arguments", [(), ("1", "--jobs")])
def test_either_a_run_or_the_jobs(ledger: Path, arguments: tuple[str, ...]) -> None:
    done = export(ledger, *arguments)
    assert done.exit_code == 2
    assert len(done.output.splitlines()) == 1
