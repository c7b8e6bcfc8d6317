"""What each unit of a dialect does to an output, and what it is answered."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from drivers.dialect import Dialect, Digits, Latch
from drivers.simulated import array_words
from drivers.simulated.array import SampleArray
from drivers.simulated.commands import shown, shown_in
from drivers.simulated.outlet import NEVER_S, Outlet
from drivers.simulated.quirks import Quirks
from drivers.simulated.status import Refusal
from drivers.simulated.supply_model import Trip

if TYPE_CHECKING:
    from drivers.simulated.speaks import Speaker

_LONGEST_TIMER_S = 3600.0


@dataclass(frozen=True, slots=True)
class Act:
    """`do` gets the output, and the numbers that the unit holds; `digits`: the form of a number in it."""

    do: Callable[..., str | None]
    asks: bool
    digits: Digits | None = None

    def swapped(self) -> "Act":
        """The same where the second number comes first."""
        return replace(self, do=lambda outlet, second, first: self.do(outlet, first, second))


class Vocabulary:
    """Rows from unit to act, and what belongs to the instrument as a whole: its timer, its sensing, its meter's use."""

    def __init__(
        self, speaker: "Speaker", dialect: Dialect, quirks: Quirks, name: str, array: SampleArray | None
    ) -> None:
        self.measured = False
        self._array = array
        self._speaker = speaker
        self._dialect = dialect
        self._identity = f"Harbour Workshop,Simulated bench supply,{name},1.0"
        if dialect.identify.fields == 1:
            self._identity = f"BENCH SUPPLY {name.upper()} V1.0"
        self._on_word, self._off_word = ("ON", "OFF") if quirks.lax and dialect.link.reply_ends else ("1", "0")
        self._timer_s, self._timer_on = 1.0, False
        if quirks.watchdog_s is not None:
            self._timer_s, self._timer_on = quirks.watchdog_s, True
        self._heard_s = 0.0
        self._four_wire = False
        units = ("V", "A") if dialect.link.units_in_replies else ("", "")
        self._volt, self._amp = units
        for outlet in speaker.outlets:
            outlet.steps = (
                max(outlet.data.step_v, _last_digit(self._volts(outlet, 0.0, "set_volts"), self._volt)),
                max(outlet.data.step_a, _last_digit(self._amps(outlet, 0.0, "set_amps"), self._amp)),
            )

    def rows(self) -> Iterator[tuple[str, Act]]:
        """Every unit that there is; of a unit that is there twice the first counts."""
        dialect, select = self._dialect, self._dialect.outputs.select
        yield dialect.identify.identity, Act(lambda _: self._identity, asks=True)
        yield dialect.errors.ask, Act(lambda _: self._next_error(), asks=True)
        for number in range(1, dialect.outputs.count + 1) if select else ():
            yield select.replace("{n}", str(number)), Act(self._choosing(number), asks=False)
        if select:
            header, _, word = select.partition(" ")
            yield f"{header}?", Act(lambda _: word.replace("{n}", str(self._speaker.chosen)), asks=True)
        yield from self._ranges()
        yield from self._program()
        yield from self._readback()
        yield from self._state()
        if dialect.over_volts is not None:
            yield from self._latch(dialect.over_volts, Trip.OVER_VOLTS)
        if dialect.over_amps is not None:
            yield from self._latch(dialect.over_amps, Trip.OVER_AMPS)
        yield from self._whole_instrument()
        if dialect.array is not None and self._array is not None:
            for unit, do, asks in array_words.rows(dialect.array, self._array):
                yield unit, Act(do, asks=asks)

    def heard(self, message: str) -> None:
        """Any message feeds the timer, unless it wants a word of its own."""
        if self._dialect.watchdog is None or not self._dialect.watchdog.feed:
            self._heard_s = self._speaker.now_s

    @property
    def watchdog_due_s(self) -> float:
        running = self._timer_on and any(outlet.told_on for outlet in self._speaker.outlets)
        return self._heard_s + self._timer_s if running else NEVER_S

    def bark(self, at_s: float) -> None:
        """The timer switches everything off, where it is time."""
        if self.watchdog_due_s > at_s:
            return
        for outlet in self._speaker.outlets:
            outlet.switch(False, at_s)

    def _ranges(self) -> Iterator[tuple[str, Act]]:
        asked = self._dialect.identify
        yield asked.volts_max, Act(lambda outlet: self._volts(outlet, outlet.data.volts_max), asks=True)
        yield asked.amps_max, Act(lambda outlet: self._amps(outlet, outlet.data.amps_max), asks=True)

    def _program(self) -> Iterator[tuple[str, Act]]:
        program, switch = self._dialect.program, self._speaker.switch
        yield program.volts, Act(Outlet.set_volts, asks=False, digits=program.volts_digits)
        yield program.amps, Act(Outlet.set_amps, asks=False, digits=program.amps_digits)
        yield program.both, Act(_set_both, asks=False)
        yield program.on, Act(lambda outlet: switch(outlet, True), asks=False)
        yield program.off, Act(lambda outlet: switch(outlet, False), asks=False)

    def _readback(self) -> Iterator[tuple[str, Act]]:
        back = self._dialect.readback
        yield back.volts, Act(lambda outlet: self._volts(outlet, self._measure(outlet)[0], "volts"), asks=True)
        yield back.amps, Act(lambda outlet: self._amps(outlet, self._measure(outlet)[1], "amps"), asks=True)
        yield back.set_volts, Act(lambda outlet: self._volts(outlet, outlet.output.set_v, "set_volts"), asks=True)
        yield back.set_amps, Act(lambda outlet: self._amps(outlet, outlet.output.limit_a, "set_amps"), asks=True)
        yield back.output, Act(lambda outlet: self._bit(outlet.told_on), asks=True)

    def _state(self) -> Iterator[tuple[str, Act]]:
        dialect = self._dialect
        condition, mode, status = dialect.condition, dialect.mode, dialect.status
        lengths = dialect.reply_lengths
        if condition is not None:
            cc, cv = 1 << condition.cc, 1 << condition.cv
            width = 0 if lengths is None else lengths.condition
            yield (
                dialect.readback.condition,
                Act(lambda outlet: f"{_bits_of(outlet, cc, cv):0{width}d}", asks=True),
            )
        if mode is not None:
            cc_word, cv_word = mode.cc[0], mode.cv[0]
            off_word = cv_word if lengths is not None else "OFF"
            yield mode.ask, Act(lambda outlet: _word_of(outlet, cc_word, cv_word, off_word), asks=True)
        if status is not None:
            yield status.ask, Act(lambda _: self._status_byte(), asks=True)

    def _latch(self, latch: Latch, which: Trip) -> Iterator[tuple[str, Act]]:
        volts = which is Trip.OVER_VOLTS
        set_level = Outlet.set_over_volts if volts else Outlet.set_over_amps
        digits = self._dialect.program.volts_digits if volts else self._dialect.program.amps_digits
        state = "over_volts_on" if volts else "over_amps_on"

        def level(outlet: Outlet) -> str:
            stage = outlet.output
            return self._volts(outlet, stage.over_volts) if volts else self._amps(outlet, stage.over_amps)

        yield latch.set, Act(set_level, asks=False, digits=digits)
        yield latch.ask, Act(level, asks=True)
        yield latch.enabled, Act(lambda outlet: self._bit(getattr(outlet.output, state)), asks=True)
        yield latch.enable, Act(lambda outlet: setattr(outlet.output, state, True), asks=False)
        yield latch.disable, Act(lambda outlet: setattr(outlet.output, state, False), asks=False)
        yield latch.tripped, Act(lambda outlet: self._bit(outlet.tripped is which), asks=True)
        yield latch.clear, Act(lambda outlet: outlet.output.clear(), asks=False)

    def _whole_instrument(self) -> Iterator[tuple[str, Act]]:
        timer, sense = self._dialect.watchdog, self._dialect.sense
        if timer is not None:
            yield timer.set, Act(lambda _, seconds: self._set_timer(seconds), asks=False)
            yield timer.ask, Act(lambda _: f"{self._timer_s:.0f}", asks=True)
            yield timer.enable, Act(lambda _: self._switch_timer(True), asks=False)
            yield timer.disable, Act(lambda _: self._switch_timer(False), asks=False)
            yield timer.enabled, Act(lambda _: self._bit(self._timer_on), asks=True)
            yield timer.feed, Act(lambda _: self._feed(), asks=False)
        if sense is not None:
            on_word, off_word = (sense.on_words or ("1",))[0], (sense.off_words or ("0",))[0]
            yield sense.on, Act(lambda _: self._set_sense(True), asks=False)
            yield sense.off, Act(lambda _: self._set_sense(False), asks=False)
            yield sense.ask, Act(lambda _: on_word if self._four_wire else off_word, asks=True)

    def _choosing(self, number: int) -> Callable[[Outlet], None]:
        return lambda _: self._speaker.choose(number)

    def _next_error(self) -> str:
        entry = self._speaker.status.next_error()
        return entry if self._dialect.errors.form == "scpi" else entry.partition(",")[0]

    def _measure(self, outlet: Outlet) -> tuple[float, float]:
        self.measured = True
        return outlet.acquire()

    def _bit(self, state: bool) -> str:
        return self._on_word if state else self._off_word

    def _volts(self, outlet: Outlet, value: float, name: str = "") -> str:
        return self._figure(value, outlet.data.step_v, outlet.data.volts_max, name) + self._volt * self._has_unit(name)

    def _amps(self, outlet: Outlet, value: float, name: str = "") -> str:
        return self._figure(value, outlet.data.step_a, outlet.data.amps_max, name) + self._amp * self._has_unit(name)

    def _has_unit(self, name: str) -> bool:
        """Where some have one: what was set."""
        return self._dialect.link.units_in_replies != "some" or name.startswith("set_")

    def _figure(self, value: float, step: float, most: float, name: str) -> str:
        lengths = self._dialect.reply_lengths
        length = None if lengths is None else getattr(lengths, name, lengths.volts)
        return shown(value, step) if length is None else shown_in(value, 1.1 * most, length - len(self._volt))

    def _status_byte(self) -> str:
        status = self._dialect.status
        assert status is not None
        found = 0
        for index, outlet in enumerate(self._speaker.outlets):
            holds = outlet.holds_amps
            told = ((status.output, outlet.told_on), (status.cc, holds), (status.cv, outlet.output.on and not holds))
            found |= sum(1 << bits[index] for bits, is_set in told if bits and is_set)
        return str(found) if self._dialect.link.reply_ends else chr(found)

    def _set_timer(self, seconds: float) -> None:
        if not 1.0 <= seconds <= _LONGEST_TIMER_S:
            raise Refusal(-222, f"{seconds:g}")
        self._timer_s = float(round(seconds))

    def _switch_timer(self, on: bool) -> None:
        self._timer_on = on
        self._heard_s = self._speaker.now_s

    def _feed(self) -> None:
        self._heard_s = self._speaker.now_s

    def _set_sense(self, four_wire: bool) -> None:
        self._four_wire = four_wire


def _last_digit(reply: str, unit: str) -> float:
    """What the last digit of a figure stands for: setpoints are no finer than their read-back."""
    return float(10.0 ** -len(reply.removesuffix(unit).partition(".")[2]))


def _set_both(outlet: Outlet, volts: float, amps: float) -> None:
    """Neither, where one of them is out of range."""
    before = outlet.output.limit_a
    outlet.set_amps(amps)
    try:
        outlet.set_volts(volts)
    except Refusal:
        outlet.output.change(limit_a=before)
        raise


def _bits_of(outlet: Outlet, cc: int, cv: int) -> int:
    if not outlet.output.on:
        return 0
    return cc if outlet.holds_amps else cv


def _word_of(outlet: Outlet, cc: str, cv: str, off: str) -> str:
    if not outlet.output.on:
        return off
    return cc if outlet.holds_amps else cv
