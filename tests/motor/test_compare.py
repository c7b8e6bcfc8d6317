"""Before and after, and against known good ones: verdicts in words, and what makes two tests not the same."""

from dataclasses import replace

import pytest

from benchlog.motor.compare import Measured, Test, compare, measured_of, warm_of
from benchlog.motor.fit import Fitted
from benchlog.records import Event, EventKind
from tests.motor.test_startup import SUPPLY, step, trace_of

TEST = Test(set_volts=9.0, lead_ohm=0.1, ambient_c=21.0, load_state="dry, uncoupled")


def measured(steady: float, *, half: float = 0.004, **test: object) -> Measured:
    trace = trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (3, 9, "start")])
    events = [SUPPLY, step(0.7, "measured start")]
    made = measured_of(trace, events, run=1, lead_ohm=0.1, ambient_c=21.0, load_state="dry, uncoupled", ohm=None)
    assert made is not None
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
    "test",
    [
        {"set_volts": 12.0},
        {"load_state": "wet, coupled"},
        {"lead_ohm": 0.4},
        {"ambient_c": 35.0},
        {"swapped": True},
        {"driven_s": 600.0},
    ],
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


def like(amps: float, tau: float, ohm: float, **test: object) -> Measured:
    made = measured(amps, **test)  # type: ignore[arg-type]
    return replace(
        made,
        constants=replace(made.constants, tau_s=Fitted(value=tau, low=0.96 * tau, high=1.04 * tau)),
        ohm=Fitted(value=ohm, low=0.98 * ohm, high=1.02 * ohm),
    )


GOOD = [like(0.2, 0.1, ohm) for ohm in (7.96, 7.98, 8.0, 8.02, 8.04)]


@pytest.mark.parametrize(
    ("amps", "tau", "ohm", "words"),
    [
        # the classic no-load table: common practice, no source
        (0.25, 0.156, 8.0, "weak magnet"),
        (0.25, 0.1, 7.0, "shorted turns"),
        (0.25, 0.1, 8.0, "turns harder"),
        (0.2, 0.1, 8.0, "as the known good ones"),
        (0.15, 0.1, 12.0, "high resistance in the circuit (brush, lead)"),
        (0.15, 0.1, 8.0, "turns more freely"),
        # longer by as much as a higher resistance makes it: no weak magnet
        (0.25, 0.156, 12.0, "turns harder"),
        # within the intervals nothing is concluded
        (0.25, 0.103, 7.9, "turns harder"),
    ],
)
def test_weaker_is_said_by_intervals_and_names_its_signs(amps: float, tau: float, ohm: float, words: str) -> None:
    told = compare(like(amps, tau, ohm), GOOD)
    assert words in told.verdict
    assert told.verdict.startswith("Weaker") == (words in ("weak magnet", "shorted turns"))


@pytest.mark.parametrize(
    ("amps", "ohm", "words"),
    [
        # small motors: resistance varies by 50 to 100 % with the angle of the brushes (common practice, no source)
        (0.25, 7.0, "turns harder, or with more load. The resistance is lower: it may be the angle"),
        (0.25, 3.0, "turns harder, or with more load. The resistance is lower: it may be the angle"),
        (0.15, 15.0, "turns more freely, or with less load. The resistance is higher: another angle"),
        (0.15, 18.0, "signs of a high resistance in the circuit (brush, lead)"),
    ],
)
def test_against_a_single_probe_the_angle_of_the_brushes_is_allowed_for(amps: float, ohm: float, words: str) -> None:
    told = compare(like(amps, 0.1, ohm), [like(0.2, 0.1, 8.0)])
    assert words in told.verdict
    assert "shorted" not in told.verdict
    assert any("brush angle" in caution for caution in told.cautions)
    assert not any("angle" in caution for caution in compare(like(amps, 0.1, ohm), GOOD).cautions)


def test_warm_up_is_a_condition_by_the_resistance_right_before_over_the_cold_one() -> None:
    cold, warm = Fitted(value=1.0, low=0.98, high=1.02), Fitted(value=1.2, low=1.17, high=1.23)
    apart = compare(measured(0.2, warm=warm), [measured(0.2, warm=cold)])
    assert apart.verdict.startswith("Not comparable: winding at 1.17 to 1.23 times its cold resistance")
    alike = compare(measured(0.2, warm=cold), [measured(0.2, warm=replace(warm, low=1.01))])
    assert "no difference" in alike.verdict
    assert not any("warm-up" in words for words in alike.cautions)
    unknown = compare(measured(0.2, warm=warm), [measured(0.2)])
    assert "no difference" in unknown.verdict
    assert any("warm-up" in words for words in unknown.cautions)


def test_how_warm_it_was_is_known_where_heat_can_have_made_the_difference() -> None:
    def ohms(value: float) -> Fitted:
        return Fitted(value=value, low=0.99 * value, high=1.01 * value)

    found = warm_of(ohms(9.6), ohms(8.0))
    assert found is not None
    assert (found.value, found.low, found.high) == pytest.approx((1.2, 1.2 * 0.99 / 1.01, 1.2 * 1.01 / 0.99))
    assert warm_of(ohms(9.6), None) is None
    assert warm_of(None, ohms(8.0)) is None
    assert warm_of(ohms(16.0), ohms(8.0)) is None
    assert warm_of(ohms(6.0), ohms(8.0)) is None


def test_what_is_not_recorded_about_the_tests_is_said() -> None:
    told = compare(measured(0.2), [measured(0.2)]).cautions
    assert any("warm-up" in words for words in told)
    assert any("which way round" in words for words in told)


def test_driven_time_and_swapped_leads_come_from_the_run_s_own_record() -> None:
    trace = trace_of([(0.4, 0, "off"), (0.4, 0, "rest"), (0.4, 9, "start"), (1, 0, "rest"), (3, 9, "start")])
    step = Event(t_s=2.1, kind=EventKind.STEP, text="x", values={"name": "measured start"})
    answers = [Event(t_s=at_s, kind=EventKind.ANSWER, text="leads swapped") for at_s in (0.5, 3.0)]
    made = measured_of(
        trace, [SUPPLY, *answers, step], run=1, lead_ohm=0.1, ambient_c=21.0, load_state="dry, uncoupled", ohm=None
    )
    assert made is not None
    assert made.test.swapped
    assert made.test.driven_s == pytest.approx(0.4, abs=0.021)
