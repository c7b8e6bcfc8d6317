"""The held key with real processes: let go, hung and killed, while current flows under the hand."""

import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from benchlog.bench.frames import HELD_S, RENEW_EVERY_S, Ended, Frame, Question, Request
from benchlog.bench.link import Link
from benchlog.outcome import Outcome
from benchlog.records import RunKind
from benchlog.recovery.by_hand import STILL_STUCK
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import built_in
from tests.processes import BenchProcess, wait_until

BUSY_S = 0.4
"""s more than promised that a busy machine may take; what is promised is measured in the campaign, in virtual time."""


class Held:
    """A run with the hand on the shaft, its event loop turned by the test."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.bench = BenchProcess(folder, "hopeless")
        self.link = self._link("held")
        self.frames: list[Frame] = []
        self.down = False

    def _link(self, uid: str) -> Link:
        return Link(
            Request(
                uid=uid,
                kind=RunKind.HAND,
                resource=self.bench.resource,
                rated_volts=12.0,
                layers={Layer.JOB: Limits(volts=12.0)},
                sequence=built_in("starting-ladder"),
                journal=str(self.folder / f"{uid}.journal"),
                job=None,
            )
        )

    def begin(self) -> None:
        """Until the run waits for the key. One that a machine too busy to renew its lease has ended is begun anew."""
        for again in range(3):
            self.link.start()
            self.turn(lambda: any(isinstance(frame, Question | Ended) for frame in self.frames))
            if not any(isinstance(frame, Ended) for frame in self.frames):
                return
            self.link.close()
            self.frames = []
            self.link = self._link(f"held-{again}")
        raise AssertionError("no run came to its question")

    def turn(self, until: Callable[[], object], within_s: float = 30.0) -> None:
        """A window's event loop, in short."""
        until_s, told_s = time.perf_counter() + within_s, 0.0
        while time.perf_counter() < until_s:
            if time.perf_counter() - told_s >= RENEW_EVERY_S:
                self.link.renew()
                if self.down:
                    self.link.hold(True)
                told_s = time.perf_counter()
            self.frames += self.link.poll()
            if until():
                return
            time.sleep(0.01)
        raise AssertionError(f"not within {within_s} s")

    def press(self) -> None:
        """Until current flows under the held key."""
        self.begin()
        self.down = True
        self.link.hold(True)
        self.turn(self.bench.is_driving)

    def stopped_driving_s(self, since_s: float) -> float:
        """s after an instant at which the output was switched off."""
        found = wait_until(lambda: self.bench.off_at_s(since_s))
        assert isinstance(found, float)
        return found - since_s


@pytest.fixture
def held(tmp_path: Path) -> Iterator[Held]:
    made = Held(tmp_path)
    try:
        yield made
    finally:
        made.link.close()
        made.bench.close()


@pytest.mark.timeout(90)
def test_letting_go_is_off_and_the_run_goes_on(held: Held) -> None:
    held.press()
    since_s = time.perf_counter()
    held.down = False
    held.link.hold(False)
    held.turn(lambda: held.bench.off_at_s(since_s))
    assert held.stopped_driving_s(since_s) < BUSY_S
    question = next(frame for frame in held.frames if isinstance(frame, Question))
    held.link.answer(question.id, STILL_STUCK)
    held.turn(lambda: any(isinstance(frame, Ended) for frame in held.frames))
    ended = next(frame for frame in held.frames if isinstance(frame, Ended))
    assert (ended.result.outcome, ended.result.output_confirmed_off) == (Outcome.STILL_STUCK, True)
    amps = [reading["true_amps"] for reading in held.bench.readings()]
    # a quarter of what 5 Ω draw at 12 V, and what the output capacitor adds as the rotor is held
    assert 0.2 * 12.0 / 5.0 < max(amps) < 0.3 * 12.0 / 5.0


@pytest.mark.timeout(90)
def test_a_window_that_hangs_with_the_key_down_is_off_before_its_lease_ends(held: Held) -> None:
    held.press()
    since_s = time.perf_counter()  # nothing is said from here on
    off_s = held.stopped_driving_s(since_s)
    assert off_s < HELD_S + BUSY_S
    time.sleep(0.5)
    assert held.bench.off_at_s(since_s) is not None, "and it stays off"
