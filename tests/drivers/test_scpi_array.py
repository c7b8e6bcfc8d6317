"""A supply's own measurement array: how it is found, started and fetched, and what is made of lies about it.

Source of headers and error codes: SCPI-1999, from memory. What is true at the terminals: drivers/simulated/truth.py.
"""

import statistics
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchlog.clock import SystemClock, VirtualClock
from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import Scenario, load, with_array
from drivers.simulated.serve import Server
from drivers.simulated.supply_model import ArrayData
from drivers.simulated.truth import ArrayTruth, ReadingTruth
from drivers.simulated.virtual import VirtualSession
from drivers.supply import ArrayLimits, Dense, Setpoint, SupplyError, SupplyGarbled, SupplyTimeout
from drivers.visa import VisaSession
from tests.drivers.fake_bench import FakeBench, FakeSession, supply_on, unit_by_unit

AMPS = "SYST:ERR?;:FETC:ARR:CURR?"
NONE = '0,"No error"'


class Rig:
    """A supply in virtual time, what was sent to it, and replies that are not what the instrument said."""

    def __init__(self, scenario: Scenario, *, dialect: Dialect | None = None) -> None:
        self.clock = VirtualClock()
        self.bench = Bench(scenario, 3)
        self.said: list[str] = []
        self.replies: dict[str, Callable[[str], str]] = {}
        self.supply = ScpiSupply(self._open, dialect or shipped(), self.clock.now)

    def _open(self, timeout_s: float) -> VirtualSession:
        rig = self

        class Heard(VirtualSession):
            def write(self, message: str) -> None:
                rig.said.append(message)
                super().write(message)

            def query(self, message: str) -> str:
                return rig.replies.get(message, str)(super().query(message))

        session = Heard(self.bench, self.clock.now, self.clock.wait)
        session.set_timeout(timeout_s)
        return session

    def wait(self, seconds: float) -> None:
        self.clock.wait(self.clock.now() + seconds)

    def ask(self, query: str) -> str:
        """By another session."""
        return VirtualSession(self.bench, self.clock.now, self.clock.wait).query(query)

    def fetched(self, points: int = 50, interval_s: float = 2e-4) -> Dense:
        self.supply.find_array()
        self.supply.acquire(points, interval_s)
        self.wait(points * interval_s)
        return self.supply.fetch()


def fan(**changes: float) -> Scenario:
    """A cabin fan on a supply with an array."""
    scenario = with_array(load("free"))
    assert scenario.supply.array is not None
    array = msgspec.structs.replace(scenario.supply.array, **changes)
    return msgspec.structs.replace(scenario, supply=msgspec.structs.replace(scenario.supply, array=array))


def a_start(rig: Rig, points: int, interval_s: float) -> Dense:
    """The fan started at its rated volts while the array runs and readings go on, then off."""
    rig.supply.find_array()
    rig.supply.set(Setpoint(volts=0.0, amps=3.0))
    rig.supply.switch(True)
    assert rig.supply.acquire(points, interval_s) == pytest.approx(interval_s)
    full_s = rig.clock.now() + points * interval_s
    rig.wait(0.02)
    rig.supply.set(Setpoint(volts=12.0, amps=3.0))
    while rig.clock.now() < full_s:
        rig.supply.read()
    rig.supply.off()
    return rig.supply.fetch()


def test_identification_says_not_a_word_about_an_array() -> None:
    without, having = Rig(load("free")), Rig(fan())
    assert without.said == having.said
    assert without.supply.capabilities == having.supply.capabilities
    assert having.supply.capabilities.array is None


def test_an_array_is_found_by_queries_only_and_told_with_the_supplys_own_bounds() -> None:
    rig = Rig(fan(least_interval_s=5e-4, most_points=2000))
    before = len(rig.said)
    assert rig.supply.find_array() == ArrayLimits(least_interval_s=5e-4, most_points=2000)
    assert rig.supply.capabilities.array == ArrayLimits(least_interval_s=5e-4, most_points=2000)
    assert all(unit.partition(" ")[0].endswith("?") for message in rig.said[before:] for unit in message.split(";"))
    assert rig.supply.errors() == []


def test_no_more_samples_are_asked_for_than_a_reply_may_carry() -> None:
    rig = Rig(fan(most_points=100_000))
    assert rig.supply.find_array() == ArrayLimits(least_interval_s=2e-4, most_points=3750)
    assert len(rig.fetched(3750).volts) == 3750


def test_a_supply_without_an_array_says_so_in_one_round_trip_and_no_error_is_left() -> None:
    rig = Rig(load("free"))
    before, began_s = len(rig.said), rig.clock.now()
    assert rig.supply.find_array() is None
    # The error queue before, the question, the entry that it left, and the end of the queue: 1 ms each.
    assert rig.said[before:] == ["SYST:ERR?", "SYST:ERR?;:SENS:SWE:TINT?", "SYST:ERR?", "SYST:ERR?"]
    assert rig.clock.now() - began_s == pytest.approx(0.004)
    assert rig.supply.errors() == []
    assert rig.supply.capabilities.array is None
    with pytest.raises(ValueError, match="no measurement array was found"):
        rig.supply.acquire(100, 1e-3)


@pytest.mark.parametrize("complains", [True, False], ids=["with an error entry", "in silence"])
@pytest.mark.parametrize("dialect", [shipped(), unit_by_unit()], ids=["compound", "unit by unit"])
def test_a_supply_that_throws_the_whole_question_away_has_none_and_goes_on(dialect: Dialect, complains: bool) -> None:
    bench = FakeBench(complains=complains)
    supply = supply_on(bench, dialect)
    assert supply.find_array() is None
    assert bench.errors == []
    assert len(bench.sessions) == 2
    assert supply.read().volts in (12.003, 0.0)
    assert bench.writes == []


def test_an_array_whose_start_could_move_the_output_is_not_used() -> None:
    rig = Rig(fan())

    rig.replies["SYST:ERR?;:VOLT:TRIG?"] = lambda reply: f"{NONE};30.000"
    rig.replies["SYST:ERR?"] = lambda reply: NONE
    assert rig.supply.find_array() is None
    assert not any("INIT" in message for message in rig.said)


def test_an_array_is_not_asked_for_on_a_serial_line() -> None:
    bench = FakeBench()

    class Serial(FakeSession):
        resource = "ASRL/dev/ttyS0::INSTR"

    supply = ScpiSupply(lambda timeout_s: Serial(bench, timeout_s), shipped(), lambda: bench.now_s)
    asked = len(bench.queries)
    assert supply.find_array() is None
    assert len(bench.queries) == asked


def test_one_unit_a_message_serves_an_array_as_well() -> None:
    # Where a query is unknown there is silence then: three times at most, each with a fresh session.
    rig = Rig(fan(), dialect=unit_by_unit())
    dense = rig.fetched(40)
    assert len(dense.volts) == len(dense.amps) == 40
    assert not any(";" in message for message in rig.said)
    assert rig.supply.errors() == []


def test_a_start_is_seen_whole_as_the_terminals_had_it() -> None:
    rig = Rig(fan())
    dense = a_start(rig, 1500, 2e-4)
    (truth,) = (one for one in rig.bench.truth if isinstance(one, ArrayTruth))
    meter, data = rig.bench.scenario.supply, ArrayData()
    assert data.least_interval_s == dense.interval_s == truth.interval_s
    assert abs(dense.began_s - truth.began_s) <= dense.u_began_s + 1e-9
    assert dense.u_began_s <= 0.001
    # The meter's gain and offset at their widest, and four sigma of noise with half a step.
    for shown, true, offset, gain, noise in (
        (dense.volts, truth.true_volts, meter.offset_v, meter.gain, meter.noise_v),
        (dense.amps, truth.true_amps, meter.offset_a, 2 * meter.gain, meter.noise_a),
    ):
        errors = [a - b for a, b in zip(shown, true, strict=True)]
        assert max(map(abs, errors)) <= offset + gain * max(true) + 4.5 * noise + 0.0005
        assert 0.9 * noise <= statistics.stdev(errors[:90]) <= 1.4 * noise  # nothing but noise before the start
    # Seen as well: nothing before, then the peak of a start of 2 A that a window of 20 ms would halve.
    assert max(dense.amps[:90]) < 0.01
    assert max(dense.amps) > 1.7
    assert dense.volts[-1] == pytest.approx(12.0, abs=0.02)


def test_readings_beside_the_array_are_the_means_of_its_samples() -> None:
    # Another way to the same figures: the readback's windows of 20 ms, by integrals of their own.
    rig = Rig(fan())
    a_start(rig, 1500, 2e-4)
    (truth,) = (one for one in rig.bench.truth if isinstance(one, ArrayTruth))
    window_s, compared = rig.bench.scenario.supply.window_s, 0
    for reading in rig.bench.truth:
        if not isinstance(reading, ReadingTruth) or reading.at_s - window_s < truth.began_s:
            continue
        last = (reading.at_s - truth.began_s) / truth.interval_s
        first = last - window_s / truth.interval_s
        if last >= len(truth.true_amps):
            continue
        inside = truth.true_amps[round(first) : round(last)]
        assert statistics.fmean(inside) == pytest.approx(reading.true_amps, abs=0.02)
        compared += 1
    assert compared > 20


def test_readings_beside_the_array_are_those_without_it() -> None:
    def readings(scenario: Scenario, acquire: bool) -> list[float]:
        rig = Rig(scenario)
        rig.supply.set(Setpoint(volts=12.0, amps=3.0))
        rig.supply.switch(True)
        if acquire:
            rig.bench.send("SENS:SWE:POIN 500;TINT 0.0002;:INIT", rig.clock.now())
        return [rig.supply.read().amps for _ in range(30)]

    assert readings(fan(), acquire=True) == readings(load("free"), acquire=False)


def test_the_interval_that_comes_back_is_the_supplys_own() -> None:
    rig = Rig(fan(interval_step_s=1e-4))
    rig.supply.find_array()
    assert rig.supply.acquire(20, 2.6e-4) == pytest.approx(3e-4)
    rig.wait(1.0)
    assert rig.supply.fetch().interval_s == pytest.approx(3e-4)


def test_a_start_touches_neither_setpoint_nor_output() -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    before = len(rig.said)
    rig.supply.acquire(50, 1e-3)
    rig.wait(1.0)
    rig.supply.fetch()
    sent = [unit.lstrip(":") for message in rig.said[before:] for unit in message.split(";")]
    assert not any(unit.startswith(("VOLT", "CURR", "OUTP")) for unit in sent)
    reading = rig.supply.read()
    assert (reading.set_volts, reading.output_on) == (0.0, False)


def test_interval_and_number_of_samples_are_put_back_as_they_were_found() -> None:
    rig = Rig(fan())
    rig.bench.send("SENS:SWE:TINT 0.003;POIN 77", rig.clock.now())
    rig.fetched(50)
    reply, _ = rig.bench.send("SENS:SWE:TINT?;POIN?", rig.clock.now())
    assert reply == "0.003000;77"


@pytest.mark.parametrize(
    ("points", "interval_s"),
    [(1, 1e-3), (3751, 1e-3), (100, 1e-4), (100, 1.1), (100, float("nan")), (100, float("inf")), (-5, 1e-3)],
)
def test_what_the_array_can_not_do_is_refused_and_nothing_is_sent(points: int, interval_s: float) -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    before = list(rig.said)
    with pytest.raises(ValueError, match="are possible"):
        rig.supply.acquire(points, interval_s)
    assert rig.said == before


def test_an_array_that_can_not_be_full_yet_is_not_fetched_and_nothing_is_sent() -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    with pytest.raises(ValueError, match="not started"):
        rig.supply.fetch()
    rig.supply.acquire(1000, 1e-3)
    before = list(rig.said)
    rig.wait(0.9)
    with pytest.raises(ValueError, match="full only 1 s after"):
        rig.supply.fetch()
    assert rig.said == before
    rig.wait(0.2)
    assert len(rig.supply.fetch().amps) == 1000


def test_an_array_that_lost_what_it_held_says_so_and_the_supply_goes_on() -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    rig.supply.acquire(100, 1e-3)
    rig.bench.send("ABOR", rig.clock.now())
    rig.wait(1.0)
    with pytest.raises(SupplyError, match="nothing to give: -230, Data corrupt or stale"):
        rig.supply.fetch()
    assert rig.supply.errors() == []
    assert rig.supply.read().output_on is False


def setting(interval: str, points: int) -> str:
    return (
        f"SYST:ERR?;:ABOR;:SENS:SWE:TINT {interval};:SENS:SWE:POIN {points};:SENS:SWE:OFFS:POIN 0;:TRIG:SOUR IMM;"
        ":SENS:SWE:TINT?;:SENS:SWE:POIN?"
    )


SETTING = setting("0.001000", 100)
START = "SYST:ERR?;:INIT;:SYST:ERR?"


@pytest.mark.parametrize(
    ("message", "reply", "why"),
    [
        (START, f'{NONE};-213,"Init ignored"', "did not start: -213, Init ignored"),
        (START, NONE, "did not start: it does not know how"),
        (SETTING, NONE, "did not start: it does not know how"),
        (SETTING, f"{NONE};0.001;64", "did not start: 64 samples every 0.001 s, where 100"),
        (SETTING, f"{NONE};0.0;100", "did not start: 100 samples every 0 s"),
    ],
)
def test_a_start_that_does_not_come_about_is_an_error_and_the_supply_goes_on(
    message: str, reply: str, why: str
) -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    rig.replies[message] = lambda true: reply
    with pytest.raises(SupplyError, match=why) as raised:
        rig.supply.acquire(100, 1e-3)
    assert raised.type is SupplyError
    assert "ABOR" in rig.said
    with pytest.raises(ValueError, match="not started"):
        rig.supply.fetch()
    assert rig.supply.read().output_on is False
    assert rig.bench.send("SENS:SWE:TINT?;POIN?", rig.clock.now())[0] == "0.001000;1024"
    rig.replies.clear()
    assert len(rig.fetched(100, 1e-3).amps) == 100


@pytest.mark.parametrize(
    ("message", "reply"),
    [
        (START, f"{NONE};5"),
        (START, "5"),
        (SETTING, f"{NONE};0.001"),
        (SETTING, f"{NONE};0.001;9.9E37"),
        (SETTING, f"{NONE};0.001;100;0"),
        ("SYST:ERR?;:SENS:SWE:TINT?;:SENS:SWE:POIN?", f"{NONE};INF;100"),
    ],
)
def test_a_garbled_answer_to_a_start_makes_the_session_suspect(message: str, reply: str) -> None:
    rig = Rig(fan())
    rig.supply.find_array()
    rig.replies[message] = lambda true: reply
    with pytest.raises(SupplyGarbled):
        rig.supply.acquire(100, 1e-3)
    with pytest.raises(SupplyTimeout, match="suspect"):
        rig.supply.read()


def test_no_sign_of_life_is_further_apart_than_two_replies() -> None:
    # Who waits for signs of life bears six replies, of which the reading that follows is one.
    for dialect in (shipped(), unit_by_unit()):
        rig = Rig(fan(), dialect=dialect)
        rig.supply.find_array()
        said: list[int] = []

        def alive(rig: Rig = rig, said: list[int] = said) -> None:
            said.append(len(rig.said))

        first = len(rig.said)
        rig.supply.acquire(50, 1e-3, alive)
        rig.wait(1.0)
        rig.supply.fetch(alive)
        assert said[0] == first
        assert max(b - a for a, b in zip(said, [*said[1:], len(rig.said)], strict=True)) <= 3


@pytest.mark.parametrize(
    ("spoil", "why"),
    [
        (lambda reply: reply.rpartition(",")[0], "49 numbers where 50"),
        (lambda reply: reply + ",0.001", "51 numbers where 50"),
        (lambda reply: reply[: len(reply) // 2] + ",9.9E37," + reply[len(reply) // 2 :], "52 numbers"),
        (lambda reply: reply.rpartition(",")[0] + ",9.9E37", "nothing was measured"),
        (lambda reply: reply.rpartition(",")[0] + ",NAN", "not a number"),
        (lambda reply: reply.rpartition(",")[0] + ",", "not a number"),
        (lambda reply: reply.replace('0,"No error";', ""), "error queue"),
        (lambda reply: reply + ";1", "not a number"),
    ],
)
def test_a_list_in_another_form_is_garbled_and_the_session_suspect(spoil: Callable[[str], str], why: str) -> None:
    rig = Rig(fan())
    rig.replies[AMPS] = spoil
    with pytest.raises(SupplyGarbled, match=why):
        rig.fetched()
    with pytest.raises(SupplyTimeout, match="suspect"):
        rig.supply.read()
    rig.supply.reopen()
    rig.replies.clear()
    assert len(rig.supply.fetch().amps) == 50


def test_an_array_that_nobody_fetched_is_stopped_and_its_settings_put_back_on_closing() -> None:
    for dialect in (shipped(), unit_by_unit()):
        rig = Rig(fan(), dialect=dialect)
        rig.supply.find_array()
        found = rig.ask("SENS:SWE:TINT?"), rig.ask("SENS:SWE:POIN?")
        rig.supply.acquire(50, 1e-3)
        assert rig.ask("SENS:SWE:POIN?") != found[1]
        rig.supply.off()
        before = len(rig.said)
        rig.supply.close()
        assert ";".join(rig.said[before:]).startswith("ABOR")
        assert (rig.ask("SENS:SWE:TINT?"), rig.ask("SENS:SWE:POIN?")) == found


def test_on_closing_nothing_is_sent_about_an_array_that_was_fetched_nor_over_a_session_that_is_suspect() -> None:
    rig = Rig(fan())
    rig.fetched()
    before = len(rig.said)
    rig.supply.close()
    assert rig.said[before:] == []
    lost = Rig(fan())
    lost.supply.find_array()
    lost.supply.acquire(50, 1e-3)
    lost.replies[AMPS] = lambda true: "no list"
    lost.wait(1.0)
    with pytest.raises(SupplyGarbled):
        lost.supply.fetch()
    before = len(lost.said)
    lost.supply.close()
    assert lost.said[before:] == []


class Patient(VisaSession):
    """Bears late replies: both ends are threads of this process, and a busy machine may stop it at any time."""

    def set_timeout(self, timeout_s: float) -> None:
        super().set_timeout(max(10.0, timeout_s))


@contextmanager
def over_tcp(scenario: Scenario) -> Iterator[tuple[ScpiSupply, Bench]]:
    bench = Bench(scenario, 5)
    server = Server(bench)
    thread = threading.Thread(target=server.run)
    thread.start()
    supply = ScpiSupply(
        lambda timeout_s: Patient(server.resource, termination="\n", timeout_s=timeout_s),
        shipped(),
        SystemClock().now,
    )
    try:
        yield supply, bench
    finally:
        supply.close()
        server.stop()
        thread.join(10.0)


def test_over_tcp_the_longest_list_is_read_whole_and_in_time() -> None:
    with over_tcp(fan()) as (supply, bench):
        limits = supply.find_array()
        assert limits is not None
        began_s = SystemClock().now()
        supply.acquire(limits.most_points, limits.least_interval_s)
        supply.set(Setpoint(volts=3.0, amps=1.0))
        supply.switch(True)
        while SystemClock().now() < began_s + limits.most_points * limits.least_interval_s + 0.1:
            supply.read()
        supply.off()
        worked_s = time.process_time()
        dense = supply.fetch()
        # The work of both ends, which others on the machine do not lengthen. A reply gets 0.3 s at the least.
        assert time.process_time() - worked_s < 0.3
        assert supply.errors() == []
        (truth,) = (one for one in bench.truth if isinstance(one, ArrayTruth))
        assert len(dense.volts) == len(truth.true_volts) == 3750
        assert max(abs(a - b) for a, b in zip(dense.volts, truth.true_volts, strict=True)) < 0.015


NUMBERS = st.floats().map(str) | st.integers().map(str)
LIES = st.text(max_size=30) | NUMBERS | st.lists(NUMBERS, max_size=4).map(",".join)


@settings(max_examples=60, deadline=None)
@given(reply=LIES | LIES.map(lambda lie: f"{NONE};{lie}"), from_question=st.integers(0, 12))
def test_no_reply_about_an_array_becomes_a_command(reply: str, from_question: int) -> None:
    rig = Rig(fan())
    asked = 0

    def lie(true: str) -> str:
        nonlocal asked
        asked += 1
        return true if asked <= from_question else reply

    for query in ("SENS:SWE:TINT?", "SENS:SWE:TINT?;:SENS:SWE:POIN?", "VOLT:TRIG?", "SENS:SWE:TINT? MIN"):
        rig.replies[f"SYST:ERR?;:{query}"] = lie
    for message in ("SYST:ERR?;:SENS:SWE:POIN? MAX", setting("0.000200", 50), START):
        rig.replies[message] = lie
    before = len(rig.said)
    with suppress(SupplyError, ValueError):
        rig.fetched()
    for message in rig.said[before:]:
        for unit in message.split(";:"):
            header, _, value = unit.partition(" ")
            assert header.rstrip("?") in {
                "SYST:ERR", "SENS:SWE:TINT", "SENS:SWE:POIN", "SENS:SWE:OFFS:POIN", "TRIG:SOUR", "INIT", "ABOR",
                "VOLT:TRIG", "FETC:ARR:VOLT", "FETC:ARR:CURR", "*IDN",
            }  # fmt: skip
            assert value in ("", "IMM", "MIN", "MAX") or float(value) == float(value)
            assert ";" not in value
