"""A drawn dialect on the simulated bench, asked for and held against what was drawn."""

from collections.abc import Iterator
from dataclasses import dataclass

import msgspec

from drivers.dialect import Dialect, Link
from drivers.finding import Found, find_dialect
from drivers.finding_measured import capabilities_of, measure
from drivers.finding_tried import Tried, try_spellings
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import Quirks
from drivers.simulated.scenario import load
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Capabilities, Setpoint, SupplyError
from tests.drivers.random_dialects import draw


class ListeningBench(Bench):
    """Keeps every message that its instrument gets, and what each output was set to."""

    def __init__(self, dialect: Dialect, quirks: Quirks | None = None) -> None:
        super().__init__(load("open"), 1, speaks=dialect, quirks=quirks)
        self.heard: list[str] = []
        self.time_s = 0.0

    def send(self, message: str, at_s: float) -> tuple[str | None, float]:
        self.heard.append(message)
        return super().send(message, at_s)

    def now(self) -> float:
        return self.time_s

    def wait(self, until_s: float) -> None:
        self.time_s = max(self.time_s, until_s)

    def open(self, link: Link, timeout_s: float) -> VirtualSession:
        session = VirtualSession(self, self.now, self.wait, termination=link.termination, reply_ends=link.reply_ends)
        session.set_timeout(timeout_s)
        return session

    def state(self) -> list[tuple[object, ...]]:
        """What a write could have changed."""
        stages = [bench.output for bench in (self, *self.others)]
        return [
            (one.set_v, one.limit_a, one.on, one.over_volts, one.over_amps, one.over_volts_on, one.over_amps_on)
            for one in stages
        ]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One case. `wrong`: what a question tells and was found otherwise. `open_to_user`: what was asked of the user.
    `guessed`: units that no question tells, spelled otherwise than drawn. `housekeeping`: only such arrived. `obeys`:
    a setpoint and a switch by the dialect that was found arrived.
    `whole_s`: with opening it and measuring by readings. `tried`: what came of trying spellings with the output off."""

    drawn: Dialect
    found: Found
    wrong: list[str]
    guessed: list[str]
    housekeeping: bool
    whole_s: float
    obeys: bool
    tried: Tried | None


def ask(seed: int, number: int, quirks: Quirks | None = None) -> Asked:
    drawn = draw(seed, number)
    bench = ListeningBench(drawn, quirks)
    before = bench.state()
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    quiet = bench.state() == before and all(_is_housekeeping(message, drawn) for message in bench.heard)
    whole_s = found.took_s + (_measuring_s(bench, found) if found.usable else 0.0)
    obeys = found.usable and _obeys(bench, found.dialect)
    tried = _tried(drawn, quirks, found)
    return Asked(
        tried=tried,
        whole_s=whole_s,
        drawn=drawn,
        found=found,
        wrong=list(_wrong(_spoken(drawn, quirks or Quirks()), found)),
        guessed=list(_guessed(drawn, found.dialect)),
        housekeeping=quiet,
        obeys=obeys,
    )


def _spoken(drawn: Dialect, quirks: Quirks) -> Dialect:
    spoken = quirks.described(drawn)
    if not (quirks.crlf and spoken.link.reply_ends):
        return spoken
    return msgspec.structs.replace(spoken, link=msgspec.structs.replace(spoken.link, reply_termination="\r\n"))


def _is_housekeeping(message: str, drawn: Dialect) -> bool:
    choosing = drawn.outputs.select.partition(" ")[0]
    return all(
        unit.partition(" ")[0].endswith("?") or (choosing and unit.startswith(choosing + " "))
        for unit in (unit.strip().removeprefix(":") for unit in message.split(";"))
    )


def _wrong(drawn: Dialect, found: Found) -> Iterator[str]:
    """Each part that answers tell. What they do not tell is missing, with a question to the user, or as drawn."""
    dialect = found.dialect
    if dialect is None:
        yield f"not found: {found.why}"
        return
    for name in ("compound", "echo", "one_client", "units_in_replies"):
        yield from _different(f"link.{name}", getattr(drawn.link, name), getattr(dialect.link, name))
    if drawn.link.reply_ends[-1:] != dialect.link.reply_ends[-1:]:
        yield f"link.reply_termination: {dialect.link.reply_ends!r}"
    if not drawn.link.gap_s <= dialect.link.gap_s <= max(2.5 * drawn.link.gap_s, 0.05 * (not drawn.link.reply_ends)):
        yield f"link.gap_s: {dialect.link.gap_s}, not {drawn.link.gap_s}"
    yield from _different("outputs", drawn.outputs, dialect.outputs)
    yield from _different("errors", (drawn.errors.form, drawn.errors.ask), (dialect.errors.form, dialect.errors.ask))
    for name in ("volts_max", "amps_max"):
        yield from _different(f"identify.{name}", getattr(drawn.identify, name), getattr(dialect.identify, name))
    for name in ("volts", "amps", "set_volts", "set_amps", "output"):
        yield from _different(f"readback.{name}", getattr(drawn.readback, name), getattr(dialect.readback, name))
    for name in ("over_volts", "over_amps"):
        latches = getattr(drawn, name), getattr(dialect, name)
        asked = [None if one is None else (one.ask, one.enabled, one.tripped) for one in latches]
        yield from _different(name, *asked)
    yield from _different("sense", drawn.sense, dialect.sense)
    yield from _different("mode.ask", *(None if one.mode is None else one.mode.ask for one in (drawn, dialect)))
    yield from _claimed(drawn, found, dialect)


def _claimed(drawn: Dialect, found: Found, dialect: Dialect) -> Iterator[str]:
    """What no answer tells: as it is, or left open and asked of the user."""
    asked = " ".join(found.questions)
    for name, word in (("condition", "answers with bits"), ("status", "answers with bits"), ("watchdog", "timer")):
        there, said = getattr(drawn, name), getattr(dialect, name)
        if said is not None and said != there:
            yield f"{name}: claimed as {said}"
        if there is not None and said is None and word not in asked:
            yield f"{name}: neither found nor asked for"
    if drawn.ranges is not None and "How many volts" not in asked:
        yield "ranges: not asked for"


def _different(place: str, drawn: object, found: object) -> Iterator[str]:
    if drawn != found:
        yield f"{place}: {found}, not {drawn}"


def _guessed(drawn: Dialect, dialect: Dialect | None) -> Iterator[str]:
    if dialect is None:
        return
    for name in ("volts", "amps", "both", "on", "off"):
        if getattr(drawn.program, name) != getattr(dialect.program, name):
            yield f"program.{name}"
    for name in ("volts_digits", "amps_digits"):
        if getattr(drawn.program, name).before not in (0, getattr(dialect.program, name).before):
            yield f"program.{name}"
    for name in ("over_volts", "over_amps"):
        drawn_latch, found_latch = getattr(drawn, name), getattr(dialect, name)
        if drawn_latch is not None and found_latch is not None and drawn_latch.clear != found_latch.clear:
            yield f"{name}.clear"


def _opened(bench: ListeningBench, dialect: Dialect, known: Capabilities | None = None) -> ScpiSupply:
    return ScpiSupply(
        lambda timeout_s: bench.open(dialect.link, timeout_s), dialect, bench.now, known=known, wait=bench.wait
    )


def _measuring_s(bench: ListeningBench, found: Found) -> float:
    assert found.dialect is not None
    bench.wait(bench.time_s + 0.5)
    began_s = bench.time_s
    supply = _opened(bench, found.dialect, capabilities_of(found, bench.now))
    measure(supply, bench.now)
    supply.close()
    return bench.time_s - began_s


def _tried(drawn: Dialect, quirks: Quirks | None, found: Found) -> Tried | None:
    """On a fresh bench, where it must not switch on, and leaves setpoints as they were. None where it was not tried."""
    if not found.usable or found.dialect is None:
        return None
    bench = ListeningBench(drawn, quirks)
    before = [stage[:3] for stage in bench.state()]
    try:
        tried = try_spellings(bench.open, found.dialect, bench.now, wait=bench.wait)
    except SupplyError:
        return None
    assert [stage[:3] for stage in bench.state()] == before, "left otherwise than it was"
    assert all(bench.extremes.output_on_s == 0.0 for bench in (bench, *bench.others)), "switched on"
    return tried


def obeys_when_tried(case: Asked) -> bool:
    """Whether a setpoint and a switch arrive by what was tried."""
    if case.tried is None:
        return False
    return _obeys(ListeningBench(case.drawn), case.tried.dialect)


def _obeys(bench: ListeningBench, dialect: Dialect | None) -> bool:
    assert dialect is not None
    bench.wait(bench.time_s + 0.5)  # as long as nobody is quicker than the gap that its line wants
    try:
        supply = _opened(bench, dialect)
        supply.set(Setpoint(volts=1.0, amps=0.2))
        supply.switch(True)
        bench.wait(bench.time_s + 0.1)
        on = supply.read()
        supply.off()
        off = supply.read()
    except SupplyError:
        return False
    return (on.set_volts, on.set_amps, on.output_on, off.output_on) == (1.0, 0.2, True, False)
