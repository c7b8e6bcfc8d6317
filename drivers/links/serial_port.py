"""A serial port: eight bits, no parity, one stop bit, no handshake.

Opening raises DTR and RTS, as the operating system does by itself; some isolated supplies live on them. Where it can be
told, they are left up when the port is closed: going down and up again restarts some devices, and a session is opened
afresh after every lost reply.
"""

import contextlib
import time
from typing import Any

from drivers.links.carrier import Piece
from drivers.scpi import LONGEST_REPLY

termios: Any
try:
    import termios
except ImportError:  # not on every system
    termios = None

BAUD = 9600
_SLICE_S = 0.02
_QUIET_S = 0.02
"""s of silence that show at the opening that no late reply is still on the line: 20 characters at 9600 baud."""


class SerialPort:
    """Opened for this program alone: two on one line would take each other's replies."""

    def __init__(self, device: str, baud: int, deadline_s: float) -> None:
        import serial  # only where there is a serial port

        self._port = serial.Serial()
        self._port.port, self._port.baudrate = device, baud
        self.byte_s = 10.0 / baud  # eight bits between a start and a stop
        self._port.timeout, self._port.write_timeout = _SLICE_S, max(_SLICE_S, deadline_s - time.monotonic())
        self._port.exclusive = True
        # What the settings of a terminal fail with is of no common kind.
        self._failures = (OSError, *((termios.error,) if termios else ()))
        self._too_slow = serial.SerialTimeoutException
        try:
            self._port.open()
        except self._failures as error:
            raise ConnectionError(_opening_failed(device, str(error).lower())) from error
        try:
            if termios:
                _leave_lines_up(self._port.fileno())
            self._pass_over_late(deadline_s)
        except BaseException:
            self.close()
            raise

    def send(self, data: bytes, deadline_s: float) -> None:
        left_s = max(_SLICE_S, deadline_s - time.monotonic())
        # Each change writes the port's settings again, so only where a session's timeout has changed.
        if abs(left_s - self._port.write_timeout) > 0.01:
            self._port.write_timeout = left_s
        try:
            self._port.write(data)
        except self._too_slow:
            raise TimeoutError("it takes no more messages") from None
        except self._failures as error:
            raise ConnectionResetError("the serial port is gone, or its cable was pulled") from error

    def receive(self, deadline_s: float) -> Piece:
        while time.monotonic() < deadline_s:
            try:
                data = self._port.read(max(1, min(self._port.in_waiting, LONGEST_REPLY)))
            except self._failures as error:
                raise ConnectionResetError("the serial port is gone, or its cable was pulled") from error
            if data:
                return Piece(bytes(data), False)
        raise TimeoutError("no reply in time")

    def close(self) -> None:
        with contextlib.suppress(*self._failures):
            self._port.close()

    def _pass_over_late(self, deadline_s: float) -> None:
        while True:
            try:
                self.receive(time.monotonic() + _QUIET_S)
            except TimeoutError:
                return
            if time.monotonic() >= deadline_s:
                raise TimeoutError("it never stops sending")


def _leave_lines_up(descriptor: int) -> None:
    settings = termios.tcgetattr(descriptor)
    settings[2] &= ~termios.HUPCL
    termios.tcsetattr(descriptor, termios.TCSANOW, settings)


def _opening_failed(device: str, text: str) -> str:
    if "no such file" in text or "filenotfound" in text:
        return f"there is no serial port {device}"
    if "permission" in text or "access is denied" in text:
        return f"this user may not open {device}, or another program holds it (on Linux: group dialout)"
    if "exclusively lock" in text or "busy" in text:
        return f"another program holds {device}"
    return f"{device} can not be opened as a serial port"
