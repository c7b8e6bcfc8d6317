"""`benchlog report` and `benchlog show` as a user runs them: files written once, refusals in one line."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("report") / "demo.db"
    shutil.copy(built_demo, path)
    return path


def run(demo: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, [*arguments, "--ledger", str(demo)])


@pytest.mark.parametrize(
    ("name", "more", "begins"),
    [
        ("sheet.pdf", (), b"%PDF-"),
        ("sheet.html", (), b"<!DOCTYPE html>"),
        ("photos.html", ("--photos",), b"<!DOCTYPE html>"),
        ("tag.pdf", ("--tag",), b"%PDF-"),
        ("tag.svg", ("--tag",), b"<svg "),
        ("strip.svg", ("--tag", "--paper", "Letter"), b'<svg xmlns="http://www.w3.org/2000/svg" width="215.9mm"'),
    ],
)
def test_a_file_is_written_where_it_was_asked_for(
    demo: Path, tmp_path: Path, name: str, more: tuple[str, ...], begins: bytes
) -> None:
    path = tmp_path / name
    done = run(demo, "report", "1", "--output", str(path), "--json", *more)
    assert done.exit_code == 0, done.output
    told = json.loads(done.output)
    assert (told["file"], told["job"], told["demo"]) == (str(path), 1, True)
    assert path.read_bytes().startswith(begins)
    assert told["bytes"] == path.stat().st_size


def test_without_a_name_it_is_called_after_its_tag(demo: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert run(demo, "report", "12").exit_code == 0
    assert run(demo, "report", "12", "--tag").exit_code == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == ["H-0012-tag.pdf", "H-0012.pdf"]


def test_a_file_that_is_there_stays_as_it_is(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "mine.pdf"
    path.write_bytes(b"mine")
    done = run(demo, "report", "1", "--output", str(path))
    assert done.exit_code == 2
    assert "is there already" in done.output
    assert path.read_bytes() == b"mine"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("report", "999"), "no job number 999"),
        (("report", "H-1"), "is not a job's number"),
        (("report", "1", "--output", "sheet.doc"), "ends in .pdf or .html"),
        (("report", "1", "--tag", "--output", "tag.html"), "ends in .pdf or .svg"),
        (("report", "1", "--output", "/no/such/folder/sheet.html"), "No such file"),
        (("show", "999"), "no job number 999"),
    ],
)
def test_what_is_refused_is_one_line(demo: Path, arguments: tuple[str, ...], words: str) -> None:
    done = run(demo, *arguments)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1


def test_no_ledger_is_made_where_there_is_none(tmp_path: Path) -> None:
    path = tmp_path / "none.db"
    for arguments in (("report", "1"), ("show", "1")):
        done = run(path, *arguments)
        assert done.exit_code == 2
        assert "there is no ledger" in done.output
    assert not list(tmp_path.iterdir())


def test_a_job_is_shown_as_its_sheet_tells_it_and_nothing_is_written(demo: Path) -> None:
    before = demo.read_bytes()
    page = run(demo, "show", "1").output
    assert "dried bilge residue at the shaft seal" in page
    assert max(map(len, page.splitlines())) <= 78
    told = json.loads(run(demo, "show", "1", "--json").output)
    assert told["job"]["cause"] == "dried bilge residue at the shaft seal"
    assert [one["result"]["outcome"] for one in told["runs"]] == ["freed", "runs"]
    assert demo.read_bytes() == before
