"""How a lot stands: how many pass, and whether its test can tell units apart at all."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from ui import curve_texts as texts
from ui import retelling, theme
from ui.curves.reading import Shown
from ui.curves.units_page import LEAST_GOOD
from ui.pieces import Elided, FewLines, button, plain_hint

LOT_LINES = 3


class LotCard(QFrame):
    """A title and a few lines; what has no room is in the tooltip. `limits_wanted` where there can be some now."""

    limits_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("curves_lot")
        self.setProperty("look", "card")
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 6, 10, 6)
        row.setSpacing(8)
        column = QVBoxLayout()
        column.setSpacing(1)
        self.title = Elided("")
        self.title.setFont(theme.semibold())
        self.words = FewLines(LOT_LINES, "second", px=theme.SECOND_PX)
        self.words.setObjectName("curves_lot_words")
        column.addWidget(self.title)
        column.addWidget(self.words)
        self.limits = button(texts.TO_LIMITS, "curves_to_limits", accessible=texts.TO_LIMITS_NAME)
        self.limits.clicked.connect(self.limits_wanted)
        self.limits.hide()
        row.addLayout(column, 1)
        row.addWidget(self.limits)

    def show_shown(self, shown: Shown | None) -> None:
        self.setVisible(shown is not None)
        if shown is None:
            return
        lot = shown.lot
        title = texts.LOT_TITLE.format(name=lot.name) if lot is not None else texts.job_title(shown.job.number)
        self.title.say(title)
        self.limits.setVisible(_can_limit(shown))
        self.setToolTip(plain_hint(retelling.told(shown.repeat)))
        self.words.say(" ".join(part for part in _said(shown) if part))


def _can_limit(shown: Shown) -> bool:
    return shown.lot is not None and shown.limits is None and shown.good >= LEAST_GOOD


def _said(shown: Shown) -> list[str]:
    if shown.lot is None:
        judged = "" if shown.limits is None else _judged_by(shown)
        counted = texts.JOB_RUNS.format(count=texts.runs(len(shown.measured)))
        return [counted if shown.measured else texts.JOB_NO_RUNS, judged]
    rate = shown.rate
    counted = texts.LOT_NONE_JUDGED
    if rate is not None and rate.count:
        left = len(shown.measured) - rate.count
        words = texts.LOT_RATE_LEFT if left else texts.LOT_RATE
        counted = words.format(rate=retelling.told(rate.text), left=left)
    if shown.limits is None:
        if _can_limit(shown):  # beside the button there is no room for more
            return [texts.LOT_CAN_LIMIT.format(count=shown.good)]
        return [texts.LOT_NO_LIMITS, retelling.told(shown.repeat)]
    return [counted, retelling.told(shown.repeat or shown.limits.limits.warning), _judged_by(shown)]


def _judged_by(shown: Shown) -> str:
    kept = shown.limits
    return "" if kept is None else texts.LOT_JUDGED_BY.format(id=kept.id, n=kept.limits.n)
