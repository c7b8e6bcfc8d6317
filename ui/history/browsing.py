"""Between the history room and the ledger: what is asked for is read in a thread, and shown when it is there."""

import threading
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QFileSystemWatcher, QLocale, QObject, QStandardPaths, Qt, Signal
from PySide6.QtWidgets import QFileDialog

from benchlog.errors import LedgerError, Refused
from benchlog.history.past import Ids
from benchlog.ledger.backups import Backup, Stopped, back_up, folder_of, last_good
from benchlog.ledger.edits import change, correct_run
from benchlog.ledger.finding_jobs import COUNTED, Choices, Key, Page, choices_for, count_jobs, find_jobs
from benchlog.ledger.pasts import pasts_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import earlier_jobs
from benchlog.ledger.wanted import Wanted
from benchlog.records import Event, Job, Purpose, Run, Trace
from benchlog.settings import Settings, Shop, owner_settings
from ui import retelling, texts
from ui.alarms import What
from ui.history import paper
from ui.history.errands import Errands
from ui.history.figures import Figures, figures_of
from ui.history.job_card import run_line
from ui.history.room import JOBS_PAGE, NUMBERS_PAGE, HistoryRoom
from ui.moments import clock_text, day_text
from ui.notice import Notice
from ui.pieces import grey
from ui.record.job_record import JobRecord, read_record
from ui.record.timeline import timeline
from ui.run_request import ceilings_of
from ui.running import minding_the_ledger

PAGE = 100


LOOK_AT = "view"


class Browsing(QObject):
    """Wired once; `refresh` reads the first page again. `looked_at`: at the sheet of the job that is picked.

    `in_the_way` says why no file may be written now; "" where it may.
    """

    looked_at = Signal()

    def __init__(
        self,
        room: HistoryRoom,
        ledger: Ledger,
        notice: Notice,
        parent: QObject | None = None,
        *,
        settings: Callable[[], Settings] = owner_settings,
        in_the_way: Callable[[], str] = str,
    ) -> None:
        super().__init__(parent)
        self._room, self._ledger, self._notice = room, ledger, notice
        self._settings, self._in_the_way = settings, in_the_way
        self._only: Ids = ()
        self._after: Key | int | None = None
        self._select: int | None = None
        self._stop = threading.Event()
        self._errands = Errands(lambda: minding_the_ledger(notice), self)
        self._backups = QFileSystemWatcher(self)
        self._backups.directoryChanged.connect(self._look_at_backups)
        self.dialog: QFileDialog | None = None
        room.wanting.changed.connect(self._ask_anew)
        room.page_picked.connect(lambda _: self.refresh())
        room.list.picked.connect(self._pick_job)
        room.list.more_wanted.connect(self._ask_more)
        room.list.all_wanted.connect(self._want_all)
        card = room.card
        card.run_picked.connect(self._pick_run)
        card.under_picked.connect(self._pick_under)
        card.corrected.connect(self._correct)
        card.paper_wanted.connect(self._want_file)
        card.export_wanted.connect(self._want_file)
        room.numbers.by_changed.connect(self._ask_numbers)
        room.numbers.opened.connect(self._open_behind)
        room.backup_wanted.connect(self._back_up)
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.stop)

    def stop(self) -> None:
        """Nothing more is begun; what is going on is waited for."""
        self._stop.set()
        self._errands.stop()

    def settle(self) -> None:
        """Waits until all that was asked for is shown."""
        self._errands.settle()

    def refresh(self) -> None:
        """What is shown is read again; what was picked stays picked where it is still there."""
        job = self._room.picked()
        self._select = self._select or (None if job is None else job.id)
        self._room.grey(writing=self._ledger.read_only, paper=self._in_the_way())
        self._errands.ask("choices", lambda: choices_for(self._ledger), self._show_choices)
        self._ask_backup()
        if self._room.pages.currentIndex() == NUMBERS_PAGE:
            self._ask_numbers()
        else:
            self._ask_jobs()

    def pick(self, job_id: int) -> None:
        """One job alone, whatever was searched for."""
        self._room.show_page(JOBS_PAGE)
        self._room.wanting.blank()
        self._only = (job_id,)
        self._room.list.show_only(texts.ONLY_ONE)
        self._select = job_id
        self._ask_jobs()

    # the list

    def _ask_anew(self) -> None:
        """Something else is looked for: the jobs behind a figure are not any more."""
        self._only = ()
        self._room.list.show_only("")
        if self._room.pages.currentIndex() == NUMBERS_PAGE:
            self._ask_numbers()
        else:
            self._ask_jobs()

    def _want_all(self) -> None:
        self._room.wanting.blank()
        self._ask_anew()
        self._room.search.setFocus()

    def _ask_jobs(self) -> None:
        wanted, only = self._room.wanting.wanted(), self._only
        self._errands.forget("more")
        self._errands.ask("jobs", lambda: self._first_page(wanted, only), lambda page: self._show_page(wanted, page))
        if only:
            self._room.show_count(len(only), at_most=max(COUNTED, len(only) + 1))
        else:
            measuring = replace(wanted, purpose=Purpose.MEASURING)
            self._errands.ask(
                "count",
                lambda: (count_jobs(self._ledger, wanted), count_jobs(self._ledger, measuring)),
                lambda counts: self._room.show_count(counts[0], at_most=COUNTED, measuring=counts[1]),
            )

    def _first_page(self, wanted: Wanted, only: Ids) -> tuple[list[Job], Key | int | None]:
        if only:
            return self._page_of(only, 0)
        return _parted(find_jobs(self._ledger, wanted, None, PAGE))

    def _page_of(self, only: Ids, begin: int) -> tuple[list[Job], int | None]:
        """Jobs behind a figure: few enough to be read one by one."""
        end = begin + PAGE
        return [self._ledger.job(key) for key in only[begin:end]], end if end < len(only) else None

    def _show_page(self, wanted: Wanted, page: tuple[list[Job], Key | int | None]) -> None:
        jobs, self._after = page
        self._room.show_jobs(jobs, more=self._after is not None)
        if not jobs:
            self._say_empty(wanted)
        chosen, self._select = self._select, None
        for row, job in enumerate(jobs):
            if job.id == chosen:
                self._room.table.selectRow(row)

    def _ask_more(self) -> None:
        wanted, only, after = self._room.wanting.wanted(), self._only, self._after
        if isinstance(after, int):
            self._errands.ask("more", lambda: self._page_of(only, after), self._show_more)
        elif after is not None:
            self._errands.ask("more", lambda: _parted(find_jobs(self._ledger, wanted, after, PAGE)), self._show_more)

    def _show_more(self, page: tuple[list[Job], Key | int | None]) -> None:
        jobs, self._after = page
        self._room.show_jobs(jobs, more=self._after is not None, added=True)

    def _say_empty(self, wanted: Wanted) -> None:
        unfiltered = Wanted(text=wanted.text, order=wanted.order)
        if wanted != unfiltered:
            say, why = texts.EMPTY_FILTERED
        elif wanted.text.strip():
            say, why = texts.EMPTY_TEXT[0].format(text=wanted.text.strip()[:60]), texts.EMPTY_TEXT[1]
        else:
            say, why = texts.EMPTY_LEDGER
        self._room.list.say_empty(say, why, filtered=wanted != Wanted(order=wanted.order))

    def _show_choices(self, choices: Choices) -> None:
        self._room.wanting.offer(choices)

    # a job

    def _pick_job(self, job_id: int) -> None:
        self._errands.ask("job", lambda: read_record(self._ledger, job_id, self._settings), self._show_record)

    def _show_record(self, record: JobRecord) -> None:
        picked = self._room.picked()
        if picked is None or picked.id != record.job.id:
            return
        self._room.list.put_again(record.job)
        self._room.show_job(record.job, record.runs)
        self._room.card.show_record(timeline(record))
        self._room.card.grey(writing=self._ledger.read_only, paper=self._in_the_way())

    def _pick_run(self, run_id: int) -> None:
        job = self._room.card.job
        if job is not None:
            self._errands.forget("under")
            self._errands.ask("run", lambda: self._read_run(job, run_id), self._show_run)

    def _read_run(self, job: Job, run_id: int) -> "_RunRead":
        run = self._ledger.run(run_id)
        others, old = [], 0
        for one in self._ledger.runs(job.id):
            if one.id != run_id and one.samples:
                others.append((texts.UNDER_THIS.format(run=run_line(one)), one.id))
        came_from = [] if job.comeback_of is None else [self._ledger.job(job.comeback_of)]
        known = {one.id for one in came_from}
        earlier = came_from + [
            one for one in earlier_jobs(self._ledger, job.item, before=job.id) if one.id not in known
        ]
        for before in earlier:
            for one in reversed(self._ledger.runs(before.id)):
                if one.samples:
                    others.append((texts.UNDER_JOB.format(number=before.number, run=run_line(one)), one.id))
                    if not old and before.id == job.comeback_of and one.kind == run.kind:
                        old = one.id
        return run, self._ledger.events(run_id), self._ledger.trace(run_id), others, old

    def _show_run(self, read: "_RunRead") -> None:
        run, events, trace, others, old = read
        card = self._room.card
        if card.job is None or card.job.id != run.job:
            return
        card.show_run(ceilings_of(run), events, trace)
        card.offer_under(others, old)
        if old:
            self._pick_under(old)

    def _pick_under(self, run_id: int) -> None:
        if not run_id:
            self._errands.forget("under")
            self._room.card.show_under("", None)
            return
        job = self._room.card.job
        self._errands.ask(
            "under", lambda: self._read_under(job, run_id), lambda read: self._room.card.show_under(*read)
        )

    def _read_under(self, job: Job | None, run_id: int) -> tuple[str, Trace]:
        run = self._ledger.run(run_id)
        if job is not None and job.id == run.job:
            name = texts.UNDER_NAME_RUN.format(kind=texts.RUN_KIND_NAMES[run.kind], at=clock_text(run.started_utc))
        else:
            name = texts.UNDER_NAME_JOB.format(number=self._ledger.job(run.job).number)
        return name, self._ledger.trace(run_id)

    def _correct(self, field: str, value: object, who: str, why: str) -> None:
        job, run = self._room.card.job, self._room.card.run()
        if job is None:
            return
        with minding_the_ledger(self._notice):
            if field.startswith("run "):
                correct_run(self._ledger, run, about=field.removeprefix("run "), new=str(value), who=who, why=why)
            else:
                change(self._ledger, job.id, {field: value}, who=who, why=why)
            self._room.card.show_runs()
            self._notice.tell(texts.CORRECTED.format(number=job.number))
            self._pick_job(job.id)

    # the owner's numbers

    def _ask_numbers(self) -> None:
        """Not while an output may be on: counting a large ledger holds the window up for as long as a lease bears."""
        if self._in_the_way():
            self._errands.forget("numbers")
            self._room.numbers.about.say(texts.FIGURES_LATER)
            return
        wanted, by = self._room.wanting.wanted(), str(self._room.numbers.by.currentData())
        ledger = self._ledger

        def read() -> Figures:
            return figures_of(pasts_of(ledger, wanted), by, ledger.clock.utc(), self._currency())

        self._errands.ask("numbers", read, self._show_numbers)

    def _show_numbers(self, figures: Figures) -> None:
        self._room.numbers.show_figures(figures)
        self._room.show_count(figures.count, at_most=figures.count + 1)

    def _currency(self) -> str:
        try:
            return self._settings().shop.currency
        except Refused:
            return Shop().currency

    def _open_behind(self, words: str, jobs: Ids) -> None:
        self._only = tuple(sorted(jobs, reverse=True))
        self._room.list.show_only(texts.ONLY_BEHIND.format(words=words))
        self._room.show_page(JOBS_PAGE)
        self._ask_jobs()
        self._room.table.setFocus()

    # files

    def _want_file(self, what: str) -> None:
        """Asks where to; refused while an output may be on. To look at a sheet no file is made."""
        if what == LOOK_AT:
            self.looked_at.emit()
            return
        self._ask_where(what, self._room.card.job, self._room.card.run())

    def want_paper(self, what: str, job_id: int) -> None:
        """The same for a job that need not be picked."""
        with minding_the_ledger(self._notice):
            self._ask_where(what, self._ledger.job(job_id), 0)

    def in_the_way(self) -> str:
        """Why no file is made now; "" where one may be."""
        return self._in_the_way()

    def _ask_where(self, what: str, job: Job | None, run: int) -> None:
        trouble = self._in_the_way()
        if trouble or job is None:
            self._notice.tell(trouble or texts.HISTORY_PICK)
            return
        if what.startswith("trace") and not run:
            self._notice.tell(texts.HISTORY_NO_RUN, What.NEEDED)
            return
        wanted, only = self._room.wanting.wanted(), self._only
        dialog = QFileDialog(self._room, texts.SAVE_TITLES[what])
        dialog.setObjectName("history_save")
        dialog.setOptions(QFileDialog.Option.DontUseNativeDialog | QFileDialog.Option.DontConfirmOverwrite)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDirectory(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation))
        dialog.setDefaultSuffix(paper.SUFFIXES[what].removeprefix("."))
        dialog.selectFile(paper.usual_name(what, job, run))
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.fileSelected.connect(lambda path: self.write_file(what, job.id, run, only or wanted, Path(path)))
        self.dialog = dialog
        dialog.open()

    def write_file(self, what: str, job_id: int, run: int, wanted: Wanted | Ids, path: Path) -> None:
        """Made and written in a thread. A file that is there stays as it is."""
        if trouble := self._in_the_way():
            self._notice.tell(trouble)
            return
        ledger, settings = self._ledger, self._settings
        locale = QLocale.system().name()

        def make() -> Path:
            if what == "jobs":
                files = paper.jobs_table(ledger, wanted, path.name)
            elif what.startswith("trace"):
                files = paper.trace_table(ledger, run, path.name, locale=locale if what == "trace_sheet" else "")
            else:
                files = {path.name: paper.job_paper(ledger, job_id, what, settings)}
            paper.write_new({path.with_name(name): data for name, data in files.items()})
            return path

        self._errands.ask(f"file {path}", make, lambda made: self._notice.tell(texts.WRITTEN.format(path=made)))

    # the backup

    def _back_up(self) -> None:
        grey(self._room.back_up, texts.BACKING_UP)
        self._room.backup.say(texts.BACKING_UP)
        self._errands.ask("backup", self._make_backup, self._show_made)

    def _make_backup(self) -> Backup | str:
        try:
            return back_up(self._ledger.path, self._ledger.clock, stop=self._stop)
        except Stopped:
            return ""
        except (LedgerError, OSError) as error:
            return str(error)

    def _show_made(self, made: Backup | str) -> None:
        grey(self._room.back_up, retelling.told(self._ledger.read_only))
        if isinstance(made, str) and made:
            self._notice.tell(texts.BACKUP_NOT_MADE.format(what=retelling.told(made)), What.BACKUP)
        elif isinstance(made, Backup) and made.trouble:
            self._notice.tell(texts.BACKUP_MADE_LACKS.format(what=retelling.told(made.trouble)), What.BACKUP)
        self._ask_backup()

    def _ask_backup(self) -> None:
        """What is there now; and whatever comes after, whoever makes it."""
        folder = folder_of(self._ledger.path)
        watched = str(folder if folder.is_dir() else folder.parent)
        before = self._backups.directories()
        if before != [watched]:
            self._backups.addPath(watched)
            if before:
                self._backups.removePaths(before)
        self._errands.ask("last good", lambda: last_good(self._ledger.path), self._show_backup)

    def _look_at_backups(self, changed: str) -> None:
        # Beside the ledger much comes and goes: before the first backup its folder is all that counts there.
        if not self._stop.is_set() and folder_of(self._ledger.path).is_dir():
            self._ask_backup()

    def _show_backup(self, found: Backup | None) -> None:
        if found is None:
            self._room.backup.say(texts.NO_BACKUP)
        else:
            words = texts.LAST_BACKUP_ONE if found.jobs == 1 else texts.LAST_BACKUP
            self._room.backup.say(words.format(day=day_text(found.utc), at=clock_text(found.utc), jobs=found.jobs))


_RunRead = tuple[Run, list[Event], Trace, list[tuple[str, int]], int]


def _parted(page: Page) -> tuple[list[Job], Key | int | None]:
    return page.jobs, page.after
