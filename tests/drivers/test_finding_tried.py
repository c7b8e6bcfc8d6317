"""Spellings that no answer tells, tried with the output off: never on, and setpoints as they were."""

import msgspec
import pytest

from drivers.dialect import Dialect, shipped
from drivers.finding_tried import TRY_V, try_spellings
from drivers.supply import NotASupply
from tests.drivers.found_right import ListeningBench, ask, obeys_when_tried

SEED = 11


def other_words(dialect: Dialect) -> Dialect:
    """As found by asking: ON and OFF, and each latch cleared by a word of its own."""
    program = msgspec.structs.replace(dialect.program, on="OUTP 1", off="OUTP 0")
    assert dialect.over_volts is not None
    latch = msgspec.structs.replace(dialect.over_volts, clear="OUTP:PROT:CLE")
    return msgspec.structs.replace(dialect, program=program, over_volts=latch)


@pytest.mark.parametrize("number", range(8))
def test_what_can_be_seen_to_be_obeyed_is_found_with_the_output_never_on(number: int) -> None:
    asked = ask(SEED, number)  # which holds that nothing was switched on, and setpoints are as they were
    if not asked.found.usable:
        return
    assert asked.tried is not None
    assert "setpoints" in asked.tried.obeyed
    if asked.drawn.errors.form != "none":
        assert asked.tried.refused == ()
        assert obeys_when_tried(asked)


def test_an_instrument_with_other_words_gets_its_own() -> None:
    bench = ListeningBench(other_words(shipped()))
    tried = try_spellings(bench.open, shipped(), bench.now, wait=bench.wait)
    assert tried.obeyed == ("setpoints", "off", "what clears its latches")
    assert (tried.dialect.program.on, tried.dialect.program.off) == ("OUTP 1", "OUTP 0")
    assert tried.dialect.over_volts is not None
    assert tried.dialect.over_volts.clear == "OUTP:PROT:CLE"
    assert not any("ON" in message.split(";")[-1].split() for message in bench.heard)


def test_with_the_output_on_nothing_is_sent() -> None:
    bench = ListeningBench(shipped())
    bench.output.switch(True)
    with pytest.raises(NotASupply, match="its output is on"):
        try_spellings(bench.open, shipped(), bench.now, wait=bench.wait)
    assert bench.output.on
    assert bench.output.set_v != TRY_V
    assert all(unit.partition(" ")[0].endswith("?") for message in bench.heard for unit in message.split(";"))


def test_without_an_error_queue_it_is_said_that_off_was_not_tried() -> None:
    dialect = msgspec.structs.replace(
        shipped(), errors=msgspec.structs.replace(shipped().errors, form="none", ask=""), array=None
    )
    bench = ListeningBench(dialect)
    tried = try_spellings(bench.open, dialect, bench.now, wait=bench.wait)
    assert tried.obeyed == ("setpoints",)
    assert all("no error queue" in refused for refused in tried.refused)
