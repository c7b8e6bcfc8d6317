"""Between the run-in page, the job on the bench and the ledger."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject

from benchlog.history.cold_restart import Due, cold_restart_due
from benchlog.ledger.capture_request import capture_request
from benchlog.ledger.filing import Filed
from benchlog.ledger.store import Ledger
from benchlog.records import Entry, EntryKind, Event, Run, RunKind, Stage, Trace
from benchlog.recovery.start_test import RunIn
from ui import curve_texts as texts
from ui import texts as window_texts
from ui.bench_job import BenchJob
from ui.curves.run_in_page import RunInPage
from ui.history.errands import Errands
from ui.main_window import MainWindow
from ui.moments import clock_text, day_text
from ui.running import Running, minding_the_ledger


@dataclass(frozen=True, slots=True, kw_only=True)
class RanIn:
    """The last run-in of a job with its trace; and the cold start that is still to come, if any."""

    run: Run | None
    events: list[Event]
    trace: Trace | None
    due: Due | None


class RunningIn(QObject):
    """`why_not`: what stands in the way of any run; "" where nothing does."""

    def __init__(
        self,
        window: MainWindow,
        ledger: Ledger,
        bench: BenchJob,
        running: Running,
        errands: Errands,
        why_not: Callable[[], str],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.window, self.ledger, self.bench, self.running = window, ledger, bench, running
        self.page: RunInPage = window.curves.run_in
        self._errands, self._why_not = errands, why_not
        self._job: int | None = None
        self.page.begun.connect(self._begin)
        self.page.cleared.connect(self._keep_clear)
        self.page.question.answered.connect(running.live.answer)
        running.filed.connect(self._on_filed)

    def refresh(self) -> None:
        """The job on the bench may be another one."""
        job = self.bench.job
        key = None if job is None else job.id
        if key != self._job:
            self._job = key
            self.page.forget()
        self.offer()
        if key is not None and not self.running.live.on:
            self._errands.ask("run-in", lambda: self._read(key), self._show)

    def offer(self) -> None:
        job = self.bench.job
        why = self._why_not()
        if not why and (job is None or self.bench.closed):
            why = texts.RUN_IN_NO_JOB
        self.page.offer(why, None if job is None else job.motor.rated_volts)

    def _read(self, job_id: int) -> RanIn:
        runs = self.ledger.runs(job_id)
        last = next((run for run in reversed(runs) if run.kind is RunKind.RUN_IN), None)
        return RanIn(
            run=last,
            events=[] if last is None else self.ledger.events(last.id),
            trace=None if last is None else self.ledger.trace(last.id),
            due=cold_restart_due(runs, self.ledger.clock.utc()),
        )

    def _show(self, read: RanIn) -> None:
        if read.run is not None and read.trace is not None and not self.running.live.on:
            self.page.show_filed(read.run, read.events, read.trace)
        due = read.due
        if due is None:
            self.page.show_due("")
        elif due.now:
            self.page.show_due(texts.COLD_NOW)
        else:
            at = f"{day_text(due.from_utc)} {clock_text(due.from_utc)}"
            self.page.show_due(texts.COLD_LATER.format(at=at))

    def _keep_clear(self) -> None:
        job = self.bench.job
        if job is None:
            return
        with minding_the_ledger(self.window.notice):
            words = texts.CLEAR_ENTRY.format(hint=texts.RUN_IN_CLEAR)
            entry = Entry(utc=self.ledger.clock.utc(), stage=Stage.MAKE_SAFE, text=words, kind=EntryKind.CHECK)
            self.ledger.add_entry(job.id, entry)

    def _begin(self, asked: RunIn) -> None:
        job, notice = self.bench.job, self.window.notice
        setting = self.window.intake.setting()
        why = self._why_not() or self.window.intake.setting_problem()
        why = why or ("" if setting.resource else window_texts.NEEDS_SUPPLY)
        if why or job is None:
            notice.tell(why or texts.RUN_IN_NO_JOB)
            return
        with minding_the_ledger(notice):
            _, owner = self.bench.owner()
            request = capture_request(
                self.ledger,
                resource=setting.resource,
                rated_volts=job.motor.rated_volts,
                test=asked,
                layers=setting.own_layers(),
                owner=owner,
                job=job.id,
                load_state=job.load_state,
                output=setting.output,
            )
            if self.running.launch(request, self.page):
                self.offer()

    def _on_filed(self, filed: Filed, kind: RunKind) -> None:
        if kind is RunKind.RUN_IN and filed.job_id == self._job:
            self._errands.ask("run-in", lambda: self._read(filed.job_id), self._show)
