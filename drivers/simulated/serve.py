"""The bench on TCP in real time, on the loopback address only.

One thread, one select loop: it takes program messages as they arrive, lets the model catch up with the clock at least
every few milliseconds, and lets each reply leave when it is due. Messages are executed strictly one after the other.
"""

import select
import socket
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, field

from drivers.simulated.bench import Bench

TICK_S = 0.004
GAP_SHARE = 0.5
"""Of the gap that the dialect asks for, so much is insisted on: two processes see the same gap differently."""
QUIET_S = 0.008
"""Where nothing ends a message it is over when nothing came for so long. Source: 8 characters at 9600 baud."""
"""The model never lags the clock by more than this."""
LONGEST_LINE = 64 * 1024
"""Bytes without a terminator after which a client is dropped."""


@dataclass(slots=True, eq=False)
class Client:
    """One connection: what came in, what has to go out."""

    link: socket.socket
    received: bytearray = field(default_factory=bytearray)
    to_send: bytearray = field(default_factory=bytearray)
    heard_s: float = 0.0


class Server:
    """Serves a bench until told to stop. `clients` above 0: further connections open and wait until one has left."""

    def __init__(self, bench: Bench, *, port: int = 0, clients: int = 0) -> None:
        self._bench = bench
        bench.gap_share = GAP_SHARE
        self._most_clients = clients or int(bench.manner.one_client)
        self._clients: list[Client] = []
        self._messages: deque[tuple[Client, str]] = deque()
        self._due: deque[tuple[float, Client, bytes]] = deque()
        self._by_hand: deque[Callable[[Bench], None]] = deque()
        self._stopping = False
        self._listener = socket.create_server(("127.0.0.1", port), backlog=16)
        self._listener.setblocking(False)
        self._bell, self._rope = socket.socketpair()
        self._bell.setblocking(False)
        self._rope.setblocking(False)
        self.port: int = self._listener.getsockname()[1]
        bench.advance(time.perf_counter())

    @property
    def resource(self) -> str:
        """The address by which the instrument is opened."""
        return f"TCPIP::127.0.0.1::{self.port}::SOCKET"

    def stop(self) -> None:
        """Ends `run` soon; may be called from another thread or a signal handler."""
        self._stopping = True
        try:
            self._rope.send(b"!")
        except OSError:
            return  # closed already, or so full that it wakes anyway

    def by_hand(self, what: Callable[[Bench], None]) -> None:
        """Does that to the bench between two messages; may be called from another thread."""
        self._by_hand.append(what)

    def run(self) -> None:
        """Serves until `stop`, then closes everything."""
        try:
            while not self._stopping:
                self._turn()
        finally:
            for client in self._clients:
                client.link.close()
            for link in (self._listener, self._bell, self._rope):
                link.close()

    def _turn(self) -> None:
        now_s = time.perf_counter()
        wake_s = min(now_s + TICK_S, self._due[0][0]) if self._due else now_s + TICK_S
        readers: list[socket.socket] = [client.link for client in self._clients]
        readers.append(self._bell)
        if not self._most_clients or len(self._clients) < self._most_clients:
            readers.append(self._listener)
        writers = [client.link for client in self._clients if client.to_send]
        readable, writable, _ = select.select(readers, writers, [], max(0.0, wake_s - now_s))
        if self._listener in readable:
            self._accept()
        for client in list(self._clients):
            if client.link in readable:
                self._receive(client)
        if not self._bench.manner.termination:
            self._end_quiet_messages()
        self._execute()
        while self._by_hand:
            self._by_hand.popleft()(self._bench)
        self._bench.advance(time.perf_counter())
        for client in list(self._clients):
            if client.link in writable or client.to_send:
                self._send(client)

    def _accept(self) -> None:
        try:
            link, _ = self._listener.accept()
        except OSError:
            return  # gone before it was taken
        link.setblocking(False)
        link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self._clients.append(Client(link))

    def _receive(self, client: Client) -> None:
        try:
            data = client.link.recv(65536)
        except BlockingIOError:
            return
        except OSError:
            data = b""
        if not data:
            self._drop(client)
            return
        client.received += data
        client.heard_s = time.perf_counter()
        lines = list[str]()
        if self._bench.manner.termination:
            lines = self._take_lines(client)
        if len(client.received) > LONGEST_LINE or any(len(line) > LONGEST_LINE for line in lines):
            self._drop(client)

    def _take_lines(self, client: Client) -> list[str]:
        lines, rest = self._bench.manner.cut(bytes(client.received))
        client.received = bytearray(rest)
        self._messages += ((client, line) for line in lines)
        return lines

    def _end_quiet_messages(self) -> None:
        now_s = time.perf_counter()
        for client in self._clients:
            if client.received and now_s - client.heard_s >= QUIET_S:
                self._take_lines(client)

    def _execute(self) -> None:
        """One message at a time: the next is taken only when the last one's reply has left."""
        while True:
            now_s = time.perf_counter()
            while self._due and self._due[0][0] <= now_s:
                _, client, line = self._due.popleft()
                client.to_send += line
            if self._due or not self._messages:
                return
            client, message = self._messages.popleft()
            self._due += ((at_s, client, left) for at_s, left in self._bench.exchange(message, now_s))

    def _send(self, client: Client) -> None:
        if client not in self._clients:
            return
        try:
            sent = client.link.send(client.to_send)
        except BlockingIOError:
            return
        except OSError:
            self._drop(client)
            return
        del client.to_send[:sent]

    def _drop(self, client: Client) -> None:
        if client in self._clients:
            self._clients.remove(client)
            client.link.close()
