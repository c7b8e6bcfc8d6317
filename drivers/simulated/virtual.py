"""A session to a bench in virtual time: the controller's side, without a socket and without waiting."""

from collections import deque
from collections.abc import Callable

from drivers.simulated.bench import Bench
from drivers.supply import SupplyLost, SupplyTimeout

FIRST_TIMEOUT_S = 2.0
MOST_UNENDED = 256


class VirtualSession:
    """`now` tells the caller's time in seconds; `wait` moves it to a given instant.

    Replies that nobody took answer the next question, as they do on a socket. `termination`, `reply_ends`: how the
    controller ends messages, and what it takes for the end of a reply; None: as the instrument's dialect has it.
    Where the instrument bears one client only, a further one is not heard until the one before has gone.
    """

    def __init__(
        self,
        bench: Bench,
        now: Callable[[], float],
        wait: Callable[[float], None],
        *,
        termination: str | None = None,
        reply_ends: str | None = None,
    ) -> None:
        self.resource = f"SIM::{bench.scenario.name}::{bench.seed}"
        manner = bench.manner
        self._bench = bench
        self._now = now
        self._wait = wait
        self._ends = (manner.termination if termination is None else termination).encode()
        # A line that ends in CR LF is over at its LF, whichever of both the controller waits for.
        self._reply_ends = (manner.reply_ends[-1:] if reply_ends is None else reply_ends).encode()
        self._sent = b""
        self._replies: deque[tuple[bytes, float]] = deque()
        self._open = True
        self._timeout_s = FIRST_TIMEOUT_S
        bench.sessions.append(self)

    def set_timeout(self, timeout_s: float) -> None:
        """How long a query waits for its reply."""
        self._timeout_s = timeout_s

    def write(self, message: str) -> None:
        """One program message. Raises SupplyLost on a closed session."""
        if not self._open:
            raise SupplyLost(self.resource, "the session is closed")
        bench = self._bench
        self._sent += message.encode("ascii", "replace") + self._ends
        if bench.manner.one_client and bench.sessions[0] is not self:
            return
        messages, self._sent = bench.manner.cut(self._sent)
        for one in messages:
            self._replies += ((left, leaves_s) for leaves_s, left in bench.exchange(one, self._now()))

    def query(self, message: str) -> str:
        """One program message and the next reply, at the time it leaves. Raises SupplyTimeout without one."""
        self.write(message)
        return self._line(f"no reply to {message!r}")

    def read(self) -> str:
        """The next reply, at the time it leaves. Raises SupplyTimeout without one."""
        return self._line("no reply")

    def read_exactly(self, count: int) -> bytes:
        """So many bytes. Raises SupplyTimeout where there are fewer."""
        deadline_s, found = self._now() + self._timeout_s, b""
        while len(found) < count:
            found += self._next(deadline_s, "a reply too short")
        self._give_back(found[count:])
        return found[:count]

    def read_until_quiet(self, quiet_s: float) -> bytes:
        """All that comes until nothing came for so long, at most 256 bytes. Raises SupplyTimeout where nothing does."""
        found = self._next(self._now() + self._timeout_s, "no reply")
        while self._replies and self._replies[0][1] <= self._now() + quiet_s and len(found) < MOST_UNENDED:
            found += self._next(self._now() + quiet_s, "no reply")
        if len(found) < MOST_UNENDED:
            self._wait(self._now() + quiet_s)
        self._give_back(found[MOST_UNENDED:])
        return found[:MOST_UNENDED]

    def close(self) -> None:
        if self._open:
            self._bench.sessions.remove(self)
        self._open = False

    def _line(self, what: str) -> str:
        deadline_s, found = self._now() + self._timeout_s, b""
        while not self._reply_ends or self._reply_ends not in found:
            found += self._next(deadline_s, what)
        line, _, rest = found.partition(self._reply_ends)
        self._give_back(rest)
        return line.decode("ascii", "replace")

    def _next(self, deadline_s: float, what: str) -> bytes:
        if not self._replies or self._replies[0][1] > deadline_s:
            self._wait(deadline_s)
            raise SupplyTimeout(self.resource, f"{what} within {self._timeout_s:g} s")
        left, leaves_s = self._replies.popleft()
        if leaves_s > self._now():
            self._wait(leaves_s)
        return left

    def _give_back(self, rest: bytes) -> None:
        if rest:
            self._replies.appendleft((rest, self._now()))
