"""`benchlog capture` as a user runs it: over TCP against the truth, what it refuses, and how it is judged."""

import json
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from click.testing import CliRunner

from benchlog.cli import capture as module
from benchlog.cli import main
from benchlog.cli.starts_told import start_fields, table
from benchlog.clock import VirtualClock
from benchlog.ledger.known_good import keep_limits
from benchlog.ledger.lots import add_unit, close_lot, lot, unit, units
from benchlog.ledger.start_tests import lock
from benchlog.ledger.store import Ledger
from benchlog.motor.start_figures import FIGURES
from benchlog.records import Event, EventKind, Purpose, RunKind
from benchlog.recovery.start_test import StartTest
from tests.cli.test_recover import benchlog
from tests.ledger.benches import QUICK_LOOK, a_lot, file_start_up, fresh_ledger, limits_like
from tests.processes import BenchProcess

NOBODY = "TCPIP::127.0.0.1::9::SOCKET"


@pytest.fixture(scope="module")
def real(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """One short capture over TCP in real time, as JSON."""
    folder = tmp_path_factory.mktemp("capture")
    bench, ledger = BenchProcess(folder, "free"), folder / "ledger.db"
    try:
        done = benchlog(
            *("capture", "--supply", bench.resource, "--rated-voltage", "12", "--volts", "8", "--starts", "2"),
            *("--rest", "0.5", "--interleave", "2", "--item", "cabin fan", "--yes", "--json", "--ledger", str(ledger)),
        )
        truth = bench.truth()
    finally:
        bench.close()
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    return SimpleNamespace(done=done, lines=lines, truth=truth, ledger=ledger)


@pytest.mark.timeout(90)
def test_each_start_is_an_object_with_figures_and_the_interval_achieved(real: Any) -> None:
    assert real.done.returncode == 0, real.done.stderr
    starts = [line for line in real.lines if line["event"] == "start"]
    assert [start["number"] for start in starts] == [1, 2]
    for start in starts:
        assert set(start) >= {"figures", "interval_s", "jitter_s", "readings", "turning", "cut", "t_s", "limited"}
        assert set(start["figures"]) == {kind.name for kind in FIGURES}
        assert start["turning"] == "turning"
        peak = start["figures"]["peak_amps"]
        assert peak["low"] < peak["value"] < peak["high"]
        assert (peak["unit"], peak["why"]) == ("A", "")
        assert 0.005 < start["interval_s"] < 0.05
        assert not {"peak_amps", "peak_amps_low", "why_peak_amps"} & set(start), "told once, with their intervals"
    assert starts[1]["delay_s"] == pytest.approx(starts[0]["interval_s"] / 2, rel=0.3)


@pytest.mark.timeout(90)
def test_the_last_line_says_where_it_is_filed_and_that_the_output_is_off(real: Any) -> None:
    last = real.lines[-1]
    assert last["event"] == "filed"
    assert (last["outcome"], last["output_confirmed_off"], last["kicks"]) == ("runs", True, 0)
    with Ledger.open(real.ledger) as book:
        run = book.run(last["run"])
        job = book.job(run.job)
        events = book.events(run.id)
    assert (run.kind, run.complete) == (RunKind.START_UP, True)
    assert (job.number, job.purpose, job.item.kind) == (last["job"], Purpose.MEASURING, "cabin fan")
    assert sum(event.kind is EventKind.START for event in events) == 2


@pytest.mark.timeout(90)
def test_figures_over_the_wire_hold_the_truth_at_the_terminals(real: Any) -> None:
    told = [one for one in real.truth if one["kind"] == "reading"]
    with Ledger.open(real.ledger) as book:
        trace = book.trace(real.lines[-1]["run"])
    told = told[-len(trace.volts) :]
    assert np.allclose(trace.amps, [one["reported_amps"] for one in told], atol=1e-9)
    t_s = trace.t_s
    true_amps = np.array([one["true_amps"] for one in told])
    for start in (line for line in real.lines if line["event"] == "start"):
        held = (t_s > start["trigger_s"]) & (t_s < start["trigger_s"] + 1.4)
        peak = start["figures"]["peak_amps"]
        assert peak["low"] <= true_amps[held].max() <= peak["high"]
    assert max(one["true_volts"] for one in told) <= 12.02


def capture(*arguments: str) -> tuple[int, dict[str, Any]]:
    """In this process: the exit status and the last object."""
    done = CliRunner().invoke(main, ["capture", "--yes", "--json", *arguments])
    return done.exit_code, json.loads(done.stdout.splitlines()[-1])


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "no supply"),
        (("--supply", NOBODY), "no rating"),
        (("--supply", NOBODY, "--rated-voltage", "60"), "42.4"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--volts", "13"), "start_test.volts: 13 V is above the job's"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--volts", "nan"), "volts"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--volts", "3,0"), "volts"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--current", "9", "--max-current", "2"), "start_test.amps: 9 A"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--starts", "0"), "starts: 0 is outside 1 to 500"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--trigger", "amps"), "level"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--test", "nothing"), "no start test called"),
        (("--supply", NOBODY, "--lot", "1"), "--serial"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--job", "7"), "7"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--limits", "4"), "no limits with the key 4"),
    ],
)
def test_what_is_refused_is_said_and_nothing_is_filed(arguments: tuple[str, ...], words: str, tmp_path: Path) -> None:
    path = tmp_path / "l.db"
    status, last = capture(*arguments, "--ledger", str(path))
    assert (status, last["event"], last["outcome"], last["run"]) == (2, "filed", "refused", None)
    assert words in last["reason"]
    if path.exists():
        with Ledger.open(path) as book:
            assert book.jobs() == []


def test_a_supply_that_is_not_there_is_refused_and_no_unit_is_left_behind_half(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        number = a_lot(book).job.number
    path = str(tmp_path / "workshop.ledger")
    status, last = capture(
        "--supply", NOBODY, "--lot", str(number), "--serial", "F-1", "--volts", "8", "--ledger", path
    )
    assert (status, last["outcome"]) == (2, "refused")
    assert 'start test "quick look", version 1, is locked with volts 12.0, not 8.0' in last["reason"]
    with Ledger.open(Path(path)) as book:
        assert units(book, lot(book, number)) == []


def test_a_lot_says_what_is_due_before_the_start_and_takes_no_run_once_it_is_closed(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        fans = a_lot(book)
        add_unit(book, fans, "F-1")
        path = str(book.path)
    asked = ("--supply", NOBODY, "--lot", "1", "--serial", "F-1", "--yes", "--ledger", path)
    done = CliRunner().invoke(main, ["capture", *asked])
    assert "Check due: zero and leads: this unit will not be judged.\n" in done.stderr
    with Ledger.open(Path(path)) as book:
        close_lot(book, fans)
    status, last = capture(*asked)
    assert (status, last["outcome"], last["reason"], last["run"]) == (2, "refused", "lot 1 is closed", None)
    with Ledger.open(Path(path)) as book:
        assert book.recent_runs() == []
        assert [one.serial for one in units(book, fans)] == ["F-1"]


def test_a_locked_test_is_used_as_it_is_and_says_where_an_option_differs(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        lock(book, StartTest(name="fan", volts=9.0, starts=3))
        lock(book, StartTest(name="fan", version=2, volts=10.0, starts=3))
        found = module._test(book, "fan", None, {}, 12.0)
        assert (found.version, found.volts) == (2, 10.0), "the newest"
        assert module._test(book, "fan", None, {"starts": 3}, 12.0) == found
        measured = a_lot(book)
        assert module._test(book, None, measured, {}, 12.0) == QUICK_LOOK
        adhoc = module._test(book, None, None, {"starts": 4}, 6.0)
    assert (adhoc.name, adhoc.volts, adhoc.starts) == ("ad hoc", 6.0, 4)


@pytest.mark.parametrize(("peaks", "passed"), [((2.0, 2.1), True), ((2.5, 2.6), False)])
def test_a_unit_is_judged_by_the_lots_limits_and_the_verdict_is_kept(
    tmp_path: Path, peaks: tuple[float, ...], passed: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        measured = a_lot(book)
        one = add_unit(book, measured, "F-1")
        run = file_start_up(book, tmp_path, "r1", job=measured.job.id, unit=one.id, peaks=peaks)
        limits_id = keep_limits(book, limits_like((run,)))
        filed = SimpleNamespace(run=run, job=measured.job.number)
        told = module._starts_of(book, filed, limits_id, None, as_json=True)  # type: ignore[arg-type]
        judged: Any = told["judged"]
        assert (told["limits"], judged["passed"]) == (limits_id, passed)
        rows = {row["name"]: row for row in judged["rows"]}
        assert rows["peak_amps"]["inside"] is passed
        assert module._starts_of(book, filed, limits_id, one.id, as_json=False) == {}  # type: ignore[arg-type]
        kept = unit(book, one.id)
        # Neither zero nor leads were checked in this shift: the lot keeps it as not judged, and says why.
        assert kept.run == run
        assert kept.passed is None
        assert "Check due" in kept.judged
    said = capsys.readouterr().out
    assert "peak readback" in said
    assert "limits" in said


def test_limits_of_another_test_are_refused_before_anything_is_switched_on(tmp_path: Path) -> None:
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        run = file_start_up(book, tmp_path, "r1")
        limits_id = keep_limits(book, limits_like((run,)))
    status, last = capture(
        *("--supply", NOBODY, "--rated-voltage", "12", "--limits", str(limits_id)),
        *("--ledger", str(tmp_path / "workshop.ledger")),
    )
    assert (status, last["outcome"]) == (2, "refused")
    assert 'are of start test "quick look", version 1, not of "ad hoc"' in last["reason"]


def test_a_figure_that_is_unknown_says_why_and_leaves_a_dash_in_the_table() -> None:
    values: dict[str, Any] = {"number": 1, "turning": "not-turning", "interval_s": 0.01, "jitter_s": 0.0, "readings": 9}
    values |= {"peak_amps": 1.5, "peak_amps_low": 1.49, "peak_amps_high": 1.51, "run_up_s": None}
    values |= {"run_up_s_low": None, "run_up_s_high": None, "why_run_up_s": "it did not turn"}
    event = Event(t_s=1.0, kind=EventKind.START, text="", values=values)
    fields: Any = start_fields(event)
    assert fields["figures"]["run_up_s"] == {
        "value": None,
        "low": None,
        "high": None,
        "unit": "s",
        "why": "it did not turn",
    }
    head, row = table([event])
    assert row.split() == ["1", "1.50", "A", "±", "10", "mA", "—", "—", "—", "—", "not-turning"]
    assert head.index("run-up") == row.index("—"), "columns stand below their heads"
