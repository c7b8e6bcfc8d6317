"""A session to a bench in virtual time: the controller's side, without a socket and without waiting."""

from collections import deque
from collections.abc import Callable

from drivers.simulated.bench import Bench
from drivers.supply import SupplyLost, SupplyTimeout

FIRST_TIMEOUT_S = 2.0


class VirtualSession:
    """`now` tells the caller's time in seconds; `wait` moves it to a given instant.

    Replies that nobody took answer the next question, as they do on a socket.
    """

    def __init__(self, bench: Bench, now: Callable[[], float], wait: Callable[[float], None]) -> None:
        self.resource = f"SIM::{bench.scenario.name}::{bench.seed}"
        self._bench = bench
        self._now = now
        self._wait = wait
        self._replies: deque[tuple[str, float]] = deque()
        self._open = True
        self._timeout_s = FIRST_TIMEOUT_S

    def set_timeout(self, timeout_s: float) -> None:
        """How long a query waits for its reply."""
        self._timeout_s = timeout_s

    def write(self, message: str) -> None:
        """One program message. Raises SupplyLost on a closed session."""
        if not self._open:
            raise SupplyLost(self.resource, "the session is closed")
        reply, leaves_s = self._bench.send(message, self._now())
        if reply is not None:
            self._replies.append((reply, leaves_s))

    def query(self, message: str) -> str:
        """One program message and the next reply, at the time it leaves. Raises SupplyTimeout without one."""
        self.write(message)
        deadline_s = self._now() + self._timeout_s
        if not self._replies or self._replies[0][1] > deadline_s:
            self._wait(deadline_s)
            raise SupplyTimeout(self.resource, f"no reply to {message!r} within {self._timeout_s:g} s")
        reply, leaves_s = self._replies.popleft()
        if leaves_s > self._now():
            self._wait(leaves_s)
        return reply

    def close(self) -> None:
        self._open = False
