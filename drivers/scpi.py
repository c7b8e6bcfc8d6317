"""Program messages and replies as text. Pure.

Source of the forms: IEEE 488.2-1992 and SCPI-1999 as published: NRf numbers, 9.9E37 for infinity and 9.91E37 for
not-a-number, error queue entries `code,"text"`, several replies of one message joined by `;`.
"""

import math
import re

from drivers.foreign import inert

_NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?", re.ASCII)
_ERROR = re.compile(r'([+-]?\d{1,6})\s*,\s*"(.*)"\s*', re.ASCII | re.DOTALL)
_ERROR_FIRST = re.compile(r'[+-]?\d{1,6}\s*,\s*"[^"]*(?:""[^"]*)*"\s*(?:;(.*))?', re.ASCII | re.DOTALL)
_NOT_MEASURED = 9.8e37
LONGEST_REPLY = 64 * 1024


def number(reply: str) -> float:
    """A measured number. Raises ValueError for any other form, for infinity and for not-a-number."""
    text = reply.strip()
    if not _NUMBER.fullmatch(text):
        raise ValueError(f"{text[:40]!r} is not a number")
    value = float(text)
    if not math.isfinite(value) or abs(value) >= _NOT_MEASURED:
        raise ValueError(f"{text[:40]!r} says that nothing was measured")
    return value


def step(reply: str) -> float:
    """The weight of a reply's last digit: "12.003" is 1 mV, "1.50E-1" is 1 mV. Raises ValueError."""
    number(reply)
    mantissa, _, exponent = reply.strip().lower().partition("e")
    power = int(exponent or 0) - len(mantissa.partition(".")[2])
    if not -30 <= power <= 30:
        raise ValueError(f"{reply.strip()[:40]!r} has no last digit that could be a resolution")
    return float(10.0**power)


def boolean(reply: str) -> bool:
    """0, 1, ON or OFF. Raises ValueError."""
    match reply.strip().upper():
        case "1" | "ON":
            return True
        case "0" | "OFF":
            return False
    raise ValueError(f"{reply.strip()[:40]!r} is neither on nor off")


def bits(reply: str) -> int:
    """A register. Raises ValueError unless a whole number from 0 to 32767."""
    value = number(reply)
    if value != int(value) or not 0 <= value <= 32767:
        raise ValueError(f"{reply.strip()[:40]!r} is not a register")
    return int(value)


def error(reply: str) -> tuple[int, str]:
    """An entry of the error queue, its text made inert. Raises ValueError."""
    match = _ERROR.fullmatch(reply.strip())
    if match is None:
        raise ValueError(f"{reply.strip()[:40]!r} is not an entry of an error queue")
    return int(match[1]), inert(match[2])


def after_error(reply: str) -> str | None:
    """What follows an entry of the error queue in one reply, None where nothing does. Raises ValueError.

    A query that may be unknown is asked behind one for the error queue: so there is a reply in any case, and no wait.
    """
    match = _ERROR_FIRST.fullmatch(reply.strip())
    if match is None:
        raise ValueError(f"{reply.strip()[:40]!r} does not begin with an entry of an error queue")
    return match[1]


def numbers(reply: str, count: int) -> tuple[float, ...]:
    """A comma list of measured numbers. Raises ValueError unless there are `count`, each as `number` wants it."""
    parts = reply.split(",", count)
    if len(parts) != count:
        raise ValueError(f"{len(reply.split(','))} numbers where {count} were asked for")
    return tuple(number(part) for part in parts)


def seconds(value: float) -> str:
    """A duration as a parameter: plain decimal, 1 µs fine. Raises ValueError if not finite."""
    if not math.isfinite(value):
        raise ValueError(f"{value} is no parameter")
    return f"{value:.6f}"


def argument(value: float) -> str:
    """A number as a parameter: plain decimal, 0.1 mV fine, never an exponent. Raises ValueError if not finite."""
    if not math.isfinite(value):
        raise ValueError(f"{value} is no parameter")
    return f"{value:.4f}"


def join(*units: str) -> str:
    """Several program message units in one message, each from the root."""
    return ";:".join(unit if unit.startswith("*") else unit.removeprefix(":") for unit in units).replace(";:*", ";*")


def replies(reply: str, count: int) -> list[str]:
    """The parts of a reply to a compound message. Raises ValueError unless there are `count`."""
    parts = reply.strip().split(";")
    if len(parts) != count:
        raise ValueError(f"{len(parts)} replies where {count} were asked for")
    return parts


def identity(reply: str) -> str:
    """An identification of four fields, made inert: printable ASCII only. Raises ValueError."""
    text = "".join(c if " " <= c <= "~" else "?" for c in reply.strip())
    if text.count(",") < 3 or len(text) > 256:
        raise ValueError(f"{text[:40]!r} is not an identification of four fields")
    return text
