"""A dialect put together from what an instrument answers, question by question."""

from collections.abc import Callable
from typing import Literal, TypeVar

import msgspec

from drivers import scpi
from drivers.dialect import (
    Array,
    Dialect,
    Digits,
    Identify,
    Latch,
    Link,
    Mode,
    Outputs,
    Program,
    Readback,
    ReplyLengths,
    Sense,
    check,
    shipped,
)
from drivers.finding_asking import Asking, OutOfTime
from drivers.finding_line import Strange
from drivers.finding_parts import (
    CC_WORDS,
    CV_WORDS,
    LEAST_GAP_S,
    MEASURED,
    MODES,
    OFF_WORDS,
    SENSES,
    SWITCHES,
    TIMERS,
    Terse,
    Way,
)

_LEFT_OUT = (
    "It answers too slowly for all questions: what is said to be missing may be there. With more time it is found."
)
_T = TypeVar("_T")
_O = TypeVar("_O")

_WINDOW_S, _SETTLE_S = 0.02, 0.012
"""Of a supply that nobody measured: common practice, no source."""


class Assembly:
    """What is found on the way: `questions`, `untried` and `remarks` as of a Found. Where what matters is missing, its
    methods raise Strange, where there is no time for it OutOfTime."""

    def __init__(self, asking: Asking) -> None:
        self.asking = asking
        self.questions: list[str] = []
        self.untried: list[str] = []
        self.remarks: list[str] = []

    def is_there(self, unit: str) -> bool:
        return self.asking.ask(unit.replace("{n}", "1")) is not None

    def number(self, unit: str, output: str = "1") -> float | None:
        return self.asking.number(unit.replace("{n}", output))

    def assembled(self, way: Way, source: str, count: int, select: str) -> Dialect:
        asking = self.asking
        volts, amps = f"{source}VOLT", f"{source}CURR"
        if self.number(way.ask(amps)) is None:
            raise Strange(self._no_limit())
        measured = self._measured(way)
        switch = next((one for text in SWITCHES if self._is_switch(way.ask(one := text.format(number=way.number)))), "")
        first, second = (way.ask(header).replace("{n}", "1") for header in (volts, amps))
        self._in_time(None, asking.try_compound, first, second)
        # One that does not tell how many volts is not asked how many amps.
        ranges = [self._in_time("", self._known, way.ask_most(volts)), ""]
        if ranges[0]:
            ranges[1] = self._in_time("", self._known, way.ask_most(amps))
        latches = [self._in_time(None, self._latch, way, f"{one}:PROT") for one in (volts, amps)]
        mode, register = self._in_time((None, ""), self._mode, way)
        on_off = switch or f"OUTP{way.number}"
        dialect = Dialect(
            name=f"found by asking: {way.name if not select else select.partition(' ')[0]}",
            link=self.link(),
            outputs=Outputs(count=count, select=select),
            identify=Identify(
                identity="*IDN?", fields=fields_of(asking.line.identity), volts_max=ranges[0], amps_max=ranges[1]
            ),
            program=Program(
                volts=way.say(volts, "{value}"),
                amps=way.say(amps, "{value}"),
                on=way.say(on_off, "ON"),
                off=way.say(on_off, "OFF"),
                volts_digits=self._digits(way.ask(volts)),
                amps_digits=self._digits(way.ask(amps)),
            ),
            readback=Readback(
                volts=measured[0],
                amps=measured[1],
                set_volts=way.ask(volts),
                set_amps=way.ask(amps),
                output=way.ask(switch) if switch else "",
                window_s=_WINDOW_S,
                settle_s=_SETTLE_S,
            ),
            mode=mode,
            over_volts=latches[0],
            over_amps=latches[1],
            errors=asking.errors,
        )
        dialect = self.with_units(self.with_lengths(self.with_extras(dialect)))
        self.ask_the_user(dialect, register)
        self.untried_of(dialect)
        return check(dialect)

    def with_extras(self, dialect: Dialect) -> Dialect:
        """What supplies seldom have, asked for last, where the dialect has none yet."""
        self._in_time(None, self._timer)
        return msgspec.structs.replace(
            dialect,
            sense=dialect.sense or self._in_time(None, self._sense),
            array=dialect.array or self._in_time(None, self._array, dialect),
        )

    def _in_time(self, otherwise: _O, part: Callable[..., _T], *of: object) -> _T | _O:
        """What a supply may be without, so that it is left out where time is over."""
        try:
            return part(*of)
        except OutOfTime:
            self.left_out()
            return otherwise

    def left_out(self) -> None:
        """That something was not asked any more is said, once."""
        if _LEFT_OUT not in self.remarks:
            self.remarks.append(_LEFT_OUT)

    def _known(self, unit: str) -> str:
        return unit if self.number(unit) is not None else ""

    def _no_limit(self) -> str:
        identity = self.asking.line.identity
        if self.number("FREQ?") is not None:
            return f'"{identity}" has a frequency and no current limit: a generator, no supply'
        return f'"{identity}" tells volts that are set, but no current limit: no supply that can be held within limits'

    def _measured(self, way: Way) -> tuple[str, str]:
        for volts, amps in MEASURED:
            if self.number(way.measured(volts)) is not None and self.number(way.measured(amps)) is not None:
                return way.measured(volts), way.measured(amps)
        identity = self.asking.line.identity
        raise Strange(f'"{identity}" has setpoints, but measures no volts and amps that could be asked for')

    def _is_switch(self, unit: str) -> bool:
        try:
            scpi.boolean(self.asking.ask(unit.replace("{n}", "1")) or "")
        except ValueError:
            return False
        return True

    def _mode(self, way: Way) -> tuple[Mode | None, str]:
        """Words tell by themselves; of a register only that it is there can be told."""
        for text in MODES:
            unit = way.ask(text.format(number=way.number))
            word = (self.asking.ask(unit.replace("{n}", "1")) or "").strip().strip('"').upper()
            if word in CC_WORDS + CV_WORDS + OFF_WORDS:
                return Mode(ask=unit, cc=CC_WORDS, cv=CV_WORDS), ""
        for unit in (f"STAT:QUES{way.number}:COND?{way.asked}", "STAT?"):
            if self.number(unit) is not None:
                return None, unit
        return None, ""

    def _latch(self, way: Way, header: str) -> Latch | None:
        if self.number(way.ask(header)) is None:
            return None
        switched = self._is_switch(way.ask(f"{header}:STAT"))
        told = self._is_switch(way.ask(f"{header}:TRIP"))
        return Latch(
            set=way.say(header, "{value}"),
            ask=way.ask(header),
            enabled=way.ask(f"{header}:STAT") if switched else "",
            enable=way.say(f"{header}:STAT", "ON") if switched else "",
            disable=way.say(f"{header}:STAT", "OFF") if switched else "",
            tripped=way.ask(f"{header}:TRIP") if told else "",
            clear=way.do(f"{header}:CLE"),
        )

    def _timer(self) -> None:
        """What feeds it no answer tells, and unfed it would end a run."""
        for header in TIMERS:
            if self.number(f"{header}:DEL?") is not None and self._is_switch(f"{header}:STAT?"):
                self.questions.append(
                    f"{header} is a timer of its own that can switch the output off. Does any message feed it, or a "
                    "word of its own? Until then it is not used."
                )
                return

    def _sense(self) -> Sense | None:
        for header, on, off in SENSES:
            reply = (self.asking.ask(f"{header}?") or "").strip().strip('"').upper()
            plain = on == "ON"
            if reply in ((on, off, "0", "1") if plain else (on, off)):
                words = {} if plain else {"on_words": (on,), "off_words": (off,)}
                return Sense(on=f"{header} {on}", off=f"{header} {off}", ask=f"{header}?", **words)
        return None

    def _array(self, dialect: Dialect) -> Array | None:
        """As that of SCPI, whose own questions are asked again where it is used."""
        if not dialect.link.compound or dialect.link.echo or dialect.errors.form != "scpi" or dialect.outputs.count > 1:
            return None
        array = shipped().array
        assert array is not None
        there = self.number(array.ask_interval) is not None and self.number(array.output_trigger) is None
        return array if there else None

    def terse(self, terse: Terse, count: int) -> Dialect:
        for unit in (terse.set_amps, terse.volts, terse.amps):
            if self.number(unit) is None:
                raise Strange(f'"{self.asking.line.identity}" answers {terse.set_volts} but not {unit}')
        output = terse.output if terse.output and self._is_switch(terse.output) else ""
        status = terse.status if terse.status and self.is_there(terse.status) else ""
        has_latch = bool(terse.over_volts[0]) and self.number(terse.over_volts[0]) is not None
        on, off = terse.switch_one if count == 1 else terse.switch
        dialect = Dialect(
            name=f"found by asking: {terse.name}",
            link=self.link(),
            outputs=Outputs(count=count),
            identify=Identify(identity="*IDN?", fields=fields_of(self.asking.line.identity)),
            program=Program(
                volts=terse.say_volts,
                amps=terse.say_amps,
                on=on,
                off=off,
                volts_digits=self._digits(terse.set_volts, fixed=True),
                amps_digits=self._digits(terse.set_amps, fixed=True),
            ),
            readback=Readback(
                volts=terse.volts,
                amps=terse.amps,
                set_volts=terse.set_volts,
                set_amps=terse.set_amps,
                output=output,
                window_s=_WINDOW_S,
                settle_s=0.05,
            ),
            over_volts=Latch(set=terse.over_volts[1], ask=terse.over_volts[0]) if has_latch else None,
            errors=self.asking.errors,
        )
        dialect = self.with_units(self.with_lengths(dialect))
        self.ask_the_user(dialect, status)
        self.untried_of(dialect)
        return check(dialect)

    def link(self) -> Link:
        link = self.asking.line.link
        return link if link.termination else msgspec.structs.replace(link, gap_s=max(link.gap_s, LEAST_GAP_S))

    def with_units(self, dialect: Dialect) -> Dialect:
        """Whether all, some or none of the answers in volts and amps had their unit."""
        back, asked = dialect.readback, dialect.identify
        units = [back.volts, back.amps, back.set_volts, back.set_amps, asked.volts_max, asked.amps_max]
        units += [latch.ask for latch in (dialect.over_volts, dialect.over_amps) if latch is not None]
        replies = [reply for unit in units if (reply := self.asking.heard(unit.replace("{n}", "1")))]
        had = {bool(self.asking.unit_of(reply)) for reply in replies}
        told: bool | Literal["some"] = "some" if len(had) > 1 else True in had
        return msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, units_in_replies=told))

    def _digits(self, unit: str, *, fixed: bool = False) -> Digits:
        """As its own read-back has them: setpoints are no finer than that; with zeros in front where are fixed."""
        reply = self.asking.ask(unit.replace("{n}", "1")) or ""
        before, _, after = scpi.bare(reply, self.asking.unit_of(reply)).partition(".")
        decimals = min(6, max(2, len(after))) if after.isdigit() else 4
        return Digits(before=len(before.lstrip("+-")) if fixed else 0, after=decimals)

    def with_lengths(self, dialect: Dialect) -> Dialect:
        if dialect.link.reply_ends:
            return dialect
        back = dialect.readback
        asked = {"volts": back.volts, "amps": back.amps, "set_volts": back.set_volts, "set_amps": back.set_amps}
        asked |= {"output": back.output, "mode": dialect.mode.ask if dialect.mode is not None else ""}
        lengths = {name: len(self.asking.ask(u.replace("{n}", "1")) or "") for name, u in asked.items() if u}
        return msgspec.structs.replace(dialect, reply_lengths=msgspec.convert(lengths, ReplyLengths))

    def ask_the_user(self, dialect: Dialect, register: str) -> None:
        if not (dialect.identify.volts_max and dialect.identify.amps_max) and dialect.ranges is None:
            self.questions.append("How many volts and amps can each output give at most? No question to it tells.")
        if not dialect.readback.output:
            where = (
                f"{register.replace('{n}', '1')} answers with bits: which of them says"
                if register
                else "How does it say"
            )
            self.questions.append(f"{where} that the output is on? Without that it is not used.")
        if dialect.mode is None and register:
            self.questions.append(
                f"{register.replace('{n}', '1')} answers with bits: which of them says that the current limit holds, "
                "and which that the volts do? Until then the program reckons it from the readings."
            )

    def untried_of(self, dialect: Dialect) -> None:
        program = dialect.program
        said = [program.amps, program.volts, program.both, program.on, program.off]
        for latch in (dialect.over_volts, dialect.over_amps):
            said += [] if latch is None else [latch.set, latch.enable, latch.disable, latch.clear]
        self.untried += [unit for unit in dict.fromkeys(said) if unit]


def fields_of(identity: str) -> int:
    """Of an identification, by commas."""
    return min(4, identity.count(",") + 1)
