"""`benchlog limits` as a user runs it: made, kept, shown, judged by; n, coverage and confidence said; refusals told."""

import json
import shutil
from pathlib import Path

import msgspec
import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.cli.limits import tell_judged
from benchlog.clock import VirtualClock
from benchlog.ledger.filing import UNNAMED
from benchlog.ledger.known_good import keep_limits, limits_for
from benchlog.ledger.lots import add_unit, lots, units
from benchlog.ledger.store import Ledger
from benchlog.motor.limit_values import JudgedFigure
from benchlog.motor.start_figures import FIGURES
from benchlog.outcome import Outcome
from benchlog.records import Item
from tests.ledger.benches import MOTOR, RAN, a_lot, file_start_up, fresh_ledger, judged_as, limits_like

STUCK = msgspec.structs.replace(RAN, outcome=Outcome.STILL_STUCK, reason="start 2 did not turn")


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("limits") / "demo.db"
    shutil.copy(built_demo, path)
    return path


@pytest.fixture(scope="module")
def runs(demo: Path) -> dict[str, int]:
    """Of each unit of the demo's lot, by its serial."""
    with Ledger.open(demo) as book:
        return {unit.serial: unit.run or 0 for unit in units(book, lots(book)[0])}


def limits(demo: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, ["limits", *arguments, "--ledger", str(demo)])


def good(runs: dict[str, int]) -> list[str]:
    return [str(run) for serial, run in runs.items() if serial != "CF-205"]


def kept(demo: Path) -> int:
    with Ledger.open(demo) as book:
        return len(limits_for(book))


def test_the_table_says_from_how_many_with_which_coverage_and_confidence(demo: Path, runs: dict[str, int]) -> None:
    before = demo.read_bytes()
    done = limits(demo, *good(runs), "--coverage", "0.9")
    assert done.exit_code == 0, done.output
    assert "From 7 known good units, 2 starts or more of each" in done.output
    words = " ".join(done.output.split())
    assert "at least 90 % of such units, with 95 % confidence" in words
    for kind in FIGURES:
        assert f"\n  {kind.label}" in done.output
    assert "Mind: " in done.output
    assert max(map(len, done.output.splitlines())) <= 80
    assert demo.read_bytes() == before


def test_factors_are_those_of_the_tables(demo: Path, runs: dict[str, int]) -> None:
    *rows, last = [json.loads(row) for row in limits(demo, *good(runs), "--json").output.splitlines()]
    # Two-sided, n = 7, 95 % at 95 %: 4.007 in the usual table, which is Bowker's approximation of 1947 (published, from
    # memory); the exact factor lies within 1 % above it.
    assert {row["n"] for row in rows} == {7}
    assert all(4.007 <= row["factor"] <= 4.05 for row in rows)
    for row in rows:
        assert row["low"] < row["mean"] < row["high"]
    assert (last["limits"], last["n"], last["coverage"], last["confidence"]) == (None, 7, 0.95, 0.95)
    assert last["runs"] == [int(run) for run in good(runs)]


def test_more_coverage_or_confidence_is_wider(demo: Path, runs: dict[str, int]) -> None:
    def width(*more: str) -> float:
        told = json.loads(limits(demo, *good(runs), "--json", *more).output.splitlines()[2])
        assert told["figure"] == "steady_amps"
        return float(told["high"] - told["low"])

    assert width() < width("--coverage", "0.99")
    assert width() < width("--confidence", "0.99")


def test_fewer_than_five_units_are_refused_however_many_runs_they_have(demo: Path, runs: dict[str, int]) -> None:
    done = limits(demo, *good(runs)[:4], *good(runs)[:4])
    assert done.exit_code == 2
    assert "5 known good units or more are needed; there are 4" in done.output


def test_a_lot_stands_for_the_last_runs_of_its_units_that_did_not_fail(demo: Path, runs: dict[str, int]) -> None:
    told = json.loads(limits(demo, "--lot", "14", "--json").output.splitlines()[-1])
    assert told["runs"] == [int(run) for run in good(runs)]


def test_a_named_run_of_no_known_good_one_is_refused_by_its_number_and_why(demo: Path, runs: dict[str, int]) -> None:
    count = kept(demo)
    done = limits(demo, *good(runs), str(runs["CF-205"]), "--keep", "--who", "bench")
    assert (done.exit_code, kept(demo)) == (2, count)
    assert f"run {runs['CF-205']} is of no known good one: unit CF-205 failed" in " ".join(done.output.split())


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"result": STUCK}, "run 5 is of no known good one: it ended as still-stuck (start 2 did not turn)"),
        ({}, "run 1 has no serial: whether it is another motor can't be told"),
    ],
)
def test_five_runs_of_which_one_did_not_turn_or_which_have_no_serial_make_no_limits(
    tmp_path: Path, changes: dict[str, object], words: str
) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        fans = a_lot(book) if changes else None
        for number in range(1, 6):
            of = {"utc": f"2026-11-25T10:0{number}:00.000Z", **(changes if number == 5 else {})}
            if fans is not None:
                of |= {"job": fans.job.id, "unit": add_unit(book, fans, f"CF-{number}").id}
            file_start_up(book, tmp_path, f"u{number}", **of)
        path = book.path
    done = limits(path, "1", "2", "3", "4", "5", "--keep", "--who", "bench")
    assert done.exit_code == 2
    assert words in " ".join(done.output.split())
    assert kept(path) == 0
    if changes:
        of_lot = limits(path, "--lot", "1")
        assert of_lot.exit_code == 2
        assert "there are 4" in of_lot.output


def test_they_are_kept_with_the_name_of_who_says_that_the_units_are_good(demo: Path, runs: dict[str, int]) -> None:
    count = kept(demo)
    nameless = limits(demo, *good(runs), "--keep")
    assert (nameless.exit_code, kept(demo)) == (2, count)
    assert "--who" in nameless.output
    assert limits(demo, *good(runs), "--keep", "--who", "bench", "--confidence", "0.9").exit_code == 0
    assert kept(demo) == count + 1
    newest, *_ = [json.loads(row) for row in limits(demo, "--list", "--json").output.splitlines()]
    assert (newest["who"], newest["n"], newest["confidence"], newest["model"]) == ("bench", 7, 0.9, "12 V, 120 mm")
    shown = limits(demo, "--show", str(newest["limits"]))
    assert f"Limits {newest['limits']} of cold start 12 V, version 1" in shown.output
    assert "with 90 % confidence" in " ".join(shown.output.split())


def test_a_unit_is_judged_with_its_margins_and_what_failed(demo: Path, runs: dict[str, int]) -> None:
    before = demo.read_bytes()
    bad = limits(demo, "--judge", str(runs["CF-205"]), "--against", "1")
    assert bad.exit_code == 1
    assert f"Run {runs['CF-205']} against limits 1: FAIL" in bad.output
    run_up = next(row for row in bad.output.splitlines() if row.startswith("  run-up"))
    assert run_up.endswith("FAIL")
    assert " -" in run_up
    assert "It starts slowly" in bad.output
    assert max(map(len, bad.output.splitlines())) <= 80
    fine = limits(demo, "--judge", str(runs["CF-203"]), "--against", "1", "--json")
    assert fine.exit_code == 0
    *rows, last = [json.loads(row) for row in fine.output.splitlines()]
    assert (last["passed"], last["failed"], last["limits"]) == (True, [], 1)
    assert all(row["margin"] > 0 for row in rows if row["inside"])
    assert demo.read_bytes() == before


def test_a_resistance_outside_is_no_fail_beside_a_pass(capsys: pytest.CaptureFixture[str]) -> None:
    fine = JudgedFigure(
        name="peak_amps", label="peak readback", unit="A", value=2.0, low=1.9, high=2.2, margin=0.1, inside=True, why=""
    )
    warm = msgspec.structs.replace(fine, name="ohms", label="resistance", unit="Ω", margin=-0.2, inside=False)
    low = msgspec.structs.replace(fine, name="run_up_s", label="run-up", unit="s", margin=-0.2, inside=False)
    judged = msgspec.structs.replace(judged_as(True), rows=(fine, warm, low))
    tell_judged(judged, 7, 1, as_json=False)
    rows = capsys.readouterr().out.splitlines()
    assert rows[0] == "Run 7 against limits 1: pass"
    assert [row.split("m", 1)[-1] for row in rows[2:4]] == ["A", "Ω  outside, not judged"]
    assert rows[4].endswith("-200 ms  FAIL")
    assert max(map(len, rows)) <= 80


@pytest.mark.parametrize(
    ("item", "words"),
    [
        (Item(kind="Cabin fan", serial="CF-300"), ""),
        (Item(kind="cabin fan"), "Of this run not known: serial; whether it is a cabin fan nobody said."),
        (
            Item(kind="bilge pump", serial="BP-1"),
            "Kinds differ: this run is of a bilge pump, the limits are of a cabin fan.",
        ),
        (UNNAMED, "Of this run not known: kind and serial; whether it is a cabin fan nobody said."),
    ],
)
def test_what_is_doubtful_about_whose_run_it_is_is_said_beside_the_judgement(
    tmp_path: Path, item: Item, words: str
) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        fans = a_lot(book)
        good = file_start_up(book, tmp_path, "good", job=fans.job.id, unit=add_unit(book, fans, "CF-1").id)
        key = keep_limits(book, limits_like((good,)), "bench")
        job = book.new_job(item=item, motor=MOTOR, complaint="hums", load_state="dry")
        run = file_start_up(book, tmp_path, "one", job=job.id)
        path = book.path
    done = limits(path, "--judge", str(run), "--against", str(key))
    assert done.exit_code == 0, done.output
    assert f"Run {run} against limits {key}: pass" in done.output
    doubtful = [row.strip() for row in done.output.splitlines() if "Kinds differ" in row or "not known" in row]
    assert doubtful == ([words] if words else [])
    machine = limits(path, "--judge", str(run), "--against", str(key), "--json")
    assert words in machine.stderr
    assert all(json.loads(row) for row in machine.stdout.splitlines())


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "name RUNS or a --lot"),
        (("1", "--list"), "one of them"),
        (("--judge", "20"), "--against ID"),
        (("1",), "captured no starts"),
        (("9999",), "no run 9999"),
        (("20", "--lot", "14"), "not both"),
        (("--lot", "1"), "no lot number 1"),
        (("--show", "99"), "99"),
        (("--judge", "1", "--against", "1"), "captured no starts"),
        (("20", "--coverage", "1"), "coverage: 1 is outside 0.5 to 0.999"),
        (("20", "--confidence", "0,9"), "write it with a point"),
    ],
)
def test_what_is_refused_is_one_line_and_keeps_nothing(demo: Path, arguments: tuple[str, ...], words: str) -> None:
    count = kept(demo)
    done = limits(demo, *arguments)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1
    assert kept(demo) == count
