"""Which seconds of a run are in view while nobody chose them, and how high a plot reaches."""

import math

from ui.charts.marks import Shown

FAR = 4.0
"""A ceiling so many times above the highest reading would press the line flat."""
LEAST_VIEW_S = 0.05
"""No closer than this."""
WHOLE_STEPS = 20
"""A run seen whole while it goes on gets room in so many steps: until the next one nothing that is drawn moves."""
LEAST_SPAN_S, FOLLOW_SPAN_S = 26.0, 40.0
"""While a run goes on: from nothing up to LEAST_SPAN_S at first, then the last FOLLOW_SPAN_S."""


def usual_span(shown: Shown) -> tuple[float, float]:
    """The whole of a finished run, or of one that is to be seen whole; the latest of another that goes on."""
    last_s = shown.last_s
    if shown.finished:
        return 0.0, max(1.0, shown.end_s * 1.02)
    if shown.whole_s is not None:
        return 0.0, _rounded_up(shown.end_s, WHOLE_STEPS) if shown.end_s > shown.whole_s else shown.whole_s
    if last_s <= FOLLOW_SPAN_S:
        return 0.0, LEAST_SPAN_S if last_s <= LEAST_SPAN_S else FOLLOW_SPAN_S
    return last_s - FOLLOW_SPAN_S, last_s


def height(highest: float, ceiling: float | None) -> float:
    """A round figure a little above the readings, and above their ceiling where that is near enough.

    Round, so that it moves seldom while readings rise.
    """
    if ceiling is not None and 0 < highest < ceiling / FAR:
        ceiling = None
    return _rounded_up(max(highest, ceiling or 0.0) * 1.06 or 1.0, 4)


def _rounded_up(needed: float, steps: int) -> float:
    """To the next of at most so many round steps."""
    step = 10.0 ** math.floor(math.log10(needed / steps))
    step *= next(factor for factor in (1, 2, 5, 10) if needed / steps <= factor * step * (1 + 1e-9))
    return step * math.ceil(needed / step - 1e-9)
