"""`benchlog run-in`: what it refuses before anything is reached, and what it tells of a run-in that was filed."""

import json
from datetime import UTC, datetime
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.cli.jobs import command as jobs
from benchlog.cli.run_in import command, tell_run_in
from benchlog.cli.show import command as show
from benchlog.clock import VirtualClock
from benchlog.ledger.filing import Filed, file_journal
from benchlog.ledger.store import Ledger
from benchlog.ledger.warmth import warmth_of
from benchlog.outcome import Outcome
from benchlog.records import RunKind
from benchlog.recovery.start_test import RunIn
from tests.running_motor import RunningMotor, conducted, run_in_request, warming

NOBODY = "TCPIP::127.0.0.1::9::SOCKET"
BEGAN = datetime(2026, 11, 20, 8, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def filed(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Filed]:
    """A fan that was run in for seven minutes on a stand-in supply, in a ledger."""
    folder = tmp_path_factory.mktemp("run-in")
    clock = VirtualClock(start_s=100.0, utc_start=BEGAN)
    motor = RunningMotor(clock, ohm=40.0, tau_s=0.5, friction=warming(0.08, 0.03, 30.0), noise=0.0001)
    asked = RunIn(volts=12.0, at_most_s=420.0, flat_for_s=180.0, mass_g=60.0)
    journal = folder / "one.journal"
    assert conducted(motor, clock, run_in_request(journal, asked)).outcome is Outcome.RUNS
    path = folder / "workshop.ledger"
    with Ledger.open(path, clock=clock) as ledger:
        return path, file_journal(ledger, journal)


def run_in(folder: Path, *arguments: str) -> Result:
    given = ["--ledger", str(folder / "book.ledger"), *arguments]
    return CliRunner(env={"BENCHLOG_SETTINGS": ""}).invoke(command, given)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--rated-voltage", "12", "--yes"), "no supply"),
        (("--supply", NOBODY, "--yes"), "no rating: give the motor's rated volts with --rated-voltage"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--hours", "1", "--minutes", "5", "--yes"), "not both"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--hours", "25", "--yes"), "hours: 25 h"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--minutes", "0.1", "--yes"), "at_most_s"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--pace", "2", "--yes"), "pace: 2 s"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--volts", "13", "--yes"), "run_in.volts: 13 V"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--mass", "nan", "--yes"), "mass"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--mass", "0.1", "--yes"), "mass_g"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--job", "7", "--yes"), "7"),
        (("--supply", NOBODY, "--rated-voltage", "12", "--thermal-class", "Q", "--yes"), "class"),
        (("--supply", NOBODY, "--rated-voltage", "12"), "nobody at the keyboard"),
    ],
)
@pytest.mark.parametrize("as_json", [False, True])
def test_what_can_not_be_is_refused_with_a_sentence_and_no_run(
    tmp_path: Path, arguments: tuple[str, ...], says: str, as_json: bool
) -> None:
    told = run_in(tmp_path, *arguments, *(["--json"] if as_json else []))
    assert told.exit_code == 2
    assert says in told.stderr
    assert "Traceback" not in told.output
    if as_json:
        last = json.loads(told.stdout.splitlines()[-1])
        assert (last["event"], last["outcome"], last["run"]) == ("filed", "refused", None)
    if (tmp_path / "book.ledger").exists():
        with Ledger.open(tmp_path / "book.ledger") as book:
            assert book.recent_runs() == []


def test_a_filed_run_in_is_told_with_its_drift_its_restart_and_the_cold_start(
    filed: tuple[Path, Filed], capsys: pytest.CaptureFixture[str]
) -> None:
    path, one = filed
    with Ledger.open(path, clock=VirtualClock(utc_start=BEGAN.replace(hour=9))) as book:
        fields = tell_run_in(book, one, as_json=True)
        assert tell_run_in(book, one, as_json=False) == {}
    drift = fields["drift"]
    assert isinstance(drift, dict)
    assert drift["verdict"] == "falling-then-flat"
    assert drift["slope_low"] <= drift["slope_a_s"] <= drift["slope_high"]
    assert fields["warm_restart"] == "turning"
    assert str(fields["cold_start_from_utc"]).startswith("2026-11-20T12:")
    told = capsys.readouterr().out
    assert "The current fell from" in told
    assert "Warm restart: a turning rotor's voltage." in told
    assert (
        f"Start it once more when it is cold, tomorrow, or after 4 hours; then: benchlog capture --job {one.job}\n"
        in told
    )


def test_jobs_and_show_remember_the_cold_start(filed: tuple[Path, Filed]) -> None:
    path, _ = filed
    listed = CliRunner().invoke(jobs, ["--ledger", str(path)])
    assert "to be started once more, now that it is cold: benchlog capture --job 1]" in listed.stdout
    row = json.loads(CliRunner().invoke(jobs, ["--ledger", str(path), "--json"]).stdout)
    assert row["cold_start_from_utc"].startswith("2026-11-20T12:")
    assert row["runs"][0]["kind"] == RunKind.RUN_IN
    shown = CliRunner().invoke(show, ["1", "--ledger", str(path)])
    assert "To be started once more, now that it is cold: benchlog capture --job 1\n" in shown.stdout


def test_what_a_run_in_left_in_the_motor_counts_for_four_hours(filed: tuple[Path, Filed]) -> None:
    path, one = filed
    with Ledger.open(path, clock=VirtualClock(utc_start=BEGAN.replace(hour=11))) as book:
        warm = warmth_of(book, job=one.job_id, resource="test")
    assert warm.known_ohm == pytest.approx(40.0, rel=0.06)
    assert sum(pulse.rest_joules for pulse in warm.pulses) > 60.0
    assert all(pulse.over_s > 0 for pulse in warm.pulses)
    with Ledger.open(path, clock=VirtualClock(utc_start=BEGAN.replace(hour=13))) as book:
        assert warmth_of(book, job=one.job_id, resource="test").pulses == ()
