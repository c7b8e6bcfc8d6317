"""A run from its button to its filing: what is asked of the bench process, and where its frames are shown."""

import logging
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication

from benchlog.bench.frames import Ended, Progress, Question, Request
from benchlog.errors import JournalDamaged, LedgerError, Refused
from benchlog.ledger.filing import file_journal
from benchlog.ledger.measured import measured_start, others_of
from benchlog.ledger.store import Ledger
from benchlog.motor.compare import compare
from benchlog.outcome import Outcome, RunResult
from benchlog.records import STAGE_OF, EntryKind, Event, RunKind, Stage
from benchlog.recovery.steps import built_in
from ui import retelling, sayings, texts
from ui.alarms import What
from ui.bench_job import BenchJob
from ui.bench_keys import BenchKeys
from ui.facts import FootFacts
from ui.live_run import LinkFactory, LiveRun
from ui.main_window import MainWindow
from ui.notice import Notice
from ui.off_state import OffEvent
from ui.off_watch import OffWatch
from ui.run_request import request_for
from ui.stages.run_view import RunView

_log = logging.getLogger(__name__)
SEQUENCE = "starting-ladder"


@contextmanager
def minding_the_ledger(notice: Notice) -> Iterator[None]:
    """What the ledger, the disk or a rule refuses is said on the window; the window goes on."""
    try:
        yield
    except (LedgerError, JournalDamaged, OSError) as error:
        _log.error("the ledger: %s", error)
        notice.tell(texts.LEDGER_TROUBLE.format(what=retelling.told(str(error))), What.LEDGER)
    except Refused as refusal:
        notice.tell(sayings.sentence(str(refusal)), What.REFUSED)


class Receiver(Protocol):
    """Where a run is shown: the view of a stage, or the curves room."""

    def begin(self, request: Request) -> None: ...
    def show_progress(self, progress: Progress) -> None: ...
    def show_event(self, event: Event) -> None: ...
    def ask(self, question: Question) -> None: ...
    def end(self, result: RunResult) -> None: ...


class Running(QObject):
    """At most one run is on. `began` and `ended` tell when what can be pressed has changed; `filed` where a run went,
    and its kind, before `ended`."""

    began = Signal(Stage)
    filed = Signal(object, RunKind)
    ended = Signal()

    def __init__(
        self, window: MainWindow, ledger: Ledger, bench: BenchJob, facts: FootFacts, link_factory: LinkFactory
    ) -> None:
        super().__init__(window)
        self.window, self.ledger, self.bench, self.facts = window, ledger, bench, facts
        self.live = LiveRun(link_factory, self)
        self.off = OffWatch(self)
        self.keys = BenchKeys(self)
        self.keys.held.connect(self.live.hold)
        self.keys.moved.connect(self.moved)
        self.ladder = built_in(SEQUENCE)
        self.sequence = self.ladder
        """What the next recovery climbs: the ladder, unless another was taken over for this job."""
        self._kicks, self._flowing = 0, False
        self._receiver: Receiver | None = None
        self.asking: Callable[[], bool] = lambda: False
        """Whether a supply is being asked what it is: it hears one voice at a time."""
        self.beep: Callable[[], None] = QApplication.beep
        self.live.progressed.connect(self._on_progress)
        self.live.happened.connect(self._on_event)
        self.live.asked.connect(self._on_question)
        self.live.ended.connect(self._on_ended)
        self.off.changed.connect(lambda state, words: window.panel.show_off(state, words, self.off.seen))
        self.off.changed.connect(facts.output_state)

    # what is asked of it

    @property
    def may_be_on(self) -> bool:
        """Whether an output may be on: a run is, or the last one was not confirmed off."""
        return self.live.on or not self.off.may_begin

    def in_the_way(self) -> bool:
        """Whether a run is on; then that is said."""
        if self.live.on:
            self.window.notice.tell(texts.NOT_WHILE_ON)
        return self.live.on

    def begin(self, kind: RunKind) -> None:
        """Begins a run, or says what stands in the way."""
        job, notice = self.bench.job, self.window.notice
        if job is None or self.in_the_way():
            return
        setting = self.window.intake.setting()
        problem = self.window.intake.setting_problem() or ("" if setting.resource else texts.NEEDS_SUPPLY)
        if not self.off.may_begin:
            notice.tell(texts.ACKNOWLEDGE_FIRST, What.ACKNOWLEDGE_FIRST)
            return
        if problem:
            notice.tell(problem, What.NEEDED)
            return
        with minding_the_ledger(notice):
            starts = self.window.prove.starts()
            _, owner = self.bench.owner()
            request = request_for(kind, job, setting, self.sequence, self.ledger, owner=owner, starts=starts)
            if self.launch(request, self.window.view_of(kind)):
                self.window.free.show_run(kind)
                self.began.emit(STAGE_OF[kind])

    def launch(self, request: Request, receiver: Receiver) -> bool:
        """Begins what is asked, shown by `receiver`; False where it could not be begun, which is said.

        The caller has seen that nothing is in the way, and that the output is known to be off.
        """
        if self.asking():
            self.window.notice.tell(texts.NOT_WHILE_ASKING)
            return False
        if problem := self.window.intake.address_problem(request.resource, request.output):
            self.window.notice.tell(problem, What.NEEDED)
            return False
        try:
            self.live.begin(request)
        except OSError as error:
            self.window.notice.tell(texts.NO_START.format(what=retelling.told(str(error))), What.NO_START)
            return False
        self._receiver = receiver
        self.off.tell(OffEvent.BEGAN)
        self.window.notice.put_away()
        self.window.panel.show_run()
        receiver.begin(request)
        self._kicks, self._flowing = request.kicks_today, False
        self.keys.heed(listening=STAGE_OF[request.kind] is Stage.FREE, armed=request.kind is RunKind.HAND)
        return True

    def output_off(self, reason: str = "") -> None:
        """From the button, the keys, a fault or the closing of the window; as often as one likes."""
        self.live.stop(reason or texts.STOP_PRESSED)
        if self.live.on:
            self.off.tell(OffEvent.PRESSED)

    def hand_step(self, step: str) -> None:
        """Into the running trace; between runs, into the job's own record."""
        told = texts.HAND_NOTED.format(step=step)
        if self.live.on:
            self.live.note(told)
            return
        with minding_the_ledger(self.window.notice):
            self.bench.keep(Stage.FREE, told, EntryKind(step))
            self.window.free.say_kept(told)

    def note(self, text: str) -> None:
        """A line into the running trace; between runs, into the job's own record."""
        if self.live.on:
            self.live.note(text, hand=False)
            return
        with minding_the_ledger(self.window.notice):
            self.bench.keep(Stage.FREE, texts.NOTE_KEPT.format(text=text))
            self.window.free.say_kept(text)

    def moved(self) -> None:
        """The operator felt or saw it move."""
        self.live.note(texts.MOVED_NOTED, hand=False, moved=True)

    # what it shows

    def _on_progress(self, progress: Progress) -> None:
        view = self._receiver
        if view is not None:
            view.show_progress(progress)
        if isinstance(view, RunView):
            rung = view.rungs.here if view.rungs is not None else 0
            kicks = sayings.kicks_text(progress.kicks)
            words = texts.LIVE_FOUND.format(rung=rung, kicks=kicks) if rung else texts.LIVE_FOUND_PLAIN
            self.window.rail.say_live(STAGE_OF[view.kind], words)
        self._tick(progress)
        self.window.panel.show_progress(progress)
        self.facts.progress(progress)
        self.off.output_seen(progress.output_on)

    def _tick(self, progress: Progress) -> None:
        """One for each kick, and one as current begins to flow under a held key: eyes can stay on the shaft."""
        flowing = self.keys.armed and progress.output_on and progress.set_volts > 0
        if progress.kicks > self._kicks or (flowing and not self._flowing):
            self.beep()
        self._kicks, self._flowing = progress.kicks, flowing

    def _on_event(self, event: Event) -> None:
        if self._receiver is not None:
            self._receiver.show_event(event)

    def _on_question(self, question: Question) -> None:
        if self._receiver is not None:
            self._receiver.ask(question)

    def _on_ended(self, ended: Ended) -> None:
        self.keys.heed(listening=False, armed=False)
        self.off.tell(_off_event(ended))
        self.window.panel.rest()
        self.facts.ended()
        if self._receiver is not None:
            self._receiver.end(ended.result)
        with minding_the_ledger(self.window.notice):
            if ended.journal is not None and self.live.request is not None:
                filed = file_journal(self.ledger, Path(ended.journal))
                self.facts.filed(filed.job)
                self.filed.emit(filed, self.live.request.kind)
            self.bench.reload()
            self.show_measured()
        self.ended.emit()

    def show_measured(self) -> None:
        """Of the job's last proof, if it has a measured start."""
        proofs = [run for run in self.bench.runs if run.kind is RunKind.PROOF]
        measured = measured_start(self.ledger, proofs[-1]) if proofs else None
        if measured is None or self.bench.job is None:
            self.window.prove.show_measured(None, "", None)
            return
        words, others = others_of(self.ledger, proofs[-1], self.bench.job.item)
        self.window.prove.show_measured(measured, words, compare(measured, others) if others else None)


def _off_event(ended: Ended) -> OffEvent:
    """Without a journal a refused run never reached a supply: there is nothing to be confirmed."""
    if ended.result.output_confirmed_off:
        return OffEvent.ENDED_CONFIRMED
    if ended.result.outcome is Outcome.REFUSED and ended.journal is None:
        return OffEvent.ENDED_NOTHING_ON
    return OffEvent.ENDED_UNCONFIRMED
