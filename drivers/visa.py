"""One session to one resource, by its VISA address: which link it is, and every error translated in one place.

After a timeout a session is suspect: a late reply would answer the next query. The caller must close it and open
another.
"""

import errno
import socket
import sys
import time
from types import TracebackType

from pyvisa import constants, rname
from pyvisa.errors import Error, VisaIOError

from drivers.links import by_visa, hislip, serial_port, tcp, vxi11
from drivers.links.carrier import Carrier
from drivers.scpi import LONGEST_REPLY
from drivers.supply import SupplyError, SupplyGarbled, SupplyLost, SupplyTimeout

MOST_UNENDED = 256
EXAMPLE = "TCPIP::127.0.0.1::5025::SOCKET"
_NEEDED = {
    "USB": "libusb (on Linux the package libusb-1.0-0) or ",
    "GPIB": "the adapter's driver with its Python part (linux-gpib or gpib-ctypes) or ",
}
_ESCAPES = (OSError, EOFError, TypeError, ValueError, AttributeError, RuntimeError, Error)


class VisaSession:
    """One message out, one reply back. Not thread-safe. `timeout_s` bounds the opening, each message and each reply.

    `reply_ends`: as messages end, without a word; "" where nothing ends a reply but the link, if that does.
    """

    def __init__(self, resource: str, *, termination: str, timeout_s: float, reply_ends: str | None = None) -> None:
        self.resource = resource
        self._message_ends = termination.encode("ascii")
        self._reply_ends = self._message_ends if reply_ends is None else reply_ends.encode("ascii")
        self._timeout_s = timeout_s
        self._received, self._over = b"", False
        self._carrier: Carrier | None = None
        with _Translating(resource):
            self._carrier = open_carrier(resource, time.monotonic() + timeout_s)

    def set_timeout(self, timeout_s: float) -> None:
        self._there()
        self._timeout_s = timeout_s

    def write(self, message: str) -> None:
        """Sends one message. Raises SupplyError."""
        on_its_way_s = self._send(message)
        # A gap that an instrument wants begins when it has heard the message, not when this computer has taken it.
        if on_its_way_s:
            time.sleep(min(on_its_way_s, self._timeout_s))

    def query(self, message: str) -> str:
        """Sends one message and returns its one reply. Raises SupplyError."""
        self._send(message)
        return self.read()

    def read(self) -> str:
        """One reply without its end. Bytes that are no ASCII become a character that no reply has."""
        carrier, ends = self._there(), self._reply_ends
        # A line that ends in CR LF is over at its LF, whichever of both was meant.
        last = ends[-1:]
        with _Translating(self.resource):
            deadline_s = time.monotonic() + self._timeout_s
            while not (last and last in self._received) and not self._over:
                self._take(carrier, deadline_s)
            if last and last in self._received:
                line, _, self._received = self._received.partition(last)
                self._over = self._over and bool(self._received)
            else:
                line, self._received, self._over = self._received, b"", False
            return line.removesuffix(ends[:-1]).decode("ascii", "replace")

    def read_exactly(self, count: int) -> bytes:
        """So many bytes. Raises SupplyError."""
        carrier = self._there()
        with _Translating(self.resource):
            deadline_s = time.monotonic() + self._timeout_s
            while len(self._received) < count:
                if self._over:
                    raise SupplyGarbled(self.resource, f"{len(self._received)} bytes where {count} were to come")
                self._take(carrier, deadline_s)
            found, self._received = self._received[:count], self._received[count:]
            self._over = self._over and bool(self._received)
            return found

    def read_until_quiet(self, quiet_s: float) -> bytes:
        """All that comes until nothing came for so long: 1 to 256 bytes. Raises SupplyError."""
        carrier = self._there()
        with _Translating(self.resource):
            deadline_s = time.monotonic() + self._timeout_s
            while not self._received:
                self._take(carrier, deadline_s)
            while len(self._received) < MOST_UNENDED and not self._over:
                quiet_at_s = time.monotonic() + quiet_s
                try:
                    self._take(carrier, quiet_at_s)
                except TimeoutError:
                    break
                if time.monotonic() > deadline_s + quiet_s:
                    raise TimeoutError("its reply does not end in time")
            found, self._received = self._received[:MOST_UNENDED], self._received[MOST_UNENDED:]
            self._over = self._over and bool(self._received)
            return found

    def close(self) -> None:
        carrier, self._carrier = self._carrier, None
        if carrier is not None:
            carrier.close()

    def _there(self) -> Carrier:
        if self._carrier is None:
            raise SupplyLost(self.resource, "the session is closed")
        return self._carrier

    def _send(self, message: str) -> float:
        carrier = self._there()
        with _Translating(self.resource):
            data = message.encode("ascii") + self._message_ends
            carrier.send(data, time.monotonic() + self._timeout_s)
            return len(data) * carrier.byte_s

    def _take(self, carrier: Carrier, deadline_s: float) -> None:
        if len(self._received) > LONGEST_REPLY:
            raise SupplyGarbled(self.resource, f"a reply of more than {LONGEST_REPLY} bytes")
        data, ends = carrier.receive(deadline_s)
        self._received += data
        # An end behind a line that was taken already says nothing about the next.
        self._over = ends and bool(self._received)


def open_carrier(resource: str, deadline_s: float) -> Carrier:
    """The link that an address asks for, opened. Raises OSError, ValueError, and what pyvisa has."""
    if resource.strip() and resource != resource.strip():
        raise ValueError("there is a space before or after this address")
    parsed = rname.parse_resource_name(_with_class_in_capitals(resource))
    if any(char.isspace() for char in resource):
        raise ValueError("there is a space in this address")
    match parsed:
        case rname.TCPIPSocket():
            return tcp.RawSocket(parsed.host_address, _port(parsed.port), deadline_s)
        case rname.TCPIPInstr() if parsed.lan_device_name.lower().startswith("hislip"):
            device, comma, port = parsed.lan_device_name.partition(",")
            number = _port(port) if comma else hislip.PORT
            return hislip.Hislip(parsed.host_address, number, device, deadline_s)
        case rname.TCPIPInstr():
            host, comma, port = parsed.host_address.partition(",")
            return vxi11.Vxi11(host, _port(port) if comma else 0, parsed.lan_device_name, deadline_s)
        case rname.ASRLInstr():
            board, comma, baud = parsed.board.partition(",")
            device = f"COM{board}" if board.isdecimal() and sys.platform == "win32" else board
            return serial_port.SerialPort(device, _baud(baud) if comma else serial_port.BAUD, deadline_s)
    kind = (parsed.interface_type_const, parsed.resource_class)
    backend = by_visa.backend_for(kind, by_visa.pure_kinds(), by_visa.has_system_visa)
    if backend is None:
        needed = _NEEDED.get(parsed.interface_type, "")
        raise ValueError(
            f"this computer can't speak {parsed.interface_type} yet: it needs {needed}a VISA of the system"
        )
    return by_visa.ByVisa(resource, backend, deadline_s)


def _with_class_in_capitals(resource: str) -> str:
    """A name is the same in either case (VPP-4.3); pyvisa knows the last word in capitals only."""
    head, colons, last = resource.rpartition("::")
    return f"{head}{colons}{last.upper()}" if last.upper() in ("INSTR", "SOCKET", "RAW") else resource


def _port(text: str) -> int:
    # The range of a port is that of 16 bits.
    if not (text.isascii() and text.isdecimal() and 0 < int(text[:6]) < 65536):
        raise ValueError(f"the port of this address is {text or 'missing'}, not a number from 1 to 65535")
    return int(text)


def _baud(text: str) -> int:
    if not (text.isascii() and text.isdecimal() and 50 <= int(text[:8]) <= 4_000_000):
        raise ValueError(f"the baud rate of this address is {text or 'missing'}, not a number from 50 to 4000000")
    return int(text)


class _Translating:
    """What escapes from a link within it leaves as a SupplyError; a fault of this program's own stays what it is."""

    def __init__(self, resource: str) -> None:
        self._resource = resource

    def __enter__(self) -> None:
        pass

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if error is None or kind is None or isinstance(error, SupplyError):
            return
        # Where no connection comes about a backend raises Exception itself, which no narrower word would catch.
        if kind is Exception or kind.__module__.startswith(("pyvisa", "usb")) or isinstance(error, _ESCAPES):
            raise _translated(self._resource, error) from error


def _translated(resource: str, error: BaseException) -> SupplyError:
    match error:
        case rname.InvalidResourceName():
            what = f"this is no VISA address; one looks like {EXAMPLE}"
            return SupplyLost(resource.strip() or "no address", what)
        case VisaIOError(error_code=constants.StatusCode.error_timeout):
            return SupplyTimeout(resource, "no reply in time")
        case VisaIOError():
            return SupplyLost(resource, str(error.description))
        case TimeoutError():
            return SupplyTimeout(resource, str(error))
        case UnicodeEncodeError():
            return SupplyLost(resource, "a message or an address that is not ASCII")
        case ConnectionRefusedError() if error.errno is not None:
            if resource.upper().startswith("TCPIP") and not resource.upper().endswith("::SOCKET"):
                return SupplyLost(resource, "nothing listens at this address; that of a raw socket ends in ::SOCKET")
            return SupplyLost(resource, "nothing listens at this address")
        case socket.gaierror():
            return SupplyLost(resource, "there is no such host on this network")
        case OSError(errno=errno.EACCES) if type(error).__module__.startswith("usb"):
            return SupplyLost(resource, "this user may not open it; on Linux it takes the udev rule of the README")
        case OSError(strerror=str() as told):
            return SupplyLost(resource, told)
    return SupplyLost(resource, str(error) or type(error).__name__)
