"""What the loop shows, gathered into frames some 30 times a second."""

from collections.abc import Callable

from benchlog.bench.frames import Frame, Happened, Progress, Question, Used
from benchlog.bench.loop import Screen
from benchlog.motor.motion import Motion
from benchlog.records import Event
from benchlog.recovery.commands import Apply, Ask
from benchlog.recovery.guard import Guard
from drivers.supply import Reading

FRAME_EVERY_S = 1 / 30


class Reporter:
    """Turns readings, events and questions into frames for `emit`, which must not block."""

    def __init__(self, emit: Callable[[Frame], None], guard: Guard, zero_s: float) -> None:
        self._emit, self._guard, self._zero_s = emit, guard, zero_s
        self._t_s: list[float] = []
        self._volts: list[float] = []
        self._amps: list[float] = []
        self._framed_s = zero_s

    @property
    def screen(self) -> Screen:
        return Screen(reading=self.reading, event=self.event, question=self.question)

    def reading(self, reading: Reading, applied: Apply) -> None:
        self._t_s.append((reading.sent_s + reading.received_s) / 2 - self._zero_s)
        self._volts.append(reading.volts)
        self._amps.append(reading.amps)
        if reading.received_s - self._framed_s >= FRAME_EVERY_S:
            self._flush(reading, applied)

    def event(self, event: Event) -> None:
        self._emit(Happened(event=event))

    def question(self, number: int, ask: Ask) -> None:
        self._emit(Question(id=number, text=ask.text, choices=list(ask.choices)))

    def _flush(self, reading: Reading, applied: Apply) -> None:
        passed_s = reading.received_s - self._framed_s
        resting = applied.volts == 0.0 or not reading.output_on
        self._emit(
            Progress(
                t_s=self._t_s,
                volts=self._volts,
                amps=self._amps,
                set_volts=reading.set_volts,
                set_amps=reading.set_amps,
                regulation=reading.regulation.value,
                output_on=reading.output_on,
                motion=Motion.RESTING if resting else applied.belief,
                used=self._used(reading),
                kicks=self._guard.budget.kicks,
                readings_per_s=len(self._t_s) / passed_s,
            )
        )
        self._t_s, self._volts, self._amps = [], [], []
        self._framed_s = reading.received_s

    def _used(self, reading: Reading) -> list[Used]:
        """Volts and amps: the highest since the last frame, or a peak between two would never be shown."""
        ceilings, budget, at_s = self._guard.ceilings, self._guard.budget, reading.received_s
        return [
            Used(name, value, bound.value, bound.layer)
            for name, value, bound in (
                ("volts", max(self._volts), ceilings.volts),
                ("amps", max(self._amps), ceilings.amps),
                ("winding_c", budget.winding_c(at_s), ceilings.winding_c),
                ("locked_s", budget.locked_s(at_s), ceilings.locked_s),
                ("energy_j", budget.energy_j(at_s), ceilings.energy_j),
                ("on_s", self._guard.driven_s(at_s), ceilings.on_s),
                ("kicks", budget.kicks, ceilings.kicks),
            )
        ]
