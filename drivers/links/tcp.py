"""A TCP connection with deadlines, and the raw socket: what is sent is the message, nothing but bytes comes back."""

import contextlib
import ipaddress
import select
import socket
import time

from drivers.links.carrier import Piece
from drivers.links.in_time import InTime
from drivers.scpi import LONGEST_REPLY

CLOSED = "the supply closed the connection"


class Connection:
    """To one port. No message waits for the acknowledgement of the one before (Nagle): that took 40 ms."""

    def __init__(self, host: str, port: int, deadline_s: float) -> None:
        address = _address(host, deadline_s)
        self._came = b""
        self._socket = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        try:
            self._socket.settimeout(_left(deadline_s, "nothing answers at this address"))
            self._socket.connect((address, port))
            self._socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        except BaseException as error:
            self._socket.close()
            if isinstance(error, TimeoutError):
                raise ConnectionError("nothing answers at this address") from None
            raise

    def refuse_dead(self) -> None:
        """Raises where the other side has closed. A message to it would be lost without a word; a look costs 2 µs."""
        if select.select([self._socket], [], [], 0.0)[0] and not self._socket.recv(1, socket.MSG_PEEK):
            raise ConnectionResetError(CLOSED)

    def send(self, data: bytes, deadline_s: float) -> None:
        what = "it takes no more messages"
        self._socket.settimeout(_left(deadline_s, what))
        try:
            self._socket.sendall(data)
        except TimeoutError:
            raise TimeoutError(what) from None
        except (BrokenPipeError, ConnectionResetError):
            raise ConnectionResetError(CLOSED) from None

    def receive(self, most: int, deadline_s: float) -> bytes:
        """What is there, from 1 byte to `most`."""
        if not self._came:
            self._came = self._more(deadline_s)
        data, self._came = self._came[:most], self._came[most:]
        return data

    def _more(self, deadline_s: float) -> bytes:
        what = "no reply in time"
        self._socket.settimeout(_left(deadline_s, what))
        try:
            data = self._socket.recv(LONGEST_REPLY)
        except TimeoutError:
            raise TimeoutError(what) from None
        except ConnectionResetError:
            data = b""
        if not data:
            raise ConnectionResetError(CLOSED)
        return data

    def exactly(self, count: int, deadline_s: float) -> bytes:
        found = b""
        while len(found) < count:
            found += self.receive(count - len(found), deadline_s)
        return found

    def close(self) -> None:
        with contextlib.suppress(OSError):
            self._socket.close()


class RawSocket:
    """Messages and replies as they are, over one connection."""

    byte_s = 0.0

    def __init__(self, host: str, port: int, deadline_s: float) -> None:
        self._connection = Connection(host, port, deadline_s)

    def send(self, data: bytes, deadline_s: float) -> None:
        self._connection.refuse_dead()
        self._connection.send(data, deadline_s)

    def receive(self, deadline_s: float) -> Piece:
        return Piece(self._connection.receive(LONGEST_REPLY, deadline_s), False)

    def close(self) -> None:
        self._connection.close()


def _left(deadline_s: float, what: str) -> float:
    left_s = deadline_s - time.monotonic()
    if left_s <= 0.0:
        raise TimeoutError(what)
    return left_s


def _address(host: str, deadline_s: float) -> str:
    """The number of a host. A look-up has no deadline of its own, and may take longer than any supply."""
    with contextlib.suppress(ValueError):
        return str(ipaddress.IPv4Address(host))
    looked = InTime()
    try:
        found = looked.call(
            lambda: socket.getaddrinfo(host, None, socket.AF_INET, socket.SOCK_STREAM),
            deadline_s,
            f"nobody says in time where {host!r} is",
        )
    except (socket.gaierror, UnicodeError):
        raise ConnectionError(f"there is no {host!r} on this network") from None
    finally:
        looked.close(lambda: None, 0.0)
    return str(found[0][4][0])
