"""Cases over other command sets, from a stream of draws of their own: what the other cases draw stays as it is."""

import random
import re
from collections.abc import Callable
from dataclasses import replace

from msgspec.structs import replace as changed

from drivers.dialect import Dialect, Ranges, for_output, shipped, shipped_names
from drivers.simulated.instrument import MEASURE_REPLY_S
from drivers.simulated.quirks import QUIRKS, together
from tests.campaign.cases import Case, draw_case
from tests.campaign.faults import PANEL, Fault
from tests.campaign.run_ins import draw_run_in
from tests.campaign.start_ups import draw_start_up
from tests.drivers.random_dialects import draw as draw_dialect

SHIPPED_SHARE, PANEL_SHARE = 0.4, 0.8
TERSE_MOST_A = 5.0
"""A: in five characters with three behind the point; above ten the supply would round to its read-back."""


def draw_any_dialect(seed: int, number: int) -> Case:
    """The case of that number, on a supply that speaks something else. The same for the same two numbers."""
    return _spoken(draw_case(seed, number), random.Random(f"{seed}/{number}/dialects"))


def draw_start_up_in_any_dialect(seed: int, number: int) -> Case:
    """The start-up run of that number, likewise. A stream of its own: else all kinds met the same dialects."""
    return _spoken(draw_start_up(seed, number), random.Random(f"{seed}/{number}/start-up/dialects"))


def draw_run_in_in_any_dialect(seed: int, number: int) -> Case:
    """The run-in of that number, likewise."""
    return _spoken(draw_run_in(seed, number), random.Random(f"{seed}/{number}/run-in/dialects"))


def _spoken(case: Case, source: random.Random) -> Case:
    known = source.random() < SHIPPED_SHARE
    dialect = shipped(source.choice(shipped_names())) if known else draw_dialect(case.seed, case.number)
    names = tuple(source.sample(list(QUIRKS), source.choice((0, 1, 1, 2, 3))))
    supply = case.scenario.supply
    if dialect.reply_lengths is not None:
        supply = changed(supply, amps_max=min(supply.amps_max, TERSE_MOST_A))
    if dialect.ranges is not None:
        count = dialect.outputs.count
        dialect = changed(
            dialect, ranges=Ranges(volts_max=(supply.volts_max,) * count, amps_max=(supply.amps_max,) * count)
        )
    quirks = together(names)
    spoken = quirks.described(dialect)
    faults = case.faults
    # In a message of its own the choice can be undone before what it was for: that gap is told, and not held against.
    if spoken.outputs.select and spoken.link.compound and source.random() < PANEL_SHARE:
        faults = (*faults, Fault(kind=PANEL, at=source.randint(1, 30), size=0.0))
    return replace(
        case,
        faults=faults,
        scenario=changed(case.scenario, supply=supply),
        latches=_both_latches(spoken),
        compound=spoken.link.compound,
        exponents=False,
        reply_s=case.reply_s if quirks.reply_s is None else quirks.reply_s,
        dialect=dialect,
        quirks=names,
        output=source.randint(1, min(2, dialect.outputs.count)),
    )


def spoken_in(case: Case) -> Dialect:
    """What describes the instrument of a case with its quirks."""
    assert case.dialect is not None
    return together(case.quirks).described(case.dialect)


def reading_s(case: Case) -> float:
    """s that a reading takes, and what the supply adds to it: its gaps and its relay."""
    reply_s = MEASURE_REPLY_S if case.reply_s is None else case.reply_s
    if case.dialect is None:
        return reply_s * (1 if case.compound else 6)
    spoken = spoken_in(case)
    queries = 1 if spoken.link.compound else 6
    messages = queries if spoken.link.compound or not spoken.outputs.select else 2 * queries
    return queries * reply_s + messages * spoken.link.gap_s + together(case.quirks).relay_s


def in_plain_words(dialect: Dialect, output: int) -> Callable[[str], str]:
    """What turns a message to that output into the words that the checks know: VOLT, CURR, OUTP, VOLT:PROT, CURR:PROT.

    Any other unit stays as it is.
    """
    own = for_output(dialect, output)
    said = {
        own.program.volts: "VOLT {value}",
        own.program.amps: "CURR {value}",
        own.program.both: "VOLT {volts};:CURR {amps}",
        own.program.on: "OUTP ON",
        own.program.off: "OUTP OFF",
    }
    for latch, word in ((own.over_volts, "VOLT:PROT {value}"), (own.over_amps, "CURR:PROT {value}")):
        if latch is not None:
            said[latch.set] = word
    forms = [(_form(unit), words) for unit, words in said.items() if unit]

    def told(unit: str) -> str:
        for form, words in forms:
            if (found := form.fullmatch(unit.removeprefix(":"))) is not None:
                return words.format(**found.groupdict())
        return unit

    return lambda message: ";".join(told(unit) for unit in message.split(";"))


def _form(unit: str) -> re.Pattern[str]:
    text = re.escape(unit.removeprefix(":"))
    return re.compile(re.sub(r"\\\{(value|volts|amps)\\\}", r"(?P<\1>[0-9.]+)", text))


def _both_latches(dialect: Dialect) -> bool:
    return all(one is not None and bool(one.set and one.ask) for one in (dialect.over_volts, dialect.over_amps))
