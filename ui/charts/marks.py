"""What is drawn on a chart besides the lines: steps as bands, events as marks, ceilings; and where their words fit."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from ui.charts.readings import Readings


@dataclass(slots=True, kw_only=True)
class Band:
    """A step, from `begin_s` until `end_s`, or until now where that is None."""

    name: str
    important: bool = False
    begin_s: float
    end_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """An event with a word. A `strong` one gets a dotted line through both plots."""

    t_s: float
    word: str
    strong: bool = False


@dataclass(slots=True, kw_only=True)
class Shown:
    """All of one run that a chart shows. `tops` and `ceilings`: volts, then amps.

    `under`: another run's readings, drawn dashed below it, with their name.
    """

    readings: Readings = field(default_factory=Readings)
    under: Readings = field(default_factory=Readings)
    under_name: str = ""
    bands: list[Band] = field(default_factory=list)
    marks: list[Mark] = field(default_factory=list)
    tops: tuple[float, float] = (0.0, 0.0)
    """The highest readings so far."""
    ceilings: tuple[float | None, float | None] = (None, None)
    finished: bool = False
    whole_s: float | None = None
    """All of it is in view while it goes on, too, and at least so many s; None where the latest of it is."""

    @property
    def last_s(self) -> float:
        return float(self.readings.t_s[-1]) if len(self.readings) else 0.0

    @property
    def end_s(self) -> float:
        """Where the longer of the two ends."""
        return max(self.last_s, float(self.under.t_s[-1]) if len(self.under) else 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A word with its left edge, in pixels."""

    left: float
    text: str


LABEL_GAPS = (20.0, 16.0)
"""px between the middles of two labels, one above the other; the second where there is no room for the first."""


def free_level(wanted: float, taken: Iterable[float], low: float, high: float) -> float:
    """The level nearest to the wanted one at which a label runs into none of those taken, from `low` to `high` px."""
    others, wanted = list(taken), min(max(wanted, low), max(low, high))
    for gap in LABEL_GAPS:
        places = [wanted, low, high, *(level + way * gap for level in others for way in (1, -1))]
        free = [
            place
            for place in places
            if low <= place <= high and all(abs(place - level) >= gap - 1e-6 for level in others)
        ]
        if free:
            return min(free, key=lambda place: abs(place - wanted))
    return max((low, high), key=lambda place: min(abs(place - level) for level in others))


def fit_words(
    wanted: Iterable[tuple[float, str, bool]],
    width_of: Callable[[str], float],
    right_edge: float,
    taken: Iterable[tuple[float, float]] = (),
    gap: float = 8.0,
) -> list[Word]:
    """Words (left, text, important) at their places; one that would run into another, out, or into what is there (from,
    to) is left away.

    The important ones are placed first, then the others from left to right.
    """
    placed: list[tuple[float, float, str]] = []
    others = list(taken)
    for left, text, _ in sorted(wanted, key=lambda word: (not word[2], word[0])):
        right = left + width_of(text)
        around = [(begin, end) for begin, end, _ in placed] + others
        if right <= right_edge and all(right + gap <= begin or left >= end + gap for begin, end in around):
            placed.append((left, right, text))
    return [Word(left=left, text=text) for left, _, text in sorted(placed)]
