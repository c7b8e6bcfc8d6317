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
_NOISE = 1e-10
"""Of a float that was meant to be exactly at a step: far below what any supply resolves."""

_ABSURD = 1e6


def number(reply: str, unit: str = "") -> float:
    """A measured number, with `unit` behind it where that is not "". Raises ValueError for any other form, for infinity
    and for not-a-number."""
    text = bare(reply, unit)
    if not _NUMBER.fullmatch(text):
        raise ValueError(f"{text[:40]!r} is not a number")
    value = float(text)
    if not math.isfinite(value) or abs(value) >= _NOT_MEASURED:
        raise ValueError(f"{text[:40]!r} says that nothing was measured")
    return value


def bare(reply: str, unit: str) -> str:
    """A reply without its unit, which must be exactly that: "12.000V", "0.5 A". Raises ValueError."""
    text = reply.strip()
    if not text.endswith(unit):
        raise ValueError(f"{text[:40]!r} does not end in {unit}")
    return text.removesuffix(unit).removesuffix(" ") if unit else text


def step(reply: str, unit: str = "") -> float:
    """The weight of a reply's last digit: "12.003" is 1 mV, "1.50E-1" is 1 mV. Raises ValueError."""
    number(reply, unit)
    mantissa, _, exponent = bare(reply, unit).lower().partition("e")
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


def at_most(value: float, *, before: int, after: int) -> str:
    """A number as a parameter, never above it: plain decimal, exactly `before` digits in front of the point (0: as many
    as it takes) and `after` behind. Raises ValueError for what such a form does not hold, and below zero.

    Down to what the wire carries, not to the nearest: rounded up, a setpoint at a ceiling would pass it.
    """
    if not 0.0 <= value < _ABSURD:  # nor not-a-number
        raise ValueError(f"{value} is no parameter")
    scale = 10**after
    text = f"{math.floor((value + _NOISE) * scale) / scale:0{before + after + 1 if before else 0}.{after}f}"
    if before and len(text) > before + after + 1:
        raise ValueError(f"{value:g} has more than {before} digits before its point")
    return text


def join(*units: str) -> str:
    """Several program message units in one message, each from the root."""
    return ";:".join(unit if unit.startswith("*") else unit.removeprefix(":") for unit in units).replace(";:*", ";*")


def replies(reply: str, count: int) -> list[str]:
    """The parts of a reply to a compound message. Raises ValueError unless there are `count`."""
    parts = reply.strip().split(";")
    if len(parts) != count:
        raise ValueError(f"{len(parts)} replies where {count} were asked for")
    return parts


def identity(reply: str, fields: int = 4) -> str:
    """An identification of so many fields, made inert: printable ASCII only. Raises ValueError."""
    text = "".join(c if " " <= c <= "~" else "?" for c in reply.strip())
    if text.count(",") < fields - 1 or not 4 <= len(text) <= 256:
        raise ValueError(f"{text[:40]!r} is not an identification of {fields} fields")
    return text
