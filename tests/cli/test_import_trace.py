"""`benchlog import-trace` as a user runs it: columns to choose from, an offset that is known, the file kept."""

import json
import re
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.ledger.files import files_of, original
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.motor.align import Averages
from benchlog.motor.startup import Values
from benchlog.records import FLAG_CV, FLAG_ON, TICK_S, Event, EventKind, Trace
from tests.ledger.benches import BILGE_PUMP, MOTOR, blocks, request, write_journal
from tests.motor.test_align import current

WINDOW_S, QUERY_S, PACE_S = 0.02, 0.002, 0.0104
STARTS = (2.0, 7.0)
SUPPLY = Event(t_s=0.0, kind=EventKind.SUPPLY, text="x", values={"window_s": WINDOW_S, "settle_s": 0.012})


def volts(t_s: Values) -> Values:
    return np.where((np.mod(t_s - 2.0, 5.0) < 3.0) & (t_s >= 2.0), 12.0, 0.0)


@pytest.fixture
def ledger(tmp_path: Path) -> Path:
    """A job with one run of 12 s: two starts that are alike, read back about 96 times a second."""
    noise = np.random.default_rng(1)
    fine = np.arange(-1.0, 13.0, 1e-4)
    sent_s = np.arange(0.1, 12.0, PACE_S)
    ticks = np.rint(sent_s / TICK_S).astype(np.int64)
    received = ticks + round(QUERY_S / TICK_S)
    middle_s = np.asarray(0.5 * ((ticks + received) * TICK_S - WINDOW_S), dtype=np.float64)
    count = len(ticks)
    averaged = [Averages(fine, made).over(middle_s, WINDOW_S) for made in (volts(fine), current(fine, STARTS))]
    read = [np.round(one + noise.normal(0, 1e-3, count), 3) for one in averaged]
    trace = Trace(
        sent=ticks,
        received=received,
        volts=read[0],
        amps=read[1],
        set_volts=volts(sent_s),
        set_amps=np.full(count, 2.0),
        flags=np.full(count, FLAG_ON | FLAG_CV, dtype=np.uint8),
    )
    path = tmp_path / "harbour.db"
    with Ledger.open(path) as book:
        job = book.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
        journal = blocks(request(job=job), trace=trace, events=(SUPPLY,), duration_s=12.0)
        file_journal(book, write_journal(tmp_path / "a.journal", journal))
    return path


def curve(folder: Path, offset_s: float, *, separator: str = ",", mark: str = ".") -> Path:
    """Milliseconds, volts behind a divider by ten, and a current probe of 100 mV/A."""
    noise = np.random.default_rng(2)
    t_s = np.arange(-0.3, 0.9, 1e-4)
    columns = (1000 * t_s, 0.1 * volts(t_s + offset_s), 100 * current(t_s + offset_s, STARTS))
    lines = ["time,lead,probe", "ms,V,mV"]
    noisy = columns[2] + noise.normal(0, 0.5, len(t_s))
    lines += [f"{a:.1f},{b:.3f},{c:.3f}" for a, b, c in zip(columns[0], columns[1], noisy, strict=True)]
    path = folder / "start.csv"
    text = "\r\n".join(lines).replace(",", "|").replace(".", mark).replace("|", separator)
    path.write_bytes(text.encode())
    return path


def imported(ledger: Path, file: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, ["import-trace", str(file), *arguments, "--ledger", str(ledger)])


CHOICE = ("--run", "1", "--time", "1", "--volts", "lead", "--amps", "3", "--scale-volts", "10", "--amps-per-volt", "10")


def test_without_a_choice_the_columns_are_shown_and_nothing_is_written(ledger: Path, tmp_path: Path) -> None:
    before = ledger.read_bytes()
    file = curve(tmp_path, 2.0, separator=";", mark=",")
    page = imported(ledger, file, "--run", "1")
    assert page.exit_code == 0, page.output
    assert 'numbers from line 3 on, separator ";", decimal mark ","' in page.output
    assert max(map(len, page.output.splitlines())) <= 80
    told = [json.loads(text) for text in imported(ledger, file, "--json").output.splitlines()]
    assert [one["kind"] for one in told[:3]] == ["time", "volts", "volts"]
    assert [one["unit"] for one in told[:3]] == ["ms", "V", "mV"]
    assert told[0]["values"][0] == -300.0
    assert told[3] == {"separator": ";", "decimal_mark": ",", "first_line": 3}
    assert ledger.read_bytes() == before
    assert not Path(f"{ledger}.files").exists()


@pytest.mark.parametrize(("separator", "mark"), [(",", "."), (";", ","), ("\t", ".")])
def test_a_curve_is_laid_where_it_belongs_and_kept_as_it_was(
    ledger: Path, tmp_path: Path, separator: str, mark: str
) -> None:
    file = curve(tmp_path, 6.95, separator=separator, mark=mark)
    done = imported(ledger, file, *CHOICE, "--near", "7.2", "--who", "dock foreman", "--json")
    assert done.exit_code == 0, done.output
    told = json.loads(done.output)
    assert told["offset_s"] == pytest.approx(6.95, abs=2e-4)
    assert told["low_s"] <= 6.95 <= told["high_s"]
    assert told["high_s"] - told["low_s"] >= QUERY_S  # where in its query a reading was taken is in it
    gains = {one["name"]: one["gain"] for one in told["quantities"]}
    assert gains == pytest.approx({"amps": 1.0, "volts": 1.0}, abs=0.01)
    with Ledger.open(ledger) as book:
        (kept,) = files_of(book, 1)
        assert original(book, kept.id).read_bytes() == file.read_bytes()
    assert (kept.name, kept.media_type, kept.who) == ("start.csv", "text/csv", "dock foreman")
    assert kept.caption.startswith(
        "run 1: time in column 1, volts in column 2, amps in column 3, volts × 10, 10 A/V; offset 6.9"
    )


def test_the_peaks_are_told_apart(ledger: Path, tmp_path: Path) -> None:
    file = curve(tmp_path, 2.05)
    told = json.loads(imported(ledger, file, *CHOICE, "--near", "2", "--json").output)["peaks"]
    # The rise has a time constant of 1 ms, the fall one of 100 ms: 1.43 A at 4.7 ms; 5 mA of noise on the samples.
    assert told["imported_peak_amps"] == pytest.approx(1.43, abs=0.03)
    assert told["readback_peak_amps"] == pytest.approx(told["imported_peak_averaged_amps"], abs=0.005)
    assert told["readback_peak_amps"] < told["imported_peak_amps"] - 0.03
    page = imported(ledger, file, *CHOICE, "--near", "2").output
    assert "Peak of the imported current: 1.4" in page
    assert "an average over 20 ms, never the real inrush" in page
    with Ledger.open(ledger) as book:
        assert len(files_of(book, 1)) == 1  # the same once more is kept once


def test_where_it_cannot_be_told_the_reason_is_said_and_the_file_is_kept_all_the_same(
    ledger: Path, tmp_path: Path
) -> None:
    done = imported(ledger, curve(tmp_path, 2.05), *CHOICE)
    assert done.exit_code == 0, done.output
    assert "By its amps it can't be told where it belongs" in done.output
    assert "nearly as well" in " ".join(done.output.split())
    assert "Peak" not in done.output
    with Ledger.open(ledger) as book:
        (kept,) = files_of(book, 1)
    assert kept.caption.endswith("10 A/V; offset not known")


def test_a_wrong_scale_is_pointed_out(ledger: Path, tmp_path: Path) -> None:
    wrong = [*CHOICE[:-1], "1", "--near", "2"]
    done = imported(ledger, curve(tmp_path, 2.05), *wrong)
    assert re.search(
        r"the readback is (9\.9\d+|10|10\.0\d*) times the imported amps; look at the scale given", done.output
    )


def test_an_interval_stands_in_for_a_column_of_times(ledger: Path, tmp_path: Path) -> None:
    choice = ("--run", "1", "--interval", "1e-4", "--amps", "probe", "--amps-per-volt", "10", "--near", "1.7", "--json")
    told = json.loads(imported(ledger, curve(tmp_path, 2.05), *choice).output)
    assert told["offset_s"] == pytest.approx(1.75, abs=2e-4)  # time 0 is now the first line


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--amps", "3", "--time", "1"), "--run"),
        (("--run", "1", "--amps", "shunt", "--time", "1"), 'no column "shunt"'),
        (("--run", "1", "--amps", "3", "--time", "1"), "amps per volt are needed"),
        (("--run", "1", "--volts", "2"), "one of the two"),
        (("--run", "1", "--time", "1"), "a column of volts or of amps is needed"),
        (("--run", "1", "--volts", "2", "--time", "1:h"), '"h" is not a unit'),
        (("--run", "1", "--volts", "2", "--interval", "1,5"), "write it with a point"),
        (("--run", "9", "--volts", "2", "--time", "1"), "there is no run 9"),
        (("--separator", "x"), "must be one of"),
    ],
)
def test_what_is_refused_is_one_line_and_nothing_is_kept(
    ledger: Path, tmp_path: Path, arguments: tuple[str, ...], words: str
) -> None:
    done = imported(ledger, curve(tmp_path, 2.05), *arguments)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1
    with Ledger.open(ledger) as book:
        assert files_of(book, 1) == []


def test_a_file_that_is_not_there_and_a_ledger_that_is_not_there_are_refused(ledger: Path, tmp_path: Path) -> None:
    assert "can't be read" in imported(ledger, tmp_path / "none.csv").output
    done = imported(tmp_path / "none.db", curve(tmp_path, 2.05), *CHOICE)
    assert (done.exit_code, (tmp_path / "none.db").exists()) == (2, False)
    assert "there is no ledger" in done.output
