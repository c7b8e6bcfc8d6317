"""A loop that waits for a slow reading: it says that it lives, and a stop or a silent window ends the wait at once."""

import itertools
import threading
from collections.abc import Callable
from pathlib import Path

import pytest

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import LEASE_S, Renew
from benchlog.bench.journal import Journal, read_journal
from benchlog.bench.lease import Lease
from benchlog.bench.rescue import BEAT_EVERY_S
from benchlog.clock import VirtualClock
from benchlog.outcome import Outcome, RunResult
from benchlog.recovery.start_test import RunIn
from demo_db.virtual import HeldLease
from drivers.supply import Capabilities
from tests.running_motor import REPLY_S, RunningMotor, run_in_request

SILENCE_S = 0.5
"""s of silence that the waiting process takes for death; see rescue.Charge.silence_s."""


class Watched(VirtualClock):
    """Tells of every wait before it is over."""

    def __init__(self, told: Callable[[float], None]) -> None:
        super().__init__(start_s=100.0)
        self._told = told

    def wait(self, until_s: float, wake: threading.Event | None = None) -> None:
        self._told(until_s)
        super().wait(until_s, wake)


def run(
    folder: Path, clock: VirtualClock, lease: Lease, beat: Callable[[], None], *, pace_s: float = 1.0
) -> tuple[RunResult, Path]:
    motor = RunningMotor(clock, ohm=40.0, tau_s=0.5, friction=lambda ran_s: 0.03)
    asked = RunIn(volts=12.0, at_most_s=60.0, pace_s=pace_s, mass_g=60.0, restart=False)
    journal = folder / "waiting.journal"
    conductor = Conductor(
        run_in_request(journal, asked),
        clock=clock,
        lease=lease,
        emit=lambda frame: None,
        beat=beat,
        going_off=lambda: None,
        journal=Journal(journal, sync_thread=False),
    )

    def armed(capabilities: Capabilities) -> None:
        assert capabilities.reply_s == REPLY_S

    return conductor.run(lambda: motor, armed), journal


@pytest.mark.parametrize("pace_s", [1.0, 0.3])
def test_it_beats_while_it_waits_far_oftener_than_silence_is_borne(tmp_path: Path, pace_s: float) -> None:
    beats: list[float] = []
    clock = VirtualClock(start_s=100.0)
    result, journal = run(tmp_path, clock, HeldLease(clock), lambda: beats.append(clock.now()), pace_s=pace_s)
    assert result.outcome is Outcome.RUNS
    gaps = [later - earlier for earlier, later in itertools.pairwise(beats)]
    assert max(gaps) <= 2 * BEAT_EVERY_S + REPLY_S + 0.001 < SILENCE_S / 2
    sent_s = read_journal(journal).trace.t_s
    assert max(sent_s[1:] - sent_s[:-1]) < pace_s + 2 * REPLY_S


def test_a_stop_ends_the_wait_and_not_only_the_next_reading(tmp_path: Path) -> None:
    stopped_s: list[float] = []

    def told(until_s: float) -> None:
        if clock.now() > 140.0 and not stopped_s:
            stopped_s.append(clock.now())
            lease.end("output off was pressed")

    clock = Watched(told)
    lease = HeldLease(clock)
    result, journal = run(tmp_path, clock, lease, lambda: None)
    assert result.outcome is Outcome.STOPPED
    assert result.output_confirmed_off
    assert clock.now() - stopped_s[0] < 0.1
    assert read_journal(journal).ending is not None


def test_a_window_that_falls_silent_ends_the_wait_with_its_lease(tmp_path: Path) -> None:
    last_s = [100.0]

    def told(until_s: float) -> None:
        if clock.now() < 140.0:
            last_s[0] = clock.now()
            lease.take(Renew())

    clock = Watched(told)
    lease = Lease(clock)
    result, _ = run(tmp_path, clock, lease, lambda: told(0.0))
    assert result.outcome is Outcome.STOPPED
    assert "silent" in result.reason
    assert LEASE_S <= clock.now() - last_s[0] < LEASE_S + 0.1
