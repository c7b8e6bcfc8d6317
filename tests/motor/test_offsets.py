"""Triggers that are off are found by fit; where noise explains it, or a curve is no start, they are kept."""

import math
from dataclasses import replace

import numpy as np
import pytest

from benchlog.motor.overlay import overlay
from tests.motor.five_solvers import VOLTS
from tests.motor.test_overlay import EXACT, curve, shifted


@pytest.mark.parametrize(
    ("count", "per_s", "most"), [(2, 100.0, 0.4), (5, 50.0, 0.15), (10, 50.0, 0.15), (40, 50.0, 0.1)]
)
def test_triggers_that_are_off_are_found_by_the_fit_far_finer_than_a_reading(
    count: int, per_s: float, most: float
) -> None:
    before, after = [], []
    for seed in range(4):
        made, late_s = shifted(count, per_s, seed=seed)
        before.append(np.mean(late_s**2))
        after.append(np.mean((overlay(made).offsets_s - late_s) ** 2))
    assert math.sqrt(np.mean(after)) < most * math.sqrt(np.mean(before))


def test_where_noise_explains_the_difference_every_curve_keeps_its_trigger() -> None:
    source, t_s = np.random.default_rng(4), 0.02 * np.arange(75) + 0.013
    made = [curve(n, t_s, EXACT.averaged(t_s) + source.normal(0, 0.05, len(t_s))) for n in range(20)]
    assert np.sum(overlay(made).offsets_s != 0) <= 2


def test_a_curve_that_is_no_start_keeps_its_trigger_and_leaves_the_others_theirs() -> None:
    made, late_s = shifted(12, 50.0, seed=2)
    locked = replace(made[0], amps=np.where(made[0].t_s > 0, VOLTS / 2.0, 0.0))
    told = overlay([*made, locked])
    assert told.offsets_s[-1] == 0.0
    assert math.sqrt(np.mean((told.offsets_s[:-1] - late_s) ** 2)) < 0.35 * float(np.std(late_s))
