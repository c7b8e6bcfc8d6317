"""The only door to pyvisa: one session to one resource, its errors translated in one place.

pyvisa's pure-Python backend lets OSError, TypeError and ValueError escape, opens a port where nobody listens without
a word, and leaves Nagle's algorithm on, which holds a second message back for some 40 ms. After a timeout a session is
suspect: a late reply would answer the next query. The caller must close it and open another.
"""

import contextlib
import socket
from typing import Any

import pyvisa
from pyvisa import constants
from pyvisa.errors import VisaIOError

from drivers.supply import SupplyError, SupplyLost, SupplyTimeout


class VisaSession:
    """A message-based session. Not thread-safe. `timeout_s` bounds the opening, and each reply."""

    def __init__(self, resource: str, *, termination: str, timeout_s: float) -> None:
        self.resource = resource
        try:
            # ResourceManager is one per process and backend: closing it would close every session, so it never is.
            self._visa: Any = pyvisa.ResourceManager("@py").open_resource(
                resource,
                open_timeout=round(timeout_s * 1000),
                timeout=round(timeout_s * 1000),
                read_termination=termination,
                write_termination=termination,
            )
        except (VisaIOError, OSError, TypeError, ValueError, AttributeError) as error:
            raise self._translated(error) from error
        self._socket = self._without_delay()

    def set_timeout(self, timeout_s: float) -> None:
        self._visa.timeout = round(timeout_s * 1000)

    def write(self, message: str) -> None:
        """Sends one message. Raises SupplyError."""
        try:
            self._refuse_closed_peer()
            self._visa.write(message)
        except (VisaIOError, OSError, TypeError, ValueError) as error:
            raise self._translated(error) from error

    def query(self, message: str) -> str:
        """Sends one message and returns its one reply. Raises SupplyError."""
        self.write(message)
        try:
            return str(self._visa.read())
        except (VisaIOError, OSError, TypeError, ValueError) as error:
            raise self._translated(error) from error

    def close(self) -> None:
        with contextlib.suppress(VisaIOError, OSError, TypeError, ValueError, AttributeError):
            self._visa.close()

    def _without_delay(self) -> socket.socket | None:
        # No VISA attribute reaches this in the pure-Python backend, so the socket behind the session is taken.
        link = getattr(self._visa.visalib.sessions.get(self._visa.session), "interface", None)
        if not isinstance(link, socket.socket):
            return None
        with contextlib.suppress(OSError):  # refused connections show at the first write
            link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        return link

    def _refuse_closed_peer(self) -> None:
        # A read on a dropped line would spin at full load until its timeout; a peek costs 2 µs.
        if self._socket is None or not hasattr(socket, "MSG_DONTWAIT"):
            return
        try:
            if self._socket.recv(1, socket.MSG_PEEK | socket.MSG_DONTWAIT) == b"":
                raise ConnectionResetError("the supply closed the connection")
        except BlockingIOError:
            pass

    def _translated(self, error: Exception) -> SupplyError:
        if isinstance(error, VisaIOError) and error.error_code == constants.StatusCode.error_timeout:
            return SupplyTimeout(self.resource, "no reply in time")
        if isinstance(error, ConnectionRefusedError):
            return SupplyLost(self.resource, "nothing listens at this address")
        if isinstance(error, VisaIOError):
            return SupplyLost(self.resource, str(error.description))
        return SupplyLost(self.resource, str(error) or type(error).__name__)
