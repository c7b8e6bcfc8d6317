"""A Supply over a dialect and a session."""

import math
import time
from collections.abc import Callable
from dataclasses import replace

from drivers import scpi
from drivers.dialect import Dialect, for_output
from drivers.exchange import REOPEN_S, Exchange
from drivers.exchange import Session as Session
from drivers.identifying import gaps_of, identify, is_four_wire
from drivers.latches import Latches
from drivers.scpi_array import MeasurementArray
from drivers.scpi_reading import ReadingForm, quantities
from drivers.supply import ArrayLimits, Capabilities, Dense, NotASupply, Protection, Reading, Setpoint, SupplyError

FIRST_REPLY_S = 2.0
_FEEDS = 3
"""How often a timer that wants a word of its own gets it in the time that it is set to."""


class ScpiSupply:
    """Opens, identifies, and is then a Supply. `now` is the clock of the readings' times, in seconds.

    `open_session` takes the s that the opening and each reply may last. `output`: which one, from 1. `known`: what an
    earlier identification found; then nothing is asked before the first command. `wait` returns at a time of `now`;
    without it the process sleeps. Raises SupplyLost where nothing answers and NotASupply where something else does.
    """

    def __init__(
        self,
        open_session: Callable[[float], Session],
        dialect: Dialect,
        now: Callable[[], float],
        *,
        output: int = 1,
        known: Capabilities | None = None,
        wait: Callable[[float], None] | None = None,
    ) -> None:
        if not 1 <= output <= dialect.outputs.count:
            raise NotASupply(f"output {output}", f'the dialect "{dialect.name}" has {dialect.outputs.count} of them')
        gaps = gaps_of(dialect)
        self._dialect = dialect = for_output(dialect, output)
        self._form = ReadingForm(dialect, output)
        self._volts, self._amps = quantities(dialect)
        self._limit_a = 0.0
        self._feed_every_s: float | None = None
        self._fed_s = 0.0
        self._exchange = exchange = Exchange(
            open_session,
            dialect,
            now,
            wait or (lambda until_s: time.sleep(max(0.0, until_s - now()))),
            timeout_s=FIRST_REPLY_S if known is None else REOPEN_S,
            known=None if known is None else known.identity,
        )
        self._reading_message = exchange.in_one([query.unit for query in self._form.queries])
        self._latches = Latches(dialect, exchange)
        try:
            self.capabilities = known or identify(exchange, dialect, output, gaps, self._latches.found())
        except BaseException:
            exchange.close()
            raise
        self._latches.there = self.capabilities.latches
        # An answer that takes longer than three usual ones is no answer.
        exchange.set_timeout(max(0.3, 3.0 * self.capabilities.reply_s))
        self._array = MeasurementArray(dialect, dialect.array, exchange) if dialect.array is not None else None

    def read(self) -> Reading:
        if self._feed_every_s is not None and self._exchange.now() - self._fed_s >= self._feed_every_s:
            self._feed()
        exchange, form = self._exchange, self._form
        sent_s = exchange.now()
        replies = exchange.ask_each(form.queries, self._reading_message)
        received_s = exchange.now()
        try:
            return form.of(replies, sent_s, received_s)
        except ValueError as error:
            raise exchange.garbled(error) from error

    def set(self, setpoint: Setpoint) -> None:
        """Raises ValueError for what the wire can't say; then nothing was sent."""
        units = self._said(setpoint)
        self._limit_a = setpoint.amps
        self._exchange.send(*units)

    def _said(self, setpoint: Setpoint) -> list[str]:
        """Limit first, then volts."""
        program = self._dialect.program
        volts, amps = self._volts.said(setpoint.volts), self._amps.said(setpoint.amps)
        if program.both:
            return [program.both.format(volts=volts, amps=amps)]
        return [program.amps.format(value=amps), program.volts.format(value=volts)]

    def switch(self, on: bool) -> None:
        self._exchange.send(self._dialect.program.on if on else self._dialect.program.off)

    def off(self) -> None:
        """0 V and off, in one message where the dialect allows; otherwise off first, because messages take time."""
        off = self._dialect.program.off
        no_volts = self._said(Setpoint(volts=0.0, amps=self._limit_a))[-1]
        self._exchange.send(*([no_volts, off] if self._dialect.link.compound else [off, no_volts]))

    def protect(self, wanted: Protection) -> Protection:
        return self._latches.protect(wanted)

    def tripped(self) -> str | None:
        return self._latches.tripped()

    def clear(self) -> None:
        self.off()
        self._latches.clear()

    def errors(self) -> list[str]:
        return self._exchange.errors()

    def watch(self, silence_s: float | None) -> float | None:
        dog = self._dialect.watchdog
        if dog is None or not self.capabilities.watchdog:
            return None
        self._feed_every_s = None
        if silence_s is None:
            self._exchange.send(dog.disable)
        else:
            whole_s = max(dog.least_s, math.ceil(silence_s))
            self._exchange.send(dog.set.format(value=whole_s), dog.enable)
            if dog.feed:
                self._feed_every_s = whole_s / _FEEDS
                self._feed()
        try:
            if not scpi.boolean(self._exchange.ask(dog.enabled)):
                return None
            return scpi.number(self._exchange.ask(dog.ask))
        except ValueError as error:
            raise self._exchange.garbled(error) from error

    def _feed(self) -> None:
        if self._dialect.watchdog is not None:
            self._exchange.send(self._dialect.watchdog.feed)
        self._fed_s = self._exchange.now()

    def four_wire(self, on: bool) -> bool:
        sense = self._dialect.sense
        if sense is None or not self.capabilities.sense:
            raise ValueError("this supply has no choice of sensing")
        self._exchange.send(sense.on if on else sense.off)
        try:
            return is_four_wire(sense, self._exchange.ask(sense.ask))
        except ValueError as error:
            raise self._exchange.garbled(error) from error

    def find_array(self) -> ArrayLimits | None:
        if self._array is not None and self.capabilities.array is None:
            self.capabilities = replace(self.capabilities, array=self._array.limits())
        return self.capabilities.array

    def acquire(self, points: int, interval_s: float, alive: Callable[[], None] = lambda: None) -> float:
        array, limits = self._array_there()
        return array.start(limits, points, interval_s, alive)

    def fetch(self, alive: Callable[[], None] = lambda: None) -> Dense:
        array, _ = self._array_there()
        return array.fetch(alive)

    def _array_there(self) -> tuple[MeasurementArray, ArrayLimits]:
        if self._array is None or self.capabilities.array is None:
            raise ValueError("no measurement array was found")
        return self._array, self.capabilities.array

    def reopen(self) -> None:
        self._exchange.reopen()

    def close(self) -> None:
        """A measurement array that was started and never fetched is stopped first, where the supply can be reached."""
        try:
            if self._array is not None:
                self._array.leave()
        except SupplyError:
            pass  # its output is off, or nothing more can be done from here
        finally:
            self._exchange.close()
