"""HiSLIP in its synchronized mode: messages with a number, and replies that bear the number of what they answer.

Source: IVI-6.1 (HiSLIP) as published; numbers from memory and tried against an independent client in the tests.
"""

import struct
from typing import NamedTuple

from drivers.foreign import inert
from drivers.links.carrier import Piece
from drivers.links.tcp import Connection

PORT = 4880
_HEADER = struct.Struct(">2sBBIQ")
_INITIALIZE, _INITIALIZED, _FATAL, _ERROR, _DATA, _DATA_END = 0, 1, 2, 3, 6, 7
_MOST, _MOST_IS, _ASYNC_INITIALIZE, _ASYNC_INITIALIZED = 15, 16, 17, 18
_VERSION = 0x0100
_FIRST_NUMBER, _ANY_NUMBER, _ROUND = 0xFFFF_FF00, 0xFFFF_FFFF, 0x1_0000_0000
_OFFERED = 1 << 20
_LONGEST_TEXT = 4096
_CHUNK = 65536
_OTHER = "something answers at this address, but not in HiSLIP"


class Header(NamedTuple):
    kind: int
    control: int
    parameter: int
    length: int


class Hislip:
    """A session over its two connections, `device` by its sub-address."""

    byte_s = 0.0

    def __init__(self, host: str, port: int, device: str, deadline_s: float) -> None:
        self._number, self._sent_number = _FIRST_NUMBER, _FIRST_NUMBER
        self._remaining, self._last, self._delivered, self._stale = 0, False, 0, 0
        self._main = Connection(host, port, deadline_s)
        self._beside: Connection | None = None
        try:
            greeting = device.encode("ascii")
            self._put(self._main, Header(_INITIALIZE, 0, _VERSION << 16, len(greeting)), greeting, deadline_s)
            header = self._expect(self._main, _INITIALIZED, deadline_s)
            if header.control & 1:
                raise ConnectionError("it wants HiSLIP's overlapped mode, which this program does not speak")
            self._beside = Connection(host, port, deadline_s)
            self._put(self._beside, Header(_ASYNC_INITIALIZE, 0, header.parameter & 0xFFFF, 0), b"", deadline_s)
            self._expect(self._beside, _ASYNC_INITIALIZED, deadline_s)
            self._put(self._beside, Header(_MOST, 0, 0, 8), struct.pack(">Q", _OFFERED), deadline_s)
            if self._expect(self._beside, _MOST_IS, deadline_s).length != 8:
                raise ConnectionAbortedError(_OTHER)
            (most,) = struct.unpack(">Q", self._beside.exactly(8, deadline_s))
        except BaseException:
            self.close()
            raise
        self._chunk = max(64, min(most, _OFFERED) - _HEADER.size)

    def send(self, data: bytes, deadline_s: float) -> None:
        self._main.refuse_dead()
        for start in range(0, len(data), self._chunk):
            chunk = data[start : start + self._chunk]
            kind = _DATA_END if start + self._chunk >= len(data) else _DATA
            header = Header(kind, self._delivered, self._number, len(chunk))
            self._put(self._main, header, chunk, deadline_s)
            self._sent_number, self._number = self._number, (self._number + 2) % _ROUND
            self._delivered = 0
        # Of a reply to an earlier message nothing more is wanted.
        self._stale, self._remaining, self._last = self._stale + self._remaining, 0, False

    def receive(self, deadline_s: float) -> Piece:
        while not self._remaining:
            if self._last:
                self._last, self._delivered = False, 1
                return Piece(b"", True)
            self._next(deadline_s)
        data = self._main.receive(min(self._remaining, _CHUNK), deadline_s)
        self._remaining -= len(data)
        ends = self._last and not self._remaining
        if ends:
            self._last, self._delivered = False, 1
        return Piece(data, ends)

    def close(self) -> None:
        self._main.close()
        if self._beside is not None:
            self._beside.close()

    def _next(self, deadline_s: float) -> None:
        """To the next piece of the reply to what was sent last. A late reply to something earlier is passed over."""
        self._pass_over_stale(deadline_s)
        header = self._header(self._main, deadline_s)
        if header.kind in (_DATA, _DATA_END) and header.parameter in (_ANY_NUMBER, self._sent_number):
            self._remaining, self._last = header.length, header.kind == _DATA_END
            return
        self._stale = header.length
        self._pass_over_stale(deadline_s)

    def _pass_over_stale(self, deadline_s: float) -> None:
        while self._stale:
            self._stale -= len(self._main.receive(min(self._stale, _CHUNK), deadline_s))

    def _put(self, connection: Connection, header: Header, payload: bytes, deadline_s: float) -> None:
        connection.send(_HEADER.pack(b"HS", *header) + payload, deadline_s)

    def _expect(self, connection: Connection, kind: int, deadline_s: float) -> Header:
        header = self._header(connection, deadline_s)
        if header.kind != kind:
            raise ConnectionAbortedError(_OTHER)
        return header

    def _header(self, connection: Connection, deadline_s: float) -> Header:
        prologue, *numbers = _HEADER.unpack(connection.exactly(_HEADER.size, deadline_s))
        if prologue != b"HS":
            raise ConnectionAbortedError(_OTHER)
        header = Header(*numbers)
        if header.kind in (_FATAL, _ERROR):
            text = connection.exactly(min(header.length, _LONGEST_TEXT), deadline_s)
            raise ConnectionAbortedError(f"it reports: {inert(text.decode('ascii', 'replace'))}")
        return header
