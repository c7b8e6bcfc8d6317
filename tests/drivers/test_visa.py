"""Sessions over real sockets on the loopback address: what is wrong at the other end shows as what it is, and soon."""

import socket
import statistics
import threading
import time
from collections.abc import Callable
from http.server import BaseHTTPRequestHandler, HTTPServer

import pytest

from drivers.dialect import shipped
from drivers.scpi import LONGEST_REPLY
from drivers.scpi_supply import ScpiSupply
from drivers.supply import NotASupply, SupplyError, SupplyGarbled, SupplyLost, SupplyTimeout
from drivers.visa import VisaSession
from tests.drivers.responders import Answer, Responder, deaf, pouring, saying, silent

IDENTITY = b"Harbour,Bench supply,17,1.0\n"


def session_to(resource: str, timeout_s: float = 1.0) -> VisaSession:
    return VisaSession(resource, termination="\n", timeout_s=timeout_s)


def identify(resource: str) -> ScpiSupply:
    return ScpiSupply(lambda timeout_s: session_to(resource, timeout_s), shipped(), time.perf_counter)


def seconds_until(error: type[SupplyError], match: str, do: Callable[[], object]) -> float:
    """How long `do` took to raise exactly this."""
    began_s = time.monotonic()
    with pytest.raises(error, match=match) as raised:
        do()
    assert raised.type is error
    return time.monotonic() - began_s


def free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        return int(listener.getsockname()[1])


def test_nobody_listening_is_a_lost_supply_within_two_seconds() -> None:
    resource = f"TCPIP::127.0.0.1::{free_port()}::SOCKET"
    assert seconds_until(SupplyLost, "nothing listens", lambda: identify(resource)) < 2.0


def test_one_that_never_answers_is_not_a_supply_within_three_seconds() -> None:
    with Responder(silent) as responder:
        assert seconds_until(NotASupply, "does not identify itself", lambda: identify(responder.resource)) < 3.0


class Pages(BaseHTTPRequestHandler):
    """A web server's pages, without its log."""

    def do_GET(self) -> None:
        self.send_error(404)

    def log_message(self, format: str, *args: object) -> None:
        pass


def test_a_web_server_is_not_a_supply() -> None:
    with HTTPServer(("127.0.0.1", 0), Pages) as server:
        thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
        thread.start()
        try:
            resource = f"TCPIP::127.0.0.1::{server.server_port}::SOCKET"
            assert seconds_until(NotASupply, "does not identify itself", lambda: identify(resource)) < 3.0
        finally:
            server.shutdown()
            thread.join(5.0)


def test_one_that_answers_everything_with_its_identity_is_not_a_supply() -> None:
    with Responder(saying(lambda message: IDENTITY)) as responder:
        assert seconds_until(NotASupply, "does not answer as a supply", lambda: identify(responder.resource)) < 3.0


def test_one_that_takes_a_single_client_and_is_held_is_not_a_supply_but_held() -> None:
    with Responder(saying(lambda message: IDENTITY)) as responder:
        holder = session_to(responder.resource)
        assert holder.query("*IDN?") == IDENTITY.decode().strip()
        assert seconds_until(NotASupply, "another program holds it", lambda: identify(responder.resource)) < 3.0
        holder.close()


def test_one_that_can_not_be_reached_is_a_lost_supply() -> None:
    # A queue of connections that is full answers none: as a supply that is switched off somewhere on the network.
    with socket.create_server(("127.0.0.1", 0), backlog=0) as listener:
        address = listener.getsockname()
        waiting = [socket.socket() for _ in range(8)]
        try:
            for link in waiting:
                link.setblocking(False)
                link.connect_ex(address)
            resource = f"TCPIP::127.0.0.1::{address[1]}::SOCKET"
            took_s = seconds_until(SupplyLost, "nothing answers", lambda: session_to(resource, timeout_s=0.4))
        finally:
            for link in waiting:
                link.close()
    assert took_s < 2.0


@pytest.mark.parametrize("resource", ["", "   ", "the left one", "TCPIP::", "127.0.0.1:5025", "SOCKET"])
def test_what_is_no_address_is_told_with_the_form_of_one(resource: str) -> None:
    assert seconds_until(SupplyLost, "no VISA address; one looks like TCPIP::", lambda: session_to(resource)) < 2.0


@pytest.mark.parametrize("port", ["65536", "0", "-1", "five"])
def test_a_port_that_can_not_be_is_told_with_the_range_of_ports(port: str) -> None:
    resource = f"TCPIP::127.0.0.1::{port}::SOCKET"
    assert seconds_until(SupplyLost, f"is {port}, not a number from 1 to 65535", lambda: session_to(resource)) < 2.0


def hang_up_at(message: str) -> Answer:
    """Answers with 1 until the message, and closes instead of answering that."""
    return saying(lambda said: None if said == message else b"1\n")


def test_one_that_closes_instead_of_answering_is_lost_at_once_and_without_spinning() -> None:
    with Responder(hang_up_at("VOLT?")) as responder:
        session = session_to(responder.resource, timeout_s=5.0)
        assert session.query("OUTP?") == "1"
        busy_s = time.thread_time()
        assert seconds_until(SupplyLost, "closed the connection", lambda: session.query("VOLT?")) < 1.0
        assert time.thread_time() - busy_s < 0.1
        session.close()


def test_one_that_closed_before_is_lost_at_the_next_message_a_command_too() -> None:
    with Responder(hang_up_at("VOLT?")) as responder:
        session = session_to(responder.resource, timeout_s=5.0)
        seconds_until(SupplyLost, "closed the connection", lambda: session.query("VOLT?"))
        assert seconds_until(SupplyLost, "closed the connection", lambda: session.write("OUTP OFF")) < 1.0
        session.close()


def test_one_that_closes_in_the_middle_of_a_reply_is_lost_and_the_half_is_not_a_reply() -> None:
    def cut(link: socket.socket, ending: threading.Event) -> None:
        link.recv(64)
        link.sendall(b"12.3")

    with Responder(cut) as responder:
        session = session_to(responder.resource, timeout_s=5.0)
        assert seconds_until(SupplyLost, "closed the connection", lambda: session.query("VOLT?")) < 1.0
        session.close()


@pytest.mark.parametrize("chunk", [b"1", b"12.5;" * 200], ids=["a trickle", "a stream"])
def test_bytes_without_an_end_are_no_reply_and_hold_nobody_longer_than_the_timeout(chunk: bytes) -> None:
    with Responder(pouring(chunk, every_s=0.01)) as responder:
        session = session_to(responder.resource, timeout_s=0.4)
        assert seconds_until(SupplyTimeout, "no reply in time", lambda: session.query("VOLT?")) < 1.0
        session.close()


def test_the_longest_line_is_read_whole_and_at_once() -> None:
    line = b",".join(b"%.9f" % (number / 7.0) for number in range(4400))
    assert 55_000 < len(line) <= LONGEST_REPLY
    with Responder(saying(lambda message: line + b"\n")) as responder:
        session = session_to(responder.resource, timeout_s=1.0)
        began_s = time.monotonic()
        assert [session.query("FETC:ARR:VOLT?") for _ in range(3)] == [line.decode()] * 3
        # Measured: 1 ms each; the bound is for a busy machine.
        assert time.monotonic() - began_s < 0.5
        session.close()


@pytest.mark.parametrize("pieces", [40, 400])
def test_a_long_line_in_pieces_is_read_whole_but_only_until_the_timeout(pieces: int) -> None:
    piece = b"1.234567," * 30

    def slow(link: socket.socket, ending: threading.Event) -> None:
        link.recv(64)
        for _ in range(pieces):
            if ending.wait(0.002):
                return
            link.sendall(piece)
        link.sendall(b"1\n")

    with Responder(slow) as responder:
        session = session_to(responder.resource, timeout_s=0.4)
        if pieces == 40:
            assert session.query("FETC:ARR:VOLT?") == (piece * pieces + b"1").decode()
        else:
            assert seconds_until(SupplyTimeout, "no reply in time", lambda: session.query("FETC:ARR:VOLT?")) < 0.8
        session.close()


def test_a_flood_is_garbled() -> None:
    with Responder(pouring(b"1" * 65536, every_s=0.0)) as responder:
        session = session_to(responder.resource, timeout_s=3.0)
        assert seconds_until(SupplyGarbled, f"more than {LONGEST_REPLY}", lambda: session.query("VOLT?")) < 3.0
        session.close()


def test_one_that_takes_nothing_any_more_holds_nobody_longer_than_the_timeout() -> None:
    with Responder(deaf) as responder:
        session = session_to(responder.resource, timeout_s=0.3)

        def fill() -> None:
            for _ in range(10_000):
                session.write("VOLT " + "0" * 4000)

        assert seconds_until(SupplyTimeout, "takes no more", fill) < 5.0
        session.close()


def test_bytes_that_are_not_ascii_are_no_error_of_another_kind() -> None:
    with Responder(saying(lambda message: b"\xff\xfe12\n")) as responder:
        session = session_to(responder.resource)
        assert session.query("VOLT?") == "\ufffd\ufffd12"
        session.close()


def test_replies_that_came_together_are_given_one_by_one() -> None:
    replies = iter([b"1\n2\n", b""])
    with Responder(saying(lambda message: next(replies))) as responder:
        session = session_to(responder.resource)
        assert [session.query("VOLT?"), session.query("VOLT?")] == ["1", "2"]
        session.close()


def test_a_closed_session_is_a_lost_supply_and_closing_twice_is_no_matter() -> None:
    with Responder(saying(lambda message: b"1\n")) as responder:
        session = session_to(responder.resource)
        session.close()
        session.close()
        for use in (lambda: session.query("VOLT?"), lambda: session.write("OUTP OFF"), lambda: session.set_timeout(1)):
            seconds_until(SupplyLost, "[Ss]ession", use)


def test_a_timeout_may_be_shortened_while_the_session_is_open() -> None:
    with Responder(silent) as responder:
        session = session_to(responder.resource, timeout_s=5.0)
        session.set_timeout(0.2)
        assert 0.15 < seconds_until(SupplyTimeout, "no reply", lambda: session.query("VOLT?")) < 1.0
        session.close()


def test_a_command_and_a_query_after_it_take_less_than_twenty_milliseconds() -> None:
    with Responder(saying(lambda message: b"1\n" if message.endswith("?") else b"")) as responder:
        session = session_to(responder.resource)
        took_s = []
        for _ in range(50):
            began_s = time.perf_counter()
            session.write("VOLT 5")
            session.query("VOLT?")
            took_s.append(time.perf_counter() - began_s)
        session.close()
    assert statistics.median(took_s) < 0.020
