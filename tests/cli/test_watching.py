"""Signals while a run is watched from the terminal."""

import os
import signal
from typing import cast

import pytest

from benchlog.bench.frames import Ended, Frame
from benchlog.bench.link import Link
from benchlog.cli.watching import Stopper, signals_to, watch
from benchlog.outcome import Outcome, RunResult


class WritingLink:
    """A link whose pipe may not be written to from within a write, which is when the signal comes."""

    def __init__(self, number: int) -> None:
        self._number, self._writing, self.reasons = number, False, list[str]()

    def start(self) -> None:
        pass

    def renew(self) -> None:
        self._write(lambda: os.kill(os.getpid(), self._number))

    def stop(self, reason: str) -> None:
        self._write(lambda: self.reasons.append(reason))

    def _write(self, what: object) -> None:
        assert not self._writing, "written to from within a write"
        self._writing = True
        assert callable(what)
        what()
        self._writing = False

    def poll(self) -> list[Frame]:
        ended = Ended(result=RunResult(outcome=Outcome.STOPPED, reason="stopped"), journal=None)
        return [ended] if self.reasons else []

    def close(self) -> None:
        pass


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_signal_in_the_middle_of_a_write_to_the_bench_process_is_a_stop_all_the_same(number: int) -> None:
    link = WritingLink(number)
    with signals_to(Stopper()) as stopper:
        ended = watch(cast(Link, link), stopper, as_json=True)
    assert ended.result.outcome is Outcome.STOPPED
    assert len(link.reasons) == 1


def test_a_signal_from_before_the_run_stops_it() -> None:
    link = WritingLink(signal.SIGTERM)
    with signals_to(Stopper()) as stopper:
        os.kill(os.getpid(), signal.SIGTERM)
        watch(cast(Link, link), stopper, as_json=True)
    assert link.reasons == ["the terminal was told to end"]
