"""What every link can do."""

from typing import NamedTuple, Protocol


class Piece(NamedTuple):
    """Bytes that came. `ends`: the link itself says that a reply is over with them."""

    data: bytes
    ends: bool


class Carrier(Protocol):
    """Bytes there and back. Deadlines are s of time.monotonic; nothing lasts longer.

    `byte_s`: how long a byte is still on its way when `send` has come back, 0 where that is of no matter. Raises
    TimeoutError at a deadline and another OSError where the other side is gone or speaks something else; the
    text is in plain words where it has no number.
    """

    byte_s: float

    def send(self, data: bytes, deadline_s: float) -> None:
        """One message."""
        ...

    def receive(self, deadline_s: float) -> Piece:
        """What came, as soon as something did."""
        ...

    def close(self) -> None: ...
