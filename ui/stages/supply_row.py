"""Where supplies may be, which one was picked, and what it told of itself. Part of the intake page."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from benchlog.bench.looking_around import LastLook, Place
from ui import retelling, texts, theme
from ui.asking_supplies import Told
from ui.moments import clock_text, day_text
from ui.pieces import Chooser, button, grey, label, plain_hint, set_look
from ui.stages.supply_report import SupplyReport
from ui.wrapping import WrapRow

SERIAL = "serial"
ROWS = 4


class SupplyRow(QWidget):
    """`picked` carries an address from the list, `output_chosen` comes when another output is; `again` asks with the
    most volts and amps. Hidden while there is nothing to say."""

    picked = Signal(str)
    output_chosen = Signal()
    again = Signal(float, float)

    def __init__(self) -> None:
        super().__init__()
        self._resource, self._output = "", 1
        self._unusable: dict[tuple[str, int], str] = {}
        self.report = SupplyReport()
        self.report.again.connect(self.again)
        self.looked = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.looked.setObjectName("supply_looked")
        self.places = QListWidget()
        self.places.setObjectName("supply_places")
        self.places.setAccessibleName(texts.PLACES_NAME)
        self.places.setProperty("look", "rows")
        self.places.setFont(theme.font())
        self.places.itemActivated.connect(self._pick)
        self.places.itemClicked.connect(self._pick)
        self.said = label("", wrap=True)
        self.said.setObjectName("supply_said")
        self.output = Chooser("supply_output", texts.FIELD_OUTPUT)
        self.output.setMinimumWidth(120)
        self.output.activated.connect(self._choose)
        self.open = button(texts.REPORT_SHOW, "supply_report_open")
        self.open.clicked.connect(lambda: self._unfold(self.report.isHidden()))
        self._lay_out()

    def _lay_out(self) -> None:
        self.line = QWidget()
        row = WrapRow(self.line)
        row.add(self.said, stretch=1, least=260)
        row.add(self.output)
        row.add(self.open)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 0)
        column.setSpacing(6)
        for part in (self.looked, self.places, self.line, self.report):
            column.addWidget(part)
            part.hide()
        self.hide()

    # looking

    def show_looking(self, last: LastLook | None) -> None:
        """What was found before stays to be picked from while it is looked again."""
        self.show_places(last)
        self._look_says(texts.LOOKING)

    def show_places(self, last: LastLook | None, trouble: str = "") -> None:
        self.places.clear()
        for place in last.places if last is not None else ():
            self._add(place)
        count = self.places.count()
        self.places.setVisible(count > 0)
        self.places.setCurrentRow(0)
        self.places.setFixedHeight(min(count, ROWS) * theme.TOUCH_PX + 2)
        if trouble:
            self._look_says(texts.LOOK_FAILED.format(what=retelling.told(trouble)))
        elif last is not None:
            at = {"day": day_text(last.utc), "at": clock_text(last.utc)}
            said = [(texts.LOOKED if count else texts.LOOKED_NOTHING).format(**at), texts.LOOK_SOCKETS]
            for missed in last.missed:
                part, _, why = missed.partition(": ")
                said.append(texts.LOOK_MISSED.format(part=texts.PLACE_KINDS.get(part, part), why=retelling.told(why)))
            self._look_says(" ".join(said))

    def _look_says(self, text: str) -> None:
        self.looked.setText(text)
        self.looked.show()
        self.show()

    def _add(self, place: Place) -> None:
        words = texts.PLACE_WORDS if place.words else texts.PLACE
        kind = texts.PLACE_KINDS.get(place.kind, place.kind)
        item = QListWidgetItem(words.format(address=place.address, kind=kind, words=retelling.told(place.words)))
        item.setData(Qt.ItemDataRole.UserRole, place.address)
        item.setSizeHint(QSize(0, theme.TOUCH_PX))
        if place.kind == SERIAL:
            item.setToolTip(plain_hint(texts.PLACE_SERIAL_HINT))
        self.places.addItem(item)

    def _pick(self, item: QListWidgetItem) -> None:
        """Picked, the list makes room; looking again shows it at once."""
        self.looked.hide()
        self.places.hide()
        self.picked.emit(str(item.data(Qt.ItemDataRole.UserRole)))

    # what it told

    def say(self, text: str, *, alarm: bool = False) -> None:
        """A line of its own; "" for none."""
        self.said.setText(text)
        set_look(self.said, "look" if alarm else "", name="tone")
        self.line.setVisible(bool(text) or not self.output.isHidden())
        self.setVisible(not (self.line.isHidden() and self.looked.isHidden()))

    def say_unusable(self, resource: str, output: int, why: str) -> None:
        """What the supply at an address answered last came to: `why` it can't be used, "" where it can."""
        self._unusable[resource, output] = why

    def why_unusable(self, resource: str, output: int) -> str:
        return self._unusable.get((resource, output), "")

    def show_report(self, told: Told | None, *, unfold: bool = False) -> None:
        self.report.show_told(told)
        self.open.setVisible(told is not None and told.dialect is not None)
        self._unfold(unfold and not self.open.isHidden())

    def _unfold(self, shown: bool) -> None:
        self.report.setVisible(shown)
        self.open.setText(texts.REPORT_HIDE if shown else texts.REPORT_SHOW)

    # which output

    def output_for(self, resource: str) -> int:
        return self._output if resource == self._resource else 1

    def is_for(self, resource: str) -> bool:
        return resource == self._resource

    def put_output(self, resource: str, output: int) -> None:
        self._resource, self._output = resource, output
        self.offer_outputs(1)

    def offer_outputs(self, count: int) -> None:
        """A choice where there is one to make; an output that was chosen before stays in it."""
        count = max(count, self._output)
        self.output.clear()
        self.output.addItems([texts.OUTPUT_CHOICE.format(number=number) for number in range(1, count + 1)])
        self.output.setCurrentIndex(self._output - 1)
        self.output.setVisible(count > 1)

    def _choose(self, index: int) -> None:
        self._output = index + 1
        self.output_chosen.emit()

    def lock(self, why: str) -> None:
        """Why nothing is chosen now: a run is on, or it is being asked."""
        for part in (self.output, self.places, self.report.button):
            grey(part, why)
