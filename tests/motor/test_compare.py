"""Before and after, and against known good ones: verdicts in words, and what makes two tests not the same."""

from dataclasses import replace

import pytest

from benchlog.motor.compare import Measured, Test, compare, measure
from benchlog.motor.fit import Fitted
from benchlog.motor.startup import starts_of
from tests.motor.test_startup import SUPPLY, trace_of

TEST = Test(set_volts=9.0, lead_ohm=0.1, ambient_c=21.0, load_state="dry, uncoupled")


def measured(steady: float, *, half: float = 0.004, **test: object) -> Measured:
    trace = trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (3, 9, "start")])
    made = measure(
        starts_of(trace, [SUPPLY])[0], trace, run=1, lead_ohm=0.1, ambient_c=21.0, load_state="dry, uncoupled", ohm=None
    )
    amps = Fitted(value=steady, low=steady - half, high=steady + half)
    return replace(
        made,
        test=replace(TEST, **test),  # type: ignore[arg-type]
        constants=replace(made.constants, steady_amps=amps),
    )


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [(0.5, 0.2, "turns more freely"), (0.2, 0.3, "turns harder"), (0.2, 0.203, "no difference that these readings")],
)
def test_the_verdict_in_words(before: float, after: float, words: str) -> None:
    told = compare(measured(after), [measured(before)])
    assert words in told.verdict
    current = told.differences[0]
    assert current.low < after - before < current.high
    assert current.sure == ("no difference" not in words)


@pytest.mark.parametrize(
    "test", [{"set_volts": 12.0}, {"load_state": "wet, coupled"}, {"lead_ohm": 0.4}, {"ambient_c": 35.0}]
)
def test_under_another_test_nothing_is_concluded(test: dict[str, object]) -> None:
    told = compare(measured(0.2, **test), [measured(0.5)])  # type: ignore[arg-type]
    assert told.verdict.startswith("Not comparable")
    assert len(told.not_same) == 1


def test_known_good_ones_give_the_spread_between_motors() -> None:
    good = [measured(value) for value in (0.19, 0.2, 0.21, 0.22)]
    assert "as the known good ones" in compare(measured(0.23), good).verdict
    assert "turns harder" in compare(measured(0.35), good).verdict
    # one more like them lies within the 95 % interval of mean and spread: 0.205 ± 3.182 · 0.0129 · sqrt(1.25)
    current = compare(measured(0.205, half=0.0), good).differences[0]
    assert current.high == pytest.approx(3.182 * 0.012910 * 1.25**0.5, rel=1e-3)


def test_a_current_not_identified_is_compared_with_nothing() -> None:
    unknown = measured(0.2)
    unknown = replace(unknown, constants=replace(unknown.constants, steady_amps=None))
    assert "can't be told" in compare(unknown, [measured(0.2)]).verdict
    with pytest.raises(ValueError, match="nothing to compare"):
        compare(unknown, [])


def test_others_under_another_test_are_left_out_of_the_known_good_ones() -> None:
    good = [measured(value) for value in (0.19, 0.2, 0.21, 0.22)]
    told = compare(measured(0.35), [*good, measured(0.2, set_volts=12.0)])
    assert told.against == 4
    assert "turns harder" in told.verdict
