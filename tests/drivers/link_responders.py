"""Instruments behind each kind of link, on loopback addresses and pseudo-terminals.

They were written from the published protocols, apart from the links of the program, and an independent client speaks
to them as well.
"""

import contextlib
import os
import select
import socket
import struct
import threading
import time
from collections import deque
from collections.abc import Callable
from types import TracebackType
from typing import NamedTuple, Protocol, Self

from drivers.simulated.bench import Bench

ENDS_S = 5.0


class Said(NamedTuple):
    """What an instrument says to a message: nothing (None), now or `late_s` later; `cut`: only the first bytes of it,
    and then no more; `drops`: the line is closed afterwards."""

    reply: bytes | None
    late_s: float = 0.0
    cut: int | None = None
    drops: bool = False


NOTHING = Said(None)
DROPS = Said(None, drops=True)
Says = Callable[[str], Said]


class AtBench:
    """A simulated bench in real time. `heard` tells when which message came, in s of time.perf_counter."""

    def __init__(self, bench: Bench, reply_s: float = 0.0005) -> None:
        self.bench = bench
        bench.instrument.reply_s = reply_s
        self.heard: list[tuple[float, str]] = []
        bench.advance(time.perf_counter())

    def __call__(self, message: str) -> Said:
        now_s = time.perf_counter()
        self.heard.append((now_s, message))
        left = [(at_s, data) for at_s, data in self.bench.exchange(message, now_s) if data]
        if not left:
            return NOTHING
        return Said(b"".join(data for _, data in left), late_s=max(0.0, left[-1][0] - now_s))


class Instrument(Protocol):
    """Something that answers at an address until it is left."""

    @property
    def resource(self) -> str: ...
    def __enter__(self) -> Self: ...
    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None: ...


class _Threads:
    """Ends what it started, and says so where it did not end."""

    def __init__(self) -> None:
        self.ending = threading.Event()
        self._threads: list[threading.Thread] = []

    def start(self, act: Callable[[], None]) -> None:
        thread = threading.Thread(target=act, name="responder")
        self._threads.append(thread)
        thread.start()

    def end(self) -> None:
        self.ending.set()
        for thread in self._threads:
            thread.join(ENDS_S)
            assert not thread.is_alive()


class Listening:
    """Takes connections on a loopback port, each in a thread of its own."""

    def __init__(self, says: Says, *, port: int = 0) -> None:
        self.says = says
        self._threads = _Threads()
        self._listener = socket.create_server(("127.0.0.1", port))
        self._listener.settimeout(0.05)
        self.port = int(self._listener.getsockname()[1])
        self._threads.start(self._accept)

    @property
    def resource(self) -> str:
        return f"TCPIP::127.0.0.1::{self.port}::SOCKET"

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._threads.end()
        self._listener.close()

    def _accept(self) -> None:
        while not self._threads.ending.is_set():
            with contextlib.suppress(TimeoutError):
                link, _ = self._listener.accept()
                self._threads.start(lambda link=link: self._serve(link))  # type: ignore[misc]

    def _serve(self, link: socket.socket) -> None:
        with link:
            link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            with contextlib.suppress(ConnectionError, EOFError):
                self.serve(link)

    def serve(self, link: socket.socket) -> None:
        """A raw socket: lines."""
        received = b""
        while True:
            received += self.some(link)
            *lines, received = received.split(b"\n")
            for line in lines:
                said = self.says(line.decode("ascii"))
                self.wait(said.late_s)
                if said.reply is not None:
                    link.sendall(said.reply[: said.cut])
                if said.drops:
                    return

    def some(self, link: socket.socket) -> bytes:
        """At least one byte. Raises EOFError at the end."""
        while not self._threads.ending.is_set():
            if select.select([link], [], [], 0.05)[0]:
                if data := link.recv(65536):
                    return data
                break
        raise EOFError

    def exactly(self, link: socket.socket, count: int) -> bytes:
        found = b""
        while len(found) < count:
            while not select.select([link], [], [], 0.05)[0]:
                if self._threads.ending.is_set():
                    raise EOFError
            data = link.recv(count - len(found))
            if not data:
                raise EOFError
            found += data
        return found

    def wait(self, for_s: float) -> None:
        if for_s > 0.0 and self._threads.ending.wait(for_s):
            raise EOFError

    def hang(self) -> None:
        self._threads.ending.wait(ENDS_S)
        raise EOFError


class HislipServer(Listening):
    """HiSLIP, synchronized. Long replies leave in pieces of `piece` bytes."""

    piece = 4096

    @property
    def resource(self) -> str:
        return f"TCPIP::127.0.0.1::hislip0,{self.port}::INSTR"

    def serve(self, link: socket.socket) -> None:
        message = b""
        while True:
            prologue, kind, _, parameter, length = struct.unpack(">2sBBIQ", self.exactly(link, 16))
            assert prologue == b"HS"
            payload = self.exactly(link, length)
            if kind == 0:  # Initialize
                assert payload == b"hislip0"
                link.sendall(struct.pack(">2sBBHHQ", b"HS", 1, 0, 0x0100, 77, 0))
            elif kind == 17:  # AsyncInitialize
                assert parameter == 77
                link.sendall(struct.pack(">2sBBIQ", b"HS", 18, 0, 0, 0))
            elif kind == 15:  # AsyncMaximumMessageSize
                link.sendall(struct.pack(">2sBBIQQ", b"HS", 16, 0, 0, 8, 1024))
            elif kind in (6, 7):  # Data, DataEND
                message += payload
                if kind == 7:
                    said, message = self.says(message.decode("ascii").rstrip("\n")), b""
                    self.wait(said.late_s)
                    self._say(link, said, parameter)
                    if said.drops:
                        return

    def _say(self, link: socket.socket, said: Said, number: int) -> None:
        if said.reply is None:
            return
        left = said.reply
        while left:
            payload, left = left[: self.piece], left[self.piece :]
            data = struct.pack(">2sBBIQ", b"HS", 6 if left else 7, 0, number, len(payload)) + payload
            link.sendall(data if said.cut is None else data[: 16 + said.cut])


class Vxi11Server(Listening):
    """The core channel of VXI-11; its port is in the address, so that no port mapper is asked."""

    most = 1024

    def __init__(self, says: Says) -> None:
        self.links = 0
        super().__init__(says)

    @property
    def resource(self) -> str:
        return f"TCPIP::127.0.0.1,{self.port}::INSTR"

    def serve(self, link: socket.socket) -> None:
        message, replies = b"", deque[tuple[float, Said, bytes]]()
        while True:
            number, procedure, body = self.called(link)
            if procedure == 10:
                self.links += 1
                self.result(link, number, struct.pack(">IIII", 0, self.links, 0, self.most))
            elif procedure == 11:
                _, _, _, flags, length = struct.unpack_from(">IIIII", body)
                message += body[20 : 20 + length]
                self.result(link, number, struct.pack(">II", 0, length))
                if flags & 8:
                    said, message = self.says(message.decode("ascii").rstrip("\n")), b""
                    if said.reply is None and said.drops:
                        return
                    if said.reply is not None:
                        replies.append((time.perf_counter() + said.late_s, said, said.reply))
            elif procedure == 12:
                _, most, timeout_ms, _, _, _ = struct.unpack_from(">IIIIII", body)
                due_s = replies[0][0] if replies else time.perf_counter() + 1e9
                self.wait(min(due_s - time.perf_counter(), timeout_ms / 1000.0))
                if due_s > time.perf_counter():
                    self.result(link, number, struct.pack(">III", 15, 0, 0))
                    continue
                _, said, reply = replies.popleft()
                given, rest = reply[:most], reply[most:]
                if rest:
                    replies.appendleft((0.0, said, rest))
                data = given + bytes(-len(given) % 4)
                self.result(link, number, struct.pack(">III", 0, 1 if rest else 4, len(given)) + data, cut=said.cut)
                if said.drops:
                    return
            elif procedure == 23:
                self.links -= 1
                self.result(link, number, struct.pack(">I", 0))

    def called(self, link: socket.socket) -> tuple[int, int, bytes]:
        """The number, the procedure and the arguments of a call."""
        record, last = b"", 0
        while not last:
            (mark,) = struct.unpack(">I", self.exactly(link, 4))
            last = mark & 0x8000_0000
            record += self.exactly(link, mark & 0x7FFF_FFFF)
        number, kind, version, _, _, procedure, _, first, _, second = struct.unpack_from(">10I", record)
        assert (kind, version, first, second) == (0, 2, 0, 0)
        return number, procedure, record[40:]

    def result(self, link: socket.socket, number: int, results: bytes, *, cut: int | None = None) -> None:
        record = struct.pack(">IIIIII", number, 1, 0, 0, 0, 0) + results
        whole = struct.pack(">I", 0x8000_0000 | len(record)) + record
        link.sendall(whole if cut is None else whole[: 40 + cut])


class PortMapper(Vxi11Server):
    """Says where the core channel is. Without the mark of a last fragment, as some instruments do."""

    def __init__(self, core_port: int, *, port: int = 0) -> None:
        self._core_port = core_port
        Listening.__init__(self, lambda message: NOTHING, port=port)

    def serve(self, link: socket.socket) -> None:
        number, procedure, body = self.called(link)
        assert procedure == 3
        assert struct.unpack(">IIII", body) == (0x0607AF, 1, 6, 0)
        record = struct.pack(">IIIIIII", number, 1, 0, 0, 0, 0, self._core_port)
        link.sendall(struct.pack(">I", len(record)) + record)
        self.some(link)


class OnSerial:
    """The far end of a pseudo-terminal. `termination` "": a message is over when the line is quiet for 2 ms."""

    def __init__(self, says: Says, *, termination: str = "\n") -> None:
        self.says = says
        self._ends = termination.encode()
        self._threads = _Threads()
        import pty  # not there on Windows
        import tty

        self._far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.device = os.ttyname(self._near)
        self._threads.start(self._serve)

    @property
    def resource(self) -> str:
        return f"ASRL{self.device}::INSTR"

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._threads.end()

    def _serve(self) -> None:
        try:
            self._answer()
        finally:
            os.close(self._far)
            os.close(self._near)

    def _answer(self) -> None:
        received = b""
        while not self._threads.ending.is_set():
            if not select.select([self._far], [], [], 0.002 if received else 0.05)[0]:
                lines, received = ([received] if received and not self._ends else []), received * bool(self._ends)
            else:
                received += os.read(self._far, 4096)
                if not self._ends:
                    continue
                *lines, received = received.split(self._ends)
            for line in lines:
                said = self.says(line.decode("ascii").rstrip("\r\n"))
                if self._threads.ending.wait(said.late_s) if said.late_s > 0.0 else False:
                    return
                if said.reply is not None:
                    os.write(self._far, said.reply[: said.cut])
                if said.drops:
                    return


LINKS: dict[str, Callable[[Says], Instrument]] = {
    "socket": Listening,
    "vxi-11": Vxi11Server,
    "hislip": HislipServer,
    "serial": OnSerial,
}
