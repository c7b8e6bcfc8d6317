"""Things that listen on a loopback port and answer as a test wants, one thread each, ended by whoever made them."""

import socket
import threading
import time
from collections.abc import Callable
from types import TracebackType
from typing import Protocol

ENDS_S = 5.0


class Answer(Protocol):
    """What happens on one connection, until it returns: then the connection is closed."""

    def __call__(self, link: socket.socket, ending: threading.Event) -> None: ...


class Responder:
    """Takes one connection after the other and lets `answer` have it. At the end everything is closed."""

    def __init__(self, answer: Answer) -> None:
        self._answer = answer
        self._ending = threading.Event()
        self._listener = socket.create_server(("127.0.0.1", 0))
        self._listener.settimeout(0.05)
        self._thread = threading.Thread(target=self._serve, name="responder")
        self._thread.start()

    @property
    def resource(self) -> str:
        return f"TCPIP::127.0.0.1::{self._listener.getsockname()[1]}::SOCKET"

    def _serve(self) -> None:
        while not self._ending.is_set():
            try:
                link, _ = self._listener.accept()
            except TimeoutError:
                continue
            with link:
                link.settimeout(0.05)
                try:
                    self._answer(link, self._ending)
                except ConnectionError:
                    continue  # the other side has gone

    def __enter__(self) -> "Responder":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._ending.set()
        self._thread.join(ENDS_S)
        assert not self._thread.is_alive()
        self._listener.close()


def messages(link: socket.socket, ending: threading.Event, take: Callable[[str], bytes | None]) -> None:
    """Gives each message to `take` and sends what it returns; ends at None, at the end of file, and when it is over."""
    received = b""
    while not ending.is_set():
        try:
            data = link.recv(4096)
        except TimeoutError:
            continue
        if not data:
            return
        received += data
        *lines, received = received.split(b"\n")
        for line in lines:
            reply = take(line.decode("ascii"))
            if reply is None:
                return
            link.sendall(reply)


def saying(take: Callable[[str], bytes | None]) -> Answer:
    """Answers each message by `take`."""
    return lambda link, ending: messages(link, ending, take)


def silent(link: socket.socket, ending: threading.Event) -> None:
    """Takes everything, answers nothing."""
    messages(link, ending, lambda message: b"")


def deaf(link: socket.socket, ending: threading.Event) -> None:
    """Does not even take what is sent."""
    ending.wait(ENDS_S)


def pouring(chunk: bytes, every_s: float) -> Answer:
    """Sends without being asked and without ever ending a line."""

    def pour(link: socket.socket, ending: threading.Event) -> None:
        until_s = time.monotonic() + ENDS_S
        while time.monotonic() < until_s and not ending.wait(every_s):
            try:
                link.sendall(chunk)
            except TimeoutError:
                continue

    return pour
