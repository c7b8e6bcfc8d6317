"""Captured starts as the terminal tells them: one object each, and a small table at the end."""

from collections.abc import Iterable, Iterator

from benchlog.motor.start_figures import FIGURES, FigureKind, figures_from_event
from benchlog.quantities import show
from benchlog.records import Event

_LEFT_OUT = {
    f"{prefix}{kind.name}{suffix}"
    for kind in FIGURES
    for prefix, suffix in (("", ""), ("", "_low"), ("", "_high"), ("why_", ""))
}
_WIDTHS = (7, 20, 18, 20, 18, 18, 0)


def start_fields(event: Event) -> dict[str, object]:
    """The values of a START event, its figures together: each with its 95 % interval, or why it is unknown."""
    found = figures_from_event(event)
    figures = {}
    for kind in FIGURES:
        fitted = found.values.get(kind.name)
        low, high = (None, None) if fitted is None else (fitted.low, fitted.high)
        value = None if fitted is None else fitted.value
        figures[kind.name] = {
            "value": value,
            "low": low,
            "high": high,
            "unit": kind.unit,
            "why": found.why.get(kind.name, ""),
        }
    return {name: value for name, value in event.values.items() if name not in _LEFT_OUT} | {"figures": figures}


def table(starts: Iterable[Event]) -> Iterator[str]:
    """A line a start, each figure with half the width of its 95 % interval; "—" where it could not be told."""
    yield _row("start", *(kind.label for kind in FIGURES), "")
    for event in starts:
        found = figures_from_event(event)
        cells = []
        for kind in FIGURES:
            fitted = found.values.get(kind.name)
            cells.append("—" if fitted is None else _around(kind, fitted.value, (fitted.high - fitted.low) / 2))
        yield _row(str(event.values.get("number", "")), *cells, str(event.values.get("turning", "")))


def _around(kind: FigureKind, value: float, half: float) -> str:
    """ "1.76 A ± 4.0 mA"; times in ms, as a start has them."""
    if kind.unit == "s":
        return f"{1000 * value:.0f} ms ± {1000 * half:.0f} ms"
    return f"{show(value, kind.unit)} ± {show(half, kind.unit, 2)}"


def _row(*cells: str) -> str:
    return "".join(f"{cell:{width}}" for cell, width in zip(cells, _WIDTHS, strict=True)).rstrip()
