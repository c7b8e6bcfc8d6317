"""`benchlog start-test` as a user runs it: locked once, never changed, every refusal in one line."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli import main
from benchlog.ledger.start_tests import start_tests
from benchlog.ledger.store import Ledger


@pytest.fixture(scope="module")
def empty(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("tests") / "ledger.db"
    with Ledger.open(path):
        return path


@pytest.fixture
def ledger(empty: Path, tmp_path: Path) -> Path:
    path = tmp_path / "ledger.db"
    shutil.copy(empty, path)
    return path


def run(ledger: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, ["start-test", *arguments, "--ledger", str(ledger)])


def kept(ledger: Path) -> list[tuple[str, int, float, str]]:
    with Ledger.open(ledger) as book:
        return [(one.test.name, one.test.version, one.test.volts, one.who) for one in start_tests(book)]


def test_a_test_is_locked_with_all_that_was_said_and_told(ledger: Path) -> None:
    done = run(ledger, "cold start", "--volts", "12", "--current", "2.5", "--starts", "7", "--who", "bench")
    assert done.exit_code == 0, done.output
    assert "cold start, version 1" in done.output
    assert "7 starts at 12.0 V, limit 2.50 A" in done.output
    assert kept(ledger) == [("cold start", 1, 12.0, "bench")]
    told = json.loads(run(ledger, "--list", "--json").output)
    assert (told["starts"], told["amps"], told["trigger"], len(told["digest"])) == (7, 2.5, "output-on", 64)


def test_the_same_again_is_the_one_that_is_there_and_what_differs_the_next_version(ledger: Path) -> None:
    for _ in range(2):
        assert run(ledger, "cold start", "--volts", "12").exit_code == 0
    assert kept(ledger) == [("cold start", 1, 12.0, "")]
    done = run(ledger, "cold start", "--volts", "11.5")
    assert "version 2" in done.output
    assert kept(ledger) == [("cold start", 2, 11.5, ""), ("cold start", 1, 12.0, "")]


def test_a_version_that_is_locked_stays_as_it_is(ledger: Path) -> None:
    run(ledger, "cold start", "--volts", "12")
    before = kept(ledger)
    done = run(ledger, "cold start", "--volts", "11", "--version", "1")
    assert done.exit_code == 2
    assert "is locked and says otherwise" in done.output
    assert kept(ledger) == before


def test_a_trigger_on_amps_is_told_with_its_level(ledger: Path) -> None:
    done = run(
        ledger, "by switch", "--volts", "12", "--trigger", "amps", "--level", "0.2", "--hysteresis", "0.1", "--arm", "9"
    )
    assert "trigger on amps through 200 mA, hysteresis 100 mA" in done.output
    assert "armed for 9.00 s at most" in done.output
    assert max(map(len, done.output.splitlines())) <= 80


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "needs a NAME"),
        (("x",), "--volts"),
        (("x", "--volts", "60"), "start_test.volts: 60 V is above the program's ceiling of 42.4 V"),
        (("x", "--volts", "12", "--current", "25"), "start_test.amps: 25 A is above the program's ceiling of 20 A"),
        (("x", "--volts", "3,0"), "write it with a point"),
        (("x", "--volts", "12", "--on", "99"), "on_s: 99 is outside 0.5 to 30"),
        (("x", "--volts", "12", "--trigger", "amps"), "needs a level above zero"),
        (("x", "--volts", "nan"), "is not a number"),
        (("x", "--volts", "12", "--starts", "501"), "starts: 501"),
    ],
)
def test_what_is_refused_is_one_line_and_locks_nothing(ledger: Path, arguments: tuple[str, ...], words: str) -> None:
    done = run(ledger, *arguments)
    assert done.exit_code == 2
    assert words in done.output
    assert len(done.output.strip().splitlines()) == 1
    assert kept(ledger) == []


def test_an_empty_list_says_so(ledger: Path) -> None:
    assert run(ledger, "--list").output == "No start test yet.\n"
    assert run(ledger, "--list", "--json").output == ""
