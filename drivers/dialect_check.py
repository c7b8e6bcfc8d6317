"""What a dialect must fulfil, besides the types of its fields: each unit is one program message unit, and the parts
fit one another. Every error names its place. Pure."""

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

import msgspec

from drivers.foreign import inert

if TYPE_CHECKING:
    from drivers.dialect import Dialect, Latch

_UNIT = re.compile(r"[*:A-Za-z0-9?,.() @=_-]+", re.ASCII)
_PLACEHOLDER = re.compile(r"\{(n|value|volts|amps)\}")
_VALUE = ("value",)
_WITH_VALUES = {
    "program.volts": _VALUE,
    "program.amps": _VALUE,
    "program.both": ("amps", "volts"),
    "over_volts.set": _VALUE,
    "over_amps.set": _VALUE,
    "watchdog.set": _VALUE,
    "array.interval": _VALUE,
    "array.points": _VALUE,
}
_NO_UNITS = {
    "name",
    "link.termination",
    "link.reply_termination",
    "errors.form",
    "mode.cc",
    "mode.cv",
    "sense.on_words",
    "sense.off_words",
}
_OPTIONAL = {
    "outputs.select",
    "identify.volts_max",
    "identify.amps_max",
    "program.volts",
    "program.amps",
    "program.both",
    "readback.set_volts",
    "readback.set_amps",
    "readback.output",
    "readback.condition",
    "watchdog.feed",
    "errors.ask",
}
_QUERIES = {"identity", "volts_max", "amps_max", "ask", "enabled", "tripped", "output_trigger"}
_ENDS = ("\n", "\r\n", "\r", "")
_MAX_NAME = 128
_MAX_UNIT = 256


class DialectError(Exception):
    """A dialect that can't be used; the text names the place."""


class _Unit(NamedTuple):
    place: str
    text: str


def check(dialect: "Dialect") -> None:
    """Raises DialectError naming the first place that is wrong."""
    if not 1 <= len(dialect.name) <= _MAX_NAME or not dialect.name.isprintable():
        raise DialectError(f"name: not a printable text of at most {_MAX_NAME} characters")
    for unit in _units("", dialect):
        _check_unit(unit)
    for part in (_link, _outputs, _program, _state, _latches, _errors):
        for place, why in part(dialect):
            raise DialectError(f"{place}: {why}")


def _check_unit(unit: _Unit) -> None:
    place, text = unit
    if not text and (place in _OPTIONAL or place.startswith(("over_volts.", "over_amps."))):
        return
    if len(text) > _MAX_UNIT:
        raise DialectError(f"{place}: longer than {_MAX_UNIT} characters")
    asks = _is_query(place)
    if asks != text.partition(" ")[0].endswith("?") or (not asks and "?" in text):
        raise DialectError(f"{place}: {inert(text)!r} is {'no query' if asks else 'a query'}")
    wanted = _WITH_VALUES.get(place, ())
    held = tuple(sorted(name for name in _PLACEHOLDER.findall(text) if name != "n"))
    if held != wanted or not _UNIT.fullmatch(_PLACEHOLDER.sub("0", text)) or not text.strip():
        what = " and ".join(f"{{{name}}}" for name in wanted) or "no value"
        raise DialectError(f"{place}: {inert(text)!r} is not one program message unit with {what}")


def _is_query(place: str) -> bool:
    part, _, name = place.rpartition(".")
    if part == "array" and name in ("volts", "amps"):
        return True
    return part == "readback" or name in _QUERIES or name.startswith("ask_")


def _link(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    link, lengths = dialect.link, dialect.reply_lengths
    for place, ends in (("termination", link.termination), ("reply_termination", link.reply_ends)):
        if ends not in _ENDS:
            yield f"link.{place}", f"{ends!r} ends no line"
    if not link.termination and not link.gap_s:
        yield "link.gap_s", "messages that nothing ends need a gap between them"
    if link.compound and not (link.termination and link.reply_ends):
        yield "link.compound", "several units in one message need something that ends messages and replies"
    if bool(link.reply_ends) == (lengths is not None):
        yield "reply_lengths", "needed where reply_termination is empty, and only there"
    if lengths is not None:
        back = dialect.readback
        asked = {"output": bool(back.output), "condition": bool(back.condition)}
        asked |= {"mode": dialect.mode is not None, "status": dialect.status is not None}
        for name, is_asked in asked.items():
            if is_asked != (getattr(lengths, name) is not None):
                yield f"reply_lengths.{name}", "needed where it is asked for, and only there"


def _outputs(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    count, select = dialect.outputs.count, dialect.outputs.select
    if select and "{n}" not in select:
        yield "outputs.select", f"{select!r} chooses no output: it has no {{n}}"
    program, back = dialect.program, dialect.readback
    addressed = {f"program.{name}": getattr(program, name) for name in ("volts", "amps", "both")}
    addressed |= {f"readback.{name}": getattr(back, name) for name in ("volts", "amps", "set_volts", "set_amps")}
    for place, unit in addressed.items():
        if count > 1 and not select and unit and "{n}" not in unit:
            yield place, f"{unit!r} does not say which of {count} outputs is meant"
    if dialect.ranges is not None:
        for name in ("volts_max", "amps_max"):
            if len(getattr(dialect.ranges, name)) != count:
                yield f"ranges.{name}", f"one for each of {count} outputs"
    if dialect.status is not None:
        for name in ("output", "cc", "cv"):
            if len(getattr(dialect.status, name)) not in (0, count):
                yield f"status.{name}", f"a bit for each of {count} outputs"
            if not dialect.link.reply_ends and max(getattr(dialect.status, name), default=0) > 7:
                yield f"status.{name}", "a byte has the bits 0 to 7"


def _program(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    program = dialect.program
    apart = (bool(program.volts), bool(program.amps))
    if apart not in ((True, True), (False, False)) or apart[0] == bool(program.both):
        yield "program", "either volts and amps, or both"
    if program.on == program.off:
        yield "program.off", "the same as program.on"


def _state(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    """Where output and regulation come from: one place each."""
    back, status = dialect.readback, dialect.status
    if bool(back.condition) != (dialect.condition is not None):
        yield "condition", "needed where readback.condition is asked for, and only there"
    if status is not None and back.output and status.output:
        yield "status.output", "readback.output tells it already"
    tells = [bool(back.condition), dialect.mode is not None, status is not None and bool(status.cc or status.cv)]
    if sum(tells) > 1:
        yield "mode", "condition, mode and status: one of them tells the regulation"


def _latches(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    latches: list[tuple[str, Latch | None]] = [("over_volts", dialect.over_volts), ("over_amps", dialect.over_amps)]
    for place, latch in latches:
        if latch is not None and latch.enable and not latch.enabled:
            yield f"{place}.enabled", "needed where it can be switched on: otherwise nobody could see whether it is"
    sense = dialect.sense
    if sense is not None and bool(sense.on_words) != bool(sense.off_words):
        yield "sense.off_words", "words for on and for off, or for neither"


def _errors(dialect: "Dialect") -> Iterator[tuple[str, str]]:
    if (dialect.errors.form == "none") == bool(dialect.errors.ask):
        yield "errors.ask", 'needed unless errors.form is "none"'
    if dialect.array is not None and dialect.errors.form != "scpi":
        yield "array", 'used only where errors.form is "scpi": its queries are asked behind one for the error queue'
    if dialect.array is not None and (dialect.link.echo or not dialect.link.reply_ends):
        yield "array", "its long lists need replies that something ends, and no echo"


def _units(place: str, part: msgspec.Struct) -> Iterator[_Unit]:
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if f"{place}{name}" in _NO_UNITS:
            continue
        if isinstance(value, msgspec.Struct):
            yield from _units(f"{place}{name}.", value)
        elif isinstance(value, tuple):
            yield from (_Unit(f"{place}{name}", one) for one in value if isinstance(one, str))
        elif isinstance(value, str):
            yield _Unit(f"{place}{name}", value)
