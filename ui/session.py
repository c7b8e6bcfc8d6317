"""All wiring between the widgets, the ledger and the link: what a press does, and what a frame shows."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtCore import QObject

from benchlog.bench.frames import Ended, Progress, Question
from benchlog.errors import JournalDamaged, LedgerError, Refused
from benchlog.ledger.filing import file_journal, file_left_behind, journals_of
from benchlog.ledger.store import Ledger
from benchlog.quantities import show
from benchlog.records import Entry, Event, Job, JobState, Run, RunKind, Stage
from benchlog.recovery.steps import built_in
from ui import texts
from ui.facts import FootFacts
from ui.history.browsing import Browsing, request_of
from ui.live_run import LinkFactory, LiveRun
from ui.main_window import BENCH_ROOM, HISTORY_ROOM, MainWindow
from ui.off_state import OffEvent, OffState
from ui.off_watch import OffWatch
from ui.run_request import request_for, setting_of
from ui.way import Way, way_of

_log = logging.getLogger(__name__)
_STAGE_OF = {RunKind.PROBE: Stage.PROBE, RunKind.RECOVERY: Stage.FREE, RunKind.PROOF: Stage.PROVE}
SEQUENCE = "starting-ladder"


class Session(QObject):
    """One window's work: at most one job on the bench and at most one run on."""

    def __init__(self, window: MainWindow, ledger: Ledger, link_factory: LinkFactory, *, resource: str = "") -> None:
        super().__init__(window)
        self.window, self.ledger = window, ledger
        self.run = LiveRun(link_factory, self)
        self.off = OffWatch(self)
        self.facts = FootFacts(window.foot, ledger.path.name, self)
        self.browsing = Browsing(window.history, ledger, self)
        self.sequence = built_in(SEQUENCE)
        self.job: Job | None = None
        self.entries: list[Entry] = []
        self.runs: list[Run] = []
        self.here = Stage.INTAKE
        self._resource = resource
        self._closing = False
        window.may_close = self._may_close
        self._wire()
        self._file_left_behind()
        self.refresh()

    def _wire(self) -> None:
        window = self.window
        window.rail.picked.connect(self.go_to)
        window.header.room_picked.connect(self._show_room)
        window.header.new_job.connect(self.new_job)
        window.panel.off_pressed.connect(self.output_off)
        window.panel.acknowledged.connect(self._acknowledge)
        window.intake.opened.connect(self._take_in)
        window.safe.made_safe.connect(self._keep_made_safe)
        window.close_stage.closed.connect(self._close_job)
        window.close_stage.next_job.connect(self.new_job)
        window.history.to_bench.connect(self.open_job)
        for view in window.views():
            view.begun.connect(lambda kind=view.kind: self.begin(kind))
            view.went_on.connect(self._go_on)
            view.hand.connect(lambda step: self.run.note(texts.HAND_NOTED.format(step=step)))
            view.answered.connect(self.run.answer)
        self.run.progressed.connect(self._on_progress)
        self.run.happened.connect(self._on_event)
        self.run.asked.connect(self._on_question)
        self.run.ended.connect(self._on_ended)
        self.off.changed.connect(window.panel.off.show_state)
        self.off.changed.connect(self.facts.output_state)

    @contextmanager
    def _minding_the_ledger(self) -> Iterator[None]:
        """What the ledger, the disk or a rule refuses is said on the window; the window goes on."""
        try:
            yield
        except (LedgerError, JournalDamaged, OSError) as error:
            _log.error("the ledger: %s", error)
            self.window.notice.tell(texts.LEDGER_TROUBLE.format(what=error), alarm=True)
        except Refused as refusal:
            self.window.notice.tell(texts.sentence(str(refusal)))

    # the way of the job

    def way(self) -> Way:
        return way_of(self.job, self.entries, self.runs)

    def refresh(self) -> None:
        """Everything that follows from the record is shown again."""
        way = self.way()
        self.window.rail.show_way(way, self.here)
        self.window.show_stage(self.here)
        job = self.job
        if job is None:
            self.window.header.show_job(texts.NO_JOB, texts.NO_JOB_ABOUT)
        else:
            complaint = texts.QUOTED.format(text=job.complaint) if job.complaint else texts.NOTHING
            about = texts.JOB_ABOUT.format(tag=job.tag, volts=show(job.motor.rated_volts, "V"), complaint=complaint)
            self.window.header.show_job(texts.JOB_TITLE.format(number=job.number, kind=job.item.kind), about)
            self.window.close_stage.show_job(job, self.runs)
        self._offer(way)
        self.window.intake.lock_setting(self.run.on)
        self.window.free.take_hand_steps(self.run.on)
        self.facts.supply(self.window.intake.setting().resource)

    def _offer(self, way: Way) -> None:
        closed = self.job is not None and self.job.state is JobState.CLOSED
        for view in self.window.views():
            stage = _STAGE_OF[view.kind]
            tried = any(run.kind is view.kind for run in self.runs)
            on_to = ""
            if not self.run.on and not closed and tried:
                after = way.next() if way.next() is not stage else Stage.CLOSE
                if list(Stage).index(after) > list(Stage).index(stage) and way.may_go_to(after):
                    on_to = texts.STAGE_NAMES[after]
            may_start = not self.run.on and not closed and way.may_go_to(stage)
            view.offer(start=may_start, again=tried, on_to=on_to)

    def go_to(self, stage: Stage) -> None:
        if self.way().may_go_to(stage):
            self.here = stage
            self.refresh()

    def _go_on(self) -> None:
        after = self.way().next()
        self.go_to(after if after is not self.here else Stage.CLOSE)

    def _show_room(self, room: int) -> None:
        self.window.show_room(room)
        self.facts.in_history(room == HISTORY_ROOM)
        if room == HISTORY_ROOM:
            with self._minding_the_ledger():
                self.browsing.refresh()

    def show_history(self) -> None:
        self._show_room(HISTORY_ROOM)

    # the job

    def new_job(self) -> None:
        if self._refused_while_on():
            return
        self._resource = self.window.intake.setting().resource or self._resource
        self.job, self.entries, self.runs, self.here = None, [], [], Stage.INTAKE
        self.window.intake.blank(self._resource)
        self._blank_stages()
        self._show_room(BENCH_ROOM)
        self.refresh()

    def open_job(self, job_id: int) -> None:
        """An open job taken up again, standing where it was left, with its last runs to look at."""
        if self._refused_while_on():
            return
        with self._minding_the_ledger():
            self._blank_stages()
            self._load(job_id)
            self._show_filed_runs()
            if self.job is not None:
                setting = setting_of(self.job, self.runs, self.window.intake.setting().resource or self._resource)
                self.window.intake.show_job(self.job, setting)
            self.here = self.way().next()
            self._show_room(BENCH_ROOM)
        self.refresh()

    def _refused_while_on(self) -> bool:
        if self.run.on:
            self.window.notice.tell(texts.NOT_WHILE_ON)
        return self.run.on

    def _blank_stages(self) -> None:
        self.window.safe.blank()
        self.window.close_stage.blank()
        for view in self.window.views():
            view.blank()

    def _load(self, job_id: int) -> None:
        self.job = self.ledger.job(job_id)
        self.entries, self.runs = self.ledger.entries(job_id), self.ledger.runs(job_id)
        self.window.safe.show_kept(self.entries)
        if not any(run.kind is RunKind.RECOVERY for run in self.runs):
            ceiling = self.window.intake.setting().max_volts or self.job.motor.rated_volts
            self.window.free.show_ladder(self.sequence, self.job.motor.rated_volts, ceiling)

    def _show_filed_runs(self) -> None:
        for run in {run.kind: run for run in self.runs}.values():
            request = request_of(run)
            if request is not None:
                view = self.window.view_of(run.kind)
                view.show_filed(run, request, self.ledger.events(run.id), self.ledger.trace(run.id))

    def _take_in(self) -> None:
        intake = self.window.intake
        with self._minding_the_ledger():
            job = self.ledger.new_job(
                item=intake.item(),
                motor=intake.motor(),
                complaint=intake.complaint_text(),
                load_state=intake.load_state(),
            )
            setting = intake.setting()
            amps = texts.AMPS_NO_CEILING if setting.max_amps is None else show(setting.max_amps, "A")
            told = texts.INTAKE_ENTRY.format(
                volts=show(setting.max_volts, "V"), amps=amps, supply=setting.resource or texts.NOTHING
            )
            self._keep(job.id, Stage.INTAKE, told)
            intake.show_job(job, setting)
            self._load(job.id)
            self.here = self.way().next()
        self.refresh()

    def _keep(self, job_id: int, stage: Stage, text: str) -> None:
        self.ledger.add_entry(job_id, Entry(utc=self.ledger.clock.utc(), stage=stage, text=text))

    def _keep_made_safe(self, answers: list[str]) -> None:
        if self.job is None:
            return
        with self._minding_the_ledger():
            for answer in answers:
                self._keep(self.job.id, Stage.MAKE_SAFE, answer)
            self._load(self.job.id)
            self.here = self.way().next()
        self.refresh()

    def _close_job(self) -> None:
        if self.job is None or self._refused_while_on():
            return
        page = self.window.close_stage
        with self._minding_the_ledger():
            self.ledger.close_job(
                self.job.id,
                cause=page.cause.text().strip(),
                work_done=page.work.text().strip(),
                prognosis=page.prognosis.text().strip(),
            )
            self._load(self.job.id)
        self.refresh()

    # a run

    def begin(self, kind: RunKind) -> None:
        """Begins a run, or says what stands in the way."""
        if self.job is None or self._refused_while_on():
            return
        setting = self.window.intake.setting()
        problem = self.window.intake.setting_problem() or ("" if setting.resource else texts.NEEDS_SUPPLY)
        if not self.off.may_begin:
            problem = texts.ACKNOWLEDGE_FIRST
        if problem:
            self.window.notice.tell(problem)
            return
        with self._minding_the_ledger():
            request = request_for(
                kind, self.job, self.runs, setting, self.sequence, self.ledger, starts=self.window.prove.starts()
            )
            try:
                self.run.begin(request)
            except OSError as error:
                self.window.notice.tell(texts.NO_START.format(what=error), alarm=True)
                return
            self.off.tell(OffEvent.BEGAN)
            self.window.notice.hide()
            self.window.view_of(kind).begin(request)
            self.here = _STAGE_OF[kind]
        self.refresh()

    def output_off(self, reason: str = texts.STOP_PRESSED) -> None:
        """From the button, the keys, a fault or the closing of the window; as often as one likes."""
        self.run.stop(reason)
        if self.run.on:
            self.off.tell(OffEvent.PRESSED)

    def _acknowledge(self) -> None:
        self.off.tell(OffEvent.ACKNOWLEDGED)
        self._close_if_waiting()

    def _on_progress(self, progress: Progress) -> None:
        if self.run.request is not None:
            self.window.view_of(self.run.request.kind).show_progress(progress)
        self.window.panel.show_progress(progress)
        self.facts.progress(progress)

    def _on_event(self, event: Event) -> None:
        if self.run.request is not None:
            self.window.view_of(self.run.request.kind).show_event(event)

    def _on_question(self, question: Question) -> None:
        if self.run.request is not None:
            self.window.view_of(self.run.request.kind).ask(question)

    def _on_ended(self, ended: Ended) -> None:
        request = self.run.request
        confirmed = ended.result.output_confirmed_off
        self.off.tell(OffEvent.ENDED_CONFIRMED if confirmed else OffEvent.ENDED_UNCONFIRMED)
        self.window.panel.rest()
        self.facts.ended()
        if request is not None:
            self.window.view_of(request.kind).end(ended.result)
        with self._minding_the_ledger():
            if ended.journal is not None:
                filed = file_journal(self.ledger, Path(ended.journal))
                self.facts.filed(filed.job)
            if self.job is not None:
                self._load(self.job.id)
        self.refresh()
        self._close_if_waiting()

    def _file_left_behind(self) -> None:
        with self._minding_the_ledger():
            filed = file_left_behind(self.ledger, journals_of(self.ledger.path))
            if len(filed) == 1:
                self.window.notice.tell(texts.LEFT_BEHIND_ONE.format(number=filed[0].job))
            elif filed:
                self.window.notice.tell(texts.LEFT_BEHIND_MANY.format(count=len(filed)))

    # the end, and faults

    def fault(self, what: str) -> None:
        """A bug: output off first, then said."""
        self.output_off(texts.STOP_FAULT)
        self.window.notice.tell(texts.FAULT.format(what=what, rest=texts.FAULT_REST), alarm=True)

    def _may_close(self) -> bool:
        """Not while a run is on, nor while nobody has said that an unconfirmed output was switched off by hand."""
        if self.run.on:
            self._closing = True
            self.output_off(texts.STOP_CLOSING)
            return False
        if self.off.state is OffState.NOT_CONFIRMED:
            self._closing = True
            return False
        return True

    def _close_if_waiting(self) -> None:
        if self._closing and not self.run.on and self.off.state is not OffState.NOT_CONFIRMED:
            self.window.close()
