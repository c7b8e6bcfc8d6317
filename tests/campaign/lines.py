"""The wire of a case in any dialect: replies that nothing ends, echoes, single units, with the same faults."""

import re

from drivers.dialect import Dialect, for_output
from drivers.simulated.speaks import Speaker
from drivers.simulated.virtual import VirtualSession
from drivers.supply import SupplyTimeout
from tests.campaign.dialects import in_plain_words
from tests.campaign.faults import Dead, Fault, Wire


class AnySession:
    """As `FaultySession`; what it logs is in the words of the checks. `dialect`: with its quirks."""

    def __init__(self, inner: VirtualSession, wire: Wire, dialect: Dialect, output: int) -> None:
        self.resource = inner.resource
        own = for_output(dialect, output)
        self._inner, self._wire = inner, wire
        self._first = own.readback.volts
        self._measured = (own.readback.volts, own.readback.amps)
        self._plain = in_plain_words(dialect, output)
        self._echo = dialect.link.echo
        self._last = ""
        self._spoil: Fault | None = None
        self._late = False
        self._held: str | None = None
        self._timeout_s = 2.0

    def write(self, message: str) -> None:
        wire = self._wire
        self._refuse_the_dead()
        wire.check_link(self.resource)
        if self._first in [unit.removeprefix(":") for unit in message.split(";")]:
            wire.reading_begins()
            self._refuse_the_dead()
            wire.check_link(self.resource)
            self._spoil, wire.spoil = wire.spoil, None
        instrument = wire.bench.instrument
        before_s = instrument.reply_s
        if self._spoil is not None and self._spoil.kind == "late reply":
            instrument.reply_s = self._timeout_s + 0.01 + self._spoil.size
        wire.log.append((wire.clock.now(), self._plain(message)))
        self._last = message
        try:
            self._inner.write(message)
        finally:
            instrument.reply_s = before_s

    def query(self, message: str) -> str:
        self.write(message)
        return self._inner.read() if self._echo else self.read()

    def read(self) -> str:
        return self._shown(self._inner.read())

    def read_exactly(self, count: int) -> bytes:
        found = self._inner.read_exactly(count).decode("latin-1")
        if self._echo and found == self._last:
            return found.encode("latin-1")
        shown = self._shown(found)
        if len(shown) < count:
            raise self._silence()
        return shown[:count].encode("latin-1", "replace")

    def read_until_quiet(self, quiet_s: float) -> bytes:
        return self._shown(self._inner.read_until_quiet(quiet_s).decode("latin-1")).encode("latin-1")

    def set_timeout(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s
        self._inner.set_timeout(timeout_s)

    def close(self) -> None:
        self._inner.close()

    def _shown(self, reply: str) -> str:
        wire = self._wire
        if wire.dead_after:
            wire.dead = True
        self._refuse_the_dead()
        self._touch_panel()
        spoil, self._spoil = self._spoil, None
        reply = self._spoiled(reply, spoil) if spoil is not None else self._misread(reply)
        if wire.shifted:
            wire.shifted, self._late = False, True
        if not self._late:
            return reply
        held, self._held = self._held, reply
        return reply if held is None else held

    def _touch_panel(self) -> None:
        wire, instrument = self._wire, self._wire.bench.instrument
        if wire.panel and isinstance(instrument, Speaker):
            instrument.choose(2 if wire.own is wire.bench else 1)

    def _misread(self, reply: str) -> str:
        wire, units, fields = self._wire, self._last.split(";"), reply.split(";")
        names = [unit.removeprefix(":") for unit in units if unit.partition(" ")[0].endswith("?")]
        for index, name in enumerate(names[: len(fields)]):
            if name in self._measured:
                fields[index] = wire.last_fields.get(name, fields[index]) if wire.frozen else fields[index]
                fields[index] = re.sub(r"\d", "0", fields[index]) if wire.zeroed else fields[index]
                wire.last_fields[name] = fields[index]
        if self._measured[1] in names:
            wire.frozen -= wire.frozen > 0
            wire.zeroed -= wire.zeroed > 0
        return ";".join(fields)

    def _spoiled(self, reply: str, fault: Fault) -> str:
        match fault.kind:
            case "lost reply":
                raise self._silence()
            case "cut reply":
                return reply[: int(fault.size * len(reply))]
            case "garbage":
                ways = ("<html>", "\x00\x00", f"{reply};1", "", reply.replace(".", ",").replace(";", ","))
                return ways[int(5 * fault.size)].ljust(len(reply), "?")
        fields = reply.split(";")
        fields[int(fault.size * len(fields))] = ("NAN", "9.91E37", "9.9E37", "INF")[int(40 * fault.size) % 4]
        return ";".join(fields).ljust(len(reply))

    def _refuse_the_dead(self) -> None:
        if self._wire.dead:
            raise Dead

    def _silence(self) -> SupplyTimeout:
        self._wire.clock.wait(self._wire.clock.now() + self._timeout_s)
        return SupplyTimeout(self.resource, "no reply in time")
