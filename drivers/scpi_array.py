"""A supply's own measurement array over a dialect: whether there is one, its start, and what it held.

Nothing here touches a setpoint or the output switch.
"""

from collections.abc import Callable
from typing import NamedTuple

from drivers import scpi
from drivers.dialect import Array, Dialect
from drivers.supply import ArrayLimits, Dense, SupplyError, SupplyTimeout

_WIDEST_NUMBER = 16
"""Characters of one number in a list with its comma: -1.234567890E-01,"""

_LONGEST_S = 1.0


class Wire(NamedTuple):
    """How the supply that the array belongs to is spoken to. `garbled` makes its session suspect."""

    resource: str
    now: Callable[[], float]
    send: Callable[..., None]
    ask: Callable[[str], str]
    errors: Callable[[], list[str]]
    reopen: Callable[[], None]
    garbled: Callable[[ValueError], SupplyError]


class _Started(NamedTuple):
    sent_s: float
    received_s: float
    points: int
    interval_s: float


class MeasurementArray:
    """The array that the dialect describes, for as long as its supply is open."""

    def __init__(self, dialect: Dialect, array: Array, wire: Wire) -> None:
        self._dialect = dialect
        self._array = array
        self._wire = wire
        self._started: _Started | None = None
        self._found_set: tuple[float, int] | None = None

    def limits(self) -> ArrayLimits | None:
        """What it can do, None where there is none. Queries only. Raises SupplyError."""
        array = self._array
        if self._wire.resource.upper().startswith("ASRL"):
            return None  # a serial line carries some ten samples in the time that a reply may take
        self._wire.errors()
        if self._number(array.ask_interval) is None or self._number(array.output_trigger) is not None:
            return None
        told_least_s, told_most = self._number(array.ask_least_interval), self._number(array.ask_most_points)
        least_s = max(array.least_interval_s, told_least_s or 0.0)
        most = min(array.most_points, array.most_reply_bytes // _WIDEST_NUMBER)
        if told_most is not None:
            most = min(most, int(told_most))
        return ArrayLimits(least_interval_s=least_s, most_points=most) if most >= 2 and least_s <= _LONGEST_S else None

    def start(self, limits: ArrayLimits, points: int, interval_s: float) -> float:
        """Starts it, and returns the interval (s) that the supply says it uses. Raises ValueError or SupplyError."""
        # The wire carries 1 µs, so an interval at the limit may lie half of that below it.
        if not limits.least_interval_s - 5e-7 <= interval_s <= _LONGEST_S or not 2 <= points <= limits.most_points:
            raise ValueError(
                f"{points} samples every {interval_s:g} s: from 2 to {limits.most_points} samples every"
                f" {limits.least_interval_s:g} to {_LONGEST_S:g} s are possible"
            )
        array, wire = self._array, self._wire
        self._started = None
        wire.errors()
        if self._found_set is None:
            self._found_set = (self._setting(array.ask_interval), int(self._setting(array.ask_points)))
        wire.send(array.abort)
        self._send_setting(interval_s, points, *array.at_once)
        used_s, used_points = self._setting(array.ask_interval), self._setting(array.ask_points)
        if used_points != points or not 0.0 < used_s <= 5.0:
            raise self._refused(f"{used_points:g} samples every {used_s:g} s, where {points} were asked for")
        sent_s = wire.now()
        if self._dialect.link.compound:
            wire.ask(scpi.join(array.start, array.ask_points))
        else:
            wire.send(array.start)
            wire.ask(array.ask_points)
        received_s = wire.now()
        problems = wire.errors()
        if problems:
            raise self._refused("; ".join(problems))
        self._started = _Started(sent_s, received_s, points, used_s)
        return used_s

    def fetch(self) -> Dense:
        """What it held, its settings put back. Raises ValueError or SupplyError."""
        started = self._started
        if started is None:
            raise ValueError("the array was not started")
        sent_s, received_s, points, interval_s = started
        if self._wire.now() < received_s + points * interval_s:
            raise ValueError(f"the array is full only {points * interval_s:g} s after its start")
        self._wire.errors()
        volts, amps = self._list(self._array.volts, points), self._list(self._array.amps, points)
        problems = self._wire.errors()
        self._started = None
        self._put_back()
        if problems:
            raise SupplyError(self._wire.resource, f"its measurement array is doubtful: {'; '.join(problems)}")
        return Dense(
            began_s=0.5 * (sent_s + received_s),
            u_began_s=0.5 * (received_s - sent_s),
            interval_s=interval_s,
            volts=volts,
            amps=amps,
        )

    def _put_back(self) -> None:
        """Interval and number of samples as they were found: in some supplies readings use them too."""
        if self._found_set is not None:
            interval_s, points = self._found_set
            self._found_set = None
            self._send_setting(interval_s, points)
            self._wire.errors()

    def _send_setting(self, interval_s: float, points: int, *more: str) -> None:
        interval, number = scpi.seconds(interval_s), str(points)
        self._wire.send(self._array.interval.format(value=interval), self._array.points.format(value=number), *more)

    def _refused(self, why: str) -> SupplyError:
        self._wire.send(self._array.abort)
        self._put_back()
        return SupplyError(self._wire.resource, f"its measurement array did not start: {why}")

    def _list(self, query: str, points: int) -> tuple[float, ...]:
        answer = self._answer(query)
        if answer is None:
            why = "; ".join(self._wire.errors()) or "it says nothing"
            self._put_back()
            raise SupplyError(self._wire.resource, f"its measurement array has nothing to give: {why}")
        try:
            return scpi.numbers(answer, points)
        except ValueError as error:
            raise self._wire.garbled(error) from error

    def _setting(self, query: str) -> float:
        try:
            return scpi.number(self._wire.ask(query))
        except ValueError as error:
            raise self._wire.garbled(error) from error

    def _number(self, query: str) -> float | None:
        """A value, None where the supply does not know the query: silence and an error entry are answers too."""
        try:
            answer = self._answer(query)
        except SupplyTimeout:
            self._wire.reopen()
            answer = None
        if self._wire.errors() or answer is None:
            return None
        try:
            return scpi.number(answer)
        except ValueError:
            return None

    def _answer(self, query: str) -> str | None:
        """A reply, None where the supply does not know the query. Raises SupplyTimeout where that is silence, as it is
        if only one unit goes in one message."""
        if not self._dialect.link.compound:
            return self._wire.ask(query)
        text = self._wire.ask(scpi.join(self._dialect.errors.ask, query))
        try:
            return scpi.after_error(text)
        except ValueError as error:
            raise self._wire.garbled(error) from error
