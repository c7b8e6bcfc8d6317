"""History: the jobs that are looked for, what they came to, and a job's record. This room can switch nothing on."""

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from benchlog.records import Job, Run
from ui import sayings, texts, theme
from ui.history.job_card import JobCard
from ui.history.job_list import JobList
from ui.history.numbers import NumbersPage
from ui.history.preview import PaperPage
from ui.history.wanting import Wanting
from ui.pieces import Elided, Pages, button, grey, label, scrolled
from ui.theme import Tokens

JOBS_PAGE, NUMBERS_PAGE, PAPER_PAGE = range(3)
LIST_SHARE, CARD_SHARE = 3, 7


class HistoryRoom(QWidget):
    """Shows what it is given and says what is wanted; it reads nothing itself."""

    page_picked = Signal(int)
    to_bench = Signal(int)
    backup_wanted = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.count = label("", "second", px=theme.SECOND_PX)
        self.count.setObjectName("history_count")
        self.wanting = Wanting(self._switch(), self.count)
        self.search = self.wanting.search
        self.list, self.card, self.numbers = JobList(), JobCard(tokens), NumbersPage(tokens)
        self.table, self.plot, self.runs = self.list.table, self.card.plot, self.card.runs
        self.record, self.detail, self.words = self.card.record, self.card.detail, self.card.words
        self.card.to_bench.connect(self.to_bench)
        self.card.hide()
        jobs = QWidget()
        self._jobs = QVBoxLayout(jobs)
        self._jobs.setContentsMargins(0, 0, 0, 0)
        self._jobs.setSpacing(8)
        self._jobs.addWidget(self.list, LIST_SHARE)
        self._jobs.addWidget(self.card, CARD_SHARE)
        self.pages = Pages()
        self.pages.addWidget(jobs)
        self.pages.addWidget(self.numbers)
        self.preview = PaperPage()
        self.pages.addWidget(self.preview)
        work = QWidget()
        lines = QVBoxLayout(work)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(8)
        lines.addWidget(self.wanting)
        lines.addWidget(self.pages, 1)
        lines.addLayout(self._foot())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.area = scrolled(work)
        column.addWidget(self.area)
        # Once it is laid out: where it is narrow it lies below what is in sight.
        self.card.correct_button.clicked.connect(lambda: QTimer.singleShot(0, self._show_correction))

    def _show_correction(self) -> None:
        self.area.ensureWidgetVisible(self.card.correction)

    def _switch(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 0, 4, 0)
        row.setSpacing(4)
        self.switch = QButtonGroup(self)
        for number, (name, words) in enumerate(
            (("history_jobs", texts.PAGE_JOBS), ("history_numbers", texts.PAGE_NUMBERS))
        ):
            one = button(words, name, "choice")
            one.setCheckable(True)
            one.setChecked(number == JOBS_PAGE)
            self.switch.addButton(one, number)
            row.addWidget(one)
        self.switch.idClicked.connect(self._pick_page)
        return made

    def _foot(self) -> QHBoxLayout:
        self.read_only = Elided("", "look", px=theme.SECOND_PX)
        self.read_only.setObjectName("history_read_only")
        self.read_only.hide()
        self.backup = Elided("", "second", px=theme.SECOND_PX)
        self.backup.setObjectName("history_backup")
        self.back_up = button(texts.BACK_UP, "history_back_up")
        self.back_up.setMinimumHeight(theme.TOUCH_PX - 10)
        self.back_up.setFont(theme.font(theme.SECOND_PX))
        self.back_up.clicked.connect(self.backup_wanted)
        row = QHBoxLayout()
        row.setSpacing(10)
        row.addWidget(self.backup, 5)
        row.addWidget(self.read_only, 9)
        row.addWidget(self.back_up)
        return row

    def _pick_page(self, page: int) -> None:
        self.show_page(page)
        self.page_picked.emit(page)

    def show_page(self, page: int) -> None:
        self.pages.setCurrentIndex(page)
        self.wanting.setVisible(page != PAPER_PAGE)
        if page != PAPER_PAGE:
            self.switch.button(page).setChecked(True)

    def show_jobs(self, jobs: Sequence[Job], *, more: bool, added: bool = False) -> None:
        self.list.show_jobs(jobs, more=more, added=added)
        if not added:
            self.card.hide()

    def show_count(self, count: int, *, at_most: int, measuring: int = 0) -> None:
        """How many there are, and of these how many are no repairs; `at_most` stands for as many or more."""
        words = texts.JOBS_COUNT_ONE if count == 1 else texts.JOBS_COUNT
        jobs = texts.JOBS_COUNT_OVER.format(count=at_most) if count >= at_most else words.format(count=count)
        self.count.setText(texts.COUNT_MEASURING.format(jobs=jobs, count=measuring) if measuring else jobs)

    def picked(self) -> Job | None:
        return self.list.chosen()

    def show_job(self, job: Job, runs: Sequence[Run]) -> None:
        self.card.show()
        self.card.show_job(job, runs)
        item = self.table.currentItem()
        if item is not None:
            self.table.scrollToItem(item)
        if self.table.hasFocus():  # picked by a person: that there is something is seen, and more a scroll away
            QTimer.singleShot(0, lambda: self.area.ensureWidgetVisible(self.card.correct_button, 0, 12))

    def grey(self, *, writing: str, paper: str) -> None:
        """Why the ledger can't be changed from here, and why no file is written now; "" where it can."""
        self.card.grey(writing=writing, paper=paper)
        grey(self.back_up, writing)
        self.read_only.say(sayings.sentence(writing))
        self.read_only.setVisible(bool(writing))

    def set_tokens(self, tokens: Tokens) -> None:
        self.plot.set_tokens(tokens)
        self.record.set_tokens(tokens)
        self.numbers.set_tokens(tokens)
