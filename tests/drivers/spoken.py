"""An instrument that speaks whatever dialect it is given, on a line with all the habits that the dialect describes.

It takes {n} and the values apart itself, so that it shares nothing with the driver but the file. What it does not know,
or what comes within the gap, does nothing; outputs that nobody chose are there to be seen untouched.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from drivers.dialect import Dialect, Latch
from drivers.supply import SupplyTimeout

_VALUE = r"(\d+\.?\d*)"


@dataclass(slots=True)
class Protected:
    level: float = 1.0
    on: bool = False
    tripped: bool = False


@dataclass(slots=True)
class Output:
    volts: float = 0.0
    amps: float = 0.0
    on: bool = False
    four_wire: bool = False
    cc: bool = False
    over_volts: Protected = field(default_factory=Protected)
    over_amps: Protected = field(default_factory=Protected)


class Spoken:
    """`heard`: messages in order, also those that came too early; `queue`: its error queue.

    `has`: so many outputs, where the dialect allows for more; `tells_choice`: says which of them is chosen.
    """

    def __init__(
        self,
        dialect: Dialect,
        *,
        reply_s: float = 0.002,
        identity: str = "",
        has: int | None = None,
        tells_choice: bool = True,
    ) -> None:
        self.dialect = dialect
        self.tells_choice = tells_choice
        self.reply_s = reply_s
        self.identity = identity or ",".join(["Bench supply", "17", "2", "1.0"][: dialect.identify.fields])
        self.outputs = [Output() for _ in range(has or dialect.outputs.count)]
        self.chosen = 0
        self.now_s = 100.0
        self.quiet_from_s = 0.0
        self.too_early: list[str] = []
        self.heard: list[str] = []
        self.queue: list[int] = []
        self.timer_s, self.timer_on, self.fed_s = 1.0, False, 0.0
        self.sessions: list[SpokenSession] = []
        self._table = [pair for n in range(len(self.outputs)) for pair in self._units(n)]

    def open(self, timeout_s: float) -> "SpokenSession":
        self.sessions.append(SpokenSession(self, timeout_s))
        return self.sessions[-1]

    def wait(self, until_s: float) -> None:
        self.now_s = max(self.now_s, until_s)

    def hears(self, message: str) -> bytes:
        """What comes back for a message that has just arrived."""
        link = self.dialect.link
        self.heard.append(message)
        back = message + link.reply_ends if link.echo else ""
        if self.now_s < self.quiet_from_s - 1e-9:
            self.too_early.append(message)
            return back.encode("latin-1")
        units = message.split(";") if link.compound else [message]
        answers = [answer for unit in units for answer in self._answers(unit.removeprefix(":"))]
        self.now_s += self.reply_s
        self.quiet_from_s = self.now_s + link.gap_s
        return (back + (";".join(answers) + link.reply_ends if answers else "")).encode("latin-1")

    def _answers(self, unit: str) -> list[str]:
        for form, act in self._table:
            match = form.fullmatch(unit)
            if match is not None:
                answer = act(*(float(value) for value in match.groups()))
                return [] if answer is None else [answer]
        self.queue.append(-113)
        return []

    def _units(self, n: int) -> "list[tuple[re.Pattern[str], Callable[..., str | None]]]":
        dialect = self.dialect
        program, back, known, errors = dialect.program, dialect.readback, dialect.identify, dialect.errors
        volts, amps = self._said("V", program.volts_digits), self._said("A", program.amps_digits)
        found: list[tuple[str, Callable[..., str | None]]] = [
            (dialect.outputs.select, lambda: setattr(self, "chosen", n)),
            (program.volts, lambda v: setattr(self._at(n), "volts", v)),
            (program.amps, lambda a: setattr(self._at(n), "amps", a)),
            (program.both, lambda *both: self._set_both(self._at(n), both)),
            (program.on, lambda: setattr(self._at(n), "on", True)),
            (program.off, lambda: setattr(self._at(n), "on", False)),
            (back.volts, lambda: volts(self._at(n).volts * self._at(n).on)),
            (back.amps, lambda: amps(0.5 * self._at(n).amps * self._at(n).on)),
            (back.set_volts, lambda: volts(self._at(n).volts)),
            (back.set_amps, lambda: amps(self._at(n).amps)),
            (back.output, lambda: str(int(self._at(n).on))),
            (known.identity, lambda: self.identity),
            (known.volts_max, lambda: volts(32.0)),
            (known.amps_max, lambda: amps(3.1)),
            (errors.ask, self._next_error),
        ]
        header, _, word = dialect.outputs.select.partition(" ")
        if self.tells_choice and header:
            found.append((f"{header}?", lambda: word.replace("{n}", str(self.chosen + 1))))
        if dialect.condition is not None:
            bits = dialect.condition
            found.append((back.condition, lambda: str(1 << (bits.cc if self._at(n).cc else bits.cv))))
        if dialect.mode is not None:
            words = dialect.mode
            found.append((words.ask, lambda: (words.cc if self._at(n).cc else words.cv)[0]))
        if dialect.status is not None:
            found.append((dialect.status.ask, self._status))
        if dialect.sense is not None:
            found += self._sense_units(n)
        if dialect.watchdog is not None:
            found += self._timer_units()
        for latch, name, said in ((dialect.over_volts, "over_volts", volts), (dialect.over_amps, "over_amps", amps)):
            if latch is not None:
                found += self._latch_units(latch, said, lambda name=name: getattr(self._at(n), name))  # type: ignore[misc]
        return [(_form(unit, n + 1), act) for unit, act in found if unit]

    def _latch_units(
        self, latch: Latch, said: Callable[[float], str], at: Callable[[], Protected]
    ) -> list[tuple[str, Callable[..., str | None]]]:
        return [
            (latch.set, lambda level: setattr(at(), "level", level)),
            (latch.ask, lambda: said(at().level)),
            (latch.enable, lambda: setattr(at(), "on", True)),
            (latch.disable, lambda: setattr(at(), "on", False)),
            (latch.enabled, lambda: str(int(at().on))),
            (latch.tripped, lambda: str(int(at().tripped))),
            (latch.clear, lambda: setattr(at(), "tripped", False)),
        ]

    def _sense_units(self, n: int) -> list[tuple[str, Callable[..., str | None]]]:
        sense = self.dialect.sense
        assert sense is not None
        words = (sense.off_words or ("0",), sense.on_words or ("1",))
        return [
            (sense.on, lambda: setattr(self._at(n), "four_wire", True)),
            (sense.off, lambda: setattr(self._at(n), "four_wire", False)),
            (sense.ask, lambda: words[self._at(n).four_wire][0]),
        ]

    def _timer_units(self) -> list[tuple[str, Callable[..., str | None]]]:
        timer = self.dialect.watchdog
        assert timer is not None
        return [
            (timer.set, lambda silence_s: setattr(self, "timer_s", silence_s)),
            (timer.ask, lambda: f"{self.timer_s:g}"),
            (timer.enable, lambda: setattr(self, "timer_on", True)),
            (timer.disable, lambda: setattr(self, "timer_on", False)),
            (timer.enabled, lambda: str(int(self.timer_on))),
            (timer.feed, lambda: setattr(self, "fed_s", self.now_s)),
        ]

    def _at(self, n: int) -> Output:
        """Units that name an output mean that one; others the one that was chosen."""
        return self.outputs[self.chosen if self.dialect.outputs.select else n]

    def _set_both(self, output: Output, both: tuple[float, float]) -> None:
        volts_first = self.dialect.program.both.index("{volts}") < self.dialect.program.both.index("{amps}")
        output.volts, output.amps = both if volts_first else (both[1], both[0])

    def _said(self, unit: str, digits: object) -> Callable[[float], str]:
        before, after = getattr(digits, "before", 0), getattr(digits, "after", 3)
        width = before + after + 1 if before else 0
        return lambda value: f"{value:0{width}.{after}f}" + unit * bool(self.dialect.link.units_in_replies)

    def _status(self) -> str:
        status = self.dialect.status
        assert status is not None
        bits = 0
        for n, output in enumerate(self.outputs):
            for places, is_set in ((status.output, output.on), (status.cc, output.cc), (status.cv, not output.cc)):
                bits |= (1 << places[n]) * is_set if places else 0
        return str(bits) if self.dialect.link.reply_ends else chr(bits)

    def _next_error(self) -> str:
        code = self.queue.pop(0) if self.queue else 0
        return str(code) if self.dialect.errors.form == "number" else f'{code},"what it says"'


class SpokenSession:
    resource = "SPOKEN::17"

    def __init__(self, bench: Spoken, timeout_s: float) -> None:
        self.bench, self.timeout_s = bench, timeout_s
        self.closed = False
        self._waiting = b""

    def set_timeout(self, timeout_s: float) -> None:
        self.timeout_s = timeout_s

    def write(self, message: str) -> None:
        assert not self.closed
        self._waiting += self.bench.hears(message)

    def query(self, message: str) -> str:
        self.write(message)
        return self.read()

    def read(self) -> str:
        ends = self.bench.dialect.link.reply_ends.encode()
        assert ends, "lines of a line that nothing ends"
        if ends not in self._waiting:
            raise self._silence()
        line, _, self._waiting = self._waiting.partition(ends)
        return line.decode("latin-1")

    def read_exactly(self, count: int) -> bytes:
        if len(self._waiting) < count:
            raise self._silence()
        taken, self._waiting = self._waiting[:count], self._waiting[count:]
        return taken

    def read_until_quiet(self, quiet_s: float) -> bytes:
        if not self._waiting:
            raise self._silence()
        self.bench.now_s += quiet_s
        taken, self._waiting = self._waiting, b""
        return taken

    def close(self) -> None:
        self.closed = True

    def _silence(self) -> SupplyTimeout:
        self.bench.now_s += self.timeout_s
        return SupplyTimeout(self.resource, "no reply in time")


def _form(unit: str, number: int) -> re.Pattern[str]:
    text = re.escape(unit.removeprefix(":").replace("{n}", str(number)))
    for name in ("value", "volts", "amps"):
        text = text.replace(rf"\{{{name}\}}", _VALUE)
    return re.compile(text, re.ASCII)
