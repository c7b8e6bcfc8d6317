"""A figure beside its limits in one and the same prefix, so that the three are compared at a glance."""

import math
from dataclasses import dataclass

from benchlog.motor.limits import JudgedFigure
from benchlog.quantities import show
from ui import curve_texts as texts
from ui import retelling

_PREFIXES = {-6: "µ", -3: "m", 0: "", 3: "k"}
DIGITS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureWords:
    """`value`: with its unit; `limits`: in the same, without it; `outside`: by how much, with it; or that it is in."""

    name: str
    value: str
    limits: str
    outside: str
    inside: bool | None


def words_of(row: JudgedFigure) -> FigureWords:
    prefix, say = _scale(row)
    value = texts.NO_VALUE if row.value is None else f"{say(row.value)} {prefix}{row.unit}"
    limits = _limits(row, say)
    if row.value is None and row.high is not None:
        limits = f"{limits} {prefix}{row.unit}"
    return FigureWords(
        name=label_words(row.label),
        value=value,
        limits=limits,
        outside=_outside(row, say, f"{prefix}{row.unit}"),
        inside=row.inside,
    )


def label_words(label: str) -> str:
    """A figure's name as it stands in a table."""
    words = retelling.told(label)
    return words[:1].upper() + words[1:]


class _Say:
    """A number in one scale, with as many places as the largest of them needs."""

    def __init__(self, power: int, places: int) -> None:
        self._factor, self._places = 10.0**power, places

    def __call__(self, value: float, *, signed: bool = False) -> str:
        return f"{value / self._factor:{'+' if signed else ''}.{self._places}f}".replace("-", "−")

    def finely(self, value: float) -> str:
        """One digit, however small."""
        return f"{value / self._factor:+.1g}".replace("-", "−")


def _scale(row: JudgedFigure) -> tuple[str, _Say]:
    """By the largest of the value and its limits."""
    largest = max((abs(one) for one in (row.value, row.low, row.high) if one), default=1.0)
    power = 0 if row.unit == "s" else min(3, max(-6, 3 * math.floor(math.log10(largest) / 3)))
    places = max(0, DIGITS - 1 - math.floor(math.log10(largest / 10.0**power)))
    say = _Say(power, min(places, DIGITS))
    return _PREFIXES[power], say if row.inside is not False or _differ(row, say) else _Say(power, places + 1)


def _differ(row: JudgedFigure, say: _Say) -> bool:
    """Whether a value that is outside reads otherwise than its limits."""
    return row.value is None or say(row.value) not in [say(limit) for limit in (row.low, row.high) if limit is not None]


def _limits(row: JudgedFigure, say: _Say) -> str:
    if row.high is None:
        return texts.NO_VALUE
    if row.low is None:
        return texts.AT_MOST.format(high=say(row.high))
    return texts.LIMITS_FROM_TO.format(low=say(row.low), high=say(row.high))


def _outside(row: JudgedFigure, say: _Say, unit: str) -> str:
    if row.inside is None or row.value is None:
        return texts.NO_VALUE
    if row.inside:
        return texts.INSIDE
    beyond = row.value - row.high if row.high is not None and row.value > row.high else row.value - (row.low or 0.0)
    told = say(beyond, signed=True)
    return f"{told if any(digit in told for digit in '123456789') else say.finely(beyond)} {unit}"


def margin_share(row: JudgedFigure) -> float | None:
    """How far inside (> 0) or outside the nearest limit, by the width of the band; None where there is none."""
    wide = (row.high or 0.0) - (row.low or 0.0)
    return None if row.margin is None or wide <= 0 else row.margin / wide


def margin_words(row: JudgedFigure) -> str:
    """How far inside (+) or outside (−) the nearest limit, with its unit, and in % of the band."""
    share = margin_share(row)
    if row.margin is None or share is None:
        return texts.NO_VALUE
    shown = f"{show(row.margin, row.unit, 2)} · {100 * share:.0f} %"
    return f"+{shown}" if row.margin > 0 else shown.replace("-", "−")
