"""VXI-11: one link to one device, over remote procedure calls.

Source: RFC 5531 (ONC RPC version 2, record marking), RFC 1833 (port mapper), VXI-11 revision 1.0 (core channel), as
published; numbers from memory and tried against an independent client in the tests.
"""

import contextlib
import random
import struct
import time
from typing import NamedTuple

from drivers.links.carrier import Piece
from drivers.links.tcp import Connection
from drivers.scpi import LONGEST_REPLY

PORT_MAPPER = 111
_GET_PORT, _OVER_TCP = 3, 6
_CREATE_LINK, _WRITE, _READ, _DESTROY_LINK = 10, 11, 12, 23
_END_FLAG, _END_REASON = 8, 4
_LAST = 0x8000_0000
_IO_TIMEOUT = 15
_FAILURES = {
    3: "the device is not accessible",
    9: "it takes no more links: another program holds it",
    11: "another program has locked it",
}
_LEAST_CHUNK = 256
_OTHER = "something answers at this address, but not in VXI-11"


class Program(NamedTuple):
    """What is called: a remote program and its version."""

    number: int
    version: int


_PORT_MAPPER, _CORE = Program(100000, 2), Program(0x0607AF, 1)
_CORE_OVER_TCP = struct.pack(">IIII", *_CORE, _OVER_TCP, 0)


class Calls:
    """Remote procedure calls of one program over one connection."""

    def __init__(self, host: str, port: int, program: Program, deadline_s: float) -> None:
        self._connection = Connection(host, port, deadline_s)
        self._program = program
        self._number = random.getrandbits(30)

    def call(self, procedure: int, arguments: bytes, deadline_s: float, *, lenient: bool = False) -> bytes:
        """The results. `lenient`: one fragment is a reply, also where it does not say that it is the last."""
        self.start(procedure, arguments, deadline_s)
        while True:
            record = self._record(deadline_s, lenient)
            number, results = _results(record)
            if number == self._number:
                return results
            # One that was late: its call was given up.

    def start(self, procedure: int, arguments: bytes, deadline_s: float) -> None:
        """A call whose results nobody waits for."""
        self._number += 1
        record = _called(self._number, self._program, procedure, arguments)
        self._connection.send(struct.pack(">I", _LAST | len(record)) + record, deadline_s)

    def close(self) -> None:
        self._connection.close()

    def _record(self, deadline_s: float, lenient: bool) -> bytes:
        record = b""
        while True:
            (mark,) = struct.unpack(">I", self._connection.exactly(4, deadline_s))
            length = mark & ~_LAST
            # A page of a web server begins with a length of 1.2 GB.
            if len(record) + length > LONGEST_REPLY + 1024:
                raise ConnectionAbortedError(_OTHER)
            record += self._connection.exactly(length, deadline_s)
            if mark & _LAST or lenient:
                return record


class Vxi11:
    """A link to a device. `port` 0: the port mapper is asked."""

    byte_s = 0.0

    def __init__(self, host: str, port: int, device: str, deadline_s: float, *, port_mapper: int = PORT_MAPPER) -> None:
        port = port or core_port(host, deadline_s, port_mapper=port_mapper)
        self._calls = Calls(host, port, _CORE, deadline_s)
        try:
            asked = struct.pack(">III", random.getrandbits(31), 0, 0) + _opaque(device.encode("ascii"))
            results = self._calls.call(_CREATE_LINK, asked, deadline_s)
            error, self._link, _, most = _unpacked(">IIII", results)
            _refuse(error)
        except BaseException:
            self._calls.close()
            raise
        self._chunk = max(_LEAST_CHUNK, min(most, LONGEST_REPLY))

    def send(self, data: bytes, deadline_s: float) -> None:
        for start in range(0, len(data), self._chunk):
            chunk = data[start : start + self._chunk]
            flags = _END_FLAG if start + self._chunk >= len(data) else 0
            head = struct.pack(">IIII", self._link, _left_ms(deadline_s), 0, flags)
            results = self._calls.call(_WRITE, head + _opaque(chunk), deadline_s)
            error, taken = _unpacked(">II", results)
            _refuse(error)
            if taken < len(chunk):
                raise ConnectionError("it took a part of a message only")

    def receive(self, deadline_s: float) -> Piece:
        asked = struct.pack(">IIIIII", self._link, LONGEST_REPLY, _left_ms(deadline_s), 0, 0, 0)
        results = self._calls.call(_READ, asked, deadline_s)
        error, reason, length = _unpacked(">III", results)
        _refuse(error)
        if 12 + length > len(results):
            raise ConnectionAbortedError(_OTHER)
        return Piece(results[12 : 12 + length], bool(reason & _END_REASON))

    def close(self) -> None:
        # Said, not waited for: one that hangs would hold up whoever opens the next session.
        with contextlib.suppress(OSError):
            self._calls.start(_DESTROY_LINK, struct.pack(">I", self._link), time.monotonic() + 0.05)
        self._calls.close()


def core_port(host: str, deadline_s: float, *, port_mapper: int = PORT_MAPPER) -> int:
    """Where the core channel listens, asked of the host's port mapper."""
    calls = Calls(host, port_mapper, _PORT_MAPPER, deadline_s)
    try:
        (port,) = _unpacked(">I", calls.call(_GET_PORT, _CORE_OVER_TCP, deadline_s, lenient=True))
    finally:
        calls.close()
    if not 0 < port < 65536:
        raise ConnectionRefusedError("there is no VXI-11 at this address")
    return int(port)


def port_question(number: int) -> bytes:
    """What a port mapper is asked, as a datagram."""
    return _called(number, _PORT_MAPPER, _GET_PORT, _CORE_OVER_TCP)


def mapped_port(datagram: bytes, number: int) -> int:
    """What it answers to the question of that number: a port, 0 for none. Raises OSError where it is no answer."""
    answered, results = _results(datagram)
    if answered != number:
        raise ConnectionAbortedError(_OTHER)
    return int(_unpacked(">I", results)[0])


def _called(number: int, program: Program, procedure: int, arguments: bytes) -> bytes:
    return struct.pack(">10I", number, 0, 2, *program, procedure, 0, 0, 0, 0) + arguments


def _results(record: bytes) -> tuple[int, bytes]:
    """The number of the call that a reply is to, and the results in it."""
    number, kind, status, _, length = _unpacked(">IIIII", record)
    if (kind, status) != (1, 0):
        raise ConnectionAbortedError(_OTHER)
    start = 20 + (length + 3) // 4 * 4
    (accepted,) = _unpacked(">I", record[start:])
    if accepted:
        raise ConnectionAbortedError(_OTHER)
    return number, record[start + 4 :]


def _unpacked(form: str, data: bytes) -> tuple[int, ...]:
    if len(data) < struct.calcsize(form):
        raise ConnectionAbortedError(_OTHER)
    return struct.unpack_from(form, data)


def _opaque(data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + data + bytes(-len(data) % 4)


def _left_ms(deadline_s: float) -> int:
    return max(1, round(1000.0 * (deadline_s - time.monotonic())))


def _refuse(error: int) -> None:
    if error == _IO_TIMEOUT:
        raise TimeoutError("no reply in time")
    if error:
        raise ConnectionError(_FAILURES.get(error, f"it reports VXI-11 error {error}"))
