"""What identification finds out, whom it refuses, and that it sends nothing but queries."""

import pytest

from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply
from drivers.supply import NotASupply, Protection
from tests.drivers.fake_bench import FakeBench, FakeSession, supply_on


def test_identification_tells_identity_ranges_steps_and_latches() -> None:
    can = supply_on(FakeBench()).capabilities
    assert can.identity == "Harbour,Bench supply,17,1.0"
    assert can.dialect == "SCPI-1999, one output"
    assert (can.volts_max, can.amps_max) == (32.0, 3.1)
    assert can.volts_step == pytest.approx(1e-3)
    assert can.amps_step == pytest.approx(1e-4)
    assert can.over_volts
    assert can.over_amps
    assert can.reply_s == pytest.approx(0.001)


def test_identification_sends_nothing_but_queries() -> None:
    bench = FakeBench()
    supply_on(bench)
    assert bench.writes == []
    assert bench.queries[0] == "*IDN?"
    assert all("?" in unit for query in bench.queries for unit in query.split(";"))


def test_identification_of_a_supply_that_tells_little_sends_nothing_but_queries_either() -> None:
    bench = FakeBench(without=("VOLT? MAX", "CURR? MAX", "VOLT:PROT?", "CURR:PROT?"))
    supply_on(bench)
    assert bench.writes == []
    assert all("?" in query for query in bench.queries)


def test_old_entries_of_the_error_queue_are_drained_by_identification() -> None:
    bench = FakeBench()
    bench.errors = ['-222,"Data out of range"', '-113,"Undefined header"']
    supply = supply_on(bench)
    assert bench.errors == []
    assert supply.errors() == []


@pytest.mark.parametrize("complains", [True, False], ids=["with an error entry", "in silence"])
def test_a_supply_without_an_over_voltage_latch_is_used_without_one(complains: bool) -> None:
    bench = FakeBench(without=("VOLT:PROT?", "VOLT:PROT:STAT?", "VOLT:PROT:TRIP?"), complains=complains)
    supply = supply_on(bench)
    assert not supply.capabilities.over_volts
    assert supply.capabilities.over_amps
    assert supply.protect(Protection(over_volts=13.2, over_amps=2.2)) == Protection(over_volts=None, over_amps=2.2)
    assert not any("VOLT:PROT" in message for message in bench.writes)


def test_a_latch_that_can_not_be_switched_is_set_and_never_switched() -> None:
    bench = FakeBench(without=("VOLT:PROT:STAT?",))
    supply = supply_on(bench)
    assert supply.capabilities.over_volts
    assert supply.protect(Protection(over_volts=13.2, over_amps=None)).over_volts == 13.2
    assert bench.writes[0] == "VOLT:PROT 13.2000"


@pytest.mark.parametrize("complains", [True, False], ids=["with an error entry", "in silence"])
def test_a_supply_that_does_not_tell_its_range_is_used_without_one(complains: bool) -> None:
    can = supply_on(FakeBench(without=("VOLT? MAX",), complains=complains)).capabilities
    assert can.volts_max is None
    assert can.amps_max == 3.1


def test_a_range_that_is_answered_and_complained_about_is_not_believed() -> None:
    bench = FakeBench()
    asked: list[str] = []

    class Grumbler(FakeSession):
        def query(self, message: str) -> str:
            reply = super().query(message)
            if message == "VOLT? MAX":
                asked.append(message)
                self.bench.errors.append('-108,"Parameter not allowed"')
            return reply

    supply = ScpiSupply(lambda timeout_s: Grumbler(bench, timeout_s), shipped(), lambda: bench.now_s)
    assert asked == ["VOLT? MAX"]
    assert supply.capabilities.volts_max is None


@pytest.mark.parametrize("missing", ["MEAS:VOLT?", "MEAS:CURR?", "VOLT?", "CURR?", "OUTP?", "STAT:QUES:COND?"])
def test_what_does_not_answer_a_reading_is_not_a_supply(missing: str) -> None:
    bench = FakeBench(without=(missing,))
    with pytest.raises(NotASupply, match="does not answer as a supply"):
        supply_on(bench)
    assert bench.writes == []
    assert all(session.closed for session in bench.sessions)


@pytest.mark.parametrize(
    ("query", "reply"),
    [
        ("MEAS:VOLT?", "9.91E37"),
        ("MEAS:CURR?", "OVER"),
        ("MEAS:VOLT?", "0E999"),
        ("OUTP?", "2"),
        ("STAT:QUES:COND?", "-1"),
    ],
)
def test_what_answers_a_reading_in_another_form_is_not_a_supply(query: str, reply: str) -> None:
    bench = FakeBench()
    bench.answers[query] = reply
    with pytest.raises(NotASupply, match="does not answer as a supply"):
        supply_on(bench)
    assert bench.writes == []


def test_what_answers_everything_with_its_identity_is_not_a_supply() -> None:
    bench = FakeBench()

    class Parrot(FakeSession):
        def query(self, message: str) -> str:
            self.bench.queries.append(message)
            return "Harbour,Bench supply,17,1.0"

    with pytest.raises(NotASupply, match="does not answer as a supply"):
        ScpiSupply(lambda timeout_s: Parrot(bench, timeout_s), shipped(), lambda: bench.now_s)


def test_what_does_not_identify_itself_is_not_a_supply_and_the_session_is_closed() -> None:
    bench = FakeBench(without=("*IDN?",))
    with pytest.raises(NotASupply, match="another program holds it"):
        supply_on(bench)
    assert [session.closed for session in bench.sessions] == [True]


def test_what_is_known_already_is_not_asked_again() -> None:
    known = supply_on(FakeBench()).capabilities
    bench = FakeBench()
    supply = ScpiSupply(bench.open, shipped(), lambda: bench.now_s, known=known)
    supply.off()
    assert bench.queries == []
    assert bench.writes == ["VOLT 0.0000;:OUTP OFF"]
