"""`benchlog compare` as a user runs it: figures with intervals, the others taken, refusals in one line."""

import json
import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.ledger.lots import lots, units
from benchlog.ledger.store import Ledger
from benchlog.motor.compare import measured_of
from benchlog.motor.start_figures import FIGURES
from benchlog.records import RunKind
from tests.motor.test_startup import SUPPLY, step, trace_of


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("compare") / "demo.db"
    shutil.copy(built_demo, path)
    return path


def compared(demo: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, ["compare", *arguments, "--ledger", str(demo)])


def of_serial(demo: Path, serial: str) -> list[int]:
    with Ledger.open(demo) as book:
        runs = [run for job in book.jobs() if job.item.serial == serial for run in book.runs(job.id)]
        return sorted(run.id for run in runs if run.kind is RunKind.PROOF)


def test_figures_have_intervals_around_their_values_and_nothing_is_written(demo: Path) -> None:
    before = demo.read_bytes()
    done = compared(demo, str(of_serial(demo, "BP-0417")[-1]), "--json")
    assert done.exit_code == 0, done.output
    *rows, last = [json.loads(row) for row in done.output.splitlines()]
    told = {row["figure"]: row for row in rows if row["low"] is not None}
    assert set(told) >= {"steady current", "run-up time constant"}
    assert all(row["low"] < row["value"] < row["high"] for row in told.values())
    assert last["verdict"]
    assert demo.read_bytes() == before


def test_friction_is_told_in_two_parts_from_two_voltages(demo: Path) -> None:
    page = compared(demo, str(of_serial(demo, "BP-0417")[-1])).output
    told = {row[2:28].strip(): row[28:] for row in page.splitlines() if row.startswith("  friction")}
    assert set(told) == {"friction, at no speed", "friction, with speed"}
    assert all(" to " in row for row in told.values())
    assert "A/V" in told["friction, with speed"]


def test_what_is_not_known_stands_with_its_reason(demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    events = [SUPPLY, step(0.3, "measured start")]
    still_changing = measured_of(
        trace_of([(0.4, 0, "rest"), (1.0, 9, "start")], tau=1.0),
        events,
        run=1,
        lead_ohm=0.0,
        ambient_c=20.0,
        load_state="dry, uncoupled",
        ohm=None,
    )
    monkeypatch.setattr("benchlog.ledger.measured.measured_start", lambda book, run: still_changing)
    monkeypatch.setattr("benchlog.ledger.measured.others_of", lambda book, run, item: ("", []))
    rows = [json.loads(row) for row in compared(demo, "1", "--json").output.splitlines()]
    why = {row["figure"]: row["why"] for row in rows if row.get("figure") and row["value"] is None}
    assert "still changing" in why["volts at the motor"]
    assert "resistance of the probe" in why["friction, at no speed"]
    page = compared(demo, "1").output
    assert page.split("volts at the motor")[1].split("\n")[1].strip() == "the current was still changing at the end"


def test_a_serial_is_held_against_its_proof_before_and_never_against_itself_as_a_known_good_one(demo: Path) -> None:
    first, *_, last = of_serial(demo, "BP-0417")
    page = compared(demo, str(last)).output
    assert "the last proof of this serial (1)" in page
    assert max(map(len, page.splitlines())) <= 80
    assert "Nothing to compare with" in compared(demo, str(first)).output


def test_others_may_be_named(demo: Path) -> None:
    first, *_, last = of_serial(demo, "BP-0417")
    told = json.loads(compared(demo, str(first), str(last), "--json").output.splitlines()[-1])
    assert told["against"] == [last]


@pytest.mark.parametrize(("run", "words"), [("1", "no measured start"), ("999999", "999999")])
def test_what_is_refused_is_one_line(demo: Path, run: str, words: str) -> None:
    done = compared(demo, run)
    assert done.exit_code != 0
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1


def starts_of(demo: Path, serial: str) -> list[int]:
    with Ledger.open(demo) as book:
        runs = [run for job in book.jobs() if job.item.serial == serial for run in book.runs(job.id)]
        return sorted(run.id for run in runs if run.kind is RunKind.START_UP)


def test_captured_starts_are_held_against_those_before_the_repair(demo: Path) -> None:
    kept = demo.read_bytes()
    before, after = starts_of(demo, "CF-118")
    done = compared(demo, str(after))
    assert done.exit_code == 1
    assert f"Against the starts before in this job (run {before})" in done.output
    assert re.search(r"^  steady current  before [\d.]+ m?A, now [\d.]+ m?A, by -", done.output, re.MULTILINE)
    assert "Steady current fell" in done.output
    assert "turns more freely" in " ".join(done.output.split())
    assert max(map(len, done.output.splitlines())) <= 80
    assert demo.read_bytes() == kept


def test_each_start_has_its_figures_with_intervals_and_all_their_mean_and_spread(demo: Path) -> None:
    *rows, last = [
        json.loads(row) for row in compared(demo, str(starts_of(demo, "CF-118")[-1]), "--json").output.splitlines()
    ]
    starts = [row for row in rows if "start" in row]
    assert [row["start"] for row in starts] == [1, 2]
    for row in starts:
        assert set(row["figures"]) | set(row["why"]) == {kind.name for kind in FIGURES}
        assert all(low < value < high for value, low, high in row["figures"].values())
        assert row["interval_s"] > 0
    means = {row["figure"]: row for row in rows if "figure" in row}
    steady = [row["figures"]["steady_amps"][0] for row in starts]
    assert means["steady_amps"]["mean"] == pytest.approx(sum(steady) / 2)
    assert means["steady_amps"]["spread"] == pytest.approx(abs(steady[0] - steady[1]) / 2**0.5)
    assert means["steady_amps"]["low"] < means["steady_amps"]["mean"] < means["steady_amps"]["high"]
    fell = next(one for one in last["differences"] if one["name"] == "steady current")
    assert fell["low"] < fell["after"] - fell["before"] < fell["high"] < 0


def test_starts_without_a_past_have_nothing_to_be_held_against(demo: Path) -> None:
    done = compared(demo, str(starts_of(demo, "CF-118")[0]))
    assert done.exit_code == 0
    assert "Nothing to compare with: no earlier starts of this motor." in done.output


def test_starts_that_were_not_taken_the_same_way_are_not_compared(demo: Path) -> None:
    with Ledger.open(demo) as book:
        fan = units(book, lots(book)[0])[0].run
    done = compared(demo, str(fan), str(starts_of(demo, "CF-118")[0]))
    assert done.exit_code == 2
    assert "Not comparable: in its frame, nothing before it against dry, uncoupled" in " ".join(done.output.split())
    assert ", now " not in done.output.split("Against")[1]


def test_several_good_ones_are_a_measure_of_how_far_units_differ(demo: Path) -> None:
    with Ledger.open(demo) as book:
        found = {unit.serial: unit.run for unit in units(book, lots(book)[0])}
    good = [str(run) for serial, run in found.items() if serial not in ("CF-201", "CF-205")]
    assert compared(demo, str(found["CF-201"]), *good).exit_code == 0
    slow = compared(demo, str(found["CF-205"]), *good)
    assert slow.exit_code == 1
    assert "run-up longer" in " ".join(slow.output.split()).lower()


def test_starts_are_not_held_against_a_proof(demo: Path) -> None:
    done = compared(demo, str(starts_of(demo, "CF-118")[0]), str(of_serial(demo, "BP-0417")[0]))
    assert done.exit_code == 2
    assert "captured no starts" in done.output
