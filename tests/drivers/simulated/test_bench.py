"""The bench as a whole, in virtual time."""

import statistics

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.simulated.bench import Bench
from drivers.simulated.scenario import Scenario, load
from drivers.simulated.truth import OutputTruth, ReadingTruth
from drivers.simulated.virtual import VirtualSession
from drivers.supply import SupplyLost, SupplyTimeout

READ = ":MEAS:VOLT?;:MEAS:CURR?"


class Caller:
    """A controller with a clock of its own and a virtual session."""

    def __init__(self, scenario: Scenario, *, seed: int = 0, start_s: float = 0.0) -> None:
        self.now_s = start_s
        self.bench = Bench(scenario, seed)
        self.session = VirtualSession(self.bench, lambda: self.now_s, self.wait)

    def wait(self, until_s: float) -> None:
        self.now_s = max(self.now_s, until_s)

    def read(self) -> tuple[float, float]:
        volts, amps = self.session.query(READ).split(";")
        return float(volts), float(amps)


def with_supply(scenario: Scenario, **changes: float) -> Scenario:
    return msgspec.structs.replace(scenario, supply=msgspec.structs.replace(scenario.supply, **changes))


def test_a_reply_leaves_after_its_latency_and_moves_the_callers_clock() -> None:
    caller = Caller(load("free"), start_s=100.0)
    caller.read()
    assert caller.now_s == pytest.approx(100.008)
    caller.session.query("*IDN?")
    assert caller.now_s == pytest.approx(100.009)


def test_the_first_time_given_is_where_the_bench_begins() -> None:
    bench = Bench(load("free"))
    _, leaves_s = bench.send("*IDN?", 123456.0)
    assert leaves_s == pytest.approx(123456.001)
    assert bench.now_s == 123456.0


def test_a_message_that_arrives_while_another_is_answered_waits_its_turn() -> None:
    bench = Bench(load("free"))
    _, first_s = bench.send(READ, 1.0)
    _, second_s = bench.send(READ, 1.001)
    assert (first_s, second_s) == pytest.approx((1.008, 1.016))


def test_a_time_that_has_passed_changes_nothing() -> None:
    bench = Bench(load("free"))
    bench.send("VOLT 5;CURR 1;:OUTP ON", 1.0)
    bench.advance(1.5)
    volts = bench.output.volts
    bench.advance(1.2)
    assert bench.now_s == pytest.approx(1.5)
    assert bench.output.volts == volts


def test_the_same_seed_gives_the_same_bench_and_another_seed_another() -> None:
    def story(seed: int) -> list[tuple[float, float]]:
        caller = Caller(load("stuck-soft"), seed=seed)
        caller.session.write("VOLT 9;CURR 1.5;:OUTP ON")
        return [caller.read() for _ in range(60)]

    assert story(4) == story(4)
    assert story(4) != story(5)


def test_how_often_the_model_is_advanced_does_not_matter() -> None:
    often, seldom = Bench(load("free"), 1), Bench(load("free"), 1)
    for bench in (often, seldom):
        bench.send("VOLT 9;CURR 2;:OUTP ON", 0.0)
    for index in range(1, 1300):
        often.advance(index * 0.0004)
    often.advance(0.52)
    seldom.advance(0.52)
    assert often.motor is not None
    assert seldom.motor is not None
    assert often.motor.speed == pytest.approx(seldom.motor.speed, rel=1e-3)
    assert often.output.amps == pytest.approx(seldom.output.amps, rel=0.01)


def test_long_steps_while_only_heat_changes_lose_nothing() -> None:
    whole, pieces = Bench(load("locked-hot"), 1), Bench(load("locked-hot"), 1)
    for bench in (whole, pieces):
        bench.send("VOLT 12;CURR 2;:OUTP ON", 0.0)
    whole.advance(1.0)
    for index in range(1, 10001):
        pieces.advance(index * 1e-4)  # never leaves room for a step of 1 ms
    assert whole.motor is not None
    assert pieces.motor is not None
    assert whole.motor.winding_c == pytest.approx(pieces.motor.winding_c, abs=0.01)
    assert whole.output.amps == pytest.approx(pieces.output.amps, rel=1e-4)


def test_truth_holds_the_exact_window_mean_behind_each_reading() -> None:
    caller = Caller(with_supply(load("free"), noise_v=0.0, noise_a=0.0))
    caller.session.write("VOLT 6;CURR 2;:OUTP ON")
    caller.wait(0.0153)
    volts, amps = caller.read()
    truth = caller.bench.truth[-1]
    assert isinstance(truth, ReadingTruth)
    assert (truth.reported_volts, truth.reported_amps) == (volts, amps)
    assert truth.at_s == pytest.approx(0.0153)
    assert volts == pytest.approx(truth.true_volts, abs=0.006)
    assert amps == pytest.approx(truth.true_amps, abs=0.006)
    assert truth.output_on
    assert truth.speed > 0.0


def test_volts_and_amps_of_one_message_are_one_acquisition() -> None:
    caller = Caller(load("free"))
    caller.read()
    caller.session.query("MEAS:VOLT?")
    assert len([record for record in caller.bench.truth if isinstance(record, ReadingTruth)]) == 2


def test_truth_notes_every_switch_of_the_output_and_why() -> None:
    heard: list[object] = []
    caller = Caller(load("free"))
    caller.bench.on_truth = heard.append
    caller.session.write("VOLT 9;CURR 2;:OUTP ON")
    caller.wait(0.5)
    caller.session.write("VOLT:PROT 5")
    caller.wait(1.0)
    assert caller.session.query("VOLT:PROT:TRIP?") == "1"
    caller.session.write("OUTP OFF;:VOLT 0;:VOLT:PROT:CLE")
    for word in ("ON", "OFF", "ON"):
        caller.session.write(f"OUTP {word}")
    switches = [record for record in caller.bench.truth if isinstance(record, OutputTruth)]
    assert [(record.on, record.why) for record in switches] == [
        (True, "command"),
        (False, "over-voltage"),
        (True, "command"),
        (False, "command"),
        (True, "command"),
    ]
    assert switches[1].at_s == pytest.approx(0.5, abs=0.001)
    assert heard == caller.bench.truth


def test_extremes_are_kept_over_the_whole_run() -> None:
    caller = Caller(load("hopeless"))
    caller.session.write("VOLT 6;CURR 2;:OUTP ON")
    caller.wait(0.5)
    caller.session.write("OUTP OFF")
    caller.wait(1.0)
    caller.read()
    extremes = caller.bench.extremes
    assert extremes.max_volts == pytest.approx(6.0, abs=0.01)
    assert extremes.max_amps == pytest.approx(1.2, abs=0.01)
    assert extremes.output_on_s == pytest.approx(0.5, abs=0.001)
    assert extremes.stalled_s == pytest.approx(0.5, abs=0.002)
    assert extremes.max_winding_c is not None
    assert 20.2 < extremes.max_winding_c < 21.0


def test_swapped_leads_turn_the_motor_the_other_way_with_current_the_same() -> None:
    caller = Caller(load("free"))
    caller.bench.swap_leads()
    caller.session.write("VOLT 9;CURR 2;:OUTP ON")
    caller.wait(1.0)
    volts, amps = caller.read()
    assert caller.bench.motor is not None
    assert caller.bench.motor.speed < -100.0
    assert volts == pytest.approx(9.0, abs=0.02)
    assert amps > 0.05


def test_a_cell_on_the_terminals_shows_before_the_output_is_on() -> None:
    caller = Caller(with_supply(load("open"), volts_on_terminals=3.7))
    caller.wait(0.0)
    caller.read()
    caller.wait(0.1)
    assert caller.read()[0] == pytest.approx(3.7, abs=0.02)


def test_a_query_that_nothing_answers_times_out_in_the_callers_time() -> None:
    caller = Caller(load("free"))
    caller.session.set_timeout(0.4)
    with pytest.raises(SupplyTimeout):
        caller.session.query("VOLT 3")
    assert caller.now_s == pytest.approx(0.4)


def test_a_reply_that_is_too_late_answers_the_next_question() -> None:
    caller = Caller(load("free"))
    caller.bench.instrument.reply_s = 0.5
    caller.session.set_timeout(0.3)
    with pytest.raises(SupplyTimeout):
        caller.session.query("*IDN?")
    assert caller.session.query("VOLT?").startswith("Harbour Workshop")


def test_a_closed_session_is_lost() -> None:
    caller = Caller(load("free"))
    caller.session.close()
    with pytest.raises(SupplyLost):
        caller.session.write("OUTP ON")
    assert not caller.bench.output.on


@settings(max_examples=15, deadline=None)
@given(
    name=st.sampled_from(["free", "stuck-soft", "short", "diode", "electronic", "brush-lifts", "open"]),
    commands=st.lists(
        st.tuples(st.floats(0.0, 24.0), st.floats(0.0, 5.0), st.booleans(), st.floats(0.0, 0.1)),
        min_size=1,
        max_size=12,
    ),
)
def test_the_terminals_never_have_more_than_the_highest_setpoint(
    name: str, commands: list[tuple[float, float, bool, float]]
) -> None:
    bench, at_s = Bench(load(name), 2), 0.0
    highest = 0.0
    for volts, amps, on, rest_s in commands:
        bench.send(f"VOLT {volts:.3f};CURR {amps:.3f};:OUTP {int(on)}", at_s)
        highest = max(highest, volts)
        at_s += rest_s
        bench.advance(at_s)
        assert bench.output.volts <= highest * 1.001 + 0.003
    assert bench.instrument.status.next_error() == '0,"No error"'


def turned_on(caller: Caller, *, for_s: float = 1.0) -> float:
    """Amps after so long at 12 V; the output is off again afterwards."""
    caller.session.write(":VOLT 12;:CURR 3;:OUTP ON")
    caller.now_s += for_s
    amps = caller.read()[1]
    caller.session.write(":OUTP OFF")
    caller.now_s += 1.0
    return amps


def test_another_thing_is_hung_on_the_same_supply_and_the_first_is_found_as_it_was_left() -> None:
    caller = Caller(load("stuck-soft"))
    while caller.bench.motor is not None and caller.bench.motor.holding:
        turned_on(caller)
    freed, gone_round = caller.bench.motor, turned_on(caller)
    caller.bench.hang(load("short"))
    assert caller.bench.motor is None
    assert turned_on(caller) == pytest.approx(3.0, rel=0.01)  # the current limit holds
    caller.bench.hang(load("open"))
    assert turned_on(caller) == pytest.approx(0.0, abs=0.01)
    caller.bench.hang(load("stuck-soft"))
    assert caller.bench.motor is freed
    assert turned_on(caller) == pytest.approx(gone_round, rel=0.1)


def test_several_of_a_kind_differ_a_little_and_each_is_the_same_again() -> None:
    def drawn(seed: int, numbers: tuple[int, ...]) -> list[float]:
        caller, amps = Caller(load("stuck-soft"), seed=seed), []
        for number in numbers:
            caller.bench.hang(load("free"), number)
            amps.append(turned_on(caller))
        return amps

    fans = drawn(0, (1, 2, 3, 4, 5))
    spread = statistics.stdev(fans) / statistics.mean(fans)
    assert 0.01 < spread < 0.1
    assert drawn(0, (5, 1)) == pytest.approx([fans[4], fans[0]], abs=0.003)  # but for the meter's own noise


def test_what_is_off_the_clips_comes_to_rest_and_cools() -> None:
    caller = Caller(load("hopeless"))
    caller.session.write(":VOLT 12;:CURR 3;:OUTP ON")
    caller.now_s += 5.0
    caller.read()
    stuck = caller.bench.motor
    assert stuck is not None
    hot_c = stuck.winding_c
    assert hot_c > 30.0
    caller.bench.hang(load("free"))
    caller.now_s += 1.0
    caller.read()
    fan = caller.bench.motor
    assert fan is not None
    assert fan.speed > 100.0
    caller.session.write(":OUTP OFF")
    caller.bench.hang(None)
    assert caller.bench.motor is stuck
    assert 20.0 < stuck.winding_c < hot_c
    caller.now_s += 3600.0
    caller.read()
    caller.bench.hang(load("free"))
    assert caller.bench.motor is fan
    assert fan.speed == 0.0
    assert fan.amps == pytest.approx(0.0, abs=1e-6)
    assert fan.winding_c == pytest.approx(20.0, abs=0.5)
    caller.session.write(":OUTP ON")
    caller.now_s += 1.0
    assert caller.read()[1] == pytest.approx(0.18, rel=0.2)  # it runs as before


def test_a_file_of_the_same_name_is_another_thing() -> None:
    caller = Caller(load("free"))
    other = msgspec.structs.replace(load("free"), name="short")
    caller.bench.hang(other)
    assert caller.bench.motor is not None
    caller.bench.hang(load("short"))
    assert caller.bench.motor is None
