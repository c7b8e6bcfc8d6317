"""Spellings that no answer tells, tried with the output off: setpoints that are put back, off, and what clears a latch.

A write, and so only where the user agreed to it. The output is never switched on; where it is on nothing is sent.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import msgspec

from drivers.dialect import Dialect, Digits, Latch, Link
from drivers.exchange import Session
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Capabilities, NotASupply, Reading, Setpoint, Supply, SupplyError

TRY_V, TRY_A = 0.5, 0.05
"""With the output off, and put back: small, and above the step of any supply."""

_DIGITS = (Digits(before=2, after=2), Digits(before=1, after=3), Digits(before=2, after=3), Digits(before=3, after=2))
_SWITCHES = (("ON", "OFF"), ("1", "0"))

Open = Callable[[Link, float], Session]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """`dialect`: with the spellings that were obeyed. `obeyed`: what was sent and seen to be taken; `refused`: what was
    tried in every spelling and was not."""

    dialect: Dialect
    obeyed: tuple[str, ...]
    refused: tuple[str, ...]


def try_spellings(
    open_session: Open, dialect: Dialect, now: Callable[[], float], *, wait: Callable[[float], None] | None = None
) -> Tried:
    """On the first output. Raises SupplyError, NotASupply where its output is on."""
    obeyed: list[str] = []
    refused: list[str] = []

    known: Capabilities | None = None

    def opened(candidate: Dialect) -> ScpiSupply:
        return ScpiSupply(
            lambda timeout_s: open_session(candidate.link, timeout_s), candidate, now, known=known, wait=wait
        )

    first = opened(dialect)
    try:
        known = first.capabilities
        _refuse_on(first.read(), known.identity)
    finally:
        first.close()
    for what, candidates, is_obeyed in (
        ("setpoints", _setpoints(dialect), _takes_setpoints),
        ("off", _switches(dialect), _takes_off),
        ("what clears its latches", _clears(dialect), _takes_clear),
    ):
        if what != "setpoints" and dialect.errors.form == "none":
            refused.append(f"{what}: it has no error queue that would tell")
            continue
        for change in candidates:
            candidate = change(dialect)
            supply = opened(candidate)
            try:
                if is_obeyed(supply):
                    dialect = candidate
                    obeyed.append(what)
                    break
            except SupplyError:
                continue  # silence is an answer too: the next session is a fresh one
            finally:
                supply.close()
        else:
            refused.append(what)
    return Tried(dialect=dialect, obeyed=tuple(obeyed), refused=tuple(refused))


def _refuse_on(reading: Reading, identity: str) -> None:
    if reading.output_on:
        raise NotASupply(identity, "its output is on: switch it off, then spellings can be tried")


def _takes_setpoints(supply: Supply) -> bool:
    """Both are set, read back, and put back as they were."""
    before = supply.read()
    _refuse_on(before, supply.capabilities.identity)
    supply.errors()
    supply.set(Setpoint(volts=TRY_V, amps=TRY_A))
    seen = supply.read()
    taken = abs(seen.set_volts - TRY_V) < 1e-6 and abs(seen.set_amps - TRY_A) < 1e-6 and not supply.errors()
    # Also where only one of both was taken: the same spelling puts that one back.
    supply.set(Setpoint(volts=before.set_volts, amps=before.set_amps))
    after = supply.read()
    supply.errors()
    return taken and (after.set_volts, after.set_amps) == (before.set_volts, before.set_amps)


def _takes_off(supply: Supply) -> bool:
    _refuse_on(supply.read(), supply.capabilities.identity)
    supply.errors()
    supply.switch(False)
    return not supply.errors()


def _takes_clear(supply: Supply) -> bool:
    """Clearing goes by way of off and 0 V, which is put back."""
    before = supply.read()
    _refuse_on(before, supply.capabilities.identity)
    supply.errors()
    supply.clear()
    complaints = supply.errors()
    supply.set(Setpoint(volts=before.set_volts, amps=before.set_amps))
    return not complaints


Change = Callable[[Dialect], Dialect]


def _setpoints(dialect: Dialect) -> Iterator[Change]:
    """As found, then both at once, then other patterns of digits."""
    program = dialect.program
    yield lambda now: now
    if program.volts.startswith(("VOLT ", "SOUR:VOLT ")) and "@" not in program.volts:
        chosen = "CH{n}," if "CH{n}" in program.volts else ""
        yield lambda now: _programmed(now, volts="", amps="", both=f"APPL {chosen}{{volts}},{{amps}}")
    if program.volts_digits.before:
        for volts in _DIGITS:
            for amps in _DIGITS:
                yield lambda now, v=volts, a=amps: _programmed(now, volts_digits=v, amps_digits=a)  # type: ignore[misc]


def _switches(dialect: Dialect) -> Iterator[Change]:
    on, off = dialect.program.on, dialect.program.off
    yield lambda now: now
    if " OFF" in off or ",OFF" in off:
        yield lambda now: _programmed(now, on=_word(on, "ON", "1"), off=_word(off, "OFF", "0"))


def _word(unit: str, word: str, other: str) -> str:
    head, _, tail = unit.rpartition(word)
    return f"{head}{other}{tail}"


def _clears(dialect: Dialect) -> Iterator[Change]:
    """As found, then one word for both."""
    yield lambda now: now
    output = dialect.readback.output.partition("?")[0]
    arguments = dialect.readback.output.partition("?")[2]
    if output.startswith("OUTP"):
        one = f"{output}:PROT:CLE{arguments}"
        yield lambda now: _cleared(now, one, one)
        yield lambda now: _cleared(now, one, None)
        yield lambda now: _cleared(now, None, one)


def _programmed(dialect: Dialect, **changes: object) -> Dialect:
    return msgspec.structs.replace(dialect, program=msgspec.structs.replace(dialect.program, **changes))


def _cleared(dialect: Dialect, over_volts: str | None, over_amps: str | None) -> Dialect:
    def with_clear(latch: Latch | None, clear: str | None) -> Latch | None:
        return latch if latch is None or clear is None else msgspec.structs.replace(latch, clear=clear)

    return msgspec.structs.replace(
        dialect,
        over_volts=with_clear(dialect.over_volts, over_volts),
        over_amps=with_clear(dialect.over_amps, over_amps),
    )
