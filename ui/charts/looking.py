"""Where one looks on a run, and what its cursors read: what the keys ask for, and the words for it. No widget."""

from dataclasses import dataclass

from ui import texts
from ui.charts.cursors import Cursors, laid_on, read_out
from ui.charts.framing import LEAST_VIEW_S, usual_span
from ui.charts.keys import ALONG, CLOSER, Asked
from ui.charts.marks import Shown
from ui.charts.overlay_lines import Line

Span = tuple[float, float]
_WAYS = {Asked.LEFT: -1, Asked.RIGHT: 1}


@dataclass(slots=True, kw_only=True)
class Looking:
    """`chosen`: seconds picked by hand; None for the whole of a finished run, and for following one that goes on."""

    shown: Shown
    chosen: Span | None = None
    cursors: Cursors | None = None

    def view(self) -> Span:
        return self.chosen or usual_span(self.shown)

    @property
    def unfollowed(self) -> bool:
        """Whether readings come that are not gone along with."""
        return self.chosen is not None and not self.shown.finished and len(self.shown.readings) > 0

    def show_cursors(self, shown: bool) -> None:
        low, high = self.view()
        last_s = self.shown.last_s
        self.cursors = laid_on(low, min(high, last_s) if low < last_s else high) if shown else None

    def move_cursor(self, which: int, to_s: float) -> None:
        if self.cursors is not None:
            self.cursors = self.cursors.moved(which, to_s)

    def obey(self, asked: Asked, *, steps: int, columns: int) -> bool:
        """Whether that means anything now. `steps`: px, of `columns` in all, that an arrow moves a cursor by."""
        low, high = self.view()
        way, cursors = _WAYS.get(asked, 0), self.cursors
        if asked is Asked.CURSORS:
            self.show_cursors(cursors is None)
        elif asked is Asked.WHOLE:
            self.chosen = None
        elif asked in (Asked.CLOSER, Asked.WIDER):
            self._closer(CLOSER if asked is Asked.WIDER else 1 / CLOSER)
        elif way and cursors is not None:
            self.move_cursor(cursors.held, cursors.both[cursors.held] + way * steps * (high - low) / columns)
        elif way:
            along = way * ALONG * (high - low)
            self.chosen = low + along, high + along
        elif asked is Asked.OTHER_CURSOR and cursors is not None:
            self.cursors = cursors.other()
        else:
            return False
        return True

    def _closer(self, factor: float) -> None:
        """Around the cursor that is held, where it is in sight, else around the middle."""
        low, high = self.view()
        at_s = None if self.cursors is None else self.cursors.both[self.cursors.held]
        if at_s is None or not low <= at_s <= high:
            at_s = (low + high) / 2
        factor = max(factor, LEAST_VIEW_S / (high - low))
        self.chosen = at_s + (low - at_s) * factor, at_s + (high - at_s) * factor

    # in words

    def read(self) -> str:
        """What the cursors read; "" without them."""
        if self.cursors is None:
            return ""
        readings = self.shown.readings
        return read_out(self.cursors, Line(t_s=readings.t_s, volts=readings.volts, amps=readings.amps), 0.0)

    def looked(self) -> str:
        """Which part is in view; "" for the whole, and for a run that is followed."""
        if self.chosen is None:
            return ""
        words = texts.CHART_NOT_FOLLOWED if self.unfollowed else texts.CHART_ZOOMED
        return looked_words(words, self.chosen, self.shown.end_s)

    def way_back(self) -> str:
        """What the button is called that shows the usual view again; "" where that is shown."""
        if self.chosen is None:
            return ""
        return texts.CHART_FOLLOW if self.unfollowed else texts.CHART_BACK


def looked_words(words: str, span: Span, whole_s: float) -> str:
    """No finer than what is in view needs."""
    if words == texts.CHART_ZOOMED and span[1] - span[0] > whole_s:
        words = texts.CHART_WIDER
    places = 3 if span[1] - span[0] < 1 else 1
    low, high, whole = (f"{round(at_s, places) + 0.0:.10g} s".replace("-", "−") for at_s in (*span, whole_s))
    return words.format(low=low, high=high, whole=whole)
