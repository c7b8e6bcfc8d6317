"""Which columns of a file are time, volts and amps: guessed from their heads, put right here."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTableWidgetItem, QVBoxLayout, QWidget

from benchlog.pictures.taking import Taken
from benchlog.quantities import parse
from benchlog.reports.foreign_csv import UNITS, Choice, Kind, Pick, Preview
from ui import curve_texts as texts
from ui import retelling, theme
from ui.curves.form_rows import grid_of, line, put
from ui.curves.laying import guessed
from ui.history.job_list import plain_table
from ui.pieces import Chooser, button, card, label
from ui.wrapping import WrapRow

NONE, HEAD = -1, ""
_KINDS = {"time": Kind.TIME, "volts": Kind.VOLTS, "amps": Kind.AMPS}


class CaptureForm(QWidget):
    """`chosen(Choice)`: how the file is to be read; `left`: it is not laid over after all."""

    chosen = Signal(object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.taken: Taken | None = None
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.table = plain_table("capture_columns", texts.CAPTURE_TABLE, texts.CAPTURE_COLUMNS)
        self.table.horizontalHeader().setStretchLastSection(True)
        for column, width in enumerate((60, 220, 90)):
            self.table.setColumnWidth(column, width)
        self.table.setMinimumHeight(132)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.say_label)
        rows.addWidget(label(texts.CAPTURE_WHY, "second", wrap=True))
        rows.addWidget(self.table, 1)
        rows.addWidget(self._fields_card())
        rows.addLayout(self._press_row())

    def _fields_card(self) -> QWidget:
        made = card()
        grid = grid_of(made, 4)
        self.columns = {name: Chooser(f"capture_{name}", words) for name, words in texts.CAPTURE_QUANTITIES.items()}
        self.units: dict[str, Chooser] = {}
        for row, (name, words) in enumerate(texts.CAPTURE_QUANTITIES.items()):
            unit = self.units[name] = Chooser(f"capture_{name}_unit", texts.CAPTURE_UNIT.format(name=words))
            unit.addItem(texts.CAPTURE_UNIT_HEAD, HEAD)
            for written, (kind, _) in UNITS.items():
                if kind is _KINDS[name] or (name == "amps" and kind is Kind.VOLTS):
                    unit.addItem(written, written)
            put(grid, row, 0, words, self.columns[name], 2)
            put(grid, row, 2, texts.CAPTURE_UNIT.format(name=words), unit)
        self.interval = line("capture_interval", texts.CAPTURE_INTERVAL, texts.CAPTURE_INTERVAL_HINT)
        self.volts_scale = line("capture_volts_scale", texts.CAPTURE_SCALE, "1")
        self.amps_per_volt = line("capture_amps_per_volt", texts.CAPTURE_PROBE, texts.CAPTURE_PROBE_HINT)
        put(grid, 0, 3, texts.CAPTURE_INTERVAL, self.interval)
        put(grid, 1, 3, texts.CAPTURE_SCALE, self.volts_scale)
        put(grid, 2, 3, texts.CAPTURE_PROBE, self.amps_per_volt)
        return made

    def _press_row(self) -> WrapRow:
        self.problem = label("", "ask", wrap=True)
        self.problem.setObjectName("capture_problem")
        self.leave = button(texts.CAPTURE_LEAVE, "capture_leave")
        self.leave.clicked.connect(self.left)
        self.lay = button(texts.CAPTURE_LAY, "capture_lay", "main")
        self.lay.clicked.connect(self._lay)
        row = WrapRow()
        row.add(self.problem, stretch=1, least=160)
        row.add(self.leave)
        row.add(self.lay)
        return row

    def show_file(self, taken: Taken, seen: Preview) -> None:
        self.taken = taken
        self.say_label.setText(texts.CAPTURE_SAY.format(name=taken.name))
        self.problem.setText("")
        self.table.setRowCount(len(seen.columns))
        for row, column in enumerate(seen.columns):
            values = ", ".join(texts.NO_VALUE if one is None else f"{one:g}" for one in column.values)
            for place, text in enumerate((str(row + 1), column.name, column.unit, f"{values} …")):
                self.table.setItem(row, place, QTableWidgetItem(text))
        likely = guessed(seen)
        for name, chooser in self.columns.items():
            chooser.clear()
            chooser.addItem(texts.CAPTURE_NONE, NONE)
            for number, column in enumerate(seen.columns):
                head = column.name or texts.NO_VALUE
                chooser.addItem(texts.CAPTURE_COLUMN.format(number=number + 1, name=head), number)
            chooser.setCurrentIndex(max(0, chooser.findData(likely.get(name, NONE))))
            self.units[name].setCurrentIndex(0)
        for edit in (self.interval, self.volts_scale, self.amps_per_volt):
            edit.clear()

    def choice(self) -> Choice | str:
        """As chosen, or what is wrong with it."""
        picks = {name: self._pick(name) for name in self.columns}
        try:
            numbers = [
                None if not edit.text().strip() else parse(edit.text(), unit)
                for edit, unit in ((self.interval, "s"), (self.volts_scale, ""), (self.amps_per_volt, ""))
            ]
        except ValueError as problem:
            return texts.CAPTURE_WRONG.format(what=retelling.told(str(problem)))
        interval_s, volts_scale, amps_per_volt = numbers
        if (picks["time"] is None) == (interval_s is None):
            return texts.CAPTURE_TIME
        if picks["volts"] is None and picks["amps"] is None:
            return texts.CAPTURE_VALUES
        return Choice(
            time=picks["time"],
            interval_s=interval_s,
            volts=picks["volts"],
            amps=picks["amps"],
            volts_scale=1.0 if volts_scale is None else volts_scale,
            amps_per_volt=amps_per_volt,
        )

    def _pick(self, name: str) -> Pick | None:
        column = self.columns[name].currentData()
        return None if column in (None, NONE) else Pick(column=int(column), unit=str(self.units[name].currentData()))

    def _lay(self) -> None:
        choice = self.choice()
        self.problem.setText(choice if isinstance(choice, str) else "")
        if isinstance(choice, Choice):
            self.chosen.emit(choice)
