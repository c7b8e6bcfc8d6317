"""A measurement array in the words of any dialect."""

from collections.abc import Callable, Iterator

from drivers.dialect import Array
from drivers.simulated.array import SampleArray
from drivers.simulated.commands import shown
from drivers.simulated.outlet import Outlet
from drivers.simulated.status import Refusal

_LONGEST_S = 1.0
_STEP_S = 1e-6

Row = tuple[str, Callable[..., str | None], bool]
"""Unit, what it does, whether it asks."""


def rows(words: Array, array: SampleArray) -> Iterator[Row]:
    """What it does not have is a setpoint on trigger: that query stays unknown."""
    least_s, most = array.data.least_interval_s, array.data.most_points

    def within(value: float, low: float, high: float) -> float:
        if not low <= value <= high:
            raise Refusal(-222, f"{value:g}")
        return value

    def listed(outlet: Outlet, which: int) -> str:
        step = (outlet.data.step_v, outlet.data.step_a)[which]
        return ",".join(shown(sample[which], step) for sample in array.held())

    def set_interval(_: Outlet, seconds: float) -> None:
        array.set_interval(within(seconds, least_s, _LONGEST_S))

    def set_points(_: Outlet, count: float) -> None:
        array.set_points(within(count, 1, most))

    yield words.interval, set_interval, False
    yield words.ask_interval, lambda _: shown(array.interval_s, _STEP_S), True
    yield words.ask_least_interval, lambda _: shown(least_s, _STEP_S), True
    yield words.points, set_points, False
    yield words.ask_points, lambda _: str(array.points), True
    yield words.ask_most_points, lambda _: str(most), True
    for unit in words.at_once:
        yield unit, lambda _: None, False
    yield words.start, lambda _: array.start(), False
    yield words.abort, lambda _: array.abort(), False
    yield words.volts, lambda outlet: listed(outlet, 0), True
    yield words.amps, lambda outlet: listed(outlet, 1), True
