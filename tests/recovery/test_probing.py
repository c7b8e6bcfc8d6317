"""The probe on supplies that are slow: what its levels may come to where each of them is long."""

from pathlib import Path

import pytest

from benchlog.outcome import Outcome
from benchlog.records import EventKind
from tests.conftest import events_of
from tests.recovery.slow_bench import SlowBench, easy


def probe_volts(tmp_path: Path, rated_volts: float, dialect: str, *habits: str) -> float:
    """Of the probe in a run that ended in order."""
    run = SlowBench(easy(rated_volts), dialect, habits).climb(tmp_path / "run.journal")
    assert run.result.outcome in (Outcome.STILL_STUCK, Outcome.UNDETERMINED), run.result.reason
    (step,) = (event for event in events_of(run, EventKind.STEP) if event.values["name"] == "probe")
    return float(step.values["volts"] or 0.0)


def test_on_a_very_slow_supply_the_probe_of_a_small_motor_stays_within_the_ceiling_for_locked_time(
    tmp_path: Path,
) -> None:
    assert 0.5 < probe_volts(tmp_path, 1.9, "terse-serial", "slow") < 1.2


def test_on_a_quick_supply_the_probe_comes_to_what_the_sequence_asks(tmp_path: Path) -> None:
    assert probe_volts(tmp_path, 1.9, "scpi-1999") == pytest.approx(1.9)
