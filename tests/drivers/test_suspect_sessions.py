"""After a fault nothing is believed and nothing is sent until the session is opened again."""

from collections.abc import Callable

import pytest

from drivers.dialect import shipped
from drivers.exchange import REOPEN_S
from drivers.scpi_supply import FIRST_REPLY_S, ScpiSupply
from drivers.supply import NotASupply, Protection, Setpoint, SupplyGarbled, SupplyLost, SupplyTimeout
from tests.drivers.fake_bench import ANSWERS, NONE, READING, FakeBench, FakeSession, supply_on


def lose_the_reply(bench: FakeBench) -> None:
    bench.sessions[-1].lose_next = True


def answer_late(bench: FakeBench) -> None:
    bench.sessions[-1].late.append(NONE)


def answering(reply: str) -> Callable[[FakeBench], None]:
    def answer(bench: FakeBench) -> None:
        bench.answers[READING] = reply

    return answer


FAULTS = {
    "a lost reply": (lose_the_reply, SupplyTimeout),
    "a reply of the question before": (answer_late, SupplyGarbled),
    "no text": (answering(""), SupplyGarbled),
    "garbage": (answering("\x00\ufffd\ufffdq;;;"), SupplyGarbled),
    "five values": (answering("12.003;0.5002;12.000;1.0000;1"), SupplyGarbled),
    "seven values": (answering("12.003;0.5002;12.000;1.0000;1;2;0"), SupplyGarbled),
    "nothing measured": (answering("9.91E37;0.5002;12.000;1.0000;1;2"), SupplyGarbled),
    "infinite current": (answering("12.003;9.9E37;12.000;1.0000;1;2"), SupplyGarbled),
    "no output state": (answering("12.003;0.5002;12.000;1.0000;;2"), SupplyGarbled),
    "no register": (answering("12.003;0.5002;12.000;1.0000;1;-2"), SupplyGarbled),
}
USES: dict[str, Callable[[ScpiSupply], object]] = {
    "read": lambda supply: supply.read(),
    "set": lambda supply: supply.set(Setpoint(volts=1.0, amps=0.1)),
    "switch": lambda supply: supply.switch(True),
    "off": lambda supply: supply.off(),
    "protect": lambda supply: supply.protect(Protection(over_volts=13.2, over_amps=2.2)),
    "tripped": lambda supply: supply.tripped(),
    "clear": lambda supply: supply.clear(),
    "errors": lambda supply: supply.errors(),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_after_a_fault_every_use_raises_and_nothing_is_sent_until_it_is_reopened(fault: str) -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    cause, error = FAULTS[fault]
    cause(bench)
    with pytest.raises(error):
        supply.read()
    said = (len(bench.queries), len(bench.writes))
    for use in USES.values():
        with pytest.raises(SupplyTimeout, match="suspect"):
            use(supply)
    assert (len(bench.queries), len(bench.writes)) == said
    bench.answers[READING] = ANSWERS[READING]
    supply.reopen()
    assert supply.read().volts == 12.003
    assert [session.closed for session in bench.sessions] == [True, False]


@pytest.mark.parametrize("length", range(len(ANSWERS[READING])))
def test_a_reading_cut_at_any_place_is_never_a_reading(length: int) -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.answers[READING] = ANSWERS[READING][:length]
    with pytest.raises(SupplyGarbled):
        supply.read()


@pytest.mark.parametrize("use", ["tripped", "protect", "errors"])
def test_a_reply_of_the_wrong_form_makes_the_session_suspect_in_every_question(use: str) -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.answers |= {"VOLT:PROT:TRIP?": "no", "VOLT:PROT?": "13,2"}
    bench.errors = ["no quotes"]
    with pytest.raises(SupplyGarbled):
        USES[use](supply)
    with pytest.raises(SupplyTimeout, match="suspect"):
        supply.off()
    assert not any("OUTP OFF" in message for message in bench.writes)


def test_another_identity_after_reopening_is_not_the_supply_and_stays_unused() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.answers["*IDN?"] = "Harbour,Bench supply,18,1.0"
    with pytest.raises(NotASupply, match=r"18,1\.0"):
        supply.reopen()
    for use in USES.values():
        with pytest.raises(SupplyTimeout, match="suspect"):
            use(supply)
    assert bench.writes == []


def test_an_identity_of_the_wrong_form_after_reopening_leaves_the_session_suspect() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.answers["*IDN?"] = "12.003"
    with pytest.raises(SupplyGarbled):
        supply.reopen()
    with pytest.raises(SupplyTimeout, match="suspect"):
        supply.read()


def test_a_session_that_can_not_be_reopened_is_not_used_either() -> None:
    bench = FakeBench()
    supply = supply_on(bench)
    bench.refuses_with = SupplyLost("FAKE::17", "nothing listens at this address")
    with pytest.raises(SupplyLost):
        supply.reopen()
    for use in USES.values():
        with pytest.raises(SupplyTimeout, match="suspect"):
            use(supply)
    bench.refuses_with = None
    supply.reopen()
    assert supply.read().volts == 12.003


def test_a_reply_that_takes_longer_than_three_usual_ones_is_lost() -> None:
    bench = FakeBench(slow_s=0.2)
    supply = supply_on(bench)
    assert bench.sessions[-1].timeout_s == pytest.approx(0.6)
    bench.slow_s = 0.7
    with pytest.raises(SupplyTimeout):
        supply.read()


def test_a_supply_that_is_slow_by_nature_is_also_identified_when_it_does_not_know_a_query() -> None:
    can = supply_on(FakeBench(without=("VOLT? MAX",), slow_s=0.7)).capabilities
    assert can.volts_max is None
    assert can.amps_max == 3.1


def test_a_supply_that_is_slow_by_nature_can_be_reopened() -> None:
    bench = FakeBench(slow_s=0.7)
    supply = supply_on(bench)
    lose_the_reply(bench)
    with pytest.raises(SupplyTimeout):
        supply.read()
    supply.reopen()
    assert supply.read().volts == 12.003


def test_the_first_answer_may_take_longer_than_one_after_reopening() -> None:
    bench = FakeBench()
    asked: list[float] = []

    def open_session(timeout_s: float) -> FakeSession:
        asked.append(timeout_s)
        return bench.open(timeout_s)

    supply = ScpiSupply(open_session, shipped(), lambda: bench.now_s)
    supply.reopen()
    assert asked == [FIRST_REPLY_S, REOPEN_S]
