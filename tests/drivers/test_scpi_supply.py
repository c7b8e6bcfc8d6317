"""A supply in use: what is sent for what is asked, and what replies come to."""

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers import scpi
from drivers.dialect import shipped
from drivers.supply import Protection, Regulation, Setpoint
from tests.drivers.fake_bench import READING, FakeBench, supply_on, unit_by_unit


def test_errors_are_told_in_the_order_in_which_they_came() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.errors = ['-222,"Data out of range;VOLT 61"', '-350,"Queue overflow"']
    assert supply.errors() == ["-222, Data out of range;VOLT 61", "-350, Queue overflow"]
    assert supply.errors() == []


def test_a_queue_that_never_ends_is_drained_no_deeper_than_the_dialect_says() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.errors = ['-100,"Command error"'] * 1000
    assert len(supply.errors()) == shipped().errors.deepest


def test_a_latch_that_tells_its_state_in_words_is_switched_on_like_any() -> None:
    bench = FakeBench()
    bench.answers |= {"VOLT:PROT:STAT?": "ON", "VOLT:PROT:TRIP?": "OFF"}
    supply = supply_on(bench)
    assert supply.protect(Protection(over_volts=13.2, over_amps=2.2)).over_volts == 13.2
    assert "VOLT:PROT 13.2000;:VOLT:PROT:STAT ON" in bench.writes
    bench.answers["VOLT:PROT:TRIP?"] = "ON"
    assert supply.tripped() == "over-voltage"


def test_a_reading_is_one_message_and_has_its_six_values_and_its_times() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.queries.clear()
    before_s = bench.now_s
    reading = supply.read()
    assert bench.queries == [READING]
    assert (reading.volts, reading.amps, reading.set_volts, reading.set_amps) == (12.003, 0.5002, 12.0, 1.0)
    assert reading.output_on
    assert (reading.sent_s, reading.received_s) == (before_s, bench.now_s)


@pytest.mark.parametrize(
    ("register", "regulation"),
    [("2", Regulation.CV), ("1", Regulation.CC), ("3", Regulation.CC), ("0", Regulation.UNKNOWN)],
)
def test_the_quantity_whose_bit_is_set_is_the_one_that_is_not_regulated(register: str, regulation: Regulation) -> None:
    # SCPI-1999, as published: bit 0 VOLTage, bit 1 CURRent
    bench = FakeBench()
    bench.answers[READING] = f"12.003;0.5002;12.000;1.0000;1;{register}"
    assert supply_on(bench).read().regulation is regulation


def test_a_supply_that_takes_one_unit_a_message_is_read_by_six() -> None:
    bench = FakeBench()
    supply = supply_on(bench, unit_by_unit())
    bench.queries.clear()
    assert supply.read().set_amps == 0.1
    assert bench.queries == ["MEAS:VOLT?", "MEAS:CURR?", "VOLT?", "CURR?", "OUTP?", "STAT:QUES:COND?"]


def test_a_setpoint_is_one_message_limit_first() -> None:
    bench = FakeBench()
    supply_on(bench).set(Setpoint(volts=7.2, amps=0.5))
    assert bench.writes == ["CURR 0.5000;:VOLT 7.2000"]


def test_a_setpoint_is_limit_first_also_one_unit_a_message() -> None:
    bench = FakeBench()
    supply_on(bench, unit_by_unit()).set(Setpoint(volts=7.2, amps=0.5))
    assert bench.writes == ["CURR 0.5000", "VOLT 7.2000"]


def test_off_is_one_message_with_no_volts_and_the_output_off() -> None:
    bench = FakeBench()
    supply_on(bench).off()
    assert bench.writes == ["VOLT 0.0000;:OUTP OFF"]


def test_on_and_off_are_the_dialects_words() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    supply.switch(True)
    supply.switch(False)
    assert bench.writes == ["OUTP ON", "OUTP OFF"]


def test_latches_are_set_switched_on_and_told_as_the_supply_says_they_are() -> None:
    bench = FakeBench()
    bench.answers["VOLT:PROT?"] = "13.300"
    found = supply_on(bench).protect(Protection(over_volts=13.2, over_amps=2.2))
    assert bench.writes == ["VOLT:PROT 13.2000;:VOLT:PROT:STAT ON", "CURR:PROT 2.2000;:CURR:PROT:STAT ON"]
    assert found == Protection(over_volts=13.3, over_amps=2.2)


def test_a_latch_that_stays_off_when_it_is_switched_on_counts_as_none() -> None:
    bench = FakeBench()
    bench.answers["VOLT:PROT:STAT?"] = "0"
    assert supply_on(bench).protect(Protection(over_volts=13.2, over_amps=None)).over_volts is None


def test_a_latch_that_stays_on_when_it_is_switched_off_is_told() -> None:
    bench = FakeBench()
    found = supply_on(bench).protect(Protection(over_volts=None, over_amps=None))
    assert bench.writes == ["VOLT:PROT:STAT OFF", "CURR:PROT:STAT OFF"]
    assert found == Protection(over_volts=13.2, over_amps=2.2)


def test_the_latch_that_tripped_is_told() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    assert supply.tripped() is None
    bench.answers["CURR:PROT:TRIP?"] = "1"
    assert supply.tripped() == "over-current"


def test_latches_are_cleared_only_after_the_output_is_off() -> None:
    bench = FakeBench()
    supply_on(bench).clear()
    assert bench.writes == ["VOLT 0.0000;:OUTP OFF", "VOLT:PROT:CLE", "CURR:PROT:CLE"]


def test_closing_closes_the_session() -> None:
    bench = FakeBench()
    supply_on(bench).close()
    assert [session.closed for session in bench.sessions] == [True]


def test_the_reading_of_the_table_is_the_message_that_the_dialect_makes() -> None:
    back = shipped().readback
    assert scpi.join(back.volts, back.amps, back.set_volts, back.set_amps, back.output, back.condition) == READING


@pytest.mark.parametrize("absurd", [math.inf, math.nan, 1.7e308])
def test_an_absurd_setpoint_is_sent_as_it_is_or_not_at_all(absurd: float) -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    before = list(bench.writes)
    with contextlib.suppress(ValueError):
        supply.set(Setpoint(volts=absurd, amps=0.1))
        assert bench.writes[-1] == f"CURR 0.1000;:VOLT {absurd:.4f}"
        return
    assert bench.writes == before


@given(volts=st.floats(0.0, 60.0), amps=st.floats(0.0, 20.0))
def test_a_setpoint_is_never_rounded_up(volts: float, amps: float) -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    supply.set(Setpoint(volts=volts, amps=amps))
    sent_amps, sent_volts = (float(unit.split()[1]) for unit in bench.writes[-1].split(";:"))
    # 0.1 nV is the noise of a float at 60 V, far below what any supply resolves.
    assert volts - 1.001e-4 <= sent_volts <= volts + 1e-9
    assert amps - 1.001e-4 <= sent_amps <= amps + 1e-9
