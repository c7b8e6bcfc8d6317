"""What readings alone tell of a supply: how soon and how often it reads back, and what follows for a kick."""

import statistics
from collections.abc import Callable
from dataclasses import dataclass, replace

import msgspec

from drivers.dialect import Dialect, Errors, Link, for_output
from drivers.finding import Found
from drivers.finding_asking import Answered
from drivers.identifying import gaps_of
from drivers.scpi_supply import ScpiSupply
from drivers.supply import (
    CHOSEN_APART,
    NO_ERROR_QUEUE,
    Capabilities,
    Reading,
    Supply,
    SupplyError,
    SupplyTimeout,
)

READINGS = 8
LONGEST_S = 1.0
"""s in which so many readings are taken, at least two of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """`reading_s`: the usual time of a whole reading, and its worst. `least_kick_s`: the shortest time between on and
    off of which a reading can tell anything: until volts have settled, and one reading. `last`: the last reading."""

    capabilities: Capabilities
    reading_s: float
    worst_s: float
    readings_per_s: float
    least_kick_s: float
    last: Reading


def measure(supply: Supply, now: Callable[[], float]) -> Measured:
    """Readings only. Raises SupplyError."""
    took_s: list[float] = []
    began_s = now()
    while True:
        last = supply.read()
        took_s.append(last.received_s - last.sent_s)
        if len(took_s) >= READINGS or (len(took_s) >= 2 and now() - began_s > LONGEST_S):
            break
    all_s = now() - began_s
    can = supply.capabilities
    usual_s = statistics.median(took_s)
    return Measured(
        capabilities=can,
        reading_s=usual_s,
        worst_s=max(took_s),
        readings_per_s=len(took_s) / all_s if all_s > 0 else 0.0,
        least_kick_s=least_kick_s(can, max(took_s)),
        last=last,
    )


def least_kick_s(can: Capabilities, reading_s: float) -> float:
    """Reckoned, not tried: settling, and the slowest reading, since off can only be sent between two of them."""
    return can.settle_s + reading_s


class _Answers:
    """A session of answers that were given already; a question that was not answered gets none."""

    def __init__(self, identity: str, errors: str, answered: tuple[Answered, ...]) -> None:
        self.resource = identity
        self._replies = {answer.unit: answer.reply for answer in answered}
        self._replies["*IDN?"] = identity
        self._replies[errors] = "0"

    def take_over(self, first: msgspec.Struct, other: msgspec.Struct) -> None:
        """What another output was not asked itself is as the first answered; but for its range."""
        for name in first.__struct_fields__:
            mine, its = getattr(first, name), getattr(other, name)
            if isinstance(mine, msgspec.Struct):
                self.take_over(mine, its)
            elif isinstance(mine, str) and name not in ("volts_max", "amps_max"):
                self._replies.setdefault(its, self._replies.get(mine))

    def query(self, message: str) -> str:
        reply = self._replies.get(message)
        if reply is None:
            raise SupplyTimeout(self.resource, "not answered")
        return reply

    def write(self, message: str) -> None:
        """What chooses an output: the first was chosen when the answers were given."""

    def read(self) -> str:
        raise SupplyTimeout(self.resource, "not answered")

    def read_exactly(self, count: int) -> bytes:
        raise SupplyTimeout(self.resource, "not answered")

    def read_until_quiet(self, quiet_s: float) -> bytes:
        raise SupplyTimeout(self.resource, "not answered")

    def set_timeout(self, timeout_s: float) -> None: ...
    def close(self) -> None: ...


def capabilities_of(found: Found, now: Callable[[], float], output: int = 1) -> Capabilities | None:
    """What an output can do, by the answers that were given: so nothing has to be asked twice of a slow supply.

    Of another than the first its own range counts, and for the rest what the first one answered. None where they do not
    reach.
    """
    dialect = found.dialect
    if dialect is None or found.latency_s is None:
        return None
    # The manner of the line was part of the asking; here each answer is there at once, and alone.
    plain = msgspec.structs.replace(
        dialect,
        link=Link(termination="\n", compound=False, units_in_replies=dialect.link.units_in_replies),
        reply_lengths=None,
        errors=Errors(form="number" if dialect.errors.ask else "none", ask=dialect.errors.ask),
        array=None,
    )
    if output > 1 and (dialect.outputs.select or output > dialect.outputs.count):
        return None
    answers = _Answers(found.identity, dialect.errors.ask, found.answered)
    answers.take_over(for_output(plain, 1), for_output(plain, output))
    try:
        can = ScpiSupply(lambda timeout_s: answers, plain, now, output=output).capabilities
    except SupplyError:
        return None
    trips = 1 if dialect.link.compound else 6
    return replace(can, reply_s=found.latency_s, reading_s=trips * found.latency_s, gaps=_gaps(can, dialect))


def _gaps(can: Capabilities, dialect: Dialect) -> frozenset[str]:
    plain = {NO_ERROR_QUEUE, CHOSEN_APART}
    return (can.gaps - plain) | (gaps_of(dialect) & plain)
