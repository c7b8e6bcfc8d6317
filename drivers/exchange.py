"""What is said to an instrument and what comes back, in the manner of its dialect: the output chosen before, gaps,
echoes, replies that nothing ends, the error queue.

After a timeout or a reply of the wrong form the session is suspect: every further use raises until `reopen`.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple, Protocol, TypeVar

from drivers import scpi
from drivers.dialect import Dialect
from drivers.supply import NotASupply, SupplyError, SupplyGarbled, SupplyTimeout

REOPEN_S = 0.5
QUIET_S = 0.05
"""s of silence after which a reply that nothing ends is over: 48 characters at 9600 baud. Common practice."""

_A = TypeVar("_A")
_R = TypeVar("_R")


class Session(Protocol):
    """What a supply is spoken to through: one message out, one reply back. Opened with nothing left to be read.

    `query` is a write and a read. The two for bytes are for replies that nothing ends: so many, or all until the line
    was silent for `quiet_s` (at least one, at most 256). Each raises SupplyError.
    """

    resource: str

    def write(self, message: str) -> None: ...
    def query(self, message: str) -> str: ...
    def read(self) -> str: ...
    def read_exactly(self, count: int) -> bytes: ...
    def read_until_quiet(self, quiet_s: float) -> bytes: ...
    def set_timeout(self, timeout_s: float) -> None: ...
    def close(self) -> None: ...


class Query(NamedTuple):
    """A query, and the bytes of its reply where nothing ends it; None: until the line is quiet."""

    unit: str
    length: int | None = None


class Exchange:
    """A session that can be replaced by a fresh one to the same instrument.

    `dialect`: for a single output. `wait` returns at a given time of `now`. `known`: the identity found before.
    """

    def __init__(
        self,
        open_session: Callable[[float], Session],
        dialect: Dialect,
        now: Callable[[], float],
        wait: Callable[[float], None],
        *,
        timeout_s: float,
        known: str | None,
    ) -> None:
        link = dialect.link
        self.now = now
        self._open, self._wait = open_session, wait
        self._identify, self._errors = dialect.identify, dialect.errors
        self._compound, self._gap_s, self._echo, self._ends = link.compound, link.gap_s, link.echo, link.reply_ends
        self._plain = not (link.gap_s or link.echo) and bool(link.reply_ends)
        self._select = dialect.outputs.select
        self._known = known
        self._timeout_s = timeout_s
        self._suspect = False
        self._session = open_session(timeout_s)
        # Whoever held the supply before may have said something a moment ago.
        self._free_s = now() + self._gap_s

    @property
    def resource(self) -> str:
        return self._session.resource

    def set_timeout(self, timeout_s: float) -> None:
        """How long a reply may take from here on."""
        self._timeout_s = timeout_s
        self._session.set_timeout(timeout_s)

    def identity(self) -> str:
        """Raises ValueError where the reply is none."""
        return scpi.identity(self._ask_plainly(self._identify.identity), self._identify.fields)

    def identify(self) -> str:
        """As `identity`; from here on nothing else is the same instrument."""
        self._known = self.identity()
        return self._known

    def errors(self) -> list[str]:
        """Drains the error queue; nothing where there is none."""
        asked, found = self._errors, list[str]()
        try:
            for _ in range(asked.deepest if asked.form != "none" else 0):
                reply = self._ask_plainly(asked.ask)
                code, text = scpi.error(reply) if asked.form == "scpi" else (int(scpi.number(reply)), "")
                if code == 0:
                    break
                found.append(f"{code}, {text}" if text else str(code))
        except ValueError as error:
            raise self.garbled(error) from error
        return found

    def send(self, *units: str) -> None:
        """Units that nothing answers, in this order; in one message where that is possible."""
        self._refuse_suspect()
        for message in self._messages(units):
            self._guarded(self._put, message)

    def ask(self, unit: str, length: int | None = None) -> str:
        """The reply to a query, `length` bytes long where nothing ends it."""
        self._refuse_suspect()
        *before, message = self._messages((unit,))
        for select in before:
            self._guarded(self._put, select)
        return self._guarded(self._answer, Query(message, length))

    def ask_each(self, queries: Sequence[Query], message: str) -> list[str]:
        """The replies to several, in one round trip where that is possible. `message`: `in_one` of the queries."""
        if not self._compound:
            return [self.ask(unit, length) for unit, length in queries]
        self._refuse_suspect()
        text = self._guarded(self._answer, Query(message))
        try:
            return scpi.replies(text, len(queries))
        except ValueError as error:
            raise self.garbled(error) from error

    def answer_to(self, query: str, form: Callable[[str], float] = scpi.number) -> float | None:
        """A value, or None where the supply does not know the query: silence and an error entry are answers too."""
        try:
            value = form(self.ask(query))
        except (SupplyTimeout, ValueError):
            self.reopen()
            self.errors()
            return None
        return None if self.errors() else value

    def in_one(self, units: Sequence[str]) -> str:
        """Units in one message, the output chosen first."""
        return scpi.join(*([self._select] if self._select else []), *units)

    def reopen(self) -> None:
        """A fresh session, identity checked. Raises NotASupply where something else answers."""
        self._suspect = True
        self._session.close()
        # A supply that is slow by nature gets the time that it needs here as well.
        self._session = self._open(max(REOPEN_S, self._timeout_s))
        self._free_s = self.now() + self._gap_s
        self._suspect = False
        try:
            found = self.identity()
        except ValueError as error:
            raise self.garbled(error) from error
        if self._known is not None and found != self._known:
            self._suspect = True
            raise NotASupply(self._session.resource, f'"{found}" answers where "{self._known}" was')
        self._session.set_timeout(self._timeout_s)

    def close(self) -> None:
        self._session.close()

    def garbled(self, error: ValueError) -> SupplyGarbled:
        """The error to raise; the session is suspect from here on."""
        self._suspect = True
        return SupplyGarbled(self._session.resource, str(error))

    def _ask_plainly(self, unit: str) -> str:
        """Of the whole instrument: no output is chosen before."""
        self._refuse_suspect()
        return self._guarded(self._answer, Query(unit))

    def _messages(self, units: tuple[str, ...]) -> list[str]:
        if self._compound:
            return [self.in_one(units)]
        # Before each, not once: somebody at the front panel may choose another output in between.
        return [message for unit in units for message in ([self._select, unit] if self._select else [unit])]

    def _put(self, message: str) -> None:
        # An instrument that drops what comes too early would also drop an OFF: that waits as well.
        if self._gap_s and self.now() < self._free_s:
            self._wait(self._free_s)
        if not self._echo:
            self._session.write(message)
            return
        if self._ends:
            back = self._session.query(message)
        else:
            self._session.write(message)
            back = self._session.read_exactly(len(message)).decode("latin-1")
        if back.strip() != message:
            raise SupplyGarbled(self._session.resource, f"{back[:40]!r} came back where {message!r} was sent")

    def _answer(self, query: Query) -> str:
        if self._plain:
            return self._session.query(query.unit)
        self._put(query.unit)
        if self._ends:
            return self._session.read()
        if query.length is None:
            return self._session.read_until_quiet(QUIET_S).decode("latin-1")
        reply = self._session.read_exactly(query.length).decode("latin-1")
        if query.length > 1 and not reply.isprintable():  # such as the end of one reply and the start of the next
            raise SupplyGarbled(self._session.resource, f"{reply!r} is no reply of {query.length} characters")
        return reply

    def _guarded(self, act: Callable[[_A], _R], what: _A) -> _R:
        try:
            return act(what)
        except SupplyError:
            self._suspect = True
            raise
        finally:
            if self._gap_s:
                self._free_s = self.now() + self._gap_s

    def _refuse_suspect(self) -> None:
        if self._suspect:
            raise SupplyTimeout(self._session.resource, "the session is suspect after a lost reply")
