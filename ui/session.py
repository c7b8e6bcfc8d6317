"""The wiring between the widgets and the ledger: what a press does, what is shown of the job. A run: `ui.running`."""

from collections.abc import Callable
from contextlib import AbstractContextManager

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from benchlog.ledger.filing import file_left_behind, journals_of
from benchlog.ledger.leads import lead_check
from benchlog.ledger.off_by_hand import acknowledge, not_confirmed
from benchlog.ledger.store import Ledger
from benchlog.records import STAGE_OF, JobState, Run, RunKind, Stage
from benchlog.recovery.ceilings import intersect
from benchlog.settings import Settings, owner_settings
from ui import retelling, sayings, texts
from ui.advising import Advising
from ui.alarming import Alarming
from ui.alarms import What
from ui.asking_supplies import Supplies, SuppliesAsked
from ui.bench_job import BenchJob
from ui.curves.curving import Curving
from ui.desktop import Desktop
from ui.facts import FootFacts
from ui.history.browsing import Browsing
from ui.live_run import LinkFactory
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, MainWindow
from ui.moments import clock_text, day_text
from ui.off_state import OffEvent, OffState
from ui.preferences import Preferring
from ui.record.recording import Recording
from ui.record.timeline import waiting_text
from ui.run_request import request_of, setting_of
from ui.running import Running, minding_the_ledger
from ui.stages.run_view import RunView
from ui.start_keys import StartKeys
from ui.supplying import Supplying
from ui.taking_in import TakingIn
from ui.taught_keys import Role, Teaching
from ui.way import Standing, Way

_ORDER = list(Stage)


class Session(QObject):
    """One window's work: at most one job on the bench and at most one run on."""

    def __init__(
        self,
        window: MainWindow,
        ledger: Ledger,
        link_factory: LinkFactory,
        *,
        resource: str = "",
        settings: Callable[[], Settings] = owner_settings,
        beep: Callable[[], None] = QApplication.beep,
        supplies: Supplies | None = None,
        preferring: Preferring | None = None,
    ) -> None:
        super().__init__(window)
        self.window, self.ledger = window, ledger
        self.preferring = preferring or Preferring()
        self.bench = BenchJob(ledger, settings)
        self.facts = FootFacts(window.foot, ledger.path.name, self)
        self.running = Running(window, ledger, self.bench, self.facts, link_factory)
        self.run, self.off = self.running.live, self.running.off

        def sound() -> None:
            if self.preferring.now.beep:
                beep()

        self.running.beep = sound
        self.alarming = Alarming(window, self.off, self.run, sound)
        self.browsing = Browsing(
            window.history, ledger, window.notice, self, settings=settings, in_the_way=self._no_file_now
        )
        self.advising = Advising(window, self.bench, self.running)
        self.taking_in = TakingIn(window, ledger, self.bench)
        self.recording = Recording(window, ledger, self.bench, self.running, settings)
        self.curving = Curving(window, ledger, self.bench, self.running, settings, beep=sound)
        self.supplying = Supplying(window, ledger, self.running, supplies or SuppliesAsked(ledger.path))
        self.teaching = Teaching(self.preferring, self, in_the_way=self._no_file_now)
        self.start_keys = StartKeys(window, self.preferring, blocked=lambda: self.off.state is OffState.NOT_CONFIRMED)
        self.here = Stage.INTAKE
        self.desktop = Desktop(self, settings)
        self._resource = resource
        self._closing = False
        self._unconfirmed: list[Run] = []
        window.may_close = self._may_close
        self._wire()
        left: list[Run] = []
        with self._minding_the_ledger():
            left = self._file_left_behind()
        with self._minding_the_ledger():
            self._look_back(left)
        with self._minding_the_ledger():
            self._tell_of_ended(left)
        self.refresh()

    def _wire(self) -> None:
        window = self.window
        window.rail.picked.connect(self.go_to)
        window.header.room_picked.connect(self.show_room)
        window.header.new_job.connect(self.new_job)
        window.panel.off_pressed.connect(self.running.output_off)
        window.panel.acknowledged.connect(self._acknowledge)
        window.intake.opened.connect(self._take_in)
        window.intake.unlock.pressed.connect(self._unlock)
        window.intake.max_volts.editingFinished.connect(self._show_ceilings)
        window.intake.max_amps.editingFinished.connect(self._show_ceilings)
        window.intake.thermal.currentIndexChanged.connect(self._show_ceilings)
        window.safe.made_safe.connect(self._keep_made_safe)
        window.close_stage.closed.connect(self._close_job)
        window.close_stage.next_job.connect(self.new_job)
        window.close_stage.sheet.connect(self.desktop.paper)
        window.history.to_bench.connect(self.open_job)
        for view in window.views():
            view.begun.connect(lambda kind=view.kind: self.running.begin(kind))
            view.went_on.connect(self._go_on)
            view.hand.connect(self.running.hand_step)
            view.answered.connect(self.run.answer)
            view.answered.connect(lambda *_: window.stages.setFocus())  # else the next in line hears the next key
        window.free.noted.connect(self.running.note)
        window.free.moved.connect(self.running.moved)
        window.free.hand_begun.connect(lambda: self.running.begin(RunKind.HAND))
        self.advising.taken.connect(self._show_taken)
        self.taking_in.changed.connect(self.refresh)
        self.taking_in.earlier_wanted.connect(self._look_at_earlier)
        self.recording.changed.connect(self._show_header)
        self.recording.opened.connect(window.notice.leave)
        self.recording.opened.connect(self.refresh)
        self.recording.left.connect(self.refresh)
        self.curving.changed.connect(self._show_header)
        self.supplying.changed.connect(self.refresh)
        window.free.held.connect(self.running.keys.hold)
        self.running.keys.in_sight = window.free.hold_button.isVisible
        window.probe.leads_begun.connect(lambda: self.running.begin(RunKind.LEADS))
        self.running.began.connect(self._show_begun)
        self.running.ended.connect(self._go_on_after_run)
        self.facts.stale.connect(window.panel.numerals.rest)
        self.off.changed.connect(self.teaching.end)
        self.teaching.changed.connect(lambda _: window.panel.button.show_taught(self.teaching.text(Role.OFF.value)))
        window.panel.button.show_taught(self.teaching.text(Role.OFF.value))
        self.run.asked.connect(self.start_keys.rest)
        self.running.ended.connect(self.start_keys.rest)  # a press meant for the run before begins no other
        self.start_keys.told.connect(window.notice.tell)

    def _minding_the_ledger(self) -> AbstractContextManager[None]:
        return minding_the_ledger(self.window.notice)

    # the way of the job

    def refresh(self) -> None:
        """Everything that follows from the record is shown again."""
        way, job = self.bench.way(), self.bench.job
        self.recording.follow(self.here)
        self.window.rail.show_way(way, None if self.recording.shown else self.here)
        if not self.recording.shown:
            self.window.show_stage(self.here)
        self._show_header()
        if job is not None:
            self.window.safe.show_kept(self.bench.entries)
            self.window.close_stage.show_job(job, self.bench.runs)
        self.taking_in.follow()
        for view in self.window.views():
            self._offer(view, way)
        self.window.intake.lock_setting(self.run.on)
        self._show_ceilings()
        self.window.free.offer_hand(self._may_begin and job is not None and way.may_go_to(Stage.FREE))
        self._show_leads(job is not None)
        self.advising.show(here=self.here is Stage.FREE)
        self.window.free.take_hand_steps(self._why_not_kept())
        self.window.prove.lock(self.run.on)
        with self._minding_the_ledger():
            self.supplying.follow()
        setting = self.window.intake.setting()
        self.facts.supply(setting.resource, setting.output)
        self.desktop.follow()

    @property
    def _may_begin(self) -> bool:
        """Whether a run could be begun and filed."""
        return not self._why_no_run()

    def _why_no_run(self) -> str:
        if self.run.on:
            return texts.NOT_WHILE_ON
        if self.bench.closed:
            return texts.JOB_IS_CLOSED
        return self.ledger.read_only or ("" if self.off.may_begin else texts.ACKNOWLEDGE_FIRST)

    def _why_not_kept(self) -> str:
        """Why no hand step or note is kept with a job now."""
        if self.bench.job is None:
            return texts.NEEDS_JOB
        return texts.JOB_IS_CLOSED if self.bench.closed else ""

    def _show_header(self) -> None:
        curves = self.curving.header() if self.window.room == CURVES_ROOM else None
        if curves is not None:
            self.window.header.show_job(*curves, on_bench=False)
            return
        job = self.bench.job
        if job is None:
            self.window.header.show_job(texts.NO_JOB, texts.NO_JOB_ABOUT, on_bench=False)
            return
        about = (texts.JOB_ABOUT_COMPLAINT if job.complaint else texts.JOB_ABOUT).format(
            tag=job.tag, volts=sayings.short(job.motor.rated_volts, "V"), complaint=job.complaint
        )
        if waiting := waiting_text(job):
            about = texts.JOB_ABOUT_WAITING.format(waiting=waiting, about=about)
        title = texts.JOB_TITLE.format(number=job.number, kind=job.item.kind)
        self.window.header.show_job(title, about, on_bench=True)

    def _offer(self, view: RunView, way: Way) -> None:
        """What can be pressed on a run's page follows from how far the job is."""
        stage = STAGE_OF[view.kind]
        idle = self._may_begin
        after = way.next() if way.next() is not stage else Stage.CLOSE
        ahead = _ORDER.index(after) > _ORDER.index(stage) and way.may_go_to(after)
        view.offer(
            start=idle and way.may_go_to(stage),
            again=self.bench.tried(view.kind),
            on_to=texts.STAGE_NAMES[after] if idle and ahead and self.bench.tried(view.kind) else "",
            done=way.at(stage).standing is Standing.DONE,
        )

    def _show_ceilings(self) -> None:
        """What holds for the job before a run says so itself, and whether more can be unlocked."""
        job, bars = self.bench.job, self.window.panel.ceilings
        if self.run.on:
            return
        if job is None:
            self.window.intake.unlock.offer(None, None)
            self.window.prove.show_volts(0.0, None)
            bars.blank()
            return
        with self._minding_the_ledger():
            settings, owner = self.bench.owner()
            may = settings.allow_unlocks and not self.bench.closed
            self.window.intake.unlock.offer(settings.unlocked if may else None, owner.unlock)
            if self.window.intake.setting_problem():
                return
            setting = self.window.intake.setting()
            known = self.supplying.range_of(setting)
            held = intersect(setting.layers(owner) | known)
            told = any(limits.volts is not None for limits in known.values())
            self.window.prove.show_volts(job.motor.rated_volts, held.volts, range_known=told)
            last = self.run.request
            if not bars.of_run or last is None or last.job != job.id:  # of a lot's unit, say
                bars.show_before(held)

    def _show_leads(self, on_bench: bool) -> None:
        setting = self.window.intake.setting()
        resource, output = setting.resource, setting.output
        with self._minding_the_ledger():
            self.window.probe.show_leads(lead_check(self.ledger, resource, output) if resource else None)
        self.window.probe.offer_leads(self._why_no_run() if on_bench else texts.NEEDS_JOB)

    def _show_taken(self) -> None:
        """Another ladder, or other ceilings, were taken over."""
        self._show_ladder(again=True)
        self._show_ceilings()

    def go_to(self, stage: Stage) -> None:
        if self.bench.way().may_go_to(stage):
            if stage is not self.here:
                self.window.notice.leave()
            self.recording.leave()
            self.here = stage
            self.refresh()

    def _go_on(self) -> None:
        after = self.bench.way().next()
        self.go_to(after if after is not self.here else Stage.CLOSE)

    def show_room(self, room: int) -> None:
        if room != self.window.room:
            self.window.notice.leave()
        self.desktop.leaving(room)
        self.window.show_room(room)
        self.desktop.shown(room)
        self.facts.in_history(room == HISTORY_ROOM)
        self._show_header()
        if room == CURVES_ROOM:
            self.curving.refresh()
        if room == HISTORY_ROOM:
            with self._minding_the_ledger():
                self.browsing.refresh()

    # the job

    def new_job(self) -> None:
        if self.running.in_the_way():
            return
        self._resource = self.window.intake.setting().resource or self._resource
        self.bench.put_aside()
        self.recording.leave()
        self.here = Stage.INTAKE
        self.window.intake.blank(self._resource)
        self._blank_stages()
        self.show_room(BENCH_ROOM)
        self.refresh()

    def open_job(self, job_id: int) -> None:
        """An open job taken up again, standing where it was left, with its last runs to look at."""
        if self.running.in_the_way():
            return
        with self._minding_the_ledger():
            job = self.bench.load(job_id)
            self._blank_stages()
            now = self.window.intake.setting()
            setting = setting_of(job, self.bench.runs, now.resource or self._resource, now.output)
            self.window.intake.show_job(job, setting)
            self._show_ladder()
            for run in self.bench.last_runs():
                request = request_of(run)
                if request is not None and run.kind not in (RunKind.START_UP, RunKind.RUN_IN):
                    view = self.window.view_of(run.kind)
                    view.show_filed(run, request, self.ledger.events(run.id), self.ledger.trace(run.id))
            self.running.show_measured()
            self.recording.leave()
            self.here = self.bench.way().next()
            self.show_room(BENCH_ROOM)
        self.refresh()

    def _look_at_earlier(self, job_id: int) -> None:
        self.show_room(HISTORY_ROOM)
        with self._minding_the_ledger():
            self.browsing.pick(job_id)

    def _blank_stages(self) -> None:
        self.running.sequence = self.running.ladder
        self.window.panel.ceilings.blank()
        self.window.safe.blank()
        self.window.close_stage.blank()
        for view in self.window.views():
            view.blank()

    def _show_ladder(self, *, again: bool = False) -> None:
        """Before it is climbed, or because another one was chosen."""
        if self.bench.job is not None and (again or not self.bench.tried(RunKind.RECOVERY)):
            rated = self.bench.job.motor.rated_volts
            self.window.free.show_ladder(self.running.sequence, rated, self.window.intake.setting().max_volts or rated)

    def _take_in(self) -> None:
        intake = self.window.intake
        with self._minding_the_ledger():
            setting = intake.setting()
            job = self.bench.take_in(
                item=intake.item(),
                motor=intake.motor(),
                complaint=intake.complaint_text(),
                load_state=intake.load_state(),
                setting=setting,
                taken_in=intake.taken_in(),
            )
            self.taking_in.taken_in()
            intake.show_job(job, setting)
            self._show_ladder()
            self.here = self.bench.way().next()
        self.refresh()

    def _unlock(self, who: str, why: str) -> None:
        if self.running.in_the_way():
            return
        with self._minding_the_ledger():
            self.bench.unlock(who=who, why=why)
            self.window.intake.unlock.forget()
            self.window.panel.ceilings.blank()
            self.window.notice.put_away()
        self.refresh()

    def _keep_made_safe(self, answers: list[str]) -> None:
        with self._minding_the_ledger():
            self.bench.keep_made_safe(answers)
            self.here = self.bench.way().next()
        self.refresh()

    def _close_job(self) -> None:
        if self.running.in_the_way():
            return
        page = self.window.close_stage
        with self._minding_the_ledger():
            self.bench.close(page.said())
            self.taking_in.closed()
        self.refresh()

    # around a run

    def _show_begun(self, stage: Stage) -> None:
        self.recording.leave()
        self.here = stage
        self.refresh()
        self.window.stages.setFocus()  # not the next field in line, which would take the keys for itself

    def _go_on_after_run(self) -> None:
        with self._minding_the_ledger():
            self._look_back()
        self.refresh()
        self._close_if_waiting()

    def _acknowledge(self) -> None:
        """What can't be kept is asked again at the next start: a ledger in trouble must not hold the window open."""
        self.off.tell(OffEvent.ACKNOWLEDGED)
        self.window.notice.settle(What.FOUND_ON, What.ACKNOWLEDGE_FIRST)
        if not self.run.on:  # else its end says whether there is anything to keep
            with self._minding_the_ledger():
                acknowledge(self.ledger, self._unconfirmed)
                self._look_back()
        self.refresh()
        self._close_if_waiting()

    def _look_back(self, left: list[Run] | None = None) -> None:
        """A run that was not confirmed off is shown until a person says so, whoever filed it and when. One supply at a
        time, the last run first. `left`: filed just now."""
        runs = not_confirmed(self.ledger)
        self._unconfirmed = [run for run in runs if run.resource == runs[0].resource]
        if runs and self.off.may_begin:
            run = runs[0]
            told = texts.FOUND_NOT_CONFIRMED.format(
                run=run.id,
                number=self.ledger.job(run.job).number,
                day=day_text(run.started_utc),
                at=clock_text(run.started_utc),
                resource=run.resource,
            )
            if left and run in left:
                told = f"{told} {texts.LEFT_BEHIND_TOO}"
                left.remove(run)
            self.off.tell(OffEvent.FOUND)
            self.window.notice.tell(told, What.FOUND_ON)

    def _file_left_behind(self) -> list[Run]:
        """Those that were going on when the program ended."""
        return [self.ledger.run(one.run) for one in file_left_behind(self.ledger, journals_of(self.ledger.path))]

    def _tell_of_ended(self, left: list[Run]) -> None:
        """Of runs that ended because the program did: killed, or closed by a person in the middle of the last one."""
        if len(left) > 1:
            self.window.notice.tell(texts.LEFT_BEHIND_MANY.format(count=len(left)), What.LEFT_BEHIND)
        elif left:
            self.window.notice.tell(self._ended_early(left[0], texts.LEFT_BEHIND_WHY), What.LEFT_BEHIND)
        for run in self.ledger.recent_runs(limit=1):
            with_window = (texts.STOP_CLOSING, texts.STOP_SESSION_ENDS)  # nobody saw the run end
            why = next((one for one in with_window if run.result.reason.endswith(one)), "")
            if why and run.result.output_confirmed_off and self.ledger.job(run.job).state is not JobState.CLOSED:
                self.window.notice.tell(self._ended_early(run, retelling.told(why)), What.LEFT_BEHIND)

    def _ended_early(self, run: Run, why: str) -> str:
        return texts.ENDED_EARLY.format(
            run=run.id,
            kind=texts.RUN_KIND_NAMES[run.kind],
            number=self.ledger.job(run.job).number,
            day=day_text(run.started_utc),
            at=clock_text(run.started_utc),
            why=why,
            off=texts.OFF_READ_BACK if run.result.output_confirmed_off else texts.OFF_NOT_READ_BACK,
        )

    def _no_file_now(self) -> str:
        """Why nothing is written for paper or export now: making it takes a moment that a run may need."""
        return texts.NOT_WHILE_ON if self.running.may_be_on else ""

    # the end, and faults

    def fault(self, what: str) -> None:
        """A bug: output off first, then said."""
        self.running.output_off(texts.STOP_FAULT)
        self.window.notice.tell(texts.FAULT.format(what=what, rest=texts.FAULT_REST), What.FAULT)

    def _may_close(self) -> bool:
        """Not while a run is on, nor while nobody has said that an unconfirmed output was switched off by hand."""
        self.taking_in.keep()
        self.recording.keep()
        if self.run.on:
            self._closing = True
            self.running.output_off(texts.STOP_CLOSING)
            return False
        if self.off.state is OffState.NOT_CONFIRMED:
            self._closing = True
            return False
        return True

    def _close_if_waiting(self) -> None:
        if self._closing and not self.run.on and self.off.state is not OffState.NOT_CONFIRMED:
            self.window.close()
