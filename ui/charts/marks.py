"""What is drawn on a chart besides the lines: steps as bands, events as marks, ceilings; and where their words fit."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass


@dataclass(slots=True, kw_only=True)
class Band:
    """A step, from `begin_s` until `end_s`, or until now where that is None."""

    name: str
    begin_s: float
    end_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """An event with a word. A `strong` one gets a dotted line through both plots."""

    t_s: float
    word: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A word with its left edge, in pixels."""

    left: float
    text: str


def fit_words(
    wanted: Iterable[tuple[float, str]], width_of: Callable[[str], float], right_edge: float, gap: float = 8.0
) -> list[Word]:
    """Words at their places from left to right; one that would run into the one before it, or out, is left away."""
    placed: list[Word] = []
    free_from = float("-inf")
    for left, text in sorted(wanted, key=lambda pair: pair[0]):
        width = width_of(text)
        if left >= free_from and left + width <= right_edge:
            placed.append(Word(left=left, text=text))
            free_from = left + width + gap
    return placed
