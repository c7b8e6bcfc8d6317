"""What looking finds, on loopback addresses and in the lists of this computer, and that it ends."""

import contextlib
import os
import socket
import struct
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from drivers import discovery
from drivers.discovery import Found, Looked, broadcast_addresses, look, vxi11_hosts


@contextlib.contextmanager
def port_mappers(answers: dict[str, Callable[[bytes], bytes]]) -> Iterator[int]:
    """Datagram port mappers at loopback addresses, all at one port. Yields the port."""
    ending, links = threading.Event(), []
    port = 0
    for host in answers:
        link = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        link.bind((host, port))
        link.settimeout(0.02)
        port = link.getsockname()[1]
        links.append(link)

    def serve(link: socket.socket, answer: Callable[[bytes], bytes]) -> None:
        while not ending.is_set():
            with contextlib.suppress(TimeoutError):
                question, asker = link.recvfrom(2048)
                link.sendto(answer(question), asker)

    threads = [
        threading.Thread(target=serve, args=(link, answer))
        for link, answer in zip(links, answers.values(), strict=True)
    ]
    for thread in threads:
        thread.start()
    try:
        yield port
    finally:
        ending.set()
        for thread in threads:
            thread.join(5.0)
        for link in links:
            link.close()


def mapped(port: int, *, off: int = 0) -> Callable[[bytes], bytes]:
    """Answers the question for VXI-11's core channel over TCP. `off`: to another call than that."""

    def answer(question: bytes) -> bytes:
        number, *called = struct.unpack(">14I", question)
        # Source: RFC 5531 and RFC 1833, from memory: a call (0) of RPC 2, program 100000 version 2, procedure 3.
        assert called == [0, 2, 100000, 2, 3, 0, 0, 0, 0, 0x0607AF, 1, 6, 0]
        return struct.pack(">7I", number + off, 1, 0, 0, 0, 0, port)

    return answer


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="many loopback addresses")
def test_hosts_with_a_core_channel_are_found_and_whatever_else_answers_is_not() -> None:
    answers = {
        "127.0.0.10": mapped(1024),
        "127.0.0.9": mapped(4321),
        "127.0.0.3": mapped(0),
        "127.0.0.4": mapped(1024, off=1),
        "127.0.0.5": lambda question: question,
        "127.0.0.6": lambda question: b"HTTP/1.1 400 Bad Request\r\n\r\n",
        "127.0.0.7": lambda question: b"",
    }
    with port_mappers(answers) as port:
        began_s = time.monotonic()
        assert vxi11_hosts(answers, port, 0.25) == ["127.0.0.9", "127.0.0.10"]
        assert time.monotonic() - began_s < 1.0


def test_without_a_network_it_is_said_that_there_is_none() -> None:
    with pytest.raises(OSError, match="no network"):
        vxi11_hosts([], 111, 0.1)


def test_the_broadcast_addresses_are_those_of_the_networks_this_computer_is_on(tmp_path: Path) -> None:
    def number(address: str) -> str:
        return f"{struct.unpack('=I', socket.inet_aton(address))[0]:08X}"

    routes = tmp_path / "route"
    rows = [
        ("0.0.0.0", "0.0.0.0"),  # the default
        ("192.168.0.0", "255.255.255.0"),
        ("10.20.0.0", "255.255.252.0"),
        ("192.168.7.1", "255.255.255.255"),  # one host
    ]
    lines = [f"eth0\t{number(net)}\t00000000\t0001\t0\t0\t0\t{number(mask)}\t0\t0\t0" for net, mask in rows]
    routes.write_text("\n".join(["Iface\tDestination\tGateway", *lines]) + "\n")
    assert broadcast_addresses(routes) == ["10.20.3.255", "192.168.0.255"]
    routes.write_text("nothing that could be read\nx\n")
    assert broadcast_addresses(routes) == ["255.255.255.255"]
    assert broadcast_addresses(tmp_path / "missing") == ["255.255.255.255"]


def test_looking_lists_the_serial_ports_of_this_computer_and_opens_none() -> None:
    from serial.tools.list_ports import comports

    names = {f"ASRL{port.device.removeprefix('COM')}::INSTR" for port in comports()}
    looked = look(20.0, ["serial"])
    assert looked.missed == ()
    assert {one.address for one in looked.found} == names
    assert {one.kind for one in looked.found} <= {"serial"}
    opened, looking = list[str](), [True]
    sys.addaudithook(lambda event, args: opened.append(str(args[0])) if looking and event == "open" else None)
    assert {address for address, _ in discovery.serial_ports()} == names
    looking.clear()
    assert [path for path in opened if path.startswith("/dev/")] == []


def test_looking_takes_no_longer_than_it_may_and_says_what_it_did_not_come_to() -> None:
    before = set(children())
    began_s = time.monotonic()
    assert look(0.02, ["serial", "visa"]) == Looked((), ("serial: not finished in time", "visa: not finished in time"))
    assert time.monotonic() - began_s < 1.0
    assert set(children()) == before


def test_usb_instruments_that_may_not_be_opened_are_counted_by_their_class(tmp_path: Path) -> None:
    devices, nodes = tmp_path / "devices", tmp_path / "nodes"
    for device, interface, kind, number in (
        ("1-1", "1-1:1.0", ("fe", "03"), 4),  # shut
        ("1-2", "1-2:1.0", ("fe", "03"), 5),  # open
        ("1-3", "1-3:1.0", ("08", "06"), 6),  # a memory stick
    ):
        for folder, content in (
            (device, {"busnum": "1", "devnum": str(number)}),
            (interface, {"bInterfaceClass": kind[0], "bInterfaceSubClass": kind[1]}),
        ):
            (devices / folder).mkdir(parents=True)
            for name, text in content.items():
                (devices / folder / name).write_text(f"{text}\n")
    (devices / "1-4:1.0").mkdir()
    (nodes / "001").mkdir(parents=True)
    (nodes / "001" / "005").write_text("")
    assert discovery.shut_usb_instruments(devices, nodes) == 1
    assert discovery.shut_usb_instruments(tmp_path / "missing", nodes) == 0


def children() -> list[str]:
    """Processes that this one started and that are still there."""
    found = []
    for entry in Path("/proc").glob("[0-9]*/stat"):
        with contextlib.suppress(OSError):
            words = entry.read_text().rpartition(")")[2].split()
            if int(words[1]) == os.getpid():
                found.append(entry.parent.name)
    return found


def test_what_was_found_before_the_end_counts_and_twice_is_once() -> None:
    told = (
        b'{"part": "serial", "address": "ASRL1::INSTR", "words": ""}\n'
        b'{"part": "serial", "address": "ASRL1::INSTR", "words": ""}\n'
        b'{"part": "usb", "missed": "libusb is not there"}\n'
        b'{"part": "visa"}\n'
        b'{"part": "network", "addr'
    )
    found = (Found("ASRL1::INSTR", "serial", ""),)
    missed = ("usb: libusb is not there", "network: not finished in time")
    assert discovery._read(told, ["serial", "usb", "network", "visa"]) == Looked(found, missed)


def test_a_part_that_fails_is_told_and_the_others_are_looked_at(capsys: pytest.CaptureFixture[str]) -> None:
    discovery.main(["no such part", "visa"])
    first, second = capsys.readouterr().out.splitlines()
    assert '"missed"' in first
    assert second.startswith('{"part": "visa"')
