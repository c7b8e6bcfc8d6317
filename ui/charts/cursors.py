"""Two lines that are laid on a curve by hand, and what lies between them."""

from dataclasses import dataclass

import numpy as np

from benchlog.quantities import show
from ui import curve_texts as texts
from ui.charts.overlay_lines import AMPS, VOLTS, Line

GRAB_PX = 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Cursors:
    """s since the trigger. `held`: which of the two the keys move, 0 or 1."""

    first_s: float
    second_s: float
    held: int = 0

    @property
    def both(self) -> tuple[float, float]:
        return self.first_s, self.second_s

    def moved(self, which: int, to_s: float) -> "Cursors":
        first, second = (to_s if which == number else at for number, at in enumerate(self.both))
        return Cursors(first_s=first, second_s=second, held=which)

    def other(self) -> "Cursors":
        return Cursors(first_s=self.first_s, second_s=self.second_s, held=1 - self.held)

    def next(self, *, forward: bool) -> "Cursors | None":
        """What Tab goes to, from the first to the second; None where it leaves the chart."""
        return self.other() if self.held == (0 if forward else 1) else None


def laid_on(low_s: float, high_s: float) -> Cursors:
    """Where they are when they are shown: well in view."""
    apart = high_s - low_s
    return Cursors(first_s=low_s + 0.25 * apart, second_s=low_s + 0.6 * apart)


def values_at(line: Line, at_s: float, lead_ohm: float) -> tuple[float | None, float | None]:
    """V and A of a line there, straight between its readings; None outside of it."""
    if not line.t_s.size or not line.t_s[0] <= at_s <= line.t_s[-1]:
        return None, None
    found = []
    for what in (VOLTS, AMPS):
        values = line.of(what, lead_ohm)
        found.append(float(np.interp(at_s, line.t_s, values)) if values.size else None)
    return found[0], found[1]


def read_out(cursors: Cursors, line: Line | None, lead_ohm: float) -> str:
    """What the line that is picked out is at both cursors; Δt, ΔV and ΔI from the first to the second."""
    apart = cursors.second_s - cursors.first_s
    if line is None:
        return texts.CURSOR_TIME.format(seconds=_signed(apart, "s"))
    first, second = (values_at(line, at_s, lead_ohm) for at_s in cursors.both)
    volts, amps = (
        _signed(None if before is None or after is None else after - before, unit)
        for before, after, unit in zip(first, second, ("V", "A"), strict=True)
    )
    at = [
        texts.CURSOR_AT.format(letter=letter, seconds=_seconds(at_s), volts=show(seen[0], "V"), amps=show(seen[1], "A"))
        for letter, at_s, seen in zip(texts.CURSOR_LETTERS, cursors.both, (first, second), strict=True)
    ]
    words = texts.CURSOR_ALL if line.name else texts.CURSOR_UNNAMED
    return words.format(name=line.name, first=at[0], second=at[1], seconds=_signed(apart, "s"), volts=volts, amps=amps)


def _seconds(value: float) -> str:
    """Of a long run to the hundredth: three digits would not tell one kick from the next."""
    return show(value, "s") if abs(value) < 10 else f"{value:.2f} s"


def _signed(value: float | None, unit: str) -> str:
    shown = _seconds(value) if unit == "s" and value is not None else show(value, unit)
    return f"+{shown}" if value is not None and value > 0 else shown.replace("-", "−")
