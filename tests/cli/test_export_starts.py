"""`benchlog export --curves` as a user runs it: every form of file, a lot or a run, nothing overwritten."""

import csv
import io
import shutil
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.ledger.captured import captured
from benchlog.ledger.store import Ledger


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("curves") / "demo.db"
    shutil.copy(built_demo, path)
    return path


RUN = "22"
"""Of a unit of the demo's lot, which has limits."""


def export(demo: Path, *arguments: str, **environment: str) -> Result:
    return CliRunner(env=environment).invoke(main, ["export", *arguments, "--ledger", str(demo)])


def test_a_run_is_written_as_tables_with_what_it_is_judged_by(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "fan.csv"
    done = export(demo, RUN, "--curves", str(path))
    assert done.exit_code == 0, done.output
    names = [f"fan{part}.csv{more}" for part in ("", "-figures", "-limits", "-band") for more in ("", "-metadata.json")]
    assert sorted(one.name for one in tmp_path.iterdir()) == sorted(names)
    with Ledger.open(demo) as book:
        found = captured(book, int(RUN))
    rows = list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"), newline="")))
    assert [float(row["amps"]) for row in rows] == [value for curve in found.curves for value in curve.amps.tolist()]
    assert {row["serial"] for row in rows} == {"CF-203"}
    with (tmp_path / "fan-figures.csv").open(encoding="utf-8", newline="") as file:
        told = [float(row["steady_amps"]) for row in csv.DictReader(file)]
    assert told == [figures.values["steady_amps"].value for figures in found.figures]


def test_a_lot_has_all_its_starts_in_one_file(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "lot.npz"
    assert export(demo, "--lot", "14", "--curves", str(path)).exit_code == 0
    with np.load(path, allow_pickle=False) as read:
        assert len(read["figures/run"]) == 16
        assert list(dict.fromkeys(read["curves/serial"].tolist())) == [f"CF-{n}" for n in range(201, 209)]
        assert read["limits/n"].tolist() == [7] * 5


def test_the_starts_of_a_repair_have_no_limits_unless_some_are_named(demo: Path, tmp_path: Path) -> None:
    for name, more in (("plain", ()), ("held", ("--limits", "1"))):
        assert export(demo, "18", "--curves", str(tmp_path / f"{name}.npz"), *more).exit_code == 0
    with np.load(tmp_path / "plain.npz") as plain, np.load(tmp_path / "held.npz") as held:
        assert set(held) - set(plain) >= {"limits/low", "band/t_s"}
        assert set(plain["curves/serial"].tolist()) == {"CF-118"}


def test_the_spreadsheet_form_has_the_marks_of_the_locale(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "fan.csv"
    assert export(demo, RUN, "--curves", str(path), "--form", "spreadsheet", "--locale", "de_DE").exit_code == 0
    assert path.read_bytes().startswith(b"\xef\xbb\xbfSerial;Run;Start;")
    assert not Path(f"{path}-metadata.json").exists()


@pytest.mark.parametrize(("suffix", "begins"), [(".svg", b"<svg "), (".png", b"\x89PNG\r\n"), (".h5", b"\x89HDF\r\n")])
def test_pictures_and_hdf5_are_of_their_kind(demo: Path, tmp_path: Path, suffix: str, begins: bytes) -> None:
    if suffix == ".h5":
        pytest.importorskip("h5py", reason="the extra [hdf5] is not installed")
    path = tmp_path / f"fan{suffix}"
    done = export(demo, RUN, "--curves", str(path))
    assert done.exit_code == 0, done.output
    assert path.read_bytes().startswith(begins)


def test_one_start_may_be_picked_out(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "fan.svg"
    assert export(demo, RUN, "--curves", str(path), "--start", "2").exit_code == 0
    text = path.read_text(encoding="utf-8")
    assert "picked out: start 2" in text
    assert ">start 2</text>" in text


def test_of_a_lot_what_failed_is_picked_out_by_its_serial(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "lot.svg"
    assert export(demo, "--lot", "14", "--curves", str(path)).exit_code == 0
    text = path.read_text(encoding="utf-8")
    assert "16 starts" in text
    assert "picked out: CF-205" in text
    assert "with the mean of 14 of them" in text, "two starts are of the unit that failed"
    assert ">mean of 14</text>" in text


@pytest.mark.parametrize("there", ["fan.csv", "fan-band.csv-metadata.json"])
def test_what_is_there_stays_and_nothing_is_written_beside_it(demo: Path, tmp_path: Path, there: str) -> None:
    (tmp_path / there).write_text("kept")
    done = export(demo, RUN, "--curves", str(tmp_path / "fan.csv"))
    assert done.exit_code == 2
    assert f"{there}: is there already" in done.output
    assert [one.name for one in tmp_path.iterdir()] == [there]
    assert (tmp_path / there).read_text() == "kept"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((RUN, "--curves", "x.txt"), ".csv, .npz, .h5, .svg, .png"),
        (("1", "--curves", "x.csv"), "captured no starts"),
        (("--curves", "x.csv"), "number of a run, or --lot"),
        ((RUN, "--lot", "14", "--curves", "x.csv"), "number of a run, or --lot"),
        ((RUN, "--lot", "14"), "number of a run, or --lot"),
        (("--jobs", "--curves", "x.csv"), "number of a run, or --lot"),
        (("--lot", "1", "--curves", "x.csv"), "no lot number 1"),
        ((RUN, "--curves", "x.csv", "--start", "1"), "picked out in a picture"),
        ((RUN, "--curves", "x.svg", "--start", "9"), "no start 9"),
        ((RUN, "--curves", "x.npz", "--form", "spreadsheet"), "one of .csv"),
        ((RUN, "--curves", "x.csv", "--limits", "77"), "77"),
    ],
)
def test_what_is_refused_is_one_line_and_writes_nothing(
    demo: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, arguments: tuple[str, ...], words: str
) -> None:
    monkeypatch.chdir(tmp_path)
    done = export(demo, *arguments)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1
    assert list(tmp_path.iterdir()) == []
