"""A command set as data, checked when it is loaded.

Program message units hold at most one `{value}`, and nothing that would end a message or start a second one.
"""

import re
from importlib.resources import files
from typing import Annotated

import msgspec

from drivers.foreign import inert, toml
from drivers.scpi import LONGEST_REPLY

_UNIT = re.compile(r"[*:A-Za-z0-9?,.() @{}_-]+", re.ASCII)
_WITH_VALUE = {"program.volts", "program.amps", "over_volts.set", "over_amps.set", "array.interval", "array.points"}
_Seconds = Annotated[float, msgspec.Meta(ge=0, le=5)]
_Bit = Annotated[int, msgspec.Meta(ge=0, le=14)]  # a register reads 0 to 32767
_MAX_NAME = 128
_MAX_UNIT = 256


class DialectError(Exception):
    """A dialect file that can't be used; the text names the place."""


class Link(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How messages end, and whether several units may go in one message."""

    termination: str
    compound: bool


class Identify(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    identity: str
    volts_max: str
    amps_max: str


class Program(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    volts: str
    amps: str
    on: str
    off: str


class Readback(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Queries of one reading, and what the supply does inside: averaging window, settling after a setpoint."""

    volts: str
    amps: str
    set_volts: str
    set_amps: str
    output: str
    condition: str
    window_s: _Seconds
    settle_s: _Seconds


class Condition(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Bits of the condition register. Source: SCPI-1999 QUEStionable, bit 0 VOLTage, bit 1 CURRent: the quantity
    whose bit is set is the one that is not regulated."""

    cc: _Bit
    cv: _Bit


class Latch(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One protection: set, ask, switch on and off, ask whether it is on, whether it tripped, clear."""

    set: str
    ask: str
    enabled: str
    enable: str
    disable: str
    tripped: str
    clear: str


class Array(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A measurement array: interval and number of its samples, a start without waiting, and what it held.

    `at_once`: sent before each start, so that the first sample is that of the start, whatever was set before.
    `output_trigger`: a query that only a supply with setpoints on trigger answers; a start could move its output, so
    its array is not used. The last three are bounds within which the supply's own answers count.
    """

    interval: str
    ask_interval: str
    ask_least_interval: str
    points: str
    ask_points: str
    ask_most_points: str
    at_once: tuple[str, ...]
    start: str
    abort: str
    output_trigger: str
    volts: str
    amps: str
    least_interval_s: Annotated[float, msgspec.Meta(ge=1e-6, le=1)]
    most_points: Annotated[int, msgspec.Meta(ge=2, le=65536)]
    most_reply_bytes: Annotated[int, msgspec.Meta(ge=256, le=LONGEST_REPLY - 1024)]


class Errors(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    ask: str
    deepest: Annotated[int, msgspec.Meta(ge=1, le=1024)]


class Dialect(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A whole command set."""

    name: str
    link: Link
    identify: Identify
    program: Program
    readback: Readback
    condition: Condition
    over_volts: Latch | None = None
    over_amps: Latch | None = None
    array: Array | None = None
    errors: Errors


def parse(text: str) -> Dialect:
    """TOML text to a Dialect. Raises DialectError naming the place."""
    try:
        dialect = msgspec.convert(toml(text), Dialect)
    except ValueError as error:  # of msgspec too
        raise DialectError(inert(str(error))) from error
    if len(dialect.name) > _MAX_NAME or not dialect.name.isprintable():
        raise DialectError(f"name: not a printable text of at most {_MAX_NAME} characters")
    if dialect.link.termination not in ("\n", "\r\n", "\r"):
        raise DialectError(f"link.termination: {dialect.link.termination!r} ends no line")
    for place, unit in _units("", dialect):
        values = 1 if place in _WITH_VALUE else 0
        if len(unit) > _MAX_UNIT:
            raise DialectError(f"{place}: longer than {_MAX_UNIT} characters")
        if not _UNIT.fullmatch(unit) or unit.count("{value}") != values or unit.replace("{value}", "").count("{"):
            raise DialectError(f"{place}: {unit!r} is not one program message unit with {values} values")
        if "}" in unit.replace("{value}", ""):
            raise DialectError(f"{place}: {unit!r} has a brace that belongs to no value")
    return dialect


def shipped(name: str = "scpi-1999") -> Dialect:
    """A dialect that comes with the program."""
    return parse((files("drivers.dialects") / f"{name}.toml").read_text(encoding="utf-8"))


def _units(place: str, part: msgspec.Struct) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if isinstance(value, msgspec.Struct):
            found += _units(f"{place}{name}.", value)
        elif isinstance(value, tuple):
            found += [(f"{place}{name}", unit) for unit in value]
        elif isinstance(value, str) and name not in ("name", "termination"):
            found.append((f"{place}{name}", value))
    return found
