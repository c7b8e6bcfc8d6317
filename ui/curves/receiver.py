"""A run that captures starts, as it goes: the start being read is drawn as it comes, its figures when it is over."""

import numpy as np
from PySide6.QtCore import QObject, Signal

from benchlog.bench.frames import Progress, Question, Request
from benchlog.motor.start_figures import figures_from_event
from benchlog.outcome import RunResult
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.start_test import StartTest
from ui import curve_texts as texts
from ui import sayings
from ui.charts.overlay_lines import Line
from ui.curves.room import CHART_PAGE, CurvesRoom

LONGER = 1.15
"""Times a start's own length that is drawn of it while it is read: the look after it is no part of it."""
_SPOKEN = frozenset(
    {EventKind.STEP, EventKind.TRIP, EventKind.RESCUE, EventKind.REST}
    | {EventKind.LOOK, EventKind.FINDING, EventKind.NOTE}
)


class Capturing(QObject):
    """Takes a run's frames in the place of a stage's view. `over` carries how it ended."""

    over = Signal(object)
    rungs = None

    def __init__(self, room: CurvesRoom, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.kind = RunKind.START_UP
        self._room = room
        self._test: StartTest | None = None
        self._readings: list[tuple[float, float, float]] = []
        self._began_s: float | None = None
        self._number, self.captured = 0, 0

    def begin(self, request: Request) -> None:
        chart = self._room.chart
        self._test, self._began_s, self._number, self.captured = request.start_test, None, 0, 0
        self._readings.clear()
        self._room.show_page(CHART_PAGE)
        chart.plot.pick(None)
        chart.plot.show_before([])
        chart.plot.show_filled_in(None)
        if self._test is not None:
            chart.plot.expect(self._test.before_s, self._test.on_s)
            chart.plot.set_trigger(texts.trigger_words(self._test.trigger.value))
        chart.plot.characters = False  # who types now means the next serial
        chart.plot.setFocus()  # not a field, which would take the space bar; and no button, which it would press
        chart.say(*texts.BEGINNING)

    def show_progress(self, progress: Progress) -> None:
        test = self._test
        if test is None:
            return
        self._readings += zip(progress.t_s, progress.volts, progress.amps, strict=True)
        if self._began_s is None:
            self._readings = [one for one in self._readings if one[0] >= self._readings[-1][0] - test.before_s - 0.5]
            return
        self._room.chart.plot.show_live(self._line(self._began_s, LONGER * test.on_s, texts.live_name(self._number)))

    def show_event(self, event: Event) -> None:
        chart, number = self._room.chart, event.values.get("number")
        if event.kind is EventKind.STEP and isinstance(number, int) and self._test is not None:
            self._began_s, self._number = event.t_s, number
            chart.plot.pick(None)
            chart.say(texts.CAPTURING_SAY.format(number=number, count=self._test.starts), texts.CAPTURING_WHY)
        elif event.kind is EventKind.START and isinstance(number, int):
            self._captured(event, number)
        elif event.kind in _SPOKEN:
            why = event.values.get("why")
            chart.say(sayings.sentence(event.text), sayings.sentence(str(why)) if why else texts.CAPTURING_WHY)

    def _captured(self, event: Event, number: int) -> None:
        chart, test = self._room.chart, self._test
        trigger_s = event.values.get("trigger_s")
        if isinstance(trigger_s, int | float) and test is not None:
            line = self._line(float(trigger_s), test.on_s, texts.live_name(number))
            if line.t_s.size > 1:
                chart.plot.add_start(line)
        chart.plot.show_live(None)
        self._began_s = None
        self.captured += 1
        self._room.side.figures.show_start(figures_from_event(event), number)
        chart.say(sayings.sentence(event.text), sayings.sentence(str(event.values.get("why") or "")))

    def _line(self, trigger_s: float, on_s: float, name: str) -> Line:
        before_s = self._test.before_s if self._test is not None else 0.0
        rows = np.array(self._readings, dtype=np.float64).reshape(-1, 3)
        t_s = rows[:, 0] - trigger_s
        kept = (t_s >= -before_s) & (t_s <= on_s)
        return Line(name=name, t_s=t_s[kept], volts=rows[kept, 1], amps=rows[kept, 2])

    def ask(self, question: Question) -> None:
        self._room.chart.question.ask(question)

    def end(self, result: RunResult) -> None:
        chart = self._room.chart
        chart.question.withdraw()
        chart.plot.show_live(None)
        if self._test is None:
            chart.say(*sayings.ended_sentences(RunKind.LEADS, result))
            self.over.emit(result)
            return
        whole = self.captured >= self._test.starts
        _, why = sayings.ended_sentences(RunKind.START_UP, result)
        reason = texts.FILED_WHY if whole and result.output_confirmed_off else why
        chart.say(texts.ended_say(self.captured, whole=whole), reason)
        self.over.emit(result)
