"""Everything that goes wrong, and the wire on which it does: between shipped driver and simulated instrument."""

import random
import re
from collections.abc import Callable
from dataclasses import dataclass, field

from benchlog.bench.lease import Lease
from benchlog.clock import VirtualClock
from drivers.scpi_supply import Session
from drivers.simulated.bench import Bench
from drivers.simulated.supply_model import Trip
from drivers.supply import SupplyLost, SupplyTimeout
from tests.drivers.in_lines import InLines

NEVER = 10**9
SPOILED = ("lost reply", "late reply", "cut reply", "garbage", "not a number")
HANDS = ("hand: volts", "hand: limit", "hand: off", "hand: on")
OTHERS = (
    *("off by one", "error entries", "link drops", "ignored off", "latch trips", "stuck readback", "zero readback"),
    *("sleep", "lease lost", "stop", "journal fails"),
)
DEATHS = ("killed", "hung")
"""Of the process that holds the supply: from then on nothing of it reaches the wire."""
FAULTS = (*SPOILED, *HANDS, *OTHERS, *DEATHS)
PANEL = "panel: output"
"""Somebody chooses another output at the panel, from then on after every reading. Of other dialects only."""
READING, MEASURED = "MEAS:VOLT?", ("MEAS:VOLT?", "MEAS:CURR?")


class Dead(BaseException):
    """Nothing in the program may catch this: it stands for a process that is no more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """`at`: the reading it comes with, counted from 1, which is the one of arming; None: when the ending begins.

    `size`: how many, how long, or how far, as its kind wants.
    """

    kind: str
    at: int | None
    size: float


def draw_fault(source: random.Random) -> Fault:
    kind = source.choice(FAULTS)
    at = None if source.random() < 0.15 else source.choice((source.randint(1, 60), source.randint(1, 500)))
    match kind:
        case "ignored off":
            size = float(source.choice((1, 2, 3, 5, NEVER)))
        case "link drops":
            size = source.choice((source.uniform(0.0, 2.0), float(NEVER)))
        case "stuck readback" | "zero readback" | "error entries":
            size = float(source.randint(1, 30))
        case _:
            size = source.random()
    return Fault(kind=kind, at=at, size=size)


@dataclass(slots=True, kw_only=True)
class Wire:
    """What all sessions of a case share. `log`: (s, message) as they reached the instrument; `struck`: (s, fault).

    `bench`: the instrument's; `own`: that of the output in use.
    """

    bench: Bench
    own: Bench
    clock: VirtualClock
    lease: Lease
    latches: bool
    waiting: list[Fault]
    log: list[tuple[float, str]] = field(default_factory=list)
    struck: list[tuple[float, int, Fault]] = field(default_factory=list)
    readings: int = 0
    down_until_s: float = -1.0
    window_open: bool = True
    journal_broken: bool = False
    ending_s: float | None = None
    frozen: int = 0
    zeroed: int = 0
    spoil: Fault | None = None
    shifted: bool = False
    exponents: bool = False
    last_fields: dict[str, str] = field(default_factory=dict)
    hand_volts: float = 0.0
    hand_amps: float = 0.0
    hand_mattered: bool = False
    panel: bool = False
    dead: bool = False
    dead_after: bool = False

    def ends(self) -> None:
        """The first try to switch off begins."""
        if self.ending_s is None:
            self.ending_s = self.clock.now()
            self._strike(lambda fault: fault.at is None)

    def check_link(self, resource: str) -> None:
        if self.clock.now() < self.down_until_s:
            raise SupplyLost(resource, "the link is down")

    def reaches(self, message: str) -> bool:
        """A message on its way; False where the instrument does not know it."""
        if message.startswith(READING):
            self.reading_begins()
        return self.latches or ":PROT" not in message

    def reading_begins(self) -> None:
        """Faults come with readings."""
        self.readings += 1
        self._strike(lambda fault: fault.at is not None and fault.at <= self.readings)

    def _strike(self, due: Callable[[Fault], bool]) -> None:
        for fault in [one for one in self.waiting if due(one)]:
            self.waiting.remove(fault)
            self.struck.append((self.clock.now(), self.readings, fault))
            self._happen(fault)

    def _happen(self, fault: Fault) -> None:
        output, instrument = self.own.output, self.bench.instrument
        self.bench.advance(self.clock.now())
        match fault.kind:
            case "off by one":
                self.shifted = True
            case "error entries":
                for _ in range(int(fault.size)):
                    instrument.status.record(-113, "NOISE")
            case "link drops":
                self.down_until_s = self.clock.now() + fault.size
            case "ignored off":
                instrument.offs_to_ignore = int(fault.size)
            case "latch trips" if output.on:
                output.trip = Trip.OVER_VOLTS if fault.size < 0.5 else Trip.OVER_AMPS
                output.settled = False
            case "stuck readback":
                self.frozen = int(fault.size)
            case "zero readback":
                self.zeroed = int(fault.size)
            case "hand: volts":
                output.change(
                    set_v=min(self.own.scenario.supply.volts_max, round(output.set_v + 0.3 + 3.0 * fault.size, 3))
                )
                self.hand_volts, self.hand_mattered = max(self.hand_volts, output.set_v), True
            case "hand: limit":
                output.change(limit_a=round(output.limit_a + 0.1 + fault.size, 3))
                self.hand_amps, self.hand_mattered = max(self.hand_amps, output.limit_a), True
            case "hand: off" | "hand: on":
                self.hand_mattered = output.on != (fault.kind == "hand: on")
                output.switch(fault.kind == "hand: on")
            case "sleep":
                self.clock.sleep(3.0 + 60.0 * fault.size)
            case "lease lost":
                self.window_open = False
            case "stop":
                self.lease.end("output off was pressed")
            case "journal fails":
                self.journal_broken = True
            case kind if kind == PANEL:
                self.panel = True
            case "killed" | "hung":
                self.dead, self.dead_after = fault.size < 0.5, fault.size >= 0.5
            case _:
                self.spoil = fault


class FaultySession(InLines):
    """The wire as one session sees it."""

    def __init__(self, inner: Session, wire: Wire) -> None:
        self.resource = inner.resource
        self._inner, self._wire = inner, wire
        self._late = False
        self._held: str | None = None
        self._timeout_s = 2.0

    def write(self, message: str) -> None:
        self._refuse_the_dead()
        self._wire.check_link(self.resource)
        if not self._wire.reaches(message):
            self._wire.bench.instrument.status.record(-113, message[:20])
            return
        self._wire.log.append((self._wire.clock.now(), message))
        self._inner.write(message)

    def query(self, message: str) -> str:
        wire = self._wire
        self._refuse_the_dead()
        wire.check_link(self.resource)
        known = wire.reaches(message)
        self._refuse_the_dead()
        wire.check_link(self.resource)
        if not known:
            wire.bench.instrument.status.record(-113, message[:20])
            raise self._silence()
        spoil, wire.spoil = wire.spoil, None
        instrument = wire.bench.instrument
        before_s = instrument.reply_s
        if spoil is not None and spoil.kind == "late reply":
            instrument.reply_s = self._timeout_s + 0.01 + spoil.size
        wire.log.append((wire.clock.now(), message))
        try:
            reply = self._inner.query(message)
        finally:
            instrument.reply_s = before_s
        if wire.dead_after:
            wire.dead = True
        self._refuse_the_dead()
        return self._shown(message, reply, spoil)

    def _shown(self, message: str, reply: str, spoil: Fault | None) -> str:
        if spoil is not None:
            reply = self._spoiled(reply, spoil)
        elif message.startswith(MEASURED):
            reply = self._misread(message, reply)
        if self._wire.exponents:
            reply = ";".join(_with_exponent(one) for one in reply.split(";"))
        if self._wire.shifted:
            self._wire.shifted, self._late = False, True
        if not self._late:
            return reply
        # From one that came twice on, each reply answers the next question; a fresh session has none left over.
        held, self._held = self._held, reply
        return reply if held is None else held

    def _refuse_the_dead(self) -> None:
        if self._wire.dead:
            raise Dead

    def _misread(self, message: str, reply: str) -> str:
        wire, fields = self._wire, reply.split(";")
        first = message.startswith(READING)
        for index, query in enumerate(message.split(";")[: len(fields)]):
            name = query.removeprefix(":")
            if name in MEASURED:
                fields[index] = wire.last_fields.get(name, fields[index]) if wire.frozen else fields[index]
                fields[index] = "0.000" if wire.zeroed else fields[index]
                wire.last_fields[name] = fields[index]
        wire.frozen -= first and wire.frozen > 0
        wire.zeroed -= first and wire.zeroed > 0
        return ";".join(fields)

    def _spoiled(self, reply: str, fault: Fault) -> str:
        match fault.kind:
            case "lost reply":
                raise self._silence()
            case "cut reply":
                return reply[: int(fault.size * len(reply))]
            case "garbage":
                return ("<html>", "\x00\x00", reply + ";1", "", reply.replace(".", ",").replace(";", ","))[
                    int(5 * fault.size)
                ]
        fields = reply.split(";")
        fields[int(fault.size * len(fields))] = ("NAN", "9.91E37", "9.9E37", "INF")[int(40 * fault.size) % 4]
        return ";".join(fields)

    def _silence(self) -> SupplyTimeout:
        self._wire.clock.wait(self._wire.clock.now() + self._timeout_s)
        return SupplyTimeout(self.resource, "no reply in time")

    def set_timeout(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s
        self._inner.set_timeout(timeout_s)

    def close(self) -> None:
        self._inner.close()


def _with_exponent(text: str) -> str:
    return f"{float(text):.{max(0, len(text) - 2)}E}" if re.fullmatch(r"-?\d+\.\d+", text) else text
