"""One reading in the words of a dialect: what is asked, and what the replies come to. Pure."""

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from drivers import scpi
from drivers.dialect import Dialect, Digits, Mode, Status
from drivers.exchange import Query
from drivers.supply import Reading, Regulation

_WORD = re.compile(r"[A-Z][A-Z0-9_ -]{0,15}", re.ASCII)


class Quantity(NamedTuple):
    """How volts, or amps, are said as a parameter and read from a reply; `unit` is "" where replies have none, `always`
    whether each has it."""

    unit: str
    digits: Digits
    always: bool

    def said(self, value: float) -> str:
        """Never above the value. Raises ValueError for what the wire can't say."""
        return scpi.at_most(value, before=self.digits.before, after=self.digits.after)

    def read(self, reply: str) -> float:
        """Raises ValueError."""
        return scpi.number(reply, self._unit_of(reply))

    def step(self, reply: str) -> float:
        """The weight of its last digit. Raises ValueError."""
        return scpi.step(reply, self._unit_of(reply))

    def _unit_of(self, reply: str) -> str:
        return self.unit if self.always or reply.strip().endswith(self.unit) else ""

    def sayable(self, most: float | None) -> float | None:
        """The top of a range that may not be known, no further than the digits go."""
        if not self.digits.before:
            return most
        top = 10.0**self.digits.before - 10.0**-self.digits.after
        return top if most is None else min(most, top)


def quantities(dialect: Dialect) -> tuple[Quantity, Quantity]:
    """Volts and amps."""
    program, units = dialect.program, dialect.link.units_in_replies
    volt, amp = ("V", "A") if units else ("", "")
    always = units != "some"
    return Quantity(volt, program.volts_digits, always), Quantity(amp, program.amps_digits, always)


class ReadingForm:
    """`queries` of one reading, and `of`, which makes one of their replies. `dialect`: for that output."""

    def __init__(self, dialect: Dialect, output: int) -> None:
        back, lengths = dialect.readback, dialect.reply_lengths
        self._volts, self._amps = quantities(dialect)
        units = {"volts": back.volts, "amps": back.amps, "set_volts": back.set_volts, "set_amps": back.set_amps}
        # Which reply tells the switch, which the regulation, and how.
        self._switch: tuple[int, Callable[[str], bool]] | None = None
        self._regulation: tuple[int, Callable[[str], Regulation]] | None = None
        if back.output:
            self._switch = len(units), scpi.boolean
            units["output"] = back.output
        if dialect.condition is not None:
            self._regulation = len(units), _by_bits(scpi.bits, dialect.condition.cc, dialect.condition.cv)
            units["condition"] = back.condition
        if dialect.mode is not None:
            self._regulation = len(units), _by_words(dialect.mode)
            units["mode"] = dialect.mode.ask
        if dialect.status is not None:
            self._take_status(dialect.status, len(units), output, scpi.bits if dialect.link.reply_ends else _byte)
            units["status"] = dialect.status.ask
        self.queries = tuple(Query(unit, getattr(lengths, name, None)) for name, unit in units.items())

    def _take_status(self, status: Status, at: int, output: int, bits: Callable[[str], int]) -> None:
        if status.output:
            mask = 1 << status.output[output - 1]
            self._switch = at, lambda text: bool(bits(text) & mask)
        if status.cc or status.cv:
            cc, cv = (each[output - 1] if each else None for each in (status.cc, status.cv))
            self._regulation = at, _by_bits(bits, cc, cv)

    def of(self, replies: Sequence[str], sent_s: float, received_s: float) -> Reading:
        """Raises ValueError where a reply has another form."""
        if self._switch is None:
            raise ValueError("nothing tells whether the output is on")
        at, is_on = self._switch
        regulation = Regulation.UNKNOWN
        if self._regulation is not None:
            told_at, told = self._regulation
            regulation = told(replies[told_at])
        return Reading(
            sent_s=sent_s,
            received_s=received_s,
            volts=self._volts.read(replies[0]),
            amps=self._amps.read(replies[1]),
            set_volts=self._volts.read(replies[2]),
            set_amps=self._amps.read(replies[3]),
            output_on=is_on(replies[at]),
            regulation=regulation,
        )


def _byte(reply: str) -> int:
    if len(reply) != 1:
        raise ValueError(f"{reply[:40]!r} is not one byte")
    return ord(reply)


def _by_bits(bits: Callable[[str], int], cc: int | None, cv: int | None) -> Callable[[str], Regulation]:
    """With one bit alone the other is where it is not set."""
    otherwise = Regulation.CV if cv is None else Regulation.CC if cc is None else Regulation.UNKNOWN
    cc_mask, cv_mask = (0 if bit is None else 1 << bit for bit in (cc, cv))

    def told(text: str) -> Regulation:
        state = bits(text)
        return Regulation.CC if state & cc_mask else Regulation.CV if state & cv_mask else otherwise

    return told


def _by_words(mode: Mode) -> Callable[[str], Regulation]:
    known = dict.fromkeys(mode.cc, Regulation.CC) | dict.fromkeys(mode.cv, Regulation.CV)

    def told(text: str) -> Regulation:
        word = text.strip().strip('"').upper()
        if not _WORD.fullmatch(word):
            raise ValueError(f"{text.strip()[:40]!r} is no word for a mode")
        return known.get(word, Regulation.UNKNOWN)

    return told
