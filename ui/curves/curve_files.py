"""Files into and out of the curves room: captures laid over, curves and pictures written. Not while a run is on."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, Qt
from PySide6.QtWidgets import QFileDialog

from benchlog.errors import Refused
from benchlog.ledger.captured import Captured
from benchlog.ledger.store import Ledger
from benchlog.pictures.taking import Taken, take_file
from benchlog.reports.foreign_csv import Choice, Preview, preview
from ui import curve_texts as texts
from ui import retelling
from ui import texts as window_texts
from ui.curves import exporting
from ui.curves.laying import Laid, lay
from ui.curves.reading import Shown
from ui.curves.room import CAPTURE_PAGE, CHART_PAGE, CurvesRoom
from ui.history.errands import Errands
from ui.history.paper import write_new
from ui.notice import Notice

Picked = tuple[Captured, int]
"""The run that is picked out, and the number of the start in it, from 0."""


class CurveFiles(QObject):
    """`shown`, `picked`: what is looked at; `in_the_way`: why no file is touched now, "" where it may be."""

    def __init__(
        self,
        room: CurvesRoom,
        ledger: Ledger,
        notice: Notice,
        errands: Errands,
        *,
        shown: Callable[[], tuple[Shown | None, int | None]],
        picked: Callable[[], Picked | None],
        in_the_way: Callable[[], str],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._room, self._ledger, self._notice, self._errands = room, ledger, notice, errands
        self._shown, self._picked, self._in_the_way = shown, picked, in_the_way
        self.dialog: QFileDialog | None = None
        self._said = ("", "")
        room.chart.over_wanted.connect(self._lay_or_take_off)
        room.chart.export_wanted.connect(lambda: self._want_export("csv"))
        room.units.report_wanted.connect(lambda: self._want_export("pdf"))
        room.capture.chosen.connect(self._lay)
        room.capture.left.connect(lambda: room.show_page(CHART_PAGE))

    # a capture laid over

    def _lay_or_take_off(self) -> None:
        chart = self._room.chart
        if chart.plot.shown.capture is not None:
            chart.plot.show_capture(None)
            chart.over.setText(texts.LAY_OVER)
            chart.say(*self._said)
            return
        if trouble := self._in_the_way() or ("" if self._picked() is not None else texts.NEEDS_PICK):
            self._notice.tell(trouble)
            return
        dialog = self._dialog(texts.CAPTURE_TITLE, "curves_open_capture")
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.setNameFilters(list(texts.CAPTURE_FILTERS))
        dialog.fileSelected.connect(lambda name: self.look_into(Path(name)))
        dialog.open()

    def _dialog(self, title: str, name: str) -> QFileDialog:
        made = QFileDialog(self._room, title)
        made.setObjectName(name)
        made.setOptions(QFileDialog.Option.DontUseNativeDialog | QFileDialog.Option.DontConfirmOverwrite)
        made.setDirectory(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation))
        made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog = made
        return made

    def look_into(self, path: Path) -> None:
        """What columns there are to choose from."""
        if trouble := self._in_the_way():
            self._notice.tell(trouble)
            return

        def look() -> tuple[Taken, Preview]:
            taken = take_file(path)
            try:
                return taken, preview(taken.data)
            except Refused as refusal:
                raise Refused(f"{taken.name}: {refusal}") from refusal

        self._errands.ask("capture", look, self._show_columns)

    def _show_columns(self, found: tuple[Taken, Preview]) -> None:
        self._room.capture.show_file(*found)
        self._room.show_page(CAPTURE_PAGE)

    def _lay(self, choice: Choice) -> None:
        picked, taken = self._picked(), self._room.capture.taken
        trouble = self._in_the_way() or ("" if picked is not None else texts.NEEDS_PICK)
        if trouble or picked is None or taken is None:
            self._notice.tell(trouble)
            return
        ledger, (of, start) = self._ledger, picked

        def work() -> Laid | str:
            try:
                return lay(ledger, of, start, taken, choice)
            except Refused as refusal:
                return retelling.told(str(refusal))

        self._errands.ask("capture", work, self._show_laid)

    def _show_laid(self, laid: Laid | str) -> None:
        if isinstance(laid, str):
            self._room.capture.problem.setText(laid)
            return
        chart = self._room.chart
        self._said = chart.say_label.text(), chart.why_label.said
        self._room.show_page(CHART_PAGE)
        chart.plot.show_capture(laid.line)
        chart.over.setText(texts.LAY_OFF)
        chart.say(laid.peaks, texts.PEAKS_WHY.format(window=texts.ms(laid.window_s), words=retelling.told(laid.words)))

    # export

    def _want_export(self, suffix: str) -> None:
        """Asks where to; `suffix` is what is likely meant."""
        shown, _ = self._shown()
        if trouble := self._in_the_way() or ("" if shown is not None else texts.EXPORT_NOTHING):
            self._notice.tell(trouble)
            return
        assert shown is not None
        dialog = self._dialog(texts.EXPORT_TITLE, "curves_save")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setNameFilters(list(texts.EXPORT_FILTERS))
        dialog.selectNameFilter(next(one for one in texts.EXPORT_FILTERS if f"*.{suffix})" in one))
        dialog.setDefaultSuffix(suffix)
        dialog.filterSelected.connect(lambda told: dialog.setDefaultSuffix(told.rpartition("*.")[2].rstrip(")")))
        dialog.selectFile(exporting.usual_name(shown, report=suffix == "pdf"))
        dialog.fileSelected.connect(lambda name: self.export(Path(name)))
        dialog.open()

    def export(self, path: Path) -> None:
        """Made and written in a thread. A file that is there stays as it is."""
        shown, picked = self._shown()
        if trouble := self._in_the_way() or ("" if shown is not None else texts.EXPORT_NOTHING):
            self._notice.tell(trouble)
            return
        assert shown is not None

        def make() -> Path:
            write_new(exporting.files_of(self._ledger, shown, picked, path))
            return path

        self._errands.ask(f"file {path}", make, lambda made: self._notice.tell(window_texts.WRITTEN.format(path=made)))
