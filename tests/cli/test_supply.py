"""`benchlog supply` as a user runs it: a report without a write, what is no supply, a check, what runs get of it."""

import json
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import msgspec
import pytest
from click.testing import CliRunner, Result
from msgspec.structs import replace as replace_part

from benchlog.cli.supply import command
from benchlog.cli.supply_check import try_latches
from benchlog.cli.supply_runs import CheckRuns, RunSeen
from benchlog.cli.supply_settling import planned, settled_of
from benchlog.cli.supply_words import ABOUT_GAPS, as_toml
from benchlog.errors import Refused
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import CHECKED, SETTLING, keep_supply, kept_supply, last_check
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Event, EventKind
from benchlog.recovery.ceilings import Limits
from benchlog.recovery.supply_check import SupplyCheck
from drivers import supply as supply_words
from drivers.dialect import parse, shipped, shipped_names, to_json
from drivers.simulated.instrument import MEASURE_REPLY_S, OTHER_REPLY_S
from tests.drivers.strangers import late_by_one, parrot, printer, web_server
from tests.processes import BenchProcess
from tests.recovery.test_ceilings import CAN

TEN_OHM = """\
item = "anchor-light dimmer fan"
story = "A resistor between the clips."
rated_volts = 12.0
expected = "not-freed"

[resistor]
ohms = 10.0
"""


def benchlog(*arguments: str) -> Result:
    """In this process, so that it is quick: nothing is switched on by it."""
    return CliRunner().invoke(command, list(arguments))


@pytest.fixture
def supply(tmp_path: Path) -> Iterator[BenchProcess]:
    process = BenchProcess(tmp_path, "free")
    yield process
    process.close()


@contextmanager
def answering(answer: Callable[[str], str | None]) -> Iterator[str]:
    """Something that is no supply, on a loopback port, a line at a time."""
    listener = socket.create_server(("127.0.0.1", 0))

    def serve() -> None:
        while True:
            try:
                link, _ = listener.accept()
            except OSError:
                return
            with link, link.makefile("rb") as lines:
                for line in lines:
                    said = answer(line.decode("ascii", "replace").strip())
                    if said is not None:
                        try:
                            link.sendall(said.encode())
                        except OSError:
                            break

    thread = threading.Thread(target=serve, daemon=True)
    thread.start()
    try:
        yield f"TCPIP::127.0.0.1::{listener.getsockname()[1]}::SOCKET"
    finally:
        listener.shutdown(socket.SHUT_RDWR)
        listener.close()
        thread.join(timeout=5.0)


def test_a_report_is_made_in_time_kept_and_nothing_was_switched(tmp_path: Path, supply: BenchProcess) -> None:
    path = tmp_path / "ledger.db"
    began_s = time.monotonic()
    done = benchlog(supply.resource, "--ledger", str(path))
    assert time.monotonic() - began_s < 10.0
    assert done.exit_code == 0, done.output
    for word in ("SCPI-1999, one output", "Latency", "readings a second", "Kicks", "Not sent yet", "nothing was set"):
        assert word in done.output
    assert max(len(line) for line in done.output.splitlines()) <= 120
    assert supply.switches() == []
    with Ledger.open(path) as ledger:
        kept = kept_supply(ledger, supply.resource)
    assert kept is not None
    assert (kept.kind, kept.output, kept.content["usable"]) == ("found", 1, True)


def test_json_is_one_object_with_every_figure(tmp_path: Path, supply: BenchProcess) -> None:
    done = benchlog(supply.resource, "--json", "--ledger", str(tmp_path / "ledger.db"))
    (line,) = done.output.splitlines()
    told = json.loads(line)
    assert (told["usable"], told["questions"], told["missing"]) == (True, [], {})
    assert OTHER_REPLY_S <= told["latency_s"] < told["least_kick_s"]
    assert MEASURE_REPLY_S <= told["reading_s"] < told["least_kick_s"]
    assert told["volts_step"] == pytest.approx(1e-3)
    assert all(0.0 <= took_s < 1.0 for took_s in told["latencies_s"].values())


@pytest.mark.parametrize(
    ("resource", "words"),
    [
        ("TCPIP::127.0.0.1::9::SOCKET", "nothing listens"),
        ("TCPIP::127.0.0.1 ::5025::SOCKET", "space"),
        ("TCPIP::127.0.0.1::99999::SOCKET", "65535"),
        ("the blue one", "no VISA address"),
        ("", "no VISA address"),
    ],
)
def test_an_address_at_which_there_is_nothing_says_why(tmp_path: Path, resource: str, words: str) -> None:
    done = benchlog(resource, "--ledger", str(tmp_path / "ledger.db"))
    assert done.exit_code == 2
    assert "I don't know how to use it, because" in done.output
    assert words in done.output
    assert "Traceback" not in done.output
    assert not (tmp_path / "ledger.db").exists()


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        (web_server(), "a web server"),
        (printer(), "sends back what it is sent"),
        (parrot(), "any question with its identification"),
        (late_by_one(), "late by one"),
    ],
)
def test_what_is_no_supply_is_told_over_a_real_line(
    tmp_path: Path, answer: Callable[[str], str | None], words: str
) -> None:
    with answering(answer) as resource:
        done = benchlog(resource, "--ledger", str(tmp_path / "ledger.db"))
    assert done.exit_code == 2
    assert words in done.output


@pytest.mark.parametrize("unit", ["VOLT {value};OUTP ON", "VOLT {value}\\nOUTP ON"])
def test_a_dialect_of_the_users_that_smuggles_a_second_command_is_refused(
    tmp_path: Path, supply: BenchProcess, unit: str
) -> None:
    path = tmp_path / "mine.toml"
    path.write_text(as_toml(shipped()).replace('"VOLT {value}"', f'"{unit}"'), encoding="utf-8")
    done = benchlog(supply.resource, "--dialect", str(path), "--ledger", str(tmp_path / "ledger.db"))
    assert done.exit_code == 2
    assert "program.volts" in done.output
    assert supply.truth() == []


def test_a_range_that_it_does_not_tell_is_asked_for_and_taken_from_the_user(
    tmp_path: Path, supply: BenchProcess
) -> None:
    path, mine = tmp_path / "ledger.db", tmp_path / "mine.toml"
    mine.write_text(
        as_toml(shipped()).replace('volts_max = "VOLT? MAX"', 'volts_max = ""').replace('"CURR? MAX"', '""'),
        encoding="utf-8",
    )
    without = benchlog(supply.resource, "--dialect", str(mine), "--ledger", str(path))
    assert supply_words.RANGE_NOT_TOLD in without.output
    most = ("--most-volts", "30", "--most-amps", "5")
    done = benchlog(supply.resource, "--dialect", str(mine), *most, "--json", "--ledger", str(path))
    told = json.loads(done.output)
    assert (told["volts_max"], told["amps_max"], told["missing"]) == (30.0, 5.0, {})
    half = benchlog(supply.resource, "--most-volts", "30", "--ledger", str(path))
    assert (half.exit_code, "both" in half.output) == (2, True)


def test_an_output_that_it_does_not_have_is_refused(tmp_path: Path, supply: BenchProcess) -> None:
    done = benchlog(supply.resource, "--output", "2", "--ledger", str(tmp_path / "ledger.db"))
    assert done.exit_code == 2
    assert "Not usable" in done.output


def test_spellings_are_tried_only_where_somebody_agrees_and_the_output_stays_off(
    tmp_path: Path, supply: BenchProcess
) -> None:
    path = tmp_path / "ledger.db"
    refused = benchlog(supply.resource, "--try", "--ledger", str(path))
    assert (refused.exit_code, "--yes" in refused.output, supply.truth()) == (2, True, [])
    done = benchlog(supply.resource, "--try", "--yes", "--ledger", str(path))
    assert done.exit_code == 0
    assert "setpoints, off, what clears its latches obeyed" in done.output
    assert supply.switches() == []


@pytest.mark.parametrize("name", shipped_names())
def test_a_dialect_written_to_a_file_is_the_same_when_it_is_read(name: str) -> None:
    assert to_json(parse(as_toml(shipped(name)))) == to_json(shipped(name))


def test_every_gap_has_a_sentence_on_what_the_program_does() -> None:
    gaps = {value for name, value in vars(supply_words).items() if name.isupper() and isinstance(value, str)}
    assert set(ABOUT_GAPS) == gaps - {supply_words.OVER_VOLTS, supply_words.OVER_AMPS}


def test_a_check_with_a_resistor_is_filed_and_a_run_by_what_was_kept_says_so(tmp_path: Path) -> None:
    scenario, path = tmp_path / "ten.toml", tmp_path / "ledger.db"
    scenario.write_text(TEN_OHM, encoding="utf-8")
    mine = tmp_path / "mine.toml"
    mine.write_text(as_toml(replace_part(shipped(), over_amps=None, over_volts=None)), encoding="utf-8")
    bench = BenchProcess(tmp_path, "short", "--scenario", str(scenario))
    arguments = [sys.executable, "-P", "-m", "benchlog.cli"]
    try:
        done = subprocess.run(
            [
                *arguments,
                "supply",
                bench.resource,
                "--check",
                "--ohm",
                "10",
                "--yes",
                "--dialect",
                str(mine),
                "--ledger",
                str(path),
            ],
            capture_output=True,
            text=True,
            timeout=60.0,
            stdin=subprocess.DEVNULL,
        )
        switches = bench.switches()
    finally:
        bench.close()
    assert done.returncode == 0, done.stdout + done.stderr
    assert "This is a check, no calibration" in done.stdout
    assert "no over-voltage latch that could be tried" in done.stdout
    assert "no over-current latch that could be tried" in done.stdout
    assert not switches[-1]["on"]
    with Ledger.open(path) as ledger:
        checked = last_check(ledger, bench.resource)
        assert checked is not None
        assert checked.content["passed"] is True
        assert [ledger.run(run).result.output_confirmed_off for run in checked.content["runs"]] == [True]


class ScriptedRuns(CheckRuns):
    """Runs that were made elsewhere: what came of each, in order."""

    def __init__(self, *came: tuple[Outcome, str]) -> None:
        self._came = list(came)
        self.asked: list[SupplyCheck] = []

    def run(self, check: SupplyCheck, amps: float, on_terminals: str) -> int:
        outcome, reason = self._came.pop(0)
        self.asked.append(check)
        found = [Event(t_s=1.0, kind=EventKind.FINDING, text="", values={"what": "volts", "passed": True})]
        trip = [Event(t_s=1.0, kind=EventKind.TRIP, text=reason)]
        result = RunResult(outcome=outcome, reason=reason, output_confirmed_off=True)
        self.last = RunSeen(run=len(self.asked), result=result, events=found if check.cleared else trip)
        return 0


TRIPPED, REFUSED = (Outcome.CEILING, "the supply's own latch tripped"), (Outcome.REFUSED, "it reads 0.1 A")
STAYED_ON, WENT_ON = (Outcome.UNDETERMINED, "did not trip"), (Outcome.UNDETERMINED, "checked")


@pytest.mark.parametrize(
    ("came", "passed", "untried"),
    [
        ((TRIPPED, TRIPPED, WENT_ON), [True, True, True], 0),
        ((TRIPPED, STAYED_ON, WENT_ON), [True, False, True], 0),
        ((STAYED_ON, REFUSED), [False], 1),
    ],
)
def test_each_latch_is_tried_alone_and_after_one_that_tripped_it_has_to_go_on_again(
    came: tuple[tuple[Outcome, str], ...], passed: list[bool], untried: int
) -> None:
    runs, figures, said = ScriptedRuns(*came), list[dict[str, Any]](), list[str]()
    try_latches(runs, SupplyCheck(ohm=10.0, ohm_share=0.01, share=0.02, volts=3.0), CAN, figures, said)
    assert [one["passed"] for one in figures if one["what"] != "off"] == passed
    assert len(said) == untried
    assert runs.asked[0].latch_v == pytest.approx(1.8)
    assert runs.asked[1].latch_a == pytest.approx(0.18)


def test_settling_that_was_measured_takes_the_place_of_what_was_reckoned(tmp_path: Path, supply: BenchProcess) -> None:
    path = tmp_path / "ledger.db"
    before = json.loads(benchlog(supply.resource, "--json", "--ledger", str(path)).output)
    times = {"on": 0.05, "rise": 0.06, "fall": None, "kick": 0.07, "off": 0.08}
    events = [
        Event(
            t_s=1.0, kind=EventKind.FINDING, text="", values={"settling": what, "seconds": s or 3.0, "settled": bool(s)}
        )
        for what, s in times.items()
    ]
    seen = RunSeen(run=7, result=RunResult(outcome=Outcome.UNDETERMINED, reason=""), events=events)
    settled = settled_of(seen, "2026-11-30T09:00:00.000Z", 5.0, 0.1)
    with Ledger.open(path) as ledger:
        keep_supply(
            ledger,
            resource=supply.resource,
            identity=before["identity"],
            output=1,
            kind=CHECKED,
            dialect="",
            content={SETTLING: msgspec.to_builtins(settled)},
        )
        assert last_check(ledger, supply.resource) is None  # it says nothing about right or wrong
    after = json.loads(benchlog(supply.resource, "--json", "--ledger", str(path)).output)
    report = " ".join(benchlog(supply.resource, "--ledger", str(path)).output.split())
    assert before["settling"] is None
    assert after["least_kick_s"] == after["settling"]["kick_s"] == 0.07
    assert "Settles up in 60.0 ms, down in more than was waited for at most, measured on 2026-11-30" in report


def test_how_far_settling_may_go_is_the_least_of_supply_owner_and_what_is_little() -> None:
    supply = CAN
    assert (planned(supply, Limits()).volts, planned(supply, Limits()).settling_a) == (5.0, 0.1)
    assert planned(replace(supply, volts_max=8.0), Limits()).volts == 2.0
    assert planned(replace(supply, volts_max=None, amps_max=None), Limits(volts=3.0, amps=0.05)).settling_a == 0.05
    with pytest.raises(Refused, match="too little to tell"):
        planned(supply, Limits(volts=0.5))


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--check",), "--ohm"),
        (("--check", "--ohm", "0"), "above zero"),
        (("--check", "--ohm", "9999"), "too little"),
        (("--check", "--ohm", "10"), "--yes"),
        (("--check", "--ohm", "10", "--settling"), "one after the other"),
        (("--settling",), "--yes"),
    ],
)
def test_a_check_that_can_not_be_is_refused_and_switches_nothing(
    tmp_path: Path, supply: BenchProcess, options: tuple[str, ...], words: str
) -> None:
    done = benchlog(supply.resource, *options, "--ledger", str(tmp_path / "ledger.db"))
    assert done.exit_code == 2
    assert words in done.output
    assert supply.switches() == []
