"""How much of each ceiling is used, as bars and as figures."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QSizePolicy, QWidget

from benchlog.bench.frames import Used
from ui import texts, theme
from ui.pieces import label
from ui.theme import Tokens

MOST_CEILINGS = 6
NEAR = 0.9
SPENT = frozenset({"winding_c", "locked_s", "energy_j", "kicks"})
"""What is used up little by little. Volts and amps stand at their ceiling in ordinary work: that is no news."""


class CeilingBars(QFrame):
    """How much of each ceiling is used, as a bar and as value / ceiling."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setProperty("look", "card")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(18, 10, 18, 12)
        self._grid.setVerticalSpacing(6)
        self._grid.setHorizontalSpacing(10)
        self._grid.setColumnStretch(2, 1)
        self._title = label(texts.USED_TITLE, "second", px=theme.SECOND_PX)
        self._grid.addWidget(self._title, 0, 0, 1, 3)
        self._none = label(texts.USED_NONE, "second", px=theme.SECOND_PX)
        self._grid.addWidget(self._none, 1, 0, 1, 3)
        self._rows: list[tuple[QLabel, UsedBar, QLabel]] = []
        for row in range(MOST_CEILINGS):
            parts = (label("", px=theme.SECOND_PX), UsedBar(tokens), label("", "second", px=theme.SECOND_PX))
            parts[2].setAlignment(Qt.AlignmentFlag.AlignRight)
            for column, part in enumerate(parts):
                self._grid.addWidget(part, row + 2, column)
                part.hide()
            self._rows.append(parts)

    def rest(self) -> None:
        """No run is on: what is shown is of the last one."""
        if self._none.isHidden():
            self._title.setText(texts.USED_LAST_TITLE)

    def show_used(self, used: list[Used]) -> None:
        self._title.setText(texts.USED_TITLE)
        self._none.setVisible(not used)
        for index, parts in enumerate(self._rows):
            for part in parts:
                part.setVisible(index < len(used))
            if index < len(used):
                self._fill(parts, used[index])

    def _fill(self, parts: tuple[QLabel, "UsedBar", QLabel], used: Used) -> None:
        name, unit = texts.USED_NAMES.get(used.name, (used.name, ""))
        value, ceiling = _figures(used, unit)
        layer = texts.LAYER_NAMES.get(used.layer, used.layer)
        parts[0].setText(name)
        share = used.value / used.ceiling if used.ceiling > 0 else 0.0
        parts[1].set_share(share, near=share >= NEAR and used.name in SPENT)
        parts[2].setText(texts.USED_OF.format(value=value, ceiling=ceiling))
        for part in parts:
            part.setToolTip(texts.USED_HINT.format(name=name, ceiling=ceiling, layer=layer))
        parts[1].setAccessibleName(texts.USED_ACCESSIBLE.format(name=name, value=value, ceiling=ceiling, layer=layer))

    def set_tokens(self, tokens: Tokens) -> None:
        for _, bar, _ in self._rows:
            bar.set_tokens(tokens)


def _figures(used: Used, unit: str) -> tuple[str, str]:
    """Both in the ceiling's own unit, so that they can be compared at a glance."""
    milli = unit == "A" and used.ceiling < 1
    factor = 1e3 if milli else 1.0
    places = 0 if milli or unit in ("°C", "J", "") else 1 if unit == "V" else 2
    shown_unit = "mA" if milli else unit
    return f"{max(0.0, used.value * factor):.{places}f}", f"{used.ceiling * factor:.4g} {shown_unit}".strip()


class UsedBar(QWidget):
    """A bar that is full at the ceiling; amber where it is nearly used up."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self._share = 0.0
        self._near = False
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(52, 6)

    def set_share(self, share: float, *, near: bool) -> None:
        self._near = near
        self._share = min(max(share, 0.0), 1.0)
        self.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        box = QRectF(self.rect())
        painter.setBrush(QColor(self._tokens.selection))
        painter.drawRoundedRect(box, 3, 3)
        painter.setBrush(QColor(self._tokens.amber if self._near else self._tokens.second))
        if self._share > 0:
            painter.drawRoundedRect(QRectF(0, 0, max(3.0, box.width() * self._share), box.height()), 3, 3)
        painter.end()
