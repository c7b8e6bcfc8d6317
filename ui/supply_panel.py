"""The right of the window: what the supply does now, how much of each ceiling is used, and "Output off"."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchlog.bench.frames import Progress
from ui import texts, theme
from ui.ceiling_bars import CeilingBars
from ui.density import ROOMY, TIGHT, Density
from ui.numerals import Numerals
from ui.off_notice import OffNotice
from ui.off_state import OffState
from ui.output_off import OutputOffButton
from ui.pieces import Pages, label, scrolled
from ui.theme import Tokens


class SupplyPanel(QWidget):
    """`off_pressed` at a press of the button, `acknowledged` when a person says the supply was switched off by hand."""

    off_pressed = Signal()
    acknowledged = Signal()

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._density = ROOMY
        column = self._column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.numerals = Numerals(tokens)
        self.ceilings = CeilingBars(tokens)
        self.off = OffNotice(tokens)
        self.button = OutputOffButton(tokens)
        self._lent: QWidget | None = None
        self._lent_to, self._running, self._alarmed = False, False, False
        self.upper = Pages()
        self.upper.addWidget(self._live_part())
        column.addWidget(self.upper, 1)
        column.addWidget(self.off)
        column.addWidget(self.button)
        self.note = label("", "second", px=theme.SECOND_PX - 1, wrap=True)
        self.note.setAlignment(Qt.AlignmentFlag.AlignTop)
        column.addWidget(self.note)
        self.button.pressed.connect(self.off_pressed)
        self.off.acknowledged.connect(self.acknowledged)
        self.fit(ROOMY)

    def fit(self, density: Density) -> None:
        """The button and what it is not are whole at every size; the ceilings give way first, and are scrolled to."""
        self._density = density
        self._column.setSpacing(min(8, density.gap_px - 2))
        short = density is TIGHT
        self.note.setText(texts.NO_EMERGENCY_STOP_SHORT if short else texts.NO_EMERGENCY_STOP)
        self.note.setToolTip(texts.NO_EMERGENCY_STOP if short else "")
        self.note.setMinimumHeight(0)  # it would be counted for what the words need
        # The button stays where it is when the panel is wider.
        self.note.setFixedHeight(self.note.heightForWidth(density.panel_px))
        self._follow()

    def _live_part(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.numerals)
        below = QWidget()
        ceilings = QVBoxLayout(below)
        ceilings.setContentsMargins(0, 0, 0, 0)
        ceilings.addWidget(self.ceilings)
        ceilings.addStretch(1)
        area = scrolled(below)
        area.setMinimumHeight(1)  # all else is seen before the last of it
        column.addWidget(area, 1)
        return made

    def lend(self, other: QWidget) -> None:
        """The place above "Output off" to a room of its own, while no run is on."""
        self._lent = other
        self.upper.addWidget(other)
        self._follow()

    def show_lent(self, shown: bool) -> None:
        """Whether that room is looked at."""
        self._lent_to = shown
        self._follow()

    def show_run(self) -> None:
        """A run is on: volts, amps and ceilings are what counts, in every room."""
        self._running = True
        self.ceilings.begin()
        self._follow()

    def show_off(self, state: OffState, words: str, on: bool | None = None) -> None:
        """What is known about the output being off. `on`: by the last reading of a run, if there is one."""
        self.off.show_state(state, words, on)
        self._alarmed = state is OffState.NOT_CONFIRMED
        self._follow()

    def _follow(self) -> None:
        lent = self._lent_to and self._lent is not None
        self.setFixedWidth(self._density.lent_px if lent else self._density.panel_px)
        busy = self._running or self._alarmed  # then what the supply does is all that counts
        self.upper.setCurrentIndex(1 if lent and not busy else 0)
        self.upper.updateGeometry()

    def show_progress(self, progress: Progress) -> None:
        self.numerals.show_progress(progress)
        self.ceilings.show_used(progress.used)

    def rest(self) -> None:
        """No run is on: nothing is measured, and the last figures must not look as if they were live."""
        self._running = False
        self.numerals.rest()
        self.ceilings.rest()
        self._follow()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        for part in (self.numerals, self.ceilings, self.off, self.button):
            part.set_tokens(tokens)
