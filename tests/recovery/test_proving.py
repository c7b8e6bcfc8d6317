"""Starts from rest: the winding has to be there before each, or nothing is switched on that could start it."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from benchlog.bench.frames import Frame, Happened
from benchlog.bench.journal import read_journal
from benchlog.outcome import Outcome
from benchlog.records import EventKind, RunKind
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import ResistorData, Scenario, load
from tests.conftest import BEGAN


class Opening(list[Frame]):
    """Frames; when the first start has been looked at, what hangs on the terminals gives way to `then`."""

    def __init__(self, bench: VirtualBench, then: Scenario) -> None:
        super().__init__()
        self._bench, self._then = bench, then
        self.opened_s = 0.0

    def append(self, frame: Frame) -> None:
        super().append(frame)
        if isinstance(frame, Happened) and frame.event.kind is EventKind.LOOK and frame.event.values.get("start") == 1:
            self._bench.bench.hang(self._then)
            self.opened_s = frame.event.t_s


def leak(ohms: float) -> Scenario:
    """What an opened protector still passes."""
    return replace(load("short"), name=f"leak of {ohms}", resistor=ResistorData(ohms=ohms))


@pytest.mark.parametrize("ohms", [120.0, 1000.0, 1e6])
def test_a_protector_that_opened_after_the_first_start_is_driven_no_more(tmp_path: Path, ohms: float) -> None:
    bench = VirtualBench(load("free"), seed=5, began=BEGAN)
    bench.frames = frames = Opening(bench, leak(ohms))
    run = bench.run(bench.request(tmp_path / "run.journal", RunKind.PROOF, starts=3))
    assert run.result.outcome is Outcome.UNDETERMINED
    assert "it started 1 of 3 times from rest; 2 could not be told" in run.result.reason
    kept = read_journal(run.journal)
    looks = {event.values["start"]: event for event in kept.events if "start" in event.values}
    assert [str(looks[number].values["why"]).startswith("before the start only") for number in (1, 2, 3)] == [
        False,
        True,
        True,
    ]
    later = kept.trace.volts[kept.trace.t_s > frames.opened_s + 1.5]
    assert frames.opened_s > 0.0
    assert later.max() < 0.6 * bench.scenario.rated_volts  # no more than the small look before a start may take
