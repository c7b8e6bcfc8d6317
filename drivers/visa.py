"""The only door to pyvisa: one session to one resource, its errors translated in one place.

pyvisa's pure-Python backend lets OSError, TypeError, ValueError and a bare Exception escape, opens a port where nobody
listens without a word, and leaves Nagle's algorithm on, which holds a second message back for some 40 ms. Its read
spins at full load on a line that was closed and, by one byte at a time or without a terminator, is held for ever: on a
socket the replies are therefore taken here, to a deadline. After a timeout a session is suspect: a late reply would
answer the next query. The caller must close it and open another.
"""

import contextlib
import select
import socket
import time
from types import TracebackType
from typing import Any

import pyvisa
from pyvisa import constants, rname
from pyvisa.errors import Error, VisaIOError

from drivers.scpi import LONGEST_REPLY
from drivers.supply import SupplyError, SupplyGarbled, SupplyLost, SupplyTimeout

_ESCAPES = (OSError, EOFError, TypeError, ValueError, AttributeError, RuntimeError)


class VisaSession:
    """A message-based session. Not thread-safe. `timeout_s` bounds the opening, each message and each reply."""

    def __init__(self, resource: str, *, termination: str, timeout_s: float) -> None:
        self.resource = resource
        self._ends = termination.encode("ascii")
        self._timeout_s = timeout_s
        self._received = b""
        with _Translating(resource):
            _refuse_no_address(resource)
            # ResourceManager is one per process and backend: closing it would close every session, so it never is.
            self._visa: Any = pyvisa.ResourceManager("@py").open_resource(
                resource,
                open_timeout=round(timeout_s * 1000),
                timeout=round(timeout_s * 1000),
                read_termination=termination,
                write_termination=termination,
            )
        self._socket = self._without_delay()

    def set_timeout(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s
        with _Translating(self.resource):
            self._visa.timeout = round(timeout_s * 1000)

    def write(self, message: str) -> None:
        """Sends one message. Raises SupplyError."""
        with _Translating(self.resource):
            if self._socket is not None:
                self._refuse_dead_line(self._socket)
            self._visa.write(message)

    def query(self, message: str) -> str:
        """Sends one message and returns its one reply. Raises SupplyError."""
        self.write(message)
        with _Translating(self.resource):
            return str(self._visa.read()) if self._socket is None else self._line(self._socket)

    def close(self) -> None:
        self._socket = None
        with contextlib.suppress(Error, OSError, TypeError, ValueError, AttributeError):
            self._visa.close()

    def _without_delay(self) -> socket.socket | None:
        # No VISA attribute reaches this in the pure-Python backend, so the socket behind the session is taken.
        link = getattr(self._visa.visalib.sessions.get(self._visa.session), "interface", None)
        if not isinstance(link, socket.socket):
            return None
        with contextlib.suppress(OSError):  # refused connections show at the first write
            link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        return link

    def _refuse_dead_line(self, link: socket.socket) -> None:
        # A peek costs 2 µs. Without it the first message after a closed line is lost without a word.
        readable, writable, _ = select.select([link], [link], [], 0.0)
        if readable and link.recv(1, socket.MSG_PEEK) == b"":
            raise ConnectionResetError("the supply closed the connection")
        if not writable and not select.select([], [link], [], self._timeout_s)[1]:
            raise TimeoutError("it takes no more messages")

    def _line(self, link: socket.socket) -> str:
        """One reply without its terminator. Bytes that are no ASCII become a character that no reply has."""
        deadline_s = time.monotonic() + self._timeout_s
        while self._ends not in self._received:
            if len(self._received) > LONGEST_REPLY:
                raise SupplyGarbled(self.resource, f"a reply of more than {LONGEST_REPLY} bytes")
            left_s = deadline_s - time.monotonic()
            if left_s <= 0 or not select.select([link], [], [], left_s)[0]:
                raise TimeoutError("no reply in time")
            data = link.recv(LONGEST_REPLY)
            if not data:
                raise ConnectionResetError("the supply closed the connection")
            self._received += data
        line, _, self._received = self._received.partition(self._ends)
        return line.decode("ascii", "replace")


def _refuse_no_address(resource: str) -> None:
    parsed = rname.parse_resource_name(resource)
    # The backend would leave its socket open and say that it could not connect.
    if isinstance(parsed, rname.TCPIPSocket) and not (parsed.port.isdecimal() and 0 < int(parsed.port) < 65536):
        raise ValueError(f"the port of this address is {parsed.port}, not a number from 1 to 65535")


class _Translating:
    """What escapes from pyvisa within it leaves as a SupplyError; a fault of this program's own stays what it is."""

    def __init__(self, resource: str) -> None:
        self._resource = resource

    def __enter__(self) -> None:
        pass

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if error is None or kind is None or isinstance(error, SupplyError):
            return
        # Where no connection comes about the backend raises Exception itself, which no narrower word would catch.
        if kind is Exception or kind.__module__.startswith("pyvisa") or isinstance(error, _ESCAPES):
            raise _translated(self._resource, error) from error


def _translated(resource: str, error: BaseException) -> SupplyError:
    match error:
        case rname.InvalidResourceName():
            what = "this is no VISA address; one looks like TCPIP::127.0.0.1::5025::SOCKET"
            return SupplyLost(resource.strip() or "no address", what)
        case VisaIOError(error_code=constants.StatusCode.error_timeout):
            return SupplyTimeout(resource, "no reply in time")
        case VisaIOError():
            return SupplyLost(resource, str(error.description))
        case TimeoutError():
            return SupplyTimeout(resource, str(error))
        case UnicodeDecodeError():
            return SupplyGarbled(resource, "a reply that is not ASCII")
        case ConnectionRefusedError():
            return SupplyLost(resource, "nothing listens at this address")
    text = str(error) or type(error).__name__
    if str(constants.StatusCode.error_timeout) in text:
        text = "nothing answers at this address"
    return SupplyLost(resource, text)
