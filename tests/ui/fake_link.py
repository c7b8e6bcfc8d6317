"""A link that replays a scripted run, and keeps the same journal that the bench would have kept."""

from pathlib import Path

import msgspec

from benchlog.bench.frames import Ended, Frame, Happened, Progress, Question, Request, Used
from benchlog.bench.journal import Begun, Ending, Happening, Journal, Sample
from benchlog.outcome import Outcome, RunResult
from benchlog.records import FLAG_CC, FLAG_ON, TICK_S, Event, EventKind
from benchlog.recovery.ceilings import Layer, Limits, intersect
from tests.ui.fake_script import SCRIPTS, Sampled

START_UTC = "2026-11-25T14:03:00.000Z"


class FakeLink:
    """Each poll plays `per_poll_s` of the script. `confirms`: whether off is read back at the end."""

    def __init__(
        self, request: Request, *, scenario: str = "freed", per_poll_s: float = 0.1, confirms: bool = True
    ) -> None:
        self.request = request
        self.per_poll_s = per_poll_s
        self.confirms = confirms
        self.stops: list[str] = []
        self.answers: list[tuple[int, str]] = []
        self.notes: list[str] = []
        self.holds: list[bool] = []
        self.renewed = 0
        self.closed = False
        self.hold_back_end = False
        """Plays a bench that does not answer."""
        self.spoil_journal = False
        """Plays a disk that loses the record's head."""
        self._script = SCRIPTS[request.kind](request, scenario)
        self._samples: list[Sampled] = []
        self._events: list[Event] = []
        self._until_s = 0.0
        self._now_s = 0.0
        self._waiting: Question | None = None
        self._answer: str | None = None
        self._fresh_events: list[Event] = []
        self._ended = False
        self.started_utc = START_UTC

    def start(self) -> None:
        self._now_s = 0.0

    def renew(self) -> None:
        self.renewed += 1

    def stop(self, reason: str = "output off was pressed") -> None:
        self.stops.append(reason)

    def answer(self, question: int, choice: str) -> None:
        self.answers.append((question, choice))
        self._answer = choice

    def note(self, text: str, *, hand: bool = True, moved: bool = False) -> None:
        self.notes.append(text)
        kind = EventKind.MOVED if moved else EventKind.HAND if hand else EventKind.NOTE
        self._fresh_events.append(Event(t_s=self._now_s, kind=kind, text=text))

    def hold(self, down: bool) -> None:
        self.holds.append(down)

    def close(self) -> None:
        self.closed = True

    def poll(self) -> list[Frame]:
        if self._ended:
            return []
        frames: list[Frame] = [self._keep(event) for event in self._fresh_events]
        self._fresh_events.clear()
        if self.stops:
            return frames if self.hold_back_end else [*frames, self._end(self._stopped())]
        played = len(self._samples)
        self._until_s = self._now_s + self.per_poll_s
        result = self._play(frames)
        fresh = self._samples[played:]
        if fresh:
            frames.append(self._progress(fresh))
        if result is not None:
            frames.append(self._end(result))
        return frames

    def _play(self, frames: list[Frame]) -> RunResult | None:
        """Items up to the next stop of time, a question, or the end."""
        if self._waiting is not None and self._answer is None:
            return None
        while self._now_s < self._until_s:
            try:
                item = next(self._script) if self._answer is None else self._script.send(self._answer)
            except StopIteration as stop:
                result: RunResult = stop.value
                return result
            self._answer, self._waiting = None, None
            match item:
                case Sampled():
                    self._samples.append(item)
                    self._now_s = item.t_s
                case Event():
                    frames.append(self._keep(item))
                case Question():
                    self._waiting = item
                    frames.append(item)
                    return None
        return None

    def _keep(self, event: Event) -> Happened:
        self._events.append(event)
        return Happened(event=event)

    def _progress(self, fresh: list[Sampled]) -> Progress:
        last = fresh[-1]
        energy_j = sum(s.volts * s.amps for s in self._samples[-3000:]) * 0.02
        locked_s = sum(s.motion == "locked" for s in self._samples[-600:]) * 0.02
        kicks = sum(event.kind is EventKind.KICK for event in self._events)
        ceilings = intersect(self.request.layers | {Layer.SUPPLY: Limits(volts=60.0, amps=5.0)})
        spent = {
            "volts": last.volts,
            "amps": last.amps,
            "winding_c": 25.0 + energy_j / 2.5,
            "locked_s": locked_s,
            "energy_j": energy_j,
            "on_s": 0.2 if last.set_volts > 0 else 0.0,
            "kicks": kicks,
        }
        bounds = {name: getattr(ceilings, name) for name in spent}
        used = [Used(name, value, bounds[name].value, bounds[name].layer) for name, value in spent.items()]
        return Progress(
            t_s=[s.t_s for s in fresh],
            volts=[s.volts for s in fresh],
            amps=[s.amps for s in fresh],
            set_volts=last.set_volts,
            set_amps=1.46,
            regulation="CC" if last.motion == "locked" else "CV",
            output_on=last.on,
            motion=last.motion,
            used=used,
            kicks=kicks,
            readings_per_s=50.0,
        )

    def _stopped(self) -> RunResult:
        return RunResult(outcome=Outcome.STOPPED, reason=self.stops[0], output_confirmed_off=True)

    def _end(self, result: RunResult) -> Ended:
        self._ended = True
        result = msgspec.structs.replace(result, output_confirmed_off=self.confirms)
        with Journal(Path(self.request.journal), sync_thread=False) as journal:
            journal.write(Begun(self.request, self.started_utc, "test"))
            for sample in self._samples:
                journal.write(_block(sample))
            for event in self._events:
                journal.write(Happening(event))
            journal.write(Ending(result, self._now_s))
        if self.spoil_journal:
            Path(self.request.journal).write_bytes(b"not a journal")
        return Ended(result=result, journal=self.request.journal)


def _block(sample: Sampled) -> Sample:
    tick = round(sample.t_s / TICK_S)
    flags = (FLAG_ON if sample.on else 0) | (FLAG_CC if sample.motion == "locked" else 0)
    return Sample(tick, tick + 100, sample.volts, sample.amps, sample.set_volts, 1.46, flags)
