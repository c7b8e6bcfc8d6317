"""Which way of speaking an instrument has: those that come with the program first, then one of those in the tables."""

import contextlib
from collections.abc import Iterator

import msgspec

from drivers.dialect import Dialect, Latch, check, for_output, shipped, shipped_names
from drivers.finding_asking import Asking, OutOfTime
from drivers.finding_assembly import Assembly, fields_of
from drivers.finding_line import Strange
from drivers.finding_parts import FAR_OUTPUT, MEASURED, NUMBERED, OUTPUTS_LIKELY, PLAIN, SELECTS, TERSE, Way

_ORDER = ("scpi-1999", "scpi-1999-select")
"""Dialects that are tried before the others: one output, and outputs that are chosen."""


def _in_order() -> list[str]:
    return sorted(shipped_names(), key=lambda name: _ORDER.index(name) if name in _ORDER else len(_ORDER))


class Search:
    """`parts` has what was found on the way."""

    def __init__(self, asking: Asking, parts: Assembly) -> None:
        self._asking, self._parts = asking, parts
        self._counts: dict[str, int] = {}

    def find(self) -> Dialect:
        """Raises Strange, OutOfTime, DialectError, SupplyError."""
        plain = self._parts.number("VOLT?") is not None and self._parts.number("CURR?") is not None
        if plain:
            self._asking.try_compound("VOLT?", "CURR?")
        for name in _in_order():
            # Where outputs are chosen, and setpoints have no number, no number is looked for.
            if plain and shipped(name).outputs.count > 1 and not shipped(name).outputs.select and self._is_chosen():
                continue
            if (fit := self._fitted(shipped(name), whole=True)) is not None:
                return fit
        for terse in TERSE if not plain and self._asking.errors.form == "none" else ():  # they have no error queue
            if self._parts.is_there(terse.set_volts) and not self._parts.is_there("SOUR:VOLT?"):
                return self._parts.terse(terse, self._count(terse.set_volts))
        found = self._way()
        if found is None:
            for name in shipped_names():
                if (fit := self._fitted(shipped(name), whole=False)) is not None:
                    return fit
            raise Strange(self._no_supply())
        way, source = found
        count, select, way, source = self._outputs(way, source)
        return self._parts.assembled(way, source, count, select)

    def ask_range(self, dialect: Dialect, output: int) -> None:
        """Of another output than the first, where there is time."""
        if 1 < output <= dialect.outputs.count:
            for unit in (dialect.identify.volts_max, dialect.identify.amps_max):
                with contextlib.suppress(OutOfTime):
                    if unit:
                        self._parts.number(unit, str(output))

    def with_clients(self, dialect: Dialect) -> Dialect:
        """Whether another program could speak to it at the same time, which is looked at last."""
        try:
            self._asking.refuse_late()
            one_client = not self._asking.line.second_client_is_served()
        except OutOfTime:
            self._parts.left_out()
            return dialect
        return msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, one_client=one_client))

    def _fitted(self, dialect: Dialect, *, whole: bool) -> Dialect | None:
        """One that comes with the program, in this line's own manner: where each of its questions is answered, or, not
        `whole`, without the parts that are not. What a register's bits mean no answer tells: so not with such a
        register, unless the supply says that it keeps to the standard which says what they mean."""
        one, asking = for_output(dialect, 1), self._asking
        if dialect.status is not None or bool(dialect.link.reply_ends) != bool(asking.line.link.reply_ends):
            return None
        select = dialect.outputs.select.partition(" ")[0]
        if not self._parts.is_there(one.readback.set_volts) or (select and not self._parts.is_there(f"{select}?")):
            return None
        if not all(self._parts.is_there(unit) for unit in _readings(one)):
            return None
        if whole and not (
            one.errors.form == asking.errors.form and all(self._parts.is_there(unit) for unit in _others(one))
        ):
            return None
        if dialect.condition is not None and not self._keeps_to_the_standard():
            return None
        count = self._count_of(dialect)
        if dialect.outputs.count == 1 and self._outputs(PLAIN, "")[0] > 1:
            return None
        link = self._parts.link()
        fit = msgspec.structs.replace(
            dialect,
            link=link,
            outputs=msgspec.structs.replace(dialect.outputs, count=count),
            identify=msgspec.structs.replace(dialect.identify, fields=fields_of(asking.line.identity)),
            array=dialect.array if link.compound and not link.echo else None,
            errors=asking.errors,
            sense=dialect.sense if one.sense is not None and self._parts.is_there(one.sense.ask) else None,
            over_volts=self._kept(dialect.over_volts),
            over_amps=self._kept(dialect.over_amps),
        )
        fit = self._parts.with_units(self._parts.with_lengths(self._parts.with_extras(fit)))
        self._parts.ask_the_user(fit, "")
        self._parts.untried_of(fit)
        return check(fit)

    def _keeps_to_the_standard(self) -> bool:
        """Source: SCPI-1999, SYSTem:VERSion answers its year and a revision."""
        version = self._parts.number("SYST:VERS?")
        return version is not None and version >= 1990

    def _kept(self, latch: Latch | None) -> Latch | None:
        """Without what is not answered, which costs nothing to ask again."""
        if latch is None or not self._parts.is_there(latch.ask):
            return None
        enabled, tripped = (
            unit if unit and self._parts.is_there(unit) else "" for unit in (latch.enabled, latch.tripped)
        )
        switch = (latch.enable, latch.disable) if enabled else ("", "")
        return msgspec.structs.replace(latch, enabled=enabled, enable=switch[0], disable=switch[1], tripped=tripped)

    def _count_of(self, dialect: Dialect) -> int:
        if dialect.outputs.select:
            query = dialect.outputs.select.partition(" ")[0]
            return max(1, self._chosen_count(query, dialect.outputs.select))
        return self._count(dialect.readback.set_volts)

    def _way(self) -> tuple[Way, str] | None:
        """How its setpoints are asked for, None where they are not."""
        for way in (PLAIN, *NUMBERED):
            for source in way.sources:
                if self._parts.number(way.ask(f"{source}VOLT")) is not None:
                    return way, source
        return None

    def _no_supply(self) -> str:
        identity = self._asking.line.identity
        if any(self._parts.number(f"MEAS:{header}?") is not None for pair in MEASURED for header in pair):
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
                if self._asking.is_known_silent(unit.replace("{n}", "1")):
                    continue
                if self._parts.number(unit, "2") is not None and self._parts.number(unit, FAR_OUTPUT) is None:
                    return self._count(unit), "", other, before
        return 1, "", PLAIN, source

    def _count(self, unit: str) -> int:
        count = 1
        if self._parts.number(unit, FAR_OUTPUT) is not None:
            return count  # it does not look at the number
        while count < OUTPUTS_LIKELY and self._parts.number(unit, str(count + 1)) is not None:
            count += 1
        return count

    def _is_chosen(self) -> bool:
        """Whether there are several outputs, chosen by a message of its own."""
        return any(self._chosen_count(query, select) > 1 for query, select in SELECTS)

    def _chosen_count(self, query: str, select: str) -> int:
        if select not in self._counts:
            self._counts[select] = self._choose_each(query, select)
        return self._counts[select]

    def _choose_each(self, query: str, select: str) -> int:
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
