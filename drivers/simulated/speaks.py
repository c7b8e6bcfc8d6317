"""An instrument that speaks any dialect: its units, and nothing else, on the same output stage, meter and status.

What it does not know is refused in the manner of its kind: with an entry in its error queue where it has one, in
silence where it has none. The strict SCPI instrument is drivers/simulated/instrument.py.
"""

import re
from collections.abc import Callable, Sequence
from typing import TypeAlias

from drivers.dialect import Dialect, Digits
from drivers.simulated.array import SampleArray
from drivers.simulated.commands import common_commands
from drivers.simulated.instrument import MEASURE_REPLY_S, OTHER_REPLY_S, VERSION
from drivers.simulated.outlet import Outlet
from drivers.simulated.quirks import Quirks
from drivers.simulated.status import Refusal, Status
from drivers.simulated.vocabulary import Act, Vocabulary
from drivers.simulated.wire import Manner

_Reach: TypeAlias = Callable[[], Sequence[Outlet]]
_VALUE = re.compile(r"\\\{(value|volts|amps)\\\}")
_ANY_NUMBER = r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[Ee][+-]?\d+)?)"


class Speaker:
    """Executes program messages on its outlets. `reply_s` is every reply's latency, None for the usual two.

    `dialect` describes the instrument without its quirks; `spoken` with them. `now` is the model's time in s.
    """

    def __init__(
        self,
        dialect: Dialect,
        outlets: Sequence[Outlet],
        quirks: Quirks,
        name: str,
        now: Callable[[], float],
        array: SampleArray | None = None,
    ) -> None:
        self.spoken = spoken = quirks.described(dialect)
        link = spoken.link
        self.manner = Manner(
            termination=link.termination,
            reply_ends="\r\n" if quirks.crlf and link.reply_ends else link.reply_ends,
            echo=link.echo,
            gap_s=link.gap_s,
            one_client=link.one_client,
        )
        self.status = Status()
        self.reply_s = quirks.reply_s
        self.offs_to_ignore = outlets[0].data.ignore_off
        self._outlets = outlets
        self._lax, self._compound = quirks.lax, link.compound
        self._now = now
        self._chosen = 0
        self._answers: list[str] = []
        self._pending: str | None = None
        self._is_scpi = spoken.errors.form == "scpi"
        self._vocabulary = Vocabulary(self, spoken, quirks, name, array)
        self._exact: dict[str, tuple[Act, _Reach]] = {}
        self._patterns: list[tuple[re.Pattern[str], Act, _Reach]] = []
        self._common = self._common_commands(f"Harbour Workshop,Simulated bench supply,{name},{VERSION}")
        for unit, act in self._vocabulary.rows():
            self._learn(unit, act)

    def write(self, message: str) -> float:
        """Takes one program message, terminator removed. Returns the seconds until its reply, if any, may leave."""
        self._vocabulary.heard(message)
        self._vocabulary.measured = False
        self._answers, self._pending = [], None
        for unit in self._units(message):
            try:
                answer = self._execute(unit)
            except Refusal as refusal:
                self.status.record(refusal.code, refusal.about)
                if self._is_scpi and refusal.code > -200:
                    break  # after a command error the rest of the message is thrown away
                continue
            if answer is not None:
                self._answers.append(answer)
        self._pending = ";".join(self._answers) if self._answers else None
        if self.reply_s is not None:
            return self.reply_s
        return MEASURE_REPLY_S if self._vocabulary.measured else OTHER_REPLY_S

    def read(self) -> str | None:
        """The reply that waits."""
        reply, self._pending = self._pending, None
        return reply

    @property
    def reply_waits(self) -> bool:
        return self._pending is not None

    def follow_output(self) -> None:
        """It has no event registers that would have to follow."""

    @property
    def due_s(self) -> float:
        """When something happens by itself next."""
        return min(self._vocabulary.watchdog_due_s, *(outlet.due_s for outlet in self._outlets))

    def happen(self, at_s: float) -> None:
        """What was due."""
        self._vocabulary.bark(at_s)
        for outlet in self._outlets:
            outlet.happen(at_s)

    @property
    def outlets(self) -> Sequence[Outlet]:
        return self._outlets

    @property
    def now_s(self) -> float:
        return self._now()

    def choose(self, number: int) -> None:
        """The output that is meant from here on. Raises Refusal."""
        if number > len(self._outlets):
            raise Refusal(-222, str(number))
        self._chosen = number - 1

    @property
    def chosen(self) -> int:
        return self._chosen + 1

    def switch(self, outlet: Outlet, on: bool) -> None:
        """Raises Refusal."""
        if not on and self.offs_to_ignore > 0:
            self.offs_to_ignore -= 1
            return
        outlet.switch(on, self._now())

    def _units(self, message: str) -> list[str]:
        """Each with its whole path. Source: IEEE 488.2, the path goes on where no colon begins a unit."""
        units = message.split(";")
        if len(units) > 1 and not self._compound:
            if not self._lax:
                self.status.record(-102, message)
            return units[:1] if self._lax else []
        level, found = "", []
        for unit in (unit.strip() for unit in units):
            if unit.startswith("*") or not unit:
                found.append(unit)
                continue
            whole = unit.removeprefix(":") if unit.startswith(":") else level + unit
            level = whole.partition(" ")[0].rpartition(":")[0]
            level += ":" if level else ""
            found.append(whole)
        return found

    def _execute(self, unit: str) -> str | None:
        key = self._key(unit)
        if (known := self._exact.get(key)) is not None:
            act, reach = known
            return _done(act, reach(), ())
        for pattern, act, reach in self._patterns:
            if (found := pattern.fullmatch(key)) is not None:
                return _done(act, reach(), tuple(float(text) for text in found.groups()))
        header, _, parameters = key.partition(" ")
        if (common := self._common.get(header)) is not None:
            return common(parameters)
        raise Refusal(-113, unit)

    def _key(self, unit: str) -> str:
        return unit.upper() if self._is_scpi else unit

    def _learn(self, unit: str, act: Act) -> None:
        if not unit:
            return
        if "{n}" in unit:
            for number, outlet in enumerate(self._outlets, start=1):
                self._enter(unit.replace("{n}", str(number)), act, lambda outlet=outlet: (outlet,))  # type: ignore[misc]
        elif self.spoken.outputs.select:
            self._enter(unit, act, lambda: (self._outlets[self._chosen],))
        else:
            self._enter(unit, act, lambda: self._outlets)

    def _enter(self, unit: str, act: Act, reach: _Reach) -> None:
        unit = unit.removeprefix(":")
        if "{" not in unit:
            self._exact.setdefault(self._key(unit), (act, reach))
            return
        program = self.spoken.program
        digits = {"volts": program.volts_digits, "amps": program.amps_digits, "value": act.digits}
        # The braces are taken out before what is around them is made upper case.
        parts = _VALUE.split(re.escape(unit))
        text = "".join(_number(digits[part]) if place % 2 else self._key(part) for place, part in enumerate(parts))
        names = parts[1::2]
        reordered = act if names != ["amps", "volts"] else act.swapped()
        self._patterns.append((re.compile(text), reordered, reach))

    def _common_commands(self, identity: str) -> dict[str, Callable[[str], str | None]]:
        """Those that every instrument with this kind of error queue has to have."""
        if not self._is_scpi:
            return {}
        stage = self._outlets[0].output
        return common_commands(self.status, stage, identity, lambda: bool(self._answers)) | {
            "SYST:VERS?": lambda _: "1999.0"
        }


def _done(act: Act, outlets: Sequence[Outlet], values: tuple[float, ...]) -> str | None:
    """A command goes to all that it reaches, a query to the first."""
    if act.asks:
        return act.do(outlets[0], *values)
    for outlet in outlets:
        act.do(outlet, *values)
    return None


def _number(digits: Digits | None) -> str:
    if digits is None or not digits.before:
        return _ANY_NUMBER
    return rf"(\d{{{digits.before}}}\.\d{{{digits.after}}})"
