"""The simulated supply's measurement array: windows, what it holds and when, and what it refuses.

Source of the error codes: SCPI-1999, from memory.
"""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.simulated.array import SampleArray
from drivers.simulated.bench import Bench
from drivers.simulated.readback import Meter
from drivers.simulated.scenario import load, names, with_array
from drivers.simulated.status import Refusal
from drivers.simulated.supply_model import ArrayData, SupplyData
from drivers.simulated.truth import ArrayTruth

EXACT = SupplyData(noise_v=0.0, noise_a=0.0, offset_v=0.0, offset_a=0.0, gain=0.0, step_v=1e-6, step_a=1e-6)


class Subject:
    """An array whose terminals are as the test wants: volts 100 t, amps 2 - 10 t."""

    def __init__(self, **data: float) -> None:
        self.now_s = 0.0
        self.told: list[ArrayTruth] = []
        self.array = SampleArray(
            ArrayData(**data),  # type: ignore[arg-type]
            Meter(EXACT, random.Random(0)),
            random.Random(1),
            now=lambda: self.now_s,
            tell=self.told.append,
        )

    def step(self, step_s: float) -> None:
        middle_s = self.now_s + 0.5 * step_s
        self.now_s += step_s
        self.array.add(self.now_s, 100.0 * middle_s, 2.0 - 10.0 * middle_s, step_s)


@given(steps=st.lists(st.sampled_from([1e-3, 1e-4, 1.7e-5, 3e-4]), min_size=100, max_size=300), seed=st.integers(0, 9))
def test_a_ramp_is_seen_at_the_middle_of_each_window_whatever_the_steps(steps: list[float], seed: int) -> None:
    # Computed: the mean of a straight line over a window is its value in the middle. Steps of 1 ms stand still inside.
    subject = Subject()
    subject.now_s = 0.1 * seed
    subject.array.set_interval(5e-4)
    subject.array.set_points(20)
    subject.array.start()
    began_s = subject.now_s
    for step_s in [*steps, *[1e-3] * 10]:
        subject.step(step_s)
    held = subject.array.held()
    assert len(held) == 20
    for number, (volts, amps) in enumerate(held):
        middle_s = began_s + (number + 0.5) * 5e-4
        assert volts == pytest.approx(100.0 * middle_s, abs=100.0 * 5e-4)
        assert amps == pytest.approx(2.0 - 10.0 * middle_s, abs=10.0 * 5e-4)
    whole = sum(volts for volts, _ in held) / 20
    assert whole == pytest.approx(100.0 * (began_s + 10 * 5e-4), abs=0.006)


def test_windows_that_divide_the_steps_are_exact() -> None:
    subject = Subject()
    subject.array.set_interval(2e-4)
    subject.array.set_points(50)
    subject.array.start()
    for _ in range(120):
        subject.step(1e-4)
    assert subject.array.held()[7] == pytest.approx((100.0 * 7.5 * 2e-4, 2.0 - 10.0 * 7.5 * 2e-4), abs=2e-6)
    assert not subject.array.running
    (truth,) = subject.told
    assert (truth.began_s, truth.interval_s, len(truth.true_volts)) == (0.0, 2e-4, 50)


def test_what_is_not_full_is_not_given() -> None:
    subject = Subject()
    with pytest.raises(Refusal, match="-230"):
        subject.array.held()
    subject.array.set_points(50)
    subject.array.start()
    for _ in range(100):
        subject.step(1e-4)
    with pytest.raises(Refusal, match="-230"):
        subject.array.held()
    subject.array.abort()
    with pytest.raises(Refusal, match="-230"):
        subject.array.held()
    assert subject.told == []


def test_a_new_setting_throws_away_what_was_held() -> None:
    subject = Subject()
    subject.array.set_points(5)
    subject.array.start()
    for _ in range(100):
        subject.step(1e-4)
    assert len(subject.array.held()) == 5
    subject.array.set_interval(1e-3)
    with pytest.raises(Refusal, match="-230"):
        subject.array.held()


class Asked:
    """The whole bench, asked in text."""

    def __init__(self, *, array: bool = True) -> None:
        scenario = load("free")
        self.bench = Bench(with_array(scenario) if array else scenario, 1)
        self.now_s = 0.0

    def say(self, message: str) -> str | None:
        reply, self.now_s = self.bench.send(message, self.now_s)
        return reply

    def error(self) -> int:
        return int((self.say("SYST:ERR?") or "").split(",")[0])


def test_interval_and_points_are_set_and_told_with_their_bounds() -> None:
    asked = Asked()
    asked.say("SENSE:SWEEP:TINTERVAL 0.5 ms;POINTS 600")
    assert asked.say("SENS:SWE:TINT?;POIN?") == "0.000500;600"
    assert asked.say("SENS:SWE:TINT? MIN;POIN? MAX;OFFS:POIN?") == "0.000200;4096;0"
    assert asked.say("TRIG:SOUR?") == "IMM"
    assert asked.error() == 0


@pytest.mark.parametrize(
    ("command", "code"),
    [
        ("SENS:SWE:TINT 0.0001", -222),
        ("SENS:SWE:TINT 2", -222),
        ("SENS:SWE:POIN 5000", -222),
        ("SENS:SWE:OFFS:POIN -20", -222),
        ("TRIG:SOUR EXT", -224),
        ("SENS:SWE:TINT 1 V", -131),
        ("FETC:ARR:VOLT?", -230),
        ("INIT;INIT", -213),
        ("INIT 5", -108),
    ],
)
def test_what_the_array_does_not_do_is_refused_by_the_right_code(command: str, code: int) -> None:
    asked = Asked()
    before = asked.say("SENS:SWE:TINT?;POIN?")
    assert asked.say(command) is None
    assert asked.error() == code
    assert asked.error() == 0
    assert asked.say("SENS:SWE:TINT?;POIN?") == before


@pytest.mark.parametrize("command", ["SENS:SWE:TINT?", "INIT", "ABOR", "FETC:ARR:CURR?", "TRIG:SOUR IMM"])
def test_a_supply_without_an_array_knows_none_of_its_headers(command: str) -> None:
    asked = Asked(array=False)
    assert asked.say(command) is None
    assert asked.error() == -113


def test_every_shipped_scenario_is_on_a_supply_without_an_array() -> None:
    assert [name for name in names() + names(look_alikes=True) if load(name).supply.array is not None] == []
