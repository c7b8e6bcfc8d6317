"""Which dialect a supply speaks, found by asking: nothing is switched, set, cleared or reset.

What is sent is questions, and where outputs are chosen by a message of its own that one, which is put back: both are
housekeeping of a session. What no question can tell is asked of the user, not guessed: see `Found.questions`; and what
follows from a question without having been sent is listed: see `Found.untried`.
"""

import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import msgspec

from drivers import scpi
from drivers.dialect import (
    Array,
    Dialect,
    DialectError,
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
    for_output,
    shipped,
    shipped_names,
)
from drivers.finding_asking import Answered, Asking, Open, OutOfTime, Strange
from drivers.finding_parts import (
    CC_WORDS,
    CV_WORDS,
    FAR_OUTPUT,
    LEAST_GAP_S,
    MEASURED,
    MODES,
    NUMBERED,
    OUTPUTS_LIKELY,
    PLAIN,
    SELECTS,
    SENSES,
    SWITCHES,
    TERSE,
    TIMERS,
    Terse,
    Way,
)
from drivers.foreign import inert
from drivers.identifying import gaps_of
from drivers.supply import UNUSABLE, SupplyError

WITHIN_S = 7.0
"""For the asking; opening the supply in the dialect that was found takes more, 10 s together."""

_WINDOW_S, _SETTLE_S = 0.02, 0.012
"""Of a supply that nobody measured: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What came of it. `dialect`: None where there is none, then `why` says so in plain words.

    `questions`: what no question to the instrument tells. `untried`: what follows from its answers but was not sent.
    `remarks`: what else is to be known. `answered`: every question with its answer, in order; `sent`: every message.
    """

    identity: str = ""
    dialect: Dialect | None = None
    why: str = ""
    questions: tuple[str, ...] = ()
    untried: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    answered: tuple[Answered, ...] = ()
    sent: tuple[str, ...] = ()
    latency_s: float | None = None
    took_s: float = 0.0

    @property
    def usable(self) -> bool:
        """Whether runs may be made with it."""
        return self.dialect is not None and not UNUSABLE & gaps_of(self.dialect)


def find_dialect(
    open_session: Open,
    now: Callable[[], float],
    *,
    wait: Callable[[float], None] | None = None,
    within_s: float = WITHIN_S,
) -> Found:
    """Never raises: what is no supply, or not there, is a Found without a dialect."""
    began_s = now()
    sleep = wait or (lambda until_s: time.sleep(max(0.0, until_s - now())))
    asking = Asking(open_session, now, sleep, began_s + within_s)
    finder = _Finder(asking)
    dialect, why = None, ""
    try:
        asking.meet()
        dialect = finder.find()
        dialect = finder.with_clients(dialect)
        asking.drain()
    except Strange as strange:
        why = str(strange)
    except OutOfTime:
        why = f'"{asking.identity}" answers too slowly: {within_s:g} s were not enough to ask what matters'
    except SupplyError as error:
        why = inert(error.what)
    except DialectError as error:
        why = f'what "{asking.identity}" answers makes no whole: {error}'
    finally:
        asking.close()
    return Found(
        identity=asking.identity,
        dialect=dialect,
        why=why,
        questions=tuple(finder.questions) if dialect is not None else (),
        untried=tuple(finder.untried) if dialect is not None else (),
        remarks=tuple(finder.remarks),
        answered=tuple(asking.answered),
        sent=tuple(asking.sent),
        latency_s=asking.latency_s if asking.identity_s else None,
        took_s=now() - began_s,
    )


class _Finder:
    def __init__(self, asking: Asking) -> None:
        self._asking = asking
        self.questions: list[str] = []
        self.untried: list[str] = []
        self.remarks: list[str] = []

    def find(self) -> Dialect:
        """Raises Strange, OutOfTime, DialectError, SupplyError."""
        for name in shipped_names():
            if (fit := self._fitted(shipped(name), whole=True)) is not None:
                return fit
        for terse in TERSE:
            if self._is_there(terse.set_volts) and not any(self._is_there(f"{one}VOLT?") for one in PLAIN.sources):
                return self._terse(terse)
        found = self._way()
        if found is None:
            for name in shipped_names():
                if (fit := self._fitted(shipped(name), whole=False)) is not None:
                    return fit
            raise Strange(self._no_supply())
        way, source = found
        count, select, way, source = self._outputs(way, source)
        return self._assembled(way, source, count, select)

    def with_clients(self, dialect: Dialect) -> Dialect:
        """Whether another program could speak to it at the same time, which is looked at last."""
        try:
            one_client = not self._asking.second_client_is_served()
        except OutOfTime:
            return dialect
        return msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, one_client=one_client))

    def _fitted(self, dialect: Dialect, *, whole: bool) -> Dialect | None:
        """One that comes with the program, in this line's own manner: where each of its questions is answered, or, not
        `whole`, without the parts that are not. What a register's bits mean no answer tells: so not with such a
        register, unless the supply says that it keeps to the standard which says what they mean."""
        one, asking = for_output(dialect, 1), self._asking
        if dialect.status is not None or bool(dialect.link.reply_ends) != bool(asking.link.reply_ends):
            return None
        if not all(self._is_there(unit) for unit in _readings(one)):
            return None
        if whole and not (one.errors.form == asking.errors.form and all(self._is_there(unit) for unit in _others(one))):
            return None
        if dialect.condition is not None and not self._keeps_to_the_standard():
            return None
        count = self._count_of(dialect)
        if dialect.outputs.count == 1 and self._outputs(PLAIN, "")[0] > 1:
            return None
        link = self._link(dialect.readback.set_volts)
        fit = msgspec.structs.replace(
            dialect,
            link=link,
            outputs=msgspec.structs.replace(dialect.outputs, count=count),
            identify=msgspec.structs.replace(dialect.identify, fields=_fields(asking.identity)),
            array=dialect.array if link.compound and not link.echo else None,
            errors=asking.errors,
            sense=dialect.sense if one.sense is not None and self._is_there(one.sense.ask) else None,
            over_volts=self._kept(dialect.over_volts),
            over_amps=self._kept(dialect.over_amps),
        )
        fit = self._with_lengths(fit)
        self._ask_the_user(fit, "")
        self._untried_of(fit)
        return check(fit)

    def _keeps_to_the_standard(self) -> bool:
        """Source: SCPI-1999, SYSTem:VERSion answers its year and a revision."""
        version = self._number("SYST:VERS?")
        return version is not None and version >= 1990

    def _kept(self, latch: Latch | None) -> Latch | None:
        return latch if latch is not None and self._is_there(latch.ask) else None

    def _count_of(self, dialect: Dialect) -> int:
        if dialect.outputs.select:
            query = dialect.outputs.select.partition(" ")[0]
            return max(1, self._chosen_count(query, dialect.outputs.select))
        return self._count(dialect.readback.set_volts)

    def _is_there(self, unit: str) -> bool:
        return self._asking.ask(unit.replace("{n}", "1")) is not None

    def _number(self, unit: str, output: str = "1") -> float | None:
        return self._asking.number(unit.replace("{n}", output))

    def _way(self) -> tuple[Way, str] | None:
        """How its setpoints are asked for, None where they are not."""
        for way in (PLAIN, *NUMBERED):
            for source in way.sources:
                if self._number(way.ask(f"{source}VOLT")) is not None:
                    return way, source
        return None

    def _no_supply(self) -> str:
        identity = self._asking.identity
        if any(self._number(f"MEAS:{header}?") is not None for pair in MEASURED for header in pair):
            return f'"{identity}" measures, but has no setpoints that could be asked for: a meter, no supply'
        return f'"{identity}" answers none of the questions for setpoints that supplies answer'

    def _outputs(self, way: Way, source: str) -> tuple[int, str, Way, str]:
        """How many there are and how one is chosen."""
        if way is not PLAIN:
            return self._count(way.ask(f"{source}VOLT")), "", way, source
        for query, select in SELECTS:
            count = self._chosen_count(query, select)
            if count > 1:
                return count, select, PLAIN, source
        for other in NUMBERED:
            for before in other.sources:
                unit = other.ask(f"{before}VOLT")
                if self._number(unit, "2") is not None and self._number(unit, FAR_OUTPUT) is None:
                    return self._count(unit), "", other, before
        return 1, "", PLAIN, source

    def _count(self, unit: str) -> int:
        count = 1
        if self._number(unit, FAR_OUTPUT) is not None:
            return count  # it does not look at the number
        while count < OUTPUTS_LIKELY and self._number(unit, str(count + 1)) is not None:
            count += 1
        return count

    def _chosen_count(self, query: str, select: str) -> int:
        """Each is chosen once, and then the one that was before."""
        asking = self._asking
        found = asking.ask(f"{query}?")
        word = select.partition(" ")[2]
        number = "" if found is None else "".join(c for c in found if c.isdigit())
        if found is None or not number or found.strip().upper() != word.replace("{n}", number):
            return 0
        count = int(number)
        while count < OUTPUTS_LIKELY:
            answer = asking.chosen_after(select.replace("{n}", str(count + 1)), f"{query}?")
            if answer is None or answer.strip().upper() != word.replace("{n}", str(count + 1)):
                break
            count += 1
        asking.chosen_after(select.replace("{n}", number), f"{query}?")
        return count

    def _assembled(self, way: Way, source: str, count: int, select: str) -> Dialect:
        asking = self._asking
        volts, amps = f"{source}VOLT", f"{source}CURR"
        if self._number(way.ask(amps)) is None:
            raise Strange(self._no_limit())
        measured = self._measured(way)
        asking.try_compound(way.ask(volts).replace("{n}", "1"), way.ask(amps).replace("{n}", "1"))
        switch = next((one for text in SWITCHES if self._is_switch(way.ask(one := text.format(number=way.number)))), "")
        mode, condition = self._mode(way)
        ranges = [way.ask_most(header) for header in (volts, amps)]
        ranges = [unit if self._number(unit) is not None else "" for unit in ranges]
        on_off = switch or f"OUTP{way.number}"
        dialect = Dialect(
            name=f"found by asking: {way.name if not select else select.partition(' ')[0]}",
            link=self._link(way.ask(volts)),
            outputs=Outputs(count=count, select=select),
            identify=Identify(
                identity="*IDN?", fields=_fields(asking.identity), volts_max=ranges[0], amps_max=ranges[1]
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
            over_volts=self._latch(way, f"{volts}:PROT"),
            over_amps=self._latch(way, f"{amps}:PROT"),
            errors=asking.errors,
        )
        dialect = self._with_lengths(self._with_extras(dialect))
        self._ask_the_user(dialect, condition)
        self._untried_of(dialect)
        return check(dialect)

    def _with_extras(self, dialect: Dialect) -> Dialect:
        """What supplies seldom have, asked for last: where time runs out it is left out."""
        parts: dict[str, msgspec.Struct | None] = {}
        try:
            self._timer()
            parts["sense"] = self._sense()
            parts["array"] = self._array(dialect)
        except OutOfTime:
            self.remarks.append(
                "It answers slowly: a timer, four-wire sensing or an array of its own were not asked for."
            )
        return msgspec.structs.replace(dialect, **parts)

    def _no_limit(self) -> str:
        identity = self._asking.identity
        if self._number("FREQ?") is not None:
            return f'"{identity}" has a frequency and no current limit: a generator, no supply'
        return f'"{identity}" tells volts that are set, but no current limit: no supply that can be held within limits'

    def _measured(self, way: Way) -> tuple[str, str]:
        for volts, amps in MEASURED:
            if self._number(way.measured(volts)) is not None and self._number(way.measured(amps)) is not None:
                return way.measured(volts), way.measured(amps)
        raise Strange(
            f'"{self._asking.identity}" has setpoints, but measures no volts and amps that could be asked for'
        )

    def _is_switch(self, unit: str) -> bool:
        try:
            scpi.boolean(self._asking.ask(unit.replace("{n}", "1")) or "")
        except ValueError:
            return False
        return True

    def _mode(self, way: Way) -> tuple[Mode | None, str]:
        """Words tell by themselves; of a register only that it is there can be told."""
        for text in MODES:
            unit = way.ask(text.format(number=way.number))
            word = (self._asking.ask(unit.replace("{n}", "1")) or "").strip().strip('"').upper()
            if word and word.replace("_", "").isalpha():
                return Mode(ask=unit, cc=CC_WORDS, cv=CV_WORDS), ""
        for unit in (f"STAT:QUES{way.number}:COND?{way.asked}", "STAT?"):
            if self._number(unit) is not None:
                return None, unit
        return None, ""

    def _latch(self, way: Way, header: str) -> Latch | None:
        if self._number(way.ask(header)) is None:
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
            if self._number(f"{header}:DEL?") is not None and self._is_switch(f"{header}:STAT?"):
                self.questions.append(
                    f"{header} is a timer of its own that can switch the output off. Does any message feed it, or a "
                    "word of its own? Until then it is not used."
                )
                return

    def _sense(self) -> Sense | None:
        for header, on, off in SENSES:
            reply = (self._asking.ask(f"{header}?") or "").strip().strip('"').upper()
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
        there = self._number(array.ask_interval) is not None and self._number(array.output_trigger) is None
        return array if there else None

    def _terse(self, terse: Terse) -> Dialect:
        count = self._count(terse.set_volts)
        for unit in (terse.set_amps, terse.volts, terse.amps):
            if self._number(unit) is None:
                raise Strange(f'"{self._asking.identity}" answers {terse.set_volts} but not {unit}')
        output = terse.output if terse.output and self._is_switch(terse.output) else ""
        status = terse.status if terse.status and self._is_there(terse.status) else ""
        has_latch = bool(terse.over_volts[0]) and self._number(terse.over_volts[0]) is not None
        on, off = terse.switch_one if count == 1 else terse.switch
        dialect = Dialect(
            name=f"found by asking: {terse.name}",
            link=self._link(terse.set_volts),
            outputs=Outputs(count=count),
            identify=Identify(identity="*IDN?", fields=_fields(self._asking.identity)),
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
            errors=self._asking.errors,
        )
        dialect = self._with_lengths(dialect)
        self._ask_the_user(dialect, status)
        self._untried_of(dialect)
        return check(dialect)

    def _link(self, unit: str) -> Link:
        link = self._asking.link
        reply = self._asking.ask(unit.replace("{n}", "1")) or ""
        if not link.termination:
            link = msgspec.structs.replace(link, gap_s=max(link.gap_s, LEAST_GAP_S))
        return msgspec.structs.replace(link, units_in_replies=bool(self._asking.unit_of(reply)))

    def _digits(self, unit: str, *, fixed: bool = False) -> Digits:
        """As its own read-back has them: setpoints are no finer than that; with zeros in front where are fixed."""
        reply = self._asking.ask(unit.replace("{n}", "1")) or ""
        before, _, after = scpi.bare(reply, self._asking.unit_of(reply)).partition(".")
        decimals = min(6, max(2, len(after))) if after.isdigit() else 4
        return Digits(before=len(before.lstrip("+-")) if fixed else 0, after=decimals)

    def _with_lengths(self, dialect: Dialect) -> Dialect:
        if dialect.link.reply_ends:
            return dialect
        back = dialect.readback
        asked = {"volts": back.volts, "amps": back.amps, "set_volts": back.set_volts, "set_amps": back.set_amps}
        asked |= {"output": back.output, "mode": dialect.mode.ask if dialect.mode is not None else ""}
        lengths = {name: len(self._asking.ask(u.replace("{n}", "1")) or "") for name, u in asked.items() if u}
        return msgspec.structs.replace(dialect, reply_lengths=msgspec.convert(lengths, ReplyLengths))

    def _ask_the_user(self, dialect: Dialect, register: str) -> None:
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

    def _untried_of(self, dialect: Dialect) -> None:
        program = dialect.program
        said = [program.amps, program.volts, program.both, program.on, program.off]
        for latch in (dialect.over_volts, dialect.over_amps):
            said += [] if latch is None else [latch.set, latch.enable, latch.disable, latch.clear]
        self.untried += [unit for unit in dict.fromkeys(said) if unit]


def _readings(one: Dialect) -> Iterator[str]:
    """The questions of a reading, of a dialect for a single output."""
    back = one.readback
    units = [back.set_volts, back.set_amps, back.volts, back.amps, back.output, back.condition]
    units += [one.mode.ask if one.mode is not None else "", one.status.ask if one.status is not None else ""]
    yield from (unit for unit in units if unit)


def _others(one: Dialect) -> Iterator[str]:
    """Further ones; those of timer, sensing and array are asked again where these are used."""
    units = [one.identify.volts_max, one.identify.amps_max]
    for latch in (one.over_volts, one.over_amps):
        units += [] if latch is None else [latch.ask, latch.enabled, latch.tripped]
    yield from (unit for unit in units if unit)


def _fields(identity: str) -> int:
    return min(4, identity.count(",") + 1)
