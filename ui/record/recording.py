"""The wiring of the page "Record and costs": what a press keeps in the ledger, and what is shown of it.

The ledger is read and written beside the window, because a run may be on. Nothing here switches anything on.
"""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject, QTimer, Signal

from benchlog.ledger.costs import OverLimit, keep_part, take_back
from benchlog.ledger.files import attach
from benchlog.ledger.findings import add_finding
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.pictures.taking import Taken
from benchlog.records import Attached, Entry, EntryKind, JobState, Stage
from benchlog.settings import Settings
from ui import retelling, texts
from ui.alarms import What
from ui.bench_job import BenchJob
from ui.main_window import MainWindow
from ui.pieces import grey
from ui.record.bench_clock import BenchClock
from ui.record.charges import Minutes, Wanted, charge
from ui.record.drafting_beside import DraftingBeside
from ui.record.job_record import JobRecord, read_record
from ui.record.ledger_work import LedgerWork
from ui.record.limit_bar import standing_short
from ui.record.timeline import waiting_text
from ui.running import Running, minding_the_ledger

_CLOCK_MS = 5_000


class Recording(QObject):
    """`changed`: where the job on the bench stands is another thing now; `opened`, `left`: the page, or the stage."""

    changed = Signal()
    opened = Signal()
    left = Signal()

    def __init__(
        self, window: MainWindow, ledger: Ledger, bench: BenchJob, running: Running, settings: Callable[[], Settings]
    ) -> None:
        super().__init__(window)
        self._window, self._ledger, self._bench = window, ledger, bench
        self._running, self._settings = running, settings
        self.page, self.row = window.record, window.rail.record
        self.shown = False
        """Whether the page is what the bench shows, in the place of a stage."""
        self._here = Stage.INTAKE
        self._record: JobRecord | None = None
        self._job: int | None = None
        self._under_way: set[str] = set()
        self._stale = False
        self._files: list[Attached] = []
        self._your_turn = False
        self._work = LedgerWork(self)
        self._drafting = DraftingBeside(self.page, ledger, self._work, self)
        self.clock = BenchClock(ledger.clock)
        self._ticks = QTimer(self)
        self._ticks.setInterval(_CLOCK_MS)
        self._ticks.timeout.connect(self._show_minutes)
        self._wire()

    def _wire(self) -> None:
        page = self.page
        self.row.clicked.connect(self.open)
        page.back.connect(self._go_back)
        page.hand.connect(self._hand)
        page.noted.connect(self._note)
        page.findings.kept.connect(self._keep_finding)
        page.costs.charged.connect(self._charge)
        page.costs.taken_back.connect(self._take_back)
        page.costs.stock.kept.connect(self._keep_part)
        page.waiting.set.connect(self._wait)
        page.who.textChanged.connect(self._set_keeper)
        page.pictures.kept.connect(self._file_kept)
        self._running.live.asked.connect(lambda _: self._turn(True))
        self._running.live.happened.connect(lambda _: self._turn(self._asked()))
        self._window.closing.connect(self.finish)

    # which page

    def open(self) -> None:
        if self._bench.job is not None:
            self.shown = True
            self.opened.emit()

    def leave(self) -> None:
        """A stage is wanted."""
        self.shown = False

    def _go_back(self) -> None:
        self.shown = False
        self.left.emit()

    def follow(self, here: Stage) -> None:
        """The job on the bench, or the stage behind this page, may be another one."""
        job = self._bench.job
        self._here = here
        self.shown = self.shown and job is not None
        if (None if job is None else job.id) != self._job:
            self._take_up(None if job is None else job.id)
        self.clock.follow(None if job is None or self._bench.closed else job.id)
        grey(self.row, "" if job is not None else texts.NEEDS_JOB)
        self.page.pictures.set_output_off(not self._running.may_be_on)
        self._turn(self._asked())
        self._show_row()
        if self.shown:
            self._window.show_record()
        if job is not None:
            self._read()

    def _take_up(self, job_id: int | None) -> None:
        self._drafting.keep_now()
        self._job, self._record = job_id, None
        self.page.blank()
        self._files = []
        self.page.pictures.show_files([])
        self._set_keeper()
        if self._drafting.follow("" if job_id is None else f"record {job_id}"):
            self._window.notice.tell(texts.RECORD_DRAFT_FOUND)
        if job_id is None:
            self._ticks.stop()
        else:
            self._ticks.start()

    def _asked(self) -> bool:
        return self._running.live.on and not self._window.free.question.isHidden()

    def _turn(self, your_turn: bool) -> None:
        self._your_turn = your_turn
        self.page.show_back(texts.STAGE_NAMES[self._here], your_turn=your_turn)

    # what is read

    def _read(self) -> None:
        if self._job is None:
            return
        if "read" in self._under_way:
            self._stale = True  # what is being read may be older than what asks now
        else:
            self._under_way.add("read")
            read = partial(read_record, self._ledger, self._job, self._settings)
            self._work.do(read, self._was_read, partial(self._failed, "read"))

    def _was_read(self, record: JobRecord) -> None:
        self._under_way.discard("read")
        self._show(record)
        if self._stale:
            self._stale = False
            self._read()

    def _file_kept(self, file: Attached) -> None:
        self._files.append(file)
        self._read()

    def _show(self, record: JobRecord) -> None:
        if record.job.id != self._job or self._bench.job is None:
            return
        self._record = record
        if record.files != self._files:
            self._files = list(record.files)
            self.page.pictures.show_files(record.files)
        self.page.show_record(record)
        self._show_minutes()
        was = self._bench.job
        self._bench.job, self._bench.entries = record.job, record.entries
        self._show_row()
        if (was.state, was.waiting_for) != (record.job.state, record.job.waiting_for):
            self.changed.emit()

    def _show_row(self) -> None:
        record = self._record
        words = ""
        if record is not None:
            words = waiting_text(record.job) or standing_short(record.standing, record.shop.currency)
        self.row.say(words, here=self.shown)

    def _show_minutes(self) -> None:
        self.page.costs.show_minutes(self.clock.minutes())

    # what is kept

    def _keep(self, name: str, work: Callable[[int], object], then: Callable[[], None]) -> None:
        """Keeps one thing beside the window, reads the record anew, and only then empties the form it came from."""
        job_id = self._job
        if job_id is None or name in self._under_way:
            return
        if name:
            self._under_way.add(name)

        def kept(record: JobRecord) -> None:
            self._under_way.discard(name)
            if record.job.id == self._job:
                then()
                self._drafting.keep()
            self._show(record)

        def work_and_read() -> JobRecord:
            work(job_id)
            return read_record(self._ledger, job_id, self._settings)

        self._work.do(work_and_read, kept, partial(self._failed, name))

    def _failed(self, name: str, error: Exception) -> None:
        """What was typed stays. What nobody expected is a fault, as everywhere in the window."""
        self._under_way.discard(name)
        if isinstance(error, OverLimit) and self._record is not None:
            self.page.costs.ask_over(error.cents, error.limit_cents, self._record.shop.currency)
            return
        with minding_the_ledger(self._window.notice):
            raise error

    def _hand(self, kind: EntryKind, words: str) -> None:
        """Into the running trace; between runs, into the job's own record."""
        if self._running.live.on:
            step = f"{kind.value}; {words}" if words else kind.value
            self._running.hand_step(step)
            self._say_in_run(texts.HAND_NOTED.format(step=step))
            return
        told = texts.HAND_NOTED.format(step=kind.value)
        self._enter(kind, f"{told}; {words}" if words else told)

    def _note(self, text: str) -> None:
        if self._running.live.on:
            self._running.note(text)
            self._say_in_run(text)
        elif not self._bench.closed:
            self._enter(EntryKind.NOTE, text)
        elif self._has_who():
            self._enter(EntryKind.CORRECTION, text)

    def _say_in_run(self, text: str) -> None:
        """The record of the run has it, and is filed when the run ends."""
        self.page.words.clear()
        self._drafting.keep()
        self.page.why.say(texts.RECORD_IN_RUN.format(text=retelling.told(text)))

    def _enter(self, kind: EntryKind, text: str) -> None:
        who = self._who()
        entry = Entry(utc=self._ledger.clock.utc(), stage=Stage.FREE, text=text, who=who, kind=kind)
        typed = self.page.words.text()

        def then() -> None:
            if self.page.words.text() == typed:
                self.page.words.clear()

        self._keep("", lambda job_id: self._ledger.add_entry(job_id, entry), then)

    def _keep_finding(self) -> None:
        card, who = self.page.findings, self._who()
        said, corrects = card.said(), card.corrects
        self._keep(
            "finding",
            lambda job_id: add_finding(self._ledger, job_id, who=who, corrects=corrects, **said),
            card.blank,
        )

    def _charge(self, wanted: Wanted, agreed: str) -> None:
        who = self._who()

        def then() -> None:
            if isinstance(wanted, Minutes):
                self.clock.charged()
            self.page.costs.kept(wanted)

        self._keep(
            "charge",
            lambda job_id: charge(self._ledger, job_id, wanted, self._settings, who=who, agreed=agreed),
            then,
        )

    def _keep_part(self, name: str, number: str, cents: int, there: int) -> None:
        self._keep(
            "stock",
            lambda _: keep_part(self._ledger, name, number, each_cents=cents, stock=there),
            self.page.costs.stock.blank,
        )

    def _take_back(self, charge_id: int, why: str) -> None:
        if self._has_who():
            who = self._who()
            self._keep(
                "back", lambda _: take_back(self._ledger, charge_id, who=who, why=why), self.page.costs.back.withdraw
            )

    def _wait(self, state: JobState, what: str) -> None:
        who = self._who()
        self._keep(
            "wait",
            lambda job_id: set_waiting(self._ledger, job_id, state, for_what=what, who=who),
            self.page.waiting.blank,
        )

    def _who(self) -> str:
        return self.page.who.text().strip()

    def _has_who(self) -> bool:
        """Whether it is said who works; else that is asked for."""
        if not self._who():
            self._window.notice.tell(texts.NEEDS_WHO, What.NEEDED)
            self.page.who.setFocus()
        return bool(self._who())

    def _set_keeper(self) -> None:
        """Files are kept in a thread that must not ask the window anything."""
        job_id, who, ledger = self._job, self._who(), self._ledger

        def keep(taken: Taken, caption: str) -> Attached:
            assert job_id is not None
            return attach(ledger, job_id, taken, caption=caption, who=who)

        self.page.pictures.keep = None if job_id is None else keep

    # the end

    def keep(self) -> None:
        """The window is about to close."""
        self._drafting.keep_now()

    def finish(self) -> None:
        """The window closes, the output off: what was asked is done first."""
        self._ticks.stop()
        self._drafting.keep_now()
        self.page.pictures.finish()
        self._work.finish()
