"""The same instruments behind each kind of link: what they say arrives, and what goes wrong there shows in time."""

import contextlib
import json
import os
import socket
import struct
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
import pyvisa

from drivers.dialect import shipped
from drivers.links import by_visa, vxi11
from drivers.links.in_time import InTime
from drivers.links.tcp import Connection
from drivers.scpi import LONGEST_REPLY
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from drivers.supply import NotASupply, Setpoint, SupplyError, SupplyGarbled, SupplyLost, SupplyTimeout
from drivers.visa import VisaSession
from tests.drivers.link_responders import (
    DROPS,
    LINKS,
    NOTHING,
    AtBench,
    HislipServer,
    Listening,
    OnSerial,
    PortMapper,
    Said,
    Says,
    Vxi11Server,
)
from tests.processes import wait_until

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="its serial ports are pseudo-terminals")
IDENTITY = "Harbour,Bench supply,17,1.0"
each_link = pytest.mark.parametrize("link", LINKS)
SPARE_S = 0.3
"""What a busy machine may take on top of a timeout."""
PATIENT_S = 10.0


def session_to(resource: str, timeout_s: float = 1.0, **ends: str) -> VisaSession:
    return VisaSession(resource, termination="\n", timeout_s=timeout_s, **ends)


def supply_at(resource: str) -> ScpiSupply:
    return ScpiSupply(lambda timeout_s: session_to(resource, timeout_s), shipped(), time.perf_counter)


def says(**replies: str) -> Says:
    """Answers by the message, of which only letters count; silent to anything else."""
    return lambda message: Said(
        None if (reply := replies.get("".join(filter(str.isalpha, message)))) is None else f"{reply}\n".encode()
    )


def seconds_until(error: type[SupplyError], match: str, do: Callable[[], object]) -> float:
    began_s, busy_s = time.monotonic(), time.thread_time()
    with pytest.raises(error, match=match) as raised:
        do()
    assert raised.type is error
    assert time.thread_time() - busy_s < 0.2, "it spins while it waits"
    return time.monotonic() - began_s


@each_link
def test_a_supply_is_identified_set_read_and_switched_off_over_each_link(link: str) -> None:
    bench = Bench(load("free"))
    at_bench = AtBench(bench)
    with LINKS[link](at_bench) as instrument:
        supply = supply_at(instrument.resource)
        assert supply.capabilities.volts_max == 30.0
        supply.set(Setpoint(volts=5.0, amps=0.4))
        supply.switch(True)
        time.sleep(0.15)
        reading = supply.read()
        assert (reading.set_volts, reading.set_amps, reading.output_on) == (5.0, 0.4, True)
        assert reading.volts > 1.0
        supply.off()
        reading = supply.read()
        assert (reading.set_volts, reading.output_on) == (0.0, False)
        assert not bench.output.on
        assert supply.errors() == []
        supply.close()


@each_link
def test_an_independent_client_hears_the_same_from_each_responder(link: str) -> None:
    with LINKS[link](says(IDN=IDENTITY, FETCARRVOLT="1.25," * 3000 + "1.25")) as instrument:
        session = session_to(instrument.resource)
        ours = [session.query("*IDN?"), session.query("FETC:ARR:VOLT?")]
        session.close()
        other = pyvisa.ResourceManager("@py").open_resource(
            instrument.resource, read_termination="\n", write_termination="\n", timeout=10_000
        )
        assert [other.query("*IDN?"), other.query("FETC:ARR:VOLT?")] == ours  # type: ignore[attr-defined]
        other.close()
    assert ours[0] == IDENTITY
    assert len(ours[1]) == 5 * 3000 + 4


@each_link
def test_silence_lasts_as_long_as_the_timeout_and_costs_no_work(link: str) -> None:
    with LINKS[link](lambda message: NOTHING) as instrument:
        session = session_to(instrument.resource, timeout_s=0.2)
        took_s = seconds_until(SupplyTimeout, "no reply in time", lambda: session.query("VOLT?"))
        session.close()
    assert 0.18 < took_s < 0.2 + SPARE_S


@each_link
def test_a_reply_that_was_cut_is_none(link: str) -> None:
    with LINKS[link](lambda message: Said(b"12.345\n", cut=3)) as instrument:
        session = session_to(instrument.resource, timeout_s=0.15)
        assert seconds_until(SupplyTimeout, "no reply in time", lambda: session.query("VOLT?")) < 0.15 + SPARE_S
        session.close()


@each_link
def test_a_line_that_drops_instead_of_a_reply_is_lost_at_once(link: str) -> None:
    with LINKS[link](lambda message: DROPS) as instrument:
        session = session_to(instrument.resource, timeout_s=3.0)
        match = "cable was pulled" if link == "serial" else "closed the connection"
        assert seconds_until(SupplyLost, match, lambda: session.query("VOLT?")) < 1.0
        assert seconds_until(SupplyLost, match, lambda: session.write("OUTP OFF")) < 1.0
        session.close()


@each_link
def test_a_line_that_drops_in_the_middle_of_a_reply_is_lost_and_the_half_is_none(link: str) -> None:
    with LINKS[link](lambda message: Said(b"12.345\n", cut=3, drops=True)) as instrument:
        session = session_to(instrument.resource, timeout_s=3.0)
        assert seconds_until(SupplyLost, "closed|pulled", lambda: session.query("VOLT?")) < 1.0
        session.close()


@each_link
def test_a_reply_that_comes_late_is_never_taken_for_the_next_one(link: str) -> None:
    bench = Bench(load("free"))
    at_bench = AtBench(bench)
    late = [0.5]

    def slow_once(message: str) -> Said:
        said = at_bench(message)
        if "MEAS:VOLT?" in message and late and len(at_bench.heard) > 25:
            return said._replace(late_s=late.pop())
        return said

    with LINKS[link](slow_once) as instrument:
        supply = supply_at(instrument.resource)
        seconds_until(SupplyTimeout, "no reply in time", lambda: [supply.read() for _ in range(30)])
        assert late == []
        for _ in range(10):
            # What comes late may be all that is heard at first: then it is no identification, and asked again.
            with contextlib.suppress(SupplyGarbled, SupplyTimeout):
                supply.reopen()
                break
        assert [supply.read().set_volts for _ in range(3)] == [0.0] * 3
        assert supply.errors() == []
        supply.close()


def test_on_hislip_a_late_reply_is_known_by_its_number() -> None:
    replies = iter([Said(b"12.3\n", late_s=0.3), Said(b"ON\n")])
    with HislipServer(lambda message: next(replies)) as instrument:
        session = session_to(instrument.resource, timeout_s=0.2)
        seconds_until(SupplyTimeout, "no reply", lambda: session.query("VOLT?"))
        session.set_timeout(1.0)
        assert session.query("OUTP?") == "ON"
        session.close()


class Trickling(Listening):
    """Whatever is said, one byte of a beginning every 10 ms, for ever."""

    beginning = b""

    def serve(self, link: socket.socket) -> None:
        self.some(link)
        for place in range(1000):
            link.sendall(self.beginning[place : place + 1] or b"1")
            self.wait(0.016)


@pytest.mark.parametrize(
    ("address", "beginning"),
    [
        ("TCPIP::127.0.0.1::{}::SOCKET", b""),
        ("TCPIP::127.0.0.1,{}::INSTR", b"\x80\x00\xff\x00"),
        ("TCPIP::127.0.0.1::hislip0,{}::INSTR", b"HS\x01\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00"),
    ],
    ids=["socket", "vxi-11", "hislip"],
)
def test_one_byte_at_a_time_without_an_end_holds_nobody_longer_than_the_timeout(address: str, beginning: bytes) -> None:
    with Trickling(lambda message: NOTHING) as trickling:
        trickling.beginning = beginning
        resource = address.format(trickling.port)

        def speak() -> None:
            with contextlib.closing(session_to(resource, timeout_s=0.2)) as session:
                session.query("VOLT?")

        took_s = seconds_until(SupplyTimeout, "in time", speak)
    assert took_s < 0.4 + SPARE_S  # the opening and the reply, each to its own timeout


def test_one_byte_at_a_time_on_a_serial_line_is_no_reply_either() -> None:
    with OnSerial(lambda message: Said(b"1" * 400, late_s=0.0)) as instrument:
        session = session_to(instrument.resource, timeout_s=0.3)
        ending = threading.Event()

        def trickle() -> None:
            while not ending.wait(0.002):  # far less than the 20 ms that count as quiet
                os.write(instrument._far, b"1")

        thread = threading.Thread(target=trickle)
        thread.start()
        try:
            assert seconds_until(SupplyTimeout, "no reply", lambda: session.query("VOLT?")) < 0.3 + SPARE_S
            session.close()
            assert seconds_until(SupplyTimeout, "never stops", lambda: session_to(instrument.resource, 0.3)) < 0.7
        finally:
            ending.set()
            thread.join(5.0)


class Echoing(Listening):
    """Says back what it hears."""

    def serve(self, link: socket.socket) -> None:
        while True:
            link.sendall(self.some(link))


class Pages(Listening):
    """A web server."""

    def serve(self, link: socket.socket) -> None:
        self.some(link)
        link.sendall(b"HTTP/1.1 400 Bad Request\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")


@pytest.mark.parametrize("other", [Echoing, Pages])
@pytest.mark.parametrize(
    ("address", "what"),
    [
        ("TCPIP::127.0.0.1,{}::INSTR", "something answers at this address, but not in VXI-11"),
        ("TCPIP::127.0.0.1::hislip0,{}::INSTR", "something answers at this address, but not in HiSLIP"),
    ],
    ids=["vxi-11", "hislip"],
)
def test_what_speaks_another_protocol_is_told_as_that(other: type[Listening], address: str, what: str) -> None:
    with other(lambda message: NOTHING) as instrument:
        resource = address.format(instrument.port)
        assert seconds_until(SupplyLost, what, lambda: session_to(resource)) < 1.0


class Refusing(Listening):
    """Answers the first call with one and the same reply, whatever it was."""

    reply = b""

    def serve(self, link: socket.socket) -> None:
        call = self.some(link)
        # The number of a remote procedure call, where it is one, comes back in the reply to it.
        link.sendall(self.reply.replace(b"####", call[4:8]))
        self.hang()


def created_link(error: int) -> bytes:
    return struct.pack(">I4s9I", 0x8000_0028, b"####", 1, 0, 0, 0, 0, error, 0, 0, 0)


@pytest.mark.parametrize(
    ("address", "reply", "what"),
    [
        ("TCPIP::127.0.0.1,{}::INSTR", created_link(11), "another program has locked it"),
        ("TCPIP::127.0.0.1,{}::INSTR", created_link(9), "it takes no more links: another program holds it"),
        ("TCPIP::127.0.0.1,{}::INSTR", created_link(21), "it reports VXI-11 error 21"),
        (
            "TCPIP::127.0.0.1::hislip0,{}::INSTR",
            struct.pack(">2sBBIQ", b"HS", 2, 4, 0, 17) + b"too many \x1bclients",
            r"it reports: too many \?clients",
        ),
        (
            "TCPIP::127.0.0.1::hislip0,{}::INSTR",
            struct.pack(">2sBBIQ", b"HS", 1, 1, 0x0100_0001, 0),
            "it wants HiSLIP's overlapped mode",
        ),
    ],
    ids=["locked", "held", "unknown", "fatal", "overlapped"],
)
def test_a_refusal_of_the_instrument_is_told_in_its_words_or_in_plain_ones(
    address: str, reply: bytes, what: str
) -> None:
    with Refusing(lambda message: NOTHING) as instrument:
        instrument.reply = reply
        assert seconds_until(SupplyLost, what, lambda: session_to(address.format(instrument.port))) < 1.0


def test_one_that_says_back_everything_is_not_a_supply_on_a_socket_nor_on_a_serial_line() -> None:
    with Echoing(lambda message: NOTHING) as instrument:
        assert seconds_until(NotASupply, "does not identify", lambda: supply_at(instrument.resource)) < 3.0
    with OnSerial(lambda message: Said(f"{message}\n".encode())) as on_serial:
        assert seconds_until(NotASupply, "does not identify", lambda: supply_at(on_serial.resource)) < 3.0


@pytest.mark.parametrize("address", ["TCPIP::127.0.0.1,{}::INSTR", "TCPIP::127.0.0.1::hislip0,{}::INSTR"])
def test_nobody_listening_is_told_on_every_link(address: str) -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        resource = address.format(listener.getsockname()[1])
    assert seconds_until(SupplyLost, "nothing listens at this address", lambda: session_to(resource)) < 1.0


@pytest.mark.parametrize(
    ("resource", "what"),
    [
        ("TCPIP:: 127.0.0.1::5025::SOCKET", "there is a space in this address"),
        (" TCPIP::127.0.0.1::5025::SOCKET", "there is a space before or after this address"),
        ("tcpip::127.0.0.1::0::socket", "the port of this address is 0"),  # VPP-4.3: a name has no case
        ("TCPIP::127.0.0.1::50 25::SOCKET", "there is a space in this address"),
        ("ASRL/dev/tty USB0::INSTR", "there is a space in this address"),
        ("TCPIP::127.0.0.1,0::INSTR", "the port of this address is 0, not a number from 1 to 65535"),
        ("TCPIP::127.0.0.1,a::INSTR", "the port of this address is a, not"),
        ("TCPIP::127.0.0.1::hislip0,99999::INSTR", "the port of this address is 99999, not"),
        ("TCPIP::127.0.0.1::hislip0,::INSTR", "the port of this address is missing"),
        ("ASRL/dev/no-such-port::INSTR", "there is no serial port /dev/no-such-port"),
        ("ASRL/dev/null::INSTR", "/dev/null can not be opened as a serial port"),
        ("ASRL/dev/ttyS0,fast::INSTR", "the baud rate of this address is fast, not a number"),
        ("ASRL/dev/ttyS0,1::INSTR", "the baud rate of this address is 1, not a number from 50"),
        ("ASRL::INSTR", "there is no serial port 0"),
        ("USB0::0x0000::0x0000::NONE::INSTR", "speak USB yet: it needs libusb|No device found"),
        ("GPIB0::5::INSTR", "speak GPIB yet: it needs the adapter's driver"),
        ("PXI0::1::INSTR", "no VISA address"),
        ("VXI0::1::INSTR", "can't speak VXI yet: it needs a VISA of the system"),
    ],
)
def test_what_is_wrong_with_an_address_is_said_in_plain_words(resource: str, what: str) -> None:
    seconds_until(SupplyLost, what, lambda: session_to(resource))  # the first time it is imported what it needs
    assert seconds_until(SupplyLost, what, lambda: session_to(resource)) < 2.0


def test_the_port_mapper_says_where_the_core_channel_is() -> None:
    deadline_s = time.monotonic() + 1.0
    with PortMapper(4321) as mapper:
        assert vxi11.core_port("127.0.0.1", deadline_s, port_mapper=mapper.port) == 4321
    with (
        PortMapper(0) as mapper,
        pytest.raises(ConnectionRefusedError, match="there is no VXI-11 at this address"),
    ):
        vxi11.core_port("127.0.0.1", deadline_s, port_mapper=mapper.port)


def test_a_vxi_11_address_without_a_port_asks_the_port_mapper_of_the_host() -> None:
    with Vxi11Server(says(IDN=IDENTITY)) as instrument, contextlib.ExitStack() as stack:
        try:
            stack.enter_context(PortMapper(instrument.port, port=vxi11.PORT_MAPPER))
        except OSError as error:
            pytest.skip(f"port {vxi11.PORT_MAPPER} can't be had here: {error}")
        session = session_to("TCPIP::127.0.0.1::INSTR")
        assert session.query("*IDN?") == IDENTITY
        session.close()


def test_a_vxi_11_link_is_given_back_when_it_is_closed() -> None:
    with Vxi11Server(says(IDN=IDENTITY)) as instrument:
        for _ in range(3):
            session = session_to(instrument.resource)
            assert session.query("*IDN?") == IDENTITY
            assert instrument.links == 1
            session.close()
            until_s = time.monotonic() + 2.0
            while instrument.links and time.monotonic() < until_s:
                time.sleep(0.002)
            assert instrument.links == 0


def test_a_long_message_goes_in_parts_where_the_instrument_takes_no_longer_ones() -> None:
    message = "VOLT " + "0" * 3000
    for server in (Vxi11Server, HislipServer):
        heard: list[str] = []

        def hear(said: str, heard: list[str] = heard) -> Said:
            heard.append(said)
            return Said(b"1\n")

        with server(hear) as instrument:
            session = session_to(instrument.resource)
            assert session.query(message) == "1"
            session.close()
        assert heard == [message]


def test_replies_that_only_the_link_ends_are_over_with_it() -> None:
    for server in (Vxi11Server, HislipServer):
        with server(lambda message: Said(b"12.0")) as instrument:
            session = session_to(instrument.resource, reply_ends="")
            assert [session.query("VOLT?") for _ in range(3)] == ["12.0"] * 3
            session.write("VOLT?")
            assert session.read_exactly(4) == b"12.0"
            session.write("VOLT?")
            assert session.read_until_quiet(0.05) == b"12.0"
            session.write("VOLT?")
            with pytest.raises(SupplyGarbled, match="4 bytes where 5"):
                session.read_exactly(5)
            session.close()


def test_bytes_that_nothing_ends_are_taken_by_their_number_or_until_the_line_is_quiet() -> None:
    with OnSerial(lambda message: Said(b"05.0012.00")) as instrument:
        session = session_to(instrument.resource, 0.3, reply_ends="")
        session.write("READ")
        assert [session.read_exactly(5), session.read_exactly(5)] == [b"05.00", b"12.00"]
        session.write("READ")
        assert session.read_until_quiet(0.05) == b"05.0012.00"
        assert seconds_until(SupplyTimeout, "no reply", lambda: session.read_exactly(1)) < 0.3 + SPARE_S
        assert seconds_until(SupplyTimeout, "no reply", lambda: session.read_until_quiet(0.05)) < 0.3 + SPARE_S
        session.close()


def test_bytes_that_never_stop_are_at_most_256_and_for_no_longer_than_the_timeout() -> None:
    with Listening(lambda message: Said(b"x" * 1000)) as instrument:
        session = session_to(instrument.resource, reply_ends="")
        session.write("READ")
        assert session.read_until_quiet(0.05) == b"x" * 256
        session.close()
    with Trickling(lambda message: NOTHING) as trickling:
        session = session_to(trickling.resource, 0.3, reply_ends="")
        session.write("READ")
        assert seconds_until(SupplyTimeout, "does not end", lambda: session.read_until_quiet(0.05)) < 0.4 + SPARE_S
        session.close()


class HeardOut(VisaSession):
    """Says the next thing only when the instrument has heard the last one, and bears its late replies.

    A real instrument hears each byte as it comes. This one is a thread of a busy machine: what it took late would end
    its gap late as well, and then it rightly dropped what came after a gap by the driver's clock.
    """

    def __init__(self, at_bench: AtBench, resource: str, **ends: str) -> None:
        self._at_bench = at_bench
        super().__init__(resource, timeout_s=PATIENT_S, **ends)

    def set_timeout(self, timeout_s: float) -> None:
        super().set_timeout(max(PATIENT_S, timeout_s))

    def write(self, message: str) -> None:
        before = len(self._at_bench.heard)
        super().write(message)
        wait_until(lambda: len(self._at_bench.heard) > before)


def test_a_terse_set_is_spoken_over_a_serial_line_without_any_line_ends() -> None:
    dialect = shipped("terse-serial")
    assert dialect.link.reply_ends == ""
    at_bench = AtBench(Bench(load("free"), speaks=dialect))
    with OnSerial(at_bench, termination=dialect.link.termination) as instrument:
        supply = ScpiSupply(
            lambda _: HeardOut(
                at_bench,
                instrument.resource,
                termination=dialect.link.termination,
                reply_ends=dialect.link.reply_ends,
            ),
            dialect,
            time.perf_counter,
        )
        supply.set(Setpoint(volts=5.0, amps=0.4))
        supply.switch(True)
        reading = supply.read()
        assert (reading.set_volts, reading.set_amps, reading.output_on) == (5.0, 0.4, True)
        supply.off()
        assert not at_bench.bench.output.on
        supply.close()
    heard_s = [at_s for at_s, _ in at_bench.heard]
    assert min(b - a for a, b in pairwise(heard_s)) >= dialect.link.gap_s


def test_a_serial_port_is_held_by_one_and_its_lines_stay_up_when_it_is_closed() -> None:
    with OnSerial(says(IDN=IDENTITY)) as instrument:
        session = session_to(f"ASRL{instrument.device},115200::INSTR")
        assert seconds_until(SupplyLost, "another program holds", lambda: session_to(instrument.resource)) < 1.0
        assert session.query("*IDN?") == IDENTITY
        import termios

        assert not termios.tcgetattr(instrument._near)[2] & termios.HUPCL
        session.close()
        session = session_to(instrument.resource)
        assert session.query("*IDN?") == IDENTITY
        session.close()


def test_what_is_still_on_a_serial_line_is_passed_over_at_the_opening() -> None:
    with OnSerial(says(IDN=IDENTITY)) as instrument:
        os.write(instrument._far, b"12.345\n")
        session = session_to(instrument.resource)
        assert session.query("*IDN?") == IDENTITY
        session.close()


def test_a_serial_line_that_takes_nothing_holds_nobody_longer_than_the_timeout() -> None:
    far, near = os.openpty()
    try:
        session = session_to(f"ASRL{os.ttyname(near)},4000000::INSTR", timeout_s=0.3)

        def fill() -> None:
            for _ in range(1000):
                session.write("0" * 4000)

        assert seconds_until(SupplyTimeout, "takes no more", fill) < 2.0
        session.close()
    finally:
        os.close(far)
        os.close(near)


def test_no_message_waits_for_the_acknowledgement_of_the_one_before() -> None:
    with Listening(lambda message: NOTHING) as instrument:
        connection = Connection("127.0.0.1", instrument.port, time.monotonic() + 1.0)
        assert connection._socket.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY) != 0
        connection.close()


RESPONDER = Path(__file__).with_name("responder.yaml")


def test_what_is_left_to_a_visa_backend_is_spoken_through_it_and_held_to_deadlines() -> None:
    address = "TCPIP::responder.invalid::5025::SOCKET"
    carrier = by_visa.ByVisa(address, f"{RESPONDER}@sim", time.monotonic() + 2.0)
    carrier.send(b"*IDN?\n", time.monotonic() + 1.0)
    assert carrier.receive(time.monotonic() + 1.0).data.count(b",") == 3
    began_s = time.monotonic()
    with pytest.raises(TimeoutError, match="no reply in time"):
        carrier.receive(began_s + 0.3)
    assert time.monotonic() - began_s < 0.3 + SPARE_S
    carrier.close()


def test_a_made_up_instrument_on_usb_is_spoken_to_through_pyvisa_py() -> None:
    # In a process of its own: what lies below pyusb is replaced there.
    done = subprocess.run(
        [sys.executable, "-P", "-m", "tests.drivers.usb_instrument"], capture_output=True, text=True, timeout=60.0
    )
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert told["identity"].startswith("Harbour Workshop,Simulated bench supply")
    assert told["listed"] == [["USB0::4660::22136::HARBOUR7::0::INSTR", "USBTMC"]]
    assert (told["on"], told["off"]) == ([5.0, 0.4, True], [0.0, False, False])
    assert told["length"] == 50_000
    assert told["too_long"] == f"SupplyGarbled: a reply of more than {LONGEST_REPLY} bytes"
    what, took_s = told["silence"]
    assert what == "SupplyTimeout: no reply in time"
    assert took_s < 0.3 + SPARE_S


def test_a_call_that_never_comes_back_is_left_behind_at_its_deadline_and_nothing_follows_it() -> None:
    ending = threading.Event()
    calls = InTime()
    began_s = time.monotonic()
    with pytest.raises(TimeoutError, match="too long"):
        calls.call(lambda: ending.wait(10.0), began_s + 0.2, "too long")
    assert time.monotonic() - began_s < 0.2 + SPARE_S
    with pytest.raises(ConnectionError, match="has not come back"):
        calls.call(lambda: 1, time.monotonic() + 1.0, "too long")
    closed = threading.Event()
    calls.close(closed.set, time.monotonic() + 1.0)
    ending.set()
    assert closed.wait(5.0)


def test_what_a_call_raises_comes_to_its_caller() -> None:
    calls = InTime()
    with pytest.raises(ZeroDivisionError):
        calls.call(lambda: 1 / 0, time.monotonic() + 1.0, "too long")
    assert calls.call(lambda: 7, time.monotonic() + 1.0, "too long") == 7
    calls.close(lambda: None, time.monotonic() + 1.0)


@pytest.mark.parametrize(
    ("pure", "system", "backend"),
    [
        ({("usb", "INSTR")}, False, "@py"),
        ({("usb", "INSTR")}, True, "@py"),
        (set(), True, "@ivi"),
        (set(), False, None),
    ],
)
def test_the_systems_visa_serves_what_the_pure_one_can_not_and_has_not_to_be_there(
    pure: set[tuple[object, str]], system: bool, backend: str | None
) -> None:
    assert by_visa.backend_for(("usb", "INSTR"), pure, lambda: system) == backend
