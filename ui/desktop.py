"""The habits of a desktop program, wired: the window's keys, help and settings, and the ways back from them.

Nothing here begins a run or reaches a supply.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, QObject
from PySide6.QtWidgets import QApplication, QBoxLayout

from benchlog.records import Stage
from benchlog.settings import Settings
from ui import shortcuts, texts
from ui.announcing import Announcing
from ui.dropping import Dropping
from ui.going_back import GoingBack
from ui.help.helping import Helping
from ui.history.previewing import Previewing
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HELP_ROOM, HISTORY_ROOM, SETTINGS_ROOM
from ui.pieces import grey
from ui.recent import RecentRow, open_jobs
from ui.running import minding_the_ledger
from ui.settings.arranging import Arranging

if TYPE_CHECKING:
    from ui.session import Session


class Desktop(QObject):
    """Made once, by the session that it belongs to."""

    def __init__(self, session: "Session", settings: Callable[[], Settings]) -> None:
        super().__init__(session)
        self.session, self.window = session, session.window
        self.going = GoingBack(self.window, session.show_room)
        self.helping = Helping(self.window, self.going, session.show_room, self._stage)
        self.arranging = Arranging(
            self.window, session.ledger, session.running, session.preferring, session.teaching, settings
        )
        self.window.settings.back.connect(self.going.back)
        self.announcing = Announcing(self.window, session.run, session.off)
        self.dropping = Dropping(self.window, session.bench)
        self.previewing = Previewing(
            self.window,
            session.ledger,
            settings,
            show_room=session.show_room,
            in_the_way=session.browsing.in_the_way,
            keep_pdf=lambda job: session.browsing.want_paper("pdf", job),
        )
        session.browsing.looked_at.connect(self.paper)
        self.recent = RecentRow()
        self.recent.picked.connect(session.open_job)
        above = self.window.intake.layout()
        assert isinstance(above, QBoxLayout)
        above.insertWidget(1, self.recent)
        self.keys = shortcuts.put_on(
            self.window,
            {
                "bench": lambda: session.show_room(BENCH_ROOM),
                "curves": lambda: session.show_room(CURVES_ROOM),
                "history": lambda: session.show_room(HISTORY_ROOM),
                "settings": lambda: session.show_room(SETTINGS_ROOM),
                "help": self.helping.toggle,
                "back": self.back,
                "new_job": session.new_job,
                "find": self.find,
                "paper": self.paper,
                "keep": self.keep,
                "paste": self.paste,
                "full": self.full_screen,
                "close": self.window.close,
            },
        )
        mark = self.window.header.demo
        for changed in (session.running.began, session.running.ended, session.off.changed):
            changed.connect(lambda *_: self.arranging.follow())
            if mark is not None:
                changed.connect(lambda *_, on=mark: grey(on, texts.DEMO_WAITS if session.running.may_be_on else ""))

    def leaving(self, room: int) -> None:
        """The session is about to show another room."""
        self.session.teaching.end()
        self.going.leaving(room)
        if room == HELP_ROOM:
            self.helping.about_here()

    def shown(self, room: int) -> None:
        """It is shown."""
        if room == SETTINGS_ROOM:
            self.arranging.refresh()
        elif room == HELP_ROOM:
            self.window.help.page.setFocus()

    def follow(self) -> None:
        """The record, or the job on the bench, is another one now."""
        jobs = []
        if self.session.bench.job is None and not self.session.run.on:
            with minding_the_ledger(self.window.notice):
                jobs = open_jobs(self.session.ledger)
        self.recent.offer(jobs)

    def _stage(self) -> Stage | None:
        return None if self.session.recording.shown else self.session.here

    # what the keys do

    def find(self) -> None:
        self.session.show_room(HISTORY_ROOM)
        self.window.history.search.setFocus()
        self.window.history.search.selectAll()

    def paper(self) -> None:
        history = self.window.room == HISTORY_ROOM
        self.previewing.show(self.window.history.picked() if history else self.session.bench.job)

    def back(self) -> None:
        if self.previewing.shown:
            self.previewing.back()
        else:
            self.going.back()

    def keep(self) -> None:
        """Drafts now; while a run is on they keep themselves, beside the window."""
        if self.session.run.on:
            self.window.notice.tell(texts.KEPT_WHILE_ON)
            return
        self.session.taking_in.keep()
        self.session.recording.keep()
        self.window.notice.tell(texts.KEPT_ALREADY)

    def paste(self) -> None:
        """What a field did not take."""
        self.dropping.take(QApplication.clipboard().mimeData() or QMimeData())

    def full_screen(self) -> None:
        if self.window.isFullScreen():
            self.window.showNormal()
        else:
            self.window.showFullScreen()
