"""A window that hangs while its process lives: nobody there takes "Output off", so the lease ends by itself."""

import time
from collections.abc import Callable
from pathlib import Path

import pytest

from benchlog.bench.frames import Ended, Frame, Progress, Request
from benchlog.bench.link import Link
from benchlog.outcome import Outcome
from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import built_in
from tests.processes import BenchProcess

HUNG_S = 1.5


@pytest.mark.timeout(60)
def test_an_event_loop_that_hangs_ends_the_run_although_its_process_and_its_threads_live(tmp_path: Path) -> None:
    bench = BenchProcess(tmp_path, "hopeless")
    link = Link(
        Request(
            uid="hangs",
            kind=RunKind.RECOVERY,
            resource=bench.resource,
            rated_volts=12.0,
            layers={Layer.JOB: Limits(volts=12.0)},
            sequence=built_in("starting-ladder"),
            journal=str(tmp_path / "hangs.journal"),
            job=None,
            unattended=True,
        )
    )
    try:
        link.start()
        _turn(link, until=lambda frames: any(isinstance(f, Progress) and f.output_on for f in frames))
        hung_at_s = time.perf_counter()
        time.sleep(HUNG_S)
        ended = next(f for f in _turn(link, until=_has_ended) if isinstance(f, Ended))
        assert ended.result.outcome is Outcome.STOPPED
        assert "silent" in ended.result.reason
        assert ended.result.output_confirmed_off
        off_s = bench.off_at_s(hung_at_s)
        assert off_s is not None
        assert off_s - hung_at_s < HUNG_S
    finally:
        link.close()
        bench.close()


def _has_ended(frames: list[Frame]) -> bool:
    return any(isinstance(frame, Ended) for frame in frames)


def _turn(link: Link, until: Callable[[list[Frame]], bool]) -> list[Frame]:
    """The event loop of a window, in short."""
    for _ in range(400):
        link.renew()
        frames = link.poll()
        if until(frames):
            return frames
        time.sleep(0.05)
    raise AssertionError("it did not come to that")
