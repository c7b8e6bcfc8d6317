"""What a current does over minutes and hours, against currents whose course is known; false verdicts counted."""

from collections import Counter

import numpy as np
import pytest
from numpy.typing import NDArray

from benchlog.motor.drift import Course, Verdict, drift, flat_over, minutes, slope_of

Floats = NDArray[np.float64]
HOUR = np.arange(3600.0)


def wandering(source: np.random.Generator, count: int, over_s: float, share: float) -> Floats:
    """Noise of one a second that remembers itself for `over_s`; 0: not at all."""
    if over_s == 0:
        return source.normal(0.0, share, count)
    keeps = np.exp(-1 / over_s)
    steps = source.normal(0.0, share * np.sqrt(1 - keeps**2), count)
    found = np.empty(count)
    value = source.normal(0.0, share)
    for k, step in enumerate(steps):
        value = keeps * value + step
        found[k] = value
    return found


def test_the_warm_up_of_an_old_motor_falls_and_then_is_flat() -> None:
    # 0.5 A to 0.17 A over 20 minutes (common practice, no source), then an hour more; brushes wander by 1 %.
    t_s = np.arange(4800.0)
    amps = 0.17 + 0.33 * np.exp(-t_s / 300) * (1 + wandering(np.random.default_rng(1), t_s.size, 5.0, 0.01))
    told = drift(t_s, amps, for_s=600.0)
    assert told.verdict is Verdict.FALLING_THEN_FLAT
    assert told.first == pytest.approx(0.49, abs=0.01)
    assert told.last == pytest.approx(0.17, rel=0.01)
    assert told.flat_since_s is not None
    assert 900 < told.flat_since_s < 1500  # e^-4 of 0.33 A is 4 % of 0.17 A at 1 150 s
    assert told.words.startswith("the current fell from 4")


@pytest.mark.parametrize(
    ("amps", "verdict"),
    [
        (0.2 + 0 * HOUR, Verdict.FLAT),
        (0.2 * (1 + 0.3 * HOUR / 3600), Verdict.RISING),
        (0.2 * (1 - 0.3 * HOUR / 3600), Verdict.FALLING),
        (0.17 + 0.33 * np.exp(-HOUR / 200) + 0.04 * np.clip((HOUR - 1800) / 1800, 0, 1), Verdict.RISING),
    ],
)
def test_a_course_that_is_known_is_told_for_what_it_is_whatever_the_noise(amps: Floats, verdict: Verdict) -> None:
    source = np.random.default_rng(2)
    told = Counter(drift(HOUR, amps * (1 + wandering(source, 3600, 5.0, 0.01)), for_s=600.0).verdict for _ in range(20))
    assert told[verdict] >= 12
    assert set(told) <= {verdict, Verdict.UNDETERMINED}


def test_a_rise_too_slow_for_its_last_minutes_shows_over_the_day() -> None:
    t_s = np.arange(0.0, 86400.0, 60.0)
    amps = 0.2 * (1 + 0.15 * t_s / 86400) * (1 + wandering(np.random.default_rng(3), t_s.size, 0.0, 0.005))
    told = drift(t_s, amps, for_s=3600.0)
    assert told.verdict is Verdict.RISING
    assert "binding or brushes" in told.words


@pytest.mark.parametrize(("over_s", "share", "at_most"), [(0.0, 0.01, 1), (5.0, 0.01, 1), (30.0, 0.01, 8)])
def test_a_flat_current_that_wanders_is_seldom_said_to_rise_or_fall(over_s: float, share: float, at_most: int) -> None:
    source = np.random.default_rng(4)
    told = [drift(HOUR, 0.3 * (1 + wandering(source, 3600, over_s, share)), for_s=600.0).verdict for _ in range(100)]
    assert sum(one in (Verdict.RISING, Verdict.FALLING, Verdict.FALLING_THEN_FLAT) for one in told) <= at_most


@pytest.mark.parametrize(("over_s", "at_least"), [(0.0, 90), (5.0, 90), (30.0, 86)])
def test_the_interval_of_a_slope_holds_the_true_one_though_readings_remember_one_another(
    over_s: float, at_least: int
) -> None:
    source, t_s, true = np.random.default_rng(5), np.arange(600.0), 2e-5
    held = 0
    for _ in range(100):
        slope = slope_of(t_s, 0.3 + true * t_s + 0.3 * wandering(source, 600, over_s, 0.02), 0.0)
        assert slope is not None
        held += slope.low <= true <= slope.high
    assert held >= at_least


@pytest.mark.parametrize("count", [0, 1, 19])
def test_too_few_readings_tell_nothing_and_say_so(count: int) -> None:
    told = drift(np.arange(float(count)), np.full(count, 0.2))
    assert told.verdict is Verdict.UNDETERMINED
    assert told.slope is None
    assert "too little" in told.words


def test_no_current_at_all_is_no_flat_one() -> None:
    assert drift(HOUR, 0 * HOUR, for_s=600.0).verdict is Verdict.UNDETERMINED
    assert drift(HOUR[:300], 0.2 + 0 * HOUR[:300], for_s=600.0).verdict is Verdict.UNDETERMINED


def test_flat_for_ten_minutes_asks_for_ten_minutes() -> None:
    assert not flat_over(HOUR[:500], 0.2 + 0 * HOUR[:500], 600.0, 0.02)
    assert flat_over(HOUR[:700], 0.2 + 0 * HOUR[:700], 600.0, 0.02)
    assert not flat_over(HOUR[:700], 0.2 * (1 + 0.05 * HOUR[:700] / 600), 600.0, 0.02)


def test_arrays_that_do_not_fit_are_refused() -> None:
    with pytest.raises(ValueError, match="fit"):
        drift([1.0, 2.0], [0.1])


def test_a_course_keeps_any_time_in_a_bounded_number_of_true_means() -> None:
    source, course = np.random.default_rng(6), Course()
    t_s = np.cumsum(source.uniform(0.2, 1.8, 20_000))
    amps = 0.2 + 0.1 * np.exp(-t_s / 3000) + source.normal(0, 0.01, t_s.size)
    for at_s, one in zip(t_s.tolist(), amps.tolist(), strict=True):
        course.add(at_s, one)
        assert len(course) <= Course.MOST
    kept_s, kept = course.since(0.0)
    assert len(course) > Course.MOST / 2 - 1
    place = np.floor(t_s / course.span_s)
    for k in (0, len(kept_s) // 2, len(kept_s) - 1):
        inside = place == np.floor(kept_s[k] / course.span_s)
        assert kept[k] == pytest.approx(amps[inside].mean(), rel=1e-9)
        assert kept_s[k] == pytest.approx(t_s[inside].mean(), rel=1e-9)


def test_a_course_of_the_last_minutes_forgets_what_was_before() -> None:
    course = Course(10.0)
    for at_s in range(2000):
        course.add(float(at_s), 0.1)
        course.forget_before(at_s - 600.0)
    assert len(course) <= 62
    assert course.since(0.0)[0][0] >= 1390.0


@pytest.mark.parametrize(
    ("span_s", "said"), [(45.0, "45 s"), (720.0, "12 min"), (12_000.0, "3 h 20 min"), (7200.0, "2 h")]
)
def test_a_time_is_said_as_people_say_it(span_s: float, said: str) -> None:
    assert minutes(span_s) == said
