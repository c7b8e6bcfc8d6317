"""Real key events on an X server, by its own protocol: nothing of Qt's in between, and no further program.

Source: X Window System Protocol, X11R7, and the XTEST extension's protocol, FakeInput.
"""

import socket
import struct

KEY_PRESS, KEY_RELEASE = 2, 3
ESCAPE, PAUSE, F12 = 0xFF1B, 0xFF13, 0xFFC9
"""Keysyms. Source: X11's keysymdef.h."""


class RealKeys:
    """A client of the display with this number, on this machine."""

    def __init__(self, display: int) -> None:
        self._line = socket.socket(socket.AF_UNIX)
        self._line.settimeout(5.0)
        self._line.connect(f"/tmp/.X11-unix/X{display}")
        self._line.sendall(struct.pack("<BxHHHHxx", ord("l"), 11, 0, 0, 0))
        worked, length = struct.unpack("<BxHHH", self._read(8))[0::3]
        setup = self._read(4 * length)
        assert worked == 1, setup
        self._least, self._most = setup[26], setup[27]
        name = b"XTEST"
        reply = self._ask(struct.pack("<BBHHxx8s", 98, 0, 4, len(name), name))
        assert reply[8] == 1, "the server has no XTEST"
        self._xtest = reply[9]
        self._codes = self._key_codes()

    def _read(self, count: int) -> bytes:
        data = b""
        while len(data) < count:
            more = self._line.recv(count - len(data))
            assert more, "the server is gone"
            data += more
        return data

    def _ask(self, request: bytes) -> bytes:
        """The reply; events that nobody asked for are passed over."""
        self._line.sendall(request)
        while True:
            head = self._read(32)
            assert head[0] != 0, f"error {head[1]}"
            if head[0] == 1:
                return head + self._read(4 * struct.unpack_from("<I", head, 4)[0])

    def _key_codes(self) -> dict[int, int]:
        count = self._most - self._least + 1
        reply = self._ask(struct.pack("<BBHBBxx", 101, 0, 2, self._least, count))
        each = reply[1]
        symbols = struct.unpack_from(f"<{each * count}I", reply, 32)
        codes: dict[int, int] = {}
        for index, symbol in enumerate(symbols):
            codes.setdefault(symbol, self._least + index // each)
        return codes

    def press(self, keysym: int) -> None:
        """Down and up again."""
        for kind in (KEY_PRESS, KEY_RELEASE):
            event = struct.pack("<BBHIIQHHI", kind, self._codes[keysym], 0, 0, 0, 0, 0, 0, 0)
            self._line.sendall(struct.pack("<BBH", self._xtest, 2, 9) + event.ljust(32, b"\0"))

    def close(self) -> None:
        self._line.close()
