"""The window: the way of the job on the left, the work in the middle, the supply on the right, facts at the foot.

The supply's side stands outside the rooms, so that "Output off" is in the same corner whatever is being looked at.
"""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from benchlog.records import STAGE_OF, RunKind, Stage
from ui import texts, theme
from ui.curves.room import CurvesRoom
from ui.density import LEAST, NARROW, ROOMY, Density, density_of
from ui.frame_parts import Foot, Header
from ui.help.room import HelpRoom
from ui.history.room import HistoryRoom
from ui.notice import Notice
from ui.pieces import Pages
from ui.record.page import RecordPage
from ui.red_card import RedCard
from ui.settings.room import SettingsRoom
from ui.stage_rail import StageRail
from ui.stages.close import CloseStage
from ui.stages.free import FreeStage
from ui.stages.intake import IntakeStage
from ui.stages.make_safe import MakeSafeStage
from ui.stages.probe import ProbeStage
from ui.stages.prove import ProveStage
from ui.stages.run_view import RunView
from ui.supply_panel import SupplyPanel
from ui.theme import Tokens

BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, SETTINGS_ROOM, HELP_ROOM = range(5)


class MainWindow(QMainWindow):
    """Only widgets and where they stand. What they do to each other is wired in `ui.session`.

    `closing`: nothing is in the way any more, the output is off.
    """

    closing = Signal()

    def __init__(self, tokens: Tokens, *, resource: str = "", demo: str = "") -> None:
        super().__init__()
        self.tokens = tokens
        self.may_close: Callable[[], bool] = lambda: True
        self.setWindowTitle(texts.PROGRAM)
        self.setMinimumSize(LEAST)
        self.resize(1366, 768)
        self.density = ROOMY
        self._dressed: list[Density | None] = [ROOMY] * (HELP_ROOM + 1)
        """How each room stands; None where a new style sheet has undone it."""
        self.header, self.foot = Header(demo=demo), Foot()
        self.notice = Notice(tokens)
        self.rail = StageRail(tokens)
        self.panel = SupplyPanel(tokens)
        self.intake, self.safe, self.close_stage = IntakeStage(resource), MakeSafeStage(), CloseStage()
        self.probe, self.free, self.prove = ProbeStage(tokens), FreeStage(tokens), ProveStage(tokens)
        self.record = RecordPage(tokens)
        self.curves = CurvesRoom(tokens)
        self.history = HistoryRoom(tokens)
        self.settings, self.help = SettingsRoom(), HelpRoom()
        self.panel.lend(self.curves.side)
        self.curves.page_shown.connect(lambda _: self._lend())
        self.curves.aside_changed.connect(self._lend)
        self._lay_out()
        self._name_charts(bool(demo))
        self.intake.kind.setFocus()

    def _name_charts(self, demo: bool) -> None:
        """What a copied picture of each is headed with."""
        captions = [view.plot.caption for view in self.views()]
        captions += [self.curves.run_in.plot.caption, self.curves.chart.plot.caption, self.history.plot.caption]
        for caption in captions:
            caption.of_job, caption.demo = self.header.title.text, demo
        self.curves.chart.plot.caption.of_job = self.header.told
        self.history.plot.caption.of_job = self.history.detail.text

    def _lay_out(self) -> None:
        self.stages = QStackedWidget()
        self.stages.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self._pages: dict[Stage, QWidget] = {
            Stage.INTAKE: self.intake,
            Stage.MAKE_SAFE: self.safe,
            Stage.PROBE: self.probe,
            Stage.FREE: self.free,
            Stage.PROVE: self.prove,
            Stage.CLOSE: self.close_stage,
        }
        for page in self._pages.values():
            self.stages.addWidget(page)
        self.stages.addWidget(self.record)
        bench = QWidget()
        bench_row = self._bench_row = QHBoxLayout(bench)
        bench_row.setContentsMargins(0, 0, 0, 0)
        bench_row.setSpacing(12)
        bench_row.addWidget(self.rail)
        bench_row.addWidget(self.stages, 1)
        self.rooms = Pages()
        self.rooms.addWidget(bench)
        self.rooms.addWidget(self.curves)
        self.rooms.addWidget(self.history)
        self.rooms.addWidget(self.settings)
        self.rooms.addWidget(self.help)
        middle = QVBoxLayout()
        middle.setSpacing(8)
        middle.addWidget(self.notice)
        middle.addWidget(self.rooms, 1)
        body = self._body = QHBoxLayout()
        body.setContentsMargins(20, 16, 20, 12)
        body.setSpacing(16)
        body.addLayout(middle, 1)
        body.addWidget(self.panel)
        ground = self.ground = QWidget()
        ground.setObjectName("ground")
        column = QVBoxLayout(ground)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.header)
        column.addLayout(body, 1)
        column.addWidget(self.foot)
        self.setCentralWidget(ground)
        self.red = RedCard(self.tokens, ground, self.panel, (self.header, self.notice, self.rooms))

    def view_of(self, kind: RunKind) -> RunView:
        """Where a run of this kind is shown: with its stage."""
        return {Stage.PROBE: self.probe, Stage.FREE: self.free, Stage.PROVE: self.prove}[STAGE_OF[kind]]

    def views(self) -> tuple[RunView, RunView, RunView]:
        return self.probe, self.free, self.prove

    def show_stage(self, stage: Stage) -> None:
        """The keyboard goes to the page, not to a button: a stray Enter must begin nothing."""
        self._show_page(self._pages[stage])

    def show_record(self) -> None:
        """The job's record, in the place of a stage."""
        self._show_page(self.record)

    def _show_page(self, page: QWidget) -> None:
        if self.stages.currentWidget() is not page:
            self.stages.setCurrentWidget(page)
            self.stages.setFocus()

    @property
    def room(self) -> int:
        return self.rooms.currentIndex()

    def show_room(self, room: int) -> None:
        self.rooms.setCurrentIndex(room)
        self._dress_room()
        self.rooms.updateGeometry()
        self._lend()
        self.header.rooms.button(room).setChecked(True)

    def _lend(self) -> None:
        """The supply's place to what the curves tell at the side, while they tell anything there."""
        self.panel.show_lent(self.room == CURVES_ROOM and self.curves.tells_aside)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        density = density_of(self.size())
        if density is not self.density:
            self.fit(density)

    def fit(self, density: Density) -> None:
        """Another size of the window, in which parts have to stand closer or may stand wider."""
        self.density = density
        side, gap = density.side_px, density.gap_px
        self._body.setContentsMargins(side, gap, side, min(gap, 12))
        self._body.setSpacing(gap)
        self._bench_row.setSpacing(min(gap, 12))
        self._dress()

    def _dress(self) -> None:
        """Around the rooms, and the room that is shown. The others wait until they are: all of them at once take longer
        than the window may be away while an output is on."""
        self.ground.setProperty(NARROW, "true" if self.density.narrow else "false")
        for part in (self.header, self.notice, self.panel, self.foot, self.red):
            self.density.dress(part)
        self._dress_room()

    def _dress_room(self) -> None:
        shown = self.rooms.currentWidget()
        if shown is not None and self._dressed[self.room] is not self.density:
            self._dressed[self.room] = self.density
            self.density.dress(shown)

    def wear(self, tokens: Tokens) -> None:
        """Another theme, for the whole application."""
        self.tokens = tokens
        application = QApplication.instance()
        if isinstance(application, QApplication):
            sheet = theme.style_sheet(tokens)
            if application.styleSheet() != sheet:  # putting the same one on again dresses every widget anew
                application.setStyleSheet("")  # over another sheet every widget is dressed twice: four times as long
                application.setPalette(theme.palette(tokens))
                application.setStyleSheet(sheet)
        for part in (
            self.rail,
            self.panel,
            self.notice,
            self.red,
            self.record,
            self.curves,
            self.history,
            *self.views(),
        ):
            part.set_tokens(tokens)
        if self.density is not ROOMY:  # a new style sheet puts back the type that parts had at first
            self._dressed = [None] * len(self._dressed)
            self._dress()

    def closeEvent(self, event: QCloseEvent) -> None:
        if self.may_close():
            self.closing.emit()
            event.accept()
        else:
            event.ignore()
