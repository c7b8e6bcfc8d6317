"""A supply's own protections in the words of a dialect: which there are, set and read back, tripped, cleared."""

from collections.abc import Iterator
from typing import NamedTuple

from drivers import scpi
from drivers.dialect import Dialect, Latch
from drivers.exchange import Exchange
from drivers.scpi_reading import Quantity, quantities
from drivers.supply import OVER_AMPS, OVER_VOLTS, Protection

_STATE, _TRIP = "?", "!"


class _Described(NamedTuple):
    name: str
    latch: Latch
    quantity: Quantity


class Latches:
    """Those that the dialect describes; `there` says which of them the supply has, as `found` told it once."""

    def __init__(self, dialect: Dialect, exchange: Exchange) -> None:
        volts, amps = quantities(dialect)
        both = ((OVER_VOLTS, dialect.over_volts, volts), (OVER_AMPS, dialect.over_amps, amps))
        # One that can't be asked for is none: nobody could say what it is set to.
        self._described = [_Described(name, one, what) for name, one, what in both if one and one.set and one.ask]
        self._exchange = exchange
        self.there: frozenset[str] = frozenset()

    def found(self) -> Iterator[str]:
        """Names of the latches there are, and "name?" and "name!" where state and trip can be asked for."""
        answer_to = self._exchange.answer_to
        for name, latch, quantity in self._described:
            if answer_to(latch.ask, quantity.read) is None:
                continue
            yield name
            if latch.enabled and answer_to(latch.enabled, scpi.boolean) is not None:
                yield name + _STATE
            if latch.tripped and answer_to(latch.tripped, scpi.boolean) is not None:
                yield name + _TRIP

    def protect(self, wanted: Protection) -> Protection:
        """As `Supply.protect`."""
        levels = {OVER_VOLTS: wanted.over_volts, OVER_AMPS: wanted.over_amps}
        now = {one.name: self._set(one, levels[one.name]) for one in self._those_there()}
        return Protection(over_volts=now.get(OVER_VOLTS), over_amps=now.get(OVER_AMPS))

    def tripped(self) -> str | None:
        """As `Supply.tripped`."""
        for name, latch, _ in self._those_there():
            try:
                if name + _TRIP in self.there and scpi.boolean(self._exchange.ask(latch.tripped)):
                    return name
            except ValueError as error:
                raise self._exchange.garbled(error) from error
        return None

    def clear(self) -> None:
        """Each on its own: an instrument with one word for both may hear it once only."""
        for unit in dict.fromkeys(one.latch.clear for one in self._those_there()):
            if unit:
                self._exchange.send(unit)

    def _set(self, one: _Described, level: float | None) -> float | None:
        name, latch, quantity = one
        has_state = name + _STATE in self.there
        if level is not None:
            switched = [latch.enable] if has_state and latch.enable else []
            self._exchange.send(latch.set.format(value=quantity.said(level)), *switched)
        elif not has_state:
            return None
        elif latch.disable:
            self._exchange.send(latch.disable)
        try:
            if has_state and not scpi.boolean(self._exchange.ask(latch.enabled)):
                return None
            return quantity.read(self._exchange.ask(latch.ask))
        except ValueError as error:
            raise self._exchange.garbled(error) from error

    def _those_there(self) -> list[_Described]:
        return [one for one in self._described if one.name in self.there]
