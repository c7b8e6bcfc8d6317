"""A supply over a session that answers from a table, and the faults a session can have."""

from collections.abc import Callable

import msgspec
import pytest

from drivers import scpi
from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import FIRST_REPLY_S, REOPEN_S, ScpiSupply
from drivers.supply import (
    NotASupply,
    Protection,
    Regulation,
    Setpoint,
    SupplyError,
    SupplyGarbled,
    SupplyLost,
    SupplyTimeout,
)

NONE = '0,"No error"'
READING = "MEAS:VOLT?;:MEAS:CURR?;:VOLT?;:CURR?;:OUTP?;:STAT:QUES:COND?"
ANSWERS = {
    "*IDN?": "Harbour,Bench supply,17,1.0",
    "MEAS:VOLT?": "0.000",
    "MEAS:CURR?": "0.0000",
    "VOLT?": "0.000",
    "CURR?": "0.1000",
    "OUTP?": "0",
    "STAT:QUES:COND?": "0",
    "VOLT? MAX": "32.000",
    "CURR? MAX": "3.1000",
    "VOLT:PROT?": "13.200",
    "VOLT:PROT:STAT?": "1",
    "VOLT:PROT:TRIP?": "0",
    "CURR:PROT?": "2.2000",
    "CURR:PROT:STAT?": "1",
    "CURR:PROT:TRIP?": "0",
    READING: "12.003;0.5002;12.000;1.0000;1;2",
}


class FakeBench:
    """What stands behind the sessions: a table of replies, an error queue, and what was said, in order.

    A query that is not in the table gets no reply; with `complains` it also leaves an error entry, as the standard
    asks for. `slow_s`: how long each reply takes.
    """

    def __init__(self, *, without: tuple[str, ...] = (), complains: bool = True, slow_s: float = 0.001) -> None:
        self.answers = {query: reply for query, reply in ANSWERS.items() if query not in without}
        self.errors: list[str] = []
        self.complains = complains
        self.slow_s = slow_s
        self.now_s = 0.0
        self.writes: list[str] = []
        self.queries: list[str] = []
        self.sessions: list[FakeSession] = []
        self.refuses_with: SupplyError | None = None

    def open(self, timeout_s: float) -> "FakeSession":
        if self.refuses_with is not None:
            raise self.refuses_with
        self.sessions.append(FakeSession(self, timeout_s))
        return self.sessions[-1]

    def reply_to(self, query: str) -> str | None:
        self.now_s += self.slow_s
        if query == "SYST:ERR?":
            return self.errors.pop(0) if self.errors else NONE
        if query not in self.answers and self.complains:
            self.errors.append('-113,"Undefined header"')
        return self.answers.get(query)


class FakeSession:
    """`late`: so many replies are still on their way, so that each query gets the one before it."""

    resource = "FAKE::17"

    def __init__(self, bench: FakeBench, timeout_s: float) -> None:
        self.bench = bench
        self.timeout_s = timeout_s
        self.closed = False
        self.late: list[str] = []
        self.lose_next = False

    def set_timeout(self, timeout_s: float) -> None:
        self.timeout_s = timeout_s

    def write(self, message: str) -> None:
        assert not self.closed
        self.bench.writes.append(message)

    def query(self, message: str) -> str:
        assert not self.closed
        self.bench.queries.append(message)
        reply = self.bench.reply_to(message)
        if reply is None or self.lose_next or self.bench.slow_s > self.timeout_s:
            self.lose_next = False
            raise SupplyTimeout(self.resource, "no reply in time")
        self.late.append(reply)
        return self.late.pop(0)

    def close(self) -> None:
        self.closed = True


def supply_on(bench: FakeBench, dialect: Dialect | None = None) -> ScpiSupply:
    return ScpiSupply(bench.open, dialect or shipped(), lambda: bench.now_s)


def unit_by_unit() -> Dialect:
    dialect = shipped()
    return msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, compound=False))


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


def test_a_latch_that_tells_its_state_in_words_is_switched_on_like_any() -> None:
    bench = FakeBench()
    bench.answers |= {"VOLT:PROT:STAT?": "ON", "VOLT:PROT:TRIP?": "OFF"}
    supply = supply_on(bench)
    assert supply.protect(Protection(over_volts=13.2, over_amps=2.2)).over_volts == 13.2
    assert "VOLT:PROT 13.2000;:VOLT:PROT:STAT ON" in bench.writes
    bench.answers["VOLT:PROT:TRIP?"] = "ON"
    assert supply.tripped() == "over-voltage"


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


def test_closing_closes_the_session() -> None:
    bench = FakeBench()
    supply_on(bench).close()
    assert [session.closed for session in bench.sessions] == [True]


def test_the_reading_of_the_table_is_the_message_that_the_dialect_makes() -> None:
    back = shipped().readback
    assert scpi.join(back.volts, back.amps, back.set_volts, back.set_amps, back.output, back.condition) == READING
