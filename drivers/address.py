"""Which addresses are of one and the same instrument, as far as an address tells.

An instrument that is reached in two ways (its socket and its VXI-11, USB and network) has two addresses here.
"""

import os
import socket

_LAN_DEVICES = ("inst", "hislip")
"""VXI-11 and HiSLIP are two doors to one instrument."""


def same_instrument(resource: str) -> str:
    """One text for every spelling of an address: boards, letter case, defaults, host names and links to a device.

    Asks the name service for a host's name. Never raises: what is no address stays as it is.
    """
    first, *rest = resource.strip().split("::")
    rest = [part.strip() for part in rest]
    kind, board = _parted(first)
    last = rest[-1].upper() if rest else ""
    if kind == "TCPIP" and last == "SOCKET" and len(rest) == 3:
        return f"tcp {_host(rest[0])} {rest[1].lstrip('0')}"
    if last in ("INSTR", "SOCKET", "RAW"):
        rest.pop()
    if kind == "TCPIP" and rest:
        host, comma, port = rest[0].partition(",")
        device = (rest[1] if len(rest) > 1 else "inst0").lower().partition(",")[0]
        for word in _LAN_DEVICES:
            device = device.removeprefix(word)
        return f"lan {_host(host)}{comma}{port} {device or '0'}"
    if kind == "ASRL":
        device = "::".join([board, *rest]).partition(",")[0]
        return f"serial {_device(device) if device.startswith('/') else device.upper()}"
    if kind == "USB":
        return " ".join(["usb", *(_number(part) for part in rest[:2]), *rest[2:3]])
    return "::".join([kind + board, *rest]).upper()


def _parted(first: str) -> tuple[str, str]:
    """The kind of an address, and the board or device behind it; a board of the network or of USB is left out."""
    for kind in ("TCPIP", "ASRL", "USB"):
        if first.upper().startswith(kind):
            return kind, first[len(kind) :] if kind == "ASRL" else ""
    return first, ""


def _device(path: str) -> str:
    try:
        return os.path.realpath(path)
    except (OSError, ValueError):  # no path at all
        return path


def _host(name: str) -> str:
    try:
        return socket.gethostbyname(name)
    except (OSError, UnicodeError):
        return name.lower()


def _number(text: str) -> str:
    """Ids are written with or without 0x."""
    try:
        return str(int(text, 0))
    except ValueError:
        return text.lower()
