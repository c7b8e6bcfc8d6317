"""What a dialect is put together from: the spellings that are tried, as tables. Pure.

Source of the headers: SCPI-1999 for SOURce, MEASure, OUTPut, INSTrument, STATus, SYSTem and the sweep of SENSe; the
protections, channel lists behind a value, character data, timers, four-wire switches and the terse patterns are common
among bench supplies, from memory.
"""

from typing import NamedTuple

TERMINATIONS = ("\n", "\r\n", "\r", "")
"""How messages may end, in the order in which it is tried."""

GAPS_S = (0.0, 0.01, 0.02, 0.05, 0.1)
"""How long a line may want to be left alone between exchanges."""

LEAST_GAP_S = 0.02
"""Of a line on which nothing ends a message."""

ERROR_QUERIES = ("SYST:ERR?", "SYST:ERR:CODE?", "ERR?")
"""The form is that of the reply."""

NONSENSE = "XQZJ?"
"""A question that no instrument knows: what answers it answers anything."""


class Way(NamedTuple):
    """How an output is said in the units themselves. `sources`: what may stand before VOLT and CURR; `asked`, `most`,
    `said` and `done` follow a query, a query for the top of a range, a setting (before and after its value) and a
    command without one."""

    name: str
    sources: tuple[str, ...]
    number: str
    asked: str
    most: str
    said: tuple[str, str]
    done: str

    def measured(self, header: str) -> str:
        return f"MEAS{self.number}:{header}?{self.asked}"

    def ask(self, header: str) -> str:
        return f"{header}?{self.asked}"

    def ask_most(self, header: str) -> str:
        return f"{header}?{self.most}"

    def say(self, header: str, value: str) -> str:
        return f"{header}{self.said[0]}{value}{self.said[1]}"

    def do(self, header: str) -> str:
        return f"{header}{self.done}"


PLAIN = Way("no number", ("", "SOUR:"), "", "", " MAX", (" ", ""), "")
NUMBERED = (
    Way("channel list", ("", "SOUR:"), "", " (@{n})", " MAX,(@{n})", (" ", ",(@{n})"), " (@{n})"),
    Way("suffix", ("SOUR{n}:",), "{n}", "", " MAX", (" ", ""), ""),
    Way("character data", ("", "SOUR:"), "", " CH{n}", " CH{n},MAX", (" CH{n},", ""), " CH{n}"),
)

MEASURED = (("VOLT", "CURR"), ("SCAL:VOLT:DC", "SCAL:CURR:DC"), ("VOLT:DC", "CURR:DC"))
SWITCHES = ("OUTP{number}", "OUTP{number}:STAT")
MODES = ("OUTP{number}:MODE", "OUTP{number}:CVCC", "STAT{number}:MODE")
CC_WORDS, CV_WORDS, OFF_WORDS = ("CC", "CURR", "C"), ("CV", "VOLT", "V"), ("OFF", "NONE", "UR")
"""Words that say of themselves what holds the output, and those that are heard while nothing does."""

SELECTS = (("INST:NSEL", "INST:NSEL {n}"), ("INST:SEL", "INST:SEL CH{n}"))
"""Asked by the first with "?"; the second chooses."""

TIMERS = ("SYST:WDOG", "OUTP:WATC", "OUTP:PROT:WDOG")
SENSES = (("SYST:SENS", "ON", "OFF"), ("VOLT:SENS:SOUR", "EXT", "INT"))
OUTPUTS_LIKELY = 4
FAR_OUTPUT = "9"
"""What answers for this output as well does not look at the number."""


class Terse(NamedTuple):
    """A terse set of fixed patterns, which has hardly anything else."""

    name: str
    volts: str
    amps: str
    set_volts: str
    set_amps: str
    output: str
    status: str
    say_volts: str
    say_amps: str
    switch_one: tuple[str, str]
    switch: tuple[str, str]
    over_volts: tuple[str, str]


TERSE = (
    Terse(
        "terse, set and out",
        volts="VOUT{n}?",
        amps="IOUT{n}?",
        set_volts="VSET{n}?",
        set_amps="ISET{n}?",
        output="",
        status="STATUS?",
        say_volts="VSET{n}:{value}",
        say_amps="ISET{n}:{value}",
        switch_one=("OUT1", "OUT0"),
        switch=("OUT{n}:1", "OUT{n}:0"),
        over_volts=("OVP{n}?", "OVP{n}:{value}"),
    ),
    Terse(
        "terse, letters",
        volts="V{n}O?",
        amps="I{n}O?",
        set_volts="V{n}?",
        set_amps="I{n}?",
        output="OP{n}?",
        status="",
        say_volts="V{n} {value}",
        say_amps="I{n} {value}",
        switch_one=("OP{n} 1", "OP{n} 0"),
        switch=("OP{n} 1", "OP{n} 0"),
        over_volts=("", ""),
    ),
)
