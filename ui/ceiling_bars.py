"""How much of each ceiling is used, as bars and as figures."""

import math

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QSizePolicy, QWidget

from benchlog.bench.frames import Used
from benchlog.recovery.ceilings import Ceilings
from ui import retelling, texts, theme
from ui.density import ROOMY, Density
from ui.pieces import Elided, button, label
from ui.theme import Tokens

MOST_CEILINGS = len(texts.USED_NAMES)
BAR_PX, BELOW_BAR_PX = 4, 2
HOUR_S = 3600.0
"""The room below shows that a bar belongs to the line above it."""
NEAR = 0.9
SPENT = frozenset({"winding_c", "locked_s", "energy_j", "on_s", "kicks"})
"""What is used up little by little. Volts and amps stand at their ceiling in ordinary work: that is no news."""


class CeilingBars(QFrame):
    """How much of each ceiling is used, as value / ceiling, the layer that sets it, and a bar below."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setProperty("look", "card")
        self.of_run = False
        """Whether what is shown was used by a run, and isn't only what holds before one."""
        self._used: list[Used] = []
        self._most: dict[str, Used] = {}
        self._another = True
        self._density, self._unfolded = ROOMY, False
        self._grid = QGridLayout(self)
        self._grid.setVerticalSpacing(1)
        self._grid.setHorizontalSpacing(8)
        self._grid.setColumnStretch(0, 1)
        self._title = Elided(texts.USED_TITLE, "second", px=theme.SECOND_PX)
        self._set_by = label(texts.USED_SET_BY, "second", px=theme.SECOND_PX)
        self._unfold = button("", "ceilings_all", "room", accessible=texts.USED_ALL_NAME)
        self._unfold.setFont(theme.font(theme.SECOND_PX))
        self._unfold.setMinimumHeight(24)
        self._unfold.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._unfold.clicked.connect(self._press_unfold)
        self._head = QWidget()
        head = QHBoxLayout(self._head)
        head.setContentsMargins(0, 0, 0, 0)
        head.setSpacing(4)
        head.addWidget(self._title, 1)
        head.addWidget(self._unfold)
        self._grid.addWidget(self._set_by, 0, 2)
        self._none = label(texts.USED_NONE, "second", px=theme.SECOND_PX)
        self._grid.addWidget(self._none, 1, 0, 1, 3)
        self._rows: list[Row] = []
        for index in range(MOST_CEILINGS):
            row = Row(tokens)
            row.figures.setTextFormat(Qt.TextFormat.RichText)  # figures of this program only
            row.figures.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            for column, part in enumerate((row.name, row.figures, row.layer)):
                self._grid.addWidget(part, 2 * index + 2, column)
            self._grid.addWidget(row.bar, 2 * index + 3, 0, 1, 3)
            self._rows.append(row)
        self.blank()
        self.fit(ROOMY)

    def fit(self, density: Density) -> None:
        """Where it is narrow the ceiling nearest its end stands for all, until they are asked for."""
        self._density = density
        self._grid.removeWidget(self._head)
        self._grid.addWidget(self._head, 0, 0, 1, 3 if density.narrow else 2)
        side = 10 if density.narrow else 18
        self._grid.setContentsMargins(side, 4 if density.narrow else 8, side, 6 if density.narrow else 10)
        self._lay()

    def _press_unfold(self) -> None:
        self._unfolded = not self._unfolded
        self._lay()

    def rest(self) -> None:
        """No run is on: what is shown is the most that the last one used of each."""
        if self.of_run:
            self._show(list(self._most.values()), texts.USED_LAST_TITLE)
            self.of_run = True

    def blank(self) -> None:
        """For no job, or another one."""
        self._show([], texts.USED_TITLE)

    def show_before(self, ceilings: Ceilings) -> None:
        """What holds for the job; nothing is used yet, and the supply may lower it."""
        bounds = ((name, getattr(ceilings, name)) for name in texts.USED_NAMES)
        used = [Used(name, math.nan, bound.value, bound.layer) for name, bound in bounds]
        self._show(used, texts.USED_BEFORE_TITLE)
        self._title.setToolTip(texts.USED_BEFORE_HINT)

    def show_used(self, used: list[Used]) -> None:
        if self._another:
            self._most, self._another = {}, False
        for one in used:
            before = self._most.get(one.name)
            if before is None or math.isnan(before.value) or one.value > before.value:
                self._most[one.name] = one
        self._show(used, texts.USED_TITLE)
        self.of_run = True

    def begin(self) -> None:
        """Another run: from its first readings on, nothing of the one before counts."""
        self._another = True

    def _show(self, used: list[Used], title: str) -> None:
        self.of_run = False
        self._title.say(title)
        self._used = used
        for row, one in zip(self._rows, used, strict=False):
            self._fill(row, one)
        self._lay()

    def _lay(self) -> None:
        used, narrow = self._used, self._density.narrow
        one = narrow and not self._unfolded
        first = max(range(len(used)), key=lambda index: _share(used[index]), default=0)
        self._none.setVisible(not used)
        self._set_by.setVisible(bool(used) and not narrow)
        self._unfold.setVisible(bool(used) and narrow)
        self._unfold.setText(texts.USED_ALL.format(count=len(used)) if one else texts.USED_NEAREST)
        for index, row in enumerate(self._rows):
            shown = index < len(used) and (index == first or not one)
            for part in row.parts():
                part.setVisible(shown and not (narrow and part is row.layer))

    def _fill(self, row: "Row", used: Used) -> None:
        name, unit = texts.USED_NAMES.get(used.name, (used.name, ""))
        value, ceiling = _figures(used, unit)
        layer = texts.LAYER_NAMES.get(used.layer, used.layer)
        row.name.say(name)
        share = used.value / used.ceiling if used.ceiling > 0 and math.isfinite(used.value) else 0.0
        row.bar.set_share(share, near=share >= NEAR and used.name in SPENT)
        row.figures.setText(texts.USED_OF.format(value=value, ceiling=ceiling))
        row.layer.setText(retelling.told(used.layer))
        for part in row.parts():
            part.setToolTip(
                texts.USED_HINT.format(name=name, what=texts.USED_WHAT[used.name], ceiling=ceiling, layer=layer)
            )
        row.bar.setAccessibleName(texts.USED_ACCESSIBLE.format(name=name, value=value, ceiling=ceiling, layer=layer))

    def set_tokens(self, tokens: Tokens) -> None:
        for row in self._rows:
            row.bar.set_tokens(tokens)


def _share(used: Used) -> float:
    """For which is nearest its end: what is used up counts, and volts and amps only where nothing is."""
    if not (used.ceiling > 0 and math.isfinite(used.value)):
        return -1.0
    return used.value / used.ceiling if used.name in SPENT else 0.0


class Row:
    """The parts of one ceiling's line."""

    def __init__(self, tokens: Tokens) -> None:
        self.name, self.bar = Elided("", px=theme.SECOND_PX), UsedBar(tokens)
        self.figures, self.layer = (label("", "second", px=theme.SECOND_PX) for _ in range(2))

    def parts(self) -> tuple[QWidget, ...]:
        return self.name, self.figures, self.layer, self.bar


def _figures(used: Used, unit: str) -> tuple[str, str]:
    """Both in the ceiling's own unit, so that they can be compared at a glance."""
    milli, hours = unit == "A" and used.ceiling < 1, unit == "s" and used.ceiling >= HOUR_S
    factor = 1e3 if milli else 1 / HOUR_S if hours else 1.0
    places = 0 if milli or unit in ("°C", "J", "") else 1 if unit == "V" else 2
    shown_unit = "mA" if milli else "h" if hours else unit
    value = f"{max(0.0, used.value * factor):.{places}f}" if math.isfinite(used.value) else texts.NOTHING
    return value, f"{used.ceiling * factor:.4g} {shown_unit}".strip()


class UsedBar(QWidget):
    """A bar that is full at the ceiling; amber where it is nearly used up."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self._share = 0.0
        self._near = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(52, BAR_PX + BELOW_BAR_PX)

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
        box = QRectF(0, 0, self.width(), BAR_PX)
        painter.setBrush(QColor(self._tokens.selection))
        painter.drawRoundedRect(box, 2, 2)
        painter.setBrush(QColor(self._tokens.amber if self._near else self._tokens.second))
        if self._share > 0:
            painter.drawRoundedRect(QRectF(0, 0, max(3.0, box.width() * self._share), box.height()), 2, 2)
        painter.end()
