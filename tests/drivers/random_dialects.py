"""Command sets put together at random from the habits of bench supplies; none is one that comes with the program.

`draw(seed, number)` gives the same dialect for the same two numbers. What it is put together from: how an output is
addressed, set, read back, told apart; protections; mode; errors; line ends; habits of the line; timer and sensing.

Source of the headers: SCPI-1999 for SOURce, MEASure, OUTPut, INSTrument, STATus and SYSTem; APPLy, channel lists behind
a value, the timer and the terse patterns are common among bench supplies, from memory.
"""

import itertools
import random
from typing import NamedTuple

from msgspec.structs import replace

from drivers.dialect import (
    Condition,
    Dialect,
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
    check,
    to_json,
)

ADDRESSINGS = ("none", "number selected", "name selected", "channel list", "suffix", "character data")
TERSE_SHARE = 0.25
VOLTS_MAX, AMPS_MAX = 30.0, 5.0
"""The ranges of the simulated bench, where the dialect has to know them."""


class Words(NamedTuple):
    """How a header becomes a command, a query, and a query with a word, for one addressing."""

    source: str
    output: str
    value: str
    bare: str
    query: str
    query_of: str

    def set(self, header: str) -> str:
        return f"{self.source}{header}{self.value}"

    def ask(self, header: str) -> str:
        return f"{self.source}{header}?{self.query}"

    def most(self, header: str) -> str:
        return f"{self.source}{header}?{self.query_of}"


def _words(addressing: str, source: str) -> Words:
    match addressing:
        case "channel list":
            return Words(source, "OUTP", " {value},(@{n})", " (@{n})", " (@{n})", " MAX,(@{n})")
        case "character data":
            return Words(source, "OUTP", " CH{n},{value}", " CH{n}", " CH{n}", " CH{n},MAX")
        case "suffix":
            return Words("SOUR{n}:", "OUTP{n}", " {value}", "", "", " MAX")
        case _:
            return Words(source, "OUTP", " {value}", "", "", " MAX")


def draw(seed: int, number: int) -> Dialect:
    """The same for the same two numbers, on every machine."""
    source = random.Random(f"{seed}/{number}/dialect")
    name = f"put together at random, {seed}/{number}"
    return check(_terse(source, name) if source.random() < TERSE_SHARE else _scpi(source, name))


def several(seed: int, count: int) -> list[Dialect]:
    """So many that all differ in more than their name, in the order of their numbers."""
    found: dict[str, Dialect] = {}
    for number in itertools.count():
        if len(found) == count:
            break
        one = draw(seed, number)
        found.setdefault(to_json(replace(one, name="-")), one)
    return list(found.values())


def _scpi(source: random.Random, name: str) -> Dialect:
    addressing = source.choice(ADDRESSINGS)
    count = 1 if addressing == "none" else source.choice((2, 2, 3))
    words = _words(addressing, source.choice(("", "", "SOUR:")))
    tells_range = source.random() < 0.75
    termination = source.choice(("\n", "\n", "\r\n", "\r"))
    form = source.choices(("scpi", "number", "none"), weights=(6, 2, 2))[0]
    mode = source.choices(("bits", "word", "status", "none"), weights=(5, 3, 1, 1))[0]
    return Dialect(
        name=name,
        link=Link(
            termination=termination,
            reply_termination=None if source.random() < 0.8 else source.choice(("\n", "\r\n")),
            compound=source.random() < 0.5,
            gap_s=source.choice((0.0, 0.0, 0.0, 0.01, 0.02, 0.05)),
            one_client=source.random() < 0.3,
            echo=source.random() < 0.15,
            units_in_replies=source.random() < 0.25,
        ),
        outputs=Outputs(
            count=count,
            select={"number selected": "INST:NSEL {n}", "name selected": "INST:SEL CH{n}"}.get(addressing, ""),
        ),
        identify=Identify(
            identity="*IDN?",
            volts_max=words.most("VOLT") if tells_range else "",
            amps_max=words.most("CURR") if tells_range else "",
        ),
        ranges=None if tells_range else Ranges(volts_max=(VOLTS_MAX,) * count, amps_max=(AMPS_MAX,) * count),
        program=_program(source, addressing, words),
        readback=Readback(
            volts=f"MEAS{'{n}' if addressing == 'suffix' else ''}:VOLT?{words.query}",
            amps=f"MEAS{'{n}' if addressing == 'suffix' else ''}:CURR?{words.query}",
            set_volts=words.ask("VOLT"),
            set_amps=words.ask("CURR"),
            output=f"{words.output}?{words.query}",
            condition=f"STAT:QUES{'{n}' if addressing == 'suffix' else ''}:COND?{words.query}"
            if mode == "bits"
            else "",
            window_s=0.02,
            settle_s=0.012,
        ),
        condition=Condition(**source.choice(({"cc": 0, "cv": 1}, {"cc": 1, "cv": 0}))) if mode == "bits" else None,
        mode=_mode(source, words) if mode == "word" else None,
        status=_status(source, count) if mode == "status" else None,
        over_volts=_latch(source, words, "VOLT:PROT") if source.random() < 0.8 else None,
        over_amps=_latch(source, words, "CURR:PROT") if source.random() < 0.6 else None,
        watchdog=_watchdog(source) if source.random() < 0.2 else None,
        sense=_sense(source) if source.random() < 0.2 and count == 1 else None,
        errors=Errors(
            form=form,  # type: ignore[arg-type]
            ask={"scpi": "SYST:ERR?", "number": source.choice(("ERR?", "SYST:ERR:CODE?")), "none": ""}[form],
            deepest=32,
        ),
    )


def _program(source: random.Random, addressing: str, words: Words) -> Program:
    switch = source.choice((("ON", "OFF"), ("1", "0")))
    first = {"character data": " CH{n},", "channel list": " "}.get(addressing, " ")
    last = ",(@{n})" if addressing == "channel list" else ""
    both = source.random() < 0.25 and addressing in ("none", "number selected", "name selected", "character data")
    apply = {"character data": "APPL CH{n},{volts},{amps}"}.get(addressing, "APPL {volts},{amps}")
    digits = Digits(after=source.choice((3, 4)))
    return Program(
        volts="" if both else words.set("VOLT"),
        amps="" if both else words.set("CURR"),
        both=apply if both else "",
        on=f"{words.output}{first}{switch[0]}{last}",
        off=f"{words.output}{first}{switch[1]}{last}",
        volts_digits=digits,
        amps_digits=digits,
    )


def _mode(source: random.Random, words: Words) -> Mode:
    header = source.choice(("OUTP:MODE", "OUTP:CVCC", "STAT:MODE"))
    if words.output != "OUTP":
        header = header.replace("OUTP", words.output).replace("STAT", "STAT{n}")
    cc, cv = source.choice((("CC", "CV"), ("CURR", "VOLT"), ("C", "V")))
    return Mode(ask=f"{header}?{words.query}", cc=(cc,), cv=(cv,))


def _status(source: random.Random, count: int) -> Status:
    bits = tuple(source.sample(range(8), count))
    return Status(ask="STAT?", **{source.choice(("cc", "cv")): bits})


def _latch(source: random.Random, words: Words, header: str) -> Latch:
    """With a switch of its own or always on; with a word for its trip or without."""
    before = {" CH{n},{value}": " CH{n},", " {value},(@{n})": " "}.get(words.value, " ")
    after = ",(@{n})" if "(@" in words.value else ""
    switched, told = source.random() < 0.6, source.random() < 0.75
    state = f"{words.source}{header}:STAT"
    return Latch(
        set=words.set(header),
        ask=words.ask(header),
        enabled=f"{state}?{words.query}" if switched else "",
        enable=f"{state}{before}ON{after}" if switched else "",
        disable=f"{state}{before}OFF{after}" if switched else "",
        tripped=f"{words.source}{header}:TRIP?{words.query}" if told else "",
        clear=source.choice((f"{words.source}{header}:CLE{words.bare}", f"{words.output}:PROT:CLE{words.bare}")),
    )


def _watchdog(source: random.Random) -> Watchdog:
    header = source.choice(("SYST:WDOG", "OUTP:WATC"))
    return Watchdog(
        set=f"{header}:DEL {{value}}",
        ask=f"{header}:DEL?",
        enable=f"{header}:STAT ON",
        disable=f"{header}:STAT OFF",
        enabled=f"{header}:STAT?",
        feed=source.choice(("", f"{header}:RES")),
    )


def _sense(source: random.Random) -> Sense:
    if source.random() < 0.5:
        return Sense(on="SYST:SENS ON", off="SYST:SENS OFF", ask="SYST:SENS?")
    return Sense(
        on="VOLT:SENS:SOUR EXT",
        off="VOLT:SENS:SOUR INT",
        ask="VOLT:SENS:SOUR?",
        on_words=("EXT",),
        off_words=("INT",),
    )


def _terse(source: random.Random, name: str) -> Dialect:
    """Fixed patterns, few of them, of cheap serial supplies: with line ends, or with nothing that ends anything."""
    ended = source.random() < 0.4
    pattern = source.choice(("VSET", "V", "VSET"))
    count = source.choice((1, 1, 2))
    ends = source.choice(("\n", "\r\n", "\r")) if ended else ""
    digits = Digits(before=2, after=2), Digits(before=1, after=3)
    by_status = pattern == "VSET"
    bits = source.sample(range(8), 2 * count)
    program, back = (_vset if by_status else _letters)(digits, count)
    lengths = ReplyLengths(
        volts=5, amps=5, set_volts=5, set_amps=5, output=None if by_status else 1, status=1 if by_status else None
    )
    return Dialect(
        name=name,
        link=Link(
            termination=ends,
            compound=False,
            gap_s=source.choice((0.0, 0.02)) if ended else source.choice((0.02, 0.05)),
            one_client=source.random() < 0.5,
            units_in_replies=ended and source.random() < 0.3,
        ),
        reply_lengths=None if ended else lengths,
        outputs=Outputs(count=count),
        identify=Identify(identity="*IDN?", fields=1),
        ranges=Ranges(volts_max=(VOLTS_MAX,) * count, amps_max=(AMPS_MAX,) * count),
        program=program,
        readback=back,
        status=Status(ask="STATUS?", output=tuple(bits[:count]), cv=tuple(bits[count:])) if by_status else None,
        over_volts=Latch(set="OVP{n}:{value}", ask="OVP{n}?") if by_status and source.random() < 0.4 else None,
        errors=Errors(form="none"),
    )


def _vset(digits: tuple[Digits, Digits], count: int) -> tuple[Program, Readback]:
    switch = ("OUT1", "OUT0") if count == 1 else ("OUT{n}:1", "OUT{n}:0")
    return (
        Program(
            volts="VSET{n}:{value}",
            amps="ISET{n}:{value}",
            on=switch[0],
            off=switch[1],
            volts_digits=digits[0],
            amps_digits=digits[1],
        ),
        Readback(
            volts="VOUT{n}?", amps="IOUT{n}?", set_volts="VSET{n}?", set_amps="ISET{n}?", window_s=0.02, settle_s=0.05
        ),
    )


def _letters(digits: tuple[Digits, Digits], count: int) -> tuple[Program, Readback]:
    return (
        Program(
            volts="V{n} {value}",
            amps="I{n} {value}",
            on="OP{n} 1",
            off="OP{n} 0",
            volts_digits=digits[0],
            amps_digits=digits[1],
        ),
        Readback(
            volts="V{n}O?",
            amps="I{n}O?",
            set_volts="V{n}?",
            set_amps="I{n}?",
            output="OP{n}?",
            window_s=0.02,
            settle_s=0.05,
        ),
    )
