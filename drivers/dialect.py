"""A command set as data, checked when it is loaded. How one is written: drivers/dialects/README.md."""

from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any, TypeVar

import msgspec

from drivers.dialect_check import DialectError
from drivers.dialect_check import check as _check
from drivers.dialect_parts import (
    Array,
    Condition,
    Digits,
    Errors,
    Identify,
    Latch,
    Link,
    Mode,
    Outputs,
    Program,
    Ranges,
    Readback,
    ReplyLengths,
    Sense,
    Status,
    Watchdog,
)
from drivers.foreign import inert, toml

__all__ = [
    "Array",
    "Condition",
    "Dialect",
    "DialectError",
    "Digits",
    "Errors",
    "Identify",
    "Latch",
    "Link",
    "Mode",
    "Outputs",
    "Program",
    "Ranges",
    "Readback",
    "ReplyLengths",
    "Sense",
    "Status",
    "Watchdog",
    "check",
    "for_output",
    "from_json",
    "parse",
    "read",
    "shipped",
    "shipped_names",
    "to_json",
]

_Part = TypeVar("_Part", bound=msgspec.Struct)


class Dialect(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A whole command set."""

    name: str
    link: Link
    reply_lengths: ReplyLengths | None = None
    outputs: Outputs = Outputs()
    identify: Identify
    ranges: Ranges | None = None
    program: Program
    readback: Readback
    condition: Condition | None = None
    mode: Mode | None = None
    status: Status | None = None
    over_volts: Latch | None = None
    over_amps: Latch | None = None
    watchdog: Watchdog | None = None
    sense: Sense | None = None
    array: Array | None = None
    errors: Errors


def parse(text: str) -> Dialect:
    """TOML text to a Dialect. Raises DialectError naming the place."""
    try:
        return check(msgspec.convert(toml(text), Dialect))
    except ValueError as error:  # of msgspec too
        raise DialectError(inert(str(error))) from error


def check(dialect: Dialect) -> Dialect:
    """The dialect, put together in whatever way. Raises DialectError naming the place."""
    _check(dialect)
    return dialect


def from_json(data: bytes | str) -> Dialect:
    """What `to_json` made. Raises DialectError."""
    try:
        return check(msgspec.json.decode(data, type=Dialect))
    except ValueError as error:
        raise DialectError(inert(str(error))) from error


def to_json(dialect: Dialect) -> str:
    return msgspec.json.encode(dialect).decode()


def shipped(name: str = "scpi-1999") -> Dialect:
    """A dialect that comes with the program."""
    return parse((files("drivers.dialects") / f"{name}.toml").read_text(encoding="utf-8"))


def shipped_names() -> list[str]:
    """Names for `shipped`, in order."""
    every = (file.name for file in files("drivers.dialects").iterdir())
    return sorted(name.removesuffix(".toml") for name in every if name.endswith(".toml"))


def read(path: Path) -> Dialect:
    """A dialect of the user's own. Raises DialectError, also where there is no such file or it is no text."""
    try:
        return parse(path.read_text(encoding="utf-8"))
    except DialectError as error:
        raise DialectError(f"{path}: {error}") from error
    except (OSError, UnicodeDecodeError) as error:
        raise DialectError(f"{path}: {inert(str(error))}") from error


def for_output(dialect: Dialect, output: int) -> Dialect:
    """The same with the output's number in place of every {n}. Raises ValueError where it has no such output."""
    if not 1 <= output <= dialect.outputs.count:
        raise ValueError(f"output {output} of {dialect.outputs.count}")
    return _with_number(dialect, str(output))


def _with_number(part: _Part, number: str) -> _Part:
    return msgspec.structs.replace(part, **dict(_changed(part, number)))


def _changed(part: msgspec.Struct, number: str) -> Iterator[tuple[str, Any]]:
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if isinstance(value, msgspec.Struct):
            yield name, _with_number(value, number)
        elif isinstance(value, str):
            yield name, value.replace("{n}", number)
        elif isinstance(value, tuple):
            yield name, tuple(one.replace("{n}", number) if isinstance(one, str) else one for one in value)
