"""What instruments there may be: on the network, on USB, at the serial ports. Asked for by a person only.

Looking sends one broadcast to port mappers and reads lists of this computer; no instrument gets a message, and a serial
port is not even opened. It takes a second and libraries that may hang, so it is done in a process of its own, which can
be killed: `python -m drivers.discovery [PART ...]` writes a line of JSON for everything it finds.
"""

import contextlib
import json
import os
import random
import socket
import struct
import subprocess
import sys
import time
import warnings
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import NamedTuple

from drivers.children import command
from drivers.foreign import inert
from drivers.links.vxi11 import PORT_MAPPER, mapped_port, port_question

LOOK_S = 8.0
_USB_DEVICES, _USB_NODES = Path("/sys/bus/usb/devices"), Path("/dev/bus/usb")
_REPLIES_S = 1.0
_EVERYBODY = "255.255.255.255"
_MOST_FOUND = 256


class Found(NamedTuple):
    """Where an instrument may be. `kind`: the part of the search that found it; `words`: what is known of it."""

    address: str
    kind: str
    words: str


class Looked(NamedTuple):
    """`missed`: where could not be looked, and why."""

    found: tuple[Found, ...]
    missed: tuple[str, ...]


def look(within_s: float = LOOK_S, parts: Iterable[str] = ()) -> Looked:
    """Looks in a process of its own, for no longer than that; in all parts without a word of them."""
    wanted = tuple(parts) or tuple(PARTS)
    with subprocess.Popen(
        command("drivers.discovery", *wanted),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    ) as process:
        try:
            told, _ = process.communicate(timeout=within_s)
        except subprocess.TimeoutExpired:
            process.kill()
            told, _ = process.communicate()
    return _read(told, wanted)


def _read(told: bytes, wanted: Iterable[str]) -> Looked:
    found, missed, done = list[Found](), list[str](), set[str]()
    for line in told.split(b"\n")[:-1]:
        one = json.loads(line)
        done.add(one["part"])
        if "missed" in one:
            missed.append(f"{one['part']}: {one['missed']}")
        elif "address" in one:
            found.append(Found(one["address"], one["part"], one["words"]))
    missed += [f"{part}: not finished in time" for part in wanted if part not in done]
    return Looked(tuple(dict.fromkeys(found)), tuple(missed))


def serial_ports() -> list[tuple[str, str]]:
    """Listed, never opened: opening alone resets some devices, and a message may mean anything to what is there."""
    from serial.tools.list_ports import comports

    named = {None: "", "n/a": ""}
    return [
        (f"ASRL{port.device.removeprefix('COM')}::INSTR", named.get(port.description, port.description))
        for port in comports()
    ]


def usb_instruments() -> list[tuple[str, str]]:
    shut = shut_usb_instruments()
    if shut:
        return [("", f"{shut} there that this user may not open: it takes the udev rule of the README"), *_usb_listed()]
    return _usb_listed()


def shut_usb_instruments(devices: Path = _USB_DEVICES, nodes: Path = _USB_NODES) -> int:
    """How many instruments this user may not open. Whoever lists leaves them out without a word."""
    shut = set[Path]()
    for interface in devices.glob("*:*"):
        device = devices / interface.name.partition(":")[0]
        with contextlib.suppress(OSError, ValueError):
            kind = [(interface / f"bInterface{name}").read_text().strip() for name in ("Class", "SubClass")]
            bus, number = (int((device / name).read_text()) for name in ("busnum", "devnum"))
            node = nodes / f"{bus:03d}" / f"{number:03d}"
            if kind == ["fe", "03"] and not os.access(node, os.R_OK | os.W_OK):
                shut.add(node)
    return len(shut)


def _usb_listed() -> list[tuple[str, str]]:
    from pyvisa_py.highlevel import PyVisaLibrary  # registers what it finds
    from pyvisa_py.sessions import Session

    assert PyVisaLibrary
    for (interface, kind), session in Session.iter_valid_session_classes():
        if (interface.name, kind) == ("usb", "INSTR"):
            return [(address, "USBTMC") for address in session.list_resources()]
    raise OSError("libusb is not there (on Linux: the package libusb-1.0-0)")


def network_instruments() -> list[tuple[str, str]]:
    return [(f"TCPIP::{host}::INSTR", "VXI-11") for host in vxi11_hosts(broadcast_addresses(), PORT_MAPPER, _REPLIES_S)]


def system_visa() -> list[tuple[str, str]]:
    """What a VISA of the system lists, where one is installed. It leaves out serial ports: they are listed already."""
    import pyvisa

    from drivers.links.by_visa import SYSTEM, has_system_visa

    if not has_system_visa():
        return []
    listed = pyvisa.ResourceManager(SYSTEM).list_resources("?*::INSTR")
    return [(address, "by the system's VISA") for address in listed if not address.startswith("ASRL")]


PARTS: dict[str, Callable[[], list[tuple[str, str]]]] = {
    "serial": serial_ports,
    "usb": usb_instruments,
    "network": network_instruments,
    "visa": system_visa,
}
"""The parts of a search, the quickest first: addresses with words; words without an address tell what was missed."""


def vxi11_hosts(addresses: Iterable[str], port: int, for_s: float) -> list[str]:
    """Who of all at these addresses has a VXI-11 core channel, asked of their port mappers by one broadcast each."""
    number = random.getrandbits(31)
    hosts = set[str]()
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as link:
        link.setsockopt(socket.SOL_SOCKET, socket.SO_BROADCAST, 1)
        reached, failure = False, OSError("there is no network")
        for address in addresses:
            try:
                link.sendto(port_question(number), (address, port))
                reached = True
            except OSError as error:
                failure = error
        if not reached:
            raise failure
        until_s = time.monotonic() + for_s
        while (left_s := until_s - time.monotonic()) > 0.0 and len(hosts) < _MOST_FOUND:
            link.settimeout(left_s)
            try:
                reply, (host, _) = link.recvfrom(2048)
                if mapped_port(reply, number):
                    hosts.add(host)
            except TimeoutError:
                break
            except OSError:
                continue  # one of them sent something else, or refused
    return sorted(hosts, key=socket.inet_aton)


def broadcast_addresses(routes: Path = Path("/proc/net/route")) -> list[str]:
    """Of each network that this computer is on, where that can be read; else of the one that the default leads to."""
    try:
        lines = [line.split() for line in routes.read_text("ascii").splitlines()[1:]]
        nets = [(int(words[1], 16), int(words[7], 16)) for words in lines]
    except (OSError, ValueError, IndexError):
        return [_EVERYBODY]
    # Numbers of the kernel, in the order of this machine. A net of 31 bits and more has no broadcast address.
    ends = {net | ~mask & 0xFFFF_FFFF for net, mask in nets if net and mask.bit_count() < 31}
    return sorted(socket.inet_ntoa(struct.pack("=I", end)) for end in ends) or [_EVERYBODY]


def main(wanted: list[str]) -> None:
    warnings.simplefilter("ignore")
    for part in wanted or PARTS:
        try:
            lines: list[dict[str, str]] = [
                {"part": part, "address": inert(address), "words": inert(words)}
                if address
                else {"part": part, "missed": inert(words)}
                for address, words in PARTS[part]()
            ]
        # Whatever a library raises while it looks, the other parts are looked at as well.
        except Exception as error:  # noqa: BLE001
            lines = [{"part": part, "missed": inert(str(error) or type(error).__name__)[:200]}]
        for line in lines[:_MOST_FOUND] or [{"part": part}]:
            sys.stdout.write(json.dumps(line) + "\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main(sys.argv[1:])
