"""How closely the window's parts stand: one of three densities, by the size of the window, and what each comes to.

Parts with proportions of their own have `fit(density)`; what can wrap or reflow does so by the width it gets
(`ui.wrapping`), and what still has no room is scrolled to. Sizes in logical pixels, as everywhere.
"""

from dataclasses import dataclass

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from ui import theme

SENTENCE, NARROW = "sentence", "narrow"
"""Property of a label that says what is happening: its type follows the density of the window; and of the
ground, for the style sheet."""
LEAST = QSize(683, 340)
"""1366 x 768 at 200 %, less what the desktop keeps for its bar and the title of a window."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Density:
    """`narrow`: there is room for what counts only, and the rest is one press, hover or scroll away. `off_px` is the
    height of "Output off"; `chart_px` the least of a chart; `lent_px` the supply's side lent to the curves."""

    name: str
    narrow: bool
    header_px: int
    foot_px: int
    side_px: int
    gap_px: int
    rail_px: int
    rail_row_px: int
    panel_px: int
    lent_px: int
    numeral_px: int
    sentence_px: int
    off_px: int
    chart_px: int

    def dress(self, root: QWidget) -> None:
        """`root` and every part within it that has proportions of its own, and the sentences at the top of pages."""
        for part in (root, *root.findChildren(QWidget)):
            if isinstance(part, QPushButton):  # the style sheet gives it less room beside its word
                part.style().unpolish(part)
                part.style().polish(part)
                part.updateGeometry()
            fit = getattr(part, "fit", None)
            if fit is not None:
                fit(self)
            elif isinstance(part, QLabel) and part.property(SENTENCE):
                part.setFont(theme.semibold(self.sentence_px))


ROOMY = Density(
    name="roomy",
    narrow=False,
    header_px=52,
    foot_px=28,
    side_px=20,
    gap_px=16,
    rail_px=192,
    rail_row_px=78,
    panel_px=256,
    lent_px=392,
    numeral_px=50,
    sentence_px=theme.SENTENCE_PX,
    off_px=82,
    chart_px=200,
)
CLOSE = Density(
    name="close",
    narrow=True,
    header_px=48,
    foot_px=26,
    side_px=12,
    gap_px=12,
    rail_px=44,
    rail_row_px=56,
    panel_px=224,
    lent_px=344,
    numeral_px=36,
    sentence_px=18,
    off_px=64,
    chart_px=180,
)
TIGHT = Density(
    name="tight",
    narrow=True,
    header_px=44,
    foot_px=0,
    side_px=8,
    gap_px=8,
    rail_px=44,
    rail_row_px=theme.TOUCH_PX,
    panel_px=196,
    lent_px=308,
    numeral_px=27,
    sentence_px=16,
    off_px=52,
    chart_px=140,
)
DENSITIES = (ROOMY, CLOSE, TIGHT)
_FROM = ((QSize(1180, 700), ROOMY), (QSize(900, 500), CLOSE))
"""From this size of the window up; both sides count."""


def density_of(size: QSize) -> Density:
    for least, density in _FROM:
        if size.width() >= least.width() and size.height() >= least.height():
            return density
    return TIGHT
