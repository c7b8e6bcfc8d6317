"""The parts of a dialect, a table of its file each. How one is written: drivers/dialects/README.md.

A unit is one program message unit. `{n}` in it is the output's number, `{value}` what is set; `{volts}` and `{amps}`
where both are set at once. "" is a unit that the instrument does not have.
"""

from typing import Annotated, Literal

import msgspec

from drivers.scpi import LONGEST_REPLY

_Seconds = Annotated[float, msgspec.Meta(ge=0, le=5)]
_Bit = Annotated[int, msgspec.Meta(ge=0, le=14)]  # a register reads 0 to 32767
_Length = Annotated[int, msgspec.Meta(ge=1, le=64)]
_Count = Annotated[int, msgspec.Meta(ge=1, le=16)]
_Most = Annotated[float, msgspec.Meta(gt=0, le=1e5)]
_Word = Annotated[str, msgspec.Meta(pattern=r"\A[A-Z][A-Z0-9_ -]{0,15}\Z")]


class Link(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How messages and replies end, and what the line bears.

    `reply_termination`: None as messages end; "" with nothing, then `reply_lengths` tells how long the replies of a
    reading are. `compound`: several units may go in one message. `gap_s`: from the end of one exchange to the next
    message. `echo`: each message comes back before the reply to it. `units_in_replies`: "12.000V", "0.5 A"; all of
    them, or "some".
    """

    termination: str
    reply_termination: str | None = None
    compound: bool
    gap_s: Annotated[float, msgspec.Meta(ge=0, le=0.5)] = 0.0
    one_client: bool = False
    echo: bool = False
    units_in_replies: bool | Literal["some"] = False

    @property
    def reply_ends(self) -> str:
        """What ends a reply; "" where nothing does."""
        return self.termination if self.reply_termination is None else self.reply_termination


class ReplyLengths(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Bytes of the replies of one reading, where nothing ends them. Any other reply lasts until the line is quiet."""

    volts: _Length
    amps: _Length
    set_volts: _Length
    set_amps: _Length
    output: _Length | None = None
    condition: _Length | None = None
    mode: _Length | None = None
    status: Literal[1] | None = None


class Outputs(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The most outputs that it can have. `select` goes before every unit; "" where the units themselves hold {n}."""

    count: _Count = 1
    select: str = ""


class Identify(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`fields`: of the identification, by commas. Source: IEEE 488.2, four; terse sets answer with one text."""

    identity: str
    fields: Annotated[int, msgspec.Meta(ge=1, le=4)] = 4
    volts_max: str = ""
    amps_max: str = ""


class Ranges(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The most volts and amps of each output in turn, where no query tells."""

    volts_max: tuple[_Most, ...]
    amps_max: tuple[_Most, ...]


class Digits(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A number as a parameter: exactly so many digits before the point, with zeros in front (0: as many as it takes),
    and after it."""

    before: Annotated[int, msgspec.Meta(ge=0, le=4)] = 0
    after: Annotated[int, msgspec.Meta(ge=2, le=6)] = 4


class Program(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Setpoints, by `volts` and `amps` or by `both`, and the output's switch. The digits are those of latches too."""

    volts: str = ""
    amps: str = ""
    both: str = ""
    on: str
    off: str
    volts_digits: Digits = Digits()
    amps_digits: Digits = Digits()


class Readback(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Queries of one reading, and what the supply does inside: averaging window, settling after a setpoint."""

    volts: str
    amps: str
    set_volts: str = ""
    set_amps: str = ""
    output: str = ""
    condition: str = ""
    window_s: _Seconds
    settle_s: _Seconds


class Condition(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Bits of the condition register. Source: SCPI-1999 QUEStionable, bit 0 VOLTage, bit 1 CURRent: the quantity
    whose bit is set is the one that is not regulated."""

    cc: _Bit
    cv: _Bit


class Mode(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A query that tells the regulation in words. Any other word: not known."""

    ask: str
    cc: tuple[_Word, ...]
    cv: tuple[_Word, ...]


class Status(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One query whose bits tell the output's switch and the regulation, a bit for each output in turn.

    The reply is a number; where nothing ends a reply it is one byte. With `cc` or `cv` alone the bit that is not set
    tells the other.
    """

    ask: str
    output: tuple[_Bit, ...] = ()
    cc: tuple[_Bit, ...] = ()
    cv: tuple[_Bit, ...] = ()


class Latch(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One protection: set, ask, switch on and off, ask whether it is on, whether it tripped, clear."""

    set: str = ""
    ask: str = ""
    enabled: str = ""
    enable: str = ""
    disable: str = ""
    tripped: str = ""
    clear: str = ""


class Watchdog(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The instrument's own timer, which switches the output off when it hears nothing for whole seconds.

    `feed`: what it wants to hear; "" where any message does.
    """

    set: str
    ask: str
    enable: str
    disable: str
    enabled: str
    feed: str = ""
    least_s: Annotated[int, msgspec.Meta(ge=1, le=60)] = 1


class Sense(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Four-wire sensing: on, off, and which of both, as 0, 1, ON or OFF, or in the words that are given."""

    on: str
    off: str
    ask: str
    on_words: tuple[_Word, ...] = ()
    off_words: tuple[_Word, ...] = ()


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
    """The error queue. `form`: "scpi" is `code,"text"`, "number" the code alone, "none" that there is none."""

    form: Literal["scpi", "number", "none"] = "scpi"
    ask: str = ""
    deepest: Annotated[int, msgspec.Meta(ge=1, le=1024)] = 64
