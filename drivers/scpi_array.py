"""A supply's own measurement array over a dialect: whether there is one, its start, and what it held.

Nothing here touches a setpoint or the output switch.
"""

from collections.abc import Callable
from typing import NamedTuple

from drivers import scpi
from drivers.dialect import Array, Dialect
from drivers.exchange import Exchange
from drivers.supply import ArrayLimits, Dense, SupplyError, SupplyTimeout

_WIDEST_NUMBER = 16
"""Characters of one number in a list with its comma: -1.234567890E-01,"""

_LONGEST_S = 1.0


class _Started(NamedTuple):
    sent_s: float
    received_s: float
    points: int
    interval_s: float


class MeasurementArray:
    """The array that the dialect describes, for as long as its supply is open."""

    def __init__(self, dialect: Dialect, array: Array, exchange: Exchange) -> None:
        self._dialect = dialect
        self._array = array
        self._exchange = exchange
        self._alive: Callable[[], None] = lambda: None
        self._started: _Started | None = None
        self._found_set: tuple[float, int] | None = None

    def limits(self) -> ArrayLimits | None:
        """What it can do, None where there is none. Queries only. Raises SupplyError."""
        array = self._array
        if self._exchange.resource.upper().startswith("ASRL"):
            return None  # a serial line carries some ten samples in the time that a reply may take
        self._exchange.errors()
        if self._number(array.ask_interval) is None or self._number(array.output_trigger) is not None:
            return None
        told_least_s, told_most = self._number(array.ask_least_interval), self._number(array.ask_most_points)
        least_s = max(array.least_interval_s, told_least_s or 0.0)
        most = min(array.most_points, array.most_reply_bytes // _WIDEST_NUMBER)
        if told_most is not None:
            most = min(most, int(told_most))
        return ArrayLimits(least_interval_s=least_s, most_points=most) if most >= 2 and least_s <= _LONGEST_S else None

    def start(self, limits: ArrayLimits, points: int, interval_s: float, alive: Callable[[], None]) -> float:
        """Starts it, and returns the interval (s) that the supply says it uses. Raises ValueError or SupplyError."""
        # The wire carries 1 µs, so an interval at the limit may lie half of that below it.
        if not limits.least_interval_s - 5e-7 <= interval_s <= _LONGEST_S or not 2 <= points <= limits.most_points:
            raise ValueError(
                f"{points} samples every {interval_s:g} s: from 2 to {limits.most_points} samples every"
                f" {limits.least_interval_s:g} to {_LONGEST_S:g} s are possible"
            )
        array, exchange = self._array, self._exchange
        self._started = None
        self._alive = alive
        alive()
        exchange.errors()
        if self._found_set is None:
            found_s, found_points = self._numbers(array.ask_interval, array.ask_points)
            self._found_set = (found_s, int(found_points))
        used_s, used_points = self._numbers(
            array.abort, *self._setting(interval_s, points), *array.at_once, array.ask_interval, array.ask_points
        )
        if used_points != points or not 0.0 < used_s <= 5.0:
            raise self._refused(f"{used_points:g} samples every {used_s:g} s, where {points} were asked for")
        sent_s = exchange.now()
        answers = self._answers(array.start, self._dialect.errors.ask)
        received_s = exchange.now()
        if not answers:
            raise self._refused("")
        try:
            code, text = scpi.error(answers[0])
        except ValueError as error:
            raise exchange.garbled(error) from error
        if code != 0:
            raise self._refused(f"{code}, {text}")
        self._started = _Started(sent_s, received_s, points, used_s)
        return used_s

    def fetch(self, alive: Callable[[], None]) -> Dense:
        """What it held, its settings put back. Raises ValueError or SupplyError."""
        started = self._started
        if started is None:
            raise ValueError("the array was not started")
        sent_s, received_s, points, interval_s = started
        if self._exchange.now() < received_s + points * interval_s:
            raise ValueError(f"the array is full only {points * interval_s:g} s after its start")
        self._alive = alive
        alive()
        self._exchange.errors()
        volts, amps = self._list(self._array.volts, points), self._list(self._array.amps, points)
        self._started = None
        problems = self._put_back()
        if problems:
            raise SupplyError(self._exchange.resource, f"its measurement array is doubtful: {'; '.join(problems)}")
        return Dense(
            began_s=0.5 * (sent_s + received_s),
            u_began_s=0.5 * (received_s - sent_s),
            interval_s=interval_s,
            volts=volts,
            amps=amps,
        )

    def _put_back(self) -> list[str]:
        """Interval and number of samples as they were found: in some supplies readings use them too. Then drains the
        error queue, and tells what was in it before."""
        self._alive()
        problems = self._exchange.errors()
        if self._found_set is not None:
            interval_s, points = self._found_set
            self._found_set = None
            self._exchange.send(*self._setting(interval_s, points))
            self._alive()
            self._exchange.errors()
        return problems

    def leave(self) -> None:
        """Stops what was started and never fetched, and puts its settings back. Raises SupplyError. Sends only, and so
        waits for no reply."""
        if self._found_set is None:
            return
        (interval_s, points), self._found_set, self._started = self._found_set, None, None
        self._exchange.send(self._array.abort, *self._setting(interval_s, points))

    def _setting(self, interval_s: float, points: int) -> tuple[str, str]:
        array = self._array
        return array.interval.format(value=scpi.seconds(interval_s)), array.points.format(value=str(points))

    def _refused(self, why: str) -> SupplyError:
        self._exchange.send(self._array.abort)
        why = "; ".join([why] * bool(why) + self._put_back()) or "it does not know how"
        return SupplyError(self._exchange.resource, f"its measurement array did not start: {why}")

    def _list(self, query: str, points: int) -> tuple[float, ...]:
        answers = self._answers(query)
        if not answers:
            why = "; ".join(self._put_back()) or "it says nothing"
            raise SupplyError(self._exchange.resource, f"its measurement array has nothing to give: {why}")
        try:
            return scpi.numbers(answers[0], points)
        except ValueError as error:
            raise self._exchange.garbled(error) from error

    def _numbers(self, *units: str) -> tuple[float, float]:
        answers = self._answers(*units)
        if len(answers) != 2:
            raise self._refused("")
        try:
            return scpi.number(answers[0]), scpi.number(answers[1])
        except ValueError as error:
            raise self._exchange.garbled(error) from error

    def _number(self, query: str) -> float | None:
        """A value, None where the supply does not know the query: silence and an error entry are answers too."""
        try:
            answers = self._answers(query)
        except SupplyTimeout:
            self._exchange.reopen()
            answers = []
        if self._exchange.errors() or not answers:
            return None
        try:
            return scpi.number(answers[0])
        except ValueError:
            return None

    def _answers(self, *units: str) -> list[str]:
        """The answers to the queries among the units, none where the supply threw the message away.

        In one message, behind a query for the error queue, which makes sure of a reply. Where only one unit goes in one
        message, an unknown query is silence and raises SupplyTimeout.
        """
        queries = [unit for unit in units if unit.partition(" ")[0].endswith("?")]
        if not self._dialect.link.compound:
            answers = []
            for unit in units:
                self._alive()
                if unit in queries:
                    answers.append(self._exchange.ask(unit))
                else:
                    self._exchange.send(unit)
            return answers
        self._alive()
        text = self._exchange.ask(scpi.join(self._dialect.errors.ask, *units))
        try:
            rest = scpi.after_error(text)
            if rest is None:
                return []
            return [rest] if len(queries) == 1 else scpi.replies(rest, len(queries))
        except ValueError as error:
            raise self._exchange.garbled(error) from error
