"""A Supply over a dialect and a session.

After a timeout or a reply of the wrong form the session is suspect: every further use raises until `reopen`.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Protocol

from drivers import scpi
from drivers.dialect import Dialect, Latch
from drivers.scpi_array import MeasurementArray, Wire
from drivers.supply import (
    OVER_AMPS,
    OVER_VOLTS,
    ArrayLimits,
    Capabilities,
    Dense,
    NotASupply,
    Protection,
    Reading,
    Regulation,
    Setpoint,
    SupplyError,
    SupplyGarbled,
    SupplyTimeout,
)


class Session(Protocol):
    """What a supply is spoken to through: one message out, one reply back."""

    resource: str

    def write(self, message: str) -> None: ...
    def query(self, message: str) -> str: ...
    def set_timeout(self, timeout_s: float) -> None: ...
    def close(self) -> None: ...


FIRST_REPLY_S = 2.0
_STATE, _TRIP = "?", "!"
REOPEN_S = 0.5


def _no_more_than(value: float) -> float:
    """Down to what the wire carries, 0.1 mV: rounded up, a setpoint at a ceiling would pass it."""
    steps = value * 1e4 + 1e-6
    return math.floor(steps) / 1e4 if math.isfinite(steps) else value


class ScpiSupply:
    """Opens, identifies, and is then a Supply. `now` is the clock of the readings' times, in seconds.

    `open_session` takes the s that the opening and each reply may last. `known`: what an earlier identification found;
    then nothing is asked before the first command. Raises SupplyLost where nothing answers and NotASupply where
    something else does.
    """

    def __init__(
        self,
        open_session: Callable[[float], Session],
        dialect: Dialect,
        now: Callable[[], float],
        *,
        known: Capabilities | None = None,
    ) -> None:
        self._open = open_session
        self._dialect = dialect
        self._now = now
        self._suspect = False
        self._timeout_s = REOPEN_S
        self._session = open_session(FIRST_REPLY_S if known is None else REOPEN_S)
        try:
            self.capabilities = known or self._identify()
        except BaseException:
            self._session.close()
            raise
        # An answer that takes longer than three usual ones is no answer.
        self._timeout_s = max(0.3, 3.0 * self.capabilities.reply_s)
        self._session.set_timeout(self._timeout_s)
        back = dialect.readback
        self._reading_units = (back.volts, back.amps, back.set_volts, back.set_amps, back.output, back.condition)
        self._reading_message = scpi.join(*self._reading_units)
        wire = Wire(self._session.resource, now, self._send, self._ask, self.errors, self.reopen, self._garbled)
        self._array = MeasurementArray(dialect, dialect.array, wire) if dialect.array is not None else None
        self._cc, self._cv = 1 << dialect.condition.cc, 1 << dialect.condition.cv

    def _identify(self) -> Capabilities:
        dialect, resource = self._dialect, self._session.resource
        try:
            identity = scpi.identity(self._ask(dialect.identify.identity))
        except (SupplyTimeout, SupplyGarbled, ValueError) as error:
            raise NotASupply(
                resource, "something answers there, but does not identify itself, or another program holds it"
            ) from error
        try:
            self.errors()
            started = self._now()
            volts = self._ask(dialect.readback.volts)
            reply_s = self._now() - started
            # From here on an answer that does not come is known not to be coming sooner.
            self._timeout_s = max(0.5, 5 * reply_s)
            self._session.set_timeout(self._timeout_s)
            amps = self._ask(dialect.readback.amps)
            for query in (dialect.readback.set_volts, dialect.readback.set_amps):
                scpi.number(self._ask(query))
            scpi.boolean(self._ask(dialect.readback.output))
            scpi.bits(self._ask(dialect.readback.condition))
            return Capabilities(
                identity=identity,
                dialect=dialect.name,
                volts_max=self._answer_to(dialect.identify.volts_max),
                amps_max=self._answer_to(dialect.identify.amps_max),
                volts_step=scpi.step(volts),
                amps_step=scpi.step(amps),
                latches=frozenset(self._latches()),
                window_s=dialect.readback.window_s,
                settle_s=dialect.readback.settle_s,
                reply_s=reply_s,
            )
        # A zero with an exponent no double has is a number, but overflows as a resolution.
        except (SupplyTimeout, SupplyGarbled, ValueError) as error:
            what = f'"{identity}" does not answer as a supply of the dialect "{dialect.name}" does ({error})'
            raise NotASupply(resource, what) from error

    def _latches(self) -> Iterator[str]:
        """Names of the latches there are, and "name?" and "name!" where state and trip can be asked for."""
        for name, latch in ((OVER_VOLTS, self._dialect.over_volts), (OVER_AMPS, self._dialect.over_amps)):
            if latch is None or self._answer_to(latch.ask) is None:
                continue
            yield name
            if self._answer_to(latch.enabled, scpi.boolean) is not None:
                yield name + _STATE
            if self._answer_to(latch.tripped, scpi.boolean) is not None:
                yield name + _TRIP

    def _answer_to(self, query: str, form: Callable[[str], float] = scpi.number) -> float | None:
        """A value, or None where the supply does not know the query: silence and an error entry are answers too."""
        try:
            value = form(self._ask(query))
        except (SupplyTimeout, ValueError):
            self.reopen()
            self.errors()
            return None
        return None if self.errors() else value

    def read(self) -> Reading:
        sent_s = self._now()
        if self._dialect.link.compound:
            text = self._ask(self._reading_message)
        else:
            text = ";".join(self._ask(unit) for unit in self._reading_units)
        received_s = self._now()
        try:
            volts, amps, set_volts, set_amps, output, condition = scpi.replies(text, 6)
            state = scpi.bits(condition)
            on = scpi.boolean(output)
            return Reading(
                sent_s=sent_s,
                received_s=received_s,
                volts=scpi.number(volts),
                amps=scpi.number(amps),
                set_volts=scpi.number(set_volts),
                set_amps=scpi.number(set_amps),
                output_on=on,
                regulation=Regulation.CC
                if state & self._cc
                else Regulation.CV
                if state & self._cv
                else Regulation.UNKNOWN,
            )
        except ValueError as error:
            raise self._garbled(error) from error

    def set(self, setpoint: Setpoint) -> None:
        program = self._dialect.program
        self._send(
            program.amps.format(value=scpi.argument(_no_more_than(setpoint.amps))),
            program.volts.format(value=scpi.argument(_no_more_than(setpoint.volts))),
        )

    def switch(self, on: bool) -> None:
        self._send(self._dialect.program.on if on else self._dialect.program.off)

    def off(self) -> None:
        """0 V and off, in one message where the dialect allows."""
        program = self._dialect.program
        self._send(program.volts.format(value=scpi.argument(0.0)), program.off)

    def protect(self, wanted: Protection) -> Protection:
        return Protection(
            over_volts=self._latch(OVER_VOLTS, self._dialect.over_volts, wanted.over_volts),
            over_amps=self._latch(OVER_AMPS, self._dialect.over_amps, wanted.over_amps),
        )

    def _latch(self, name: str, latch: Latch | None, level: float | None) -> float | None:
        if latch is None or name not in self.capabilities.latches:
            return None
        has_state = name + _STATE in self.capabilities.latches
        if level is None and not has_state:
            return None
        if level is None:
            self._send(latch.disable)
        else:
            self._send(latch.set.format(value=scpi.argument(level)), *([latch.enable] if has_state else []))
        try:
            if has_state and not scpi.boolean(self._ask(latch.enabled)):
                return None
            return scpi.number(self._ask(latch.ask))
        except ValueError as error:
            raise self._garbled(error) from error

    def tripped(self) -> str | None:
        for name, latch in self._known_latches():
            try:
                if name + _TRIP in self.capabilities.latches and scpi.boolean(self._ask(latch.tripped)):
                    return name
            except ValueError as error:
                raise self._garbled(error) from error
        return None

    def clear(self) -> None:
        self.off()
        for _, latch in self._known_latches():
            self._send(latch.clear)

    def _known_latches(self) -> list[tuple[str, Latch]]:
        both = ((OVER_VOLTS, self._dialect.over_volts), (OVER_AMPS, self._dialect.over_amps))
        return [(name, latch) for name, latch in both if latch is not None and name in self.capabilities.latches]

    def errors(self) -> list[str]:
        found = []
        try:
            for _ in range(self._dialect.errors.deepest):
                code, text = scpi.error(self._ask(self._dialect.errors.ask))
                if code == 0:
                    break
                found.append(f"{code}, {text}")
        except ValueError as error:
            raise self._garbled(error) from error
        return found

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
        known: Capabilities | None = getattr(self, "capabilities", None)
        self._suspect = True
        self._session.close()
        # A supply that is slow by nature gets the time that it needs here as well.
        self._session = self._open(max(REOPEN_S, self._timeout_s))
        self._suspect = False
        try:
            found = scpi.identity(self._ask(self._dialect.identify.identity))
        except ValueError as error:
            raise self._garbled(error) from error
        if known is not None and found != known.identity:
            self._suspect = True
            raise NotASupply(self._session.resource, f'"{found}" answers where "{known.identity}" was')
        self._session.set_timeout(self._timeout_s)

    def close(self) -> None:
        """A measurement array that was started and never fetched is stopped first, where the supply can be reached."""
        try:
            if self._array is not None:
                self._array.leave()
        except SupplyError:
            pass  # its output is off, or nothing more can be done from here
        finally:
            self._session.close()

    def _send(self, *units: str) -> None:
        self._refuse_suspect()
        try:
            if self._dialect.link.compound:
                self._session.write(scpi.join(*units))
            else:
                for unit in units:
                    self._session.write(unit)
        except SupplyError:
            self._suspect = True
            raise

    def _ask(self, message: str) -> str:
        self._refuse_suspect()
        try:
            return self._session.query(message)
        except SupplyError:
            self._suspect = True
            raise

    def _refuse_suspect(self) -> None:
        if self._suspect:
            raise SupplyTimeout(self._session.resource, "the session is suspect after a lost reply")

    def _garbled(self, error: ValueError) -> SupplyGarbled:
        self._suspect = True
        return SupplyGarbled(self._session.resource, str(error))
