"""What answers at an address and is no supply, in virtual time."""

from collections import deque
from collections.abc import Callable

from drivers.dialect import Link
from drivers.supply import SupplyLost, SupplyTimeout

Answer = Callable[[str], str | None]


class Stranger:
    """`answer` gets each line and returns what is said, ends included; None for nothing."""

    def __init__(self, answer: Answer) -> None:
        self.answer = answer
        self.now_s = 0.0
        self.heard: list[str] = []

    def now(self) -> float:
        return self.now_s

    def wait(self, until_s: float) -> None:
        self.now_s = max(self.now_s, until_s)

    def open(self, link: Link, timeout_s: float) -> "StrangerSession":
        return StrangerSession(self, link, timeout_s)


class StrangerSession:
    resource = "STRANGER"

    def __init__(self, stranger: Stranger, link: Link, timeout_s: float) -> None:
        self._stranger, self._link, self._timeout_s = stranger, link, timeout_s
        self._said: deque[str] = deque()

    def set_timeout(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s

    def write(self, message: str) -> None:
        self._stranger.heard.append(message)
        said = self._stranger.answer(message)
        if said is not None:
            self._said.append(said)

    def query(self, message: str) -> str:
        self.write(message)
        return self.read()

    def read(self) -> str:
        return self._next().rstrip("\r\n")

    def read_exactly(self, count: int) -> bytes:
        raise SupplyTimeout(self.resource, "no reply in time")

    def read_until_quiet(self, quiet_s: float) -> bytes:
        found = self._next()
        self._stranger.wait(self._stranger.now_s + quiet_s)
        return found[:256].encode("latin-1")

    def close(self) -> None:
        self._said.clear()

    def _next(self) -> str:
        if not self._said:
            self._stranger.wait(self._stranger.now_s + self._timeout_s)
            raise SupplyTimeout(self.resource, "no reply in time")
        self._stranger.wait(self._stranger.now_s + 0.002)
        return self._said.popleft()


def _table(answers: dict[str, str]) -> Answer:
    """With an error queue, as SCPI has it."""
    errors: list[str] = []

    def answer(message: str) -> str | None:
        if message == "SYST:ERR?":
            return (errors.pop(0) if errors else '0,"No error"') + "\n"
        if message in answers:
            return answers[message] + "\n"
        errors.append('-113,"Undefined header"')
        return None

    return answer


def meter() -> Answer:
    return _table({"*IDN?": "Harbour,Bench meter,3,1.0", "MEAS:VOLT:DC?": "1.2034E+00", "MEAS:CURR:DC?": "0.0E+00"})


def generator() -> Answer:
    return _table(
        {"*IDN?": "Harbour,Tone generator,4,1.0", "FREQ?": "1000.0", "VOLT?": "0.500", "OUTP?": "0", "FUNC?": "SIN"}
    )


def printer() -> Answer:
    return lambda message: message + "\r\n"


def parrot() -> Answer:
    """Answers anything with its identification."""
    return lambda message: "Harbour,Parrot,5,1.0\n"


def late_by_one() -> Answer:
    """Each answer belongs to the question before."""
    truth, before = _table({"*IDN?": "Harbour,Bench supply,6,1.0", "VOLT?": "0.000", "CURR?": "0.100"}), deque[str]()

    def answer(message: str) -> str | None:
        said = before.popleft() if before else None
        before.append(truth(message) or "\n")
        return said

    return answer


def web_server() -> Answer:
    return lambda message: "HTTP/1.0 400 Bad request\r\nServer: harbour\r\n\r\n<html>no</html>"


def silent() -> Answer:
    return lambda message: None


def chatterbox() -> Answer:
    """A number for any question."""
    return lambda message: "Harbour,Chatterbox,7,1.0\n" if message == "*IDN?" else "0.000\n"


def gone() -> Answer:
    def answer(message: str) -> str | None:
        raise SupplyLost("STRANGER", "the supply closed the connection")

    return answer


STRANGERS: dict[str, tuple[Callable[[], Answer], str]] = {
    "meter": (meter, "a meter, no supply"),
    "generator": (generator, "a generator, no supply"),
    "printer": (printer, "sends back what it is sent"),
    "parrot": (parrot, "any question with its identification"),
    "late by one": (late_by_one, "late by one"),
    "web server": (web_server, "a web server"),
    "silent": (silent, "nothing that it takes for a question"),
    "chatterbox": (chatterbox, "none of its answers means anything"),
    "gone": (gone, "closed the connection"),
}
"""How each is made, and words of why it is not known."""
