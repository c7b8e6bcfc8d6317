"""Frames of the bench's own plan, in virtual time, shown as they come: what is drawn is what was read."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from benchlog.bench.frames import Happened, Progress
from benchlog.outcome import Outcome
from benchlog.records import EventKind, RunKind
from benchlog.recovery.start_test import StartTest
from benchlog.recovery.steps import Sequence
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load
from ui import curve_texts as texts
from ui import theme
from ui.curves.receiver import Capturing
from ui.curves.room import CHART_PAGE, CurvesRoom

TEST = StartTest(name="cold start", volts=6.0, on_s=0.8, starts=2, rest_s=0.5)


def test_a_capture_of_the_bench_is_drawn_start_by_start_with_its_figures(qtbot: QtBot, tmp_path: Path) -> None:
    room = CurvesRoom(theme.LIGHT)
    qtbot.addWidget(room)
    bench = VirtualBench(load("free"), seed=1, began=datetime(2026, 11, 25, 8, tzinfo=UTC))
    request = bench.request(
        tmp_path / "a.journal", RunKind.START_UP, start_test=TEST, sequence=Sequence(name="start-up")
    )
    ran = bench.run(request)
    receiver = Capturing(room)
    over: list[object] = []
    receiver.over.connect(over.append)
    receiver.begin(request)
    plot, live = room.chart.plot, 0
    starts = []
    for frame in ran.frames:
        if isinstance(frame, Progress):
            receiver.show_progress(frame)
            if max(frame.volts, default=0.0) > 0.2:  # the output is on, and the probe begins
                assert room.chart.say_label.text() != texts.BEGINNING[0]
            live = max(live, 0 if plot.shown.live is None else plot.shown.live.t_s.size)
        elif isinstance(frame, Happened):
            receiver.show_event(frame.event)
            if frame.event.kind is EventKind.START:
                starts.append(frame.event)
                # the largest reading that is drawn is the one that the bench told
                assert plot.shown.crowd[-1].amps.max() == pytest.approx(
                    float(starts[-1].values["peak_amps"] or 0), abs=0.01
                )
    receiver.end(ran.result)
    assert ran.result.outcome is Outcome.RUNS
    assert room.page == CHART_PAGE
    assert [line.name for line in plot.shown.crowd] == ["start 1", "start 2"]
    assert live > 30
    for line in plot.shown.crowd:
        assert -TEST.before_s <= line.t_s[0] < 0
        assert 0.6 < line.t_s[-1] <= TEST.on_s
    assert room.side.figures.texts()[0][1].endswith("mA")
    assert room.chart.say_label.text() == "2 starts captured."
    assert over == [ran.result]
