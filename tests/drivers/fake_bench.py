"""A session that answers from a table, and the faults a session can have."""

import msgspec

from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import ScpiSupply
from drivers.supply import SupplyError, SupplyTimeout
from tests.drivers.in_lines import InLines

NONE = '0,"No error"'
READING = "MEAS:VOLT?;:MEAS:CURR?;:VOLT?;:CURR?;:OUTP?;:STAT:QUES:COND?"
ANSWERS = {
    "*IDN?": "Harbour,Bench supply,17,1.0",
    "MEAS:VOLT?": "0.000",
    "MEAS:CURR?": "0.0000",
    "VOLT?": "0.000",
    "CURR?": "0.1000",
    "OUTP?": "0",
    "STAT:QUES:COND?": "0",
    "VOLT? MAX": "32.000",
    "CURR? MAX": "3.1000",
    "VOLT:PROT?": "13.200",
    "VOLT:PROT:STAT?": "1",
    "VOLT:PROT:TRIP?": "0",
    "CURR:PROT?": "2.2000",
    "CURR:PROT:STAT?": "1",
    "CURR:PROT:TRIP?": "0",
    READING: "12.003;0.5002;12.000;1.0000;1;2",
}


class FakeBench:
    """What stands behind the sessions: a table of replies, an error queue, and what was said, in order.

    A query that is not in the table gets no reply; with `complains` it also leaves an error entry, as the standard
    asks for. `slow_s`: how long each reply takes.
    """

    def __init__(self, *, without: tuple[str, ...] = (), complains: bool = True, slow_s: float = 0.001) -> None:
        self.answers = {query: reply for query, reply in ANSWERS.items() if query not in without}
        self.errors: list[str] = []
        self.complains = complains
        self.slow_s = slow_s
        self.now_s = 0.0
        self.writes: list[str] = []
        self.queries: list[str] = []
        self.sessions: list[FakeSession] = []
        self.refuses_with: SupplyError | None = None

    def open(self, timeout_s: float) -> "FakeSession":
        if self.refuses_with is not None:
            raise self.refuses_with
        self.sessions.append(FakeSession(self, timeout_s))
        return self.sessions[-1]

    def reply_to(self, query: str) -> str | None:
        self.now_s += self.slow_s
        if query == "SYST:ERR?":
            return self.errors.pop(0) if self.errors else NONE
        if query not in self.answers and self.complains:
            self.errors.append('-113,"Undefined header"')
        return self.answers.get(query)


class FakeSession(InLines):
    """`late`: so many replies are still on their way, so that each query gets the one before it."""

    resource = "FAKE::17"

    def __init__(self, bench: FakeBench, timeout_s: float) -> None:
        self.bench = bench
        self.timeout_s = timeout_s
        self.closed = False
        self.late: list[str] = []
        self.lose_next = False

    def set_timeout(self, timeout_s: float) -> None:
        self.timeout_s = timeout_s

    def write(self, message: str) -> None:
        assert not self.closed
        self.bench.writes.append(message)

    def query(self, message: str) -> str:
        assert not self.closed
        self.bench.queries.append(message)
        reply = self.bench.reply_to(message)
        if reply is None or self.lose_next or self.bench.slow_s > self.timeout_s:
            self.lose_next = False
            raise SupplyTimeout(self.resource, "no reply in time")
        self.late.append(reply)
        return self.late.pop(0)

    def close(self) -> None:
        self.closed = True


def supply_on(bench: FakeBench, dialect: Dialect | None = None) -> ScpiSupply:
    return ScpiSupply(bench.open, dialect or shipped(), lambda: bench.now_s)


def unit_by_unit() -> Dialect:
    dialect = shipped()
    return msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, compound=False))
