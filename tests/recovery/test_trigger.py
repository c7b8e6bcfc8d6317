"""When volts or amps rise through a level: once for each rise, and at an instant between two readings."""

import random

import pytest

from benchlog.recovery.trigger import Edge, seen_by


def crossings(values: list[tuple[float, float]], edge: Edge) -> list[float]:
    found = []
    for t_s, value in values:
        edge, crossed_s = seen_by(edge, t_s, value)
        if crossed_s is not None:
            found.append(crossed_s)
    return found


def test_the_instant_lies_on_the_line_between_the_readings_on_either_side() -> None:
    rising = [(0.0, 0.0), (0.1, 0.1), (0.2, 0.5), (0.3, 0.5)]
    assert crossings(rising, Edge(level=0.3, hysteresis=0.1)) == [pytest.approx(0.15)]
    assert crossings([(1.0, 0.0), (1.5, 0.3)], Edge(level=0.3, hysteresis=0.1)) == [pytest.approx(1.5)]


def test_what_was_never_below_the_level_less_the_hysteresis_is_no_rise() -> None:
    assert crossings([(0.0, 0.25), (0.1, 0.4), (0.2, 0.25), (0.3, 0.4)], Edge(level=0.3, hysteresis=0.1)) == []
    assert crossings([(0.0, 0.5), (0.1, 0.6)], Edge(level=0.3, hysteresis=0.1)) == []


def test_noise_about_the_level_counts_once_and_a_second_start_counts_again() -> None:
    source = random.Random(3)

    def noisy(level: float, since_s: float) -> list[tuple[float, float]]:
        return [(since_s + 0.01 * k, level + source.uniform(-0.04, 0.04)) for k in range(200)]

    readings = noisy(0.0, 0.0) + noisy(0.3, 2.0) + noisy(0.0, 4.0) + noisy(0.3, 6.0)
    found = crossings(readings, Edge(level=0.3, hysteresis=0.1))
    assert len(found) == 2
    assert 1.9 < found[0] < 2.5
    assert 5.9 < found[1] < 6.5
    plain = crossings(readings, Edge(level=0.3, hysteresis=1e-9))
    assert len(plain) > 50, "without hysteresis the same noise counts again and again"
