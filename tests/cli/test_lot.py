"""`benchlog lot` as a user runs it: begun, checked, judged, told, reported and closed; every refusal in one line."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.clock import VirtualClock
from benchlog.ledger.known_good import keep_limits
from benchlog.ledger.lots import add_unit, checks, keep_check, lots, set_limits, units
from benchlog.ledger.store import Ledger
from tests.ledger.benches import a_lot, file_start_up, fresh_ledger, limits_like


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("lot") / "demo.db"
    shutil.copy(built_demo, path)
    return path


@pytest.fixture(scope="module")
def locked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("locked") / "mine.db"
    with Ledger.open(path):
        pass
    assert run(path, "start-test", "cold start", "--volts", "12").exit_code == 0
    return path


@pytest.fixture
def mine(locked: Path, tmp_path: Path) -> Path:
    """A ledger with a locked start test and nothing else."""
    path = tmp_path / "mine.db"
    shutil.copy(locked, path)
    return path


NEW = ("lot", "new", "--name", "fans", "--kind", "cabin fan", "--rated-voltage", "12", "--test", "cold start")


def run(ledger: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, [*arguments, "--ledger", str(ledger)])


def told(done: Result) -> list[dict[str, object]]:
    return [json.loads(row) for row in done.output.splitlines()]


def test_a_lot_is_begun_with_all_that_was_said(mine: Path) -> None:
    more = ("--model", "120 mm", "--operator", "bench", "--leads", "1 m", "--fixture", "cradle", "--ambient", "21.5")
    done = run(mine, *NEW, *more)
    assert done.exit_code == 0, done.output
    assert "fans: cabin fan · 120 mm, 0 units, no limits" in done.output
    assert done.output.splitlines()[1] == "Lot 1 begun. Next: benchlog leads, then benchlog lot check 1 --run N"
    (row,) = told(run(mine, "lot", "list", "--json"))
    expected = {"operator": "bench", "leads": "1 m", "fixture": "cradle", "ambient_c": 21.5, "rated_volts": 12.0}
    assert {name: row[name] for name in expected} == expected
    assert (row["units"], row["limits"], row["state"]) == (0, None, "open")


@pytest.mark.parametrize(
    ("without", "words"),
    [("--name", "--name"), ("--kind", "--kind"), ("--rated-voltage", "--rated-voltage"), ("--test", "--test")],
)
def test_what_a_lot_needs_is_named(mine: Path, without: str, words: str) -> None:
    at = NEW.index(without)
    done = run(mine, *NEW[:at], *NEW[at + 2 :])
    assert done.exit_code == 2
    assert f"a lot needs {words}" in done.output
    with Ledger.open(mine) as book:
        assert lots(book) == []


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (("--rated-voltage", "60"), "above the program's"),
        (("--test", "warm start"), 'no start test called "warm start"'),
        (("--version", "7"), "has no version 7"),
        (("--ambient", "300"), "outside -60 to 100"),
        (("--limits", "5"), "no limits with the key 5"),
    ],
)
def test_a_lot_that_can_not_be_is_refused_in_one_line(mine: Path, more: tuple[str, ...], words: str) -> None:
    done = run(mine, *NEW, *more)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1
    with Ledger.open(mine) as book:
        assert lots(book) == []


def test_a_serial_is_added_once(mine: Path) -> None:
    run(mine, *NEW)
    for serial in ("CF-1", "CF-2", "CF-1"):
        assert run(mine, "lot", "unit", "1", serial).exit_code == 0
    assert "CF-1" in run(mine, "lot", "unit", "1", "CF-1").output
    assert run(mine, "lot", "unit", "1", " ").exit_code == 2
    with Ledger.open(mine) as book:
        assert [unit.serial for unit in units(book, lots(book)[0])] == ["CF-1", "CF-2"]


def test_a_zero_as_seen_is_kept_and_tells_what_is_still_due(mine: Path) -> None:
    run(mine, *NEW)
    good = run(mine, "lot", "check", "1", "--zero", "0.002", "--who", "bench")
    assert (good.exit_code, good.output.splitlines()[1]) == (0, "Still due in this shift: short")
    bad = run(mine, "lot", "check", "1", "--zero", "-0.02", "--json")
    assert bad.exit_code == 1
    assert [told(bad)[0][name] for name in ("kind", "value", "passed", "due")] == [
        "zero",
        -0.02,
        False,
        ["zero", "short"],
    ]
    assert run(mine, "lot", "check", "1").exit_code == 2
    assert run(mine, "lot", "check", "1", "--zero", "0", "--run", "1").exit_code == 2


def test_a_check_is_by_the_lots_operator_where_nobody_is_named(mine: Path) -> None:
    run(mine, *NEW, "--operator", "bench")
    for who in ((), ("--who", " "), ("--who", "second")):
        assert run(mine, "lot", "check", "1", "--zero", "0.001", *who).exit_code == 0
    with Ledger.open(mine) as book:
        assert [one.who for one in checks(book, lots(book)[0])] == ["bench", "bench", "second"]


def test_a_unit_that_was_measured_before_the_check_is_named_by_the_check(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        path, fans = book.path, a_lot(book)
        early = add_unit(book, fans, "CF-1")
        add_unit(book, fans, "CF-2")
        run_id = file_start_up(book, tmp_path, "r1", job=fans.job.id, unit=early.id)
        set_limits(book, fans, keep_limits(book, limits_like((run_id,))))
    with Ledger.open(path) as book:
        keep_check(book, fans, "short", 0.05, "Ω", True)
    done = run(path, "lot", "check", "1", "--zero", "0.001")
    assert done.exit_code == 0
    assert "CF-1: measured before the check: measure it again" in done.output
    assert "CF-2" not in done.output
    assert "Measured before the check: measure it again." in run(path, "lot", "limits", "1", "1").output


def test_a_check_may_be_read_from_a_run(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "copy.db"
    shutil.copy(demo, path)
    done = run(path, "lot", "check", "14", "--run", "20", "--json")
    assert done.exit_code == 0, done.output
    (row,) = told(done)
    assert (row["kind"], row["run"], row["unit"]) == ("zero", 20, "A")
    assert abs(float(str(row["value"]))) < 0.005


def test_another_operator_or_ambient_is_on_record_with_what_it_was(mine: Path) -> None:
    run(mine, *NEW, "--operator", "bench")
    assert run(mine, "lot", "shift", "1").exit_code == 2
    done = run(mine, "lot", "shift", "1", "--operator", "second", "--ambient", "17.5", "--json")
    assert [told(done)[0][name] for name in ("operator", "ambient_c")] == ["second", 17.5]
    page = " ".join(run(mine, "lot", "show", "1").output.split())
    assert "NOTED ON THE WAY" in page
    assert "Operator from now on: second; until now bench" in page
    assert run(mine, "lot", "shift", "1", "--ambient", "cold").exit_code == 2


def test_a_lot_is_shown_in_80_columns_and_a_failed_unit_is_status_1(demo: Path) -> None:
    before = demo.read_bytes()
    done = run(demo, "lot", "show", "14")
    assert done.exit_code == 1
    assert "Passed: 7 of 8 (53 to 98 %)" in done.output
    assert max(map(len, done.output.splitlines())) <= 80
    head, *rows, rate = told(run(demo, "lot", "show", "14", "--json"))
    assert (head["lot"], head["units"]) == (14, 8)
    assert [row["passed"] for row in rows] == [True] * 4 + [False] + [True] * 3
    assert (rate["judged"], rate["passed"], rate["demo"]) == (8, 7, True)
    assert rate["interval"] == pytest.approx([0.5291, 0.9776], abs=1e-4)  # Wilson, computed by hand
    assert demo.read_bytes() == before


def test_limits_are_set_and_every_unit_is_judged_again_by_them(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "copy.db"
    shutil.copy(demo, path)
    made = run(
        path, "limits", "--lot", "14", "--coverage", "0.5", "--confidence", "0.5", "--keep", "--who", "x", "--json"
    )
    key = told(made)[-1]["limits"]
    done = run(path, "lot", "limits", "14", str(key), "--json")
    assert done.exit_code == 1
    failed = [row["serial"] for row in told(done) if row["passed"] is False]
    assert "CF-205" in failed
    assert len(failed) > 1  # half of the good ones lie within such limits, not all
    with Ledger.open(path) as book:
        lot = lots(book)[0]
        assert lot.limits_id == key
        assert [unit.serial for unit in units(book, lot) if unit.passed is False] == failed
    assert run(path, "lot", "limits", "14", "99").exit_code == 2


@pytest.mark.parametrize(("name", "begins"), [("r.pdf", b"%PDF"), ("r.html", b"<!DOCTYPE html>")])
def test_a_report_is_written_once(demo: Path, tmp_path: Path, name: str, begins: bytes) -> None:
    path = tmp_path / name
    done = run(demo, "lot", "report", "14", "--output", str(path), "--paper", "Letter", "--json")
    assert done.exit_code == 0, done.output
    assert told(done)[0] == {
        "file": str(path),
        "bytes": path.stat().st_size,
        "lot": 14,
        "paper": "Letter",
        "demo": True,
    }
    data = path.read_bytes()
    assert data.startswith(begins)
    again = run(demo, "lot", "report", "14", "--output", str(path))
    assert again.exit_code == 2
    assert "is there already" in again.output
    assert path.read_bytes() == data


def test_a_report_of_another_kind_of_file_is_refused(demo: Path, tmp_path: Path) -> None:
    done = run(demo, "lot", "report", "14", "--output", str(tmp_path / "r.doc"))
    assert (done.exit_code, list(tmp_path.iterdir())) == (2, [])


def test_a_closed_lot_takes_no_unit(mine: Path) -> None:
    run(mine, *NEW)
    closed = run(mine, "lot", "close", "1", "--remark", "all went out")
    assert closed.exit_code == 0
    assert closed.output.rstrip().endswith("no limits, closed")
    assert run(mine, "lot", "unit", "1", "CF-9").exit_code == 2
    assert run(mine, "lot", "close", "1").exit_code == 2
    with Ledger.open(mine) as book:
        assert units(book, lots(book)[0]) == []


def test_lots_are_among_the_jobs_only_where_they_are_asked_for(demo: Path) -> None:
    assert [row["job"] for row in told(run(demo, "jobs", "--purpose", "measuring", "--json"))] == [14]
    usual = told(run(demo, "jobs", "--json"))
    assert 14 not in [row["job"] for row in usual]
    assert {row["purpose"] for row in usual} == {"repair"}
    assert "run" in run(demo, "jobs", "CF-205").output


@pytest.mark.parametrize("arguments", [("show", "1"), ("show", "x"), ("report", "99"), ("close", "99"), ("list",)])
def test_what_is_not_there_is_one_line(tmp_path: Path, demo: Path, arguments: tuple[str, ...]) -> None:
    ledger = tmp_path / "none.db" if arguments == ("list",) else demo
    done = run(ledger, "lot", *arguments)
    assert done.exit_code == 2
    assert len(done.output.strip().splitlines()) == 1
    assert not (tmp_path / "none.db").exists()
